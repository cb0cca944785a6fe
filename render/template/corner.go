package template

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

// cornerSide is how far a corner template reaches along both edges, from the
// wall or the panel's edge: a size a tape shows.
func cornerSide(s door.Set) length.Length {
	if s.Units == length.Inches {
		return 5 * length.Inch / 2
	}
	return 60 * mm
}

// A corner is one corner of a lite's seat and panel, the lite's sight corner at
// the origin, seen from the side it is open to so that it is the lower left one.
type corner struct {
	walls, panel plane.Region
	sheet        door.Panel
	lites        []string // labels of the panels
}

// corners are the different corners of the leaf's seats.
func corners(l door.Leaf) (all []corner) {
	for i, lite := range l.Lites {
		origin := plane.At(lite.Sight.Max.X, lite.Sight.Min.Y)
		turn := func(p plane.Point) plane.Point { return plane.At(origin.X-p.X, p.Y-origin.Y) }
		fromBack := l.Rabbet.Kind != door.FaceBead
		if !fromBack {
			turn = func(p plane.Point) plane.Point { return p.Add(-lite.Sight.Min.X, -lite.Sight.Min.Y) }
		}
		c := corner{lite.Rabbet.Map(turn, fromBack), lite.Panel.Map(turn, fromBack), l.PanelOf(lite), []string{fmt.Sprintf("P%d", i+1)}}
		window := cornerWindow(l, lite.Sight, mm)
		same := slices.IndexFunc(all, func(o corner) bool {
			return sameRegion(plane.Intersect(o.walls, window), plane.Intersect(c.walls, window)) && sameRegion(plane.Intersect(o.panel, window), plane.Intersect(c.panel, window)) && o.sheet.Material.Name == c.sheet.Material.Name
		})
		if same >= 0 {
			all[same].lites = append(all[same].lites, c.lites...)
		} else {
			all = append(all, c)
		}
	}
	return all
}

// cornerWindow is what decides whether two corners are alike: as far as both
// lites go.
func cornerWindow(l door.Leaf, sight plane.Box, beyond length.Length) plane.Region {
	w := l.Rabbet.Width + beyond
	reach := min(sight.Width(), sight.Height()).Half()
	return plane.Region{plane.Rect(plane.At(-w, -w), plane.At(min(reach, 40*mm), min(reach, 40*mm)))}
}

func sameRegion(a, b plane.Region) bool { return slices.EqualFunc(a, b, slices.Equal[plane.Path]) }

// named numbers the names of several templates of a kind.
func named(name string, i, of int) string {
	if of == 1 {
		return name
	}
	return fmt.Sprintf("%s-%d", name, i+1)
}

// seatWord is what the panel lies in.
func seatWord(l door.Leaf) string {
	if l.Rabbet.Kind == door.Groove {
		return "groove"
	}
	return "rabbet"
}

// liteWords names the lites of a corner.
func (c corner) liteWords() string {
	if n := len(c.lites); n > 4 {
		return fmt.Sprintf("%s to %s (%d)", c.lites[0], c.lites[n-1], n)
	}
	return strings.Join(c.lites, ", ")
}

// seatCorners draws the corner of the seat with the panel lying in it.
func seatCorners(s door.Set) (sheets []sheet.Sheet) {
	all := corners(s.Leaf)
	for i, c := range all {
		sheets = append(sheets, c.seat(s, named("corner", i, len(all))))
	}
	return sheets
}

