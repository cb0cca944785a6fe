package solid

import (
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// A Slab is a stretch along Y over which the body's region is constant.
type Slab struct {
	From, To length.Length // From < To
	Region   plane.Region  // in Flat(Y): X and Z; not empty
}

// Stack is the solid's body along Y: the blank less its cuts, bores left out,
// the slab nearest to the room first. Neighbouring slabs differ.
//
// Prisms along X or Z whose edges are all parallel to the axes (boxes, steps)
// are taken as they are. Any other blank along X or Z (a washer on edge) is
// its bounding box; any other cut along X or Z takes, between two of its
// corners, what it takes half-way between them.
func (s Solid) Stack() []Slab {
	if !s.Blank.stepped(Y) {
		s.Blank = s.Blank.bounds().prism(Y)
	}
	return s.stack(Y)
}

// stack is the body in slabs along a, whose regions are those half-way between
// its levels.
func (s Solid) stack(a Axis) []Slab {
	var slabs []Slab
	levels := s.levels(a)
	for i := 1; i < len(levels); i++ {
		from, to := levels[i-1], levels[i]
		slabs = stacked(slabs, Slab{from, to, s.body(a, from+(to-from)/2)})
	}
	return slabs
}

// stacked is the slabs with one more, if it has a region; if that is the last
// one's, the last one reaches further.
func stacked(slabs []Slab, s Slab) []Slab {
	last := len(slabs) - 1
	switch {
	case s.Region.Empty():
		return slabs
	case last >= 0 && slabs[last].To == s.From && equal(slabs[last].Region, s.Region):
		slabs[last].To = s.To
		return slabs
	}
	return append(slabs, s)
}

// Even tells whether the body's sections across a change in steps only: whether
// every prism runs along a or is made of boxes.
func (s Solid) Even(a Axis) bool {
	return s.Blank.stepped(a) && !slices.ContainsFunc(s.Cuts, func(c Cut) bool { return !c.stepped(a) })
}

// Shadow is what the body covers as seen along Y, in slabs from the room on:
// each has all that it covers anywhere between From and To, where round and
// slanted faces run one way only. Of an even body it is the Stack.
func (s Solid) Shadow() []Slab {
	levels := s.levels(Y)
	if len(levels) == 0 {
		return nil
	}
	for _, p := range append(s.taken(), s.Blank) {
		for _, at := range p.turns(Y) {
			if levels[0] < at && at < levels[len(levels)-1] {
				levels = append(levels, at)
			}
		}
	}
	levels = inOrder(levels)
	var slabs []Slab
	for i := 1; i < len(levels); i++ {
		from, to := levels[i-1], levels[i]
		region := without(s.Blank.swath(Y, from, to, plane.Union), s.taken(), func(p Prism) plane.Region {
			return p.swath(Y, from, to, plane.Intersect)
		})
		slabs = stacked(slabs, Slab{from, to, region})
	}
	return slabs
}

// swath is what the prism's sections across a between two places that bound no
// corner have in common, or in all, as join tells.
func (p Prism) swath(a Axis, from, to length.Length, join func(a, b plane.Region) plane.Region) plane.Region {
	first, last := p.beside(a, from, 1), p.beside(a, to, -1)
	if p.Axis == a || equal(first, last) {
		return first
	}
	return join(first, last)
}

// turns are the places along a where a round face reaches furthest across it.
func (p Prism) turns(a Axis) []length.Length {
	if p.Axis == a {
		return nil
	}
	var found []length.Length
	for _, path := range p.Region {
		for _, e := range path {
			if e.Turn == plane.Straight {
				continue
			}
			b, ends := e.Bounds(), plane.BoxOf(e.From, e.To)
			if p.first(a) && (b.Min.Y < ends.Min.Y || b.Max.Y > ends.Max.Y) {
				found = append(found, e.Centre.X)
			}
			if !p.first(a) && (b.Min.X < ends.Min.X || b.Max.X > ends.Max.X) {
				found = append(found, e.Centre.Y)
			}
		}
	}
	return found
}

// levels are the places along a where the body's section may change its
// course, within the blank, in order.
func (s Solid) levels(a Axis) []length.Length {
	found := s.Blank.levels(a)
	if len(found) == 0 {
		return nil
	}
	least, most := slices.Min(found), slices.Max(found)
	for _, c := range s.Cuts {
		for _, at := range c.levels(a) {
			if least < at && at < most {
				found = append(found, at)
			}
		}
	}
	return inOrder(found)
}

// inOrder sorts places and drops repetitions.
func inOrder(places []length.Length) []length.Length {
	slices.Sort(places)
	return slices.Compact(places)
}

func equal(a, b plane.Region) bool {
	return slices.EqualFunc(a, b, func(p, q plane.Path) bool { return slices.Equal(p, q) })
}
