package solid

import (
	"stilewright/model/length"
	"stilewright/model/plane"
)

// An Axis is one of the three directions of space.
type Axis int

// The axes: X right, Y away from the room, Z up.
const (
	X Axis = iota
	Y
	Z
)

// String is the axis's letter.
func (a Axis) String() string { return [...]string{"X", "Y", "Z"}[a] }

// A Vec is a point or a displacement in space.
type Vec struct{ X, Y, Z length.Length }

// Add is v moved by d.
func (v Vec) Add(d Vec) Vec { return Vec{v.X + d.X, v.Y + d.Y, v.Z + d.Z} }

// Flat is v seen along the axis: the two coordinates that are left, in the
// order of the alphabet. Seen along Y that is (X, Z), along X it is (Y, Z),
// along Z it is (X, Y).
func (v Vec) Flat(a Axis) plane.Point {
	switch a {
	case X:
		return plane.At(v.Y, v.Z)
	case Y:
		return plane.At(v.X, v.Z)
	default:
		return plane.At(v.X, v.Y)
	}
}

// Along is v's coordinate on the axis.
func (v Vec) Along(a Axis) length.Length { return [...]length.Length{v.X, v.Y, v.Z}[a] }

// Raise is the inverse of Flat and Along: the point in space whose flat image
// along a is p and whose coordinate on a is at.
func Raise(p plane.Point, a Axis, at length.Length) Vec {
	switch a {
	case X:
		return Vec{at, p.X, p.Y}
	case Y:
		return Vec{p.X, at, p.Y}
	default:
		return Vec{p.X, p.Y, at}
	}
}

// A Prism is the space a region sweeps along an axis. Its region is given in
// the two coordinates that Flat leaves for that axis.
type Prism struct {
	Axis     Axis
	Region   plane.Region
	From, To length.Length // From < To, along Axis
}

// A Bore is a drilled hole: a cylinder from the centre of one flat end to the
// centre of the other. Where it leaves the stock it may run past it.
type Bore struct {
	From, To Vec
	Diameter length.Length // more than 0
	For      string        // what it is for: "pocket", "pilot", "washer screw"
}

// A Cut is a prism taken away, and the operation that takes it.
type Cut struct {
	Prism
	For string // "rabbet", "mortise", "groove"
}

// A Solid is a part in space: a blank less its cuts and bores.
// Cuts may overlap one another; bores may not overlap bores of another use.
type Solid struct {
	Blank Prism
	Cuts  []Cut
	Bores []Bore
}

// Block is the box between two opposite corners, as a prism along Y.
func Block(a, b Vec) Prism {
	return Prism{Axis: Y, Region: plane.Region{plane.Rect(a.Flat(Y), b.Flat(Y))}, From: min(a.Y, b.Y), To: max(a.Y, b.Y)}
}
