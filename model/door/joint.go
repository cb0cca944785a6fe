package door

import (
	"slices"
	"strconv"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
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
	for _, of := range []struct {
		kinds   []string
		resolve func()
	}{
		{[]string{PocketScrew}, r.pocket},
		{[]string{DowelJoint}, r.dowel},
		{[]string{LooseTenon, MortiseAndTenon, Bridle}, r.tenonSection},
		{[]string{LooseTenon, MortiseAndTenon}, r.tenon},
		{[]string{HalfLap}, r.halfLap},
		{[]string{Bridle}, r.bridle},
	} {
		if j.has(of.kinds...) && !r.stopped {
			of.resolve()
		}
	}
	if !r.stopped {
		r.jointGroove()
		r.unusedSizes()
	}
}

// has tells whether a joint of one of the kinds occurs in the leaf.
func (j Joint) has(kinds ...string) bool {
	return slices.Contains(kinds, j.Kind) || slices.Contains(kinds, j.Muntin)
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
	upright, level := leaf.takes()
	for i, rail := range leaf.Rails {
		end := Meeting{Member: rail.Label, Kind: leaf.Joint.Kind, Axis: solid.X, From: rail.From, To: rail.To, Low: level, High: level, Deep: leaf.Stile}
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
		end := Meeting{Member: m.Label, Kind: leaf.Joint.Muntin, Axis: solid.Z, From: m.From, To: m.To, Low: upright, High: upright}
		end.Into, end.At, end.Way, end.Deep, end.Opposite = below.Label, below.To, 1, below.Width(), m.Row > 0
		leaf.Meetings = append(leaf.Meetings, end)
		end.Into, end.At, end.Way, end.Deep, end.Opposite = above.Label, above.From, -1, above.Width(), m.Row < leaf.Rows()-1
		leaf.Meetings = append(leaf.Meetings, end)
	}
}

// Width is the member's width across.
func (m Meeting) Width() length.Length { return m.To - m.From }

// ofMuntin tells whether it is a muntin that ends here.
func (m Meeting) ofMuntin() bool { return m.Axis == solid.Z }

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

// ends are the meetings of a kind, or of all kinds named.
func (l Leaf) ends(kinds ...string) []Meeting {
	var ends []Meeting
	for _, m := range l.Meetings {
		if slices.Contains(kinds, m.Kind) {
			ends = append(ends, m)
		}
	}
	return ends
}

// rail is the index of the rail with that label; it is -1 for another member.
func (l Leaf) rail(label string) int {
	return slices.IndexFunc(l.Rails, func(rail Rail) bool { return rail.Label == label })
}

// between is the member's length between its shoulders.
func (l Leaf) between(m Meeting) length.Length {
	for _, other := range l.Meetings {
		if other.Member == m.Member && other.Way != m.Way {
			return (other.At - m.At).Abs()
		}
	}
	return 0
}

// A depth is how deep a hole may go at some end of a member, and what bounds it.
type depth struct {
	most  length.Length
	label string        // of the part that is bored
	size  length.Length // of that part along the hole
	twice bool          // bored from both sides
}

// deepest is the least of the depths that holes at the ends may have, so that
// jointBehind is left of every part; with own, in the member that ends too.
func (r *resolver) deepest(ends []Meeting, own bool) depth {
	best := depth{most: length.Longest}
	try := func(label string, size length.Length, twice bool) {
		most := size - jointBehind.in(r.units)
		if twice {
			most = most.Half()
		}
		if most < best.most {
			best = depth{most, label, size, twice}
		}
	}
	for _, m := range ends {
		try(m.Into, m.Deep, m.Opposite)
		if own {
			try(m.Member, r.set.Leaf.between(m), true)
		}
	}
	return best
}

// across is the stretch of a member's end, from its own lower or left edge, in
// which a joint may lie: clear of the panel's seat by so much, and of a free
// edge.
func (m Meeting) across(clear, edge length.Length) (low, high length.Length) {
	low, high = edge, m.Width()-edge
	if m.Low > 0 {
		low = m.Low + clear
	}
	if m.High > 0 {
		high = m.Width() - m.High - clear
	}
	return low, high
}

