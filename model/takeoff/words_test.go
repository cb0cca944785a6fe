package takeoff

import (
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
)

// TestWords: sizes are written as one asks for them, in the unit that holds them.
func TestWords(t *testing.T) {
	inch, metric := words{length.Inches}, words{length.Millimetres}
	for _, c := range []struct{ want, got string }{
		{"8 ft", inch.long(96 * in)}, {"97 1/2 in", inch.long(97*in + in/2)}, {"2.5 m", inch.long(2500 * mm)},
		{"2.5 m", metric.long(2500 * mm)}, {"2455 mm", metric.long(2455 * mm)}, {"8 ft", metric.long(96 * in)},
		{"3/8 in", inch.said(3 * in / 8)}, {"28 mm", inch.said(28 * mm)}, {"9/64 in", metric.said(9 * in / 64)},
		{"1 3/8 x 4", inch.section(in+3*in/8, 4*in)}, {"28 x 80 mm", inch.section(28*mm, 80*mm)}, {"28 x 80", metric.section(28*mm, 80*mm)},
		{"≈ 1 x ≈ 1 3/16", inch.section(in+1, 30*mm+1)},
	} {
		require.Equal(t, c.want, c.got)
	}
}
