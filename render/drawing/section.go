package drawing

import (
	"cmp"
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// sections draws the plan of the set, the horizontal section where two leaves
// overlap, and the vertical section.
func sections(p *page) {
	upright := p.work
	upright.Min.X += p.work.Width() * 58 / 100
	p.vertical(upright)
	across := p.work
	across.Max.X = upright.Min.X - gutter
	plan, joint := across, across
	plan.Min.Y = across.Max.Y - across.Height()*42/100
	joint.Max.Y = plan.Min.Y - gutter
	p.plan(plan)
	p.overlapSection(joint)
}

// cutHeight is the height above a leaf's bottom at which horizontal sections
// are taken: through the lite in the middle, but not a solid panel where there is
// another.
func cutHeight(leaf door.Leaf) length.Length {
	for _, i := range []int{len(leaf.Lites) / 2, len(leaf.Lites) - 1, 0} {
		if !leaf.Lites[i].Solid {
			return cutIn(leaf, leaf.Lites[i])
		}
	}
	return cutIn(leaf, leaf.Lites[len(leaf.Lites)/2])
}

// cutIn is the height at which a lite is cut: through what holds its panel at a
// stile, nearest to the lite's middle, else through the middle.
func cutIn(leaf door.Leaf, lite door.Lite) length.Length {
	middle := (lite.Sight.Min.Y + lite.Sight.Max.Y).Half()
	at, off := middle, length.Longest
	for _, c := range leaf.Screws {
		if (c.For == "washer" || c.For == "stop") && c.Head.Z == c.Tip.Z && c.Head.Z > lite.Sight.Min.Y && c.Head.Z < lite.Sight.Max.Y && (c.Head.Z-middle).Abs() < off {
			at, off = c.Head.Z, (c.Head.Z - middle).Abs()
		}
	}
	return at
}

// plan draws all leaves from above, cut.
func (p *page) plan(zone plane.Box) {
	s := p.set
	front := s.Track.Centre[door.Front] - s.Leaf.Thickness.Half()
	back := s.Track.Centre[door.Back] + s.Leaf.Thickness.Half()
	right := s.Opening.Right[0].X
	for _, at := range s.Opening.Right {
		right = max(right, at.X)
	}
	box := plane.BoxOf(plane.At(min(0, s.Opening.Left[0].X, s.Opening.Left[1].X), front), plane.At(right, back))
	l := layout{box: box, title: "SECTION A, PLAN CUT THROUGH THE LITES"}
	for _, h := range s.Hung {
		row := dimension.Row{At: []length.Length{h.At.X, h.At.X + s.Leaf.Width}, Style: dimension.Chain}
		if h.Channel == door.Front {
			l.below = append(l.below[:0:0], append(l.below, row)...)
		} else {
			l.above = append(l.above, row)
		}
	}
	l.below, l.above = together(l.below, "FRONT TRACK"), together(l.above, "BACK TRACK")
	frame := p.place(zone, l)
	lines, cut := view.Section(setBodies(s), solid.Z, s.Hung[0].At.Z+cutHeight(s.Leaf), view.Options{Scale: frame.Scale, NoHatch: true})
	p.draw(frame, lines)
	for _, region := range cut {
		p.fill(frame, region, sheet.Hatch, sheet.Tint)
	}
	for _, x := range [][]plane.Point{s.Opening.Left, s.Opening.Right} {
		p.stroke(frame, sheet.Opening, sheet.Wide, sheet.Continuous, plane.At(x[0].X, box.Min.Y), plane.At(x[0].X, box.Max.Y))
	}
}

// together makes one chain of rows on one line.
func together(rows []dimension.Row, label string) []dimension.Row {
	if len(rows) == 0 {
		return nil
	}
	one := dimension.Row{Style: dimension.Chain, Label: label}
	for _, row := range rows {
		one.At = append(one.At, row.At...)
	}
	return []dimension.Row{one}
}

// firstOverlap is the index of the first leaf whose right neighbour hangs on
// the other track.
func firstOverlap(s door.Set) int {
	for i := range len(s.Hung) - 1 {
		if s.Hung[i].Channel != s.Hung[i+1].Channel {
			return i
		}
	}
	return 0
}

// overlapSection draws the horizontal section where the first two leaves
// overlap.
func (p *page) overlapSection(zone plane.Box) {
	s := p.set
	i := firstOverlap(s)
	a, b := s.Hung[i].At.X+s.Leaf.Width, s.Hung[i+1].At.X // right edge of the left leaf, left edge of the right one
	show := s.Leaf.Stile + s.Leaf.Rabbet.Width + 40*mm
	box := plane.BoxOf(plane.At(min(b, a-show), s.Track.Centre[door.Front]-s.Leaf.Thickness.Half()), plane.At(max(a, b+show), s.Track.Centre[door.Back]+s.Leaf.Thickness.Half()))
	box.Min.X, box.Max.X = min(a-show, b-20*mm), max(b+show, a+20*mm)
	leftStile := []length.Length{a - s.Leaf.Stile, a}
	rightStile := []length.Length{b, b + s.Leaf.Stile}
	lower, upper := leftStile, rightStile
	if s.Hung[i].Channel == door.Back {
		lower, upper = rightStile, leftStile
	}
	faces := []length.Length{}
	for _, c := range s.Track.Centre {
		faces = append(faces, c-s.Leaf.Thickness.Half(), c+s.Leaf.Thickness.Half())
	}
	l := layout{box: box, title: "OVERLAP, PART OF SECTION A", below: []dimension.Row{{At: []length.Length{b, a}, Style: dimension.Chain, Label: "OVERLAP"}, {At: lower}},
		above: []dimension.Row{{At: upper}}, right: []dimension.Row{{At: faces, Style: dimension.Chain}}}
	frame := p.place(zone, l)
	lines, _ := view.Section(near(setBodies(s), solid.Z, box), solid.Z, s.Hung[0].At.Z+cutHeight(s.Leaf), view.Options{Scale: frame.Scale})
	p.draw(frame, window(lines, box))
	p.cutScrews(frame, solid.Z, cutHeight(s.Leaf), box, s.Hung[i:i+2])
	for _, x := range []length.Length{box.Min.X, box.Max.X} {
		for _, h := range s.Hung[i : i+2] {
			if h.At.X < x && x < h.At.X+s.Leaf.Width {
				p.breakLine(frame, plane.At(x, h.At.Y+s.Leaf.Panel.From), plane.At(x, h.At.Y+s.Leaf.Panel.To()))
			}
		}
	}
	p.detailMark(frame, plane.At(a-s.Leaf.Stile, s.Hung[i].At.Y+s.Leaf.Panel.From), 1)
	p.roomSide(frame)
}

// roomSide says on which side of a section the room is: below it, or left of
// it where lines run below.
func (p *page) roomSide(frame dimension.Frame) {
	const words = "ROOM SIDE"
	wide := lettering.Advance(words, figureHeight)
	for _, at := range []plane.Point{frame.Box.Min.Add(0, -5*mm/2-figureHeight), frame.Box.Min.Add(-wide-2*mm, 0)} {
		t := sheet.Text{Layer: sheet.Notes, At: at, Height: figureHeight, String: words, Advance: wide}
		if p.clear(t) && within(dimension.TextBox(t), p.work) {
			p.over = append(p.over, t)
			return
		}
	}
	p.unplaced = append(p.unplaced, "room side (below the horizontal section)")
}

// breakLine draws where a view is broken off: a narrow line with a kink, a
// little longer than what it breaks.
func (p *page) breakLine(frame dimension.Frame, a, b plane.Point) {
	from, to := frame.Paper(a), frame.Paper(b)
	const past, kink = 2 * mm, mm
	var path plane.Path
	add := func(points ...plane.Point) {
		for i := 1; i < len(points); i++ {
			path = append(path, plane.Line(points[i-1], points[i]))
		}
	}
	if from.X == to.X {
		mid := (from.Y + to.Y).Half()
		add(from.Add(0, -past), plane.At(from.X, mid-kink), plane.At(from.X-kink, mid-kink/2), plane.At(from.X+kink, mid+kink/2), plane.At(from.X, mid+kink), to.Add(0, past))
	} else {
		mid := (from.X + to.X).Half()
		add(from.Add(-past, 0), plane.At(mid-kink, from.Y), plane.At(mid-kink/2, from.Y+kink), plane.At(mid+kink/2, from.Y-kink), plane.At(mid+kink, from.Y), to.Add(past, 0))
	}
	p.lines = append(p.lines, sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Narrow, Path: path})
}

