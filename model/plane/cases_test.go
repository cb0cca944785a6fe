package plane

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
)

// box is the rectangle between two corners in whole millimetres.
func box(x1, y1, x2, y2 length.Length) Region {
	return Of(Rect(At(x1*mm, y1*mm), At(x2*mm, y2*mm)))
}

func circle(x, y, r length.Length) Region { return Of(Circle(At(x*mm, y*mm), r*mm)) }

// short writes a region in millimetres: corners, "(" before an arc to the left
// and ")" before one to the right, outlines apart by " | ".
func short(r Region) string {
	var outlines []string
	for _, p := range r {
		var b strings.Builder
		for _, e := range p {
			fmt.Fprintf(&b, "%s,%s%s ", e.From.X.Decimal(), e.From.Y.Decimal(), map[Turn]string{Left: " (", Right: " )"}[e.Turn])
		}
		outlines = append(outlines, strings.TrimSpace(b.String()))
	}
	return strings.Join(outlines, " | ")
}

// The expected outlines are worked by hand.
func TestBooleansByHand(t *testing.T) {
	frame := Subtract(box(0, 0, 100, 200), box(10, 10, 90, 190))
	for _, c := range []struct {
		what string
		got  Region
		want string
		area float64
	}{
		{"glue line joins two boards", Union(box(0, 0, 10, 50), box(10, 0, 30, 50)), "0,0 30,0 30,50 0,50", 1500},
		{"part of an edge shared", Union(box(0, 0, 10, 50), box(10, 20, 30, 40)),
			"0,0 10,0 10,20 30,20 30,40 10,40 10,50 0,50", 900},
		{"nothing in common but an edge", Intersect(box(0, 0, 10, 50), box(10, 0, 30, 50)), "", 0},
		{"touching leaves all", Subtract(box(0, 0, 10, 50), box(10, 0, 30, 50)), "0,0 10,0 10,50 0,50", 500},
		{"frame", frame, "0,0 100,0 100,200 0,200 | 10,10 10,190 90,190 90,10", 20000 - 80*180},
		{"frame cut through", Subtract(frame, box(-5, 90, 105, 110)),
			"0,0 100,0 100,90 90,90 90,10 10,10 10,90 0,90 | 0,110 10,110 10,190 90,190 90,110 100,110 100,200 0,200",
			20000 - 80*180 - 2*200},
		{"hole filled again", Union(frame, box(10, 10, 90, 190)), "0,0 100,0 100,200 0,200", 20000},
		{"notch flush with the edge", Subtract(box(0, 0, 10, 10), box(3, 5, 7, 10)),
			"0,0 10,0 10,10 7,10 7,5 3,5 3,10 0,10", 80},
		{"corners touch", Union(box(0, 0, 10, 10), box(10, 10, 20, 20)),
			"0,0 10,0 10,10 0,10 | 10,10 20,10 20,20 10,20", 200},
		{"dogbone on a corner", Subtract(box(0, 0, 10, 10), circle(10, 10, 2)),
			"0,0 10,0 10,8 ) 8,10 0,10", 100 - math.Pi},
		{"corner relief", Union(box(0, 0, 10, 10), circle(10, 10, 2)),
			"0,0 10,0 10,8 ( 8,10 0,10", 100 + 3*math.Pi},
		{"half of a circle", Intersect(circle(0, 0, 5), box(-9, 0, 9, 9)), "-5,0 5,0 (", 12.5 * math.Pi},
		{"two halves are a circle", Union(Intersect(circle(0, 0, 5), box(-9, 0, 9, 9)), Intersect(circle(0, 0, 5), box(-9, -9, 9, 0))),
			"-5,0 ( 5,0 (", 25 * math.Pi},
		{"ring", Subtract(circle(0, 0, 5), circle(0, 0, 3)), "-5,0 ( 5,0 ( | -3,0 ) 3,0 )", 16 * math.Pi},
		{"circle inside against both sides", Subtract(box(0, 0, 20, 10), circle(10, 5, 5)),
			"0,0 10,0 ) 10,10 0,10 | 10,0 20,0 20,10 10,10 )", 200 - 25*math.Pi},
		{"clipped corner", Intersect(box(0, 0, 10, 10), Of(Polygon(At(-5*mm, -5*mm), At(20*mm, -5*mm), At(-5*mm, 20*mm)))),
			"0,0 10,0 10,5 5,10 0,10", 87.5},
		{"rounded over its own square", Intersect(box(0, 0, 20, 10), Of(RoundedRect(BoxOf(At(0, 0), At(20*mm, 10*mm)), 2*mm))),
			"2,0 18,0 ( 20,2 20,8 ( 18,10 2,10 ( 0,8 0,2 (", 200 - (4-math.Pi)*4},
		{"rounded corners left over", Subtract(box(0, 0, 20, 10), Of(RoundedRect(BoxOf(At(0, 0), At(20*mm, 10*mm)), 2*mm))),
			"0,0 2,0 ) 0,2 | 18,0 20,0 20,2 ) | 0,8 ) 2,10 0,10 | 20,8 20,10 18,10 )", (4 - math.Pi) * 4},
		{"part of the same arc", Union(Intersect(circle(0, 0, 5), box(0, 0, 9, 9)), Intersect(circle(0, 0, 5), box(-9, 3, 9, 9))),
			"0,0 5,0 ( -4,3 0,3", 25*math.Pi/4 + 25.0/2*math.Asin(4.0/5) - 3*4.0/2},
		{"nothing", Union(nil, nil), "", 0},
		{"less nothing", Subtract(box(0, 0, 1, 1), nil), "0,0 1,0 1,1 0,1", 1},
		{"a nanometre apart counts as touching", Union(box(0, 0, 10, 50), Of(Rect(At(10*mm+1, 0), At(30*mm, 50*mm)))), "0,0 30,0 30,50 0,50", 1500},
	} {
		assert.Equal(t, c.want, short(c.got), c.what)
		assert.InDelta(t, c.area, c.got.Area(), 1e-4, c.what)
		assert.NoError(t, Simple(c.got), c.what)
	}
}

