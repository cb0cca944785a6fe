package door

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
)

// tenonSection resolves the tenons' thickness and where they lie in the
// frame's: of tenons, loose tenons and bridle joints alike.
func (r *resolver) tenonSection() {
	leaf, stated := &r.set.Leaf, r.model.Leaf.Joint.Tenon
	t, thick := &leaf.Joint.Tenon, leaf.Thickness
	seat, third := leaf.Rabbet, catalog.MortiseFor(thick, r.units).Size
	through := seat.Kind == Groove && seat.Through && leaf.Joint.Kind == MortiseAndTenon
	switch {
	case stated.Thickness != nil:
		t.Thickness = r.given("tenon.thickness", "leaf.joint.tenon.thickness", *stated.Thickness)
	case through && seat.Depth > third:
		t.Thickness = r.derive("tenon.thickness", seat.Depth, "as thick as the groove is wide, which it fills: more than a third of the frame", "groove.width", "leaf.thickness")
	default:
		t.Thickness = r.derive("tenon.thickness", third, "a third of the frame, taken to the nearest chisel or cutter; "+r.practice("tenon-thickness"), "leaf.thickness")
	}
	switch {
	case stated.Front != nil:
		t.Front = r.given("tenon.front", "leaf.joint.tenon.front", *stated.Front)
	case seat.Kind == Groove:
		t.Front = r.derive("tenon.front", seat.From+(seat.To-seat.From-t.Thickness).Half(), "the tenon's middle in the groove's", "leaf.thickness", "tenon.thickness")
	default:
		t.Front = r.derive("tenon.front", (thick - t.Thickness).Half(), "the tenon in the middle: half of thickness less tenon", "leaf.thickness", "tenon.thickness")
	}
	cheek, back := leastCheek.in(r.units), thick-t.Front-t.Thickness
	if t.Front < cheek || back < cheek {
		r.stop("leaf.joint.tenon", RuleTenonThick, "a tenon %v thick, %v behind the front of a frame %v thick, leaves %v in front and %v behind; each must be at least %v: in the middle, tenons up to %v fit", t.Thickness, t.Front, thick, t.Front, back, cheek, thick-2*cheek)
	}
}

// tenon resolves the tenons' lengths and widths, loose or not.
func (r *resolver) tenon() {
	leaf, stated := &r.set.Leaf, r.model.Leaf.Joint.Tenon
	j, t := &leaf.Joint, &leaf.Joint.Tenon
	rails := j.Kind == LooseTenon || j.Kind == MortiseAndTenon
	if stated.Width != nil && j.has(LooseTenon) {
		r.given("tenon.width", "leaf.joint.tenon.width", *stated.Width)
	}
	room := r.assume("tenon.room", mortiseRoom.in(r.units), mortiseRoom.reason, r.practice("mortise-room"))
	if rails {
		t.Through = j.Kind == MortiseAndTenon && stated.Through == "yes"
		if t.Through {
			r.throughLength()
		} else {
			t.Length, t.Mortise = r.tenonLength("tenon", leaf.Meetings[:2*len(leaf.Rails)], stated.Length, room)
		}
		if r.stopped {
			return
		}
		r.tenonEdge()
		for i := range leaf.Rails {
			if r.stopped {
				return
			}
			t.Width = append(t.Width, r.tenonWidth(leaf.Meetings[2*i], fmt.Sprintf("tenon.R%d", i+1), stated.Width))
		}
		r.haunch()
	}
	if j.Muntin == LooseTenon || j.Muntin == MortiseAndTenon {
		long, wide := stated.Length, stated.Width
		if rails {
			long = nil
		}
		if j.Kind == LooseTenon {
			wide = nil
		}
		t.MuntinLength, t.MuntinMortise = r.tenonLength("tenon.muntin", leaf.Meetings[2*len(leaf.Rails):], long, room)
		t.MuntinWidth = r.tenonWidth(leaf.firstMuntin(), "tenon.muntin", wide)
	}
	if j.Kind == LooseTenon {
		j.Reach, t.Count = t.Mortise, 2*len(leaf.Rails)
	}
	if j.Muntin == LooseTenon {
		j.MuntinReach = t.MuntinMortise
		t.Count += 2 * len(leaf.Muntins)
	}
}

// throughLength lets the tenons end flush with the stile's outer edge.
func (r *resolver) throughLength() {
	leaf, stated := r.set.Leaf, r.model.Leaf.Joint.Tenon.Length
	t := &r.set.Leaf.Joint.Tenon
	t.Length, t.Mortise = leaf.Stile, leaf.Stile
	if stated == nil {
		r.derive("tenon.length", leaf.Stile, "through the stile, flush with its outer edge", "leaf.stile")
	} else if r.given("tenon.length", "leaf.joint.tenon.length", *stated); *stated != leaf.Stile {
		r.stop("leaf.joint.tenon.length", RuleTenonLength, "a through tenon %v long does not end flush with a stile %v wide: leave its length out, or make it blind", *stated, leaf.Stile)
	}
}

