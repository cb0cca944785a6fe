package packet

import (
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/solid"
	"stilewright/model/spec"
	"stilewright/render/step"
)

// Every part of every leaf, every washer, the track, the hangers and the fascia
// of each sample stand in set.step once.
func TestSolidsHoldEveryPiece(t *testing.T) {
	samples, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, samples)
	for _, path := range samples {
		model, findings, err := spec.ReadFile(path)
		require.NoError(t, err)
		require.Empty(t, findings)
		set, _ := door.Resolve(model)
		file, err := Solids(set)
		require.NoError(t, err, path)
		want := len(set.Hung)*(len(set.Leaf.Parts)+len(set.Leaf.Hardware)+len(set.Track.HangerAt)*len(set.Track.Hanger)) + 1
		if set.Fascia != nil {
			want++
		}
		require.Equal(t, want, strings.Count(string(file.Data), "NEXT_ASSEMBLY_USAGE_OCCURRENCE("), path)
	}
}

// With every joint and holder, each piece of hardware of each leaf stands in
// its place as what it is: the product with its shape, moved there.
func TestHardwareStandsInItsPlace(t *testing.T) {
	text, err := os.ReadFile("../../samples/attic-linen.yaml")
	require.NoError(t, err)
	const joint, holder = "joint: {kind: pocket-screw}", "held_by: {kind: edge-washer"
	for _, c := range []struct{ joint, holder, corner, role string }{
		{joint, holder, "corner: clipped", "edge washer"},
		{"joint: dowel", holder, "corner: clipped", "dowel"},
		{"joint: loose-tenon", holder, "corner: clipped", "loose tenon"},
		{joint, "held_by: stop # {", "corner: squared", "stop"},
		{joint, "held_by: sealant # {", "corner: clipped", "sealant"},
	} {
		require.Contains(t, string(text), joint)
		require.Contains(t, string(text), holder)
		changed := strings.Replace(strings.Replace(string(text), "corner: clipped", c.corner, 1), joint, c.joint, 1)
		changed = strings.Replace(changed, holder, c.holder, 1)
		model, findings := spec.Read("attic.yaml", []byte(changed))
		require.Empty(t, findings)
		set, findings := door.Resolve(model)
		require.NotEmpty(t, set.Leaf.Hardware, "%v", findings)
		leaves := []solid.Vec{{X: 7}, {Z: -11}}
		products := hardware(set.Leaf.Hardware, leaves)
		places := 0
		for _, p := range products {
			places += len(p.At)
		}
		require.Equal(t, len(leaves)*len(set.Leaf.Hardware), places)
		found := 0
		for _, piece := range set.Leaf.Hardware {
			if piece.Role.String() == c.role {
				found++
			}
			for _, leaf := range leaves {
				there := piece.Solid.Move(leaf)
				require.True(t, slices.ContainsFunc(products, func(p step.Part) bool {
					return p.Colour == colour(piece.Role) && slices.ContainsFunc(p.At, func(at solid.Vec) bool { return reflect.DeepEqual(p.Solid.Move(at), there) })
				}), "%s %s", piece.Role, piece.Label)
			}
		}
		require.Positive(t, found, c.role)
		_, err := Solids(set)
		require.NoError(t, err)
	}
}
