package tile

import (
	"fmt"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// The squares one measures to see whether a print is true. They overlap, each
// side free to lay a rule along, so that both fit on office paper.
const (
	metricSquare = 100 * mm
	inchSquare   = 4 * length.Inch
	squareOffset = 14 * mm
	squaresSide  = squareOffset + inchSquare
	zoneGap      = 8 * mm
)

// overview draws the squares, what to do, and how the pages lie, into a box of
// the page.
func (j job) overview(p *page, in plane.Box) {
	p.squares(in.Min.Add(mm, mm))
	used := squaresSide + 2*mm
	beside := plane.BoxOf(plane.At(in.Min.X+used+zoneGap, in.Min.Y), in.Max)
	over := plane.BoxOf(plane.At(in.Min.X, in.Min.Y+used+zoneGap), in.Max)
	zone := over
	if area := func(b plane.Box) float64 { return max(0, b.Width().MM()) * max(0, b.Height().MM()) }; area(beside) > area(over) {
		zone = beside
	}
	top := zone.Max.Y - headHeight - 2*mm
	p.write(plane.At(zone.Min.X+mm, top), sheet.Start, headHeight, fitted(j.title(), zone.Width()-2*mm, headHeight))
	top -= 3 * mm
	for _, line := range wrapped(j.instructions(), zone.Width()-2*mm) {
		top -= notePitch
		p.write(plane.At(zone.Min.X+mm, top), sheet.Start, noteHeight, line)
	}
	zone.Max.Y = top - zoneGap.Half()
	j.diagram(p, zone)
}

func (p *page) squares(corner plane.Point) {
	p.box(sheet.Dimensions, plane.BoxOf(corner, corner.Add(metricSquare, metricSquare)))
	p.write(corner.Add(3*mm/2, 3*mm/2), sheet.Start, noteHeight, "100 mm")
	inner := corner.Add(squareOffset, squareOffset)
	p.box(sheet.Dimensions, plane.BoxOf(inner, inner.Add(inchSquare, inchSquare)))
	p.write(inner.Add(inchSquare-3*mm/2, inchSquare-4*mm), sheet.End, noteHeight, "4 in")
}

// instructions is what the overview says, a paragraph each.
func (j job) instructions() []string {
	factors := j.options.Correction.Factors()
	lines := []string{
		"Print at 100 %: no fit, shrink or scale to page.",
		"Measure both squares, 100 mm and 4 in, along X (across) and along Y (up), before anything else. If they are off, draw again with what the 100 mm square measures; do not use this print.",
		fmt.Sprintf("Correction in these pages: X %.4f, Y %.4f.", factors.X, factors.Y),
		"The middle of each line is the size.",
	}
	if len(j.order) > 1 {
		lines = append(lines, "Cut along the dashed lines at the left and at the foot, lay each page over its neighbours so that the crosses meet, and tape it. Rows are counted from the top.")
	}
	inches := func(l length.Length) string {
		return strings.ReplaceAll(length.Style{Unit: length.Inches, Mark: true}.Format(l), " ", unbroken)
	}
	lines = append(lines, fmt.Sprintf("Put together, the thin outer line measures %s × %s mm (%s × %s).",
		j.sheet.Width.Decimal(), j.sheet.Height.Decimal(), inches(j.sheet.Width), inches(j.sheet.Height)))
	for i, line := range lines {
		lines[i] = fmt.Sprintf("%d. %s", i+1, line)
	}
	return lines
}

// unbroken is a space at which no line ends.
const unbroken = "\u00a0"

// wrapped breaks paragraphs into lines that fit the room.
func wrapped(paragraphs []string, room length.Length) (lines []string) {
	for _, paragraph := range paragraphs {
		line := ""
		for _, word := range strings.Split(paragraph, " ") {
			longer := strings.TrimSpace(line + " " + word)
			if line != "" && lettering.Advance(longer, noteHeight) > room {
				lines, line = append(lines, line), word
				continue
			}
			line = longer
		}
		lines = append(lines, line)
	}
	for i, line := range lines {
		lines[i] = strings.ReplaceAll(line, unbroken, " ")
	}
	return lines
}

// diagram draws how the pages lie, with their numbers, over the drawing made
// small. Pages that are not printed are crossed out.
func (j job) diagram(p *page, in plane.Box) {
	if len(j.order) == 1 && len(j.grid.spots()) == 1 {
		return
	}
	all := j.grid.box(spot{}).Join(j.grid.box(spot{j.grid.rows - 1, j.grid.columns - 1}))
	legend := len(j.order) < len(j.grid.spots())
	if legend {
		in.Min.Y += 2 * notePitch
	}
	if min(in.Width(), in.Height()) < 10*mm {
		return
	}
	scale := min(in.Width().MM()/all.Width().MM(), in.Height().MM()/all.Height().MM())
	place := func(q plane.Point) plane.Point {
		return plane.At(in.Min.X+length.Round((q.X-all.Min.X).MM()*scale), in.Max.Y-length.Round((all.Max.Y-q.Y).MM()*scale))
	}
	for _, m := range j.drawing.marks {
		if s, ok := m.(sheet.Stroke); ok && s.Layer != sheet.Dimensions && s.Layer != sheet.Border {
			s.Line = sheet.Continuous
			for _, piece := range cutStroke(s, all) {
				p.small(piece.(sheet.Stroke), place)
			}
		}
	}
	for _, s := range j.grid.spots() {
		b := j.grid.box(s)
		b = plane.BoxOf(place(b.Min), place(b.Max))
		p.box(sheet.Border, b)
		if number := j.number(s); number > 0 {
			p.inside(b, fmt.Sprint(number))
			continue
		}
		p.line(sheet.Border, sheet.Continuous, b.Min, b.Max)
		p.line(sheet.Border, sheet.Continuous, plane.At(b.Min.X, b.Max.Y), plane.At(b.Max.X, b.Min.Y))
	}
	if legend {
		foot := place(all.Min)
		p.write(plane.At(in.Min.X, foot.Y-2*notePitch), sheet.Start, noteHeight, "Crossed out: blank, not printed.")
	}
}

// small draws a stroke of the drawing made small and thin; edges that vanish
// are left out.
func (p *page) small(s sheet.Stroke, place func(plane.Point) plane.Point) {
	const least = mm / 5
	if b := s.Path.Bounds(); max(place(b.Max).X-place(b.Min).X, place(b.Max).Y-place(b.Min).Y) < least {
		return
	}
	var path plane.Path
	for _, e := range s.Path.Map(place, false) {
		switch {
		case e.From == e.To:
			continue
		case e.Centre == e.From || e.Centre == e.To:
			e = plane.Line(e.From, e.To)
		}
		path = append(path, e)
	}
	if len(path) > 0 {
		p.marks = append(p.marks, sheet.Stroke{Layer: s.Layer, Weight: sheet.Narrow, Path: path})
	}
}

// inside writes a number in the middle of a box, level or rising, if it fits.
// It hides what is behind it.
func (p *page) inside(b plane.Box, words string) {
	middle := plane.At((b.Min.X + b.Max.X).Half(), (b.Min.Y + b.Max.Y).Half())
	room := plane.At(lettering.Advance(words, noteHeight)+mm, noteHeight+mm)
	at, rise := middle.Add(0, -noteHeight.Half()), false
	if room.X > b.Width() {
		room, at, rise = plane.At(room.Y, room.X), middle.Add(noteHeight.Half(), 0), true
	}
	if room.X > b.Width() || room.Y > b.Height() {
		return
	}
	behind := plane.Rect(middle.Add(-room.X/2, -room.Y/2), middle.Add(room.X/2, room.Y/2))
	p.marks = append(p.marks, sheet.Fill{Layer: sheet.Notes, Tone: sheet.Paper, Region: plane.Region{behind}})
	p.letters(at, sheet.Middle, noteHeight, rise, words)
}
