package dimension

import (
	"fmt"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// TextBox is the paper that a line of lettering takes: its advance, and its ink
// above and below the base line.
func TextBox(t sheet.Text) plane.Box {
	wide := t.Advance
	if wide == 0 {
		wide = lettering.Advance(t.String, t.Height)
	}
	above, below := lettering.Reach(t.String, t.Height)
	var from length.Length
	switch t.Align {
	case sheet.Middle:
		from = -wide.Half()
	case sheet.End:
		from = -wide
	}
	if t.Rise {
		return plane.Box{Min: t.At.Add(-above, from), Max: t.At.Add(below, from+wide)}
	}
	return plane.Box{Min: t.At.Add(from, -below), Max: t.At.Add(from+wide, above)}
}

// Extent is the box of all ink of the marks, lettering and line widths included.
// False if there is none.
func Extent(marks []sheet.Mark) (box plane.Box, ok bool) {
	p := piecesOf(marks)
	join := func(b plane.Box) {
		if !ok {
			box, ok = b, true
		} else {
			box = box.Join(b)
		}
	}
	for _, t := range p.texts {
		join(t.box)
	}
	for _, l := range p.lines {
		join(l.box)
	}
	for _, f := range p.fills {
		join(f.Region.Bounds())
	}
	return box, ok
}

// Collisions lists what makes a drawing hard to read, one sentence each: lettering
// on lettering, on a line of whatever kind, on a solid fill such as an arrow
// head, and lettering outside of within, unless within is the zero Box. Tints
// do not count. The order is that of the marks.
func Collisions(marks []sheet.Mark, within plane.Box) []string {
	var found []string
	piecesOf(marks).touch(within, 0, func(format string, values ...any) { found = append(found, fmt.Sprintf(format, values...)) })
	return found
}

// touching counts what Collisions lists without a frame, and what comes closer to
// lettering than clear.
func touching(marks []sheet.Mark, clear length.Length) int {
	n := 0
	piecesOf(marks).touch(plane.Box{}, clear, func(string, ...any) { n++ })
	return n
}

// touch tells of each collision: its words, for a reader who wants them.
func (p *pieces) touch(within plane.Box, clear length.Length, tell func(format string, values ...any)) {
	for i, t := range p.texts {
		t.box = t.box.Grow(clear)
		if within != (plane.Box{}) && !inside(t.box, within) {
			tell("text %s lies outside of %s", t, boxed(within))
		}
		for _, other := range p.texts[i+1:] {
			if overlap(t.box, other.box) {
				tell("text %s lies on text %s", t, other)
			}
		}
		for _, l := range p.lines {
			if overlap(t.box, l.box) && l.crosses(t.box) {
				tell("text %s lies on a line of layer %v from %s to %s", t, l.layer, pointed(l.path[0].From), pointed(l.path[len(l.path)-1].To))
			}
		}
		for _, f := range p.fills {
			if bounds := f.Region.Bounds(); overlap(t.box, bounds) && covers(f.Region, t.box) {
				tell("text %s lies on a fill of layer %v at %s", t, f.Layer, pointed(bounds.Min))
			}
		}
	}
}

// Places and boxes that write their names only when they are printed.
type (
	pointed plane.Point
	boxed   plane.Box
)

func (p pointed) String() string { return pointName(plane.Point(p)) }
func (b boxed) String() string   { return boxName(plane.Box(b)) }

// A piece of the drawing, ready to compare.
type (
	textPiece struct {
		text string
		box  plane.Box
	}
	linePiece struct {
		layer sheet.Layer
		path  plane.Path // straight
		half  length.Length
		box   plane.Box // with the width of the line
	}
	pieces struct {
		texts []textPiece
		lines []linePiece
		fills []sheet.Fill // solid ones
	}
)

func (t textPiece) String() string { return fmt.Sprintf("%q at %s", t.text, pointName(t.box.Min)) }

// chordError is how exactly arcs are compared, far below a line's width.
const chordError = 10 * um

func piecesOf(marks []sheet.Mark) *pieces {
	p := &pieces{}
	for _, m := range marks {
		switch m := m.(type) {
		case sheet.Text:
			p.text(m)
		case sheet.Stroke:
			p.stroke(m)
		case sheet.Fill:
			p.fill(m)
		case sheet.Dimension:
			for _, t := range m.Texts {
				p.text(t)
			}
			for _, s := range m.Strokes {
				p.stroke(s)
			}
			for _, f := range m.Fills {
				p.fill(f)
			}
		}
	}
	return p
}

func (p *pieces) text(t sheet.Text) {
	if t.String != "" {
		p.texts = append(p.texts, textPiece{t.String, TextBox(t)})
	}
}

func (p *pieces) stroke(s sheet.Stroke) {
	if len(s.Path) == 0 {
		return
	}
	half := s.Weight.Width().Half()
	p.lines = append(p.lines, linePiece{s.Layer, s.Path.Flatten(chordError), half, s.Path.Bounds().Grow(half)})
}

func (p *pieces) fill(f sheet.Fill) {
	if f.Tone == sheet.Ink && len(f.Region) > 0 {
		p.fills = append(p.fills, f)
	}
}

// crosses tells whether the line's ink enters the box. Ends are taken square.
func (l linePiece) crosses(b plane.Box) bool {
	b = b.Grow(l.half)
	return slices.ContainsFunc(l.path, func(e plane.Edge) bool { return enters(e, b) })
}

// covers tells whether a fill and a box have paper in common.
func covers(r plane.Region, b plane.Box) bool {
	odd := false
	for _, outline := range r {
		for _, e := range outline.Flatten(chordError) {
			if enters(e, b) {
				return true
			}
			if (e.From.Y > b.Min.Y) != (e.To.Y > b.Min.Y) && leftOf(b.Min, e) {
				odd = !odd
			}
		}
	}
	return odd // no edge enters: the box is inside as a whole or not at all
}

// leftOf tells whether the edge, which passes p's height, passes it to the right of p.
func leftOf(p plane.Point, e plane.Edge) bool {
	t := (p.Y - e.From.Y).MM() / (e.To.Y - e.From.Y).MM()
	return (e.From.X-p.X).MM()+float64(t*(e.To.X-e.From.X).MM()) > 0
}

// enters tells whether a straight edge has a point in the inside of the box:
// the parameters at which it is between the box's sides overlap (Liang and Barsky, 1984).
func enters(e plane.Edge, b plane.Box) bool {
	from, to := 0.0, 1.0
	for _, s := range [2][4]length.Length{
		{e.From.X, e.To.X, b.Min.X, b.Max.X},
		{e.From.Y, e.To.Y, b.Min.Y, b.Max.Y},
	} {
		run := (s[1] - s[0]).MM()
		if run == 0 {
			if s[0] <= s[2] || s[0] >= s[3] {
				return false
			}
			continue
		}
		in, out := (s[2]-s[0]).MM()/run, (s[3]-s[0]).MM()/run
		from, to = max(from, min(in, out)), min(to, max(in, out))
	}
	return from < to
}

func overlap(a, b plane.Box) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

func inside(a, b plane.Box) bool {
	return a.Min.X >= b.Min.X && a.Max.X <= b.Max.X && a.Min.Y >= b.Min.Y && a.Max.Y <= b.Max.Y
}

func pointName(p plane.Point) string {
	return fmt.Sprintf("(%.2f, %.2f) mm", p.X.MM(), p.Y.MM())
}

func boxName(b plane.Box) string {
	return fmt.Sprintf("the box from %s to %s", pointName(b.Min), pointName(b.Max))
}