// A band is a stretch of height the vertical section shows.
type band struct {
	from, to length.Length
	title    string
	chain    []length.Length // heights dimensioned on its right
	rail     length.Length   // width of its rail
	above    bool            // carries the sizes front to back
}

// vertical draws the vertical section through the first leaf on the front
// track, broken between head, cross rail and floor.
func (p *page) vertical(zone plane.Box) {
	one, i := p.bandScale(zone, p.bands(1))
	if two, k := p.bandScale(zone, p.bands(2)); k <= i {
		one = two // another cross rail costs no scale
	}
	if i < len(p.scalesTaken) {
		one()
		return
	}
	p.err = fmt.Errorf("the vertical section fits no standard scale on %s paper: name a larger paper", p.paper.Name)
}

// bandScale finds the largest scale at which bands fit a zone: how to draw them, and
// the scale's place among the standard ones, their number when there is none.
func (p *page) bandScale(zone plane.Box, bands []band) (draw func(), at int) {
	s := p.set
	var total length.Length
	for _, b := range bands {
		total += b.to - b.from
	}
	box := plane.BoxOf(plane.At(-15*mm, 0), plane.At(s.Track.Setback+s.Track.Depth+15*mm, total))
	for i, scale := range p.scalesTaken {
		gap := bandGap
		if scale.OnPaper(slimmest(bands)) < figureRoom || p.set.Written == "dual" { // figures stand outside
			gap *= 2
		}
		need := scale.OnPaper(total) + length.Length(len(bands)-1)*gap + titleRoom + p.headRoom(sheet.Scale{Paper: scale.Paper, Real: scale.Real}) + footRoom
		if scale.Paper > scale.Real || need > zone.Height() || scale.OnPaper(box.Width())+60*mm > zone.Width() {
			continue
		}
		return func() {
			p.bandsAt(zone, bands, box, gap, sheet.Scale{Paper: scale.Paper, Real: scale.Real}, scale.OnPaper)
			p.caption(plane.At((zone.Min.X+zone.Max.X).Half(), zone.Min.Y), "SECTION B, UPRIGHT, BROKEN", titleHeight, scale)
		}, i
	}
	return nil, len(p.scalesTaken)
}

