package tile

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/pdf"
	"stilewright/render/sheet"
)

// What rebuilt tiles may be off, in millimetres.
const rebuilt = 0.05

// Put together again, the tiles are the drawing: each page shows what of each
// line and area lies in its window, where it lies, and nothing else.
func TestTilesRebuildTheDrawing(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	worst, points := 0.0, 0
	for range 150 {
		s := anyDrawing(rnd)
		d := tilesOf(t, s, anyPaper(rnd), anyOptions(rnd))
		for _, spot := range d.order {
			box, marks := d.grid.box(spot), d.onDrawing(spot)
			for _, m := range s.Marks {
				if m, ok := m.(sheet.Stroke); ok {
					for range 20 {
						p := somewhere(rnd, m.Path)
						if box.Holds(p) {
							distance := offAll(p, marks)
							require.Less(t, distance, rebuilt, "seed %d: lost at %v", *seed, p)
							worst, points = max(worst, distance), points+1
						}
					}
				}
			}
			for _, m := range marks {
				if m, ok := m.(sheet.Stroke); ok {
					for range 20 {
						p := somewhere(rnd, m.Path)
						require.True(t, box.Grow(10*length.Nanometre).Holds(p), "seed %d: %v outside of the window", *seed, p)
						distance := offAll(p, s.Marks)
						require.Less(t, distance, rebuilt, "seed %d: more at %v", *seed, p)
						worst = max(worst, distance)
					}
				}
			}
			sameAreas(t, rnd, box, s.Marks, marks)
		}
	}
	require.Greater(t, points, 1000)
	t.Logf("%d points, the worst %.6f mm off", points, worst)
}

// sameAreas holds the tinted areas in a window against the drawing's, by
// random points.
func sameAreas(t *testing.T, rnd *rand.Rand, box plane.Box, want, got []sheet.Mark) {
	t.Helper()
	tinted := func(marks []sheet.Mark, p plane.Point) (in, edge bool) {
		for _, m := range marks {
			if f, ok := m.(sheet.Fill); ok {
				switch f.Region.Where(p) {
				case plane.Inside:
					in = true
				case plane.Boundary:
					edge = true
				}
			}
		}
		return in, edge
	}
	for range 50 {
		p := box.Min.Add(length.Length(rnd.Int64N(int64(box.Width()))), length.Length(rnd.Int64N(int64(box.Height()))))
		here, edge := tinted(want, p)
		there, other := tinted(got, p)
		if !edge && !other {
			require.Equal(t, here, there, "seed %d: tint at %v", *seed, p)
		}
	}
}

// The measures of the test above see a drawing that is off.
func TestRebuildingBites(t *testing.T) {
	arc := plane.Arc(at(10, 0), at(0, 10), at(0, 0), plane.Left)
	require.InDelta(t, 0, off(arc.Middle(), arc), 1e-6)
	require.InDelta(t, 5, off(at(15, 0), arc), 1e-6)
	require.InDelta(t, math.Hypot(10, 10), off(at(0, -10), arc), 1e-6, "the arc ends at (10, 0)")
	require.InDelta(t, 3, off(at(5, 3), plane.Line(at(0, 0), at(10, 0))), 1e-6)
	require.InDelta(t, 5, off(at(13, 4), plane.Line(at(0, 0), at(10, 0))), 1e-6)
	line := []sheet.Mark{stroke(plane.Line(at(0, 0), at(10, 0)))}
	require.Greater(t, offAll(plane.At(5*mm, 60*length.Micrometre), line), rebuilt)
	require.Less(t, offAll(plane.At(5*mm, 40*length.Micrometre), line), rebuilt)
}

