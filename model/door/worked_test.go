package door_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/check"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// worked adds edges, pulls, a guide's groove and hangers to a random model.
func (c *chance) worked(thick float64) {
	var edges []string
	for _, edge := range []string{"outside", "sight"} {
		if !c.odds(10) {
			continue
		}
		face := []string{"front", "back", "both"}[c.IntN(3)]
		if edge == "sight" && c.odds(80) {
			face = "front"
		}
		size := c.between(1, max(2, (thick-5)/2-3))
		item := fmt.Sprintf("{edge: %s,face: %s,shape: %s,size: %s", edge, face, []string{"roundover", "chamfer"}[c.IntN(2)], size)
		if edge == "sight" && c.odds(30) {
			item += ",stop: " + c.between(8, 30)
		}
		edges = append(edges, item+"}")
	}
	if edges != nil {
		c.set("leaf.edges", "["+strings.Join(edges, ", ")+"]")
	}
	if c.odds(25) {
		c.pull(thick)
	}
	if c.odds(20) {
		c.set("leaf.guide.width", c.between(3, 7))
		c.set("leaf.guide.depth", c.between(4, 11))
	}
	c.size(10, "hanging.hangers.inset", 20, 260)
	c.size(20, "hanging.hangers.apart", 0, 40)
	c.size(20, "hanging.hangers.screw.length", 15, 45)
	c.word(20, "hanging.hangers.screw.gauge", "8", "12")
}

func (c *chance) pull(thick float64) {
	round := c.odds(50)
	c.set("leaf.pull.shape", map[bool]string{true: "round", false: "rectangular"}[round])
	c.word(60, "leaf.pull.in", "stiles", "left-stile", "right-stile", "cross-rail")
	c.word(50, "leaf.pull.face", "front", "back", "both")
	c.set("leaf.pull.width", c.between(16, 40))
	c.set("leaf.pull.depth", c.between(4, thick/2-4))
	c.set("leaf.pull.rim", c.between(0.5, 1.5))
	if !round {
		c.set("leaf.pull.height", c.between(20, 120))
		c.size(30, "leaf.pull.radius", 0.5, 8)
	}
	if !slices.Contains(c.out, "leaf.pull.in=cross-rail") {
		c.size(20, "leaf.pull.inset", 25, 50)
		c.size(20, "leaf.pull.up", 300, 900)
	}
}

// seatCuts are the rabbets and grooves of a part.
func seatCuts(part door.Part) []solid.Cut {
	return slices.DeleteFunc(slices.Clone(part.Solid.Cuts), func(c solid.Cut) bool { return c.For != "rabbet" && c.For != "groove" })
}

// unworked is the part before its edges are worked, pulls are let in and the
// groove is cut.
func unworked(part door.Part) door.Part {
	part.Solid.Cuts = slices.DeleteFunc(slices.Clone(part.Solid.Cuts), func(c solid.Cut) bool {
		return slices.Contains([]string{"roundover", "chamfer", "pull", "guide"}, c.For)
	})
	return part
}

// workedAcross tells whether an outside edge or the guide's groove crosses
// joints in which one member reaches into another: what it takes there of one
// it does not take of the other.
func workedAcross(leaf door.Leaf) bool {
	crosses := leaf.Guide != nil || slices.ContainsFunc(leaf.Edges, func(e door.Edge) bool { return !e.Sight })
	reaches := []string{door.HalfLap, door.Bridle, door.MortiseAndTenon}
	return crosses && (slices.Contains(reaches, leaf.Joint.Kind) || slices.Contains(reaches, leaf.Joint.Muntin))
}

// workedVolume is what edges, pulls and the guide's groove take of a part, in
// mm³, by formula: a roundover (1 − π/4) r² along its length, a chamfer c²/2, a
// round mortise π d²/4 times its depth, one with round corners w h − (4 − π) r²
// times its depth, and the groove its section along the part, less what an
// outside edge takes of its end before.
func workedVolume(leaf door.Leaf, part door.Part) float64 {
	low, high := part.Solid.Bounds()
	volume := 0.0
	stile := part.Label == "SL" || part.Label == "SR"
	for _, e := range leaf.Edges {
		r := e.Size.MM()
		area := r * r / 2
		if e.Round {
			area = (1 - math.Pi/4) * r * r
		}
		if !e.Sight {
			if stile {
				volume += area * leaf.Height.MM()
			}
			continue
		}
		for _, lite := range leaf.Lites {
			s := lite.Sight
			if part.Role == door.PanelRole {
				continue
			}
			upright := (low.X == s.Max.X || high.X == s.Min.X) && low.Z < s.Max.Y && high.Z > s.Min.Y
			level := (low.Z == s.Max.Y || high.Z == s.Min.Y) && low.X < s.Max.X && high.X > s.Min.X
			switch {
			case upright:
				volume += area * (s.Height() - 2*e.Stop).MM()
			case level:
				volume += area * (s.Width() - 2*e.Stop).MM()
			}
		}
	}
	for _, p := range leaf.Pulls {
		switch {
		case p.Label != part.Label:
		case p.Round:
			volume += math.Pi / 4 * p.Width.MM() * p.Width.MM() * p.Depth.MM()
		default:
			volume += (p.Width.MM()*p.Height.MM() - (4-math.Pi)*p.Radius.MM()*p.Radius.MM()) * p.Depth.MM()
		}
	}
	if g := leaf.Guide; g != nil && (stile || part.Label == leaf.Rails[0].Label) {
		long := leaf.Width - 2*leaf.Stile
		if stile {
			long = leaf.Stile
		}
		volume += long.MM()*g.Width.MM()*g.Depth.MM() - twice(leaf, part)*g.Depth.MM()
	}
	return volume
}

