package door

import (
	"fmt"
	"slices"

	"stilewright/model/length"
)

// washer resolves the edge washers: sizes, hole depth, lap and places.
func (r *resolver) washer() {
	h, leaf := r.model.Panel.HeldBy, &r.set.Leaf
	gap := leaf.Panel.EdgeGap
	w := Washer{Screw: leaf.Washer.Screw}
	w.Outside = r.washerAcross()
	if h.Washer.Thickness != nil {
		w.Thickness = r.given("washer.thickness", "panel.held_by.washer.thickness", *h.Washer.Thickness)
	} else {
		w.Thickness = r.derive("washer.thickness", (2*gap + washerLap.in(r.units)).UpTo(washerStep.in(r.units)), "twice the edge gap plus the least lap, up to the next step: washers may be stacked", "panel.edge_gap")
	}
	if h.Washer.Hole != nil {
		w.Hole = r.given("washer.hole", "panel.held_by.washer.hole", *h.Washer.Hole)
	} else {
		w.Hole = r.derive("washer.hole", max(w.Screw.Body, w.Screw.Diameter), "body drill of the screw, but no less than its shank")
	}
	w.Length = r.sized("washer.screw.length", "panel.held_by.screw.length", h.Screw.Length, washerScrew)
	w.Press = r.sized("washer.press", "panel.held_by.press", h.Press, washerPress)
	w.Depth = r.derive("washer.depth", leaf.Rabbet.Front+leaf.Panel.Thickness+w.Outside.Half()-w.Press, "wood in front + panel + half the washer − press, from the frame's front face", "rabbet.front", "panel.thickness", "washer.outside", "washer.press")
	w.Lap = r.derive("washer.lap", w.Thickness-gap, "washer thickness less edge gap", "washer.thickness", "panel.edge_gap")
	w.LeastLap = r.derive("washer.least_lap", w.Thickness-2*gap, "washer thickness less twice the edge gap: panel pushed away", "washer.thickness", "panel.edge_gap")
	leaf.Washer = w
	r.washerFits()
	r.washerPlaces()
}

// washerAcross is the washer's outside diameter: as stated, else the common one,
// or a smaller one where the wood behind the panel is too thin for it.
func (r *resolver) washerAcross() length.Length {
	stated, leaf := r.model.Panel.HeldBy.Washer.Outside, r.set.Leaf
	behind := (leaf.Thickness - leaf.Rabbet.Front - leaf.Panel.Thickness).DownTo(washerStep.in(r.units))
	if stated == nil && behind < washerOutside.in(r.units) && behind >= leastWasher.in(r.units) {
		return r.derive("washer.outside", behind, "what the rabbet holds behind the panel, down to the next step: less than the common washer", "rabbet.depth", "panel.thickness")
	}
	return r.sized("washer.outside", "panel.held_by.washer.outside", stated, washerOutside)
}

