package dimension

import (
	"flag"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

const tries = 500

// wholeMM writes whole millimetres, so that figures can be added up again.
func wholeMM(l length.Length) string { return l.Nearest(mm).Decimal() }

func anyFrame(rnd *rand.Rand) Frame {
	scales := []sheet.Scale{{}, {Paper: 1, Real: 1}, {Paper: 1, Real: 10}, {Paper: 1, Real: 24}, {Paper: 3, Real: 16}, {Paper: 5, Real: 1}}
	least := plane.At(length.Length(rnd.Int64N(int64(400*mm))), length.Length(rnd.Int64N(int64(400*mm))))
	return Frame{
		Box:    plane.Box{Min: least, Max: least.Add((20+length.Length(rnd.IntN(200)))*mm, (20+length.Length(rnd.IntN(200)))*mm)},
		Origin: plane.At(length.Length(rnd.Int64N(int64(3000*mm))), -length.Length(rnd.Int64N(int64(3000*mm)))),
		Scale:  scales[rnd.IntN(len(scales))],
	}
}

// real is a paper length in the model.
func (f Frame) real(l length.Length) length.Length {
	if f.Scale.Paper <= 0 || f.Scale.Real <= 0 {
		return l
	}
	return length.Length(int64(l) * f.Scale.Real / f.Scale.Paper)
}

// anyRow has places at paper distances from a hair to the whole side.
func anyRow(rnd *rand.Rand, f Frame, side Side, style Style) Row {
	low, room := f.Origin.X, f.real(f.Box.Width())
	if side == LeftOf || side == RightOf {
		low, room = f.Origin.Y, f.real(f.Box.Height())
	}
	r := Row{Style: style}
	crowded := rnd.IntN(3) == 0
	for range 2 + rnd.IntN(14) {
		at := rnd.Int64N(int64(room))
		if crowded && rnd.IntN(4) > 0 {
			at /= 10
		}
		r.At = append(r.At, low+length.Length(at))
	}
	switch rnd.IntN(5) {
	case 0:
		r.Label = "HOLES IN TRACK"
	case 1:
		r.Figures = make([]string, len(r.At))
		r.Figures[rnd.IntN(len(r.At))] = "= 3 × 24 ½ (gejoggt)"
	}
	return r
}

func anyRows(rnd *rand.Rand, f Frame, side Side) []Row {
	var rows []Row
	for range 1 + rnd.IntN(3) {
		rows = append(rows, anyRow(rnd, f, side, Style(rnd.IntN(3))))
	}
	return rows
}

// Acceptance list, shop drawing sheet, 1: no lettering on lettering, arrows or
// lines. Also: none on the view, all within the depth that is claimed, which
// exceeds the ink by a capital's height at most (all figures of a row get the
// room of the tallest).
func TestNothingCollides(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for try := range tries {
		for _, side := range sides {
			f := anyFrame(rnd)
			rows := anyRows(rnd, f, side)
			o := Options{Format: wholeMM, TextHeight: []length.Length{0, 25 * mm / 10, 35 * mm / 10, 5 * mm}[rnd.IntN(4)]}
			marks, depth := Place(f, side, rows, o)
			if found := Collisions(marks, plane.Box{}); len(found) > 0 {
				picture(t, "failure", marks, f.Box)
				t.Fatalf("seed %d, try %d, %v: %v\n%+v", *seed, try, side, found, rows)
			}
			box, ok := Extent(marks)
			require.Equal(t, ok, depth > 0)
			reached := [...]length.Length{f.Box.Min.Y - box.Min.Y, box.Max.Y - f.Box.Max.Y, f.Box.Min.X - box.Min.X, box.Max.X - f.Box.Max.X}[side]
			if ok && (reached > depth+sheet.Narrow.Width() || reached < depth-o.settled().TextHeight) {
				t.Fatalf("seed %d, try %d, %v: ink reaches %v mm, depth is %v mm", *seed, try, side, reached.MM(), depth.MM())
			}
			for _, text := range piecesOf(marks).texts {
				if overlap(text.box, f.Box) {
					t.Fatalf("seed %d, try %d: %v lies on the view", *seed, try, text)
				}
			}
		}
	}
}

// Every figure equals the distance between its points: the model length that
// the paper distance stands for, within what half a nanometre of paper at either point is.
func TestMeasuredIsTheDistance(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 1))
	for range tries {
		f, side := anyFrame(rnd), sides[rnd.IntN(4)]
		marks, _ := Place(f, side, anyRows(rnd, f, side), Options{Format: wholeMM})
		for _, d := range dimensions(marks) {
			paper := (d.A.X - d.B.X).Abs()
			if !d.Horizontal {
				paper = (d.A.Y - d.B.Y).Abs()
			}
			off := (f.real(paper) - d.Measured).Abs()
			if off > f.real(1)+1 {
				t.Fatalf("seed %d: %v measured, %v mm on the paper at %v", *seed, d.Measured.MM(), paper.MM(), f.Scale)
			}
			if d.Horizontal != (side == Below || side == Above) {
				t.Fatalf("seed %d: a dimension %v measures the wrong way", *seed, side)
			}
		}
	}
}

