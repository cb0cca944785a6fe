package door

import (
	"fmt"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// edges resolves the worked edges of the frame, one for each face.
func (r *resolver) edges() {
	leaf := &r.set.Leaf
	for i, written := range r.model.Leaf.Edges {
		if written.Size == nil {
			r.stopped = true // spec has said so
			return
		}
		name, path := fmt.Sprintf("edge.%d", i+1), fmt.Sprintf("leaf.edges[%d]", i+1)
		e := Edge{Sight: written.Edge == "sight", Round: written.Shape == "roundover"}
		e.Size = r.given(name+".size", path+".size", *written.Size)
		if e.Sight {
			e.Stop = r.edgeStop(name, path, written)
		}
		for _, back := range []bool{false, true} {
			if written.Face == "both" || (written.Face == "back") == back {
				e.Back = back
				r.edgeOnce(path, e)
				leaf.Edges = append(leaf.Edges, e)
				r.edgeFits(path, e)
			}
		}
	}
}

// edgeStop is how far short of a lite's corners a sight edge stops.
func (r *resolver) edgeStop(name, path string, written spec.Edge) length.Length {
	least, lite := r.smallestLite()
	var stop length.Length
	switch short := lite / 4; {
	case written.Stop != nil:
		stop = r.given(name+".stop", path+".stop", *written.Stop)
	case short < edgeStop.in(r.units):
		stop = r.derive(name+".stop", short.DownTo(r.tick), "a quarter of the smallest lite's shorter side, down to the next tick: less than the common stop")
	default:
		stop = r.assume(name+".stop", edgeStop.in(r.units), edgeStop.reason, houseRule)
	}
	switch {
	case 2*stop >= lite:
		r.stop(path+".stop", RuleEdgeStop, "a sight edge that stops %v short of both corners leaves nothing of the side of a lite %v by %v; up to %v leaves some", stop, least.Width(), least.Height(), (lite - 1).Half().DownTo(r.tick))
	case stop < *written.Size:
		r.stop(path+".stop", RuleEdgeStop, "sight edges of %v that stop %v short of a lite's corner meet in it, where no cutter's pilot can follow; stop at least %v short", *written.Size, stop, *written.Size)
	}
	return stop
}

// smallestLite is the sight of the lite with the shortest side, and that side.
func (r *resolver) smallestLite() (plane.Box, length.Length) {
	var least plane.Box
	shortest := length.Longest
	for _, lite := range r.set.Leaf.Lites {
		if side := min(lite.Sight.Width(), lite.Sight.Height()); side < shortest {
			least, shortest = lite.Sight, side
		}
	}
	return least, shortest
}

// edgeOnce stops when an edge is worked already.
func (r *resolver) edgeOnce(path string, e Edge) {
	for _, before := range r.set.Leaf.Edges {
		if before.Sight == e.Sight && before.Back == e.Back {
			r.stop(path, RuleEdgeTwice, "the %s edge is worked twice, by %v and by %v: keep one", e.place(), before.Size, e.Size)
		}
	}
}

// place is where the edge is, in words.
func (e Edge) place() string {
	return map[bool]string{false: "front ", true: "back "}[e.Back] + map[bool]string{false: "outside", true: "sight"}[e.Sight]
}

// edgeFits checks an edge against the wood it is worked in.
func (r *resolver) edgeFits(path string, e Edge) {
	leaf, clear := r.set.Leaf, screwClear.in(r.units)
	across, other := e.Size, length.Length(0) // what edges take of a stile's face, and of the opposite face
	for _, before := range leaf.Edges[:len(leaf.Edges)-1] {
		switch {
		case before.Back == e.Back && before.Sight != e.Sight:
			across += before.Size
		case before.Back != e.Back && before.Sight == e.Sight:
			other = before.Size
		}
	}
	if left := leaf.Stile - across; left < clear {
		r.stop(path+".size", RuleEdgeSize, "worked edges take %v of a stile's %v face and leave %v of it; at least %v must stay flat", across, leaf.Stile, left, clear)
	}
	if e.Sight {
		r.sightEdgeFits(path, e)
		return
	}
	switch most := leaf.Thickness - clear; {
	case other > 0 && e.Size+other > leaf.Thickness:
		r.stop(path+".size", RuleEdgeSize, "outside edges of %v and %v meet in a stile %v thick; together they may take all of it: up to %v each", other, e.Size, leaf.Thickness, leaf.Thickness.Half())
	case other == 0 && e.Size > most:
		r.stop(path+".size", RuleEdgeSize, "an outside edge of %v leaves %v of a stile %v thick; at least %v must stay: up to %v", e.Size, leaf.Thickness-e.Size, leaf.Thickness, clear, most)
	}
}

// sightEdgeFits checks a sight edge against the lip it is worked in and against
// the faces of rails and muntins, which it takes from both sides.
func (r *resolver) sightEdgeFits(path string, e Edge) {
	leaf, rest := r.set.Leaf, edgeRest.in(r.units)
	wood, side := leaf.Rabbet.Front, "before"
	if e.Back {
		wood, side = leaf.Rabbet.Back, "behind"
	}
	switch left := wood - e.Size; {
	case wood == 0:
		open := map[bool]string{false: "back", true: "front"}[e.Back]
		r.stop(path, RuleEdgeSize, "the panel's seat opens to that face: there is %v of wood %s it, and a sight edge needs more than %v; work the %s face only", wood, side, rest, open)
	case left < rest:
		r.stop(path+".size", RuleEdgeSize, "a sight edge of %v leaves %v of the %v of wood %s the panel's seat; at least %v must stay: up to %v", e.Size, left, wood, side, rest, wood-rest)
	}
	clear := screwClear.in(r.units)
	flat := func(label string, width length.Length) bool {
		left := width - 2*e.Size
		if left < clear {
			r.stop(path+".size", RuleEdgeSize, "sight edges of %v on both sides of %s, %v wide, leave %v of its face; at least %v must stay flat", e.Size, label, width, left, clear)
		}
		return left >= clear
	}
	for _, rail := range leaf.Rails[1 : len(leaf.Rails)-1] {
		if !flat("rail "+rail.Label, rail.Width()) {
			return
		}
	}
	for _, m := range leaf.Muntins {
		if !flat("muntin "+m.Label, m.Width()) {
			return
		}
	}
}

// section is what the edge takes at a corner, in a plane: into the wood lie the
// ways toX and toY, +1 or -1.
func (e Edge) section(corner plane.Point, toX, toY length.Length) plane.Region {
	a, b, centre := corner.Add(toX*e.Size, 0), corner.Add(0, toY*e.Size), corner.Add(toX*e.Size, toY*e.Size)
	turn := plane.Straight
	if e.Round {
		turn = plane.Right
		if toX != toY {
			turn = plane.Left
		}
	}
	path := plane.Path{plane.Line(corner, a), plane.Arc(a, b, centre, turn), plane.Line(b, corner)}
	if toX != toY {
		path = path.Reverse()
	}
	return plane.Region{path}
}

// word is what the edge is on a list of cuts.
func (e Edge) word() string {
	if e.Round {
		return "roundover"
	}
	return "chamfer"
}

// workEdges rounds and chamfers the members' edges.
func (b *bench) workEdges() {
	before := b.taken()
	for _, e := range b.leaf.Edges {
		y, into := length.Length(0), length.Length(1)
		if e.Back {
			y, into = b.leaf.Thickness, -1
		}
		if e.Sight {
			for _, lite := range b.leaf.Lites {
				b.workSight(e, lite, y, into)
			}
			continue
		}
		left := solid.Prism{Axis: solid.Z, Region: e.section(plane.At(0, y), 1, into), To: b.leaf.Height}
		right := solid.Prism{Axis: solid.Z, Region: e.section(plane.At(b.leaf.Width, y), -1, into), To: b.leaf.Height}
		for _, m := range b.members {
			m.cut(left, e.word())
			m.cut(right, e.word())
		}
		b.edgeClear(e, before, left, right)
	}
}

// workSight works the four sight edges of a lite on the face at y; into is the
// way from that face into the wood.
func (b *bench) workSight(e Edge, lite Lite, y, into length.Length) {
	s := lite.Sight
	for side, x := range map[Side]length.Length{Left: s.Min.X, Right: s.Max.X} {
		out := map[Side]length.Length{Left: -1, Right: 1}[side]
		b.beside(lite, side).cut(solid.Prism{Axis: solid.Z, Region: e.section(plane.At(x, y), out, into), From: s.Min.Y + e.Stop, To: s.Max.Y - e.Stop}, e.word())
	}
	for side, z := range map[Side]length.Length{Bottom: s.Min.Y, Top: s.Max.Y} {
		out := map[Side]length.Length{Bottom: -1, Top: 1}[side]
		b.beside(lite, side).cut(solid.Prism{Axis: solid.X, Region: e.section(plane.At(y, z), into, out), From: s.Min.X + e.Stop, To: s.Max.X - e.Stop}, e.word())
	}
}

// edgeClear stops when an outside edge comes too near something bored or
// driven.
func (b *bench) edgeClear(e Edge, others []taken, sides ...solid.Prism) {
	clear := screwClear.in(b.units)
	for _, side := range sides {
		whole := taken{prism: &side}
		for _, o := range others {
			if o.bore == nil || whole.box().Gap(o.box()) >= clear.MM() {
				continue
			}
			off := length.Longest
			for _, piece := range slivers(side) {
				apart, _ := piece.nearer(o, clear)
				off = min(off, apart)
			}
			if off < clear {
				b.stop("leaf.edges", RuleEdgeMeets, "the %s edge, %v, comes within %v of the %s in %s; at least %v must be left: a smaller edge or a shorter screw", e.place(), e.Size, off, o.what, o.part, clear)
				return
			}
		}
	}
}

// slivers cut what an edge takes into bodies without hollows: triangles from
// its corner to the arc, true to a hundredth of a millimetre.
func slivers(edge solid.Prism) []taken {
	const chord = 10 * length.Micrometre
	var all []taken
	outline := edge.Region[0] // begins and ends at the corner
	for _, e := range outline[1 : len(outline)-1].Flatten(chord) {
		piece := edge
		piece.Region = plane.Region{plane.Polygon(outline[0].From, e.From, e.To)}
		all = append(all, taken{prism: &piece})
	}
	return all
}
