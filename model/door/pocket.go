package door

import (
	"fmt"
	"math"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/solid"
)

// A slope is a direction in the X–Y plane that rises from the rail's end
// towards its back.
type slope struct{ cos, sin float64 }

// along is the way along the slope: how far in X and in Y.
func (s slope) along(way length.Length) (x, y length.Length) {
	return length.Round(float64(way.MM() * s.cos)), length.Round(float64(way.MM() * s.sin))
}

func (p Pocket) slope() slope {
	sin, cos := math.Sincos(p.Angle * math.Pi / 180)
	return slope{cos: cos, sin: sin}
}

// pocket resolves the pocket-screw joint: screw, stop collar, tip, and the
// holes at each member's end.
func (r *resolver) pocket() {
	j, leaf, practice := r.model.Leaf.Joint, &r.set.Leaf, catalog.PocketPractice()
	p := Pocket{Angle: practice.Angle, Diameter: r.assume("pocket.diameter", practice.Pocket, "body of the stepped bit", practice.Drilling.String())}
	if j.Screw != nil {
		p.Screw = r.given("pocket.screw", "leaf.joint.screw", *j.Screw)
	} else {
		row, err := catalog.PocketScrewFor(leaf.Thickness)
		if err != nil {
			r.stop("leaf.joint", RulePocketThickness, "%v", err)
			return
		}
		p.Screw = r.assume("pocket.screw", row.Screw, "pocket screw for stock of this thickness", row.Source.String())
	}
	p.Shoulder = r.derive("pocket.shoulder", p.Screw.Half(), "half the screw: it holds as much in the stile as it crosses in the rail", "pocket.screw")
	slope, mid, radius := p.slope(), leaf.Thickness.Half(), p.Diameter.Half()
	r.derive("pocket.entry", mid, "the screw crosses the joint at the middle of the thickness", "leaf.thickness")
	biteX, biteY := slope.along(p.Screw - p.Shoulder)
	p.Bite = r.derive("pocket.bite", biteX, "screw beyond the rail's end, square to the joint: (screw − shoulder) × cos 15°", "pocket.screw", "pocket.shoulder")
	p.Tip = r.derive("pocket.tip", mid-biteY, "half the thickness − (screw − shoulder) × sin 15°, from the front face", "leaf.thickness", "pocket.screw", "pocket.shoulder")
	reach := float64(mid.MM()*slope.cos/slope.sin) + radius.MM()/slope.sin
	p.Reach = r.derive("pocket.reach", length.Round(reach), "half the thickness ÷ tan 15° + pocket radius ÷ sin 15°, along the rail", "leaf.thickness", "pocket.diameter")
	if p.Plugs = j.Plugs == "yes"; p.Plugs {
		plug := float64(mid.MM()/slope.sin) + float64(radius.MM()*slope.cos)/slope.sin
		p.Plug = r.derive("pocket.plug", length.Round(plug)-p.Shoulder, "along the pocket from the screw's head to the far end of its mouth: (half the thickness + radius × cos 15°) ÷ sin 15° − shoulder", "leaf.thickness", "pocket.diameter", "pocket.shoulder")
	}
	leaf.Joint.Pocket = p
	r.pocketFits(slope, practice)
	if leaf.Joint.Kind == PocketScrew {
		leaf.Joint.Reach = p.Reach
		r.railPockets(practice)
	}
	if leaf.Joint.Muntin == PocketScrew && !r.stopped {
		leaf.Joint.MuntinReach = p.Reach
		r.muntinPockets(practice)
	}
}

// pocketFits checks pocket and screw against thickness and stile.
func (r *resolver) pocketFits(slope slope, practice catalog.PocketHole) {
	leaf, p := r.set.Leaf, r.set.Leaf.Joint.Pocket
	clear := screwClear.in(r.units)
	_, up := slope.along(p.Shoulder)
	lift, _ := slope.along(p.Diameter.Half())
	if top := leaf.Thickness.Half() + up + lift; top > leaf.Thickness {
		r.stop("leaf.joint.screw", RulePocketShoulder, "with a screw of %v the pocket's floor lies %v from the front of a rail %v thick: the pocket is open at its floor and the screw head has no seat; take a shorter screw", p.Screw, top, leaf.Thickness)
	}
	if p.Tip < clear {
		r.stop("leaf.joint.screw", RulePocketTip, "the tip of a pocket screw %v long comes within %v of the stile's front face; at least %v is needed", p.Screw, p.Tip, clear)
	}
	r.pocketBite(clear)
	for _, m := range leaf.ends(PocketScrew) {
		if room := leaf.between(m); 2*p.Reach > room {
			what := "rails"
			if m.ofMuntin() {
				what = "muntins"
			}
			r.stop("leaf.joint", RulePocketRoom, "pockets reach %v from both ends of %s %v long and meet; the %s must be at least %v", p.Reach, what, room, what, (2 * p.Reach).UpTo(r.tick))
			return
		}
	}
}

