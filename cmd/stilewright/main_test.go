package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// asProgram tells the test binary to be the program itself: the tests below
// start it so, and see what a person sees.
const asProgram = "STILEWRIGHT_TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		main()
		return
	}
	os.Exit(m.Run())
}

// An outcome is what the program left behind.
type outcome struct {
	code        int
	out, faults string
}

// started runs the program in a folder.
func started(t *testing.T, dir string, args ...string) outcome {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	cmd := exec.Command(self, args...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), asProgram+"=1")
	var out, faults bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &faults
	err = cmd.Run()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		require.NoError(t, err)
	}
	return outcome{cmd.ProcessState.ExitCode(), out.String(), faults.String()}
}

// drawn writes a model and draws it.
func drawn(t *testing.T, model string, flags ...string) (outcome, string) {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "model.yaml"), []byte(model), 0o600))
	return started(t, dir, append([]string{"draw", "model.yaml", "-o", "packet"}, flags...)...), dir
}

// holds lists what a folder holds.
func holds(t *testing.T, dir string) (names []string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// sound is a model without faults; the tables below spoil one line of it.
const sound = `job: Coats behind the stair
units: inch
opening: {width: 60, height: 80}
hanging:
  style: bypass
  tracks: [front, back]
  overlap: 1 1/2
  floor_gap: 3/8
leaf:
  thickness: 1 3/8
  stile: 3 1/2
  rail: {top: 3 1/2, cross: 3, bottom: 5}
  lites: {rows: 3}
  joint: {kind: pocket-screw}
panel:
  material: polycarbonate
  thickness: 1/8
  rabbet: {width: 3/8}
  corner: clipped
  held_by: {kind: edge-washer, washer: {outside: 1/2, thickness: 1/4}}
stock: {species: ponderosa pine}
`

// spoilt is the sound model with a piece replaced, which must be there.
func spoilt(t *testing.T, from, to string) string {
	t.Helper()
	require.Equal(t, 1, strings.Count(sound, from), "%q must stand once in the sound model", from)
	return strings.Replace(sound, from, to, 1)
}

func TestDrawWritesAPacket(t *testing.T) {
	got, dir := drawn(t, sound)
	require.Equal(t, 0, got.code, got.faults)
	files := holds(t, filepath.Join(dir, "packet"))
	require.Contains(t, files, "02-leaf-front.svg")
	require.Contains(t, files, "02-leaf-front.dxf")
	require.Contains(t, files, "sheets.pdf")
	require.Contains(t, files, "resolved.json")
	require.Contains(t, files, "manifest.json")
	require.Contains(t, files, "cnc")
	require.Contains(t, holds(t, filepath.Join(dir, "packet", "cnc")), "parts.csv")
	require.Equal(t, fmt.Sprintf("packet: %d files\n", filesBelow(t, filepath.Join(dir, "packet"))), got.out)
}

// A part of a packet goes into a folder of its own, never over a whole one; a
// sheet, a scale, a format or a portion that does not exist is told with those
// that do.
func TestDrawAPart(t *testing.T) {
	for _, c := range []struct {
		flags string
		files []string
	}{
		{"--sheet 2 --format svg", []string{"02-leaf-front.svg", "manifest.json"}},
		{"--sheet sections,01-set --format dxf", []string{"01-set.dxf", "04-sections.dxf", "manifest.json"}},
		{"--sheet leaf-back --format pdf --scale 1:20", []string{"manifest.json", "sheets.pdf"}},
		{"--only guide", []string{"guide.html", "guide.pdf", "manifest.json"}},
		{"--only record,solids", []string{"manifest.json", "resolved.json", "set.step"}},
	} {
		got, dir := drawn(t, sound, strings.Fields(c.flags)...)
		require.Equal(t, 0, got.code, got.faults)
		require.Equal(t, c.files, holds(t, filepath.Join(dir, "packet")), c.flags)
	}
	for flags, says := range map[string]string{
		"--sheet 77":            "there is no sheet \"77\"; the sheets are 01-set, 02-leaf-front",
		"--scale 1:3":           "1:3",
		"--sheet 2 --scale 1:1": "does not fit on ansi-e paper at 1:1: ask for a smaller scale",
		"--format gif":          "the formats are svg, dxf, pdf",
		"--only drawings":       "the portions of a packet are sheets, record, cnc, guide, lists, templates, solids",
	} {
		got, dir := drawn(t, sound, strings.Fields(flags)...)
		require.Equal(t, 1, got.code, flags)
		require.Contains(t, got.faults, says)
		require.NoDirExists(t, filepath.Join(dir, "packet"))
	}
}

func TestAPartNeverReplacesAWhole(t *testing.T) {
	got, dir := drawn(t, sound)
	require.Equal(t, 0, got.code, got.faults)
	whole := holds(t, filepath.Join(dir, "packet"))
	got = started(t, dir, "draw", "model.yaml", "--sheet", "2")
	require.Equal(t, 1, got.code)
	require.Contains(t, got.faults, "which a part would drop: name another folder with -o")
	require.Equal(t, whole, holds(t, filepath.Join(dir, "packet")))
	got = started(t, dir, "draw", "model.yaml", "--quiet", "-o", "again")
	require.Equal(t, 0, got.code, got.faults)
	require.Empty(t, got.out)
}

// filesBelow counts the files in a folder and all folders in it.
func filesBelow(t *testing.T, dir string) (n int) {
	t.Helper()
	require.NoError(t, filepath.WalkDir(dir, func(_ string, d os.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			n++
		}
		return err
	}))
	return n
}

