package takeoff

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
)

// framed is a model with muntins, its joint and what holds the panels to be
// filled in.
func framed(joint, held string) string {
	return `job: Frame
units: inch
opening: {width: 72, height: 80}
hanging: {style: bypass, tracks: [back, front]}
leaf: {thickness: 1 3/8, stile: 4, rail: 4, muntin: 3, lites: {rows: 2, columns: 2}, joint: ` + joint + `}
panel: {material: acrylic, thickness: 1/8, held_by: ` + held + `}
stock: {species: white ash}
`
}

// need is how many of the items whose name begins so are needed.
func need(t Takeoff, prefix string) float64 {
	n := 0.0
	for _, i := range t.Buy {
		if strings.HasPrefix(i.Name, prefix) {
			n += i.Need
		}
	}
	return n
}

// TestJointsAreBought counts what each joint takes: two leaves, each with three
// rails and two muntins, so 2·(3 + 2)·2 = 20 ends of members; the counts at an
// end are the leaf's own.
func TestJointsAreBought(t *testing.T) {
	for joint, names := range map[string][]string{
		"pocket-screw":      {"pocket screw "},
		"dowel":             {"dowel "},
		"loose-tenon":       {"loose tenon "},
		"mortise-and-tenon": nil,
		"half-lap":          nil,
		"bridle":            nil,
	} {
		job := jobOf(t, "frame.yaml", framed(joint, "edge-washer"))
		out := take(t, Prices{}, job)
		leaf := job.Set.Leaf
		want := map[string]int{
			"pocket screw ": leaf.Joint.Pocket.Holes, "dowel ": leaf.Joint.Dowel.Count, "loose tenon ": leaf.Joint.Tenon.Count,
		}
		for name, each := range want {
			require.InDelta(t, 2*each, need(out, name), 0, "%s: %s", joint, name)
		}
		for _, name := range names {
			require.GreaterOrEqual(t, need(out, name), 20.0, "%s: one an end at least", joint)
		}
		muntins := 0
		for _, p := range out.Parts {
			if strings.HasPrefix(p.Name, "muntin") {
				muntins += p.Quantity
				require.Equal(t, Wooden, p.Kind)
				require.Greater(t, p.Net.Length, p.Net.Width)
			}
		}
		require.Equal(t, 4, muntins, "two a leaf: one a row")
		require.Positive(t, need(out, "wood glue"))
	}
}

// TestTenonsAreInTheLength: a rail with tenons is cut longer than one without,
// by what goes into both stiles.
func TestTenonsAreInTheLength(t *testing.T) {
	rail := func(joint string) Part {
		for _, p := range take(t, Prices{}, jobOf(t, "frame.yaml", framed(joint, "edge-washer"))).Parts {
			if p.Labels[0] == "R1" {
				return p
			}
		}
		t.Fatal("no bottom rail")
		return Part{}
	}
	job := jobOf(t, "frame.yaml", framed("mortise-and-tenon", "edge-washer"))
	require.Equal(t, rail("dowel").Net.Length+2*job.Set.Leaf.Joint.Tenon.Length, rail("mortise-and-tenon").Net.Length)
	require.Equal(t, rail("dowel").Net.Length+2*job.Set.Leaf.Stile, rail("half-lap").Net.Length)
}

// TestHolders: stops are cut from boards and fixed; a bed of sealant is bought by
// its volume; neither takes washers.
func TestHolders(t *testing.T) {
	job := jobOf(t, "frame.yaml", framed("dowel", "stop"))
	out := take(t, Prices{}, job)
	strips := 0
	for _, p := range out.Parts {
		if strings.Contains(p.Name, "stop") {
			strips += p.Quantity
			require.Equal(t, Wooden, p.Kind)
			require.NotEmpty(t, p.From)
		}
	}
	require.Equal(t, 2*4*4, strips, "four lites a leaf, four stops each")
	require.Positive(t, need(out, "pin "))
	require.Zero(t, need(out, "edge washer"))

	job = jobOf(t, "frame.yaml", framed("dowel", "sealant"))
	out = take(t, Prices{}, job)
	volume := 0.0
	for _, p := range job.Set.Leaf.Hardware {
		if p.Role == door.SealantRole {
			volume += p.Volume
		}
	}
	require.InEpsilon(t, 2*volume/perLitre/cartridge, need(out, "sealant"), 1e-9)
}
