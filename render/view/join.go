package view

import (
	"cmp"
	"slices"

	"stilewright/model/plane"
	"stilewright/render/sheet"
)

// A style is how a line is drawn.
type style struct {
	layer  sheet.Layer
	weight sheet.Weight
	line   sheet.LineType
}

// A stroke is one edge in its style.
type stroke struct {
	plane.Edge
	style
}

// joined makes lines of strokes: edges of one style that continue one another
// on a level or upright line become one, and edges that meet at a corner where
// no third one ends become one path. Lines come in the order of their style,
// then of their first stroke.
func joined(strokes []stroke) []Line {
	slices.SortStableFunc(strokes, func(a, b stroke) int {
		return cmp.Or(cmp.Compare(a.layer, b.layer), cmp.Compare(a.line, b.line), cmp.Compare(a.weight, b.weight))
	})
	var lines []Line
	for len(strokes) > 0 {
		as, n := strokes[0].style, 1
		for n < len(strokes) && strokes[n].style == as {
			n++
		}
		edges := make([]plane.Edge, n)
		for i, s := range strokes[:n] {
			edges[i] = s.Edge
		}
		for _, path := range chained(straightened(edges)) {
			lines = append(lines, Line{path, as.layer, as.weight, as.line})
		}
		strokes = strokes[n:]
	}
	return lines
}

// straightened joins level and upright edges that continue one another.
func straightened(edges []plane.Edge) []plane.Edge {
	by := map[carrier][]int{}
	for i, e := range edges {
		if c := carrierOf(e); c.kind == level || c.kind == upright {
			by[c] = append(by[c], i)
		}
	}
	gone := make([]bool, len(edges))
	for i := range edges {
		c := carrierOf(edges[i])
		on := by[c]
		if len(on) < 2 {
			continue
		}
		delete(by, c)
		straighten(edges, on, gone)
	}
	kept := edges[:0]
	for i, e := range edges {
		if !gone[i] {
			kept = append(kept, e)
		}
	}
	return kept
}

// straighten joins those of the edges on one line that continue one another,
// into the first of them.
func straighten(edges []plane.Edge, on []int, gone []bool) {
	least := func(e plane.Edge) plane.Point { return plane.BoxOf(e.From, e.To).Min }
	most := func(e plane.Edge) plane.Point { return plane.BoxOf(e.From, e.To).Max }
	slices.SortStableFunc(on, func(i, k int) int {
		a, b := least(edges[i]), least(edges[k])
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	last := on[0]
	for _, i := range on[1:] {
		if most(edges[last]) != least(edges[i]) {
			last = i
			continue
		}
		first := min(last, i)
		edges[first] = plane.Line(least(edges[last]), most(edges[i]))
		gone[max(last, i)] = true
		last = first
	}
}

// chained makes paths of edges that meet at a point where no third one ends.
func chained(edges []plane.Edge) []plane.Path {
	ends := make(map[plane.Point][]int, 2*len(edges))
	for i, e := range edges {
		ends[e.From] = append(ends[e.From], i)
		ends[e.To] = append(ends[e.To], i)
	}
	used := make([]bool, len(edges))
	// next is the edge that goes on from p, where edge i ends, beginning there.
	next := func(i int, p plane.Point) (int, plane.Edge) {
		at := ends[p]
		if len(at) != 2 || at[0] == at[1] {
			return -1, plane.Edge{}
		}
		k := at[0]
		if k == i {
			k = at[1]
		}
		if used[k] {
			return -1, plane.Edge{}
		}
		used[k] = true
		if edges[k].From == p {
			return k, edges[k]
		}
		return k, edges[k].Reverse()
	}
	var paths []plane.Path
	for i, e := range edges {
		if used[i] {
			continue
		}
		used[i] = true
		path := plane.Path{e}
		for k, f := next(i, e.To); k >= 0; k, f = next(k, f.To) {
			path = append(path, f)
		}
		var before plane.Path
		for k, f := next(i, e.From); k >= 0; k, f = next(k, f.To) {
			before = append(before, f)
		}
		paths = append(paths, append(before.Reverse(), path...))
	}
	return paths
}
