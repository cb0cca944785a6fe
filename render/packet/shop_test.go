package packet

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
	"stilewright/render/shop"
)

// shopOf plans a sample.
func shopOf(t *testing.T) (door.Set, shop.Job) {
	t.Helper()
	m, findings, err := spec.ReadFile("../../samples/attic-linen.yaml")
	require.NoError(t, err)
	require.Empty(t, findings)
	set, _ := door.Resolve(m)
	taken, findings := takeoff.Of([]takeoff.Job{{Model: m, Set: set}}, takeoff.Prices{})
	require.Empty(t, findings)
	job, findings := shop.Plan(set, m, taken)
	require.Empty(t, findings)
	return set, job
}

// What the manifest lists, what the folder holds and what the parts list names
// are the same files.
func TestShopFilesAreTheirList(t *testing.T) {
	set, job := shopOf(t)
	files, err := Shop(set, job)
	require.NoError(t, err)
	again, err := Shop(set, job)
	require.NoError(t, err)
	require.Equal(t, files, again)

	dir := filepath.Join(t.TempDir(), "packet")
	require.NoError(t, Write(dir, files, Options{}))
	differences, err := Verify(dir)
	require.NoError(t, err)
	require.Empty(t, differences)
	m, err := readManifest(dir)
	require.NoError(t, err)
	var listed, held, named []string
	for _, e := range m.Files {
		if strings.HasSuffix(e.Name, ".dxf") {
			listed = append(listed, strings.TrimPrefix(e.Name, shopFolder))
		}
	}
	entries, err := os.ReadDir(filepath.Join(dir, "cnc"))
	require.NoError(t, err)
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), ".dxf") {
			held = append(held, e.Name())
		}
	}
	list, err := os.ReadFile(filepath.Join(dir, "cnc", "parts.csv"))
	require.NoError(t, err)
	rows, err := csv.NewReader(bytes.NewReader(list)).ReadAll()
	require.NoError(t, err)
	for _, row := range rows[1:] {
		named = append(named, row[0])
	}
	require.Equal(t, listed, held)
	require.ElementsMatch(t, listed, named)
	require.FileExists(t, filepath.Join(dir, "cnc", "cover.pdf"))
	require.FileExists(t, filepath.Join(dir, "cnc", "cover-1.svg"))
}

// A cutting that is broken does not leave.
func TestShopGate(t *testing.T) {
	set, job := shopOf(t)
	job.Works[0].Cutting.Paths[0].Path = plane.Path{plane.Line(plane.At(0, 0), plane.At(1, 0)), plane.Line(plane.At(5, 0), plane.At(9, 0))}
	_, err := Shop(set, job)
	require.ErrorContains(t, err, job.Works[0].Name)
	none, err := Shop(set, shop.Job{})
	require.NoError(t, err)
	require.Empty(t, none)
}
