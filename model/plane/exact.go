package plane

import (
	"math"
	"math/bits"

	"stilewright/model/length"
)

// A wide is a 128-bit two's complement integer. Coordinates reach 1.2e10 nm
// (12 m), so their products need more than 64 bits.
type wide struct{ hi, lo uint64 }

func product(a, b length.Length) wide {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	hi -= uint64(a>>63)&uint64(b) + uint64(b>>63)&uint64(a)
	return wide{hi, lo}
}

func (a wide) plus(b wide) wide {
	lo, carry := bits.Add64(a.lo, b.lo, 0)
	hi, _ := bits.Add64(a.hi, b.hi, carry)
	return wide{hi, lo}
}

func (a wide) minus(b wide) wide {
	lo, borrow := bits.Sub64(a.lo, b.lo, 0)
	hi, _ := bits.Sub64(a.hi, b.hi, borrow)
	return wide{hi, lo}
}

func (a wide) sign() int {
	switch {
	case int64(a.hi) < 0:
		return -1
	case a.hi|a.lo == 0:
		return 0
	default:
		return 1
	}
}

// float is the nearest float64, give or take one unit in its last place.
func (a wide) float() float64 {
	if int64(a.hi) < 0 {
		return -(wide{}).minus(a).float()
	}
	if a.hi == 0 {
		return float64(a.lo)
	}
	return float64(float64(a.hi)*(1<<64)) + float64(a.lo)
}

// to is the displacement from p to q.
func (p Point) to(q Point) Point { return Point{q.X - p.X, q.Y - p.Y} }

// cross is the exact cross product of two displacements: more than 0 when b
// points to the left of a.
func cross(a, b Point) wide { return product(a.X, b.Y).minus(product(a.Y, b.X)) }

// dot is the exact scalar product of two displacements.
func dot(a, b Point) wide { return product(a.X, b.X).plus(product(a.Y, b.Y)) }

// side tells where p lies seen from a towards b: 1 left, -1 right, 0 on the
// line. It is exact.
func side(a, b, p Point) int { return cross(a.to(b), a.to(p)).sign() }

// norm is the length of a displacement in nanometres.
func norm(d Point) float64 { return hypot(float64(d.X), float64(d.Y)) }

// hypot is written out because math.Hypot may fuse differently per machine;
// at our sizes the squares cannot overflow.
func hypot(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }

// round returns from nanometres in floating point to a length.
func round(nm float64) length.Length { return length.Round(nm / float64(length.Millimetre)) }

// offset is the point at the displacement (dx, dy), in nanometres, from p.
func (p Point) offset(dx, dy float64) Point { return Point{p.X + round(dx), p.Y + round(dy)} }
