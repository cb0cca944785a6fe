package length_test

import (
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"stilewright/model/length"
)

const (
	in   = length.Inch
	ft   = length.Foot
	mm   = length.Millimetre
	inch = length.Inches
	mill = length.Millimetres
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		bare length.Unit
		want length.Length
	}{
		{"59 7/8", inch, 59*in + 7*in/8}, {"59-7/8", inch, 59*in + 7*in/8}, {`59-7/8"`, mill, 59*in + 7*in/8},
		{"59 7/8 in", mill, 59*in + 7*in/8}, {"59 7/8 in.", mill, 59*in + 7*in/8}, {"59.875 in", mill, 59*in + 7*in/8},
		{"59⅞", inch, 59*in + 7*in/8}, {"59 ⅞", inch, 59*in + 7*in/8}, {"59-⅞", inch, 59*in + 7*in/8}, {"59½″", mill, 59*in + in/2},
		{"59.875", inch, 59*in + 7*in/8}, {"59 7⁄8", inch, 59*in + 7*in/8}, {"  59   7/8\t", inch, 59*in + 7*in/8},
		{"1520 mm", inch, 1520 * mm}, {"1520mm", inch, 1520 * mm}, {"152 cm", inch, 1520 * mm}, {"1.52 m", inch, 1520 * mm},
		{"1520 MM", inch, 1520 * mm}, {"1520 millimetres", inch, 1520 * mm}, {"1520", mill, 1520 * mm}, {"1/2 mm", inch, mm / 2},
		{`5' 2 3/8"`, mill, 5*ft + 2*in + 3*in/8}, {`5'-2 3/8"`, mill, 5*ft + 2*in + 3*in/8}, {`5' - 2 3/8"`, mill, 5*ft + 2*in + 3*in/8},
		{"5′ 2⅜″", mill, 5*ft + 2*in + 3*in/8}, {"5’2”", mill, 5*ft + 2*in}, {"5'2''", mill, 5*ft + 2*in},
		{"5 ft 2 in", mill, 5*ft + 2*in}, {"5 feet 2 inches", mill, 5*ft + 2*in}, {"5 ft", mill, 5 * ft}, {"5' 2", mill, 5*ft + 2*in},
		{"5 1/2'", mill, 5*ft + 6*in}, {"5.5 ft", mill, 5*ft + 6*in}, {"-5' 2\"", mill, -5*ft - 2*in}, {"5' 1/2", mill, 5*ft + in/2},
		{"3/8", inch, 3 * in / 8}, {"23/16", inch, 23 * in / 16}, {"-1/16", inch, -in / 16}, {"−1/16", inch, -in / 16}, {"+1/16", inch, in / 16},
		{"- 1 1/2", inch, -in - in/2}, {"½", inch, in / 2}, {".5", inch, in / 2}, {"-.5", mill, -mm / 2}, {"0", inch, 0}, {"-0", inch, 0},
		{"007", mill, 7 * mm}, {"1000 m", mill, length.Longest}, {"-1000 m", mill, -length.Longest},
		{"1/64", inch, 396_875}, {"1/128", inch, 198_438}, {"-1/128", inch, -198_438}, // 198 437.5 nm: halves away from zero
		{"1/3", inch, 8_466_667}, {"2/3", inch, 16_933_333}, {"1/3 mm", inch, 333_333},
		{"0.000001", mill, 1}, {"0.0000005", mill, 1}, {"0.0000004", mill, 0}, {"0.00001 in", mill, 254},
	} {
		if got, err := length.Parse(c.text, c.bare); err != nil || got != c.want {
			t.Errorf("%q in %v: got %d nm (%v), want %d nm", c.text, c.bare, got, err, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		text   string
		offset int
		reason string
	}{
		{"", 0, "it is empty"},
		{" \t", 0, "it is empty"},
		{"-", 1, "a number is missing at its end"},
		{"wide", 0, "a number is missing before “wide”"},
		{"NaN", 0, "a number is missing before “NaN”"},
		{"-inf", 1, "a number is missing before “inf”"},
		{"--1", 0, "it has two signs"},
		{"+ -1", 0, "it has two signs"},
		{"1//2", 2, "the bottom of the fraction is missing"},
		{"1/", 2, "the bottom of the fraction is missing"},
		{"59 7/", 5, "the bottom of the fraction is missing"},
		{"1/0", 2, "the bottom of the fraction is 0"},
		{"59 7/00", 5, "the bottom of the fraction is 0"},
		{"59 9/8", 3, "the fraction after a whole number must be less than 1"},
		{"1/2/3", 3, "it has a slash too many"},
		{"59 7 8", 3, "“7 8” is a second number; a fraction needs its slash"},
		{"59 -7/8", 3, "“-7/8” is left over"},
		{"59.5 1/2", 4, "a decimal and a fraction do not go together"},
		{"59.", 3, "digits are missing after the point"},
		{".", 1, "digits are missing after the point"},
		{"59,5", 2, "a comma is not read; decimals take a point, thousands stand without a mark"},
		{"1,520 mm", 1, "a comma is not read; decimals take a point, thousands stand without a mark"},
		{"1_520", 1, "an underscore is not read"},
		{"1e3", 1, "a power of ten is not read"},
		{"0x1F", 1, "“x” is not a unit (in, ft, mm, cm, m)"},
		{"3 yd", 2, "“yd” is not a unit (in, ft, mm, cm, m)"},
		{"1 km", 2, "“km” is not a unit (in, ft, mm, cm, m)"},
		{"1 m 520 mm", 4, "“520 mm” is a second number; a fraction needs its slash"},
		{"5' 14\"", 3, "inches after feet must be less than 12"},
		{"5' 2 cm", 3, "only inches may follow feet"},
		{"5.5' 2\"", 5, "feet before inches must be whole"},
		{"5 1/2' 2\"", 7, "feet before inches must be whole"},
		{"5' x", 3, "a number is missing before “x”"},
		{"5' -", 4, "a number is missing at its end"},
		{"≈ 59", 0, "≈ marks a rounded figure; give the size itself"},
		{"1\xff", 1, `“\xff” is left over`},
		{"1000.000001 m", 0, "it is longer than the longest length, 1 km"},
		{"-99999999999999999999 in", 0, "it is longer than the longest length, 1 km"},
		{strings.Repeat("9", 65), 64, "it is longer than 64 characters"},
	} {
		got, err := length.Parse(c.text, inch)
		var fault *length.ParseError
		if !errors.As(err, &fault) {
			t.Errorf("%q: got %d nm and error %v, want a ParseError", c.text, got, err)
			continue
		}
		if want := (length.ParseError{Text: c.text, Offset: c.offset, Reason: c.reason}); *fault != want {
			t.Errorf("%q:\n got %+v\nwant %+v", c.text, *fault, want)
		}
	}
}

func TestParseErrorText(t *testing.T) {
	_, err := length.Parse(`5' 2 3//8"`, inch)
	want := `“5' 2 3//8"” is not a length: the bottom of the fraction is missing; write it like 59 7/8, 59.875 in or 1520 mm`
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
	_, err = length.Parse(strings.Repeat("é", 500), inch)
	if err == nil || len(err.Error()) > 300 || !utf8.ValidString(err.Error()) {
		t.Errorf("a long text gives a long or broken message: %v", err)
	}
}

func TestFormat(t *testing.T) {
	inches, sixteenths := length.Style{Unit: inch}, length.Style{Unit: inch, Tick: in / 16}
	millimetres, marked := length.Style{}, length.Style{Mark: true}
	for _, c := range []struct {
		style length.Style
		l     length.Length
		want  string
	}{
		{inches, 0, "0"}, {inches, 59*in + 7*in/8, "59 7/8"}, {inches, in / 64, "1/64"}, {inches, -in / 16, "-1/16"},
		{inches, -3*in - in/2, "-3 1/2"}, {inches, 12 * in, "12"}, {inches, in - in/64, "63/64"}, {inches, in / 2, "1/2"},
		{inches, in / 5, "≈ 13/64"}, {inches, in - 1, "≈ 1"}, {inches, -in + 1, "≈ -1"}, {inches, 1, "≈ 0"}, {inches, -1, "≈ 0"},
		{sixteenths, in / 32, "≈ 1/16"}, {sixteenths, -in / 32, "≈ -1/16"}, {sixteenths, 2*in - in/64, "≈ 2"}, {sixteenths, 3 * in / 16, "3/16"},
		{length.Style{Unit: inch, Mark: true}, 59*in + in/2, `59 1/2"`}, {length.Style{Unit: inch, Mark: true}, 1, `≈ 0"`},
		{length.Style{Unit: inch, Tick: in}, 2*in + in/2, "≈ 3"}, {length.Style{Unit: inch, Tick: 3 * in / 64}, 6 * in / 64, "3/32"},
		{length.Style{Unit: inch, Tick: in / 10}, in / 5, "≈ 3/16"}, {length.Style{Unit: inch, Tick: 1}, in / 64, "1/64"},
		{length.Style{Unit: inch, Tick: -in}, in / 64, "1/64"},
		{millimetres, 0, "0"}, {millimetres, 1520*mm + mm/2, "1520.5"}, {millimetres, 8 * mm / 10, "0.8"}, {millimetres, -mm / 2, "-0.5"},
		{millimetres, in / 64, "≈ 0.4"}, {millimetres, -mm / 20, "≈ -0.1"}, {millimetres, mm / 25, "≈ 0"}, {millimetres, 1520 * mm, "1520"},
		{marked, 1520*mm + mm/2, "1520.5 mm"}, {marked, in / 64, "≈ 0.4 mm"},
		{length.Style{Tick: mm / 4}, 3 * mm / 4, "0.75"}, {length.Style{Tick: mm}, 3 * mm / 2, "≈ 2"}, {length.Style{Tick: 1}, in / 64, "0.396875"},
	} {
		if got := c.style.Format(c.l); got != c.want {
			t.Errorf("%+v of %d nm: got %q, want %q", c.style, c.l, got, c.want)
		}
	}
}

func TestFormatDecimalInch(t *testing.T) {
	for _, c := range []struct {
		l      length.Length
		places int
		want   string
	}{
		{59*in + 7*in/8, 3, "59.875"}, {59*in + 7*in/8, 2, "≈ 59.88"}, {in / 64, 6, "0.015625"}, {in / 64, 9, "0.015625"},
		{in / 64, 4, "≈ 0.0156"}, {-in / 2, 1, "-0.5"}, {-in / 2, 0, "≈ -1"}, {0, 3, "0"}, {1, 3, "≈ 0"}, {-1, 3, "≈ 0"},
		{in / 2, -1, "≈ 1"}, {60 * in, 3, "60"}, {in - 1, 3, "≈ 1"}, {math.MinInt64, 0, "≈ -363124883341"},
	} {
		if got := length.FormatDecimalInch(c.l, c.places); got != c.want {
			t.Errorf("%d nm to %d places: got %q, want %q", c.l, c.places, got, c.want)
		}
	}
}

// What is written reads back within half a tick, exactly when it is unmarked,
// and is marked when it is not exact.
func TestFormatReadsBack(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 4))
	inchTicks := []length.Length{0, in, in / 2, in / 4, in / 8, in / 16, in / 32, in / 64}
	for range rounds {
		style := length.Style{Tick: inchTicks[rnd.IntN(len(inchTicks))], Unit: inch, Mark: rnd.IntN(2) == 0}
		tick := style.Tick
		if tick == 0 {
			tick = in / 64
		}
		if rnd.IntN(2) == 0 {
			style.Unit, style.Tick = mill, length.Length(1+rnd.Int64N(int64(mm)))
			tick = style.Tick
		}
		l := anyLength(rnd)
		text := style.Format(l)
		figure, rounded := strings.CutPrefix(text, "≈ ")
		got, err := length.Parse(figure, style.Unit)
		if got.Abs() > length.Longest || err != nil && l.Abs()+tick > length.Longest {
			continue // rounded up past the longest
		}
		if err != nil || 2*(got-l).Abs() > tick || rounded != (got != l) {
			t.Fatalf("seed %d: %+v writes %d nm as %q, which reads %d nm (%v)", *seed, style, l, text, got, err)
		}
	}
}