// Twelve metres by twelve overflow 64 bits (1.2e10² nm² > 2⁶³); a needle of
// one nanometre at that distance still turns the right way.
func TestSideIsExact(t *testing.T) {
	far := 12 * length.Metre
	assert.Equal(t, 1, side(At(-far, -far), At(far, far), At(far-1, far)))
	assert.Equal(t, -1, side(At(-far, -far), At(far, far), At(far, far-1)))
	assert.Equal(t, 0, side(At(-far, -far), At(far, far), At(1, 1)))
	assert.Equal(t, 1, side(At(0, 0), At(far, 1), At(far-1, 1)))
}

func TestArcsKeepTheirCentreAndTheLine(t *testing.T) {
	cut := Subtract(circle(0, 0, 10), Of(Rect(At(3_333_333, -20*mm), At(20*mm, 20*mm))))
	require.NoError(t, Simple(cut))
	require.Len(t, cut, 1)
	for _, e := range cut[0] {
		if e.Turn == Straight {
			assert.Equal(t, length.Length(3_333_333), e.From.X)
			assert.Equal(t, length.Length(3_333_333), e.To.X)
			continue
		}
		assert.Equal(t, At(0, 0), e.Centre)
		assert.InDelta(t, 10, e.Radius(), 1e-6)
	}
}

func TestEdgeMeasures(t *testing.T) {
	quarter := Arc(At(10*mm, 0), At(0, 10*mm), At(0, 0), Left)
	threeQuarters := Arc(At(0, 10*mm), At(10*mm, 0), At(0, 0), Left)
	half := Arc(At(-5*mm, 0), At(5*mm, 0), At(0, 0), Right)
	for _, c := range []struct {
		e                    Edge
		sweep, bulge, length float64
		middle               Point
		bounds               Box
	}{
		// bulge: tan(sweep/4), DXF reference, LWPOLYLINE group 42
		{quarter, math.Pi / 2, math.Sqrt2 - 1, 5 * math.Pi, At(7_071_068, 7_071_068), BoxOf(At(0, 0), At(10*mm, 10*mm))},
		{threeQuarters, 3 * math.Pi / 2, math.Sqrt2 + 1, 15 * math.Pi, At(-7_071_068, -7_071_068), BoxOf(At(-10*mm, -10*mm), At(10*mm, 10*mm))},
		{half, -math.Pi, -1, 5 * math.Pi, At(0, 5*mm), BoxOf(At(-5*mm, 0), At(5*mm, 5*mm))},
		{Line(At(0, 0), At(3*mm, 4*mm)), 0, 0, 5, At(1_500_000, 2*mm), BoxOf(At(0, 0), At(3*mm, 4*mm))},
	} {
		assert.InDelta(t, c.sweep, c.e.Sweep(), 1e-12)
		assert.InDelta(t, c.bulge, c.e.Bulge(), 1e-12)
		assert.InDelta(t, c.length, c.e.Length(), 1e-9)
		assert.Equal(t, c.middle, c.e.Middle())
		assert.Equal(t, c.bounds, c.e.Bounds())
		assert.InDelta(t, -c.sweep, c.e.Reverse().Sweep(), 1e-12)
		assert.Equal(t, c.middle, c.e.Reverse().Middle())
	}
	assert.Equal(t, 0.0, Edge{}.Length())
	assert.Equal(t, 0.0, Line(At(0, 0), At(1, 1)).Radius())
}

