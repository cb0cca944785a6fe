package machining

import (
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// An Operation is what is done along or inside a contour.
type Operation int

// The operations.
const (
	Blank  Operation = iota // the outline of the piece as it lies, to set it by; nothing is cut
	Cut                     // through, the tool outside of the line: the part's own outline
	Hole                    // through, the tool inside of the line
	Pocket                  // to a depth, everything inside of the line
	Bore                    // drilled to a depth: a circle
	Mark                    // drawn or engraved along the line, open or closed
)

// Operations lists all operations in the order of files and legends.
func Operations() []Operation { return []Operation{Blank, Cut, Hole, Pocket, Bore, Mark} }

// String is the operation's word.
func (o Operation) String() string {
	return [...]string{"blank", "cut", "hole", "pocket", "bore", "mark"}[o]
}

// Meaning says in a few words what a machine does with the contours.
func (o Operation) Meaning() string {
	return [...]string{
		"outline of the piece, to set it by; do not cut",
		"cut through, tool outside of the line",
		"cut through, tool inside of the line",
		"clear the inside of the line to the depth",
		"drill to the depth",
		"engrave or draw along the line",
	}[o]
}

// A Contour is one line a tool follows.
type Contour struct {
	Operation Operation
	// Depth from the face that lies up: the thickness for Cut and Hole, 0 for
	// Blank and Mark.
	Depth length.Length
	// Path runs counter-clockwise round what is outermost (a part, a pocket, a
	// bore) and clockwise round what is left out of it (a hole in a part, an
	// island in a pocket). Only a Mark may be open.
	Path plane.Path
}

// A Setup is one part on the table with one face up.
type Setup struct {
	Face                     Face
	Width, Height, Thickness length.Length // of the blank as it lies: X, Y, and into the table
	Contours                 []Contour     // by operation, then depth
}

// region gathers the contours of some operations at a depth; a depth less than
// 0 stands for all.
func (s Setup) region(depth length.Length, operations ...Operation) plane.Region {
	var region plane.Region
	for _, c := range s.Contours {
		for _, o := range operations {
			if c.Operation == o && (depth < 0 || c.Depth == depth) {
				region = append(region, c.Path)
			}
		}
	}
	return region
}

// Outline is the part's outline in the setup, with its holes.
func (s Setup) Outline() plane.Region {
	if cut := s.region(-1, Cut, Hole); len(cut) > 0 {
		return cut
	}
	return s.region(-1, Blank)
}

// CutLength is the length in mm of all contours but those of the blank and of
// marks.
func (s Setup) CutLength() float64 {
	var whole float64
	for _, c := range s.Contours {
		if c.Operation != Blank && c.Operation != Mark {
			whole += c.Path.Length()
		}
	}
	return whole
}

// Pierces is how often a tool or a beam goes into the material: once for every
// contour but those of the blank and of marks.
func (s Setup) Pierces() int {
	n := 0
	for _, c := range s.Contours {
		if c.Operation != Blank && c.Operation != Mark {
			n++
		}
	}
	return n
}

// A Face is a face of a part's blank.
type Face int

// The faces. The front lies towards the room, left and right are as seen from
// the room.
const (
	Front Face = iota
	Back
	Left
	Right
	Bottom
	Top
)

// String is the face's word.
func (f Face) String() string {
	return [...]string{"front", "back", "left", "right", "bottom", "top"}[f]
}

// Words names the face in a sentence: "the back", "the left edge".
func (f Face) Words() string {
	switch f {
	case Front, Back:
		return "the " + f.String()
	case Left, Right:
		return "the " + f.String() + " edge"
	}
	return "the " + f.String() + " end or edge"
}

// Turned tells whether the part's X or Y runs to the left as one looks down on
// the face: the file shows the part turned over on purpose.
func (f Face) Turned() bool { return f == Back || f == Left || f == Bottom }

// axis is the direction the face looks along.
func (f Face) axis() solid.Axis {
	return [...]solid.Axis{solid.Y, solid.Y, solid.X, solid.X, solid.Z, solid.Z}[f]
}

// faceAt is the face at one end of an axis.
func faceAt(a solid.Axis, high bool) Face {
	f := map[solid.Axis]Face{solid.X: Left, solid.Y: Front, solid.Z: Bottom}[a]
	if high {
		f++
	}
	return f
}

// A view is how a face of a blank is looked down on.
type view struct {
	face        Face
	least, most solid.Vec // corners of the blank
}

// setup is the setup of the face without any contour.
func (v view) setup() Setup {
	low, high := v.least.Flat(v.face.axis()), v.most.Flat(v.face.axis())
	return Setup{Face: v.face, Width: high.X - low.X, Height: high.Y - low.Y, Thickness: v.most.Along(v.face.axis()) - v.least.Along(v.face.axis())}
}

// at is a point flat along the face's axis, as it is seen.
func (v view) at(p plane.Point) plane.Point {
	low, high := v.least.Flat(v.face.axis()), v.most.Flat(v.face.axis())
	switch {
	case !v.face.Turned():
		return plane.At(p.X-low.X, p.Y-low.Y)
	case v.face == Bottom: // X stays, Y turns
		return plane.At(p.X-low.X, high.Y-p.Y)
	}
	return plane.At(high.X-p.X, p.Y-low.Y)
}

// seen is a region flat along the face's axis, as it is seen.
func (v view) seen(r plane.Region) plane.Region { return r.Map(v.at, v.face.Turned()) }
