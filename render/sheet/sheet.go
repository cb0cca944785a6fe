package sheet

import (
	"stilewright/model/length"
	"stilewright/model/plane"
)

// A Sheet is one finished page.
type Sheet struct {
	Name          string // file name stem, ASCII: "2-leaf"
	Title         string
	Description   string        // one or two sentences for a reader who cannot see the page
	Width, Height length.Length // paper, origin lower left, y up
	Scale         Scale         // of the main view; DXF is written at full size by it
	Marks         []Mark        // back to front
}

// A Mark is a Stroke, a Fill, a Text or a Dimension; there are no others.
type Mark interface{ mark() }

// A Stroke is a drawn line. Its path is on the paper.
type Stroke struct {
	Layer  Layer
	Weight Weight
	Line   LineType
	Path   plane.Path
}

// A Fill is an area in one flat tone, without an outline.
type Fill struct {
	Layer  Layer
	Tone   Tone
	Region plane.Region
}

// A Text is one line of lettering.
type Text struct {
	Layer  Layer
	At     plane.Point   // on the base line, at the place Align tells
	Height length.Length // of a capital letter, on paper
	Align  Align
	Rise   bool // written upwards, read from the right-hand side
	String string
	// Advance is the width the lettering takes on paper, as measured from the font.
	// Writers that can, hold the text to it.
	Advance length.Length
}

// A Dimension is a measured distance with its finished drawing.
// DXF writes a true dimension, other formats its marks.
type Dimension struct {
	Layer Layer
	A, B  plane.Point // measured points on the paper
	// Line is a point on the dimension line. A horizontal dimension measures
	// along X, the other along Y.
	Line       plane.Point
	Horizontal bool
	Measured   length.Length // the true size
	Scale      Scale         // of the view it stands in
	Figure     string        // as displayed, "59 7/8"
	Strokes    []Stroke      // extension lines and dimension line
	Fills      []Fill        // arrow heads
	Texts      []Text
}

func (Stroke) mark()    {}
func (Fill) mark()      {}
func (Text) mark()      {}
func (Dimension) mark() {}

// A Scale is paper to real: 1:10 is Scale{1, 10}. The zero Scale means none.
type Scale struct{ Paper, Real int64 }

// An Align tells which point of a text At is.
type Align int

// The alignments, all on the base line.
const (
	Start Align = iota
	Middle
	End
)

// A Weight is the width of a line.
type Weight int

// Two widths at 2:1 (ISO 128-2, Y14.2), and a heavy one for the sheet's frame.
const (
	Narrow Weight = iota // 0.25 mm
	Wide                 // 0.5 mm
	Frame                // 0.7 mm
)

// Width is the line's width on paper.
func (w Weight) Width() length.Length {
	return [...]length.Length{250 * length.Micrometre, 500 * length.Micrometre, 700 * length.Micrometre}[w]
}

// A LineType is a pattern of dashes, by meaning.
type LineType int

// The line types, with their patterns in Dashes.
const (
	Continuous LineType = iota
	Hidden              // an edge behind material
	Centre              // an axis or a line of centres
	Phantom             // a neighbouring part, or another position of a moving one
)

// Dashes is the pattern in millimetres on paper, drawn and left in turn, for a
// narrow line (ISO 128-2: dash 12 d, gap 3 d, long dash 24 d, dot 0.5 d at
// d = 0.25 mm; from memory, not confirmed). Nil for a continuous line.
func (t LineType) Dashes() []length.Length {
	const um = length.Micrometre
	switch t {
	case Hidden:
		return []length.Length{3000 * um, 750 * um}
	case Centre:
		return []length.Length{6000 * um, 750 * um, 125 * um, 750 * um}
	case Phantom:
		return []length.Length{6000 * um, 750 * um, 125 * um, 750 * um, 125 * um, 750 * um}
	}
	return nil
}

// A Tone is the shade of a fill.
type Tone int

// The tones.
const (
	Ink   Tone = iota // as a line
	Tint              // a pale shade behind lines: sheet material in an elevation
	Paper             // as the paper: hides what is behind
)

// A Layer groups marks by what they show.
type Layer int

// The layers of a drawing, in the order they are listed in files.
const (
	Border     Layer = iota // frame, zones, title block
	Outline                 // visible edges of wood and hardware
	HiddenEdge              // edges behind material
	Panel                   // panels, seen
	Hatch                   // cut surfaces
	Hardware                // track, hangers, washers, screws
	Opening                 // the building: head, jambs, floor
	CentreMark              // axes, centres
	Dimensions
	Notes // lettering that is not a figure
)

// Layers lists all layers in order.
func Layers() []Layer {
	return []Layer{Border, Outline, HiddenEdge, Panel, Hatch, Hardware, Opening, CentreMark, Dimensions, Notes}
}

// String is the layer's name in files: ASCII, capitals.
func (l Layer) String() string {
	return [...]string{"BORDER", "OUTLINE", "HIDDEN", "PANEL", "HATCH", "HARDWARE", "OPENING", "CENTRE", "DIMENSION", "NOTE"}[l]
}
