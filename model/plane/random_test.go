package plane

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"stilewright/model/length"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

const tick = length.Inch / 64

// chance is a random source with the shapes doors are made of.
type chance struct{ *rand.Rand }

func newChance() chance { return chance{rand.New(rand.NewPCG(*seed, 0))} }

// coarse is a multiple of step, few of them, so that edges coincide often.
func (c chance) coarse(step length.Length) length.Length {
	return length.Length(c.IntN(9)) * step
}

func (c chance) box(step length.Length) Box {
	for {
		b := BoxOf(At(c.coarse(step), c.coarse(step)), At(c.coarse(step), c.coarse(step)))
		if b.Width() > 0 && b.Height() > 0 {
			return b
		}
	}
}

// outline is a random counter-clockwise outline on a coarse grid.
func (c chance) outline() Path {
	step := [...]length.Length{8 * tick, 10 * mm, 1_000_003}[c.IntN(3)]
	b := c.box(step)
	switch c.IntN(6) {
	case 0:
		return RoundedRect(b, step.Half()*length.Length(1+c.IntN(3)))
	case 1:
		return Circle(b.Min, step.Half()*length.Length(1+c.IntN(6)))
	case 2:
		return ClippedRect(b, step.Half()*length.Length(1+c.IntN(3)))
	case 3:
		return Slot(b)
	default:
		return b.Path()
	}
}

// star is a polygon in general position.
func (c chance) star() Path {
	n := 3 + c.IntN(9)
	turn, x, y := c.Float64(), 100*c.Float64(), 100*c.Float64()
	points := make([]Point, n)
	for i := range points {
		r, a := 5+60*c.Float64(), 2*math.Pi*(turn+float64(i))/float64(n)
		points[i] = At(length.Round(x+r*math.Cos(a)), length.Round(y+r*math.Sin(a)))
	}
	return Polygon(points...)
}

// turned is the path turned about the origin by any angle.
func (c chance) turned(p Path) Path {
	sin, cos := math.Sincos(2 * math.Pi * c.Float64())
	return p.Map(func(q Point) Point {
		x, y := float64(q.X), float64(q.Y)
		return At(round(x*cos-y*sin), round(x*sin+y*cos))
	}, false)
}

// region is made of one to four outlines put together or taken away: kind 0
// with stars among them, 1 with outlines turned by any angle, 2 with neither.
func (c chance) region(kind int) Region {
	pick := func() Region {
		switch {
		case kind == 0 && c.IntN(3) == 0:
			return Of(c.star())
		case kind == 1 && c.IntN(3) == 0:
			return Of(c.turned(c.outline()))
		}
		return Of(c.outline())
	}
	r := Union(pick(), nil)
	for range c.IntN(4) {
		if c.IntN(2) == 0 {
			r = Union(r, pick())
		} else {
			r = Subtract(r, pick())
		}
	}
	return r
}

// dump is a region to read in a failure.
func dump(r Region) string {
	var b strings.Builder
	for _, path := range r {
		for _, e := range path {
			fmt.Fprintf(&b, "%d %d", e.From.X, e.From.Y)
			if e.Turn != Straight {
				fmt.Fprintf(&b, " arc%+d %d %d", e.Turn, e.Centre.X, e.Centre.Y)
			}
			b.WriteString("; ")
		}
		b.WriteString("\n")
	}
	return b.String()
}

// slack is the area by which rounding may move a region's edges: each by near.
func slack(rs ...Region) float64 {
	var whole float64
	for _, r := range rs {
		for _, p := range r {
			whole += p.Length()
		}
	}
	return whole*2*near/nmPerMM + 1e-9
}

func TestBooleanLaws(t *testing.T) {
	c := newChance()
	for i := range 1500 {
		kind := c.IntN(3)
		a, b := c.region(kind), c.region(kind)
		say := func(law string, more ...any) {
			t.Helper()
			t.Fatalf("seed %d, try %d: %s %v\nA\n%sB\n%s", *seed, i, law, more, dump(a), dump(b))
		}
		union, both, less := Union(a, b), Intersect(a, b), Subtract(a, b)
		for name, r := range map[string]Region{"A": a, "B": b, "A∪B": union, "A∩B": both, `A\B`: less} {
			if err := Simple(r); err != nil {
				say(name+" is simple", err, "\n"+dump(r))
			}
		}
		within := slack(a, b)
		equal := func(law string, x, y float64) {
			t.Helper()
			if !(math.Abs(x-y) <= within) {
				say(law, x, y, within)
			}
		}
		equal("|A|+|B| = |A∪B|+|A∩B|", a.Area()+b.Area(), union.Area()+both.Area())
		equal(`|A\B| = |A|-|A∩B|`, less.Area(), a.Area()-both.Area())
		equal("|A∪B| = |B∪A|", union.Area(), Union(b, a).Area())
		equal("|A∩B| = |B∩A|", both.Area(), Intersect(b, a).Area())
		if r := Subtract(a, a); !r.Empty() {
			say(`A\A is empty`, dump(r))
		}
		for law, r := range map[string]Region{"A∪A = A": Union(a, a), "A∩A = A": Intersect(a, a)} {
			equal(law, r.Area(), a.Area())
			if again := Union(r, r); kind == 2 && dump(r) != dump(again) {
				say(law, dump(r), dump(again))
			}
		}
		if kind == 2 {
			for _, r := range [...]Region{union, both, less} {
				if e, bent := slanted(r); bent {
					say("edges along an axis stay so", e, dump(r))
				}
			}
		}
	}
}

// slanted finds a segment that strays from an axis by less than anything that
// was drawn.
func slanted(r Region) (Edge, bool) {
	for _, p := range r {
		for _, e := range p {
			d := e.From.to(e.To)
			if e.Turn == Straight && d.X != 0 && d.Y != 0 && min(d.X.Abs(), d.Y.Abs()) <= 2*near && max(d.X.Abs(), d.Y.Abs()) > 1000 {
				return e, true
			}
		}
	}
	return Edge{}, false
}
