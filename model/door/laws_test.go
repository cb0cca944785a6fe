package door_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// Tolerances for what passes through floating point.
const (
	noVolume = 1e-3 // mm³: a sliver a nanometre thick under a whole leaf
	noArea   = 1e-5 // mm²: a sliver two nanometres wide along a whole lite
)

// The leaves fill the opening, and the seat the thickness.
func TestSizesAddUp(t *testing.T) {
	eachSet(t, func(t *testing.T, model spec.Spec, set door.Set) {
		leaf := set.Leaf
		wide, joint := figure(t, set, "hanging.jamb_gap.left")+figure(t, set, "hanging.jamb_gap.right"), 0
		for i, h := range set.Hung {
			wide += leaf.Width
			switch {
			case i == 0:
			case h.Channel == set.Hung[i-1].Channel:
				wide += figure(t, set, "hanging.meeting_gap")
			default:
				joint++
				wide -= figure(t, set, "overlap."+string(rune('0'+joint)))
			}
			require.Equal(t, model.Hanging.Tracks[i], h.Channel.String())
		}
		require.Equal(t, set.Opening.Width, wide)
		last := set.Hung[len(set.Hung)-1]
		require.Equal(t, set.Opening.Width-figure(t, set, "hanging.jamb_gap.right"), last.At.X+leaf.Width)
		require.Equal(t, leaf.Thickness, leaf.Rabbet.Front+leaf.Rabbet.Depth+leaf.Rabbet.Back)
		require.Equal(t, set.Opening.Height, set.Track.HeadDrop+leaf.Height+last.At.Z)
	})
}

// No pass takes more than the model allows, and the last goes to full depth.
func TestPasses(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		most, at := figure(t, set, "rabbet.per_pass"), length.Length(0)
		for _, pass := range set.Leaf.Rabbet.Passes {
			require.Greater(t, pass, at)
			require.LessOrEqual(t, pass-at, most)
			at = pass
		}
		if set.Leaf.Rabbet.Kind == door.Groove {
			require.Equal(t, set.Leaf.Rabbet.Width, at)
			return
		}
		require.Equal(t, set.Leaf.Rabbet.Depth, at)
	})
}

// Two parts of a leaf never share a place, but for a washer pressed into its
// panel; nor does a leaf with the track, the fascia or a hanger.
func TestPartsDoNotClash(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		parts := append(append([]door.Part{}, leaf.Parts...), leaf.Hardware...)
		for i, a := range parts {
			for _, b := range parts[:i] {
				clash := solid.Clash(a.Solid, b.Solid)
				if a.Role == door.WasherRole && b.Role == door.PanelRole && leaf.Washer.Press > 0 {
					require.True(t, clash > noVolume || !meets(a.Solid, b.Solid), "%s does not press %s", a.Label, b.Label)
					continue
				}
				require.Less(t, clash, noVolume, "%s and %s", a.Label, b.Label)
			}
		}
		fixed := []solid.Solid{set.Track.Solid}
		if set.Fascia != nil {
			fixed = append(fixed, set.Fascia.Solid)
			require.Less(t, solid.Clash(fixed[0], fixed[1]), noVolume, "track and fascia")
		}
		for _, h := range set.Hung {
			for _, body := range hung(set, h) {
				for _, f := range fixed {
					require.Less(t, solid.Clash(body, f), noVolume, "leaf %s", h.Label)
				}
			}
		}
	})
}

// meets tells whether the bounds of two solids share a volume.
func meets(a, b solid.Solid) bool {
	p, q := a.Bounds()
	r, s := b.Bounds()
	return p.X < s.X && r.X < q.X && p.Y < s.Y && r.Y < q.Y && p.Z < s.Z && r.Z < q.Z
}

// hung are the solids of a leaf in its closed place, and of its hangers.
func hung(set door.Set, h door.Hung) []solid.Solid {
	var bodies []solid.Solid
	for _, list := range [][]door.Part{set.Leaf.Parts, set.Leaf.Hardware} {
		for _, part := range list {
			bodies = append(bodies, part.Solid.Move(h.At))
		}
	}
	for _, x := range set.Track.HangerAt {
		for _, body := range set.Track.Hanger {
			bodies = append(bodies, body.Move(h.At.Add(solid.Vec{X: x, Y: set.Leaf.Thickness.Half(), Z: set.Leaf.Height})))
		}
	}
	return bodies
}

