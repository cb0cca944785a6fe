package view

import (
	"cmp"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
)

// Tangent edges, in which a round face runs smoothly into a flat one, are
// drawn narrow and continuous and keep off the outlines; covered ones are left
// out (ISO 128-3, imaginary intersections; from memory). Where the round face
// is narrower on the paper than leastRound they would only smudge its outline
// and are left out too: common practice, no source.
const (
	tangentGap = length.Millimetre // on the paper, at each end
	leastRound = 3 * length.Millimetre / 2
)

// An outlined is what is drawn of a body at one distance from the eye.
type outlined struct {
	body   int
	near   length.Length // as face.near
	paths  []plane.Path
	use    string // of the cut that made it
	shaped bool   // one edge of a shell, and use is known; else a slab's outline
}

// shaped lays a body whose round or slanted faces show their slope: it hides
// what its shadow covers, and its edges are those of its shell. It tells
// whether it could; a solid that has no shell is laid in slabs.
func (s *scene) shaped(i int) bool {
	body := s.bodies[i].Solid
	shell, err := body.Shell()
	if err != nil {
		return false
	}
	slabs := body.Shadow()
	var levels []length.Length
	for _, slab := range slabs {
		levels = append(levels, slab.From, slab.To)
		s.faces = append(s.faces, s.faceOf(i, slab))
	}
	slices.Sort(levels)
	x := contour{scene: s, body: i, shell: &shell, levels: slices.Compact(levels)}
	x.edges()
	for k := range shell.Faces {
		x.limbs(&shell.Faces[k])
	}
	return true
}

// disc tells whether the body is a disc or a ring, as a washer is: it shows no
// slope, and slabs half-way through it are the whole of what one sees.
func disc(s solid.Solid) bool {
	centre := func(p solid.Prism) (plane.Point, bool) {
		if len(p.Region) != 1 || len(p.Region[0]) != 2 {
			return plane.Point{}, false
		}
		a, b := p.Region[0][0], p.Region[0][1]
		return a.Centre, a.Turn != plane.Straight && b.Turn == a.Turn && b.Centre == a.Centre
	}
	of, round := centre(s.Blank)
	return round && !slices.ContainsFunc(s.Cuts, func(c solid.Cut) bool {
		at, round := centre(c.Prism)
		return !round || c.Axis != s.Blank.Axis || at != of
	})
}

// A contour is the edges of one body's shell on their way into a scene.
type contour struct {
	scene  *scene
	body   int
	shell  *solid.Shell
	levels []length.Length // of the shadow, in order
}

// edges enters what one may see of the shell's edges: all in which its surface
// bends, and of smooth ones those in which it turns away from the eye.
func (x *contour) edges() {
	sides := make([][]int, len(x.shell.Edges))
	for i, f := range x.shell.Faces {
		for _, loop := range f.Loops {
			for _, u := range loop {
				sides[u.Edge] = append(sides[u.Edge], i)
			}
		}
	}
	for i, e := range x.shell.Edges {
		if len(sides[i]) != 2 {
			continue
		}
		f, g := &x.shell.Faces[sides[i][0]], &x.shell.Faces[sides[i][1]]
		middle := x.shell.Middle(e)
		n, m := normal(f, middle), normal(g, middle)
		use := cmp.Or(f.For, g.For)
		const smooth = 1e-5 // of a full bend: rounding tilts a short edge's face no more
		switch {
		case n[0]*m[0]+n[1]*m[1]+n[2]*m[2] < 1-smooth:
			x.enter(e, use)
		case math.Abs(n[solid.Y]) < smooth && (f.Side == 0 || g.Side == 0) && (bent(f) || bent(g)):
			x.enter(e, use)
		case bent(f) != bent(g):
			x.tangent(e, f, g)
		}
	}
}

// bent tells whether a face is round.
func bent(f *solid.Face) bool { return f.Side == 0 && f.Trace.Turn != plane.Straight }

