package plane

import (
	"math"
	"slices"

	"stilewright/model/length"
)

// straightness is how far, in nanometres, a point may lie from the line
// through its neighbours and still be dropped as no corner. A point rounded
// onto a slanted line lies at most √½ nm off it.
const straightness = 1.0

// merged is the closed path with neighbouring edges joined where they continue
// one another: segments in one line, arcs about one centre. A full circle
// stays two half arcs. It starts at its lowest, then leftmost corner.
func (p Path) merged() Path {
	start := -1
	for i := range p {
		if !continues(p[(i+len(p)-1)%len(p)], p[i]) {
			start = i
			break
		}
	}
	if start < 0 {
		return p.round()
	}
	joined := make(Path, 0, len(p))
	for i := 0; i < len(p); {
		run := p.runFrom(start, i)
		joined = append(joined, run.joined())
		i += len(run)
	}
	return joined.fromLowest()
}

// runFrom is the longest run of edges that continue one another, from the i-th
// edge after start.
func (p Path) runFrom(start, i int) Path {
	at := func(k int) Edge { return p[(start+k)%len(p)] }
	run := Path{at(i)}
	for k := i + 1; k < len(p); k++ {
		if next := append(run, at(k)); continues(run[len(run)-1], at(k)) && next.straight() {
			run = next
			continue
		}
		break
	}
	return run
}

// continues tells whether b goes on as a did.
func continues(a, b Edge) bool {
	if a.Turn != b.Turn {
		return false
	}
	if a.Turn != Straight {
		return a.Centre == b.Centre && math.Abs(a.radius()-b.radius()) <= near
	}
	return dot(a.From.to(a.To), b.From.to(b.To)).sign() > 0 && offLine(a.From, b.To, a.To) <= straightness
}

// straight tells whether all inner points of a run of segments lie on the
// segment that would stand in for it. A run of arcs always passes.
func (p Path) straight() bool {
	if p[0].Turn != Straight {
		return true
	}
	from, to := p[0].From, p[len(p)-1].To
	for _, e := range p[1:] {
		if offLine(from, to, e.From) > straightness {
			return false
		}
	}
	return true
}

// joined is the one edge that stands in for a run.
func (p Path) joined() Edge {
	one := p[0]
	one.To = p[len(p)-1].To
	return one
}

// round is the two half arcs of a path that is nothing but one circle.
func (p Path) round() Path {
	if len(p) == 0 {
		return nil
	}
	circle := Circle(p[0].Centre, round(p[0].radius()))
	if p[0].Turn == Right {
		circle = circle.Reverse()
	}
	return circle.fromLowest()
}

// offLine is the distance in nanometres from p to the line through a and b.
func offLine(a, b, p Point) float64 {
	d := a.to(b)
	return math.Abs(cross(d, a.to(p)).float()) / norm(d)
}

// fromLowest is the closed path begun at its lowest, then leftmost corner.
func (p Path) fromLowest() Path {
	first := 0
	for i, e := range p {
		if lower(e.From, p[first].From) < 0 {
			first = i
		}
	}
	return append(slices.Clone(p[first:]), p[:first]...)
}

// lower orders points from the lowest up, and from left to right.
func lower(a, b Point) int {
	if a.Y != b.Y {
		return order(a.Y, b.Y)
	}
	return order(a.X, b.X)
}

func order(a, b length.Length) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
