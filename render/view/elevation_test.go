package view_test

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// plain is a frame of two stiles and two rails round one lite, with nothing in it.
var plain = leafOf{rails: []float64{0, 150, 1890, 2000}}

// A tally is the number of lines of one kind and their length in mm.
type tally struct {
	count int
	size  float64
}

func tallied(lines []view.Line, layer sheet.Layer, line sheet.LineType) tally {
	var t tally
	for _, l := range lines {
		if l.Layer == layer && l.Type == line {
			t.count++
			t.size += l.Path.Length()
		}
	}
	return t
}

func assertTally(t *testing.T, name string, want, got tally) {
	t.Helper()
	assert.Equal(t, want.count, got.count, "%s: lines", name)
	assert.InDelta(t, want.size, got.size, 1e-5, "%s: length in mm", name)
}

// loop is the length of the rabbet's outline, its corners rounded.
func loop(radius float64) float64 { return 2*(520+1760) - 8*radius + 2*math.Pi*radius }

// The frame's outline, the stiles' inner edges, which go on as joints, and the
// rails' edges.
var frame = tally{5, 2*(width+height) + 2*height + 2*500}

func TestFrame(t *testing.T) {
	for _, radius := range []float64{0, cutter} {
		l := plain
		l.radius = radius
		front := view.Elevation(l.bodies(solid.Vec{}), view.Front, view.Options{})
		assertTally(t, "front, visible", frame, tallied(front, sheet.Outline, sheet.Continuous))
		assertTally(t, "front, hidden", tally{1, loop(radius)}, tallied(front, sheet.HiddenEdge, sheet.Hidden))
		assert.Len(t, front, 6)

		back := view.Elevation(l.bodies(solid.Vec{}), view.Back, view.Options{})
		assertTally(t, "back, visible", tally{6, frame.size + loop(radius)}, tallied(back, sheet.Outline, sheet.Continuous))
		assert.Len(t, back, 6)
		for _, line := range back {
			assert.Equal(t, sheet.Wide, line.Weight)
			b := line.Path.Bounds()
			assert.True(t, b.Min.X >= -720*mm && b.Max.X <= 0, "from the back X is mirrored: %v", b)
		}
	}
}

func TestPanel(t *testing.T) {
	l := plain
	l.radius, l.panels = cutter, true
	outline := 2.0*(516+1756) - 8*8 + 4*8*math.Sqrt2
	bodies := l.bodies(solid.Vec{})
	back := view.Elevation(bodies, view.Back, view.Options{})
	assertTally(t, "back, frame", tally{6, frame.size + loop(cutter)}, tallied(back, sheet.Outline, sheet.Continuous))
	assertTally(t, "back, panel", tally{1, outline}, tallied(back, sheet.Panel, sheet.Continuous))
	assert.Zero(t, tallied(back, sheet.HiddenEdge, sheet.Hidden))

	front := view.Elevation(bodies, view.Front, view.Options{})
	assertTally(t, "front, frame", frame, tallied(front, sheet.Outline, sheet.Continuous))
	assertTally(t, "front, hidden", tally{2, loop(cutter) + outline}, tallied(front, sheet.HiddenEdge, sheet.Hidden))
	assert.Zero(t, tallied(front, sheet.Panel, sheet.Continuous))

	// Not to be seen through, it covers the sight and the joints on the shoulder.
	bodies[len(bodies)-1].SeeThrough = false
	back = view.Elevation(bodies, view.Back, view.Options{})
	behind := 2.0*1756 + 2*500
	assert.InDelta(t, behind, tallied(back, sheet.HiddenEdge, sheet.Hidden).size, 1e-5)
	assert.InDelta(t, frame.size+loop(cutter)-behind, tallied(back, sheet.Outline, sheet.Continuous).size, 1e-5)
}

