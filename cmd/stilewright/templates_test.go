package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// templated writes the sound model's templates with more flags.
func templated(t *testing.T, model string, flags ...string) (outcome, string) {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "model.yaml"), []byte(model), 0o600))
	return started(t, dir, append([]string{"templates", "model.yaml", "-o", "out"}, flags...)...), dir
}

func TestTemplatesWritesAFolder(t *testing.T) {
	for _, flags := range [][]string{nil, {"--paper", "A3"}, {"--paper", "tabloid", "--margin", "1/2"}, {"--roll", "36"}, {"--roll", "610 mm"}, {"--measured-x", "99.6", "--measured-y", "100.2 mm"}} {
		got, dir := templated(t, sound, flags...)
		require.Equal(t, 0, got.code, "%v: %s", flags, got.faults)
		files := holds(t, filepath.Join(dir, "out"))
		for _, want := range []string{"templates.pdf", "stick-SL.svg", "stick-SL.dxf", "corner.dxf", "panel-corner.svg", "joint-R1.dxf", "hanger.dxf", "manifest.json"} {
			require.Contains(t, files, want)
		}
	}
}

// What the test print measures stands in the pages as its inverse, and the
// paper stays what it is.
func TestTemplatesAreCorrected(t *testing.T) {
	number := regexp.MustCompile(`(?m)^(\S+) \S+ \S+ (\S+) 0 0 cm$|/MediaBox \[0 0 (\S+) (\S+)\]`)
	pages := func(flags ...string) (sizes []float64) { // of the first page: what a millimetre is, or the paper
		got, dir := templated(t, sound, flags...)
		require.Equal(t, 0, got.code, got.faults)
		data, err := os.ReadFile(filepath.Join(dir, "out", "templates.pdf"))
		require.NoError(t, err)
		seen := map[bool]bool{}
		for _, m := range number.FindAllStringSubmatch(string(data), -1) {
			if paper := m[3] != ""; !seen[paper] {
				seen[paper] = true
				for _, word := range m[1:] {
					if word != "" {
						v, err := strconv.ParseFloat(word, 64)
						require.NoError(t, err)
						sizes = append(sizes, v)
					}
				}
			}
		}
		slices.Sort(sizes)
		return sizes
	}
	const point = 72 / 25.4 // of a millimetre
	within := func(got []float64, want ...float64) {
		t.Helper()
		slices.Sort(want)
		require.InDeltaSlice(t, want, got, 1e-3)
	}
	within(pages(), point, point, 612, 792) // 8.5 in × 11 in
	within(pages("--measured-x", "99", "--measured-y", "101"), point*100/99, point*100/101, 612, 792)
	within(pages("--factor-x", "1.01", "--measured-x", "101"), point, point, 612, 792)
}

// What cannot be printed ends with 1 and one sentence, and nothing is written.
func TestTemplatesThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		flags string
		want  string
	}{
		{"--paper foolscap", "foolscap"},
		{"--paper arch-a --margin 3", "larger paper, such as A4 or letter, or a smaller margin"},
		{"--paper A4 --margin 120", "larger paper"},
		{"--paper A4 --margin -1", "--margin is -25.4 mm; it must be above 0"},
		{"--paper A4 --margin wide", "--margin"},
		{"--paper A4 --roll 24", "--paper A4 and --roll 24 are both given"},
		{"--roll 2", "larger paper"},
		{"--roll 0", "must be above 0"},
		{"--roll -24", "must be above 0"},
		{"--roll much", "--roll"},
		{"--measured-x 80", "correction along X is 1.2500; it must be from 0.9 to 1.1"},
		{"--measured-y 0", "must be above 0"},
		{"--measured-y 150", "correction along Y is 0.6667"},
		{"--measured-x 4in --measured-y bad", "--measured-y"},
		{"--measured-x=-100", "must be above 0"},
		{"--factor-x 2", "correction along X is 2.0000"},
		{"--factor-y NaN", "correction along Y is NaN"},
		{"--factor-y wide", "invalid argument"},
	} {
		t.Run(c.flags, func(t *testing.T) {
			got, dir := templated(t, sound, strings.Fields(c.flags)...)
			require.Equal(t, 1, got.code, "%s%s", got.out, got.faults)
			require.Contains(t, got.faults, c.want)
			require.Len(t, strings.Split(strings.TrimSpace(got.faults), "\n"), 1)
			require.Equal(t, []string{"model.yaml"}, holds(t, dir), "nothing may be written")
		})
	}
	got, dir := templated(t, spoilt(t, "rows: 3", "rows: 20"))
	require.Equal(t, 2, got.code)
	require.Equal(t, []string{"model.yaml"}, holds(t, dir))
}
