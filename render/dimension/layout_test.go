package dimension

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

const mm = length.Millimetre

var sides = []Side{Below, Above, LeftOf, RightOf}

// mms are lengths in millimetres.
func mms(values ...float64) []length.Length {
	var out []length.Length
	for _, v := range values {
		out = append(out, length.Round(v))
	}
	return out
}

// inches are lengths in inches.
func inches(values ...float64) []length.Length {
	out := mms(values...)
	for i := range out {
		out[i] = length.Round(values[i] * length.Inch.MM())
	}
	return out
}

// evenly is n spaces of the given size from 0.
func evenly(n int, size length.Length) []length.Length {
	out := []length.Length{0}
	for i := range n {
		out = append(out, length.Length(i+1)*size)
	}
	return out
}

// square is a frame with 100 × 100 mm of paper at 1:10, so 1 m of model.
func square() Frame {
	return Frame{Box: plane.Rect(plane.At(0, 0), plane.At(100*mm, 100*mm)).Bounds(), Scale: sheet.Scale{Paper: 1, Real: 10}}
}

var inchStyle = length.Style{Unit: length.Inches}
var inchOptions = Options{Format: inchStyle.Format, Tick: length.Inch / 64}

// layouts are rows that a drawing may ask for, each tried on every side.
var layouts = []struct {
	name string
	rows []Row
	o    Options
}{
	{"one", []Row{{At: mms(0, 1000)}}, Options{}},
	{"leaf", []Row{
		{At: inches(0, 4.5, 26.9375, 31.4375)},
		{At: inches(0, 31.4375), Style: Overall},
	}, inchOptions},
	{"rails", []Row{
		{At: inches(0, 1.5, 14.2, 15.7, 28.3, 29.8, 39), Label: "RAILS"},
		{At: inches(0.75, 14.95, 29.05), Label: "RAIL CENTRES"},
		{At: inches(0, 39), Style: Overall},
	}, inchOptions},
	{"narrow", []Row{{At: mms(400, 440)}, {At: mms(400, 440), Style: Overall}}, Options{}},
	{"tiny", []Row{{At: evenly(16, 2*mm)}, {At: mms(0, 1000), Style: Overall}}, Options{}},
	{"unequal", []Row{
		{At: mms(0, 12, 25, 40, 52, 71, 83, 300, 330, 361, 900, 1000)},
		{At: mms(0, 1000), Style: Overall},
	}, Options{}},
	{"crowd", []Row{
		{At: mms(300, 302, 304.5, 307, 309.1, 312, 314, 316.3, 319, 321, 324, 326.6, 328, 331, 333, 335.5, 338)},
		{At: mms(0, 310, 1000)},
		{At: mms(0, 1000), Style: Overall},
	}, Options{}},
	{"running", []Row{
		{At: mms(0, 50, 250, 275, 290, 310, 330, 700, 1000), Style: Running, Label: "STORY STICK"},
		{At: mms(0, 1000), Style: Overall},
	}, Options{}},
	{"both ways", []Row{{At: mms(400, 0, 250, 380, 420, 700, 1000), Style: Running}}, Options{}},
	{"worded", []Row{
		{At: mms(0, 120, 880, 1000), Figures: []string{"120 TYP", "", "= 3 × 24 1/8 (gejoggt, Größe)"}},
		{At: mms(0, 1000), Style: Overall, Figures: []string{"1000 ≥ OPENING"}},
	}, Options{}},
	{"broken", []Row{
		{At: mms(0, 120, 600, 700, 880, 1000), Figures: []string{"4 1/2", "", "8.8 8"}},
		{At: mms(60, 360, 650, 800, 940)},
		{At: mms(0, 660, 1000)},
		{At: mms(0, 1000), Style: Overall},
	}, Options{}},
	{"large", []Row{
		{At: mms(0, 30, 500, 530, 1000), From: mms(500)},
		{At: mms(0, 500, 1000)},
		{At: mms(0, 1000), Style: Overall},
	}, Options{TextHeight: 5 * mm}},
}

func TestLayoutsDoNotCollide(t *testing.T) {
	for _, c := range layouts {
		f := square()
		for _, side := range sides {
			marks, depth := Place(f, side, c.rows, c.o)
			assert.Positive(t, depth)
			assert.Empty(t, Collisions(marks, plane.Box{}), "%s, %v", c.name, side)
		}
		all, depths := Around(f, [4][]Row{c.rows, c.rows, c.rows, c.rows}, c.o)
		assert.Empty(t, Collisions(all, plane.Box{}), "%s, all around", c.name)
		for _, depth := range depths {
			assert.Positive(t, depth)
		}
		picture(t, c.name, all, f.Box)
	}
}

// No input panics, however wild; what comes out of it is not asserted.
func TestWildInputDoesNotPanic(t *testing.T) {
	far := length.Length(1) << 62
	for _, r := range []Row{
		{At: []length.Length{-far, far, 0, 1}, From: []length.Length{far}},
		{At: []length.Length{far, -far}, Style: Running, Figures: []string{"", "", "", "\xff"}, Label: "\n"},
		{At: mms(0, 1), Style: Style(99), Figures: []string{"a", "b", "c"}},
	} {
		for _, f := range []Frame{{}, square(), {Scale: sheet.Scale{Paper: -1, Real: 0}}} {
			for side := Below; side <= RightOf+1; side++ {
				assert.NotPanics(t, func() {
					marks, _ := Place(f, side, []Row{r}, Options{TextHeight: -1, First: -far, Next: -far, Tick: -1})
					Collisions(marks, plane.Box{})
				})
			}
		}
	}
}
