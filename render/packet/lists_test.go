package packet

import (
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
)

// TestLists: a sample's lists are files a packet can hold, in their folder, and
// the same bytes twice.
func TestLists(t *testing.T) {
	write := func(folder string) []File {
		model, findings, err := spec.ReadFile("../../samples/five-rail.yaml")
		require.NoError(t, err)
		require.Empty(t, findings)
		set, _ := door.Resolve(model)
		taken, findings := takeoff.Of([]takeoff.Job{{Model: model, Set: set}}, takeoff.Prices{})
		require.Empty(t, findings)
		files, err := Lists(taken, folder)
		require.NoError(t, err)
		return files
	}
	files := write(ListsFolder)
	require.NoError(t, checkNames(files))
	require.Equal(t, files, write(ListsFolder))
	names := map[string]bool{}
	for _, f := range files {
		names[f.Name] = true
		require.NotEmpty(t, f.Data, f.Name)
	}
	for _, name := range []string{"takeoff.pdf", "labels.pdf", "lists.xlsx", "cut-list.csv", "shopping.csv", "board-cuts.csv", "sheet-cuts.csv", "layouts.csv", "assumed.csv", "prices.csv", "03-boards.svg", "03-boards.dxf"} {
		require.Contains(t, names, "lists/"+name)
	}
	require.Len(t, write(""), len(files))
}
