package shop

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/render/dxf"
)

// What a reader makes of a file. An outside reader that is missing fails the
// test: Debian packages python3-ezdxf, gdal-bin, libdxflib-dev and g++.
type told struct {
	Faults        []string
	Units, Metric int
	Layers        []string
	Entities      []entity
}

type entity struct {
	Kind, Layer string
	Closed      bool
	Points      [][3]float64 // X, Y, bulge
	Radius      float64
}

// sent writes a job's cuttings into a folder.
func sent(t *testing.T, job Job) []string {
	t.Helper()
	dir := t.TempDir()
	var names []string
	for _, w := range job.Works {
		var out bytes.Buffer
		require.NoError(t, dxf.WriteCutting(&out, w.Cutting))
		name := filepath.Join(dir, w.Name+".dxf")
		require.NoError(t, os.WriteFile(name, out.Bytes(), 0o600))
		names = append(names, name)
	}
	return names
}

func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	require.NoError(t, err, "%s", out)
	return string(out)
}

func byEzdxf(t *testing.T, names []string) (all []told) {
	t.Helper()
	for line := range strings.Lines(run(t, "/usr/bin/python3", append([]string{"testdata/read.py"}, names...)...)) {
		var one told
		require.NoError(t, json.Unmarshal([]byte(line), &one))
		all = append(all, one)
	}
	return all
}

func byDxflib(t *testing.T, reader, name string) (one told) {
	t.Helper()
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return v
	}
	for line := range strings.Lines(run(t, reader, name)) {
		f := strings.Fields(line)
		switch f[0] {
		case "$INSUNITS":
			one.Units = int(number(f[1]))
		case "$MEASUREMENT":
			one.Metric = int(number(f[1]))
		case "CIRCLE":
			one.Entities = append(one.Entities, entity{f[0], f[1], true, [][3]float64{{number(f[2]), number(f[3]), 0}}, number(f[4])})
		default:
			e := entity{Kind: f[0], Layer: f[1]}
			if f[0] == "POLYLINE" {
				e.Closed = f[2] == "1"
				for i := 3; i < len(f); i += 3 {
					e.Points = append(e.Points, [3]float64{number(f[i]), number(f[i+1]), number(f[i+2])})
				}
			}
			one.Entities = append(one.Entities, e)
		}
	}
	return one
}

// box is the smallest box round an entity, its arcs by the textbook formula of
// the bulge: a quarter of the sweep is its arc tangent.
func (e entity) box() []float64 {
	b := []float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	reach := func(x, y float64) {
		b[0], b[1], b[2], b[3] = min(b[0], x), min(b[1], y), max(b[2], x), max(b[3], y)
	}
	for i, p := range e.Points {
		reach(p[0]-e.Radius, p[1]-e.Radius)
		reach(p[0]+e.Radius, p[1]+e.Radius)
		if p[2] == 0 {
			continue
		}
		q := e.Points[(i+1)%len(e.Points)]
		h := (1 - p[2]*p[2]) / (4 * p[2])
		cx, cy := (p[0]+q[0])/2-(q[1]-p[1])*h, (p[1]+q[1])/2+(q[0]-p[0])*h
		r, from, sweep := math.Hypot(p[0]-cx, p[1]-cy), math.Atan2(p[1]-cy, p[0]-cx), 4*math.Atan(p[2])
		for k := range 4 { // the circle's own extremes, where the arc passes them
			a := math.Mod(float64(k)*math.Pi/2-from+4*math.Pi, 2*math.Pi)
			if sweep > 0 && a < sweep || sweep < 0 && a-2*math.Pi > sweep {
				reach(cx+r*math.Cos(float64(k)*math.Pi/2), cy+r*math.Sin(float64(k)*math.Pi/2))
			}
		}
	}
	return b
}

// Every file of jobs in both releases and units: three readers see the same
// number of entities, each in the same place, of no kind but those allowed.
func TestThreeReaders(t *testing.T) {
	reader := filepath.Join(t.TempDir(), "read")
	run(t, "g++", "-o", reader, "../dxf/testdata/read.cc", "-ldxflib")
	for _, text := range []string{
		strings.Replace(model, "clipped", "squared", 1),
		strings.Replace(model, "clipped", "rounded", 1) + "shop: {release: r12, units: inch, kerf: 0.2, relief: t-bone}\n",
	} {
		job := planned(t, text)
		names := sent(t, job)
		readings := byEzdxf(t, names)
		require.Len(t, readings, len(names))
		for i, name := range names {
			w := job.Works[i]
			size, units, metric := 1.0, 4, 1
			if w.Cutting.Unit == length.Inches {
				size, units, metric = length.Inch.MM(), 1, 0
			}
			ez, lib := readings[i], byDxflib(t, reader, name)
			require.Empty(t, ez.Faults, name)
			require.Equal(t, []int{units, metric, units, metric}, []int{ez.Units, ez.Metric, lib.Units, lib.Metric})
			require.Len(t, ez.Entities, len(w.Cutting.Paths), name)
			require.Len(t, lib.Entities, len(w.Cutting.Paths), name)
			for k, p := range w.Cutting.Paths {
				b := p.Path.Bounds()
				want := []float64{b.Min.X.MM() / size, b.Min.Y.MM() / size, b.Max.X.MM() / size, b.Max.Y.MM() / size}
				for _, e := range []entity{ez.Entities[k], lib.Entities[k]} {
					require.Contains(t, []string{"CIRCLE", "LWPOLYLINE", "POLYLINE"}, e.Kind)
					require.Equal(t, p.Layer, e.Layer)
					require.Contains(t, ez.Layers, e.Layer)
					require.True(t, e.Closed || strings.HasPrefix(e.Layer, "MARK-"), name)
					require.InDeltaSlice(t, want, e.box(), 1e-6, "%s path %d", name, k)
				}
			}
			listing := run(t, "ogrinfo", "-ro", "-al", "-so", name)
			require.NotContains(t, listing, "ERROR")
			require.Contains(t, listing, fmt.Sprintf("Feature Count: %d\n", len(w.Cutting.Paths)), name)
			whole := bounds(w.Cutting)
			var x0, y0, x1, y1 float64
			_, extent, _ := strings.Cut(listing, "Extent: ")
			_, err := fmt.Sscanf(extent, "(%f, %f) - (%f, %f)", &x0, &y0, &x1, &y1)
			require.NoError(t, err)
			// ogrinfo prints six decimals and makes chords of arcs, which no extreme here lies on.
			require.InDeltaSlice(t, []float64{whole.Min.X.MM() / size, whole.Min.Y.MM() / size, whole.Max.X.MM() / size, whole.Max.Y.MM() / size}, []float64{x0, y0, x1, y1}, 1e-6, name)
		}
	}
}
