package pdf

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

const mm = length.Millimetre

func at(x, y length.Length) plane.Point { return plane.At(x*mm, y*mm) }

func line(a, b plane.Point) sheet.Stroke {
	return sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Wide, Path: plane.Path{plane.Line(a, b)}}
}

func note(words string, x, y length.Length) sheet.Text {
	const high = 5 * mm
	return sheet.Text{Layer: sheet.Notes, At: at(x, y), Height: high, String: words, Advance: lettering.Advance(words, high)}
}

func page120(marks ...sheet.Mark) sheet.Sheet {
	return sheet.Sheet{
		Name: "2-leaf", Title: "Leaf", Description: "One leaf from the front.",
		Width: 120 * mm, Height: 80 * mm, Marks: marks,
	}
}

// sampler holds one mark of every kind.
func sampler() sheet.Sheet {
	rise := note("⌀ 5 ½ ±1° ×", 118, 70)
	rise.Rise, rise.Align = true, sheet.End
	middle := note("Türen, façade: 59 7/8", 60, 10)
	middle.Align = sheet.Middle
	hole := plane.Rect(at(42, 32), at(48, 38)).Reverse()
	return page120(
		sheet.Fill{Layer: sheet.Panel, Tone: sheet.Tint, Region: plane.Region{plane.Rect(at(40, 30), at(50, 40)), hole}},
		line(at(10, 20), at(110, 20)),
		sheet.Stroke{Layer: sheet.Outline, Line: sheet.Hidden, Path: plane.Path{plane.Arc(at(30, 50), at(20, 60), at(20, 50), plane.Left)}},
		sheet.Stroke{Layer: sheet.Panel, Path: plane.Circle(at(80, 50), 5*mm)},
		middle, rise,
		sheet.Dimension{
			Layer: sheet.Dimensions, A: at(10, 20), B: at(20, 20), Line: at(10, 25), Horizontal: true, Figure: "1/2",
			Strokes: []sheet.Stroke{{Layer: sheet.Dimensions, Path: plane.Path{plane.Line(at(10, 25), at(20, 25))}}},
			Fills:   []sheet.Fill{{Layer: sheet.Dimensions, Region: plane.Region{plane.Polygon(at(10, 25), at(12, 24), at(12, 26))}}},
			Texts:   []sheet.Text{note("1/2", 12, 26)},
		},
		sheet.Fill{Layer: sheet.Hatch, Tone: sheet.Paper, Region: plane.Region{plane.Rect(at(78, 48), at(82, 52))}},
		sheet.Fill{Layer: sheet.Hatch},
		sheet.Text{Layer: sheet.Hatch, Height: mm, String: " "},
	)
}

// What the sampler's page shows, as read back: painting, layer, colour or
// line, and the places in millimetres on the paper.
func TestElements(t *testing.T) {
	var got []string
	for _, s := range drawn(t, Options{}, sampler()) {
		switch s.by {
		case "Tj":
			got = append(got, fmt.Sprintf("Tj %s %s %.3f,%.3f %d", s.layer, s.colour, s.at.x, s.at.y, len(s.glyphs)/4))
		case "f*":
			got = append(got, fmt.Sprintf("f* %s %s %d pieces from %.3f,%.3f", s.layer, s.colour, len(s.pieces), s.pieces[0][0].x, s.pieces[0][0].y))
		default:
			got = append(got, fmt.Sprintf("S %s %.2f [%s] %d pieces from %.3f,%.3f", s.layer, s.width, s.dashes, len(s.pieces), s.pieces[0][0].x, s.pieces[0][0].y))
		}
	}
	half := lettering.Advance("Türen, façade: 59 7/8", 5*mm).MM() / 2
	down := lettering.Advance("⌀ 5 ½ ±1° ×", 5*mm).MM()
	require.Equal(t, []string{
		"f* PANEL 0.902 0.925 0.941 8 pieces from 40.000,30.000",
		"S OUTLINE 0.50 [] 1 pieces from 10.000,20.000",
		"S OUTLINE 0.25 [3 0.75] 2 pieces from 30.000,50.000",
		"S PANEL 0.25 [] 8 pieces from 85.000,50.000",
		fmt.Sprintf("Tj NOTE 0 %.3f,10.000 21", 60-half),
		fmt.Sprintf("Tj NOTE 0 118.000,%.3f 11", 70-down),
		"S DIMENSION 0.25 [] 1 pieces from 10.000,25.000",
		"f* DIMENSION 0 3 pieces from 10.000,25.000",
		"Tj NOTE 0 12.000,26.000 3",
		"f* HATCH 1 4 pieces from 78.000,48.000",
	}, got)
}

