package length

import (
	"math/bits"
	"strconv"
	"strings"
)

// Finest ticks a Style takes when it names none: the finest fraction on a
// tape, and a tenth of a millimetre. Common practice, no source.
const (
	finestInch       = Inch / 64
	finestMillimetre = Millimetre / 10
)

// A Style is how lengths are written on drawings and in lists.
// The zero Style writes bare millimetres to one decimal.
type Style struct {
	Unit Unit

	// Tick is what figures are rounded to; 0 or less is 1/64 in or 0.1 mm.
	// A tick of inches that is not a whole count of 64ths is replaced by the
	// next finer power of two, so that fractions stay halves of halves.
	Tick Length

	// Mark appends the unit: `"` or " mm".
	Mark bool
}

// Format writes l rounded to the nearest tick, halves away from zero. Inches
// are a whole number and a reduced fraction ("59 7/8", "-1/16", "0"),
// millimetres a decimal without trailing zeros ("1520.5"). A length that does
// not lie on a tick is marked with "≈ " in front; Parse reads what follows it.
func (s Style) Format(l Length) string {
	figure := l.Nearest(s.tick())
	text := figure.Decimal()
	if s.Unit == Inches {
		text = fraction(figure)
	}
	switch {
	case s.Mark && s.Unit == Inches:
		text += `"`
	case s.Mark:
		text += " mm"
	}
	if figure != l {
		text = "≈ " + text
	}
	return text
}

// tick is the tick Format rounds to, with the default and the replacement
// that Style.Tick tells of.
func (s Style) tick() Length {
	switch {
	case s.Tick <= 0 && s.Unit == Inches:
		return finestInch
	case s.Tick <= 0:
		return finestMillimetre
	case s.Unit != Inches || s.Tick%finestInch == 0:
		return s.Tick
	}
	tick := Inch
	for tick > s.Tick && tick > finestInch {
		tick /= 2
	}
	return tick
}

// fraction writes a whole count of 64ths of an inch.
func fraction(l Length) string {
	sign, n := "", uint64(l)
	if l < 0 {
		sign, n = "-", -uint64(l)
	}
	whole, top, bottom := n/uint64(Inch), n%uint64(Inch)/uint64(finestInch), 64
	for top != 0 && top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	part := strconv.FormatUint(top, 10) + "/" + strconv.Itoa(bottom)
	switch {
	case top == 0:
		return sign + strconv.FormatUint(whole, 10)
	case whole == 0:
		return sign + part
	}
	return sign + strconv.FormatUint(whole, 10) + " " + part
}

// FormatDecimalInch writes l in decimal inches, rounded to at most places
// decimals, halves away from zero, without trailing zeros and without a mark:
// "59.875". Places outside 0 to 6 are taken as the nearer limit; six write
// every 64th exactly. A figure that is not l exactly has "≈ " in front.
func FormatDecimalInch(l Length, places int) string {
	scale := uint64(1)
	for range min(max(places, 0), 6) {
		scale *= 10
	}
	hi, lo := bits.Mul64(magnitude(l), scale)
	count, rest := bits.Div64(hi, lo, uint64(Inch)) // fits: 2⁶³·10⁶ / Inch < 2⁶⁴
	mark := ""
	if rest != 0 {
		mark = "≈ "
	}
	if 2*rest >= uint64(Inch) {
		count++
	}
	if l < 0 && count != 0 {
		mark += "-"
	}
	text := strconv.FormatUint(count/scale, 10)
	if count%scale != 0 {
		digits := strconv.FormatUint(count%scale+scale, 10)[1:] // leading zeros kept
		text += "." + strings.TrimRight(digits, "0")
	}
	return mark + text
}

// magnitude is l without its sign; unlike Abs it holds for every l.
func magnitude(l Length) uint64 {
	if l < 0 {
		return -uint64(l)
	}
	return uint64(l)
}
