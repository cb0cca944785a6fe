package door_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// jointChecks are figures of joints worked out by hand on the least model: a
// frame 1 3/8 in thick, stiles and rails 4 in wide, rabbets 3/8 in wide, sizes
// down to the 1/32 in.
var jointChecks = []struct{ model, figures string }{
	// Dowels: the largest of 1/4, 5/16, 3/8 and 1/2 up to half of 1 3/8; five
	// diameters; a hole of half of that and 1/16 (superglobalcalculator.com,
	// dowel joint size). Middles: 3/4 from the free edge; 3/8 rabbet + 1/8 +
	// half a dowel from the other: 4 − 3/8 − 1/8 − 1/4.
	{"leaf.joint.kind=dowel", "dowel.diameter=1/2; dowel.length=2 1/2; dowel.hole=1 5/16; dowel.front=11/16; dowel.R1.1=3/4; dowel.R1.2=3 1/4; dowel.R2.1=3/4; dowel.R2.2=3 1/4"},
	// The same page's example: 3/8 dowels, 1 1/2 long, in 3/4 stock. Its hole is
	// "half the dowel plus 1/16", which is 13/16; the 11/16 it prints is a slip.
	{"leaf.thickness=3/4; hanging.track.spacing=1; panel.held_by.washer.outside=5/16; leaf.joint.kind=dowel; leaf.joint.dowel.length=1 1/2", "dowel.diameter=3/8; dowel.hole=13/16"},
	// A bottom rail 7 1/2 wide: from 3/4 to 7 1/2 − 3/4 is 6, 3 apart.
	{"leaf.joint.kind=dowel; leaf.rail=; leaf.rail.top=4; leaf.rail.bottom=7 1/2", "dowel.R1.1=3/4; dowel.R1.2=3 3/4; dowel.R1.3=6 3/4"},
	// A stile 1 1/2 wide takes holes of 1 1/4 at most: 2 × (1 1/4 − 1/16).
	{"leaf.joint.kind=dowel; leaf.stile=1 1/2", "dowel.length=2 3/8; dowel.hole=1 1/4"},
	// Tenons: the chisel nearest to a third of 1 3/8, 0.458, is 1/2
	// (geoffswoodwork.co.uk); two thirds of the stile, 2.667, down to 2 21/32,
	// and 1/16 of room (woodworkstuff.net); the edge shoulder a third of 4.
	{"leaf.joint.kind=mortise-and-tenon", "tenon.thickness=1/2; tenon.front=7/16; tenon.length=2 21/32; tenon.mortise=2 23/32; tenon.edge=1 5/16; tenon.R1.width=2 3/16; tenon.R2.width=2 3/16"},
	// A matching 3/4 x 2 frame: tenon 1/4 (woodmagazine.com: 1/4 wide, mortise 1
	// to 1 3/8 deep, tenon 1/16 short of it).
	{"leaf.thickness=3/4; hanging.track.spacing=1; panel.held_by.washer.outside=5/16; leaf.stile=2; leaf.rail=2; leaf.joint.kind=mortise-and-tenon",
		"tenon.thickness=1/4; tenon.front=1/4; tenon.length=1 5/16; tenon.mortise=1 3/8"},
	{"leaf.joint.kind=mortise-and-tenon; leaf.lites.rows=2; leaf.joint.tenon.edge=3/4", "tenon.R1.width=2 3/4; tenon.R2.width=3; tenon.R3.width=2 3/4"},
	{"leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.through=yes; leaf.joint.tenon.haunch=yes", "tenon.length=4; tenon.haunch=1/2"},
	{"leaf.joint.kind=mortise-and-tenon; leaf.joint.tenon.haunch=yes; leaf.joint.tenon.length=3/4", "tenon.haunch=3/8"},
	// Loose tenons: three times 1/2 in each part; as wide as the rail allows.
	{"leaf.joint.kind=loose-tenon", "tenon.length=1 1/2; tenon.mortise=1 9/16; tenon.R1.width=2 3/16"},
	{"leaf.joint.kind=loose-tenon; leaf.joint.tenon.width=1 3/4", "tenon.width=1 3/4; tenon.R1.width=1 3/4"},
	// Muntins 2 wide: three times the tenon; where two meet in a rail of 3, 1/4 is
	// left between: (3 − 1/4)/2 less 1/16; 2 less two rabbets and 1/8 beside each.
	{"leaf.joint.kind=mortise-and-tenon; leaf.lites.columns=2; leaf.muntin=2", "tenon.muntin.length=1 1/2; tenon.muntin.mortise=1 9/16; tenon.muntin.width=1; tenon.length=2 21/32"},
	{"leaf.joint.kind=mortise-and-tenon; leaf.rail=; leaf.rail.top=4; leaf.rail.cross=3; leaf.rail.bottom=4; leaf.lites.rows=2; leaf.lites.columns=2; leaf.muntin=2",
		"tenon.muntin.length=1 5/16; tenon.muntin.mortise=1 3/8"},
	{"leaf.joint.kind=loose-tenon; leaf.joint.tenon.length=1 1/4; leaf.lites.columns=2; leaf.muntin=2", "tenon.length=1 1/4; tenon.muntin.length=1 1/4"},
	// One dowel in a muntin 2 wide: from 3/4 to 1 1/4 two would stand too near.
	{"leaf.joint.kind=dowel; leaf.lites.columns=2; leaf.muntin=2", "dowel.muntin.1=1"},
	{"leaf.joint.kind=dowel; leaf.rail=; leaf.rail.top=4; leaf.rail.cross=2 1/2; leaf.rail.bottom=4; leaf.lites.rows=2; leaf.lites.columns=2; leaf.muntin=2",
		"dowel.length=2 1/8; dowel.hole=1 1/8; dowel.R2.1=3/4; dowel.R2.2=1 3/4"},
	// Pockets in a muntin 2 wide: 3/8 rabbet + 1/8 + half a pocket from both edges.
	{"leaf.lites.columns=2; leaf.muntin=2", "pocket.muntin.1=11/16; pocket.muntin.2=1 5/16"},
	{"leaf.joint.kind=half-lap", "lap.front=11/16"},
	{"leaf.joint.kind=bridle", "tenon.front=7/16; bridle.back=15/16"},
	// Pockets of 1 3/8 stock with 2 1/2 screws: (0.6875 + 0.1875 × cos 15°) ÷
	// sin 15° − 1 1/4 = 0.868611 ÷ 0.258819 − 1 1/4.
	{"leaf.joint.plugs=yes", "pocket.plug=2.106055551"},
}

