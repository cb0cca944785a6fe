package view_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/piece"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

var sides = []view.Side{view.Front, view.Back, view.Left, view.Right, view.Top, view.Bottom}

// only is a test piece as the only body.
func only(t *testing.T, name string) []view.Body {
	t.Helper()
	for _, p := range piece.All() {
		if p.Name == name {
			return []view.Body{{Label: name, Layer: sheet.Outline, Hatch: view.Wood, Grain: solid.Z, Solid: p.Solid}}
		}
	}
	require.Fail(t, "no piece", name)
	return nil
}

// drawn is the length in mm of what is wide, hidden, and narrow.
func drawn(lines []view.Line) (wide, hidden, narrow float64) {
	for _, l := range lines {
		switch {
		case l.Type == sheet.Hidden:
			hidden += l.Path.Length()
		case l.Weight == sheet.Wide:
			wide += l.Path.Length()
		default:
			narrow += l.Path.Length()
		}
	}
	return wide, hidden, narrow
}

// The lines of pieces, counted by hand from their sizes in mm.
func TestPieceLines(t *testing.T) {
	quarter := math.Pi / 2
	// The part of a rabbet's round corner, radius 16, in the outer 10 mm.
	angle := math.Acos(6.0 / 16)
	arc, rest := 16*angle, 16*math.Sin(angle)
	end := math.Pi * 13 // of a mortise 13 wide: both half circles
	for _, c := range []struct {
		piece                string
		side                 view.Side
		wide, hidden, narrow float64
	}{
		{"forked rail", view.Front, 2 * (400 + 80), 2 * 80, 0},
		{"forked rail", view.Top, 2*(400+35) + 4*70, 0, 0},
		{"forked rail", view.Left, 2*(35+80) + 2*80, 0, 0},
		// A lap's shoulder is seen from one side and covered from the other.
		{"half-lapped stile", view.Front, 2*(100+600) + 100, 100, 520 - 2},
		{"half-lapped stile", view.Back, 2*(100+600) + 100, 100, 0},
		// The outline; inside it the groove's mouth in the edge.
		{"grooved stile", view.Right, 2*(35+600) + 2*600, 0, 0},
		{"grooved stile", view.Front, 2 * (100 + 600), 600, 0},
		{"grooved stile", view.Top, 2*(100+35) + 2*12, 0, 0},
		{"stile with a stopped groove", view.Right, 2*(35+600) + 2*473 + math.Pi*7, 0, 0},
		{"stile with a stopped groove", view.Left, 2 * (35 + 600), 2*473 + math.Pi*7, 0},
		// Hidden: the floor and both ends, where the half circles reach furthest.
		{"stile with a stopped groove", view.Front, 2 * (100 + 600), 480 + 2*12, 0},
		{"stile with a stopped groove", view.Top, 2 * (100 + 35), 7 + 2*12, 0},
		{"rail with a stopped groove", view.Front, 2 * (400 + 80), 320 + 2*10, 0},
		{"rail with a stopped groove", view.Top, 2*(400+35) + 2*313 + math.Pi*7, 0, 0},
		// Roundovers of radius 6 on the outer edges, one of 5 stopped at 80 and 520.
		{"stile with roundovers and a groove", view.Front, 2*(100+600) + 2*5, 480 + 2*12, 600 - 2 + 440 - 2},
		{"stile with roundovers and a groove", view.Back, 2 * (100 + 600), 480 + 2*12 + 2*5, 600 - 2},
		{"stile with roundovers and a groove", view.Left, 2 * (35 + 600), 2*473 + math.Pi*7 + 2*5, 2 * (600 - 2)},
		{"stile with roundovers and a groove", view.Top, 2*(100+35) - 4*6 + 6*2*quarter, 7 + 2*12 + 5*quarter, 0},
		// Chamfers are sharp edges.
		{"chamfered stile with a rabbet", view.Top, 2*(100+35) - 4*4 + 2*4*math.Sqrt2, 19 + 10 + 3*math.Sqrt2, 0},
		// The muntin's rabbets end in arcs beyond its ends; mortises are hidden.
		{"muntin with two rabbets", view.Back, 2*(60+500) + 2*(500-2*6+2*(16*math.Asin(6.0/16))), 2 * (32 + 2*30), 0},
		{"loose tenon", view.Left, 2*(60-13) + end, 0, 0},
		{"loose tenon", view.Front, 2 * (60 + 60), 0, 2 * (60 - 2)},
		{"loose tenon", view.Top, 2 * (60 + 13), 0, 0},
		{"dowel", view.Front, 2 * (60 + 10), 0, 0},
		{"dowel", view.Left, math.Pi * 10, 0, 0},
		{"dowelled rail", view.Left, 2*(35+100) + 2*math.Pi*10, 0, 0},
		{"dowelled rail", view.Right, 2 * (35 + 100), 2 * math.Pi * 10, 0},
		{"dowelled rail", view.Front, 2 * (400 + 100), 2 * (2*32 + 10), 0},
		{"pinned tenon", view.Front, 2*(100+200) + math.Pi*8, 100 + 2*60, 0},
		{"pinned tenon", view.Back, 2*(100+200) + math.Pi*8, 100 + 2*60, 0},
		{"pull with a stepped rim", view.Front, 2*(100+400) + 2*(50+160) - 8*8 + math.Pi*16 + 2*(40+150) - 8*5 + math.Pi*10, 0, 0},
		{"pull with a stepped rim", view.Top, 2 * (100 + 35), 50 + 2*2 + 40 + 2*12, 0},
		{"round pulls", view.Front, 2*(100+400) + math.Pi*56, 0, 0},
		{"round pulls", view.Left, 2 * (35 + 400), 2*56 + 2*(12+10), 0},
		{"mitred stop", view.Front, 300 + 276 + 2*12*math.Sqrt2, 0, 0},
		{"mitred stop", view.Top, 2*(300+13) + 2*13, 0, 0},
		{"mitred stop", view.Bottom, 2 * (300 + 13), 2 * 13, 0},
		{"sealant bed", view.Front, 2*(300+500) - 8*16 + math.Pi*32 + 2*(284+484) - 8*8 + math.Pi*16, 0, 0},
		{"dogbone relief", view.Back, 2*(200+200) + 4*(120-2*6*math.Sqrt2) + 4*6*math.Pi, 0, 0},
		{"dogbone relief", view.Front, 2 * (200 + 200), 4*(120-2*6*math.Sqrt2) + 4*6*math.Pi, 0},
		{"T-bone relief", view.Back, 2*(200+200) + 3*120 + 120 - 24 + 2*6*math.Pi, 0, 0},
		// The rabbet runs out of the edge in two parts of its round corners.
		{"stile rabbeted to the front", view.Front, 2*(100+600) + 480 - 2*16 + 2*arc, 0, 0},
		{"stile rabbeted to the front", view.Back, 2 * (100 + 600), 480 - 2*16 + 2*arc, 0},
		{"stile rabbeted to the front", view.Right, 2*(35+600) + 480 - 2*(16-rest) + 2*19, 0, 2 * (19 - 2)},
	} {
		wide, hidden, narrow := drawn(view.Elevation(only(t, c.piece), c.side, view.Options{}))
		name := fmt.Sprintf("%s, side %d", c.piece, c.side)
		assert.InDelta(t, c.wide, wide, 1e-4, "%s: wide", name)
		assert.InDelta(t, c.hidden, hidden, 1e-4, "%s: hidden", name)
		assert.InDelta(t, c.narrow, narrow, 1e-4, "%s: narrow", name)
	}
}

