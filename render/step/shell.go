package step

import (
	"fmt"

	"stilewright/model/plane"
)

// A shape tells what kind of curve or surface it is.
type shape int

// The shapes. Curves are straight or round (an ellipse with its half axes a
// and b, a = b for a circle); surfaces flat or round (a cylinder).
const (
	straight shape = iota
	round
)

// An edge runs from one vertex to another. A round one runs counter-clockwise
// about axis, its half axis a along major.
type edge struct {
	from, to            int
	shape               shape
	centre, axis, major vec
	a, b                float64 // mm
	piece               int     // of the flat outline it was raised from; only round ones of a body
}

// A use is an edge as a face's boundary walks along it.
type use struct {
	edge int
	back bool
}

// A surface is a plane through at with its normal away from the material, or
// a cylinder about the axis through at, with material inside or outside it.
// Angles about a cylinder's axis count from the direction start.
type surface struct {
	shape           shape
	at, axis, start vec
	radius          float64 // mm
	hollow          bool    // the material lies outside the cylinder
}

// A face is a piece of a surface: to the left of its loops, seen from where
// there is no material. The first loop is the outer one.
type face struct {
	surface
	loops [][]use
	flat  plane.Region // of a flat face square to an axis: the face seen along it
}

// A shell is a closed boundary of one piece of material.
type shell struct {
	points []vec
	edges  []edge
	faces  []face
}

func (s *shell) point(v vec) int {
	s.points = append(s.points, v)
	return len(s.points) - 1
}

func (s *shell) edge(e edge) int {
	s.edges = append(s.edges, e)
	return len(s.edges) - 1
}

// ends are the vertices at which a use begins and ends.
func (s *shell) ends(u use) (from, to int) {
	e := s.edges[u.edge]
	if u.back {
		return e.to, e.from
	}
	return e.from, e.to
}

// closed holds the shell against what makes it a boundary: every edge is
// walked once each way, every loop returns, and all faces hang together.
func (s *shell) closed() error {
	walked := make([][2]int, len(s.edges)) // face numbers from 1, by way
	group := newGroups(len(s.faces))
	for i, f := range s.faces {
		for _, loop := range f.loops {
			for k, u := range loop {
				_, to := s.ends(u)
				if next, _ := s.ends(loop[(k+1)%len(loop)]); next != to {
					return fmt.Errorf("the boundary of a face is open at %v", s.points[to])
				}
				way := &walked[u.edge][0]
				if u.back {
					way = &walked[u.edge][1]
				}
				if *way != 0 {
					return fmt.Errorf("it touches itself along an edge that ends at %v: move a cut so that the wood holds together there, or is parted", s.points[to])
				}
				*way = i + 1
			}
		}
	}
	for i, way := range walked {
		switch {
		case way == [2]int{}:
		case way[0] == 0 || way[1] == 0:
			return fmt.Errorf("an edge from %v bounds one face only", s.points[s.edges[i].from])
		default:
			group.join(way[0]-1, way[1]-1)
		}
	}
	for i := range s.faces {
		if group.of(i) != group.of(0) {
			return fmt.Errorf("it falls into pieces, or has a hollow: a part must be one piece with one boundary")
		}
	}
	return nil
}

// groups knows which numbers belong together.
type groups []int

func newGroups(n int) groups {
	g := make(groups, n)
	for i := range g {
		g[i] = i
	}
	return g
}

// of is the least number of the group that i belongs to.
func (g groups) of(i int) int {
	for g[i] != i {
		g[i] = g[g[i]]
		i = g[i]
	}
	return i
}

func (g groups) join(i, k int) {
	i, k = g.of(i), g.of(k)
	g[max(i, k)] = min(i, k)
}
