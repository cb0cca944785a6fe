package door

import (
	"slices"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/solid"
)

// hangers resolves the screws of the hangers; their places along the leaf's
// top are found on the bench.
func (r *resolver) hangers() {
	h, leaf := r.model.Hanging.Hangers, &r.set.Leaf
	gauge := h.Screw.Gauge
	if gauge == 0 {
		gauge = gaugeOfHanger
	}
	screw, err := catalog.Screw(gauge)
	if err != nil {
		r.stop("hanging.hangers.screw.gauge", RuleScrewGauge, "%v", err)
		return
	}
	clear := screwClear.in(r.units)
	hanger := Hanger{Screw: screw, Apart: r.sized("hanger.apart", "hanging.hangers.apart", h.Apart, hangerApart)}
	wood, pilot := r.set.Stock.Species.Class, screw.Soft
	if wood == catalog.Hardwood {
		pilot = screw.Hard
	}
	hanger.Pilot = r.assume("hanger.pilot", pilot, "pilot drill of the screw in "+wood.String(), screw.Drills.String())
	top := leaf.Rails[len(leaf.Rails)-1]
	holds := top.Width() - leaf.Rabbet.Width - clear
	switch stated := h.Screw.Length; {
	case stated != nil:
		hanger.Length = r.given("hanger.screw.length", "hanging.hangers.screw.length", *stated)
	case holds < hangerScrew.in(r.units):
		hanger.Length = r.derive("hanger.screw.length", holds.DownTo(r.tick), "what the top rail holds above the panel's seat, down to the next tick: less than the common screw", "rail.top", "rabbet.width")
	default:
		hanger.Length = r.assume("hanger.screw.length", hangerScrew.in(r.units), hangerScrew.reason, houseRule)
	}
	leaf.Hanger = hanger
	if hanger.Length > holds {
		r.stop("hanging.hangers.screw.length", RuleHangerScrew, "hanger screws going %v down into a top rail %v wide, with %v of it for the panel's seat, leave %v; at least %v is needed: screws up to %v", hanger.Length, top.Width(), leaf.Rabbet.Width, holds+clear-hanger.Length, clear, max(0, holds.DownTo(r.tick)))
	}
	if least := leastGrip.in(r.units); hanger.Length < least {
		r.stop("hanging.hangers", RuleHangerScrew, "a top rail %v wide, with %v of it for the panel's seat, holds hanger screws of %v; they need at least %v: a wider top rail", top.Width(), leaf.Rabbet.Width, hanger.Length, least)
	}
	if h := hanger.Apart - screw.Diameter; hanger.Apart > 0 && h < clear {
		r.stop("hanging.hangers.apart", RuleHangerScrew, "a hanger's two screws, %v thick and %v apart, leave %v between them; at least %v is needed: from %v, or 0 for one screw", screw.Diameter, hanger.Apart, max(0, h), clear, (screw.Diameter + clear).UpTo(r.tick))
	}
	if left := (leaf.Thickness - screw.Diameter).Half(); left < clear {
		r.stop("hanging.hangers.screw.gauge", RuleHangerScrew, "a hanger screw %v thick in the middle of a frame %v thick leaves %v on both sides; at least %v is needed", screw.Diameter, leaf.Thickness, left, clear)
	}
}

// hangerHoles finds where the hangers stand and bores for their screws.
func (b *bench) hangerHoles() {
	inset, found := b.hangerInset()
	if !found {
		return
	}
	leaf := b.leaf
	b.set.Track.HangerAt = [2]length.Length{inset, leaf.Width - inset}
	for _, hole := range leaf.hangerBores(inset) {
		for _, m := range b.members {
			if m.least.X < hole.From.X && hole.From.X < m.most.X && m.most.Z == leaf.Height {
				m.bore(hole)
			}
		}
		leaf.Screws = append(leaf.Screws, Screw{Head: hole.From, Tip: hole.To, Diameter: leaf.Hanger.Screw.Diameter, For: "hanger"})
	}
	if apart, least := leaf.Width-2*inset, leaf.Width/3; apart < least {
		b.warn("hanging.hangers", RuleHangerPlace, "the hangers stand %v from one another under a leaf %v wide; less than a third, %v, lets it tip as it is pushed", apart, leaf.Width, least)
	}
}

// hangerBores are the pilot bores of both hangers, from the left, each hanger's
// middle so far from the leaf's side.
func (l Leaf) hangerBores(inset length.Length) []solid.Bore {
	h := l.Hanger
	half := h.Apart.Half()
	places := []length.Length{inset - half, inset + half, l.Width - inset + half, l.Width - inset - half}
	if half == 0 {
		places = []length.Length{inset, l.Width - inset}
	}
	var bores []solid.Bore
	for _, x := range places {
		from := solid.Vec{X: x, Y: l.Thickness.Half(), Z: l.Height}
		bores = append(bores, solid.Bore{From: from, To: from.Add(solid.Vec{Z: -h.Length}), Diameter: h.Pilot, For: "hanger screw"})
	}
	return bores
}

