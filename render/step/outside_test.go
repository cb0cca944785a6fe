package step

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/solid"
)

// plugins are the outside reader's libraries with the commands that the tests
// use. Debian's occt-draw looks for them under names that only the development
// packages have, so the tests link them under those.
var plugins = []string{"TKTopTest", "TKXSDRAW", "TKXDEDRAW", "TKViewerTest", "TKDCAF"}

// occt runs a script in Open CASCADE's Draw (Debian package occt-draw) and
// gives what it prints. A missing reader fails the test. As it comes, the
// reader turns faces and shells the right way out by itself; here it must take
// them as written.
func occt(t *testing.T, script string) string {
	t.Helper()
	dir := t.TempDir()
	for _, name := range plugins {
		found, err := filepath.Glob("/usr/lib/*/lib" + name + ".so.7*")
		require.NoError(t, err)
		require.NotEmpty(t, found, "Open CASCADE's %s is missing: install occt-draw", name)
		require.NoError(t, os.Symlink(found[0], filepath.Join(dir, "lib"+name+".so")))
	}
	rules, err := os.ReadFile("/usr/share/opencascade/resources/XSTEPResource/STEP")
	require.NoError(t, err, "Open CASCADE's rules for reading are missing: install occt-draw")
	for _, mends := range []string{"FixFaceOrientationMode", "FixShellOrientationMode"} {
		rule := regexp.MustCompile(`(?m)^(FromSTEP\.FixShape\.` + mends + `\s*:).*$`)
		require.True(t, rule.Match(rules), mends)
		rules = rule.ReplaceAll(rules, []byte("${1} 0"))
	}
	require.NoError(t, os.WriteFile(filepath.Join(dir, "STEP"), rules, 0o600))
	name := filepath.Join(dir, "test.tcl")
	require.NoError(t, os.WriteFile(name, []byte("pload MODELING\npload XDE\n"+script+"\nputs {read to the end}\n"), 0o600))
	cmd := exec.Command("occt-draw", "-b", "-f", name)
	cmd.Env = append(os.Environ(), "LD_LIBRARY_PATH="+dir, "CSF_STEPDefaults="+dir)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", out)
	require.Contains(t, string(out), "read to the end", "%s", out)
	return string(out)
}

// A read is what the outside reader measures of one solid.
type read struct {
	volume float64 // mm³
	centre [3]float64
	faces  int
	valid  bool
}

// measured reads a file and measures its solids, n of them.
func measured(t *testing.T, content []byte, n int) []read {
	t.Helper()
	out := occt(t, fmt.Sprintf(`stepread %s r *
explode r_1 so
puts "solids: [llength [directory r_1_*]]"
for {set i 1} {$i <= %d} {incr i} {
puts "part: $i"
puts [checkshape r_1_$i]
puts [vprops r_1_$i 1e-9 -full]
puts [nbshapes r_1_$i]
}`, save(t, content), n))
	require.Contains(t, out, fmt.Sprintf("solids: %d\n", n))
	_, rest, _ := strings.Cut(out, "part: 1\n")
	var all []read
	for _, text := range strings.Split(rest, "part: ") {
		r := read{volume: figure(t, text, "Mass :"), valid: strings.Contains(text, "This shape seems to be valid")}
		for k, name := range []string{"X =", "Y =", "Z ="} {
			r.centre[k] = figure(t, text, name)
		}
		r.faces = int(figure(t, text, "FACE      :"))
		all = append(all, r)
	}
	require.Len(t, all, n)
	return all
}

// figure is the number behind the first of a name in a text.
func figure(t *testing.T, text, name string) float64 {
	t.Helper()
	_, rest, found := strings.Cut(text, name)
	require.True(t, found, "no %q in %s", name, text)
	v, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
	require.NoError(t, err)
	return v
}

func save(t *testing.T, content []byte) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "parts.step")
	require.NoError(t, os.WriteFile(name, content, 0o600))
	return name
}

func written(t testing.TB, parts ...Part) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Write(&out, "test", parts))
	return out.Bytes()
}

// differs tells by how much a reading misses the solid moved by at: the larger
// of the volume's relative error and the centroid's error to the solid's size.
func differs(r read, s solid.Solid, at solid.Vec) float64 {
	x, y, z := s.Centroid()
	least, most := s.Bounds()
	size, d := in(most).minus(in(least)).size(), in(at)
	worst := math.Abs(r.volume/s.Volume() - 1)
	for i, c := range [3]float64{x, y, z} {
		worst = max(worst, math.Abs(r.centre[i]-c-d[i])/size)
	}
	return worst
}

// agree holds every instance against the solid's own volume and centroid.
func agree(t *testing.T, parts []Part) []read {
	t.Helper()
	var solids []solid.Solid
	var places []solid.Vec
	var labels []string
	for _, p := range parts {
		at := p.At
		if len(at) == 0 {
			at = []solid.Vec{{}}
		}
		for _, d := range at {
			solids, places, labels = append(solids, p.Solid), append(places, d), append(labels, p.Label)
		}
	}
	all := measured(t, written(t, parts...), len(solids))
	worst := 0.0
	for i, r := range all {
		require.True(t, r.valid, labels[i])
		require.LessOrEqual(t, differs(r, solids[i], places[i]), 1e-6, "%s: volume %.6f, ours %.6f; centre %v", labels[i], r.volume, solids[i].Volume(), r.centre)
		worst = max(worst, differs(r, solids[i], places[i]))
	}
	t.Logf("%d solids agree to %.1e", len(all), worst)
	return all
}
