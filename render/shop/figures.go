package shop

import (
	"fmt"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dxf"
)

// figure writes a length in the files' unit: exactly in millimetres, and in
// inches to six decimals, which every 64th is exact in.
func (o Options) figure(l length.Length) string {
	if o.Unit == length.Inches {
		const places = 6
		return strings.TrimPrefix(length.FormatDecimalInch(l, places), "≈ ")
	}
	return l.Decimal()
}

// measure writes a length of cuts, in millimetres, in the files' unit with its
// sign, to one decimal of a millimetre or two of an inch.
func (o Options) measure(millimetres float64) string {
	if o.Unit == length.Inches {
		return fmt.Sprintf("%.2f in", millimetres/length.Inch.MM())
	}
	return fmt.Sprintf("%.1f mm", millimetres)
}

// bounds is the smallest box round all lines of a cutting.
func bounds(c dxf.Cutting) plane.Box {
	var box plane.Box
	for i, p := range c.Paths {
		if i == 0 {
			box = p.Path.Bounds()
		}
		box = box.Join(p.Path.Bounds())
	}
	return box
}
