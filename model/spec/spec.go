package spec

import "stilewright/model/length"

// A Spec is a model as written: nil pointers and empty texts are what the
// writer left to the defaults. Field tags carry what the reader and the JSON
// Schema need: the key, the meaning, and the range of a size in millimetres
// ("above" excludes the bound, "least" and "most" include it). Type field
// lists all tags.
type Spec struct {
	Job      string `key:"job" doc:"what the doors are for; stands in the title block" need:"yes"`
	Drawn    string `key:"drawn" doc:"date of the drawing, YYYY-MM-DD; stands in the title block" form:"date"`
	By       string `key:"by" doc:"who drew it"`
	Revision string `key:"revision" doc:"revision letter or number"`
	Units    Unit   `key:"units" doc:"unit of bare numbers and of every figure on the drawings" need:"yes" choice:"inch millimetre"`
	Figures  string `key:"figures" doc:"how sizes are written on the drawings; fraction: inches and binary fractions, decimal: decimal inches, dual: the other unit in brackets behind" choice:"fraction decimal dual"`
	Paper    string `key:"paper" doc:"sheet size" choice:"A4 A3 A2 A1 letter tabloid ansi-c ansi-d arch-b arch-c arch-d"`

	Opening Opening `key:"opening" doc:"the finished hole the doors fill, as measured" need:"yes"`
	Hanging Hanging `key:"hanging" doc:"how the leaves hang and how they share the opening" need:"yes"`
	Leaf    Leaf    `key:"leaf" doc:"the frame of a leaf" need:"yes"`
	Panel   Panel   `key:"panel" doc:"the sheet that fills a lite, and its seat" need:"yes"`
	Stock   Stock   `key:"stock" doc:"the boards the frame is made from"`
	Seasons Seasons `key:"seasons" doc:"the air of the room through the year, which wood and sheets move with"`
	Shop    *Shop   `key:"shop" doc:"files for a CNC router or a laser, and what the shop can do"`

	file  string
	where positions
}

// Opening is the hole as measured.
type Opening struct {
	Width  Widths  `key:"width" doc:"clear width between the jambs at three heights, or one size for all" need:"yes" one:"all"`
	Height Heights `key:"height" doc:"clear height from floor to head at three places, or one size for all" need:"yes" one:"all"`
	Plumb  Plumb   `key:"plumb" doc:"how far the top of each jamb stands to the right of its foot; to the left is negative"`
}

// Widths are clear widths of the opening. A single size stands for all three.
type Widths struct {
	Bottom *length.Length `key:"bottom" doc:"at the floor" need:"yes" least:"200" most:"12000"`
	Middle *length.Length `key:"middle" doc:"half-way up" least:"200" most:"12000"`
	Top    *length.Length `key:"top" doc:"at the head" need:"yes" least:"200" most:"12000"`
}

// Heights are clear heights of the opening. A single size stands for all three.
type Heights struct {
	Left   *length.Length `key:"left" doc:"at the left jamb" need:"yes" least:"300" most:"4000"`
	Middle *length.Length `key:"middle" doc:"half-way across" least:"300" most:"4000"`
	Right  *length.Length `key:"right" doc:"at the right jamb" need:"yes" least:"300" most:"4000"`
}

// Plumb is how far each jamb leans.
type Plumb struct {
	Left  *length.Length `key:"left" doc:"top of the left jamb, to the right of its foot" least:"-150" most:"150"`
	Right *length.Length `key:"right" doc:"top of the right jamb, to the right of its foot" least:"-150" most:"150"`
}

// Hanging is how the leaves hang.
type Hanging struct {
	Style      string         `key:"style" doc:"bypass: leaves pass one another on two tracks" choice:"bypass" need:"yes"`
	Tracks     []string       `key:"tracks" doc:"the track of each leaf, left to right" choice:"front back" need:"yes" count:"2 4"`
	Overlap    Overlap        `key:"overlap" doc:"how far neighbouring leaves cover one another when closed: a size, or 'stile' for one whole stile" form:"overlap" least:"0" most:"1000"`
	MeetingGap *length.Length `key:"meeting_gap" doc:"between neighbouring leaves on the same track when closed" least:"0" most:"50"`
	JambGap    JambGap        `key:"jamb_gap" doc:"left free between the outer leaves and the jambs when closed"`
	FloorGap   *length.Length `key:"floor_gap" doc:"least distance from the leaf's bottom to the floor" above:"0" most:"100"`
	Track      Track          `key:"track" doc:"the track: a catalogue row, with any size replaced by your own; the name alone will do" one:"row"`
	Fascia     *Fascia        `key:"fascia" doc:"the trim that hides the track"`
	Header     Header         `key:"header" doc:"what the track is screwed to"`
	Fixing     Fixing         `key:"fixing" doc:"the screws that hold the track to the header"`
	Hangers    Hangers        `key:"hangers" doc:"the two hangers on each leaf's top"`
}

// Overlap is a size, or one whole stile. The zero Overlap is the default.
type Overlap struct {
	Size  *length.Length
	Stile bool
}

// JambGap is what is left free at each jamb.
type JambGap struct {
	Left  *length.Length `key:"left" doc:"at the left jamb" least:"0" most:"50"`
	Right *length.Length `key:"right" doc:"at the right jamb" least:"0" most:"50"`
}

// Track is a catalogue row with sizes replaced. A single word is the row.
type Track struct {
	Row      string         `key:"row" doc:"name of the catalogue row" form:"track-row"`
	Spacing  *length.Length `key:"spacing" doc:"centre to centre of the two channels" above:"0" most:"150"`
	HeadDrop *length.Length `key:"head_drop" doc:"from the head of the opening to the top of a hung leaf" above:"0" most:"300"`
	Height   *length.Length `key:"height" doc:"of the track's section" above:"0" most:"150"`
	Depth    *length.Length `key:"depth" doc:"of the track's section, front to back" above:"0" most:"300"`
	Setback  *length.Length `key:"setback" doc:"from the front of the opening to the front of the track" least:"0" most:"300"`
}

// Hangers are the two hangers of a leaf.
type Hangers struct {
	Inset *length.Length `key:"inset" doc:"from the leaf's side to the middle of its hanger" above:"0" most:"1500"`
	Apart *length.Length `key:"apart" doc:"between the two screws of a hanger, along the leaf's top" least:"0" most:"200"`
	Screw Screw          `key:"screw" doc:"the screw that goes down into the leaf's top"`
}

// Fascia is the trim that hides the track.
type Fascia struct {
	Height    *length.Length `key:"height" doc:"face height" above:"0" most:"300" need:"yes"`
	Thickness *length.Length `key:"thickness" doc:"front to back" above:"0" most:"50" need:"yes"`
}

// A Unit is the unit word of a model. It is the length package's Unit, told
// apart from "not written".
type Unit struct {
	length.Unit
	Written bool
}
