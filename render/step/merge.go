package step

import (
	"fmt"
	"math"

	"stilewright/model/plane"
	"stilewright/model/solid"
)

// off is how far in mm a point may lie off a plane or a line and still count as
// lying in it: corners lie within a nanometre or two of slanted ones.
const off = 4e-6

// merged is the boundary with faces of one surface joined across their common
// edges, and edges in one line joined where nothing else ends.
func (b *body) merged() (*shell, error) {
	sides := make([][]int, len(b.edges))
	for i, f := range b.faces {
		for _, loop := range f.loops {
			for _, u := range loop {
				sides[u.edge] = append(sides[u.edge], i)
			}
		}
	}
	group := newGroups(len(b.faces))
	for i, s := range sides {
		if len(s) == 2 && b.alike(s[0], s[1], b.edges[i]) {
			group.join(s[0], s[1])
		}
	}
	left := make(map[int][]use)
	for i, f := range b.faces {
		for _, loop := range f.loops {
			for _, u := range loop {
				if s := sides[u.edge]; group.of(s[0]) != group.of(s[1]) {
					left[group.of(i)] = append(left[group.of(i)], u)
				}
			}
		}
	}
	s := &shell{points: b.points, edges: b.edges}
	for i := range b.faces {
		if group.of(i) != i {
			continue
		}
		loops, err := b.chained(b.faces[i].surface, left[i])
		if err != nil {
			return nil, err
		}
		s.faces = append(s.faces, face{surface: b.faces[i].surface, loops: loops})
	}
	s.straighten()
	return s, s.spread()
}

// alike tells whether two faces that meet in an edge are one surface. Those of
// a cylinder are joined along its axis only, so that none closes on itself.
func (b *body) alike(i, k int, common edge) bool {
	f, g := b.faces[i], b.faces[k]
	if f.shape != g.shape || f.hollow != g.hollow {
		return false
	}
	if f.shape == round {
		return common.shape == round
	}
	if f.axis.dot(g.axis) < 1-1e-9 {
		return false
	}
	for _, loop := range g.loops {
		for _, u := range loop {
			from, _ := b.shell.ends(u)
			if math.Abs(b.points[from].minus(f.at).dot(f.axis)) > off {
				return false
			}
		}
	}
	return true
}

// chained is the uses as closed loops. Where loops touch at a vertex, each
// turns as far to the left as it can, so that it stays by itself.
func (b *body) chained(f surface, uses []use) ([][]use, error) {
	leaving := map[int][]int{}
	for i, u := range uses {
		from, _ := b.shell.ends(u)
		leaving[from] = append(leaving[from], i)
	}
	var loops [][]use
	done := make([]bool, len(uses))
	for i := range uses {
		if done[i] {
			continue
		}
		var loop []use
		for k := i; k >= 0 && !done[k]; k = b.next(f, uses, done, leaving, k, i) {
			done[k] = true
			loop = append(loop, uses[k])
		}
		first, _ := b.shell.ends(loop[0])
		if _, last := b.shell.ends(loop[len(loop)-1]); last != first {
			return nil, fmt.Errorf("the boundary of a face is open at %v", b.points[last])
		}
		loops = append(loops, loop)
	}
	return loops, nil
}

// next is the use that follows use k of the loop begun with use first, or -1.
func (b *body) next(f surface, uses []use, done []bool, leaving map[int][]int, k, first int) int {
	_, at := b.shell.ends(uses[k])
	on, most := -1, math.Inf(-1)
	_, way := b.ways(uses[k])
	for _, i := range leaving[at] {
		if done[i] && i != first {
			continue
		}
		out, _ := b.ways(uses[i])
		turn := 0.0
		if len(leaving[at]) > 1 {
			turn = math.Atan2(f.axis.dot(way.cross(out)), way.dot(out))
		}
		if turn > most {
			on, most = i, turn
		}
	}
	return on
}

// ways are the directions in which a use begins and ends.
func (b *body) ways(u use) (begins, ends vec) {
	e := b.edges[u.edge]
	from, to := b.shell.ends(u)
	if e.shape == straight {
		d := b.points[to].minus(b.points[from]).unit()
		return d, d
	}
	sign := 1.0
	if u.back {
		sign = -1
	}
	tangent := func(p int) vec { return e.axis.cross(b.points[p].minus(e.centre)).times(sign).unit() }
	return tangent(from), tangent(to)
}

