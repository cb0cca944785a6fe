package golden

import (
	"bytes"
	"fmt"
	"image"
	imagedraw "image/draw"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/pdf"
	"stilewright/render/sheet"
	"stilewright/render/svg"
)

const sheetSet = "sheets.pdf"

// The structure is sound and every page has its paper's size.
func TestPDFIsSound(t *testing.T) {
	size := regexp.MustCompile(`Page +\d+ size: +([0-9.]+) x ([0-9.]+) pts`)
	for _, s := range samples(t) {
		path := filepath.Join(laidOut(t, s), sheetSet)
		require.Contains(t, run(t, "qpdf", "--check", path), "No syntax or stream encoding errors found")
		told := run(t, "pdfinfo", "-f", "1", "-l", "99", path)
		sizes := size.FindAllStringSubmatch(told, -1)
		require.Len(t, sizes, len(s.sheets), told)
		for i, page := range s.sheets {
			for k, side := range []length.Length{page.Width, page.Height} {
				var points float64
				_, err := fmt.Sscan(sizes[i][k+1], &points)
				require.NoError(t, err)
				require.InDelta(t, side.MM(), points/72*25.4, 1e-3, "%s %s", s.name, page.Name)
			}
		}
		require.Contains(t, told, "Title:           "+s.set.Job+"\n")
	}
}

// unread lists the texts of a sheet that are not in what a reader tells of its page.
func unread(s sheet.Sheet, told string) (missing []string) {
	told = strings.Join(strings.Fields(told), "") // readers guess spaces from the distance of letters
	look := func(words string) {
		if !strings.Contains(told, strings.Join(strings.Fields(lettering.Legible(words)), "")) {
			missing = append(missing, words)
		}
	}
	for _, m := range s.Marks {
		switch m := m.(type) {
		case sheet.Text:
			look(m.String)
		case sheet.Dimension:
			look(m.Figure)
			for _, t := range m.Texts {
				look(t.String)
			}
		}
	}
	return missing
}

// Every text and every figure of every sheet can be found and copied.
func TestPDFTextIsFound(t *testing.T) {
	for _, s := range samples(t) {
		path := filepath.Join(laidOut(t, s), sheetSet)
		for i, page := range s.sheets {
			n := fmt.Sprint(i + 1)
			told := run(t, "pdftotext", "-raw", "-f", n, "-l", n, path, "-")
			require.Empty(t, unread(page, told), "%s %s", s.name, page.Name)
			page.Marks = append(page.Marks[:len(page.Marks):len(page.Marks)], sheet.Text{String: "not on it"})
			require.Equal(t, []string{"not on it"}, unread(page, told))
		}
	}
}

// grey draws a page of a PDF, 0 black.
func grey(t *testing.T, path string, page, dpi int) *image.Gray {
	t.Helper()
	root := filepath.Join(t.TempDir(), "page")
	n := fmt.Sprint(page)
	run(t, "pdftoppm", "-gray", "-singlefile", "-r", fmt.Sprint(dpi), "-f", n, "-l", n, path, root)
	data, err := os.ReadFile(root + ".pgm")
	require.NoError(t, err)
	var wide, high, most int
	read, err := fmt.Sscanf(string(data[:min(len(data), 40)]), "P5\n%d %d\n%d\n", &wide, &high, &most)
	require.NoError(t, err)
	require.Equal(t, 3, read)
	return &image.Gray{Pix: data[len(data)-wide*high:], Stride: wide, Rect: image.Rect(0, 0, wide, high)}
}

// greySVG draws an SVG, 0 black.
func greySVG(t *testing.T, path string, dpi int) *image.Gray {
	t.Helper()
	picture := pixels(t, path, float64(dpi)/25.4, "")
	plain := image.NewGray(picture.Bounds())
	imagedraw.Draw(plain, plain.Bounds(), picture, picture.Bounds().Min, imagedraw.Src)
	return plain
}

// blurred is the mean of the pixels about each, reach to every side.
func blurred(p *image.Gray, reach int) [][]float64 {
	size := p.Bounds().Size()
	sum := make([][]float64, size.Y+1) // of all pixels above and to the left
	sum[0] = make([]float64, size.X+1)
	for y := range size.Y {
		sum[y+1] = make([]float64, size.X+1)
		for x := range size.X {
			sum[y+1][x+1] = sum[y+1][x] + sum[y][x+1] - sum[y][x] + float64(p.Pix[y*p.Stride+x])
		}
	}
	mean := make([][]float64, size.Y)
	for y := range size.Y {
		mean[y] = make([]float64, size.X)
		top, bottom := max(0, y-reach), min(size.Y, y+reach+1)
		for x := range size.X {
			left, right := max(0, x-reach), min(size.X, x+reach+1)
			total := sum[bottom][right] - sum[top][right] - sum[bottom][left] + sum[top][left]
			mean[y][x] = total / float64((bottom-top)*(right-left))
		}
	}
	return mean
}

