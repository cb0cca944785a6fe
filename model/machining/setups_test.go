package machining

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

func vec(x, y, z float64) solid.Vec {
	return solid.Vec{X: length.Round(x), Y: length.Round(y), Z: length.Round(z)}
}

func box(x0, y0, z0, x1, y1, z1 float64) solid.Prism {
	return solid.Block(vec(x0, y0, z0), vec(x1, y1, z1))
}

// board is a solid 100 × 30 × 400 (X, Y, Z).
func board(cuts ...solid.Prism) solid.Solid {
	b := solid.Solid{Blank: box(0, 0, 0, 100, 30, 400)}
	for _, c := range cuts {
		b.Cuts = append(b.Cuts, solid.Cut{Prism: c, For: "step"})
	}
	return b
}

var mill = Tool{Diameter: 6 * mm, Reach: 50 * mm, Relief: NoRelief}

// on is the setup of a face.
func on(t *testing.T, p Plan, f Face) Setup {
	t.Helper()
	for _, s := range p.Setups {
		if s.Face == f {
			return s
		}
	}
	t.Fatalf("no setup of %v", f)
	return Setup{}
}

func only(s Setup, o Operation) []Contour {
	var found []Contour
	for _, c := range s.Contours {
		if c.Operation == o {
			found = append(found, c)
		}
	}
	return found
}

// A bore near a corner of each face, and where it is seen on that face. The
// corner: low in both directions of the face.
func TestFaces(t *testing.T) {
	for _, c := range []struct {
		face     Face
		from, to solid.Vec
		wide     float64
		x, y     float64
		turned   bool
	}{
		{Front, vec(10, 0, 20), vec(10, 12, 20), 100, 10, 20, false},
		{Back, vec(10, 30, 20), vec(10, 18, 20), 100, 90, 20, true},
		{Left, vec(0, 5, 20), vec(12, 5, 20), 30, 25, 20, true},
		{Right, vec(100, 5, 20), vec(88, 5, 20), 30, 5, 20, false},
		{Top, vec(10, 5, 400), vec(10, 5, 388), 100, 10, 5, false},
		{Bottom, vec(10, 5, 0), vec(10, 5, 12), 100, 10, 25, true},
	} {
		body := board()
		body.Bores = []solid.Bore{{From: c.from, To: c.to, Diameter: 8 * mm, For: "dowel"}}
		s := on(t, Setups(body, mill), c.face)
		require.Equal(t, length.Round(c.wide), s.Width, c.face)
		require.Equal(t, c.turned, c.face.Turned(), c.face)
		require.Equal(t, []Contour{{Bore, 12 * mm, plane.Circle(at(c.x, c.y), 4*mm)}}, only(s, Bore), c.face)
		require.Empty(t, s.Lint(shop(), false), c.face)
	}
}

// What is worked from which face, and how deep.
func TestWays(t *testing.T) {
	stadium := solid.Prism{Axis: solid.X, Region: plane.Region{plane.Slot(plane.BoxOf(at(10, 180), at(20, 220)))}, From: 80 * mm, To: 100 * mm}
	spandrel := solid.Prism{Axis: solid.Z, Region: plane.Region{polygon(0, 0, 5, 0, 0, 5)}, To: 400 * mm}
	for _, c := range []struct {
		name  string
		cut   solid.Prism
		face  Face
		depth float64
	}{
		{"rabbet at the back and an edge", box(80, 18, 0, 100, 30, 400), Back, 12},
		{"cheek at the front and three edges", box(0, 0, 350, 100, 10, 400), Front, 10},
		{"groove in an edge", box(90, 12, 0, 100, 18, 400), Right, 10},
		{"groove in the bottom", box(0, 12, 0, 100, 18, 15), Bottom, 15},
		{"mortise in an edge", box(70, 10, 100, 100, 20, 140), Right, 30},
		{"mortise with round ends", stadium, Right, 20},
	} {
		p := Setups(board(c.cut), mill)
		require.Empty(t, p.LeftOut, c.name)
		pockets := only(on(t, p, c.face), Pocket)
		require.Len(t, pockets, 1, c.name)
		require.Equal(t, length.Round(c.depth), pockets[0].Depth, c.name)
	}
	through := Setups(board(box(40, 0, 100, 60, 30, 140)), mill)
	require.Len(t, through.Setups, 1)
	require.Len(t, only(through.Setups[0], Hole), 1, "a window is a hole in the outline")
	notched := Setups(board(box(80, 0, 100, 100, 30, 140)), mill)
	require.Len(t, notched.Setups[0].Contours, 1, "a notch is part of the outline")
	require.Len(t, notched.Setups[0].Contours[0].Path, 8)
	require.Equal(t, []string{"step: " + shaped}, Setups(board(spandrel), mill).LeftOut)
	for name, cut := range map[string]solid.Prism{
		"moulded edge":  spandrel,
		"closed cavity": box(40, 10, 100, 60, 20, 140),
		"deep slot":     box(40, 12, 0, 60, 18, 60),
	} {
		p := Setups(board(cut), mill)
		require.Len(t, p.LeftOut, 1, name)
		require.Empty(t, only(p.Setups[0], Pocket), name)
	}
}

