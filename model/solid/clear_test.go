package solid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// Distances that can be told by eye, in mm; arithmetic.
func TestClear(t *testing.T) {
	const m = length.Millimetre
	bore := func(x0, y0, z0, x1, y1, z1, d length.Length) Bore {
		return Bore{From: Vec{x0 * m, y0 * m, z0 * m}, To: Vec{x1 * m, y1 * m, z1 * m}, Diameter: d * m}
	}
	up := bore(0, 0, 0, 0, 0, 100, 4)
	for _, c := range []struct {
		other Bore
		want  float64
	}{
		{bore(10, 0, 50, 10, 0, 200, 2), 7},   // side by side
		{bore(-50, 10, 50, 50, 10, 50, 6), 5}, // crossing
		{bore(0, 0, 110, 0, 0, 150, 2), 7},    // end to end
		{bore(3, 4, 50, 3, 4, 50, 2), 2},      // a point
		{up, -4},
	} {
		require.InDelta(t, c.want, up.Apart(c.other), 1e-9)
		require.InDelta(t, c.want, c.other.Apart(up), 1e-9)
	}
	for _, c := range []struct {
		prism Prism
		want  float64
	}{
		{Block(Vec{10 * m, -5 * m, 20 * m}, Vec{30 * m, 5 * m, 40 * m}), 8},
		{Block(Vec{3 * m, 4 * m, 20 * m}, Vec{30 * m, 8 * m, 40 * m}), 3},
		{Block(Vec{-5 * m, -5 * m, 103 * m}, Vec{5 * m, 5 * m, 140 * m}), 1},
		{Block(Vec{-5 * m, -5 * m, 50 * m}, Vec{5 * m, 5 * m, 140 * m}), -2},
		{Prism{Axis: X, Region: plane.Of(plane.Circle(plane.At(20*m, 50*m), 8*m)), From: -9 * m, To: 9 * m}, 10},
	} {
		require.InDelta(t, c.want, up.Off(c.prism), 2e-2)
	}
	a, b := Block(Vec{}, Vec{m, m, m}), Block(Vec{4 * m, 5 * m, 0}, Vec{9 * m, 9 * m, m})
	require.InDelta(t, 5.0, a.Gap(b), 1e-12)
	require.Zero(t, a.Gap(Block(Vec{m, m, m}, Vec{2 * m, 2 * m, 2 * m})))
}

// The distance from a prism is no more than that of any point of the axis from
// any point of the prism, and some pair is as near.
func TestOffIsTheLeastDistance(t *testing.T) {
	const m = length.Millimetre
	at := func(n int) length.Length { return length.Length(n) * m }
	for n := range 40 {
		b := Bore{From: Vec{at(n % 7), at(n % 5), at(n % 11)}, To: Vec{at(30 - n%13), at(20 - n%3), at(25 - n)}, Diameter: m}
		p := Block(Vec{at(40), at(n % 9), at(5)}, Vec{at(50), at(20), at(30)})
		least := math.Inf(1)
		for i := range 201 {
			point := between(Vec{}, b.From).plus(between(b.From, b.To).times(float64(i) / 200))
			dx, dy, dz := max(40-point[0], 0, point[0]-50), max(at(n%9).MM()-point[1], 0, point[1]-20), max(5-point[2], 0, point[2]-30)
			least = min(least, math.Sqrt(dx*dx+dy*dy+dz*dz)-0.5)
		}
		require.LessOrEqual(t, b.Off(p), least+1e-9)
		require.InDelta(t, least, b.Off(p), 0.05)
	}
}
