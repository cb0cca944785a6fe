package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

const mm = length.Millimetre

func at(x, y length.Length) plane.Point { return plane.At(x*mm, y*mm) }

func stroke(l sheet.Layer, p plane.Path) sheet.Stroke {
	return sheet.Stroke{Layer: l, Weight: sheet.Wide, Path: p}
}

func page(marks ...sheet.Mark) sheet.Sheet {
	return sheet.Sheet{Name: "2-leaf", Title: "Leaf", Width: 420 * mm, Height: 297 * mm, Scale: sheet.Scale{Paper: 1, Real: 10}, Marks: marks}
}

func head(a, b, c plane.Point) sheet.Fill {
	return sheet.Fill{Layer: sheet.Dimensions, Region: plane.Region{plane.Polygon(a, b, c)}}
}

// across is a horizontal dimension of 60 mm on the paper in a view's scale.
func across(scale sheet.Scale) sheet.Dimension {
	line := func(a, b plane.Point) sheet.Stroke {
		return sheet.Stroke{Layer: sheet.Dimensions, Path: plane.Path{plane.Line(a, b)}}
	}
	measured := 60 * mm
	if scale != (sheet.Scale{}) {
		measured = measured * length.Length(scale.Real) / length.Length(scale.Paper)
	}
	return sheet.Dimension{
		Layer: sheet.Dimensions, A: at(20, 20), B: at(80, 20), Line: at(20, 40), Horizontal: true,
		Measured: measured, Scale: scale, Figure: "23 5/8",
		Strokes: []sheet.Stroke{line(at(20, 22), at(20, 42)), line(at(80, 22), at(80, 42)), line(at(20, 40), at(80, 40))},
		Fills:   []sheet.Fill{head(at(20, 40), at(23, 39), at(23, 41)), head(at(80, 40), at(77, 41), at(77, 39))},
		Texts:   []sheet.Text{{Layer: sheet.Dimensions, At: at(50, 41), Height: 3 * mm, Align: sheet.Middle, String: "23 5/8", Advance: 12 * mm}},
	}
}

// upwards is a vertical dimension of 50 mm on the paper.
func upwards() sheet.Dimension {
	return sheet.Dimension{
		Layer: sheet.Dimensions, A: at(100, 200), B: at(110, 250), Line: at(95, 200),
		Measured: 500 * mm, Scale: sheet.Scale{Paper: 1, Real: 10}, Figure: "500",
		Texts: []sheet.Text{{Layer: sheet.Dimensions, At: at(94, 225), Height: 3 * mm, Align: sheet.Middle, Rise: true, String: "500"}},
	}
}

// sampler holds one mark of every kind a writer must tell apart.
func sampler() sheet.Sheet {
	quarter := plane.Arc(at(110, 100), at(100, 110), at(100, 100), plane.Left)
	hole := plane.Rect(at(210, 110), at(220, 120)).Reverse()
	text := func(s string, a sheet.Align, rise bool) sheet.Text {
		return sheet.Text{Layer: sheet.Notes, At: at(300, 50), Height: 5 * mm, Align: a, Rise: rise, String: s, Advance: 40 * mm}
	}
	return page(
		sheet.Fill{Layer: sheet.Panel, Tone: sheet.Tint, Region: plane.Region{plane.RoundedRect(plane.BoxOf(at(200, 100), at(240, 140)), 5*mm), hole}},
		sheet.Fill{Layer: sheet.Hatch, Tone: sheet.Ink, Region: plane.Region{plane.Circle(at(250, 150), 3*mm)}},
		sheet.Fill{Layer: sheet.Panel, Tone: sheet.Paper, Region: plane.Region{plane.Rect(at(205, 105), at(207, 107))}},
		stroke(sheet.Outline, plane.Path{plane.Line(at(10, 10), at(90, 10))}),
		stroke(sheet.Outline, plane.Path{quarter}),
		stroke(sheet.Outline, plane.Path{quarter.Reverse()}),
		stroke(sheet.Hardware, plane.Circle(at(150, 50), 4*mm)),
		stroke(sheet.Outline, plane.RoundedRect(plane.BoxOf(at(20, 100), at(60, 180)), 10*mm)),
		sheet.Stroke{Layer: sheet.HiddenEdge, Line: sheet.Hidden, Path: plane.Path{plane.Line(at(0, 0), at(5, 5)), plane.Line(at(5, 5), at(9, 5))}},
		sheet.Stroke{Layer: sheet.Hardware, Weight: sheet.Frame, Line: sheet.Phantom, Path: plane.Path{plane.Line(at(0, 1), at(5, 6))}},
		text("Attic landing ⌀5 × 2°", sheet.Start, false),
		text("Middle", sheet.Middle, false),
		text("End", sheet.End, false),
		text("Rise", sheet.End, true),
		across(sheet.Scale{Paper: 1, Real: 10}),
		across(sheet.Scale{Paper: 1, Real: 2}),
		across(sheet.Scale{}),
		upwards(),
	)
}

