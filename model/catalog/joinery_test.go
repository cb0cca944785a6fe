package catalog

import (
	"testing"

	"stilewright/model/length"
)

// Half of 3/4 is 3/8, and of 1 3/8 more than the largest, 1/2; a third of 3/4
// is 1/4, of 1 3/8 0.458, nearer to 1/2 than to 3/8; of 27 mm 9, as near to 8
// as to 10.
func TestJoinerySizes(t *testing.T) {
	for _, c := range []struct {
		thick, dowel, mortise length.Length
		unit                  length.Unit
	}{
		{3 * in / 4, 3 * in / 8, in / 4, length.Inches},
		{in + 3*in/8, in / 2, in / 2, length.Inches},
		{in / 4, in / 4, in / 4, length.Inches},
		{19 * mm, 8 * mm, 6 * mm, length.Millimetres},
		{27 * mm, 12 * mm, 10 * mm, length.Millimetres},
		{80 * mm, 12 * mm, 20 * mm, length.Millimetres},
	} {
		if got := DowelFor(c.thick, c.unit).Size; got != c.dowel {
			t.Errorf("dowel for %v: %v, want %v", c.thick, got, c.dowel)
		}
		if got := MortiseFor(c.thick, c.unit).Size; got != c.mortise {
			t.Errorf("mortise for %v: %v, want %v", c.thick, got, c.mortise)
		}
	}
}