// tenonLength resolves the length of the tenons at some ends, all of one kind,
// and the depth of their mortises.
func (r *resolver) tenonLength(name string, ends []Meeting, stated *length.Length, room length.Length) (long, mortise length.Length) {
	thick, loose := r.set.Leaf.Joint.Tenon.Thickness, ends[0].Kind == LooseTenon
	limit := r.deepest(ends, loose)
	usual, formula, source := length.Longest, "two thirds of the part it goes into", r.practice("tenon-length")
	for _, m := range ends {
		usual = min(usual, m.Deep*2/3)
	}
	if three := 3 * thick; (loose || ends[0].ofMuntin()) && three < usual {
		usual, formula, source = three, "three times its thickness", houseRule
	}
	if rails := r.set.Leaf.Joint.Tenon.Length; loose && ends[0].ofMuntin() && r.set.Leaf.Joint.Kind == LooseTenon {
		usual, formula, source = rails, "as long as the rails' tenons", houseRule
	}
	most := (limit.most - room).DownTo(r.tick)
	switch {
	case stated != nil:
		long = r.given(name+".length", "leaf.joint.tenon.length", *stated)
	case usual > most:
		long = r.derive(name+".length", most, "less than "+formula+": what the mortise's depth in "+limit.label+" allows, down to the next tick", "tenon.room", "tick")
	default:
		long = r.derive(name+".length", usual.DownTo(r.tick), formula+", down to the next tick; "+source, "tenon.thickness", "tick")
	}
	mortise = r.derive(name+".mortise", long+room, "the tenon's length and a little for glue", name+".length", "tenon.room")
	if mortise > limit.most {
		left := limit.size - mortise
		if limit.twice {
			left -= mortise
		}
		r.stop("leaf.joint.tenon.length", RuleTenonLength, "tenons %v long need mortises %v deep; %s is %v that way and keeps %v: at least %v must be left; tenons up to %v fit", long, mortise, limit.label, limit.size, left, jointBehind.in(r.units), max(0, most))
	} else if long < thick {
		r.warn("leaf.joint.tenon.length", RuleTenonLength, "a tenon %v thick and %v long holds little; %v or longer is better", thick, long, thick)
	}
	return long, mortise
}

// tenonEdge resolves the shoulder at the free edges of bottom and top rail.
func (r *resolver) tenonEdge() {
	leaf, stated := r.set.Leaf, r.model.Leaf.Joint.Tenon.Edge
	t := &r.set.Leaf.Joint.Tenon
	if stated != nil {
		t.Edge = r.given("tenon.edge", "leaf.joint.tenon.edge", *stated)
	} else {
		narrow := min(leaf.Rails[0].Width(), leaf.Rails[leaf.Rows()].Width())
		t.Edge = r.derive("tenon.edge", (narrow / 3).DownTo(r.tick), "a third of the narrower of bottom and top rail, down to the next tick; "+r.practice("haunch-width"), "rail.bottom", "rail.top", "tick")
	}
	if least := leastEnd.in(r.units); t.Edge < least {
		r.stop("leaf.joint.tenon.edge", RuleTenonEdge, "%v of wood between a mortise and the stile's end shears out; at least %v is needed, or a bridle joint", t.Edge, least)
	}
}

// tenonRange is the stretch across a member, from its lower or left edge, in
// which its tenon may lie.
func (r *resolver) tenonRange(m Meeting) (low, high length.Length) {
	clear, edge := seatClear.in(r.units), r.set.Leaf.Joint.Tenon.Edge
	if m.Kind == MortiseAndTenon && r.set.Leaf.Rabbet.Kind == Groove {
		clear = 0 // the tenon begins at the groove's floor
	}
	return m.across(clear, edge)
}

// tenonWidth resolves a tenon's width across the face.
func (r *resolver) tenonWidth(m Meeting, name string, stated *length.Length) length.Length {
	low, high := r.tenonRange(m)
	room, widest := high-low, widestTenon.in(r.units)
	wide, least := room, leastTenon.in(r.units)
	switch {
	case m.Kind == MortiseAndTenon:
		wide = r.derive(name+".width", room, "the member's width less what the panel's seats and the edge shoulder take", "rabbet.width")
	case stated != nil:
		wide = r.derive(name+".width", *stated, "as stated", "tenon.width")
	default:
		wide = r.derive(name+".width", min(room, widest), "the member's width less what the panel's seats and the edge shoulder take, but no more than is good for a tenon; "+r.practice("tenon-width"), "rabbet.width")
	}
	if m.Kind == LooseTenon {
		least = max(least, r.set.Leaf.Joint.Tenon.Thickness)
	}
	switch {
	case wide > room:
		r.stop("leaf.joint.tenon.width", RuleTenonRoom, "a loose tenon %v wide does not fit %s: clear of the panel's seats and its edges there is %v", wide, m.Member, room)
	case wide < least:
		r.stop("leaf.joint", RuleTenonRoom, "beside the panel's seats and edge shoulders %s, %v wide, has %v for a tenon; it needs at least %v: a wider member, a thinner tenon or a smaller edge shoulder", m.Member, m.Width(), wide, least)
	case wide > widest:
		r.warn("leaf.joint", RuleTenonWide, "the tenon of %s is %v wide; above %v it swells and shrinks enough to work loose: a larger edge shoulder or a narrower rail", m.Member, wide, widest)
	}
	return wide
}

