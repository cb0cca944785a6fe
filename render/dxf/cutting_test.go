package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// cuttingSampler has every kind of path: a rounded outline with a hole of
// arcs that turn right, a circle, a clipped polygon, and open and closed
// strokes.
func cuttingSampler(r Release, u length.Unit) Cutting {
	c := Cutting{Unit: u, Release: r, Layers: []CuttingLayer{{"CUT-3_175-FRONT", 1}, {"HOLE-3_175-FRONT", 6}, {"MARK-FRONT", 7}}}
	add := func(layer string, p plane.Path) { c.Paths = append(c.Paths, CuttingPath{layer, p}) }
	add("CUT-3_175-FRONT", plane.RoundedRect(plane.BoxOf(at(0, 0), plane.At(571_500_000, 20*length.Inch+length.Inch/64)), 12_700_000))
	add("HOLE-3_175-FRONT", plane.Slot(plane.BoxOf(at(100, 100), at(150, 120))).Reverse())
	add("HOLE-3_175-FRONT", plane.Circle(at(200, 200), 396_875))
	add("HOLE-3_175-FRONT", plane.ClippedRect(plane.BoxOf(at(300, 100), at(350, 150)), 7*mm).Reverse())
	add("MARK-FRONT", plane.Path{plane.Line(at(20, 20), at(20, 26)), plane.Line(at(20, 26), at(24, 26))})
	add("MARK-FRONT", plane.Polygon(at(30, 20), at(34, 20), at(34, 26)))
	return c
}

func cut(t testing.TB, c Cutting) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, WriteCutting(&out, c))
	return out.Bytes()
}

// A traced entity is what a reader makes of one path.
type traced struct {
	kind, layer string
	closed      bool
	points      [][2]float64
	bulges      []float64
	radius      float64
}

// box is the smallest box round an entity, arcs and all.
func (e traced) box() (box [4]float64) {
	box = [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	reach := func(x, y float64) {
		box = [4]float64{min(box[0], x), min(box[1], y), max(box[2], x), max(box[3], y)}
	}
	if e.kind == "CIRCLE" {
		reach(e.points[0][0]-e.radius, e.points[0][1]-e.radius)
		reach(e.points[0][0]+e.radius, e.points[0][1]+e.radius)
		return box
	}
	for i, p := range e.points {
		reach(p[0], p[1])
		q := e.points[(i+1)%len(e.points)]
		for k := 1; k < 64 && e.bulges[i] != 0; k++ { // an arc, by its own formula: points at equal angles
			a := 4 * math.Atan(e.bulges[i])
			dx, dy := q[0]-p[0], q[1]-p[1]
			h := (1 - e.bulges[i]*e.bulges[i]) / (4 * e.bulges[i])
			cx, cy := (p[0]+q[0])/2-dy*h, (p[1]+q[1])/2+dx*h
			s, c := math.Sincos(a * float64(k) / 64)
			reach(cx+(p[0]-cx)*c-(p[1]-cy)*s, cy+(p[0]-cx)*s+(p[1]-cy)*c)
		}
	}
	return box
}

// byEzdxf reads a cutting with ezdxf, which must find nothing to mend.
func byEzdxf(t *testing.T, content []byte) ([]traced, reading) {
	t.Helper()
	r := ezdxf(t, content)
	require.Empty(t, r.Errors)
	require.Empty(t, r.Fixes)
	var all []traced
	for _, e := range r.Entities {
		all = append(all, traced{e.Kind, e.Layer, e.Closed, e.Points, e.Bulges, e.Radius})
	}
	return all, r
}

// byDxflib reads a cutting with dxflib, through testdata/read.cc.
func byDxflib(t *testing.T, content []byte) (all []traced, unit, metric int) {
	t.Helper()
	out, err := exec.Command(dxflibReader(t), save(t, content)).CombinedOutput()
	require.NoError(t, err, "%s", out)
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return v
	}
	for line := range strings.Lines(string(out)) {
		f := strings.Fields(line)
		switch f[0] {
		case "$INSUNITS":
			unit = int(number(f[1]))
		case "$MEASUREMENT":
			metric = int(number(f[1]))
		case "CIRCLE":
			all = append(all, traced{kind: f[0], layer: f[1], points: [][2]float64{{number(f[2]), number(f[3])}}, radius: number(f[4])})
		case "POLYLINE":
			e := traced{kind: f[0], layer: f[1], closed: f[2] == "1"}
			for i := 3; i < len(f); i += 3 {
				e.points = append(e.points, [2]float64{number(f[i]), number(f[i+1])})
				e.bulges = append(e.bulges, number(f[i+2]))
			}
			all = append(all, e)
		default:
			all = append(all, traced{kind: f[0]})
		}
	}
	return all, unit, metric
}

