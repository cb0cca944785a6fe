package door

import (
	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// A Leaf is the design of one leaf, in its own frame.
type Leaf struct {
	Width, Height, Thickness length.Length
	Stile                    length.Length // width of a stile
	Rails                    []Rail        // from the bottom up
	Muntins                  []Muntin      // row by row from the bottom up, from the left in each
	Columns                  int           // lites side by side
	Lites                    []Lite        // row by row from the bottom up, from the left in each
	Parts                    []Part        // stiles, rails, muntins, panels
	Hardware                 []Part        // what joins the frame and holds the panels: washers, dowels, loose tenons, plugs, stops, beads, sealant
	Screws                   []Screw       // pocket screws, washer screws, pins and screws of stops, hangers' screws
	Meetings                 []Meeting     // where rails end at stiles, and muntins at rails
	Joint                    Joint
	Rabbet                   Rabbet
	Panel                    Panel  // the sheet of every lite that is not a solid one's
	SolidPanel               *Panel // the other sheet; nil when there is none
	Corner                   Corner
	HeldBy                   string        // "edge-washer", "stop", "sealant", "bead"; empty for a captive panel, put in before assembly
	Washer                   Washer        // zero unless washers hold the panels
	Strip                    Strip         // zero unless stops or beads do
	SolidStrip               *Strip        // those of the solid panel, where it is of another thickness
	Bed                      length.Length // of sealant between shoulder and panel; 0 for none
	Edges                    []Edge
	Pulls                    []Pull
	Guide                    *Guide // nil when there is none
	Hanger                   Hanger
	Mass                     float64 // kg: wood, panels, dowels, tenons, strips
}

// PanelOf is the sheet in a lite.
func (l Leaf) PanelOf(lite Lite) Panel {
	if lite.Solid && l.SolidPanel != nil {
		return *l.SolidPanel
	}
	return l.Panel
}

// panels are the leaf's sheets: the panel and, where there is one, the solid one.
func (l *Leaf) panels() []*Panel {
	if l.SolidPanel == nil {
		return []*Panel{&l.Panel}
	}
	return []*Panel{&l.Panel, l.SolidPanel}
}

// WasherDepth is how far from the frame's front the holes of a lite's washers
// are bored.
func (l Leaf) WasherDepth(lite Lite) length.Length {
	if lite.Solid {
		return l.Washer.SolidDepth
	}
	return l.Washer.Depth
}

// StripOf is the stops or beads of a lite.
func (l Leaf) StripOf(lite Lite) Strip {
	if lite.Solid && l.SolidStrip != nil {
		return *l.SolidStrip
	}
	return l.Strip
}

// muntinOn tells whether a muntin stands on a side of a lite.
func (l *Leaf) muntinOn(lite Lite, side Side) bool {
	return side == Left && lite.Column > 0 || side == Right && lite.Column < l.Columns-1
}

// Rows is how many lites stand one above another.
func (l Leaf) Rows() int { return len(l.Rails) - 1 }

// Lite is the lite in a row, counted from the bottom, and a column, counted
// from the left, both from 0.
func (l Leaf) Lite(row, column int) Lite { return l.Lites[row*l.Columns+column] }

// A Rail is one horizontal member's place.
type Rail struct {
	Label    string
	From, To length.Length // heights above the leaf's bottom
}

// Centre is the height of the rail's middle.
func (r Rail) Centre() length.Length { return r.From + (r.To - r.From).Half() }

// Width is the rail's width across its face.
func (r Rail) Width() length.Length { return r.To - r.From }

// A Muntin is one upright member's place between two lites.
type Muntin struct {
	Label    string
	Row      int           // of lites, from 0 at the bottom
	From, To length.Length // across, from the leaf's left
}

// Centre is the middle of the muntin, from the leaf's left.
func (m Muntin) Centre() length.Length { return m.From + (m.To - m.From).Half() }

// Width is the muntin's width across its face.
func (m Muntin) Width() length.Length { return m.To - m.From }

// A Side is one of the four sides of a lite.
type Side int

// The sides.
const (
	Bottom Side = iota
	Top
	Left
	Right
)

// String is the side's word.
func (s Side) String() string { return [...]string{"bottom", "top", "left", "right"}[s] }

// A Lite is one framed hole of a leaf, seen from the front: X across, Y up.
type Lite struct {
	Row, Column int                // from 0 at the bottom and at the left
	Solid       bool               // the leaf's solid panel fills it
	Sight       plane.Box          // what one sees through
	Rabbet      plane.Region       // outline of the rabbet's or groove's walls
	Panel       plane.Region       // outline of the panel
	Washers     [4][]length.Length // by Side: middles of its edge washers, across or up in the leaf
	Fixings     [4][]length.Length // by Side: where pins or screws go through its stops or beads
}

// A Role is what a part is in the leaf.
type Role int

// The roles.
const (
	StileRole Role = iota
	RailRole
	MuntinRole
	PanelRole
	WasherRole
	DowelRole
	TenonRole // a loose tenon
	PlugRole
	StopRole
	BeadRole
	SealantRole
)

// String is the role's word.
func (r Role) String() string {
	return [...]string{"stile", "rail", "muntin", "panel", "edge washer", "dowel", "loose tenon", "plug", "stop", "bead", "sealant"}[r]
}

// A Part is one piece of a leaf: its solid in the leaf's frame.
type Part struct {
	Label    string // "SL", "R1": unique in the leaf
	Name     string // "left stile", "bottom rail"
	Role     Role
	Material string
	Grain    solid.Axis // along which a wooden part's grain runs
	Solid    solid.Solid
	Volume   float64 // mm³
	Mass     float64 // kg
}

// A Screw is a driven screw or pin: the centre of its head's underside, and its
// tip.
type Screw struct {
	Head, Tip solid.Vec
	Diameter  length.Length
	For       string // "pocket", "washer", "stop", "hanger"
}

// The kinds of joints.
const (
	PocketScrew     = "pocket-screw"
	DowelJoint      = "dowel"
	LooseTenon      = "loose-tenon"
	MortiseAndTenon = "mortise-and-tenon"
	HalfLap         = "half-lap"
	Bridle          = "bridle"
)

// A Joint is how the frame is joined. Of the sizes only those of the kinds that
// occur are set.
type Joint struct {
	Kind        string        // of rails into stiles
	Muntin      string        // of muntins into rails; empty without muntins
	Reach       length.Length // how far the joint takes up a rail's edge from its shoulder: washers keep clear of it
	MuntinReach length.Length // the same of a muntin's edge
	Pocket      Pocket
	Dowel       Dowel
	Tenon       Tenon
	Lap         Lap
}

// A Meeting is one end of a rail at a stile, or of a muntin at a rail.
type Meeting struct {
	Member, Into string        // labels of the part that ends and of the one it ends at
	Kind         string        // of joint
	Axis         solid.Axis    // along which the member runs: X of a rail, Z of a muntin
	At           length.Length // the shoulder: coordinate on Axis of the other part's edge
	Way          length.Length // +1 or -1: from the shoulder into the member
	From, To     length.Length // the member's extent across: Z of a rail, X of a muntin
	Low, High    length.Length // what the panel's seat takes of the member at From and at To; 0 at a free edge
	Deep         length.Length // width of the other part
	Opposite     bool          // another member ends at the same place of the other part's other edge
}

// A Dowel is the dowel joint.
type Dowel struct {
	Diameter, Length length.Length
	Hole             length.Length // depth of each hole: half the dowel and a little
	PerEnd           []int         // by rail from the bottom up; empty when rails are not dowelled
	MuntinPerEnd     int           // 0 when muntins are not dowelled
	Count            int           // in the whole leaf
}

// A Tenon is the tenon joint, loose or not.
type Tenon struct {
	Thickness     length.Length
	Front         length.Length   // from the frame's front to the tenon
	Length        length.Length   // of a rail's beyond the shoulder; of a loose tenon, in each part
	Mortise       length.Length   // depth of the blind mortise; of a through one the other part's width
	Width         []length.Length // by rail from the bottom up; empty when rails have no tenons
	Edge          length.Length   // shoulder at the free edge of bottom and top rail
	Haunch        length.Length   // length of the haunch; 0 for none
	Through       bool
	MuntinLength  length.Length // of a muntin's tenon beyond its shoulder; of a loose one, in each part
	MuntinMortise length.Length // depth of its mortise
	MuntinWidth   length.Length
	Count         int // loose tenons in the whole leaf
}

// A Lap is the half-lap or bridle joint: what lies in front of and behind what.
type Lap struct {
	Front length.Length // half-lap: what the stile keeps, from the frame's front
	From  length.Length // bridle: the tenon's or web's front
	To    length.Length // and back, from the frame's front
}

// The kinds of seats.
const (
	BackRabbet = "rabbet"
	Groove     = "groove"
	FaceBead   = "face-bead"
)

// A Rabbet is the panel's seat: a rabbet from the back or, with a face bead,
// from the front, or a groove.
type Rabbet struct {
	Kind     string        // BackRabbet, Groove, FaceBead
	Width    length.Length // from the lite's edge to the wall; a groove's depth
	Depth    length.Length // from the open face to the shoulder; a groove's width, front to back
	From, To length.Length // what is milled away, from the frame's front face; of a groove, for the panel that is not a solid one
	Front    length.Length // wood left in front of the panel's seat; 0 with a face bead
	Back     length.Length // wood left behind it; 0 of a rabbet from the back
	Cutter   length.Length // diameter; 0 of a groove
	Corner   length.Length // radius left at inside corners; 0 when squared or relieved
	Passes   []length.Length
	Ends     length.Length // what a stopped groove runs beyond its walls: half its width, the bit's round end
	Through  bool          // a groove that runs the stiles' whole length
}

// A Panel is the sheet of some lites.
type Panel struct {
	Material  catalog.SheetMaterial
	Thickness length.Length
	From      length.Length // its front face, from the frame's front face
	SeatFrom  length.Length // what is milled away for it, front
	SeatTo    length.Length // and back
	EdgeGap   length.Length
	Bite      length.Length // panel centred
	LeastBite length.Length // panel pushed to one side
	Film      string        // "front", "back" or empty
}

// To is the panel's back face, from the frame's front face.
func (p Panel) To() length.Length { return p.From + p.Thickness }

// A Corner is what is done about the round inside corner.
type Corner struct {
	Kind   string        // "clipped", "squared", "rounded", "dogbone", "t-bone"; empty of a groove with square panels
	Leg    length.Length // of the clip; 0 when not clipped
	Radius length.Length // of the panel's corner; 0 when not rounded
	Least  length.Length // smallest leg or radius that clears
	Tool   length.Length // diameter of the machine's tool; 0 for the others
	Into   string        // wall a t-bone runs into: "stile" or "rail"
}

// A Washer is the edge washers of a leaf.
type Washer struct {
	Outside, Hole, Thickness length.Length
	Screw                    catalog.WoodScrew
	Length                   length.Length // of its screw
	Depth                    length.Length // hole centre from the frame's front face
	SolidDepth               length.Length // the same at solid panels
	Press                    length.Length
	Lap, LeastLap            length.Length // on the panel: centred, and pushed away
	Stagger                  bool          // those on the two sides of a cross rail or muntin stand between one another
}

// A Strip is the stops or beads of a leaf.
type Strip struct {
	Width, Depth length.Length
	From         length.Length // its front face, from the frame's front face
	Fix          string        // "pins" or "screws"
	Spacing      length.Length
	Length       length.Length // of a pin or screw
	Diameter     length.Length
	Screw        catalog.WoodScrew // zero for pins
	Proud        length.Length     // what stands out of the frame's face; 0 when flush
}

// A Pocket is the pocket-screw joint.
type Pocket struct {
	PerEnd       []int         // holes at each end, by rail from the bottom up; empty when rails have none
	MuntinPerEnd int           // 0 when muntins have none
	Holes        int           // in the whole leaf
	Screw        length.Length // length
	Angle        float64       // degrees to the face
	Diameter     length.Length
	Shoulder     length.Length // along the screw from the rail's end to the pocket's flat floor: what the stop collar is set to
	Reach        length.Length // along the rail from its end to the far end of the pocket's mouth
	Bite         length.Length // of the screw, square into the stile
	Tip          length.Length // tip's distance from the frame's front face
	Plugs        bool          // every pocket is filled flush with the back; the plugs are counted, no parts
	Plug         length.Length // least length of a plug along the pocket; 0 without
}

// An Edge is a worked edge of the frame.
type Edge struct {
	Sight bool          // round each lite; else the stiles' outer edges
	Back  bool          // of the back face; else of the front
	Round bool          // a roundover; else a chamfer
	Size  length.Length // radius, or how far into both faces
	Stop  length.Length // short of the lite's corners
}

// A Pull is a mortise for a flush pull.
type Pull struct {
	Label         string // of the part it is let into
	Back          bool   // in the back face
	Centre        plane.Point
	Width, Height length.Length // both the diameter of a round one
	Round         bool
	Radius        length.Length // of a rectangular one's corners
	Depth, Rim    length.Length
}

// A Hanger is the screws of a hanger. Their places along the leaf's top are in
// Leaf.Screws; the hangers' middles are the track's HangerAt.
type Hanger struct {
	Screw  catalog.WoodScrew
	Length length.Length // of the screw in the wood
	Apart  length.Length // between its two screws; 0 for one screw
	Pilot  length.Length // diameter of the bore
}

// A Guide is the floor guide's groove along the leaf's bottom.
type Guide struct {
	Width, Depth, Front length.Length
}
