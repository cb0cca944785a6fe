package view

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// Seed is for the tests from outside too.
var Seed = flag.Uint64("seed", 1, "seed of the random tests")

// What ink lets through of stretches of one line or one circle covers just
// what they cover, once. Places are counted in 24ths.
func TestInkDrawsOnce(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*Seed, 0))
	const places = 24
	circle := func(i int) plane.Point {
		sin, cos := math.Sincos(float64(i) * 2 * math.Pi / places)
		return plane.At(length.Round(50+40*cos), length.Round(60+40*sin))
	}
	line := func(dx, dy float64) func(int) plane.Point {
		return func(i int) plane.Point { return plane.At(length.Round(dx*float64(i)), length.Round(7+dy*float64(i))) }
	}
	for name, at := range map[string]func(int) plane.Point{"level": line(1, 0), "upright": line(0, 1), "slanted": line(3, 1.7), "round": circle} {
		for range 500 {
			drawn, covered := ink{}, [places]bool{}
			var got float64
			for range 1 + rnd.IntN(6) {
				from, size := rnd.IntN(places), 1+rnd.IntN(places/2)
				if name != "round" {
					size = min(size, places-from)
				}
				e := plane.Line(at(from), at(from+size))
				if name == "round" {
					e = plane.Arc(at(from), at(from+size), plane.At(50*length.Millimetre, 60*length.Millimetre), plane.Left)
				}
				if rnd.IntN(2) == 0 {
					e = e.Reverse()
				}
				for i := range size {
					covered[(from+i)%places] = true
				}
				for _, part := range drawn.draw(e) {
					got += part.Length()
				}
			}
			one, want := plane.Line(at(0), at(1)), 0.0
			if name == "round" {
				one = plane.Arc(at(0), at(1), plane.At(50*length.Millimetre, 60*length.Millimetre), plane.Left)
			}
			for _, c := range covered {
				if c {
					want += one.Length()
				}
			}
			require.InDelta(t, want, got, 1e-4, name)
		}
	}
}
