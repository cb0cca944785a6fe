package packet

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/spec"
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