// headRoom is what the sizes above the head need on the paper: more where figures
// are in two units, and at small scales, where they stand outside their arrows.
func (p *page) headRoom(scale sheet.Scale) length.Length {
	switch {
	case p.set.Written == "dual":
		return 46 * mm
	case scale.Real > 4*scale.Paper:
		return 37 * mm
	}
	return 31 * mm
}

// bandGap is left between the bands, for the breaks and for figures outside.
const bandGap = 15 * mm

// figureRoom is what a figure needs inside its arrows; a slimmer rail's stands
// outside, and those of two bands must not meet.
const figureRoom = 14 * mm

// slimmest is the least of the rails the bands show.
func slimmest(bands []band) length.Length {
	least := length.Longest
	for _, b := range bands {
		least = min(least, b.rail)
	}
	return least
}

// footRoom is what the floor gap's figure needs below the floor.
const footRoom = 15 * mm

// cutX is where the vertical section is taken: through a washer on the rails if
// there is one, else through the middle of the lites.
func cutX(leaf door.Leaf) length.Length {
	if at := leaf.Lites[0].Washers[door.Bottom]; len(at) > 0 {
		return at[len(at)/2]
	}
	return leaf.Width.Half()
}

// bands are the stretches shown, from the top down, with at most so many cross
// rails, the widest among them.
func (p *page) bands(most int) []band {
	s := p.set
	leaf, bottom := s.Leaf, s.Hung[0].At.Z
	show := s.Leaf.Rabbet.Width + 25*mm
	top := leaf.Rails[len(leaf.Rails)-1]
	head := band{from: bottom + top.From - show, to: s.Opening.Head, title: "HEAD", rail: top.Width(), chain: []length.Length{bottom + top.From, bottom + top.To, s.Opening.Head}, above: true}
	low := leaf.Rails[0]
	foot := band{from: min(0, p.floorUnder()), to: bottom + low.To + show, title: "FLOOR", rail: low.Width(), chain: []length.Length{p.floorUnder(), bottom, bottom + low.To}}
	if len(leaf.Rails) < 3 {
		return []band{head, foot}
	}
	shown := []band{head}
	for _, mid := range crossShown(leaf, most) {
		shown = append(shown, band{from: bottom + mid.From - show, to: bottom + mid.To + show, title: "CROSS RAIL " + mid.Label, rail: mid.Width(), chain: []length.Length{bottom + mid.From, bottom + mid.To}})
	}
	return append(shown, foot)
}

