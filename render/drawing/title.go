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
	p.rule(p.border.Path(), sheet.Frame)
	p.zones()
	scale := p.scaleName
	if p.mixed {
		scale = "as shown"
	}
	job, name := cell{"JOB", p.set.Job, 23}, cell{"SHEET", plan.title, 17}
	rest := []cell{{"MATERIAL", p.material, 12}, {"SCALE", scale, 11}, {"UNITS", p.unitWords(), 9},
		{strings.TrimSpace("DRAWN " + p.set.By), p.set.Drawn, 10}, {"REV", p.set.Revision, 5}, {"NO.", fmt.Sprintf("%d of %d", n, of), 6}, {"", "", 7}}
	if p.stripHeight() == stripRow {
		p.strip(p.frame.Min.Y, append([]cell{job, name}, rest...))
		return
	}
	p.strip(p.frame.Min.Y, rest)
	p.strip(p.frame.Min.Y+stripRow, []cell{job, name})
}

// leastStrip is the least width of a frame whose title strip is one row of
// cells; narrower ones have two.
const leastStrip = 330 * mm

// stripHeight is the height of the title strip.
func (p *page) stripHeight() length.Length {
	if p.frame.Width() < leastStrip {
		return 2 * stripRow
	}
	return stripRow
}

// strip draws one row of cells at a height; what the last one has no name for is
// the sign of the projection.
func (p *page) strip(foot length.Length, cells []cell) {
	top := foot + stripRow
	p.rule(plane.Path{plane.Line(plane.At(p.frame.Min.X, top), plane.At(p.frame.Max.X, top))}, sheet.Wide)
	var whole length.Length
	for _, c := range cells {
		whole += c.share
	}
	x := p.frame.Min.X
	for i, c := range cells {
		wide := p.frame.Width() * c.share / whole
		if i > 0 {
			p.rule(plane.Path{plane.Line(plane.At(x, foot), plane.At(x, top))}, sheet.Narrow)
		}
		if c.name == "" {
			p.thirdAngle(plane.At(x+(p.frame.Max.X-x).Half(), foot+stripRow.Half()))
			continue
		}
		name, _ := fitted(c.name, wide-4*mm, figureHeight)
		p.text(plane.At(x+2*mm, top-9*mm/2), figureHeight, sheet.Start, false, name)
		value, height := fitted(c.value, wide-4*mm, titleHeight)
		p.text(plane.At(x+2*mm, foot+3*mm), height, sheet.Start, false, value)
		x += wide
	}
}

// thirdAngle draws the sign of third-angle projection, a cut cone from its end
// and from its side (ISO 5456-2, proportions from memory), about a point.
func (p *page) thirdAngle(at plane.Point) {
	const large, small, long = 3 * mm, 3 * mm / 2, 6 * mm
	end, cone := at.Add(-5*mm, 0), at.Add(mm, 0)
	p.rule(plane.Circle(end, large), sheet.Narrow)
	p.rule(plane.Circle(end, small), sheet.Narrow)
	p.rule(plane.Polygon(cone.Add(0, -small), cone.Add(long, -large), cone.Add(long, large), cone.Add(0, small)), sheet.Narrow)
	for _, line := range []plane.Edge{
		plane.Line(end.Add(-large-mm, 0), end.Add(large+mm, 0)), plane.Line(end.Add(0, -large-mm), end.Add(0, large+mm)),
		plane.Line(cone.Add(-mm, 0), cone.Add(long+mm, 0)),
	} {
		p.lines = append(p.lines, sheet.Stroke{Layer: sheet.Border, Weight: sheet.Narrow, Line: sheet.Centre, Path: plane.Path{line}})
	}
}

// zones marks fields of about 50 mm along the border, numbers across and letters
// down, so that a place on the sheet can be named.
func (p *page) zones() {
	if p.frame == p.border {
		return
	}
	p.rule(p.frame.Path(), sheet.Narrow)
	fields := func(size length.Length) length.Length { return max(2, 2*((size+zoneField)/(2*zoneField))) }
	n := fields(p.border.Width())
	for i := range n {
		x, next := p.border.Min.X+p.border.Width()*i/n, p.border.Min.X+p.border.Width()*(i+1)/n
		name := fmt.Sprint(int(i) + 1)
		for _, y := range []length.Length{p.border.Min.Y, p.frame.Max.Y} {
			p.zone(plane.At((x+next).Half(), y+zoneBand.Half()), name, plane.Line(plane.At(next, y), plane.At(next, y+zoneBand)), i < n-1)
		}
	}
	n = fields(p.border.Height())
	letters := []rune("ABCDEFGHJKLMNPQRSTUVWXYZ") // without I and O
	for i := range n {
		y, next := p.border.Max.Y-p.border.Height()*i/n, p.border.Max.Y-p.border.Height()*(i+1)/n
		name := string(letters[int(i)%len(letters)])
		for _, x := range []length.Length{p.border.Min.X, p.frame.Max.X} {
			p.zone(plane.At(x+zoneBand.Half(), (y+next).Half()), name, plane.Line(plane.At(x, next), plane.At(x+zoneBand, next)), i < n-1)
		}
	}
}

// zone names one field and draws the mark at its end.
func (p *page) zone(middle plane.Point, name string, mark plane.Edge, marked bool) {
	t := centred(middle, name, figureHeight, false)
	t.Layer = sheet.Border
	p.over = append(p.over, t)
	if marked {
		p.rule(plane.Path{mark}, sheet.Narrow)
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
	switch {
	case p.set.Written == "dual" && p.set.Units == length.Inches:
		return "inches [mm]"
	case p.set.Written == "dual":
		return "mm [inches]"
	}
	if p.set.Units == length.Inches {
		return "inches"
	}
	return "millimetres"
}

// rule draws a line of the sheet's frame.
func (p *page) rule(path plane.Path, weight sheet.Weight) {
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
			p.rule(plane.Path{plane.Line(plane.At(corner.X, y+mm/2), plane.At(corner.X+wide, y+mm/2))}, sheet.Narrow)
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

// tableWidth is how wide a table is.
func tableWidth(rows [][]string) length.Length {
	columns := columnWidths(rows)
	return tablePad*length.Length(2*len(columns)) + length.Sum(columns...)
}

// tableSize is the room a table takes.
func (p *page) tableSize(rows [][]string) (wide, high length.Length) {
	return tableWidth(rows), length.Length(len(rows))*(linePitch+mm) + mm
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