func TestJointFiguresByHand(t *testing.T) {
	for _, c := range jointChecks {
		set := resolved(t, least, c.model)
		for name, want := range pairs(c.figures) {
			size, err := length.Parse(want, length.Inches)
			require.NoError(t, err, want)
			if name == "pocket.plug" {
				require.InDelta(t, size.Inches(), figure(t, set, name).Inches(), 1e-6)
				continue
			}
			require.Equal(t, size.Inches(), figure(t, set, name).Inches(), "%s: %s", c.model, name)
		}
	}
}

// A rail's volume in cubic inches, by hand. The lite is 30 3/4 − 8 = 22 3/4
// wide; the rabbet in the rail 3/8 wide, 3/4 deep, squared corners.
func TestRailVolumesByHand(t *testing.T) {
	body := 22.75*4*1.375 - 22.75*.375*.75
	for joint, want := range map[string]float64{
		"pocket-screw": body,
		// two tenons 1/2 x 2 3/16 x 2 21/32
		"mortise-and-tenon": body + 2*.5*2.1875*2.65625,
		// haunches 1/2 x 1 5/16, 1/2 long
		"mortise-and-tenon; leaf.joint.tenon.haunch=yes": body + 2*.5*(2.1875*2.65625+1.3125*.5),
		// two mortises with round ends, 1 9/16 deep
		"loose-tenon": body - 2*1.5625*(.5*(2.1875-.5)+math.Pi*.25*.25),
		// two laps 4 x 4, 11/16 thick, less the rabbet's 3/8 x 3/8 corner, behind 5/8
		"half-lap": body + 2*(4*4*.6875-.375*.375*.6875),
		// two tenons 4 x 4, from 7/16 to 15/16; the rabbet takes from 5/8 on
		"bridle": body + 2*(4*4*.5-.375*.375*.3125),
		// four holes 1/2 in, 1 5/16 deep
		"dowel": body - 4*math.Pi*.25*.25*1.3125,
	} {
		leaf := resolved(t, least, "panel.corner=squared; leaf.joint.kind="+joint).Leaf
		got := partOf(t, leaf, "R1").Solid
		if joint == "pocket-screw" {
			got.Bores = nil
		}
		got.Bores = slicesOf(got.Bores, "washer screw")
		require.InEpsilon(t, want, got.Volume()/(25.4*25.4*25.4), 1e-6, joint)
	}
}

