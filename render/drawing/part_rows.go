package drawing

import (
	"slices"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// A partStack is the views of one part at one scale.
type partStack struct {
	page  *page
	part  laidPart
	scale catalog.Scale
}

// frame is the place of a view of a size with its lower left corner at a point.
func (s partStack) frame(corner plane.Point, wide, high length.Length) dimension.Frame {
	return dimension.Frame{Box: plane.BoxOf(corner, corner.Add(s.scale.OnPaper(wide), s.scale.OnPaper(high))), Scale: sheet.Scale{Paper: s.scale.Paper, Real: s.scale.Real}}
}

// rows are the dimensions of a face: the places along it from its left end, one row
// for each kind of work, and those across, in one row each for joints, for the
// panel's seat and for holes.
func (s partStack) rows(f face) layout {
	l, along := s.part, map[string][]length.Length{}
	var joints, seats, bored []length.Length
	for _, m := range l.milled() {
		if m.face == f.word && !m.onLeaf() && (m.low.X > 0 || m.high.X < l.length) {
			along[m.use] = append(along[m.use], m.low.X, m.high.X)
		}
		low, high := m.across(l, f)
		switch {
		case low <= 0 && high >= f.high:
		case m.joint() && (l.reaches(m, f.word) || m.beside && f.turns%2 == 0):
			joints = append(joints, low, high)
		case !m.joint() && m.face == f.word:
			seats = append(seats, low, high)
		}
	}
	for _, h := range l.holes() {
		if h.face == f.word {
			along[h.use] = append(along[h.use], h.at.X)
			bored = append(bored, l.shownAt(f, h.at))
		}
	}
	var all layout
	for _, use := range sortedKeys(along) {
		all.below = append(all.below, dimension.Row{At: append([]length.Length{0}, along[use]...), Style: dimension.Running, Label: capitals(use)})
	}
	if len(all.below) == 1 {
		all.below[0].Label = "" // the view's name says it
	}
	if f.turns == 0 {
		all.below = append(all.below, dimension.Row{At: []length.Length{0, l.length}, Style: dimension.Overall})
	}
	all.left = chains(f.high, joints, seats, bored)
	all.title = s.name(f, sortedKeys(along))
	return all
}

// name is a view's name, with the one kind of work that is dimensioned along it.
func (s partStack) name(f face, uses []string) string {
	if len(uses) == 1 {
		return capitals(f.word + ": " + uses[0])
	}
	return capitals(f.word)
}

// chains are rows across a face of that height, one for each group of places
// that has any; without any, the height alone. Equal rows stand once.
func chains(high length.Length, groups ...[]length.Length) []dimension.Row {
	var rows []dimension.Row
	for _, at := range groups {
		if len(at) == 0 {
			continue
		}
		whole := distinct(append([]length.Length{0, high}, at...))
		if !slices.ContainsFunc(rows, func(r dimension.Row) bool { return slices.Equal(r.At, whole) }) {
			rows = append(rows, dimension.Row{At: whole, Style: dimension.Chain})
		}
	}
	if len(rows) == 0 {
		rows = []dimension.Row{{At: []length.Length{0, high}, Style: dimension.Chain}}
	}
	return rows
}

// endRows are the dimensions of the right-hand end: what is cut and bored there, in
// the thickness below and in the width at its right, and of a part that is
// mortised or grooved the depths.
func (s partStack) endRows() layout {
	l := s.part
	_, right := l.ends()
	var joints, seats, bored, up, depths []length.Length
	for _, m := range l.milled() {
		in := &seats
		if m.joint() {
			in = &joints
		}
		switch {
		case m.onLeaf():
		case l.reaches(m, right):
			*in, up = append(*in, m.low.Y, m.high.Y), append(up, m.low.Z, m.high.Z)
		case s.inEdge(m) && (m.use == "mortise" || m.use == "groove"):
			*in, depths = append(*in, m.low.Y, m.high.Y), append(depths, m.low.Z, m.high.Z)
		}
	}
	for _, h := range l.holes() {
		if h.face == right {
			bored, up = append(bored, h.at.Y), append(up, h.at.Z)
		}
	}
	thick := dimension.Row{At: []length.Length{0, l.thickness}, Style: dimension.Overall}
	all := layout{below: []dimension.Row{thick}}
	if rows := chains(l.thickness, joints, seats, bored); len(rows[0].At) > 2 {
		all.below = append(rows, thick)
	}
	for _, row := range chains(l.width, up, depths) {
		if len(row.At) > 2 {
			all.right = append(all.right, row)
		}
	}
	return all
}

// inEdge tells whether a cut is worked from an edge.
func (s partStack) inEdge(m milled) bool {
	f := s.part.faces()
	return m.face == f[0].word || m.face == f[2].word
}

// endName is the name of the right-hand end.
func (s partStack) endName() string {
	_, right := s.part.ends()
	return capitals(right)
}

// nameRoom is kept over a view for its name.
const nameRoom = 2*mm + figureHeight + mm/2

// extent is what a view with dimensions takes on the paper about its own corner,
// with its name over it.
func (s partStack) extent(frame dimension.Frame, l layout) plane.Box {
	box := frame.Box
	if around, any := dimension.Extent(s.page.dimensions(frame, l)); any {
		box = box.Join(around)
	}
	box.Max.X = max(box.Max.X, frame.Box.Min.X+advance(l.title))
	box.Max.Y = max(box.Max.Y, frame.Box.Max.Y+nameRoom)
	return box
}

// face draws one face with its dimensions and its name.
func (s partStack) face(frame dimension.Frame, f face) {
	rows := s.rows(f)
	s.view(frame, rows, solid.X, f.turns)
	s.page.named(frame, rows.title)
}

// endView draws the right-hand end of the part.
func (s partStack) endView(frame dimension.Frame) {
	s.view(frame, s.endRows(), solid.Z, 3)
	middle := (frame.Box.Min.X + frame.Box.Max.X).Half()
	s.page.text(plane.At(middle, s.endExtent(frame).Max.Y-figureHeight-mm/2), figureHeight, sheet.Middle, false, s.endName())
}

// endExtent is what the right-hand end takes on the paper, with its name over all.
func (s partStack) endExtent(frame dimension.Frame) plane.Box {
	box := s.extent(frame, s.endRows())
	half, middle := advance(s.endName()).Half(), (frame.Box.Min.X + frame.Box.Max.X).Half()
	box.Min.X, box.Max.X = min(box.Min.X, middle-half), max(box.Max.X, middle+half)
	box.Max.Y += nameRoom
	return box
}

// view draws the part turned so many quarters about an axis, with dimensions.
func (s partStack) view(frame dimension.Frame, rows layout, about solid.Axis, turns int) {
	p := s.page
	p.over = append(p.over, p.dimensions(frame, rows)...)
	p.draw(frame, view.Elevation([]view.Body{s.body(s.part.solid.Turn(about, turns))}, view.Front, view.Options{Scale: frame.Scale}))
}

// body is a turned solid with its least corner at the origin.
func (s partStack) body(turned solid.Solid) view.Body {
	least, _ := turned.Bounds()
	return view.Body{Solid: turned.Move(solid.Vec{X: -least.X, Y: -least.Y, Z: -least.Z}), Layer: sheet.Outline}
}

// named writes a view's name over its upper left corner, or where nothing stands yet.
func (p *page) named(frame dimension.Frame, name string) {
	box := frame.Box
	for _, at := range []plane.Point{box.Min.Add(0, box.Height()+2*mm), box.Min.Add(0, -2*mm-figureHeight), plane.At((box.Min.X + box.Max.X).Half(), box.Max.Y+2*mm)} {
		t := sheet.Text{Layer: sheet.Notes, At: at, Height: figureHeight, String: name, Advance: advance(name)}
		if p.clear(t) && within(dimension.TextBox(t), p.work) {
			p.over = append(p.over, t)
			return
		}
	}
	p.unplaced = append(p.unplaced, "the view's name "+name)
}