// pocketBite checks what the screws leave of the parts they go into.
func (r *resolver) pocketBite(clear length.Length) {
	leaf, p := r.set.Leaf, r.set.Leaf.Joint.Pocket
	for _, m := range leaf.ends(PocketScrew) {
		switch left := m.Deep - p.Bite; {
		case m.Opposite && left-p.Bite < clear:
			r.stop("leaf.joint.screw", RulePocketTip, "pocket screws %v long go %v into rail %s from both edges; of its %v they leave %v: at least %v is needed", p.Screw, p.Bite, m.Into, m.Deep, left-p.Bite, clear)
			return
		case left < clear:
			what := "a stile"
			if m.ofMuntin() {
				what = "a rail"
			}
			r.stop("leaf.joint.screw", RulePocketTip, "a pocket screw %v long goes %v into %s %v wide and leaves %v; at least %v is needed", p.Screw, p.Bite, what, m.Deep, left, clear)
			return
		}
	}
}

// railPockets counts and checks the holes at each rail end.
func (r *resolver) railPockets(practice catalog.PocketHole) {
	leaf := &r.set.Leaf
	p := &leaf.Joint.Pocket
	for i, rail := range leaf.Rails {
		n := r.model.Leaf.Joint.HolesPerEnd
		if n == 0 {
			n = catalog.PocketHoles(rail.Width())
		}
		m := leaf.Meetings[2*i]
		low, high := r.pocketRange(m, practice)
		apart := holeApart.in(r.units)
		if high < low || (n > 1 && (high-low) < length.Length(n-1)*apart) {
			r.stop("leaf.joint", RulePocketRoom, "%d pocket holes at each end of rail %v need %v between the rabbets; there is %v for their centres: fewer holes or a wider rail", n, rail.Label, length.Length(n-1)*apart, max(0, high-low))
			return
		}
		p.PerEnd = append(p.PerEnd, n)
		p.Holes += 2 * n
		for k, at := range r.spaced(low, high, n) {
			r.derive(fmt.Sprintf("pocket.R%d.%d", i+1, k+1), at, "pocket hole's centre above the rail's lower edge: clear of rabbets and free edges, evenly between", fmt.Sprintf("rail.%d.centre", i+1), "rabbet.width", "pocket.diameter")
		}
	}
}

// muntinPockets counts the holes at a muntin's ends: as many as for a rail of
// its width, or what there is room for.
func (r *resolver) muntinPockets(practice catalog.PocketHole) {
	leaf := &r.set.Leaf
	p, m := &leaf.Joint.Pocket, leaf.firstMuntin()
	low, high := r.pocketRange(m, practice)
	if high < low {
		r.stop("leaf.muntin", RulePocketRoom, "a pocket %v wide does not fit a muntin %v wide between its rabbets, %v wide and %v clear: muntins from %v, or join them by dowels", p.Diameter, m.Width(), m.Low, practice.KeepOut, (m.Width() + low - high).UpTo(r.tick))
		return
	}
	p.MuntinPerEnd = min(catalog.PocketHoles(m.Width()), 1+int((high-low)/holeApart.in(r.units)))
	p.Holes += 2 * p.MuntinPerEnd * len(leaf.Muntins)
	for k, at := range r.spaced(low, high, p.MuntinPerEnd) {
		r.derive(fmt.Sprintf("pocket.muntin.%d", k+1), at, "pocket hole's centre from the muntin's left edge: clear of the rabbets, evenly between", "rabbet.width", "pocket.diameter")
	}
}

// pocketRange is the stretch of a member, from its lower or left edge, in which
// the centres of pocket holes may lie.
func (r *resolver) pocketRange(m Meeting, practice catalog.PocketHole) (low, high length.Length) {
	free, clear := outerHole.in(r.units), practice.KeepOut+r.set.Leaf.Joint.Pocket.Diameter.Half()
	low, high = free, m.Width()-free
	if m.ofMuntin() {
		low, high = 0, m.Width()
	}
	if m.Low > 0 {
		low = max(low, m.Low+clear)
	}
	if m.High > 0 {
		high = min(high, m.Width()-m.High-clear)
	}
	return low.UpTo(r.tick), high.DownTo(r.tick)
}

// pocketEnd bores one end of a member and enters its screws.
func (b *bench) pocketEnd(m Meeting) {
	practice := catalog.PocketPractice()
	p, slope := b.leaf.Joint.Pocket, b.leaf.Joint.Pocket.slope()
	mid := b.leaf.Thickness.Half()
	way := func(c, along length.Length) solid.Vec {
		a, y := slope.along(along)
		return m.Point(a, mid+y, c)
	}
	// Far enough that the cylinder has wholly left the back, or the end.
	out := length.Round(mid.MM()/slope.sin + p.Diameter.MM()/slope.sin)
	part := b.member(m.Member)
	for _, c := range b.pocketPlaces(m) {
		shoulder := way(c, p.Shoulder)
		part.bore(solid.Bore{From: shoulder, To: way(c, out), Diameter: p.Diameter, For: "pocket"})
		part.bore(solid.Bore{From: shoulder, To: way(c, -practice.Pilot), Diameter: practice.Pilot, For: "pilot"})
		b.leaf.Screws = append(b.leaf.Screws, Screw{Head: shoulder, Tip: way(c, p.Shoulder-p.Screw), Diameter: catalog.GaugeDiameter(practice.Gauge), For: "pocket"})
	}
}

// pocketPlaces are the middles of the pocket holes at a member's end, across it.
func (b *bench) pocketPlaces(m Meeting) []length.Length {
	p := b.leaf.Joint.Pocket
	n := p.MuntinPerEnd
	if i := b.leaf.rail(m.Member); i >= 0 {
		n = p.PerEnd[i]
	}
	low, high := b.pocketRange(m, catalog.PocketPractice())
	return shifted(b.spaced(low, high, n), m.From)
}
