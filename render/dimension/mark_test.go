package dimension

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

func text(x, y float64, s string) sheet.Text {
	h := 25 * mm / 10
	return sheet.Text{At: plane.At(length.Round(x), length.Round(y)), Height: h, String: s, Advance: lettering.Advance(s, h)}
}

func line(x1, y1, x2, y2 float64) sheet.Stroke {
	return sheet.Stroke{Layer: sheet.Hatch, Path: plane.Path{plane.Line(
		plane.At(length.Round(x1), length.Round(y1)), plane.At(length.Round(x2), length.Round(y2)))}}
}

func solid(tone sheet.Tone, p plane.Path) sheet.Fill {
	return sheet.Fill{Tone: tone, Region: plane.Region{p}}
}

func risen(t sheet.Text) sheet.Text { t.Rise = true; return t }

// Broken drawings that must be found, and sound ones that must not. "H" at
// 2.5 mm is 712 × 2.5/736 = 2.42 mm wide.
func TestCollisions(t *testing.T) {
	square := plane.Rect(plane.At(-50*mm, -50*mm), plane.At(50*mm, 50*mm))
	for _, c := range []struct {
		name  string
		marks []sheet.Mark
		found string // "" for none
	}{
		{"nothing", nil, ""},
		{"apart", []sheet.Mark{text(0, 0, "HH"), text(5, 0, "HH")}, ""},
		{"text on text", []sheet.Mark{text(0, 0, "HH"), text(4, 2, "HH")}, "text"},
		{"the same twice", []sheet.Mark{text(0, 0, "HH"), text(0, 0, "HH")}, "text"},
		{"tail on head", []sheet.Mark{text(0, 3, "g"), text(0, 0, "H")}, "text"},
		{"no tail on head", []sheet.Mark{text(0, 3, "H"), text(0, 0, "H")}, ""},
		{"line through", []sheet.Mark{text(0, 0, "HH"), line(-5, -5, 10, 8)}, "line of layer HATCH"},
		{"line inside", []sheet.Mark{text(0, 0, "HH"), line(1, 1, 2, 2)}, "line"},
		{"line passes the corner", []sheet.Mark{text(0, 0, "HH"), line(-5, 3, 3, -5)}, ""},
		{"line's width touches", []sheet.Mark{text(0, 0, "HH"), line(-5, -0.1, 9, -0.1)}, "line"},
		{"line below", []sheet.Mark{text(0, 0, "HH"), line(-5, -0.2, 9, -0.2)}, ""},
		{"risen text beside", []sheet.Mark{risen(text(-1, 0, "HHH")), line(0, -5, 0, 9)}, ""},
		{"risen text on line", []sheet.Mark{risen(text(1, 0, "HHH")), line(0, -5, 0, 9)}, "line"},
		{"arrow", []sheet.Mark{text(0, 0, "HH"), solid(sheet.Ink, plane.Polygon(plane.At(4*mm, 1*mm), plane.At(7*mm, 0), plane.At(7*mm, 2*mm)))}, "fill"},
		{"around the text", []sheet.Mark{text(0, 0, "HH"), solid(sheet.Ink, square)}, "fill"},
		{"tint", []sheet.Mark{text(0, 0, "HH"), solid(sheet.Tint, square)}, ""},
		{"frame around", []sheet.Mark{text(0, 0, "HH"), sheet.Stroke{Path: square}}, ""},
		{"ring on text", []sheet.Mark{text(0, 0, "HH"), sheet.Stroke{Path: plane.Circle(plane.At(0, 0), mm)}}, "line"},
		{"in a dimension", []sheet.Mark{sheet.Dimension{
			Texts: []sheet.Text{text(0, 0, "HH")}, Strokes: []sheet.Stroke{line(-1, 1, 9, 1)}}}, "line"},
		{"past the paper", []sheet.Mark{text(197, 0, "HHH")}, "outside of the box"},
	} {
		paper := plane.Box{Min: plane.At(-100*mm, -100*mm), Max: plane.At(200*mm, 100*mm)}
		found := Collisions(c.marks, paper)
		if c.found == "" {
			assert.Empty(t, found, c.name)
		} else if assert.Len(t, found, 1, c.name) {
			assert.Contains(t, found[0], c.found, c.name)
		}
	}
}

func TestTextBox(t *testing.T) {
	at := text(10, 20, "H")
	wide := at.Advance
	for _, c := range []struct {
		align sheet.Align
		rise  bool
		box   plane.Box
	}{
		{sheet.Start, false, plane.Box{Min: plane.At(10*mm, 20*mm), Max: plane.At(10*mm+wide, 22500*um)}},
		{sheet.End, false, plane.Box{Min: plane.At(10*mm-wide, 20*mm), Max: plane.At(10*mm, 22500*um)}},
		{sheet.Start, true, plane.Box{Min: plane.At(7500*um, 20*mm), Max: plane.At(10*mm, 20*mm+wide)}},
		{sheet.End, true, plane.Box{Min: plane.At(7500*um, 20*mm-wide), Max: plane.At(10*mm, 20*mm)}},
	} {
		at.Align, at.Rise = c.align, c.rise
		assert.Equal(t, c.box, TextBox(at))
	}
	at.Align, at.Rise = sheet.Middle, false
	assert.Equal(t, 10*mm, (TextBox(at).Min.X + TextBox(at).Max.X).Half())
}

