package drawing

import (
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// labelClear is what is kept free around a label.
const labelClear = mm / 4

// spots are the places along and across a part that a label tries, as hundredths of its
// extent, best first.
var (
	spotsAlong  = []length.Length{50, 35, 65, 20, 80, 42, 58, 12, 88, 27, 73}
	spotsAcross = []length.Length{50, 30, 70}
)

// balloonRadius is the least radius of a balloon round a label.
const balloonRadius = 4 * mm

// balloon writes a part's label on it in a circle, as in the parts list; the
// bare label where there is no room for the circle.
func (p *page) balloon(frame dimension.Frame, box plane.Box, s string) {
	for _, t := range p.spots(frame, box, s, false) {
		around := dimension.TextBox(t)
		middle := plane.At((around.Min.X + around.Max.X).Half(), (around.Min.Y + around.Max.Y).Half())
		r := max(balloonRadius, around.Width().Half()+mm)
		circle := plane.BoxOf(middle.Add(-r, -r), middle.Add(r, r))
		if within(circle, p.onPaper(frame, box)) && p.free(circle.Grow(mm)) {
			p.over = append(p.over, t, sheet.Stroke{Layer: sheet.Notes, Weight: sheet.Narrow, Path: plane.Circle(middle, r)})
			return
		}
	}
	p.label(frame, box, s)
}

// label writes a part's label on it, clear of every line and figure drawn so
// far: level or rising, in its middle or where there is room. One that finds
// none is left out, and said at the foot of the sheet.
func (p *page) label(frame dimension.Frame, box plane.Box, s string) {
	for _, t := range p.spots(frame, box, s, true) {
		if within(dimension.TextBox(t), p.onPaper(frame, box)) && p.clear(t) {
			p.over = append(p.over, t)
			return
		}
	}
	p.unplaced = append(p.unplaced, s)
}

// onPaper is a box of a view on the paper.
func (p *page) onPaper(frame dimension.Frame, box plane.Box) plane.Box {
	return plane.BoxOf(frame.Paper(box.Min), frame.Paper(box.Max))
}

// spots are the texts a label tries, best first; rising ones too if asked for.
func (p *page) spots(frame dimension.Frame, box plane.Box, s string, rising bool) []sheet.Text {
	on := p.onPaper(frame, box)
	var texts []sheet.Text
	for _, across := range spotsAcross {
		for _, along := range spotsAlong {
			x, y := along, across
			if on.Height() > on.Width() {
				x, y = across, along
			}
			at := on.Min.Add(on.Width()*x/100, on.Height()*y/100)
			texts = append(texts, centred(at, s, figureHeight, false))
			if rising {
				texts = append(texts, centred(at, s, figureHeight, true))
			}
		}
	}
	return texts
}

// centred is a text with its middle at a point of the paper.
func centred(at plane.Point, s string, height length.Length, rise bool) sheet.Text {
	s = lettering.Legible(s)
	down := plane.At(0, -height.Half())
	if rise {
		down = plane.At(height.Half(), 0)
	}
	return sheet.Text{Layer: sheet.Notes, At: at.Add(down.X, down.Y), Height: height, Align: sheet.Middle, Rise: rise, String: s, Advance: lettering.Advance(s, height)}
}

// within tells whether box a lies in b with the label's clearance.
func within(a, b plane.Box) bool {
	a = a.Grow(labelClear)
	return a.Min.X >= b.Min.X && a.Min.Y >= b.Min.Y && a.Max.X <= b.Max.X && a.Max.Y <= b.Max.Y
}

// clear tells whether a text lies off all lines and lettering drawn so far.
func (p *page) clear(t sheet.Text) bool { return p.free(dimension.TextBox(t).Grow(labelClear)) }

// free tells whether a box lies off all lines and lettering drawn so far.
func (p *page) free(box plane.Box) bool {
	for _, mark := range p.fills {
		if fill, is := mark.(sheet.Fill); is && fill.Tone == sheet.Ink && fill.Region.Bounds().Meets(box) {
			return false
		}
	}
	for _, marks := range [][]sheet.Mark{p.lines, p.over} {
		for _, mark := range marks {
			if meets(mark, box) {
				return false
			}
		}
	}
	return true
}

// meets tells whether a mark's ink, its fills left out, comes into a box.
func meets(mark sheet.Mark, box plane.Box) bool {
	switch m := mark.(type) {
	case sheet.Stroke:
		return pathMeets(m.Path, box.Grow(m.Weight.Width().Half()))
	case sheet.Text:
		return dimension.TextBox(m).Meets(box)
	case sheet.Dimension:
		for _, s := range m.Strokes {
			if meets(s, box) {
				return true
			}
		}
		for _, t := range m.Texts {
			if meets(t, box) {
				return true
			}
		}
	}
	return false
}

// pathMeets tells whether a path comes into a box. Arcs count as their boxes.
func pathMeets(path plane.Path, box plane.Box) bool {
	for _, e := range path {
		if e.Bounds().Meets(box) && (e.Turn != plane.Straight || straightMeets(e, box)) {
			return true
		}
	}
	return false
}

// straightMeets tells whether a segment whose own box meets the box comes into
// it: not when all corners lie to one side of it.
func straightMeets(e plane.Edge, box plane.Box) bool {
	dx, dy := (e.To.X - e.From.X).MM(), (e.To.Y - e.From.Y).MM()
	left, right := false, false
	for _, c := range []plane.Point{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}} {
		side := float64(dx*(c.Y-e.From.Y).MM()) - float64(dy*(c.X-e.From.X).MM())
		left, right = left || side >= 0, right || side <= 0
	}
	return left && right
}

// sayUnplaced names at the foot of the sheet the labels that found no room.
func (p *page) sayUnplaced() {
	if len(p.unplaced) == 0 {
		return
	}
	said, height := fitted("No room at this scale for: "+strings.Join(p.unplaced, ", "), p.work.Width(), figureHeight)
	p.text(p.work.Min.Add(0, -4*mm), height, sheet.Start, false, said)
}
