package solid_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/piece"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// The pieces measure what their formulas say.
func TestPieces(t *testing.T) {
	for _, p := range piece.All() {
		assert.InEpsilon(t, p.Volume, p.Solid.Volume(), 1e-9, p.Name)
	}
}

// The sections of a piece across any axis, close together, add up to its
// volume, and their moments to its centroid: their steps lie on half millimetres.
func TestPieceSectionsAddUp(t *testing.T) {
	for _, p := range piece.All() {
		least, most := p.Solid.Bounds()
		x, y, z := p.Solid.Centroid()
		for a, centre := range []float64{x, y, z} {
			axis := solid.Axis(a)
			var volume, moment float64
			step := mm / 2
			if most.Along(axis)-least.Along(axis) < 70*mm {
				step = mm / 20 // thin, so that round ends weigh more
			}
			for at := least.Along(axis); at < most.Along(axis); at += step {
				area := p.Solid.Section(axis, at+step/2).Area() * step.MM()
				volume += area
				moment += area * (at + step/2).MM()
			}
			assert.InEpsilon(t, p.Volume, volume, 2e-4, "%s across %v", p.Name, axis)
			assert.InDelta(t, centre, moment/volume, 1e-4*(most.Along(axis)-least.Along(axis)).MM(), "%s across %v", p.Name, axis)
		}
	}
}

func TestPieceSectionsAreRegions(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 2))
	for _, p := range piece.All() {
		least, most := p.Solid.Bounds()
		for range 40 {
			axis := solid.Axis(rnd.IntN(3))
			where := least.Along(axis) + length.Length(1+rnd.Int64N(int64(most.Along(axis)-least.Along(axis)-1)))
			require.NoError(t, plane.Simple(p.Solid.Section(axis, where)), "seed %d: %s across %v at %v", *seed, p.Name, axis, where)
		}
	}
}

// pose is a solid moved, turned and mirrored at random, and what that does to a
// point in mm.
func pose(rnd *rand.Rand, s solid.Solid) (solid.Solid, func(x, y, z float64) [3]float64) {
	away := func() length.Length { return length.Length(rnd.Int64N(int64(2*length.Metre))) - length.Metre }
	d := solid.Vec{X: away(), Y: away(), Z: away()}
	about, quarters := solid.Axis(rnd.IntN(3)), rnd.IntN(9)-4
	axis, in := solid.Axis(rnd.IntN(3)), away()
	s = s.Move(d).Turn(about, quarters).Mirror(axis, in)
	return s, func(x, y, z float64) [3]float64 {
		v := [3]float64{x + d.X.MM(), y + d.Y.MM(), z + d.Z.MM()}
		// A quarter leads the next axis to the one after it, that to the first's other way.
		next, after := (about+1)%3, (about+2)%3
		for range (quarters + 8) % 4 {
			v[next], v[after] = -v[after], v[next]
		}
		v[axis] = 2*in.MM() - v[axis]
		return v
	}
}

// What is moved, turned and mirrored has the same volume, and its centroid is
// carried along.
func TestPosesKeepMeasures(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 3))
	for _, p := range piece.All() {
		for range 4 {
			posed, carried := pose(rnd, p.Solid)
			require.InEpsilon(t, p.Volume, posed.Volume(), 1e-9, "seed %d: %s", *seed, p.Name)
			x, y, z := posed.Centroid()
			want := carried(p.Solid.Centroid())
			for i, got := range []float64{x, y, z} {
				require.InDelta(t, want[i], got, 1e-6, "seed %d: %s", *seed, p.Name)
			}
		}
	}
}

// Mirrored twice, or turned by four quarters, a piece is what it was.
func TestMirrorAndTurnReturn(t *testing.T) {
	for _, p := range piece.All() {
		for a := solid.X; a <= solid.Z; a++ {
			turned := p.Solid
			for range 4 {
				turned = turned.Turn(a, 1)
			}
			assert.Equal(t, p.Solid, turned, p.Name)
			assert.Equal(t, p.Solid.Turn(a, -1), p.Solid.Turn(a, 3), p.Name)
			twice := p.Solid.Mirror(a, 123*mm).Mirror(a, 123*mm)
			assert.Equal(t, p.Solid, twice, p.Name)
			least, most := p.Solid.Bounds()
			low, high := p.Solid.Mirror(a, 123*mm).Bounds()
			assert.Equal(t, 246*mm-most.Along(a), low.Along(a), p.Name)
			assert.Equal(t, 246*mm-least.Along(a), high.Along(a), p.Name)
		}
	}
}

