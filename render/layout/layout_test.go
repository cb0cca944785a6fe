package layout

import (
	"bytes"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
	"stilewright/render/dimension"
	"stilewright/render/dxf"
	"stilewright/render/lettering"
	"stilewright/render/pdf"
	"stilewright/render/sheet"
	"stilewright/render/svg"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

// wall is a large job on small paper, with stock and sheets in hand and film.
const wall = `
job: Wardrobe wall, north bedroom; Größe ½, a job with a name that does not end where the strip does, nor soon after
units: millimetre
opening: {width: 3600, height: 2400}
hanging: {style: bypass, tracks: [back, front, front, back]}
leaf: {thickness: 34, stile: 80, rail: {top: 80, cross: 60, bottom: 120}, lites: {rows: 6}}
panel: {material: acrylic, thickness: 3, film: back}
paper: A4
stock:
  species: white ash
  lengths: [2500, 3000]
  offcuts: [2600, 900]
  boards: [{length: 3000, clear: [800, 1900]}]
  film: {width: 610, length: 15000, side: both}
  sheet: {sizes: [{width: 1000, height: 2000}, {width: 800, height: 500, in_hand: 2}]}
`

// taken are the takeoffs tested: every sample, two pooled, and the wall.
func taken(t testing.TB) map[string]takeoff.Takeoff {
	t.Helper()
	paths, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	jobs := map[string][]takeoff.Job{}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		name := strings.TrimSuffix(filepath.Base(path), ".yaml")
		jobs[name] = []takeoff.Job{job(t, string(text))}
	}
	jobs["wall"] = []takeoff.Job{job(t, wall)}
	jobs["pooled"] = slices.Concat(jobs["attic-linen"], jobs["five-rail"])
	out := map[string]takeoff.Takeoff{}
	for name, list := range jobs {
		one, findings := takeoff.Of(list, takeoff.Prices{})
		require.Empty(t, findings, name)
		out[name] = one
	}
	return out
}

func job(t testing.TB, text string) takeoff.Job {
	t.Helper()
	model, findings := spec.Read("model.yaml", []byte(text))
	require.Empty(t, findings)
	set, _ := door.Resolve(model)
	require.NotEmpty(t, set.Hung)
	return takeoff.Job{Model: model, Set: set}
}

func textsOf(marks []sheet.Mark) []sheet.Text {
	var all []sheet.Text
	for _, m := range marks {
		switch m := m.(type) {
		case sheet.Text:
			all = append(all, m)
		case sheet.Dimension:
			all = append(all, m.Texts...)
		}
	}
	return all
}

// TestPagesReadWell: nothing touches, nothing leaves the paper, lettering is
// 2.5 mm or more, every format takes every page.
func TestPagesReadWell(t *testing.T) {
	for name, one := range taken(t) {
		pages, err := Pages(one)
		require.NoError(t, err, name)
		names := map[string]bool{}
		for _, p := range pages {
			about := name + " " + p.Name
			require.False(t, names[p.Name], about)
			names[p.Name] = true
			require.NoError(t, p.Check(), about)
			require.Empty(t, dimension.Collisions(p.Marks, plane.Box{Max: plane.At(p.Width, p.Height)}), about)
			for _, s := range textsOf(p.Marks) {
				require.GreaterOrEqual(t, s.Height, letterHeight, "%s: %s", about, s.String)
			}
			for _, write := range []func(sheet.Sheet) error{
				func(s sheet.Sheet) error { return svg.Write(&bytes.Buffer{}, s) },
				func(s sheet.Sheet) error { return dxf.Write(&bytes.Buffer{}, s) },
			} {
				require.NoError(t, write(p), about)
			}
		}
		require.NoError(t, pdf.Write(&bytes.Buffer{}, pages, pdf.Options{}), name)
	}
}

