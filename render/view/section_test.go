package view_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

var half = view.Options{Scale: sheet.Scale{Paper: 1, Real: 2}}

// A level cut through the bottom rail's lower pocket holes: both stiles across
// the grain, the rail along it, in one piece each side of its pilots.
func TestSectionThroughPockets(t *testing.T) {
	bodies := seven.bodies(solid.Vec{})
	lines, cut := view.Section(bodies, solid.Z, 30*mm, half)
	require.Len(t, cut, len(bodies))
	assert.InDelta(t, 110*35, cut[0].Area(), 1e-6)
	assert.InDelta(t, 110*35, cut[1].Area(), 1e-6)
	// The rail loses the pilots, 4 wide and 25 long, and the pockets, 9.5 wide,
	// to the back face: at 15° the strips' slanted ends even out along their axes.
	sin := math.Sin(math.Pi / 12)
	assert.InDelta(t, 500*35-2*(4*25+9.5*(thick/2/sin-25)), cut[2].Area(), 1e-4)
	for i, region := range cut[3:] {
		assert.Nil(t, region, bodies[3+i].Label)
	}
	outlines := 0.0
	for _, l := range lines {
		if l.Layer == sheet.Outline {
			assert.Equal(t, sheet.Wide, l.Weight)
			outlines += l.Path.Length()
		}
	}
	// Where stile and rail meet they share an edge, less the pilot's mouth.
	shared := 2 * (35 - 4/math.Cos(math.Pi/12))
	var around float64
	for _, region := range cut[:3] {
		for _, path := range region {
			around += path.Length()
		}
	}
	assert.InDelta(t, around-shared, outlines, 1e-4)
	assert.Empty(t, twice(lines))
}

// Hatching stays inside what is cut, is never closer than 0.7 mm on the paper
// (ISO 128-50, from memory), and leaves no wide stretch bare.
func TestHatch(t *testing.T) {
	region := plane.Subtract(plane.Of(plane.RoundedRect(box(3, 7, 123, 97), 20*mm)), plane.Of(plane.Circle(plane.At(60*mm, 50*mm), 20*mm)))
	for _, hatch := range []view.Hatch{view.Wood, view.EndGrain, view.LongGrain, view.Sheet, view.Metal} {
		for _, scale := range []sheet.Scale{{}, {Paper: 1, Real: 1}, {Paper: 1, Real: 5}, {Paper: 2, Real: 1}} {
			for _, grain := range []solid.Axis{solid.X, solid.Y, solid.Z} {
				body := view.Body{Hatch: hatch, Grain: grain, Solid: solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: region, To: 5 * mm}}}
				lines, _ := view.Section([]view.Body{body}, solid.Y, 2*mm, view.Options{Scale: scale})
				hatched := hatchOf(lines)
				real := 1.0
				if scale.Paper > 0 {
					real = float64(scale.Real) / float64(scale.Paper)
				}
				require.NotEmpty(t, hatched)
				least := math.Inf(1)
				for i, e := range hatched {
					assert.Equal(t, plane.Inside, region.Where(e.Middle()))
					for _, f := range hatched[:i] {
						if d := apart(e, f); d > 1e-3 {
							least = min(least, d)
						}
					}
				}
				assert.GreaterOrEqual(t, least, 0.7*real-1e-4, "hatch %d at %v", hatch, scale)
				assert.Less(t, least, 2*real, "hatch %d at %v", hatch, scale)
			}
		}
	}
}

func hatchOf(lines []view.Line) (edges []plane.Edge) {
	for _, l := range lines {
		if l.Layer == sheet.Hatch {
			edges = append(edges, l.Path...)
		}
	}
	return edges
}

// apart is the distance in mm between the endless lines of two parallel edges.
func apart(e, f plane.Edge) float64 {
	dx, dy := (e.To.X - e.From.X).MM(), (e.To.Y - e.From.Y).MM()
	x, y := (f.From.X - e.From.X).MM(), (f.From.Y - e.From.Y).MM()
	return math.Abs(dx*y-dy*x) / math.Hypot(dx, dy)
}

// direction is the angle of an edge in degrees, from 0 to less than 180.
func direction(e plane.Edge) float64 {
	angle := math.Atan2((e.To.Y-e.From.Y).MM(), (e.To.X-e.From.X).MM()) * 180 / math.Pi
	return math.Mod(angle+360.0001, 180)
}

func TestHatchByMaterial(t *testing.T) {
	block := func(x float64, hatch view.Hatch, grain solid.Axis, deep float64) view.Body {
		return view.Body{Layer: sheet.Outline, Hatch: hatch, Grain: grain, Solid: solid.Solid{Blank: solid.Block(at(x, 0, 0), at(x+50, deep, 300))}}
	}
	cutAt := func(o view.Options, bodies ...view.Body) []plane.Edge {
		lines, _ := view.Section(bodies, solid.Z, 100*mm, o)
		return hatchOf(lines)
	}
	one := view.Options{}
	for _, e := range cutAt(one, block(0, view.Wood, solid.Z, 40)) {
		assert.InDelta(t, 45, direction(e), 0.01, "across the grain")
	}
	for _, e := range cutAt(one, block(0, view.Wood, solid.X, 40)) {
		assert.InDelta(t, 0, direction(e), 0.01, "along the grain")
	}
	for _, e := range cutAt(one, block(0, view.Wood, solid.Y, 40)) {
		assert.InDelta(t, 90, direction(e), 0.01, "along the grain")
	}
	// Neighbours run crosswise; those apart run alike.
	for _, e := range cutAt(one, block(0, view.Wood, solid.Z, 40), block(50, view.Wood, solid.Z, 40)) {
		want := 45.0
		if e.Middle().X > 50*mm {
			want = 135
		}
		assert.InDelta(t, want, direction(e), 0.01, "neighbours")
	}
	for _, e := range cutAt(one, block(0, view.Wood, solid.Z, 40), block(60, view.Wood, solid.Z, 40)) {
		assert.InDelta(t, 45, direction(e), 0.01, "apart")
	}
	// Nothing where it would run together, on request, or without material.
	assert.NotEmpty(t, cutAt(half, block(0, view.Sheet, solid.Z, 4)))
	assert.Empty(t, cutAt(half, block(0, view.Sheet, solid.Z, 3.9)))
	assert.Empty(t, cutAt(view.Options{NoHatch: true}, block(0, view.Wood, solid.Z, 40)))
	assert.Empty(t, cutAt(one, block(0, view.NoHatch, solid.Z, 40)))
}

// Sections anywhere give what the solids give, nothing twice, hatching inside.
func TestSectionsAnywhere(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 1))
	bodies := seven.bodies(solid.Vec{})
	most := solid.Vec{X: 720 * mm, Y: 35 * mm, Z: 2000 * mm}
	for range 60 {
		axis := solid.Axis(rnd.IntN(3))
		where := length.Length(rnd.Int64N(int64(most.Along(axis))))
		lines, cut := view.Section(bodies, axis, where, view.Options{Scale: sheet.Scale{Paper: 1, Real: 5}})
		require.Empty(t, twice(lines), "seed %d: across %v at %v", *seed, axis, where)
		var all plane.Region
		for i, b := range bodies {
			require.InDelta(t, b.Solid.Section(axis, where).Area(), cut[i].Area(), 0)
			all = append(all, cut[i]...)
		}
		for _, e := range hatchOf(lines) {
			require.Equal(t, plane.Inside, all.Where(e.Middle()), "seed %d: across %v at %v", *seed, axis, where)
		}
	}
}
