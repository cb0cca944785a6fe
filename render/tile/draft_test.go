package tile

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/pdf"
	"stilewright/render/sheet"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

func at(x, y length.Length) plane.Point { return plane.At(x*mm, y*mm) }

func blank(wide, high length.Length, marks ...sheet.Mark) sheet.Sheet {
	return sheet.Sheet{Name: "stick", Title: "Story stick", Width: wide * mm, Height: high * mm, Scale: sheet.Scale{Paper: 1, Real: 1}, Marks: marks}
}

func stroke(path ...plane.Edge) sheet.Stroke {
	return sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Wide, Path: path}
}

func note(words string, p plane.Point) sheet.Text {
	const high = 4 * mm
	return sheet.Text{Layer: sheet.Opening, At: p, Height: high, String: words, Advance: lettering.Advance(words, high)}
}

// stick is a story stick: outline, marks across it with words, a dashed circle
// and a tinted disk, a dimension.
func stick(wide, high length.Length) sheet.Sheet {
	s := blank(wide, high, stroke(plane.RoundedRect(plane.BoxOf(at(20, 30), at(wide-20, high-20)), 20*mm)...))
	middle := at(wide/3, high/2)
	s.Marks = append(s.Marks,
		sheet.Fill{Layer: sheet.Panel, Tone: sheet.Tint, Region: plane.Region{plane.Circle(middle.Add(100*mm, 0), 30*mm)}},
		sheet.Stroke{Layer: sheet.HiddenEdge, Line: sheet.Hidden, Path: plane.Circle(middle, 30*mm)},
		sheet.Dimension{Layer: sheet.Panel, A: at(20, 20), B: at(wide-20, 20), Line: at(20, 10), Horizontal: true, Figure: "overall",
			Strokes: []sheet.Stroke{{Layer: sheet.Panel, Path: plane.Path{plane.Line(at(20, 10), at(wide-20, 10))}}},
			Texts:   []sheet.Text{note("overall", at(wide/2, 11))}})
	for x := length.Length(57); x < wide-30; x += 83 {
		s.Marks = append(s.Marks,
			sheet.Stroke{Layer: sheet.Hardware, Line: sheet.Centre, Path: plane.Path{plane.Line(at(x, 15), at(x, high-5))}},
			note(fmt.Sprintf("rail at %d, from the floor", x), at(x+2, high-14)))
	}
	return s
}

// anyDrawing is a random sheet on layers that pages have no marks of their own
// on.
func anyDrawing(rnd *rand.Rand) sheet.Sheet {
	side := func() length.Length { return length.Length(40 + math.Exp(rnd.Float64()*math.Log(1500))) }
	s := blank(side(), side())
	place := func() plane.Point {
		return plane.At(length.Length(rnd.Int64N(int64(s.Width))), length.Length(rnd.Int64N(int64(s.Height))))
	}
	for range 1 + rnd.IntN(12) {
		p := place()
		switch rnd.IntN(5) {
		case 0:
			s.Marks = append(s.Marks, stroke(plane.Line(p, place())))
		case 1:
			s.Marks = append(s.Marks, stroke(plane.Circle(p, length.Length(1+rnd.Int64N(int64(100*mm))))...))
		case 2:
			r := 1 + rnd.Float64()*200
			end := func(angle float64) plane.Point {
				return p.Add(length.Round(r*math.Cos(angle)), length.Round(r*math.Sin(angle)))
			}
			begin := rnd.Float64() * 7
			s.Marks = append(s.Marks, stroke(plane.Arc(end(begin), end(begin+0.1+rnd.Float64()*6), p, plane.Left)))
		case 3:
			b := plane.BoxOf(p, place())
			if b.Width() > mm && b.Height() > mm {
				region := plane.Region{plane.RoundedRect(b, min(b.Width(), b.Height())/4)}
				s.Marks = append(s.Marks, sheet.Fill{Layer: sheet.Panel, Tone: sheet.Tint, Region: region})
			}
		case 4:
			t := note([]string{"59 7/8", "from the floor to the lower edge of rail R3", "⌀ 5"}[rnd.IntN(3)], p)
			t.Rise, t.Align = rnd.IntN(3) == 0, sheet.Align(rnd.IntN(3))
			s.Marks = append(s.Marks, t)
		}
	}
	s.Marks = append(s.Marks, stroke(plane.Line(place(), place())))
	return s
}

