package door_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
)

// seatChecks are figures of seats and holders worked out by hand; arithmetic,
// and common practice without a source, unless something stands beside them. A
// least leaf is 30 3/4 by 77 3/4, its frame 1 3/8 thick and 4 wide, its panel
// 1/8 thick: one lite of 22 3/4 by 69 3/4.
var seatChecks = []struct{ base, model, figures string }{
	// Where the panel lies: 1/2 behind the front; 1/2 before the back, so that
	// 1 3/8 − 1/2 − 1/8 = 3/4 is left in front.
	{least, "panel.rabbet.front=1/2", "rabbet.front=1/2; rabbet.depth=7/8"},
	{least, "panel.rabbet.seat=back; panel.rabbet.back=1/2", "rabbet.front=3/4; rabbet.depth=5/8"},
	{least, "panel.rabbet.seat=centred; panel.rabbet.depth=3/4", "rabbet.front=5/8; rabbet.depth=3/4"},
	// A bed of 1/8 under a centred panel: 5/8 − 1/8 in front of the shoulder.
	{least, "panel.held_by.kind=sealant", "sealant.bed=1/8; rabbet.front=1/2; rabbet.depth=7/8"},
	{least, "panel.held_by.bed=1/16; panel.held_by.washer.outside=1/2", "rabbet.front=9/16; washer.depth=1"},
	// From the front: the shoulder 5/8 before the back, the bead flush.
	{beaded, "", "rabbet.back=5/8; rabbet.depth=3/4; bead.width=3/8; bead.depth=5/8; bead.pin=7/8"},
	{beaded, "panel.rabbet.front=3/8", "rabbet.back=7/8; rabbet.depth=1/2; bead.depth=3/8"},
	{beaded, "panel.rabbet.depth=5/8", "rabbet.back=3/4; bead.depth=1/2"},
	// Stops: 1 3/8 − 5/8 − 1/8 deep; pinned 1/2 into the wood.
	{stopped, "", "stop.width=3/8; stop.depth=5/8; stop.pin=7/8; stop.pin.diameter=0.0475; stop.corner.stile=1"},
	{stopped, "panel.rabbet.depth=5/8; panel.rabbet.width=1/2; panel.held_by.stop.fix=screws; panel.held_by.screw.gauge=4", "stop.width=1/2; stop.depth=1/2; stop.screw=1"},
	// Groove: the panel and 1/32 of room, midway: (44 − 5)/64; half its width
	// beyond the walls; panel 22 3/4 + 3/4 − 1/8.
	{grooved, "panel.groove.room=1/32", "groove.depth=3/8; groove.width=5/32; groove.front=39/64; groove.ends=5/64; panel.1.width=23 3/8; panel.bite=5/16; panel.least_bite=1/4; rabbet.pass.1=1/4; rabbet.pass.2=3/8"},
	{grooved, "panel.groove.depth=1/2; panel.groove.front=1/2; panel.corner=clipped", "panel.1.width=23 5/8; corner.clip=1/4"},
	// A solid panel of 1/4 on the same shoulder: 5/8 + 1/4 + 1/4.
	{half, "panel.held_by.washer.outside=1/2", "washer.depth=1; washer.solid_depth=1 1/8; solid.bite=5/16"},
	{half, "panel.held_by.kind=stop", "stop.depth=5/8; stop.solid.depth=1/2"},
	{half, "panel.seat=face-bead; panel.held_by.kind=bead", "bead.depth=5/8; bead.solid.depth=1/2"},
	{half, "panel.seat=groove; panel.held_by.kind=; panel.groove.room=1/32", "groove.width=5/32; groove.solid.width=9/32; groove.solid.front=35/64"},
	// A t-bone runs past one wall by half the tool.
	{least, "panel.corner.kind=t-bone; panel.corner.tool=3/8", "corner.past_stile_wall=3/16; corner.past_rail_wall=0"},
	{least, "panel.corner.kind=t-bone; panel.corner.tool=3/8; panel.corner.into=rail", "corner.past_stile_wall=0; corner.past_rail_wall=3/16"},
}

func TestSeatFiguresByHand(t *testing.T) {
	for _, c := range seatChecks {
		set := resolved(t, c.base, c.model)
		for name, want := range pairs(c.figures) {
			size, err := length.Parse(want, length.Inches)
			require.NoError(t, err, want)
			require.Equal(t, length.Style{Unit: length.Inches}.Format(size), length.Style{Unit: length.Inches}.Format(figure(t, set, name)), "%s: %s", c.model, name)
			require.Equal(t, size, figure(t, set, name), "%s: %s", c.model, name)
		}
	}
}