// A model at fault: the exit code is 2, each finding stands on a line of its
// own with the place in the file, and nothing at all is written.
func TestFaultsStopDrawing(t *testing.T) {
	for _, c := range []struct{ name, from, to, rule string }{
		{"unknown key", "floor_gap:", "floor_gpa:", "8:3: unknown-key"},
		{"key of another group", "job: Coats", "thickness: 1\njob: Coats", "1:1: unknown-key"},
		{"list for a group", "{width: 60, height: 80}", "[60, 80]", "3:10: wrong-kind"},
		{"group for a word", "polycarbonate", "{sheet: polycarbonate}", "wrong-kind"},
		{"no measurement", "{width: 60, height: 80}", "{width: 60}", "missing-key"},
		{"no value", "height: 80", "height: ", "no-value"},
		{"no opening at all", "opening: {width: 60, height: 80}\n", "", "missing-key"},
		{"width 0", "width: 60", "width: 0", "3:18: out-of-range"},
		{"negative", "height: 80", "height: -80", "out-of-range"},
		{"absurd", "width: 60", "width: 99999999999999999999999", "3:18: "},
		{"a kilometre", "width: 60", "width: 1000 m", "3:18: "},
		{"NaN", "width: 60", "width: .nan", "bad-size"},
		{"no number", "width: 60", "width: NaN", "3:18: bad-size"},
		{"infinite", "height: 80", "height: .inf", "bad-size"},
		{"a word for a size", "stile: 3 1/2", "stile: slender", "bad-size"},
		{"divided by 0", "stile: 3 1/2", "stile: 3 1/0", "bad-size"},
		{"tabs", "  style: bypass", "\tstyle: bypass", "tab-indent"},
		{"two documents", "stock:", "---\nstock:", "second-document"},
		{"alias", "material: polycarbonate", "material: &a polycarbonate", "alias"},
		{"key twice", "  floor_gap: 3/8", "  floor_gap: 3/8\n  floor_gap: 1/2", "key-twice"},
		{"not YAML", "[front, back]", "[front, back", "not-yaml"},
		{"unknown unit", "units: inch", "units: cubit", "2:8: unknown-word"},
		{"unknown sheet", "polycarbonate", "marble", "unknown-sheet"},
		{"table smaller than a stile", "stock:", "shop: {machine: {width: 40, height: 60}}\nstock:", "larger-than-machine"},
		{"sheet smaller than a panel", "stock:", "shop: {sheet: {width: 10, height: 10}}\nstock:", "larger-than-sheet"},
		{"layer word no program takes", "stock:", "shop: {layers: {cut: cut out!}}\nstock:", "layer-name"},
		{"leaf wider than the opening", "  overlap: 1 1/2\n  floor_gap: 3/8\nleaf:\n", "  floor_gap: 3/8\nleaf:\n  width: 61\n", "9:10: leaf-too-wide"},
		{"leaf higher than the opening", "  thickness: 1 3/8", "  height: 81\n  thickness: 1 3/8", "leaf-too-high"},
		{"stiles leave no lite", "stile: 3 1/2", "stile: 15 1/2", "leaf-too-narrow"},
		{"rails leave no lite", "rows: 3", "rows: 20", "lite-too-low"},
		{"rabbet deeper than the frame", "{width: 3/8}", "{width: 3/8, depth: 1 1/2}", "rabbet-too-deep"},
		{"washer cannot reach", "washer: {outside: 1/2, thickness: 1/4}", "washer: {outside: 1/2, thickness: 1/32}", "washer-reach"},
		{"panel thicker than its rabbet", "  thickness: 1/8\n  rabbet: {width: 3/8}", "  thickness: 1/4\n  rabbet: {width: 3/8, depth: 3/16}", "panel-proud"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, dir := drawn(t, spoilt(t, c.from, c.to))
			require.Equal(t, 2, got.code, "%s%s", got.out, got.faults)
			require.Contains(t, got.faults, c.rule)
			require.Empty(t, got.out)
			require.Equal(t, []string{"model.yaml"}, holds(t, dir), "nothing may be written")
			for line := range strings.Lines(got.faults) {
				require.Regexp(t, `^model\.yaml:(\d+:\d+:)? [a-z-]+: .`, line)
			}
		})
	}
}

