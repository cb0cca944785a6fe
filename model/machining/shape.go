package machining

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// A Relief is what is done about an inside corner that is sharper than the tool
// is round.
type Relief int

// The reliefs.
const (
	Dogbone  Relief = iota // a circle of the tool on the corner's bisector, through the corner
	TBone                  // a circle of the tool on the longer wall, through the corner
	NoRelief               // the corner stays as drawn; the tool leaves it round
)

// A heading is a direction in the plane, of length 1.
type heading struct{ x, y float64 }

func (h heading) right() heading                 { return heading{h.y, -h.x} }
func (h heading) dot(o heading) float64          { return float64(h.x*o.x) + float64(h.y*o.y) }
func (h heading) cross(o heading) float64        { return float64(h.x*o.y) - float64(h.y*o.x) }
func (h heading) plus(o heading) heading         { return heading{h.x + o.x, h.y + o.y} }
func (h heading) times(f float64) heading        { return heading{h.x * f, h.y * f} }
func (h heading) from(p plane.Point) plane.Point { return p.Add(length.Round(h.x), length.Round(h.y)) }

// unit is the heading of length 1.
func (h heading) unit() heading {
	size := math.Hypot(h.x, h.y)
	if size == 0 {
		return heading{}
	}
	return heading{h.x / size, h.y / size}
}

// between is the displacement from a to b in mm.
func between(a, b plane.Point) heading { return heading{(b.X - a.X).MM(), (b.Y - a.Y).MM()} }

// start and end are the directions in which an edge leaves its beginning and
// reaches its end.
func start(e plane.Edge) heading { return tangent(e, e.From) }
func end(e plane.Edge) heading   { return tangent(e, e.To) }

func tangent(e plane.Edge, at plane.Point) heading {
	if e.Turn == plane.Straight {
		return between(e.From, e.To).unit()
	}
	out := between(e.Centre, at).unit()
	if e.Turn == plane.Right {
		return out.right()
	}
	return out.right().times(-1)
}

// smooth is the greatest turn in radians between two edges that counts as none:
// what rounding to nanometres does to the end of an arc of 10 µm.
const smooth = 2e-4

// turn is the angle in radians by which the way turns left from one edge into
// the next.
func turn(a, b plane.Edge) float64 {
	in, out := end(a), start(b)
	return math.Atan2(in.cross(out), in.dot(out))
}

// past carries a pocket on past the outline by run wherever it opens to it, its
// walls in the direction they arrive in. Nothing of the outline's inside is
// added.
func past(pocket, outline plane.Region, run length.Length) plane.Region {
	var air plane.Region
	for _, path := range pocket {
		_, _, along := plane.Clip(path, outline)
		for _, piece := range along {
			for i, e := range piece {
				before, after := i == 0 && !piece.Closed(), i == len(piece)-1 && !piece.Closed()
				into, away := arriving(path, e.From, before), leaving(path, e.To, after).times(-1)
				into = aside(into, start(e), e.From, outline)
				away = aside(away, end(e).times(-1), e.To, outline)
				air = plane.Union(air, plane.Region{beyond(e, into, away, run)})
				if next := piece[(i+1)%len(piece)]; !after {
					if corner := beyondCorner(e, next, run); corner != nil {
						air = plane.Union(air, plane.Region{corner})
					}
				}
			}
		}
	}
	if air.Empty() {
		return pocket
	}
	return plane.Union(pocket, plane.Subtract(air, outline))
}

// steepest is the least sine of the angle between a wall and the edge it
// arrives at for the wall to be carried on; a flatter one ends square.
const steepest = 0.3

// slant is the tangent of the angle by which a wall that would go on along the
// outline is turned away from it: a tool of 10 mm leaves r·slant²/8 = 0.06 µm in
// such a corner.
const slant = 0.01

// aside is a wall's direction at a point of the outline, turned a little towards
// the strip if it would run along the outline there, as beside the shoulder of a
// tenon: two lines in one place are cut twice.
func aside(wall, strip heading, at plane.Point, outline plane.Region) heading {
	along := func(h heading) bool { return wall.dot(h) > 0 && math.Abs(wall.cross(h)) < slant/2 }
	for _, path := range outline {
		for _, e := range path {
			if e.From == at && along(start(e)) || e.To == at && along(end(e).times(-1)) {
				return wall.plus(strip.times(slant)).unit()
			}
		}
	}
	return wall
}

// beyond is the strip of width run along the right side of an edge. Its ends
// go outwards in the directions of the walls that meet the edge's ends, where
// they have one, and square otherwise.
func beyond(e plane.Edge, into, away heading, run length.Length) plane.Path {
	out := run.MM()
	square := func(n, wall heading) heading {
		if sine := wall.dot(n); sine > steepest && e.Turn == plane.Straight {
			return wall.times(out / sine)
		}
		return n.times(out)
	}
	from := square(start(e).right(), into).from(e.From)
	to := square(end(e).right(), away).from(e.To)
	if e.Turn == plane.Straight {
		if between(from, to).dot(between(e.From, e.To)) <= 0 { // the walls meet before the strip ends
			from, to = start(e).right().times(out).from(e.From), end(e).right().times(out).from(e.To)
		}
		return plane.Polygon(e.From, from, to, e.To)
	}
	if e.Turn == plane.Right && e.Radius() <= out { // the strip would reach past the centre
		return plane.Path{plane.Line(e.From, e.Centre), plane.Line(e.Centre, e.To), e.Reverse()}
	}
	return plane.Path{plane.Line(e.From, from), plane.Arc(from, to, e.Centre, e.Turn), plane.Line(to, e.To), e.Reverse()}
}

// arriving is the direction in which a path's edge reaches a point, and leaving
// the one in which it leaves it; the zero heading unless it is asked for.
func arriving(p plane.Path, at plane.Point, asked bool) heading {
	for _, e := range p {
		if asked && e.To == at {
			return end(e)
		}
	}
	return heading{}
}

func leaving(p plane.Path, at plane.Point, asked bool) heading {
	for _, e := range p {
		if asked && e.From == at {
			return start(e)
		}
	}
	return heading{}
}

// sharpest is the least 1 + cos of a turn whose corner is filled to its point.
const sharpest = 0.2

// beyondCorner fills the gap between the strips of two edges that turn left.
func beyondCorner(a, b plane.Edge, run length.Length) plane.Path {
	if turn(a, b) <= smooth {
		return nil
	}
	first, second := end(a).right(), start(b).right()
	out, open := run.MM(), 1+first.dot(second)
	one, two := first.times(out).from(a.To), second.times(out).from(a.To)
	if open < sharpest {
		return plane.Polygon(a.To, one, two)
	}
	return plane.Polygon(a.To, one, first.plus(second).times(out/open).from(a.To), two)
}

// relieved is a region to be cleared with its inside corners relieved, where
// they lie inside the outline.
func relieved(region, outline plane.Region, t Tool) plane.Region {
	if t.Relief == NoRelief {
		return region
	}
	relief := region
	for _, path := range region {
		for i, e := range path {
			next := path[(i+1)%len(path)]
			if turn(e, next) <= smooth || outline.Where(e.To) != plane.Inside {
				continue
			}
			back, on := end(e).times(-1), start(next)
			way := back.plus(on).unit()
			if t.Relief == TBone {
				way = back
				if next.Length() > e.Length() {
					way = on
				}
			}
			centre := way.times(t.Diameter.MM() / 2).from(e.To)
			relief = plane.Union(relief, plane.Region{plane.Circle(centre, t.Diameter.Half())})
		}
	}
	return relief
}