// A grooved frame with haunched tenons by hand, in cubic inches. The groove, 3/8
// deep, is 1/8 + 1/64 wide and runs the stile's 77 3/4 through; the tenons, 1/2
// thick with their middle in the groove's, are 4 − 3/8 − 1 5/16 wide and begin
// at its floor; the haunches fill it to the stile's ends.
func TestGroovedTenonsByHand(t *testing.T) {
	set := resolved(t, grooved, "leaf.joint.kind=mortise-and-tenon")
	for name, want := range map[string]length.Length{"tenon.front": 7 * in / 16, "tenon.R1.width": 2*in + 5*in/16, "tenon.haunch": 3 * in / 8, "tenon.length": 2*in + 21*in/32} {
		require.Equal(t, want, figure(t, set, name), name)
	}
	const groove, tenon, haunch = .375 * .140625, .5 * 2.3125, .5 * 1.3125
	rail := 22.75*4*1.375 - 22.75*groove + 2*(tenon*2.65625+haunch*.375)
	stile := 4*77.75*1.375 - 77.75*groove - 2*(tenon*2.71875-2.3125*groove+haunch*.375-1.3125*groove)
	for label, want := range map[string]float64{"R1": rail, "R2": rail, "SL": stile, "SR": stile} {
		require.InEpsilon(t, want, unhung(partOf(t, set.Leaf, label)).Volume/(25.4*25.4*25.4), 1e-9, label)
	}
	wide := resolved(t, grooved, "panel.thickness=5/8; leaf.joint.kind=mortise-and-tenon")
	require.Equal(t, figure(t, wide, "groove.width"), figure(t, wide, "tenon.thickness"))
}

// Counts by hand: five rails, each end two dowels or one loose tenon.
func TestJointCounts(t *testing.T) {
	for joint, want := range map[string]struct {
		role  door.Role
		count int
	}{"dowel": {door.DowelRole, 20}, "loose-tenon": {door.TenonRole, 10}, "pocket-screw; leaf.joint.plugs=yes": {door.PlugRole, 0}} {
		leaf := resolved(t, least, "leaf.lites.rows=4; leaf.joint.kind="+joint).Leaf
		count, labels := 0, map[string]bool{}
		for _, part := range leaf.Hardware {
			if part.Role == want.role {
				count++
			}
			require.False(t, labels[part.Label], part.Label)
			labels[part.Label] = true
		}
		require.Equal(t, want.count, count, joint)
		switch want.role {
		case door.DowelRole:
			require.Equal(t, want.count, leaf.Joint.Dowel.Count)
		case door.TenonRole:
			require.Equal(t, want.count, leaf.Joint.Tenon.Count)
		default:
			require.True(t, leaf.Joint.Pocket.Plugs)
		}
	}
}

// Every proportion the joints name is in the catalogue, and the wood of dowels.
func TestJointPracticesAreKnown(t *testing.T) {
	for _, name := range []string{"tenon-thickness", "tenon-length", "tenon-width", "haunch-width", "haunch-length", "mortise-room", "dowel-thickness", "dowel-length", "dowel-room"} {
		_, err := catalog.Rule(name)
		require.NoError(t, err)
	}
	_, err := catalog.Species("american beech")
	require.NoError(t, err)
}

// Who keeps which layer of the thickness where a rail and a stile cross, from
// the front, by hand for a frame 1 3/8 in thick: half-lapped, the stile the
// front half everywhere; bridled, a tenon from 7/16 to 15/16 in a slot at the
// corner, a fork over a web at a cross rail.
func TestLayersOfLaps(t *testing.T) {
	type layer struct{ from, to length.Length }
	whole, mid := in+3*in/8, 11*in/16
	front, back := 7*in/16, 15*in/16
	for _, c := range []struct {
		joint, rail string
		ofRail      []layer
		ofStile     []layer
	}{
		{"half-lap", "R1", []layer{{mid, whole}}, []layer{{0, mid}}},
		{"half-lap", "R2", []layer{{mid, whole}}, []layer{{0, mid}}},
		{"bridle", "R1", []layer{{front, back}}, []layer{{0, front}, {back, whole}}},
		{"bridle", "R2", []layer{{0, front}, {back, whole}}, []layer{{front, back}}},
		{"bridle", "R3", []layer{{front, back}}, []layer{{0, front}, {back, whole}}},
		{"mortise-and-tenon; leaf.joint.tenon.through=yes", "R2", []layer{{front, back}}, []layer{{0, front}, {back, whole}}},
	} {
		leaf := resolved(t, least, "leaf.lites.rows=2; leaf.joint.kind="+c.joint).Leaf
		i := slices.IndexFunc(leaf.Rails, func(r door.Rail) bool { return r.Label == c.rail })
		at := plane.At(leaf.Stile.Half(), leaf.Rails[i].Centre())
		for label, want := range map[string][]layer{c.rail: c.ofRail, "SL": c.ofStile} {
			var got []layer
			for _, run := range partOf(t, leaf, label).Solid.Section(solid.X, at.X).Along(at.Y) {
				got = append(got, layer{run[0], run[1]})
			}
			require.Equal(t, want, got, "%s: %s at %s", c.joint, label, c.rail)
		}
	}
}
