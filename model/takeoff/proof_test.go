package takeoff

import (
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/cutting"
	"stilewright/model/length"
)

// TestProofSaysTheGap: a layout that is not proven says how far its bound is.
func TestProofSaysTheGap(t *testing.T) {
	p := BoardPlan{Layout: cutting.BoardLayout{Measure: cutting.ByPrice, Cost: 2000, Bound: 1900}}
	require.Equal(t, "no layout costs less than 19.00: gap 5.0 %", p.Bound(Takeoff{}))
	p.Layout.Bound, p.Layout.Proven = 2000, true
	require.Equal(t, "no layout costs less than 20.00: proven least", p.Bound(Takeoff{}))
	p.Layout.FewestProven = true
	require.Equal(t, "no layout costs less than 20.00: proven least, and fewest boards", p.Bound(Takeoff{}))
	p.Layout.Measure, p.Layout.Bound = cutting.ByLength, cutting.Cost(8*length.Foot/length.Micrometre)
	require.Equal(t, "no layout buys less than 8 ft: proven least, and fewest boards", p.Bound(Takeoff{Units: length.Inches}))
}
