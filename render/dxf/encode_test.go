package dxf

import (
	"flag"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/render/sheet"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

// Text on a sheet and the bytes it becomes.
var encodings = []struct{ text, bytes string }{
	{"Attic landing", "Attic landing"},
	{"Türblatt 2° × 3 ±1 ½", "T\xfcrblatt 2\xb0 \xd7 3 \xb11 \xbd"},
	{"– “x” €…", `- "x" EUR...`},
	{"Łódź Čáp Œ", "L\xf3dz C\xe1p OE"},
	{"⌀5 ∅6", "%%c5 %%c6"},
	{"59⅞ and ⅜", "59 7/8 and 3/8"},
	{"3⁄8", "3/8"},
	{"≈ 12 ≤ 13", "~ 12 <= 13"},
	{"two\nlines\r\n\ttab", "two lines   tab"},
	{"nul\x00bell\x07", "nul bell "},
	{"50%", "50%"},
	{"%%c %%%", "% %c % % %"},
	{"%⌀", "% %%c"},
	{"⌀%", "%%c%"},
	{`\U+00E9 \M+182 \u+0`, `\ U+00E9 \ M+182 \ u+0`},
	{`C:\Users`, `C:\Users`},
	{"^J ^b", "^ J ^ b"},
	{"戸 🚪", "? ?"},
	{"\u202egnp", "?gnp"},
	{"zero\u200bwidth\u00a0space", "zerowidth space"},
	{"bad \xff\xc3 bytes", "bad ?? bytes"},
	{"", ""},
}

func TestEncode(t *testing.T) {
	for _, c := range encodings {
		require.Equal(t, c.bytes, encode(c.text), c.text)
	}
}

func TestEncodeFigure(t *testing.T) {
	require.Equal(t, `\{a\} \\P < > 59 7/8 %%c5`, encodeFigure(`{a} \P <> 59⅞ ⌀5`))
}

func TestLongTextIsCut(t *testing.T) {
	require.Equal(t, strings.Repeat("a", longestString), encode(strings.Repeat("a", longestString)))
	cut := encode(strings.Repeat("a", longestString+1))
	require.Equal(t, strings.Repeat("a", longestString-3)+"...", cut)
	require.NotContains(t, strings.ReplaceAll(encode(strings.Repeat("⌀", 2000)), "%%c", ""), "%", "no half of a code stays")
}

// Whatever the text, no byte ends a line and no code stands but %%c.
func TestEncodeMakesNoCodes(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	alphabet := []rune("%%%^^\\\\UuMm++cdp⌀⅞9\n\t\x00é€≈🚪a ")
	for range 20_000 {
		text := make([]rune, rnd.IntN(12))
		for i := range text {
			text[i] = alphabet[rnd.IntN(len(alphabet))]
		}
		got := encode(string(text))
		for _, b := range []byte(got) {
			require.GreaterOrEqual(t, b, byte(' '), "seed %d: %q", *seed, string(text))
		}
		diameters := strings.Count(string(text), "⌀")
		require.Equal(t, diameters, strings.Count(got, "%%"), "seed %d: %q gives %q", *seed, string(text), got)
		require.Equal(t, diameters, strings.Count(got, "%%c"), "seed %d: %q gives %q", *seed, string(text), got)
		for _, code := range []string{`\U+`, `\u+`, `\M+`, `\m+`} {
			require.NotContains(t, got, code, "seed %d: %q", *seed, string(text))
		}
		require.Equal(t, strings.Count(got, "^"), strings.Count(got, "^ "), "seed %d: %q gives %q", *seed, string(text), got)
	}
}

// Two outside readers show what was meant. The caret's code and %%c are undone
// by them; ezdxf draws the diameter as Ø and GDAL as ⌀.
func TestReadersShowText(t *testing.T) {
	var marks []sheet.Mark
	for _, c := range encodings {
		marks = append(marks, sheet.Text{Layer: sheet.Notes, Height: 5 * mm, String: c.text})
	}
	s := page(marks...)
	texts := only(sound(t, s), "TEXT")
	require.Len(t, texts, len(encodings)-1, "the empty one is left out")
	shown := gdalTexts(gdal(t, written(t, s)))
	for i, want := range []string{
		"Attic landing", "Türblatt 2° × 3 ±1 ½", `- "x" EUR...`, "Lódz Cáp OE", "⌀5 ⌀6", "59 7/8 and 3/8", "3/8", "~ 12 <= 13",
		"two lines   tab", "nul bell ", "50%", "% %c % % %", "% ⌀", "⌀%", `\ U+00E9 \ M+182 \ u+0`, `C:\Users`,
		"^J ^b", "? ?", "?gnp", "zerowidth space", "bad ?? bytes",
	} {
		require.Equal(t, strings.ReplaceAll(want, "⌀", "Ø"), texts[i].Text)
		require.Contains(t, shown, want)
	}
}