func anyPaper(rnd *rand.Rand) Paper {
	if rnd.IntN(3) == 0 {
		return Roll(length.Length(180+rnd.IntN(900)) * mm)
	}
	p, err := Named([]string{"A4", "letter", "A3", "tabloid"}[rnd.IntN(4)])
	if err != nil {
		panic(err)
	}
	return p
}

func anyOptions(rnd *rand.Rand) Options {
	o := Options{Part: "Stile", Revision: "B", Overlap: length.Length(10+rnd.IntN(20)) * mm, Margin: length.Length(3+rnd.IntN(9)) * mm}
	if rnd.IntN(2) == 0 {
		o.Correction = pdf.Correction{X: 0.9 + rnd.Float64()*0.2, Y: 0.9 + rnd.Float64()*0.2}
	}
	return o
}

// A tiled is a drawing's pages and where each shows it.
type tiled struct {
	job
	overview []sheet.Sheet // none, or one
	pages    map[spot]sheet.Sheet
}

func tilesOf(t testing.TB, s sheet.Sheet, p Paper, o Options) tiled {
	t.Helper()
	j, err := plan(s, p, o)
	require.NoError(t, err, "seed %d", *seed)
	pages, err := Tile(s, p, o)
	require.NoError(t, err)
	of := tiled{job: j, overview: pages[:j.firstTile()-1], pages: map[spot]sheet.Sheet{}}
	require.Len(t, pages, len(j.order)+len(of.overview))
	for i, spot := range j.order {
		of.pages[spot] = pages[i+len(of.overview)]
	}
	return of
}

// onDrawing is a tile's marks of the drawing, back where they are on it.
func (d tiled) onDrawing(s spot) (marks []sheet.Mark) {
	box := d.grid.box(s)
	for _, m := range d.pages[s].Marks {
		m = moved(m, box.Min.X-d.layout.window.Min.X, box.Min.Y-d.layout.window.Min.Y)
		switch layer := layerOf(m); layer {
		case sheet.Border, sheet.Dimensions, sheet.CentreMark, sheet.Notes:
		default:
			if d.onePage() && layer == sheet.Outline && !box.Grow(mm).Meets(boundsOf(m)) {
				continue
			}
			marks = append(marks, m)
		}
	}
	return marks
}

func layerOf(m sheet.Mark) sheet.Layer {
	switch m := m.(type) {
	case sheet.Stroke:
		return m.Layer
	case sheet.Fill:
		return m.Layer
	case sheet.Text:
		return m.Layer
	}
	panic(fmt.Sprintf("a %T on a tile", m))
}

func boundsOf(m sheet.Mark) plane.Box {
	var d drawing
	d.add(m)
	return d.boxes[0]
}

// off is a point's distance in millimetres from an edge.
func off(p plane.Point, e plane.Edge) float64 {
	x, y := (p.X - e.From.X).MM(), (p.Y - e.From.Y).MM()
	dx, dy := (e.To.X - e.From.X).MM(), (e.To.Y - e.From.Y).MM()
	if e.Turn == plane.Straight {
		k := max(0, min(1, (x*dx+y*dy)/(dx*dx+dy*dy)))
		return math.Hypot(x-k*dx, y-k*dy)
	}
	toEnds := min(math.Hypot(x, y), math.Hypot(x-dx, y-dy))
	cx, cy := (p.X - e.Centre.X).MM(), (p.Y - e.Centre.Y).MM()
	fx, fy := (e.From.X - e.Centre.X).MM(), (e.From.Y - e.Centre.Y).MM()
	turned := math.Mod(float64(e.Turn)*(math.Atan2(cy, cx)-math.Atan2(fy, fx))+4*math.Pi, 2*math.Pi)
	if turned <= math.Abs(e.Sweep()) {
		return min(toEnds, math.Abs(math.Hypot(cx, cy)-e.Radius()))
	}
	return toEnds
}

// offAll is a point's distance from the nearest stroke.
func offAll(p plane.Point, marks []sheet.Mark) float64 {
	least := math.Inf(1)
	for _, m := range marks {
		if s, ok := m.(sheet.Stroke); ok {
			for _, e := range s.Path {
				least = min(least, off(p, e))
			}
		}
	}
	return least
}

// somewhere is a random point on a path.
func somewhere(rnd *rand.Rand, path plane.Path) plane.Point {
	return along(path[rnd.IntN(len(path))], rnd.Float64())
}
