package door

import (
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// pull resolves the flush pulls: their sizes, the parts they are let into and
// their places across. Their heights are found on the bench.
func (r *resolver) pull() {
	p := r.model.Leaf.Pull
	switch {
	case p == nil:
		return
	case p.Width == nil || p.Depth == nil:
		r.stopped = true // spec has said so
		return
	}
	pull := Pull{Round: p.Shape == "round", Width: r.given("pull.width", "leaf.pull.width", *p.Width), Depth: r.given("pull.depth", "leaf.pull.depth", *p.Depth)}
	pull.Height = pull.Width
	switch {
	case pull.Round && (p.Height != nil || p.Radius != nil):
		r.stop("leaf.pull", RulePullShape, "a round pull %v across has no height or corner radius of its own: leave them out, or choose rectangular", pull.Width)
		return
	case !pull.Round && p.Height == nil:
		r.stop("leaf.pull", RulePullShape, "a rectangular pull %v wide needs its height too: state leaf.pull.height", pull.Width)
		return
	case !pull.Round:
		pull.Height = r.given("pull.height", "leaf.pull.height", *p.Height)
		pull.Radius = r.sized("pull.radius", "leaf.pull.radius", p.Radius, pullRadius)
		if side := min(pull.Width, pull.Height); 2*pull.Radius > side {
			r.stop("leaf.pull.radius", RulePullShape, "a cutter that leaves corners of %v is %v across and does not go into a mortise %v by %v: a radius of up to %v", pull.Radius, 2*pull.Radius, pull.Width, pull.Height, side.Half())
		}
	}
	pull.Rim = r.sized("pull.rim", "leaf.pull.rim", p.Rim, pullRim)
	r.pullDepth(pull)
	r.pullPasses(pull)
	if !r.stopped {
		r.pullParts(pull)
	}
}

// pullFaces tells which faces carry pulls, false for the front.
func (r *resolver) pullFaces() []bool {
	switch r.model.Leaf.Pull.Face {
	case "back":
		return []bool{true}
	case "both":
		return []bool{false, true}
	default:
		return []bool{false}
	}
}

// pullDepth checks the mortises against the thickness.
func (r *resolver) pullDepth(pull Pull) {
	leaf, floor, faces := r.set.Leaf, pullFloor.in(r.units), r.pullFaces()
	n := length.Length(len(faces))
	if left := leaf.Thickness - n*pull.Depth; left < floor {
		r.stop("leaf.pull.depth", RulePullDepth, "%d pull mortises %v deep leave %v of a frame %v thick; at least %v must stay: up to %v deep", len(faces), pull.Depth, left, leaf.Thickness, floor, ((leaf.Thickness - floor) / n).DownTo(r.tick))
	}
}

// pullPasses checks the rims against the face gap: the front leaf's back and
// the back leaf's front pass one another.
func (r *resolver) pullPasses(pull Pull) {
	gap, least := r.set.Track.FaceGap, leastFaceGap.in(r.units)
	proud := length.Length(len(r.pullFaces())) * pull.Rim
	left := r.derive("pull.face_gap", gap-proud, "face gap less the rims that pass in it", "track.face_gap", "pull.rim")
	switch {
	case left <= 0:
		r.stop("leaf.pull.rim", RulePullProud, "rims stand %v in all into a face gap of %v: the leaves cannot pass; a channel spacing from %v leaves %v", proud, gap, r.set.Track.Spacing-left+least, least)
	case left < least:
		r.warn("leaf.pull.rim", RulePullProud, "rims stand %v into a face gap of %v and leave %v; passing leaves want at least %v", proud, gap, left, least)
	}
}

// pullParts enters a pull for each part and face, placed across the leaf.
func (r *resolver) pullParts(pull Pull) {
	leaf, p := &r.set.Leaf, r.model.Leaf.Pull
	labels := map[string][]string{"": {leftStile, rightStile}, "stiles": {leftStile, rightStile}, "left-stile": {leftStile}, "right-stile": {rightStile}}[p.In]
	var inset length.Length
	if p.In == "cross-rail" {
		if p.Inset != nil {
			r.stop("leaf.pull.inset", RulePullPlace, "a pull in a cross rail stands in its middle, %v from the leaf's edge; an inset of %v is for pulls in stiles: leave it out", leaf.Width.Half(), *p.Inset)
			return
		}
		rail, found := r.pullRail()
		if !found {
			return
		}
		labels, inset = []string{rail.Label}, r.derive("pull.across", leaf.Width.Half(), "the middle of the leaf", "leaf.width")
	} else if p.Inset != nil {
		inset = r.given("pull.inset", "leaf.pull.inset", *p.Inset)
	} else {
		inset = r.derive("pull.inset", leaf.Stile.Half(), "from the stile's outer edge to its middle", "leaf.stile")
	}
	for _, label := range labels {
		for _, back := range r.pullFaces() {
			pull.Label, pull.Back, pull.Centre.X = label, back, inset
			if label == rightStile {
				pull.Centre.X = leaf.Width - inset
			}
			leaf.Pulls = append(leaf.Pulls, pull)
		}
	}
}

// pullRail is the cross rail that carries the pull: the one at the height
// stated, else the widest, and of several the one nearest to the common height.
func (r *resolver) pullRail() (Rail, bool) {
	crosses := r.set.Leaf.Rails[1 : len(r.set.Leaf.Rails)-1]
	if len(crosses) == 0 {
		r.stop("leaf.pull.in", RulePullPlace, "the leaf has %d rails and no cross rail to take a pull: choose stiles, or give it more rows of lites", len(r.set.Leaf.Rails))
		return Rail{}, false
	}
	if up := r.model.Leaf.Pull.Up; up != nil {
		nearest := crosses[0]
		for _, rail := range crosses {
			if rail.From <= *up && *up <= rail.To {
				return rail, true
			}
			if (rail.Centre() - *up).Abs() < (nearest.Centre() - *up).Abs() {
				nearest = rail
			}
		}
		r.stop("leaf.pull.up", RulePullPlace, "no cross rail is %v above the leaf's bottom; the nearest, %s, has its middle at %v", *up, nearest.Label, nearest.Centre())
		return Rail{}, false
	}
	wanted := pullUp.in(r.units)
	return slices.MaxFunc(crosses, func(a, b Rail) int {
		if a.Width() != b.Width() {
			return int(max(-1, min(1, a.Width()-b.Width())))
		}
		return int(max(-1, min(1, (b.Centre()-wanted).Abs()-(a.Centre()-wanted).Abs())))
	}), true
}

// mortise is the prism a pull's mortise takes.
func (l Leaf) mortise(p Pull) solid.Prism {
	box := plane.BoxOf(p.Centre.Add(-p.Width.Half(), -p.Height.Half()), p.Centre.Add(p.Width-p.Width.Half(), p.Height-p.Height.Half()))
	way := plane.RoundedRect(box, p.Radius)
	if p.Round {
		way = plane.Circle(p.Centre, p.Width.Half())
	}
	prism := solid.Prism{Axis: solid.Y, Region: plane.Region{way}, To: p.Depth}
	if p.Back {
		prism.From, prism.To = l.Thickness-p.Depth, l.Thickness
	}
	return prism
}

// letIn finds the pulls' height and cuts their mortises.
func (b *bench) letIn() {
	leaf := b.leaf
	if len(leaf.Pulls) == 0 {
		return
	}
	others := map[string][]taken{}
	for _, pull := range leaf.Pulls {
		others[pull.Label] = b.besides(pull.Label)
	}
	up, found := b.pullUp(others)
	if !found {
		return
	}
	for i := range leaf.Pulls {
		leaf.Pulls[i].Centre.Y = up
		b.member(leaf.Pulls[i].Label).cut(leaf.mortise(leaf.Pulls[i]), "pull")
	}
}

// pullUp is the height of the pulls' middles: as stated, the middle of their
// cross rail, or the one nearest to the common height where they are clear of
// what is taken from their parts.
func (b *bench) pullUp(others map[string][]taken) (length.Length, bool) {
	leaf, p := b.leaf, b.model.Leaf.Pull
	part := b.member(leaf.Pulls[0].Label)
	if p.Up != nil {
		up := b.given("pull.up", "leaf.pull.up", *p.Up)
		return up, b.pullClear(up, others, "leaf.pull.up")
	}
	if part.role == RailRole {
		up := b.derive("pull.up", part.least.Z+(part.most.Z-part.least.Z).Half(), "the middle of the widest cross rail, of several the one nearest to the common height", "leaf.height")
		return up, b.pullClear(up, others, "leaf.pull")
	}
	wanted := b.assume("pull.wanted", min(pullUp.in(b.units), leaf.Height.Half().DownTo(b.tick)), pullUp.reason, houseRule)
	for off := length.Length(0); off <= leaf.Height; off += b.tick {
		for _, up := range []length.Length{wanted + off, wanted - off} {
			if b.pullClear(up, others, "") {
				return b.derive("pull.up", up, "height above the leaf's bottom nearest to the one wanted at which the mortises are clear of joints, seat and screws", "pull.wanted"), true
			}
		}
	}
	return wanted, b.pullClear(wanted, others, "leaf.pull")
}

// pullClear tells whether the mortises at that height stand in their parts'
// faces and clear of the others; what is in the way it says at the path, if
// there is one.
func (b *bench) pullClear(up length.Length, others map[string][]taken, path string) bool {
	beside, clear := pullBeside.in(b.units), screwClear.in(b.units)
	for _, pull := range b.leaf.Pulls {
		pull.Centre.Y = up
		part := b.member(pull.Label)
		room := plane.BoxOf(part.least.Flat(solid.Y), part.most.Flat(solid.Y)).Grow(-beside)
		mortise := b.leaf.mortise(pull)
		if around := mortise.Region.Bounds(); around.Join(room) != room {
			if path != "" {
				left := min(around.Min.X-part.least.X, around.Min.Y-part.least.Z, part.most.X-around.Max.X, part.most.Z-around.Max.Y)
				b.stop(path, RulePullPlace, "a pull %v by %v leaves %v to the edge of %s, %v by %v; at least %v is needed", pull.Width, pull.Height, left, pull.Label, part.most.X-part.least.X, part.most.Z-part.least.Z, beside)
			}
			return false
		}
		if o, off, near := nearest([]taken{{prism: &mortise}}, others[pull.Label], clear); near {
			if path != "" {
				b.stop(path, RulePullPlace, "a pull %v above the leaf's bottom, let %v into %s, comes within %v of a %s there; at least %v must be left: move it, or take a smaller or shallower one", up, pull.Depth, pull.Label, off, o.what, clear)
			}
			return false
		}
	}
	return true
}

// besides is what is taken from a part, and from its neighbours where they
// meet.
func (b *bench) besides(label string) []taken {
	part := b.member(label)
	body := part.blank()
	return slices.DeleteFunc(b.taken(), func(o taken) bool { return o.box().Gap(body) > 0 })
}
