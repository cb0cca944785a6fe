package plane

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
)

// Moving both regions by whole nanometres moves the result by them, to the
// last digit.
func TestMovingMovesTheResult(t *testing.T) {
	c := newChance()
	for i := range 500 {
		a, b := c.region(i%3), c.region(i%3)
		dx, dy := length.Length(c.Int64N(24e9)-12e9), length.Length(c.Int64N(24e9)-12e9)
		for name, op := range map[string]func(a, b Region) Region{"Union": Union, "Intersect": Intersect, "Subtract": Subtract} {
			want := op(a, b).Translate(dx, dy)
			got := op(a.Translate(dx, dy), b.Translate(dx, dy))
			require.Equal(t, dump(want), dump(got), "seed %d, try %d: %s by %d, %d of\n%sand\n%s", *seed, i, name, dx, dy, dump(a), dump(b))
		}
		require.Equal(t, a.Area(), a.Translate(dx, dy).Area())
	}
}

// Mirroring may round the other way, so areas agree to the slack only; where
// nothing is rounded, between rectangles, all agrees.
func TestMirroringMirrorsTheResult(t *testing.T) {
	c := newChance()
	about := length.Length(12_345_678)
	for i := range 500 {
		a, b := c.region(i%3), c.region(i%3)
		for _, m := range [...]func(Region) Region{
			func(r Region) Region { return r.MirrorX(about) },
			func(r Region) Region { return r.MirrorY(about) },
		} {
			require.Equal(t, dump(a), dump(m(m(a))))
			got := Subtract(m(a), m(b))
			require.NoError(t, Simple(got), "seed %d, try %d", *seed, i)
			require.InDelta(t, Subtract(a, b).Area(), got.Area(), slack(a, b), "seed %d, try %d", *seed, i)
			p, q := Of(c.box(tick).Path()), Of(c.box(tick).Path())
			require.Equal(t, dump(Union(m(Subtract(p, q)), nil)), dump(Subtract(m(p), m(q))), "seed %d, try %d", *seed, i)
		}
	}
}

// What Clip gives adds up to the path, and each piece lies where it says.
func TestClipLosesNothing(t *testing.T) {
	c := newChance()
	counts := map[Position]int{}
	for i := range 1500 {
		r, path := c.region(i%3), c.outline()
		if i%2 == 0 {
			path = c.star()
		}
		inside, outside, boundary := Clip(path, r)
		off := slack(Of(path), r)
		require.InDelta(t, path.Length(), lengths(inside, outside, boundary), off, "seed %d, try %d", *seed, i)
		for at, list := range map[Position][]Path{Inside: inside, Outside: outside, Boundary: boundary} {
			for _, p := range list {
				for k, e := range p {
					if k > 0 {
						require.Equal(t, p[k-1].To, e.From, "seed %d, try %d", *seed, i)
					}
					if e.Length() < 0.01 {
						continue // shorter than the lint of cut contours allows anything to be
					}
					counts[at]++
					got := r.Where(e.Middle())
					require.True(t, got == at || got == Boundary, "seed %d, try %d: %v lies %v, not %v\n%s%s", *seed, i, e, got, at, dump(r), dump(Of(path)))
				}
			}
		}
	}
	for _, at := range [...]Position{Inside, Outside, Boundary} {
		assert.Greater(t, counts[at], 50, "hardly any piece was %v", at)
	}
}

func lengths(lists ...[]Path) float64 {
	var whole float64
	for _, list := range lists {
		for _, p := range list {
			whole += p.Length()
		}
	}
	return whole
}

// The share of random points inside agrees with the area: the count is
// binomial, and five standard deviations fail once in two million. Some of a
// full box may fall on its boundary: the deviation is taken as one at least.
func TestWhereAgreesWithArea(t *testing.T) {
	c := newChance()
	for i := range 150 {
		r := c.region(i % 3)
		b := r.Bounds()
		if r.Empty() {
			continue
		}
		const n = 2000
		hits := 0
		for range n {
			p := b.Min.Add(length.Length(c.Int64N(int64(b.Width()))), length.Length(c.Int64N(int64(b.Height()))))
			if r.Where(p) == Inside {
				hits++
			}
		}
		share := r.Area() / (b.Width().MM() * b.Height().MM())
		require.InDelta(t, share, float64(hits)/n, 5*math.Sqrt(max(share*(1-share), 1.0/n)/n), "seed %d, try %d\n%s", *seed, i, dump(r))
	}
}

// Across measures the area too: the integral of its stretches over X, by the
// midpoint rule, which for straight and once-bent edges errs by little.
func TestAcrossAgreesWithArea(t *testing.T) {
	c := newChance()
	for i := range 100 {
		r := c.region(i % 3)
		b := r.Bounds()
		const n = 400
		var across, along float64
		for k := range n {
			for _, y := range r.Across(b.Min.X + b.Width()/n*length.Length(k) + b.Width()/(2*n)) {
				across += (y[1] - y[0]).MM()
			}
			for _, x := range r.Along(b.Min.Y + b.Height()/n*length.Length(k) + b.Height()/(2*n)) {
				along += (x[1] - x[0]).MM()
			}
		}
		within := (b.Width().MM()*b.Height().MM())*20/n + 1e-9
		require.InDelta(t, r.Area(), across*b.Width().MM()/n, within, "seed %d, try %d\n%s", *seed, i, dump(r))
		require.InDelta(t, r.Area(), along*b.Height().MM()/n, within, "seed %d, try %d\n%s", *seed, i, dump(r))
	}
}

