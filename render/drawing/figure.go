package drawing

import (
	"fmt"
	"strings"

	"stilewright/model/length"
)

// format writes a size as the model wants it on its drawings.
func (p *page) format(l length.Length) string {
	inches := p.set.Units == length.Inches
	figure := p.style.Format(l)
	switch p.set.Written {
	case "decimal":
		if inches {
			return length.FormatDecimalInch(l, 3)
		}
	case "dual":
		other := length.Style{Unit: length.Inches}
		if inches {
			other.Unit = length.Millimetres
		}
		return figure + " [" + strings.TrimPrefix(other.Format(l), "≈ ") + "]"
	}
	return figure
}

// pound is a pound in kilograms, exact by definition.
const pound = 0.45359237

// weightUnit is the unit of weights: pounds beside inches, kilograms beside
// millimetres.
func (p *page) weightUnit() string {
	if p.set.Units == length.Inches {
		return "LB"
	}
	return "KG"
}

// weight is a mass in kg as written, in the sheet's unit.
func (p *page) weight(kg float64) string {
	if p.set.Units == length.Inches {
		return fmt.Sprintf("%.1f", kg/pound)
	}
	return fmt.Sprintf("%.2f", kg)
}