// Lines land where they are on the sheet: to the tenth of a micrometre that is
// written.
func TestLinesAreTrue(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	place := func() plane.Point {
		return plane.At(length.Length(rnd.Int64N(int64(400*mm)))-100*mm, length.Length(rnd.Int64N(int64(400*mm)))-100*mm)
	}
	for range 50 {
		var marks []sheet.Mark
		for range 20 {
			marks = append(marks, line(place(), place()))
		}
		for i, s := range drawn(t, Options{}, page120(marks...)) {
			e := marks[i].(sheet.Stroke).Path[0]
			for k, p := range []plane.Point{e.From, e.To} {
				got := s.pieces[0][k]
				require.InDelta(t, p.X.MM(), got.x, 6e-5, "seed %d", *seed)
				require.InDelta(t, p.Y.MM(), got.y, 6e-5, "seed %d", *seed)
			}
		}
	}
}

// How far a Bézier curve as written may stray from the arc, in millimetres.
const arcBound = 1e-3

// arcFault tells how far the pieces are from the arc: off its circle, off its
// ends, off its middle, or longer or shorter than it.
func arcFault(e plane.Edge, pieces []piece) (worst float64) {
	centre, r := spot{e.Centre.X.MM(), e.Centre.Y.MM()}, e.Radius()
	var long float64
	for _, c := range pieces {
		const steps = 64
		for i := range steps {
			a, b := c.at(float64(i)/steps), c.at(float64(i+1)/steps)
			worst, long = max(worst, math.Abs(centre.to(b)-r)), long+a.to(b)
		}
	}
	first, last := pieces[0][0], pieces[len(pieces)-1].at(1)
	worst = max(worst, first.to(spot{e.From.X.MM(), e.From.Y.MM()}), last.to(spot{e.To.X.MM(), e.To.Y.MM()}))
	// The chords of 64 steps through at most a quarter circle are shorter by 3e-5.
	return max(worst, math.Abs(long-e.Length())-1e-4*e.Length())
}

func TestArcsAreTrue(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 1))
	worst := 0.0
	for range 400 {
		r := math.Exp(rnd.Float64()*math.Log(4e5) + math.Log(0.01)) // 0.01 mm to 4 m
		centre := plane.At(length.Length(rnd.Int64N(int64(100*mm))), length.Length(rnd.Int64N(int64(100*mm))))
		end := func(angle float64) plane.Point {
			return centre.Add(length.Round(r*math.Cos(angle)), length.Round(r*math.Sin(angle)))
		}
		begin, sweep := rnd.Float64()*7, 0.02+rnd.Float64()*6.2
		turn := [...]plane.Turn{plane.Left, plane.Right}[rnd.IntN(2)]
		e := plane.Arc(end(begin), end(begin+float64(turn)*sweep), centre, turn)
		if e.From == e.To {
			continue
		}
		got := drawn(t, Options{}, page120(sheet.Stroke{Layer: sheet.Outline, Path: plane.Path{e}}))
		require.Len(t, got, 1)
		off := arcFault(e, got[0].pieces)
		require.Less(t, off, arcBound, "seed %d: %+v", *seed, e)
		worst = max(worst, off)
	}
	t.Logf("furthest from its arc: %.5f mm", worst)
	require.Greater(t, worst, arcBound/10, "a bound nothing comes near proves little")
}