// normal is the direction away from the material of a face at a point of it.
func normal(f *solid.Face, at solid.Vec) [3]float64 {
	if f.Side != 0 {
		var n [3]float64
		n[f.Axis] = float64(f.Side)
		return n
	}
	a, b := f.Trace.From, f.Trace.To
	x, y := (b.Y - a.Y).MM(), -(b.X - a.X).MM()
	if f.Trace.Turn != plane.Straight {
		p := at.Flat(f.Axis)
		x, y = (p.X-f.Trace.Centre.X).MM()*float64(f.Trace.Turn), (p.Y-f.Trace.Centre.Y).MM()*float64(f.Trace.Turn)
	}
	size := math.Sqrt(float64(x*x) + float64(y*y))
	x, y = x/size, y/size
	switch f.Axis {
	case solid.X:
		return [3]float64{0, x, y}
	case solid.Y:
		return [3]float64{x, 0, y}
	default:
		return [3]float64{x, y, 0}
	}
}

// enter enters an edge. One that does not keep its distance from the eye is
// parted at the shadow's levels, so that no part lies in two slabs.
func (x *contour) enter(e solid.Edge, use string) {
	from, to := x.shell.Corners[e.From], x.shell.Corners[e.To]
	if e.Arc.Turn == plane.Straight {
		x.straight(from, to, use)
		return
	}
	if e.Axis == solid.Y {
		x.add(plane.Path{e.Arc}, e.At, use)
		return
	}
	// Seen on edge: a straight line, its parts at different distances.
	depth := func(p plane.Point) length.Length { return solid.Raise(p, e.Axis, e.At).Y }
	for _, part := range x.parted(e) {
		if a, b := part.From, part.To; a != b {
			p, q := solid.Raise(a, e.Axis, e.At).Flat(solid.Y), solid.Raise(b, e.Axis, e.At).Flat(solid.Y)
			if p != q {
				x.add(plane.Path{plane.Line(p, q)}, x.level(depth(a), depth(b)), use)
			}
		}
	}
}

// parted is an arc seen on edge in parts none of which lies in two slabs or
// turns back in the view.
func (x *contour) parted(e solid.Edge) []plane.Edge {
	arc, swapped := e.Arc, e.Axis == solid.Z // so that Y is the first coordinate
	if swapped {
		arc = plane.Path{arc}.Map(plane.Point.Swap, true)[0]
	}
	points := []plane.Point{arc.From, arc.To}
	for _, at := range x.levels {
		for _, y := range arc.Across(at) {
			points = append(points, plane.At(at, y))
		}
	}
	b := arc.Bounds()
	for _, furthest := range []plane.Point{plane.At(arc.Centre.X, b.Min.Y), plane.At(arc.Centre.X, b.Max.Y)} {
		if furthest.Y < min(arc.From.Y, arc.To.Y) || furthest.Y > max(arc.From.Y, arc.To.Y) {
			points = append(points, furthest)
		}
	}
	part := func(p plane.Point) float64 {
		reached := arc
		reached.To = p
		return reached.Sweep() / arc.Sweep()
	}
	slices.SortFunc(points, func(a, b plane.Point) int {
		switch {
		case a == b:
			return 0
		case a == arc.From || b == arc.To:
			return -1
		case b == arc.From || a == arc.To:
			return 1
		}
		return cmp.Compare(part(a), part(b))
	})
	var parts []plane.Edge
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		if swapped {
			a, b = a.Swap(), b.Swap()
		}
		parts = append(parts, plane.Line(a, b))
	}
	return parts
}

// straight enters a straight edge.
func (x *contour) straight(from, to solid.Vec, use string) {
	p, q := from.Flat(solid.Y), to.Flat(solid.Y)
	if p == q {
		return
	}
	if from.Y == to.Y {
		x.add(plane.Path{plane.Line(p, q)}, from.Y, use)
		return
	}
	if from.Y > to.Y {
		from, to = to, from
	}
	places := []solid.Vec{from}
	for _, at := range x.levels {
		if from.Y < at && at < to.Y {
			part := (at - from.Y).MM() / (to.Y - from.Y).MM()
			places = append(places, solid.Vec{X: from.X + length.Round(part*(to.X-from.X).MM()), Y: at, Z: from.Z + length.Round(part*(to.Z-from.Z).MM())})
		}
	}
	places = append(places, to)
	for i := 1; i < len(places); i++ {
		a, b := places[i-1], places[i]
		x.add(plane.Path{plane.Line(a.Flat(solid.Y), b.Flat(solid.Y))}, x.level(a.Y, b.Y), use)
	}
}

