package solid

import (
	"fmt"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// near is how far apart, at most, points are made one and how far off an edge
// a point still lies on it: results of plane's operations may differ by 2 nm,
// and a corner may have been moved twice.
const near = 8 * length.Nanometre

// beneath is how far from a face, to either side, one asks for material.
const beneath = 100 * length.Nanometre

// swept makes the slanted and round faces. What a trace sweeps is cut, along
// the trace and along the axis, wherever another prism may begin or end, and
// of each cell is asked whether there is material on one side of it only.
func (sw *sewing) swept() error {
	prisms := append([]Prism{sw.solid.Blank}, sw.solid.taken()...)
	for i, p := range prisms {
		if _, meet := p.bounds().overlap(prisms[0].bounds()); !meet {
			continue
		}
		for _, path := range p.Region {
			for _, e := range path {
				if !slanting(e) {
					continue
				}
				g := grid{prisms: prisms, owner: i, trace: e}
				g.lines()
				if err := g.ask(); err != nil {
					return err
				}
				use := ""
				if i > 0 {
					use = sw.solid.Cuts[i-1].For
				}
				for _, side := range [...]int{1, -1} {
					sw.patches = append(sw.patches, g.faces(side, use)...)
				}
			}
		}
	}
	return nil
}

// A grid is what a slanted or round edge of a prism's region sweeps, in cells.
type grid struct {
	prisms []Prism // the blank first
	owner  int
	trace  plane.Edge
	along  []plane.Point   // where the trace is cut, in its order
	levels []length.Length // where its axis is cut, in order
	side   [][]int         // by cell, along and level: 1 where only the trace's left has material, -1 its right, else 0
	met    []int           // the prisms that come near
}

func (g *grid) prism() Prism { return g.prisms[g.owner] }

// swath is the box round what the stretch of the trace between two points
// sweeps between two levels.
func (g *grid) swath(e plane.Edge, from, to length.Length) box {
	b := e.Bounds()
	return box{Raise(b.Min, g.prism().Axis, from), Raise(b.Max, g.prism().Axis, to)}
}

// lines finds where trace and axis are cut.
func (g *grid) lines() {
	p, axis := g.prism(), g.prism().Axis
	blank := g.prisms[0].bounds()
	low, high := max(p.From, blank.least.Along(axis)), min(p.To, blank.most.Along(axis))
	g.levels = append(g.levels, low, high)
	points := []plane.Point{g.trace.From, g.trace.To}
	whole := g.swath(g.trace, low, high)
	for i, q := range g.prisms {
		if i == g.owner || !q.bounds().meets(whole) {
			continue
		}
		g.met = append(g.met, i)
		for _, at := range q.levels(axis) {
			if low < at && at < high {
				g.levels = append(g.levels, at)
			}
		}
		if q.Axis == axis {
			points = append(points, cutBy(g.trace, q.Region)...)
			continue
		}
		points = append(points, across(g.trace, axis, q)...)
	}
	g.levels = inOrder(g.levels)
	g.along = ordered(g.trace, points)
}

// cutBy is where the edge is cut along the outlines of a region.
func cutBy(e plane.Edge, r plane.Region) []plane.Point {
	inside, outside, boundary := plane.Clip(plane.Path{e}, r)
	var points []plane.Point
	for _, pieces := range [...][]plane.Path{inside, outside, boundary} {
		for _, path := range pieces {
			for _, f := range path {
				points = append(points, f.From, f.To)
			}
		}
	}
	return points
}

// across is where the edge, in Flat(a), is cut by the planes along a in which
// the prism, which runs across a, may change its course.
func across(e plane.Edge, a Axis, q Prism) []plane.Point {
	var points []plane.Point
	for b := X; b <= Z; b++ {
		if b == a {
			continue
		}
		first := Prism{Axis: a}.first(b)
		line := e
		if !first {
			line = plane.Path{e}.Map(plane.Point.Swap, true)[0]
		}
		for _, at := range q.levels(b) {
			for _, other := range line.Across(at) {
				point := plane.At(at, other)
				if !first {
					point = point.Swap()
				}
				points = append(points, point)
			}
		}
	}
	return points
}

// ordered are the points on an edge in its order, those within near made one
// and its ends kept.
func ordered(e plane.Edge, points []plane.Point) []plane.Point {
	type stop struct {
		plane.Point
		way float64
	}
	var stops []stop
	for _, p := range points {
		if way, _ := place(e, p); p != e.From && p != e.To && way > 0 && way < 1 {
			stops = append(stops, stop{p, way})
		}
	}
	slices.SortFunc(stops, func(a, b stop) int { return int(math.Copysign(1, a.way-b.way)) })
	kept := []plane.Point{e.From}
	for _, s := range stops {
		if !together(s.Point, kept[len(kept)-1]) && !together(s.Point, e.To) {
			kept = append(kept, s.Point)
		}
	}
	return append(kept, e.To)
}

func together(p, q plane.Point) bool { return (p.X-q.X).Abs() <= near && (p.Y-q.Y).Abs() <= near }

// place is how far along the edge a point lies, from 0 to 1, and how far off
// it in mm.
func place(e plane.Edge, p plane.Point) (way, off float64) {
	if e.Turn == plane.Straight {
		d, q := flatBetween(e.From, e.To), flatBetween(e.From, p)
		squared := float64(d[0]*d[0]) + float64(d[1]*d[1])
		return (float64(d[0]*q[0]) + float64(d[1]*q[1])) / squared, cross(d, q) / math.Sqrt(squared)
	}
	part := e
	part.To = p
	out := flatBetween(e.Centre, p)
	return part.Sweep() / e.Sweep(), math.Sqrt(float64(out[0]*out[0])+float64(out[1]*out[1])) - e.Radius()
}

// stretch is the trace between two of the points it is cut at.
func (g *grid) stretch(from, to int) plane.Edge {
	e := g.trace
	e.From, e.To = g.along[from], g.along[to]
	return e
}

// ask tells of every cell on which side of it there is material.
func (g *grid) ask() error {
	g.side = make([][]int, len(g.along)-1)
	for i := range g.side {
		g.side[i] = make([]int, len(g.levels)-1)
		e := g.stretch(i, i+1)
		for k := range g.side[i] {
			low, high := g.levels[k], g.levels[k+1]
			g.side[i][k] = g.sided(e, halfWay(low, high))
			if err := g.clear(e, low, high); err != nil && g.bounds(e, low, high) {
				return err
			}
		}
	}
	return nil
}

// sided tells on which side of the middle of a stretch of the trace, at a
// place along the axis, there is material: 1 left only, -1 right only, else 0.
func (g *grid) sided(e plane.Edge, at length.Length) int {
	middle := e.Middle()
	if g.owned(middle, at) {
		return 0
	}
	dx, dy := leftOf(e, middle)
	left, right := g.material(middle.Add(dx, dy), at), g.material(middle.Add(-dx, -dy), at)
	switch {
	case left == right:
		return 0
	case left:
		return 1
	default:
		return -1
	}
}

// bounds tells whether a cell bounds material at one of many places on it.
func (g *grid) bounds(e plane.Edge, low, high length.Length) bool {
	const halvings = 3
	parts := []plane.Edge{e}
	for range halvings {
		var finer []plane.Edge
		for _, p := range parts {
			first, second := p, p
			first.To = p.Middle()
			second.From = first.To
			finer = append(finer, first, second)
		}
		parts = finer
	}
	for _, p := range parts {
		if p.From == p.To {
			continue
		}
		at := low
		for _, step := range (high - low).Split(1 << halvings) {
			if g.sided(p, at+step.Half()) != 0 {
				return true
			}
			at += step
		}
	}
	return false
}

// owned tells whether a cell is also one of a prism that comes before: then it
// is that one's.
func (g *grid) owned(middle plane.Point, at length.Length) bool {
	return slices.ContainsFunc(g.met, func(i int) bool {
		q := g.prisms[i]
		return i < g.owner && q.Axis == g.prism().Axis && q.From < at && at < q.To && q.Region.Where(middle) == plane.Boundary
	})
}

// leftOf is the displacement, as long as beneath, to the left of an edge at its
// middle.
func leftOf(e plane.Edge, middle plane.Point) (dx, dy length.Length) {
	d := flatBetween(e.From, e.To)
	left := [2]float64{-d[1], d[0]}
	if e.Turn != plane.Straight {
		left = flatBetween(middle, e.Centre)
		left[0], left[1] = left[0]*float64(e.Turn), left[1]*float64(e.Turn)
	}
	scale := beneath.MM() / math.Sqrt(float64(left[0]*left[0])+float64(left[1]*left[1]))
	return length.Round(left[0] * scale), length.Round(left[1] * scale)
}

// material tells whether there is any at a point of the trace's plane.
func (g *grid) material(p plane.Point, at length.Length) bool {
	v := Raise(p, g.prism().Axis, at)
	for i, q := range g.prisms {
		on := v.Along(q.Axis)
		inside := q.From < on && on < q.To && q.Region.Bounds().Holds(v.Flat(q.Axis)) && q.Region.Where(v.Flat(q.Axis)) == plane.Inside
		if inside != (i == 0) {
			return false
		}
	}
	return true
}

// clear tells when a cell may meet a round or slanted face of a prism across
// its own.
func (g *grid) clear(e plane.Edge, low, high length.Length) error {
	here := g.swath(e, low, high)
	for _, i := range g.met {
		q := g.prisms[i]
		if q.Axis == g.prism().Axis {
			continue
		}
		for _, path := range q.Region {
			for _, f := range path {
				if !slanting(f) {
					continue
				}
				b := f.Bounds()
				common, meet := here.overlap(box{Raise(b.Min, q.Axis, q.From), Raise(b.Max, q.Axis, q.To)})
				if meet && common.most.X-common.least.X > near && common.most.Y-common.least.Y > near && common.most.Z-common.least.Z > near {
					return fmt.Errorf("it has round or slanted prisms across one another, along %v and %v, which meet near %v in curves that are not written: move one of them, or let them run along one axis", g.prism().Axis, q.Axis, common.least)
				}
			}
		}
	}
	return nil
}

// faces are the connected cells that have material on the side told only.
func (g *grid) faces(side int, use string) []patch {
	var found []patch
	seen := map[[2]int]bool{}
	for i := range g.side {
		for k := range g.side[i] {
			if g.side[i][k] != side || seen[[2]int{i, k}] {
				continue
			}
			f := patch{Face: Face{Axis: g.prism().Axis, Trace: g.trace, For: use}}
			if side < 0 {
				f.Trace = f.Trace.Reverse()
			}
			for _, outline := range rims(g.connected(i, k, seen)) {
				f.outlines = append(f.outlines, turned(g.raise(outline), side*f.Axis.hand()))
			}
			found = append(found, f)
		}
	}
	return found
}

// connected are the cells that hang together with one, marked as seen.
func (g *grid) connected(i, k int, seen map[[2]int]bool) map[[2]int]bool {
	all := map[[2]int]bool{{i, k}: true}
	seen[[2]int{i, k}] = true
	for todo := [][2]int{{i, k}}; len(todo) > 0; {
		c := todo[0]
		todo = todo[1:]
		for _, d := range [...][2]int{{c[0] - 1, c[1]}, {c[0] + 1, c[1]}, {c[0], c[1] - 1}, {c[0], c[1] + 1}} {
			if d[0] < 0 || d[1] < 0 || d[0] >= len(g.side) || d[1] >= len(g.side[0]) || seen[d] || g.side[d[0]][d[1]] != g.side[i][k] {
				continue
			}
			seen[d], all[d] = true, true
			todo = append(todo, d)
		}
	}
	return all
}

// raise is an outline on the grid as curves in space.
func (g *grid) raise(outline [][2]int) []curve {
	axis := g.prism().Axis
	var curves []curve
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		c := curve{from: Raise(g.along[a[0]], axis, g.levels[a[1]]), to: Raise(g.along[b[0]], axis, g.levels[b[1]])}
		if a[1] == b[1] && g.trace.Turn != plane.Straight {
			c.arc, c.axis = g.trace, axis
			if a[0] > b[0] {
				c.arc = c.arc.Reverse()
			}
		}
		curves = append(curves, c)
	}
	return curves
}
