package drawing

import (
	"fmt"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// A cell is one field of the title strip.
type cell struct {
	name, value string
	share       length.Length // of the strip's width
}

// title draws border and title strip.
func (p *page) title(plan plan, n, of int) {
	p.border(p.frame.Path(), sheet.Frame)
	top := p.frame.Min.Y + stripHeight
	p.border(plane.Path{plane.Line(plane.At(p.frame.Min.X, top), plane.At(p.frame.Max.X, top))}, sheet.Wide)
	scale := p.scaleName
	if p.mixed {
		scale = "as shown"
	}
	cells := []cell{
		{"JOB", p.set.Job, 29}, {"SHEET", plan.title, 20}, {"SCALE", scale, 13}, {"UNITS", p.unitWords(), 12},
		{strings.TrimSpace("DRAWN " + p.set.By), p.set.Drawn, 13}, {"REV", p.set.Revision, 6}, {"NO.", fmt.Sprintf("%d of %d", n, of), 7},
	}
	x := p.frame.Min.X
	for i, c := range cells {
		wide := p.frame.Width() * c.share / 100
		if i > 0 {
			p.border(plane.Path{plane.Line(plane.At(x, p.frame.Min.Y), plane.At(x, top))}, sheet.Narrow)
		}
		name, _ := fitted(c.name, wide-4*mm, figureHeight)
		p.text(plane.At(x+2*mm, top-9*mm/2), figureHeight, sheet.Start, false, name)
		value, height := fitted(c.value, wide-4*mm, titleHeight)
		p.text(plane.At(x+2*mm, p.frame.Min.Y+7*mm/2), height, sheet.Start, false, value)
		x += wide
	}
}

// fitted is the text at the height, lower if that makes it fit, and cut with
// dots when it does not fit at the least height.
func fitted(s string, room, height length.Length) (string, length.Length) {
	s = lettering.Legible(s)
	if lettering.Advance(s, height) <= room {
		return s, height
	}
	height = figureHeight
	for cut := []rune(s); ; cut = cut[:len(cut)-1] {
		whole := string(cut)
		if len(cut) < len([]rune(s)) {
			whole = strings.TrimSpace(whole) + "..."
		}
		if len(cut) == 0 || lettering.Advance(whole, height) <= room {
			return whole, height
		}
	}
}

// unitWords says what figures are in.
func (p *page) unitWords() string {
	if p.set.Units == length.Inches {
		return "inches"
	}
	return "millimetres"
}

// border draws a line of the sheet's frame.
func (p *page) border(path plane.Path, weight sheet.Weight) {
	p.lines = append(p.lines, sheet.Stroke{Layer: sheet.Border, Weight: weight, Path: path})
}

// table sets rows of text in columns from the upper left corner down, the first
// row as its head, and returns its height. Columns named by right are set to
// the right.
func (p *page) table(corner plane.Point, rows [][]string, right map[int]bool) (wide, high length.Length) {
	columns := columnWidths(rows)
	wide, _ = p.tableSize(rows)
	const pad = tablePad
	y := corner.Y
	for n, row := range rows {
		x := corner.X
		for i, s := range row {
			at, align := x+pad, sheet.Start
			if right[i] {
				at, align = x+pad+columns[i], sheet.End
			}
			p.text(plane.At(at, y-linePitch), figureHeight, align, false, s)
			x += columns[i] + 2*pad
		}
		y -= linePitch + mm
		if n == 0 {
			y -= mm
			p.border(plane.Path{plane.Line(plane.At(corner.X, y+mm/2), plane.At(corner.X+wide, y+mm/2))}, sheet.Narrow)
		}
	}
	return wide, corner.Y - y
}

// tablePad is left on both sides of a column.
const tablePad = 5 * mm / 2

// columnWidths are the widths of a table's columns.
func columnWidths(rows [][]string) []length.Length {
	columns := make([]length.Length, len(rows[0]))
	for _, row := range rows {
		for i, s := range row {
			columns[i] = max(columns[i], advance(s))
		}
	}
	return columns
}

// tableSize is the room a table takes.
func (p *page) tableSize(rows [][]string) (wide, high length.Length) {
	columns := columnWidths(rows)
	return tablePad*length.Length(2*len(columns)) + length.Sum(columns...), length.Length(len(rows))*(linePitch+mm) + mm
}

// notes sets lines of text from the upper left corner down, in n columns of one
// width.
func (p *page) notes(corner plane.Point, n int, lines ...string) {
	wide, _ := columns(n, lines)
	step := (wide + gutter) / length.Length(n)
	for i, column := range paragraphs(n, lines) {
		for k, s := range column {
			at := corner.Add(step*length.Length(i), -linePitch*length.Length(k+1))
			p.text(at, figureHeight, sheet.Start, false, s)
		}
	}
}
