package door

import (
	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// A Set is the resolved doors of one opening. Nothing in it is changed after
// Resolve has returned it.
type Set struct {
	Job, Drawn, By, Revision string
	Units                    length.Unit
	Paper                    string // as asked for; empty for the default of the units
	Written                  string // how sizes are written on drawings: "decimal", "dual", or empty for fractions or millimetres

	Opening Opening
	Track   Track
	Fascia  *Fascia // nil when there is none
	Leaf    Leaf    // the design all leaves share
	Hung    []Hung  // the leaves in their closed places, left to right
	Stock   Stock

	Figures []Figure // every resolved length, in the order it was resolved
}

// An Opening is the measured hole in the set's frame.
type Opening struct {
	// Left and Right are points of each jamb from floor to head: X across, Y up.
	Left, Right []plane.Point
	// Floor are points of the floor from left to right. The highest is at 0.
	Floor []plane.Point
	// Head is the height of the head above the highest point of the floor. The
	// head counts as level: what heights differ by is laid to the floor.
	Head length.Length
	// Width and Height are the least usable ones: what a plumb leaf set can fill.
	Width, Height length.Length
}

// Overlaps is how many neighbours hang on different tracks and so overlap when
// closed.
func (s Set) Overlaps() int {
	n := 0
	for i := 1; i < len(s.Hung); i++ {
		if s.Hung[i].Channel != s.Hung[i-1].Channel {
			n++
		}
	}
	return n
}

// FloorAt is the floor's height at x, between the measured points straight.
func (o Opening) FloorAt(x length.Length) length.Length {
	for i := 1; i < len(o.Floor); i++ {
		a, b := o.Floor[i-1], o.Floor[i]
		if x <= b.X || i == len(o.Floor)-1 {
			return between(a.X, a.Y, b.X, b.Y, x)
		}
	}
	return 0
}

// A Channel is the track a leaf hangs on.
type Channel int

// The channels.
const (
	Front Channel = iota
	Back
)

// String is the channel's word in a model.
func (c Channel) String() string {
	if c == Back {
		return "back"
	}
	return "front"
}

// A Hung is one leaf in its closed place.
type Hung struct {
	Label   string // "1" is the leftmost
	Channel Channel
	At      solid.Vec // of the leaf's origin in the set's frame
}

// A Track is the resolved two-channel track.
type Track struct {
	Row              string
	Spacing          length.Length // centre to centre of the channels
	HeadDrop         length.Length // head of the opening to top of a hung leaf
	Height, Depth    length.Length // of the section
	Setback          length.Length // front of the opening to front of the track
	Length           length.Length // cut length
	Adjust           length.Length // hangers raise or lower a leaf by this much
	Centre           [2]length.Length
	FaceGap          length.Length
	Solid            solid.Solid // in the set's frame
	HangerAt         [2]length.Length
	Hanger           []solid.Solid // one hanger, its middle at X 0, Y 0, on a leaf top at Z 0
	ReachesAboveLeaf length.Length
}

// A Fascia is the trim that hides the track.
type Fascia struct {
	Height, Thickness length.Length
	Solid             solid.Solid // in the set's frame
}

// A Stock is what the frame is made from, step by step.
type Stock struct {
	Species catalog.Wood
	Board   string // nominal size as sold; empty when the model names none
	Dressed catalog.Section
	Plane   length.Length // off each face
	Rip     length.Length // off each edge
}

// between is the height at x of the straight line from (x0, y0) to (x1, y1),
// rounded to the nanometre.
func between(x0, y0, x1, y1, x length.Length) length.Length {
	if x1 == x0 {
		return y0
	}
	part := float64(x-x0) / float64(x1-x0)
	return y0 + length.Round(float64((y1-y0).MM()*part))
}
