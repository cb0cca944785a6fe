package drawing

import (
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// headDetail draws the head with track, hanger and the tops of the leaves.
func (p *page) headDetail(zone plane.Box) {
	s := p.set
	t, h := s.Track, p.sectioned()
	top := h.At.Z + s.Leaf.Height
	box := plane.BoxOf(plane.At(-10*mm, top-30*mm), plane.At(t.Setback+t.Depth+10*mm, s.Opening.Head))
	if s.Fascia != nil {
		box.Min.Y = min(box.Min.Y, s.Opening.Head-s.Fascia.Height-5*mm)
	}
	l := layout{box: box, title: "HEAD AND TRACK, SECTION", largest: 1,
		right: []dimension.Row{{At: []length.Length{top, s.Opening.Head}, Style: dimension.Chain, Label: "HEAD DROP"}, {At: []length.Length{s.Opening.Head - t.Height, s.Opening.Head}, Style: dimension.Chain, Label: "TRACK"}},
		below: []dimension.Row{{At: []length.Length{0, t.Setback, t.Centre[door.Front], t.Centre[door.Back], t.Setback + t.Depth}, Style: dimension.Chain, Label: "FROM THE FRONT"}}}
	if s.Fascia != nil {
		l.below = append([]dimension.Row{{At: []length.Length{0, s.Fascia.Thickness}, Style: dimension.Chain, Label: "FASCIA"}}, l.below...)
		l.left = []dimension.Row{{At: []length.Length{s.Opening.Head - s.Fascia.Height, s.Opening.Head}, Style: dimension.Chain, Label: "FASCIA"}}
	}
	frame := p.place(zone, l)
	if p.err != nil || p.trial {
		return
	}
	lines, _ := view.Section(near(setBodies(s), solid.X, box), solid.X, h.At.X+cutX(s.Leaf), view.Options{Scale: frame.Scale})
	p.draw(frame, window(lines, box))
	p.hangerSection(frame, h, box)
	if s.Fascia == nil { // the plane of the opening's front, from which the sizes run
		p.stroke(frame, sheet.Opening, sheet.Narrow, sheet.Phantom, plane.At(0, box.Min.Y), plane.At(0, s.Opening.Head))
	}
	p.stroke(frame, sheet.Opening, sheet.Wide, sheet.Continuous, plane.At(box.Min.X, s.Opening.Head), plane.At(box.Max.X, s.Opening.Head))
	p.breakLine(frame, plane.At(h.At.Y, box.Min.Y), plane.At(h.At.Y+s.Leaf.Thickness, box.Min.Y))
}

// floorDetail draws the foot of a leaf over the floor, with the guide's groove.
func (p *page) floorDetail(zone plane.Box) {
	s := p.set
	h, floor := p.sectioned(), p.floorUnder()
	deep := length.Length(0)
	if s.Leaf.Guide != nil {
		deep = s.Leaf.Guide.Depth
	}
	front := h.At.Y
	box := plane.BoxOf(plane.At(front-10*mm, floor), plane.At(front+s.Leaf.Thickness+10*mm, h.At.Z+deep+25*mm))
	l := layout{box: box, title: "FLOOR, SECTION", largest: 1, right: []dimension.Row{{At: []length.Length{floor, h.At.Z}, Style: dimension.Chain, Label: "FLOOR GAP"}},
		below: []dimension.Row{{At: []length.Length{front, front + s.Leaf.Thickness}, Style: dimension.Overall}}}
	if g := s.Leaf.Guide; g != nil {
		l.left = []dimension.Row{{At: []length.Length{h.At.Z, h.At.Z + g.Depth}, Style: dimension.Chain, Label: "GUIDE GROOVE"}}
		l.below = append([]dimension.Row{{At: []length.Length{front, front + g.Front, front + g.Front + g.Width, front + s.Leaf.Thickness}, Style: dimension.Chain}}, l.below...)
	}
	frame := p.place(zone, l)
	if p.err != nil || p.trial {
		return
	}
	lines, _ := view.Section(near(setBodies(s), solid.X, box), solid.X, h.At.X+cutX(s.Leaf), view.Options{Scale: frame.Scale})
	p.draw(frame, window(lines, box))
	p.stroke(frame, sheet.Opening, sheet.Wide, sheet.Continuous, plane.At(box.Min.X, floor), plane.At(box.Max.X, floor))
	p.breakLine(frame, plane.At(front, box.Max.Y), plane.At(front+s.Leaf.Thickness, box.Max.Y))
}

// pullDetail draws the first flush pull's mortise, cut across.
func (p *page) pullDetail(zone plane.Box) {
	leaf := p.set.Leaf
	pull := leaf.Pulls[0]
	const past = 20 * mm
	left, right := pull.Centre.X-pull.Width.Half(), pull.Centre.X+pull.Width.Half()
	box := plane.BoxOf(plane.At(max(0, left-past), 0), plane.At(min(leaf.Width, right+past), leaf.Thickness))
	faces := []length.Length{0, leaf.Thickness}
	for _, other := range leaf.Pulls {
		switch {
		case other.Centre != pull.Centre:
		case other.Back:
			faces = append(faces, leaf.Thickness-other.Depth)
		default:
			faces = append(faces, other.Depth)
		}
	}
	outer := length.Length(0)
	if pull.Centre.X > leaf.Width.Half() {
		outer = leaf.Width
	}
	if near := min(left, leaf.Width-right); near < 3*past {
		box.Min.X, box.Max.X = max(0, left-max(past, near)), min(leaf.Width, right+max(past, near))
	}
	l := layout{box: box, title: "FLUSH PULL, SECTION", largest: 1, below: []dimension.Row{{At: []length.Length{left, right}, Style: dimension.Chain}},
		right: []dimension.Row{{At: distinct(faces), Style: dimension.Chain}}}
	if outer >= box.Min.X && outer <= box.Max.X {
		l.above = []dimension.Row{{At: []length.Length{outer, pull.Centre.X}, Style: dimension.Chain}}
	}
	frame := p.place(zone, l)
	if p.err != nil || p.trial {
		return
	}
	lines, _ := view.Section(near(leafBodies(leaf, false), solid.Z, box), solid.Z, pull.Centre.Y, view.Options{Scale: frame.Scale})
	p.draw(frame, window(lines, box))
}
