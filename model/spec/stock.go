package spec

import "stilewright/model/length"

// Stock is what the frame and its panels are made from, and what there is to
// cut it from. What is bought and how it is cut follows from it; prices stand
// in a file of their own.
type Stock struct {
	Species string         `key:"species" doc:"of the wood" form:"species"`
	Grain   string         `key:"grain" doc:"how the boards are sawn: flat moves more across its width than quarter" choice:"flat quarter"`
	Board   string         `key:"board" doc:"nominal size of the boards, as sold: 2x6" form:"board"`
	Season  string         `key:"season" doc:"dry or green when dressed" choice:"dry green"`
	Plane   *length.Length `key:"plane" doc:"planed off each face; 0 for not planed" least:"0" most:"25"`
	Rip     *length.Length `key:"rip" doc:"ripped off each edge; 0 for not ripped" least:"0" most:"50"`

	Also      []string         `key:"also" doc:"other boards to be had, as sold, of the same thickness: a part is cut from the narrowest that gives its width" form:"board" count:"1 8"`
	Lengths   []*length.Length `key:"lengths" doc:"lengths the boards are to be had in" above:"0" most:"20000" count:"1 20"`
	Offcuts   []*length.Length `key:"offcuts" doc:"lengths of the board in hand, used first" above:"0" most:"20000" count:"1 100"`
	Boards    []BoardInHand    `key:"boards" doc:"boards in hand, used first, with their clear spans" count:"1 100"`
	Kerf      *length.Length   `key:"kerf" doc:"width of the saw cut in boards" least:"0" most:"12"`
	Trim      *length.Length   `key:"trim" doc:"cut off each end of a board to square it" least:"0" most:"300"`
	Allowance *length.Length   `key:"allowance" doc:"rough length of a part over its net length" least:"0" most:"300"`
	Keep      *length.Length   `key:"keep" doc:"shortest offcut worth keeping" least:"0" most:"3000"`
	Sheet     SheetStock       `key:"sheet" doc:"the sheets panels are cut from"`
	Film      *Film            `key:"film" doc:"film laid on the panels, from a roll"`
	Finish    Finish           `key:"finish" doc:"what the frame is finished with; one word will do" one:"kind"`
}

// A BoardInHand is a board already owned, which may have defects.
type BoardInHand struct {
	Length *length.Length   `key:"length" doc:"of the board" above:"0" most:"20000" need:"yes"`
	Board  string           `key:"board" doc:"its size as sold; left out, that of stock.board" form:"board"`
	Clear  []*length.Length `key:"clear" doc:"its clear spans between defects, in their order; left out, it is clear from end to end" above:"0" most:"20000" count:"1 20"`
	Count  int              `key:"count" doc:"how many there are" range:"1 1000"`
}

// SheetStock is the sheets panels are cut from; the face that carries film is
// the panel's.
type SheetStock struct {
	Sizes []SheetSize    `key:"sizes" doc:"sizes to be had" count:"1 20"`
	Kerf  *length.Length `key:"kerf" doc:"width of the saw cut in sheets; 0 where they are scored and broken" least:"0" most:"12"`
	Trim  *length.Length `key:"trim" doc:"cut off along every edge of a sheet" least:"0" most:"100"`
	Keep  *length.Length `key:"keep" doc:"shorter side of the smallest offcut worth keeping" least:"0" most:"2000"`
	Grain string         `key:"grain" doc:"how the sheet's height must lie on a panel: up its height, across its width, or none: either way" choice:"up across none"`
}

// A SheetSize is a sheet to be had, or in hand.
type SheetSize struct {
	Width  *length.Length `key:"width" doc:"of the sheet" above:"0" most:"10000" need:"yes"`
	Height *length.Length `key:"height" doc:"of the sheet; grain and film run along it" above:"0" most:"10000" need:"yes"`
	Count  int            `key:"in_hand" doc:"how many are in hand and used first; left out, it is bought" range:"1 1000"`
}

// Film is film or paper laid on panels, from a roll.
type Film struct {
	Width     *length.Length `key:"width" doc:"of the roll" above:"0" most:"5000" need:"yes"`
	Length    *length.Length `key:"length" doc:"of film on one roll" above:"0" most:"100000"`
	Direction string         `key:"direction" doc:"how the roll's length lies on a panel" choice:"up across either"`
	Overlap   *length.Length `key:"overlap" doc:"of neighbouring strips on a panel wider than the roll" least:"0" most:"200"`
	Margin    *length.Length `key:"margin" doc:"over the panel at each edge, to be trimmed on it" least:"0" most:"200"`
	Side      string         `key:"side" doc:"side of the panel it is laid on" choice:"front back both"`
}

// Finish is what the frame is finished with. A single word is the kind.
type Finish struct {
	Kind  string `key:"kind" doc:"paint: over a primer; clear: a clear finish; none" choice:"paint clear none"`
	Coats int    `key:"coats" doc:"coats of it, the primer's not counted" range:"1 8"`
}
