package door

import (
	"fmt"

	"stilewright/model/length"
)

// washer resolves the edge washers: sizes, hole depth, lap and places.
func (r *resolver) washer() {
	h, leaf := r.model.Panel.HeldBy, &r.set.Leaf
	gap, gapName := leaf.mostGap()
	w := Washer{Screw: leaf.Washer.Screw}
	w.Outside = r.washerAcross()
	if h.Washer.Thickness != nil {
		w.Thickness = r.given("washer.thickness", "panel.held_by.washer.thickness", *h.Washer.Thickness)
	} else {
		w.Thickness = r.derive("washer.thickness", (2*gap + washerLap.in(r.units)).UpTo(washerStep.in(r.units)), "twice the edge gap plus the least lap, up to the next step: washers may be stacked", gapName)
	}
	if h.Washer.Hole != nil {
		w.Hole = r.given("washer.hole", "panel.held_by.washer.hole", *h.Washer.Hole)
	} else {
		w.Hole = r.derive("washer.hole", max(w.Screw.Body, w.Screw.Diameter), "body drill of the screw, but no less than its shank")
	}
	w.Length = r.sized("washer.screw.length", "panel.held_by.screw.length", h.Screw.Length, washerScrew)
	w.Press = r.sized("washer.press", "panel.held_by.press", h.Press, washerPress)
	w.Depth = r.washerDepth("washer.depth", leaf.Panel, w, "panel.thickness")
	if leaf.SolidPanel != nil {
		w.SolidDepth = r.washerDepth("washer.solid_depth", *leaf.SolidPanel, w, "solid.thickness")
	}
	w.Lap = r.derive("washer.lap", w.Thickness-gap, "washer thickness less edge gap", "washer.thickness", gapName)
	w.LeastLap = r.derive("washer.least_lap", w.Thickness-2*gap, "washer thickness less twice the edge gap: panel pushed away", "washer.thickness", gapName)
	leaf.Washer = w
	r.washerFits()
	r.washerScrews()
	r.washerPlaces()
}

// washerDepth is how deep behind the frame's front the holes of the washers of
// one sheet are bored.
func (r *resolver) washerDepth(name string, panel Panel, w Washer, sheet string) length.Length {
	formula := "wood in front + panel + half the washer − press, from the frame's front face"
	if r.set.Leaf.Bed > 0 {
		formula = "wood in front + bed + panel + half the washer − press, from the frame's front face"
	}
	from := append([]string{"rabbet.front", sheet, "washer.outside", "washer.press"}, r.bedName()...)
	return r.derive(name, panel.To()+w.Outside.Half()-w.Press, formula, from...)
}

// washerRoom is what of the frame's thickness lies behind the thickest panel.
func (l *Leaf) washerRoom() length.Length {
	room := l.Thickness
	for _, panel := range l.panels() {
		room = min(room, l.Thickness-panel.To())
	}
	return room
}

// washerAcross is the washer's outside diameter: as stated, else the common one,
// or a smaller one where the wood behind the panel is too thin for it.
func (r *resolver) washerAcross() length.Length {
	stated, leaf := r.model.Panel.HeldBy.Washer.Outside, &r.set.Leaf
	behind := leaf.washerRoom().DownTo(washerStep.in(r.units))
	if stated == nil && behind < washerOutside.in(r.units) && behind >= leastWasher.in(r.units) {
		return r.derive("washer.outside", behind, "what the rabbet holds behind the panel, down to the next step: less than the common washer", "rabbet.depth", "panel.thickness")
	}
	return r.sized("washer.outside", "panel.held_by.washer.outside", stated, washerOutside)
}

// washerFits checks the washer's reach, its hole and the back face.
func (r *resolver) washerFits() {
	leaf, w := &r.set.Leaf, r.set.Leaf.Washer
	gap, _ := leaf.mostGap()
	if back := max(w.Depth, w.SolidDepth) + w.Outside.Half(); back > leaf.Thickness {
		r.stop("panel.held_by.washer.outside", RuleWasherProud, "a washer %v across on the panel's back ends %v from the front of a frame %v thick: it stands out by %v; up to %v fits", w.Outside, back, leaf.Thickness, back-leaf.Thickness, leaf.washerRoom()+w.Press)
	}
	if w.Hole >= w.Outside {
		r.stop("panel.held_by.washer", RuleWasherScrew, "a hole of %v leaves nothing of a washer %v across: take a larger washer or a smaller screw", w.Hole, w.Outside)
	}
	if w.Hole < w.Screw.Diameter {
		r.stop("panel.held_by.washer.hole", RuleWasherScrew, "a screw %v thick does not go through a washer's hole of %v: take a larger hole or a smaller screw", w.Screw.Diameter, w.Hole)
	}
	path := "panel.held_by.washer.thickness"
	switch {
	case w.LeastLap <= 0:
		r.stop(path, RuleWasherReach, "a washer %v thick on the rabbet wall cannot reach a panel that may stand %v away (twice the edge gap of %v); it must be thicker than that: %v laps it by %v", w.Thickness, 2*gap, gap, 2*gap+washerLap.in(r.units), washerLap.in(r.units))
	case w.LeastLap < washerLap.in(r.units):
		r.warn(path, RuleWasherReach, "with the panel pushed away the washer laps it by %v; %v is safer", w.LeastLap, washerLap.in(r.units))
	}
}

