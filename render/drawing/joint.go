package drawing

import (
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/view"
)

// jointsShown are the meetings drawn enlarged: a cross rail's left end, or the
// bottom rail's where there is none; the bottom rail's own where its joint has
// another shape at the corner; and a muntin's foot.
func jointsShown(leaf door.Leaf) []door.Meeting {
	var shown []door.Meeting
	rails := 0
	for _, m := range leaf.Meetings {
		switch {
		case m.Axis == solid.X && m.Way > 0:
			corner, cross := rails == 0, rails == 1 && leaf.Rows() > 1
			rails++
			if corner && (leaf.Rows() == 1 || m.Kind != door.PocketScrew && m.Kind != door.DowelJoint && m.Kind != door.LooseTenon) || cross {
				shown = append(shown, m)
			}
		case m.Axis == solid.Z && m.Way > 0 && !slices.ContainsFunc(shown, func(s door.Meeting) bool { return s.Axis == solid.Z }):
			shown = append(shown, m)
		}
	}
	return shown
}

// jointName is a joint in words, and where it is.
func jointName(m door.Meeting) string {
	words := map[string]string{door.PocketScrew: "pocket-screw joint", door.DowelJoint: "dowel joint", door.LooseTenon: "loose-tenon joint",
		door.MortiseAndTenon: "mortise and tenon", door.HalfLap: "half-lap", door.Bridle: "bridle joint"}
	return words[m.Kind] + ", " + m.Member + " and " + m.Into
}

// jointSection draws a joint cut along its member, square to the faces.
func jointSection(m door.Meeting) detail {
	if m.Kind == door.PocketScrew {
		return func(p *page, zone plane.Box) { p.pocketSection(zone, m) }
	}
	return func(p *page, zone plane.Box) {
		leaf := p.set.Leaf
		across := across(m)
		at := p.through(m)
		box := windowOf(m, m.Deep, memberShown, 0, leaf.Thickness)
		bodies := near(near(leafBodies(leaf, false), across, box), solid.Y, sideBox(m, m.Deep))
		_, cut := view.Section(bodies, across, at, view.Options{})
		as, ys := corners(cut, box)
		if m.Axis == solid.Z {
			as, ys = ys, as // cut along X: the thickness runs across the view
		}
		l := layout{box: box, title: capitals(jointName(m)) + ", SECTION", largest: 1}
		if m.Axis == solid.X {
			l.below, l.left = []dimension.Row{{At: as, Style: dimension.Chain}}, []dimension.Row{{At: ys, Style: dimension.Chain}}
		} else {
			l.left, l.below = []dimension.Row{{At: as, Style: dimension.Chain}}, []dimension.Row{{At: ys, Style: dimension.Chain}}
		}
		frame := p.place(zone, l)
		if p.err != nil {
			return
		}
		lines, _ := view.Section(bodies, across, at, view.Options{Scale: frame.Scale})
		p.draw(frame, window(lines, box))
		if m.Axis == solid.X {
			p.breakLine(frame, plane.At(box.Max.X, 0), plane.At(box.Max.X, leaf.Thickness))
		} else {
			p.breakLine(frame, plane.At(0, box.Max.Y), plane.At(leaf.Thickness, box.Max.Y))
		}
	}
}

// memberShown is how much of a member is drawn beyond its shoulder.
const memberShown = 45 * mm

// across is the axis that a section along a member is taken across.
func across(m door.Meeting) solid.Axis {
	if m.Axis == solid.X {
		return solid.Z
	}
	return solid.X
}

// windowOf is what a section of a joint shows: into parts of the other part and
// beyond parts of the member, between two faces.
func windowOf(m door.Meeting, into, beyond, from, to length.Length) plane.Box {
	a, b := m.Point(-into, from, 0), m.Point(beyond, to, 0)
	return plane.BoxOf(a.Flat(across(m)), b.Flat(across(m)))
}

