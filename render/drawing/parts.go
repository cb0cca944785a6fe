package drawing

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// A laidPart is a wooden part in its own frame, its length along X, its width
// along Z and its front face at Y 0, its least corner at the origin.
type laidPart struct {
	kind
	solid                    solid.Solid
	length, width, thickness length.Length
	out                      int // views left out
}

// lay lays a part down: what stands is turned so that its upper end points to
// the right.
func lay(k kind) laidPart {
	body := k.first.Solid
	if k.first.Grain == solid.Z {
		body = body.Turn(solid.Y, 1)
	}
	least, most := body.Bounds()
	body = body.Move(solid.Vec{X: -least.X, Y: -least.Y, Z: -least.Z})
	return laidPart{k, body, most.X - least.X, most.Z - least.Z, most.Y - least.Y, 0}
}

// A face is one side of a laid part as it is drawn, unrolled about its length.
type face struct {
	word  string // of the face in tables
	turns int    // quarter turns about X that bring it to the front
	high  length.Length
}

// faces are the four long faces of a part, from the top of the page down: upper edge,
// front, lower edge, back.
func (l laidPart) faces() [4]face {
	upper, lower := "top edge", "bottom edge"
	switch {
	case l.first.Label == "SL":
		upper, lower = "outer edge", "inner edge"
	case l.first.Label == "SR":
		upper, lower = "inner edge", "outer edge"
	case l.first.Grain == solid.Z:
		upper, lower = "left edge", "right edge"
	}
	return [4]face{{upper, 1, l.thickness}, {"front", 0, l.width}, {lower, 3, l.thickness}, {"back", 2, l.width}}
}

// faceOfCut is the index in faces of the face that a cut is drawn and
// dimensioned on: front or back if it opens there, else the edge; -1 if it only opens
// at an end.
func (l laidPart) faceOfCut(c solid.Cut) int {
	least, most := l.solid.Bounds()
	low, high := (solid.Solid{Blank: c.Prism}).Bounds()
	switch {
	case low.Y <= least.Y:
		return 1
	case high.Y >= most.Y:
		return 3
	case high.Z >= most.Z:
		return 0
	case low.Z <= least.Z:
		return 2
	}
	return -1
}

// worked tells whether anything is cut or bored into a face from outside.
func (l laidPart) worked(f face) bool {
	for _, c := range l.solid.Cuts {
		if i := l.faceOfCut(c); i >= 0 && l.faces()[i] == f {
			return true
		}
	}
	for _, h := range l.holes() {
		if h.face == f.word {
			return true
		}
	}
	return false
}

// shown are the faces that are drawn: the front, and those that are worked.
func (l laidPart) shown() []face {
	var shown []face
	for _, f := range l.faces() {
		if f.turns == 0 || l.worked(f) {
			shown = append(shown, f)
		}
	}
	for range l.out {
		for i := len(shown) - 1; i >= 0; i-- {
			if shown[i].turns != 0 {
				shown = append(shown[:i:i], shown[i+1:]...)
				break
			}
		}
	}
	return shown
}

// partSheet draws one part: its faces unrolled, its end, and its holes.
func partSheet(k kind) func(*page) {
	return func(p *page) {
		l := lay(k)
		notes := p.partNotes(l)
		wide, _ := columns(1, notes)
		rows := p.holeRows(l, p.work.Width()-wide-gutter)
		_, tall := p.tableSize(rows)
		if len(rows) == 1 {
			tall = 0
		}
		_, down := columns(1, notes)
		zone := p.work
		zone.Min.Y += max(tall, down) + gutter
		p.stack(zone, l)
		if p.trial || p.err != nil {
			return
		}
		if len(rows) > 1 {
			p.table(plane.At(p.work.Min.X, p.work.Min.Y+max(tall, down)), rows, map[int]bool{1: true})
		}
		p.notes(plane.At(p.work.Max.X-wide, p.work.Min.Y+max(tall, down)), 1, notes...)
	}
}

// stack draws the shown faces one below another at the largest standard scale
// at which they fit, and the right-hand end beside the front.
func (p *page) stack(zone plane.Box, l laidPart) {
	zone.Min.Y += titleRoom
	for left := 0; left < len(l.faces()); left++ {
		if p.stacked(zone, l, left) {
			return
		}
	}
	p.err = fmt.Errorf("part %s, %s long, fits no standard scale on %s paper: name a larger paper", l.first.Label, p.format(l.length), p.paper.Name)
}