// twice is the area, seen from above, that both an outside edge and the guide's
// groove take of a part.
func twice(leaf door.Leaf, part door.Part) float64 {
	groove := plane.Region{plane.Rect(plane.At(0, leaf.Guide.Front), plane.At(leaf.Width, leaf.Guide.Front+leaf.Guide.Width))}
	area := 0.0
	for _, c := range part.Solid.Cuts {
		if (c.For == "roundover" || c.For == "chamfer") && c.Axis == solid.Z && c.From == 0 && (part.Label == "SL" || part.Label == "SR") {
			area += plane.Intersect(groove, c.Region).Area()
		}
	}
	return area
}

// A leaf's worked edges lie in the wood before the seat, and leave some.
func TestSightEdgesLeaveALip(t *testing.T) {
	tried := 0
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		for _, part := range leaf.Parts {
			for _, c := range part.Solid.Cuts {
				if c.For != "roundover" && c.For != "chamfer" {
					continue
				}
				tried++
				for _, seat := range seatCuts(part) {
					require.True(t, seat.Axis != solid.Y || c.Gap(seat.Prism) > 0 || c.Axis == solid.Z && (c.Region.Bounds().Min.X == 0 || c.Region.Bounds().Max.X == leaf.Width), "%s of %s meets the seat", c.For, part.Label)
				}
			}
		}
	})
	require.Greater(t, tried, 20)
}

// Pulls stand in their part's face and clear of everything taken from it, and
// what they leave of the thickness is no less than asked for.
func TestPullsStandClear(t *testing.T) {
	tried := 0
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		clear := 3.0
		if set.Units == length.Inches {
			clear = 25.4 / 8
		}
		for _, part := range set.Leaf.Parts {
			for i, c := range part.Solid.Cuts {
				if c.For != "pull" {
					continue
				}
				tried++
				for k, o := range part.Solid.Cuts {
					if k != i {
						require.GreaterOrEqual(t, c.Gap(o.Prism), clear-1e-6, "%s: pull and %s", part.Label, o.For)
					}
				}
				for _, b := range part.Solid.Bores {
					require.GreaterOrEqual(t, b.Off(c.Prism), clear-2e-2, "%s: pull and %s", part.Label, b.For)
				}
				for _, s := range set.Leaf.Screws {
					b := solid.Bore{From: s.Head, To: s.Tip, Diameter: s.Diameter}
					require.GreaterOrEqual(t, b.Off(c.Prism), clear-2e-2, "%s: pull and %s screw", part.Label, s.For)
				}
			}
		}
	})
	require.Greater(t, tried, 20)
}

// Two screws a hanger, or one, bored down from the leaf's top as deep as they
// go, in wood all the way, and the two hangers mirror one another.
func TestHangersAreScrewedIntoWood(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf, n := set.Leaf, 4
		if leaf.Hanger.Apart == 0 {
			n = 2
		}
		require.Equal(t, leaf.Width, set.Track.HangerAt[0]+set.Track.HangerAt[1])
		var screws []door.Screw
		for _, s := range leaf.Screws {
			if s.For == "hanger" {
				screws = append(screws, s)
			}
		}
		require.Len(t, screws, n)
		for _, s := range screws {
			require.Equal(t, leaf.Height, s.Head.Z)
			require.Equal(t, leaf.Hanger.Length, s.Head.Z-s.Tip.Z)
			wood := 0.0
			for _, part := range leaf.Parts {
				for _, run := range part.Solid.Pierce(s.Head, s.Tip) {
					wood += run.Out.Along - run.In.Along
				}
			}
			require.InDelta(t, leaf.Hanger.Length.MM(), wood, 1e-6)
			require.True(t, slices.ContainsFunc(screws, func(o door.Screw) bool { return (o.Head.X - (leaf.Width - s.Head.X)).Abs() <= 1 }))
		}
	})
}

// The model with its pulls in the other stile gives the mirrored leaf.
func TestPullsMirror(t *testing.T) {
	other := map[string]string{"left-stile": "right-stile", "right-stile": "left-stile"}
	tried := 0
	eachSet(t, func(t *testing.T, model spec.Spec, set door.Set) {
		if model.Leaf.Pull == nil || other[model.Leaf.Pull.In] == "" {
			return
		}
		tried++
		pull := *model.Leaf.Pull
		pull.In = other[pull.In]
		model.Leaf.Pull = &pull
		image, _ := door.Resolve(model)
		require.Len(t, image.Leaf.Pulls, len(set.Leaf.Pulls))
		for i, p := range set.Leaf.Pulls {
			q := image.Leaf.Pulls[i]
			require.Equal(t, set.Leaf.Width, p.Centre.X+q.Centre.X)
			require.Equal(t, map[string]string{"SL": "SR", "SR": "SL"}[p.Label], q.Label)
			p.Centre.X, q.Centre.X, p.Label, q.Label = 0, 0, "", ""
			require.Equal(t, p, q)
		}
		require.InEpsilon(t, set.Leaf.Parts[0].Volume, image.Leaf.Parts[1].Volume, 1e-6)
		require.InEpsilon(t, set.Leaf.Parts[1].Volume, image.Leaf.Parts[0].Volume, 1e-6)
	})
	require.Greater(t, tried, *models/75)
}

// Nothing of a set meets what it may not, closed or slid.
func TestNothingMeets(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		for _, f := range check.All(set) {
			require.Equal(t, spec.Warning, f.Severity, f.Sentence)
		}
	})
}
