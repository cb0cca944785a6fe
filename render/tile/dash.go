package tile

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// dashed is a path's dashes, as writers draw them: the pattern, drawn and left
// in turn, begins with the path and runs on round its corners.
func dashed(path plane.Path, pattern []length.Length) (dashes []plane.Path) {
	var now plane.Path // the dash being drawn
	turn, left := 0, pattern[0].MM()
	for _, e := range path {
		whole := e.Length()
		begin, from := e.From, 0.0
		for from < whole {
			till := min(whole, from+left)
			end := e.To
			if till < whole {
				end = along(e, till/whole)
			}
			if turn%2 == 0 && begin != end {
				now = append(now, plane.Arc(begin, end, e.Centre, e.Turn))
			}
			left -= till - from
			begin, from = end, till
			if till < whole || left <= 0 { // the pattern's part ends here
				if len(now) > 0 {
					dashes, now = append(dashes, now), nil
				}
				turn = (turn + 1) % len(pattern)
				left = pattern[turn].MM()
			}
		}
	}
	if len(now) > 0 {
		dashes = append(dashes, now)
	}
	return dashes
}

// along is the point at a part of the edge's length, from 0 to 1.
func along(e plane.Edge, part float64) plane.Point {
	if e.Turn == plane.Straight {
		x, y := (e.To.X - e.From.X).MM(), (e.To.Y - e.From.Y).MM()
		return e.From.Add(length.Round(float64(x*part)), length.Round(float64(y*part)))
	}
	s, c := math.Sincos(float64(e.Sweep() * part))
	x, y := (e.From.X - e.Centre.X).MM(), (e.From.Y - e.Centre.Y).MM()
	return e.Centre.Add(length.Round(float64(x*c)-float64(y*s)), length.Round(float64(x*s)+float64(y*c)))
}
