package plane

import "math"

// on tells whether p lies on the edge to within near, ends included.
func (s *span) on(p Point) bool {
	if p == s.From || p == s.To {
		return true
	}
	if s.Turn == Straight {
		d, q := s.From.to(s.To), s.From.to(p)
		along := dot(d, q)
		if along.sign() < 0 || dot(d, d).minus(along).sign() < 0 {
			return false
		}
		return math.Abs(cross(d, q).float()) <= s.near*s.size
	}
	q := s.Centre.to(p)
	return math.Abs(norm(q)-s.size) <= s.near && s.passes(q)
}

// crossings adds to found the points where a and b cross or touch away from
// the ends of either: a place where an end of one lies on the other is not
// among them, nor are the ends of a stretch they share.
func crossings(found []Point, a, b *span) []Point {
	switch {
	case a.Turn == Straight && b.Turn == Straight:
		return segments(found, a, b)
	case a.Turn == Straight:
		return segmentArc(found, a, b)
	case b.Turn == Straight:
		return segmentArc(found, b, a)
	default:
		return arcs(found, a, b)
	}
}

// segments decides in exact integers whether two segments cross; the point is
// rounded, and stays on a segment that runs along an axis.
func segments(found []Point, a, b *span) []Point {
	c, d := side(a.From, a.To, b.From), side(a.From, a.To, b.To)
	if c*d >= 0 || side(b.From, b.To, a.From)*side(b.From, b.To, a.To) >= 0 {
		return found
	}
	if a.on(b.From) || a.on(b.To) || b.on(a.From) || b.on(a.To) {
		return found
	}
	da, db := a.From.to(a.To), b.From.to(b.To)
	t := cross(a.From.to(b.From), db).float() / cross(da, db).float()
	return append(found, b.keep(a.keep(a.From.offset(t*float64(da.X), t*float64(da.Y)))))
}

// keep puts p back onto a segment that runs along an axis.
func (s *span) keep(p Point) Point {
	if s.Turn != Straight {
		return p
	}
	if s.From.X == s.To.X {
		p.X = s.From.X
	}
	if s.From.Y == s.To.Y {
		p.Y = s.From.Y
	}
	return p
}

// segmentArc finds where segment s meets arc c. It works from the arc's
// centre, where the numbers are smallest.
func segmentArc(found []Point, s, c *span) []Point {
	d, from := s.From.to(s.To), c.Centre.to(s.From)
	ux, uy := float64(d.X)/s.size, float64(d.Y)/s.size
	away := cross(from, d).float() / s.size // of the line from the centre, to its right
	depth := c.size - math.Abs(away)
	if depth < -s.near {
		return found
	}
	m := meeting{a: s, b: c, base: c.Centre, x: float64(away * uy), y: -float64(away * ux), ux: ux, uy: uy}
	if depth > near {
		m.half = math.Sqrt(float64(depth * (c.size + math.Abs(away))))
		m.sine = m.half / c.size
	} else {
		m.zone = math.Sqrt(4 * near * c.size)
	}
	return m.points(found)
}

// arcs finds where two arcs meet. Arcs whose circles are the same to within
// near do not cross; they may share a stretch, which on finds from its ends.
func arcs(found []Point, a, b *span) []Point {
	between := a.Centre.to(b.Centre)
	apart := norm(between)
	outer, inner := a.size+b.size-apart, min(a.size, b.size)+apart-max(a.size, b.size)
	if apart <= near || outer < -a.near || inner < -a.near {
		return found
	}
	ux, uy := float64(between.X)/apart, float64(between.Y)/apart
	foot := (apart + float64((a.size-b.size)*(a.size+b.size))/apart) / 2
	m := meeting{a: a, b: b, base: a.Centre, ux: -uy, uy: ux}
	switch {
	case outer <= near:
		foot = a.size
		m.zone = math.Sqrt(4 * near * a.size * b.size / (a.size + b.size))
	case inner <= near:
		foot = math.Copysign(a.size, foot)
		m.zone = math.Sqrt(4 * near * a.size * b.size / max(math.Abs(a.size-b.size), near))
	default:
		m.half = math.Sqrt(max(0, float64((a.size-foot)*(a.size+foot))))
		m.sine = m.half / a.size * apart / b.size
	}
	m.x, m.y = foot*ux, foot*uy
	return m.points(found)
}

// A meeting is where two whole curves meet: at half to either side of the
// point (x, y) from base, along the unit direction (ux, uy). When they touch,
// half is 0 and zone is how far they run within near of each other; when they
// cross, sine is that of the angle between them. Lengths in nanometres.
type meeting struct {
	a, b         *span
	base         Point
	x, y, ux, uy float64
	half         float64
	zone, sine   float64
}

func (m meeting) points(found []Point) []Point {
	if m.half == 0 {
		return m.point(found, 0)
	}
	return m.point(m.point(found, -m.half), m.half)
}

// point adds the point at t along the direction if both edges pass there and
// neither ends so close by that its end is that point.
func (m meeting) point(found []Point, t float64) []Point {
	p := m.a.keep(m.base.offset(m.x+float64(t*m.ux), m.y+float64(t*m.uy)))
	if !m.a.box.Holds(p) || !m.b.box.Holds(p) || !m.a.spans(p) || !m.b.spans(p) {
		return found
	}
	reach := m.zone
	if m.half > 0 {
		reach = 2 * near * (1 + 1/m.sine)
	}
	for _, end := range [...]struct {
		at    Point
		other *span
	}{{m.a.From, m.b}, {m.a.To, m.b}, {m.b.From, m.a}, {m.b.To, m.a}} {
		if norm(p.to(end.at)) <= reach && end.other.on(end.at) {
			return found
		}
	}
	return append(found, p)
}

// spans tells whether p, on the edge's whole line or circle, lies between its
// ends.
func (s *span) spans(p Point) bool {
	if s.Turn != Straight {
		return s.passes(s.Centre.to(p))
	}
	d, q := s.From.to(s.To), s.From.to(p)
	return dot(d, q).sign() > 0 && dot(d, d).minus(dot(d, q)).sign() > 0
}

// Holds tells whether a point lies in the box or on its edge.
func (b Box) Holds(p Point) bool {
	return b.Min.X <= p.X && p.X <= b.Max.X && b.Min.Y <= p.Y && p.Y <= b.Max.Y
}
