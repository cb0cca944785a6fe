package plane

import "stilewright/model/length"

// A Point is a place in the plane.
type Point struct{ X, Y length.Length }

// At is the point (x, y).
func At(x, y length.Length) Point { return Point{X: x, Y: y} }

// Add is the point moved by (dx, dy).
func (p Point) Add(dx, dy length.Length) Point { return Point{p.X + dx, p.Y + dy} }

// A Turn tells which way an edge bends as one walks from From to To.
type Turn int8

// The turns. The zero Turn is a straight edge.
const (
	Straight Turn = 0
	Left     Turn = 1  // an arc, counter-clockwise
	Right    Turn = -1 // an arc, clockwise
)

// An Edge is a straight segment or a circular arc of less than a full turn.
// For an arc Centre is its centre; From and To lie on the circle to within one
// nanometre a coordinate, since they are whole nanometres. A full circle is
// two edges (see Circle).
type Edge struct {
	From, To Point
	Centre   Point // arcs only; the zero Point for segments
	Turn     Turn
}

// A Path is a run of edges, each beginning where the last ended.
// It is closed when it ends where it began.
type Path []Edge

// A Region is an area of the plane: outer boundaries counter-clockwise, holes
// clockwise and inside them, all closed and none crossing another. Material
// lies to the left of every edge. The nil Region is empty.
type Region []Path

// A Box is an axis-parallel rectangle. The zero Box is the point (0, 0).
type Box struct{ Min, Max Point }

// Width is the box's extent along X.
func (b Box) Width() length.Length { return b.Max.X - b.Min.X }

// Height is the box's extent along Y.
func (b Box) Height() length.Length { return b.Max.Y - b.Min.Y }
