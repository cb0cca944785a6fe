package solid

import (
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// askew is the least slope of a bore to a plane that counts: one that leaves
// the plane by less than 1 mm in a metre counts as parallel to it. No bit is
// held truer.
const askew = 1.0 / 1000

// A course is a direction in space as a unit vector, or a displacement in mm.
type course [3]float64

// between is the displacement from a to b in mm.
func between(a, b Vec) course {
	return course{(b.X - a.X).MM(), (b.Y - a.Y).MM(), (b.Z - a.Z).MM()}
}

func (c course) dot(d course) float64 {
	return float64(c[0]*d[0]) + float64(c[1]*d[1]) + float64(c[2]*d[2])
}

func (c course) times(f float64) course { return course{c[0] * f, c[1] * f, c[2] * f} }

func (c course) plus(d course) course { return course{c[0] + d[0], c[1] + d[1], c[2] + d[2]} }

// flat is c seen along the axis, as Vec.Flat.
func (c course) flat(a Axis) [2]float64 {
	switch a {
	case X:
		return [2]float64{c[1], c[2]}
	case Y:
		return [2]float64{c[0], c[2]}
	default:
		return [2]float64{c[0], c[1]}
	}
}

// unit is the direction of c and its length; the zero course has none.
func (c course) unit() (course, float64) {
	size := math.Sqrt(c.dot(c))
	if size == 0 {
		return course{}, 0
	}
	return course{c[0] / size, c[1] / size, c[2] / size}, size // so that (3, 0, 0) gives exactly 1
}

// Section is the bore cut by the plane at `at` across a, between its flat ends
// (those of a bore along a: From included, To not), in the coordinates of
// Flat(a). Whether there is stock to bore does not matter.
func (b Bore) Section(a Axis, at length.Length) plane.Region {
	u, size := between(b.From, b.To).unit()
	if size == 0 || b.Diameter <= 0 {
		return nil
	}
	from, to := b.From.Flat(a), b.To.Flat(a)
	switch slope := math.Abs(u[a]); {
	case from == to:
		low, high := b.From.Along(a), b.To.Along(a)
		if at < min(low, high) || at >= max(low, high) {
			return nil
		}
		return plane.Region{plane.Circle(from, b.Diameter.Half())}
	case slope < askew:
		middle := (b.From.Along(a).MM() + b.To.Along(a).MM()) / 2
		return strip(from, to, halfWidth(b.Diameter.MM()/2, at.MM()-middle))
	default:
		return b.inclined(u, size, a, at)
	}
}

// Prism is the bore as a round prism, and whether it is one: whether it runs
// along an axis and has some length and width.
func (b Bore) Prism() (Prism, bool) {
	for a := X; a <= Z; a++ {
		at, from, to := b.From.Flat(a), b.From.Along(a), b.To.Along(a)
		if at == b.To.Flat(a) && from != to && b.Diameter > 0 {
			return Prism{Axis: a, Region: plane.Region{plane.Circle(at, b.Diameter.Half())}, From: min(from, to), To: max(from, to)}, true
		}
	}
	return Prism{}, false
}

// Drilled is the solid with its bores along the axes as cuts, after the others;
// only bores aslant to the axes stay bores.
func (s Solid) Drilled() Solid {
	drilled := Solid{Blank: s.Blank, Cuts: slices.Clip(s.Cuts)}
	for _, b := range s.Bores {
		if p, along := b.Prism(); along {
			drilled.Cuts = append(drilled.Cuts, Cut{Prism: p, For: b.For})
		} else {
			drilled.Bores = append(drilled.Bores, b)
		}
	}
	return drilled
}

// halfWidth is half the chord of a circle at distance h from its centre.
func halfWidth(r, h float64) float64 {
	return math.Sqrt(max(0, (r-math.Abs(h))*(r+math.Abs(h))))
}

// strip is the rectangle half mm to both sides of the line between two points.
func strip(from, to plane.Point, half float64) plane.Region {
	if length.Round(half) == 0 {
		return nil
	}
	dx, dy := (to.X - from.X).MM(), (to.Y - from.Y).MM()
	scale := half / math.Sqrt(float64(dx*dx)+float64(dy*dy))
	sx, sy := length.Round(-dy*scale), length.Round(dx*scale)
	return plane.Region{plane.Polygon(from.Add(-sx, -sy), to.Add(-sx, -sy), to.Add(sx, sy), from.Add(sx, sy))}
}

// inclined is the ellipse of a bore that the plane cuts at a slant, between
// the lines in which the plane cuts its flat ends.
func (b Bore) inclined(u course, size float64, a Axis, at length.Length) plane.Region {
	v := u.flat(a)
	across := math.Sqrt(float64(v[0]*v[0]) + float64(v[1]*v[1])) // of u, in the plane
	v[0], v[1] = v[0]/across, v[1]/across
	depth := (at - b.From.Along(a)).MM()
	origin := b.From.Flat(a)
	along := func(mm float64) plane.Point {
		return origin.Add(length.Round(mm*v[0]), length.Round(mm*v[1]))
	}
	r := b.Diameter.MM() / 2
	long, centre := r/math.Abs(u[a]), depth*across/u[a]
	// A point of the plane at s along v lies at s·across + depth·u[a] along
	// the bore.
	first, last := -depth*u[a]/across, (size-depth*u[a])/across
	if last <= centre-long || first >= centre+long {
		return nil
	}
	ellipse := plane.Region{plane.Ellipse(along(centre), length.Round(long), length.Round(r), math.Atan2(v[1], v[0]))}
	if first <= centre-long && last >= centre+long {
		return ellipse
	}
	first, last = max(first, centre-2*long), min(last, centre+2*long)
	return plane.Intersect(ellipse, strip(along(first), along(last), 2*r))
}
