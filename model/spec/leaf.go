package spec

import "stilewright/model/length"

// Leaf is the frame of every leaf of the set.
type Leaf struct {
	Width     *length.Length   `key:"width" doc:"of every leaf; left out, it follows from opening and overlap" least:"100" most:"3000"`
	Height    *length.Length   `key:"height" doc:"of every leaf; left out, it follows from opening, head drop and floor gap" least:"200" most:"4000"`
	Thickness *length.Length   `key:"thickness" doc:"finished thickness of the frame; left out, it follows from the stock" least:"12" most:"80"`
	Stile     *length.Length   `key:"stile" doc:"width of the stiles across the face; left out, it follows from the stock" least:"20" most:"400"`
	Rail      Rails            `key:"rail" doc:"widths of the rails across the face, or one size for all; left out, they follow from the stock" one:"all"`
	Crosses   []*length.Length `key:"crosses" doc:"widths of the cross rails one by one from the bottom up, in place of rail.cross: a wide one for a pull" least:"20" most:"600" count:"1 19"`
	Muntin    *length.Length   `key:"muntin" doc:"width of the muntins across the face; left out, half a stile" least:"12" most:"400"`
	Lites     Lites            `key:"lites" doc:"how the leaf is divided"`
	Joint     Joint            `key:"joint" doc:"how rails are joined to stiles, and muntins to rails; one word will do" one:"kind"`
	Edges     []Edge           `key:"edges" doc:"edges of the frame that are rounded or chamfered" count:"1 8"`
	Pull      *Pull            `key:"pull" doc:"the flush pull let into the frame"`
	Guide     *Guide           `key:"guide" doc:"the groove in the leaf's bottom that the floor guide runs in"`
}

// Rails are the widths of the rails. A single size stands for all.
type Rails struct {
	Top    *length.Length `key:"top" doc:"top rail" least:"20" most:"600"`
	Cross  *length.Length `key:"cross" doc:"every cross rail" least:"20" most:"600"`
	Bottom *length.Length `key:"bottom" doc:"bottom rail" least:"20" most:"600"`
}

// Lites tells how a leaf is divided.
type Lites struct {
	Rows    int     `key:"rows" doc:"lites one above another; left out, as many as heights or crosses tell" range:"1 20"`
	Columns int     `key:"columns" doc:"lites side by side, with muntins between; left out, as many as widths tell" range:"1 12"`
	Spacing string  `key:"spacing" doc:"of the rails; equal-lites: all lites the same height; equal-centres: rail centres evenly apart" choice:"equal-lites equal-centres"`
	Across  string  `key:"across" doc:"of the muntins; equal-lites: all lites the same width; equal-centres: centres of stiles and muntins evenly apart" choice:"equal-lites equal-centres"`
	Heights []Sight `key:"heights" doc:"sight heights from the bottom up, one a row; 'rest' shares what the others leave" above:"0" most:"4000" count:"1 20"`
	Widths  []Sight `key:"widths" doc:"sight widths from the left, one a column; 'rest' shares what the others leave" above:"0" most:"3000" count:"1 12"`
}

// Sight is the sight size of a lite along one direction: a size, or an equal
// share of what the stated ones leave.
type Sight struct {
	Size *length.Length
	Rest bool
}

// Joint is how the frame is joined.
type Joint struct {
	Kind        string         `key:"kind" doc:"pocket-screw: screws from the back of the rail into the stile; dowel; loose-tenon: a tenon of its own in mortises of both; mortise-and-tenon; half-lap: each half as thick; bridle: an open mortise and tenon" choice:"pocket-screw dowel loose-tenon mortise-and-tenon half-lap bridle" need:"yes"`
	Muntin      string         `key:"muntin" doc:"how muntins are joined to rails, where not as the rails are" choice:"pocket-screw dowel loose-tenon mortise-and-tenon half-lap"`
	HolesPerEnd int            `key:"holes_per_end" doc:"pocket holes or dowels at each rail end; left out, it follows from the rail's width" range:"1 8"`
	Screw       *length.Length `key:"screw" doc:"length of the pocket screw; left out, it follows from the thickness" least:"15" most:"120"`
	Plugs       string         `key:"plugs" doc:"yes: pocket holes are plugged, where the back is seen" choice:"yes no"`
	Dowel       Dowel          `key:"dowel" doc:"sizes of the dowels"`
	Tenon       Tenon          `key:"tenon" doc:"sizes of the tenons, loose or not"`
	Lap         *length.Length `key:"lap" doc:"half-lap: thickness the stile keeps in front, where not half of it" above:"0" most:"79"`
}

