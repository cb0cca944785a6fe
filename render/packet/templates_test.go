package packet

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/render/tile"
)

// Each template is there as SVG and as DXF, and all of them in one file; names
// are fit for a packet.
func TestTemplateFiles(t *testing.T) {
	set, _ := shopOf(t)
	files, err := Templates(set, TemplatesFolder, OfficePaper(set), tile.Options{})
	require.NoError(t, err)
	dir := filepath.Join(t.TempDir(), "packet")
	require.NoError(t, Write(dir, files, Options{}))
	kinds := map[string][]string{}
	for _, f := range files {
		require.True(t, strings.HasPrefix(f.Name, TemplatesFolder))
		stem, kind, _ := strings.Cut(f.Name, ".")
		kinds[kind] = append(kinds[kind], stem)
	}
	require.Equal(t, kinds["svg"], kinds["dxf"])
	require.Contains(t, kinds["svg"], "templates/stick-SL")
	require.Equal(t, []string{"templates/templates"}, kinds["pdf"])
}

func TestOfficePaper(t *testing.T) {
	require.Equal(t, "A4", OfficePaper(door.Set{Units: length.Millimetres}).Name)
	require.Equal(t, "letter", OfficePaper(door.Set{Units: length.Inches}).Name)
}