func only(r reading, kind string) []entity {
	var found []entity
	for _, e := range r.Entities {
		if e.Kind == kind {
			found = append(found, e)
		}
	}
	return found
}

func TestHeaderAndTables(t *testing.T) {
	r := sampled(t)
	require.Equal(t, "AC1015", r.Version)
	require.Equal(t, "cp1252", r.Encoding)
	require.Equal(t, 4, r.Units)
	require.Zero(t, r.Paper, "paper space is empty")
	require.Equal(t, 10.0, r.Dashes)
	require.Equal(t, []string{"ByBlock", "ByLayer", "CENTRE", "Continuous", "HIDDEN", "PHANTOM"}, r.Lines)
	require.Equal(t, []float64{0, 0, 0}, r.Min)
	require.Equal(t, []float64{3400, 2250, 0}, r.Max, "the Start text ends at x 340, the upright figure stands at y 225")
	count := map[string]int{}
	for _, e := range r.Entities {
		count[e.Kind]++
		if !strings.EqualFold(e.Line, "BYLAYER") {
			require.Contains(t, r.Lines, e.Line, "every line type used is in the table")
		}
	}
	require.Equal(t, map[string]int{"HATCH": 3, "LINE": 2, "ARC": 2, "CIRCLE": 1, "LWPOLYLINE": 2, "TEXT": 4, "DIMENSION": 4}, count)
}

func TestEntities(t *testing.T) {
	r := sampled(t)
	line := only(r, "LINE")
	require.Equal(t, [][2]float64{{100, 100}, {900, 100}}, line[0].Points)
	require.Equal(t, 50, line[0].Weight)
	require.Equal(t, "BYLAYER", strings.ToUpper(line[0].Line))
	require.Equal(t, "PHANTOM", line[1].Line)
	require.Equal(t, 70, line[1].Weight)

	for i, arc := range only(r, "ARC") { // the second is the first walked backwards: the same curve
		require.Equal(t, 100.0, arc.Radius, i)
		require.InDelta(t, 90, arc.Sweep, 1e-9, i)
		require.InDeltaSlice(t, []float64{1100, 1000, 1000, 1100}, append(arc.Points[0][:], arc.Points[1][:]...), 1e-6, i)
	}
	circle := only(r, "CIRCLE")[0]
	require.Equal(t, 40.0, circle.Radius)
	require.Equal(t, [][2]float64{{1500, 500}}, circle.Points)

	poly := only(r, "LWPOLYLINE")
	require.True(t, poly[0].Closed)
	require.Len(t, poly[0].Points, 8)
	quarterBulge := math.Tan(math.Pi / 8)
	for _, b := range poly[0].Bulges {
		if b != 0 {
			require.InDelta(t, quarterBulge, b, 1e-9, "counter-clockwise corners")
		}
	}
	require.InDelta(t, 400*800-(4-math.Pi)*100*100, area(poly[0]), 1e-3)
	require.False(t, poly[1].Closed)
	require.Equal(t, [][2]float64{{0, 0}, {50, 50}, {90, 50}}, poly[1].Points)
}

