package golden

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// A draft writes a model, with sizes in a unit's steps.
type draft struct {
	*rand.Rand
	inch bool
	out  strings.Builder
}

// size is a size between two of so many millimetres, in steps a tape shows,
// now and then in the finest.
func (d *draft) size(least, most float64) string {
	v := least + d.Float64()*(most-least)
	if !d.inch {
		step := pick(d, 5.0, 1, 1, 0.5)
		return fmt.Sprintf("%g", max(step, float64(int(v/step))*step))
	}
	parts := pick(d, 2, 8, 8, 16, 32, 64)
	n := max(1, int(v/25.4*float64(parts)))
	if n%parts == 0 {
		return fmt.Sprint(n / parts)
	}
	if n < parts {
		return fmt.Sprintf("%d/%d", n, parts)
	}
	return fmt.Sprintf("%d %d/%d", n/parts, n%parts, parts)
}

func pick[T any](d *draft, from ...T) T { return from[d.IntN(len(from))] }

// maybe tells yes n times in ten.
func (d *draft) maybe(n int) bool { return d.IntN(10) < n }

func (d *draft) line(format string, values ...any) { fmt.Fprintf(&d.out, format+"\n", values...) }

// anyModel is a model of any kind: tiny and huge, two to four leaves, one lite
// to many, long names. Many do not resolve; the caller counts.
func anyModel(rnd *rand.Rand) string {
	d := &draft{Rand: rnd, inch: rnd.IntN(2) == 0}
	d.line("job: %s", pick(d, "Shed", "Archive in the former drying loft above the west stair, second of three cupboards", "Küche Süd", "a"))
	d.line("units: %s", map[bool]string{true: "inch", false: "millimetre"}[d.inch])
	if d.maybe(3) {
		d.line("drawn: 2026-05-%02d\nby: A. N. Other-Whistlethwaite\nrevision: C", 1+d.IntN(28))
	}
	if d.maybe(4) {
		d.line("paper: %s", pick(d, "A4", "A3", "A2", "letter", "tabloid", "ansi-c", "arch-c", "arch-d"))
	}
	if d.maybe(2) {
		d.line("figures: %s", pick(d, "fraction", "decimal", "dual"))
	}
	leaves := pick(d, 2, 2, 3, 4)
	width := float64(leaves) * pick(d, 380+d.Float64()*620, 380+d.Float64()*620, 260+d.Float64()*120, 1000+d.Float64()*1200)
	d.opening(width)
	d.hanging(leaves)
	d.leaf()
	d.panel()
	if d.maybe(5) {
		d.line("stock: {species: %s}", pick(d, "ponderosa pine", "white ash", "douglas fir", "western hemlock"))
	}
	return d.out.String()
}

func (d *draft) opening(width float64) {
	height := pick(d, 500+d.Float64()*2200, 1800+d.Float64()*700, 2700+d.Float64()*1200)
	if d.maybe(5) {
		d.line("opening: {width: %s, height: %s}", d.size(width, width), d.size(height, height))
		return
	}
	near := func(v float64) string { return d.size(v-4, v+4) }
	d.line("opening: {width: {bottom: %s, middle: %s, top: %s}, height: {left: %s, middle: %s, right: %s}}",
		near(width), near(width), near(width), near(height), near(height), near(height))
}

func (d *draft) hanging(leaves int) {
	tracks := map[int][]string{
		2: {"[front, back]", "[back, front]"},
		3: {"[front, back, front]", "[back, front, back]"},
		4: {"[back, front, front, back]", "[front, back, front, back]", "[front, back, back, front]"},
	}[leaves]
	d.line("hanging:\n  style: bypass\n  tracks: %s", pick(d, tracks...))
	if d.maybe(8) {
		d.line("  overlap: %s", pick(d, "stile", d.size(20, 80)))
	}
	if d.maybe(5) {
		d.line("  floor_gap: %s", d.size(5, 20))
	}
	if d.maybe(3) {
		d.line("  jamb_gap: {left: %s, right: %s}", d.size(1, 6), d.size(1, 6))
	}
	if d.maybe(4) {
		d.line("  fascia: {height: %s, thickness: %s}", d.size(50, 90), d.size(12, 22))
	}
}

func (d *draft) leaf() {
	d.line("leaf:\n  thickness: %s\n  stile: %s", d.size(30, 35), d.size(60, 130))
	d.line("  rail: {top: %s, cross: %s, bottom: %s}", d.size(60, 130), d.size(60, 110), d.size(70, 200))
	columns := pick(d, 1, 1, 1, 2, 3, 5)
	d.line("  lites: {rows: %d, columns: %d, spacing: %s}", pick(d, 1, 1, 2, 2, 3, 4, 5, 7, 10, 15, 20), columns, pick(d, "equal-lites", "equal-lites", "equal-centres"))
	d.line("  joint: {kind: %s}", pick(d, "pocket-screw", "pocket-screw", "dowel", "loose-tenon", "mortise-and-tenon", "half-lap", "bridle"))
	if d.maybe(2) {
		d.line("  pull: {shape: round, width: %s, depth: %s}", d.size(25, 45), d.size(6, 10))
	}
	if d.maybe(2) {
		d.line("  guide: {width: %s, depth: %s}", d.size(4, 8), d.size(8, 14))
	}
	if d.maybe(2) {
		d.line("  edges:\n    - {edge: outside, face: both, shape: %s, size: %s}", pick(d, "roundover", "chamfer"), d.size(2, 5))
	}
}

func (d *draft) panel() {
	d.line("panel:\n  material: %s\n  thickness: %s", pick(d, "acrylic", "polycarbonate", "plywood", "tempered glass"), d.size(3, 5))
	if d.maybe(8) {
		d.line("  edge_gap: %s", d.size(1, 3))
	}
	switch d.IntN(8) {
	case 0:
		d.line("  seat: groove")
	case 1:
		d.line("  seat: face-bead\n  corner: squared")
	case 2:
		d.line("  corner: %s\n  held_by: stop", pick(d, "squared", "dogbone"))
	case 3:
		d.line("  corner: %s\n  held_by: sealant", pick(d, "squared", "clipped", "rounded"))
	default:
		d.line("  corner: %s", pick(d, "clipped", "squared", "rounded", "dogbone", "t-bone"))
		d.line("  held_by: {kind: edge-washer, spacing: %s}", d.size(90, 300))
	}
}
