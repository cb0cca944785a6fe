package solid

import (
	"stilewright/model/length"
	"stilewright/model/plane"
)

// Mirror is the solid mirrored in the plane at `at` across the axis: a left
// part's right one. Where a section may hang on which end of a prism counts
// (Solid.Section), it is the other end's.
func (s Solid) Mirror(a Axis, at length.Length) Solid {
	return s.carry(func(v Vec) Vec {
		switch a {
		case X:
			v.X = 2*at - v.X
		case Y:
			v.Y = 2*at - v.Y
		default:
			v.Z = 2*at - v.Z
		}
		return v
	})
}

// Turn is the solid turned about the axis through the origin by quarters of a
// full turn, counter-clockwise as seen from where the axis points; a count
// less than 0 turns clockwise. It is exact.
func (s Solid) Turn(about Axis, quarters int) Solid {
	quarters = (quarters%4 + 4) % 4
	if quarters == 0 {
		return s
	}
	return s.carry(func(v Vec) Vec {
		for range quarters {
			v = v.quarter(about)
		}
		return v
	})
}

// quarter is v turned by a quarter about the axis.
func (v Vec) quarter(about Axis) Vec {
	switch about {
	case X:
		return Vec{v.X, -v.Z, v.Y}
	case Y:
		return Vec{v.Z, v.Y, -v.X}
	default:
		return Vec{-v.Y, v.X, v.Z}
	}
}

// carry is the solid with every point moved by place, which must keep
// distances and lead each axis to an axis, either way.
func (s Solid) carry(place func(Vec) Vec) Solid {
	carried := Solid{Blank: s.Blank.carry(place)}
	for _, c := range s.Cuts {
		carried.Cuts = append(carried.Cuts, Cut{Prism: c.carry(place), For: c.For})
	}
	for _, b := range s.Bores {
		b.From, b.To = place(b.From), place(b.To)
		carried.Bores = append(carried.Bores, b)
	}
	return carried
}

func (p Prism) carry(place func(Vec) Vec) Prism {
	origin := place(Vec{})
	way := place(Raise(plane.Point{}, p.Axis, 1)).Add(Vec{-origin.X, -origin.Y, -origin.Z})
	axis := X
	for way.Along(axis) == 0 {
		axis++
	}
	flat := func(q plane.Point) plane.Point { return place(Raise(q, p.Axis, 0)).Flat(axis) }
	o, x, y := flat(plane.Point{}), flat(plane.At(1, 0)), flat(plane.At(0, 1))
	mirrored := (x.X-o.X)*(y.Y-o.Y)-(x.Y-o.Y)*(y.X-o.X) < 0 // of units, so within bounds
	from := place(Raise(plane.Point{}, p.Axis, p.From)).Along(axis)
	to := place(Raise(plane.Point{}, p.Axis, p.To)).Along(axis)
	return Prism{Axis: axis, Region: p.Region.Map(flat, mirrored), From: min(from, to), To: max(from, to)}
}
