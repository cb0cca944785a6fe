package length

import (
	"math"
	"strconv"
)

// A Length is a signed distance counted in whole nanometres.
// Its range, about ±9.2 million kilometres, is far beyond any opening; Parse
// refuses what is longer than Longest. Never multiply two Lengths: above about
// 3 m × 3 m the product overflows. Areas are float64 mm².
type Length int64

// Units of length. All are exact.
const (
	Nanometre  Length = 1
	Micrometre        = 1_000 * Nanometre
	Millimetre        = 1_000_000 * Nanometre
	Centimetre        = 10 * Millimetre
	Metre             = 1_000 * Millimetre
	Inch              = 25_400_000 * Nanometre // 25.4 mm, exact by definition
	Foot              = 12 * Inch
)

// Longest is the longest length Parse accepts, 1 km: longer than any door and
// short enough that sums of thousands of them stay exact.
const Longest = 1_000 * Metre

// MM is the length in millimetres, correctly rounded.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }

// Inches is the length in inches, correctly rounded.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// Round returns the length nearest to mm millimetres, halves away from zero.
// It is the one way back from floating point; a value that is not finite or
// exceeds Longest is a bug of the caller and gives the nearest limit (NaN: 0).
func Round(mm float64) Length {
	limit := Longest.MM()
	switch {
	case math.IsNaN(mm):
		return 0
	case mm > limit:
		return Longest
	case mm < -limit:
		return -Longest
	}
	return Length(math.Round(mm * float64(Millimetre)))
}

// Abs is the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// Half is the length divided by two, rounded towards zero; it is exact for
// every whole count of 1/64 in and of micrometres.
func (l Length) Half() Length { return l / 2 }

// Split divides the length into n parts that add up to it again and differ
// from one another by at most one nanometre, the longer ones first.
// n must be at least 1; Split of any other n is nil.
func (l Length) Split(n int) []Length {
	if n < 1 {
		return nil
	}
	base, rest := l/Length(n), l%Length(n)
	step := Length(1)
	if rest < 0 {
		step, rest = -1, -rest
	}
	parts := make([]Length, n)
	for i := range parts {
		parts[i] = base
		if Length(i) < rest {
			parts[i] += step
		}
	}
	return parts
}

// DownTo is the greatest whole multiple of tick that is not above l, and UpTo
// the least that is not below it. A tick of 0 or less leaves l as it is.
func (l Length) DownTo(tick Length) Length {
	if tick <= 0 {
		return l
	}
	rest := l % tick
	if rest < 0 {
		rest += tick
	}
	return l - rest
}

// UpTo is the least whole multiple of tick that is not below l.
func (l Length) UpTo(tick Length) Length { return -(-l).DownTo(tick) }

// Nearest is the whole multiple of tick nearest to l, halves away from zero.
// A tick of 0 or less leaves l as it is.
func (l Length) Nearest(tick Length) Length {
	if tick <= 0 {
		return l
	}
	rest := l % tick
	switch down := l - rest; {
	case rest >= tick-rest:
		return down + tick
	case -rest >= tick+rest:
		return down - tick
	default:
		return down
	}
}

// Decimal is the length in millimetres as exact decimal text without trailing
// zeros: "34.925", "-0.5", "0". Reading the text back gives the same length.
func (l Length) Decimal() string { return string(l.AppendDecimal(nil)) }

// AppendDecimal appends what Decimal gives, for writers of many lengths.
func (l Length) AppendDecimal(data []byte) []byte {
	if l < 0 {
		data = append(data, '-')
	}
	n := magnitude(l)
	data = strconv.AppendUint(data, n/uint64(Millimetre), 10)
	frac := n % uint64(Millimetre)
	if frac == 0 {
		return data
	}
	data = append(data, '.')
	for unit := uint64(Millimetre) / 10; frac > 0; unit /= 10 {
		data = append(data, '0'+byte(frac/unit))
		frac %= unit
	}
	return data
}

// Sum adds lengths.
func Sum(parts ...Length) Length {
	var whole Length
	for _, part := range parts {
		whole += part
	}
	return whole
}