func TestOptions(t *testing.T) {
	l := plain
	l.radius, l.panels, l.pockets = cutter, true, true
	bodies := l.bodies(solid.Vec{})
	hidden := func(o view.Options) float64 {
		return tallied(view.Elevation(bodies, view.Front, o), sheet.HiddenEdge, sheet.Hidden).size
	}
	assert.Zero(t, hidden(view.Options{NoHidden: true}))
	assert.InDelta(t, loop(cutter), hidden(view.Options{HiddenFor: []string{"rabbet"}}), 1e-5)
	all, bored := hidden(view.Options{}), hidden(view.Options{HiddenFor: []string{"pocket", "pilot"}})
	assert.Positive(t, bored)
	assert.InDelta(t, all-bored, hidden(view.Options{NoBores: true}), 1e-5)
	assert.InDelta(t, all, bored+hidden(view.Options{HiddenFor: []string{"", "rabbet"}}), 1e-5)
	assert.Zero(t, hidden(view.Options{HiddenFor: []string{"mortise"}}))
	// What is seen does not hang on what is done about the rest.
	seen := func(o view.Options) tally {
		return tallied(view.Elevation(bodies, view.Back, o), sheet.Outline, sheet.Continuous)
	}
	assert.Equal(t, seen(view.Options{}), seen(view.Options{NoHidden: true}))
	assert.Equal(t, seen(view.Options{}), seen(view.Options{HiddenFor: []string{"pocket"}}))
}

// around is the length of an ellipse's outline: Ramanujan's second
// approximation (Modular equations, 1914), good to 1e-4 for these.
func around(a, b float64) float64 {
	h := (a - b) * (a - b) / ((a + b) * (a + b))
	return math.Pi * (a + b) * (1 + 3*h/(10+math.Sqrt(4-3*h)))
}

func TestPocketHole(t *testing.T) {
	body := view.Body{Layer: sheet.Outline, Solid: solid.Solid{Blank: solid.Block(at(110, 0, 0), at(610, thick, 150)), Bores: pocket(110, 60, 1)}}
	sin, cos := math.Sincos(math.Pi / 12)
	const edge = 2 * (500 + 150)
	mouth := around(4.75/sin, 4.75)
	shoulders := around(4.75, 4.75*sin) + around(2, 2*sin)
	// From the shoulder to the back, and from there to the rail's end, both sides.
	sides := 2*((thick/2/sin)-25)*cos + 2*25*cos

	back := view.Elevation([]view.Body{body}, view.Back, view.Options{})
	assert.InDelta(t, edge+mouth, tallied(back, sheet.Outline, sheet.Continuous).size, 0.01)
	assert.InDelta(t, shoulders+sides, tallied(back, sheet.HiddenEdge, sheet.Hidden).size, 0.01)
	front := view.Elevation([]view.Body{body}, view.Front, view.Options{})
	assert.InDelta(t, edge, tallied(front, sheet.Outline, sheet.Continuous).size, 1e-5)
	assert.InDelta(t, mouth+shoulders+sides, tallied(front, sheet.HiddenEdge, sheet.Hidden).size, 0.01)

	// Under a board laid on the back, the mouth is covered too.
	lid := view.Body{Layer: sheet.Outline, Solid: solid.Solid{Blank: solid.Block(at(0, thick, -50), at(700, thick+5, 200))}}
	back = view.Elevation([]view.Body{body, lid}, view.Back, view.Options{})
	assert.InDelta(t, 2*(700+250), tallied(back, sheet.Outline, sheet.Continuous).size, 1e-5)
	assert.InDelta(t, edge+mouth+shoulders+sides, tallied(back, sheet.HiddenEdge, sheet.Hidden).size, 0.01)
}

