package layout

import (
	"fmt"
	"iter"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/takeoff"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

const mm = length.Millimetre

// Sizes on the paper.
const (
	letterHeight = 5 * mm / 2 // capitals: the least ISO 3098 allows on A4 to A2 (from memory)
	titleHeight  = 7 * mm / 2
	stripHeight  = 12 * mm // title strip along the bottom
	gutter       = 5 * mm
	linePitch    = 5 * mm // base line to base line
)

// A page is a sheet being drawn, from its top down.
type page struct {
	b     *builder
	name  string
	title string
	about string
	frame plane.Box
	work  plane.Box     // what is left to draw on
	top   length.Length // of what is still free
	marks []sheet.Mark
	scale catalog.Scale // zero for none
}

// A builder makes the pages of one takeoff.
type builder struct {
	t     takeoff.Takeoff
	style length.Style
	paper catalog.Paper
	pages []*page
	err   error
}

// Papers of a job that names none: what an office printer of the country takes.
const (
	inchPaper   = "tabloid"
	metricPaper = "A3"
)

func newBuilder(t takeoff.Takeoff) (*builder, error) {
	if len(t.Jobs) == 0 {
		return nil, fmt.Errorf("layout pages: 0 jobs were taken off; there must be at least 1")
	}
	name := t.Jobs[0].Paper
	if name == "" {
		name = metricPaper
		if t.Units == length.Inches {
			name = inchPaper
		}
	}
	paper, err := catalog.PaperSize(name)
	return &builder{t: t, style: length.Style{Unit: t.Units}, paper: paper}, err
}

// add begins a page.
func (b *builder) add(name, title, about string) *page {
	w, h := b.paper.Landscape()
	p := &page{b: b, name: name, title: title, about: about}
	p.frame = plane.BoxOf(plane.At(b.paper.Binding, b.paper.Ends), plane.At(w-b.paper.Sides, h-b.paper.Ends))
	p.work = plane.BoxOf(p.frame.Min.Add(gutter, stripHeight+gutter), p.frame.Max.Add(-gutter, -gutter))
	p.top = p.work.Max.Y
	b.pages = append(b.pages, p)
	return p
}

// sheets are the finished pages, numbered.
func (b *builder) sheets() []sheet.Sheet {
	w, h := b.paper.Landscape()
	var out []sheet.Sheet
	for i, p := range b.pages {
		p.strip(i+1, len(b.pages))
		out = append(out, sheet.Sheet{
			Name: fmt.Sprintf("%02d-%s", i+1, p.name), Title: b.job() + " · " + p.title, Description: p.about,
			Width: w, Height: h, Scale: sheet.Scale{Paper: p.scale.Paper, Real: p.scale.Real}, Marks: p.marks,
		})
	}
	return out
}

// job names what was taken off.
func (b *builder) job() string {
	var names []string
	for i, set := range b.t.Jobs {
		name := set.Job
		if letter := b.t.Letter(i); letter != "" {
			name = letter + " " + name
		}
		names = append(names, name)
	}
	return strings.Join(names, ", ")
}

// strip draws border and title strip.
func (p *page) strip(n, of int) {
	set := p.b.t.Jobs[0]
	units := "millimetres"
	if p.b.t.Units == length.Inches {
		units = "inches"
	}
	top := p.frame.Min.Y + stripHeight
	p.line(sheet.Border, sheet.Frame, p.frame.Path())
	p.line(sheet.Border, sheet.Wide, plane.Path{plane.Line(plane.At(p.frame.Min.X, top), plane.At(p.frame.Max.X, top))})
	x := p.frame.Min.X
	for i, cell := range []struct {
		name, value string
		share       length.Length
	}{{"JOB", p.b.job(), 32}, {"SHEET", p.title, 25}, {"SCALE", p.scale.Name, 11}, {"UNITS", units, 10}, {"DRAWN", set.Drawn, 10}, {"REV", set.Revision, 5}, {"NO.", fmt.Sprintf("%d of %d", n, of), 7}} {
		wide := p.frame.Width() * cell.share / 100
		if i > 0 {
			p.line(sheet.Border, sheet.Narrow, plane.Path{plane.Line(plane.At(x, p.frame.Min.Y), plane.At(x, top))})
		}
		p.text(plane.At(x+3*mm/2, top-4*mm), letterHeight, sheet.Start, cell.name)
		p.text(plane.At(x+3*mm/2, p.frame.Min.Y+5*mm/2), letterHeight, sheet.Start, shortened(cell.value, wide-3*mm, letterHeight))
		x += wide
	}
}

// shortened is a text cut with dots where it is wider than the room.
func shortened(s string, room, height length.Length) string {
	s = lettering.Legible(s)
	for cut := []rune(s); lettering.Advance(s, height) > room && len(cut) > 0; {
		cut = cut[:len(cut)-1]
		s = strings.TrimSpace(string(cut)) + "..."
	}
	return s
}

// line draws a path.
func (p *page) line(layer sheet.Layer, weight sheet.Weight, path plane.Path) {
	p.marks = append(p.marks, sheet.Stroke{Layer: layer, Weight: weight, Path: path})
}

// text sets one line.
func (p *page) text(at plane.Point, height length.Length, align sheet.Align, s string) {
	if s = lettering.Legible(s); s != "" {
		p.marks = append(p.marks, textAt(at, height, align, s))
	}
}

func textAt(at plane.Point, height length.Length, align sheet.Align, s string) sheet.Text {
	return sheet.Text{Layer: sheet.Notes, At: at, Height: height, Align: align, String: s, Advance: lettering.Advance(s, height)}
}

// below sets a paragraph at the top of what is free, wrapped to the width, and
// takes its room.
func (p *page) below(height length.Length, s string) {
	for _, one := range wrapped(s, p.work.Width(), height) {
		p.top -= linePitch * height / letterHeight
		p.text(plane.At(p.work.Min.X, p.top), height, sheet.Start, one)
	}
}

// wrapped breaks a text into lines of a width, between words where it can.
func wrapped(s string, wide, height length.Length) []string {
	var lines []string
	line := ""
	for word := range words(s) {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && lettering.Advance(longer, height) > wide {
			lines = append(lines, line)
			longer = word
		}
		for line = longer; lettering.Advance(line, height) > wide; {
			head := fitting(line, wide, height)
			lines, line = append(lines, head), line[len(head):]
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// words are what a text may be broken between: its blanks, but not the hair
// space before a fraction.
func words(s string) iter.Seq[string] {
	return strings.FieldsFuncSeq(lettering.Legible(s), func(r rune) bool { return r == ' ' })
}

// fitting is as much of a word as a width holds, one character at least.
func fitting(word string, wide, height length.Length) string {
	runes := []rune(word)
	n := len(runes)
	for n > 1 && lettering.Advance(string(runes[:n]), height) > wide {
		n--
	}
	return string(runes[:n])
}

// label sets lines in the middle of a box when they lie in it and touch nothing
// there; it tells whether they did.
func (p *page) label(box plane.Box, lines ...string) bool {
	foot := (box.Min.Y + box.Max.Y).Half() - letterHeight.Half() + linePitch*length.Length(len(lines)-1)/2
	var texts []sheet.Mark
	for i, s := range lines {
		t := textAt(plane.At((box.Min.X+box.Max.X).Half(), foot-linePitch*length.Length(i)), letterHeight, sheet.Middle, lettering.Legible(s))
		at := dimension.TextBox(t).Grow(mm / 2)
		if !box.Holds(at.Min) || !box.Holds(at.Max) {
			return false
		}
		texts = append(texts, t)
	}
	return p.addClear(texts...)
}

// addClear adds lettering that touches nothing; it tells whether it did.
func (p *page) addClear(texts ...sheet.Mark) bool {
	if len(dimension.Collisions(append(p.nearby(texts), texts...), plane.Box{})) > 0 {
		return false
	}
	p.marks = append(p.marks, texts...)
	return true
}

// nearby are the marks that come near some lettering: all a collision could be
// with.
func (p *page) nearby(texts []sheet.Mark) []sheet.Mark {
	zone, ok := dimension.Extent(texts)
	if !ok {
		return nil
	}
	zone = zone.Grow(mm)
	var near []sheet.Mark
	for _, m := range p.marks {
		if at, ok := dimension.Extent([]sheet.Mark{m}); ok && at.Meets(zone) {
			near = append(near, m)
		}
	}
	return near
}

// scaled is the largest standard scale, reducing, at which a size fits a room.
func (b *builder) scaled(wide, high, roomWide, roomHigh length.Length) catalog.Scale {
	scales := catalog.ISOScales()
	if b.t.Units == length.Inches {
		scales = catalog.InchScales()
	}
	for _, s := range scales {
		if s.Paper <= s.Real && s.OnPaper(wide) <= roomWide && s.OnPaper(high) <= roomHigh {
			return s
		}
	}
	b.err = fmt.Errorf("%s by %s fits no standard scale on %s paper: name a larger paper", b.style.Format(wide), b.style.Format(high), b.paper.Name)
	return scales[len(scales)-1]
}

// options are how figures are written.
func (b *builder) options() dimension.Options {
	tick := mm / 10
	if b.t.Units == length.Inches {
		tick = length.Inch / 64
	}
	return dimension.Options{Format: b.style.Format, TextHeight: letterHeight, Tick: tick}
}