// A second step in the floor of a first is worked from the same face, and a
// bore in a rabbet's wall from the edge, through the rabbet.
func TestStepped(t *testing.T) {
	body := board(box(80, 18, 0, 100, 30, 400), box(85, 8, 100, 95, 18, 140))
	body.Bores = []solid.Bore{{From: vec(80, 24, 50), To: vec(60, 24, 50), Diameter: 3 * mm, For: "screw"}}
	p := Setups(body, mill)
	pockets := only(on(t, p, Back), Pocket)
	require.Len(t, pockets, 2)
	require.Equal(t, []length.Length{12 * mm, 22 * mm}, []length.Length{pockets[0].Depth, pockets[1].Depth})
	require.Equal(t, 40*mm, only(on(t, p, Right), Bore)[0].Depth, "from the edge to the bore's end")
	require.Empty(t, p.LeftOut)
}

// A counterbore and the bore in its floor are drilled from the same face; an
// inclined one is left out and said.
func TestBores(t *testing.T) {
	body := board()
	body.Bores = []solid.Bore{
		{From: vec(50, 0, 50), To: vec(50, 8, 50), Diameter: 10 * mm, For: "head"},
		{From: vec(50, 8, 50), To: vec(50, 20, 50), Diameter: 5 * mm, For: "screw"},
		{From: vec(50, 30, 300), To: vec(90, 10, 300), Diameter: 9 * mm, For: "pocket"},
	}
	p := Setups(body, mill)
	require.Len(t, p.Setups, 1)
	bores := only(p.Setups[0], Bore)
	require.Equal(t, []length.Length{8 * mm, 20 * mm}, []length.Length{bores[0].Depth, bores[1].Depth})
	require.Len(t, p.LeftOut, 1)
	require.Contains(t, p.LeftOut[0], "27°", "atan(20/40)")
}

// Pockets run past what they open to by the tool's radius and a millimetre, and
// no further; inside the part nothing is added.
func TestPast(t *testing.T) {
	p := Setups(board(box(80, 18, 100, 100, 30, 400)), mill)
	s := on(t, p, Back)
	pocket := only(s, Pocket)[0].Path
	require.Equal(t, plane.Rect(at(-4, 100), at(20, 404)).Bounds(), pocket.Bounds(), "turned over: the right edge is at 0")
	require.InDelta(t, 20*300, plane.Intersect(plane.Region{pocket}, s.Outline()).Area(), 1e-6)
	require.InDelta(t, 24*304, pocket.Area(), 1e-6)
	require.Empty(t, s.Lint(Profile{}, false))
}

// A wall that arrives at the edge as an arc goes on along its tangent: the tool
// finds no corner there.
func TestPastGoesOnSmoothly(t *testing.T) {
	region := plane.Intersect(plane.Region{plane.RoundedRect(plane.BoxOf(at(80, 100), at(180, 300)), 24*mm)}, plane.Region{rect(0, 0, 100, 400)})
	cut := solid.Prism{Axis: solid.Y, Region: region, From: 18 * mm, To: 30 * mm}
	s := on(t, Setups(board(cut), mill), Back)
	require.Empty(t, s.Lint(shop(), false))
	require.InDelta(t, region.Area(), plane.Intersect(s.region(-1, Pocket), s.Outline()).Area(), 1e-3)
}

