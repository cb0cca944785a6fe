package plane

import (
	"math"

	"stilewright/model/length"
)

// strays is how far, in nanometres, Ellipse lets an arc stray from the curve
// before rounding. Ends and centre of an arc are then rounded to a nanometre,
// which moves it by less than 2 nm more, within the 2 µm promised.
const strays = 1900

// Ellipse is the ellipse about centre with half axes a, turned by angle
// radians from +X, and b, drawn counter-clockwise with circular arcs from the
// end of the half axis a. Neighbouring arcs share their tangent but for the
// rounding. No arc strays from the ellipse by more than 2 µm. Of a = b it is
// the circle. The path is nil if a half axis is not more than 0, if the angle
// is not finite, or if the ellipse is so flat that it bends with a radius above
// half of length.Longest.
func Ellipse(centre Point, a, b length.Length, angle float64) Path {
	switch {
	case a <= 0 || b <= 0 || math.IsNaN(angle) || math.IsInf(angle, 0):
		return nil
	case float64(max(a, b))/float64(min(a, b)) > float64(length.Longest.Half())/float64(max(a, b)):
		return nil
	case a == b:
		return Circle(centre, a)
	}
	sin, cos := math.Sincos(angle)
	el := ellipse{centre: centre, a: float64(a), b: float64(b), sin: sin, cos: cos}
	if angle == 0 {
		el.sin, el.cos = 0, 1
	}
	var path Path
	corners := [...]vector{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}
	for i, from := range corners {
		path = el.draw(path, from, corners[(i+1)%4])
	}
	return path.withoutPoints()
}

// A vector is a direction or a displacement in nanometres.
type vector struct{ x, y float64 }

func (v vector) plus(w vector, times float64) vector {
	return vector{v.x + float64(times*w.x), v.y + float64(times*w.y)}
}

func (v vector) dot(w vector) float64 { return float64(v.x*w.x) + float64(v.y*w.y) }

func (v vector) cross(w vector) float64 { return float64(v.x*w.y) - float64(v.y*w.x) }

func (v vector) unit() vector {
	n := hypot(v.x, v.y)
	return vector{v.x / n, v.y / n}
}

// An ellipse knows its half axes, in nanometres, and how it is turned.
type ellipse struct {
	centre         Point
	a, b, sin, cos float64
}

// draw adds the arcs from one point to another, both given on the unit circle
// of which the ellipse is the image, halving the stretch until two arcs are
// near enough. Halving needs square roots only, which every machine rounds
// alike.
func (el ellipse) draw(path Path, from, to vector) Path {
	pair := biarc(el.at(from), el.at(to), el.tangent(from), el.tangent(to))
	if el.off(pair, from, to, samples) > strays {
		half := from.plus(to, 1).unit()
		return el.draw(el.draw(path, from, half), half, to)
	}
	joint := el.point(pair.joint)
	return append(path,
		Arc(el.point(pair.from), joint, el.point(pair.first), Left),
		Arc(joint, el.point(pair.to), el.point(pair.second), Left))
}

// samples is how often a stretch is halved to see how far two arcs stray. Each
// arc strays in one smooth hump, of whose height sixteen points miss less
// than 2 %.
const samples = 5

// off is how far the ellipse lies from two arcs between from and to, seen at
// the points that halving it deep times gives.
func (el ellipse) off(pair arcPair, from, to vector, deep int) float64 {
	if deep == 0 {
		return 0
	}
	half := from.plus(to, 1).unit()
	p := el.at(half)
	return max(pair.off(p), el.off(pair, from, half, deep-1), el.off(pair, half, to, deep-1))
}

// at is the ellipse's point, from its centre and in its own directions.
func (el ellipse) at(u vector) vector { return vector{float64(el.a * u.x), float64(el.b * u.y)} }

// tangent is the direction there, counter-clockwise.
func (el ellipse) tangent(u vector) vector {
	return vector{-float64(el.a * u.y), float64(el.b * u.x)}.unit()
}

// point brings a point in the ellipse's own directions into the plane.
func (el ellipse) point(v vector) Point {
	return el.centre.offset(float64(v.x*el.cos)-float64(v.y*el.sin), float64(v.x*el.sin)+float64(v.y*el.cos))
}

// An arcPair is two counter-clockwise arcs that join in one tangent: about
// first from from to joint, about second from there to to.
type arcPair struct{ from, joint, to, first, second vector }

// biarc is the pair from p to q, with unit tangents t and u there, whose joint
// lies equally far along both tangents.
func biarc(p, q, t, u vector) arcPair {
	v, both := q.plus(p, -1), t.plus(u, 1)
	bend := 2 * (1 - t.dot(u))
	reach := (math.Sqrt(float64(v.dot(both)*v.dot(both))+float64(bend*v.dot(v))) - v.dot(both)) / bend
	a, b := p.plus(t, reach), q.plus(u, -reach)
	joint := a.plus(b, 1)
	joint = vector{joint.x / 2, joint.y / 2}
	return arcPair{p, joint, q, centreOf(p, t, joint), centreOf(q, u, joint)}
}

// centreOf is the centre of the arc that leaves p along t and passes through
// joint.
func centreOf(p, t, joint vector) vector {
	normal, way := vector{-t.y, t.x}, joint.plus(p, -1)
	return p.plus(normal, way.dot(way)/(2*way.dot(normal)))
}

// off is how far p lies from the arc on whose side of the joint it is.
func (pair arcPair) off(p vector) float64 {
	centre := pair.first
	if out := pair.joint.plus(centre, -1); out.cross(p.plus(centre, -1)) > 0 {
		centre = pair.second
	}
	out, to := pair.joint.plus(centre, -1), p.plus(centre, -1)
	return math.Abs(hypot(out.x, out.y) - hypot(to.x, to.y))
}