// Dashes lie on a tile where they lie on the whole drawing: at so far along
// the path the pattern draws or leaves out, as PDF and SVG reckon it.
func TestDashesStayWhereTheyAre(t *testing.T) {
	path := plane.Path{
		plane.Line(at(10, 40), at(371, 40)),
		plane.Arc(at(371, 40), at(371, 160), at(371, 100), plane.Left),
		plane.Line(at(371, 160), at(12, 117)),
	}
	for _, line := range []sheet.LineType{sheet.Hidden, sheet.Centre, sheet.Phantom} {
		a4, err := Named("A4")
		require.NoError(t, err)
		s := blank(450, 200, sheet.Stroke{Layer: sheet.HiddenEdge, Line: line, Path: path})
		d := tilesOf(t, s, a4, Options{})
		require.Greater(t, len(d.order), 1)
		seen := 0
		for walked, e := 0.0, 0; e < len(path); e++ {
			for k := 0.0; k < 1; k += 0.0007 {
				drawn, clear := inked(line, walked+k*path[e].Length())
				p := along(path[e], k)
				for _, spot := range d.order {
					if clear && d.grid.box(spot).Grow(-mm).Holds(p) {
						seen++
						require.Equal(t, drawn, offAll(p, d.onDrawing(spot)) < 0.01, "%.3f mm along edge %d", k*path[e].Length(), e)
					}
				}
			}
			walked += path[e].Length()
		}
		require.Greater(t, seen, 3000)
	}
}

// inked tells whether the pattern draws so far along a path, and whether that
// is well away from a dash's end.
func inked(line sheet.LineType, along float64) (drawn, clear bool) {
	period := length.Sum(line.Dashes()...).MM()
	at := math.Mod(along, period)
	for i, part := range line.Dashes() {
		if at < part.MM() {
			return i%2 == 0, min(at, part.MM()-at) > 0.02
		}
		at -= part.MM()
	}
	return false, false
}

// A text is whole wherever it stands: where it is drawn, on each page that has
// room for it; else moved, once, on the page of its anchor.
func TestTextsAreNeverCut(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 1))
	pages, moved := 0, 0
	for range 200 {
		s := anyDrawing(rnd)
		d := tilesOf(t, s, anyPaper(rnd), anyOptions(rnd))
		for _, m := range s.Marks {
			text, ok := m.(sheet.Text)
			if !ok {
				continue
			}
			box, shown, inPlace := dimension.TextBox(text), 0, 0
			for _, spot := range d.order {
				for _, got := range d.onDrawing(spot) {
					got, ok := got.(sheet.Text)
					if !ok || got.String != text.String {
						continue
					}
					require.True(t, holds(d.grid.box(spot).Grow(mm), dimension.TextBox(got)), "seed %d: %q is cut", *seed, got.String)
					shown++
					if got == text {
						inPlace++
						pages++
					}
				}
			}
			require.Positive(t, shown, "seed %d: %q is lost", *seed, text.String)
			whole := 0
			for _, spot := range d.grid.spots() {
				if holds(d.grid.box(spot), box) {
					whole++
					require.True(t, d.keep[spot])
				}
			}
			require.LessOrEqual(t, whole, inPlace, "seed %d: %q", *seed, text.String)
			if whole == 0 {
				moved++
			}
		}
	}
	require.Greater(t, pages, 100)
	require.Greater(t, moved, 5)
}

// Moved texts keep clear of one another, and one too long for a page is made
// smaller.
func TestMovedTexts(t *testing.T) {
	a4, err := Named("A4")
	require.NoError(t, err)
	var marks []sheet.Mark
	for i := range length.Length(4) {
		marks = append(marks, note(fmt.Sprintf("words number %d over the border", i), at(160+i, 50)))
	}
	long := note(strings.Repeat("far too long for a page ", 8), at(5, 100))
	d := tilesOf(t, blank(700, 250, append(marks, long)...), a4, Options{})
	var boxes []plane.Box
	for _, spot := range d.order {
		for _, m := range d.onDrawing(spot) {
			text := m.(sheet.Text)
			if strings.HasPrefix(text.String, "far") {
				require.Less(t, text.Height, long.Height)
				continue
			}
			boxes = append(boxes, dimension.TextBox(text))
		}
	}
	require.Len(t, boxes, 4)
	for i, a := range boxes {
		for _, b := range boxes[:i] {
			require.False(t, a.Meets(b), "%v on %v", a, b)
		}
	}
}

// crossesOn are the registration marks of a page, by their place on the
// drawing.
func (d tiled) crossesOn(s spot) (centres []plane.Point) {
	box := d.grid.box(s)
	for _, m := range d.pages[s].Marks {
		if m, ok := m.(sheet.Stroke); ok && m.Layer == sheet.CentreMark && m.Path[0].Turn != plane.Straight {
			w := d.layout.window.Min
			centres = append(centres, m.Path[0].Centre.Add(box.Min.X-w.X, box.Min.Y-w.Y))
		}
	}
	return centres
}