func TestCloses(t *testing.T) {
	third := length.Inch / 3
	for _, c := range []struct {
		values        []length.Length
		overall, tick length.Length
		want          bool
	}{
		{inches(4.5, 22.4375, 4.5), length.Round(31.4375 * 25.4), length.Inch / 64, true},
		{[]length.Length{third, third, third}, 3 * third, 0, true},
		{[]length.Length{third, third, third}, 3 * third, length.Inch / 16, false}, // 5/16 three times is 15/16
		{mms(1.4, 1.4), length.Round(2.8), mm, false},                              // 1 + 1 is not 3
		{nil, 0, mm, true},
	} {
		assert.Equal(t, c.want, Closes(c.values, c.overall, c.tick), "%v", c.values)
	}
}

// What figures come out, in the order of the row.
func TestFigures(t *testing.T) {
	whole := Options{Format: wholeMM, Tick: mm}
	overall := Row{At: mms(0, 300, 1000), Style: Overall}
	for _, c := range []struct {
		name string
		row  Row
		o    Options
		want []string
	}{
		{"chain", Row{At: mms(0, 300, 1000)}, whole, []string{"300", "700"}},
		{"unsorted and twice", Row{At: mms(1000, 0, 300, 0)}, whole, []string{"300", "700"}},
		{"overall", overall, whole, []string{"1000"}},
		{"last says REF", Row{At: mms(0, 300.4, 600.8, 900.6)}, whole, []string{"300", "300", "300 REF"}},
		{"REF is not for the caller's", Row{At: mms(0, 300.4, 600.8, 900.6), Figures: []string{"", "", "LAST"}}, whole,
			[]string{"300", "300 REF", "LAST"}},
		{"no tick, no REF", Row{At: mms(0, 300.4, 900.6)}, Options{Format: wholeMM}, []string{"300", "600"}},
		{"tiny and equal", Row{At: evenly(16, 2*mm)}, whole, []string{"16 × 2 (= 32)"}},
		{"tiny, does not multiply", Row{At: evenly(10, 2100*um)}, whole, []string{"10 × 2 REF (= 21)"}},
		{"two are not a run", Row{At: mms(0, 2, 4, 500)}, whole, []string{"2", "2", "496"}},
		{"roomy and equal", Row{At: evenly(4, 250*mm)}, whole, []string{"250", "250", "250", "250"}},
		{"running", Row{At: mms(100, 0, 1000), Style: Running}, whole, []string{"100", "900"}},
		{"nil format", Row{At: mms(0, 12.7)}, Options{}, []string{"12.7"}},
		{"one place", Row{At: mms(4, 4)}, whole, nil},
		{"none", Row{}, whole, nil},
		{"letters the font lacks", Row{At: mms(0, 1000), Figures: []string{"≤ 9"}}, whole, []string{"<= 9"}},
	} {
		marks, depth := Place(square(), Below, []Row{c.row}, c.o)
		var got []string
		for _, d := range dimensions(marks) {
			got = append(got, d.Figure)
			assert.Equal(t, d.Figure, d.Texts[0].String, c.name)
			assert.Len(t, d.Texts, 1, c.name)
		}
		assert.Equal(t, c.want, got, c.name)
		assert.Equal(t, c.want == nil, depth == 0, c.name)
	}
}

// A plain dimension, to the micrometre: line 10 mm off, extension lines from
// 1 mm off to 2 mm past it, figure over the line's middle.
func TestPlainDimension(t *testing.T) {
	marks, depth := Place(square(), Below, []Row{{At: mms(0, 1000)}}, Options{})
	d := dimensions(marks)[0]
	assert.Equal(t, 12*mm, depth)
	assert.Equal(t, []plane.Path{
		{plane.Line(plane.At(0, -1*mm), plane.At(0, -12*mm))},
		{plane.Line(plane.At(100*mm, -1*mm), plane.At(100*mm, -12*mm))},
		{plane.Line(plane.At(0, -10*mm), plane.At(100*mm, -10*mm))},
	}, []plane.Path{d.Strokes[0].Path, d.Strokes[1].Path, d.Strokes[2].Path})
	assert.Len(t, d.Strokes, 3)
	assert.Len(t, d.Fills, 2)
	for _, f := range d.Fills { // counter-clockwise, half of 2.5 × 0.8 mm²
		assert.InDelta(t, 1.0, f.Region[0].Area(), 1e-9)
	}
	assert.Equal(t, plane.At(0, -10*mm), d.Fills[0].Region.Bounds().Min.Add(0, arrowHalf))
	assert.Equal(t, 50*mm, d.Texts[0].At.X)
	assert.Greater(t, d.Texts[0].At.Y, -10*mm)
	assert.False(t, d.Texts[0].Rise)
	tip := 2 * math.Atan(float64(arrowHalf)/float64(arrowLong)) * 180 / math.Pi
	assert.True(t, tip >= 15 && tip <= 20, "%v°", tip)
}

