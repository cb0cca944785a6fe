package view

import (
	"cmp"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// same is the distance in nanometres within which edges count as one, as they
// do in package plane: the rounding of both to whole nanometres.
const same = 2

// Ink is what is drawn already, so that nothing is drawn twice.
type ink map[carrier][]plane.Edge

// A carrier is the endless line or the centre that edges must share to overlap.
type carrier struct {
	kind carrierKind
	at   plane.Point // level lines: only Y counts, upright ones: only X
}

type carrierKind int8

const (
	slanted carrierKind = iota // all slanted segments together
	level
	upright
	round
)

func carrierOf(e plane.Edge) carrier {
	switch {
	case e.Turn != plane.Straight:
		return carrier{round, e.Centre}
	case e.From.Y == e.To.Y:
		return carrier{level, plane.At(0, e.From.Y)}
	case e.From.X == e.To.X:
		return carrier{upright, plane.At(e.From.X, 0)}
	default:
		return carrier{slanted, plane.Point{}}
	}
}

// draw takes the edge down as drawn and gives those parts of it that were not
// drawn before, in its direction.
func (k ink) draw(e plane.Edge) []plane.Edge {
	c := carrierOf(e)
	whole := place(e, e)
	var covered []placed
	reach := plane.BoxOf(e.From, e.To).Grow(same)
	look := func(at carrier) {
		for _, other := range k[at] {
			if e.Turn == plane.Straight && !plane.BoxOf(other.From, other.To).Meets(reach) {
				continue
			}
			if p, ok := shared(e, other); ok && p.lo < whole.hi-same && p.hi > same {
				covered = append(covered, p)
			}
		}
	}
	look(c)
	if c.kind == level || c.kind == upright {
		for d := length.Length(1); d <= same; d++ {
			for _, d := range [...]length.Length{-d, d} {
				aside := c
				if c.kind == level {
					aside.at.Y += d
				} else {
					aside.at.X += d
				}
				look(aside)
			}
		}
	}
	if len(covered) == 0 {
		k[c] = append(k[c], e)
		return []plane.Edge{e}
	}
	fresh := left(e, whole, covered)
	if len(fresh) > 0 {
		k[c] = append(k[c], e)
	}
	return fresh
}

// left is what the covered places leave of the edge.
func left(e plane.Edge, whole placed, covered []placed) []plane.Edge {
	slices.SortFunc(covered, func(a, b placed) int { return cmp.Compare(a.lo, b.lo) })
	var fresh []plane.Edge
	reached, at := whole.lo, whole.from
	for _, c := range append(covered, placed{lo: whole.hi, hi: whole.hi, from: whole.to}) {
		if c.lo > reached+same {
			part := e
			part.From, part.To = at, c.from
			fresh = append(fresh, part)
		}
		if c.hi > reached {
			reached, at = c.hi, c.to
		}
	}
	return fresh
}

// A placed is where a part of an edge begins and ends, in nanometres along it.
type placed struct {
	lo, hi   float64
	from, to plane.Point
}

// shared is the part that other covers of e, which has its carrier.
func shared(e, other plane.Edge) (placed, bool) {
	if e.Turn != plane.Straight {
		if math.Abs(e.Radius()-other.Radius()) > same/float64(length.Millimetre) {
			return placed{}, false
		}
		return place(e, other), true
	}
	if e.From.X != e.To.X && e.From.Y != e.To.Y && (off(e, other.From) > same || off(e, other.To) > same) {
		return placed{}, false
	}
	return place(e, other), true
}

// off is the distance in nanometres from p to the endless line through e.
func off(e plane.Edge, p plane.Point) float64 {
	dx, dy := float64(e.To.X-e.From.X), float64(e.To.Y-e.From.Y)
	x, y := float64(p.X-e.From.X), float64(p.Y-e.From.Y)
	return math.Abs(float64(dx*y)-float64(dy*x)) / math.Sqrt(float64(dx*dx)+float64(dy*dy))
}

// place is where other lies along e, given that they share their carrier.
func place(e, other plane.Edge) placed {
	if e.Turn != plane.Straight {
		return placeRound(e, other)
	}
	dx, dy := float64(e.To.X-e.From.X), float64(e.To.Y-e.From.Y)
	size := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	along := func(p plane.Point) float64 {
		return (float64(dx*float64(p.X-e.From.X)) + float64(dy*float64(p.Y-e.From.Y))) / size
	}
	p := placed{along(other.From), along(other.To), other.From, other.To}
	if p.lo > p.hi {
		p = placed{p.hi, p.lo, p.to, p.from}
	}
	return p
}

// placeRound is place for arcs about one centre. An arc that covers the
// beginning and the end of e, and not its middle, is placed at its beginning:
// no two half circles do that.
func placeRound(e, other plane.Edge) placed {
	if e.Turn != other.Turn {
		other = other.Reverse()
	}
	radius := e.Radius() * float64(length.Millimetre)
	angle := func(p plane.Point) float64 {
		return math.Atan2(float64(p.Y-e.Centre.Y), float64(p.X-e.Centre.X))
	}
	ahead := math.Mod(float64(e.Turn)*(angle(other.From)-angle(e.From))+4*math.Pi, 2*math.Pi)
	sweep := math.Abs(other.Sweep())
	if ahead >= math.Abs(e.Sweep()) && ahead+sweep > 2*math.Pi {
		ahead -= 2 * math.Pi
	}
	return placed{ahead * radius, (ahead + sweep) * radius, other.From, other.To}
}
