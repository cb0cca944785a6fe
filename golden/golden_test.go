package golden

import (
	"bytes"
	"crypto/sha256"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/spec"
	"stilewright/render/drawing"
	"stilewright/render/packet"
	"stilewright/render/sheet"
)

var (
	update = flag.Bool("update", false, "write the golden files instead of comparing with them")
	seed   = flag.Uint64("seed", 1, "seed of the random models")
	models = flag.Int("models", 60, "how many random models are drawn and read for collisions")
)

const (
	samplesDir = "../samples"
	sheetsName = "sheets.txt" // the dump; the other files are the packet's
	// drawTo names a folder: the test binary, when it finds it set, draws every
	// sample into the folder and ends. That is the second process.
	drawTo = "STILEWRIGHT_GOLDEN_DRAW_TO"
)

func TestMain(m *testing.M) {
	if dir := os.Getenv(drawTo); dir != "" {
		if err := drawAll(dir); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	os.Exit(m.Run())
}

// A sample is one model of the samples folder, drawn.
type sample struct {
	name   string
	set    door.Set
	sheets []sheet.Sheet
	files  map[string][]byte // the packet's, and the dump
}

func (s sample) sheet(t testing.TB, name string) sheet.Sheet {
	t.Helper()
	at := slices.IndexFunc(s.sheets, func(p sheet.Sheet) bool { return p.Name == name })
	require.GreaterOrEqual(t, at, 0, "%s has no sheet %s", s.name, name)
	return s.sheets[at]
}

// sampleNames lists the models of the samples folder in order.
func sampleNames() ([]string, error) {
	paths, err := filepath.Glob(filepath.Join(samplesDir, "*.yaml"))
	if err == nil && len(paths) == 0 {
		err = fmt.Errorf("%s holds no model", samplesDir)
	}
	for i, path := range paths {
		paths[i] = strings.TrimSuffix(filepath.Base(path), ".yaml")
	}
	return paths, err
}

// resolved reads and resolves a sample. Warnings are allowed, stops are not.
func resolved(name string) (door.Set, error) {
	model, findings, err := spec.ReadFile(filepath.Join(samplesDir, name+".yaml"))
	if err != nil {
		return door.Set{}, err
	}
	set, more := door.Resolve(model)
	for _, f := range append(findings, more...) {
		if f.Severity == spec.Stops {
			return door.Set{}, fmt.Errorf("%v", f)
		}
	}
	return set, nil
}

// draw makes everything that is kept of a sample.
func draw(name string) (sample, error) {
	set, err := resolved(name)
	if err != nil {
		return sample{}, err
	}
	s := sample{name: name, set: set, files: map[string][]byte{}}
	if s.sheets, err = drawing.Sheets(set); err != nil {
		return sample{}, fmt.Errorf("%s: %w", name, err)
	}
	files, err := packet.Of(set)
	if err != nil {
		return sample{}, fmt.Errorf("%s: %w", name, err)
	}
	for _, f := range files {
		s.files[f.Name] = f.Data
	}
	s.files[sheetsName] = []byte(dump(s.sheets))
	return s, nil
}

// drawAll draws every sample into a folder of its own below dir.
func drawAll(dir string) error {
	names, err := sampleNames()
	if err != nil {
		return err
	}
	for _, name := range names {
		s, err := draw(name)
		if err != nil {
			return err
		}
		if err := write(filepath.Join(dir, name), s.files); err != nil {
			return err
		}
	}
	return nil
}

func write(dir string, files map[string][]byte) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for name, data := range files {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// drawnOnce are the samples, drawn for all tests.
var drawnOnce = sync.OnceValues(func() ([]sample, error) {
	names, err := sampleNames()
	var all []sample
	for _, name := range names {
		s, more := draw(name)
		if more != nil {
			return nil, more
		}
		all = append(all, s)
	}
	return all, err
})

func samples(t testing.TB) []sample {
	t.Helper()
	all, err := drawnOnce()
	require.NoError(t, err)
	require.NotEmpty(t, all)
	return all
}

// whole are the samples of which every file is kept; of the others the dump of
// the sheets and the record are, and the hash of every other file.
var whole = []string{"attic-linen", "studio-three"}

// hashesName lists the hashes of the files that are not kept.
const hashesName = "files.sha256"

// kept are the files that are kept of a sample.
func (s sample) kept() map[string][]byte {
	if slices.Contains(whole, s.name) {
		return s.files
	}
	kept, hashes := map[string][]byte{}, []string{}
	for name, data := range s.files {
		if name == sheetsName || name == "resolved.json" {
			kept[name] = data
			continue
		}
		hashes = append(hashes, fmt.Sprintf("%x  %s\n", sha256.Sum256(data), name))
	}
	slices.SortFunc(hashes, func(a, b string) int { return strings.Compare(a[66:], b[66:]) })
	kept[hashesName] = []byte(strings.Join(hashes, ""))
	return kept
}

// kept reads the golden files of a sample; none when it has no folder.
func kept(t *testing.T, name string) map[string][]byte {
	t.Helper()
	entries, err := os.ReadDir(name)
	if !os.IsNotExist(err) {
		require.NoError(t, err)
	}
	files := map[string][]byte{}
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(name, e.Name()))
		require.NoError(t, err)
		files[e.Name()] = data
	}
	return files
}

