package tile

import (
	"fmt"
	"io"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/pdf"
	"stilewright/render/sheet"
)

// plainPages is how many pages lie together plainly enough without an overview.
const plainPages = 2

// Book cuts several drawings at full size into the pages of one file, as Tile
// does one: all pages of one size and counted through, each drawing begun on a
// page of its own. The first drawing has an overview, with the squares to
// measure; of the others those that take more than two pages have one. Options.Part
// is best left empty: each page then names its own drawing by the sheet's title.
//
// On a roll the pages are of one size when the drawings are.
func Book(sheets []sheet.Sheet, paper Paper, o Options) ([]sheet.Sheet, error) {
	jobs, err := bind(sheets, paper, o)
	if err != nil {
		return nil, err
	}
	of := 0
	for _, j := range jobs {
		of += j.count()
	}
	var pages []sheet.Sheet
	for _, j := range jobs {
		pages = append(pages, j.pages(of)...)
	}
	return pages, nil
}

// bind plans all drawings on paper laid the same way, whichever takes fewer
// pages in all.
func bind(sheets []sheet.Sheet, paper Paper, o Options) ([]job, error) {
	if len(sheets) == 0 {
		return nil, fmt.Errorf("no drawing to cut into pages")
	}
	var ways [2][]job
	var tiles [2]int
	var area [2]float64
	for _, s := range sheets {
		both, err := planned(s, paper, o)
		if err != nil {
			return nil, fmt.Errorf("tiles of sheet %s: %w", s.Name, err)
		}
		for i, j := range both {
			n := j.grid.rows * j.grid.columns
			ways[i] = append(ways[i], j)
			tiles[i] += n
			area[i] += float64(n) * j.layout.size()
		}
	}
	jobs := ways[0]
	if tiles[1] < tiles[0] || tiles[1] == tiles[0] && area[1] < area[0] {
		jobs = ways[1]
	}
	before := 0
	for i := range jobs {
		j := &jobs[i]
		if err := j.choose(paper); err != nil {
			return nil, fmt.Errorf("tiles of sheet %s: %w", j.sheet.Name, err)
		}
		j.before, j.bare = before, i > 0 && len(j.order) <= plainPages
		before += j.count()
	}
	return jobs, nil
}

// WriteBook writes the pages of Book as one PDF file that asks to be printed at
// 100 %.
func WriteBook(w io.Writer, title string, sheets []sheet.Sheet, paper Paper, o Options) error {
	pages, err := Book(sheets, paper, o)
	if err != nil {
		return err
	}
	return pdf.Write(w, pages, pdf.Options{Title: title, Author: o.Author, Date: o.Date, ActualSize: true, Correction: o.Correction})
}

// Windows are the sizes of the largest drawings that one page of the paper
// shows whole, upright and on its side: width and height in turn. A roll's
// length is free; along it, the size is 0.
func Windows(paper Paper, o Options) ([2][2]length.Length, error) {
	var sizes [2][2]length.Length
	if err := o.check(); err != nil {
		return sizes, err
	}
	layouts, err := trueSizes(o).layouts(paper, plane.BoxOf(plane.At(0, 0), plane.At(mm, mm)))
	if err != nil {
		return sizes, err
	}
	for i, l := range layouts {
		sizes[i] = [2]length.Length{l.window.Width() - 2*rim, l.window.Height() - 2*rim}
	}
	if paper.isRoll() {
		sizes[0][1], sizes[1][0] = 0, 0
	}
	return sizes, nil
}
