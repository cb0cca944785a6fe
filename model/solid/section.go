package solid

import (
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// Section is the material cut by the plane at `at` across axis a, in the
// coordinates of Flat(a). A prism along a counts where From <= at < To; for
// the prisms across it the plane must not graze a face, for grazing takes
// nothing: of a blank it leaves nothing, of a cut it removes nothing.
//
// Bores are cut with their flat ends, see Bore; one inclined to the plane
// leaves an ellipse that is true to a few micrometres.
func (s Solid) Section(a Axis, at length.Length) plane.Region {
	region := s.body(a, at)
	for _, b := range s.Bores {
		region = less(region, b.Section(a, at))
	}
	return region
}

// body is Section with the bores left out.
func (s Solid) body(a Axis, at length.Length) plane.Region {
	return without(s.Blank.section(a, at), s.taken(), func(p Prism) plane.Region { return p.section(a, at) })
}

// without is the region less sections of prisms. Those that stand apart, as the
// rabbets of a stile do, are taken away at one go.
func without(region plane.Region, taken []Prism, section func(Prism) plane.Region) plane.Region {
	var holes plane.Region
	var around []plane.Box
	for _, p := range taken {
		hole := section(p)
		if hole.Empty() {
			continue
		}
		bounds := hole.Bounds().Grow(length.Micrometre)
		if slices.ContainsFunc(around, func(b plane.Box) bool { return overlap(b, bounds) }) {
			region = less(region, holes)
			holes, around = nil, around[:0]
		}
		holes, around = append(holes, hole...), append(around, bounds)
	}
	return less(region, holes)
}

// less is region without hole; nothing is worked out if they stand apart.
func less(region, hole plane.Region) plane.Region {
	if region.Empty() || hole.Empty() || !overlap(region.Bounds(), hole.Bounds()) {
		return region
	}
	return plane.Subtract(region, hole)
}

// overlap tells whether the boxes have an area in common.
func overlap(b, c plane.Box) bool {
	return b.Min.X < c.Max.X && c.Min.X < b.Max.X && b.Min.Y < c.Max.Y && c.Min.Y < b.Max.Y
}

// Bounds are the opposite corners of the smallest box round the blank.
func (s Solid) Bounds() (least, most Vec) {
	b := s.Blank.bounds()
	return b.least, b.most
}

// Move is the solid moved by d.
func (s Solid) Move(d Vec) Solid {
	moved := Solid{Blank: s.Blank.move(d)}
	for _, c := range s.Cuts {
		moved.Cuts = append(moved.Cuts, Cut{Prism: c.move(d), For: c.For})
	}
	for _, b := range s.Bores {
		b.From, b.To = b.From.Add(d), b.To.Add(d)
		moved.Bores = append(moved.Bores, b)
	}
	return moved
}
