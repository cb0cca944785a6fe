package view

import (
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
)

// A Body is a placed solid with what the drawing needs to know of it.
type Body struct {
	Solid solid.Solid
	Layer sheet.Layer // of its visible edges; covered ones go to HiddenEdge

	// SeeThrough bodies are drawn but hide nothing, as a clear panel.
	SeeThrough bool

	Hatch Hatch
	Grain solid.Axis // the way the wood runs; only Wood and LongGrain ask for it

	Label string // "left stile": for messages and tests; nothing draws it
}

// A Hatch is what the cut surface of a body is covered with.
type Hatch int

// The hatches. Wood is EndGrain where the cut crosses Body.Grain and LongGrain
// where it runs along it.
const (
	NoHatch Hatch = iota
	Wood
	EndGrain  // slanted lines in pairs
	LongGrain // uneven lines along the grain
	Sheet     // close slanted lines: plywood, plastics, glass
	Metal     // closer slanted lines in pairs
)

// A Line is a run of edges of one kind, in the coordinates of the view.
type Line struct {
	Path   plane.Path
	Layer  sheet.Layer
	Weight sheet.Weight
	Type   sheet.LineType
}

// A Side is where one stands to look at an elevation.
type Side int

// The sides, with what goes to the right and up in the picture: it reads as one
// stands there.
const (
	Front  Side = iota // from -Y: X and Z
	Back               // from +Y: -X and Z
	Left               // from -X: -Y and Z
	Right              // from +X: Y and Z
	Top                // from +Z: X and Y
	Bottom             // from -Z: X and -Y
)

// turned are the bodies turned so that what was to be seen from the side is
// seen from the front, but for the back.
func turned(bodies []Body, from Side) ([]Body, Side) {
	about, quarters := solid.Z, 0
	switch from {
	case Left:
		quarters = 1
	case Right:
		quarters = -1
	case Top:
		about, quarters = solid.X, 1
	case Bottom:
		about, quarters = solid.X, -1
	default:
		return bodies, from
	}
	all := slices.Clone(bodies)
	for i := range all {
		all[i].Solid = all[i].Solid.Turn(about, quarters)
	}
	return all, Front
}

// Options are choices about a view. The zero Options draw everything at full
// size.
type Options struct {
	// Scale is the view's; 1:1 when zero. Hatching and what is too small for
	// it are measured on the paper.
	Scale sheet.Scale

	// NoHidden leaves covered edges out.
	NoHidden bool

	// HiddenFor, unless empty, keeps only the covered edges made by cuts and
	// bores of these purposes (solid.Cut.For, solid.Bore.For); "" stands for
	// the edges of blanks.
	HiddenFor []string

	// NoTangents leaves out the narrow lines in which round faces run into
	// flat ones.
	NoTangents bool

	// NoBores leaves bores out of elevations.
	NoBores bool

	// NoHatch leaves hatching out of sections.
	NoHatch bool
}

// onPaper is the true length of what measures l on the paper.
func (o Options) onPaper(l length.Length) length.Length {
	if o.Scale.Paper <= 0 || o.Scale.Real <= 0 {
		return l
	}
	return length.Round(l.MM() * float64(o.Scale.Real) / float64(o.Scale.Paper))
}