// The mirrored solid's section is the section mirrored.
func TestMirroredSections(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 4))
	for _, p := range piece.All() {
		least, most := p.Solid.Bounds()
		for range 10 {
			across, in := solid.Axis(rnd.IntN(3)), solid.Axis(rnd.IntN(3))
			at := least.Along(across) + length.Length(1+rnd.Int64N(int64(most.Along(across)-least.Along(across)-1)))
			there := at
			if across == in {
				there = 2*777*mm - at
			}
			require.InDelta(t, p.Solid.Section(across, at).Area(), p.Solid.Mirror(in, 777*mm).Section(across, there).Area(), 1e-4, "seed %d: %s across %v at %v in %v", *seed, p.Name, across, at, in)
		}
	}
}

// A clash is the same either way round and wherever both are; with itself a
// solid has its volume in common, and what it has in common with a block is
// what it has with both halves of it, arcs cut where whole nanometres are.
func TestClashLaws(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 5))
	pieces, met := piece.All(), 0
	for i, p := range pieces {
		require.InEpsilon(t, p.Volume, solid.Clash(p.Solid, p.Solid), 1e-9, p.Name)
		for range 6 {
			q := pieces[rnd.IntN(len(pieces))]
			other := q.Solid.Turn(solid.Axis(rnd.IntN(3)), rnd.IntN(4))
			least, most := other.Bounds()
			a, b := p.Solid.Bounds()
			beside := func(axis solid.Axis) length.Length {
				room := int64(b.Along(axis) - a.Along(axis) + most.Along(axis) - least.Along(axis))
				return a.Along(axis) - most.Along(axis) + length.Length(rnd.Int64N(room))
			}
			other = other.Move(solid.Vec{X: beside(solid.X), Y: beside(solid.Y), Z: beside(solid.Z)})
			common := solid.Clash(p.Solid, other)
			if common > 0 {
				met++
			}
			scale := max(common, 1)
			require.InDelta(t, common, solid.Clash(other, p.Solid), 1e-6*scale, "seed %d: %d %s and %s", *seed, i, p.Name, q.Name)
			d := solid.Vec{X: 12_345_678, Y: -987_654_321, Z: 1_111_111_111}
			require.InDelta(t, common, solid.Clash(p.Solid.Move(d), other.Move(d)), 1e-6*scale, "seed %d: %s and %s moved", *seed, p.Name, q.Name)
			in := solid.Axis(rnd.IntN(3))
			require.InDelta(t, common, solid.Clash(p.Solid.Mirror(in, 50*mm), other.Mirror(in, 50*mm)), 2e-6*scale, "seed %d: %s and %s mirrored", *seed, p.Name, q.Name)
			require.LessOrEqual(t, common, min(p.Volume, q.Volume)*(1+1e-9))
		}
		least, most := p.Solid.Bounds()
		axis := solid.Axis(rnd.IntN(3))
		at := least.Along(axis) + length.Length(rnd.Int64N(int64(most.Along(axis)-least.Along(axis))))
		low, high := halves(least, most, axis, at)
		require.InEpsilon(t, p.Volume, solid.Clash(p.Solid, low)+solid.Clash(high, p.Solid), 1e-6, "seed %d: %s parted across %v at %v", *seed, p.Name, axis, at)
	}
	assert.Greater(t, met, len(pieces), "seed %d: hardly any clash, so the test says little", *seed)
}

// halves are the box between two corners parted across an axis.
func halves(least, most solid.Vec, a solid.Axis, at length.Length) (low, high solid.Solid) {
	upper, lower := most, least
	switch a {
	case solid.X:
		upper.X, lower.X = at, at
	case solid.Y:
		upper.Y, lower.Y = at, at
	default:
		upper.Z, lower.Z = at, at
	}
	return solid.Solid{Blank: solid.Block(least, upper)}, solid.Solid{Blank: solid.Block(lower, most)}
}

