package tile

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/pdf"
	"stilewright/render/sheet"
)

// run runs a program on a file; one that is missing or complains fails the
// test.
func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	var faults bytes.Buffer
	program := exec.Command(name, args...)
	program.Stderr = &faults
	out, err := program.Output()
	require.NoError(t, err, "%s: %s%s", name, out, faults.String())
	require.Empty(t, faults.String(), name)
	return string(out)
}

func kept(t *testing.T, data []byte) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "tiles.pdf")
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}

func fileOf(t *testing.T, s sheet.Sheet, p Paper, o Options) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Write(&out, s, p, o))
	return out.Bytes()
}

// A ruled is a straight line in a content stream, in points of the page.
type ruled struct{ x1, y1, x2, y2 float64 }

// rules reads the straight lines of a layer from each page of an uncompressed
// PDF, by its operators alone: cm, BDC, m, l, h.
func rules(t *testing.T, data []byte, layer sheet.Layer) (pages [][]ruled) {
	t.Helper()
	for _, stream := range regexp.MustCompile(`(?s)\nstream\n(.*?)\nendstream`).FindAllSubmatch(data, -1) {
		if !bytes.Contains(stream[1], []byte(" cm\n")) {
			continue // the typeface
		}
		var lines []ruled
		var sx, sy float64
		var begun, from [2]float64
		inside := false
		for line := range strings.SplitSeq(string(stream[1]), "\n") {
			words := strings.Fields(line)
			if len(words) == 0 {
				continue
			}
			var n []float64
			for _, w := range words[:len(words)-1] {
				x, err := strconv.ParseFloat(w, 64)
				if err != nil {
					break
				}
				n = append(n, x)
			}
			to := begun
			switch words[len(words)-1] {
			case "cm":
				require.Equal(t, []float64{0, 0, 0, 0}, []float64{n[1], n[2], n[4], n[5]})
				sx, sy = n[0], n[3]
			case "BDC":
				inside = words[1] == "/"+layer.String()
			case "m":
				begun = [2]float64{n[0] * sx, n[1] * sy}
				from = begun
			case "l":
				to = [2]float64{n[0] * sx, n[1] * sy}
				fallthrough
			case "h":
				if inside {
					lines = append(lines, ruled{from[0], from[1], to[0], to[1]})
				}
				from = to
			}
		}
		pages = append(pages, lines)
	}
	return pages
}

// long lists the lengths along an axis of the lines that run along it, in millimetres of the
// paper once the printer has shrunk it by the correction, shortest first.
func long(lines []ruled, alongX bool, factor float64) (all []float64) {
	for _, l := range lines {
		dx, dy := math.Abs(l.x2-l.x1), math.Abs(l.y2-l.y1)
		if !alongX {
			dx, dy = dy, dx
		}
		if dy < 1e-6 && dx > 0 {
			all = append(all, dx/72*25.4/factor)
		}
	}
	slices.Sort(all)
	return all
}

// Check bars on every page and squares on the first are true within 0.01 mm,
// as the content stream has them, whatever the correction.
func TestBarsAreTrueInTheFile(t *testing.T) {
	const true100, true4in, within = 100.0, 101.6, 0.01
	rnd := rand.New(rand.NewPCG(*seed, 5))
	for range 30 {
		o := anyOptions(rnd)
		a4, err := Named([]string{"A4", "letter", "A3", "tabloid"}[rnd.IntN(4)])
		require.NoError(t, err)
		s := stick(900, 300)
		pages := rules(t, fileOf(t, s, a4, o), sheet.Dimensions)
		require.Greater(t, len(pages), 2)
		f := o.Correction.Factors()
		for i, lines := range pages {
			for _, axis := range []struct {
				alongX bool
				factor float64
			}{{true, f.X}, {false, f.Y}} {
				got := long(lines, axis.alongX, axis.factor)
				got = slices.DeleteFunc(got, func(l float64) bool { return l < 50 }) // ticks
				want := []float64{true100}
				if i == 0 { // two sides of each square besides
					want = []float64{true100, true100, true100, true4in, true4in}
				}
				require.InDeltaSlice(t, want, got, within, "seed %d: page %d, along X %v", *seed, i+1, axis.alongX)
			}
		}
	}
	// A roll's only page has them too.
	lines := rules(t, fileOf(t, stick(900, 300), Roll(610*mm), Options{}), sheet.Dimensions)
	require.Len(t, lines, 1)
	require.InDeltaSlice(t, []float64{true100, true100, true100, true4in, true4in}, long(lines[0], true, 1)[3:], within)
	require.NotEmpty(t, long(rules(t, fileOf(t, stick(900, 300), Roll(610*mm), Options{}), sheet.Outline)[0], true, 1), "it reads lines of other layers too")
}

// Other readers find the file sound, its pages of the paper's size, and its
// words.
func TestOutsideReaders(t *testing.T) {
	for name, points := range map[string]string{"A4": "841.89 x 595.276 pts (A4)", "letter": "792 x 612 pts (letter)", "tabloid": "792 x 1224 pts", "A3": "841.89 x 1190.55 pts (A3)"} {
		paper, err := Named(name)
		require.NoError(t, err)
		o := Options{Part: "Stile SL", Revision: "C", Correction: pdf.Correction{X: 1.004, Y: 0.997}}
		path := kept(t, fileOf(t, stick(900, 300), paper, o))
		require.Contains(t, run(t, "qpdf", "--check", path), "No syntax or stream encoding errors found")
		about := run(t, "pdfinfo", "-f", "1", "-l", "99", path)
		of := strings.Count(about, " size: ") - 1 // that of the file
		require.Equal(t, of, strings.Count(about, points), "%s: all pages one size: %s", name, about)
		for n := range of {
			page := fmt.Sprint(n + 1)
			words := run(t, "pdftotext", "-raw", "-f", page, "-l", page, path, "-")
			for _, want := range []string{"Stile SL", "REV C", fmt.Sprintf("PAGE %s OF %d", page, of), "PRINT AT 100 %", "100 mm"} {
				require.Contains(t, words, want, "%s page %s", name, page)
			}
		}
	}
}