// The measure of arcs sees an arc that is wrong.
func TestArcFaultBites(t *testing.T) {
	arc := plane.Arc(at(60, 40), at(50, 50), at(50, 40), plane.Left)
	right := drawn(t, Options{}, page120(sheet.Stroke{Layer: sheet.Outline, Path: plane.Path{arc}}))[0].pieces
	require.Less(t, arcFault(arc, right), arcBound)
	require.Greater(t, arcFault(arc.Reverse(), right), 1.0, "turned about")
	other := arc
	other.Turn = plane.Right
	require.Greater(t, arcFault(other, right), 1.0, "the long way round")
	bent := piece{right[0][0], right[0][1], right[0][2], right[0][3]}
	bent[1].x += 0.01
	require.Greater(t, arcFault(arc, []piece{bent}), arcBound, "a hundredth off")
}

// A correction stretches places and paper, and each about the lower left corner.
func TestCorrection(t *testing.T) {
	o := Options{Correction: Correction{X: 1.02, Y: 0.97}}
	data := written(t, o, page120(line(at(10, 20), at(110, 20))))
	got := drawn(t, o, page120(line(at(10, 20), at(110, 20))))[0].pieces[0]
	require.InDelta(t, 10*1.02, got[0].x, 1e-4)
	require.InDelta(t, 20*0.97, got[0].y, 1e-4)
	require.InDelta(t, 100*1.02, got[1].x-got[0].x, 1e-4)
	require.Contains(t, string(data), fmt.Sprintf("/MediaBox [0 0 %.6f %.6f]", 120*1.02/25.4*72, 80*0.97/25.4*72))

	c, err := Correction{}.Measured(100*mm, 99*mm, 101*mm)
	require.NoError(t, err)
	require.InDelta(t, 100.0/99, c.X, 1e-12)
	require.InDelta(t, 100.0/101, c.Y, 1e-12)
	again, err := c.Measured(100*mm, 100*mm, 100*mm+mm/2)
	require.NoError(t, err)
	require.InDelta(t, c.X, again.X, 1e-12, "true already")
	require.InDelta(t, c.Y*100/100.5, again.Y, 1e-12)
	_, err = Correction{}.Measured(100*mm, 125*mm, 100*mm)
	require.ErrorContains(t, err, "along X is 0.8000; it must be from 0.9 to 1.1")
	_, err = Correction{}.Measured(100*mm, 0, 100*mm)
	require.ErrorContains(t, err, "100 mm measured as 0 mm by 100 mm")
	require.NoError(t, Correction{}.Check())
	require.ErrorContains(t, Correction{Y: math.NaN()}.Check(), "along Y is NaN")
}

// Text narrower or wider than its letters is squeezed to its Advance; the next
// is not.
func TestTextHeldToItsAdvance(t *testing.T) {
	narrow, plain := note("Bottom rail", 10, 10), note("Bottom rail", 10, 20)
	narrow.Advance = narrow.Advance * 4 / 5
	data := string(written(t, Options{}, page120(narrow, plain)))
	require.Contains(t, data, "BT 80.0000 Tz /F1 ")
	require.Contains(t, data, "BT 100 Tz /F1 ")
}