// crossShown are the cross rails a section shows, from the top down: of each width
// the one nearest to the middle, the widest first, at most so many.
func crossShown(leaf door.Leaf, most int) []door.Rail {
	cross := slices.Clone(leaf.Rails[1 : len(leaf.Rails)-1])
	middle := leaf.Height.Half()
	slices.SortStableFunc(cross, func(a, b door.Rail) int {
		return cmp.Or(cmp.Compare(b.Width(), a.Width()), cmp.Compare((a.Centre()-middle).Abs(), (b.Centre()-middle).Abs()))
	})
	cross = slices.CompactFunc(cross, func(a, b door.Rail) bool { return a.Width() == b.Width() })
	cross = cross[:min(most, len(cross))]
	slices.SortFunc(cross, func(a, b door.Rail) int { return cmp.Compare(b.From, a.From) })
	return cross
}

// floorUnder is the floor's height under the vertical section.
func (p *page) floorUnder() length.Length {
	h := p.sectioned()
	return p.set.Opening.FloorAt(h.At.X + cutX(p.set.Leaf))
}

// sectioned is the leaf the vertical section goes through: the first on the
// front track.
func (p *page) sectioned() door.Hung {
	for _, h := range p.set.Hung {
		if h.Channel == door.Front {
			return h
		}
	}
	return p.set.Hung[0]
}

