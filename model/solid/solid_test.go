package solid_test

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

const mm = length.Millimetre

// at is a point in space in millimetres.
func at(x, y, z float64) solid.Vec {
	return solid.Vec{X: length.Round(x), Y: length.Round(y), Z: length.Round(z)}
}

// box is a plane box in millimetres.
func box(x0, y0, x1, y1 float64) plane.Box {
	return plane.BoxOf(plane.At(length.Round(x0), length.Round(y0)), plane.At(length.Round(x1), length.Round(y1)))
}

// pocket is a cut along Y with round corners, from `from` back to `to`.
func pocket(b plane.Box, radius, from, to float64, use string) solid.Cut {
	region := plane.Region{plane.RoundedRect(b, length.Round(radius))}
	return solid.Cut{Prism: solid.Prism{Axis: solid.Y, Region: region, From: length.Round(from), To: length.Round(to)}, For: use}
}

// The parts of a test leaf, in millimetres: a frame 35 thick with a panel 3
// thick in a rabbet 10 wide and 19 deep, milled with a cutter of radius 16.
const (
	thick, front, wide = 35.0, 16.0, 10.0
	radius             = 16.0
	rabbetDepth        = thick - front
)

// stile is 110 wide and 2000 high, with the half of two rabbets that lies in
// it: their round corners lie in the stile and in the rails.
func stile() solid.Solid {
	s := solid.Solid{Blank: solid.Block(at(0, 0, 0), at(110, thick, 2000))}
	for _, z := range [][2]float64{{140, 1000}, {1090, 1890}} {
		s.Cuts = append(s.Cuts, pocket(box(100, z[0], 600, z[1]), radius, front, thick, "rabbet"))
	}
	return s
}

// rail is 500 long and 150 high, beside the stile, with a rabbet along its top
// and pocket screws at both ends from its back.
func rail() solid.Solid {
	s := solid.Solid{Blank: solid.Block(at(110, 0, 0), at(610, thick, 150))}
	s.Cuts = append(s.Cuts, pocket(box(100, 140, 620, 1000), radius, front, thick, "rabbet"))
	for _, z := range []float64{40, 100} {
		s.Bores = append(s.Bores, pocketBores(110, z)...)
	}
	return s
}

// pocketBores are a pocket hole at 15° to the face and its pilot, towards the
// rail's end at x: common practice, no source.
func pocketBores(x, z float64) []solid.Bore {
	sin, cos := math.Sincos(15 * math.Pi / 180)
	// The axis meets the end in the middle of the thickness.
	along := func(d float64) solid.Vec { return at(x+d*cos, thick/2+d*sin, z) }
	return []solid.Bore{
		{From: along(25), To: along(110), Diameter: 19 * mm / 2, For: "pocket"},
		{From: along(25), To: along(-8), Diameter: 4 * mm, For: "pilot"},
	}
}

// disc is a washer on edge, its axis along X, 2 thick with a hole.
func disc(x, y, z float64) solid.Solid {
	return solid.Solid{
		Blank: solid.Prism{Axis: solid.X, Region: plane.Region{plane.Circle(plane.At(length.Round(y), length.Round(z)), 65*mm/10)}, From: length.Round(x), To: length.Round(x + 2)},
		Bores: []solid.Bore{{From: at(x-1, y, z), To: at(x+3, y, z), Diameter: 4 * mm, For: "washer screw"}},
	}
}

func panel() solid.Solid {
	return solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: plane.Region{plane.ClippedRect(box(102, 142, 618, 998), 8*mm)}, From: 16 * mm, To: 19 * mm}}
}

// corner is the area that a corner of radius r keeps back of a square one, in
// the strip within reach of one wall: ∫ r - √(r² - (r-x)²) dx from 0 to reach.
func corner(r, reach float64) float64 {
	segment := func(u float64) float64 { return (u*math.Sqrt(r*r-u*u) + r*r*math.Asin(u/r)) / 2 } // ∫ √(r²-u²) du
	return r*reach - (segment(r) - segment(r-reach))
}