func (c corner) seat(s door.Set, name string) sheet.Sheet {
	l := s.Leaf
	d := newDraft(s, name, "Corner of "+seatWord(l)+" and panel "+c.liteWords())
	w := l.Rabbet.Width
	reach := cornerSide(s) - w
	window := plane.BoxOf(plane.At(-w, -w), plane.At(reach, reach))
	d.fills = append(d.fills, sheet.Fill{Layer: sheet.Panel, Tone: sheet.Tint, Region: plane.Intersect(c.panel, plane.Region{window.Path()})})
	d.clipped(sheet.Panel, sheet.Narrow, sheet.Continuous, c.panel, window)
	d.clipped(sheet.Outline, sheet.Wide, sheet.Continuous, c.walls, window.Grow(mm))
	d.stroke(sheet.Outline, sheet.Narrow, sheet.Hidden, plane.Path{plane.Line(plane.At(0, reach), plane.Point{}), plane.Line(plane.Point{}, plane.At(reach, 0))})
	gap := -w + c.sheet.EdgeGap
	across := chain(-w, gap, 0)
	overall := dimension.Row{At: []length.Length{-w, reach}, Style: dimension.Overall}
	d.dimensions(window, rows{below: append(across, overall), left: append(across, overall)})
	side, wide, deep := "back", w, l.Rabbet.Depth
	switch l.Rabbet.Kind {
	case door.FaceBead:
		side = "front"
	case door.Groove:
		wide, deep = deep, wide
	}
	notes := []string{"Seen from the " + side + ". Heavy line: wall of the " + seatWord(l) + "; thin line with tint: panel; dashed line: edge of the lite."}
	notes = append(notes, fmt.Sprintf("%s %s wide and %s deep, edge gap %s between panel and wall.", title(seatWord(l)), d.figure(wide), d.figure(deep), d.figure(c.sheet.EdgeGap)))
	if l.Rabbet.Corner > 0 {
		notes = append(notes, fmt.Sprintf("The wall's corner is round, radius %s as the cutter leaves it.", d.figure(l.Rabbet.Corner)))
	}
	return d.finish("The inside corner of the panel's seat with the panel's corner in it.", append(notes, c.cornerWords(s))...)
}

// cornerWords tells what the panel's corner is.
func (c corner) cornerWords(s door.Set) string {
	f := newDraft(s, "", "").figure
	switch k := s.Leaf.Corner; {
	case k.Leg > 0 && k.Least == 0:
		return fmt.Sprintf("Panel's corners: clipped, leg %s along each edge.", f(k.Leg))
	case k.Leg > 0:
		return fmt.Sprintf("Panel's corners: clipped, leg %s along each edge; %s is the least that clears.", f(k.Leg), f(k.Least))
	case k.Radius > 0:
		return fmt.Sprintf("Panel's corners: rounded to a radius of %s each; %s is the least that clears.", f(k.Radius), f(k.Least))
	case k.Tool > 0:
		return fmt.Sprintf("Panel's corners: square; the wall is relieved by a tool %s thick.", f(k.Tool))
	default:
		return "Panel's corners: square."
	}
}

// title is a word with a capital.
func title(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// clipped draws what of a region's outlines lies in a window.
func (d *draft) clipped(layer sheet.Layer, weight sheet.Weight, line sheet.LineType, r plane.Region, window plane.Box) {
	for _, path := range r {
		inside, _, _ := plane.Clip(path, plane.Region{window.Path()})
		for _, piece := range inside {
			d.stroke(layer, weight, line, piece)
		}
	}
}

// panelCorners draws the corner of every different panel, to be laid on the
// sheet's corner and marked round.
func panelCorners(s door.Set) (sheets []sheet.Sheet) {
	var all []corner
	for _, c := range corners(s.Leaf) {
		low := c.panel.Bounds().Min
		c.panel = c.panel.Translate(-low.X, -low.Y)
		window := plane.Region{plane.Rect(plane.Point{}, plane.At(40*mm, 40*mm))}
		same := slices.IndexFunc(all, func(o corner) bool {
			return sameRegion(plane.Intersect(o.panel, window), plane.Intersect(c.panel, window))
		})
		if same >= 0 {
			all[same].lites = append(all[same].lites, c.lites...)
		} else {
			all = append(all, c)
		}
	}
	for i, c := range all {
		sheets = append(sheets, c.onSheetCorner(s, named("panel-corner", i, len(all))))
	}
	return sheets
}

func (c corner) onSheetCorner(s door.Set, name string) sheet.Sheet {
	d := newDraft(s, name, "Panel corner "+c.liteWords())
	whole := c.panel.Bounds()
	side := plane.At(min(cornerSide(s), whole.Max.X), min(cornerSide(s), whole.Max.Y))
	window := plane.BoxOf(plane.Point{}, side)
	d.area(sheet.Panel, plane.Intersect(c.panel, plane.Region{window.Path()}))
	cut := max(s.Leaf.Corner.Leg, s.Leaf.Corner.Radius)
	across := func(side length.Length) []dimension.Row {
		return append(chain(0, cut, side), dimension.Row{At: []length.Length{0, side}, Style: dimension.Overall})
	}
	d.dimensions(window, rows{below: across(side.X), left: across(side.Y)})
	return d.finish("A corner of the panel.", "Cut along the heavy line and lay its long edges flush with the sheet's.", c.cornerWords(s))
}
