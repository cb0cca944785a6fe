package template

import (
	"bytes"
	"fmt"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dxf"
	"stilewright/render/sheet"
	"stilewright/render/tile"
)

func readFile(t testing.TB, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(text)
}

// run runs a program; one that is missing or fails fails the test.
func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	var faults bytes.Buffer
	program := exec.Command(name, args...)
	program.Stderr = &faults
	out, err := program.Output()
	require.NoError(t, err, "%s: %s%s", name, out, faults.String())
	return string(out)
}

const (
	dpi   = 600
	perMM = dpi / 25.4
	close = 0.05 // mm that a picture may be off
)

// A strip is one row of grey levels of a page, its place from the top in mm.
func strip(t *testing.T, path string, page int, down float64) []byte {
	t.Helper()
	root := filepath.Join(t.TempDir(), "strip")
	y := fmt.Sprint(int(math.Round(down * perMM)))
	n := fmt.Sprint(page)
	run(t, "pdftoppm", "-gray", "-singlefile", "-r", fmt.Sprint(dpi), "-f", n, "-l", n, "-x", "0", "-y", y, "-W", "100000", "-H", "1", path, root)
	data := []byte(readFile(t, root+".pgm"))
	var wide, high, most int
	_, err := fmt.Sscanf(string(data[:min(len(data), 40)]), "P5\n%d %d\n%d\n", &wide, &high, &most)
	require.NoError(t, err)
	require.Equal(t, 1, high)
	return data[len(data)-wide:]
}

// inks are the middles of the dark runs of a row, in mm from the left.
func inks(row []byte) (at []float64) {
	begin := -1
	for i := 0; i <= len(row); i++ {
		dark := i < len(row) && row[i] < 176
		if dark && begin < 0 {
			begin = i
		}
		if !dark && begin >= 0 {
			at = append(at, float64(begin+i)/2/perMM)
			begin = -1
		}
	}
	return at
}

// Lengths of a page, in mm: what the tile package documents and its tests hold.
const (
	margin, leftStrip, rimOfPage, lap = 10.0, 10.0, 2.0, 12.0
	lyingA4                           = 297.0
)

// The story stick as a printer would put it down: at 600 dpi, on all pages, its
// lines stand where the set has its marks.
func TestPrintedStick(t *testing.T) {
	s := sample(t, "attic-linen")
	paper, err := tile.Named("A4")
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "templates.pdf")
	var out bytes.Buffer
	require.NoError(t, Write(&out, s, paper, tile.Options{}))
	require.NoError(t, os.WriteFile(path, out.Bytes(), 0o600))
	require.Contains(t, run(t, "qpdf", "--check", path), "No syntax or stream encoding errors found")
	require.Contains(t, out.String(), "/PrintScaling /None")

	plates, lay, err := Plates(s, paper, tile.Options{})
	require.NoError(t, err)
	require.Equal(t, tile.Lying, lay)
	require.Contains(t, plates[0].Title, "SL, SR")
	down := margin + rimOfPage + plates[0].Height.MM() - 5 // the stile's stick is the lowest; its lines are 10 mm long
	window := lyingA4 - 2*margin - leftStrip
	var want, got []float64
	for _, p := range Places(s.Leaf, part(t, s, "SL")) {
		want = append(want, p.At.MM())
	}
	for column := range 8 {
		for _, x := range inks(strip(t, path, 2+column, down)) {
			at := x - margin - leftStrip - rimOfPage + float64(column)*(window-lap) - beyond.MM()
			inside := x > margin+leftStrip+1 && x < lyingA4-margin-1
			if inside && at > -1 && at < s.Leaf.Height.MM()+1 && !slices.ContainsFunc(got, func(o float64) bool { return math.Abs(o-at) < close }) {
				got = append(got, at)
			}
		}
	}
	slices.Sort(got)
	require.Len(t, got, len(compact(want)), "%.2f\n%.2f", got, compact(want))
	require.InDeltaSlice(t, compact(want), got, close)
}

// compact leaves out what is closer to its neighbour than two lines can be told
// apart.
func compact(at []float64) []float64 {
	return slices.CompactFunc(at, func(a, b float64) bool { return math.Abs(b-a) < close })
}

// The corner of the rabbet as printed: wall, panel and lite's edge at their
// distances.
func TestPrintedCorner(t *testing.T) {
	s := sample(t, "attic-linen")
	corner := seatCorners(s)[0]
	paper, err := tile.Named("A4")
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "corner.pdf")
	var out bytes.Buffer
	require.NoError(t, tile.Write(&out, corner, paper, tile.Options{}))
	require.NoError(t, os.WriteFile(path, out.Bytes(), 0o600))
	// 20 mm under the corner's upper edge, above all dimensions of its foot.
	row := inks(strip(t, path, 2, margin+rimOfPage+rim.MM()+20))
	wall := verticalAt(corner, sheet.Outline, sheet.Wide)
	edge := verticalAt(corner, sheet.Panel, sheet.Narrow)
	require.InDelta(t, s.Leaf.Panel.EdgeGap.MM(), (edge - wall).MM(), 1e-9)
	for _, x := range []length.Length{wall, edge} {
		page := margin + leftStrip + rimOfPage + x.MM()
		require.True(t, slices.ContainsFunc(row, func(at float64) bool { return math.Abs(at-page) < close }), "no line at %.3f mm of %.3f", page, row)
	}
	near := slices.DeleteFunc(row, func(at float64) bool {
		return at < margin+leftStrip+rimOfPage+wall.MM()-0.5 || at > margin+leftStrip+rimOfPage+edge.MM()+0.5
	})
	require.Len(t, near, 2)
	require.InDelta(t, s.Leaf.Panel.EdgeGap.MM(), near[1]-near[0], close)
}

