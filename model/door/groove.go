package door

import (
	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// groove resolves the groove that holds the panels captive.
func (r *resolver) groove() {
	p, leaf := r.model.Panel.Groove, &r.set.Leaf
	rab := &leaf.Rabbet
	depth := r.grooveDepth(p.Depth)
	rab.Width = r.derive("rabbet.width", depth, "a groove's depth is what of a rabbet is its width", "groove.depth")
	room := r.sized("groove.room", "panel.groove.room", p.Room, grooveRoom)
	var front *length.Length
	if p.Front != nil {
		at := r.given("groove.front", "panel.groove.front", *p.Front)
		front = &at
	}
	r.grooveOf(&leaf.Panel, "groove", "panel.thickness", room, front)
	if leaf.SolidPanel != nil {
		r.grooveOf(leaf.SolidPanel, "groove.solid", "solid.thickness", room, front)
	}
	rab.Depth, rab.From = leaf.Panel.SeatTo-leaf.Panel.SeatFrom, leaf.Panel.SeatFrom
	rab.Front, rab.Back = rab.From, leaf.Thickness-leaf.Panel.SeatTo
	r.grooveRun(p.Run)
}

// grooveDepth is the groove's depth: as stated, else the usual one.
func (r *resolver) grooveDepth(stated *length.Length) length.Length {
	if stated != nil {
		return r.given("groove.depth", "panel.groove.depth", *stated)
	}
	source := houseRule
	if row, err := catalog.Rule("groove-depth"); err == nil {
		source = row.Source.String()
	}
	return r.assume("groove.depth", grooveDepth.in(r.units), grooveDepth.reason, source)
}

// grooveOf resolves the groove of one sheet: as wide as the sheet and its room.
func (r *resolver) grooveOf(panel *Panel, name, sheet string, room length.Length, front *length.Length) {
	wide := r.derive(name+".width", panel.Thickness+room, "panel thickness plus room", sheet, "groove.room")
	if front != nil {
		panel.SeatFrom = *front
	} else {
		panel.SeatFrom = r.derive(name+".front", (r.set.Leaf.Thickness - wide).Half(), "groove centred: half of thickness less its width", "leaf.thickness", name+".width")
	}
	panel.SeatTo = panel.SeatFrom + wide
}

// grooveRun resolves how the groove runs in the stiles: from end to end, or
// from lite to lite with the round ends a bit leaves.
func (r *resolver) grooveRun(stated string) {
	leaf, joint := &r.set.Leaf, r.model.Leaf.Joint.Kind
	solid := leaf.SolidPanel
	alike := solid == nil || solid.Thickness == leaf.Panel.Thickness
	leaf.Rabbet.Through = stated == "through" || stated == "" && joint == MortiseAndTenon && alike
	switch {
	case !leaf.Rabbet.Through:
		widest := leaf.Rabbet.Depth
		if solid != nil {
			widest = max(widest, solid.SeatTo-solid.SeatFrom)
		}
		leaf.Rabbet.Ends = r.derive("groove.ends", widest.Half(), "half the groove's width: the round end that a straight bit leaves beyond the lite's walls", "groove.width")
	case !alike:
		r.stop("panel.groove.run", RuleGrooveRun, "a groove from end to end of a stile has one width; the panels are %v and %v thick: stop the grooves, or make the panels alike", leaf.Panel.Thickness, solid.Thickness)
	case joint != MortiseAndTenon:
		r.warn("panel.groove.run", RuleGrooveRun, "a groove %v deep from end to end of the stiles crosses every %s joint and shows at the leaf's top and bottom; stopped grooves leave the wood there", leaf.Rabbet.Width, joint)
	}
}

// grooveLips checks the wood before and behind the grooves.
func (r *resolver) grooveLips(lip length.Length) {
	leaf := r.set.Leaf
	for _, panel := range leaf.panels() {
		wide := panel.SeatTo - panel.SeatFrom
		front, back := panel.SeatFrom, leaf.Thickness-panel.SeatTo
		if min(front, back) >= lip {
			continue
		}
		if most := leaf.Thickness - 2*lip; wide > most {
			r.stop("panel.groove.room", RuleRabbetDeep, "a groove %v wide in a frame %v thick leaves %v on both sides together; each side needs at least %v: up to %v wide", wide, leaf.Thickness, front+back, lip, most)
			return
		}
		r.stop("panel.groove.front", RuleRabbetDeep, "a groove %v wide, %v from the front of a frame %v thick, leaves %v and %v beside it; each side needs at least %v: %v to %v from the front", wide, front, leaf.Thickness, front, back, lip, lip, leaf.Thickness-lip-wide)
		return
	}
}

// groove mills the grooves of a lite into the members round it. One that runs
// a member's whole length is milled once.
func (b *bench) groove(lite Lite, milled map[string]bool) {
	panel := b.leaf.PanelOf(lite)
	wall := lite.Sight.Grow(b.leaf.Rabbet.Width)
	for _, side := range []Side{Left, Right, Bottom, Top} {
		m := b.beside(lite, side)
		whole := b.groovedWhole(m)
		if key := m.label + side.String(); whole && milled[key] {
			continue
		} else {
			milled[key] = true
		}
		low, high := wall.Min.Y, wall.Max.Y
		if m.grain == solid.X {
			low, high = wall.Min.X, wall.Max.X
		}
		if whole {
			low, high = m.least.Along(m.grain), m.most.Along(m.grain)
		} else {
			ends := (panel.SeatTo - panel.SeatFrom).Half()
			low, high = low-ends, high+ends
		}
		m.cut(b.grooveCut(lite, side, panel, low, high, whole), "groove")
	}
}

// grooveCut is what is milled along one side of a lite, from low to high along
// the member.
func (b *bench) grooveCut(lite Lite, side Side, panel Panel, low, high length.Length, whole bool) solid.Prism {
	wide, sight := b.leaf.Rabbet.Width, lite.Sight
	shape := func(box plane.Box) plane.Region {
		if whole {
			return plane.Region{box.Path()}
		}
		return plane.Region{plane.Slot(box)}
	}
	upright := shape(plane.BoxOf(plane.At(panel.SeatFrom, low), plane.At(panel.SeatTo, high)))
	level := shape(plane.BoxOf(plane.At(low, panel.SeatFrom), plane.At(high, panel.SeatTo)))
	switch side {
	case Left:
		return solid.Prism{Axis: solid.X, Region: upright, From: sight.Min.X - wide, To: sight.Min.X}
	case Right:
		return solid.Prism{Axis: solid.X, Region: upright, From: sight.Max.X, To: sight.Max.X + wide}
	case Bottom:
		return solid.Prism{Axis: solid.Z, Region: level, From: sight.Min.Y - wide, To: sight.Min.Y}
	default:
		return solid.Prism{Axis: solid.Z, Region: level, From: sight.Max.Y, To: sight.Max.Y + wide}
	}
}

// groovedWhole tells whether a member's edges are grooved from end to end: a
// stile's when the groove runs through, a rail's and a muntin's unless its ends
// lap the member they meet.
func (b *bench) groovedWhole(m *member) bool {
	joint := b.leaf.Joint
	switch m.role {
	case StileRole:
		return b.leaf.Rabbet.Through
	case RailRole:
		return joint.Kind != HalfLap && joint.Kind != Bridle
	default:
		return joint.Muntin != HalfLap
	}
}
