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
		require.Equal(t, leaf.Thickness, leaf.Rabbet.Front+leaf.Rabbet.Depth)
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

// A panel lies in its rabbet: within the walls and the cutter's corner, the
// edge gap away from every wall, and no daylight beside it.
func TestPanelLiesInItsRabbet(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		gap := leaf.Panel.EdgeGap
		for _, lite := range leaf.Lites {
			require.Less(t, plane.Subtract(lite.Panel, lite.Rabbet).Area(), noArea, "panel outside its rabbet")
			require.Equal(t, lite.Rabbet.Bounds(), lite.Panel.Bounds().Grow(gap))
			require.Equal(t, lite.Sight.Grow(leaf.Rabbet.Width), lite.Rabbet.Bounds())
			require.Less(t, plane.Subtract(plane.Of(lite.Sight.Path()), lite.Panel).Area(), noArea, "daylight beside the panel")
			require.NoError(t, plane.Simple(lite.Panel))
			require.NoError(t, plane.Simple(lite.Rabbet))
		}
	})
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

// A washer lies flat on a straight stretch of the rabbet wall, within the
// frame's back, touches the panel's back and laps it even when the panel is
// pushed away; and every edge that has room has some.
func TestWashersHoldThePanel(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf, w := set.Leaf, set.Leaf.Washer
		back := leaf.Rabbet.Front + leaf.Panel.Thickness
		washers := 0
		for _, part := range leaf.Hardware {
			if part.Role != door.WasherRole {
				continue
			}
			washers++
			low, high := part.Solid.Bounds()
			require.Equal(t, back-w.Press, low.Y, part.Label)
			require.LessOrEqual(t, high.Y, leaf.Thickness, part.Label)
			seen := plane.BoxOf(plane.At(low.X, low.Z), plane.At(high.X, high.Z))
			held := 0
			for _, lite := range leaf.Lites {
				if plane.Intersect(plane.Of(seen.Path()), lite.Rabbet).Empty() {
					continue
				}
				held++
				require.Less(t, plane.Subtract(plane.Of(seen.Path()), lite.Rabbet).Area(), noArea, "%s in the wood", part.Label)
				for _, way := range []plane.Point{plane.At(leaf.Panel.EdgeGap, 0), plane.At(-leaf.Panel.EdgeGap, 0), plane.At(0, leaf.Panel.EdgeGap), plane.At(0, -leaf.Panel.EdgeGap)} {
					pushed := lite.Panel.Translate(way.X, way.Y)
					require.Greater(t, plane.Intersect(plane.Of(seen.Path()), pushed).Area(), noArea, "%s does not hold its panel", part.Label)
				}
			}
			require.Equal(t, 1, held, part.Label)
		}
		require.Positive(t, washers)
		up, across := figure(t, set, "washer.corner.stile"), figure(t, set, "washer.corner.rail")
		muntin := across
		if f, has := set.Figure("washer.corner.muntin"); has {
			muntin = f.Value
		}
		for _, lite := range leaf.Lites {
			first := [4]length.Length{across, across, up, up}
			if lite.Column > 0 {
				first[door.Left] = muntin
			}
			if lite.Column < leaf.Columns-1 {
				first[door.Right] = muntin
			}
			for side, edge := range []length.Length{lite.Sight.Width(), lite.Sight.Width(), lite.Sight.Height(), lite.Sight.Height()} {
				if edge >= 2*first[side] {
					require.NotEmpty(t, lite.Washers[side], "%v side", door.Side(side))
				}
			}
		}
	})
}

// Volumes by formula: a member as butted, less what the seats take of its face;
// what its joints add beyond its shoulders and take from what it ends at; less
// the holes.
func TestVolumesByFormula(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		seats := seatAreas(leaf)
		var mass float64
		for _, part := range leaf.Parts {
			want := 0.0
			switch {
			case part.Role != door.PanelRole:
				want = butted(leaf, part, seats[part.Label].area) + joined(leaf, part) - holes(leaf, part)
				cuts := slices.DeleteFunc(slices.Clone(part.Solid.Cuts), func(c solid.Cut) bool { return c.For != "rabbet" })
				require.Len(t, cuts, seats[part.Label].lites, part.Label)
			case leaf.Corner.Leg > 0:
				want = block(part) - 2*leaf.Corner.Leg.MM()*leaf.Corner.Leg.MM()*leaf.Panel.Thickness.MM()
			default:
				want = block(part) - (4-math.Pi)*leaf.Corner.Radius.MM()*leaf.Corner.Radius.MM()*leaf.Panel.Thickness.MM()
			}
			require.InEpsilon(t, want, part.Volume, 1e-6, part.Label)
			require.Greater(t, part.Mass, 0.0, part.Label)
			mass += part.Mass
		}
		for _, part := range leaf.Hardware {
			mass += part.Mass
		}
		require.InEpsilon(t, mass, leaf.Mass, 1e-9)
	})
}

// A seatArea is what the seats of so many lites take of a member, seen from the
// front, in mm².
type seatArea struct {
	lites int
	area  float64
}

// seatAreas are the areas of the seats in every member. Where two members meet,
// the corner of a lite's seat lies in the one that runs through: a stile past
// rails, a rail past muntins.
func seatAreas(leaf door.Leaf) map[string]seatArea {
	wide, r := leaf.Rabbet.Width.MM(), leaf.Rabbet.Corner.MM()
	through := roundCorner(r, min(r, wide))
	ending := roundCorner(r, r) - through
	areas := map[string]seatArea{}
	take := func(label string, area float64) {
		areas[label] = seatArea{areas[label].lites + 1, areas[label].area + area}
	}
	for _, lite := range leaf.Lites {
		high, across := lite.Sight.Height().MM(), lite.Sight.Width().MM()
		rail := wide * across
		for _, end := range []struct {
			stile string
			outer bool
			m     int // among the muntins of the row
		}{{"SL", lite.Column == 0, lite.Column - 1}, {"SR", lite.Column == leaf.Columns-1, lite.Column}} {
			if end.outer {
				take(end.stile, wide*(high+2*wide)-2*through)
				rail -= ending
			} else {
				take(leaf.Muntins[lite.Row*(leaf.Columns-1)+end.m].Label, wide*high-2*ending)
				rail += wide*wide - through
			}
		}
		take(leaf.Rails[lite.Row].Label, rail)
		take(leaf.Rails[lite.Row+1].Label, rail)
	}
	return areas
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
		case "washer screw":
			deep = (leaf.Washer.Length - leaf.Washer.Thickness).MM()
		}
		volume += math.Pi * b.Diameter.MM() * b.Diameter.MM() / 4 * deep
	}
	return volume
}
