package tile

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/pdf"
	"stilewright/render/sheet"
)

// Options are what the pages say and how they are cut. The zero Options are
// usable.
type Options struct {
	Part     string // what the drawing is of; empty is the sheet's title
	Revision string
	Author   string // of the file; empty for none
	Date     string // of the file, YYYY-MM-DD; empty for none

	Margin     length.Length  // what the printer leaves white on every side; 0 is 10 mm
	Overlap    length.Length  // of neighbouring pages, LeastOverlap to MostOverlap; 0 is 12 mm
	Correction pdf.Correction // of the printer, from a measured test print

	Lay Lay // how the sheets of paper lie
}

// A Lay is how a sheet of paper lies. A roll has none.
type Lay int

// The lays.
const (
	EitherWay Lay = iota // whichever takes fewer pages
	Upright
	Lying
)

// How far pages may overlap: enough for a cross and for tape, and not so far that little is
// left of a page.
const (
	LeastOverlap = 10 * mm
	MostOverlap  = 50 * mm
)

// mostPages is how many pages anybody puts together; more is a wrong paper.
const mostPages = 400

// rim is what is shown round the sheet, so that its outer line is on the pages.
const rim = 2 * mm

func (o Options) margin() length.Length  { return cmp.Or(o.Margin, 10*mm) }
func (o Options) overlap() length.Length { return cmp.Or(o.Overlap, 12*mm) }

func (o Options) check() error {
	if o.Margin < 0 {
		return fmt.Errorf("margin is %s mm; it must be 0 or above", o.Margin.Decimal())
	}
	if lap := o.overlap(); lap < LeastOverlap || lap > MostOverlap {
		return fmt.Errorf("overlap is %s mm; it must be from %s mm to %s mm", lap.Decimal(), LeastOverlap.Decimal(), MostOverlap.Decimal())
	}
	if o.Lay < EitherWay || o.Lay > Lying {
		return fmt.Errorf("lay %d is none; they are from %d to %d", o.Lay, EitherWay, Lying)
	}
	return o.Correction.Check()
}

// Tile cuts a drawing at full size into pages of the paper, upright or on its
// side, whichever takes fewer.
//
// The first page is an overview: squares to measure, what to do, how the pages
// lie. On a roll that takes the whole drawing it stands beside the drawing on
// the one long page. Then follow the tiles, row by row from the top, without
// the blank ones that are not needed to hold the others together. All pages
// have one size, the paper's divided by the correction, and must be written
// by pdf.Write with the same Correction, as Write does.
//
// It fails on a sheet that sheet.Check refuses, that is to another scale than
// full size or shows nothing, and on paper or Options that cannot be.
func Tile(s sheet.Sheet, paper Paper, o Options) ([]sheet.Sheet, error) {
	return Book([]sheet.Sheet{s}, paper, o)
}

// Write tiles the drawing and writes the pages as one PDF file that asks to be
// printed at 100 %.
func Write(w io.Writer, s sheet.Sheet, paper Paper, o Options) error {
	pages, err := Tile(s, paper, o)
	if err != nil {
		return err
	}
	return pdf.Write(w, pages, pdf.Options{
		Title: cmp.Or(o.Part, s.Title), Author: o.Author, Date: o.Date, ActualSize: true, Correction: o.Correction,
	})
}

// A job is a drawing laid out on pages.
type job struct {
	sheet   sheet.Sheet
	options Options
	drawing drawing
	layout  layout
	grid    grid
	texts   map[spot]map[int]sheet.Text
	keep    map[spot]bool
	order   []spot // printed, in the order of the pages
	before  int    // pages of other drawings before these
	bare    bool   // without an overview of its own
}

// plan lays a drawing out on the paper, whichever way takes fewer pages.
func plan(s sheet.Sheet, paper Paper, o Options) (job, error) {
	ways, err := planned(s, paper, o)
	if err != nil {
		return job{}, err
	}
	best := ways[0]
	for _, j := range ways[1:] {
		if better(j.grid, j.layout, best.grid, best.layout) {
			best = j
		}
	}
	return best, best.choose(paper)
}

// planned lays a drawing out on the paper both ways: of a sheet upright and on
// its side.
func planned(s sheet.Sheet, paper Paper, o Options) ([]job, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	if err := o.check(); err != nil {
		return nil, err
	}
	if s.Scale.Paper != s.Scale.Real {
		return nil, fmt.Errorf("it is drawn to %d:%d; tiles put together a drawing at full size, 1:1", s.Scale.Paper, s.Scale.Real)
	}
	drawn := drawingOf(s)
	if !shows(drawn.marks) {
		return nil, fmt.Errorf("it shows nothing")
	}
	area := plane.BoxOf(plane.At(0, 0), plane.At(s.Width, s.Height)).Grow(rim)
	layouts, err := trueSizes(o).layouts(paper, area)
	if err != nil {
		return nil, err
	}
	if !paper.isRoll() && o.Lay != EitherWay {
		layouts = slices.Repeat(layouts[o.Lay-Upright:][:1], len(layouts))
	}
	var ways []job
	for _, l := range layouts {
		ways = append(ways, job{sheet: s, options: o, drawing: drawn, layout: l, grid: gridOf(area, l, o.overlap())})
	}
	return ways, nil
}

