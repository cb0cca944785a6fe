package drawing

import (
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
