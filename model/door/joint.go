package door

import (
	"stilewright/model/length"
	"stilewright/model/solid"
)

// joint resolves how the frame is joined: where members end, and the sizes of
// every kind of joint that occurs.
func (r *resolver) joint() {
	if r.stopped {
		return
	}
	j := &r.set.Leaf.Joint
	j.Kind = r.model.Leaf.Joint.Kind
	if len(r.set.Leaf.Muntins) > 0 {
		j.Muntin = r.muntinJoint()
	}
	r.meet()
	for _, kind := range r.kinds() {
		if r.stopped {
			return
		}
		switch kind {
		case PocketScrew:
			r.pocket()
		case DowelJoint:
			r.dowel()
		case LooseTenon, MortiseAndTenon:
			r.tenon(kind)
		case HalfLap:
			r.halfLap()
		case Bridle:
			r.bridle()
		}
	}
}

// kinds are the kinds of joint that occur in a leaf.
func (r *resolver) kinds() []string {
	j := r.set.Leaf.Joint
	if j.Muntin == "" || j.Muntin == j.Kind {
		return []string{j.Kind}
	}
	return []string{j.Kind, j.Muntin}
}

// muntinJoint is how muntins are joined to rails: as stated, else as the rails
// are, but a bridle's muntins are half-lapped.
func (r *resolver) muntinJoint() string {
	switch j := r.model.Leaf.Joint; {
	case j.Muntin != "":
		return j.Muntin
	case j.Kind == Bridle:
		return HalfLap
	default:
		return j.Kind
	}
}

// meet lists the ends of rails at stiles and of muntins at rails.
func (r *resolver) meet() {
	leaf := &r.set.Leaf
	seat := leaf.Rabbet.Width
	for i, rail := range leaf.Rails {
		end := Meeting{Member: rail.Label, Kind: leaf.Joint.Kind, Axis: solid.X, From: rail.From, To: rail.To, Low: seat, High: seat, Deep: leaf.Stile}
		if i == 0 {
			end.Low = 0
		}
		if i == len(leaf.Rails)-1 {
			end.High = 0
		}
		end.Into, end.At, end.Way = leftStile, leaf.Stile, 1
		leaf.Meetings = append(leaf.Meetings, end)
		end.Into, end.At, end.Way = rightStile, leaf.Width-leaf.Stile, -1
		leaf.Meetings = append(leaf.Meetings, end)
	}
	for _, m := range leaf.Muntins {
		below, above := leaf.Rails[m.Row], leaf.Rails[m.Row+1]
		end := Meeting{Member: m.Label, Kind: leaf.Joint.Muntin, Axis: solid.Z, From: m.From, To: m.To, Low: seat, High: seat}
		end.Into, end.At, end.Way, end.Deep, end.Opposite = below.Label, below.To, 1, below.Width(), m.Row > 0
		leaf.Meetings = append(leaf.Meetings, end)
		end.Into, end.At, end.Way, end.Deep, end.Opposite = above.Label, above.From, -1, above.Width(), m.Row < leaf.Rows()-1
		leaf.Meetings = append(leaf.Meetings, end)
	}
}

// Point is the place a along the member from the shoulder, away from the other
// part, at y through the thickness and c across.
func (m Meeting) Point(a, y, c length.Length) solid.Vec {
	if m.Axis == solid.X {
		return solid.Vec{X: m.At + m.Way*a, Y: y, Z: c}
	}
	return solid.Vec{X: c, Y: y, Z: m.At + m.Way*a}
}

// Block is the box between two places, each as of Point: a below 0 lies in the
// other part.
func (m Meeting) Block(a0, a1, y0, y1, c0, c1 length.Length) solid.Prism {
	return solid.Block(m.Point(a0, y0, c0), m.Point(a1, y1, c1))
}

// join cuts the joint of one meeting.
func (b *bench) join(m Meeting) {
	switch m.Kind {
	case PocketScrew:
		b.pocketEnd(m)
	case DowelJoint:
		b.dowelEnd(m)
	case LooseTenon, MortiseAndTenon:
		b.tenonEnd(m)
	case HalfLap:
		b.halfLapEnd(m)
	case Bridle:
		b.bridleEnd(m)
	}
}