// Volumes and centroids by formula.
func TestMeasures(t *testing.T) {
	sin := math.Sin(math.Pi / 12)
	pilot := math.Pi * 2 * 2 * 25
	// The axis rises from the middle of the thickness to the back face.
	pocketHole := math.Pi * 4.75 * 4.75 * (thick/2/sin - 25)
	// The rail's rabbet is the strip at its top, its round corners 10 mm beyond its ends.
	rabbet := 500*10 - 2*(corner(radius, radius)-corner(radius, 10))
	tube := solid.Solid{Blank: solid.Block(at(0, 0, 0), at(40, 20, 30)), Bores: []solid.Bore{{From: at(10, 10, -5), To: at(10, 10, 35), Diameter: 6 * mm}}}
	hole := math.Pi * 9 * 30
	for _, c := range []struct {
		name  string
		solid solid.Solid
		want  float64
		at    [3]float64 // NaN: not asked
	}{
		{"board", solid.Solid{Blank: solid.Block(at(0, 0, 0), at(110, thick, 2000))}, 110 * thick * 2000, [3]float64{55, 17.5, 1000}},
		{"stile", stile(), 110*thick*2000 - rabbetDepth*(10*(860+800)-4*corner(radius, 10)), [3]float64{math.NaN(), math.NaN(), math.NaN()}},
		{"rail", rail(), 500*thick*150 - rabbetDepth*rabbet - 2*(pilot+pocketHole), [3]float64{math.NaN(), math.NaN(), math.NaN()}},
		{"disc", disc(7, 8, 9), math.Pi * (6.5*6.5 - 4) * 2, [3]float64{8, 8, 9}},
		{"panel", panel(), 3 * (516*856 - 2*8*8), [3]float64{360, 17.5, 570}},
		{"bored", tube, 40*20*30 - hole, [3]float64{(40*20*30*20 - hole*10) / (40*20*30 - hole), 10, 15}},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.InEpsilon(t, c.want, c.solid.Volume(), 1e-9)
			x, y, z := c.solid.Centroid()
			for i, got := range []float64{x, y, z} {
				if !math.IsNaN(c.at[i]) {
					assert.InDelta(t, c.at[i], got, 1e-6)
				}
			}
		})
	}
}

// parts are the solids that the laws below are asked of.
func parts() map[string]solid.Solid {
	half := solid.Solid{ // a round bar along X less a round groove along Z: no even axis
		Blank: solid.Prism{Axis: solid.X, Region: plane.Region{plane.Circle(plane.At(20*mm, 20*mm), 20*mm)}, To: 60 * mm},
		Cuts:  []solid.Cut{{Prism: solid.Prism{Axis: solid.Z, Region: plane.Region{plane.Circle(plane.At(30*mm, 0), 15*mm)}, To: 40 * mm}}},
	}
	return map[string]solid.Solid{"stile": stile(), "rail": rail(), "disc": disc(7, 8, 9), "panel": panel(), "bar": half}
}

// The areas of sections across any axis add up to the volume, and their
// moments to the centroid, however few of the planes are the ones the volume
// is worked out from.
func TestSectionsAddUp(t *testing.T) {
	const planes = 1200
	for name, s := range parts() {
		least, most := s.Bounds()
		x, y, z := s.Centroid()
		for a, centre := range []float64{x, y, z} {
			axis := solid.Axis(a)
			from, size := least.Along(axis), most.Along(axis)-least.Along(axis)
			var volume, moment float64
			for _, part := range size.Split(planes) {
				middle := from + part.Half()
				area := s.Section(axis, middle).Area()
				volume += area * part.MM()
				moment += area * part.MM() * middle.MM()
				from += part
			}
			assert.InEpsilon(t, s.Volume(), volume, 1e-4, "%s across %v", name, axis)
			assert.InDelta(t, centre, moment/volume, 1e-4*size.MM(), "%s across %v", name, axis)
		}
	}
}

func TestSectionsAreRegions(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for name, s := range parts() {
		least, most := s.Bounds()
		for range 100 {
			axis := solid.Axis(rnd.IntN(3))
			where := least.Along(axis) + length.Length(rnd.Int64N(int64(most.Along(axis)-least.Along(axis))))
			require.NoError(t, plane.Simple(s.Section(axis, where)), "seed %d: %s across %v at %v", *seed, name, axis, where)
		}
	}
}

func TestSectionOfBores(t *testing.T) {
	s := solid.Solid{Blank: solid.Block(at(0, 0, 0), at(100, 40, 60)), Bores: []solid.Bore{
		{From: at(20, 10, 30), To: at(20, 50, 30), Diameter: 10 * mm}, // from the back, 30 deep
	}}
	whole := func(a solid.Axis) float64 { return [...]float64{40 * 60, 100 * 60, 100 * 40}[a] }
	for _, c := range []struct {
		axis solid.Axis
		at   float64
		lost float64
	}{
		{solid.Y, 5, 0}, {solid.Y, 10, math.Pi * 25}, {solid.Y, 39, math.Pi * 25},
		{solid.X, 20, 10 * 30}, {solid.X, 23, 8 * 30}, {solid.X, 25, 0}, {solid.X, 26, 0},
		{solid.Z, 30, 10 * 30}, {solid.Z, 27, 8 * 30}, {solid.Z, 50, 0},
	} {
		got := whole(c.axis) - s.Section(c.axis, length.Round(c.at)).Area()
		assert.InDelta(t, c.lost, got, 1e-4, "across %v at %v", c.axis, c.at)
	}
	// At 15° to the back an ellipse, and cut by the shoulder near the bore's end.
	sin := math.Sin(math.Pi / 12)
	back := 500*150.0 - 10*500 + 2*(corner(radius, radius)-corner(radius, 10)) - 2*math.Pi*4.75*4.75/sin
	assert.InDelta(t, back, rail().Section(solid.Y, 34_999_000).Area(), 0.1) // 1 µm inside the face; arcs within 2 µm
}