// Dowels, screws and tenons in what is made for them.
func TestClashWithBores(t *testing.T) {
	dowel := func(a solid.Axis, d float64) solid.Solid { // 10 deeper than the hole's mouth at 0
		return solid.Solid{Blank: solid.Prism{Axis: a, Region: plane.Region{plane.Circle(plane.At(50*mm, 50*mm), length.Round(d).Half())}, From: -20 * mm, To: 10 * mm}}
	}
	board := solid.Solid{Blank: solid.Block(at(0, 0, 0), at(100, 100, 100))}
	bored := func(s solid.Solid, from, to solid.Vec, d float64) solid.Solid {
		s.Bores = append([]solid.Bore{}, append(s.Bores, solid.Bore{From: from, To: to, Diameter: length.Round(d)})...)
		return s
	}
	for a, hole := range map[solid.Axis]solid.Solid{
		solid.X: bored(board, at(12, 50, 50), at(-1, 50, 50), 10),
		solid.Y: bored(board, at(50, -1, 50), at(50, 12, 50), 10),
		solid.Z: bored(board, at(50, 50, 12), at(50, 50, 0), 10),
	} {
		assert.Zero(t, solid.Clash(hole, dowel(a, 10)), "along %v", a)
		assert.Zero(t, solid.Clash(dowel(a, 9.5), hole), "along %v", a)
		assert.InEpsilon(t, math.Pi*(5.25*5.25-25)*10, solid.Clash(hole, dowel(a, 10.5)), 1e-9, "along %v", a)
		assert.InEpsilon(t, math.Pi*25*3, solid.Clash(hole, dowel(a, 10).Move(solid.Raise(plane.Point{}, a, 5*mm))), 1e-9, "3 too deep along %v", a)
	}
	// A pin through a mortise's cheeks and the tenon in it, bored alike or not.
	stile := solid.Solid{Blank: solid.Block(at(0, 0, 0), at(100, 35, 200)), Cuts: []solid.Cut{{Prism: solid.Block(at(40, 11, 50), at(101, 24, 150))}}}
	tenon := solid.Solid{Blank: solid.Block(at(40, 11, 50), at(200, 24, 150))}
	pin := solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: plane.Region{plane.Circle(plane.At(70*mm, 100*mm), 4*mm)}, To: 35 * mm}}
	through := func(s solid.Solid) solid.Solid { return bored(s, at(70, -1, 100), at(70, 36, 100), 8) }
	assert.Zero(t, solid.Clash(stile, tenon))
	assert.InEpsilon(t, math.Pi*16*22, solid.Clash(stile, pin), 1e-9)
	assert.InEpsilon(t, math.Pi*16*13, solid.Clash(tenon, pin), 1e-9)
	assert.Zero(t, solid.Clash(through(stile), pin))
	assert.Zero(t, solid.Clash(through(tenon), pin))
	assert.InEpsilon(t, 60*13*100-math.Pi*16*13, solid.Clash(through(tenon), board.Move(at(0, 0, 50))), 1e-9)
}

// By Gauss's theorem, what square faces sweep from the origin's plane along an
// axis is the volume, if all others run along it.
func TestShellsBoundTheirVolume(t *testing.T) {
	held := 0
	for _, p := range piece.All() {
		shell, err := p.Solid.Drilled().Shell()
		require.NoError(t, err, p.Name)
		euler := len(shell.Corners) - len(usedEdges(shell)) + len(shell.Faces)
		for _, f := range shell.Faces {
			euler -= len(f.Loops) - 1
		}
		assert.Zero(t, euler%2, "%s: corners less edges plus faces less holes is %d", p.Name, euler)
		assert.LessOrEqual(t, euler, 2, p.Name)
		for a := solid.X; a <= solid.Z; a++ {
			volume, along := 0.0, true
			for _, f := range shell.Faces {
				switch {
				case f.Side != 0 && f.Axis == a:
					volume += float64(f.Side) * f.Region.Area() * f.At.MM()
				case f.Side == 0 && f.Axis != a:
					along = false
				}
			}
			if along {
				held++
				assert.InEpsilon(t, p.Volume, volume, 1e-9, "%s along %v", p.Name, a)
			}
		}
	}
	assert.Greater(t, held, 25)
}

// usedEdges are the edges that faces walk along; the others are left from ones
// that were joined.
func usedEdges(s solid.Shell) map[int]bool {
	used := map[int]bool{}
	for _, f := range s.Faces {
		for _, loop := range f.Loops {
			for _, u := range loop {
				used[u.Edge] = true
			}
		}
	}
	return used
}

// A piece moved is found to be so, and one changed is not.
func TestMovedFrom(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 6))
	far := func() length.Length { return length.Length(rnd.Int64N(int64(4*length.Metre))) - 2*length.Metre }
	pieces := piece.All()
	for i, p := range pieces {
		d := solid.Vec{X: far(), Y: far(), Z: far()}
		by, is := p.Solid.Move(d).MovedFrom(p.Solid)
		require.True(t, is, p.Name)
		require.Equal(t, d, by, p.Name)
		for k, q := range pieces {
			if _, is := p.Solid.Move(d).MovedFrom(q.Solid); is {
				require.Equal(t, i, k, "%s is no %s", p.Name, q.Name)
			}
		}
		if len(p.Solid.Cuts) > 0 {
			other := p.Solid.Move(d)
			other.Cuts[len(other.Cuts)-1].To += mm
			_, is := other.MovedFrom(p.Solid)
			require.False(t, is, "%s with a cut changed", p.Name)
		}
	}
	_, is := solid.Solid{}.MovedFrom(solid.Solid{})
	assert.False(t, is)
}