// Decimal inches agree with the standard library's rationals.
func TestFormatDecimalInchAgrees(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 5))
	for range rounds {
		l, places := anyLength(rnd), rnd.IntN(7)
		exact := big.NewRat(int64(l), int64(in))
		want := exact.FloatString(places) // rounds halves away from zero
		if strings.Contains(want, ".") {
			want = strings.TrimRight(strings.TrimRight(want, "0"), ".")
		}
		if want == "-0" {
			want = "0"
		}
		if back, _ := new(big.Rat).SetString(want); back.Cmp(exact) != 0 {
			want = "≈ " + want
		}
		if got := length.FormatDecimalInch(l, places); got != want {
			t.Fatalf("seed %d: %d nm to %d places: got %q, want %q", *seed, l, places, got, want)
		}
	}
}

// The zero values of the small types are usable: bare millimetres.
func TestZeroValues(t *testing.T) {
	var unit length.Unit
	var style length.Style
	if unit.String() != "millimetre" || inch.String() != "inch" {
		t.Errorf("unit names: %v and %v", unit, inch)
	}
	if got := style.Format(34_900_000); got != "34.9" {
		t.Errorf("zero style: got %q, want 34.9", got)
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{`5' 2 3/8"`, "59-7/8", "59⅞ in.", "-1.52 m", "1/3", "1e3", "--1", "1//2", "≈ 0", "\xff"} {
		f.Add(text, true)
	}
	f.Fuzz(func(t *testing.T, text string, inches bool) {
		unit := mill
		if inches {
			unit = inch
		}
		l, err := length.Parse(text, unit)
		if err != nil {
			var fault *length.ParseError
			if !errors.As(err, &fault) || fault.Offset < 0 || fault.Offset > len(text) || fault.Reason == "" || fault.Text != text {
				t.Fatalf("%q: error without its place: %#v", text, err)
			}
			return
		}
		if l.Abs() > length.Longest {
			t.Fatalf("%q: %d nm is over the longest", text, l)
		}
		if back, err := length.Parse(l.Decimal()+" mm", unit); err != nil || back != l {
			t.Fatalf("%q: %d nm written %q reads %d nm (%v)", text, l, l.Decimal(), back, err)
		}
		figure, _ := strings.CutPrefix(length.Style{Unit: unit}.Format(l), "≈ ")
		back, err := length.Parse(figure, unit)
		if err != nil && l.Abs() <= length.Longest-in || err == nil && 2*(back-l).Abs() > in/64 {
			t.Fatalf("%q: %d nm written %q reads %d nm (%v)", text, l, figure, back, err)
		}
	})
}