func TestCentroid(t *testing.T) {
	x, y := box(10, 20, 30, 60).Centroid()
	assert.InDelta(t, 20, x, 1e-9)
	assert.InDelta(t, 40, y, 1e-9)
	// The centroid of a half disc lies 4r/3π from its diameter.
	x, y = Intersect(circle(7, 2, 5), box(-9, 2, 20, 9)).Centroid()
	assert.InDelta(t, 7, x, 1e-9)
	assert.InDelta(t, 2+4*5/(3*math.Pi), y, 1e-9)
	// A hole pushes it away: 100·(5,5) less 4·(2,2), over 96.
	x, y = Subtract(box(0, 0, 10, 10), box(1, 1, 3, 3)).Centroid()
	assert.InDelta(t, (500-8)/96.0, x, 1e-9)
	assert.InDelta(t, (500-8)/96.0, y, 1e-9)
	x, y = Subtract(circle(3, 4, 5), circle(3, 4, 2)).Centroid()
	assert.InDelta(t, 3, x, 1e-9)
	assert.InDelta(t, 4, y, 1e-9)
}

func TestOutlines(t *testing.T) {
	b := BoxOf(At(0, 0), At(10*mm, 30*mm))
	for _, c := range []struct{ got, want string }{
		{short(Of(Slot(b))), "0,5 ( 10,5 10,25 ( 0,25"},
		{short(Of(Slot(BoxOf(At(0, 0), At(10*mm, 10*mm))))), "0,5 ( 10,5 ("},
		{short(Of(RoundedRect(b, 0))), "0,0 10,0 10,30 0,30"},
		{short(Of(RoundedRect(b, 99*mm))), "0,5 ( 10,5 10,25 ( 0,25"},
		{short(Of(ClippedRect(b, 2*mm))), "2,0 8,0 10,2 10,28 8,30 2,30 0,28 0,2"},
		{short(Of(ClippedRect(b, 5*mm))), "5,0 10,5 10,25 5,30 0,25 0,5"},
		{short(Of(Circle(At(0, 0), mm))), "1,0 ( -1,0 ("},
		{short(Of(Rect(At(mm, mm), At(0, 0)))), "0,0 1,0 1,1 0,1"},
		{short(Of(Rect(At(0, 0), At(mm, mm)).MirrorX(5 * mm))), "10,0 10,1 9,1 9,0"},
		{short(Of(nil, Polygon(At(0, 0), At(0, 0), At(mm, 0), At(0, mm)))), "0,0 1,0 0,1"},
	} {
		assert.Equal(t, c.want, c.got)
	}
	for _, p := range []Path{Slot(b), RoundedRect(b, mm), Circle(b.Min, mm), Rect(b.Min, b.Max).MirrorY(3), ClippedRect(b, mm)} {
		assert.NoError(t, Simple(Of(p)))
	}
}

func TestWhere(t *testing.T) {
	r := Subtract(box(0, 0, 100, 100), circle(50, 50, 20))
	for _, c := range []struct {
		x, y float64
		want Position
	}{
		{10, 10, Inside}, {50, 50, Outside}, {50, 30, Boundary}, {0, 40, Boundary}, {0, 0, Boundary}, {100, 100, Boundary},
		{-1, 50, Outside}, {50, 29, Inside}, {50, 31, Outside}, {30, 50, Boundary}, {29.9, 50, Inside}, {101, 30, Outside}, {1, 50, Inside}, {1, 100, Boundary},
		{50 + 20/math.Sqrt2, 50 + 20/math.Sqrt2, Boundary},
	} {
		assert.Equal(t, c.want, r.Where(At(length.Round(c.x), length.Round(c.y))), "%v", c)
	}
	assert.Equal(t, Outside, Region(nil).Where(At(0, 0)))
}

func TestAcross(t *testing.T) {
	r := Union(Subtract(box(0, 0, 100, 100), circle(50, 50, 20)), box(40, 120, 60, 130))
	type list = [][2]length.Length
	for _, c := range []struct {
		at   length.Length
		want list
	}{
		{50, list{{0, 30 * mm}, {70 * mm, 100 * mm}, {120 * mm, 130 * mm}}},
		{38, list{{0, 34 * mm}, {66 * mm, 100 * mm}}},
		{30, list{{0, 50 * mm}, {50 * mm, 100 * mm}}}, // touches the hole
		{0, nil}, {100, nil}, {-1, nil},
		{40, list{{0, 50*mm - 17_320_508}, {50*mm + 17_320_508, 100 * mm}}}, // along the upper box's side
	} {
		assert.Equal(t, c.want, r.Across(c.at*mm), "%v", c.at)
		flipped := r.Map(func(p Point) Point { return At(p.Y, p.X) }, true)
		assert.Equal(t, c.want, flipped.Along(c.at*mm), "%v", c.at)
	}
}