// From every side the outline of what a piece covers is drawn wide, and
// nothing is drawn outside it.
func TestPieceOutlinesAreClosed(t *testing.T) {
	for _, p := range piece.All() {
		for _, side := range sides {
			shape := silhouette(p.Solid, side)
			lines := view.Elevation([]view.Body{{Solid: p.Solid, Layer: sheet.Outline}}, side, view.Options{})
			require.NotEmpty(t, lines)
			for _, path := range shape {
				for _, e := range path {
					for _, q := range e.Flatten(length.Millimetre) {
						require.True(t, onWide(lines, q), "%s, side %d: nothing wide at %v", p.Name, side, q)
					}
				}
			}
			for _, l := range lines {
				for _, e := range l.Path {
					require.NotEqual(t, plane.Outside, shape.Where(e.Middle()), "%s, side %d: a line outside at %v", p.Name, side, e.Middle())
				}
			}
		}
	}
}

// silhouette is all that a solid covers as seen from a side.
func silhouette(s solid.Solid, side view.Side) plane.Region {
	switch side {
	case view.Back:
		s = s.Turn(solid.Z, 2)
	case view.Left:
		s = s.Turn(solid.Z, 1)
	case view.Right:
		s = s.Turn(solid.Z, 3)
	case view.Top:
		s = s.Turn(solid.X, 1)
	case view.Bottom:
		s = s.Turn(solid.X, 3)
	}
	var all plane.Region
	for _, slab := range s.Shadow() {
		all = plane.Union(all, slab.Region)
	}
	return all
}

// onWide tells whether a point lies within 10 nm of a wide line.
func onWide(lines []view.Line, p plane.Point) bool {
	return slices.ContainsFunc(lines, func(l view.Line) bool {
		return l.Weight == sheet.Wide && slices.ContainsFunc(l.Path, func(e plane.Edge) bool { return offEdge(e, p) <= 10e-6 })
	})
}

// offEdge is how far in mm a point lies from an edge, infinite beyond its ends.
func offEdge(e plane.Edge, p plane.Point) float64 {
	const nm = 1e-6
	if !e.Bounds().Grow(10 * length.Nanometre).Holds(p) {
		return math.Inf(1)
	}
	x, y := (p.X - e.From.X).MM(), (p.Y - e.From.Y).MM()
	if e.Turn != plane.Straight {
		return math.Abs(math.Hypot((p.X-e.Centre.X).MM(), (p.Y-e.Centre.Y).MM()) - e.Radius())
	}
	dx, dy := (e.To.X - e.From.X).MM(), (e.To.Y - e.From.Y).MM()
	return math.Abs(dx*y-dy*x) / max(math.Hypot(dx, dy), nm)
}