// A short pocket at 45°, 20 wide, begins 6 mm under the back: one looks through
// its mouth on most of its shoulder's upper half, and the shoulder cuts the
// mouth off.
func TestShoulderInMouth(t *testing.T) {
	body := view.Body{Layer: sheet.Outline, Solid: solid.Solid{Blank: solid.Block(at(0, 0, 0), at(200, 40, 200)),
		Bores: []solid.Bore{{From: at(100, 34, 94), To: at(100, 60, 120), Diameter: 20 * mm}}}}
	back := view.Elevation([]view.Body{body}, view.Back, view.Options{})
	// The mouth, about z = 100, ends where the shoulder's plane meets the back,
	// at z = 88; the shoulder, about z = 94, comes out of the mouth's rim where
	// both have the same z.
	mouth := func(a float64) (x, z float64) { return 10 * math.Cos(a), 100 + 10*math.Sqrt2*math.Sin(a) }
	shoulder := func(a float64) (x, z float64) { return 10 * math.Cos(a), 94 + 10/math.Sqrt2*math.Sin(a) }
	low := math.Asin(12 / (10 * math.Sqrt2))
	rim := math.Asin(6 / (15 * math.Sqrt2))
	want := 800 + 20*math.Cos(low) + walked(mouth, -low, math.Pi+low) + walked(shoulder, rim, math.Pi-rim)
	assert.InDelta(t, want, tallied(back, sheet.Outline, sheet.Continuous).size, 0.02)
}

// walked is the length of a curve, in many chords.
func walked(curve func(float64) (x, y float64), from, to float64) float64 {
	const chords = 10_000
	var size float64
	x, y := curve(from)
	for i := range chords {
		nx, ny := curve(from + (to-from)*float64(i+1)/chords)
		size += math.Hypot(nx-x, ny-y)
		x, y = nx, ny
	}
	return size
}

func TestBoresThatAreNotPockets(t *testing.T) {
	block := func(b ...solid.Bore) []view.Body {
		return []view.Body{{Layer: sheet.Outline, Solid: solid.Solid{Blank: solid.Block(at(0, 0, 0), at(100, 40, 60)), Bores: b}}}
	}
	circle := math.Pi * 10
	for _, c := range []struct {
		name          string
		bore          solid.Bore
		front, hidden float64 // from the front, beyond the block's outline
		back          float64
	}{
		{"through", solid.Bore{From: at(50, -1, 30), To: at(50, 41, 30), Diameter: 10 * mm}, circle, 0, circle},
		{"from the back", solid.Bore{From: at(50, 20, 30), To: at(50, 41, 30), Diameter: 10 * mm}, 0, circle, circle},
		{"from the side", solid.Bore{From: at(-1, 20, 30), To: at(30, 20, 30), Diameter: 10 * mm}, 0, 2*30 + 10, 0},
		{"from the top", solid.Bore{From: at(50, 20, 60), To: at(50, 20, 40), Diameter: 10 * mm}, 0, 2*20 + 10, 0},
		{"beside it", solid.Bore{From: at(50, 20, 90), To: at(50, 20, 80), Diameter: 10 * mm}, 0, 0, 0},
		{"no bore", solid.Bore{}, 0, 0, 0},
	} {
		front := view.Elevation(block(c.bore), view.Front, view.Options{})
		back := view.Elevation(block(c.bore), view.Back, view.Options{})
		assert.InDelta(t, 320+c.front, tallied(front, sheet.Outline, sheet.Continuous).size, 1e-5, c.name)
		assert.InDelta(t, c.hidden, tallied(front, sheet.HiddenEdge, sheet.Hidden).size, 1e-5, c.name)
		assert.InDelta(t, 320+c.back, tallied(back, sheet.Outline, sheet.Continuous).size, 1e-5, c.name)
	}
}

// set is four leaves on two tracks.
func set() []view.Body {
	var all []view.Body
	for i, y := range []float64{45, 0, 45, 0} {
		all = append(all, seven.bodies(at(float64(i)*690, y, 0))...)
	}
	return all
}

// No two edges of a view run over one another.
func TestNothingIsDrawnTwice(t *testing.T) {
	for name, bodies := range map[string][]view.Body{"leaf": seven.bodies(solid.Vec{}), "set": set()} {
		for _, side := range []view.Side{view.Front, view.Back} {
			for _, pair := range twice(view.Elevation(bodies, side, view.Options{})) {
				t.Errorf("%s, side %d: %v and %v run over one another", name, side, pair[0], pair[1])
			}
		}
	}
}

