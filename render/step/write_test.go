package step

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

const mm = length.Millimetre

func at(x, y, z float64) solid.Vec {
	return solid.Vec{X: length.Round(x), Y: length.Round(y), Z: length.Round(z)}
}

func point(x, y float64) plane.Point { return plane.At(length.Round(x), length.Round(y)) }

// block is a board from the origin.
func block(x, y, z float64) solid.Solid {
	return solid.Solid{Blank: solid.Block(solid.Vec{}, at(x, y, z))}
}

// cut is a prism along an axis from 0 that takes a path.
func cut(a solid.Axis, p plane.Path, from, to float64) solid.Cut {
	return solid.Cut{Prism: solid.Prism{Axis: a, Region: plane.Region{p}, From: length.Round(from), To: length.Round(to)}}
}

func rect(x0, y0, x1, y1 float64) plane.Path { return plane.Rect(point(x0, y0), point(x1, y1)) }

func bore(from, to solid.Vec, diameter float64) solid.Bore {
	return solid.Bore{From: from, To: to, Diameter: length.Round(diameter), For: "test"}
}

// with is a solid with cuts and bores added.
func with(s solid.Solid, more ...any) solid.Solid {
	for _, m := range more {
		switch m := m.(type) {
		case solid.Cut:
			s.Cuts = append(s.Cuts, m)
		case solid.Bore:
			s.Bores = append(s.Bores, m)
		}
	}
	return s
}

// bar is a round bar along an axis about (20, 30).
func bar(a solid.Axis, radius, to float64) solid.Solid {
	return solid.Solid{Blank: solid.Prism{Axis: a, Region: plane.Region{plane.Circle(point(20, 30), length.Round(radius))}, To: length.Round(to)}}
}

// slanted are a pocket at 15° to the back of a board 35 thick and its pilot out
// of the end at x = 0: common practice, no source.
func slanted() []any {
	sin, cos := math.Sincos(15 * math.Pi / 180)
	along := func(d float64) solid.Vec { return at(d*cos, 17.5+d*sin, 40) }
	return []any{bore(along(25), along(110), 9.5), bore(along(25), along(-4), 4)}
}

func TestSolids(t *testing.T) {
	var parts []Part
	var faces []int
	add := func(label string, s solid.Solid, n int) {
		parts, faces = append(parts, Part{Label: label, Name: "part", Solid: s}), append(faces, n)
	}
	rounded := plane.RoundedRect(plane.BoxOf(point(80, 100), point(300, 900)), 16*mm)
	add("board", block(110, 35, 1000), 6)
	add("rabbet with round corners", with(block(110, 35, 1000), cut(solid.Y, rounded, 16, 35)), 12)
	add("hole through a face", with(block(110, 35, 1000), cut(solid.Y, rect(20, 20, 90, 900), -1, 40)), 10)
	add("pocket in a face", with(block(110, 35, 1000), cut(solid.Y, rounded.MirrorX(150*mm), 10, 40)), 12)
	add("clipped panel", solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: plane.Region{plane.ClippedRect(plane.BoxOf(point(0, 0), point(300, 500)), 8*mm)}, To: 3 * mm}}, 10)
	for _, a := range []solid.Axis{solid.X, solid.Y, solid.Z} {
		add("washer across "+a.String(), with(bar(a, 6.5, 2), cut(a, plane.Circle(point(20, 30), 2*mm), 0, 2)), 6)
		add("groove along "+a.String(), with(block(90, 80, 70), cut(a, rect(20, -1, 30, 9), -1, 100)), 10)
		add("step half-way along "+a.String(), with(block(90, 80, 70), cut(a, rect(20, -1, 30, 9), 30, 100)), 10)
		add("stepped bar along "+a.String(), with(bar(a, 15, 40), cut(a, plane.Path{
			plane.Arc(point(27, 30), point(13, 30), point(20, 30), plane.Left), plane.Arc(point(13, 30), point(27, 30), point(20, 30), plane.Left),
		}, 25, 40)), 7)
	}
	add("two rabbets that meet at different depths", with(block(100, 30, 200), cut(solid.Y, rect(60, -1, 120, 80), 10, 30), cut(solid.Y, rect(40, 50, 120, 150), 20, 30)), 13)
	add("two loops of a face that touch", with(block(100, 30, 200), cut(solid.Y, rect(50, -1, 101, 100), -1, 31), cut(solid.Y, rect(-1, -1, 50, 100), 15, 31), cut(solid.Y, rect(50, 100, 101, 201), 15, 31)), 12)
	add("bored through", with(block(40, 20, 30), bore(at(10, 10, -5), at(10, 10, 35), 6)), 8)
	add("blind bores along X, Y, Z", with(block(90, 80, 70), bore(at(0, 40, 35), at(20, 40, 35), 6), bore(at(45, 90, 20), at(45, 50, 20), 7), bore(at(70, 20, 80), at(70, 20, 60), 8)), 15)
	add("bored across a level", with(block(100, 30, 200), cut(solid.Y, rect(60, -1, 120, 80), 15, 30), bore(at(-1, 15, 100), at(30, 15, 100), 6)), 12)
	add("slanted through bore", with(block(200, 100, 100), bore(at(-50, -100, 50), at(250, 200, 50), 20)), 8)
	add("pocket and pilot", with(block(300, 35, 80), slanted()...), 11)
	all := agree(t, parts)
	for i, r := range all {
		assert.Equal(t, faces[i], r.faces, parts[i].Label)
	}
}

