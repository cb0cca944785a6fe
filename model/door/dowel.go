package door

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// dowel resolves the dowel joint: diameter, length, holes, and how many stand
// at each end.
func (r *resolver) dowel() {
	leaf, stated := &r.set.Leaf, r.model.Leaf.Joint.Dowel
	d := &leaf.Joint.Dowel
	if stated.Diameter != nil {
		d.Diameter = r.given("dowel.diameter", "leaf.joint.dowel.diameter", *stated.Diameter)
	} else {
		row := catalog.DowelFor(leaf.Thickness, r.units)
		d.Diameter = r.derive("dowel.diameter", row.Size, "the largest dowel sold that is no thicker than half the frame; "+r.practice("dowel-thickness"), "leaf.thickness")
	}
	if most := leaf.Thickness.Half(); d.Diameter > most {
		r.stop("leaf.joint.dowel.diameter", RuleDowelThick, "a dowel %v thick in a frame %v thick leaves %v on each side; it may be half as thick as the frame: up to %v", d.Diameter, leaf.Thickness, (leaf.Thickness - d.Diameter).Half(), most)
		return
	}
	r.derive("dowel.front", leaf.Thickness.Half(), "the dowels stand in the middle of the thickness", "leaf.thickness")
	r.dowelLength()
	if leaf.Joint.Kind == DowelJoint {
		leaf.Joint.Reach = d.Hole
		for i, rail := range leaf.Rails {
			if r.stopped {
				return
			}
			n := r.dowels(leaf.Meetings[2*i], r.model.Leaf.Joint.HolesPerEnd, fmt.Sprintf("dowel.R%d", i+1))
			if n == 1 && r.model.Leaf.Joint.HolesPerEnd != 1 && !r.stopped {
				r.warn("leaf.joint", RuleDowelRoom, "rail %s, %v wide, has room for one dowel %v thick at each end: it can twist; a wider rail or thinner dowels would hold two", rail.Label, rail.Width(), d.Diameter)
			}
			d.PerEnd = append(d.PerEnd, n)
			d.Count += 2 * n
		}
	}
	if leaf.Joint.Muntin == DowelJoint && !r.stopped {
		leaf.Joint.MuntinReach = d.Hole
		d.MuntinPerEnd = r.dowels(leaf.firstMuntin(), 0, "dowel.muntin")
		d.Count += 2 * d.MuntinPerEnd * len(leaf.Muntins)
	}
}

// practice is the source of a published proportion.
func (r *resolver) practice(name string) string {
	row, _ := catalog.Rule(name) // a name that is ours; a test walks them
	return row.Source.String()
}

// firstMuntin is an end of a muntin, as the others are across.
func (l Leaf) firstMuntin() Meeting { return l.Meetings[2*len(l.Rails)] }

// dowelLength resolves the dowels' length and the depth of their holes.
func (r *resolver) dowelLength() {
	leaf := &r.set.Leaf
	d, stated := &leaf.Joint.Dowel, r.model.Leaf.Joint.Dowel.Length
	room := r.assume("dowel.room", dowelRoom.in(r.units), dowelRoom.reason, r.practice("dowel-room"))
	limit := r.deepest(leaf.ends(DowelJoint), true)
	usual, most := 5*d.Diameter, (2 * (limit.most - room)).DownTo(r.tick)
	switch {
	case stated != nil:
		d.Length = r.given("dowel.length", "leaf.joint.dowel.length", *stated)
	case usual > most:
		d.Length = r.derive("dowel.length", most, "less than five diameters: what the holes' depth in "+limit.label+" allows, down to the next tick", "dowel.diameter", "dowel.room", "tick")
	default:
		d.Length = r.derive("dowel.length", usual, "five diameters; "+r.practice("dowel-length"), "dowel.diameter")
	}
	d.Hole = r.derive("dowel.hole", d.Length.Half()+room, "half the dowel and a little for glue", "dowel.length", "dowel.room")
	if d.Hole > limit.most {
		left := limit.size - d.Hole
		if limit.twice {
			left -= d.Hole
		}
		r.stop("leaf.joint.dowel.length", RuleDowelLength, "dowels %v long need holes %v deep; %s is %v that way and keeps %v: at least %v must be left; dowels up to %v fit", d.Length, d.Hole, limit.label, limit.size, left, jointBehind.in(r.units), max(0, most))
		return
	}
	if least := 3 * d.Diameter; d.Length < least {
		r.warn("leaf.joint.dowel.length", RuleDowelLength, "dowels %v thick and %v long go %v into each part and hold little; %v or longer is better", d.Diameter, d.Length, d.Length.Half(), least)
	}
}

// dowels counts the dowels of an end and enters their places.
func (r *resolver) dowels(m Meeting, asked int, name string) int {
	low, high := r.dowelRange(m)
	apart, room := 2*r.set.Leaf.Joint.Dowel.Diameter, high-low
	n := asked
	if n == 0 {
		n = max(2, 1+int((room+dowelApart.in(r.units)-1)/dowelApart.in(r.units)))
		if room >= 0 && room < length.Length(n-1)*apart {
			n = 1
		}
	}
	if room < 0 {
		r.stop("leaf.joint", RuleDowelRoom, "a dowel %v thick does not fit the end of %s, %v wide, clear of the panel's seats and its edges: thinner dowels, or a member of at least %v", r.set.Leaf.Joint.Dowel.Diameter, m.Member, m.Width(), (m.Width() - room).UpTo(r.tick))
		return n
	}
	if room < length.Length(n-1)*apart {
		r.stop("leaf.joint", RuleDowelRoom, "%d dowels at each end of %s need %v between the panel's seats for their middles; there is %v: fewer or thinner dowels, or a wider member", n, m.Member, length.Length(n-1)*apart, room)
		return n
	}
	for k, at := range r.spaced(low, high, n) {
		r.derive(fmt.Sprintf("%s.%d", name, k+1), at, "dowel's middle from the member's lower or left edge: clear of the panel's seat and of free edges, evenly between", "dowel.diameter", "rabbet.width")
	}
	return n
}

// dowelRange is the stretch across a member, from its lower or left edge, in
// which the middles of its dowels may lie.
func (r *resolver) dowelRange(m Meeting) (low, high length.Length) {
	d := r.set.Leaf.Joint.Dowel.Diameter
	low, high = m.across(seatClear.in(r.units)+d.Half(), max(dowelEdge.in(r.units), d))
	return low.UpTo(r.tick), high.DownTo(r.tick)
}

// dowelEnd bores one end and enters its dowels.
func (b *bench) dowelEnd(m Meeting) {
	d, mid := b.leaf.Joint.Dowel, b.leaf.Thickness.Half()
	n := d.MuntinPerEnd
	if i := b.leaf.rail(m.Member); i >= 0 {
		n = d.PerEnd[i]
	}
	low, high := b.dowelRange(m)
	for _, c := range b.spaced(low, high, n) {
		shoulder := m.Point(0, mid, m.From+c)
		b.member(m.Member).bore(solid.Bore{From: shoulder, To: m.Point(d.Hole, mid, m.From+c), Diameter: d.Diameter, For: "dowel"})
		b.member(m.Into).bore(solid.Bore{From: shoulder, To: m.Point(-d.Hole, mid, m.From+c), Diameter: d.Diameter, For: "dowel"})
		round := plane.Region{plane.Circle(shoulder.Flat(m.Axis), d.Diameter.Half())}
		wood, _ := catalog.Species(dowelSpecies)
		b.key(m, Part{Label: "D", Name: "dowel", Role: DowelRole}, round, d.Length.Half(), wood)
	}
}