func TestClip(t *testing.T) {
	frame := Subtract(box(0, 0, 100, 100), box(20, 20, 80, 80))
	lines := func(paths []Path) string {
		var all []string
		for _, p := range paths {
			s := p[0].From.X.Decimal() + "," + p[0].From.Y.Decimal()
			for _, e := range p {
				s += " " + e.To.X.Decimal() + "," + e.To.Y.Decimal()
			}
			all = append(all, s)
		}
		return strings.Join(all, " | ")
	}
	at := func(x, y length.Length) Point { return At(x*mm, y*mm) }
	for _, c := range []struct {
		path                      Path
		inside, outside, boundary string
	}{
		{Path{Line(at(-10, 50), at(110, 50))}, "0,50 20,50 | 80,50 100,50", "-10,50 0,50 | 20,50 80,50 | 100,50 110,50", ""},
		{Path{Line(at(10, 0), at(10, 10)), Line(at(10, 10), at(40, 10))}, "10,0 10,10 40,10", "", ""},
		{Path{Line(at(-10, 20), at(110, 20))}, "0,20 20,20 | 80,20 100,20", "-10,20 0,20 | 100,20 110,20", "20,20 80,20"},
		{Path{Line(at(0, 10), at(0, 90))}, "", "", "0,10 0,90"},
		{Rect(at(30, 30), at(70, 70)), "", "30,30 70,30 70,70 30,70 30,30", ""},
		{Rect(at(10, 10), at(90, 90)), "10,10 90,10 90,90 10,90 10,10", "", ""},
		{Circle(at(50, 50), 48*mm), "98,50 2,50 98,50", "", ""},
		{Circle(at(0, 50), 10*mm), "0,40 10,50 0,60", "0,60 -10,50 0,40", ""},
		{nil, "", "", ""},
	} {
		inside, outside, boundary := Clip(c.path, frame)
		assert.Equal(t, c.inside, lines(inside))
		assert.Equal(t, c.outside, lines(outside))
		assert.Equal(t, c.boundary, lines(boundary))
	}
}

func TestSimpleRefuses(t *testing.T) {
	at := func(x, y length.Length) Point { return At(x*mm, y*mm) }
	square := Rect(at(0, 0), at(10, 10))
	hole := func(x1, y1, x2, y2 length.Length) Path { return Rect(at(x1, y1), at(x2, y2)).Reverse() }
	for _, c := range []struct {
		what string
		r    Region
		says string
	}{
		{"open", Of(square[:3]), "open"},
		{"no edges", Region{nil}, "no edges"},
		{"bow-tie", Of(Polygon(at(0, 0), at(10, 10), at(10, 0), at(0, 10))), "meet"},
		{"twice the same edge", Of(append(append(Path{}, square...), square...)), "meet"},
		{"there and back", Of(Path{Line(at(0, 0), at(5, 5)), Line(at(5, 5), at(0, 0))}), "meet"},
		{"spike", Of(Polygon(at(0, 0), at(10, 0), at(20, 0), at(10, 0), at(10, 10))), "meet"},
		{"edge of no length", Of(append(Path{Line(at(0, 0), at(0, 0))}, square...)), "no length"},
		{"clockwise", Of(square.Reverse()), "clockwise"},
		{"hole outside", Region{square, hole(20, 0, 30, 10)}, "must lie inside"},
		{"hole not reversed", Region{square, Rect(at(2, 2), at(3, 3))}, "reverse"},
		{"hole across the edge", Region{square, hole(5, 2, 15, 3)}, "cross"},
		{"hole along the edge", Region{square, hole(5, 0, 8, 3)}, "share"},
		{"the same outline twice", Region{square, square}, "share"},
		{"corner on its own edge", Of(Polygon(at(0, 0), at(10, 0), at(10, 10), at(5, 0), at(0, 10))), "meet"},
		{"arc through its own edge", Of(Path{Line(at(0, 0), at(10, 0)), Arc(at(10, 0), at(0, 10), at(0, 0), Left), Line(at(0, 10), at(12, 2)), Line(at(12, 2), at(0, 0))}), "meet"},
		{"arc off its circle", Of(Path{Line(at(0, 0), at(10, 0)), Arc(at(10, 0), at(0, 0), at(4, 0), Left)}), "from its centre"},
	} {
		err := Simple(c.r)
		if assert.Error(t, err, c.what) {
			assert.Contains(t, err.Error(), c.says, c.what)
		}
	}
	assert.NoError(t, Simple(nil))
	assert.NoError(t, Simple(Region{square, hole(2, 2, 4, 4), hole(4, 4, 6, 6)}), "holes may touch at a point")
	assert.NoError(t, Simple(Region{square, hole(2, 2, 8, 8), Rect(at(4, 4), at(6, 6))}), "an island in a hole")
}