// TestEveryPatternIsDrawn: each board pattern has its caption, with every part on
// it, and its marks: as many as cuts and the zero, each as long as it measures.
func TestEveryPatternIsDrawn(t *testing.T) {
	for name, one := range taken(t) {
		pages, err := Pages(one)
		require.NoError(t, err)
		words, measured := "", map[length.Length]int{}
		for _, p := range pages {
			for _, s := range textsOf(p.Marks) {
				words += s.String + " "
			}
			for _, m := range p.Marks {
				if d, ok := m.(sheet.Dimension); ok {
					measured[d.Measured]++
					onPaper := d.B.X - d.A.X
					if !d.Horizontal {
						onPaper = d.B.Y - d.A.Y
					}
					require.InDelta(t, d.Measured.MM(), onPaper.Abs().MM()*float64(d.Scale.Real)/float64(d.Scale.Paper), 1e-3, name)
				}
			}
		}
		words = lettering.Plain(words)
		plain := func(s string) string { return lettering.Plain(lettering.Legible(s)) }
		marks := map[length.Length]int{}
		for _, plan := range one.Boards {
			for n, pattern := range plan.Layout.Patterns {
				require.Contains(t, words, plain(fmt.Sprintf("%d. %d × %s:", n+1, pattern.Times, plan.Job.Boards[pattern.Board].Name)), name)
				for _, c := range pattern.Cuts {
					marks[c.End-plan.Job.TrimStart]++
					require.Contains(t, words, plan.Job.Parts[c.Part].Label, name)
				}
			}
		}
		for at, n := range marks {
			if !strings.Contains(words, "Marks: ") {
				require.GreaterOrEqual(t, measured[at], n, "%s: marks at %v", name, at.Decimal())
			}
		}
		for _, plan := range one.Sheets {
			for _, pattern := range plan.Layout.Patterns {
				for _, step := range pattern.Steps(plan.Job) {
					require.Contains(t, words, plain(length.Style{Unit: one.Units}.Format(step.At)), name)
				}
			}
		}
		for _, item := range one.Buy {
			for _, word := range strings.Fields(plain(item.Name)) {
				require.Contains(t, words, word, name)
			}
		}
	}
}

// TestPaperTooSmall: what finds no room is an error, not a heap.
func TestPaperTooSmall(t *testing.T) {
	one, _ := takeoff.Of([]takeoff.Job{job(t, strings.Replace(wall, "paper: A4", "paper: letter", 1))}, takeoff.Prices{})
	one.Jobs[0].Paper = "no such paper"
	_, err := Pages(one)
	require.ErrorContains(t, err, "no such paper")
	_, err = Pages(takeoff.Takeoff{})
	require.ErrorContains(t, err, "0 jobs")
}

// TestLabelsRead: zbarimg (Debian's zbar-tools) reads the code of every label of
// three jobs, drawn by rsvg-convert at 300 dots an inch, and what it says is
// what the label is for. On a full sheet it misses a few; those it must read
// when they are alone, as before a scanner.
func TestLabelsRead(t *testing.T) {
	all := taken(t)
	for _, name := range []string{"attic-linen", "studio-three", "wall"} { // both label stocks, short and long texts
		one := all[name]
		sheets, err := Labels(one)
		require.NoError(t, err)
		got := map[string]int{}
		for _, s := range sheets {
			require.NoError(t, s.Check(), name)
			require.Empty(t, dimension.Collisions(s.Marks, plane.Box{Max: plane.At(s.Width, s.Height)}), name+" "+s.Name)
			for _, code := range codes(t, s) {
				got[code]++
			}
		}
		labels, alone := pieces(one), 0
		for _, p := range labels {
			if got[ascii(p.text())]--; got[ascii(p.text())] < 0 {
				marks, err := labelMarks(p, plane.Box{Max: plane.At(60*mm, 25*mm)})
				require.NoError(t, err)
				require.Equal(t, []string{ascii(p.text())}, codes(t, sheet.Sheet{Name: "one", Title: "one", Width: 60 * mm, Height: 25 * mm, Marks: marks}), name)
				delete(got, ascii(p.text()))
				alone++
			}
		}
		require.Less(t, alone, len(labels)/4+1, "%s: most are read on the sheet", name)
		for code, n := range got {
			require.Zero(t, n, "%s: %s is on no label", name, code)
		}
	}
}

// codes are the QR codes zbarimg finds on a sheet.
func codes(t *testing.T, s sheet.Sheet) []string {
	t.Helper()
	dir := t.TempDir()
	drawn, dots := filepath.Join(dir, "s.svg"), filepath.Join(dir, "s.png")
	var out bytes.Buffer
	require.NoError(t, svg.Write(&out, s))
	require.NoError(t, os.WriteFile(drawn, out.Bytes(), 0o600))
	said, err := exec.Command("rsvg-convert", "--dpi-x", "300", "--dpi-y", "300", "-b", "white", drawn, "-o", dots).CombinedOutput()
	require.NoError(t, err, "%s", said)
	read, err := exec.Command("zbarimg", "--raw", "-q", "-Sdisable", "-Sqrcode.enable", dots).Output()
	require.NoError(t, err)
	return strings.Split(strings.TrimSpace(string(read)), "\n")
}