// area is what a closed polyline with bulges encloses: the polygon and a
// segment of a circle on each bulged side (textbook formulas).
func area(e entity) (sum float64) {
	for i, p := range e.Points {
		q := e.Points[(i+1)%len(e.Points)]
		sum += (p[0]*q[1] - p[1]*q[0]) / 2
		if b := e.Bulges[i]; b != 0 {
			angle := 4 * math.Atan(b)
			radius := math.Hypot(q[0]-p[0], q[1]-p[1]) / 2 / math.Sin(angle/2)
			sum += radius * radius / 2 * (angle - math.Sin(angle))
		}
	}
	return sum
}

func TestFills(t *testing.T) {
	hatch := only(sampled(t), "HATCH")
	require.Equal(t, []int{palest, 256, white}, []int{hatch[0].Colour, hatch[1].Colour, hatch[2].Colour})
	require.Equal(t, []int{2, 1, 1}, []int{hatch[0].Paths, hatch[1].Paths, hatch[2].Paths})
	require.Len(t, hatch[0].Points, 12)
	require.Equal(t, []float64{1, 1}, hatch[1].Bulges, "a circle is two half turns")
	for _, h := range hatch {
		require.True(t, h.Solid)
	}
	require.Empty(t, sound(t, page(sheet.Fill{})).Entities, "an empty fill shows nothing")
}

func TestTexts(t *testing.T) {
	text := only(sampled(t), "TEXT")
	require.Equal(t, "Attic landing Ø5 × 2°", text[0].Text) // the reader draws %%c as Ø
	want := []struct {
		align     string
		rotation  float64
		insertion [2]float64
	}{{"LEFT", 0, [2]float64{3000, 500}}, {"CENTER", 0, [2]float64{2800, 500}}, {"RIGHT", 0, [2]float64{2600, 500}}, {"RIGHT", 90, [2]float64{3000, 100}}}
	for i, w := range want {
		require.Contains(t, text[i].Align, w.align)
		require.Equal(t, w.rotation, text[i].Rotation)
		require.Equal(t, [][2]float64{{3000, 500}, w.insertion}, text[i].Points)
		require.Equal(t, 50.0, text[i].Height)
	}
}

func TestDimensions(t *testing.T) {
	dims := only(sampled(t), "DIMENSION")
	for i, w := range []struct {
		style            string
		factor, measured float64
		stored           float64
	}{{"SCALE_1_10", 1, 600, 600}, {"SCALE_1_2", 0.2, 120, 120}, {"SCALE_1_10", 1, 600, 60}, {"SCALE_1_10", 1, 500, 500}} {
		require.Equal(t, w.style, dims[i].Style)
		require.InDelta(t, w.factor, dims[i].Factor, 1e-12)
		require.InDelta(t, w.measured, dims[i].Measured, 1e-6)
		require.Equal(t, w.stored, dims[i].Stored)
	}
	require.Equal(t, "23 5/8", dims[0].Text)
	require.Equal(t, [][2]float64{{200, 200}, {800, 200}, {800, 400}, {500, 425}}, dims[0].Points)
	require.Equal(t, [][2]float64{{1000, 2000}, {1100, 2500}, {950, 2500}, {925, 2250}}, dims[3].Points)
	var kinds []string
	for _, e := range dims[0].Block {
		kinds = append(kinds, e.Kind)
	}
	require.Equal(t, []string{"LINE", "LINE", "LINE", "SOLID", "SOLID", "TEXT"}, kinds)
	require.Equal(t, [][2]float64{{200, 400}, {230, 390}, {230, 410}, {230, 410}}, dims[0].Block[3].Points)
}

