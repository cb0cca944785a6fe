package lettering

import (
	"bytes"
	"flag"
	"math/rand/v2"
	"os"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

const mm = length.Millimetre

// The height of a capital H, read from the font itself.
func TestCapHeightIsThatOfH(t *testing.T) {
	table, err := measure(Font())
	require.NoError(t, err)
	assert.EqualValues(t, capUnits, table['H'].above)
	assert.EqualValues(t, 0, table['H'].below)
	assert.Equal(t, 0.71875, CapHeight)
}

func TestMeasureRefusesWhatIsNoFont(t *testing.T) {
	for _, file := range []string{"", "not a font", ttf[:1000]} {
		_, err := measure([]byte(file))
		assert.Error(t, err)
	}
}

// Widths in font units, read with another font library (fontTools' numbers are
// those of table hmtx): H 712, digits 672 but 1 352, space 288, slash 576.
func TestAdvance(t *testing.T) {
	for _, c := range []struct {
		text  string
		units int64
	}{
		{"", 0}, {"H", 712}, {"0", 672}, {"1", 352}, {" ", 288},
		{"4 / 2", 672 + 288 + 576 + 288 + 672},
		{"≤", 640 + 640}, // drawn as <=
	} {
		assert.Equal(t, length.Length(c.units)*mm, Advance(c.text, capUnits*mm), "%q", c.text)
	}
}

func TestAdvanceAddsUpToTheNanometre(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	letters := []rune("0123456789 .,×⌀ABCgjpqy()½⅞≈…Жß") // a slash would make fractions
	for range 2000 {
		a, b := anyText(rnd, letters), anyText(rnd, letters)
		h := length.Length(1 + rnd.Int64N(int64(20*mm)))
		whole, parts := Advance(a+b, h), Advance(a, h)+Advance(b, h)
		if diff := parts - whole; diff < 0 || diff > 1 {
			t.Fatalf("seed %d: %q and %q at %d nm: %d apart, %d together", *seed, a, b, h, parts, whole)
		}
	}
}

func TestReach(t *testing.T) {
	above, below := Reach("H", 10*mm)
	assert.Equal(t, 10*mm, above)
	assert.Zero(t, below)
	_, flat := Reach("4 7", 10*mm)
	_, tail := Reach("g", 10*mm)
	assert.Less(t, flat, tail)
	above, below = Reach("", 10*mm)
	assert.Zero(t, above)
	assert.Zero(t, below)
}

func TestSizeTimesCapHeightIsHeight(t *testing.T) {
	for _, h := range []length.Length{2500 * length.Micrometre, 35 * mm / 10, 5 * mm, 7 * mm} {
		assert.InDelta(t, h.MM(), Size(h).MM()*CapHeight, 1e-6)
	}
}

func TestLegible(t *testing.T) {
	for _, c := range [][2]string{
		{"59 7/8 REF", "59 ⁷⁄₈ REF"},
		{"≈ 3 1/64", "~ 3 ¹⁄₆₄"},
		{"bite ≥ 1/8 … ≤ 1/4", "bite >= ¹⁄₈ ... <= ¹⁄₄"},
		{"two\nlines\tand", "two lines and"},
		{"a\x00b\u2066c", "abc"},
		{"∅ 5", "⌀ 5"},
		{"Шкаф", "????"},
		{"bad \xff byte", "bad ? byte"},
		{"⌀ ½ → ±", "⌀ ½ → ±"},
		{"🚪", "?"},
	} {
		assert.Equal(t, c[1], Legible(c[0]), "%q", c[0])
	}
}

// What trade drawings in inches and millimetres are written with.
func TestCoversWhatDrawingsNeed(t *testing.T) {
	for r := rune(' '); r <= '~'; r++ {
		assert.True(t, Covers(r), "%q", r)
	}
	for _, r := range "⌀±×°½¼¾⅛⅜⅝⅞⅓⅔→←↑↓–—‘’“”ÄÖÜäöüßéèñç" {
		assert.True(t, Covers(r), "%q", r)
	}
	assert.False(t, Covers('≤'))
	assert.False(t, Covers('\n'))
}

func TestReplacementsAreNeededAndLegible(t *testing.T) {
	for r, s := range replacements {
		assert.False(t, Covers(r), "%q is in the font and needs no replacement", r)
		for _, c := range s {
			assert.True(t, Covers(c), "%q in the replacement of %q", c, r)
		}
	}
}

func FuzzLegible(f *testing.F) {
	for _, s := range []string{"", "4 1/2", "≤…\x00\xff", "é", "日本"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := Legible(s)
		for _, r := range got {
			if !Covers(r) {
				t.Fatalf("%q is left in %q", r, got)
			}
		}
		if again := Legible(got); again != got {
			t.Fatalf("%q becomes %q, then %q", s, got, again)
		}
		if Advance(s, mm) != Advance(got, mm) {
			t.Fatalf("%q is not as wide as %q", s, got)
		}
	})
}

func TestFontIsACopyUnderItsLicence(t *testing.T) {
	a := Font()
	a[0] ^= 0xFF
	assert.False(t, bytes.Equal(a, Font()))
	licence, err := os.ReadFile("OFL.txt")
	require.NoError(t, err)
	assert.True(t, strings.Contains(string(licence), "SIL OPEN FONT LICENSE Version 1.1"))
}

func TestManyAtOnce(t *testing.T) {
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() { assert.NotZero(t, Advance("59 7/8", mm)) })
	}
	wait.Wait()
}

func anyText(rnd *rand.Rand, letters []rune) string {
	text := make([]rune, rnd.IntN(12))
	for i := range text {
		text[i] = letters[rnd.IntN(len(letters))]
	}
	return string(text)
}