// What is no model at all.
func TestUnreadableFilesStopDrawing(t *testing.T) {
	bomb := "a: &a [x, x, x, x, x, x, x, x, x]\n"
	for c := 'b'; c < 'k'; c++ {
		bomb += fmt.Sprintf("%c: &%c [%[3]s, %[3]s, %[3]s, %[3]s, %[3]s, %[3]s, %[3]s, %[3]s]\n", c, c, "*"+string(c-1))
	}
	for name, model := range map[string]string{
		"empty":        "",
		"only remarks": "# nothing\n",
		"null":         "null\n",
		"a list":       "[1, 2]\n",
		"bytes":        "job: \xff\xfe\n",
		"NUL":          "job: a\x00b\n",
		"alias bomb":   bomb,
		"brackets":     "job: " + strings.Repeat("[", 20_000),
		"one long key": strings.Repeat("k", 500_000) + ": 1\n",
	} {
		t.Run(name, func(t *testing.T) {
			got, dir := drawn(t, model)
			require.Equal(t, 2, got.code, "%.2000s", got.faults)
			require.NotEmpty(t, got.faults)
			require.Less(t, len(got.faults), 20_000, "a fault is told in a few lines")
			require.NotContains(t, got.faults, "goroutine")
			require.Equal(t, []string{"model.yaml"}, holds(t, dir))
		})
	}
}

// A file of 100 MB, which takes no room on the disk, is refused after its
// first part.
func TestHugeFileStopsDrawing(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "model.yaml")
	require.NoError(t, os.WriteFile(path, []byte(sound), 0o600))
	require.NoError(t, os.Truncate(path, 100<<20))
	got := started(t, dir, "draw", "model.yaml", "-o", "packet")
	require.Equal(t, 2, got.code, got.faults)
	require.Contains(t, got.faults, "too-large")
	require.Equal(t, []string{"model.yaml"}, holds(t, dir))
}

