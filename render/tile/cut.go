package tile

import (
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

// A drawing is a sheet's marks, dimensions resolved, each with its bounds.
type drawing struct {
	marks []sheet.Mark
	boxes []plane.Box
}

func drawingOf(s sheet.Sheet) drawing {
	var d drawing
	for _, m := range s.Marks {
		if dim, ok := m.(sheet.Dimension); ok {
			for _, part := range dim.Drawing() {
				d.add(part)
			}
			continue
		}
		d.add(m)
	}
	return d
}

func (d *drawing) add(m sheet.Mark) {
	var box plane.Box
	switch m := m.(type) {
	case sheet.Stroke:
		box = m.Path.Bounds()
	case sheet.Fill:
		if len(m.Region) == 0 {
			return
		}
		box = m.Region.Bounds()
	case sheet.Text:
		box = dimension.TextBox(m)
	}
	d.marks, d.boxes = append(d.marks, m), append(d.boxes, box)
}

// through is what a window shows of the strokes and fills, in its order, on
// the drawing. texts are placed by index.
func (d drawing) through(window plane.Box, texts map[int]sheet.Text) (shown []sheet.Mark) {
	for i, m := range d.marks {
		whole := holds(window, d.boxes[i])
		switch m := m.(type) {
		case sheet.Stroke:
			switch {
			case whole:
				shown = append(shown, m)
			case window.Meets(d.boxes[i]):
				shown = append(shown, cutStroke(m, window)...)
			}
		case sheet.Fill:
			if !whole {
				m.Region = plane.Intersect(m.Region, plane.Region{window.Path()})
			}
			if len(m.Region) > 0 {
				shown = append(shown, m)
			}
		case sheet.Text:
			if t, here := texts[i]; here {
				shown = append(shown, t)
			}
		}
	}
	return shown
}

// cutStroke is the stroke's pieces in the window and along its edge. One with
// dashes is resolved into them first, so that they stay where they are.
func cutStroke(s sheet.Stroke, window plane.Box) (pieces []sheet.Mark) {
	paths := []plane.Path{s.Path}
	if pattern := s.Line.Dashes(); pattern != nil {
		paths = dashed(s.Path, pattern)
		s.Line = sheet.Continuous
	}
	for _, path := range paths {
		if !window.Meets(path.Bounds()) {
			continue
		}
		inside, _, along := plane.Clip(path, plane.Region{window.Path()})
		for _, piece := range append(inside, along...) {
			s.Path = piece
			pieces = append(pieces, s)
		}
	}
	return pieces
}

// holds tells whether box b lies in a.
func holds(a, b plane.Box) bool { return a.Holds(b.Min) && a.Holds(b.Max) }

// textsOf places the texts: for each tile, by index of the mark, the text as
// it stands there.
func (d drawing) textsOf(g grid) map[spot]map[int]sheet.Text {
	placed := map[spot]map[int]sheet.Text{}
	put := func(s spot, i int, t sheet.Text) {
		if placed[s] == nil {
			placed[s] = map[int]sheet.Text{}
		}
		placed[s][i] = t
	}
	var taken []plane.Box // by texts that stand where they are drawn, and by moved ones
	var torn []int        // that no tile holds whole
	for i, m := range d.marks {
		t, ok := m.(sheet.Text)
		if !ok {
			continue
		}
		whole := false
		for _, s := range g.spots() {
			if holds(g.box(s), d.boxes[i]) {
				whole = true
				put(s, i, t)
			}
		}
		if whole {
			taken = append(taken, d.boxes[i])
		} else {
			torn = append(torn, i)
		}
	}
	for _, i := range torn {
		t := d.marks[i].(sheet.Text)
		s := g.nearest(t.At)
		t = besides(movedInto(t, g.box(s)), g.box(s), taken)
		taken = append(taken, dimension.TextBox(t))
		put(s, i, t)
	}
	return placed
}

// besides is the text moved a few lines up or down to where it is clear of what
// is taken; where there is no such place, as it is.
func besides(t sheet.Text, window plane.Box, taken []plane.Box) sheet.Text {
	const lines = 8
	pitch := t.Height + t.Height.Half()
	for n := range length.Length(2*lines + 1) {
		by := (n + 1) / 2 * pitch // 0, up, down, further up
		if n%2 == 0 {
			by = -by
		}
		moved := t
		if moved.At = t.At.Add(0, by); t.Rise {
			moved.At = t.At.Add(by, 0)
		}
		box := dimension.TextBox(moved)
		if holds(window, box) && !slices.ContainsFunc(taken, box.Meets) {
			return moved
		}
	}
	return t
}

// nearest is the tile that holds the point most deeply or, if none does, has
// it least far outside.
func (g grid) nearest(p plane.Point) (best spot) {
	depth := func(s spot) length.Length {
		b := g.box(s)
		return min(p.X-b.Min.X, b.Max.X-p.X, p.Y-b.Min.Y, b.Max.Y-p.Y)
	}
	for _, s := range g.spots() {
		if depth(s) > depth(best) {
			best = s
		}
	}
	return best
}

// movedInto is the text moved, and if need be made smaller, to stand whole in
// a window.
func movedInto(t sheet.Text, window plane.Box) sheet.Text {
	const clear = mm // of the window's edge
	room := window.Grow(-clear)
	box := dimension.TextBox(t)
	if wide, high := box.Width(), box.Height(); wide > room.Width() || high > room.Height() {
		shrink := min(room.Width().MM()/wide.MM(), room.Height().MM()/high.MM())
		t.Height = max(1, length.Round(t.Height.MM()*shrink)-1)
		t.Advance = length.Round(t.Advance.MM() * shrink)
		box = dimension.TextBox(t)
	}
	dx := max(0, room.Min.X-box.Min.X) - max(0, box.Max.X-room.Max.X)
	dy := max(0, room.Min.Y-box.Min.Y) - max(0, box.Max.Y-room.Max.Y)
	t.At = t.At.Add(dx, dy)
	return t
}

// moved is a mark moved by (dx, dy).
func moved(m sheet.Mark, dx, dy length.Length) sheet.Mark {
	switch m := m.(type) {
	case sheet.Stroke:
		m.Path = m.Path.Translate(dx, dy)
		return m
	case sheet.Fill:
		m.Region = m.Region.Map(func(p plane.Point) plane.Point { return p.Add(dx, dy) }, false)
		return m
	case sheet.Text:
		m.At = m.At.Add(dx, dy)
		return m
	}
	return m
}

// shows tells whether marks leave anything on paper.
func shows(marks []sheet.Mark) bool {
	for _, m := range marks {
		if f, ok := m.(sheet.Fill); !ok || f.Tone != sheet.Paper {
			return true
		}
	}
	return false
}