// washerFits checks reach, back face and screws.
func (r *resolver) washerFits() {
	leaf, w := r.set.Leaf, r.set.Leaf.Washer
	gap, clear := leaf.Panel.EdgeGap, screwClear.in(r.units)
	if back := w.Depth + w.Outside.Half(); back > leaf.Thickness {
		r.stop("panel.held_by.washer.outside", RuleWasherProud, "a washer %v across on the panel's back ends %v from the front of a frame %v thick: it stands out by %v; up to %v fits", w.Outside, back, leaf.Thickness, back-leaf.Thickness, leaf.Thickness-leaf.Rabbet.Front-leaf.Panel.Thickness+w.Press)
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
	path = "panel.held_by.screw.length"
	grip := w.Length - w.Thickness
	if least := leastGrip.in(r.units); grip < least {
		r.stop(path, RuleWasherScrew, "a screw %v long through a washer %v thick holds %v in the wood; it needs at least %v", w.Length, w.Thickness, grip, least)
	}
	if left := leaf.Stile - leaf.Rabbet.Width - grip; left < clear {
		r.stop(path, RuleWasherScrew, "a screw %v into a stile with %v behind the rabbet wall leaves %v at its outer edge; at least %v is needed", grip, leaf.Stile-leaf.Rabbet.Width, left, clear)
	}
	holds := func(name string, width, sides length.Length) bool {
		left := width - sides*(leaf.Rabbet.Width+grip)
		if left < clear {
			r.stop(path, RuleWasherScrew, "washer screws going %v into %s, %v wide, leave %v between tip and tip or edge; at least %v is needed: screws up to %v", grip, name, width, left, clear, ((width-clear)/sides - leaf.Rabbet.Width + w.Thickness).DownTo(r.tick))
		}
		return left >= clear
	}
	for i, rail := range leaf.Rails {
		sides := length.Length(2)
		if i == 0 || i == len(leaf.Rails)-1 {
			sides = 1
		}
		if !holds("rail "+rail.Label, rail.Width(), sides) {
			break
		}
	}
	if len(leaf.Muntins) > 0 {
		holds("muntins", leaf.Muntins[0].Width(), 2)
	}
}

// washerPlaces spreads washers along every lite edge: the same distance from
// both corners, evenly between, out of the corner's arc and of the pockets.
func (r *resolver) washerPlaces() {
	leaf := &r.set.Leaf
	w := &leaf.Washer
	most := r.sized("washer.spacing", "panel.held_by.spacing", r.model.Panel.HeldBy.Spacing, washerSpacing)
	arc := max(0, leaf.Rabbet.Corner-leaf.Rabbet.Width)
	up := r.derive("washer.corner.stile", max(washerCorner.in(r.units), arc+w.Outside.Half()).UpTo(r.tick), "from a lite's corner to the first washer along a stile: clear of the round corner", "rabbet.corner", "rabbet.width", "washer.outside")
	across := r.derive("washer.corner.rail", r.clearOfJoint(leaf.Joint.Reach, up), "from a lite's corner to the first washer along a rail: clear of "+leaf.Joint.reachWords(), leaf.Joint.reachFrom()...)
	muntin := across
	if j := leaf.Joint; j.MuntinReach != j.Reach && j.Muntin != "" {
		muntin = r.derive("washer.corner.muntin", r.clearOfJoint(j.MuntinReach, up), "from a lite's corner to the first washer along a muntin: clear of its joint", "washer.corner.stile", "washer.outside")
	}
	short := false
	for i := range leaf.Lites {
		lite := &leaf.Lites[i]
		lite.Washers = r.washersOf(*lite, up, across, muntin, most)
		wide, high := lite.Washers[Bottom], append(slices.Clip(lite.Washers[Left]), lite.Washers[Right]...)
		switch {
		case len(wide) == 0 && len(high) == 0:
			r.stop("panel.held_by", RuleWasherRoom, "no washer finds room on any edge of a lite %v by %v", lite.Sight.Width(), lite.Sight.Height())
			return
		case len(wide) == 0 && !short:
			short = true
			r.warn("panel.held_by", RuleWasherRoom, "rail edges %v long have no room for washers between the %s; the panel is held along the stiles only", lite.Sight.Width(), leaf.Joint.reachWords())
		}
	}
}

// washersOf are the places of a lite's washers: along a member that is jointed
// at the lite's corner first as far as across and muntin tell, else as up does.
func (r *resolver) washersOf(lite Lite, up, across, muntin, most length.Length) [4][]length.Length {
	inner := func(inside bool) (rail, upright length.Length) {
		if inside {
			return up, muntin // the muntin ends there and the rail goes on
		}
		return across, up
	}
	left, atLeft := inner(lite.Column > 0)
	right, atRight := inner(lite.Column < r.set.Leaf.Columns-1)
	wide := shifted(r.spread(lite.Sight.Width(), left, right, most), lite.Sight.Min.X)
	upright := func(first length.Length) []length.Length {
		return shifted(r.spread(lite.Sight.Height(), first, first, most), lite.Sight.Min.Y)
	}
	return [4][]length.Length{Bottom: wide, Top: wide, Left: upright(atLeft), Right: upright(atRight)}
}

// clearOfJoint is how far from a lite's corner the first washer along a rail or
// muntin stands: no nearer than along a stile, and clear of the joint, which
// takes up so much of the edge.
func (r *resolver) clearOfJoint(reach, least length.Length) length.Length {
	leaf := r.set.Leaf
	if reach == 0 {
		return least
	}
	return max(least, reach+leaf.Washer.Outside.Half()+screwClear.in(r.units)).UpTo(r.tick)
}

// shifted are places moved by one length.
func shifted(places []length.Length, by length.Length) []length.Length {
	var at []length.Length
	for _, place := range places {
		at = append(at, place+by)
	}
	return at
}

// spread places washers on an edge: the first and the last as far from its ends
// as told, and the others at most `most` apart; one midway where two do not fit.
func (r *resolver) spread(edge, first, last, most length.Length) []length.Length {
	w := r.set.Leaf.Washer
	run := edge - first - last
	switch {
	case run < 0:
		return nil
	case run < 2*w.Outside:
		return []length.Length{first + run.Half()}
	}
	spaces := int((run + most - 1) / most)
	places := []length.Length{first}
	for _, step := range r.share(run, spaces) {
		places = append(places, places[len(places)-1]+step)
	}
	return places
}

// washerName is the label of a lite's n-th washer.
func washerName(lite, n int) string { return fmt.Sprintf("W%d.%d", lite, n) }
