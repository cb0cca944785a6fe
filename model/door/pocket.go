package door

import (
	"fmt"
	"math"
	"slices"

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
// holes at each rail end.
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
	leaf.Joint.Pocket, leaf.Joint.Reach = p, p.Reach
	r.pocketFits(slope, practice)
	if j.Muntin == PocketScrew || j.Muntin == "" {
		r.muntinPocketsFit()
	}
	r.pocketHoles(practice)
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
	if left := leaf.Stile - p.Bite; left < clear {
		r.stop("leaf.joint.screw", RulePocketTip, "a pocket screw %v long goes %v into a stile %v wide and leaves %v; at least %v is needed", p.Screw, p.Bite, leaf.Stile, left, clear)
	}
	if room := leaf.Width - 2*leaf.Stile; 2*p.Reach > room {
		r.stop("leaf.joint", RulePocketRoom, "pockets reach %v from both ends of rails %v long and meet; the rails must be at least %v", p.Reach, room, (2 * p.Reach).UpTo(r.tick))
	}
}

// muntinPocketsFit checks the pockets and screws of muntins against their length
// and the rails.
func (r *resolver) muntinPocketsFit() {
	p, clear := r.set.Leaf.Joint.Pocket, screwClear.in(r.units)
	for _, m := range r.set.Leaf.Meetings {
		if m.Axis != solid.Z {
			continue
		}
		ends := length.Length(1)
		if m.Opposite {
			ends = 2
		}
		if left := m.Deep - ends*p.Bite; left < clear {
			r.stop("leaf.joint.screw", RulePocketTip, "pocket screws of muntins go %v into rail %s, %v wide, and leave %v between tip and tip or edge; at least %v is needed: rails from %v", p.Bite, m.Into, m.Deep, left, clear, (ends*p.Bite + clear).UpTo(r.tick))
			return
		}
		if room := r.lengthOf(m); 2*p.Reach > room {
			r.stop("leaf.joint", RulePocketRoom, "pockets reach %v from both ends of muntins %v long and meet; the muntins must be at least %v", p.Reach, room, (2 * p.Reach).UpTo(r.tick))
			return
		}
	}
}

// lengthOf is the length of a muntin between its shoulders.
func (r *resolver) lengthOf(m Meeting) length.Length {
	for _, muntin := range r.set.Leaf.Muntins {
		if muntin.Label == m.Member {
			return r.set.Leaf.Lite(muntin.Row, 0).Sight.Height()
		}
	}
	return 0
}

// pocketHoles counts and checks the holes at each rail end.
func (r *resolver) pocketHoles(practice catalog.PocketHole) {
	leaf := &r.set.Leaf
	for i, rail := range leaf.Rails {
		n := r.model.Leaf.Joint.HolesPerEnd
		if n == 0 {
			n = catalog.PocketHoles(rail.Width())
		}
		low, high := r.pocketRange(i, practice)
		apart := holeApart.in(r.units)
		if high < low || (n > 1 && (high-low) < length.Length(n-1)*apart) {
			r.stop("leaf.joint", RulePocketRoom, "%d pocket holes at each end of rail %v need %v between the rabbets; there is %v for their centres: fewer holes or a wider rail", n, rail.Label, length.Length(n-1)*apart, max(0, high-low))
			return
		}
		leaf.Joint.Pocket.PerEnd = append(leaf.Joint.Pocket.PerEnd, n)
		leaf.Joint.Pocket.Holes += 2 * n
		for k, z := range r.holeHeights(i, n, practice) {
			r.derive(fmt.Sprintf("pocket.R%d.%d", i+1, k+1), z-rail.From, "pocket hole's centre above the rail's lower edge: clear of rabbets and free edges, evenly between", fmt.Sprintf("rail.%d.centre", i+1), "rabbet.width", "pocket.diameter")
		}
	}
}

// pocketRange is the stretch of a rail, above its lower edge, in which the
// centres of pocket holes may lie.
func (r *resolver) pocketRange(i int, practice catalog.PocketHole) (low, high length.Length) {
	leaf := r.set.Leaf
	free := outerHole.in(r.units)
	milled := leaf.Rabbet.Width + practice.KeepOut + leaf.Joint.Pocket.Diameter.Half()
	low, high = max(free, milled), leaf.Rails[i].Width()-max(free, milled)
	if i == 0 {
		low = free
	}
	if i == len(leaf.Rails)-1 {
		high = leaf.Rails[i].Width() - free
	}
	return low.UpTo(r.tick), high.DownTo(r.tick)
}

// holeHeights are the heights of a rail's pocket holes above the leaf's bottom.
func (r *resolver) holeHeights(i, n int, practice catalog.PocketHole) []length.Length {
	low, high := r.pocketRange(i, practice)
	from := r.set.Leaf.Rails[i].From
	if n == 1 {
		return []length.Length{from + (low + high).Half()}
	}
	at := from + low
	heights := []length.Length{at}
	for _, step := range r.share(high-low, n-1) {
		at += step
		heights = append(heights, at)
	}
	return heights
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
	i := slices.IndexFunc(b.leaf.Rails, func(rail Rail) bool { return rail.Label == m.Member })
	if i < 0 {
		return []length.Length{m.From + (m.To - m.From).Half()} // a muntin's
	}
	return b.holeHeights(i, b.leaf.Joint.Pocket.PerEnd[i], catalog.PocketPractice())
}
