package plane

import (
	"math"

	"stilewright/model/length"
)

// Of is one region of outlines that do not overlap, each given
// counter-clockwise. They may touch; Union joins them then.
func Of(outlines ...Path) Region {
	region := make(Region, 0, len(outlines))
	for _, path := range outlines {
		if len(path) > 0 {
			region = append(region, path)
		}
	}
	return region
}

// Area is the region's area in mm².
func (r Region) Area() float64 {
	var area float64
	for _, path := range r {
		area += path.Area()
	}
	return area
}

// Centroid is the centre of the region's area in mm; that of its bounds when
// it has no area.
func (r Region) Centroid() (x, y float64) {
	if len(r) == 0 || len(r[0]) == 0 {
		return 0, 0
	}
	base := r[0][0].From
	var area, mx, my float64
	for _, path := range r {
		if len(path) == 0 {
			continue
		}
		a, x, y := path.moments()
		d := base.to(path[0].From)
		area += a
		mx += x + float64(a*d.X.MM())
		my += y + float64(a*d.Y.MM())
	}
	if area == 0 || math.IsNaN(area) {
		b := r.Bounds()
		return (b.Min.X.MM() + b.Max.X.MM()) / 2, (b.Min.Y.MM() + b.Max.Y.MM()) / 2
	}
	return base.X.MM() + mx/area, base.Y.MM() + my/area
}

// Bounds is the smallest box round the region, the zero Box if it is empty.
func (r Region) Bounds() Box {
	var box Box
	found := false
	for _, path := range r {
		if len(path) == 0 {
			continue
		}
		if !found {
			box, found = path.Bounds(), true
			continue
		}
		box = box.Join(path.Bounds())
	}
	return box
}

// Empty tells whether the region has no outline.
func (r Region) Empty() bool {
	for _, path := range r {
		if len(path) > 0 {
			return false
		}
	}
	return true
}

// Reverse is the path walked the other way; a closed one from the same point.
func (p Path) Reverse() Path {
	back := make(Path, len(p))
	for i, e := range p {
		back[len(p)-1-i] = e.Reverse()
	}
	return back
}

// Map is the path with every point moved by move, which must keep circles
// circles: a shift, a turn, a mirroring, an even scaling. mirrored says that
// it turns left into right; a closed path then runs the other way round.
func (p Path) Map(move func(Point) Point, mirrored bool) Path {
	moved := make(Path, len(p))
	for i, e := range p {
		moved[i] = Edge{From: move(e.From), To: move(e.To), Turn: e.Turn}
		if e.Turn != Straight {
			moved[i].Centre = move(e.Centre)
		}
		if mirrored {
			moved[i].Turn = -e.Turn
		}
	}
	return moved
}

// Translate is the path moved by (dx, dy).
func (p Path) Translate(dx, dy length.Length) Path {
	return p.Map(func(q Point) Point { return q.Add(dx, dy) }, false)
}

// MirrorX is the path mirrored left to right in the vertical line at X = about
// and walked backwards, so that an outline stays counter-clockwise.
func (p Path) MirrorX(about length.Length) Path {
	return p.Map(func(q Point) Point { return At(2*about-q.X, q.Y) }, true).Reverse()
}

// MirrorY is the path mirrored top to bottom in the horizontal line at
// Y = about and walked backwards, so that an outline stays counter-clockwise.
func (p Path) MirrorY(about length.Length) Path {
	return p.Map(func(q Point) Point { return At(q.X, 2*about-q.Y) }, true).Reverse()
}

// Map is the region with every point moved by move, see Path.Map. When
// mirrored, its outlines are walked backwards so that material stays on their
// left.
func (r Region) Map(move func(Point) Point, mirrored bool) Region {
	return r.each(func(p Path) Path {
		p = p.Map(move, mirrored)
		if mirrored {
			p = p.Reverse()
		}
		return p
	})
}

// Translate is the region moved by (dx, dy).
func (r Region) Translate(dx, dy length.Length) Region {
	return r.each(func(p Path) Path { return p.Translate(dx, dy) })
}

// MirrorX is the region mirrored in the vertical line at X = about.
func (r Region) MirrorX(about length.Length) Region {
	return r.each(func(p Path) Path { return p.MirrorX(about) })
}

// MirrorY is the region mirrored in the horizontal line at Y = about.
func (r Region) MirrorY(about length.Length) Region {
	return r.each(func(p Path) Path { return p.MirrorY(about) })
}

func (r Region) each(change func(Path) Path) Region {
	if r == nil {
		return nil
	}
	changed := make(Region, len(r))
	for i, path := range r {
		changed[i] = change(path)
	}
	return changed
}

// Pieces parts the region into its separate areas, each one outer outline with
// its holes after it.
func (r Region) Pieces() []Region {
	var pieces []Region
	for _, path := range r {
		if path.Area() > 0 {
			pieces = append(pieces, Region{path})
		}
	}
	if len(pieces) == 1 {
		return []Region{r}
	}
	for _, path := range r {
		if path.Area() > 0 {
			continue
		}
		home := -1
		for i, piece := range pieces {
			if (home < 0 || piece[0].Area() < pieces[home][0].Area()) && piece[:1].Where(path[0].Middle()) != Outside {
				home = i
			}
		}
		if home >= 0 {
			pieces[home] = append(pieces[home], path)
		}
	}
	return pieces
}