// By hand: a dogbone of a 1/4 in tool goes 1/8 × (1 − 1/√2) = .0366 in past both
// walls and opens each for 2 × 1/8 ÷ √2 = .1768 in from the corner; past the
// square corner it takes half a circle less a square on its radius: π/128 −
// 1/64 = .00892 in². The circle through the corner: portlandcnc.com, tackling
// internal corners on a CNC router; the 0.293 is arithmetic.
func TestDogboneByHand(t *testing.T) {
	set := resolved(t, least, "panel.corner.kind=dogbone; panel.corner.tool=1/4")
	require.Equal(t, ".037", thousandths(figure(t, set, "corner.past_stile_wall")))
	require.Equal(t, ".037", thousandths(figure(t, set, "corner.past_rail_wall")))
	lite := set.Leaf.Lites[0]
	wall := lite.Sight.Grow(set.Leaf.Rabbet.Width)
	arcs := 0
	for _, e := range lite.Rabbet[0] {
		if e.Turn == plane.Straight {
			continue
		}
		arcs++
		for _, end := range []plane.Point{e.From, e.To} {
			far := min((end.X-wall.Min.X).Abs(), (wall.Max.X-end.X).Abs()) + min((end.Y-wall.Min.Y).Abs(), (wall.Max.Y-end.Y).Abs())
			require.Equal(t, ".177", thousandths(far))
		}
	}
	require.Equal(t, 4, arcs)
	require.InDelta(t, 4*.00892, (lite.Rabbet.Area()-plane.Of(wall.Path()).Area())/(25.4*25.4), 4e-5)
	require.Equal(t, lite.Sight.Grow(5*in/16), lite.Panel.Bounds())
	require.Len(t, lite.Panel[0], 4, "a square panel")
}

// By hand: screws of 2 in through washers of 3/16 go 1 13/16 into a rail of 4:
// 4 − 2 × (3/8 + 1 13/16) = −3/8 is left, so they stand between one another. In
// a lite 22 3/4 wide, the first 3 11/16 from its corner (the pocket reaches
// 3.297, half a washer and 1/8), three stand 7 11/16 apart, and two between.
func TestStaggerByHand(t *testing.T) {
	leaf := resolved(t, least, "panel.held_by.screw.length=2; leaf.lites.rows=2; panel.held_by.washer.thickness=3/16; panel.held_by.washer.outside=1/2").Leaf
	require.True(t, leaf.Washer.Stagger)
	require.Equal(t, []length.Length{4*in + 59*in/16, 4*in + 182*in/16, 4*in + 305*in/16}, leaf.Lite(0, 0).Washers[door.Top])
	require.Equal(t, []length.Length{4*in + 241*in/32, 4*in + 487*in/32}, leaf.Lite(1, 0).Washers[door.Bottom])
	require.False(t, resolved(t, least, "leaf.lites.rows=2").Leaf.Washer.Stagger)
}

// By hand: the left stop is 70 1/2 from long point to long point, 3/8 wide and
// 5/8 deep: (70.5 − .375) × .375 × .625 = 16.436 in³. A bed 1/8 thick round a
// square panel: (23.375 × 70.375 − 22.75 × 69.75) ÷ 8 = 7.275 in³.
func TestStripAndBedByHand(t *testing.T) {
	const cubicInch = 25.4 * 25.4 * 25.4
	stop := resolved(t, stopped).Leaf.Hardware[0]
	require.Equal(t, []any{"T1.1", "stop", door.StopRole}, []any{stop.Label, stop.Name, stop.Role})
	low, high := stop.Solid.Bounds()
	require.Equal(t, 70*in+in/2, high.Z-low.Z)
	require.InDelta(t, 16.436, stop.Volume/cubicInch, 5e-4)
	bed := resolved(t, least, "panel.held_by.kind=sealant; panel.corner=squared").Leaf.Hardware[0]
	require.Equal(t, "Q1", bed.Label)
	require.InDelta(t, 7.275, bed.Volume/cubicInch, 5e-4)
}

// By hand: a stopped groove 5/32 wide and 3/8 deep in a stile runs from wall to
// wall, 69 3/4 + 3/4, and 5/64 beyond both; in rails it runs from end to end. It
// takes of the stile 3/8 × (5/32 × 70 21/32 − (1 − π/4) × (5/32)²) = 4.138 in³.
func TestStoppedGrooveByHand(t *testing.T) {
	leaf := resolved(t, grooved, "panel.groove.room=1/32").Leaf
	stile, rail := cutsFor(leaf.Parts[0], "groove"), cutsFor(leaf.Parts[2], "groove")
	require.Len(t, stile, 1)
	require.Len(t, rail, 1)
	require.Equal(t, 70*in+21*in/32, stile[0].Region.Bounds().Height())
	require.InDelta(t, 4.138, stile[0].Region.Area()*(stile[0].To-stile[0].From).MM()/(25.4*25.4*25.4), 5e-4)
	require.Equal(t, plane.BoxOf(plane.At(4*in, 39*in/64), plane.At(26*in+3*in/4, 49*in/64)), rail[0].Region.Bounds())
	require.Empty(t, leaf.HeldBy)
	through := resolved(t, grooved, "leaf.joint.kind=mortise-and-tenon; leaf.thickness=1 3/8").Leaf
	require.True(t, through.Rabbet.Through)
}