// washerScrews checks the screws' hold and their tips: against the far edge, the
// far rabbet or the screw that comes from there.
func (r *resolver) washerScrews() {
	leaf, w := &r.set.Leaf, &r.set.Leaf.Washer
	path, clear, wide := "panel.held_by.screw.length", screwClear.in(r.units), leaf.Rabbet.Width
	grip := w.Length - w.Thickness
	if least := leastGrip.in(r.units); grip < least {
		r.stop(path, RuleWasherScrew, "a screw %v long through a washer %v thick holds %v in the wood; it needs at least %v", w.Length, w.Thickness, grip, least)
	}
	if left := leaf.Stile - wide - grip; left < clear {
		r.stop(path, RuleWasherScrew, "a screw %v into a stile with %v behind the rabbet wall leaves %v at its outer edge; at least %v is needed", grip, leaf.Stile-wide, left, clear)
	}
	for _, m := range r.milledMembers()[1:] {
		meets := m.width-m.edges*(wide+grip) < clear
		if m.edges == 2 && r.staggers(m.width) {
			w.Stagger = true
			if left := m.width - 2*wide - grip; left < clear {
				r.stop(path, RuleWasherScrew, "washer screws going %v into %s, %v wide, leave %v before the other rabbet; at least %v is needed: screws up to %v", grip, m.name, m.width, left, clear, (m.width - 2*wide - clear + w.Thickness).DownTo(r.tick))
				break
			}
			continue
		}
		if meets {
			most := ((m.width-clear)/m.edges - wide + w.Thickness).DownTo(r.tick)
			r.stop(path, RuleWasherScrew, "washer screws going %v into %s, %v wide, leave %v between tip and tip or edge; at least %v is needed: screws up to %v", grip, m.name, m.width, m.width-m.edges*(wide+grip), clear, most)
			break
		}
	}
}

// staggers tells whether the washers on the two sides of a member of that width
// stand between one another: when asked for, and unless it is ruled out, where
// their screws would meet.
func (r *resolver) staggers(width length.Length) bool {
	w := r.set.Leaf.Washer
	switch r.model.Panel.HeldBy.Stagger {
	case "yes":
		return true
	case "no":
		return false
	}
	return width-2*(r.set.Leaf.Rabbet.Width+w.Length-w.Thickness) < screwClear.in(r.units)
}

// washerPlaces spreads washers along every lite edge: the same distance from
// both corners, evenly between, out of the corner's arc or relief and of the
// joints.
func (r *resolver) washerPlaces() {
	leaf := &r.set.Leaf
	w := &leaf.Washer
	most := r.sized("washer.spacing", "panel.held_by.spacing", r.model.Panel.HeldBy.Spacing, washerSpacing)
	left := "rabbet.corner"
	if relieves(leaf.Corner.Kind) {
		left = "corner.tool"
	}
	up := r.derive("washer.corner.stile", r.clearOfCorner(true), "from a lite's corner to the first washer along a stile: clear of the round corner", left, "rabbet.width", "washer.outside")
	j := leaf.Joint
	level := max(up, r.clearOfCorner(false))
	start := starts{up: up, across: r.derive("washer.corner.rail", r.clearOfJoint(j.Reach, level, w.Outside), "from a lite's corner to the first washer along a rail: clear of "+j.reachWords(), j.reachFrom()...)}
	start.muntin = start.across
	if j.MuntinReach != j.Reach && j.Muntin != "" {
		start.muntin = r.derive("washer.corner.muntin", r.clearOfJoint(j.MuntinReach, up, w.Outside), "from a lite's corner to the first washer along a muntin: clear of its joint", "washer.corner.stile", "washer.outside")
	}
	short := false
	for i := range leaf.Lites {
		lite := &leaf.Lites[i]
		lite.Washers = r.spreadRound(*lite, start, most, 2*w.Outside)
		wide := lite.Washers[Bottom]
		held := len(wide) + len(lite.Washers[Left]) + len(lite.Washers[Right])
		switch {
		case held == 0:
			r.stop("panel.held_by", RuleWasherRoom, "no washer finds room on any edge of a lite %v by %v", lite.Sight.Width(), lite.Sight.Height())
			return
		case len(wide) == 0 && !short:
			short = true
			r.warn("panel.held_by", RuleWasherRoom, "rail edges %v long have no room for washers between the %s; the panel is held along the stiles only", lite.Sight.Width(), leaf.Joint.reachWords())
		}
	}
	r.stagger(start)
}

// clearOfCorner is how far from a lite's corner the first washer along an
// upright or a level wall stands: clear of the cutter's arc, or of what a
// machine's tool relieves.
func (r *resolver) clearOfCorner(upright bool) length.Length {
	leaf := r.set.Leaf
	open, level := leaf.Corner.runs()
	if !upright {
		open = level
	}
	open = max(0, leaf.Rabbet.Corner-leaf.Rabbet.Width, open-leaf.Rabbet.Width)
	return max(washerCorner.in(r.units), open+leaf.Washer.Outside.Half()).UpTo(r.tick)
}

// clearOfJoint is how far from a lite's corner the first washer, pin or screw
// of that width along a rail or muntin stands: no nearer than along a stile,
// and clear of the joint, which takes up so much of the edge.
func (r *resolver) clearOfJoint(reach, least, across length.Length) length.Length {
	if reach == 0 {
		return least
	}
	return max(least, reach+across.Half()+screwClear.in(r.units)).UpTo(r.tick)
}

// washerName is the label of a lite's n-th washer.
func washerName(lite, n int) string { return fmt.Sprintf("W%d.%d", lite, n) }
