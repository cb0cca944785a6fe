package shop

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// Sizes of a cover sheet on the paper.
const (
	textHeight  = 5 * mm / 2 // capitals: the least ISO 3098 allows on A4 to A2 (from memory)
	titleHeight = 7 * mm / 2
	linePitch   = 9 * mm / 2
	cardWide    = 118 * mm // at least: cards fill the sheet
	cardHigh    = 74 * mm
	cardGap     = 4 * mm
	strip       = 16 * mm // title strip along the bottom
	pictureWide = 56 * mm
)

// A page is a cover sheet being drawn.
type page struct {
	marks []sheet.Mark
	style func(length.Length) string // figures
	units length.Unit
}

// deal lays cards out on sheets, row by row from the upper left.
func deal(s door.Set, o Options, paper catalog.Paper, cards []card) ([]sheet.Sheet, error) {
	w, h := paper.Landscape()
	frame := plane.BoxOf(plane.At(paper.Binding, paper.Ends), plane.At(w-paper.Sides, h-paper.Ends))
	across := int((frame.Width() - cardGap) / (cardWide + cardGap))
	down := int((frame.Height() - strip - cardGap) / (cardHigh + cardGap))
	if across < 1 || down < 1 {
		return nil, fmt.Errorf("no card of %s × %s mm fits on %s paper beside its frame: name a larger paper", cardWide.Decimal(), cardHigh.Decimal(), paper.Name)
	}
	wide := (frame.Width()-cardGap)/length.Length(across) - cardGap
	high := (frame.Height()-strip-cardGap)/length.Length(down) - cardGap
	var pieces []card
	for _, c := range cards {
		pieces = append(pieces, c.split(wide, high)...)
	}
	each := across * down
	of := (len(pieces) + each - 1) / each
	var sheets []sheet.Sheet
	for n := range of {
		p := &page{style: o.figure, units: s.Units}
		p.title(s, o, frame, n+1, of)
		for i, c := range pieces[n*each : min(len(pieces), (n+1)*each)] {
			x := frame.Min.X + cardGap + length.Length(i%across)*(wide+cardGap)
			y := frame.Max.Y - cardGap - high - length.Length(i/across)*(high+cardGap)
			p.card(plane.BoxOf(plane.At(x, y), plane.At(x+wide, y+high)), c)
		}
		sheets = append(sheets, sheet.Sheet{
			Name: fmt.Sprintf("cover-%d", n+1), Title: s.Job + " · Cover for the shop",
			Description: "What the files for a CNC router or a laser hold, with sizes to check the import and figures to quote from.",
			Width:       w, Height: h, Marks: p.marks,
		})
	}
	return sheets, nil
}

// split breaks a card's lines to its size, and a card with too many lines into
// several.
func (c card) split(wide, high length.Length) []card {
	room := wide - 2*cardGap
	c.file = strings.Join(wrapped(c.file, room), "\n")
	if c.picture != nil {
		room -= pictureWide
	}
	var lines []string
	for _, line := range c.lines {
		lines = append(lines, wrapped(line, room)...)
	}
	most := int((high - 9*mm) / linePitch)
	if c.file != "" {
		most -= 1 + strings.Count(c.file, "\n")
	}
	cards := []card{{title: c.title, file: c.file, lines: lines[:min(most, len(lines))], picture: c.picture}}
	for lines = lines[min(most, len(lines)):]; len(lines) > 0; lines = lines[min(most, len(lines)):] {
		next := card{title: c.title + " (continued)", lines: lines[:min(most, len(lines))]}
		cards = append(cards, next)
	}
	return cards
}

// wrapped breaks a line of text to a width: at blanks, and in a long word after
// "_" or "-", or where it must.
func wrapped(text string, room length.Length) []string {
	fits := func(s string) bool { return lettering.Advance(lettering.Legible(s), textHeight) <= room }
	var lines []string
	rest := []rune(strings.TrimSpace(text))
	for len(rest) > 0 {
		n := len(rest)
		for !fits(string(rest[:n])) && n > 1 {
			n--
		}
		if n < len(rest) {
			if at := lastOf(rest[:n+1], " "); at > n/3 {
				n = at
			} else if at := lastOf(rest[:n], "_-"); at > n/3 {
				n = at + 1
			}
		}
		lines = append(lines, strings.TrimSpace(string(rest[:n])))
		rest = []rune(strings.TrimSpace(string(rest[n:])))
	}
	return lines
}

// lastOf is the place of the last rune that is one of breaks, -1 if none.
func lastOf(text []rune, breaks string) int {
	for i := len(text) - 1; i >= 0; i-- {
		if strings.ContainsRune(breaks, text[i]) {
			return i
		}
	}
	return -1
}

// line draws a straight line of the sheet's frame.
func (p *page) line(weight sheet.Weight, a, b plane.Point) {
	p.marks = append(p.marks, sheet.Stroke{Layer: sheet.Border, Weight: weight, Path: plane.Path{plane.Line(a, b)}})
}

