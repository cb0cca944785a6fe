package solid

import (
	"fmt"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// A Shell is the boundary of a body: its faces, the edges in which two of them
// meet, and the corners in which edges end. Every edge is walked once each way
// and all faces hang together, so that the shell is closed and bounds one
// piece of material.
type Shell struct {
	Corners []Vec
	Edges   []Edge
	Faces   []Face
}

// An Edge of a shell is straight or an arc in a plane across an axis.
type Edge struct {
	From, To int // corners
	// Arc is an arc's circle in Flat(Axis) and the way the edge turns on it,
	// from From to To; of a straight edge its Turn is plane.Straight and all
	// else is zero. Axis is the one it lies across, At where on it.
	Arc  plane.Edge
	Axis Axis
	At   length.Length
}

// A Face of a shell is square to an axis, or what a straight or round trace
// sweeps along one.
type Face struct {
	// Axis is the one the face is square to when Side is not 0, else the one
	// its trace is swept along.
	Axis Axis
	// Side is 1 for a square face that looks the way the axis points, -1 for
	// one that looks the other way: its material is behind it. It is 0 for a
	// swept face.
	Side int
	// At is where on the axis a square face lies, Region the face in
	// Flat(Axis), with one outer outline.
	At     length.Length
	Region plane.Region
	// Trace is what a swept face sweeps, in Flat(Axis): slanted or round, its
	// material to the left.
	Trace plane.Edge
	// Loops bound the face, which lies to the left of each as seen from
	// outside; the first is the outer one.
	Loops [][]Use
	// For is the use of the cut that made the face; empty for the blank's.
	For string
}

// A Use is an edge as a face's boundary walks along it.
type Use struct {
	Edge int
	Back bool // from the edge's To to its From
}

// Ends are the corners at which a use begins and ends.
func (s *Shell) Ends(u Use) (from, to int) {
	e := s.Edges[u.Edge]
	if u.Back {
		return e.To, e.From
	}
	return e.From, e.To
}

// Shell is the boundary of the solid's body, its bores left out (Drilled makes
// cuts of those that can be). It is exact: every face lies in a plane or on a
// cylinder, every edge is straight or an arc, every corner is true to a few
// nanometres.
//
// It errs where that cannot be: an outline that is none (plane.Simple), round
// or slanted faces of prisms across one another that meet in other curves, a
// body that falls into pieces, has a hollow, touches itself or is empty.
func (s Solid) Shell() (Shell, error) {
	if err := s.simple(); err != nil {
		return Shell{}, err
	}
	sw := sewing{solid: s}
	sw.square()
	if err := sw.swept(); err != nil {
		return Shell{}, err
	}
	if len(sw.patches) == 0 {
		return Shell{}, fmt.Errorf("nothing is left of it, from %v to %v along %v: its cuts take all, or its blank has no size", s.Blank.From.MM(), s.Blank.To.MM(), s.Blank.Axis)
	}
	shell := sw.sewn()
	shell.straighten()
	return shell, shell.closed()
}

// simple tells which of the solid's outlines is none.
func (s Solid) simple() error {
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

// String is the point in words, in mm to a tenth of a micrometre.
func (v Vec) String() string {
	return fmt.Sprintf("(%.4f, %.4f, %.4f) mm", v.X.MM(), v.Y.MM(), v.Z.MM())
}

// closed holds the shell against what makes it a boundary: every edge is
// walked once each way, every loop returns, and all faces hang together.
func (s *Shell) closed() error {
	walked := make([][2]int, len(s.Edges)) // face numbers from 1, by way
	for i, f := range s.Faces {
		for _, loop := range f.Loops {
			for k, u := range loop {
				_, to := s.Ends(u)
				if next, _ := s.Ends(loop[(k+1)%len(loop)]); next != to {
					return fmt.Errorf("the boundary of a face is open at %v", s.Corners[to])
				}
				way := &walked[u.Edge][0]
				if u.Back {
					way = &walked[u.Edge][1]
				}
				if *way != 0 {
					return fmt.Errorf("it touches itself along an edge that ends at %v: move a cut so that the wood holds together there, or is parted", s.Corners[to])
				}
				*way = i + 1
			}
		}
	}
	group := newGroups(len(s.Faces))
	for i, way := range walked {
		switch {
		case way == [2]int{}:
		case way[0] == 0 || way[1] == 0:
			return fmt.Errorf("an edge from %v bounds one face only", s.Corners[s.Edges[i].From])
		default:
			group.join(way[0]-1, way[1]-1)
		}
	}
	if slices.ContainsFunc(group, func(i int) bool { return group.of(i) != 0 }) {
		return fmt.Errorf("it falls into pieces, or has a hollow: a part must be one piece with one boundary")
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
