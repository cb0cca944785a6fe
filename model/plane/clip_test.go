package plane

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
)

// Cutting edge by edge gives, to the last digit, what cutting in an
// arrangement gives, where it does not give up.
func TestPlainCuttingAgainstArranged(t *testing.T) {
	c := newChance()
	plain, tries := 0, 0
	var used Clipper // over and over again
	for i := range 600 {
		a, b := c.region(i%3), c.region(i%3)
		if i%2 == 0 { // off the grid, so that edges seldom touch
			b = b.Translate(length.Length(c.Int64N(2e6)), length.Length(c.Int64N(2e6)))
		}
		for _, path := range a {
			tries++
			area := AreaOf(b)
			fast, slow := Clipper{area: &area}, Clipper{area: &area}
			slow.arranged(path)
			if fast.plainly(path) {
				plain++
				require.Equal(t, slow.all, fast.all, "seed %d, try %d: %s by\n%s", *seed, i, dump(Region{path}), dump(b))
			}
			in1, out1, on1 := used.Clip(path, &area)
			in2, out2, on2 := Clip(path, b)
			require.Equal(t, [][]Path{in2, out2, on2}, [][]Path{in1, out1, on1}, "seed %d, try %d: a used clipper", *seed, i)
		}
	}
	assert.Greater(t, 5*plain, tries, "seed %d: hardly any path is cut plainly", *seed)
	assert.Less(t, plain, tries, "seed %d: every path is cut plainly", *seed)
}

// The four directions along the axes, against the rule for any direction.
func TestReachesAgainstPasses(t *testing.T) {
	c := newChance()
	at := func() Point { return At(length.Length(c.IntN(9)-4)*1e6, length.Length(c.IntN(9)-4)*1e6) }
	for range 5000 {
		e := Edge{From: at(), To: at(), Centre: at(), Turn: Left}
		if c.IntN(2) == 0 {
			e.Turn = Right
		}
		right, left, up, down := e.reaches()
		want := [4]bool{e.passes(At(1, 0)), e.passes(At(-1, 0)), e.passes(At(0, 1)), e.passes(At(0, -1))}
		require.Equal(t, want, [4]bool{right, left, up, down}, "seed %d: %+v", *seed, e)
	}
}
