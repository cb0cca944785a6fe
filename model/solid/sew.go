package solid

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// off is how far in mm a point may lie off a line and still count as on it.
const off = 4e-6

// sewn joins the patches: ends within near become one corner, curves are cut
// at the corners on them, and those that then run together become one edge.
func (sw *sewing) sewn() Shell {
	var s Shell
	for _, p := range sw.patches {
		for _, outline := range p.outlines {
			for _, c := range outline {
				s.corner(c.from)
			}
		}
	}
	known := map[[2]int][]int{}
	for _, p := range sw.patches {
		f := p.Face
		for _, outline := range p.outlines {
			var loop []Use
			for _, c := range outline {
				loop = append(loop, s.uses(c, known)...)
			}
			f.Loops = append(f.Loops, loop)
		}
		s.Faces = append(s.Faces, f)
	}
	return s
}

// corner is the number of the corner that stands for a point.
func (s *Shell) corner(v Vec) int {
	for i, c := range s.Corners {
		if (v.X-c.X).Abs() <= near && (v.Y-c.Y).Abs() <= near && (v.Z-c.Z).Abs() <= near {
			return i
		}
	}
	s.Corners = append(s.Corners, v)
	return len(s.Corners) - 1
}

// uses is the curve as edges between the corners on it.
func (s *Shell) uses(c curve, known map[[2]int][]int) []Use {
	at, to := s.corner(c.from), s.corner(c.to)
	var uses []Use
	for _, next := range append(s.on(c, at, to), to) {
		if next == at {
			continue
		}
		uses = append(uses, s.edge(c, at, next, known))
		at = next
	}
	return uses
}

// on are the corners on a curve between its ends, in its order.
func (s *Shell) on(c curve, from, to int) []int {
	type stop struct {
		corner int
		way    float64
	}
	reach := box{c.from, c.from}.join(c.to)
	arc := c.arc
	if arc.Turn != plane.Straight {
		arc.From, arc.To = c.from.Flat(c.axis), c.to.Flat(c.axis)
		b := arc.Bounds()
		reach = reach.join(Raise(b.Min, c.axis, c.from.Along(c.axis))).join(Raise(b.Max, c.axis, c.from.Along(c.axis)))
	}
	reach = box{reach.least.Add(Vec{-near, -near, -near}), reach.most.Add(Vec{near, near, near})}
	var found []stop
	for i, v := range s.Corners {
		if i == from || i == to || !reach.meets(box{v, v}) {
			continue
		}
		way, aside := 0.0, 0.0
		if arc.Turn == plane.Straight {
			way, aside = c.place(v)
		} else {
			way, aside = place(arc, v.Flat(c.axis))
		}
		if way > 0 && way < 1 && math.Abs(aside) <= near.MM() {
			found = append(found, stop{i, way})
		}
	}
	for i := range found { // few: by insertion
		for k := i; k > 0 && found[k].way < found[k-1].way; k-- {
			found[k], found[k-1] = found[k-1], found[k]
		}
	}
	corners := make([]int, len(found))
	for i, f := range found {
		corners[i] = f.corner
	}
	return corners
}

// place is how far along a straight curve a point lies, from 0 to 1, and how
// far off it in mm.
func (c curve) place(v Vec) (way, aside float64) {
	d, q := between(c.from, c.to), between(c.from, v)
	way = q.dot(d) / d.dot(d)
	rest := q.plus(d.times(-way))
	return way, math.Sqrt(rest.dot(rest))
}

// edge is the edge of a curve between two corners, made if it is not known.
func (s *Shell) edge(c curve, from, to int, known map[[2]int][]int) Use {
	back := from > to
	if back {
		from, to, c.arc = to, from, c.arc.Reverse()
	}
	e := Edge{From: from, To: to}
	if c.arc.Turn != plane.Straight {
		e.Arc, e.Axis, e.At = c.arc, c.axis, s.Corners[from].Along(c.axis)
		e.Arc.From, e.Arc.To = s.Corners[from].Flat(c.axis), s.Corners[to].Flat(c.axis)
	}
	key := [2]int{from, to}
	for _, i := range known[key] {
		if s.alike(s.Edges[i], e) {
			return Use{i, back}
		}
	}
	s.Edges = append(s.Edges, e)
	known[key] = append(known[key], len(s.Edges)-1)
	return Use{len(s.Edges) - 1, back}
}

// alike tells whether two edges between the same corners are one.
func (s *Shell) alike(a, b Edge) bool {
	p, q := s.Middle(a), s.Middle(b)
	return max((p.X-q.X).Abs(), (p.Y-q.Y).Abs(), (p.Z-q.Z).Abs()) <= 2*near
}

// Middle is the point half-way along an edge.
func (s *Shell) Middle(e Edge) Vec {
	if e.Arc.Turn != plane.Straight {
		return Raise(e.Arc.Middle(), e.Axis, e.At)
	}
	a, b := s.Corners[e.From], s.Corners[e.To]
	return Vec{halfWay(a.X, b.X), halfWay(a.Y, b.Y), halfWay(a.Z, b.Z)}
}

func halfWay(a, b length.Length) length.Length { return a + (b-a)/2 }

// straighten joins straight edges in one line that meet where no other ends.
func (s *Shell) straighten() {
	through := s.through()
	joined := map[[2]int]int{}
	for i := range s.Faces {
		for k, loop := range s.Faces[i].Loops {
			s.Faces[i].Loops[k] = s.without(loop, through, joined)
		}
	}
}

// through tells which corners lie within a straight run of two edges.
func (s *Shell) through() map[int]bool {
	touching := make([]map[int]bool, len(s.Corners))
	for i, e := range s.Edges {
		for _, p := range [...]int{e.From, e.To} {
			if touching[p] == nil {
				touching[p] = map[int]bool{}
			}
			touching[p][i] = true
		}
	}
	through := map[int]bool{}
	for _, f := range s.Faces {
		for _, loop := range f.Loops {
			for k, u := range loop {
				next := loop[(k+1)%len(loop)]
				a, p := s.Ends(u)
				_, c := s.Ends(next)
				if len(touching[p]) == 2 && s.Edges[u.Edge].Arc.Turn == plane.Straight && s.Edges[next.Edge].Arc.Turn == plane.Straight && s.inLine(a, p, c) {
					through[p] = true
				}
			}
		}
	}
	return through
}

// inLine tells whether the second corner lies between the other two.
func (s *Shell) inLine(a, p, c int) bool {
	way, aside := curve{from: s.Corners[a], to: s.Corners[c]}.place(s.Corners[p])
	return aside <= off && way > 0 && way < 1
}

// without is the loop less the corners told; joined knows the edges made so.
func (s *Shell) without(loop []Use, through map[int]bool, joined map[[2]int]int) []Use {
	first := 0
	for from, _ := s.Ends(loop[first]); through[from]; from, _ = s.Ends(loop[first]) {
		first++
	}
	var kept []Use
	for k := 0; k < len(loop); k++ {
		u := loop[(first+k)%len(loop)]
		from, to := s.Ends(u)
		if !through[to] {
			kept = append(kept, u)
			continue
		}
		for through[to] {
			k++
			_, to = s.Ends(loop[(first+k)%len(loop)])
		}
		key := [2]int{min(from, to), max(from, to)}
		if _, made := joined[key]; !made {
			s.Edges = append(s.Edges, Edge{From: key[0], To: key[1]})
			joined[key] = len(s.Edges) - 1
		}
		kept = append(kept, Use{joined[key], from > to})
	}
	return kept
}
