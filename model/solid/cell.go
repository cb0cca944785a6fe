package solid

import (
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// A cell is the space in a box and in all prisms of in, and in none of out.
type cell struct {
	box     box
	in, out []Prism
}

// measure adds to m the cell's moments about an origin in mm. The cell is
// parted, by planes across the axes, until each part has an axis along which
// all its prisms run or are cut in rectangles, and is then measured exactly;
// where round prisms cross one another it is sampled.
func (c cell) measure(m *moment, toOrigin course) {
	c, empty := c.trimmed()
	switch {
	case empty:
		return
	case len(c.out) == 0 && len(c.in) <= 1:
		m.add(c.whole(), 1, toOrigin)
		return
	case len(c.out) == 1 && len(c.in) == 0:
		m.add(cell{box: c.box}.whole(), 1, toOrigin)
		m.add(c.out[0], -1, toOrigin)
		return
	}
	if a, at, found := c.between(); found {
		c.part(a, at, m, toOrigin)
		return
	}
	axis, even := c.even()
	if !even {
		if a, at, found := c.apart(); found {
			c.part(a, at, m, toOrigin)
			return
		}
	}
	for _, slice := range samples(c.levels(axis), even) {
		if region := c.section(axis, slice.at); !region.Empty() {
			m.slice(region, axis, slice.middle, slice.thickness, toOrigin)
		}
	}
}

// whole is the cell as one prism when it has no out and at most one in, which
// lies within its box.
func (c cell) whole() Prism {
	if len(c.in) == 1 {
		return c.in[0]
	}
	return c.box.prism(Y)
}

// part measures both sides of the plane at `at` across a.
func (c cell) part(a Axis, at length.Length, m *moment, toOrigin course) {
	low, high := c, c
	switch a {
	case X:
		low.box.most.X, high.box.least.X = at, at
	case Y:
		low.box.most.Y, high.box.least.Y = at, at
	default:
		low.box.most.Z, high.box.least.Z = at, at
	}
	low.measure(m, toOrigin)
	high.measure(m, toOrigin)
}

// trimmed is the cell with its box no larger than its prisms, and these no
// larger than the box; those in it that fill the box are left out. It tells
// when nothing is in the cell.
func (c cell) trimmed() (cell, bool) {
	trimmed := cell{box: c.box}
	for _, p := range c.in {
		common, meet := trimmed.box.overlap(p.bounds())
		if !meet {
			return cell{}, true
		}
		trimmed.box = common
	}
	for _, p := range c.in {
		switch p = p.within(trimmed.box); {
		case p.Region.Empty():
			return cell{}, true
		case !p.fills(trimmed.box):
			trimmed.in = append(trimmed.in, p)
		}
	}
	for _, p := range c.out {
		if _, meet := p.bounds().overlap(trimmed.box); !meet {
			continue
		}
		switch p = p.within(trimmed.box); {
		case p.Region.Empty():
		case p.fills(trimmed.box):
			return cell{}, true
		default:
			trimmed.out = append(trimmed.out, p)
		}
	}
	return trimmed, false
}

// fills tells whether the prism, which lies in the box, is all of it.
func (p Prism) fills(b box) bool {
	if p.From != b.least.Along(p.Axis) || p.To != b.most.Along(p.Axis) || len(p.Region) != 1 || len(p.Region[0]) != 4 {
		return false
	}
	window := plane.BoxOf(b.least.Flat(p.Axis), b.most.Flat(p.Axis))
	return p.Region.Bounds() == window && !slices.ContainsFunc(p.Region[0], slanting)
}

// slanting tells whether the edge is not parallel to one of the axes.
func slanting(e plane.Edge) bool {
	return e.Turn != plane.Straight || e.From.X != e.To.X && e.From.Y != e.To.Y
}

// between finds a plane that has some of what is taken out on either side and
// cuts through none of it.
func (c cell) between() (Axis, length.Length, bool) {
	if len(c.out) < 2 {
		return 0, 0, false
	}
	spans := make([][2]length.Length, len(c.out))
	for _, a := range [...]Axis{Z, X, Y} { // leaves are high rather than wide, and wide rather than thick
		for i, p := range c.out {
			b := p.bounds()
			spans[i] = [2]length.Length{b.least.Along(a), b.most.Along(a)}
		}
		slices.SortFunc(spans, func(a, b [2]length.Length) int { return int(max(-1, min(1, a[0]-b[0]))) })
		var gaps []length.Length
		reached := spans[0][1]
		for _, s := range spans[1:] {
			if s[0] >= reached {
				gaps = append(gaps, reached)
			}
			reached = max(reached, s[1])
		}
		if len(gaps) > 0 {
			return a, gaps[len(gaps)/2], true
		}
	}
	return 0, 0, false
}

// even is an axis along which the sections of all prisms are constant between
// levels, and whether there is one; Y first, since most parts are prisms along
// it.
func (c cell) even() (Axis, bool) {
	for _, a := range [...]Axis{Y, X, Z} {
		uneven := func(p Prism) bool { return !p.stepped(a) }
		if !slices.ContainsFunc(c.in, uneven) && !slices.ContainsFunc(c.out, uneven) {
			return a, true
		}
	}
	return Y, false
}

// A bend is the box round what one round or slanted edge of a prism sweeps.
type bend struct {
	axis Axis
	box
}

// apart finds a plane between a round or slanted face of one prism and one of
// another that runs across it.
func (c cell) apart() (Axis, length.Length, bool) {
	var bends []bend
	for _, p := range slices.Concat(c.in, c.out) {
		for _, path := range p.Region {
			for _, e := range path {
				if slanting(e) {
					b := e.Bounds()
					bends = append(bends, bend{p.Axis, box{Raise(b.Min, p.Axis, p.From), Raise(b.Max, p.Axis, p.To)}})
				}
			}
		}
	}
	for i, b := range bends {
		for _, d := range bends[:i] {
			if b.axis == d.axis {
				continue
			}
			for a := X; a <= Z; a++ {
				for _, at := range [...]length.Length{b.most.Along(a), d.most.Along(a)} {
					one, other := b.least.Along(a) >= at, d.least.Along(a) >= at
					if one != other && at > c.box.least.Along(a) && at < c.box.most.Along(a) &&
						(one && d.most.Along(a) <= at || other && b.most.Along(a) <= at) {
						return a, at, true
					}
				}
			}
		}
	}
	return 0, 0, false
}

// levels are the places along a where the cell's section may change its
// course, in order.
func (c cell) levels(a Axis) []length.Length {
	least, most := c.box.least.Along(a), c.box.most.Along(a)
	found := []length.Length{least, most}
	for _, p := range slices.Concat(c.in, c.out) {
		for _, at := range p.levels(a) {
			if least < at && at < most {
				found = append(found, at)
			}
		}
	}
	return inOrder(found)
}

// section is the cell cut by the plane at `at` across a.
func (c cell) section(a Axis, at length.Length) plane.Region {
	region := plane.Region{plane.Rect(c.box.least.Flat(a), c.box.most.Flat(a))}
	for i, p := range c.in {
		if section := p.section(a, at); i == 0 {
			region = section // which lies within the box
		} else {
			region = plane.Intersect(region, section)
		}
		if region.Empty() {
			return nil
		}
	}
	return without(region, c.out, func(p Prism) plane.Region { return p.section(a, at) })
}
