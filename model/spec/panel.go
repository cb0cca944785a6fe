package spec

import "stilewright/model/length"

// Panel is the sheet and its seat.
type Panel struct {
	Material  string         `key:"material" doc:"the sheet" form:"sheet-material" need:"yes"`
	Thickness *length.Length `key:"thickness" doc:"of the sheet" least:"1" most:"30" need:"yes"`
	Seat      string         `key:"seat" doc:"rabbet: a step milled into the frame's back; groove: the panel is captive in a groove and put in before assembly; face-bead: the step opens to the front and a bead holds the panel from there" choice:"rabbet groove face-bead"`
	Rabbet    Rabbet         `key:"rabbet" doc:"the step milled into the frame that the panel lies in"`
	Groove    Groove         `key:"groove" doc:"the groove that holds the panel, instead of a rabbet"`
	Film      string         `key:"film" doc:"face of the sheet that carries film" choice:"front back"`
	Solid     *SolidPanel    `key:"solid" doc:"other sheet in some rows of lites: a wooden panel below glass"`
	EdgeGap   *length.Length `key:"edge_gap" doc:"between panel edge and rabbet wall; left out, it follows from material and size" above:"0" most:"25"`
	Corner    Corner         `key:"corner" doc:"what is done about the round inside corner the cutter leaves; one word will do" one:"kind"`
	HeldBy    HeldBy         `key:"held_by" doc:"what holds the panel in its seat; one word will do. Left out: edge washers in a rabbet, a bead with a face bead, nothing in a groove" one:"kind"`
}

// Rabbet is the panel's seat.
type Rabbet struct {
	Width   *length.Length `key:"width" doc:"from the lite's edge to the rabbet wall" least:"3" most:"60"`
	Depth   *length.Length `key:"depth" doc:"from the open face, which is the back or, with a face bead, the front; left out, it follows from the seat" least:"2" most:"70"`
	Cutter  *length.Length `key:"cutter" doc:"diameter of the bearing-guided cutter; a machine's is panel.corner.tool" least:"3" most:"90"`
	Seat    string         `key:"seat" doc:"centred: the panel lies midway in the frame's thickness; front or back: as far from that face as the key of that name says" choice:"centred front back"`
	Front   *length.Length `key:"front" doc:"from the frame's front to the panel, with seat: front" above:"0" most:"70"`
	Back    *length.Length `key:"back" doc:"from the panel to the frame's back, with seat: back" least:"0" most:"70"`
	PerPass *length.Length `key:"per_pass" doc:"greatest depth cut in one pass, of a groove too" above:"0" most:"30"`
}

// Groove holds the panel all round.
type Groove struct {
	Depth *length.Length `key:"depth" doc:"into the wood, from the lite's edge" least:"3" most:"60"`
	Room  *length.Length `key:"room" doc:"what the groove is wider than the panel is thick" least:"0" most:"4"`
	Front *length.Length `key:"front" doc:"from the frame's front to the groove; left out, it is centred" above:"0" most:"70"`
	Run   string         `key:"run" doc:"in the stiles; through: from end to end; stopped: from lite to lite; left out, through with mortise-and-tenon, else stopped" choice:"through stopped"`
}

// SolidPanel is other sheet in some rows of lites.
type SolidPanel struct {
	Rows      []int          `key:"rows" doc:"the rows of lites, counted from the bottom" range:"1 20" count:"1 20" need:"yes"`
	Material  string         `key:"material" doc:"the sheet" form:"sheet-material" need:"yes"`
	Thickness *length.Length `key:"thickness" doc:"of the sheet" least:"1" most:"40" need:"yes"`
	EdgeGap   *length.Length `key:"edge_gap" doc:"between its edge and the wall; left out, it follows from material and size" above:"0" most:"25"`
}

// Corner is the corner treatment. A single word is the kind.
type Corner struct {
	Kind   string         `key:"kind" doc:"clipped: the panel's corners are cut off; squared: the rabbet's corners are cut square by chisel; rounded: the panel's corners are rounded; dogbone: a machine runs its tool round through each corner; t-bone: it runs past the corner into one wall" choice:"clipped squared rounded dogbone t-bone" need:"yes"`
	Leg    *length.Length `key:"leg" doc:"of the clip, along each edge of the panel; left out, the smallest that clears" above:"0" most:"100"`
	Radius *length.Length `key:"radius" doc:"of the panel's rounded corner; left out, the one that keeps the gap even" above:"0" most:"100"`
	Tool   *length.Length `key:"tool" doc:"diameter of the machine's tool, for dogbone and t-bone" above:"0" most:"40"`
	Into   string         `key:"into" doc:"wall that a t-bone runs into" choice:"stile rail"`
}

// HeldBy is what holds the panel.
type HeldBy struct {
	Kind    string         `key:"kind" doc:"edge-washer: washers on screws driven sideways into the rabbet wall; stop: mitred wooden strips; sealant: a bed of sealant; bead: the face bead" choice:"edge-washer stop sealant bead" need:"yes"`
	Washer  Washer         `key:"washer" doc:"sizes of the washer"`
	Screw   Screw          `key:"screw" doc:"the screw that carries the washer, or goes through the stop or bead"`
	Spacing *length.Length `key:"spacing" doc:"greatest distance between washers along an edge" least:"30" most:"1000"`
	Stagger string         `key:"stagger" doc:"yes: washers on the two sides of a cross rail or muntin stand between one another; no: opposite; left out, where their screws would meet" choice:"yes no"`
	Stop    Stop           `key:"stop" doc:"sizes and fixing of stops and beads"`
	Bed     *length.Length `key:"bed" doc:"thickness of a bed of sealant between shoulder and panel" above:"0" most:"6"`
	Press   *length.Length `key:"press" doc:"how far the washer bears into the sheet's back; more than 0 presses it" least:"0" most:"3"`
}

// Stop is the strips that hold a panel: stops at the back, beads at the front.
type Stop struct {
	Width   *length.Length `key:"width" doc:"across the face; left out, to the lite's edge" least:"4" most:"80"`
	Depth   *length.Length `key:"depth" doc:"front to back; left out, flush with the frame's face" least:"3" most:"80"`
	Fix     string         `key:"fix" doc:"pins or screws, driven through the strip into the wall" choice:"pins screws"`
	Spacing *length.Length `key:"spacing" doc:"greatest distance between pins or screws" least:"20" most:"600"`
	Pin     *length.Length `key:"pin" doc:"length of a pin" least:"6" most:"120"`
}

// Washer is the sizes of a washer.
type Washer struct {
	Outside   *length.Length `key:"outside" doc:"outside diameter" least:"4" most:"60"`
	Hole      *length.Length `key:"hole" doc:"diameter of its hole" above:"0" most:"30"`
	Thickness *length.Length `key:"thickness" doc:"of the washer" above:"0" most:"10"`
}

// Screw is a screw by gauge number and length.
type Screw struct {
	Gauge  int            `key:"gauge" doc:"gauge number" range:"2 14"`
	Length *length.Length `key:"length" doc:"under the head" least:"6" most:"120"`
}