// TestLabelsCount: one label for each piece of wood and sheet of every leaf.
func TestLabelsCount(t *testing.T) {
	for name, one := range taken(t) {
		n := 0
		for _, p := range one.Parts {
			if p.Kind != takeoff.Hardware {
				n += p.Quantity
			}
		}
		require.Len(t, pieces(one), n, name)
	}
}

// TestOutlines: the outlines of random modules enclose as many modules as are
// dark, and are a region: outer ones and holes as package plane wants them.
func TestOutlines(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for range 300 {
		n := 1 + rnd.IntN(12)
		grid := make([]bool, n*n)
		dark := 0
		for i := range grid {
			if grid[i] = rnd.IntN(2) == 0; grid[i] {
				dark++
			}
		}
		at := func(x, y int) bool { return x >= 0 && y >= 0 && x < n && y < n && grid[y*n+x] }
		var region plane.Region
		for _, loop := range outlines(n, at) {
			var points []plane.Point
			for _, c := range loop {
				points = append(points, plane.At(mm*length.Length(c.x), mm*length.Length(c.y)))
			}
			region = append(region, plane.Polygon(points...))
		}
		require.InDelta(t, float64(dark), region.Area(), 1e-9, "seed %d", *seed)
		require.NoError(t, plane.Simple(region), "seed %d: %v", *seed, grid)
	}
}

// TestAscii: what readers disagree on is not in a code.
func TestAscii(t *testing.T) {
	require.Equal(t, "Gr??e 2 x 3", ascii("Größe 2 × 3"))
}

// TestWrapped: lines keep to the width, and no letter is lost.
func TestWrapped(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 1))
	for range 300 {
		var text strings.Builder
		for range 1 + rnd.IntN(20) {
			text.WriteString(strings.Repeat(string(rune('a'+rnd.IntN(26))), 1+rnd.IntN(12)) + " ")
		}
		wide := 5*mm + length.Length(rnd.IntN(80))*mm
		lines := wrapped(text.String(), wide, letterHeight)
		for _, line := range lines {
			require.LessOrEqual(t, textAt(plane.Point{}, letterHeight, sheet.Start, line).Advance, wide, "seed %d", *seed)
		}
		require.Equal(t, []string{"30\u200a¹¹⁄₁₆ of"}, wrapped("30 11/16 of", 100*mm, letterHeight), "a fraction stays with its whole")
		squeeze := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		require.Equal(t, squeeze(text.String()), squeeze(strings.Join(lines, "")), "seed %d", *seed)
	}
}

// TestLabelsNameTheJob: a job's name of up to 40 letters stands whole on every
// label of both stocks, beside size, name and material.
func TestLabelsNameTheJob(t *testing.T) {
	long := []rune(strings.Repeat("Vitrine, Flur im Obergeschoss links ", 2))[:40]
	for stock, box := range map[string]plane.Box{
		"A4-24":     {Max: plane.At(70*mm, 37*mm)},
		"letter-30": {Max: plane.At(length.Inch*2+5*length.Inch/8, length.Inch)},
	} {
		p := piece{"A.R2, leaf 1", "cross rail", "752 x 70 x 34 mm", "american beech", strings.TrimSpace(string(long))}
		marks, err := labelMarks(p, box)
		require.NoError(t, err)
		var said []string
		for _, s := range textsOf(marks) {
			said = append(said, s.String)
		}
		require.Equal(t, lettering.Legible(strings.Join([]string{p.mark, p.size, p.name + ", " + p.from, p.job}, " ")), strings.Join(said, " "), stock)
		require.Empty(t, dimension.Collisions(marks, box), stock)
	}
}

// TestMilling: boards bought as dressed are neither planed nor ripped; a named
// board is ripped, and planed where it is planed for.
func TestMilling(t *testing.T) {
	for _, c := range []struct{ stock, says string }{
		{"{species: beech}", "as dressed: neither planed nor ripped"},
		{"{species: beech}", "Then trim to length:"},
		{"{species: beech, plane: 2}", "Then plane and trim to length:"},
		{"{species: beech, rip: 3}", "Then rip to width and trim to length:"},
		{"{species: beech, plane: 2, rip: 3}", "Then plane, rip to width and trim to length:"},
	} {
		text := wall[:strings.Index(wall, "stock:")] + "stock: " + c.stock + "\n"
		one, findings := takeoff.Of([]takeoff.Job{job(t, text)}, takeoff.Prices{})
		require.Empty(t, findings, text)
		pages, err := Pages(one)
		require.NoError(t, err)
		words := ""
		for _, p := range pages {
			for _, s := range textsOf(p.Marks) {
				words += s.String + " "
			}
		}
		require.Contains(t, words, c.says, c.stock)
	}
}
