package machining

import (
	"cmp"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// chord is how far the straight pieces stray from arcs that distances are
// measured on.
const chord = length.Millimetre / 50

// A bit is a straight piece of a contour.
type bit struct {
	from, to plane.Point
	box      plane.Box
	contour  int
	along    float64 // mm from the contour's beginning to the piece's middle
}

// A neck is two places of contours that come close to each other.
type neck struct {
	distance float64 // mm
	middle   plane.Point
	a, b     int // contours
	ends     [2]foot
}

// A foot is where a neck ends on a contour.
type foot struct {
	at      plane.Point
	contour int
}

// walls finds openings too narrow to cut and walls too thin to stand, by the
// distances between contours, and between parts of one contour that are not
// neighbours round a corner.
func (l *linter) walls() {
	limit := max(l.profile.LeastFeature, l.profile.Bridge, l.profile.Tool.Diameter)
	if limit <= 0 {
		return
	}
	outline := l.Outline()
	told := map[string]bool{}
	for _, n := range l.necks(limit) {
		kind := l.kind(n, outline)
		if kind == "" || told[kind] {
			continue // the closest is told, for all
		}
		least := l.profile.Bridge
		if kind == RuleFeature {
			least = l.profile.LeastFeature
		}
		if found := length.Round(n.distance); found < least-2*length.Micrometre {
			told[kind] = true
			if kind == RuleFeature {
				l.find(kind, "%v %d is only %v wide at %v; the narrowest opening that can be cut is %v", l.Contours[n.a].Operation, n.a, found, n.middle, least)
			} else {
				find := l.find
				if l.Contours[n.a].Operation == Pocket || l.Contours[n.b].Operation == Pocket {
					find = l.minor // it breaks out, and the part is still whole
				}
				find(kind, "between %v %d and %v %d only %v of material stand at %v; at least %v should", l.Contours[n.a].Operation, n.a, l.Contours[n.b].Operation, n.b, found, n.middle, least)
			}
		}
	}
}

// kind tells whether a neck is an opening or a wall; "" for one in the air, and
// for what merely comes together at a crossing.
func (l *linter) kind(n neck, outline plane.Region) string {
	if outline.Where(n.middle) != plane.Inside {
		if n.a == n.b && (l.Contours[n.a].Operation == Cut || l.Contours[n.a].Operation == Hole) && outline.Where(n.middle) == plane.Outside {
			return RuleFeature
		}
		return ""
	}
	deepest := l.pocketDepths()
	for _, depth := range deepest {
		switch l.region(depth, Pocket).Where(n.middle) {
		case plane.Inside:
			if n.a == n.b {
				return RuleFeature
			}
			return ""
		case plane.Boundary:
			return ""
		}
	}
	if l.airborne(n, outline) {
		return ""
	}
	return RuleBridge
}

// airborne tells that a neck ends where a pocket's contour runs outside the part,
// past the edge it opens to or across a relief of the outline: there the outline
// ends the wood, and is measured itself.
func (l *linter) airborne(n neck, outline plane.Region) bool {
	for _, f := range n.ends {
		if l.Contours[f.contour].Operation == Pocket && outline.Where(f.at) == plane.Outside {
			return true
		}
	}
	return false
}

// necks lists the places where contours come closer than limit, the closest
// first.
func (l *linter) necks(limit length.Length) []neck {
	bits, whole := l.bits(limit)
	slices.SortFunc(bits, func(a, b bit) int { return cmp.Compare(a.box.Min.X, b.box.Min.X) })
	var found []neck
	for i := range bits {
		near := bits[i].box.Grow(limit)
		for k := i + 1; k < len(bits) && bits[k].box.Min.X <= near.Max.X; k++ {
			a, b := &bits[i], &bits[k]
			if !near.Meets(b.box) {
				continue
			}
			if a.contour == b.contour {
				apart := math.Abs(a.along - b.along)
				apart = min(apart, whole[a.contour]-apart)
				reach := (between(a.from, a.to).size() + between(b.from, b.to).size()) / 2
				if apart-reach < 1.6*limit.MM() {
					continue
				}
			}
			if n, close := closest(a, b, limit.MM()); close {
				found = append(found, n)
			}
		}
	}
	slices.SortFunc(found, func(a, b neck) int {
		return cmp.Or(cmp.Compare(a.distance, b.distance), cmp.Compare(a.middle.Y, b.middle.Y), cmp.Compare(a.middle.X, b.middle.X), cmp.Compare(a.a, b.a), cmp.Compare(a.b, b.b))
	})
	return l.withoutCrossings(found, limit)
}

// withoutCrossings leaves out the necks between contours that cross, near the
// crossing: there they come together, and leave no wall.
func (l *linter) withoutCrossings(necks []neck, limit length.Length) []neck {
	crossings := map[[2]int][]plane.Point{}
	for _, n := range necks {
		if n.distance == 0 {
			crossings[[2]int{n.a, n.b}] = append(crossings[[2]int{n.a, n.b}], n.middle)
		}
	}
	return slices.DeleteFunc(necks, func(n neck) bool {
		return n.distance == 0 || slices.ContainsFunc(crossings[[2]int{n.a, n.b}], func(at plane.Point) bool {
			return between(at, n.middle).size() < 2*limit.MM()
		})
	})
}

// bits cuts every contour that is cut into straight pieces no longer than limit,
// and tells how long each contour is. Bores are left out: drills are held by their own rule.
func (l *linter) bits(limit length.Length) ([]bit, []float64) {
	var bits []bit
	whole := make([]float64, len(l.Contours))
	for i, c := range l.Contours {
		if c.Operation == Mark || c.Operation == Bore {
			continue
		}
		for _, e := range c.Path.Flatten(chord) {
			n := 1 + int(e.Length()/limit.MM())
			way, at := between(e.From, e.To).times(1/float64(n)), e.From
			for k := range n {
				to := e.To
				if k < n-1 {
					to = way.times(float64(k + 1)).from(e.From)
				}
				long := between(at, to).size()
				bits = append(bits, bit{at, to, plane.BoxOf(at, to), i, whole[i] + long/2})
				whole[i] += long
				at = to
			}
		}
	}
	return bits, whole
}

func (h heading) size() float64 { return math.Hypot(h.x, h.y) }

// closest finds where two pieces come closest, if that is below limit mm.
func closest(a, b *bit, limit float64) (neck, bool) {
	n := neck{distance: math.Inf(1), a: min(a.contour, b.contour), b: max(a.contour, b.contour)}
	if crosses(a, b) {
		n.distance, n.middle = 0, a.from
		u := between(a.from, a.to)
		if d := u.cross(between(b.from, b.to)); d != 0 {
			t := between(a.from, b.from).cross(between(b.from, b.to)) / d
			n.middle = u.times(t).from(a.from)
		}
		return n, true
	}
	for _, try := range [...]struct {
		p     plane.Point
		of, o *bit
	}{{a.from, a, b}, {a.to, a, b}, {b.from, b, a}, {b.to, b, a}} {
		near := footOf(try.p, try.o)
		if d := between(try.p, near).size(); d < n.distance {
			n.distance, n.middle = d, plane.At((try.p.X+near.X).Half(), (try.p.Y+near.Y).Half())
			n.ends = [2]foot{{try.p, try.of.contour}, {near, try.o.contour}}
		}
	}
	return n, n.distance < limit
}

// footOf is the point of a piece closest to p.
func footOf(p plane.Point, o *bit) plane.Point {
	u, v := between(o.from, o.to), between(o.from, p)
	size := u.dot(u)
	if size == 0 {
		return o.from
	}
	return u.times(max(0, min(1, v.dot(u)/size))).from(o.from)
}

// crosses tells whether two pieces share a point.
func crosses(a, b *bit) bool {
	side := func(p, q, r plane.Point) float64 { return between(p, q).cross(between(p, r)) }
	return a.box.Meets(b.box) &&
		side(a.from, a.to, b.from)*side(a.from, a.to, b.to) <= 0 &&
		side(b.from, b.to, a.from)*side(b.from, b.to, a.to) <= 0
}
