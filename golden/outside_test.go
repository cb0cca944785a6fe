package golden

import (
	"encoding/json"
	"fmt"
	"image"
	imagedraw "image/draw"
	_ "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/render/sheet"
)

// Outside checks: whole packets, judged by programs we did not write. One that
// is missing fails the test; cmd/test.sh installs them.

// laidOut writes a sample's packet to the disk.
func laidOut(t *testing.T, s sample) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, write(dir, s.files))
	return dir
}

func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	told, err := exec.Command(name, args...).CombinedOutput()
	require.NoError(t, err, "%s %v:\n%s", name, args, told)
	return string(told)
}

// pages are the paths of a packet's sheets in a format, one for each sheet.
func pages(t *testing.T, dir, extension string, s sample) (paths []string) {
	t.Helper()
	for _, page := range s.sheets {
		paths = append(paths, filepath.Join(dir, page.Name+extension))
	}
	require.NotEmpty(t, paths)
	return paths
}

func TestSVGIsWellFormed(t *testing.T) {
	for _, s := range samples(t) {
		told := run(t, "xmllint", append([]string{"--noout", "--nonet"}, pages(t, laidOut(t, s), ".svg", s)...)...)
		require.Empty(t, told, s.name)
	}
	broken := filepath.Join(t.TempDir(), "broken.svg")
	require.NoError(t, os.WriteFile(broken, []byte("<svg><g></svg>"), 0o600))
	require.Error(t, exec.Command("xmllint", "--noout", broken).Run(), "the reader must see what is broken")
}

// pixels draws an SVG at so many dots to the millimetre, on white, with a style
// sheet laid over its own.
func pixels(t *testing.T, path string, perMM float64, style string) *image.RGBA {
	t.Helper()
	dir := t.TempDir()
	css, png := filepath.Join(dir, "over.css"), filepath.Join(dir, "page.png")
	require.NoError(t, os.WriteFile(css, []byte(style), 0o600))
	dpi := fmt.Sprint(perMM * 25.4)
	run(t, "rsvg-convert", "--dpi-x", dpi, "--dpi-y", dpi, "--background-color", "white", "--stylesheet", css, "--output", png, path)
	file, err := os.Open(png)
	require.NoError(t, err)
	defer file.Close()
	picture, _, err := image.Decode(file)
	require.NoError(t, err)
	plain := image.NewRGBA(picture.Bounds())
	imagedraw.Draw(plain, plain.Bounds(), picture, picture.Bounds().Min, imagedraw.Src)
	return plain
}

// marked is the box of the pixels that pass, and how many they are.
func marked(p *image.RGBA, pass func(r, g, b uint8) bool) (box image.Rectangle, n int) {
	box = image.Rectangle{Min: p.Rect.Max, Max: p.Rect.Min}
	for y := range p.Rect.Dy() {
		row := p.Pix[y*p.Stride:]
		for x := range p.Rect.Dx() {
			if pass(row[4*x], row[4*x+1], row[4*x+2]) {
				n++
				box.Min.X, box.Max.X = min(box.Min.X, x), max(box.Max.X, x+1)
				box.Min.Y, box.Max.Y = min(box.Min.Y, y), max(box.Max.Y, y+1)
			}
		}
	}
	return box, n
}

const half = 0x80 // of a pixel's full brightness

func dark(r, g, b uint8) bool { return max(r, g, b) < half }
func red(r, g, b uint8) bool  { return r >= half && max(g, b) < half }

// Every SVG shows something over most of its page: the border reaches from edge to
// edge, and there is ink inside it.
func TestSVGIsNotBlank(t *testing.T) {
	const perMM = 2
	for _, s := range pictured(t) {
		dir := laidOut(t, s)
		for i, path := range pages(t, dir, ".svg", s) {
			picture := pixels(t, path, perMM, "")
			size := picture.Bounds().Size()
			require.InDelta(t, s.sheets[i].Width.MM()*perMM, size.X, 1, path)
			require.InDelta(t, s.sheets[i].Height.MM()*perMM, size.Y, 1, path)
			box, n := marked(picture, dark)
			require.Greater(t, box.Dx()*10, size.X*8, path)
			require.Greater(t, box.Dy()*10, size.Y*8, path)
			require.Greater(t, n, 4*(box.Dx()+box.Dy()), "%s: hardly more ink than a border", path)
		}
	}
}

// The leaf on the drawing, in pixels, is the leaf's size at the drawing's
// scale, to a pixel and a half: an eighth of a millimetre, and what ink covers of
// the pixels at both ends.
func TestLeafInPixels(t *testing.T) {
	const perMM = 8
	for _, s := range pictured(t) {
		page, leaf := s.sheet(t, "02-leaf-front"), s.set.Leaf
		path := filepath.Join(laidOut(t, s), page.Name+".svg")
		picture := pixels(t, path, perMM, ".layer-outline *{stroke:#f00!important}")
		box, _ := marked(picture, red)
		line := sheet.Wide.Width().MM() // the outline's ink reaches half a line out at either side
		for _, side := range []struct {
			name string
			got  int
			true length.Length
		}{{"width", box.Dx(), leaf.Width}, {"height", box.Dy(), leaf.Height}} {
			want := side.true.MM()*float64(page.Scale.Paper)/float64(page.Scale.Real) + line
			require.InDelta(t, want*perMM, side.got, 1.5, "%s: %s of the leaf in pixels", s.name, side.name)
		}
	}
}

