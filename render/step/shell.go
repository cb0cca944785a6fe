package step

import "stilewright/model/plane"

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