// A chain that is displayed adds up to the overall as displayed, or says REF.
func TestChainAddsUp(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 2))
	closed, ref := 0, 0
	for range tries {
		f, side := anyFrame(rnd), sides[rnd.IntN(4)]
		r := anyRow(rnd, f, side, Chain)
		r.Figures = nil
		if rnd.IntN(2) == 0 { // whole millimetres close always
			for i := range r.At {
				r.At[i] = r.At[i].Nearest(mm)
			}
		}
		marks, _ := Place(f, side, []Row{r}, Options{Format: wholeMM, Tick: mm})
		var sum, shown length.Length
		marked := false
		for _, d := range dimensions(marks) {
			sum += d.Measured
			marked = marked || strings.Contains(d.Figure, "REF")
			figure := strings.TrimSuffix(d.Figure, " REF")
			if _, total, ok := strings.Cut(figure, "(= "); ok {
				figure = strings.TrimSuffix(total, ")")
			}
			n, err := strconv.Atoi(figure)
			require.NoError(t, err, "figure %q", d.Figure)
			shown += length.Length(n) * mm
		}
		overall := slices.Max(r.At) - slices.Min(r.At)
		require.Equal(t, overall, sum, "seed %d", *seed)
		if marked {
			ref++
		} else {
			closed++
			require.Equal(t, overall.Nearest(mm), shown, "seed %d: %v", *seed, r.At)
		}
	}
	assert.Greater(t, closed, tries/4)
	assert.Greater(t, ref, tries/10)
}

// Acceptance list, shop drawing sheet, 2: rows ascend outward, the overall
// outermost, the first at least 10 mm off, the next at least 6 mm.
func TestRowsAscendOutward(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 3))
	for range tries {
		f, side := anyFrame(rnd), sides[rnd.IntN(4)]
		rows := append([]Row{anyRow(rnd, f, side, Overall)}, anyRows(rnd, f, side)...)
		rows[0].Label, rows[0].Figures = "", nil
		marks, _ := Place(f, side, rows, Options{Format: wholeMM})
		last, span := length.Length(0), length.Length(0)
		for _, d := range dimensions(marks) {
			off := [...]length.Length{f.Box.Min.Y - d.Line.Y, d.Line.Y - f.Box.Max.Y, f.Box.Min.X - d.Line.X, d.Line.X - f.Box.Max.X}[side]
			if off == last {
				continue
			}
			if last == 0 && off < 10*mm || last > 0 && off < last+6*mm {
				t.Fatalf("seed %d: a row at %v mm after one at %v mm", *seed, off.MM(), last.MM())
			}
			last, span = off, d.Measured
		}
		if span < slices.Max(rows[0].At)-slices.Min(rows[0].At) {
			t.Fatalf("seed %d: the outermost row measures %v mm", *seed, span.MM())
		}
	}
}

// Moving the view changes no figure, and the drawing not at all but for its
// place, to the nanometres that halves are rounded to.
func TestMovedViewIsMovedDrawing(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 4))
	for range tries / 5 {
		f, side := anyFrame(rnd), sides[rnd.IntN(4)]
		rows := anyRows(rnd, f, side)
		here, depth := Place(f, side, rows, Options{})
		again, _ := Place(f, side, rows, Options{})
		require.Equal(t, here, again)
		g, dx, dy := f, 37*mm+1, -91*mm+3
		g.Box = plane.Box{Min: f.Box.Min.Add(dx, dy), Max: f.Box.Max.Add(dx, dy)}
		there, depth2 := Place(g, side, rows, Options{})
		require.LessOrEqual(t, (depth - depth2).Abs(), 2*length.Nanometre)
		a, b := piecesOf(here), piecesOf(there)
		require.Len(t, b.texts, len(a.texts))
		for i, text := range a.texts {
			require.Equal(t, text.text, b.texts[i].text)
			require.LessOrEqual(t, (text.box.Min.X + dx - b.texts[i].box.Min.X).Abs(), 2*length.Nanometre)
			require.LessOrEqual(t, (text.box.Min.Y + dy - b.texts[i].box.Min.Y).Abs(), 2*length.Nanometre)
		}
	}
}

func TestAroundNothingCollides(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 5))
	for try := range tries / 10 {
		f := anyFrame(rnd)
		var rows [4][]Row
		for _, side := range sides {
			rows[side] = anyRows(rnd, f, side)
		}
		marks, _ := Around(f, rows, Options{Format: wholeMM})
		if found := Collisions(marks, plane.Box{}); len(found) > 0 {
			picture(t, "failure", marks, f.Box)
			t.Fatalf("seed %d, try %d: %v", *seed, try, found)
		}
	}
}

func TestSpreadKeepsOrderAndDistance(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 6))
	for range tries {
		var items []item
		var barriers []length.Length
		for range 1 + rnd.IntN(20) {
			half := length.Length(1+rnd.IntN(5)) * mm
			items = append(items, item{length.Length(rnd.IntN(100)) * mm, -half, half})
		}
		slices.SortFunc(items, func(a, b item) int { return int((a.tip - b.tip) / mm) })
		for range rnd.IntN(5) {
			barriers = append(barriers, length.Length(rnd.IntN(100))*mm)
		}
		slices.Sort(barriers)
		places := spread(items, between, barriers, side)
		for i, p := range places {
			if hits(p+items[i].lo, p+items[i].hi, barriers, side) {
				t.Fatalf("seed %d: item %d at %v mm hits one of %v", *seed, i, p.MM(), barriers)
			}
			if i > 0 && p-places[i-1] < apart(items[i-1], items[i], between) {
				t.Fatalf("seed %d: items %d and %d are %v mm apart", *seed, i-1, i, (p - places[i-1]).MM())
			}
		}
	}
}

func dimensions(marks []sheet.Mark) []sheet.Dimension {
	var ds []sheet.Dimension
	for _, m := range marks {
		if d, ok := m.(sheet.Dimension); ok {
			ds = append(ds, d)
		}
	}
	return ds
}
