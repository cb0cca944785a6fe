package step

import (
	"fmt"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// near is how far apart, at most, points are made one and how far off an edge
// a point still lies on it: results of plane's operations may differ by 2 nm,
// and a corner may have been moved twice.
const near = 8 * length.Nanometre

// A body is the boundary of a solid without its bores in the making: slabs
// across an axis, all their outlines cut at the same corners.
type body struct {
	shell
	axis    solid.Axis
	hand    float64 // 1 when the flat coordinates and the axis are right-handed, else -1
	levels  []length.Length
	corners []plane.Point
	pieces  []plane.Edge // of outlines, between corners
	ends    [][2]int     // the corners of each piece
	by      map[[2]int][]int
	lying   map[[2]int]int // edges of the shell by piece and level
	upright map[[2]int]int // by corner and lower level
	stands  map[[2]int]int // points by corner and level
}

// bodyOf is the boundary of the solid's body, faces in one plane joined.
func bodyOf(s solid.Solid) (*shell, error) {
	if err := simple(s); err != nil {
		return nil, err
	}
	axis, even := evenAxis(s)
	if !even {
		return nil, fmt.Errorf("it has round or slanted prisms across one another, which meet in curves that are not written: let all but boxes run along one axis")
	}
	slabs := swapped(s, axis).Stack()
	if len(slabs) == 0 {
		return nil, fmt.Errorf("nothing is left of it, from %v to %v along %v: its cuts take all, or its blank has no size", s.Blank.From.MM(), s.Blank.To.MM(), s.Blank.Axis)
	}
	b := &body{axis: axis, hand: 1, by: map[[2]int][]int{}, lying: map[[2]int]int{}, upright: map[[2]int]int{}, stands: map[[2]int]int{}}
	if axis == solid.Y {
		b.hand = -1
	}
	b.raise(slabs)
	if err := b.closed(); err != nil {
		return nil, err
	}
	return b.merged()
}

// simple tells which of the solid's outlines is none.
func simple(s solid.Solid) error {
	if err := plane.Simple(s.Blank.Region); err != nil {
		return fmt.Errorf("its blank: %w", err)
	}
	for i, c := range s.Cuts {
		if err := plane.Simple(c.Region); err != nil {
			return fmt.Errorf("its cut %d (%s): %w", i+1, c.For, err)
		}
	}
	return nil
}

// evenAxis is an axis along which every prism runs or is made of boxes.
func evenAxis(s solid.Solid) (solid.Axis, bool) {
	for _, a := range [...]solid.Axis{solid.Y, solid.X, solid.Z} {
		if stepped(s.Blank, a) && !slices.ContainsFunc(s.Cuts, func(c solid.Cut) bool { return !stepped(c.Prism, a) }) {
			return a, true
		}
	}
	return 0, false
}

// stepped tells whether sections across the axis change in steps only.
func stepped(p solid.Prism, a solid.Axis) bool {
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

// swapped is the body of the solid with the axis and Y exchanged, so that what
// lay along the axis is stacked along Y. Flat(Y) is then what Flat(axis) was.
func swapped(s solid.Solid, axis solid.Axis) solid.Solid {
	if axis == solid.Y {
		return s
	}
	turned := solid.Solid{Blank: swap(s.Blank, axis)}
	for _, c := range s.Cuts {
		turned.Cuts = append(turned.Cuts, solid.Cut{Prism: swap(c.Prism, axis), For: c.For})
	}
	return turned
}

func swap(p solid.Prism, axis solid.Axis) solid.Prism {
	switch p.Axis {
	case axis:
		p.Axis = solid.Y
	case solid.Y:
		p.Axis = axis
	default: // its two coordinates change places
		p.Region = p.Region.Map(func(q plane.Point) plane.Point { return plane.At(q.Y, q.X) }, true)
	}
	return p
}

// raise makes the faces between and beside the slabs.
func (b *body) raise(slabs []solid.Slab) {
	for _, s := range slabs {
		b.levels = append(b.levels, s.From, s.To)
	}
	slices.Sort(b.levels)
	b.levels = slices.Compact(b.levels)
	regions := make([]plane.Region, len(b.levels)+1) // below each level, and above the last
	for _, s := range slabs {
		i, _ := slices.BinarySearch(b.levels, s.To)
		regions[i] = s.Region
		b.corner(s.Region)
	}
	var up, down []plane.Region
	for i := range b.levels {
		up = append(up, less(regions[i], regions[i+1]))
		down = append(down, less(regions[i+1], regions[i]))
		b.corner(up[i])
		b.corner(down[i])
	}
	for i := range b.levels {
		b.lie(up[i], i, 1)
		b.lie(down[i], i, -1)
		b.stand(regions[i], i-1)
	}
}

func less(a, b plane.Region) plane.Region {
	if a.Empty() || b.Empty() {
		return a
	}
	return plane.Subtract(a, b)
}

// corner takes in the corners of a region.
func (b *body) corner(r plane.Region) {
	for _, path := range r {
		for _, e := range path {
			b.cornerAt(e.From)
		}
	}
}

// cornerAt is the corner that stands for the point.
func (b *body) cornerAt(p plane.Point) int {
	for i, q := range b.corners {
		if (p.X-q.X).Abs() <= near && (p.Y-q.Y).Abs() <= near {
			return i
		}
	}
	b.corners = append(b.corners, p)
	return len(b.corners) - 1
}

// A step is a piece as an outline walks along it.
type step struct {
	piece int
	back  bool
}

// walk is the outline as pieces between corners.
func (b *body) walk(path plane.Path) []step {
	var steps []step
	for _, e := range path {
		at, to := b.cornerAt(e.From), b.cornerAt(e.To)
		for _, next := range append(b.on(e, at, to), to) {
			if next != at {
				steps = append(steps, b.piece(e, at, next))
			}
			at = next
		}
	}
	return steps
}

// on are the corners on the edge between its ends, in its order.
func (b *body) on(e plane.Edge, from, to int) []int {
	var found []int
	where := map[int]float64{}
	box := e.Bounds().Grow(near)
	for i, p := range b.corners {
		if i == from || i == to || p.X < box.Min.X || p.X > box.Max.X || p.Y < box.Min.Y || p.Y > box.Max.Y {
			continue
		}
		if way, off := place(e, p); way > 0 && way < 1 && math.Abs(off) <= near.MM() {
			found, where[i] = append(found, i), way
		}
	}
	slices.SortFunc(found, func(i, k int) int {
		if where[i] < where[k] {
			return -1
		}
		return 1
	})
	return found
}

// place is how far along the edge a point lies, from 0 to 1, and how far off
// it in mm.
func place(e plane.Edge, p plane.Point) (way, off float64) {
	if e.Turn == plane.Straight {
		d, q := flat(e.From, e.To), flat(e.From, p)
		size := d.size()
		return d.dot(q) / (size * size), d.cross(q)[2] / size
	}
	part := e
	part.To = p
	return part.Sweep() / e.Sweep(), flat(e.Centre, p).size() - e.Radius()
}

// flat is the displacement between points of the plane.
func flat(a, b plane.Point) vec { return vec{(b.X - a.X).MM(), (b.Y - a.Y).MM()} }

// piece is the part of an edge between two corners.
func (b *body) piece(e plane.Edge, from, to int) step {
	e.From, e.To = b.corners[from], b.corners[to]
	back := from > to
	if back {
		e, from, to = e.Reverse(), to, from
	}
	middle := e.Middle()
	for _, i := range b.by[[2]int{from, to}] {
		if other := b.pieces[i].Middle(); flat(middle, other).size() <= 2*near.MM() {
			return step{i, back}
		}
	}
	i := len(b.pieces)
	b.pieces, b.ends = append(b.pieces, e), append(b.ends, [2]int{from, to})
	b.by[[2]int{from, to}] = append(b.by[[2]int{from, to}], i)
	return step{i, back}
}

// lie makes the face of a region that looks up, or down, the axis at a level.
func (b *body) lie(r plane.Region, level int, sign float64) {
	if r.Empty() {
		return
	}
	f := face{surface: surface{at: b.raised(r[0][0].From, level), axis: along(b.axis, sign)}}
	for _, path := range r {
		var loop []use
		for _, s := range b.walk(path) {
			loop = append(loop, use{b.lyingEdge(s.piece, level), s.back})
		}
		f.loops = append(f.loops, turned(loop, sign*b.hand))
	}
	b.faces = append(b.faces, f)
}

// turned is the loop, walked the other way if the sign is less than 0.
func turned(loop []use, sign float64) []use {
	if sign > 0 {
		return loop
	}
	slices.Reverse(loop)
	for i := range loop {
		loop[i].back = !loop[i].back
	}
	return loop
}

// stand makes the faces round a region from a level to the next.
func (b *body) stand(r plane.Region, level int) {
	for _, path := range r {
		for _, s := range b.walk(path) {
			from, to := b.ends[s.piece][0], b.ends[s.piece][1]
			if s.back {
				from, to = to, from
			}
			loop := []use{
				{b.lyingEdge(s.piece, level), s.back}, {b.uprightEdge(to, level), false},
				{b.lyingEdge(s.piece, level+1), !s.back}, {b.uprightEdge(from, level), true},
			}
			b.faces = append(b.faces, face{surface: b.beside(s, level), loops: [][]use{turned(loop, b.hand)}})
		}
	}
}

// beside is the surface over a piece whose material lies to its left.
func (b *body) beside(s step, level int) surface {
	e := b.pieces[s.piece]
	if s.back {
		e = e.Reverse()
	}
	from := b.raised(e.From, level)
	if e.Turn == plane.Straight {
		d := flat(e.From, e.To).unit()
		return surface{at: from, axis: b.direction(vec{d[1], -d[0]})}
	}
	lying := b.edges[b.lyingEdge(s.piece, level)]
	return surface{shape: round, at: lying.centre, axis: lying.axis, start: lying.major, radius: lying.a, hollow: e.Turn == plane.Right}
}

// raised is a point of the plane at a level.
func (b *body) raised(p plane.Point, level int) vec {
	return in(solid.Raise(p, b.axis, b.levels[level]))
}

// direction is a displacement in the plane as one in space.
func (b *body) direction(d vec) vec {
	switch b.axis {
	case solid.X:
		return vec{0, d[0], d[1]}
	case solid.Y:
		return vec{d[0], 0, d[1]}
	default:
		return vec{d[0], d[1], 0}
	}
}

// lyingEdge is the edge of the shell over a piece at a level.
func (b *body) lyingEdge(piece, level int) int {
	key := [2]int{piece, level}
	if i, made := b.lying[key]; made {
		return i
	}
	e := edge{from: b.stood(b.ends[piece][0], level), to: b.stood(b.ends[piece][1], level), piece: piece}
	if arc := b.pieces[piece]; arc.Turn != plane.Straight {
		from, to := b.points[e.from], b.points[e.to]
		e.shape, e.axis = round, along(b.axis, b.hand*float64(arc.Turn))
		// The centre is moved by less than a nanometre, to where both ends lie
		// equally far from it.
		chord, middle := to.minus(from).unit(), from.plus(to, 1).times(0.5)
		e.centre = b.raised(arc.Centre, level)
		e.centre = e.centre.plus(chord, middle.minus(e.centre).dot(chord))
		e.a = from.minus(e.centre).size()
		e.b, e.major = e.a, from.minus(e.centre).unit()
	}
	b.lying[key] = b.edge(e)
	return b.lying[key]
}

// uprightEdge is the edge of the shell over a corner from a level to the next.
func (b *body) uprightEdge(corner, level int) int {
	key := [2]int{corner, level}
	if i, made := b.upright[key]; made {
		return i
	}
	b.upright[key] = b.edge(edge{from: b.stood(corner, level), to: b.stood(corner, level+1)})
	return b.upright[key]
}

// stood is the vertex of the shell over a corner at a level.
func (b *body) stood(corner, level int) int {
	key := [2]int{corner, level}
	if i, made := b.stands[key]; made {
		return i
	}
	b.stands[key] = b.point(b.raised(b.corners[corner], level))
	return b.stands[key]
}
