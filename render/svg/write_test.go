package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image"
	"image/png"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

func at(x, y length.Length) plane.Point { return plane.At(x*length.Millimetre, y*length.Millimetre) }

func line(a, b plane.Point) sheet.Stroke {
	return sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Wide, Path: plane.Path{plane.Line(a, b)}}
}

func page120(marks ...sheet.Mark) sheet.Sheet {
	return sheet.Sheet{
		Name: "2-leaf", Title: "Leaf", Description: "One leaf from the front.",
		Width: 120 * length.Millimetre, Height: 80 * length.Millimetre, Marks: marks,
	}
}

func written(t testing.TB, s sheet.Sheet) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Write(&out, s))
	return out.String()
}

// sampler holds one mark of every kind.
func sampler() sheet.Sheet {
	text := sheet.Text{Layer: sheet.Notes, At: at(60, 10), Height: 2_500 * length.Micrometre, Align: sheet.Middle, String: "Notes", Advance: at(9, 0).X}
	rise := text
	rise.Rise, rise.Align, rise.Advance = true, sheet.End, 0
	hole := plane.Rect(at(42, 32), at(48, 38)).Reverse()
	return page120(
		sheet.Fill{Layer: sheet.Panel, Tone: sheet.Tint, Region: plane.Region{plane.Rect(at(40, 30), at(50, 40)), hole}},
		line(at(10, 20), at(110, 20)),
		sheet.Stroke{Layer: sheet.Outline, Line: sheet.Hidden, Path: plane.Path{plane.Arc(at(30, 50), at(20, 60), at(20, 50), plane.Left)}},
		sheet.Stroke{Layer: sheet.Panel, Path: plane.Circle(at(80, 50), at(5, 0).X)},
		text, rise,
		sheet.Dimension{
			Layer: sheet.Dimensions, A: at(10, 20), B: at(20, 20), Line: at(10, 25), Horizontal: true, Figure: "1/2",
			Strokes: []sheet.Stroke{{Layer: sheet.Dimensions, Path: plane.Path{plane.Line(at(10, 25), at(20, 25))}}},
			Fills:   []sheet.Fill{{Layer: sheet.Dimensions, Region: plane.Region{plane.Polygon(at(10, 25), at(12, 24), at(12, 26))}}},
			Texts:   []sheet.Text{{Layer: sheet.Dimensions, At: at(15, 26), Height: length.Millimetre, String: "1/2"}},
		},
	)
}

// outside runs a program on a file; one that is missing fails the test.
func outside(t *testing.T, svg string, name string, args ...string) []byte {
	t.Helper()
	file := filepath.Join(t.TempDir(), "sheet.svg")
	require.NoError(t, os.WriteFile(file, []byte(svg), 0o600))
	var faults bytes.Buffer
	run := exec.Command(name, append(args, file)...)
	run.Stderr = &faults
	out, err := run.Output()
	require.NoError(t, err, "%s: %s", name, faults.String())
	require.Empty(t, faults.String(), name)
	return out
}

// raster draws the file with rsvg-convert, ten pixels to a millimetre.
func raster(t *testing.T, svg string) image.Image {
	t.Helper()
	picture, err := png.Decode(bytes.NewReader(outside(t, svg, "rsvg-convert", "-d", "254", "-p", "254", "-f", "png")))
	require.NoError(t, err)
	return picture
}

func dark(p image.Image, x, y int) bool {
	r, _, _, a := p.At(x, y).RGBA()
	return a > 0x7fff && r < 0x7fff
}

