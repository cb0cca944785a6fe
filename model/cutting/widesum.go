package cutting

import (
	"math/bits"

	"stilewright/model/length"
)

// A wideSum adds areas in nm² exactly, in 128 bits. The zero wideSum is 0.
type wideSum struct{ hi, lo uint64 }

// add adds w·h; neither is negative.
func (s *wideSum) add(w, h length.Length) {
	hi, lo := bits.Mul64(uint64(w), uint64(h))
	var carry uint64
	s.lo, carry = bits.Add64(s.lo, lo, 0)
	s.hi, _ = bits.Add64(s.hi, hi, carry)
}

// over is the sum divided by a width, rounded up.
func (s wideSum) over(width length.Length) length.Length {
	hi, lo := s.hi%uint64(width), s.lo
	q, r := bits.Div64(hi, lo, uint64(width))
	if r > 0 {
		q++
	}
	return length.Length(q)
}
