package door_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// A leaf on the front track, its washers, screws and hangers too, stays in
// front of one on the back track, so that they pass wherever they are slid to.
func TestLeavesPassOneAnother(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		require.Positive(t, set.Track.FaceGap)
		require.Equal(t, set.Track.FaceGap, atY(set, door.Back)-atY(set, door.Front)-leaf.Thickness)
		before, behind := length.Length(0), length.Length(0)
		for _, list := range [][]door.Part{leaf.Parts, leaf.Hardware} {
			for _, part := range list {
				low, high := part.Solid.Bounds()
				out := length.Length(0)
				if part.Role == door.StopRole || part.Role == door.BeadRole {
					out = max(leaf.Strip.Proud, leaf.StripOf(door.Lite{Solid: true}).Proud)
				}
				require.True(t, low.Y >= -out && high.Y <= leaf.Thickness+out, "%s stands out", part.Label)
				before, behind = max(before, -low.Y), max(behind, high.Y-leaf.Thickness)
			}
		}
		require.Less(t, before+behind, set.Track.FaceGap, "passing leaves catch")
		for _, s := range leaf.Screws {
			for _, end := range []solid.Vec{s.Head, s.Tip} {
				require.True(t, end.Y-s.Diameter.Half() >= 0 && end.Y+s.Diameter.Half() <= leaf.Thickness, "%s screw at %v stands out", s.For, end)
			}
		}
		for _, body := range set.Track.Hanger {
			low, high := body.Bounds()
			require.True(t, -low.Y < set.Track.Spacing.Half() && high.Y < set.Track.Spacing.Half(), "hangers pass one another")
		}
	})
}

// atY is where the fronts of the leaves on a track hang.
func atY(set door.Set, c door.Channel) length.Length {
	return set.Track.Centre[c] - set.Leaf.Thickness.Half()
}

// The same by the solids themselves, closed and slid to any place, for some.
func TestSlidLeavesDoNotClash(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		c := newChance(len(set.Figures))
		if !c.odds(10) {
			return
		}
		for try := range 3 {
			var bodies [2][]solid.Solid
			for _, h := range set.Hung {
				require.Equal(t, atY(set, h.Channel), h.At.Y)
				if try > 0 { // closed first
					h.At.X = length.Length(c.Int64N(int64(max(1, set.Opening.Width-set.Leaf.Width))))
				}
				bodies[h.Channel] = append(bodies[h.Channel], hung(set, h)...)
			}
			for _, a := range bodies[door.Front] {
				for _, b := range bodies[door.Back] {
					require.Less(t, solid.Clash(a, b), noVolume)
				}
			}
		}
	})
}

// In the closed place leaves on one track leave the meeting gap between them,
// and nothing stands outside the opening.
func TestClosedLeavesFillTheOpening(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		for i, h := range set.Hung {
			require.GreaterOrEqual(t, h.At.X, length.Length(0))
			require.LessOrEqual(t, h.At.X+set.Leaf.Width, set.Opening.Width)
			for _, x := range []length.Length{h.At.X, h.At.X + set.Leaf.Width.Half(), h.At.X + set.Leaf.Width} {
				require.GreaterOrEqual(t, h.At.Z-set.Opening.FloorAt(x), figure(t, set, "hanging.floor_gap"))
			}
			if i > 0 && h.Channel == set.Hung[i-1].Channel {
				require.Equal(t, figure(t, set, "hanging.meeting_gap"), h.At.X-set.Hung[i-1].At.X-set.Leaf.Width)
			}
		}
	})
}

// widened is by how much the figures across a wider leaf grow: no lite gets
// narrower, and all of them together take what the leaf gets wider.
func widened(t *testing.T, set, other door.Set, share length.Length) map[string]*length.Length {
	by := map[string]*length.Length{}
	var sum length.Length
	columns := set.Leaf.Columns
	for i, lite := range set.Leaf.Lites[:columns] {
		if before := sum; i > 0 {
			by[fmt.Sprintf("muntin.%d.from", i)] = &before
		}
		more := other.Leaf.Lites[i].Sight.Width() - lite.Sight.Width()
		require.GreaterOrEqual(t, more, length.Length(0))
		sum += more
		by["lite.width"], by[fmt.Sprintf("lite.column.%d.width", i+1)] = &more, &more
		for row := range set.Leaf.Rows() {
			by[fmt.Sprintf("panel.%d.width", row*columns+i+1)] = &more
		}
	}
	require.Equal(t, share, sum)
	return by
}

// An opening wider by d makes every leaf wider by its share of d and changes
// no height, no seat and no joint.
func TestWiderOpeningOnlyWidens(t *testing.T) {
	tried := 0
	eachSet(t, func(t *testing.T, model spec.Spec, set door.Set) {
		if model.Panel.EdgeGap == nil || model.Panel.Solid != nil && model.Panel.Solid.EdgeGap == nil || len(set.Leaf.Lites[0].Washers[door.Bottom]) == 0 {
			return // the gap follows from the panel's size
		}
		tried++
		n := length.Length(len(set.Hung))
		share := 8 * in // whole ticks
		if set.Units == length.Millimetres {
			share = 200 * mm
		}
		wide := model.Opening.Width
		for _, w := range []**length.Length{&wide.Bottom, &wide.Middle, &wide.Top} {
			if *w != nil {
				wider := **w + n*share
				*w = &wider
			}
		}
		model.Opening.Width = wide
		other, findings := door.Resolve(model)
		for _, f := range findings {
			if f.Rule == door.RulePullPlace || f.Rule == door.RuleHangerPlace {
				return // a washer stands in its way in the wider leaf
			}
			require.NotEqual(t, spec.Stops, f.Severity, "%v", f)
		}
		require.Equal(t, len(set.Figures), len(other.Figures))
		wider := widened(t, set, other, share)
		for i, f := range set.Figures {
			g := other.Figures[i]
			require.Equal(t, f.Name, g.Name)
			switch by := g.Value - f.Value; {
			case strings.HasPrefix(f.Given, "opening.width"), f.Name == "opening.width", f.Name == "track.length":
				require.Equal(t, n*share, by, f.Name)
			case f.Name == "leaf.width", f.Name == "rail.length", f.Name == "muntin.centres":
				require.Equal(t, share, by, f.Name)
			case wider[f.Name] != nil:
				require.Equal(t, *wider[f.Name], by, f.Name)
			case f.Name == "pull.across":
				require.Equal(t, share.Half(), by, f.Name)
			case f.Name == "opening.clear", f.Name == "hanger.inset", strings.HasPrefix(f.Name, "leaf.") && strings.HasSuffix(f.Name, ".left"):
			default:
				require.Zero(t, by, f.Name)
			}
		}
		for i, h := range other.Hung {
			require.Equal(t, length.Length(i)*share, h.At.X-set.Hung[i].At.X, fmt.Sprint("leaf ", i+1))
		}
	})
	require.Greater(t, tried, *models/16)
}