// bandsAt draws the bands one below another.
func (p *page) bandsAt(zone plane.Box, bands []band, box plane.Box, gap length.Length, scale sheet.Scale, onPaper func(length.Length) length.Length) {
	s, h := p.set, p.sectioned()
	bodies := setBodies(s)
	left := zone.Min.X + (zone.Width() - onPaper(box.Width())).Half() - 10*mm
	y := zone.Max.Y - p.headRoom(scale)
	for i, b := range bands {
		high := onPaper(b.to - b.from)
		part := plane.BoxOf(plane.At(box.Min.X, b.from), plane.At(box.Max.X, b.to))
		frame := dimension.Frame{Box: plane.BoxOf(plane.At(left, y-high), plane.At(left+onPaper(box.Width()), y)), Origin: part.Min, Scale: scale}
		l := layout{box: part, right: []dimension.Row{{At: b.chain, Style: dimension.Chain}}}
		face := s.Track.Centre[door.Front] - s.Leaf.Thickness.Half()
		if b.above {
			l.above = []dimension.Row{{At: []length.Length{face, face + s.Leaf.Thickness}}, {Label: "FROM THE FRONT", At: []length.Length{0, s.Track.Setback, s.Track.Centre[door.Front], s.Track.Centre[door.Back], s.Track.Setback + s.Track.Depth}}}
		}
		p.over = append(p.over, p.dimensions(frame, l)...)
		lines, _ := view.Section(near(bodies, solid.X, part), solid.X, h.At.X+cutX(s.Leaf), view.Options{Scale: scale})
		p.draw(frame, window(lines, part))
		p.cutScrews(frame, solid.X, cutX(s.Leaf), part, []door.Hung{h})
		p.beyond(frame, b, h)
		p.text(plane.At(frame.Box.Min.X-3*mm, (frame.Box.Min.Y+frame.Box.Max.Y).Half()), figureHeight, sheet.End, false, b.title)
		if i > 0 {
			p.breakLine(frame, plane.At(h.At.Y, b.to), plane.At(h.At.Y+s.Leaf.Thickness, b.to))
		}
		if i < len(bands)-1 {
			p.breakLine(frame, plane.At(h.At.Y, b.from), plane.At(h.At.Y+s.Leaf.Thickness, b.from))
		}
		y -= high + gap
	}
}

// beyond draws the stile behind the cut, head and floor.
func (p *page) beyond(frame dimension.Frame, b band, h door.Hung) {
	s := p.set
	part := plane.BoxOf(plane.At(-length.Metre, b.from), plane.At(length.Metre, b.to))
	from, to := max(b.from, h.At.Z), min(b.to, h.At.Z+s.Leaf.Height)
	for _, y := range []length.Length{h.At.Y, h.At.Y + s.Leaf.Thickness} {
		p.stroke(frame, sheet.Outline, sheet.Narrow, sheet.Continuous, plane.At(y, from), plane.At(y, to))
	}
	reach := s.Track.Setback + s.Track.Depth + 15*mm
	if b.to == s.Opening.Head {
		p.hangerSection(frame, h, part)
		p.stroke(frame, sheet.Opening, sheet.Wide, sheet.Continuous, plane.At(-15*mm, b.to), plane.At(reach, b.to))
	}
	if floor := p.floorUnder(); b.from <= floor {
		p.stroke(frame, sheet.Opening, sheet.Wide, sheet.Continuous, plane.At(-15*mm, floor), plane.At(reach, floor))
	}
}

// hangerSection draws the hanger of the leaf, cut at its own middle, narrow: it
// lies beyond the plane of the section.
func (p *page) hangerSection(frame dimension.Frame, h door.Hung, part plane.Box) {
	s := p.set
	at := solid.Vec{X: h.At.X, Y: s.Track.Centre[h.Channel], Z: h.At.Z + s.Leaf.Height}
	var bodies []view.Body
	for _, piece := range s.Track.Hanger {
		bodies = append(bodies, view.Body{Solid: piece.Move(at), Layer: sheet.Hardware, Hatch: view.NoHatch, Label: "hanger"})
	}
	lines, _ := view.Section(bodies, solid.X, at.X+mm, view.Options{Scale: frame.Scale, NoHatch: true})
	for i := range lines {
		lines[i].Weight = sheet.Narrow
	}
	p.draw(frame, window(lines, part))
}

// cutScrews draws the washer screws of leaves that lie in a section's plane, at
// that coordinate of the leaf, and in its window.
func (p *page) cutScrews(frame dimension.Frame, across solid.Axis, at length.Length, box plane.Box, leaves []door.Hung) {
	for _, h := range leaves {
		for _, c := range p.set.Leaf.Screws {
			head, tip := c.Head.Add(h.At).Flat(across), c.Tip.Add(h.At).Flat(across)
			if (c.For == "washer" || c.For == "stop") && c.Head.Along(across) == at && c.Tip.Along(across) == at && box.Holds(head) && box.Holds(tip) {
				p.screw(frame, head, tip, c.Diameter)
			}
		}
	}
}