// darkBox is the smallest box of pixels that holds all dark ones.
func darkBox(p image.Image) (box image.Rectangle) {
	for y := p.Bounds().Min.Y; y < p.Bounds().Max.Y; y++ {
		for x := p.Bounds().Min.X; x < p.Bounds().Max.X; x++ {
			if dark(p, x, y) {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return box
}

func TestWellFormed(t *testing.T) {
	outside(t, written(t, sampler()), "xmllint", "--noout")
}

// The marks as written. The frame of reference: paper 80 mm high, y up.
func TestElements(t *testing.T) {
	got := written(t, sampler())
	for _, want := range []string{
		`width="120mm" height="80mm" viewBox="0 0 120 80"`,
		`<title>Leaf</title>`, `<desc>One leaf from the front.</desc>`,
		`@page{size:120mm 80mm;margin:0}`, `@media print{`,
		`<g id="sheet-2-leaf-panel" class="layer-panel" >`, `<g id="sheet-2-leaf-panel-2" class="layer-panel" >`,
		`<path d="M40 50L50 50L50 40L40 40ZM42 48L42 42L48 42L48 48Z" class="tone-tint" />`,
		`<path d="M10 60L110 60" class="weight-wide" />`,
		`<path d="M30 30A10 10 0 0 0 20 20" class="weight-narrow line-hidden" />`,
		`<circle cx="80.000" cy="30.000" r="5.000" class="weight-narrow" />`,
		`<text x="60.000" y="70.000" font-size="3.478" text-anchor="middle" textLength="9" lengthAdjust="spacingAndGlyphs" >Notes</text>`,
		`<text x="60.000" y="70.000" font-size="3.478" text-anchor="end" transform="rotate(-90 60 70)" >Notes</text>`,
		`.line-hidden{stroke-dasharray:3 0.75}`, `.weight-frame{fill:none;stroke:#000;stroke-width:0.7}`,
		`<path d="M10 55L12 56L12 54Z" class="tone-ink" />`,
	} {
		require.Contains(t, got, want)
	}
	require.Equal(t, strings.Count(got, "<g "), strings.Count(got, "</g>"))
}

func TestHundredMillimetres(t *testing.T) {
	picture := raster(t, written(t, page120(line(at(10, 20), at(110, 20)))))
	require.Equal(t, image.Rect(0, 0, 1200, 800), picture.Bounds(), "the page")
	// From x = 10 mm, 0.5 mm wide round y = 20 mm from below; a row of pixels
	// half covered may count or not.
	ink := darkBox(picture)
	require.True(t, ink.In(image.Rect(100, 597, 1100, 603)), "ink in %v", ink)
	require.GreaterOrEqual(t, ink.Dy(), 4)
	require.Equal(t, 1000, ink.Dx(), "100 mm at 254 dpi")
}

// Arcs go the right way round: of each turn, the ink stands where the arc is,
// and not on the other side of its chord.
func TestArcsOnTheRightSide(t *testing.T) {
	for name, c := range map[string]struct {
		from, to plane.Point
		turn     plane.Turn
		box      image.Rectangle // in pixels
	}{
		"left quarter":        {at(60, 40), at(50, 50), plane.Left, image.Rect(500, 300, 600, 400)},
		"right quarter":       {at(50, 50), at(60, 40), plane.Right, image.Rect(500, 300, 600, 400)},
		"left three quarters": {at(50, 50), at(60, 40), plane.Left, image.Rect(400, 300, 600, 500)},
		"right three quarters": {at(60, 40), at(50, 50), plane.Right,
			image.Rect(400, 300, 600, 500)},
	} {
		arc := plane.Arc(c.from, c.to, at(50, 40), c.turn)
		picture := raster(t, written(t, page120(sheet.Stroke{Layer: sheet.Outline, Path: plane.Path{arc}})))
		got := darkBox(picture)
		for _, d := range []int{got.Min.X - c.box.Min.X, got.Min.Y - c.box.Min.Y, got.Max.X - c.box.Max.X, got.Max.Y - c.box.Max.Y} {
			require.LessOrEqual(t, max(d, -d), 2, "%s: ink in %v, arc in %v", name, got, c.box)
		}
		middle := arc.Middle()
		x, y := int(middle.X.MM()*10), int(800-middle.Y.MM()*10)
		require.True(t, dark(picture, x, y), name)
	}
}

// A hole shows the paper, a paper fill hides what was drawn before.
func TestFillsDrawn(t *testing.T) {
	region := plane.Region{plane.Rect(at(20, 20), at(40, 40)), plane.Rect(at(25, 25), at(30, 30)).Reverse()}
	picture := raster(t, written(t, page120(
		sheet.Fill{Layer: sheet.Panel, Region: region},
		sheet.Fill{Layer: sheet.Outline, Tone: sheet.Paper, Region: plane.Region{plane.Rect(at(35, 35), at(40, 40))}},
		sheet.Fill{Layer: sheet.Outline},
	)))
	for _, c := range []struct {
		x, y int
		dark bool
	}{{22, 22, true}, {27, 27, false}, {37, 37, false}, {33, 33, true}, {50, 50, false}} {
		require.Equal(t, c.dark, dark(picture, c.x*10, 800-c.y*10), "at %d, %d mm", c.x, c.y)
	}
}

// Texts to try on every place that a person's words reach.
var hostile = []string{
	`"quoted" 'twice'`, `<script>alert(1)</script>`, `a & b &amp; c`, `]]>`, `--> <!--`, "🚪戸", "nul\x00bell\x07",
	"two\nlines\r\ttab", "\u202eright to left", "bad \xff bytes", "\ufffe", "%s%d", "onload=\"x\"", "⌀5 59⅞ ≈",
}

func TestHostileWords(t *testing.T) {
	for _, words := range hostile {
		s := page120(sheet.Text{Layer: sheet.Notes, Height: length.Millimetre, String: words})
		s.Title, s.Description = words, words
		got := written(t, s)
		outside(t, got, "xmllint", "--noout")
		elements, texts := parse(t, got)
		require.Equal(t, []string{"svg", "title", "desc", "style", "rect", "g", "text"}, elements, words)
		want := strings.NewReplacer("\x00", " ", "\x07", " ", "\n", " ", "\r", " ", "\t", " ", "\xff", "\ufffd", "\ufffe", "\ufffd").Replace(words)
		for _, element := range []string{"title", "desc", "text"} {
			require.Equal(t, want, texts[element], element)
		}
	}
}

// parse reads the file strictly and lists its elements and their text.
func parse(t *testing.T, svg string) (elements []string, texts map[string]string) {
	t.Helper()
	texts = map[string]string{}
	var open []string
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return elements, texts
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			elements, open = append(elements, token.Name.Local), append(open, token.Name.Local)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				texts[open[len(open)-1]] += string(token)
			}
		}
	}
}

