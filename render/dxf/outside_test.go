package dxf

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/render/sheet"
)

// What testdata/read.py tells of a file. An outside reader that is missing
// fails the test: Debian packages python3-ezdxf and gdal-bin.
type reading struct {
	Errors, Fixes, Lines []string
	Seed                 string
	Units, Metric, Paper int
	Dashes               float64
	Min, Max             []float64
	Version, Encoding    string
	Entities             []entity
}

type entity struct {
	Kind, Layer, Handle, Line       string
	Weight, Colour, Paths           int
	Points                          [][2]float64
	Bulges                          []float64
	Radius, Sweep, Height, Rotation float64
	Text, Raw, Align, Style         string
	Closed, Solid                   bool
	Measured, Stored, Factor        float64
	Block                           []entity
}

func save(t *testing.T, content []byte) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "sheet.dxf")
	require.NoError(t, os.WriteFile(name, content, 0o600))
	return name
}

func written(t testing.TB, s sheet.Sheet) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Write(&out, s))
	return out.Bytes()
}

// ezdxf reads a file strictly: no recovery.
func ezdxf(t *testing.T, content []byte) (r reading) {
	t.Helper()
	require.NoError(t, json.Unmarshal(told(t, content), &r))
	return r
}

func told(t *testing.T, content []byte) []byte {
	t.Helper()
	out, err := exec.Command("/usr/bin/python3", "testdata/read.py", save(t, content)).CombinedOutput()
	require.NoError(t, err, "%s", out)
	return out
}

// sampled reads the sampler, once for all tests: the reader takes its time.
func sampled(t *testing.T) (r reading) {
	t.Helper()
	samplerOnce.Do(func() { samplerTold = told(t, written(t, sampler())) })
	require.NoError(t, json.Unmarshal(samplerTold, &r), "the reader failed before")
	require.Empty(t, r.Errors)
	require.Empty(t, r.Fixes)
	return r
}

var (
	samplerOnce sync.Once
	samplerTold []byte
)

// sound reads a sheet's file, which must need no error and no fix.
func sound(t *testing.T, s sheet.Sheet) reading {
	t.Helper()
	r := ezdxf(t, written(t, s))
	require.Empty(t, r.Errors)
	require.Empty(t, r.Fixes)
	return r
}

// gdal lists every feature that GDAL reads.
func gdal(t *testing.T, content []byte) string {
	t.Helper()
	out, err := exec.Command("ogrinfo", "-ro", "-al", save(t, content)).CombinedOutput()
	require.NoError(t, err, "%s", out)
	require.NotContains(t, string(out), "ERROR")
	require.NotContains(t, string(out), "Warning")
	return string(out)
}

// gdalBox is GDAL's bounding box of all it reads.
func gdalBox(t *testing.T, listing string) (box [4]float64) {
	t.Helper()
	for line := range strings.SplitSeq(listing, "\n") {
		if rest, ok := strings.CutPrefix(line, "Extent: "); ok {
			fields := strings.FieldsFunc(rest, func(r rune) bool { return strings.ContainsRune("(), -", r) && r != '-' })
			require.Len(t, fields, 5, line) // two points with a dash between them
			for i, f := range append(fields[:2:2], fields[3:]...) {
				v, err := strconv.ParseFloat(f, 64)
				require.NoError(t, err)
				box[i] = v
			}
			return box
		}
	}
	t.Fatal("ogrinfo tells no extent")
	return box
}

// Negative controls: the audit must see what is broken, or a clean audit would
// tell nothing.
func TestAuditSeesBrokenFiles(t *testing.T) {
	good := string(written(t, sampler()))
	broken := func(from, to string) []byte {
		require.Contains(t, good, from)
		return []byte(strings.Replace(good, from, to, 1))
	}
	for name, content := range map[string][]byte{
		"layer with a character it must not have": broken("  8\nOUTLINE\n", "  8\nOUT<LINE\n"),
		"unknown text style":                      broken("  7\nStandard\n100\nAcDbText", "  7\nNowhere\n100\nAcDbText"),
		"dimension without its block":             broken("AcDbDimension\n  2\n*D1\n", "AcDbDimension\n  2\n*D77\n"),
		"unknown dimension style":                 broken("  3\nSCALE_1_2\n100\nAcDbAligned", "  3\nNOWHERE\n100\nAcDbAligned"),
	} {
		r := ezdxf(t, content)
		require.NotEmpty(t, append(r.Errors, r.Fixes...), name)
	}
}

// A text with a line end in it breaks the file: the strict reader must say so,
// and Write must not make one.
func TestReaderRefusesLineEnds(t *testing.T) {
	bad := bytes.Replace(written(t, sampler()), []byte("\nAttic"), []byte("\nAt\ntic"), 1)
	out, err := exec.Command("/usr/bin/python3", "testdata/read.py", save(t, bad)).CombinedOutput()
	require.Error(t, err, "%s", out)
}

// gdalTexts lists the texts in what GDAL tells.
func gdalTexts(listing string) (texts []string) {
	for line := range strings.SplitSeq(listing, "\n") {
		if _, text, ok := strings.Cut(line, "Text (String) = "); ok {
			texts = append(texts, text)
		}
	}
	return texts
}