// What two programs may draw differently: they smooth edges each in its way,
// and one kerns text, the other does not. At 4 pixels to the millimetre a
// difference counts where a blurred pixel is off by a fifth of full brightness.
const (
	comparedDPI = 102
	blur        = 2 // pixels, half a millimetre to every side
	offBy       = 51
	mostOff     = 0.0015 // of all pixels
)

// difference is the share of pixels that differ between two pictures of one
// page, after a blur. Pictures of unlike sizes differ everywhere.
func difference(a, b *image.Gray) float64 {
	sa, sb := a.Bounds().Size(), b.Bounds().Size()
	if d := sa.Sub(sb); max(d.X, -d.X, d.Y, -d.Y) > 1 {
		return 1
	}
	ma, mb := blurred(a, blur), blurred(b, blur)
	off, wide, high := 0, min(sa.X, sb.X), min(sa.Y, sb.Y)
	for y := range high {
		for x := range wide {
			if d := ma[y][x] - mb[y][x]; max(d, -d) > offBy {
				off++
			}
		}
	}
	return float64(off) / float64(wide*high)
}

// pictured are the samples whose every page goes through slow outside programs,
// as pictures or as DXF: the first in inches, the first in millimetres, and one
// with muntins, dowels and relieved corners. Kinds of marks do not differ between
// samples; what every sample draws is held by its golden files.
func pictured(t *testing.T) []sample {
	all := samples(t)
	metric := slices.IndexFunc(all, func(s sample) bool { return s.set.Units == length.Millimetres })
	require.Positive(t, metric)
	other := slices.IndexFunc(all, func(s sample) bool { return s.name == "machine-corner" })
	require.Positive(t, other)
	return []sample{all[0], all[metric], all[other]}
}

// One program's picture of the PDF is another's of the SVG.
func TestPDFLooksLikeSVG(t *testing.T) {
	for _, s := range pictured(t) {
		dir := laidOut(t, s)
		for i, path := range pages(t, dir, ".svg", s) {
			off := difference(greySVG(t, path, comparedDPI), grey(t, filepath.Join(dir, sheetSet), i+1, comparedDPI))
			t.Logf("%s %s: %.5f", s.name, s.sheets[i].Name, off)
			require.Less(t, off, mostOff, "%s %s", s.name, s.sheets[i].Name)
		}
	}
}

// The comparison sees each kind of fault a writer can have: a page with one in
// it is compared with the page as it should be.
func TestPictureComparisonBites(t *testing.T) {
	s := samples(t)[0]
	for _, page := range s.sheets[:5] { // the first sheets have every kind of mark
		path := filepath.Join(t.TempDir(), "right.svg")
		var right bytes.Buffer
		require.NoError(t, svg.Write(&right, page))
		require.NoError(t, os.WriteFile(path, right.Bytes(), 0o600))
		want := greySVG(t, path, comparedDPI)
		for name, spoil := range spoilers() {
			wrong := page
			wrong.Marks = nil
			for _, m := range page.Marks {
				wrong.Marks = append(wrong.Marks, spoil(m)...)
			}
			var out bytes.Buffer
			require.NoError(t, pdf.Write(&out, []sheet.Sheet{wrong}, pdf.Options{}))
			path := filepath.Join(t.TempDir(), "wrong.pdf")
			require.NoError(t, os.WriteFile(path, out.Bytes(), 0o600))
			off := difference(want, grey(t, path, 1, comparedDPI))
			t.Logf("%s, %s: %.5f", page.Name, name, off)
			require.Greater(t, off, mostOff, "%s: %s", page.Name, name)
		}
	}
}

// spoilers are faults in what is written of one mark.
func spoilers() map[string]func(sheet.Mark) []sheet.Mark {
	shift := func(p plane.Path, x, y length.Length) plane.Path {
		return p.Map(func(q plane.Point) plane.Point { return q.Add(x, y) }, false)
	}
	return map[string]func(sheet.Mark) []sheet.Mark{
		"no text": func(m sheet.Mark) []sheet.Mark {
			if _, is := m.(sheet.Text); is {
				return nil
			}
			return []sheet.Mark{m}
		},
		"no dimensions": func(m sheet.Mark) []sheet.Mark {
			if _, is := m.(sheet.Dimension); is {
				return nil
			}
			return []sheet.Mark{m}
		},
		"lines moved by 1 mm": func(m sheet.Mark) []sheet.Mark {
			if s, is := m.(sheet.Stroke); is {
				s.Path = shift(s.Path, length.Millimetre, length.Millimetre)
				return []sheet.Mark{s}
			}
			return []sheet.Mark{m}
		},
	}
}
