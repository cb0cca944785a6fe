package solid

import (
	"cmp"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// A Stretch is a part of a straight line that runs inside a body.
type Stretch struct{ In, Out End }

// An End is where a line enters or leaves a body.
type End struct {
	// Along is the distance in mm from the line's beginning.
	Along float64
	// Normal is the direction X, Y, Z, of length 1 mm and away from the
	// material, of the face the line passes there. It is zero where the line
	// itself begins or ends inside the body.
	Normal [3]float64
}

// Pierce gives the stretches of the straight line between two points that run
// inside the solid's body, bores left out, from its beginning on. What runs
// along a face is not inside.
func (s Solid) Pierce(from, to Vec) []Stretch {
	u, size := between(from, to).unit()
	if size == 0 {
		return nil
	}
	l := line{from, to, size}
	inside := s.Blank.pierce(l)
	reach := box{from, from}.join(to)
	for _, c := range s.Cuts {
		if c.bounds().meets(reach) {
			inside = spared(inside, c.pierce(l))
		}
	}
	for i := range inside {
		in, out := &inside[i].In, &inside[i].Out
		if u.dot(in.Normal) > 0 {
			in.Normal = course(in.Normal).times(-1)
		}
		if u.dot(out.Normal) < 0 {
			out.Normal = course(out.Normal).times(-1)
		}
	}
	return inside
}

// A line is a straight line between two points and its length in mm.
type line struct {
	from, to Vec
	size     float64
}

// pierce gives the stretches of the line inside the prism, their normals
// pointing either way.
func (p Prism) pierce(l line) []Stretch {
	whole := Stretch{Out: End{Along: l.size}}
	a, b := l.from.Along(p.Axis), l.to.Along(p.Axis)
	if a == b {
		if a <= p.From || a >= p.To {
			return nil
		}
		return p.pierceFlat(l, whole)
	}
	near, far := p.From, p.To
	if a > b {
		near, far = far, near
	}
	var face [3]float64
	face[p.Axis] = 1
	if in := (near - a).MM() / (b - a).MM() * l.size; in >= 0 {
		whole.In = End{in, face}
	}
	if out := (far - a).MM() / (b - a).MM() * l.size; out <= l.size {
		whole.Out = End{out, face}
	}
	return p.pierceFlat(l, whole)
}

// pierceFlat gives the parts of a stretch of the line that lie within the
// prism's region.
func (p Prism) pierceFlat(l line, whole Stretch) []Stretch {
	if whole.In.Along >= whole.Out.Along {
		return nil
	}
	from, to := l.from.Flat(p.Axis), l.to.Flat(p.Axis)
	if from == to {
		if p.Region.Where(from) == plane.Inside {
			return []Stretch{whole}
		}
		return nil
	}
	ends := []End{whole.In, whole.Out}
	for _, path := range p.Region {
		for _, e := range path {
			ends = meetings(ends, e, from, to, l.size, p.Axis)
		}
	}
	slices.SortStableFunc(ends, func(a, b End) int { return cmp.Compare(a.Along, b.Along) })
	var inside []Stretch
	for i := 1; i < len(ends); i++ {
		in, out := ends[i-1], ends[i]
		if in.Along < whole.In.Along || out.Along > whole.Out.Along || in.Along == out.Along {
			continue
		}
		middle := (in.Along + out.Along) / 2 / l.size
		if p.Region.Where(partWay(from, to, middle)) != plane.Inside {
			continue
		}
		if last := len(inside) - 1; last >= 0 && inside[last].Out.Along == in.Along {
			inside[last].Out = out
			continue
		}
		inside = append(inside, Stretch{in, out})
	}
	return inside
}

// partWay is the point at part, 0 to 1, of the way between two points.
func partWay(from, to plane.Point, part float64) plane.Point {
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	return from.Add(length.Length(math.Round(dx*part)), length.Length(math.Round(dy*part)))
}

// meetings adds to ends where the line from..to, of true length size mm, meets
// the edge. It may find a few nanometres too much, never too little.
func meetings(ends []End, e plane.Edge, from, to plane.Point, size float64, axis Axis) []End {
	d := flatBetween(from, to)
	a, b := flatBetween(from, e.From), flatBetween(from, e.To)
	const slack = 1e-9 // of the edge, so that no corner slips through
	if e.Turn == plane.Straight {
		side := [2]float64{b[0] - a[0], b[1] - a[1]}
		slope := cross(d, side)
		if s := cross(a, d) / slope; slope == 0 || s < -slack || s > 1+slack {
			return ends
		}
		return append(ends, End{cross(a, side) / slope * size, raised(side[1], -side[0], axis)})
	}
	c := flatBetween(from, e.Centre)
	dd := float64(d[0]*d[0]) + float64(d[1]*d[1])
	nearest := (float64(d[0]*c[0]) + float64(d[1]*c[1])) / dd
	off := cross(d, c) / math.Sqrt(dd)
	reach := halfWidth(e.Radius(), off) / math.Sqrt(dd)
	if math.Abs(off) >= e.Radius() {
		return ends
	}
	for _, t := range [...]float64{nearest - reach, nearest + reach} {
		x, y := float64(t*d[0]), float64(t*d[1])
		// The arc lies on the right of its chord when it turns left.
		if cross([2]float64{b[0] - a[0], b[1] - a[1]}, [2]float64{x - a[0], y - a[1]})*float64(e.Turn) <= slack {
			ends = append(ends, End{t * size, raised(x-c[0], y-c[1], axis)})
		}
	}
	return ends
}

// flatBetween is the displacement from a to b in mm.
func flatBetween(a, b plane.Point) [2]float64 { return [2]float64{(b.X - a.X).MM(), (b.Y - a.Y).MM()} }

func cross(a, b [2]float64) float64 { return float64(a[0]*b[1]) - float64(a[1]*b[0]) }

// raised is the direction (x, y) in the plane across the axis, in space.
func raised(x, y float64, axis Axis) [3]float64 {
	var c course
	switch axis {
	case X:
		c = course{0, x, y}
	case Y:
		c = course{x, 0, y}
	default:
		c = course{x, y, 0}
	}
	c, _ = c.unit()
	return c
}

// spared is the stretches less those of a cut, both in order.
func spared(inside, cut []Stretch) []Stretch {
	for _, c := range cut {
		var left []Stretch
		for _, s := range inside {
			if c.Out.Along <= s.In.Along || c.In.Along >= s.Out.Along {
				left = append(left, s)
				continue
			}
			if s.In.Along < c.In.Along {
				left = append(left, Stretch{s.In, c.In})
			}
			if c.Out.Along < s.Out.Along {
				left = append(left, Stretch{c.Out, s.Out})
			}
		}
		inside = left
	}
	return inside
}
