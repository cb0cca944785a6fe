package solid

import (
	"math"

	"stilewright/model/plane"
)

// Volume is the solid's volume in mm³: its body less its bores. It is exact up
// to the rounding of floating point, unless a round or slanted face of one
// prism comes within the bounds of one of another that runs across it; what is
// round there is then good to 1e-6 of what is common to those bounds.
//
// Bores along an axis are measured as the cuts they are, wherever they run and
// whatever they meet. Any other takes πr² times the length of its axis inside
// the body. That is exact where every generator of the cylinder enters through
// one plane face, or at the bore's own end, and leaves through one; one that
// grazes an edge or a round face is only measured roughly, and it must meet no
// other bore.
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
	s = s.Drilled()
	cell{box: s.Blank.bounds(), in: []Prism{s.Blank}, out: s.taken()}.measure(&m, toOrigin)
	for _, b := range s.Bores {
		hole := s.hole(b, toOrigin)
		m.volume -= hole.volume
		m.first = m.first.plus(hole.first.times(-1))
	}
	return m
}

// taken is what the solid's cuts take.
func (s Solid) taken() []Prism {
	prisms := make([]Prism, len(s.Cuts))
	for i, c := range s.Cuts {
		prisms[i] = c.Prism
	}
	return prisms
}

// add adds the prism's moments, or takes them away when sign is -1.
func (m *moment) add(p Prism, sign float64, toOrigin course) {
	middle, size := (p.From.MM()+p.To.MM())/2, (p.To - p.From).MM()
	m.slice(p.Region, p.Axis, middle, sign*size, toOrigin)
}

// slice adds the moments of a region across the axis, its middle there and its
// thickness in mm.
func (m *moment) slice(r plane.Region, a Axis, middle, thickness float64, toOrigin course) {
	x, y := r.Centroid()
	volume := r.Area() * thickness
	m.volume += volume
	m.first = m.first.plus(lifted(x, y, middle, a).plus(toOrigin).times(volume))
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

// Clash is the volume in mm³ common to a and b: 0 where they only touch, and as
// exact as Volume. Bores count where they run along an axis, so that a dowel
// in its hole clashes with nothing; other bores are left out.
func Clash(a, b Solid) float64 {
	common, meet := a.Blank.bounds().overlap(b.Blank.bounds())
	if !meet {
		return 0
	}
	a, b = a.Drilled(), b.Drilled()
	var m moment
	cell{box: common, in: []Prism{a.Blank, b.Blank}, out: append(a.taken(), b.taken()...)}.measure(&m, between(Vec{}, common.least).times(-1))
	return m.volume
}
