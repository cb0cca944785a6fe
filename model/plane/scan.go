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
	return r.Swap().Across(atY)
}

// aside is how far, in nanometres, beside a line a region is asked what lies
// there: clear of what counts as on it, and far below anything that is cut.
const aside = 5 * near

// Beside is Across for the line just right of X = atX when side is 1, or just
// left of it when side is -1: what runs along an edge is inside when the
// region lies on that side of it. Stretches that touch are one.
func (r Region) Beside(atX length.Length, side int) [][2]length.Length {
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
		middle := At(atX, ys[i-1]+(ys[i]-ys[i-1])/2)
		at := r.Where(middle)
		if at == Boundary {
			at = r.Where(middle.Add(aside*length.Length(side), 0))
		}
		if at != Inside {
			continue
		}
		if last := len(found) - 1; last >= 0 && found[last][1] == ys[i-1] {
			found[last][1] = ys[i]
			continue
		}
		found = append(found, [2]length.Length{ys[i-1], ys[i]})
	}
	return found
}

// Swap is the region with X and Y exchanged: mirrored in the line through the
// origin that rises at 45°.
func (r Region) Swap() Region { return r.Map(Point.Swap, true) }

// Swap is the point with X and Y exchanged.
func (p Point) Swap() Point { return At(p.Y, p.X) }

// Across gives the places of Y at which the edge meets the vertical line at
// X = atX; of an edge along that line, its ends.
func (e Edge) Across(atX length.Length) []length.Length { return e.across(nil, atX) }

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
	var half length.Length // 0 where the line touches: a nanometre there is a micrometre up and down
	if r-math.Abs(out) > near {
		half = round(math.Sqrt(float64((r - out) * (r + out))))
	}
	for _, y := range [...]length.Length{e.Centre.Y - half, e.Centre.Y + half} {
		if e.passes(e.Centre.to(At(x, y))) {
			ys = append(ys, y)
		}
	}
	return ys
}
