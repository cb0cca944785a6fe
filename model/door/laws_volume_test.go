package door_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/spec"
)

// Volumes by formula: a member as butted, less what the seats take of its face;
// what its joints add beyond its shoulders and take from what it ends at; less
// the holes.
func TestVolumesByFormula(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		seats := seatAreas(leaf)
		var mass, off float64
		for _, part := range leaf.Parts {
			want := 0.0
			switch {
			case part.Role != door.PanelRole:
				cuts, area := cutsFor(part, "rabbet"), seats[part.Label].area
				bare := leaf
				if leaf.Rabbet.Kind == door.Groove {
					part, bare.Rabbet, area = ungrooved(t, part), door.Rabbet{}, 0
				} else {
					require.Len(t, cuts, seats[part.Label].lites, part.Label)
				}
				want = butted(bare, part, area) + joined(bare, part) - holes(leaf, part) - workedVolume(leaf, part)
			case leaf.Corner.Leg > 0:
				want = block(part) - 2*leaf.Corner.Leg.MM()*leaf.Corner.Leg.MM()*thickOf(part)
			default:
				want = block(part) - (4-math.Pi)*leaf.Corner.Radius.MM()*leaf.Corner.Radius.MM()*thickOf(part)
			}
			if workedAcross(leaf) && part.Role != door.PanelRole {
				off += part.Volume - want
			} else {
				require.InEpsilon(t, want, part.Volume, 1e-6, part.Label)
			}
			require.Greater(t, part.Mass, 0.0, part.Label)
			mass += part.Mass
		}
		require.InDelta(t, 0, off, 1e-6*leaf.Height.MM()*leaf.Width.MM()*leaf.Thickness.MM())
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
	// What a corner keeps back of a square one, in the member that runs through
	// and in the one that ends there; of a relieved corner it is below 0.
	kept := func(muntin bool) (through, ending float64) {
		if leaf.Corner.Tool > 0 {
			all, part := relief(leaf.Corner, wide, muntin)
			return -part, part - all
		}
		through = roundCorner(r, min(r, wide))
		return through, roundCorner(r, r) - through
	}
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
			through, ending := kept(!end.outer)
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
