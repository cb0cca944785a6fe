package bending_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/bending"
	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
)

const mm = length.Millimetre

// A square steel-like plate under a central load, Poisson 0.3: deflection
// 0.0116·P·a²/D, D = E·t³ ÷ 12(1 − ν²) (Timoshenko and Woinowsky-Krieger, Theory
// of Plates and Shells, table 23, from memory); an endless strip 0.01695.
func TestPublishedPlates(t *testing.T) {
	steel := catalog.SheetMaterial{E: 200_000, Poisson: .3}
	d := 200_000. * 1000 / (12 * (1 - .09))
	for _, c := range []struct{ long, alpha float64 }{{500, .01160}, {1000, .01651}, {1e6, .01695}} {
		linear, _, _, err := bending.Bend(steel, 10*mm, 500*mm, length.Round(c.long), 1000)
		require.NoError(t, err)
		require.InEpsilon(t, c.alpha*1000*500*500/d, linear.MM(), .005, "%g", c.long)
	}
}

// Small pushes bend as the small theory says, large ones less; twice the force
// never bends less; the way round makes no difference.
func TestLaws(t *testing.T) {
	poly, err := catalog.Sheet("polycarbonate")
	require.NoError(t, err)
	linear, dished, _, err := bending.Bend(poly, 3*mm, 500*mm, 700*mm, 1)
	require.NoError(t, err)
	require.InEpsilon(t, linear.MM(), dished.MM(), .02)
	var before length.Length
	for force := 1.0; force < 2000; force *= 2 {
		linear, dished, in, err := bending.Bend(poly, 3*mm, 500*mm, 700*mm, force)
		require.NoError(t, err)
		require.Less(t, dished, linear)
		require.Greater(t, dished, before)
		require.InDelta(t, 8*dished.MM()*dished.MM()/(3*500), in.MM(), 1e-5)
		_, turned, _, err := bending.Bend(poly, 3*mm, 700*mm, 500*mm, force)
		require.NoError(t, err)
		require.Equal(t, dished, turned)
		before = dished
	}
}

// The largest panel of a leaf is the one told of, against the washers' lap.
func TestOfASet(t *testing.T) {
	m, findings := spec.Read("towels.yaml", []byte(`job: Bathroom towels
units: millimetre
opening: {width: 1500, height: 2000}
hanging: {style: bypass, tracks: [back, front]}
leaf: {thickness: 35, stile: 100, rail: 100, lites: {heights: [500, rest]}, joint: pocket-screw}
panel: {material: acrylic, thickness: 3, edge_gap: 1.5}
`))
	require.Empty(t, findings)
	set, _ := door.Resolve(m)
	require.NotEmpty(t, set.Hung)
	pushes, err := bending.Of(set)
	require.NoError(t, err)
	require.Len(t, pushes, 1)
	require.Equal(t, 1, pushes[0].Lite)
	require.Equal(t, "washers' lap", pushes[0].By)
	require.Equal(t, set.Leaf.Washer.LeastLap, pushes[0].Holds)
	require.Positive(t, pushes[0].DrawsIn)
}