// level is the place along Y at which a part between two places counts: the one
// nearer to the eye.
func (x *contour) level(a, b length.Length) length.Length {
	if x.scene.from == Back {
		return max(a, b)
	}
	return min(a, b)
}

// add enters a path of one edge, in X and Z, that lies at Y = at; not a line
// whose ends count as one.
func (x *contour) add(path plane.Path, at length.Length, use string) {
	if e := path[0]; e.Turn == plane.Straight && !apart(e.From, e.To) {
		return
	}
	s := x.scene
	s.outlines = append(s.outlines, outlined{body: x.body, near: s.distance(at), paths: []plane.Path{s.path(path)}, use: use, shaped: true})
}

// limbs enters the lines in which a round face turns away from the eye between
// its edges.
func (x *contour) limbs(f *solid.Face) {
	if !bent(f) || f.Axis == solid.Y {
		return
	}
	arc := f.Trace
	r := length.Round(arc.Radius())
	for _, d := range [...]plane.Point{plane.At(0, r), plane.At(0, -r), plane.At(r, 0), plane.At(-r, 0)} {
		if across := solid.Raise(d, f.Axis, 0); across.Y != 0 { // towards the eye, or away
			continue
		}
		p := arc.Centre.Add(d.X, d.Y)
		if !between(arc, p) {
			continue
		}
		runs := x.ends(f, p)
		for i := 1; i < len(runs); i += 2 {
			x.straight(solid.Raise(p, f.Axis, runs[i-1]), solid.Raise(p, f.Axis, runs[i]), f.For)
		}
	}
}

// between tells whether a point of an arc's circle lies on the arc and off its
// ends.
func between(arc plane.Edge, p plane.Point) bool {
	return arc.Bounds().Grow(same).Holds(p) &&
		reach(arc, p) > 0 && reach(arc, p) < 1 && apart(p, arc.From) && apart(p, arc.To)
}

// reach is how far along an arc a point of its circle lies, from 0 to 1.
func reach(arc plane.Edge, p plane.Point) float64 {
	part := arc
	part.To = p
	return part.Sweep() / arc.Sweep()
}

// apart tells whether two points count as two.
func apart(p, q plane.Point) bool {
	const corner = 8 * length.Nanometre // as true as a shell's corners are
	return (p.X-q.X).Abs() > corner || (p.Y-q.Y).Abs() > corner
}

// ends are the places along a round face's axis where its edges cross the line
// over a point of its trace, in order.
func (x *contour) ends(f *solid.Face, p plane.Point) []length.Length {
	var found []length.Length
	for _, loop := range f.Loops {
		for _, u := range loop {
			e := x.shell.Edges[u.Edge]
			if e.Arc.Turn != plane.Straight && e.Axis == f.Axis && between(e.Arc, p) {
				found = append(found, e.At)
			}
		}
	}
	slices.Sort(found)
	return found
}

// tangent enters an edge in which a round face runs into a flat one.
func (x *contour) tangent(e solid.Edge, f, g *solid.Face) {
	o := x.scene.options
	if !bent(f) {
		f = g
	}
	if o.NoTangents || f.Trace.Radius() < o.onPaper(leastRound).MM() || e.Arc.Turn != plane.Straight {
		return
	}
	from, to := x.shell.Corners[e.From], x.shell.Corners[e.To]
	p, q := from.Flat(solid.Y), to.Flat(solid.Y)
	gap := o.onPaper(tangentGap)
	size := plane.Line(p, q).Length()
	if from.Y != to.Y || size < 4*gap.MM() {
		return
	}
	dx, dy := length.Round((q.X-p.X).MM()/size*gap.MM()), length.Round((q.Y-p.Y).MM()/size*gap.MM())
	s := x.scene
	path := s.path(plane.Path{plane.Line(p.Add(dx, dy), q.Add(-dx, -dy))})
	s.tangents = append(s.tangents, outlined{body: x.body, near: s.distance(from.Y), paths: []plane.Path{path}, shaped: true})
}

// seeTangents draws what one sees of tangent edges.
func (s *scene) seeTangents() {
	for _, o := range s.tangents {
		for _, path := range o.paths {
			visible, _ := s.split(path, o.near, true)
			s.draw(visible, style{s.bodies[o.body].Layer, sheet.Narrow, sheet.Continuous})
		}
	}
}
