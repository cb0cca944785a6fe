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

// A Leaf is the design of one leaf, in its own frame.
type Leaf struct {
	Width, Height, Thickness length.Length
	Stile                    length.Length // width of a stile
	Rails                    []Rail        // from the bottom up
	Lites                    []Lite        // from the bottom up
	Parts                    []Part        // stiles, rails, panels
	Hardware                 []Part        // washers
	Screws                   []Screw       // pocket screws and washer screws
	Rabbet                   Rabbet
	Panel                    Panel
	Corner                   Corner
	Washer                   Washer
	Pocket                   Pocket
	Mass                     float64 // kg: wood and panels
}

// A Rail is one horizontal member's place.
type Rail struct {
	Label    string
	From, To length.Length // heights above the leaf's bottom
}

// Centre is the height of the rail's middle.
func (r Rail) Centre() length.Length { return r.From + (r.To - r.From).Half() }

// Width is the rail's width across its face.
func (r Rail) Width() length.Length { return r.To - r.From }

// A Lite is one framed hole of a leaf, seen from the front: X across, Y up.
type Lite struct {
	Sight  plane.Box    // what one sees through
	Rabbet plane.Region // outline of the rabbet's walls
	Panel  plane.Region // outline of the panel
}

// A Role is what a part is in the leaf.
type Role int

// The roles.
const (
	StileRole Role = iota
	RailRole
	PanelRole
	WasherRole
)

// String is the role's word.
func (r Role) String() string { return [...]string{"stile", "rail", "panel", "edge washer"}[r] }

// A Part is one piece of a leaf: its solid in the leaf's frame.
type Part struct {
	Label    string // "SL", "R1": unique in the leaf
	Name     string // "left stile", "bottom rail"
	Role     Role
	Material string
	Solid    solid.Solid
	Volume   float64 // mm³
	Mass     float64 // kg
}

// A Screw is a driven screw: the centre of its head's underside, and its tip.
type Screw struct {
	Head, Tip solid.Vec
	Diameter  length.Length
	For       string // "pocket", "washer"
}

// A Rabbet is the panel's seat.
type Rabbet struct {
	Width, Depth length.Length
	Front        length.Length // wood left in front of the shoulder
	Cutter       length.Length // diameter
	Corner       length.Length // radius left at inside corners; 0 when squared
	Passes       []length.Length
}

// A Panel is the sheet in every lite.
type Panel struct {
	Material  catalog.SheetMaterial
	Thickness length.Length
	EdgeGap   length.Length
	Bite      length.Length // panel centred
	LeastBite length.Length // panel pushed to one side
}

// A Corner is what is done about the round inside corner.
type Corner struct {
	Kind   string        // "clipped", "squared", "rounded"
	Leg    length.Length // of the clip; 0 when not clipped
	Radius length.Length // of the panel's corner; 0 when not rounded
	Least  length.Length // smallest leg or radius that clears
}

// A Washer is the edge washers of a leaf.
type Washer struct {
	Outside, Hole, Thickness length.Length
	Screw                    catalog.WoodScrew
	Length                   length.Length // of its screw
	Depth                    length.Length // hole centre from the frame's front face
	Press                    length.Length
	Lap, LeastLap            length.Length   // on the panel: centred, and pushed away
	Up, Across               []length.Length // hole places: along a stile edge from a lite's foot, along a rail edge from its left
	Each                     int             // washers in one lite of the first row
}

// A Pocket is the pocket-screw joint.
type Pocket struct {
	PerEnd   []int         // holes at each end, by rail from the bottom up
	Holes    int           // in the whole leaf
	Screw    length.Length // length
	Angle    float64       // degrees to the face
	Diameter length.Length
	Shoulder length.Length // along the screw from the rail's end to the pocket's flat floor: what the stop collar is set to
	Reach    length.Length // along the rail from its end to the far end of the pocket's mouth
	Bite     length.Length // of the screw, square into the stile
	Tip      length.Length // tip's distance from the frame's front face
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
