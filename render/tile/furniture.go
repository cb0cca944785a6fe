package tile

import (
	"fmt"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

const (
	noteHeight = 5 * mm / 2 // of capitals: the least that is read easily
	headHeight = 5 * mm
	notePitch  = 5 * mm // from line to line: fractions hang below the base line
	tick       = 2 * mm // of a check bar, to either side
	crossArm   = 4 * mm // so that a cross lies inside the least overlap, 10 mm
)

// A page is one sheet being made.
type page struct {
	layout
	marks []sheet.Mark
}

func (p *page) line(l sheet.Layer, line sheet.LineType, a, b plane.Point) {
	p.marks = append(p.marks, sheet.Stroke{Layer: l, Weight: sheet.Narrow, Line: line, Path: plane.Path{plane.Line(a, b)}})
}

func (p *page) box(l sheet.Layer, b plane.Box) {
	p.marks = append(p.marks, sheet.Stroke{Layer: l, Weight: sheet.Narrow, Path: b.Path()})
}

// write sets a line of words.
func (p *page) write(at plane.Point, align sheet.Align, height length.Length, words string) {
	p.letters(at, align, height, false, words)
}

func (p *page) letters(at plane.Point, align sheet.Align, height length.Length, rise bool, words string) {
	words = lettering.Legible(words)
	p.marks = append(p.marks, sheet.Text{
		Layer: sheet.Notes, At: at, Height: height, Align: align, Rise: rise, String: words, Advance: lettering.Advance(words, height),
	})
}

// fitted is the words cut with dots to the room there is.
func fitted(words string, room, height length.Length) string {
	words = lettering.Legible(words)
	if lettering.Advance(words, height) <= room {
		return words
	}
	for cut := []rune(words); len(cut) > 0; cut = cut[:len(cut)-1] {
		if short := strings.TrimSpace(string(cut)) + "..."; lettering.Advance(short, height) <= room {
			return short
		}
	}
	return ""
}

// bars draws the check bars: along X in the foot, along Y in the left strip.
func (p *page) bars() {
	size := barLength.Decimal() + " mm"
	from := p.room.Min.Add(leftStrip, footStrip-6*mm)
	p.bar(from, true)
	p.write(from.Add(barLength+tick, -noteHeight.Half()), sheet.Start, noteHeight, size)

	from = p.room.Min.Add(leftStrip.Half()-mm, footStrip)
	p.bar(from, false)
	p.letters(from.Add(noteHeight.Half(), barLength+tick), sheet.Start, noteHeight, true, size)
}

// bar is a line of barLength with ticks at its ends and its middle.
func (p *page) bar(from plane.Point, alongX bool) {
	to := func(l, aside length.Length) plane.Point {
		if alongX {
			return from.Add(l, aside)
		}
		return from.Add(aside, l)
	}
	p.line(sheet.Dimensions, sheet.Continuous, from, to(barLength, 0))
	for _, l := range []length.Length{0, barLength / 2, barLength} {
		p.line(sheet.Dimensions, sheet.Continuous, to(l, -tick), to(l, tick))
	}
}

// foot writes what stands on every page: the part and its revision; where the
// page belongs, its number, and how to print it.
func (p *page) foot(o Options, title, place string, number, of int) {
	left, right := p.room.Min.Add(mm, mm), plane.At(p.room.Max.X-mm, p.room.Min.Y+mm)
	up := notePitch
	revision := fitted("REV "+orDash(o.Revision), p.room.Width()/4, noteHeight)
	taken := lettering.Advance(revision, noteHeight) + 4*mm
	p.write(left.Add(0, up), sheet.Start, noteHeight, fitted(title, p.room.Width()-taken, noteHeight))
	p.write(right.Add(0, up), sheet.End, noteHeight, revision)
	p.write(left, sheet.Start, noteHeight, place)
	p.write(plane.At((left.X+right.X).Half(), left.Y), sheet.Middle, noteHeight, fmt.Sprintf("PAGE %d OF %d", number, of))
	p.write(right, sheet.End, noteHeight, "PRINT AT 100 %")
}

func orDash(s string) string {
	if strings.TrimSpace(s) == "" {
		return "-"
	}
	return s
}

// cross is a registration mark: two lines and a circle, so that the pages are
// seen to be turned or shifted.
func (p *page) cross(at plane.Point) {
	p.line(sheet.CentreMark, sheet.Continuous, at.Add(-crossArm, 0), at.Add(crossArm, 0))
	p.line(sheet.CentreMark, sheet.Continuous, at.Add(0, -crossArm), at.Add(0, crossArm))
	p.marks = append(p.marks, sheet.Stroke{Layer: sheet.CentreMark, Weight: sheet.Narrow, Path: plane.Circle(at, crossArm/2)})
}

// trims draws where the page is cut off: along the window's left and lower
// edge, where there is a neighbour to lay it over.
func (p *page) trims(s spot, keep map[spot]bool) {
	w := p.window
	if keep[spot{s.row, s.column - 1}] {
		p.line(sheet.Border, sheet.Hidden, plane.At(w.Min.X, w.Max.Y), w.Min)
	}
	if keep[spot{s.row + 1, s.column}] {
		p.line(sheet.Border, sheet.Hidden, w.Min, plane.At(w.Max.X, w.Min.Y))
	}
}
