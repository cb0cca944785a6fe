package layout

import (
	"fmt"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/list"
	"stilewright/render/sheet"
)

const (
	cellPad     = 3 * mm / 2
	leastColumn = 12 * mm
)

// A grid is a table measured for a width: its column widths and wrapped cells.
type grid struct {
	table list.Table
	wide  []length.Length
	rows  [][][]string // head first; each cell's lines
}

// gridOf measures a table for a width. The widest columns of text are narrowed
// and wrapped until it fits; it errs when they would be too narrow to read.
func gridOf(t list.Table, room length.Length) (grid, error) {
	g := grid{table: t, wide: make([]length.Length, len(t.Columns))}
	for i := range t.Columns {
		g.wide[i] = wordWidth(t.Head(i))
		for n := range t.Rows {
			g.wide[i] = max(g.wide[i], lettering.Advance(lettering.Legible(t.Figure(n, i)), letterHeight))
		}
	}
	room -= 2 * cellPad * length.Length(len(g.wide))
	for over := length.Sum(g.wide...) - room; over > 0; over = length.Sum(g.wide...) - room {
		widest := -1
		for i, c := range t.Columns {
			if c.Kind == list.Text && g.wide[i] > leastColumn && (widest < 0 || g.wide[i] > g.wide[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			return g, fmt.Errorf("%s needs %s mm more width than the paper has: name a larger paper", t.Title, over.Decimal())
		}
		g.wide[widest] = max(leastColumn, g.wide[widest]-max(mm, over/8))
	}
	head := make([][]string, len(t.Columns))
	for i := range t.Columns {
		head[i] = wrapped(t.Head(i), g.wide[i], letterHeight)
	}
	g.rows = append(g.rows, head)
	for n := range t.Rows {
		row := make([][]string, len(t.Columns))
		for i := range t.Columns {
			row[i] = wrapped(t.Figure(n, i), g.wide[i], letterHeight)
		}
		g.rows = append(g.rows, row)
	}
	return g, nil
}

// wordWidth is the width of a text's longest word: a head wraps between words.
func wordWidth(s string) length.Length {
	var most length.Length
	for word := range words(s) {
		most = max(most, lettering.Advance(word, letterHeight))
	}
	return most
}

// height of a row: its highest cell.
func (g grid) height(row int) length.Length {
	lines := 1
	for _, cell := range g.rows[row] {
		lines = max(lines, len(cell))
	}
	return linePitch*length.Length(lines) + mm
}

// draw sets rows from `from` on into a box from its top down, the head above
// them, as many as fit; it returns the next row and the foot of what it drew.
func (g grid) draw(p *page, left, top, foot length.Length, from int) (next int, end length.Length) {
	right := left
	for _, w := range g.wide {
		right += w + 2*cellPad
	}
	y := g.row(p, left, top, 0) - mm
	p.line(sheet.Border, sheet.Wide, plane.Path{plane.Line(plane.At(left, y+mm), plane.At(right, y+mm))})
	for next = from; next < len(g.rows); next++ {
		if y-g.height(next) < foot && next > from {
			break
		}
		y = g.row(p, left, y, next)
		p.line(sheet.Border, sheet.Narrow, plane.Path{plane.Line(plane.At(left, y), plane.At(right, y))})
	}
	return next, y
}

// row sets one row with its top at y and returns its foot.
func (g grid) row(p *page, left, y length.Length, n int) length.Length {
	x := left
	for i, cell := range g.rows[n] {
		for k, s := range cell {
			at, align := plane.At(x+cellPad, y-linePitch*length.Length(k+1)+mm/2), sheet.Start
			if g.table.Columns[i].Kind != list.Text {
				at.X, align = x+cellPad+g.wide[i], sheet.End
			}
			p.text(at, letterHeight, align, s)
		}
		x += g.wide[i] + 2*cellPad
	}
	return y - g.height(n)
}

// tablePages draws a table on as many pages as it takes, words before it on the
// first, and returns the last.
func (b *builder) tablePages(t list.Table, about string, before ...string) *page {
	if len(t.Rows) == 0 || b.err != nil {
		return nil
	}
	return b.tableOn(b.add(t.Name, t.Title, about), t, before...)
}

// tableOn draws a table below what stands on a page, on further pages where it
// runs over, and returns the last.
func (b *builder) tableOn(p *page, t list.Table, before ...string) *page {
	if p == nil || len(t.Rows) == 0 || b.err != nil {
		return p
	}
	g, err := gridOf(t, p.work.Width())
	if err != nil {
		b.err = err
		return p
	}
	p.below(titleHeight, t.Title)
	p.top -= 2 * mm
	for _, s := range before {
		p.below(letterHeight, s)
	}
	next := 1
	for {
		next, p.top = g.draw(p, p.work.Min.X, p.top-2*mm, p.work.Min.Y, next)
		if next >= len(g.rows) {
			p.top -= 2 * gutter
			return p
		}
		p = b.add(t.Name, t.Title, p.about)
	}
}

// printed is a list as it is printed: without the columns named, which only a
// spreadsheet has use for.
func printed(t list.Table, without ...string) list.Table {
	out := list.Table{Name: t.Name, Title: t.Title, Units: t.Units, Rows: make([][]list.Cell, len(t.Rows))}
	for i, c := range t.Columns {
		if slices.Contains(without, c.Head) {
			continue
		}
		out.Columns = append(out.Columns, c)
		for n := range t.Rows {
			out.Rows[n] = append(out.Rows[n], t.Rows[n][i])
		}
	}
	return out
}