// A picture is a page's grey levels.
type picture struct {
	wide, high int
	levels     []byte
}

const (
	dpi   = 600
	perMM = dpi / 25.4
)

// drawn draws a page.
func drawn(t *testing.T, path string, page int) picture {
	t.Helper()
	root := filepath.Join(t.TempDir(), "page")
	n := strconv.Itoa(page)
	run(t, "pdftoppm", "-gray", "-singlefile", "-r", strconv.Itoa(dpi), "-f", n, "-l", n, path, root)
	data, err := os.ReadFile(root + ".pgm")
	require.NoError(t, err)
	var p picture
	var most int
	_, err = fmt.Sscanf(string(data[:min(len(data), 40)]), "P5\n%d %d\n%d\n", &p.wide, &p.high, &most)
	require.NoError(t, err)
	p.levels = data[len(data)-p.wide*p.high:]
	return p
}

// What counts as dark, and what as some ink: half a pixel of it in one place may be a
// little less in the other.
const (
	dark = 128
	some = 176
)

func (p picture) under(level byte, x, y int) bool {
	return x >= 0 && y >= 0 && x < p.wide && y < p.high && p.levels[y*p.wide+x] < level
}

// inkNear tells whether there is ink within rebuilt of a place, in pixels.
func (p picture) inkNear(x, y float64) bool {
	const reach = rebuilt * perMM
	for iy := int(math.Floor(y - reach)); iy <= int(math.Ceil(y+reach)); iy++ {
		for ix := int(math.Floor(x - reach)); ix <= int(math.Ceil(x+reach)); ix++ {
			if p.under(some, ix, iy) && math.Hypot(float64(ix)+0.5-x, float64(iy)+0.5-y) <= reach {
				return true
			}
		}
	}
	return false
}

// astray counts the dark pixels of a within a box of the drawing that b has no
// ink for. Each picture has the drawing's zero at its own place of its page,
// in millimetres from the lower left.
func astray(a, b picture, zeroA, zeroB plane.Point, box plane.Box) (missing, seen int) {
	for y := range a.high {
		for x := range a.wide {
			if !a.under(dark, x, y) {
				continue
			}
			atX := (float64(x)+0.5)/perMM - zeroA.X.MM()
			atY := (float64(a.high-y)-0.5)/perMM - zeroA.Y.MM()
			if !box.Holds(plane.At(length.Round(atX), length.Round(atY))) {
				continue
			}
			seen++
			if !b.inkNear((atX+zeroB.X.MM())*perMM, float64(b.high)-(atY+zeroB.Y.MM())*perMM) {
				missing++
			}
		}
	}
	return missing, seen
}

// Drawn at 600 dots to the inch, the drawing and the tiles laid where they
// belong have the same ink, within 0.05 mm.
func TestTilesRebuildTheDrawingInPixels(t *testing.T) {
	a4, err := Named("A4")
	require.NoError(t, err)
	s := blank(381, 127, // whole pixels
		stroke(plane.RoundedRect(plane.BoxOf(at(10, 20), at(370, 100)), 35*mm)...),
		stroke(plane.Line(at(12, 110), at(369, 121))),
		sheet.Stroke{Layer: sheet.HiddenEdge, Line: sheet.Hidden, Path: plane.Circle(at(265, 60), 33*mm)},
		sheet.Stroke{Layer: sheet.Hardware, Line: sheet.Centre, Path: plane.Path{plane.Line(at(20, 60), at(360, 61))}},
		sheet.Fill{Layer: sheet.Panel, Region: plane.Region{plane.Circle(at(262, 30), 8*mm)}},
		note("R1", at(100, 80)), note("½", at(261, 90)))
	d := tilesOf(t, s, a4, Options{})
	require.Len(t, d.order, 2)

	var whole, tiles bytes.Buffer
	require.NoError(t, pdf.Write(&whole, []sheet.Sheet{s}, pdf.Options{}))
	var bare []sheet.Sheet // the drawing's marks alone
	for _, spot := range d.order {
		page := d.pages[spot]
		page.Marks = slices.DeleteFunc(slices.Clone(page.Marks), func(m sheet.Mark) bool {
			return slices.Contains([]sheet.Layer{sheet.Border, sheet.CentreMark, sheet.Dimensions, sheet.Notes}, layerOf(m))
		})
		bare = append(bare, page)
	}
	require.NoError(t, pdf.Write(&tiles, bare, pdf.Options{}))
	original := drawn(t, kept(t, whole.Bytes()), 1)
	path := kept(t, tiles.Bytes())
	for i, spot := range d.order {
		box := d.grid.box(spot)
		zero := plane.At(d.layout.window.Min.X-box.Min.X, d.layout.window.Min.Y-box.Min.Y)
		page := drawn(t, path, i+1)
		inner := box.Grow(-mm / 2)
		missing, seen := astray(original, page, plane.Point{}, zero, inner)
		require.Greater(t, seen, 10_000)
		require.Zero(t, missing, "page %d lacks ink", i+1)
		missing, seen = astray(page, original, zero, plane.Point{}, inner)
		require.Greater(t, seen, 10_000)
		require.Zero(t, missing, "page %d has ink of its own", i+1)
		// A tile that lies a tenth off is seen.
		missing, _ = astray(original, page, plane.Point{}, zero.Add(mm/10, mm/10), inner)
		require.Greater(t, missing, 1000)
	}
}