// stacked draws the views, so many of the edges and the back left out for want of
// room; it tells whether they fit.
func (p *page) stacked(zone plane.Box, l laidPart, out int) bool {
	l.out = out
	for _, scale := range p.scalesTaken {
		if scale.Paper > scale.Real || scale.OnPaper(l.length+l.thickness) > zone.Width() {
			continue
		}
		s := partStack{page: p, part: l, scale: scale}
		if !s.fits(zone) {
			continue
		}
		s.draw(zone)
		if out > 0 {
			p.unplaced = append(p.unplaced, fmt.Sprintf("so many views of the part, %d (name a larger paper)", out))
		}
		return true
	}
	return false
}

// A partStack is the views of one part at one scale.
type partStack struct {
	page  *page
	part  laidPart
	scale catalog.Scale
}

// faceGap is left between two views of a part, beside their dimensions.
const faceGap = 7 * mm

// paperScale is the scale as sheets hold it.
func (s partStack) paperScale() sheet.Scale {
	return sheet.Scale{Paper: s.scale.Paper, Real: s.scale.Real}
}

// frame is the place of a view of a size with its lower left corner at a point.
func (s partStack) frame(corner plane.Point, wide, high length.Length) dimension.Frame {
	return dimension.Frame{Box: plane.BoxOf(corner, corner.Add(s.scale.OnPaper(wide), s.scale.OnPaper(high))), Scale: s.paperScale()}
}

// extent is what a face takes on the paper about its own corner, with its
// dimensions and its caption at the left.
func (s partStack) extent(f face) plane.Box {
	frame := s.frame(plane.At(0, 0), s.part.length, f.high)
	box := frame.Box
	if around, any := dimension.Extent(s.page.dimensions(frame, s.rows(f))); any {
		box = box.Join(around)
	}
	return box
}

// end is the frame's place of the right-hand end, beside the front at x.
func (s partStack) end(at plane.Point) dimension.Frame {
	return s.frame(at, s.part.thickness, s.part.width)
}

// endGap is left between the front of a part and its end.
const endGap = 22 * mm

// fits tells whether all views fit into the zone.
func (s partStack) fits(zone plane.Box) bool {
	var high, wide length.Length
	for _, f := range s.part.shown() {
		e := s.extent(f)
		high += e.Height() + faceGap
		wide = max(wide, e.Width())
	}
	return high <= zone.Height() && wide+endGap+s.scale.OnPaper(s.part.thickness)+14*mm <= zone.Width()
}

// draw draws the faces from the top of the zone down.
func (s partStack) draw(zone plane.Box) {
	p := s.page
	var left, high, right length.Length
	for _, f := range s.part.shown() {
		e := s.extent(f)
		left, right = min(left, e.Min.X), max(right, e.Max.X)
		high += e.Height() + faceGap
	}
	spare := (zone.Height() - high).Half()
	wide := right - left + endGap + s.scale.OnPaper(s.part.thickness) + 14*mm
	x := zone.Min.X + (zone.Width() - wide).Half() - left
	y := zone.Max.Y - spare
	for _, f := range s.part.shown() {
		e := s.extent(f)
		y -= e.Max.Y
		frame := s.frame(plane.At(x, y), s.part.length, f.high)
		s.face(frame, f)
		if f.turns == 0 {
			s.endView(s.end(plane.At(x+right+endGap, y)))
		}
		y += e.Min.Y - faceGap
	}
	title, height := fitted(fmt.Sprintf("%s, %s: FACES UNROLLED ABOUT ITS LENGTH", s.part.short(), capitals(s.part.first.Name)), zone.Width(), titleHeight)
	p.caption(plane.At((zone.Min.X+zone.Max.X).Half(), y-titleRoom+faceGap), title, height, s.scale)
}

// face draws one face with its dimensions and its name.
func (s partStack) face(frame dimension.Frame, f face) {
	p := s.page
	p.over = append(p.over, p.dimensions(frame, s.rows(f))...)
	lines := view.Elevation([]view.Body{s.body(s.part.solid.Turn(solid.X, f.turns))}, view.Front, view.Options{Scale: frame.Scale})
	p.draw(frame, lines)
	p.beside2(frame, capitals(f.word))
}