// sideBox is the same, seen from the front, over the member's whole width.
func sideBox(m door.Meeting, into length.Length) plane.Box {
	return plane.BoxOf(m.Point(-into, 0, m.From).Flat(solid.Y), m.Point(memberShown, 0, m.To).Flat(solid.Y))
}

// through is where a section along a member is taken: through a dowel, or through
// the middle of the joint.
func (p *page) through(m door.Meeting) length.Length {
	area := sideBox(m, m.Deep)
	for _, part := range p.set.Leaf.Hardware {
		least, most := part.Solid.Bounds()
		middle := plane.At((least.X + most.X).Half(), (least.Z + most.Z).Half())
		if (part.Role == door.DowelRole || part.Role == door.TenonRole) && area.Holds(middle) {
			if m.Axis == solid.X {
				return middle.Y
			}
			return middle.X
		}
	}
	return (m.From + m.Low + m.To - m.High).Half()
}

// corners are the places of a section's corners inside a box, across and up, each
// once and in order, with the box's own where they are a part's.
func corners(cut []plane.Region, box plane.Box) (xs, ys []length.Length) {
	for _, region := range cut {
		for _, path := range region {
			if path.Area() < 0 {
				continue // a hole of its own, which is no part of the joint
			}
			for _, e := range path {
				if e.From.X >= box.Min.X && e.From.X <= box.Max.X && e.From.Y >= box.Min.Y && e.From.Y <= box.Max.Y {
					xs, ys = append(xs, e.From.X), append(ys, e.From.Y)
				}
			}
		}
	}
	return distinct(xs), distinct(ys)
}

// distinct are places in order, those closer than a tenth of a millimetre to the one
// before left out.
func distinct(at []length.Length) []length.Length {
	slices.Sort(at)
	var kept []length.Length
	for _, x := range at {
		if len(kept) == 0 || x-kept[len(kept)-1] >= mm/10 {
			kept = append(kept, x)
		}
	}
	return kept
}

// jointFace draws a joint from the front with its covered edges.
func jointFace(m door.Meeting) detail {
	return func(p *page, zone plane.Box) {
		leaf := p.set.Leaf
		const past = 15 * mm
		a, b := m.Point(-m.Deep, 0, m.From-past), m.Point(memberShown, 0, m.To+past)
		box := plane.BoxOf(a.Flat(solid.Y), b.Flat(solid.Y))
		box.Min.X, box.Min.Y = max(0, box.Min.X), max(0, box.Min.Y)
		xs, zs := jointEdges(leaf, m, box)
		l := layout{box: box, title: capitals(jointName(m)) + ", FROM THE FRONT", largest: 1,
			below: []dimension.Row{{At: xs, Style: dimension.Chain}}, left: []dimension.Row{{At: zs, Style: dimension.Chain}}}
		frame := p.place(zone, l)
		if p.err != nil {
			return
		}
		var bodies []view.Body
		for _, body := range near(leafBodies(leaf, true), solid.Y, box) {
			if !body.SeeThrough {
				bodies = append(bodies, body)
			}
		}
		lines := view.Elevation(bodies, view.Front, view.Options{Scale: frame.Scale, HiddenFor: []string{"", "mortise", "tenon", "dowel", "half-lap", "bridle", "shoulder", "cheek", "haunch", "lap"}})
		p.draw(frame, window(lines, box))
	}
}

