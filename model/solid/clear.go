package solid

import (
	"cmp"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// Apart is the distance in mm between two bores: that of their axes less both
// radii, below 0 where they meet. The ends are taken as round, so that beyond
// a flat end it may say too little, never too much.
func (b Bore) Apart(c Bore) float64 {
	u, v, w := between(b.From, b.To), between(c.From, c.To), between(c.From, b.From)
	uu, vv, uv, uw, vw := u.dot(u), v.dot(v), u.dot(v), u.dot(w), v.dot(w)
	s, t := nearest(uu, vv, uv, uw, vw)
	gap := w.plus(u.times(s)).plus(v.times(-t))
	return math.Sqrt(gap.dot(gap)) - b.Diameter.MM()/2 - c.Diameter.MM()/2
}

// nearest are the parts of the way, 0 to 1, at which two stretches u and v,
// the first beginning at w from the second's beginning, are nearest (Ericson,
// Real-Time Collision Detection, 5.1.9; from memory). A stretch may be a point.
func nearest(uu, vv, uv, uw, vw float64) (s, t float64) {
	within := func(x float64) float64 { return max(0, min(1, x)) }
	part := func(a, b float64) float64 {
		if b == 0 {
			return 0
		}
		return within(a / b)
	}
	if d := float64(uu*vv) - float64(uv*uv); d > 1e-12*uu*vv {
		s = within((float64(uv*vw) - float64(uw*vv)) / d)
	}
	t = part(float64(uv*s)+vw, vv)
	return part(float64(uv*t)-uw, uu), t
}

// Off is the distance in mm from the bore to the prism, below 0 where its axis
// comes nearer than its radius. The prism's region is taken as if a thread were
// drawn tight round it, and the bore's ends as round: it may say too little,
// never too much.
func (b Bore) Off(p Prism) float64 {
	hull, from, way := tight(p.Region), between(Vec{}, b.From), between(b.From, b.To)
	at := func(t float64) float64 {
		point := from.plus(way.times(t))
		along := max(p.From.MM()-point[p.Axis], 0, point[p.Axis]-p.To.MM())
		return math.Hypot(along, outside(hull, point.flat(p.Axis)))
	}
	// Along a line the distance from a body without hollows has one valley.
	low, high := 0.0, 1.0
	for range 60 {
		third := (high - low) / 3
		if at(low+third) <= at(high-third) {
			high -= third
		} else {
			low += third
		}
	}
	return min(at(0), at((low+high)/2), at(1)) - b.Diameter.MM()/2
}

// tight are the corners in mm, counter-clockwise, of the thread drawn tight
// round a region, arcs to a hundredth of a millimetre.
func tight(r plane.Region) [][2]float64 {
	const chord = 10 * length.Micrometre
	var points [][2]float64
	for _, path := range r {
		for _, e := range path.Flatten(chord) {
			points = append(points, [2]float64{e.From.X.MM(), e.From.Y.MM()})
		}
	}
	slices.SortFunc(points, func(a, b [2]float64) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	half := func(points [][2]float64) [][2]float64 {
		var hull [][2]float64
		for _, p := range points {
			for n := len(hull); n > 1 && turn(hull[n-2], hull[n-1], p) <= 0; n = len(hull) {
				hull = hull[:n-1]
			}
			hull = append(hull, p)
		}
		return hull[:max(0, len(hull)-1)]
	}
	lower := half(points)
	slices.Reverse(points)
	return append(lower, half(points)...)
}

// turn is above 0 where the way from a over b to c turns left.
func turn(a, b, c [2]float64) float64 {
	return cross([2]float64{b[0] - a[0], b[1] - a[1]}, [2]float64{c[0] - a[0], c[1] - a[1]})
}

// outside is how far a point lies outside the corners' outline, 0 inside.
func outside(corners [][2]float64, p [2]float64) float64 {
	least, inside := math.Inf(1), true
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		inside = inside && turn(a, b, p) >= 0
		dx, dy := b[0]-a[0], b[1]-a[1]
		t := 0.0
		if size := float64(dx*dx) + float64(dy*dy); size > 0 {
			t = max(0, min(1, (float64((p[0]-a[0])*dx)+float64((p[1]-a[1])*dy))/size))
		}
		least = min(least, math.Hypot(p[0]-a[0]-float64(t*dx), p[1]-a[1]-float64(t*dy)))
	}
	if inside {
		return 0
	}
	return least
}

// Gap is the distance in mm between the boxes round two prisms, 0 where they
// meet.
func (p Prism) Gap(q Prism) float64 {
	b, c := p.bounds(), q.bounds()
	var square float64
	for _, a := range [...]Axis{X, Y, Z} {
		d := max(b.least.Along(a)-c.most.Along(a), 0, c.least.Along(a)-b.most.Along(a)).MM()
		square += float64(d * d)
	}
	return math.Sqrt(square)
}
