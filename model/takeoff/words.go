package takeoff

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
)

// words write sizes and areas as one asks for them in a shop, in one unit.
type words struct{ unit length.Unit }

func (t Takeoff) words() words { return words{t.Units} }

// Long is a board's length as one asks for it: "8 ft", "2.5 m".
func (t Takeoff) Long(l length.Length) string { return t.words().long(l) }

// Said is a size with its unit spelt: "77 15/16 in", "1520 mm".
func (t Takeoff) Said(l length.Length) string { return t.words().said(l) }

// long is whole feet, or whole decimetres in metres; what is neither is said.
func (w words) long(l length.Length) string {
	const decimetre = length.Metre / 10
	switch {
	case w.unit == length.Inches && l%length.Foot == 0:
		return fmt.Sprintf("%d ft", l/length.Foot)
	case w.unit == length.Millimetres && l%decimetre == 0:
		return fmt.Sprintf("%d.%d m", l/length.Metre, l%length.Metre/decimetre)
	}
	return w.said(l)
}

// said writes the unit in letters, which a table's text need not quote.
func (w words) said(l length.Length) string {
	if w.unit == length.Inches {
		return w.bare(l) + " in"
	}
	return w.bare(l) + " mm"
}

func (w words) bare(l length.Length) string { return length.Style{Unit: w.unit}.Format(l) }

// foot is what film and beads are measured in: its word, and its length.
func (w words) foot() (string, length.Length) {
	if w.unit == length.Inches {
		return "ft", length.Foot
	}
	return "m", length.Metre
}

// area writes m² in the trade's unit.
func (w words) area(squareMetres float64) string {
	if w.unit == length.Inches {
		return fmt.Sprintf("%.1f ft²", squareMetres/catalog.SquareFoot)
	}
	return fmt.Sprintf("%.2f m²", squareMetres)
}