func TestBookmarksLayersAndWords(t *testing.T) {
	second := page120(line(at(0, 0), at(1, 1)))
	second.Name, second.Title = "3-leaf", ""
	r := readFile(t, written(t, Options{Title: "Böden (2)", Author: `A\B`, Date: "2026-03-14"}, sampler(), second))
	require.Len(t, r.pages(), 2)
	list := r.object(r.catalog(), "Outlines")
	first := r.object(list, "First")
	require.Contains(t, first, "/Title (Leaf) ")
	require.Contains(t, first, "/Dest [")
	require.Contains(t, r.object(first, "Next"), "/Title (3-leaf) ", "a sheet without title by its name")
	require.Equal(t, r.object(first, "Next"), r.object(list, "Last"))

	properties := r.object(r.pages()[0], "Resources")
	for _, l := range []sheet.Layer{sheet.Outline, sheet.Panel, sheet.Dimensions, sheet.Notes} {
		require.Contains(t, r.object(properties, l.String()), "/Type /OCG /Name ("+l.String()+")")
	}
	require.NotContains(t, properties, "/BORDER ", "a layer not in use")

	about := r.object(r.trailer, "Info")
	require.Contains(t, about, "/Title <FEFF004200F60064")
	require.Contains(t, about, `/Author (A\\B)`)
	require.Contains(t, about, "/CreationDate (D:20260314) /ModDate (D:20260314)")
	require.Regexp(t, regexp.MustCompile(`/ID \[<([0-9A-F]{32})> <[0-9A-F]{32}>\]`), r.trailer)

	bare := readFile(t, written(t, Options{}, sampler()))
	require.NotContains(t, bare.object(bare.trailer, "Info"), "Date", "no clock")
	require.NotEqual(t, r.trailer, bare.trailer, "the ID is of the content")
}

func TestActualSize(t *testing.T) {
	r := readFile(t, written(t, Options{ActualSize: true}, sampler()))
	require.Contains(t, r.catalog(), "/PrintScaling /None /Enforce [/PrintScaling]")
	r = readFile(t, written(t, Options{}, sampler()))
	require.NotContains(t, r.catalog(), "PrintScaling")
}

func TestSameBytesNoMinusZero(t *testing.T) {
	s := sampler()
	s.Marks = append(s.Marks, line(plane.At(-1, -1), plane.At(-40, 80*mm+30))) // nanometres: less than is written
	got := written(t, Options{}, s)
	require.Equal(t, got, written(t, Options{}, s))
	r := readFile(t, got)
	content := r.content(r.pages()[0])
	require.NotRegexp(t, regexp.MustCompile(`(^|\s)-0(\.0*)?\s`), content)
	require.Contains(t, content, "\n0 0 m\n0 80 l\n")
}

func TestRefuses(t *testing.T) {
	long := page120()
	long.Width = 6_000 * mm
	for _, c := range []struct {
		sheets []sheet.Sheet
		o      Options
		want   string
	}{
		{nil, Options{}, "there are no sheets"},
		{[]sheet.Sheet{{}}, Options{}, "no name"},
		{[]sheet.Sheet{page120(sheet.Stroke{})}, Options{}, "mark 0"},
		{[]sheet.Sheet{long}, Options{}, "the page is 6000.0 mm long; readers show pages up to 5080 mm: cut it into tiles"},
		{[]sheet.Sheet{page120()}, Options{Date: "14.3.2026"}, `date "14.3.2026": write it as YYYY-MM-DD`},
		{[]sheet.Sheet{page120()}, Options{Correction: Correction{X: 1.2}}, "along X is 1.2000; it must be from 0.9 to 1.1"},
	} {
		require.ErrorContains(t, Write(io.Discard, c.sheets, c.o), c.want)
	}
	long.Width = 5_000 * mm
	require.NoError(t, Write(io.Discard, []sheet.Sheet{long}, Options{}))
	require.ErrorContains(t, Write(io.Discard, []sheet.Sheet{long}, Options{Correction: Correction{X: 1.05}}), "5250.0 mm long")
}

// A letter the typeface lacks never becomes a box: Legible writes it in others,
// and what reaches the typeface all the same is named.
func TestMissingLetters(t *testing.T) {
	got := drawn(t, Options{}, page120(note("戸🚪≤", 10, 10)))
	require.Len(t, got[0].glyphs, 4*len("??<="))
	require.NotContains(t, got[0].glyphs, "0000", "glyph 0 is the box")

	_, err := cut(map[rune]bool{'a': true, '戸': true, '🚪': true})
	require.ErrorContains(t, err, "the typeface has no '戸' (U+6238), '🚪' (U+1F6AA)")
	face, err := cut(map[rune]bool{'a': true})
	require.NoError(t, err)
	_, err = face.encode("ab")
	require.ErrorContains(t, err, `text "ab": the typeface has no 'b' (U+0062)`)
}