// straighten joins straight edges in one line that meet where no other ends.
func (s *shell) straighten() {
	through := s.between()
	joined := map[[2]int]int{}
	for i := range s.faces {
		for k, loop := range s.faces[i].loops {
			s.faces[i].loops[k] = s.without(loop, through, joined)
		}
	}
}

// between tells which vertices lie within a straight run of two edges.
func (s *shell) between() map[int]bool {
	touching := map[int]map[int]bool{}
	for _, f := range s.faces {
		for _, loop := range f.loops {
			for _, u := range loop {
				from, to := s.ends(u)
				for _, p := range [...]int{from, to} {
					if touching[p] == nil {
						touching[p] = map[int]bool{}
					}
					touching[p][u.edge] = true
				}
			}
		}
	}
	through := map[int]bool{}
	for _, f := range s.faces {
		for _, loop := range f.loops {
			for k, u := range loop {
				next := loop[(k+1)%len(loop)]
				a, p := s.ends(u)
				_, c := s.ends(next)
				if len(touching[p]) == 2 && s.edges[u.edge].shape == straight && s.edges[next.edge].shape == straight && s.inLine(a, p, c) {
					through[p] = true
				}
			}
		}
	}
	return through
}

// inLine tells whether the second vertex lies between the other two.
func (s *shell) inLine(a, p, c int) bool {
	d, e := s.points[p].minus(s.points[a]), s.points[c].minus(s.points[a])
	return d.cross(e).size() <= off*e.size() && d.dot(e) > 0 && d.size() < e.size()
}

// without is the loop less the vertices told; joined knows the edges made so.
func (s *shell) without(loop []use, through map[int]bool, joined map[[2]int]int) []use {
	first := 0
	for from, _ := s.ends(loop[first]); through[from]; from, _ = s.ends(loop[first]) {
		first++
	}
	var kept []use
	for k := 0; k < len(loop); k++ {
		u := loop[(first+k)%len(loop)]
		from, to := s.ends(u)
		if !through[to] {
			kept = append(kept, u)
			continue
		}
		for through[to] {
			k++
			_, to = s.ends(loop[(first+k)%len(loop)])
		}
		key := [2]int{min(from, to), max(from, to)}
		if _, made := joined[key]; !made {
			joined[key] = s.edge(edge{from: key[0], to: key[1]})
		}
		kept = append(kept, use{joined[key], from > to})
	}
	return kept
}

// spread makes of every flat face with several outer loops as many faces, puts
// outer loops first, and tells what square faces look like along their axis.
func (s *shell) spread() error {
	var all []face
	for _, f := range s.faces {
		axis, square := f.axis.square()
		if f.shape == round || !square {
			if len(f.loops) != 1 {
				return fmt.Errorf("a slanted or round face has %d outlines; only one is written", len(f.loops))
			}
			all = append(all, f)
			continue
		}
		first := len(all)
		var holes []int
		for i, loop := range f.loops {
			path := s.path(loop, axis, f.axis)
			if path.Area() > 0 {
				all = append(all, face{surface: f.surface, loops: [][]use{loop}, flat: plane.Region{path}})
				continue
			}
			holes = append(holes, i)
		}
		for _, i := range holes {
			path, home := s.path(f.loops[i], axis, f.axis), -1
			for k := first; k < len(all); k++ {
				if all[k].flat[:1].Where(path[0].From) == plane.Inside {
					home = k
				}
			}
			if home < 0 {
				return fmt.Errorf("a hole of a face lies outside it, at %v mm", path[0].From)
			}
			all[home].loops = append(all[home].loops, f.loops[i])
			all[home].flat = append(all[home].flat, path)
		}
	}
	s.faces = all
	return nil
}

// path is a loop of a square face seen along its axis. As the flat coordinates
// may be left-handed against the normal, it is turned so that material lies on
// its left.
func (s *shell) path(loop []use, axis solid.Axis, normal vec) plane.Path {
	var path plane.Path
	mirrored := normal[axis] < 0
	if axis == solid.Y {
		mirrored = !mirrored
	}
	for _, u := range loop {
		from, to := s.ends(u)
		e := s.edges[u.edge]
		p := plane.Line(s.points[from].whole().Flat(axis), s.points[to].whole().Flat(axis))
		if e.shape == round {
			turn := plane.Left
			if (e.axis[axis] > 0) != (axis != solid.Y) {
				turn = plane.Right
			}
			if u.back {
				turn = -turn
			}
			p = plane.Arc(p.From, p.To, e.centre.whole().Flat(axis), turn)
		}
		path = append(path, p)
	}
	if mirrored {
		return path.Reverse()
	}
	return path
}
