package machining

import (
	"strings"

	"stilewright/model/length"
)

// Names are the words layers begin with, by operation.
type Names [6]string

// DefaultNames are the operations' own words.
func DefaultNames() Names {
	var names Names
	for _, o := range Operations() {
		names[o] = strings.ToUpper(o.String())
	}
	return names
}

// Layer is the name of the layer a contour lies on: operation, depth, face, as
// in POCKET-19_05-BACK. The depth is exact in the file's unit, its point written
// "_", so that every release of the drawing exchange format takes the name.
// Blanks and marks have no depth.
func (n Names) Layer(o Operation, depth length.Length, f Face, unit length.Unit) string {
	face := strings.ToUpper(f.String())
	if o == Blank || o == Mark {
		return n[o] + "-" + face
	}
	figure := depth.Decimal()
	if unit == length.Inches {
		const places = 6 // every 64th exactly
		figure = strings.TrimPrefix(length.FormatDecimalInch(depth, places), "≈ ")
	}
	return n[o] + "-" + strings.Replace(figure, ".", "_", 1) + "-" + face
}