// sample is the leaf that a sample resolves to with its track, washers last.
func sample(t testing.TB, path string) []Part {
	t.Helper()
	model, findings, err := spec.ReadFile(path)
	require.NoError(t, err)
	require.Empty(t, findings)
	set, _ := door.Resolve(model)
	parts := []Part{{Label: "track", Solid: set.Track.Solid}}
	for i, s := range set.Track.Hanger {
		parts = append(parts, Part{Label: fmt.Sprintf("hanger %d", i+1), Solid: s, At: []solid.Vec{{X: set.Track.HangerAt[0]}, {X: set.Track.HangerAt[1]}}})
	}
	if set.Fascia != nil {
		parts = append(parts, Part{Label: "fascia", Solid: set.Fascia.Solid})
	}
	for _, p := range append(set.Leaf.Parts, set.Leaf.Hardware...) {
		parts = append(parts, Part{Label: p.Label, Name: p.Name, Solid: p.Solid, Colour: [3]float64{0.8, 0.6, 0.4}})
	}
	require.NotEmpty(t, parts)
	return parts
}

func TestSamples(t *testing.T) {
	paths, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			parts := sample(t, path)
			require.NotEmpty(t, written(t, parts...))
			// All but the first washers would only take the reader's time.
			washers := slices.IndexFunc(parts, func(p Part) bool { return p.Name == "edge washer" })
			if washers >= 0 { // grooved panels have none
				parts = parts[:min(len(parts), washers+8)]
			}
			agree(t, parts)
		})
	}
}

// spoiled writes a solid whose boundary was changed.
func spoiled(t *testing.T, s solid.Solid, change func(*shell)) []byte {
	t.Helper()
	p := Part{Label: "B", Solid: s}
	boundary, err := p.shell()
	require.NoError(t, err)
	change(boundary)
	var out bytes.Buffer
	f := begin(&out, "spoiled")
	f.assembly("spoiled", []Part{p}, []*shell{boundary})
	require.NoError(t, f.end())
	return out.Bytes()
}

// Negative controls: the outside reader's measures must show what is wrong, or
// their agreement would tell nothing.
func TestMeasuresShowFaults(t *testing.T) {
	s := with(block(300, 35, 80), slanted()...)
	require.LessOrEqual(t, differs(measured(t, spoiled(t, s, func(*shell) {}), 1)[0], s, solid.Vec{}), 1e-6)
	for name, change := range map[string]func(*shell){
		"moved vertex":        func(s *shell) { s.points[0][0] += 1 },
		"cylinder inside out": func(s *shell) { s.faces[len(s.faces)-2].hollow = !s.faces[len(s.faces)-2].hollow },
		"all inside out": func(s *shell) {
			for i, f := range s.faces {
				s.faces[i].hollow = !f.hollow
			}
		},
		"bore too wide": func(s *shell) { s.faces[len(s.faces)-2].radius *= 1.01 },
	} {
		r := measured(t, spoiled(t, s, change), 1)[0]
		t.Logf("%s: valid %t, off by %.1e", name, r.valid, differs(r, s, solid.Vec{}))
		assert.Greater(t, differs(r, s, solid.Vec{}), 1e-6, name)
	}
}

