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

// long is whole feet, or whole decimetres in metres, whichever the length is; what
// is neither is said.
func (w words) long(l length.Length) string {
	const decimetre = length.Metre / 10
	switch feet, metric := l%length.Foot == 0, l%decimetre == 0; {
	case feet && (w.unit == length.Inches || !metric):
		return fmt.Sprintf("%d ft", l/length.Foot)
	case metric:
		return fmt.Sprintf("%d.%d m", l/length.Metre, l%length.Metre/decimetre)
	}
	return w.said(l)
}

// said writes the unit in letters, which a table's text need not quote. A size
// that is on a tick of the other unit only is written in that.
func (w words) said(l length.Length) string {
	w = w.exact(l)
	return w.bare(l) + " " + w.name()
}

// name is the unit's word beside a figure.
func (w words) name() string {
	if w.unit == length.Inches {
		return "in"
	}
	return "mm"
}

func (w words) bare(l length.Length) string { return length.Style{Unit: w.unit}.Format(l) }

// section is a thickness and a width: with its unit only where that is not the
// one all else is in.
func (w words) section(thick, wide length.Length) string {
	in := w.exact(thick, wide)
	said := in.bare(thick) + " x " + in.bare(wide)
	if in != w {
		said += " " + in.name()
	}
	return said
}

// exact are the words whose ticks hold all the sizes, or these where none do.
func (w words) exact(sizes ...length.Length) words {
	other := words{length.Inches}
	if w.unit == length.Inches {
		other.unit = length.Millimetres
	}
	for _, try := range []words{w, other} {
		tick := length.Millimetre / 10
		if try.unit == length.Inches {
			tick = length.Inch / 64
		}
		on := true
		for _, l := range sizes {
			on = on && l%tick == 0
		}
		if on {
			return try
		}
	}
	return w
}

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
