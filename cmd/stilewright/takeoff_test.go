package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// models writes models into a folder, named a.yaml, b.yaml …
func models(t *testing.T, texts ...string) (dir string, names []string) {
	t.Helper()
	dir = t.TempDir()
	for i, text := range texts {
		names = append(names, string(rune('a'+i))+".yaml")
		require.NoError(t, os.WriteFile(filepath.Join(dir, names[i]), []byte(text), 0o600))
	}
	return dir, names
}

func TestTakeoffPools(t *testing.T) {
	dir, names := models(t, sound, strings.Replace(sound, "Coats behind the stair", "Boots", 1))
	got := started(t, dir, append([]string{"takeoff", "-o", "bought"}, names...)...)
	require.Equal(t, 0, got.code, got.faults)
	require.Contains(t, got.out, "proven least")
	require.Contains(t, got.out, "to carry: ")
	require.Contains(t, got.out, "bought: ")
	files := holds(t, filepath.Join(dir, "bought"))
	for _, name := range []string{"cut-list.csv", "shopping.csv", "lists.xlsx", "prices.csv", "takeoff.pdf", "labels.pdf", "manifest.json"} {
		require.Contains(t, files, name)
	}
	list, err := os.ReadFile(filepath.Join(dir, "bought", "cut-list.csv"))
	require.NoError(t, err)
	require.Contains(t, string(list), "\nA,SL,")
	require.Contains(t, string(list), "\nB,SL,")
}

func TestDrawHoldsTheLists(t *testing.T) {
	got, dir := drawn(t, sound)
	require.Equal(t, 0, got.code, got.faults)
	require.Contains(t, holds(t, filepath.Join(dir, "packet", "lists")), "shopping.csv")
}

// TestPricesLead: the price file of a takeoff, filled in, is taken, and its
// faults are findings with line and column.
func TestPricesLead(t *testing.T) {
	dir, names := models(t, sound)
	require.Equal(t, 0, started(t, dir, "takeoff", names[0], "-o", "first").code)
	text, err := os.ReadFile(filepath.Join(dir, "first", "prices.csv"))
	require.NoError(t, err)
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")
	for i := range lines {
		if i > 0 {
			lines[i] += "7.25"
		}
	}
	lines[0] += " GBP"
	prices := filepath.Join(dir, "mine.csv")
	require.NoError(t, os.WriteFile(prices, []byte(strings.Join(lines, "\n")), 0o600))
	got := started(t, dir, "takeoff", names[0], "-o", "second", "--prices", "mine.csv")
	require.Equal(t, 0, got.code, got.faults)
	require.Contains(t, got.out, "no layout costs less than")
	require.Regexp(t, `cost: \d+\.\d\d GBP`, got.out)

	require.NoError(t, os.WriteFile(prices, []byte("item,unit,pack,price\npaint,L,1,-2\n"), 0o600))
	for _, verb := range []string{"takeoff", "draw"} {
		got = started(t, dir, verb, names[0], "-o", "third", "--prices", "mine.csv")
		require.Equal(t, exitFindings, got.code)
		require.Contains(t, got.faults, "mine.csv:2:11: bad-price: “-2” is no price")
		require.NoDirExists(t, filepath.Join(dir, "third"))
	}
	got = started(t, dir, "takeoff", names[0], "--prices", "none.csv")
	require.Equal(t, exitFailed, got.code)
}

// TestStockTooShort: a stock no part can come from is a finding of check, draw
// and takeoff alike, and nothing is written.
func TestStockTooShort(t *testing.T) {
	dir, names := models(t, spoilt(t, "stock: {species: ponderosa pine}", "stock: {species: ponderosa pine, lengths: [4']}"))
	for _, verb := range []string{"check", "draw", "takeoff"} {
		got := started(t, dir, verb, names[0])
		require.Equal(t, exitFindings, got.code, verb)
		require.Regexp(t, `a\.yaml:\d+:\d+: (stops: )?part-longer-than-board: part SL is .* long`, got.faults, verb)
		require.Equal(t, []string{"a.yaml"}, holds(t, dir), verb)
	}
}
