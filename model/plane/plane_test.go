package plane

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"stilewright/model/length"
)

const mm = length.Millimetre

func TestAreas(t *testing.T) {
	box := BoxOf(At(0, 0), At(800*mm, 2000*mm))
	for _, c := range []struct {
		what string
		path Path
		area float64
	}{
		{"rectangle", box.Path(), 800 * 2000},
		{"rounded", RoundedRect(box, 10*mm), 800*2000 - (4-math.Pi)*100},
		{"clipped", ClippedRect(box, 10*mm), 800*2000 - 2*100},
		{"slot", Slot(box), 800*1200 + math.Pi*400*400},
		{"circle", Circle(At(7, 9), 10*mm), math.Pi * 100},
		{"clockwise circle", Circle(At(7, 9), 10*mm).Reverse(), -math.Pi * 100},
		{"none", nil, 0},
	} {
		assert.InDelta(t, c.area, c.path.Area(), 1e-6, c.what)
	}
}
