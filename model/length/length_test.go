package length_test

import (
	"flag"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"stilewright/model/length"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

const rounds = 10_000

// anyLength is a length up to Longest of either sign, of a random magnitude so
// that small ones are as frequent as large ones, and often a trade size.
func anyLength(rnd *rand.Rand) length.Length {
	l := length.Length(rnd.Int64N(int64(length.Longest) >> rnd.IntN(40)))
	switch rnd.IntN(4) {
	case 0:
		l = l.DownTo(length.Inch / 64)
	case 1:
		l = l.DownTo(length.Millimetre / 2)
	}
	if rnd.IntN(2) == 0 {
		return -l
	}
	return l
}

// The inch is exactly 25.4 mm: international yard and pound agreement of 1959
// (Federal Register 24 FR 5348).
func TestUnits(t *testing.T) {
	for _, c := range []struct{ got, nanometres length.Length }{
		{length.Inch, 25_400_000},
		{length.Inch / 64 * 64, length.Inch},
		{length.Foot, 304_800_000},
		{length.Metre, 1_000_000_000},
		{length.Centimetre, 10_000_000},
		{length.Micrometre, 1_000},
	} {
		if c.got != c.nanometres {
			t.Errorf("got %d nm, want %d nm", c.got, c.nanometres)
		}
	}
}

func TestSplitCloses(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for range rounds {
		whole, n := anyLength(rnd), 1+rnd.IntN(40)
		parts := whole.Split(n)
		if got := length.Sum(parts...); len(parts) != n || got != whole {
			t.Fatalf("seed %d: %d parts of %d nm, wanted %d, add up to %d nm", *seed, len(parts), whole, n, got)
		}
		for i := 1; i < n; i++ {
			if d := parts[i-1].Abs() - parts[i].Abs(); d < 0 || parts[0].Abs()-parts[i].Abs() > 1 {
				t.Fatalf("seed %d: parts of %d nm are not even or not longest first: %d", *seed, whole, parts)
			}
		}
	}
	if got := length.Inch.Split(0); got != nil {
		t.Errorf("0 parts: %v, want nil", got)
	}
}

func TestRoundingToTicks(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 1))
	for range rounds {
		l, tick := anyLength(rnd), length.Length(1+rnd.Int64N(int64(length.Inch)))
		down, up, near := l.DownTo(tick), l.UpTo(tick), l.Nearest(tick)
		switch {
		case down%tick != 0 || up%tick != 0 || near%tick != 0:
			t.Fatalf("seed %d: %d to ticks of %d: %d, %d, %d are not all on a tick", *seed, l, tick, down, near, up)
		case down > l || l-down >= tick || up < l || up-l >= tick:
			t.Fatalf("seed %d: %d to ticks of %d: down %d, up %d", *seed, l, tick, down, up)
		case near != down && near != up || 2*(near-l).Abs() > tick:
			t.Fatalf("seed %d: %d to ticks of %d: nearest %d of %d and %d", *seed, l, tick, near, down, up)
		case near.Nearest(tick) != near || (-l).Nearest(tick) != -near:
			t.Fatalf("seed %d: nearest tick of %d to %d is not settled or not even-handed", *seed, tick, l)
		}
	}
}

func TestNearestAtTheEdges(t *testing.T) {
	for _, c := range []struct{ l, tick, want length.Length }{
		{5, 10, 10}, {-5, 10, -10}, {4, 10, 0}, {-4, 10, 0}, // halves away from zero
		{1, 3, 0}, {2, 3, 3}, {-2, 3, -3}, // an odd tick has no half
		{7, 0, 7}, {7, -2, 7}, {0, 9, 0},
		{math.MinInt64, 2, math.MinInt64},
	} {
		if got := c.l.Nearest(c.tick); got != c.want {
			t.Errorf("nearest tick of %d to %d: got %d, want %d", c.tick, c.l, got, c.want)
		}
	}
}

// Decimal is exact: the text, read by the standard library's rationals, is the
// length, and so it is for Parse.
func TestDecimalReadsBack(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 2))
	for range rounds {
		l := anyLength(rnd)
		value, ok := new(big.Rat).SetString(l.Decimal())
		if !ok || value.Cmp(big.NewRat(int64(l), int64(length.Millimetre))) != 0 {
			t.Fatalf("seed %d: %d nm is written %q mm", *seed, l, l.Decimal())
		}
		if got, err := length.Parse(l.Decimal(), length.Millimetres); err != nil || got != l {
			t.Fatalf("seed %d: %q read back is %d nm, want %d (%v)", *seed, l.Decimal(), got, l, err)
		}
	}
	for l, want := range map[length.Length]string{
		0: "0", 34_925_000: "34.925", -500_000: "-0.5", 1: "0.000001", math.MinInt64: "-9223372036854.775808",
	} {
		if got := l.Decimal(); got != want {
			t.Errorf("%d nm: got %q, want %q", l, got, want)
		}
	}
}

func TestRoundUndoesMM(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 3))
	for range rounds {
		l := anyLength(rnd)
		if got := length.Round(l.MM()); got != l {
			t.Fatalf("seed %d: %d nm through floating millimetres is %d nm", *seed, l, got)
		}
	}
	for mm, want := range map[float64]length.Length{
		math.Inf(1): length.Longest, math.Inf(-1): -length.Longest, 2e9: length.Longest,
		0.0000005: 1, -0.0000005: -1, 25.4: length.Inch,
	} {
		if got := length.Round(mm); got != want {
			t.Errorf("%v mm: got %d nm, want %d", mm, got, want)
		}
	}
	if got := length.Round(math.NaN()); got != 0 {
		t.Errorf("NaN: got %d nm, want 0", got)
	}
}

func TestInchesAndHalf(t *testing.T) {
	if got := (59*length.Inch + length.Inch/8*7).Inches(); got != 59.875 {
		t.Errorf("59 7/8 in: got %v, want 59.875", got)
	}
	for l, want := range map[length.Length]length.Length{
		length.Inch / 64: length.Inch / 128, length.Micrometre: 500, 3: 1, -3: -1, 0: 0,
	} {
		if got := l.Half(); got != want {
			t.Errorf("half of %d nm: got %d, want %d", l, got, want)
		}
	}
}