func TestSheetNameInIDs(t *testing.T) {
	s := sampler()
	s.Name = `a'b&(c)`
	got := written(t, s)
	outside(t, got, "xmllint", "--noout")
	require.Contains(t, got, `id="sheet-a-b--c-"`)
}

func TestIDsUnique(t *testing.T) {
	var marks []sheet.Mark
	for range 3 {
		marks = append(marks, sampler().Marks...)
	}
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(written(t, page120(marks...)), -1) {
		require.False(t, seen[m[1]], m[1])
		seen[m[1]] = true
	}
	require.Len(t, seen, 16, "the sheet and five groups each time")
}

func TestSameBytesNoMinusZero(t *testing.T) {
	tiny := line(plane.At(-1, -1), plane.At(-400, 80*length.Millimetre+300)) // nanometres: less than is written
	s := sampler()
	s.Marks = append(s.Marks, tiny, sheet.Text{Layer: sheet.Notes, At: plane.At(-400, 80*length.Millimetre+300), Height: length.Millimetre, String: "x", Rise: true})
	got := written(t, s)
	require.Equal(t, got, written(t, s))
	require.NotRegexp(t, regexp.MustCompile(`-0(\.0*)?[^.0-9]`), got)
	require.Contains(t, got, `<path d="M0 80L0 0"`)
}

func TestRefuses(t *testing.T) {
	require.ErrorContains(t, Write(io.Discard, sheet.Sheet{}), "no name")
	require.ErrorContains(t, Write(io.Discard, page120(sheet.Stroke{})), "mark 0")
}

// full fails after n bytes, as a full disk does.
type full struct{ left int }

var errFull = errors.New("no space left")

func (f *full) Write(p []byte) (int, error) {
	if f.left -= len(p); f.left < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestWriteErrorsReturned(t *testing.T) {
	long := sampler()
	for range 2_000 {
		long.Marks = append(long.Marks, line(at(0, 0), at(1, 1)))
	}
	whole := len(written(t, long))
	for _, n := range []int{0, 100, whole / 2, whole - 1} {
		require.ErrorIs(t, Write(&full{n}, long), errFull)
	}
	require.NoError(t, Write(&full{whole}, long))
}

func BenchmarkWrite(b *testing.B) {
	var marks []sheet.Mark
	for i := range 10_000 {
		o := plane.At(length.Length(i%100)*length.Millimetre, length.Length(i/100)*length.Millimetre)
		switch i % 3 {
		case 0:
			marks = append(marks, line(o, o.Add(length.Millimetre, length.Millimetre)))
		case 1:
			marks = append(marks, sheet.Stroke{Layer: sheet.Outline, Path: plane.Path{plane.Arc(o.Add(length.Millimetre, 0), o.Add(0, length.Millimetre), o, plane.Left)}})
		default:
			marks = append(marks, sheet.Text{Layer: sheet.Notes, At: o, Height: length.Millimetre, String: "59 7/8"})
		}
	}
	s := page120(marks...)
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}
