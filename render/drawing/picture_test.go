package drawing_test

import (
	"bytes"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/render/drawing"
	"stilewright/render/svg"
)

const mm = length.Millimetre

// sample is a sample's set.
func sample(t *testing.T, path string) door.Set {
	t.Helper()
	m, findings, err := spec.ReadFile(path)
	require.NoError(t, err)
	s, more := door.Resolve(m)
	for _, f := range append(findings, more...) {
		require.NotEqual(t, spec.Stops, f.Severity, "%s: %v", path, f)
	}
	return s
}

// Every sample has the pictures that its building order refers to, each of them
// a sheet that can be written.
func TestPictures(t *testing.T) {
	paths, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		s := sample(t, path)
		names := map[string]bool{}
		for _, pic := range drawing.Pictures(s, plane.At(80*mm, 95*mm), plane.At(130*mm, 125*mm)) {
			names[pic.Name] = true
			var out bytes.Buffer
			require.NoError(t, svg.Write(&out, pic), "%s: %s", path, pic.Name)
		}
		for _, want := range []string{"set", "leaf", "stick", "square"} {
			require.True(t, names[want], "%s has no picture %s", path, want)
		}
		t.Log(filepath.Base(path), names)
	}
}