// Every cross is on both neighbours, whole, and every two neighbours have two.
func TestCrossesOnBothNeighbours(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 2))
	pairs := 0
	for range 200 {
		d := tilesOf(t, anyDrawing(rnd), anyPaper(rnd), anyOptions(rnd))
		on := map[plane.Point][]spot{}
		for _, s := range d.order {
			for _, c := range d.crossesOn(s) {
				on[c] = append(on[c], s)
				require.True(t, d.grid.box(s).Grow(-crossArm).Holds(c), "seed %d: cross at %v is cut", *seed, c)
			}
		}
		shared := map[[2]spot]int{}
		for c, pages := range on {
			require.Len(t, pages, 2, "seed %d: cross at %v", *seed, c)
			shared[[2]spot{pages[0], pages[1]}]++
		}
		for i, a := range d.order {
			for _, b := range d.order[i+1:] {
				apart := max(a.row-b.row, b.row-a.row) + max(a.column-b.column, b.column-a.column)
				if apart == 1 {
					pairs++
					require.Equal(t, 2, shared[[2]spot{a, b}], "seed %d: %v and %v", *seed, a, b)
				} else {
					require.Zero(t, shared[[2]spot{a, b}])
				}
			}
		}
	}
	require.Greater(t, pairs, 100)
}

// Neighbours overlap by what was asked, at least 10 mm, and all pages have the
// paper's size once the writer has stretched them.
func TestOverlapAndPageSize(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 3))
	for range 200 {
		o, p := anyOptions(rnd), anyPaper(rnd)
		d := tilesOf(t, anyDrawing(rnd), p, o)
		for _, s := range d.order {
			if b := (spot{s.row, s.column + 1}); d.keep[b] {
				require.Equal(t, o.Overlap, d.grid.box(s).Max.X-d.grid.box(b).Min.X)
			}
			if b := (spot{s.row + 1, s.column}); d.keep[b] {
				require.Equal(t, o.Overlap, d.grid.box(b).Max.Y-d.grid.box(s).Min.Y)
			}
		}
		f := o.Correction.Factors()
		for _, page := range append(d.overview, func() (all []sheet.Sheet) {
			for _, s := range d.order {
				all = append(all, d.pages[s])
			}
			return all
		}()...) {
			require.NoError(t, page.Check())
			wide, high := page.Width.MM()*f.X, page.Height.MM()*f.Y
			if p.isRoll() {
				require.InDelta(t, 0, min(math.Abs(wide-p.Width.MM()), math.Abs(high-p.Width.MM())), 2e-6)
				require.LessOrEqual(t, max(wide, high), pdf.LongestPage.MM())
			} else {
				require.InDelta(t, p.Width.MM(), min(wide, high), 2e-6)
				require.InDelta(t, p.Height.MM(), max(wide, high), 2e-6)
			}
			require.Equal(t, d.layout.wide, page.Width)
		}
	}
}

// Nothing but the drawing's own far ends is printed outside the margin: page
// words, bars, squares and diagram stay inside, and no words on words.
func TestPagesOwnMarksHaveRoom(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 4))
	for range 300 {
		o := anyOptions(rnd)
		o.Part = []string{"Stile", strings.Repeat("A very long part name ", 20), ""}[rnd.IntN(3)]
		o.Revision = []string{"B", strings.Repeat("rev", 60), ""}[rnd.IntN(3)]
		d := tilesOf(t, anyDrawing(rnd), anyPaper(rnd), o)
		all := append([]sheet.Sheet{}, d.overview...)
		for _, s := range d.order {
			all = append(all, d.pages[s])
		}
		for _, page := range all {
			var words []plane.Box
			for _, m := range page.Marks {
				box := boundsOf(m)
				require.True(t, holds(d.layout.room.Grow(10*length.Nanometre), box), "seed %d: %s: %v outside of %v: %v", *seed, page.Name, box, d.layout.room, m)
				if text, ok := m.(sheet.Text); ok && text.Layer == sheet.Notes {
					for _, other := range words {
						require.False(t, box.Meets(other), "seed %d: %s: %q", *seed, page.Name, text.String)
					}
					words = append(words, box)
				}
			}
		}
	}
}