// hangerInset is how far from the leaf's sides the middles of its hangers
// stand: as stated, else the common distance, or as much more as brings their
// screws into the top rail and clear of the joint.
func (b *bench) hangerInset() (length.Length, bool) {
	leaf, others := b.leaf, b.hangerOthers()
	half := leaf.Hanger.Apart.Half()
	if stated := b.model.Hanging.Hangers.Inset; stated != nil {
		inset, path := b.given("hanger.inset", "hanging.hangers.inset", *stated), "hanging.hangers.inset"
		return inset, b.hangerClear(inset, others, path) && b.hangerFits(inset, path)
	}
	wanted := b.assume("hanger.wanted", hangerInset.in(b.units), hangerInset.reason, houseRule)
	rail := leaf.Stile + half + leaf.Hanger.Screw.Diameter.Half() + screwClear.in(b.units)
	most := leaf.Width.Half() - half - hangerPlate/2
	for inset := max(wanted, rail.UpTo(b.tick)); inset <= most; inset += b.tick {
		if b.hangerClear(inset, others, "") {
			return b.derive("hanger.inset", inset, "leaf's side to the middle of its hanger: as wanted, or the least at which its screws go into the top rail and clear of the joint", "hanger.wanted", "leaf.stile", "hanger.apart"), true
		}
	}
	for inset := min(most, rail).DownTo(b.tick); inset > half; inset -= b.tick {
		if b.hangerFits(inset, "") && b.hangerClear(inset, others, "") {
			b.hangerFits(inset, "hanging.hangers")
			return b.derive("hanger.inset", inset, "leaf's side to the middle of its hanger: the rail has no room clear of the joints, so into the stile", "leaf.stile", "hanger.apart"), true
		}
	}
	b.stop("hanging.hangers", RuleHangerPlace, "nowhere along a leaf %v wide are hanger screws %v long and %v apart clear of the joints by %v: shorter screws, or hangers with one screw", leaf.Width, leaf.Hanger.Length, leaf.Hanger.Apart, screwClear.in(b.units))
	return 0, false
}

// hangerFits tells whether hangers so far from the sides stand on the leaf's
// top and apart from one another. At the path, if there is one, it says so, or
// that their screws go into end grain.
func (b *bench) hangerFits(inset length.Length, path string) bool {
	leaf, h, clear := b.leaf, b.leaf.Hanger, screwClear.in(b.units)
	edge := h.Apart.Half() + h.Screw.Diameter.Half() + clear
	most := leaf.Width.Half() - h.Apart.Half() - hangerPlate/2
	switch {
	case path == "" || inset >= edge && inset <= most && inset-h.Apart.Half() > leaf.Stile:
	case inset < edge:
		b.stop(path, RuleHangerPlace, "the screws of a hanger %v from the leaf's side, %v apart, leave %v to the stile's edge; at least %v is needed: from %v", inset, h.Apart, max(0, inset-edge+clear), clear, edge.UpTo(b.tick))
	case inset > most:
		b.stop(path, RuleHangerPlace, "hangers %v from the sides of a leaf %v wide meet in its middle; up to %v fits", inset, leaf.Width, most.DownTo(b.tick))
	default:
		b.warn(path, RuleHangerPlace, "a hanger %v from the leaf's side has a screw in the end grain of a stile %v wide, where it holds little; from %v both go into the top rail", inset, leaf.Stile, (leaf.Stile + edge).UpTo(b.tick))
	}
	return inset >= edge && inset <= most
}

// hangerOthers is what the hangers' screws have to stand clear of: all that is
// taken from rail and stiles, but for worked edges.
func (b *bench) hangerOthers() []taken {
	return slices.DeleteFunc(b.taken(), func(o taken) bool {
		return o.what == "roundover" || o.what == "chamfer" || o.box().Gap(solid.Block(solid.Vec{Z: b.leaf.Height}, solid.Vec{X: b.leaf.Width, Y: b.leaf.Thickness, Z: b.leaf.Height - b.leaf.Hanger.Length})) > screwClear.in(b.units).MM()
	})
}

// hangerClear tells whether the screws of hangers so far from the sides are
// clear of the others and of the joint's line; at the path, if there is one, it
// says what is in the way.
func (b *bench) hangerClear(inset length.Length, others []taken, path string) bool {
	leaf, clear := b.leaf, screwClear.in(b.units)
	for _, hole := range leaf.hangerBores(inset) {
		hole.Diameter = leaf.Hanger.Screw.Diameter
		if left := min((hole.From.X-leaf.Stile).Abs(), (leaf.Width-leaf.Stile-hole.From.X).Abs()) - hole.Diameter.Half(); left < clear {
			if path != "" {
				b.stop(path, RuleHangerPlace, "a hanger screw %v from the leaf's left comes within %v of the joint of rail and stile; at least %v must be left", hole.From.X, max(0, left), clear)
			}
			return false
		}
		if o, off, near := nearest([]taken{{bore: &hole}}, others, clear); near {
			if path != "" {
				b.stop(path, RuleHangerPlace, "a hanger screw %v from the leaf's left comes within %v of a %s in %s; at least %v must be left: another inset, or a shorter screw", hole.From.X, off, o.what, o.part, clear)
			}
			return false
		}
	}
	return true
}