func TestStack(t *testing.T) {
	slabs := stile().Stack()
	require.Len(t, slabs, 2)
	assert.Equal(t, []length.Length{0, 16 * mm, 16 * mm, 35 * mm}, []length.Length{slabs[0].From, slabs[0].To, slabs[1].From, slabs[1].To})
	assert.InDelta(t, 110*2000, slabs[0].Region.Area(), 1e-6)
	// A washer on edge is its bounding box.
	slabs = disc(7, 8, 9).Stack()
	require.Len(t, slabs, 1)
	assert.Equal(t, plane.BoxOf(plane.At(7*mm, 25*mm/10), plane.At(9*mm, 155*mm/10)), slabs[0].Region.Bounds())
	assert.InDelta(t, 2*13, slabs[0].Region.Area(), 1e-6)
	// A step along X is taken as it is; a cut that misses changes nothing.
	step := solid.Solid{Blank: solid.Block(at(0, 0, 0), at(500, 20, 80)), Cuts: []solid.Cut{
		{Prism: solid.Prism{Axis: solid.X, Region: plane.Region{box(12, 60, 25, 90).Path()}, From: -mm, To: 501 * mm}},
		pocket(box(600, 0, 700, 10), 0, 0, 5, "miss"),
	}}
	slabs = step.Stack()
	require.Len(t, slabs, 2)
	assert.Equal(t, 12*mm, slabs[1].From)
	assert.InDelta(t, 500*60, slabs[1].Region.Area(), 1e-6)
	assert.InDelta(t, 500*(20*80-8*20), step.Volume(), 1e-6)
	assert.Empty(t, solid.Solid{}.Stack())
	assert.Zero(t, solid.Solid{}.Volume())
}

func TestClash(t *testing.T) {
	board := func(x, y, z float64) solid.Solid {
		return solid.Solid{Blank: solid.Block(at(x, y, z), at(x+100, y+20, z+50))}
	}
	washer := disc(100, 25.5, 500) // beside the rabbet's wall, its rim on the panel's back
	into := func(s solid.Solid, x, y, z float64) solid.Solid { return s.Move(at(x, y, z)) }
	// The segment of a washer that its rim reaches 1 mm deep into something flat.
	segment := 6.5*6.5*math.Acos(5.5/6.5) - 5.5*math.Sqrt(6.5*6.5-5.5*5.5)
	for _, c := range []struct {
		name string
		a, b solid.Solid
		want float64
	}{
		{"side by side", board(0, 0, 0), board(100, 0, 0), 0},
		{"1 mm into each other", board(0, 0, 0), board(99, 0, 0), 1 * 20 * 50},
		{"corner in corner", board(0, 0, 0), board(99, 18, 47), 1 * 2 * 3},
		{"apart", board(0, 0, 0), board(300, 0, 0), 0},
		{"stile and rail", stile(), rail(), 0},
		{"stile and panel", stile(), panel(), 0},
		{"rail and panel", rail(), panel(), 0},
		{"panel 1 mm into the shoulder", stile(), into(panel(), 0, -1, 0), 8*856*1 - 2*8*8/2},
		{"washer and stile", stile(), washer, 0},
		{"washer and panel", panel(), into(washer, 2, 0, 0), 0},
		{"washer in the rabbet", stile(), into(washer, 1, 0, 0), 0},
		{"washer 1 mm into the panel", panel(), into(washer, 2, -1, 0), 2 * segment},
		{"washer 1 mm into the wall", stile(), into(washer, -1, 0, 0), math.Pi * (6.5*6.5 - 2*2)},
		{"crossing bars", bar(solid.X), bar(solid.Z), 16.0 / 3 * 20 * 20 * 20}, // Archimedes, The Method: two like cylinders
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, got := range []float64{solid.Clash(c.a, c.b), solid.Clash(c.b, c.a)} {
				if c.want == 0 {
					assert.Zero(t, got)
				} else {
					assert.InEpsilon(t, c.want, got, 1e-6)
				}
			}
		})
	}
}

// bar is a round bar of radius 20 along an axis, through (50, 50, 50).
func bar(a solid.Axis) solid.Solid {
	return solid.Solid{Blank: solid.Prism{Axis: a, Region: plane.Region{plane.Circle(plane.At(50*mm, 50*mm), 20*mm)}, To: 100 * mm}}
}