// GDAL reads every entity, those of the dimensions' blocks too.
func TestGDAL(t *testing.T) {
	s := sampler()
	listing := gdal(t, written(t, s))
	for _, want := range []string{"Attic landing ⌀5 × 2°", "Middle", "End", "Rise", "23 5/8", "500"} {
		require.Contains(t, listing, want)
	}
	box := gdalBox(t, listing)
	// Text counts as its insertion point there, so the right edge is it at x 3000.
	require.InDeltaSlice(t, []float64{0, 0, 3000, 2250}, box[:], 1e-3)
	for class, n := range map[string]int{"AcDbHatch": 3, "AcDbArc": 2, "AcDbCircle": 1, "AcDbPolyline": 2, "AcDbTrace": 6} {
		require.Equal(t, n, strings.Count(listing, class+"\n"), class)
	}
}

// A sheet of a detail, drawn larger than life, and one without scale.
func TestScales(t *testing.T) {
	for _, c := range []struct {
		scale sheet.Scale
		want  float64
	}{{sheet.Scale{}, 80}, {sheet.Scale{Paper: 2, Real: 1}, 40}, {sheet.Scale{Paper: 3, Real: 1}, 26.666667}, {sheet.Scale{Paper: 1, Real: 12}, 960}} {
		s := page(stroke(sheet.Outline, plane.Path{plane.Line(at(0, 0), at(80, -80))}))
		s.Scale = c.scale
		got := sound(t, s).Entities[0].Points
		require.Equal(t, [][2]float64{{0, 0}, {c.want, -c.want}}, got, "halves are rounded away from zero on both sides")
	}
}

func TestNanometresSurvive(t *testing.T) {
	s := page(stroke(sheet.Outline, plane.Path{plane.Line(plane.At(-1, 396_875), plane.At(length.Longest, -length.Longest))}))
	s.Scale = sheet.Scale{}
	require.Equal(t, [][2]float64{{-0.000001, 0.396875}, {1e6, -1e6}}, sound(t, s).Entities[0].Points)
}

// Handles are unique, every one lies below $HANDSEED, and every owner exists.
func TestHandles(t *testing.T) {
	lines := strings.Split(string(written(t, sampler())), "\n")
	seen := map[uint64]bool{}
	var owners []uint64
	var seed uint64
	for i := 0; i+1 < len(lines); i += 2 {
		code, value := strings.TrimSpace(lines[i]), lines[i+1]
		if code != "5" && code != "105" && code != "330" && code != "340" && code != "350" {
			continue
		}
		h, err := strconv.ParseUint(value, 16, 64)
		require.NoError(t, err)
		switch {
		case i > 1 && lines[i-1] == "$HANDSEED":
			seed = h
		case code == "5" || code == "105":
			require.False(t, seen[h], "handle %X twice", h)
			seen[h] = true
		case h != 0:
			owners = append(owners, h)
		}
	}
	require.NotZero(t, seed)
	for h := range seen {
		require.Less(t, h, seed)
	}
	for _, h := range owners {
		require.True(t, seen[h], "%X is referred to and is not there", h)
	}
}

func TestSameBytesNoMinusZero(t *testing.T) {
	a, b := written(t, sampler()), written(t, sampler())
	require.True(t, bytes.Equal(a, b))
	require.NotRegexp(t, regexp.MustCompile(`\n-0(\.0*)?\n`), string(a))
	require.NotContains(t, string(a), "e+")
	require.NotContains(t, string(a), "\r")
}

func TestEmptySheet(t *testing.T) {
	r := sound(t, page())
	require.Empty(t, r.Entities)
	require.Equal(t, []float64{4200, 2970, 0}, r.Max, "the extents are those of the paper")
}

func TestRefuses(t *testing.T) {
	s := page()
	s.Scale = sheet.Scale{Real: 10}
	require.ErrorContains(t, Write(io.Discard, s), "0:10")
	require.ErrorContains(t, Write(io.Discard, sheet.Sheet{}), "no name")
	require.ErrorContains(t, Write(io.Discard, page(stroke(sheet.Outline, nil))), "mark 0")
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
	whole := len(written(t, sampler()))
	for _, n := range []int{0, 100, whole / 2, whole - 1} {
		require.ErrorIs(t, Write(&full{n}, sampler()), errFull, fmt.Sprint(n))
	}
	require.NoError(t, Write(&full{whole}, sampler()))
}
