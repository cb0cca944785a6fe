package pdf

import (
	"strconv"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// Numbers in a page are millimetres to four decimals. Rounding moves a point
// by at most 0.05 µm either way, a thousandth of the 0.05 mm a saw is set to.
const (
	decimals = 4
	finest   = length.Millimetre / 10_000
)

// pointsPerMM is the size of a millimetre in the file's unit, 1/72 in.
const pointsPerMM = 72 / 25.4

// appendLength writes a length in millimetres, without trailing zeros.
func appendLength(data []byte, l length.Length) []byte {
	return l.Nearest(finest).AppendDecimal(data)
}

// appendPoint writes both coordinates and a space after each.
func appendPoint(data []byte, p plane.Point) []byte {
	data = append(appendLength(data, p.X), ' ')
	return append(appendLength(data, p.Y), ' ')
}

// appendNumber writes a number that is no length on the sheet, with fixed
// decimals.
func appendNumber(data []byte, x float64, decimals int) []byte {
	if x == 0 {
		x = 0 // not -0
	}
	return strconv.AppendFloat(data, x, 'f', decimals, 64)
}

// points is a length in points, as page sizes are given: to a millionth, less
// than a nanometre.
func points(l length.Length, factor float64) string {
	return string(appendNumber(nil, float64(l.MM()*factor)*pointsPerMM, 6))
}