// Dowel is the sizes of the dowels.
type Dowel struct {
	Diameter *length.Length `key:"diameter" doc:"left out, it follows from the thickness" least:"4" most:"25"`
	Length   *length.Length `key:"length" doc:"left out, five diameters" least:"12" most:"200"`
}

// Tenon is the sizes of the tenons.
type Tenon struct {
	Thickness *length.Length `key:"thickness" doc:"front to back; left out, a third of the frame's" least:"3" most:"40"`
	Length    *length.Length `key:"length" doc:"beyond the shoulder; of a loose tenon, in each part" least:"6" most:"400"`
	Width     *length.Length `key:"width" doc:"across the face, of a loose tenon" least:"6" most:"400"`
	Front     *length.Length `key:"front" doc:"front shoulder: from the frame's front to the tenon; left out, the tenon is centred" above:"0" most:"70"`
	Edge      *length.Length `key:"edge" doc:"shoulder at the free edge of bottom and top rail" least:"0" most:"200"`
	Through   string         `key:"through" doc:"yes: tenons go through the stile and show at its edge" choice:"yes no"`
	Haunch    string         `key:"haunch" doc:"yes: a short step of the tenon fills the groove, or keeps the rail's edge from twisting; left out, where the panel's groove runs through" choice:"yes no"`
}

// Edge is a worked edge of the frame.
type Edge struct {
	Edge  string         `key:"edge" doc:"outside: the stiles' outer edges; sight: round each lite, stopped before its corners" choice:"outside sight" need:"yes"`
	Face  string         `key:"face" doc:"front, back, or both" choice:"front back both" need:"yes"`
	Shape string         `key:"shape" doc:"roundover: a quarter of a circle; chamfer: at 45 degrees" choice:"roundover chamfer" need:"yes"`
	Size  *length.Length `key:"size" doc:"radius of the roundover, or how far the chamfer goes into both faces" need:"yes" above:"0" most:"40"`
	Stop  *length.Length `key:"stop" doc:"sight edges: how far short of the lite's corners it stops" least:"0" most:"300"`
}

// Pull is the flush pull.
type Pull struct {
	Shape  string         `key:"shape" doc:"round or rectangular" choice:"round rectangular" need:"yes"`
	In     string         `key:"in" doc:"stiles: both stiles; left-stile; right-stile; or the middle of a cross rail" choice:"stiles left-stile right-stile cross-rail"`
	Face   string         `key:"face" doc:"front, back, or both" choice:"front back both"`
	Width  *length.Length `key:"width" doc:"of the mortise across the leaf; of a round one the diameter" need:"yes" least:"10" most:"200"`
	Height *length.Length `key:"height" doc:"of a rectangular mortise" least:"10" most:"400"`
	Depth  *length.Length `key:"depth" doc:"of the mortise" need:"yes" least:"2" most:"60"`
	Radius *length.Length `key:"radius" doc:"of a rectangular mortise's corners: the cutter's" least:"0" most:"60"`
	Rim    *length.Length `key:"rim" doc:"how far the pull stands out of the frame's face" least:"0" most:"20"`
	Up     *length.Length `key:"up" doc:"from the leaf's bottom to the pull's middle" above:"0" most:"3000"`
	Inset  *length.Length `key:"inset" doc:"from the stile's outer edge to the pull's middle; left out, the middle of the stile" above:"0" most:"400"`
}

// Guide is the floor guide's groove.
type Guide struct {
	Width *length.Length `key:"width" doc:"front to back" need:"yes" least:"2" most:"40"`
	Depth *length.Length `key:"depth" doc:"up from the leaf's bottom" need:"yes" least:"3" most:"60"`
	Front *length.Length `key:"front" doc:"from the frame's front to the groove; left out, it is centred" above:"0" most:"70"`
}
