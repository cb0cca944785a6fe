package door

import "stilewright/model/length"

// halfLap resolves the half-lap joint: what of the thickness the part in front
// keeps.
func (r *resolver) halfLap() {
	leaf := &r.set.Leaf
	if stated := r.model.Leaf.Joint.Lap; stated != nil {
		leaf.Joint.Lap.Front = r.given("lap.front", "leaf.joint.lap", *stated)
	} else {
		leaf.Joint.Lap.Front = r.derive("lap.front", leaf.Thickness.Half(), "half of the thickness in front, half behind", "leaf.thickness")
	}
	front, least := leaf.Joint.Lap.Front, leastLap.in(r.units)
	if back := leaf.Thickness - front; front < least || back < least {
		r.stop("leaf.joint.lap", RuleLap, "a lap that leaves %v in front leaves %v behind of a frame %v thick; each needs at least %v: from %v to %v", front, back, leaf.Thickness, least, least, leaf.Thickness-least)
	}
}

// bridle resolves the bridle joint: the tenon's or web's faces.
func (r *resolver) bridle() {
	t := r.set.Leaf.Joint.Tenon
	lap := &r.set.Leaf.Joint.Lap
	lap.From = t.Front
	lap.To = r.derive("bridle.back", t.Front+t.Thickness, "the tenon's back face, from the frame's front face", "tenon.front", "tenon.thickness")
}

// halfLapEnd cuts one end's lap: the part it ends at keeps the front.
func (b *bench) halfLapEnd(m Meeting) {
	front, thick, deep := b.leaf.Joint.Lap.Front, b.leaf.Thickness, m.lapped()
	part := b.member(m.Member)
	part.reach(m.Point(-deep, 0, 0).Along(m.Axis))
	part.cut(m.Block(-deep, 0, 0, front, m.From, m.To), "lap")
	b.member(m.Into).cut(m.Block(-deep, 0, front, thick, m.From, m.To), "lap")
}

// lapped is how far a lap goes over the other part: to its far edge, or to the
// middle, where another comes from there.
func (m Meeting) lapped() length.Length {
	switch {
	case !m.Opposite:
		return m.Deep
	case m.Way > 0:
		return m.Deep.Half()
	default:
		return m.Deep - m.Deep.Half()
	}
}

// bridleEnd cuts one end's bridle joint. At the leaf's corners the rail has the
// tenon and the stile's end the slot; a cross rail's fork grips the web that
// the stile's two notches leave.
func (b *bench) bridleEnd(m Meeting) {
	front, back, thick := b.leaf.Joint.Lap.From, b.leaf.Joint.Lap.To, b.leaf.Thickness
	outer, inner := b.member(m.Into), b.member(m.Member)
	inner.reach(m.Point(-m.Deep, 0, 0).Along(m.Axis))
	if m.Low > 0 && m.High > 0 {
		outer, inner = inner, outer
	}
	outer.cut(m.Block(-m.Deep, 0, front, back, m.From, m.To), "bridle")
	inner.cut(m.Block(-m.Deep, 0, 0, front, m.From, m.To), "bridle")
	inner.cut(m.Block(-m.Deep, 0, back, thick, m.From, m.To), "bridle")
}
