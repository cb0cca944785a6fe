package plane

import (
	"math"
	"slices"

	"stilewright/model/length"
)

// Across gives the stretches of Y, as open intervals from the lowest up, in
// which the vertical line at X = atX runs inside the region. Where it runs
// along an edge it is not inside.
func (r Region) Across(atX length.Length) [][2]length.Length {
	var ys []length.Length
	for _, path := range r {
		for _, e := range path {
			ys = e.across(ys, atX)
		}
	}
	slices.Sort(ys)
	ys = slices.Compact(ys)
	var found [][2]length.Length
	for i := 1; i < len(ys); i++ {
		if r.Where(At(atX, ys[i-1]+(ys[i]-ys[i-1])/2)) == Inside {
			found = append(found, [2]length.Length{ys[i-1], ys[i]})
		}
	}
	return found
}

// Along gives the stretches of X, as open intervals from left to right, in
// which the horizontal line at Y = atY runs inside the region.
func (r Region) Along(atY length.Length) [][2]length.Length {
	swapped := r.Map(func(p Point) Point { return At(p.Y, p.X) }, true)
	return swapped.Across(atY)
}

// across adds to ys where the vertical line at x meets the edge.
func (e Edge) across(ys []length.Length, x length.Length) []length.Length {
	if b := e.Bounds(); x < b.Min.X || x > b.Max.X {
		return ys
	}
	if e.From.X == x {
		ys = append(ys, e.From.Y)
	}
	if e.To.X == x {
		ys = append(ys, e.To.Y)
	}
	if e.Turn == Straight {
		if d := e.From.to(e.To); (e.From.X < x) != (e.To.X < x) && e.From.X != x && e.To.X != x {
			ys = append(ys, e.From.Y+round(float64(x-e.From.X)*float64(d.Y)/float64(d.X)))
		}
		return ys
	}
	out, r := float64(x-e.Centre.X), e.radius()
	half := round(math.Sqrt(max(0, float64((r-out)*(r+out)))))
	for _, y := range [...]length.Length{e.Centre.Y - half, e.Centre.Y + half} {
		if e.passes(e.Centre.to(At(x, y))) {
			ys = append(ys, y)
		}
	}
	return ys
}