// Several faults are told in one run, in the order of the file.
func TestAllFaultsAtOnce(t *testing.T) {
	model := strings.NewReplacer("width: 60", "width: wide", "floor_gap:", "floor_gpa:", "rows: 3", "rows: 99", "corner: clipped", "corner: bitten").Replace(sound)
	got, _ := drawn(t, model)
	require.Equal(t, 2, got.code)
	places := []string{"model.yaml:3:18: bad-size", "model.yaml:8:3: unknown-key", "model.yaml:13:17: out-of-range", "model.yaml:19:11: unknown-word"}
	last := -1
	for _, place := range places {
		at := strings.Index(got.faults, place)
		require.Greater(t, at, last, "%s is missing or out of order in\n%s", place, got.faults)
		last = at
	}
}

// Faults of the door, too, come together where one does not hide the other.
func TestFaultsOfTheDoorComeTogether(t *testing.T) {
	model := strings.NewReplacer("polycarbonate", "marble", "ponderosa pine", "balsa of the moon").Replace(sound)
	got, _ := drawn(t, model)
	require.Equal(t, 2, got.code)
	require.Contains(t, got.faults, "unknown-sheet")
	require.Contains(t, got.faults, "unknown-species")
}

// What is wrong with the file or the folder itself ends with 1 and one plain
// sentence.
func TestWhatCannotBeDone(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "model.yaml"), []byte(sound), 0o600))
	require.NoError(t, os.Mkdir(filepath.Join(dir, "letters"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "letters", "dear.txt"), []byte("Dear"), 0o600))
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"draw", "nowhere.yaml"}, "nowhere.yaml: no such file or directory"},
		{[]string{"check", "nowhere.yaml"}, "nowhere.yaml: no such file or directory"},
		{[]string{"draw", "letters"}, "is a directory"},
		{[]string{"draw", "model.yaml", "-o", "letters"}, "name a new folder"},
		{[]string{"draw", "model.yaml", "-o", "model.yaml"}, "it is a file; name a folder"},
		{[]string{"draw"}, "accepts 1 arg(s), received 0"},
		{[]string{"draw", "model.yaml", "--fast"}, "unknown flag: --fast"},
		{[]string{"drow", "model.yaml"}, `unknown command "drow"`},
	} {
		got := started(t, dir, c.args...)
		require.Equal(t, 1, got.code, "%v: %s", c.args, got.faults)
		require.Contains(t, got.faults, c.want, "%v", c.args)
		require.Contains(t, got.faults, "stilewright: ")
		require.NotContains(t, got.faults, "goroutine")
		require.Empty(t, got.out)
	}
	require.Equal(t, []string{"letters", "model.yaml"}, holds(t, dir))
	require.Equal(t, []string{"dear.txt"}, holds(t, filepath.Join(dir, "letters")))
}

// A file changed by hand stops a second drawing, and --replace keeps it.
func TestEditedFilesAreKept(t *testing.T) {
	_, dir := drawn(t, sound)
	page := filepath.Join(dir, "packet", "05-details-1.svg")
	require.NoError(t, os.WriteFile(page, []byte("mine"), 0o600))
	got := started(t, dir, "draw", "model.yaml", "-o", "packet")
	require.Equal(t, 1, got.code)
	require.Contains(t, got.faults, "05-details-1.svg")
	text, err := os.ReadFile(page)
	require.NoError(t, err)
	require.Equal(t, "mine", string(text))
	got = started(t, dir, "draw", "model.yaml", "-o", "packet", "--replace")
	require.Equal(t, 0, got.code, got.faults)
	text, err = os.ReadFile(page + ".edited-1")
	require.NoError(t, err)
	require.Equal(t, "mine", string(text))
}

func TestCheckWritesNothing(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "model.yaml"), []byte(sound), 0o600))
	got := started(t, dir, "check", "model.yaml")
	require.Equal(t, 0, got.code, got.faults)
	require.Contains(t, got.out, "model.yaml: 2 leaves resolve")
	require.Equal(t, []string{"model.yaml"}, holds(t, dir))
}
