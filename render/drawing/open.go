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

// opened are the places of the leaves' left edges with all of them slid to the
// left, those on one track side by side.
func opened(s door.Set) []length.Length {
	next := [2]length.Length{s.Hung[0].At.X, s.Hung[0].At.X}
	gap, _ := s.Figure("hanging.meeting_gap")
	var at []length.Length
	for _, h := range s.Hung {
		at = append(at, next[h.Channel])
		next[h.Channel] += s.Leaf.Width + gap.Value
	}
	return at
}

// openAndKey draws the leaves slid to the left, and the key plan under them.
func (p *page) openAndKey(zone plane.Box) {
	if zone.Width() < leastShared/4 || zone.Height() <= 0 {
		p.unplaced = append(p.unplaced, "leaves slid open", "key plan")
		return
	}
	key, open := zone, zone
	key.Max.Y = zone.Min.Y + min(zone.Height()*40/100, 60*mm)
	open.Min.Y = key.Max.Y + gutter
	p.openView(open)
	p.keyPlan(key)
}

// maybe places a view where there is room for it, and says so where there is not.
func (p *page) maybe(zone plane.Box, l layout, name string) (dimension.Frame, bool) {
	frame := p.place(zone, l)
	if p.err == nil {
		return frame, true
	}
	p.err = nil
	p.unplaced = append(p.unplaced, name)
	return frame, false
}

// openView draws the set from the room with all leaves slid to the left.
func (p *page) openView(zone plane.Box) {
	s := p.set
	o := s.Opening
	right := o.Right[0].X
	box := plane.BoxOf(plane.At(o.Left[0].X, o.Floor[0].Y), plane.At(right, o.Head))
	at := opened(s)
	free := at[0]
	for _, x := range at {
		free = max(free, x+s.Leaf.Width)
	}
	l := layout{box: box, title: "LEAVES SLID TO THE LEFT", below: []dimension.Row{{At: []length.Length{free, right}, Style: dimension.Chain, Label: "FREE"}}}
	frame, fits := p.maybe(zone, l, "leaves slid open")
	if !fits || p.trial {
		return
	}
	leaf := leafBodies(s.Leaf, false)
	bodies := hardwareBodies(s, at)
	for i, h := range s.Hung {
		bodies = append(bodies, moved(leaf, solid.Vec{X: at[i], Y: h.At.Y, Z: h.At.Z})...)
	}
	p.draw(frame, view.Elevation(bodies, view.Front, view.Options{Scale: frame.Scale, NoHidden: true, NoBores: true}))
	p.opening(frame)
}

// keyPlan draws the leaves from above in their closed places, with their
// numbers and where the sections are taken.
func (p *page) keyPlan(zone plane.Box) {
	s := p.set
	back := s.Track.Centre[door.Back] + s.Leaf.Thickness.Half()
	box := plane.BoxOf(plane.At(s.Opening.Left[0].X, 0), plane.At(s.Opening.Right[0].X, back))
	const clear = 9 * mm // for the leaves' numbers and the section's letters
	room := zone
	room.Min.Y, room.Max.Y = zone.Min.Y+clear, zone.Max.Y-clear
	frame, fits := p.maybe(room, layout{box: box, title: "KEY PLAN", pad: clear}, "key plan")
	if !fits || p.trial {
		return
	}
	for _, x := range []length.Length{box.Min.X, box.Max.X} {
		p.stroke(frame, sheet.Opening, sheet.Wide, sheet.Continuous, plane.At(x, 0), plane.At(x, back))
	}
	p.stroke(frame, sheet.Opening, sheet.Narrow, sheet.Continuous, plane.At(box.Min.X, 0), plane.At(box.Max.X, 0))
	var names []func() // after the section's mark, which cannot give way
	for _, h := range s.Hung {
		p.stroke(frame, sheet.Outline, sheet.Wide, sheet.Continuous, h.At.Flat(solid.Z), plane.At(h.At.X+s.Leaf.Width, h.At.Y), plane.At(h.At.X+s.Leaf.Width, h.At.Y+s.Leaf.Thickness), plane.At(h.At.X, h.At.Y+s.Leaf.Thickness), h.At.Flat(solid.Z))
		y := frame.Paper(plane.At(0, 0)).Y - 3*mm/2 - figureHeight
		if h.Channel == door.Back {
			y = frame.Box.Max.Y + 3*mm/2
		}
		names = append(names, func() { p.keyName(frame, h, y) })
	}
	across := p.sectioned().At.X + cutX(s.Leaf)
	p.cutMark(frame, "B", plane.At(across, 0), plane.At(across, back))
	for _, name := range names {
		name()
	}
}

// keyName writes a leaf's name beside it in the key plan, where it is clear.
func (p *page) keyName(frame dimension.Frame, h door.Hung, y length.Length) {
	name := "leaf " + h.Label
	for _, share := range []length.Length{25, 75, 15, 85, 50} {
		x := frame.Paper(plane.At(h.At.X+p.set.Leaf.Width*share/100, 0)).X
		t := sheet.Text{Layer: sheet.Notes, At: plane.At(x, y), Height: figureHeight, Align: sheet.Middle, String: name, Advance: advance(name)}
		if p.clear(t) {
			p.over = append(p.over, t)
			return
		}
	}
	p.unplaced = append(p.unplaced, name)
}

// cutMark draws where a section is taken, from a to b of a view: a heavy stroke
// beyond each end, an arrow the way one looks, and the letter. Sections across are
// seen from above, upright ones towards the left.
func (p *page) cutMark(frame dimension.Frame, letter string, a, b plane.Point) {
	from, to := frame.Paper(a), frame.Paper(b)
	const off, long, arrow = mm, 5 * mm / 2, 3 * mm
	for i, at := range []plane.Point{from, to} {
		way := length.Length(2*i - 1)
		line, look := plane.Line(at.Add(way*off, 0), at.Add(way*(off+long), 0)), plane.At(0, -arrow)
		names := []plane.Point{plane.At(way*(off+long+5*mm/2), -figureHeight.Half()), plane.At(way*(off+3*mm/2), mm), plane.At(way*(off+long+5*mm/2), mm)}
		if from.X == to.X {
			line, look = plane.Line(at.Add(0, way*off), at.Add(0, way*(off+long))), plane.At(-arrow, 0)
			names = []plane.Point{plane.At(5*mm/2, way*(off+long.Half())-figureHeight.Half()), plane.At(3*mm, way*(off+long)-figureHeight.Half())}
		}
		tail := line.To
		head := plane.Polygon(tail.Add(look.X, look.Y), tail.Add(-look.Y/6, look.X/6), tail.Add(look.Y/6, -look.X/6))
		if !p.free(head.Bounds().Join(line.Bounds()).Grow(labelClear)) || !p.letter(at, letter, names) {
			p.unplaced = append(p.unplaced, "a mark "+letter+" of a section")
			continue
		}
		p.lines = append(p.lines, sheet.Stroke{Layer: sheet.CentreMark, Weight: sheet.Wide, Path: plane.Path{line}})
		p.fills = append(p.fills, sheet.Fill{Layer: sheet.CentreMark, Tone: sheet.Ink, Region: plane.Of(head)})
	}
}

// letter writes a letter at the first of some places about a point that is clear.
func (p *page) letter(about plane.Point, letter string, places []plane.Point) bool {
	for _, place := range places {
		t := sheet.Text{Layer: sheet.Notes, At: about.Add(place.X, place.Y), Height: figureHeight, Align: sheet.Middle, String: letter, Advance: advance(letter)}
		if p.clear(t) {
			p.over = append(p.over, t)
			return true
		}
	}
	return false
}