// endView draws the right-hand end of the part.
func (s partStack) endView(frame dimension.Frame) {
	p := s.page
	p.over = append(p.over, p.dimensions(frame, layout{below: []dimension.Row{{At: []length.Length{0, s.part.thickness}, Style: dimension.Overall}}})...)
	p.draw(frame, view.Elevation([]view.Body{s.body(s.part.solid.Turn(solid.Z, 3))}, view.Front, view.Options{Scale: frame.Scale}))
	name := "RIGHT END"
	if s.part.first.Grain == solid.Z {
		name = "UPPER END"
	}
	p.text(plane.At((frame.Box.Min.X+frame.Box.Max.X).Half(), frame.Box.Max.Y+3*mm), figureHeight, sheet.Middle, false, name)
}

// body is a turned solid with its least corner at the origin.
func (s partStack) body(turned solid.Solid) view.Body {
	least, _ := turned.Bounds()
	return view.Body{Solid: turned.Move(solid.Vec{X: -least.X, Y: -least.Y, Z: -least.Z}), Layer: sheet.Outline}
}

// beside2 writes a view's name over its upper left corner, where nothing stands yet.
func (p *page) beside2(frame dimension.Frame, name string) {
	for _, at := range []plane.Point{plane.At(frame.Box.Min.X, frame.Box.Max.Y+2*mm), plane.At(frame.Box.Min.X, frame.Box.Min.Y-2*mm-figureHeight), plane.At((frame.Box.Min.X + frame.Box.Max.X).Half(), frame.Box.Max.Y+2*mm)} {
		t := sheet.Text{Layer: sheet.Notes, At: at, Height: figureHeight, String: name, Advance: advance(name)}
		if p.clear(t) && within(dimension.TextBox(t), p.work) {
			p.over = append(p.over, t)
			return
		}
	}
	p.unplaced = append(p.unplaced, "the view's name "+name)
}

// rows are the dimensions of a face: the places along it from its left end, one row
// for each kind of work, and those across.
func (s partStack) rows(f face) layout {
	var l layout
	along, across := map[string][]length.Length{}, []length.Length{0, f.high}
	for _, c := range s.part.solid.Cuts {
		if i := s.part.faceOfCut(c); i < 0 || s.part.faces()[i] != f {
			continue
		}
		low, high := (solid.Solid{Blank: c.Prism}).Bounds()
		if c.For != "rabbet" && (low.X > 0 || high.X < s.part.length) {
			along[c.For] = append(along[c.For], low.X, high.X)
		}
		a, b := hole{y: low.Y, z: low.Z, width: s.part.width, thick: s.part.thickness}.shown(f), hole{y: high.Y, z: high.Z, width: s.part.width, thick: s.part.thickness}.shown(f)
		if min(a, b) > 0 || max(a, b) < f.high {
			across = append(across, a, b)
		}
	}
	for _, h := range s.part.holes() {
		if h.face == f.word {
			along[h.use] = append(along[h.use], h.along)
			across = append(across, h.shown(f))
		}
	}
	for _, use := range sortedKeys(along) {
		l.below = append(l.below, dimension.Row{At: append([]length.Length{0}, along[use]...), Style: dimension.Running, Label: capitals(use)})
	}
	if f.turns == 0 {
		l.below = append(l.below, dimension.Row{At: []length.Length{0, s.part.length}, Style: dimension.Overall})
	}
	l.left = []dimension.Row{{At: across, Style: dimension.Chain}}
	return l
}

// partNotes are the notes of a part's sheet.
func (p *page) partNotes(l laidPart) []string {
	f := p.format
	n := len(l.labels) * len(p.set.Hung)
	lines := []string{fmt.Sprintf("Part %s, %s: %d a leaf, %d in the set.", l.short(), l.first.Name, len(l.labels), n),
		fmt.Sprintf("Blank %s × %s × %s, %s.", f(l.length), f(l.width), f(l.thickness), l.first.Material),
		"Sizes along run from the left end, across", "from the lower line of each view."}
	if l.first.Role == door.StileRole {
		lines = append(lines, "The stile's foot is at the left.")
	}
	if p.set.Leaf.Rabbet.Kind != door.Groove {
		lines = append(lines, "Rabbets are milled in the assembled leaf;", "they are dimensioned on the leaf's back.")
	}
	return lines
}
