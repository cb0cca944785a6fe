package piece

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// A Piece is one test piece.
type Piece struct {
	Name   string
	Solid  solid.Solid
	Volume float64 // mm³, by formula
}

// at is a point in space in millimetres.
func at(x, y, z float64) solid.Vec {
	return solid.Vec{X: length.Round(x), Y: length.Round(y), Z: length.Round(z)}
}

// point is one of a plane in millimetres.
func point(x, y float64) plane.Point { return plane.At(length.Round(x), length.Round(y)) }

// box is that between two opposite corners of a plane in millimetres.
func box(x0, y0, x1, y1 float64) plane.Box { return plane.BoxOf(point(x0, y0), point(x1, y1)) }

// block is a board from the origin.
func block(x, y, z float64) solid.Solid {
	return solid.Solid{Blank: solid.Block(solid.Vec{}, at(x, y, z))}
}

// prism is what a region sweeps along an axis.
func prism(a solid.Axis, from, to float64, region ...plane.Path) solid.Prism {
	return solid.Prism{Axis: a, Region: region, From: length.Round(from), To: length.Round(to)}
}

// cut takes what an outline sweeps.
func cut(use string, a solid.Axis, from, to float64, outline plane.Path) solid.Cut {
	return solid.Cut{Prism: prism(a, from, to, outline), For: use}
}

// hole takes a box between two opposite corners.
func hole(use string, a, b solid.Vec) solid.Cut {
	return solid.Cut{Prism: solid.Block(a, b), For: use}
}

// with is the solid with more cuts.
func with(s solid.Solid, cuts ...solid.Cut) solid.Solid {
	s.Cuts = append(s.Cuts[:len(s.Cuts):len(s.Cuts)], cuts...)
	return s
}

// bored is the solid with a bore.
func bored(s solid.Solid, use string, diameter float64, from, to solid.Vec) solid.Solid {
	s.Bores = append(s.Bores[:len(s.Bores):len(s.Bores)], solid.Bore{From: from, To: to, Diameter: length.Round(diameter), For: use})
	return s
}

// rounded is a box with round corners.
func rounded(b plane.Box, radius float64) plane.Path {
	return plane.RoundedRect(b, length.Round(radius))
}

// spandrel is what rounding a corner over takes: the corner, its two legs of
// size r along dx and dy, either sign, and the arc between.
func spandrel(x, y, dx, dy float64) plane.Path {
	turn := plane.Right
	if dx*dy < 0 {
		turn = plane.Left
	}
	path := plane.Path{
		plane.Line(point(x, y), point(x+dx, y)),
		plane.Arc(point(x+dx, y), point(x, y+dy), point(x+dx, y+dy), turn),
		plane.Line(point(x, y+dy), point(x, y)),
	}
	if dx*dy < 0 {
		return path.Reverse()
	}
	return path
}

// bevel is what a chamfer takes of a corner.
func bevel(x, y, dx, dy float64) plane.Path {
	path := plane.Polygon(point(x, y), point(x+dx, y), point(x, y+dy))
	if dx*dy < 0 {
		return path.Reverse()
	}
	return path
}

// slot is the area of a rectangle with half circles for its short sides.
func slot(long, short float64) float64 { return (long-short)*short + disc(short/2) }

func disc(radius float64) float64 { return math.Pi * radius * radius }

// corner is the area a corner of radius r keeps back of a square one.
func corner(r float64) float64 { return (1 - math.Pi/4) * r * r }

// strip is the part of that which lies within reach of one of its walls:
// r - √(r² - (r-x)²), integrated from 0 to reach.
func strip(r, reach float64) float64 {
	under := func(u float64) float64 { return (u*math.Sqrt(r*r-u*u) + r*r*math.Asin(u/r)) / 2 }
	return r*reach - (under(r) - under(r-reach))
}