// better tells whether one layout takes fewer pages than another or, with as
// many, less paper.
func better(g grid, l layout, than grid, thanLayout layout) bool {
	return cmp.Or(cmp.Compare(g.rows*g.columns, than.rows*than.columns), cmp.Compare(l.size(), thanLayout.size())) < 0
}

// size is a page's area in whole mm²: paper turned on its side is as large.
func (l layout) size() float64 { return math.Round(l.wide.MM() * l.high.MM()) }

// choose finds which tiles are printed.
func (j *job) choose(paper Paper) error {
	if n := float64(j.grid.rows) * float64(j.grid.columns); n > mostPages {
		return fmt.Errorf("it takes %.0f pages of paper %s; at most %d are drawn: take larger paper", n, paper.Name, mostPages)
	}
	j.texts = j.drawing.textsOf(j.grid)
	blank := map[spot]bool{}
	for _, s := range j.grid.spots() {
		blank[s] = !shows(j.drawing.through(j.grid.box(s), j.texts[s]))
	}
	j.keep = printed(j.grid.spots(), blank)
	for _, s := range j.grid.spots() {
		if j.keep[s] {
			j.order = append(j.order, s)
		}
	}
	return nil
}

// onePage tells whether the overview stands on the drawing's only page.
func (j job) onePage() bool { return j.layout.block != plane.Box{} }

// number is the page a tile is printed on, 0 if it is not.
func (j job) number(s spot) int {
	for i, o := range j.order {
		if o == s {
			return j.before + i + j.firstTile()
		}
	}
	return 0
}

func (j job) firstTile() int {
	if j.onePage() || j.bare {
		return 1
	}
	return 2
}

// count is how many pages the drawing takes.
func (j job) count() int { return len(j.order) + j.firstTile() - 1 }

func (j job) title() string { return cmp.Or(j.options.Part, j.sheet.Title, j.sheet.Name) }

// pages are the drawing's pages in a file of so many.
func (j job) pages(of int) (all []sheet.Sheet) {
	if !j.onePage() && !j.bare {
		p := page{layout: j.layout}
		p.bars()
		p.foot(j.options, j.title(), "OVERVIEW", j.before+1, of)
		j.overview(&p, p.window)
		all = append(all, j.finish(p, "overview", "Overview", "How the pages lie, and squares to measure."))
	}
	for _, s := range j.order {
		all = append(all, j.tile(s, of))
	}
	return all
}

// tile is one page of the drawing. Its own marks stand over the drawing's.
func (j job) tile(s spot, of int) sheet.Sheet {
	p := page{layout: j.layout}
	box := j.grid.box(s)
	dx, dy := p.window.Min.X-box.Min.X, p.window.Min.Y-box.Min.Y
	for _, m := range append(j.drawing.through(box, j.texts[s]), j.outer(box)...) {
		p.marks = append(p.marks, moved(m, dx, dy))
	}
	for _, n := range s.neighbours() {
		if !j.keep[n] {
			continue
		}
		for _, at := range j.grid.crosses(s, n) {
			p.cross(at.Add(dx, dy))
		}
	}
	p.trims(s, j.keep)
	p.bars()
	place := fmt.Sprintf("row %d, column %d", s.row+1, s.column+1)
	p.foot(j.options, j.title(), place, j.number(s), of)
	if j.onePage() {
		j.overview(&p, p.block)
	}
	return j.finish(p, fmt.Sprintf("r%d-c%d", s.row+1, s.column+1), fmt.Sprintf("Row %d, column %d", s.row+1, s.column+1),
		"A part of the drawing at full size.")
}

// outer is what a window shows of the line round the whole sheet.
func (j job) outer(window plane.Box) []sheet.Mark {
	whole := plane.BoxOf(plane.At(0, 0), plane.At(j.sheet.Width, j.sheet.Height))
	return cutStroke(sheet.Stroke{Layer: sheet.Border, Weight: sheet.Narrow, Path: whole.Path()}, window)
}

func (j job) finish(p page, name, title, description string) sheet.Sheet {
	return sheet.Sheet{
		Name: j.sheet.Name + "-" + name, Title: title, Description: description,
		Width: p.wide, Height: p.high, Scale: sheet.Scale{Paper: 1, Real: 1}, Marks: p.marks,
	}
}
