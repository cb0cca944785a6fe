package plane

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"stilewright/model/length"
)

// Ellipses are checked against their own equation, and the area πab.
func TestEllipseStaysWithinTwoMicrometres(t *testing.T) {
	const bound = 2 * length.Micrometre
	for _, c := range []struct {
		a, b  length.Length
		angle float64
	}{
		{300 * mm, 200 * mm, 0}, {200 * mm, 300 * mm, 0.3}, {1200 * mm, 15 * mm, -2},
		{6 * mm, 5 * mm, 1}, {100 * mm, 99_999_000, 0}, {5000 * mm, 50 * mm, 0}, {3000 * mm, 700 * mm, 0},
	} {
		at := At(3_000_000_007, -11*mm)
		path := Ellipse(at, c.a, c.b, c.angle)
		assert.NoError(t, Simple(Region{path}))
		sin, cos := math.Sincos(c.angle)
		var worst float64
		for _, e := range path {
			n := 40
			for i := range n + 1 {
				// a point on the arc, in the ellipse's own directions
				start := math.Atan2(float64(e.From.Y-e.Centre.Y), float64(e.From.X-e.Centre.X))
				phi := start + e.Sweep()*float64(i)/float64(n)
				x := float64(e.Centre.X-at.X) + e.radius()*math.Cos(phi)
				y := float64(e.Centre.Y-at.Y) + e.radius()*math.Sin(phi)
				worst = max(worst, fromEllipse(x*cos+y*sin, y*cos-x*sin, float64(c.a), float64(c.b)))
			}
		}
		assert.Less(t, worst, float64(bound), "%v", c)
		assert.Greater(t, worst, 1.0, "%v: the check sees nothing", c)
		assert.InEpsilon(t, math.Pi*c.a.MM()*c.b.MM(), path.Area(), 2*path.Length()*bound.MM()/path.Area())
		t.Logf("%v × %v mm: %d arcs, %.0f nm", c.a.MM(), c.b.MM(), len(path), worst)
	}
	assert.Nil(t, Ellipse(At(0, 0), 0, mm, 0))
	assert.Nil(t, Ellipse(At(0, 0), 5000*mm, 5*mm, 0), "bends with a radius of 5 km")
	assert.Nil(t, Ellipse(At(0, 0), mm, mm/2, math.NaN()))
	assert.Equal(t, Circle(At(0, 0), mm), Ellipse(At(0, 0), mm, mm, 1))
}

// fromEllipse is the distance of (x, y) from the ellipse, found by walking the
// foot point to where the distance is least.
func fromEllipse(x, y, a, b float64) float64 {
	t := math.Atan2(y/b, x/a)
	far := func(t float64) float64 { return math.Hypot(x-a*math.Cos(t), y-b*math.Sin(t)) }
	step := 1e-3
	for step > 1e-13 {
		switch d := far(t); {
		case far(t+step) < d:
			t += step
		case far(t-step) < d:
			t -= step
		default:
			step /= 2
		}
	}
	return far(t)
}
