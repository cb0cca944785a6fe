package door_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
)

// Places of pulls, groove and hangers worked out by hand; common practice, no
// source.
func TestWorkedByHand(t *testing.T) {
	for _, c := range []struct{ model, figures string }{
		// A leaf 30 3/4 by 77 3/4: 36 in up is clear of the joints.
		{"leaf.pull.shape=round; leaf.pull.width=2 1/8; leaf.pull.depth=3/8", "pull.up=36; pull.inset=2; pull.rim=1/16; pull.face_gap=5/16"},
		// Two rows: the cross rail's middle is at 77 3/4 ÷ 2. The pull goes there.
		{"leaf.lites.rows=2; leaf.pull.shape=rectangular; leaf.pull.in=cross-rail; leaf.pull.width=4; leaf.pull.height=1 1/2; leaf.pull.depth=3/8", "pull.up=38 7/8; pull.across=15 3/8; pull.radius=1/8"},
		// Groove centred: (1 3/8 − 1/4) ÷ 2.
		{"leaf.guide.width=1/4; leaf.guide.depth=5/16", "guide.front=9/16"},
		// Stile 4, half of 1 in between the screws, and the pocket, 3/16 in in
		// radius, rising 15° from the middle of the thickness: a screw of radius
		// 0.095 in keeps 1/8 in from it at (3/16 + 0.095 + 1/8) ÷ sin 15° =
		// 1.574 in from the shoulder, less than 1 19/32. So 4 + 1/2 + 1 19/32.
		{"", "hanger.inset=6 3/32; hanger.apart=1; hanger.screw.length=1 1/4; hanger.pilot=7/64"},
		{"stock.species=red oak", "hanger.pilot=1/8"},
	} {
		set := resolved(t, least, c.model)
		for name, want := range pairs(c.figures) {
			size, err := length.Parse(want, length.Inches)
			require.NoError(t, err, want)
			require.Equal(t, size, figure(t, set, name), "%s: %s is %v", c.model, name, figure(t, set, name).Inches())
		}
	}
}

// Where the height wanted lies before a joint, the pull moves to the nearest
// that is clear.
func TestPullMovesOffTheJoint(t *testing.T) {
	const model = "leaf.lites.rows=2; leaf.pull.shape=rectangular; leaf.pull.width=2; leaf.pull.height=5; leaf.pull.depth=1/2"
	set := resolved(t, least, model)
	up := figure(t, set, "pull.up")
	require.NotEqual(t, 36*in, up)
	lowest := length.Longest // of the pocket screws at the cross rail
	for _, s := range set.Leaf.Screws {
		if s.For == "pocket" && s.Tip.Z > 30*in {
			lowest = min(lowest, s.Tip.Z-s.Diameter.Half())
		}
	}
	require.Less(t, up, 36*in)
	require.GreaterOrEqual(t, lowest-up-5*in/2, in/8)
	require.Less(t, lowest-up-5*in/2, in/8+in/32)
}

// An outside roundover of 1/4 in on the front of both stiles, and a chamfer of
// 1/4 in round the one lite, 22 3/4 by 69 3/4, stopped 1 in short: stiles lose
// (1 − π/4)/16 × 77 3/4 + 1/32 × 67 3/4 in³ each, rails 1/32 × 20 3/4.
func TestEdgeVolumesByHand(t *testing.T) {
	plain := resolved(t, least).Leaf
	leaf := resolved(t, least, "leaf.edges=[{edge: outside,face: front,shape: roundover,size: 1/4}, {edge: sight,face: front,shape: chamfer,size: 1/4}]").Leaf
	const cubicInch = 25.4 * 25.4 * 25.4
	stile, rail := (1-math.Pi/4)/16*77.75+67.75/32, 20.75/32
	for i, want := range []float64{stile, stile, rail, rail} {
		require.InDelta(t, want, (plain.Parts[i].Volume-leaf.Parts[i].Volume)/cubicInch, 1e-6, leaf.Parts[i].Label)
	}
	require.Equal(t, []door.Edge{{Round: true, Size: in / 4}, {Sight: true, Size: in / 4, Stop: in}}, leaf.Edges)
}
