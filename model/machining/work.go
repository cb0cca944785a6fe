package machining

import (
	"fmt"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// A way is one way to cut a prism: from a face to a depth.
type way struct {
	face   Face
	depth  length.Length
	prism  solid.Prism // of the face's axis
	passes bool        // through to the opposite face
}

// A planner finds out what is worked from which face.
type planner struct {
	body        solid.Solid // without bores
	least, most solid.Vec
	tool        Tool
	through     plane.Region // what goes through from front to back, flat along Y
	pockets     []pocket
	bores       []bore
	left        []string
}

// A pocket is work on a face, flat along the face's axis.
type pocket struct {
	face   Face
	depth  length.Length
	region plane.Region
	use    string // what the cut is for
}

type bore struct {
	face     Face
	depth    length.Length
	centre   plane.Point // flat along the face's axis
	diameter length.Length
}

// cut enters a cut by the best way there is.
func (p *planner) cut(c solid.Cut) {
	prism, any := p.inside(c.Prism)
	if !any {
		return
	}
	ways := p.ways(prism)
	if len(ways) == 0 {
		why := "no face opens to it"
		if p.alongEdge(prism) {
			why = shaped
		}
		p.left = append(p.left, c.For+": "+why)
		return
	}
	best := slices.MinFunc(ways, p.better)
	switch {
	case best.depth > p.tool.Reach && p.alongEdge(prism) && !(best.passes && best.prism.Axis == solid.Y):
		p.left = append(p.left, c.For+": "+shaped)
	case best.passes && best.prism.Axis == solid.Y:
		p.through = plane.Union(p.through, best.prism.Region)
	case best.depth > p.tool.Reach:
		p.left = append(p.left, fmt.Sprintf("%s: %s deep from %s, more than the tool reaches (%s)", c.For, p.tool.write(best.depth), best.face.Words(), p.tool.write(p.tool.Reach)))
	default:
		p.pockets = append(p.pockets, pocket{best.face, best.depth, best.prism.Region, c.For})
	}
}

// shaped says how an edge is rounded or chamfered.
const shaped = "along an edge, by a shaped cutter"

// alongEdge tells whether a prism takes an edge of the blank off: it is no box,
// and its region reaches two neighbouring sides.
func (p *planner) alongEdge(q solid.Prism) bool {
	b, low, high := q.Region.Bounds(), p.least.Flat(q.Axis), p.most.Flat(q.Axis)
	return !isBox(q) && (b.Min.X == low.X || b.Max.X == high.X) && (b.Min.Y == low.Y || b.Max.Y == high.Y)
}

// better orders ways: through from front to back, then from front or back,
// then from an edge, as long as the tool reaches, and then the shallower. Of
// equals the back comes before the front.
func (p *planner) better(a, b way) int {
	rank := func(w way) int {
		switch {
		case w.prism.Axis == solid.Y && w.passes:
			return 0
		case w.depth > p.tool.Reach:
			return 3
		case w.prism.Axis == solid.Y:
			return 1
		}
		return 2
	}
	if ra, rb := rank(a), rank(b); ra != rb {
		return ra - rb
	}
	if a.depth != b.depth {
		return int(max(-1, min(1, a.depth-b.depth)))
	}
	if a.face.axis() == b.face.axis() {
		return int(b.face - a.face)
	}
	return int(a.face - b.face)
}

// ways lists how the prism can be cut: along its axis and, if it is a box,
// along the other two.
func (p *planner) ways(prism solid.Prism) []way {
	forms := []solid.Prism{prism}
	if isBox(prism) {
		b := prism.Region.Bounds()
		low, high := solid.Raise(b.Min, prism.Axis, prism.From), solid.Raise(b.Max, prism.Axis, prism.To)
		for _, a := range []solid.Axis{solid.X, solid.Y, solid.Z} {
			if a != prism.Axis {
				forms = append(forms, solid.Prism{Axis: a, Region: plane.Region{plane.Rect(low.Flat(a), high.Flat(a))}, From: low.Along(a), To: high.Along(a)})
			}
		}
	}
	var ways []way
	for _, f := range forms {
		low, high := p.least.Along(f.Axis), p.most.Along(f.Axis)
		fromLow, fromHigh := p.clear(f, low, f.From), p.clear(f, f.To, high)
		if fromLow {
			ways = append(ways, way{faceAt(f.Axis, false), f.To - low, f, fromHigh})
		}
		if fromHigh {
			ways = append(ways, way{faceAt(f.Axis, true), high - f.From, f, fromLow})
		}
	}
	return ways
}

// clear tells whether nothing of the body stands in front of the prism's region
// in a stretch of its axis.
func (p *planner) clear(f solid.Prism, from, to length.Length) bool {
	levels := []length.Length{from, to}
	for _, c := range p.body.Cuts {
		low, high := extent(c.Prism, f.Axis)
		levels = append(levels, low, high)
	}
	slices.Sort(levels)
	for i := 1; i < len(levels); i++ {
		low, high := max(levels[i-1], from), min(levels[i], to)
		if low >= high {
			continue
		}
		if plane.Intersect(p.body.Section(f.Axis, low+(high-low)/2), f.Region).Area() > speck {
			return false
		}
	}
	return true
}

// speck is the area in mm² below which an overlap is the rounding of arcs to
// nanometres along an edge of metres: 10 m × 2 nm.
const speck = 2e-2

// extent is how far a prism reaches along an axis.
func extent(q solid.Prism, a solid.Axis) (low, high length.Length) {
	b := q.Region.Bounds()
	return solid.Raise(b.Min, q.Axis, q.From).Along(a), solid.Raise(b.Max, q.Axis, q.To).Along(a)
}

// inside is the part of a prism within the blank; it tells whether there is any.
func (p *planner) inside(q solid.Prism) (solid.Prism, bool) {
	q.From, q.To = max(q.From, p.least.Along(q.Axis)), min(q.To, p.most.Along(q.Axis))
	face := plane.Region{plane.Rect(p.least.Flat(q.Axis), p.most.Flat(q.Axis))}
	if q.Axis == p.body.Blank.Axis {
		face = p.body.Blank.Region
	}
	q.Region = plane.Intersect(q.Region, face)
	return q, q.From < q.To && !q.Region.Empty()
}

// isBox tells whether the prism is a box.
func isBox(q solid.Prism) bool {
	if len(q.Region) != 1 || len(q.Region[0]) != 4 {
		return false
	}
	for _, e := range q.Region[0] {
		if e.Turn != plane.Straight || e.From.X != e.To.X && e.From.Y != e.To.Y {
			return false
		}
	}
	return true
}

// bore enters a bore that runs along an axis and opens to a face.
func (p *planner) bore(b solid.Bore, all []solid.Bore) {
	axis, along := direction(b)
	if !along {
		p.left = append(p.left, fmt.Sprintf("%s bore ⌀%s, at %.0f° to the face", b.For, p.tool.write(b.Diameter), slope(b)))
		return
	}
	var best *bore
	for _, ends := range [][2]solid.Vec{{b.From, b.To}, {b.To, b.From}} {
		mouth := p.mouth(ends[0], ends[1], b, all)
		high := mouth.Along(axis) > ends[1].Along(axis)
		face := faceAt(axis, high)
		limit := p.least.Along(axis)
		if high {
			limit = p.most.Along(axis)
		}
		out := solid.Raise(mouth.Flat(axis), axis, limit)
		if mouth != out && (mouth.Along(axis) < limit) == high && len(p.body.Pierce(mouth, out)) > 0 {
			continue
		}
		depth := min((limit - ends[1].Along(axis)).Abs(), p.most.Along(axis)-p.least.Along(axis))
		if best == nil || depth < best.depth {
			best = &bore{face, depth, mouth.Flat(axis), b.Diameter}
		}
	}
	if best == nil {
		p.left = append(p.left, fmt.Sprintf("%s: no face opens to it", b.For))
		return
	}
	p.bores = append(p.bores, *best)
}

// mouth is where a bore begins when wider bores on its axis before it are bored
// already.
func (p *planner) mouth(from, to solid.Vec, b solid.Bore, all []solid.Bore) solid.Vec {
	axis, _ := direction(b)
	high := from.Along(axis) > to.Along(axis)
	for range all {
		moved := false
		for _, other := range all {
			a, along := direction(other)
			if !along || a != axis || other.Diameter < b.Diameter || other.From.Flat(axis) != from.Flat(axis) {
				continue
			}
			low, top := min(other.From.Along(axis), other.To.Along(axis)), max(other.From.Along(axis), other.To.Along(axis))
			at := from.Along(axis)
			if high && low <= at && top > at {
				from, moved = solid.Raise(from.Flat(axis), axis, top), true
			} else if !high && top >= at && low < at {
				from, moved = solid.Raise(from.Flat(axis), axis, low), true
			}
		}
		if !moved {
			break
		}
	}
	return from
}

// direction is the axis a bore runs along, if it runs along one.
func direction(b solid.Bore) (solid.Axis, bool) {
	for _, a := range []solid.Axis{solid.X, solid.Y, solid.Z} {
		if b.From.Flat(a) == b.To.Flat(a) && b.From != b.To {
			return a, true
		}
	}
	return 0, false
}

// slope is the angle in degrees between an inclined bore and the front face.
func slope(b solid.Bore) float64 {
	x, y, z := (b.To.X - b.From.X).MM(), (b.To.Y - b.From.Y).MM(), (b.To.Z - b.From.Z).MM()
	return math.Atan2(math.Abs(y), math.Hypot(x, z)) * 180 / math.Pi
}
