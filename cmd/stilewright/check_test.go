package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/check"
)

// Check prints notes too, each finding with its severity and in the order of the
// file; draw leaves notes out.
func TestCheckPrintsEverything(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "model.yaml"), []byte(spoilt(t, "polycarbonate", "float glass")), 0o600))
	got := started(t, dir, "check", "model.yaml")
	require.Equal(t, 0, got.code, got.faults)
	require.Contains(t, got.faults, ": note: safety-glazing: ")
	require.Contains(t, got.faults, ": warning: glass-breaks: ")
	last := 0
	for line := range strings.Lines(got.faults) {
		require.Regexp(t, `^model\.yaml:\d+:\d+: (stops|warning|note): [a-z-]+: .`, line)
		at := 0
		for _, digit := range strings.Split(line, ":")[1] {
			at = 10*at + int(digit-'0')
		}
		require.GreaterOrEqual(t, at, last, line)
		last = at
	}
	drew := started(t, dir, "draw", "model.yaml", "-o", "packet", "--only", "record")
	require.NotContains(t, drew.faults, "safety-glazing")
	require.Contains(t, drew.faults, "glass-breaks")
}

func TestCheckTables(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "model.yaml"), []byte(sound), 0o600))
	got := started(t, dir, "check", "model.yaml", "--tables")
	require.Equal(t, 0, got.code, got.faults)
	for _, part := range []string{"leaf top to head", "Through the year", "floor gap", "most of it from"} {
		require.Contains(t, got.out, part)
	}
	machine := started(t, dir, "check", "model.yaml", "--json")
	require.Equal(t, 0, machine.code, machine.faults)
	require.Empty(t, machine.faults)
	var file struct {
		Findings []struct {
			Rule, Severity, Source string
			Line                   int
		}
		Clearances, Seasons, Tolerances []map[string]any
	}
	require.NoError(t, json.Unmarshal([]byte(machine.out), &file))
	require.NotEmpty(t, file.Findings)
	for _, f := range file.Findings {
		require.Positive(t, f.Line)
		require.Contains(t, []string{"warning", "note"}, f.Severity)
	}
	require.NotEmpty(t, file.Clearances)
	require.NotEmpty(t, file.Seasons)
	require.NotEmpty(t, file.Tolerances)
	require.Equal(t, machine.out, started(t, dir, "check", "model.yaml", "--json").out)
}

// As JSON, too, what stops is told, and the exit code says so.
func TestCheckJSONStops(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "model.yaml"), []byte(spoilt(t, "stile: 3 1/2", "stile: 15 1/2")), 0o600))
	got := started(t, dir, "check", "model.yaml", "--json")
	require.Equal(t, 2, got.code)
	require.Contains(t, got.out, `"severity": "stops"`)
	require.NotContains(t, got.out, `"clearances"`)
}

func TestCheckRules(t *testing.T) {
	dir := t.TempDir()
	got := started(t, dir, "check", "--rules")
	require.Equal(t, 0, got.code, got.faults)
	for _, rule := range check.Rules() {
		require.Contains(t, got.out, rule.ID+" ("+rule.Severity.String()+"): ")
	}
	require.Equal(t, 1, started(t, dir, "check").code)
	require.Equal(t, 1, started(t, dir, "check", "--rules", "model.yaml").code)
}

// Every rule a set is held to has its word in README.md.
func TestReadmeTellsRules(t *testing.T) {
	text := readme(t)
	for _, rule := range check.Rules() {
		require.Contains(t, text, "`"+rule.ID+"`")
	}
}
