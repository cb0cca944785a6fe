package template

import (
	"cmp"
	"io"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
	"stilewright/render/tile"
)

// apart is left between templates on one plate.
const apart = 2 * mm

// A plate is templates side by side in rows, on what is cut into pages as one
// drawing.
type plate struct {
	wide, high length.Length // most; 0 for no limit
	rows       []row         // from the top
}

type row struct {
	sheets []sheet.Sheet
	used   plane.Point // width and height taken
}

// used is what the rows take.
func (p plate) used() (wide, high length.Length) {
	for i, r := range p.rows {
		wide = max(wide, r.used.X)
		if high += r.used.Y; i > 0 {
			high += apart
		}
	}
	return wide, high
}

// take puts a template at the end of the first row with room, or into a row of
// its own. A template larger than the plate is taken if the plate is empty.
func (p *plate) take(s sheet.Sheet) bool {
	for i := range p.rows {
		r := &p.rows[i]
		if s.Height <= r.used.Y && r.used.X+apart+s.Width <= p.wide {
			r.sheets, r.used.X = append(r.sheets, s), r.used.X+apart+s.Width
			return true
		}
	}
	_, high := p.used()
	if len(p.rows) > 0 && (p.high > 0 && high+apart+s.Height > p.high || s.Width > p.wide) {
		return false
	}
	p.rows = append(p.rows, row{[]sheet.Sheet{s}, plane.At(s.Width, s.Height)})
	return true
}

// pack puts templates onto as few plates as go without moving one back.
func pack(sheets []sheet.Sheet, wide, high length.Length) (plates []plate) {
	sorted := slices.Clone(sheets)
	slices.SortStableFunc(sorted, func(a, b sheet.Sheet) int {
		return cmp.Or(cmp.Compare(b.Height, a.Height), cmp.Compare(b.Width, a.Width))
	})
	for _, s := range sorted {
		taken := false
		for i := range plates {
			if taken = plates[i].take(s); taken {
				break
			}
		}
		if !taken {
			p := plate{wide: wide, high: high}
			p.take(s)
			plates = append(plates, p)
		}
	}
	return plates
}

// sheet is the plate as one drawing.
func (p plate) sheet(name, job string) sheet.Sheet {
	wide, high := p.used()
	out := sheet.Sheet{Name: name, Width: wide, Height: high, Scale: sheet.Scale{Paper: 1, Real: 1}, Description: "Templates at full size, side by side."}
	var titles []string
	y := high
	for _, r := range p.rows {
		x := length.Length(0)
		for _, s := range r.sheets {
			for _, m := range s.Marks {
				out.Marks = append(out.Marks, moved(m, x, y-s.Height))
			}
			titles = append(titles, s.Title)
			x += s.Width + apart
		}
		y -= r.used.Y + apart
	}
	out.Title = strings.Join(titles, "; ") + " · " + job
	return out
}

// Plates are a set's templates brought together on drawings to be cut into
// pages of the paper: story sticks one above another as many as a page is high,
// other templates as many as a page takes. On a roll all stand together, as far
// as it is wide enough.
//
// It also tells how the paper must lie for them.
func Plates(s door.Set, paper tile.Paper, o tile.Options, track ...length.Length) ([]sheet.Sheet, tile.Lay, error) {
	windows, err := tile.Windows(paper, o)
	if err != nil {
		return nil, 0, err
	}
	all := Sheets(s, track...)
	var best []plate
	var least float64
	lay := tile.EitherWay
	for i, w := range windows {
		if paper.Height == 0 && i == 0 {
			continue // a roll's drawings lie along it
		}
		plates := packed(all, w[0], w[1])
		pages := 0.0
		for _, p := range plates {
			pages += pagesOf(p, w)
		}
		if best == nil || pages <= least { // lying where it takes no more: fewer seams in a stick
			best, least, lay = plates, pages, []tile.Lay{tile.Upright, tile.Lying}[i]
		}
	}
	var drawings []sheet.Sheet
	for i, p := range best {
		drawings = append(drawings, p.sheet(named("templates", i, len(best)+1), s.Job))
	}
	return drawings, lay, nil
}

// packed puts the sticks on plates as long as the longest, and the rest on
// plates of a page; on a roll, whose pages have no width of their own, all on
// plates as long as the longest.
func packed(all []sheet.Sheet, wide, high length.Length) []plate {
	var strips, rest []sheet.Sheet
	var longest length.Length
	for _, s := range all {
		if strings.HasPrefix(s.Name, "stick-") {
			strips = append(strips, s)
		} else {
			rest = append(rest, s)
		}
		longest = max(longest, s.Width)
	}
	if wide == 0 {
		return pack(all, longest, high)
	}
	return append(pack(strips, longest, high), pack(rest, wide, high)...)
}

// pagesOf is about how many pages a plate takes.
func pagesOf(p plate, window [2]length.Length) float64 {
	wide, high := p.used()
	n := 1.0
	for i, size := range []length.Length{wide, high} {
		if window[i] > 0 && size > window[i] {
			n *= float64(1 + (size-1)/window[i])
		}
	}
	return n
}

// Write writes the templates as one PDF file of pages of the paper, to be
// printed at 100 %.
func Write(w io.Writer, s door.Set, paper tile.Paper, o tile.Options, track ...length.Length) error {
	plates, lay, err := Plates(s, paper, o, track...)
	if err != nil {
		return err
	}
	o.Lay, o.Revision, o.Author, o.Date = lay, s.Revision, s.By, s.Drawn
	return tile.WriteBook(w, s.Job+", full-size templates", plates, paper, o)
}
