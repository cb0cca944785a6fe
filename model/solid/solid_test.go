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

const mm, in = length.Millimetre, length.Inch

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

// roundLoss is what one round corner keeps back of a square one.
func roundLoss(r float64) float64 { return r * r * (1 - math.Pi/4) }

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

func TestVolumes(t *testing.T) {
	pilot := math.Pi * 4 * 25
	pilotFree := 25.0
	_ = pilotFree
	cos, sin := math.Cos(math.Pi/12), math.Sin(math.Pi/12)
	pocketBore := math.Pi * 4.75 * 4.75 * (thick/2/sin - 25)
	_ = cos
	for _, c := range []struct {
		name  string
		solid solid.Solid
		want  float64
	}{
		{"board", solid.Solid{Blank: solid.Block(at(0, 0, 0), at(110, thick, 2000))}, 110 * thick * 2000},
		{"stile", stile(), 110*thick*2000 - rabbetDepth*(10*(860+800)-4*0.0)},
		{"rail", rail(), 500*thick*150 - rabbetDepth*10*500 - 2*(pilot+pocketBore)},
		{"disc", disc(7, 8, 9), math.Pi * (6.5*6.5 - 4) * 2},
		{"panel", panel(), 3 * (516*856 - 2*8*8)},
	} {
		t.Run(c.name, func(t *testing.T) { t.Logf("%.6f want %.6f", c.solid.Volume(), c.want) })
	}
	_ = assert.Equal
	_ = require.NoError
	_ = rand.IntN
	_ = in
}