// The least clip clears the cutter's corner, and one a hundredth of a
// millimetre smaller does not; so does the least radius. A radius that keeps
// the gap even keeps it in the corner too.
func TestLeastCornersAreLeast(t *testing.T) {
	c := newChance(0)
	for range *models {
		radius := length.Round(3 + 40*c.Float64())
		gap := length.Round(radius.MM() * 0.28 * c.Float64())
		wall := plane.BoxOf(plane.At(0, 0), plane.At(10*radius, 10*radius))
		edge := wall.Grow(-gap)
		rabbet := plane.Of(plane.RoundedRect(wall, radius))
		outside := func(p plane.Path) float64 { return plane.Subtract(plane.Of(p), rabbet).Area() }
		const step = 10 * length.Micrometre
		leg, round := door.LeastClip(radius, gap), door.LeastRadius(radius, gap)
		require.Less(t, outside(plane.ClippedRect(edge, leg)), noArea, "r %v g %v", radius, gap)
		require.Greater(t, outside(plane.ClippedRect(edge, leg-step)), 0.0, "r %v g %v: %v", radius, gap, leg)
		require.Less(t, outside(plane.RoundedRect(edge, round)), noArea, "r %v g %v", radius, gap)
		if round > step {
			require.Greater(t, outside(plane.RoundedRect(edge, round-step)), 0.0, "r %v g %v: %v", radius, gap, round)
		}
		grown := plane.RoundedRect(edge.Grow(gap-1), radius-1)
		require.Less(t, outside(grown), noArea, "the gap is even")
	}
}

// block is the volume of the box round a part.
func block(part door.Part) float64 {
	low, high := part.Solid.Bounds()
	return (high.X - low.X).MM() * (high.Y - low.Y).MM() * (high.Z - low.Z).MM()
}

// butted is the volume a member would have if it ended at its shoulders: its
// face less what the seats take of it, by their depth.
func butted(leaf door.Leaf, part door.Part, seat float64) float64 {
	low, high := part.Solid.Bounds()
	switch part.Role {
	case door.RailRole:
		low.X, high.X = leaf.Stile, leaf.Width-leaf.Stile
	case door.MuntinRole:
		i := slices.IndexFunc(leaf.Muntins, func(m door.Muntin) bool { return m.Label == part.Label })
		low.Z, high.Z = leaf.Rails[leaf.Muntins[i].Row].To, leaf.Rails[leaf.Muntins[i].Row+1].From
	}
	return (high.X-low.X).MM()*leaf.Thickness.MM()*(high.Z-low.Z).MM() - leaf.Rabbet.Depth.MM()*seat
}

// roundCorner is the area that a corner of radius r keeps back of a square
// one, in the strip within reach of one wall.
func roundCorner(r, reach float64) float64 {
	if r == 0 {
		return 0
	}
	segment := func(u float64) float64 { return (u*math.Sqrt(max(0, r*r-u*u)) + r*r*math.Asin(u/r)) / 2 }
	return r*reach - (segment(r) - segment(r-reach))
}

// holes is the volume of a part's bores: pockets from the shoulder to the
// back, pilots from the end to the shoulder, washer screws' whole grip.
func holes(leaf door.Leaf, part door.Part) float64 {
	var volume float64
	for _, b := range part.Solid.Bores {
		deep := 0.0
		switch b.For {
		case "pocket":
			deep = leaf.Thickness.MM()/2/math.Sin(math.Pi/12) - leaf.Joint.Pocket.Shoulder.MM()
		case "pilot":
			deep = leaf.Joint.Pocket.Shoulder.MM()
		case "dowel":
			deep = leaf.Joint.Dowel.Hole.MM()
		case "stop screw":
			deep = (leaf.Strip.Length - leaf.Strip.Width).MM()
		case "washer screw":
			deep = (leaf.Washer.Length - leaf.Washer.Thickness).MM()
		case "hanger screw":
			deep = leaf.Hanger.Length.MM()
		}
		volume += math.Pi * b.Diameter.MM() * b.Diameter.MM() / 4 * deep
	}
	return volume
}
