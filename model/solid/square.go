package solid

import (
	"stilewright/model/length"
	"stilewright/model/plane"
)

// A sewing is a shell in the making.
type sewing struct {
	solid   Solid
	patches []patch
}

// A patch is a face with its boundary not yet joined to its neighbours'.
type patch struct {
	Face
	outlines [][]curve
}

// A curve is a stretch of a patch's boundary.
type curve struct {
	from, to Vec
	arc      plane.Edge // as Edge.Arc; straight when its Turn is
	axis     Axis
}

// square makes the faces square to the axes: at every place where a section
// may change in a step, what there is on one side of it only.
func (sw *sewing) square() {
	for a := X; a <= Z; a++ {
		for _, at := range sw.solid.steps(a) {
			below, above := sw.solid.beside(a, at, -1), sw.solid.beside(a, at, 1)
			sw.lie(less(below, above), a, at, 1)
			sw.lie(less(above, below), a, at, -1)
		}
	}
}

// steps are the places along a, within the blank or at its ends, where the
// body's section may change in a step, in order.
func (s Solid) steps(a Axis) []length.Length {
	b := s.Blank.bounds()
	var found []length.Length
	for _, p := range append(s.taken(), s.Blank) {
		if p.Axis == a {
			found = append(found, p.From, p.To)
			continue
		}
		for _, path := range p.Region {
			for _, e := range path {
				from, to := Raise(e.From, p.Axis, 0).Along(a), Raise(e.To, p.Axis, 0).Along(a)
				if e.Turn == plane.Straight && from == to {
					found = append(found, from)
				}
			}
		}
	}
	var within []length.Length
	for _, at := range found {
		if b.least.Along(a) <= at && at <= b.most.Along(a) {
			within = append(within, at)
		}
	}
	return inOrder(within)
}

// beside is the body's section just before the plane at `at` across a (side
// -1) or just behind it (side 1).
func (s Solid) beside(a Axis, at length.Length, side int) plane.Region {
	return without(s.Blank.beside(a, at, side), s.taken(), func(p Prism) plane.Region { return p.beside(a, at, side) })
}

func (p Prism) beside(a Axis, at length.Length, side int) plane.Region {
	if p.Axis == a {
		if p.From < at && at < p.To || at == p.From && side > 0 || at == p.To && side < 0 {
			return p.Region
		}
		return nil
	}
	region := p.Region
	if !p.first(a) {
		region = region.Swap()
	}
	return p.raised(a, at, region.Beside(at, side))
}

// lie makes the faces of a region at `at` across a that look the way side tells.
func (sw *sewing) lie(r plane.Region, a Axis, at length.Length, side int) {
	for _, region := range r.Pieces() {
		f := patch{Face: Face{Axis: a, Side: side, At: at, Region: region}}
		f.For = sw.purpose(a, at, side, region)
		for _, path := range region {
			var outline []curve
			for _, e := range path {
				c := curve{from: Raise(e.From, a, at), to: Raise(e.To, a, at)}
				if e.Turn != plane.Straight {
					c.arc, c.axis = e, a
				}
				outline = append(outline, c)
			}
			f.outlines = append(f.outlines, turned(outline, side*a.hand()))
		}
		sw.patches = append(sw.patches, f)
	}
}

// hand is 1 when the two coordinates of Flat and the axis are right-handed in
// that order, else -1.
func (a Axis) hand() int {
	if a == Y {
		return -1
	}
	return 1
}

// turned is the outline, walked the other way if the sign is less than 0.
func turned(outline []curve, sign int) []curve {
	if sign > 0 {
		return outline
	}
	back := make([]curve, len(outline))
	for i, c := range outline {
		c.from, c.to, c.arc = c.to, c.from, c.arc.Reverse()
		back[len(outline)-1-i] = c
	}
	return back
}

// purpose is the use of the cut that left a square face, found at a point of
// it; empty if no cut did.
func (sw *sewing) purpose(a Axis, at length.Length, side int, r plane.Region) string {
	b := r.Bounds()
	x := b.Min.X + b.Width()/2
	run := r.Across(x)
	if len(run) == 0 {
		return ""
	}
	inside := plane.At(x, run[0][0]+(run[0][1]-run[0][0])/2)
	for _, c := range sw.solid.Cuts {
		if c.beside(a, at, side).Where(inside) != plane.Outside {
			return c.For
		}
	}
	return ""
}
