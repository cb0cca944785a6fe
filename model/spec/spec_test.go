package spec_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/spec"
)

const (
	in = length.Inch
	mm = length.Millimetre
)

// closet is a good short model in inches.
const closet = `job: Linen store, attic landing
drawn: 2026-03-14
units: inch
opening:
  width: {bottom: 59 7/8, middle: 60, top: 60}
  height: {left: 80 3/16, middle: 80 1/4, right: 80 1/4}
  plumb: {left: 0, right: 1/16}
hanging:
  style: bypass
  tracks: [back, front]
  overlap: 1 1/2
  floor_gap: 3/8
  track: two-channel
leaf:
  stile: 4 1/2
  rail: {top: 4 1/2, cross: 3 1/2, bottom: 6}
  lites: {rows: 3}
  joint: {kind: pocket-screw}
panel:
  material: polycarbonate
  thickness: 1/8
  corner: clipped
  held_by: {kind: edge-washer, washer: {outside: 1/2, thickness: 1/16}}
stock: {species: ponderosa pine, board: 2x6, plane: 1/16, rip: 1/2}
`

// pantry is a good model in millimetres that writes every kind of value in
// another of its ways.
const pantry = `
# measured twice
units: "millimetre"
job: |-
  Pantry "north", 2 doors
by: 7
revision: C
paper: A3
opening: {width: 1520.5, height: '5'' 11 1/2"'}
hanging:
  style: bypass
  tracks:
    - front
    - back
    - front
  overlap: stile
  meeting_gap: 2
  jamb_gap: {left: 0, right: 010}
  track: {row: two-channel, spacing: 1 3/4 in, setback: 1.5 cm}
  fascia: {height: 90, thickness: 18}
leaf:
  rail: 0.11 m
  lites: {rows: 1, spacing: equal-centres}
  joint: {kind: pocket-screw, holes_per_end: 2, screw: 38}
panel:
  material: acrylic
  thickness: 3
  rabbet: {width: 9.5, cutter: 32, seat: centred, per_pass: 3}
  edge_gap: .5
  corner: {kind: rounded, radius: ⅝"}
`

// readGood reads a model that must be without findings.
func readGood(t *testing.T, text string) spec.Spec {
	t.Helper()
	model, findings := spec.Read("x.yaml", []byte(text))
	require.Empty(t, findings)
	return model
}

func size(l length.Length) *length.Length { return &l }

func TestReadInches(t *testing.T) {
	model := readGood(t, closet)
	require.Equal(t, "Linen store, attic landing", model.Job)
	require.Equal(t, "2026-03-14", model.Drawn)
	require.Equal(t, spec.Unit{Unit: length.Inches, Written: true}, model.Units)
	require.Equal(t, spec.Opening{
		Width:  spec.Widths{Bottom: size(59*in + 7*in/8), Middle: size(60 * in), Top: size(60 * in)},
		Height: spec.Heights{Left: size(80*in + 3*in/16), Middle: size(80*in + in/4), Right: size(80*in + in/4)},
		Plumb:  spec.Plumb{Left: size(0), Right: size(in / 16)},
	}, model.Opening)
	require.Equal(t, spec.Hanging{
		Style: "bypass", Tracks: []string{"back", "front"},
		Overlap: spec.Overlap{Size: size(in + in/2)}, FloorGap: size(3 * in / 8), Track: spec.Track{Row: "two-channel"},
	}, model.Hanging)
	require.Equal(t, spec.Leaf{
		Stile: size(4*in + in/2), Rail: spec.Rails{Top: size(4*in + in/2), Cross: size(3*in + in/2), Bottom: size(6 * in)},
		Lites: spec.Lites{Rows: 3}, Joint: spec.Joint{Kind: "pocket-screw"},
	}, model.Leaf)
	require.Equal(t, spec.Panel{
		Material: "polycarbonate", Thickness: size(in / 8), Corner: spec.Corner{Kind: "clipped"},
		HeldBy: spec.HeldBy{Kind: "edge-washer", Washer: spec.Washer{Outside: size(in / 2), Thickness: size(in / 16)}},
	}, model.Panel)
	require.Equal(t, spec.Stock{Species: "ponderosa pine", Board: "2x6", Plane: size(in / 16), Rip: size(in / 2)}, model.Stock)
}

func TestReadMillimetres(t *testing.T) {
	model := readGood(t, pantry)
	require.Equal(t, `Pantry "north", 2 doors`, model.Job)
	require.Equal(t, "7", model.By)
	require.Equal(t, length.Millimetres, model.Units.Unit)
	width, height := size(1520*mm+mm/2), size(71*in+in/2)
	require.Equal(t, spec.Opening{
		Width:  spec.Widths{Bottom: width, Middle: width, Top: width},
		Height: spec.Heights{Left: height, Middle: height, Right: height},
	}, model.Opening)
	require.Equal(t, spec.Hanging{
		Style: "bypass", Tracks: []string{"front", "back", "front"}, Overlap: spec.Overlap{Stile: true},
		MeetingGap: size(2 * mm), JambGap: spec.JambGap{Left: size(0), Right: size(10 * mm)},
		Track:  spec.Track{Row: "two-channel", Spacing: size(in + 3*in/4), Setback: size(15 * mm)},
		Fascia: &spec.Fascia{Height: size(90 * mm), Thickness: size(18 * mm)},
	}, model.Hanging)
	rail := size(110 * mm)
	require.Equal(t, spec.Rails{Top: rail, Cross: rail, Bottom: rail}, model.Leaf.Rail)
	require.Equal(t, spec.Joint{Kind: "pocket-screw", HolesPerEnd: 2, Screw: size(38 * mm)}, model.Leaf.Joint)
	require.Equal(t, spec.Corner{Kind: "rounded", Radius: size(5 * in / 8)}, model.Panel.Corner)
	require.Equal(t, mm/2, *model.Panel.EdgeGap)
}