// No two edges of a view of a piece run over one another.
func TestPiecesAreDrawnOnce(t *testing.T) {
	for _, p := range piece.All() {
		for _, side := range sides {
			lines := view.Elevation([]view.Body{{Solid: p.Solid, Layer: sheet.Outline}}, side, view.Options{})
			for _, pair := range twice(lines) {
				t.Errorf("%s, side %d: %v and %v run over one another", p.Name, side, pair[0], pair[1])
			}
		}
	}
}

// A mirrored piece looks from each side as the piece from the mirrored side.
func TestMirroredPieces(t *testing.T) {
	mirrored := map[view.Side]view.Side{view.Front: view.Front, view.Back: view.Back, view.Left: view.Right, view.Right: view.Left, view.Top: view.Top, view.Bottom: view.Bottom}
	upended := map[view.Side]view.Side{view.Front: view.Back, view.Back: view.Front, view.Left: view.Left, view.Right: view.Right, view.Top: view.Top, view.Bottom: view.Bottom}
	rnd := rand.New(rand.NewPCG(*seed, 6))
	for _, p := range piece.All() {
		in := length.Length(rnd.Int64N(int64(length.Metre)))
		for _, way := range []struct {
			axis solid.Axis
			side map[view.Side]view.Side
		}{{solid.X, mirrored}, {solid.Y, upended}} {
			other := p.Solid.Mirror(way.axis, in)
			for _, side := range sides {
				a := view.Elevation([]view.Body{{Solid: p.Solid}}, side, view.Options{})
				b := view.Elevation([]view.Body{{Solid: other}}, way.side[side], view.Options{})
				w1, h1, n1 := drawn(a)
				w2, h2, n2 := drawn(b)
				name := fmt.Sprintf("seed %d: %s, side %d, mirrored in %v", *seed, p.Name, side, way.axis)
				require.InDelta(t, w1, w2, 1e-3, "%s: wide", name)
				require.InDelta(t, h1, h2, 1e-3, "%s: hidden", name)
				require.InDelta(t, n1, n2, 1e-3, "%s: narrow", name)
			}
		}
	}
}

// Tangent edges are left out on request, and where they would smudge.
func TestTangents(t *testing.T) {
	tenon := only(t, "loose tenon")
	narrow := func(o view.Options) float64 {
		_, _, n := drawn(view.Elevation(tenon, view.Front, o))
		return n
	}
	scale := func(real int64) view.Options { return view.Options{Scale: sheet.Scale{Paper: 1, Real: real}} }
	assert.InDelta(t, 2*(60-2*2), narrow(scale(2)), 1e-6, "1 mm off the outline on the paper")
	assert.Zero(t, narrow(scale(5)), "a radius of 6.5 is 1.3 on the paper")
	assert.Zero(t, narrow(view.Options{NoTangents: true}))
}

// Covered edges are kept by what made them, whatever the side.
func TestPiecesHiddenFor(t *testing.T) {
	hidden := func(name string, side view.Side, uses ...string) float64 {
		_, h, _ := drawn(view.Elevation(only(t, name), side, view.Options{HiddenFor: uses}))
		return h
	}
	assert.InDelta(t, 480+2*12, hidden("stile with roundovers and a groove", view.Back, "groove"), 1e-4)
	assert.InDelta(t, 2*5, hidden("stile with roundovers and a groove", view.Back, "roundover"), 1e-4)
	assert.Zero(t, hidden("stile with roundovers and a groove", view.Back, "rabbet"))
	assert.InDelta(t, 2*(2*32+10), hidden("dowelled rail", view.Top, "dowel")+hidden("dowelled rail", view.Front, "dowel")/2, 1e-4)
}

// Sections of pieces are closed, hatched, and drawn once.
func TestPieceSections(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 7))
	for _, p := range piece.All() {
		bodies := []view.Body{{Label: p.Name, Layer: sheet.Outline, Hatch: view.Wood, Grain: solid.X, Solid: p.Solid}}
		least, most := p.Solid.Bounds()
		for range 12 {
			axis := solid.Axis(rnd.IntN(3))
			at := least.Along(axis) + length.Length(1+rnd.Int64N(int64(most.Along(axis)-least.Along(axis)-1)))
			lines, cut := view.Section(bodies, axis, at, view.Options{})
			require.Empty(t, twice(lines), "seed %d: %s across %v at %v", *seed, p.Name, axis, at)
			var around, wide float64
			for _, path := range cut[0] {
				around += path.Length()
			}
			for _, l := range lines {
				if l.Weight == sheet.Wide {
					wide += l.Path.Length()
					require.True(t, l.Path.Closed(), "seed %d: %s across %v at %v", *seed, p.Name, axis, at)
				}
			}
			require.InDelta(t, around, wide, 1e-4, "seed %d: %s across %v at %v", *seed, p.Name, axis, at)
		}
	}
}