// dxflibReader compiles the reader. Without compiler or library the test fails.
func dxflibReader(t *testing.T) string {
	t.Helper()
	readerOnce.Do(func() {
		var dir string
		if dir, readerFault = os.MkdirTemp("", "dxf-reader"); readerFault != nil {
			return
		}
		reader = filepath.Join(dir, "read")
		if out, err := exec.Command("g++", "-o", reader, "testdata/read.cc", "-ldxflib").CombinedOutput(); err != nil {
			readerFault = fmt.Errorf("%w: %s", err, out)
		}
	})
	require.NoError(t, readerFault)
	return reader
}

var (
	readerOnce  sync.Once
	reader      string
	readerFault error
)

func TestMain(m *testing.M) {
	code := m.Run()
	if reader != "" {
		os.RemoveAll(filepath.Dir(reader))
	}
	os.Exit(code)
}

// All readers see the same paths, where they were meant, in either release and
// either unit.
func TestThreeReadersOfCuttings(t *testing.T) {
	for _, release := range []Release{R2000, R12} {
		for _, unit := range []length.Unit{length.Millimetres, length.Inches} {
			c := cuttingSampler(release, unit)
			content := cut(t, c)
			ez, r := byEzdxf(t, content)
			lib, units, metric := byDxflib(t, content)
			wantUnits, wantMetric, size := 4, 1, 1.0
			if unit == length.Inches {
				wantUnits, wantMetric, size = 1, 0, 25.4
			}
			require.Equal(t, []int{wantUnits, wantMetric}, []int{r.Units, r.Metric})
			require.Equal(t, []int{wantUnits, wantMetric}, []int{units, metric})
			require.Equal(t, map[Release]string{R2000: "AC1015", R12: "AC1009"}[release], r.Version)
			require.Len(t, ez, len(c.Paths))
			require.Len(t, lib, len(c.Paths))
			for i, p := range c.Paths {
				b := p.Path.Bounds()
				want := []float64{b.Min.X.MM() / size, b.Min.Y.MM() / size, b.Max.X.MM() / size, b.Max.Y.MM() / size}
				for _, e := range []traced{ez[i], lib[i]} {
					box := e.box()
					require.InDeltaSlice(t, want, box[:], 1e-6, "path %d", i)
					require.Equal(t, p.Layer, e.layer)
					require.Equal(t, isCircle(p.Path), e.kind == "CIRCLE")
					if !isCircle(p.Path) {
						require.Equal(t, p.Path.Closed(), e.closed)
						if e.closed {
							require.InEpsilon(t, p.Path.Area()/size/size, area(entity{Points: e.points, Bulges: e.bulges}), 1e-9)
						}
					}
				}
			}
			listing := gdal(t, content)
			require.Contains(t, listing, fmt.Sprintf("Feature Count: %d\n", len(c.Paths)))
			whole := c.bounds()
			box := gdalBox(t, listing)
			require.InDeltaSlice(t, []float64{whole.Min.X.MM() / size, whole.Min.Y.MM() / size, whole.Max.X.MM() / size, whole.Max.Y.MM() / size}, box[:], 1e-6)
		}
	}
}