// faults compares what a sample draws with what is kept of it: one entry for
// each file that differs, is missing, or is drawn by no sample.
func faults(name string, drawn, kept map[string][]byte) (found []string) {
	for file, data := range drawn {
		old, there := kept[file]
		switch {
		case !there:
			found = append(found, fmt.Sprintf("golden/%s/%s is missing; go test ./golden -update writes it", name, file))
		case !bytes.Equal(old, data):
			found = append(found, fmt.Sprintf("golden/%s/%s is no longer what is drawn (- kept, + drawn):\n%s", name, file, lineDiff(string(old), string(data))))
		}
	}
	for file := range kept {
		if _, there := drawn[file]; !there {
			found = append(found, fmt.Sprintf("golden/%s/%s is drawn by no sample; go test ./golden -update removes it", name, file))
		}
	}
	slices.Sort(found)
	return found
}

// folders lists the folders of golden files: all of this folder but testdata.
func folders(t *testing.T) (names []string) {
	t.Helper()
	entries, err := os.ReadDir(".")
	require.NoError(t, err)
	for _, e := range entries {
		if e.IsDir() && e.Name() != "testdata" {
			names = append(names, e.Name())
		}
	}
	return names
}

func TestGolden(t *testing.T) {
	all := samples(t)
	if *update {
		for _, name := range folders(t) {
			require.NoError(t, os.RemoveAll(name))
		}
		for _, s := range all {
			require.NoError(t, write(s.name, s.kept()))
		}
	}
	for _, s := range all {
		for _, fault := range faults(s.name, s.kept(), kept(t, s.name)) {
			t.Error(fault)
		}
	}
	for _, name := range folders(t) {
		if !slices.ContainsFunc(all, func(s sample) bool { return s.name == name }) {
			t.Errorf("golden/%s belongs to no sample; go test ./golden -update removes it", name)
		}
	}
}

func TestGoldenFaultsBite(t *testing.T) {
	data := func(names ...string) map[string][]byte {
		files := map[string][]byte{}
		for _, name := range names {
			files[name] = []byte("one\ntwo\nthree\n")
		}
		return files
	}
	require.Empty(t, faults("x", data("a", "b"), data("a", "b")))
	require.Contains(t, faults("x", data("a", "b"), data("a"))[0], "x/b is missing")
	require.Contains(t, faults("x", data("a"), data("a", "b"))[0], "x/b is drawn by no sample")
	changed := data("a")
	changed["a"] = []byte("one\n2\nthree\n")
	require.Contains(t, faults("x", changed, data("a"))[0], "- 2 two\n+ 2 2\n")
}

// Two drawings in one process, and one in a process of another clock, language
// and number of processors, give the same bytes.
func TestSameBytesTwice(t *testing.T) {
	dir := t.TempDir()
	self, err := os.Executable()
	require.NoError(t, err)
	second := exec.Command(self)
	second.Env = append(os.Environ(), drawTo+"="+dir, "TZ=Pacific/Chatham", "LC_ALL=tr_TR.UTF-8", "GOMAXPROCS=1")
	told, err := second.CombinedOutput()
	require.NoError(t, err, "%s", told)
	for _, s := range samples(t) {
		again, err := draw(s.name)
		require.NoError(t, err)
		require.Empty(t, faults(s.name, again.files, s.files), "drawn twice")
		require.Empty(t, faults(s.name, kept(t, filepath.Join(dir, s.name)), s.files), "drawn by a second process")
	}
}