// What is moved has the same volume and clashes, its centroid and its sections
// moved with it, the latter to the nanometre.
func TestMove(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 1))
	far := func() length.Length { return length.Length(rnd.Int64N(int64(8*length.Metre))) - 4*length.Metre }
	for range 20 {
		d := solid.Vec{X: far(), Y: far(), Z: far()}
		for name, s := range parts() {
			moved := s.Move(d)
			assert.InEpsilon(t, s.Volume(), moved.Volume(), 1e-9, "seed %d: %s by %v", *seed, name, d)
			x, y, z := s.Centroid()
			mx, my, mz := moved.Centroid()
			assert.InDelta(t, x+d.X.MM(), mx, 1e-6, "seed %d: %s by %v", *seed, name, d)
			assert.InDelta(t, y+d.Y.MM(), my, 1e-6, "seed %d: %s by %v", *seed, name, d)
			assert.InDelta(t, z+d.Z.MM(), mz, 1e-6, "seed %d: %s by %v", *seed, name, d)
			least, _ := s.Bounds()
			cut := 5*mm + length.Length(1+rnd.Int64N(int64(mm)))
			still := s.Section(solid.X, least.X+cut).Translate(d.Y, d.Z)
			if name != "rail" { // whose ellipses are worked out where they lie, and rounded there
				assert.Equal(t, still, moved.Section(solid.X, least.X+cut+d.X), "seed %d: %s by %v", *seed, name, d)
			}
		}
		assert.InEpsilon(t, solid.Clash(bar(solid.X), bar(solid.Z)), solid.Clash(bar(solid.X).Move(d), bar(solid.Z).Move(d)), 1e-9)
	}
}

func TestPierce(t *testing.T) {
	runs := rail().Pierce(at(150, 40, 145), at(150, -5, 145)) // through the rabbet to the front
	require.Len(t, runs, 1)
	assert.InDelta(t, 24, runs[0].In.Along, 1e-9)
	assert.InDelta(t, 40, runs[0].Out.Along, 1e-9)
	assert.Equal(t, [3]float64{0, 1, 0}, runs[0].In.Normal)
	assert.Equal(t, [3]float64{0, -1, 0}, runs[0].Out.Normal)

	runs = stile().Pierce(at(105, 30, -10), at(105, 30, 2010)) // along both rabbets
	require.Len(t, runs, 3)
	assert.Equal(t, [3]float64{0, 0, -1}, runs[0].In.Normal)
	assert.Equal(t, [3]float64{0, 0, 1}, runs[2].Out.Normal)
	assert.Negative(t, runs[1].In.Normal[2], "a round corner's face looks down and inwards")

	runs = stile().Pierce(at(50, 10, 10), at(60, 10, 10)) // wholly inside
	assert.Equal(t, []solid.Stretch{{Out: solid.End{Along: 10}}}, runs)
	assert.Empty(t, stile().Pierce(at(0, 0, 0), at(0, 0, 100)), "along an edge")
	assert.Empty(t, stile().Pierce(at(1, 1, 1), at(1, 1, 1)), "no line")
}

func TestSectionIsHalfOpen(t *testing.T) {
	b := solid.Solid{Blank: solid.Block(at(0, 5, 0), at(10, 8, 10))}
	for y, want := range map[length.Length]float64{5*mm - 1: 0, 5 * mm: 100, 8*mm - 1: 100, 8 * mm: 0} {
		assert.InDelta(t, want, b.Section(solid.Y, y).Area(), 1e-9, "at %d nm", y)
	}
	assert.Empty(t, b.Section(solid.X, 0), "grazing takes nothing")
	assert.Empty(t, b.Section(solid.X, 10*mm), "grazing takes nothing")
}

// A wide bore at 45° from inside a block out of its back: its centroid lies off
// the middle of its axis, by the formula for a cylinder cut at a slant.
func TestSlantedBore(t *testing.T) {
	blank := solid.Block(at(0, 0, 0), at(200, 100, 100))
	s := solid.Solid{Blank: blank, Bores: []solid.Bore{{From: at(50, 50, 50), To: at(150, 150, 50), Diameter: 40 * mm}}}
	const r = 20.0
	axis := 50 * math.Sqrt2
	volume := math.Pi * r * r * axis
	along := (math.Pi*r*r*axis*axis/2 + math.Pi*r*r*r*r/8) / volume // the face slopes 1 in 1
	across := math.Pi * r * r * r * r / 4 / volume                  // towards -Y and +X, where the wood ends later
	x, y, z := s.Centroid()
	left := 200*100*100 - volume
	assert.InEpsilon(t, left, s.Volume(), 1e-12)
	assert.InDelta(t, (200*100*100*100-volume*(50+(along+across)/math.Sqrt2))/left, x, 1e-9)
	assert.InDelta(t, (200*100*100*50-volume*(50+(along-across)/math.Sqrt2))/left, y, 1e-9)
	assert.InDelta(t, 50, z, 1e-9)
}