// twice finds pairs of edges that run over one another for some way.
func twice(lines []view.Line) (found [][2]plane.Edge) {
	type bounded struct {
		plane.Edge
		box plane.Box
	}
	var all []bounded
	for _, l := range lines {
		for _, e := range l.Path {
			all = append(all, bounded{e, e.Bounds().Grow(1)})
		}
	}
	slices.SortFunc(all, func(a, b bounded) int { return cmp.Compare(a.box.Min.X, b.box.Min.X) })
	for i, e := range all {
		for _, f := range all[i+1:] {
			if f.box.Min.X > e.box.Max.X {
				break
			}
			if f.box.Min.Y <= e.box.Max.Y && e.box.Min.Y <= f.box.Max.Y && (over(e.Edge, f.Edge) || over(f.Edge, e.Edge)) {
				found = append(found, [2]plane.Edge{e.Edge, f.Edge})
			}
		}
	}
	return found
}

// The finder of double edges finds one.
func TestTwiceFinds(t *testing.T) {
	path := plane.RoundedRect(box(0, 0, 100, 50), 10*mm)
	assert.Empty(t, twice([]view.Line{{Path: path}}))
	assert.Len(t, twice([]view.Line{{Path: path}, {Path: path.Reverse()}}), 8)
	assert.Len(t, twice([]view.Line{{Path: path}, {Path: plane.Path{plane.Line(plane.At(20*mm, 0), plane.At(30*mm, 0))}}}), 1)
}

// over tells whether the middle of e lies on f and both run the same way there.
func over(e, f plane.Edge) bool {
	m := e.Middle()
	if b := f.Bounds(); m.X < b.Min.X-1 || m.X > b.Max.X+1 || m.Y < b.Min.Y-1 || m.Y > b.Max.Y+1 {
		return false
	}
	if (e.Turn == plane.Straight) != (f.Turn == plane.Straight) {
		return false
	}
	far := func(a, b plane.Point) float64 { return math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)) }
	if e.Turn == plane.Straight {
		dx, dy := float64(f.To.X-f.From.X), float64(f.To.Y-f.From.Y)
		cross := dx*float64(m.Y-f.From.Y) - dy*float64(m.X-f.From.X)
		turned := dx*float64(e.To.Y-e.From.Y) - dy*float64(e.To.X-e.From.X)
		size := math.Hypot(dx, dy)
		return math.Abs(cross)/size < 10 && math.Abs(turned)/size < 10
	}
	if far(e.Centre, f.Centre) > 10 || math.Abs(e.Radius()-f.Radius()) > 1e-5 {
		return false
	}
	// Of two arcs of one circle: e's middle is nearer to f's middle than f's ends are.
	return far(m, f.Middle()) < far(f.From, f.Middle())-10
}

// Moving all bodies moves the lines, to the nanometre.
func TestElevationMoves(t *testing.T) {
	d := at(1234.567891, -77.7, 45.000001)
	still := view.Elevation(seven.bodies(solid.Vec{}), view.Front, view.Options{NoBores: true})
	moved := view.Elevation(seven.bodies(d), view.Front, view.Options{NoBores: true})
	require.Len(t, moved, len(still))
	for i := range still {
		still[i].Path = still[i].Path.Translate(d.X, d.Z)
	}
	assert.Equal(t, still, moved)
}