// jointEdges are the places of the edges of one joint seen from the front: the two
// parts' own and those of the work on them, in a box.
func jointEdges(leaf door.Leaf, m door.Meeting, box plane.Box) (xs, zs []length.Length) {
	take := func(least, most solid.Vec) {
		for _, v := range []solid.Vec{least, most} {
			if v.X >= box.Min.X && v.X <= box.Max.X {
				xs = append(xs, v.X)
			}
			if v.Z >= box.Min.Y && v.Z <= box.Max.Y {
				zs = append(zs, v.Z)
			}
		}
	}
	area := sideBox(m, m.Deep)
	inside := func(least, most solid.Vec) bool {
		return area.Meets(plane.BoxOf(least.Flat(solid.Y), most.Flat(solid.Y)))
	}
	for _, part := range leaf.Parts {
		if part.Label != m.Member && part.Label != m.Into {
			continue
		}
		least, most := part.Solid.Bounds()
		take(least, most)
		for _, c := range part.Solid.Cuts {
			low, high := (solid.Solid{Blank: c.Prism}).Bounds()
			if !slices.Contains([]string{"rabbet", "groove", "pull", "guide", "roundover", "chamfer"}, c.For) && inside(low, high) {
				take(low, high)
			}
		}
	}
	for _, part := range leaf.Hardware {
		low, high := part.Solid.Bounds()
		if (part.Role == door.DowelRole || part.Role == door.TenonRole) && inside(low, high) {
			take(low, high)
		}
	}
	return distinct(append(xs, shoulder(m, solid.X)...)), distinct(append(zs, shoulder(m, solid.Z)...))
}

// shoulder is the shoulder's place, if the member runs along the axis.
func shoulder(m door.Meeting, a solid.Axis) []length.Length {
	if m.Axis == a {
		return []length.Length{m.At}
	}
	return nil
}

// pocketSection draws a pocket-screw joint, cut through a hole.
func (p *page) pocketSection(zone plane.Box, m door.Meeting) {
	leaf, f := p.set.Leaf, p.format
	pocket := leaf.Joint.Pocket
	screw := leaf.Screws[0]
	for _, c := range leaf.Screws {
		if at := c.Head.Along(across(m)); c.For == "pocket" && at > m.From && at < m.To {
			screw = c
			break
		}
	}
	cut := across(m)
	box := windowOf(m, min(m.Deep, pocket.Bite+12*mm), pocket.Reach+10*mm, 0, leaf.Thickness)
	along := []length.Length{m.At - m.Way*pocket.Bite, m.At, m.At + m.Way*pocket.Reach}
	thick, halves := []length.Length{0, leaf.Thickness}, []length.Length{0, leaf.Thickness.Half(), leaf.Thickness}
	l := layout{box: box, title: capitals(jointName(m)) + ", SECTION", largest: 1}
	if m.Axis == solid.X {
		l.below = []dimension.Row{{At: along, Style: dimension.Chain}}
		l.left = []dimension.Row{{At: []length.Length{0, pocket.Tip}, Style: dimension.Chain}, {At: thick, Style: dimension.Overall}}
		l.right = []dimension.Row{{At: halves, Style: dimension.Chain}}
	} else {
		l.left = []dimension.Row{{At: along, Style: dimension.Chain}}
		l.below = []dimension.Row{{At: []length.Length{0, pocket.Tip}, Style: dimension.Chain}, {At: thick, Style: dimension.Overall}}
	}
	room := zone
	room.Min.Y += 2 * linePitch
	frame := p.place(room, l)
	if p.err != nil {
		return
	}
	lines, _ := view.Section(near(leafBodies(leaf, false), cut, box), cut, screw.Head.Along(cut), view.Options{Scale: frame.Scale})
	p.draw(frame, window(lines, box))
	if m.Axis == solid.X {
		for _, x := range []length.Length{box.Min.X, box.Max.X} {
			p.breakLine(frame, plane.At(x, 0), plane.At(x, leaf.Thickness))
		}
	}
	p.screw(frame, screw.Head.Flat(cut), screw.Tip.Flat(cut), screw.Diameter)
	p.text(plane.At((zone.Min.X+zone.Max.X).Half(), zone.Min.Y+mm), figureHeight, 1, false,
		fmt.Sprintf("Pocket %s at %g° to the face; screw %s; collar %s along the screw.", f(pocket.Diameter), pocket.Angle, f(pocket.Screw), f(pocket.Shoulder)))
}
