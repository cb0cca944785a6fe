package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestExplain(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "model.yaml"), []byte(sound), 0o600))
	all := started(t, dir, "explain", "model.yaml")
	require.Equal(t, 0, all.code, all.faults)
	require.Contains(t, all.out, "\nleaf\n")
	one := started(t, dir, "explain", "model.yaml", "opening.clear")
	require.Equal(t, 0, one.code, one.faults)
	require.Contains(t, one.out, "    opening.width.bottom = 60\", as stated\n")
	machine := started(t, dir, "explain", "model.yaml", "leaf.width", "--json")
	require.Equal(t, 0, machine.code, machine.faults)
	require.True(t, json.Valid([]byte(machine.out)))
	wrong := started(t, dir, "explain", "model.yaml", "leaf.widht")
	require.Equal(t, 1, wrong.code)
	require.Contains(t, wrong.faults, "did you mean leaf.width")
	require.Empty(t, wrong.out)
	require.Equal(t, []string{"model.yaml"}, holds(t, dir))
}

func TestExplainNeedsASoundModel(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "model.yaml"), []byte(spoilt(t, "stile: 3 1/2", "stile: 15 1/2")), 0o600))
	got := started(t, dir, "explain", "model.yaml", "leaf.width")
	require.Equal(t, 2, got.code)
	require.Contains(t, got.faults, "leaf-too-narrow")
	require.Empty(t, got.out)
}