// haunch resolves the step of the tenon in the edge shoulder.
func (r *resolver) haunch() {
	leaf, asked := r.set.Leaf, r.model.Leaf.Joint.Tenon.Haunch
	t := &r.set.Leaf.Joint.Tenon
	through := leaf.Rabbet.Kind == Groove && leaf.Rabbet.Through
	switch {
	case leaf.Joint.Kind != MortiseAndTenon:
	case asked == "no":
	case through:
		t.Haunch = r.derive("tenon.haunch", leaf.Rabbet.Width, "as long as the groove is deep, which it fills to the stile's end", "rabbet.width")
	case asked == "yes":
		t.Haunch = r.derive("tenon.haunch", min(max(t.Thickness, haunchLeast.in(r.units)), t.Length.Half()), "as long as the tenon is thick, but not too short, and at most half the tenon; "+r.practice("haunch-length"), "tenon.thickness", "tenon.length")
	}
}

// jointGroove holds the tenons against a groove that runs through the stiles:
// they must fill it, to the stile's end.
func (r *resolver) jointGroove() {
	seat, t := r.set.Leaf.Rabbet, r.set.Leaf.Joint.Tenon
	switch {
	case seat.Kind != Groove || !seat.Through || r.set.Leaf.Joint.Kind != MortiseAndTenon:
	case t.Front > seat.From || t.Front+t.Thickness < seat.To:
		r.stop("leaf.joint.tenon", RuleTenonGroove, "the tenon lies from %v to %v behind the front and does not fill the groove, %v to %v, that runs through the stiles: make it at least %v thick, or stop the groove", t.Front, t.Front+t.Thickness, seat.From, seat.To, seat.To-seat.From)
	case r.model.Leaf.Joint.Tenon.Haunch == "no":
		r.warn("leaf.joint.tenon.haunch", RuleTenonHaunch, "the groove, %v wide and %v deep, runs through the stiles and without a haunch stays open at their ends: leave the haunch, or stop the groove", seat.Depth, seat.Width)
	}
}

// tenonSpan is where a member's tenon lies across: from and to.
func (b *bench) tenonSpan(m Meeting) (from, to length.Length) {
	t := b.leaf.Joint.Tenon
	low, high := b.tenonRange(m)
	wide := t.MuntinWidth
	if i := b.leaf.rail(m.Member); i >= 0 {
		wide = t.Width[i]
	}
	from = m.From + low + (high - low - wide).Half()
	return from, from + wide
}

// tenonLengths are the length of a member's tenon and the depth of its mortise.
func (j Joint) tenonLengths(m Meeting) (long, mortise length.Length) {
	if m.ofMuntin() {
		return j.Tenon.MuntinLength, j.Tenon.MuntinMortise
	}
	return j.Tenon.Length, j.Tenon.Mortise
}

// tenonEnd cuts one end's tenon and its mortise.
func (b *bench) tenonEnd(m Meeting) {
	t, thick := b.leaf.Joint.Tenon, b.leaf.Thickness
	long, deep := b.leaf.Joint.tenonLengths(m)
	front, back := t.Front, t.Front+t.Thickness
	low, high := b.tenonSpan(m)
	part, into := b.member(m.Member), b.member(m.Into)
	part.reach(m.Point(-long, 0, 0).Along(m.Axis))
	part.cut(m.Block(-long, 0, 0, front, m.From, m.To), "tenon")
	part.cut(m.Block(-long, 0, back, thick, m.From, m.To), "tenon")
	into.cut(m.Block(-deep, 0, front, back, low, high), "mortise")
	for _, side := range []struct {
		from, to length.Length
		free     bool
	}{{m.From, low, m.Low == 0}, {high, m.To, m.High == 0}} {
		step := length.Length(0)
		if side.free {
			step = t.Haunch
		}
		part.cut(m.Block(-long, -step, front, back, side.from, side.to), "tenon")
		if step > 0 {
			into.cut(m.Block(-step, 0, front, back, side.from, side.to), "haunch")
		}
	}
}