// With relief no inside corner is sharper than the tool, and the corner itself
// is cleared.
func TestRelief(t *testing.T) {
	for _, relief := range []Relief{Dogbone, TBone} {
		tool := mill
		tool.Relief = relief
		s := on(t, Setups(board(box(30, 18, 100, 70, 30, 200)), tool), Back)
		require.Empty(t, s.Lint(shop(), false), relief)
		pocket := plane.Region{only(s, Pocket)[0].Path}
		require.Len(t, plane.Subtract(plane.Region{rect(30, 100, 70, 200)}, pocket), 0, "the whole pocket is cleared")
		added := pocket.Area() - 40*100
		if relief == TBone {
			require.InDelta(t, 4*9*math.Pi/2, added, 0.05, "half of each circle lies in the wall")
		} else {
			// The circle goes through the corner and its centre lies on the
			// bisector: each wall cuts off a segment of a quarter turn.
			require.InDelta(t, 4*2*9*(math.Pi/4-0.5), added, 0.05)
		}
	}
	s := on(t, Setups(board(box(30, 18, 100, 70, 30, 200)), mill), Back)
	faults := s.Lint(shop(), false)
	require.Len(t, faults, 4, "without relief each corner is told")
	require.True(t, faults[0].Minor)
}

// What the pockets take inside the outline, times their depth, and what the
// outline leaves of the blank, is what the solid's cuts take.
func TestVolumeTaken(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for n := range 300 {
		body, out := randomBoard(rnd)
		p := Setups(body, mill)
		require.Empty(t, p.LeftOut, "seed %d board %d", *seed, n)
		taken := 0.0
		for i, s := range p.Setups {
			faults := s.Lint(Profile{}, false)
			require.Empty(t, faults, "seed %d board %d %v", *seed, n, s.Face)
			outline := s.Outline()
			if i == 0 {
				taken += (float64(s.Width.MM()*s.Height.MM()) - outline.Area()) * s.Thickness.MM()
			}
			for _, c := range only(s, Pocket) {
				if c.Path.Area() > 0 {
					taken += plane.Intersect(plane.Region{c.Path}, outline).Area() * c.Depth.MM()
				}
			}
		}
		want := 100*30*400 - body.Volume()
		require.InEpsilon(t, want, taken, 1e-6, "seed %d board %d: %v", *seed, n, out)
	}
}

// randomBoard is a board with a cut in some of eight stretches along it.
func randomBoard(rnd *rand.Rand) (solid.Solid, []string) {
	kinds := []struct {
		name string
		cut  func(z, x, y float64) solid.Prism
	}{
		{"back pocket", func(z, x, y float64) solid.Prism { return box(x, 30-y, z, x+20, 30, z+30) }},
		{"front pocket", func(z, x, y float64) solid.Prism { return box(x, 0, z, x+20, y, z+30) }},
		{"rabbet left", func(z, x, y float64) solid.Prism { return box(0, 30-y, z, x, 30, z+30) }},
		{"rabbet right", func(z, x, y float64) solid.Prism { return box(x, 30-y, z, 100, 30, z+30) }},
		{"edge mortise", func(z, x, y float64) solid.Prism { return box(0, 5, z, min(x, 45), 5+y, z+30) }},
		{"window", func(z, x, y float64) solid.Prism { return box(x, 0, z, x+20, 30, z+30) }},
		{"notch", func(z, x, y float64) solid.Prism { return box(x, 0, z, 100, 30, z+30) }},
		{"round pocket", func(z, x, y float64) solid.Prism {
			return solid.Prism{Axis: solid.Y, Region: plane.Region{circle(x+10, z+15, 19)}, From: 0, To: length.Round(y)}
		}},
	}
	var cuts []solid.Prism
	var names []string
	for i := range 8 {
		if i > 0 && rnd.IntN(3) == 0 {
			continue
		}
		k := kinds[rnd.IntN(len(kinds))]
		cuts = append(cuts, k.cut(float64(i)*50+5, float64(10+rnd.IntN(60)), float64(4+rnd.IntN(16))))
		names = append(names, k.name)
	}
	return board(cuts...), names
}

