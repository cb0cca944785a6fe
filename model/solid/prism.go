package solid

import (
	"stilewright/model/length"
	"stilewright/model/plane"
)

// A box is the space between two opposite corners.
type box struct{ least, most Vec }

// bounds is the smallest box round the prism.
func (p Prism) bounds() box {
	b := p.Region.Bounds()
	return box{Raise(b.Min, p.Axis, p.From), Raise(b.Max, p.Axis, p.To)}
}

// overlap is the box common to both; it tells whether that has a volume.
func (b box) overlap(c box) (box, bool) {
	common := box{
		Vec{max(b.least.X, c.least.X), max(b.least.Y, c.least.Y), max(b.least.Z, c.least.Z)},
		Vec{min(b.most.X, c.most.X), min(b.most.Y, c.most.Y), min(b.most.Z, c.most.Z)},
	}
	return common, common.least.X < common.most.X && common.least.Y < common.most.Y && common.least.Z < common.most.Z
}

// join is the smallest box round the box and the point.
func (b box) join(v Vec) box {
	return box{
		Vec{min(b.least.X, v.X), min(b.least.Y, v.Y), min(b.least.Z, v.Z)},
		Vec{max(b.most.X, v.X), max(b.most.Y, v.Y), max(b.most.Z, v.Z)},
	}
}

// meets tells whether the boxes share a point.
func (b box) meets(c box) bool {
	return b.least.X <= c.most.X && c.least.X <= b.most.X && b.least.Y <= c.most.Y && c.least.Y <= b.most.Y &&
		b.least.Z <= c.most.Z && c.least.Z <= b.most.Z
}

// prism is the box as a prism along the axis.
func (b box) prism(a Axis) Prism {
	region := plane.Region{plane.Rect(b.least.Flat(a), b.most.Flat(a))}
	return Prism{Axis: a, Region: region, From: b.least.Along(a), To: b.most.Along(a)}
}

// move is the prism moved by d.
func (p Prism) move(d Vec) Prism {
	flat, along := d.Flat(p.Axis), d.Along(p.Axis)
	p.Region = p.Region.Translate(flat.X, flat.Y)
	p.From, p.To = p.From+along, p.To+along
	return p
}

// within is the part of the prism inside the box.
func (p Prism) within(b box) Prism {
	p.From, p.To = max(p.From, b.least.Along(p.Axis)), min(p.To, b.most.Along(p.Axis))
	window := plane.BoxOf(b.least.Flat(p.Axis), b.most.Flat(p.Axis))
	if p.Region.Bounds().Join(window) != window {
		p.Region = plane.Intersect(p.Region, plane.Region{window.Path()})
	}
	return p
}

// section is the prism's region cut by the plane at `at` across a; see
// Solid.Section.
func (p Prism) section(a Axis, at length.Length) plane.Region {
	if p.Axis == a {
		if p.From <= at && at < p.To {
			return p.Region
		}
		return nil
	}
	return p.raised(a, at, p.runs(a, at))
}

// raised is what the prism sweeps, in a plane across a, of stretches of the
// line at `at` on a in its region's plane.
func (p Prism) raised(a Axis, at length.Length, runs [][2]length.Length) plane.Region {
	var section plane.Region
	for _, run := range runs {
		low, high := Raise(p.flat(a, at, run[0]), p.Axis, p.From), Raise(p.flat(a, at, run[1]), p.Axis, p.To)
		section = append(section, plane.Rect(low.Flat(a), high.Flat(a)))
	}
	return section
}

// runs are the stretches in which the line at `at` on a, in the region's
// plane, runs inside the region.
func (p Prism) runs(a Axis, at length.Length) [][2]length.Length {
	if p.first(a) {
		return p.Region.Across(at)
	}
	return p.Region.Along(at)
}

// first tells whether a is the first of the region's two coordinates.
func (p Prism) first(a Axis) bool { return a == X || p.Axis == X && a == Y }

// flat is the point in the region's plane that lies at `at` on a and at other
// on the remaining coordinate.
func (p Prism) flat(a Axis, at, other length.Length) plane.Point {
	if p.first(a) {
		return plane.At(at, other)
	}
	return plane.At(other, at)
}

// levels are the places along a where the prism's section changes its course:
// its ends, or the corners and furthest reaches of its region.
func (p Prism) levels(a Axis) []length.Length {
	if p.Axis == a {
		return []length.Length{p.From, p.To}
	}
	var found []length.Length
	for _, path := range p.Region {
		for _, e := range path {
			b := e.Bounds()
			if p.first(a) {
				found = append(found, b.Min.X, b.Max.X)
			} else {
				found = append(found, b.Min.Y, b.Max.Y)
			}
		}
	}
	return inOrder(found)
}

// stepped tells whether the section across a is constant between levels.
func (p Prism) stepped(a Axis) bool {
	if p.Axis == a {
		return true
	}
	for _, path := range p.Region {
		for _, e := range path {
			if e.Turn != plane.Straight || e.From.X != e.To.X && e.From.Y != e.To.Y {
				return false
			}
		}
	}
	return true
}
