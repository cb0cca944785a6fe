package solid

import (
	"math"

	"stilewright/model/plane"
)

// Volume is the solid's volume in mm³: its body less its bores. It is exact up
// to the rounding of floating point as long as there is one axis along which
// every prism of the body either runs or is cut in rectangles; otherwise (a
// round cut across a rounded one) it is good to 1e-6 of the whole.
//
// A bore takes πr² times the length of its axis inside the body. That is
// exact where every generator of the cylinder enters through one plane face,
// or at the bore's own end, and leaves through one; a bore that grazes an edge
// or a round face is only measured roughly. Bores must not overlap.
func (s Solid) Volume() float64 { return s.moments().volume }

// Centroid is the centre of the solid's volume in mm, as exact as Volume; the
// first corner of its bounds when it has no volume.
func (s Solid) Centroid() (x, y, z float64) {
	m, origin := s.moments(), s.origin()
	if m.volume == 0 {
		return origin[0], origin[1], origin[2]
	}
	c := m.first.times(1 / m.volume).plus(origin)
	return c[0], c[1], c[2]
}

// origin is the first corner of the solid's bounds in mm: moments about it
// keep their digits wherever the solid stands.
func (s Solid) origin() course {
	least, _ := s.Bounds()
	return between(Vec{}, least)
}

// A moment is a volume in mm³ and its first moments in mm⁴ about the X, Y and
// Z of an origin.
type moment struct {
	volume float64
	first  course
}

// moments are the solid's, about its origin.
func (s Solid) moments() moment {
	var m moment
	toOrigin := s.origin().times(-1)
	axis, even := evenAxis(s)
	for _, slice := range samples(s.levels(axis), even) {
		region := s.body(axis, slice.at)
		if region.Empty() {
			continue
		}
		x, y := region.Centroid()
		volume := region.Area() * slice.thickness
		m.volume += volume
		m.first = m.first.plus(lifted(x, y, slice.middle, axis).plus(toOrigin).times(volume))
	}
	for _, b := range s.Bores {
		hole := s.hole(b, toOrigin)
		m.volume -= hole.volume
		m.first = m.first.plus(hole.first.times(-1))
	}
	return m
}

// lifted is Raise for millimetres.
func lifted(x, y, at float64, a Axis) course {
	switch a {
	case X:
		return course{at, x, y}
	case Y:
		return course{x, at, y}
	default:
		return course{x, y, at}
	}
}

// hole is what the bore takes away. About the cylinder's axis, with its ends
// cut at a slant so that the cylinder reaches from a + k·x to b + l·x at the
// place x off the axis, the volume is πr²(b - a), the first moment along the
// axis πr²(b² - a²)/2 + πr⁴(l² - k²)/8 and across it πr⁴(l - k)/4.
func (s Solid) hole(b Bore, toOrigin course) moment {
	u, _ := between(b.From, b.To).unit()
	start := between(Vec{}, b.From).plus(toOrigin)
	r := b.Diameter.MM() / 2
	area, fourth := math.Pi*float64(r*r), math.Pi*float64(r*r)*float64(r*r)
	var m moment
	for _, run := range s.Pierce(b.From, b.To) {
		in, out := run.In.Along, run.Out.Along
		k, l := slant(run.In, u), slant(run.Out, u)
		volume := area * (out - in)
		along := volume*(in+out)/2 + fourth/8*(l.dot(l)-k.dot(k))
		m.volume += volume
		m.first = m.first.plus(start.times(volume)).plus(u.times(along))
		m.first = m.first.plus(l.plus(k.times(-1)).times(fourth / 4))
	}
	return m
}

// slant is how much farther along u a face lies for a step off the line, as a
// direction across it; zero for the line's own end and for a square face.
func slant(e End, u course) course {
	n := course(e.Normal)
	steep := n.dot(u)
	if steep == 0 {
		return course{}
	}
	return n.plus(u.times(-steep)).times(-1 / steep)
}

// Clash is the volume in mm³ common to the bodies of a and b, bores left out.
// It is 0 where they only touch, and as exact as Volume.
func Clash(a, b Solid) float64 {
	common, meet := a.Blank.bounds().overlap(b.Blank.bounds())
	if !meet {
		return 0
	}
	a, b = a.within(common), b.within(common)
	axis, even := evenAxis(a, b)
	levels := inOrder(append(a.levels(axis), b.levels(axis)...))
	var volume float64
	for _, slice := range samples(levels, even) {
		p, q := a.body(axis, slice.at), b.body(axis, slice.at)
		if !p.Empty() && !q.Empty() && overlap(p.Bounds(), q.Bounds()) {
			volume += plane.Intersect(p, q).Area() * slice.thickness
		}
	}
	return volume
}

// within is the part of the solid's body inside the box.
func (s Solid) within(b box) Solid {
	part := Solid{Blank: s.Blank.within(b)}
	for _, c := range s.Cuts {
		if _, meet := c.bounds().overlap(b); meet {
			part.Cuts = append(part.Cuts, Cut{Prism: c.within(b), For: c.For})
		}
	}
	return part
}
