package dxf

import (
	"math"
	"strconv"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// Decimals written of a millimetre, of a degree and of a bulge or factor. Six
// keep every nanometre; ten and twelve place the end of an arc of 12 m radius
// to well under one.
const (
	degreeDecimals = 10
	factorDecimals = 12
	inchDecimals   = 11 // of an inch: 2.5e-10 mm
)

// A handle names an object within one file. 0 is none.
type handle uint64

// tags is a piece of a DXF file: pairs of a group code and a value, each on a
// line of its own. The zero value is ready for use and writes lengths in
// millimetres.
type tags struct {
	out    []byte
	inches bool // lengths are written in inches
}

// code begins a pair. Codes stand right-justified in three columns, as the
// format's own programs write them.
func (t *tags) code(code int) {
	if code < 100 {
		t.out = append(t.out, ' ')
	}
	if code < 10 {
		t.out = append(t.out, ' ')
	}
	t.out = strconv.AppendInt(t.out, int64(code), 10)
	t.out = append(t.out, '\n')
}

// text writes a string that holds no line end and is in the file's encoding.
func (t *tags) text(code int, s string) {
	t.code(code)
	t.out = append(t.out, s...)
	t.out = append(t.out, '\n')
}

// count writes a whole number.
func (t *tags) count(code, n int) {
	t.code(code)
	t.out = strconv.AppendInt(t.out, int64(n), 10)
	t.out = append(t.out, '\n')
}

// handle writes a reference to an object, or an object's own handle.
func (t *tags) handle(code int, h handle) {
	t.code(code)
	start := len(t.out)
	t.out = strconv.AppendUint(t.out, uint64(h), 16)
	for i := start; i < len(t.out); i++ {
		if t.out[i] >= 'a' {
			t.out[i] -= 'a' - 'A'
		}
	}
	t.out = append(t.out, '\n')
}

// length writes a length in millimetres, exactly; in inches, to a thousandth of
// a nanometre.
func (t *tags) length(code int, l length.Length) {
	if t.inches {
		t.real(code, l.Inches(), inchDecimals)
		return
	}
	t.code(code)
	n := uint64(l)
	if l < 0 {
		t.out = append(t.out, '-')
		n = -n
	}
	const whole = uint64(length.Millimetre)
	t.out = strconv.AppendUint(t.out, n/whole, 10)
	t.out = append(t.out, '.')
	frac, unit := n%whole, whole/10
	for {
		t.out = append(t.out, '0'+byte(frac/unit))
		if frac %= unit; frac == 0 {
			break
		}
		unit /= 10
	}
	t.out = append(t.out, '\n')
}

// real writes a number with a fixed count of decimals, of which trailing zeros
// but one are left out. v is finite: it is made from whole coordinates that
// sheet.Check has accepted.
func (t *tags) real(code int, v float64, decimals int) {
	t.code(code)
	start := len(t.out)
	t.out = strconv.AppendFloat(t.out, v, 'f', decimals, 64)
	end := len(t.out)
	for t.out[end-1] == '0' && t.out[end-2] != '.' {
		end--
	}
	t.out = t.out[:end]
	if string(t.out[start:]) == "-0.0" {
		t.out = append(t.out[:start], "0.0"...)
	}
	t.out = append(t.out, '\n')
}

// point writes a place in space at Z = 0: group codes code, code+10, code+20.
func (t *tags) point(code int, p plane.Point) {
	t.flat(code, p)
	t.length(code+20, 0)
}

// flat writes a place in the plane: group codes code and code+10.
func (t *tags) flat(code int, p plane.Point) {
	t.length(code, p.X)
	t.length(code+10, p.Y)
}

// degrees is the direction from a centre to a point of its circle, from 0 to
// below 360, counter-clockwise from +X.
func degrees(centre, p plane.Point) float64 {
	angle := math.Atan2(float64(p.Y-centre.Y), float64(p.X-centre.X)) * 180 / math.Pi
	if angle < 0 {
		angle += 360
	}
	return angle
}