// Beside a view figures rise and stand to the left of their line.
func TestSideDimensionsAreReadFromTheRight(t *testing.T) {
	for _, side := range []Side{LeftOf, RightOf} {
		marks, _ := Place(square(), side, []Row{{At: mms(0, 1000)}}, Options{})
		d := dimensions(marks)[0]
		assert.True(t, d.Texts[0].Rise)
		assert.Less(t, d.Texts[0].At.X, d.Line.X)
		assert.Equal(t, 50*mm, d.Texts[0].At.Y)
	}
}

func TestPaper(t *testing.T) {
	f := Frame{
		Box:    plane.Box{Min: plane.At(30*mm, 40*mm), Max: plane.At(130*mm, 90*mm)},
		Origin: plane.At(-100*mm, 50*mm), Scale: sheet.Scale{Paper: 1, Real: 10},
	}
	assert.Equal(t, f.Box.Min, f.Paper(f.Origin))
	assert.Equal(t, f.Box.Max, f.Paper(plane.At(900*mm, 550*mm)))
	assert.Equal(t, plane.At(29*mm, 39*mm), f.Paper(plane.At(-110*mm, 40*mm)))
	f.Scale = sheet.Scale{}
	assert.Equal(t, plane.At(130*mm, 40*mm), f.Paper(plane.At(0, 50*mm)))
}

// No extension line is drawn twice over the same paper.
func TestExtensionLinesAreSharedByRows(t *testing.T) {
	marks, _ := Place(square(), Above, []Row{{At: mms(0, 500, 1000)}, {At: mms(0, 1000), Style: Overall}}, Options{})
	long := 0.0
	for _, l := range piecesOf(marks).lines {
		if e := l.path[0]; e.From.X == 0 && e.To.X == 0 {
			long += l.path.Length()
		}
	}
	assert.InDelta(t, 10+7+2-1, long, 1e-9)
}

func TestLeader(t *testing.T) {
	for _, c := range []struct {
		name  string
		note  Note
		texts int
		right bool
	}{
		{"to the right", Note{Tip: plane.At(0, 0), Elbow: plane.At(8*mm, 12*mm), Lines: []string{"RABBET 3/8 × 3/4", "(½ gejoggt)", "ALL ROUND"}}, 3, true},
		{"to the left", Note{Tip: plane.At(0, 0), Elbow: plane.At(-8*mm, -12*mm), Lines: []string{"SEAT", "Ög"}, Head: Dot}, 2, false},
		{"straight", Note{Tip: plane.At(0, 0), Elbow: plane.At(0, 0), Lines: []string{"EDGE"}}, 1, true},
		{"no lines", Note{Elbow: plane.At(5*mm, 5*mm), Head: Bare}, 0, true},
	} {
		marks := Leader(c.note)
		assert.Empty(t, Collisions(marks, plane.Box{}), c.name)
		texts := piecesOf(marks).texts
		assert.Len(t, texts, c.texts, c.name)
		for _, b := range texts {
			assert.Equal(t, c.right, b.box.Min.X > c.note.Elbow.X, c.name)
		}
		picture(t, "leader "+c.name, marks)
	}
}

func TestLeaderHeadPointsAtItsTip(t *testing.T) {
	tip := plane.At(3*mm, 4*mm)
	for _, m := range Leader(Note{Tip: tip, Elbow: plane.At(33*mm, 44*mm), Lines: []string{"X"}}) {
		if f, ok := m.(sheet.Fill); ok {
			assert.Equal(t, tip, f.Region[0][0].From)
			assert.InDelta(t, 1.0, f.Region[0].Area(), 1e-5) // corners are rounded to the nanometre
			return
		}
	}
	require.Fail(t, "no head")
}

func TestColumn(t *testing.T) {
	var notes []Note
	for i, s := range []string{"TOP RAIL", "HANGER", "FASCIA", "HEAD", "TRACK"} {
		y := length.Length(i*i) * mm
		notes = append(notes, Note{Tip: plane.At(0, y), Elbow: plane.At(0, y), Lines: []string{s, "SEE DETAIL"}, Head: Dot})
	}
	marks := Column(notes, 20*mm)
	assert.Empty(t, Collisions(marks, plane.Box{}))
	assert.Len(t, piecesOf(marks).texts, 10)
	picture(t, "column", marks)
	assert.Empty(t, Column(nil, 0))
}

func BenchmarkPlace(b *testing.B) {
	rows := []Row{{At: mms(0, 12, 25, 40, 52, 71, 83, 300, 330, 361, 900, 1000)}, {At: mms(0, 1000), Style: Overall}}
	for b.Loop() {
		Place(square(), Below, rows, Options{})
	}
}
