package pdf

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// bend is how far, in millimetres, a Bézier curve may stray from the arc it stands for
// before numbers are rounded. With the rounding of its four points to
// 0.05 µm a coordinate the curve as written stays within 0.0006 mm.
const bend = 0.0005

// widest is the most of a circle one Bézier curve stands for, in radians, with
// room for the rounding of a quarter's ends.
const widest = math.Pi/2 + 1e-6

// appendArc writes an arc as Bézier curves, from where the path is now. An arc too long
// for one curve is halved until its parts are not.
func appendArc(data []byte, e plane.Edge) []byte {
	if middle := e.Middle(); strays(e) && middle != e.From && middle != e.To {
		data = appendArc(data, plane.Arc(e.From, middle, e.Centre, e.Turn))
		return appendArc(data, plane.Arc(middle, e.To, e.Centre, e.Turn))
	}
	a, b := controls(e)
	data = appendPoint(appendPoint(data, a), b)
	return append(appendPoint(data, e.To), "c\n"...)
}

// strays tells whether one Bézier curve would be too far from the arc. The
// radial error of the cubic with the arc's ends, tangents and middle is
// (4/27) sin⁶(θ/4) ÷ cos²(θ/4) of the radius, θ being the sweep (M. Goldapp,
// Approximation of circular arcs by cubic polynomials, 1991; from memory, and
// measured in this package's test). In t = tan(θ/4) that is
// (4/27) t⁶ ÷ (1 + t²)².
func strays(e plane.Edge) bool {
	if math.Abs(e.Sweep()) > widest {
		return true
	}
	t := quarterTangent(e)
	square := float64(t * t)
	return e.Radius()*4/27*float64(square*square*square)/float64((1+square)*(1+square)) > bend
}

// quarterTangent is the tangent of a quarter of the sweep of an arc of at most
// half a circle: with the chord's s = sin(θ/2) it is s ÷ (1 + cos(θ/2)).
func quarterTangent(e plane.Edge) float64 {
	x, y := (e.To.X - e.From.X).MM(), (e.To.Y - e.From.Y).MM()
	s := min(1, math.Sqrt(float64(x*x)+float64(y*y))/(2*e.Radius()))
	return s / (1 + math.Sqrt(float64((1-s)*(1+s))))
}

// controls are the two inner points of the Bézier curve for an arc of at most
// a quarter: along the tangents by 4/3 tan(θ/4) of the radius.
func controls(e plane.Edge) (a, b plane.Point) {
	reach := float64(e.Turn) * 4 / 3 * quarterTangent(e)
	along := func(p plane.Point, reach float64) plane.Point {
		x, y := (p.X - e.Centre.X).MM(), (p.Y - e.Centre.Y).MM()
		return p.Add(length.Round(-float64(reach*y)), length.Round(float64(reach*x)))
	}
	return along(e.From, reach), along(e.To, -reach)
}
