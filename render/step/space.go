package step

import (
	"fmt"
	"math"

	"stilewright/model/length"
	"stilewright/model/solid"
)

// A vec is a point, or a displacement, in space in mm.
type vec [3]float64

func (v vec) plus(w vec, times float64) vec {
	return vec{v[0] + float64(times*w[0]), v[1] + float64(times*w[1]), v[2] + float64(times*w[2])}
}

func (v vec) minus(w vec) vec { return v.plus(w, -1) }

func (v vec) times(f float64) vec { return vec{f * v[0], f * v[1], f * v[2]} }

func (v vec) dot(w vec) float64 {
	return float64(v[0]*w[0]) + float64(v[1]*w[1]) + float64(v[2]*w[2])
}

func (v vec) cross(w vec) vec {
	return vec{
		float64(v[1]*w[2]) - float64(v[2]*w[1]),
		float64(v[2]*w[0]) - float64(v[0]*w[2]),
		float64(v[0]*w[1]) - float64(v[1]*w[0]),
	}
}

func (v vec) size() float64 { return math.Sqrt(v.dot(v)) }

// unit is v's direction; the zero vec has none.
func (v vec) unit() vec {
	size := v.size()
	if size == 0 {
		return vec{}
	}
	return vec{v[0] / size, v[1] / size, v[2] / size}
}

// aside is a direction across the direction v.
func (v vec) aside() vec {
	least := 0
	for i := range v {
		if math.Abs(v[i]) < math.Abs(v[least]) {
			least = i
		}
	}
	var w vec
	w[least] = 1
	return w.plus(v, -w.dot(v)).unit()
}

// square is the axis v runs along, either way, and whether there is one.
func (v vec) square() (solid.Axis, bool) {
	for a := range v {
		if math.Abs(v[a]) == 1 {
			return solid.Axis(a), true
		}
	}
	return 0, false
}

// String is the point in words, to a tenth of a micrometre.
func (v vec) String() string { return fmt.Sprintf("(%.4f, %.4f, %.4f) mm", v[0], v[1], v[2]) }

// in is the solid's point in mm.
func in(v solid.Vec) vec { return vec{v.X.MM(), v.Y.MM(), v.Z.MM()} }

// whole is v to the nearest nanometre.
func (v vec) whole() solid.Vec {
	return solid.Vec{X: length.Round(v[0]), Y: length.Round(v[1]), Z: length.Round(v[2])}
}

// along is the direction of the axis.
func along(a solid.Axis, sign float64) vec {
	var v vec
	v[a] = sign
	return v
}
