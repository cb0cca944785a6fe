package pdf

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/render/lettering"

	"stilewright/render/sheet"
)

// outside runs a program on a file, which takes the place of "FILE" or stands
// last. A program that is missing, fails or complains fails the test.
func outside(t *testing.T, data []byte, name string, args ...string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "set.pdf")
	require.NoError(t, os.WriteFile(path, data, 0o600))
	args = append([]string{}, args...)
	placed := false
	for i, a := range args {
		if a == "FILE" {
			args[i], placed = path, true
		}
	}
	if !placed {
		args = append(args, path)
	}
	var faults bytes.Buffer
	run := exec.Command(name, args...)
	run.Stderr = &faults
	out, err := run.Output()
	require.NoError(t, err, "%s: %s%s", name, out, faults.String())
	require.Empty(t, faults.String(), name)
	return string(out)
}

func TestOutsideReaders(t *testing.T) {
	second := page120(line(at(0, 0), at(1, 1)))
	second.Width, second.Height = 431_800_000, 279_400_000 // 17 in by 11 in
	data := written(t, Options{Title: "Türen", Author: "A. Joiner", ActualSize: true}, sampler(), second)

	require.Contains(t, outside(t, data, "qpdf", "--check"), "No syntax or stream encoding errors found")
	about := outside(t, data, "pdfinfo", "-f", "1", "-l", "2")
	require.Contains(t, about, "Title:           Türen\n")
	require.Contains(t, about, "Author:          A. Joiner\n")
	require.Contains(t, about, "Page    1 size:  340.157 x 226.772 pts\n")
	require.Contains(t, about, "Page    2 size:  1224 x 792 pts\n")
	require.NotContains(t, about, "Date")

	text := outside(t, data, "pdftotext", "-raw", "FILE", "-")
	closed := strings.Join(strings.Fields(text), "") // readers guess spaces
	for _, want := range []string{"Türen, façade: 59 7/8", "1/2"} {
		require.Contains(t, closed, strings.Join(strings.Fields(lettering.Legible(want)), ""))
	}
	require.Contains(t, strings.Join(strings.Fields(text), " "), "⌀ 5 ½ ±1° ×", "rising text")

	fonts := strings.Fields(outside(t, data, "pdffonts"))
	require.Contains(t, fonts[len(fonts)-9], "+RoutedGothic")
	require.Equal(t, []string{"yes", "yes", "yes"}, fonts[len(fonts)-5:len(fonts)-2], "embedded, a subset, with Unicode")
}

// The checks above see what is broken.
func TestOutsideReadersBite(t *testing.T) {
	data := written(t, Options{}, sampler())
	for name, broken := range map[string][]byte{
		"a shifted table": bytes.Replace(data, []byte("\n1 0 obj"), []byte("\n\n\n1 0 obj"), 1),
		"half a file":     data[:len(data)/2],
	} {
		path := filepath.Join(t.TempDir(), "broken.pdf")
		require.NoError(t, os.WriteFile(path, broken, 0o600))
		require.Error(t, exec.Command("qpdf", "--check", path).Run(), name)
	}
	unmapped := bytes.Replace(data, []byte("endcmap"), []byte("endcmpa"), 1)
	unmapped = bytes.ReplaceAll(unmapped, []byte("beginbfchar"), []byte("begonbfchar"))
	path := filepath.Join(t.TempDir(), "unmapped.pdf")
	require.NoError(t, os.WriteFile(path, unmapped, 0o600))
	told, _ := exec.Command("pdftotext", "-raw", path, "-").Output()
	require.NotContains(t, string(told), "59 7/8", "text is found through its map to Unicode")
}

// A reader of layers lists ours, all shown.
func TestLayersOutside(t *testing.T) {
	told := outside(t, written(t, Options{}, sampler()), "qpdf", "--json", "--json-key=qpdf")
	for _, l := range []sheet.Layer{sheet.Outline, sheet.Panel, sheet.Dimensions, sheet.Notes} {
		require.Contains(t, told, `"/Name": "u:`+l.String()+`"`)
	}
	require.Contains(t, told, `"/OCProperties"`)
}