// A cutting reads back as it was meant, from files of random paths.
func TestCuttingsReadBack(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for n := range 200 {
		c := Cutting{Unit: length.Unit(n % 2), Release: Release(n / 2 % 2), Layers: []CuttingLayer{{"A", 1}, {"B-1_5-BACK", 3}}}
		for range 1 + rnd.IntN(6) {
			low := plane.At(length.Length(rnd.Int64N(4e9)), length.Length(rnd.Int64N(4e9)))
			box := plane.BoxOf(low, low.Add(1+length.Length(rnd.Int64N(3e9)), 1+length.Length(rnd.Int64N(3e9))))
			size := 1 + length.Length(rnd.Int64N(5e7))
			p := []plane.Path{box.Path(), plane.RoundedRect(box, size), plane.ClippedRect(box, size), plane.Circle(low, size), plane.Slot(box)}[rnd.IntN(5)]
			if rnd.IntN(2) == 0 && !isCircle(p) {
				p = p.Reverse()
			}
			c.Paths = append(c.Paths, CuttingPath{c.Layers[rnd.IntN(2)].Name, p})
		}
		content := cut(t, c)
		back, err := ReadCutting(bytes.NewReader(content))
		require.NoError(t, err, "seed %d cutting %d", *seed, n)
		require.NoError(t, c.Same(back), "seed %d cutting %d", *seed, n)
		require.Equal(t, content, cut(t, c))
	}
}

func TestSameTellsDifferences(t *testing.T) {
	c := cuttingSampler(R2000, length.Millimetres)
	require.NoError(t, c.Same(cuttingSampler(R2000, length.Millimetres)))
	for name, change := range map[string]func(*Cutting){
		"unit":                 func(c *Cutting) { c.Unit = length.Inches },
		"release":              func(c *Cutting) { c.Release = R12 },
		"layer":                func(c *Cutting) { c.Layers[0].Name = "OTHER" },
		"fewer":                func(c *Cutting) { c.Paths = c.Paths[1:] },
		"moved":                func(c *Cutting) { c.Paths[0].Path = c.Paths[0].Path.Translate(2, 0) },
		"walked the other way": func(c *Cutting) { c.Paths[3].Path = c.Paths[3].Path.Reverse() },
		"bulge":                func(c *Cutting) { c.Paths[1].Path = c.Paths[1].Path.Flatten(mm) },
		"radius":               func(c *Cutting) { c.Paths[2].Path = plane.Circle(at(200, 200), 396_877) },
	} {
		other := cuttingSampler(R2000, length.Millimetres)
		change(&other)
		require.Error(t, c.Same(other), name)
	}
}

// What the gate must refuse. The outside readers take most of it.
func TestReadCuttingRefuses(t *testing.T) {
	for _, release := range []Release{R2000, R12} {
		good := string(cut(t, cuttingSampler(release, length.Millimetres)))
		entity := func(kind, rest string) string {
			return strings.Replace(good, "ENTITIES\n", "ENTITIES\n  0\n"+kind+"\n  8\nCUT-3_175-FRONT\n"+rest, 1)
		}
		swap := func(from, to string) string {
			require.Contains(t, good, from)
			return strings.Replace(good, from, to, 1)
		}
		for name, c := range map[string]struct{ content, says string }{
			"text":           {entity("TEXT", " 10\n0.0\n 20\n0.0\n 40\n5.0\n  1\nP1\n"), "a TEXT"},
			"spline":         {entity("SPLINE", " 70\n8\n"), "a SPLINE"},
			"ellipse":        {entity("ELLIPSE", " 10\n0.0\n"), "a ELLIPSE"},
			"dimension":      {entity("DIMENSION", ""), "a DIMENSION"},
			"insert":         {entity("INSERT", "  2\nX\n"), "a INSERT"},
			"hatch":          {entity("HATCH", ""), "a HATCH"},
			"line":           {entity("LINE", ""), "a LINE"},
			"block contents": {strings.Replace(good, "BLOCKS\n", "BLOCKS\n  0\nLINE\n  8\n0\n", 1), "a block holds a LINE"},
			"no unit":        {swap("$INSUNITS\n 70\n4\n", "$INSUNITS\n 70\n0\n"), "$INSUNITS"},
			"layer unlisted": {swap("\n  8\nMARK-FRONT\n", "\n  8\nMARKED\n"), "not listed"},
			"handle twice":   {twiceHandled(good), "given twice"},
			"seed too low":   {swap("$HANDSEED\n  5\n", "$HANDSEED\n  5\n1\n999\n"), "$HANDSEED"},
			"cut short":      {good[:len(good)/2], ""},
			"no number":      {swap(" 10\n12.7\n", " 10\ntwelve\n"), "no number"},
			"not finite":     {swap(" 10\n12.7\n", " 10\nNaN\n"), "no number"},
			"other release":  {strings.NewReplacer("AC1015", "AC1032", "AC1009", "AC1032").Replace(good), "AC1032"},
		} {
			_, err := ReadCutting(strings.NewReader(c.content))
			require.ErrorContains(t, err, c.says, "%s %s", release, name)
		}
		_, err := ReadCutting(strings.NewReader(good))
		require.NoError(t, err)
	}
}

