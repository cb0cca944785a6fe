package lettering

import (
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
)

// librsvg sets the embedded font as wide as we say. Two capital letters H stand
// at the ends, so that the bearings of the first and the last letter drop out of the
// difference. 2 %: the renderer may kern a pair here and there.
func TestRendererAgreesOnWidth(t *testing.T) {
	const height, pixelsPerMM = 5 * length.Millimetre, 20.0
	bare := inkWidth(t, "HH", height, pixelsPerMM)
	for _, text := range []string{
		"59 7/8", "1520.5", "= 3 × 24 1/8", "4 1/2 REF", "RAIL CENTRES", "⌀ 5 deep 12 ½",
		"Stopfen, Größe 7 (gefräst)",
	} {
		got := (inkWidth(t, "H"+Legible(text)+"H", height, pixelsPerMM) - bare) / pixelsPerMM
		want := Advance(text, height).MM()
		if math.Abs(got-want) > 0.02*want {
			t.Errorf("%q is %.2f mm wide when rendered, we say %.2f mm", text, got, want)
		}
	}
}

// A renderer that kerns draws narrower than we reckon, never wider, so that
// lettering kept apart stays apart.
func TestKerningOnlyNarrows(t *testing.T) {
	const height, pixelsPerMM = 5 * length.Millimetre, 20.0
	bare := inkWidth(t, "HH", height, pixelsPerMM)
	for _, text := range []string{"To the back: AV, LT", "AVAVAV", "Top rail, Fascia. P. L'Y"} {
		got := (inkWidth(t, "H"+Legible(text)+"H", height, pixelsPerMM) - bare) / pixelsPerMM
		want := Advance(text, height).MM()
		if got > want+2/pixelsPerMM || got < 0.8*want {
			t.Errorf("%q is %.2f mm wide when rendered, we say %.2f mm", text, got, want)
		}
	}
}

// inkWidth renders the text with rsvg-convert, which sees no font but ours, and
// returns the width of what is dark, in pixels.
func inkWidth(t *testing.T, text string, height length.Length, pixelsPerMM float64) float64 {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "letters.ttf"), Font(), 0o644))
	conf := filepath.Join(dir, "fonts.conf")
	require.NoError(t, os.WriteFile(conf, fmt.Appendf(nil,
		"<fontconfig><dir>%s</dir><cachedir>%s/cache</cachedir></fontconfig>", dir, dir), 0o644))
	svg := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="4000" height="400">`+
		`<rect width="4000" height="400" fill="white"/>`+
		`<text x="50" y="250" xml:space="preserve" font-family="%s" font-size="%.4f">%s</text></svg>`,
		Family, Size(height).MM()*pixelsPerMM, text)
	cmd := exec.Command("rsvg-convert", "--output", filepath.Join(dir, "text.png"))
	cmd.Env = append(os.Environ(), "FONTCONFIG_FILE="+conf)
	cmd.Stdin = strings.NewReader(svg)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "rsvg-convert (Debian librsvg2-bin) is needed: %s", out)
	file, err := os.Open(filepath.Join(dir, "text.png"))
	require.NoError(t, err)
	defer file.Close()
	img, err := png.Decode(file)
	require.NoError(t, err)
	first, last := darkColumns(img)
	require.Less(t, first, last, "nothing was drawn for %q", text)
	return float64(last - first + 1)
}

func darkColumns(img image.Image) (first, last int) {
	b := img.Bounds()
	first, last = b.Max.X, b.Min.X-1
	for x := b.Min.X; x < b.Max.X; x++ {
		for y := b.Min.Y; y < b.Max.Y; y++ {
			if r, _, _, _ := img.At(x, y).RGBA(); r < 0x8000 {
				first, last = min(first, x), max(last, x)
				break
			}
		}
	}
	return first, last
}
