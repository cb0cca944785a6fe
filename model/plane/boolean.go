package plane

import (
	"cmp"
	"math"
	"slices"
)

// Union is what lies in a or in b. For the result of all three operations:
// arcs stay arcs about the same centres, edges that run together without
// material on one side only are gone, edges in one line are one, outlines
// start at their lowest, then leftmost corner and are ordered by it. Edges
// closer than 2 nm count as running together.
func Union(a, b Region) Region { return combine(a, b, func(a, b bool) bool { return a || b }) }

// Intersect is what lies in both a and b; see Union.
func Intersect(a, b Region) Region { return combine(a, b, func(a, b bool) bool { return a && b }) }

// Subtract is what lies in a and not in b; see Union.
func Subtract(a, b Region) Region { return combine(a, b, func(a, b bool) bool { return a && !b }) }

// combine keeps the pieces that have material on one side only, material being
// what in says of lying in a and lying in b.
func combine(a, b Region, in func(a, b bool) bool) Region {
	arr := arrange(a, b)
	kept := make([]arm, 0, len(arr.pieces))
	for i := range arr.pieces {
		p := &arr.pieces[i]
		arr.place(p)
		left, right := in(p.left[0], p.left[1]), in(p.right[0], p.right[1])
		switch {
		case left && !right:
			kept = append(kept, arm{Edge: p.Edge, from: p.u, to: p.v})
		case right && !left:
			kept = append(kept, arm{Edge: p.Reverse(), from: p.v, to: p.u})
		}
	}
	return stitch(kept)
}

// place finds which side of the piece has material of which owner.
func (arr *arrangement) place(p *piece) {
	for owner, net := range p.net {
		inside := net == 0 && arr.inside(p.mid2, owner)
		p.left[owner] = inside || net > 0
		p.right[owner] = inside || net < 0
	}
}

// inside tells whether a point that lies on no edge of the owner, given twice
// as far out, is within the owner's region.
func (arr *arrangement) inside(m2 Point, owner int) bool {
	turns := 0
	for i := range arr.pieces {
		if p := &arr.pieces[i]; p.net[owner] != 0 {
			turns += p.net[owner] * p.around(m2, p.chord, p.reach)
		}
	}
	return turns != 0
}

// An arm is an edge of a result with its vertices, material on its left.
type arm struct {
	Edge
	from, to int
	used     bool
}

// stitch makes outlines of arms, each without a vertex in it twice.
func stitch(arms []arm) Region {
	slices.SortFunc(arms, func(a, b arm) int { return cmp.Compare(a.from, b.from) })
	var outlines Region
	var walk []int // the arms walked and not yet closed
	for i := range arms {
		if arms[i].used {
			continue
		}
		walk = append(walk[:0], i)
		arms[i].used = true
		for len(walk) > 0 {
			last := &arms[walk[len(walk)-1]]
			if k := slices.IndexFunc(walk, func(w int) bool { return arms[w].from == last.to }); k >= 0 {
				outlines = append(outlines, outline(arms, walk[k:]))
				walk = walk[:k]
				continue
			}
			next := following(arms, last)
			if next < 0 { // an edge that leads nowhere bounds nothing
				walk = walk[:len(walk)-1]
				continue
			}
			arms[next].used = true
			walk = append(walk, next)
		}
	}
	return sorted(outlines)
}

func outline(arms []arm, walk []int) Path {
	path := make(Path, len(walk))
	for i, w := range walk {
		path[i] = arms[w].Edge
	}
	return path.merged()
}

// following is the unused arm to take after last: where there are several, the
// sharpest to the left, which keeps to the same material. It is -1 if there is
// none.
func following(arms []arm, last *arm) int {
	first, _ := slices.BinarySearchFunc(arms, last.to, func(a arm, v int) int { return cmp.Compare(a.from, v) })
	best, reach := -1, norm(last.From.to(last.To))
	for i := first; i < len(arms) && arms[i].from == last.to; i++ {
		reach = min(reach, norm(arms[i].From.to(arms[i].To)))
	}
	reach /= 2 // two arcs may share both ends
	var sharpest float64
	back := last.Reverse()
	bx, by := back.leaves(reach)
	for i := first; i < len(arms) && arms[i].from == last.to; i++ {
		if arms[i].used {
			continue
		}
		x, y := arms[i].leaves(reach)
		turn := diamond(float64(bx*x)+float64(by*y), float64(by*x)-float64(bx*y)) // clockwise from back
		if best < 0 || turn < sharpest {
			best, sharpest = i, turn
		}
	}
	return best
}

// leaves is the direction from From to where the edge is reach away from it.
// Taken half-way to the nearest end of all edges at a vertex, it tells apart
// edges that leave it along one tangent.
func (e Edge) leaves(reach float64) (x, y float64) {
	d := e.From.to(e.To)
	chord := norm(d)
	x, y = float64(d.X)/chord, float64(d.Y)/chord
	if e.Turn == Straight || reach >= chord {
		return x, y
	}
	// The chord to the point at reach is turned against the whole chord by the
	// difference of the half sweeps, whose sines are the half chords over r.
	r := hypot(chord/2, e.chordToCentre(chord))
	s1, c1 := chord/2/r, e.chordToCentre(chord)/r
	s2 := reach / 2 / r
	c2 := math.Sqrt(max(0, 1-float64(s2*s2)))
	sine, cosine := float64(s1*c2)-float64(c1*s2), float64(c1*c2)+float64(s1*s2)
	sine *= -float64(e.Turn)
	return float64(x*cosine) - float64(y*sine), float64(x*sine) + float64(y*cosine)
}

// sorted orders outlines by their first corner, outer ones before holes, and
// leaves out those that rounding has flattened.
func sorted(outlines Region) Region {
	kept := slices.DeleteFunc(outlines, func(p Path) bool {
		return len(p) < 2 || len(p) == 2 && p[0].Turn == Straight && p[1].Turn == Straight
	})
	if len(kept) == 0 {
		return nil
	}
	slices.SortFunc(kept, func(a, b Path) int {
		if c := lower(a[0].From, b[0].From); c != 0 {
			return c
		}
		return cmp.Compare(b.Area(), a.Area())
	})
	return kept
}
