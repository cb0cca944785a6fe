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

// MovedFrom tells by how much t's body must be moved to be s's, prism by prism
// in order, and whether that can be; bores are left out.
func (s Solid) MovedFrom(t Solid) (by Vec, is bool) {
	if len(s.Cuts) != len(t.Cuts) || s.Blank.Axis != t.Blank.Axis || s.Blank.Region.Empty() || t.Blank.Region.Empty() {
		return Vec{}, false
	}
	a, b := s.Blank.corner(), t.Blank.corner()
	by = Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z}
	if !s.Blank.movedFrom(t.Blank, by) {
		return Vec{}, false
	}
	for i, c := range s.Cuts {
		if !c.movedFrom(t.Cuts[i].Prism, by) {
			return Vec{}, false
		}
	}
	return by, true
}

// corner is the point where the prism's first outline begins, at its beginning.
func (p Prism) corner() Vec {
	for _, path := range p.Region {
		if len(path) > 0 {
			return Raise(path[0].From, p.Axis, p.From)
		}
	}
	return Vec{}
}

func (p Prism) movedFrom(q Prism, by Vec) bool {
	flat, along := by.Flat(p.Axis), by.Along(p.Axis)
	if p.Axis != q.Axis || p.From != q.From+along || p.To != q.To+along || len(p.Region) != len(q.Region) {
		return false
	}
	for i, path := range p.Region {
		if len(path) != len(q.Region[i]) {
			return false
		}
		for k, e := range path {
			f := q.Region[i][k]
			if e.Turn != f.Turn || e.From != f.From.Add(flat.X, flat.Y) || e.To != f.To.Add(flat.X, flat.Y) ||
				e.Turn != plane.Straight && e.Centre != f.Centre.Add(flat.X, flat.Y) {
				return false
			}
		}
	}
	return true
}
