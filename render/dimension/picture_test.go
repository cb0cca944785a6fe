package dimension

import (
	"flag"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

var pictures = flag.String("pictures", "", "folder to write pictures of the test layouts to, for looking at")

// picture writes marks as SVG and PNG, if pictures are wanted. It is no writer: it
// knows only what this package draws.
func picture(t *testing.T, name string, marks []sheet.Mark, views ...plane.Box) {
	t.Helper()
	if *pictures == "" {
		return
	}
	box, ok := Extent(marks)
	require.True(t, ok)
	for _, v := range views {
		box = box.Join(v)
		o := sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Wide, Path: v.Path()}
		marks = append(marks, o)
	}
	box = box.Grow(5 * length.Millimetre)
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%.2fmm" height="%.2fmm" viewBox="%.3f %.3f %.3f %.3f">`,
		box.Width().MM(), box.Height().MM(), box.Min.X.MM(), -box.Max.Y.MM(), box.Width().MM(), box.Height().MM())
	fmt.Fprintf(&b, `<rect x="%.3f" y="%.3f" width="100%%" height="100%%" fill="white"/>`, box.Min.X.MM(), -box.Max.Y.MM())
	for _, m := range marks {
		d, ok := m.(sheet.Dimension)
		if !ok {
			svgMark(&b, m)
			continue
		}
		for _, s := range d.Strokes {
			svgMark(&b, s)
		}
		for _, f := range d.Fills {
			svgMark(&b, f)
		}
		for _, t := range d.Texts {
			svgMark(&b, t)
		}
	}
	b.WriteString("</svg>")
	dir := *pictures
	conf := filepath.Join(dir, "fonts.conf")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "letters.ttf"), lettering.Font(), 0o644))
	require.NoError(t, os.WriteFile(conf, fmt.Appendf(nil, "<fontconfig><dir>%s</dir></fontconfig>", dir), 0o644))
	file := filepath.Join(dir, name+".svg")
	require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o644))
	cmd := exec.Command("rsvg-convert", "--zoom", "2", "--output", filepath.Join(dir, name+".png"), file)
	cmd.Env = append(os.Environ(), "FONTCONFIG_FILE="+conf)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", out)
}

func svgMark(b *strings.Builder, m sheet.Mark) {
	points := func(p plane.Path) string {
		var s strings.Builder
		for i, e := range p.Flatten(chordError) {
			if i == 0 {
				fmt.Fprintf(&s, "%.3f,%.3f ", e.From.X.MM(), -e.From.Y.MM())
			}
			fmt.Fprintf(&s, "%.3f,%.3f ", e.To.X.MM(), -e.To.Y.MM())
		}
		return s.String()
	}
	switch m := m.(type) {
	case sheet.Stroke:
		fmt.Fprintf(b, `<polyline points="%s" fill="none" stroke="black" stroke-width="%.3f"/>`, points(m.Path), m.Weight.Width().MM())
	case sheet.Fill:
		for _, o := range m.Region {
			fmt.Fprintf(b, `<polygon points="%s"/>`, points(o))
		}
	case sheet.Text:
		turn := ""
		if m.Rise {
			turn = fmt.Sprintf(` transform="rotate(-90 %.3f %.3f)"`, m.At.X.MM(), -m.At.Y.MM())
		}
		fmt.Fprintf(b, `<text x="%.3f" y="%.3f" font-family="%s" font-size="%.3f" text-anchor="%s"%s>%s</text>`,
			m.At.X.MM(), -m.At.Y.MM(), lettering.Family, lettering.Size(m.Height).MM(),
			[...]string{"start", "middle", "end"}[m.Align], turn, html.EscapeString(m.String))
	}
}
