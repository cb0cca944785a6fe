package plane

import "math"

// A Position is where a point lies with regard to a region.
type Position int8

// The positions. A point within 2 nm of an edge is on the boundary, since
// points rounded onto slanted edges and arcs lie that far off.
const (
	Outside Position = iota
	Boundary
	Inside
)

// String is the position in words.
func (p Position) String() string { return [...]string{"outside", "boundary", "inside"}[p] }

// Where tells where p lies.
func (r Region) Where(p Point) Position {
	at, turns := BoxOf(p, p), 0
	for _, path := range r {
		for _, e := range path {
			if e.From == e.To {
				continue
			}
			if e.Bounds().Grow(near).Meets(at) {
				if s := spanOf(e, 0); s.on(p) {
					return Boundary
				}
			}
			turns += e.winding(At(2*p.X, 2*p.Y))
		}
	}
	if turns == 0 {
		return Outside
	}
	return Inside
}

// winding is how often the edge winds round the point m, given twice as far
// out, as counted along the ray from m to the right.
func (e Edge) winding(m2 Point) int {
	if e.long() {
		first, second := e, e
		first.To = e.Middle()
		second.From = first.To
		return first.half(m2) + second.half(m2)
	}
	return e.half(m2)
}

// half is winding of an edge that is not long.
func (e *Edge) half(m2 Point) int {
	if e.Turn == Straight {
		return e.around(m2, 0, 0)
	}
	chord := norm(e.From.to(e.To))
	return e.around(m2, chord, e.chordToCentre(chord))
}

// around counts how often the edge crosses the ray from m to the right, upwards
// less downwards. The chord is decided in exact integers, m being moved right
// and up by nothing, so that it lies on no edge; an arc adds or takes away its
// turn when m lies between chord and arc.
func (e *Edge) around(m2 Point, chord, reach float64) int {
	f := Point{2*e.From.X - m2.X, 2*e.From.Y - m2.Y}
	t := Point{2*e.To.X - m2.X, 2*e.To.Y - m2.Y}
	crosses := (f.Y <= 0) != (t.Y <= 0)
	if e.Turn == Straight && (!crosses || f.X < 0 && t.X < 0) {
		return 0
	}
	area := cross(f, t)
	left := area.sign()
	if left == 0 {
		left = onLine(f, t)
	}
	count := 0
	if crosses && left > 0 == (f.Y <= 0) {
		count = left
	}
	// On the arc the angle in which the chord appears is half a turn less half
	// the sweep; inside it is larger. Tan of half the sweep is chord/2 : reach.
	if e.Turn != Straight && left == -int(e.Turn) &&
		float64(math.Abs(area.float())*reach)+float64(dot(f, t).float()*chord)/2 < 0 {
		count += int(e.Turn)
	}
	return count
}

// onLine is the side of the edge from f to t on which the origin comes to lie
// when it is moved to the right by nothing, and up by still less.
func onLine(f, t Point) int {
	if f.Y != t.Y {
		return -order(t.Y, f.Y)
	}
	return order(t.X, f.X)
}