// A size that stands for a group is stored once for each field of it: nobody
// changes one by changing the other.
func TestOneSizeForAllIsNotShared(t *testing.T) {
	model := readGood(t, pantry)
	require.NotSame(t, model.Opening.Width.Bottom, model.Opening.Width.Top)
}

// Line ends and a byte order mark change nothing, not even the places.
func TestLineEnds(t *testing.T) {
	want := readGood(t, closet)
	for _, end := range []string{"\r\n", "\r"} {
		require.Equal(t, want, readGood(t, "\ufeff"+strings.ReplaceAll(closet, "\n", end)))
	}
}

func TestFind(t *testing.T) {
	model := readGood(t, closet)
	for path, want := range map[string]string{
		"opening.width.top":       "x.yaml:5:44: rule: why",
		"opening.width":           "x.yaml:5:10: rule: why",
		"hanging.track":           "x.yaml:13:10: rule: why",
		"hanging.track.row":       "x.yaml:13:10: rule: why", // the single value that stands for the group
		"hanging.tracks[2]":       "x.yaml:10:18: rule: why",
		"hanging.tracks[3]":       "x.yaml:10:11: rule: why",
		"panel.rabbet.depth":      "x.yaml:20:3: rule: why", // not written: the nearest parent
		"panel.held_by.washer.ID": "x.yaml:23:40: rule: why",
		"paper":                   "x.yaml:1:1: rule: why",
		spec.Whole:                "x.yaml:1:1: rule: why",
		"":                        "x.yaml:1:1: rule: why",
	} {
		found := model.Find(path, "rule", spec.Warning, "why")
		require.Equal(t, want, found.String(), path)
		require.Equal(t, spec.Warning, found.Severity)
		require.Equal(t, path, found.Path)
	}
	require.Equal(t, "rule: why", spec.Spec{}.Find("opening.width", "rule", spec.Stops, "why").String())
}

func TestFindingString(t *testing.T) {
	for want, finding := range map[string]spec.Finding{
		"a.yaml:3:7: r: s": {File: "a.yaml", Line: 3, Column: 7, Rule: "r", Sentence: "s"},
		"a.yaml: r: s":     {File: "a.yaml", Rule: "r", Sentence: "s"},
		"3:7: r: s":        {Line: 3, Column: 7, Rule: "r", Sentence: "s"},
		"r: s":             {Rule: "r", Sentence: "s"},
	} {
		require.Equal(t, want, finding.String())
	}
}

func TestReadFile(t *testing.T) {
	dir := t.TempDir()
	good, large := filepath.Join(dir, "good.yaml"), filepath.Join(dir, "large.yaml")
	require.NoError(t, os.WriteFile(good, []byte(closet), 0o600))
	model, findings, err := spec.ReadFile(good)
	require.NoError(t, err)
	require.Empty(t, findings)
	require.Equal(t, "Linen store, attic landing", model.Job)

	require.NoError(t, os.WriteFile(large, nil, 0o600))
	require.NoError(t, os.Truncate(large, 100<<20))
	for _, path := range []string{large, "/dev/zero"} { // the second never ends
		_, findings, err = spec.ReadFile(path)
		require.NoError(t, err)
		require.Len(t, findings, 1)
		require.Equal(t, path+": too-large: the file has more than 1048576 bytes; a model needs a few thousand", findings[0].String())
	}

	_, _, err = spec.ReadFile(filepath.Join(dir, "none.yaml"))
	require.ErrorIs(t, err, os.ErrNotExist)
	_, _, err = spec.ReadFile(dir)
	require.Error(t, err)
}

// A model of exactly the largest size is read.
func TestLargest(t *testing.T) {
	comment := "#" + strings.Repeat("x", spec.Largest-len(closet)-2) + "\n"
	require.Len(t, comment+closet, spec.Largest)
	readGood(t, comment+closet)
	_, findings := spec.Read("x.yaml", []byte(comment+closet+"\n"))
	require.Len(t, findings, 1)
}

func FuzzRead(f *testing.F) {
	for _, text := range []string{closet, pantry, "a: [1", "a: *b", "<<: {a: 1}", "---\n---\n", "? [x]\n: 1", "\t", "units: inch\nopening: {width: 1//2}"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		lines := 1 + strings.Count(strings.ReplaceAll(string(text), "\r\n", "\n"), "\n") + strings.Count(string(text), "\r")
		model, findings := spec.Read("x.yaml", text)
		for i, found := range findings {
			whole := found.Rule == spec.EmptyFile || found.Rule == spec.TooLarge
			switch {
			case found.Path == "" || found.Rule == "" || found.Sentence == "" || found.File != "x.yaml":
				t.Fatalf("incomplete: %+v", found)
			case whole != (found.Line == 0) || whole != (found.Column == 0) || found.Line < 0 || found.Column < 0 || found.Line > lines:
				t.Fatalf("place of %+v in %d lines", found, lines)
			case i > 0 && findings[i-1].Line > found.Line:
				t.Fatalf("not in order: %v, %v", findings[i-1], found)
			case strings.ContainsAny(found.Sentence+found.Path, "\n\r") || len(found.Path) > 1_000:
				t.Fatalf("not one line: %q", found.Sentence)
			}
		}
		if len(findings) == 0 && (model.Job == "" || !model.Units.Written || model.Opening.Width.Top == nil) {
			t.Fatalf("accepted without what is needed: %+v", model)
		}
	})
}