// The back is the front of the leaf turned round.
func TestBackIsFrontTurned(t *testing.T) {
	bodies := seven.bodies(solid.Vec{})
	back := view.Elevation(bodies, view.Back, view.Options{})
	turned := slices.Clone(bodies)
	turn := func(v solid.Vec) solid.Vec { return solid.Vec{X: -v.X, Y: -v.Y, Z: v.Z} }
	prism := func(p solid.Prism) solid.Prism {
		if p.Axis == solid.Y {
			p.Region = p.Region.MirrorX(0)
		} else { // along X, in Y and Z
			p.Region = p.Region.MirrorX(0)
		}
		p.From, p.To = -p.To, -p.From
		return p
	}
	for i := range turned {
		s := solid.Solid{Blank: prism(bodies[i].Solid.Blank)}
		for _, c := range bodies[i].Solid.Cuts {
			s.Cuts = append(s.Cuts, solid.Cut{Prism: prism(c.Prism), For: c.For})
		}
		for _, b := range bodies[i].Solid.Bores {
			b.From, b.To = turn(b.From), turn(b.To)
			s.Bores = append(s.Bores, b)
		}
		turned[i].Solid = s
	}
	front := view.Elevation(turned, view.Front, view.Options{})
	for _, layer := range sheet.Layers() {
		for _, line := range []sheet.LineType{sheet.Continuous, sheet.Hidden} {
			assertTally(t, layer.String(), tallied(back, layer, line), tallied(front, layer, line))
		}
	}
}

// A unit is one side of a grid square: from (x, y) to the right or upwards.
type unit struct {
	x, y    int
	upright bool
}

// Boxes on a coarse grid, against a slow and plain rule asked of every unit of
// the grid: the nearest box with an edge there draws it, covered if the middle
// lies within a nearer box.
func TestAgainstGrid(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for range 300 {
		var bodies []view.Body
		for range 1 + rnd.IntN(8) {
			corner := at(float64(rnd.IntN(9)), float64(rnd.IntN(6)), float64(rnd.IntN(9)))
			b := solid.Solid{Blank: solid.Block(corner, corner.Add(at(float64(1+rnd.IntN(6)), float64(1+rnd.IntN(3)), float64(1+rnd.IntN(6)))))}
			if !slices.ContainsFunc(bodies, func(other view.Body) bool { return solid.Clash(b, other.Solid) > 0 }) {
				bodies = append(bodies, view.Body{Solid: b, Layer: sheet.Outline})
			}
		}
		got := map[unit]sheet.LineType{}
		for _, l := range view.Elevation(bodies, view.Front, view.Options{}) {
			for _, e := range l.Path {
				for _, u := range units(e) {
					_, twice := got[u]
					require.False(t, twice, "seed %d: %v is drawn twice", *seed, u)
					got[u] = l.Type
				}
			}
		}
		require.Equal(t, ruled(bodies), got, "seed %d: %+v", *seed, bodies)
	}
}

// units are those that a level or upright edge covers.
func units(e plane.Edge) []unit {
	b := plane.BoxOf(e.From, e.To)
	x, y := int(b.Min.X/mm), int(b.Min.Y/mm)
	var all []unit
	for i := range int(b.Width() / mm) {
		all = append(all, unit{x + i, y, false})
	}
	for i := range int(b.Height() / mm) {
		all = append(all, unit{x, y + i, true})
	}
	return all
}

// ruled is what the plain rule draws.
func ruled(bodies []view.Body) map[unit]sheet.LineType {
	want, nearest := map[unit]sheet.LineType{}, map[unit]length.Length{}
	for _, b := range bodies {
		for _, e := range b.Solid.Blank.Region[0] {
			for _, u := range units(e) {
				if at, drawn := nearest[u]; drawn && at <= b.Solid.Blank.From {
					continue
				}
				middle := plane.At(length.Length(u.x)*mm+mm/2, length.Length(u.y)*mm)
				if u.upright {
					middle = plane.At(length.Length(u.x)*mm, length.Length(u.y)*mm+mm/2)
				}
				want[u], nearest[u] = sheet.Continuous, b.Solid.Blank.From
				for _, other := range bodies {
					if other.Solid.Blank.From < b.Solid.Blank.From && other.Solid.Blank.Region.Where(middle) == plane.Inside {
						want[u] = sheet.Hidden
					}
				}
			}
		}
	}
	return want
}