// What testdata/outside.py tells of a DXF.
type reading struct {
	Errors, Fixes []string
	Units, Count  int
	Boxes         map[string][4]float64
	Dimensions    []struct {
		Measured float64
		Text     string
	}
}

func readings(t *testing.T, paths []string) (all []reading) {
	t.Helper()
	told, err := exec.Command("/usr/bin/python3", append([]string{"testdata/outside.py"}, paths...)...).CombinedOutput()
	require.NoError(t, err, "%s", told)
	require.NoError(t, json.Unmarshal(told, &all), "%s", told)
	require.Len(t, all, len(paths))
	return all
}

// Two outside readers open every DXF of every packet; one of them audits it.
// The sizes of the leaf are read back from its drawing.
func TestDXFInOtherReaders(t *testing.T) {
	const millimetres = 4 // $INSUNITS
	for _, s := range pictured(t) {
		dir := laidOut(t, s)
		paths := pages(t, dir, ".dxf", s)
		for i, r := range readings(t, paths) {
			require.Empty(t, r.Errors, paths[i])
			require.Empty(t, r.Fixes, paths[i])
			require.Equal(t, millimetres, r.Units, paths[i])
			require.Greater(t, r.Count, 50, paths[i])
			listed := run(t, "ogrinfo", "-ro", "-al", "-so", paths[i])
			require.Contains(t, listed, "Feature Count: ")
			require.NotContains(t, listed, "Feature Count: 0")
			require.NotContains(t, listed, "ERROR")
			require.NotContains(t, listed, "Warning")
			sameDimensions(t, s.sheets[i], r)
			if s.sheets[i].Name == "02-leaf-front" {
				leafReadBack(t, s, r)
			}
		}
	}
}

const readBack = 1e-4 // mm: six decimals are written, and paper places are whole nanometres enlarged by the scale

func leafReadBack(t *testing.T, s sample, r reading) {
	t.Helper()
	leaf := s.set.Leaf
	box, there := r.Boxes[sheet.Outline.String()]
	require.True(t, there, "%s: no outline", s.name)
	require.InDelta(t, leaf.Width.MM(), box[2]-box[0], readBack, "%s: width", s.name)
	require.InDelta(t, leaf.Height.MM(), box[3]-box[1], readBack, "%s: height", s.name)
	sizes := map[string]length.Length{
		"leaf width": leaf.Width, "leaf height": leaf.Height, "stile": leaf.Stile,
	}
	for _, rail := range leaf.Rails {
		sizes["rail "+rail.Label] = rail.Width()
		sizes["centre of rail "+rail.Label] = rail.Centre()
	}
	for i, lite := range leaf.Lites {
		sizes[fmt.Sprintf("width of lite %d", i+1)] = lite.Sight.Width()
		sizes[fmt.Sprintf("height of lite %d", i+1)] = lite.Sight.Height()
	}
	for name, size := range sizes {
		require.True(t, measures(r, size), "%s: no dimension measures the %s, %s mm", s.name, name, size.Decimal())
	}
	require.False(t, measures(r, leaf.Width+length.Millimetre), "a size that is not there must not be found")
}

// sameDimensions compares the measurements another reader takes from a DXF
// with those of the sheet.
func sameDimensions(t *testing.T, s sheet.Sheet, r reading) {
	t.Helper()
	var want, got []float64
	for _, m := range s.Marks {
		if d, ok := m.(sheet.Dimension); ok {
			want = append(want, d.Measured.MM())
		}
	}
	for _, d := range r.Dimensions {
		got = append(got, d.Measured)
	}
	slices.Sort(want)
	slices.Sort(got)
	require.Len(t, got, len(want), s.Name)
	require.InDeltaSlice(t, want, got, readBack, s.Name)
}

// measures tells whether a dimension of the file measures the size.
func measures(r reading, size length.Length) bool {
	for _, d := range r.Dimensions {
		if off := d.Measured - size.MM(); off < readBack && off > -readBack {
			return true
		}
	}
	return false
}

// No text of a sheet is lost in its SVG.
func TestTextsAreKept(t *testing.T) {
	for _, s := range samples(t) {
		for _, page := range s.sheets {
			svg := string(s.files[page.Name+".svg"])
			require.Equal(t, lettered(page), strings.Count(svg, "<text "), "%s %s", s.name, page.Name)
		}
	}
}

// lettered counts the texts of a sheet that hold anything.
func lettered(s sheet.Sheet) (n int) {
	count := func(t sheet.Text) {
		if t.String != "" {
			n++
		}
	}
	for _, m := range s.Marks {
		switch m := m.(type) {
		case sheet.Text:
			count(m)
		case sheet.Dimension:
			for _, t := range m.Texts {
				count(t)
			}
		}
	}
	return n
}