// Every letter the typeface has can be cut out, alone and with all others, and is as
// wide as lettering says.
func TestEveryLetter(t *testing.T) {
	all := map[rune]bool{}
	for r := rune(' '); r <= 0xFFFF; r++ {
		if lettering.Covers(r) {
			all[r] = true
		}
	}
	require.Greater(t, len(all), 300)
	face, err := cut(all)
	require.NoError(t, err)
	const em = 1024
	for r := range all {
		// Capitals 0.71875 em high: the em is then 1024 nm, a font unit 1 nm.
		require.EqualValues(t, lettering.Advance(string(r), length.Length(lettering.CapHeight*em)), face.widths[face.glyphs[r]], "%q", r)
	}
	for _, r := range "H½⌀éA" {
		alone, err := cut(map[rune]bool{r: true})
		require.NoError(t, err)
		require.Less(t, len(alone.file), len(face.file)/2, "%q: the rest is cut away", r)
		require.NotEqual(t, alone.name(), face.name())
	}
}

// Texts to try on every place that a person's words reach.
var hostile = []string{
	`(unbalanced`, `a) /Evil true (b`, `back\slash\`, "nul\x00bell\x07", "two\nlines\r\ttab", "bad \xff bytes",
	"\u202eright to left", "🚪戸", "%s%d %%EOF", "endobj endstream trailer", ">> << /A", "é\\(",
}

func TestHostileWords(t *testing.T) {
	for _, words := range hostile {
		s := page120(sheet.Text{Layer: sheet.Notes, Height: mm, String: words})
		s.Title, s.Description = words, words
		data := written(t, Options{Title: words, Author: words}, s, s)
		outside(t, data, "qpdf", "--check")
		require.Equal(t, 1, strings.Count(outside(t, data, "pdfinfo"), "\nPages:           2\n"), words)
	}
}

// Whatever words come, the file can be read, and as many letters are set as
// Legible leaves.
func FuzzWords(f *testing.F) {
	for _, words := range hostile {
		f.Add(words)
	}
	f.Fuzz(func(t *testing.T, words string) {
		s := page120(line(at(0, 0), at(1, 1)), sheet.Text{Layer: sheet.Notes, Height: mm, String: words})
		s.Title = words
		shown := drawn(t, Options{Title: words, Author: words}, s)
		letters := lettering.Legible(words)
		if strings.TrimSpace(letters) == "" {
			require.Len(t, shown, 1)
			return
		}
		require.Len(t, shown, 2)
		require.Len(t, shown[1].glyphs, 4*len([]rune(letters)))
	})
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
	whole := len(written(t, Options{}, sampler()))
	for _, n := range []int{0, 100, whole - 1} {
		require.ErrorIs(t, Write(&full{n}, []sheet.Sheet{sampler()}, Options{}), errFull)
	}
	require.NoError(t, Write(&full{whole}, []sheet.Sheet{sampler()}, Options{}))
}

func BenchmarkWrite(b *testing.B) {
	var marks []sheet.Mark
	for i := range 10_000 {
		o := plane.At(length.Length(i%100)*mm, length.Length(i/100)*mm)
		switch i % 3 {
		case 0:
			marks = append(marks, line(o, o.Add(mm, mm)))
		case 1:
			marks = append(marks, sheet.Stroke{Layer: sheet.Outline, Path: plane.Path{plane.Arc(o.Add(mm, 0), o.Add(0, mm), o, plane.Left)}})
		default:
			marks = append(marks, sheet.Text{Layer: sheet.Notes, At: o, Height: mm, String: "59 7/8"})
		}
	}
	sheets := []sheet.Sheet{page120(marks...)}
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, sheets, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