// spaced are n places evenly from low to high, both taken; the middle for one.
func (r *resolver) spaced(low, high length.Length, n int) []length.Length {
	if n == 1 {
		return []length.Length{(low + high).Half()}
	}
	places := []length.Length{low}
	for _, step := range r.share(high-low, n-1) {
		places = append(places, places[len(places)-1]+step)
	}
	return places
}

// join cuts the joint of one meeting.
func (b *bench) join(m Meeting) {
	switch m.Kind {
	case PocketScrew:
		b.pocketEnd(m)
	case DowelJoint:
		b.dowelEnd(m)
	case LooseTenon:
		b.looseEnd(m)
	case MortiseAndTenon:
		b.tenonEnd(m)
	case HalfLap:
		b.halfLapEnd(m)
	case Bridle:
		b.bridleEnd(m)
	}
}

// key enters a part that lies half in each of the two that meet, such as a
// dowel: its section across the member, and half its length. Its label gets the
// next number.
func (b *bench) key(m Meeting, p Part, section plane.Region, half length.Length, wood catalog.Wood) {
	n := 1
	for _, other := range b.leaf.Hardware {
		if other.Role == p.Role {
			n++
		}
	}
	p.Label += strconv.Itoa(n)
	p.Material, p.Grain = wood.Name, m.Axis
	p.Solid = solid.Solid{Blank: solid.Prism{Axis: m.Axis, Region: section, From: m.At - half, To: m.At + half}}
	b.leaf.Hardware = append(b.leaf.Hardware, weigh(p, wood.Density()))
}

// unusedSizes warns of what a model states for joints that do not occur.
func (r *resolver) unusedSizes() {
	j, leaf := r.model.Leaf.Joint, r.set.Leaf.Joint
	loose, tenons := leaf.has(LooseTenon), leaf.has(LooseTenon, MortiseAndTenon)
	for _, of := range []struct {
		path   string
		stated bool
		used   bool
	}{
		{"holes_per_end", j.HolesPerEnd > 0, leaf.has(PocketScrew, DowelJoint)},
		{"screw", j.Screw != nil, leaf.has(PocketScrew)},
		{"plugs", j.Plugs == "yes", leaf.has(PocketScrew)},
		{"dowel.diameter", j.Dowel.Diameter != nil, leaf.has(DowelJoint)},
		{"dowel.length", j.Dowel.Length != nil, leaf.has(DowelJoint)},
		{"tenon.thickness", j.Tenon.Thickness != nil, tenons || leaf.has(Bridle)},
		{"tenon.front", j.Tenon.Front != nil, tenons || leaf.has(Bridle)},
		{"tenon.length", j.Tenon.Length != nil, tenons},
		{"tenon.width", j.Tenon.Width != nil, loose},
		{"tenon.edge", j.Tenon.Edge != nil, leaf.Kind == LooseTenon || leaf.Kind == MortiseAndTenon},
		{"tenon.through", j.Tenon.Through == "yes", leaf.Kind == MortiseAndTenon},
		{"tenon.haunch", j.Tenon.Haunch == "yes", leaf.Kind == MortiseAndTenon},
		{"lap", j.Lap != nil, leaf.has(HalfLap)},
	} {
		if of.stated && !of.used && !r.stopped {
			r.warn("leaf.joint."+of.path, RuleJointUnused, "leaf.joint.%s is stated and the frame is joined by %s: it is not used; leave it out, or choose another joint", of.path, leaf.words())
		}
	}
}

// reachWords name what washers along a rail keep clear of.
func (j Joint) reachWords() string {
	switch j.Kind {
	case PocketScrew:
		return "pocket holes"
	case DowelJoint:
		return "dowels"
	case LooseTenon:
		return "mortises"
	default:
		return "corners"
	}
}

// reachFrom are the figures that tell how far a rail's washers keep from its
// ends.
func (j Joint) reachFrom() []string {
	from := []string{"washer.corner.stile"}
	switch j.Kind {
	case PocketScrew:
		from = append(from, "pocket.reach")
	case DowelJoint:
		from = append(from, "dowel.hole")
	case LooseTenon:
		from = append(from, "tenon.mortise")
	}
	return append(from, "washer.outside")
}

// words name the kinds of joints of a leaf.
func (j Joint) words() string {
	if j.Muntin == "" || j.Muntin == j.Kind {
		return j.Kind
	}
	return j.Kind + ", of muntins " + j.Muntin
}