func TestNoFlatPiece(t *testing.T) {
	p := Setups(solid.Solid{Blank: solid.Prism{Axis: solid.X, Region: plane.Region{circle(0, 0, 10)}, To: 40 * mm}}, mill)
	require.Empty(t, p.Setups)
	require.Len(t, p.LeftOut, 1)
}

// The pass over an assembled frame clears what the passes over its parts clear.
func TestAssembly(t *testing.T) {
	wall := plane.Region{plane.RoundedRect(plane.BoxOf(at(90, 40), at(410, 360)), 15*mm)}
	var bodies []solid.Solid
	taken := 0.0
	for _, r := range [][4]float64{{0, 0, 100, 400}, {400, 0, 500, 400}, {100, 0, 400, 50}, {100, 350, 400, 400}} {
		blank := rect(r[0], r[1], r[2], r[3])
		cut := solid.Prism{Axis: solid.Y, Region: plane.Intersect(wall, plane.Region{blank}), From: 18 * mm, To: 30 * mm}
		body := solid.Solid{Blank: box(r[0], 0, r[1], r[2], 30, r[3]), Cuts: []solid.Cut{{Prism: cut, For: "rabbet"}}}
		bodies = append(bodies, body)
		taken += cut.Region.Area()
	}
	s := Assembly(bodies, Back, "rabbet", mill)
	require.Empty(t, s.Lint(shop(), false))
	require.Len(t, only(s, Blank), 2, "outline and lite")
	pocket := s.region(-1, Pocket)
	require.Len(t, pocket, 2, "a ring: the tool need not clear the lite")
	require.InEpsilon(t, taken, plane.Intersect(pocket, s.Outline()).Area(), 1e-7)
	require.InEpsilon(t, taken+300*300-292*292, pocket.Area(), 1e-7, "run past the sight edges by 4 mm")
}

func TestCompensate(t *testing.T) {
	s := plate(hole(circle(50, 50, 20)), hole(rounded(100, 20, 160, 80)), pocketed(5, rounded(20, 20, 30, 30)))
	s.Contours[0].Path = plane.ClippedRect(plane.BoxOf(at(0, 0), at(200, 100)), 10*mm)
	moved, err := s.Compensate(200 * length.Micrometre)
	require.NoError(t, err)
	require.Empty(t, rulesOf(moved.Lint(Profile{}, false)))
	require.Equal(t, plane.BoxOf(at(-0.1, -0.1), at(200.1, 100.1)), moved.Contours[0].Path.Bounds(), "the outline grows by half")
	slant := moved.Contours[0].Path[1]
	require.InDelta(t, math.Sqrt2*10+2*0.1*math.Tan(math.Pi/8), slant.Length(), 1e-5, "the clip moves out along its normal")
	for i, before := range only(s, Hole) {
		require.Equal(t, before.Path.Bounds().Grow(-100*length.Micrometre), only(moved, Hole)[i].Path.Bounds(), "holes shrink by half")
	}
	require.Equal(t, only(s, Pocket), only(moved, Pocket), "pockets stay")
	_, err = plate(hole(circle(50, 50, 20))).Compensate(20 * mm)
	require.ErrorContains(t, err, "too small")
	_, err = plate(hole(rect(50, 50, 60, 60))).Compensate(11 * mm)
	require.ErrorContains(t, err, "too short")
}

func TestLayerNames(t *testing.T) {
	n := DefaultNames()
	require.Equal(t, "POCKET-19_05-BACK", n.Layer(Pocket, 19_050_000, Back, length.Millimetres))
	require.Equal(t, "POCKET-0_75-BACK", n.Layer(Pocket, 19_050_000, Back, length.Inches))
	require.Equal(t, "CUT-3_175-FRONT", n.Layer(Cut, 3_175_000, Front, length.Millimetres))
	require.Equal(t, "BLANK-LEFT", n.Layer(Blank, 0, Left, length.Millimetres))
	require.Equal(t, "MARK-TOP", n.Layer(Mark, 0, Top, length.Inches))
}