// Every vertex lies on the curves and surfaces that pass it as truly as the
// file says.
func TestAccuracy(t *testing.T) {
	within, err := strconv.ParseFloat(accuracy, 64)
	require.NoError(t, err)
	for _, p := range sample(t, "../../samples/five-rail.yaml") {
		s, err := p.shell()
		require.NoError(t, err)
		for _, f := range s.faces {
			for _, loop := range f.loops {
				for _, u := range loop {
					from, to := s.ends(u)
					for _, v := range []int{from, to} {
						require.Less(t, math.Abs(f.off(s.points[v])), within, "%s: %v off its face", p.Label, s.points[v])
						if e := s.edges[u.edge]; e.shape == round {
							d := s.points[v].minus(e.centre)
							x, y := d.dot(e.major)/e.a, d.dot(e.axis.cross(e.major))/e.b
							require.InDelta(t, 1, math.Hypot(x, y), within/e.a, "%s: %v off its curve", p.Label, s.points[v])
							require.Less(t, math.Abs(d.dot(e.axis)), within)
						}
					}
				}
			}
		}
	}
}

// off is how far a point lies off the surface.
func (s surface) off(p vec) float64 {
	d := p.minus(s.at)
	if s.shape == round {
		return d.plus(s.axis, -d.dot(s.axis)).size() - s.radius
	}
	return d.dot(s.axis)
}

// Names, places and colours as another program finds them.
func TestTree(t *testing.T) {
	parts := []Part{
		{Label: "W1", Name: `edge’s Wäscher \ 'x' 𝄞`, Solid: with(bar(solid.X, 6.5, 2)), At: []solid.Vec{{}, at(100, 20, -30)}, Colour: [3]float64{1, 0, 0}},
		{Label: "SL", Name: "left stile", Solid: block(110, 35, 2000), Colour: [3]float64{0, 1, 0}},
		{Label: "P1", Solid: block(10, 20, 30), At: []solid.Vec{at(1, 2, 3)}, Colour: [3]float64{0, 0, 1}},
	}
	agree(t, parts)
	var out bytes.Buffer
	require.NoError(t, Write(&out, "Attic: 1/2 Ø", parts))
	told := occt(t, "ReadStep D "+save(t, out.Bytes())+"\nputs [Xdump D 1]\nputs \"colours: [XGetAllColors D]\"")
	for _, want := range []string{
		`ASSEMBLY COMPOUND 0:1:1:1 "Attic: 1/2 Ø"`, `"W1:1"`, `"W1:2"`, `"SL"`, `"P1"`,
		`"W1 edge’s Wäscher \ 'x' 𝄞"`, `"SL left stile"`, "RED", "GREEN", "BLUE",
	} {
		assert.Contains(t, told, want)
	}
	assert.Equal(t, 4, strings.Count(told, "INSTANCE SOLID"))
}

func TestText(t *testing.T) {
	for s, want := range map[string]string{
		"":                   "''",
		"rail R1":            "'rail R1'",
		"it's":               "'it''s'",
		`a\b`:                `'a\\b'`,
		"1/2\n":              `'1/2\X2\000A\X0\'`,
		"Ø":                  `'\X2\00D8\X0\'`,
		"𝄞":                  `'\X4\0001D11E\X0\'`,
		string([]byte{0xff}): `'\X2\FFFD\X0\'`,
	} {
		assert.Equal(t, want, text(s)) // ISO 10303-21:2002, 6.4.3; from memory
	}
}

func TestDecimal(t *testing.T) {
	for v, want := range map[float64]string{0: "0.000", 1.5: "1.500", -0.0001: "0.000", -2: "-2.000", 12345.6789: "12345.679"} {
		assert.Equal(t, want, decimal(v, 3))
	}
}

// The same parts give the same bytes, and no clock goes in.
func TestSameBytes(t *testing.T) {
	parts := sample(t, "../../samples/attic-linen.yaml")
	first := written(t, parts...)
	assert.True(t, bytes.Equal(first, written(t, sample(t, "../../samples/attic-linen.yaml")...)))
	assert.Contains(t, string(first), "'1970-01-01T00:00:00'")
	for i, c := range first {
		if c != '\n' && (c < ' ' || c > '~') {
			t.Fatalf("byte %d is %q: the file must be ASCII", i, c)
		}
	}
}

func BenchmarkStep(b *testing.B) {
	parts := sample(b, "../../samples/five-rail.yaml")
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, "leaf", parts); err != nil {
			b.Fatal(err)
		}
	}
}