// Flat paths lie within the chord of the arcs: the area lost is less than
// chord times length.
func TestFlattenKeepsWithinTheChord(t *testing.T) {
	c := newChance()
	for i := range 300 {
		p := c.turned(c.outline())
		chord := length.Length(1000 + c.IntN(500_000))
		flat := p.Flatten(chord)
		require.True(t, flat.Closed())
		require.InDelta(t, p.Area(), flat.Area(), (chord+2).MM()*p.Length(), "seed %d, try %d", *seed, i)
		for _, e := range p {
			at := e.From
			for _, next := range e.Flatten(chord) {
				if e.Turn != Straight {
					middle := Line(at, next).Middle()
					require.InDelta(t, e.radius(), norm(e.Centre.to(middle)), float64(chord)+3, "seed %d, try %d", *seed, i)
				}
				at = next
			}
			require.Equal(t, e.To, at)
		}
	}
}

// Straight-edged booleans agree with those of an independent program,
// github.com/peterstace/simplefeatures.
func TestPolygonsAgreeWithAnotherProgram(t *testing.T) {
	c := newChance()
	for i := range 300 {
		a, b := Of(c.star()), Of(c.star())
		if i%2 == 0 {
			a = Union(Of(c.turned(c.box(tick).Path())), Of(c.box(10*mm).Path()))
		}
		within := slack(a, b)
		theirs := func(op func(a, b geom.Geometry) (geom.Geometry, error)) float64 {
			g, err := op(geometry(t, a), geometry(t, b))
			require.NoError(t, err)
			return g.Area()
		}
		require.InDelta(t, theirs(geom.Union), Union(a, b).Area(), within, "seed %d, try %d", *seed, i)
		require.InDelta(t, theirs(geom.Intersection), Intersect(a, b).Area(), within, "seed %d, try %d", *seed, i)
		require.InDelta(t, theirs(geom.Difference), Subtract(a, b).Area(), within, "seed %d, try %d", *seed, i)
	}
}

// Nonsense gives nonsense, but nothing panics and nothing runs on for ever:
// edges of a few nanometres or kilometres, arcs off their circles, open paths.
func TestNonsenseDoesNotPanic(t *testing.T) {
	c := newChance()
	for i := range 3000 {
		scale := [...]length.Length{1, 3, mm, length.Metre}[i%4]
		point := func() Point { return At(c.coarse(scale), c.coarse(scale)) }
		nonsense := func() Region {
			var r Region
			for range c.IntN(3) {
				var p Path
				at := point()
				for range c.IntN(6) {
					e := Arc(at, point(), point(), Turn(c.IntN(3)-1))
					p, at = append(p, e), e.To
				}
				if len(p) > 0 && c.IntN(2) == 0 {
					p = append(p, Line(at, p[0].From))
				}
				r = append(r, p)
			}
			return r
		}
		a, b := nonsense(), nonsense()
		for _, r := range [...]Region{a, Union(a, b), Intersect(a, b), Subtract(a, b)} {
			_ = Simple(r)
			r.Area()
			r.Centroid()
			r.Where(point())
			r.Across(point().X)
			for _, p := range r {
				p.Flatten(scale / 3)
				Clip(p, b)
				for _, e := range p {
					e.Bulge()
				}
			}
		}
		low, high := point(), point()
		for _, p := range [...]Path{Circle(low, -high.X), RoundedRect(Box{low, high}, scale), Slot(Box{low, high}), ClippedRect(Box{low, high}, scale), Polygon(low), Ellipse(low, high.X, high.Y, 1)} {
			_ = Simple(Of(p))
		}
	}
}

// geometry is the region, in millimetres, as the other program has it: its
// outlines folded together, whichever lies in which.
func geometry(t *testing.T, r Region) geom.Geometry {
	t.Helper()
	whole := geom.Geometry{}
	for _, p := range r {
		var xy []float64
		for _, e := range append(p[:len(p):len(p)], p[0]) {
			xy = append(xy, e.From.X.MM(), e.From.Y.MM())
		}
		ring := geom.NewLineString(geom.NewSequence(xy, geom.DimXY))
		outline := geom.NewPolygon([]geom.LineString{ring}).AsGeometry()
		var err error
		whole, err = geom.SymmetricDifference(whole, outline)
		require.NoError(t, err)
	}
	return whole
}

// leaf is like the front of a door: 800 × 2000 mm less four rounded lites.
func leaf() (Region, Region) {
	var lites Region
	for i := range length.Length(4) {
		low := At(100*mm, 100*mm+i*460*mm)
		lites = append(lites, RoundedRect(BoxOf(low, low.Add(600*mm, 400*mm)), 16*mm))
	}
	return Of(Rect(At(0, 0), At(800*mm, 2000*mm))), lites
}

func BenchmarkSubtract(b *testing.B) {
	front, lites := leaf()
	b.ReportAllocs()
	for b.Loop() {
		Subtract(front, lites)
	}
}

func BenchmarkIntersect(b *testing.B) {
	front, lites := leaf()
	frame, strip := Subtract(front, lites), Of(Rect(At(50*mm, 50*mm), At(400*mm, 1500*mm)))
	b.ReportAllocs()
	for b.Loop() {
		Intersect(frame, strip)
	}
}

// BenchmarkSubtractMany is as large as regions get: about 200 edges.
func BenchmarkSubtractMany(b *testing.B) {
	front, lites := leaf()
	for i := range length.Length(40) {
		lites = append(lites, Circle(At((20+i*19)*mm, 50*mm), 5*mm), Circle(At((20+i*19)*mm, 1950*mm), 5*mm))
	}
	b.ReportAllocs()
	for b.Loop() {
		Subtract(front, lites)
	}
}

func BenchmarkClip(b *testing.B) {
	front, lites := leaf()
	frame := Subtract(front, lites)
	path := Path{Line(At(-mm, 300*mm), At(801*mm, 1700*mm))}
	b.ReportAllocs()
	for b.Loop() {
		Clip(path, frame)
	}
}