// What is blank is not printed, and crossed out on the overview; what holds
// the rest together is.
func TestBlankTiles(t *testing.T) {
	a4, err := Named("A4")
	require.NoError(t, err)
	corner := blank(700, 900,
		stroke(plane.Line(at(5, 5), at(5, 895))), stroke(plane.Line(at(5, 5), at(695, 5))))
	d := tilesOf(t, corner, a4, Options{})
	require.Equal(t, d.grid.rows+d.grid.columns-1, len(d.order))
	require.Less(t, len(d.order), len(d.grid.spots()))
	strokes := func(page sheet.Sheet) (diagonal int) {
		for _, m := range page.Marks {
			if s, ok := m.(sheet.Stroke); ok && s.Layer == sheet.Border && len(s.Path) == 1 && s.Path[0].From.X != s.Path[0].To.X && s.Path[0].From.Y != s.Path[0].To.Y {
				diagonal++
			}
		}
		return diagonal
	}
	require.Equal(t, 2*(len(d.grid.spots())-len(d.order)), strokes(d.overview[0]))
	require.Contains(t, wordsOf(d.overview[0]), "Crossed out: blank, not printed.")

	dots := tilesOf(t, blank(900, 900,
		stroke(plane.Line(at(5, 5), at(6, 5))), stroke(plane.Line(at(890, 890), at(891, 890)))), a4, Options{})
	require.Equal(t, dots.grid.rows+dots.grid.columns-1, len(dots.order), "a way of pages from one dot to the other")
	require.True(t, hangTogether(dots.grid.spots(), dots.keep))

	hidden := blank(700, 100, stroke(plane.Line(at(5, 5), at(6, 5))),
		sheet.Fill{Layer: sheet.Panel, Tone: sheet.Paper, Region: plane.Region{plane.Rect(at(0, 0), at(690, 90))}})
	require.Len(t, tilesOf(t, hidden, a4, Options{}).order, 1, "a fill that looks like paper is blank")
}

func TestHangTogether(t *testing.T) {
	all := []spot{{0, 0}, {0, 1}, {1, 0}, {1, 1}}
	require.True(t, hangTogether(all, map[spot]bool{{0, 0}: true, {0, 1}: true, {1, 1}: true}))
	require.False(t, hangTogether(all, map[spot]bool{{0, 0}: true, {1, 1}: true}), "corner to corner holds nothing")
}

func wordsOf(s sheet.Sheet) string {
	var words []string
	for _, m := range s.Marks {
		if t, ok := m.(sheet.Text); ok {
			words = append(words, t.String)
		}
	}
	return strings.Join(words, "\n")
}

// What every page says, and what the overview says besides.
func TestWordsOnPages(t *testing.T) {
	letter, err := Named("letter")
	require.NoError(t, err)
	d := tilesOf(t, stick(900, 300), letter, Options{Part: "Left stile SL", Revision: "C", Correction: pdf.Correction{X: 1.01}})
	of := len(d.order) + 1
	for _, s := range d.order {
		words := wordsOf(d.pages[s])
		for _, want := range []string{
			"Left stile SL", "REV C", "PRINT AT 100 %", "100 mm",
			fmt.Sprintf("row %d, column %d", s.row+1, s.column+1), fmt.Sprintf("PAGE %d OF %d", d.number(s), of),
		} {
			require.Contains(t, words, want)
		}
	}
	words := wordsOf(d.overview[0])
	for _, want := range []string{
		"Left stile SL", "REV C", "PRINT AT 100 %", "OVERVIEW", fmt.Sprintf("PAGE 1 OF %d", of), "100 mm", "4 in",
		"X 1.0100, Y 1.0000", "The middle of each line is the size.", "900 × 300 mm (~ 35 7/16\" × ~ 11 13/16\")",
	} {
		require.Contains(t, lettering.Plain(strings.ReplaceAll(words, "\n", " ")), want)
	}
	for _, s := range d.order {
		require.Contains(t, words, fmt.Sprint(d.number(s)), "its number in the diagram")
	}
}