// twiceHandled gives the second entity the handle of the first.
func twiceHandled(good string) string {
	first := strings.Index(good, "ENTITIES\n")
	one := strings.Index(good[first:], "\n  5\n") + first + 5
	two := strings.Index(good[one:], "\n  5\n") + one + 5
	end := func(i int) int { return i + strings.Index(good[i:], "\n") }
	return good[:two] + good[one:end(one)] + good[end(two):]
}

func TestWriteCuttingRefuses(t *testing.T) {
	one := func(name string, p plane.Path) Cutting {
		return Cutting{Layers: []CuttingLayer{{name, 1}}, Paths: []CuttingPath{{name, p}}}
	}
	square := plane.Rect(at(0, 0), at(10, 10))
	for _, c := range []struct {
		cutting Cutting
		says    string
	}{
		{one("cut", square), "A to Z"},
		{one("CUT 3", square), "A to Z"},
		{one("CUTÉ", square), "A to Z"},
		{one("", square), "1 to 31"},
		{one(strings.Repeat("A", 32), square), "1 to 31"},
		{Cutting{Layers: []CuttingLayer{{"A", 1}, {"A", 2}}}, "twice"},
		{one("A", nil), "no edges"},
		{one("A", plane.Path{plane.Line(at(0, 0), at(1, 0)), plane.Line(at(2, 0), at(3, 0))}), "does not begin"},
		{one("A", plane.Path{plane.Line(at(0, 0), plane.At(length.Longest+1, 0))}), "mm out"},
		{Cutting{Paths: []CuttingPath{{"A", square}}}, "not listed"},
	} {
		var out bytes.Buffer
		require.ErrorContains(t, WriteCutting(&out, c.cutting), c.says)
		require.Empty(t, out.Bytes())
	}
	for _, release := range []Release{R2000, R12} {
		content := cut(t, cuttingSampler(release, length.Inches))
		for _, n := range []int{0, len(content) / 2, len(content) - 1} {
			require.True(t, errors.Is(WriteCutting(&full{n}, cuttingSampler(release, length.Inches)), errFull), n)
		}
		require.NotContains(t, string(content), "\n-0.0\n")
	}
}

func FuzzReadCutting(f *testing.F) {
	for _, release := range []Release{R2000, R12} {
		var out bytes.Buffer
		require.NoError(f, WriteCutting(&out, cuttingSampler(release, length.Millimetres)))
		f.Add(out.Bytes())
	}
	f.Fuzz(func(t *testing.T, content []byte) {
		c, err := ReadCutting(bytes.NewReader(content))
		if err != nil || c.Check() != nil {
			return
		}
		again, err := ReadCutting(bytes.NewReader(cut(t, c)))
		require.NoError(t, err)
		require.Len(t, again.Paths, len(c.Paths))
	})
}