// text sets one line, lower if it does not fit the room, and cut with dots if
// it still does not.
func (p *page) text(at plane.Point, height, room length.Length, s string) {
	s = lettering.Legible(s)
	if lettering.Advance(s, height) > room {
		height = textHeight
	}
	for cut := []rune(s); lettering.Advance(s, height) > room && len(cut) > 0; {
		cut = cut[:len(cut)-1]
		s = strings.TrimSpace(string(cut)) + "..."
	}
	if s != "" {
		p.marks = append(p.marks, sheet.Text{Layer: sheet.Notes, At: at, Height: height, String: s, Advance: lettering.Advance(s, height)})
	}
}

// title draws the frame and the title strip.
func (p *page) title(s door.Set, o Options, frame plane.Box, n, of int) {
	p.marks = append(p.marks, sheet.Stroke{Layer: sheet.Border, Weight: sheet.Frame, Path: frame.Path()})
	top := frame.Min.Y + strip
	p.line(sheet.Wide, plane.At(frame.Min.X, top), plane.At(frame.Max.X, top))
	unit := "millimetres"
	if o.Unit == length.Inches {
		unit = "inches"
	}
	x := frame.Min.X
	for i, c := range []struct {
		name, value string
		share       length.Length // of the width, in percent
	}{{"JOB", s.Job, 35}, {"SHEET", "Cover for the shop", 20}, {"FILES IN", unit, 14}, {strings.TrimSpace("DRAWN " + s.By), s.Drawn, 14}, {"REV", s.Revision, 7}, {"NO.", fmt.Sprintf("%d of %d", n, of), 10}} {
		wide := frame.Width() * c.share / 100
		if i > 0 {
			p.line(sheet.Narrow, plane.At(x, frame.Min.Y), plane.At(x, top))
		}
		p.text(plane.At(x+2*mm, top-9*mm/2), textHeight, wide-4*mm, c.name)
		p.text(plane.At(x+2*mm, frame.Min.Y+7*mm/2), titleHeight, wide-4*mm, c.value)
		x += wide
	}
}

// card draws a card into its box.
func (p *page) card(box plane.Box, c card) {
	p.marks = append(p.marks, sheet.Stroke{Layer: sheet.Border, Path: box.Path()})
	at := plane.At(box.Min.X+2*mm, box.Max.Y-5*mm)
	p.text(at, titleHeight, box.Width()-4*mm, c.title)
	at.Y -= 5 * mm / 2
	for s := range strings.SplitSeq(c.file, "\n") {
		if s != "" {
			at.Y -= linePitch
			p.text(at, textHeight, box.Width()-4*mm, s)
		}
	}
	if c.picture != nil {
		p.picture(plane.BoxOf(box.Min.Add(mm, mm), plane.At(box.Min.X+pictureWide, at.Y-mm)), *c.picture)
		at.X = box.Min.X + pictureWide + cardGap
	}
	for _, s := range c.lines {
		at.Y -= linePitch
		p.text(at, textHeight, box.Max.X-at.X, s)
	}
}

// picture draws a setup into a zone at the largest standard scale, with its
// overall sizes.
func (p *page) picture(zone plane.Box, s machining.Setup) {
	scales := catalog.ISOScales()
	if p.units == length.Inches {
		scales = catalog.InchScales()
	}
	whole := extent(s)
	rows := [4][]dimension.Row{
		dimension.Below:  {{At: []length.Length{0, s.Width}, Style: dimension.Overall}},
		dimension.LeftOf: {{At: []length.Length{0, s.Height}, Style: dimension.Overall}},
	}
	options := dimension.Options{Format: p.style, TextHeight: textHeight}
	for _, scale := range scales {
		if scale.Paper > scale.Real {
			continue
		}
		frame := dimension.Frame{Box: plane.Box{Max: plane.At(scale.OnPaper(whole.Width()), scale.OnPaper(whole.Height()))}, Origin: whole.Min, Scale: sheet.Scale{Paper: scale.Paper, Real: scale.Real}}
		if frame.Box.Width() > zone.Width() || frame.Box.Height() > zone.Height() {
			continue
		}
		marks, _ := dimension.Around(frame, rows, options)
		taken := frame.Box
		if extent, ok := dimension.Extent(marks); ok {
			taken = taken.Join(extent)
		}
		if taken.Width() > zone.Width() || taken.Height() > zone.Height() {
			continue
		}
		dx := zone.Min.X + (zone.Width() - taken.Width()).Half() - taken.Min.X
		dy := zone.Min.Y + (zone.Height() - taken.Height()).Half() - taken.Min.Y
		frame.Box = plane.Box{Min: frame.Box.Min.Add(dx, dy), Max: frame.Box.Max.Add(dx, dy)}
		p.contours(frame, s)
		marks, _ = dimension.Around(frame, rows, options)
		p.marks = append(p.marks, marks...)
		return
	}
}

// contours draws a setup's contours. What vanishes at the scale is left out.
func (p *page) contours(frame dimension.Frame, s machining.Setup) {
	const least = mm / 5
	for _, c := range s.Contours {
		stroke, draws := shown(c)
		if !draws {
			continue
		}
		stroke.Path = c.Path.Map(frame.Paper, false)
		stroke.Path = slices.DeleteFunc(stroke.Path, func(e plane.Edge) bool { return e.From == e.To })
		if b := stroke.Path.Bounds(); len(stroke.Path) > 0 && max(b.Width(), b.Height()) >= least {
			p.marks = append(p.marks, stroke)
		}
	}
}
