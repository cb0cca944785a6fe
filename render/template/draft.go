package template

import (
	"fmt"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

const mm = length.Millimetre

// Sizes on a template.
const (
	noteHeight = 5 * mm / 2 // of capitals
	headHeight = 7 * mm / 2
	notePitch  = 5 * mm
	rim        = 4 * mm   // from the ink to the line to cut along
	leastWide  = 104 * mm // of a template's words
	tall       = 95 * mm  // views from this height on have their words beside them
	narrowWide = 72 * mm  // of words beside a view
	viewGap    = 8 * mm
	crossArm   = 4 * mm // of a hole's centre, each way
)

// sizeRule says on every template what a line stands for.
const sizeRule = "Print at 100 %. The middle of each line is the size."

// A draft is a template while it is drawn. Its views stand anywhere; finish
// brings them onto a sheet.
type draft struct {
	set                door.Set
	style              length.Style
	name, title        string
	fills, lines, over []sheet.Mark
}

func newDraft(s door.Set, name, title string) *draft {
	return &draft{set: s, style: length.Style{Unit: s.Units}, name: name, title: title}
}

// figure is a length as written on templates, in one piece.
func (d *draft) figure(l length.Length) string { return unbroken(d.style.Format(l)) }

// tied is a space at which no line ends.
const tied = "\u00a0"

// unbroken is words that stay on one line.
func unbroken(words string) string { return strings.ReplaceAll(words, " ", tied) }

// stroke draws a path.
func (d *draft) stroke(layer sheet.Layer, weight sheet.Weight, line sheet.LineType, path plane.Path) {
	if len(path) > 0 {
		d.lines = append(d.lines, sheet.Stroke{Layer: layer, Weight: weight, Line: line, Path: path})
	}
}

// line draws a straight line.
func (d *draft) line(layer sheet.Layer, weight sheet.Weight, line sheet.LineType, a, b plane.Point) {
	d.stroke(layer, weight, line, plane.Path{plane.Line(a, b)})
}

// area draws a region's outlines over a tint.
func (d *draft) area(layer sheet.Layer, r plane.Region) {
	if r.Empty() {
		return
	}
	d.fills = append(d.fills, sheet.Fill{Layer: layer, Tone: sheet.Tint, Region: r})
	for _, path := range r {
		d.stroke(layer, sheet.Wide, sheet.Continuous, path)
	}
}

// cross marks the centre of a hole, with its circle where it has a size.
func (d *draft) cross(at plane.Point, diameter length.Length) {
	d.line(sheet.CentreMark, sheet.Narrow, sheet.Continuous, at.Add(-crossArm, 0), at.Add(crossArm, 0))
	d.line(sheet.CentreMark, sheet.Narrow, sheet.Continuous, at.Add(0, -crossArm), at.Add(0, crossArm))
	if diameter > 0 {
		d.stroke(sheet.Hardware, sheet.Narrow, sheet.Continuous, plane.Circle(at, diameter.Half()))
	}
}

// text sets one line.
func (d *draft) text(at plane.Point, height length.Length, align sheet.Align, rise bool, s string) {
	s = lettering.Legible(strings.ReplaceAll(s, tied, " "))
	if s == "" {
		return
	}
	d.over = append(d.over, sheet.Text{Layer: sheet.Notes, At: at, Height: height, Align: align, Rise: rise, String: s, Advance: lettering.Advance(s, height)})
}

// rows are a view's dimensions on its four sides, places in the view's
// coordinates.
type rows struct{ below, above, left, right []dimension.Row }

// chain is one row of dimensions; places that coincide count once.
func chain(at ...length.Length) []dimension.Row {
	return []dimension.Row{{At: at, Style: dimension.Chain}}
}

// dimensions draws the rows about a view's box.
func (d *draft) dimensions(box plane.Box, r rows) {
	tick := mm / 10
	if d.set.Units == length.Inches {
		tick = length.Inch / 64
	}
	frame := dimension.Frame{Box: box, Origin: box.Min, Scale: sheet.Scale{Paper: 1, Real: 1}}
	marks, _ := dimension.Around(frame, [4][]dimension.Row{dimension.Below: r.below, dimension.Above: r.above, dimension.LeftOf: r.left, dimension.RightOf: r.right},
		dimension.Options{Format: d.style.Format, TextHeight: noteHeight, Tick: tick})
	d.over = append(d.over, marks...)
}

// marks are all marks, fills below lines below lettering.
func (d *draft) marks() []sheet.Mark {
	return append(append(append([]sheet.Mark{}, d.fills...), d.lines...), d.over...)
}

// shift moves all that is drawn so far.
func (d *draft) shift(dx, dy length.Length) {
	for _, list := range [][]sheet.Mark{d.fills, d.lines, d.over} {
		for i, m := range list {
			list[i] = moved(m, dx, dy)
		}
	}
}

// extent is the box of all ink.
func (d *draft) extent() plane.Box {
	box, _ := dimension.Extent(d.marks())
	return box
}

// put takes over what another draft has, moved so that its ink's upper left
// corner comes to a point. It returns the box it takes.
func (d *draft) put(view *draft, corner plane.Point) plane.Box {
	box := view.extent()
	dx, dy := corner.X-box.Min.X, corner.Y-box.Max.Y
	view.shift(dx, dy)
	d.fills, d.lines, d.over = append(d.fills, view.fills...), append(d.lines, view.lines...), append(d.over, view.over...)
	return plane.BoxOf(box.Min.Add(dx, dy), box.Max.Add(dx, dy))
}

// finish writes the words, a paragraph each, under what is drawn or, where that
// is tall, beside it; and brings all onto a sheet whose edge is the line to cut
// along.
func (d *draft) finish(description string, notes ...string) sheet.Sheet {
	box := d.extent()
	wide, at := max(leastWide, box.Width()), plane.At(box.Min.X, box.Min.Y-viewGap)
	if box.Height() > tall {
		wide, at = narrowWide, plane.At(box.Max.X+viewGap, box.Max.Y+headHeight)
	}
	write := func(height, pitch length.Length, words string) {
		for _, line := range wrapped(words, wide, height) {
			at.Y -= pitch
			d.text(at, height, sheet.Start, false, line)
		}
	}
	write(headHeight, 2*headHeight, strings.ToUpper(d.title))
	at.Y -= mm
	for _, note := range append([]string{jobLine(d.set)}, append(notes, sizeRule)...) {
		write(noteHeight, notePitch, note)
	}
	return d.onSheet(description)
}

// onSheet is the sheet, a rim round the ink.
func (d *draft) onSheet(description string) sheet.Sheet {
	box := d.extent().Grow(rim)
	d.shift(-box.Min.X, -box.Min.Y)
	wide, high := box.Width().UpTo(mm), box.Height().UpTo(mm)
	d.stroke(sheet.Border, sheet.Narrow, sheet.Continuous, plane.Rect(plane.Point{}, plane.At(wide, high)))
	return sheet.Sheet{Name: d.name, Title: d.title, Description: description, Width: wide, Height: high, Scale: sheet.Scale{Paper: 1, Real: 1}, Marks: d.marks()}
}

// revised names the job and its revision.
func revised(s door.Set) string {
	if s.Revision == "" {
		return s.Job
	}
	return s.Job + " · rev " + s.Revision
}

// jobLine names the job, its revision and how many leaves it has.
func jobLine(s door.Set) string { return fmt.Sprintf("%s · %d leaves", revised(s), len(s.Hung)) }

// wrapped breaks words into lines that fit the room; a word longer than the
// room stands alone.
func wrapped(words string, room, height length.Length) (lines []string) {
	line := ""
	for word := range strings.SplitSeq(words, " ") {
		longer := strings.TrimPrefix(line+" "+word, " ")
		if line != "" && lettering.Advance(strings.ReplaceAll(longer, tied, " "), height) > room {
			lines, longer = append(lines, line), word
		}
		line = longer
	}
	return append(lines, line)
}

// fitted is the words, cut with dots where they are longer than the room.
func fitted(words string, room, height length.Length) string {
	words = lettering.Legible(strings.ReplaceAll(words, tied, " "))
	if lettering.Advance(words, height) <= room {
		return words
	}
	cut := []rune(words)
	for len(cut) > 0 && lettering.Advance(string(cut)+"...", height) > room {
		cut = cut[:len(cut)-1]
	}
	return strings.TrimSpace(string(cut)) + "..."
}