// verticalAt is where a sheet's longest upright stroke of a layer and weight
// stands.
func verticalAt(p sheet.Sheet, layer sheet.Layer, weight sheet.Weight) (x length.Length) {
	longest := length.Length(0)
	for _, m := range p.Marks {
		stroke, ok := m.(sheet.Stroke)
		if !ok || stroke.Layer != layer || stroke.Weight != weight || stroke.Line != sheet.Continuous {
			continue
		}
		for _, e := range stroke.Path {
			if e.From.X == e.To.X && (e.From.Y-e.To.Y).Abs() > longest {
				longest, x = (e.From.Y - e.To.Y).Abs(), e.From.X
			}
		}
	}
	return x
}

// lines is read by ezdxf: it audits a file and prints its straight lines of a
// layer that begin on the strip's edge.
const lines = `
import sys, ezdxf
for path in sys.argv[1:]:
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    assert not audit.errors, (path, [str(e) for e in audit.errors])
    assert doc.units == 4, (path, doc.units)
    n = 0
    for e in doc.modelspace():
        n += 1
        if e.dxftype() == "LINE" and e.dxf.layer == "OUTLINE":
            print(path.split("/")[-1], "%.6f %.6f %.6f %.6f" % (e.dxf.start.x, e.dxf.start.y, e.dxf.end.x, e.dxf.end.y))
    assert n > 10, path
`

// Another program reads every template's DXF at full size, and finds the
// stick's lines at the set's marks.
func TestTemplatesAsDXF(t *testing.T) {
	s := sample(t, "attic-linen")
	dir := t.TempDir()
	args := []string{"-c", lines}
	for _, p := range Sheets(s) {
		var out bytes.Buffer
		require.NoError(t, dxf.Write(&out, p))
		path := filepath.Join(dir, p.Name+".dxf")
		require.NoError(t, os.WriteFile(path, out.Bytes(), 0o600))
		args = append(args, path)
		require.Contains(t, run(t, "ogrinfo", "-ro", "-so", "-al", path), "Layer name: entities")
	}
	var got, want []float64
	for line := range strings.Lines(run(t, "/usr/bin/python3", args...)) {
		var name string
		var x1, y1, x2, y2 float64
		_, err := fmt.Sscan(line, &name, &x1, &y1, &x2, &y2)
		require.NoError(t, err, line)
		if name == "stick-SL.dxf" && min(y1, y2) == 0 && x1 == x2 {
			got = append(got, x1-beyond.MM())
		}
	}
	for _, p := range Places(s.Leaf, part(t, s, "SL")) {
		want = append(want, p.At.MM())
	}
	slices.Sort(got)
	require.InDeltaSlice(t, want, got, 1e-6)
}

// All templates of a plate stand on it as they are, apart from one another.
func TestPlatesHoldTheTemplates(t *testing.T) {
	papers := []string{"A4", "letter", "A3", "tabloid", "arch-d", ""}
	sets := samples(t)
	for i, name := range slices.Sorted(maps.Keys(sets)) {
		s := sets[name]
		t.Run(name, func(t *testing.T) {
			all := Sheets(s)
			for _, paper := range []string{papers[i%len(papers)], papers[(i+1)%len(papers)]} {
				on := tile.Roll(610 * mm)
				if paper != "" {
					var err error
					on, err = tile.Named(paper)
					require.NoError(t, err)
				}
				plates, lay, err := Plates(s, on, tile.Options{})
				require.NoError(t, err)
				want, got := 0, 0
				for _, p := range all {
					want += len(p.Marks)
				}
				for _, p := range plates {
					got += len(p.Marks)
					require.NoError(t, p.Check())
					var edges []plane.Box
					for _, m := range p.Marks {
						if stroke, ok := m.(sheet.Stroke); ok && stroke.Layer == sheet.Border {
							box := stroke.Path.Bounds()
							require.False(t, slices.ContainsFunc(edges, box.Meets), "%s: templates on one another", paper)
							edges = append(edges, box)
						}
					}
					whole := plane.BoxOf(plane.At(0, 0), plane.At(p.Width, p.Height))
					for _, e := range edges {
						require.Equal(t, whole, whole.Join(e))
					}
				}
				require.Equal(t, want, got)
				pages, err := tile.Book(plates, on, tile.Options{Lay: lay})
				require.NoError(t, err)
				for _, p := range pages {
					require.Equal(t, pages[0].Width, p.Width, "all pages of one size")
					require.Equal(t, pages[0].Height, p.Height)
				}
			}
		})
	}
}

// The same set gives the same bytes.
func TestSameBytes(t *testing.T) {
	paper, err := tile.Named("letter")
	require.NoError(t, err)
	var one, two bytes.Buffer
	require.NoError(t, Write(&one, sample(t, "gallery-four"), paper, tile.Options{}))
	require.NoError(t, Write(&two, sample(t, "gallery-four"), paper, tile.Options{}))
	require.True(t, bytes.Equal(one.Bytes(), two.Bytes()))
}
