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
		region := s.body(a, from+(to-from)/2)
		if region.Empty() {
			continue
		}
		if last := len(slabs) - 1; last >= 0 && slabs[last].To == from && equal(slabs[last].Region, region) {
			slabs[last].To = to
			continue
		}
		slabs = append(slabs, Slab{from, to, region})
	}
	return slabs
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