// A roll takes a drawing in one page as long as it needs, up to what readers
// show; beyond, it is cut and never made smaller.
func TestRolls(t *testing.T) {
	d := tilesOf(t, stick(2000, 300), Roll(610*mm), Options{})
	require.Len(t, d.order, 1)
	require.Empty(t, d.overview)
	page := d.pages[spot{}]
	require.Equal(t, 610*mm, page.Height, "along its length")
	require.Greater(t, page.Width, 2000*mm)
	require.Contains(t, wordsOf(page), "4 in")
	require.Contains(t, wordsOf(page), "PAGE 1 OF 1")

	d = tilesOf(t, stick(9000, 300), Roll(610*mm), Options{Correction: pdf.Correction{X: 1.03}})
	require.Len(t, d.order, 2)
	require.Len(t, d.overview, 1)
	require.Equal(t, 1.0, float64(d.pages[spot{}].Scale.Paper)/float64(d.pages[spot{}].Scale.Real))

	d = tilesOf(t, stick(2000, 700), Roll(300*mm), Options{})
	require.Len(t, d.order, 3, "three strips")
	require.NoError(t, Write(io.Discard, stick(9000, 300), Roll(610*mm), Options{}))
}

// Fewer pages: upright or on its side as the drawing asks.
func TestPaperTurns(t *testing.T) {
	a4, err := Named("A4")
	require.NoError(t, err)
	upright := tilesOf(t, stick(150, 240), a4, Options{})
	require.Len(t, upright.order, 1)
	require.Less(t, upright.layout.wide, upright.layout.high)
	lying := tilesOf(t, stick(250, 150), a4, Options{})
	require.Len(t, lying.order, 1)
	require.Greater(t, lying.layout.wide, lying.layout.high)
}

func TestRefuses(t *testing.T) {
	a4, err := Named("A4")
	require.NoError(t, err)
	scaled := stick(900, 300)
	scaled.Scale = sheet.Scale{Paper: 1, Real: 10}
	for _, c := range []struct {
		sheet sheet.Sheet
		paper Paper
		o     Options
		want  string
	}{
		{sheet.Sheet{}, a4, Options{}, "no name"},
		{scaled, a4, Options{}, "it is drawn to 1:10"},
		{blank(900, 300), a4, Options{}, "it shows nothing"},
		{stick(900, 300), a4, Options{Margin: -mm}, "margin is -1 mm"},
		{stick(900, 300), a4, Options{Overlap: 9 * mm}, "overlap is 9 mm; it must be from 10 mm to 50 mm"},
		{stick(900, 300), a4, Options{Correction: pdf.Correction{X: 0.89}}, "along X is 0.8900; it must be from 0.9 to 1.1"},
		{stick(900, 300), a4, Options{Correction: pdf.Correction{Y: 1.11}}, "along Y is 1.1100; it must be from 0.9 to 1.1"},
		{stick(900, 300), a4, Options{Margin: 120 * mm}, "paper A4 leaves -30 mm by 57 mm inside margins of 120 mm; a page needs 160 mm by 220 mm"},
		{stick(900, 300), Paper{Name: "card", Width: 100 * mm, Height: 150 * mm}, Options{}, "paper card leaves 80 mm by 130 mm inside margins of 10 mm"},
		{stick(900, 300), Roll(90 * mm), Options{}, "leaves 70 mm by 280 mm"},
		{stick(900, 300), Roll(0), Options{}, "is 0 mm wide"},
		{stick(900, 300), Paper{Name: "long", Width: 600 * mm, Height: 6000 * mm}, Options{}, "is 6000 mm long; readers show pages up to 5080 mm"},
		{stick(9000, 9000), a4, Options{}, "pages of paper A4; at most 400 are drawn"},
	} {
		_, err := Tile(c.sheet, c.paper, c.o)
		require.ErrorContains(t, err, c.want)
		require.ErrorContains(t, Write(io.Discard, c.sheet, c.paper, c.o), c.want)
	}
	_, err = Named("A44")
	require.ErrorContains(t, err, "A44")
}

func TestSameBytes(t *testing.T) {
	var one, two bytes.Buffer
	require.NoError(t, Write(&one, stick(900, 300), Roll(610*mm), Options{Date: "2026-03-14"}))
	require.NoError(t, Write(&two, stick(900, 300), Roll(610*mm), Options{Date: "2026-03-14"}))
	require.Equal(t, one.Bytes(), two.Bytes())
	require.Contains(t, one.String(), "/PrintScaling /None /Enforce [/PrintScaling]")
}
