package layout

import (
	"fmt"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/cutting"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/takeoff"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

const (
	barHeight = 9 * mm
	barGap    = 4 * mm
	planRoom  = 70 * mm // for a plan's words and a bar
)

// boardPages draws every plan's patterns, one bar each, plan below plan and all
// at one scale.
func (b *builder) boardPages() {
	longest := length.Length(0)
	for _, plan := range b.t.Boards {
		for _, pattern := range plan.Layout.Patterns {
			longest = max(longest, plan.Job.Boards[pattern.Board].Length)
		}
	}
	var p *page
	for _, plan := range b.t.Boards {
		if b.err != nil {
			return
		}
		if p == nil || p.top-p.work.Min.Y < planRoom {
			p = b.boardPage(longest)
		}
		p.below(titleHeight, "Boards "+plan.Name())
		p.top -= 2 * mm
		for _, s := range b.boardWords(plan) {
			p.below(letterHeight, s)
		}
		for n, pattern := range plan.Layout.Patterns {
			if !b.bar(p, plan, n, pattern) {
				p = b.boardPage(longest)
				b.bar(p, plan, n, pattern)
			}
		}
		p.top -= 2 * gutter
	}
}

// boardPage begins a page of boards.
func (b *builder) boardPage(longest length.Length) *page {
	p := b.add("boards", "Boards", "Every board as a bar, with its parts in the order they are cut and the marks from its squared left end.")
	p.scale = b.scaled(longest, 0, p.work.Width()-4*gutter, p.work.Height())
	return p
}

// boardWords say how the boards are used.
func (b *builder) boardWords(plan takeoff.BoardPlan) []string {
	f, j := b.style.Format, plan.Job
	then := b.milling(plan)
	size := fmt.Sprintf("Bought %s thick and %s wide.", f(plan.Section.Thickness), f(plan.Section.Width))
	if len(then) == 0 {
		size = fmt.Sprintf("Bought %s thick and %s wide, as dressed: neither planed nor ripped.", f(plan.Section.Thickness), f(plan.Section.Width))
	}
	if plan.Section.Nominal {
		size = fmt.Sprintf("A %s is dressed to %s by %s.", plan.Section.Name, f(plan.Section.Thickness), f(plan.Section.Width))
	}
	out := []string{
		size + fmt.Sprintf(" Square the left end (up to %s goes), mark from there, and cut on the far side of each mark; the saw takes %s each time. Then %s: the cut list has the sizes.", f(j.TrimStart), f(j.Kerf), and(append(then, "trim to length"))),
		"Takes " + plan.Takes(b.t) + ". " + strings.ToUpper(plan.Bound(b.t)[:1]) + plan.Bound(b.t)[1:] + ".",
	}
	if plan.Stiles {
		out = append(out, "Stiles come in one piece from the straightest boards: sort these before the first cut, and hang each pair of stiles with its bow the same way.")
	}
	for _, i := range plan.Parts {
		if part := b.t.Parts[i]; part.SideBySide > 1 {
			out = append(out, fmt.Sprintf("%s: each block is ripped into %d.", b.t.Mark(part), part.SideBySide))
		}
	}
	return append(out, "Lengths to scale, widths not.")
}

// milling is what boards need between the saw and their net section.
func (b *builder) milling(plan takeoff.BoardPlan) []string {
	var plane, rip bool
	for _, i := range plan.Parts {
		net := b.t.Parts[i].Net
		plane = plane || net.Thickness != plan.Section.Thickness
		rip = rip || net.Width != plan.Section.Width
	}
	var work []string
	if plane {
		work = append(work, "plane")
	}
	if rip {
		work = append(work, "rip to width")
	}
	return work
}

// and joins clauses: "plane, rip to width and trim to length".
func and(clauses []string) string {
	last := len(clauses) - 1
	if last < 1 {
		return strings.Join(clauses, "")
	}
	return strings.Join(clauses[:last], ", ") + " and " + clauses[last]
}

// bar draws one pattern; it tells whether there was room.
func (b *builder) bar(p *page, plan takeoff.BoardPlan, n int, pattern cutting.BoardPattern) bool {
	board := plan.Job.Boards[pattern.Board]
	frame := dimension.Frame{Scale: sheet.Scale{Paper: p.scale.Paper, Real: p.scale.Real}}
	caption := wrapped(b.caption(plan, n, pattern), p.work.Width(), letterHeight)
	place := func() {
		left := p.work.Min.X + 2*gutter
		top := p.top - barGap - linePitch*length.Length(len(caption)) - 2*mm
		frame.Box = plane.BoxOf(plane.At(left, top-barHeight), plane.At(left+p.scale.OnPaper(board.Length), top))
	}
	place()
	marks := []length.Length{plan.Job.TrimStart}
	for _, c := range pattern.Cuts {
		marks = append(marks, c.End)
	}
	rows, depth := dimension.Place(frame, dimension.Below, []dimension.Row{{At: marks, Style: dimension.Running, Label: "MARKS"}}, b.options())
	if at, ok := dimension.Extent(rows); ok && (at.Min.X < p.work.Min.X || at.Max.X > p.work.Max.X) {
		// Too many short parts for figures below them: the marks as text.
		rows, depth = nil, 0
		caption = append(caption, wrapped("Marks: "+b.figures(marks), p.work.Width(), letterHeight)...)
		place()
	}
	if fresh := p.top == p.work.Max.Y; !fresh && frame.Box.Min.Y-depth < p.work.Min.Y {
		return false
	}
	for k, s := range caption {
		p.text(plane.At(p.work.Min.X, p.top-barGap-linePitch*length.Length(k+1)), letterHeight, sheet.Start, s)
	}
	p.marks = append(p.marks, rows...)
	b.pieces(p, frame, plan, pattern)
	p.top = frame.Box.Min.Y - depth
	return true
}

// figures are marks as text, from the first.
func (b *builder) figures(marks []length.Length) string {
	var said []string
	for _, at := range marks {
		said = append(said, b.style.Format(at-marks[0]))
	}
	return strings.Join(said, ", ")
}

// caption names a pattern's board and its pieces in order.
func (b *builder) caption(plan takeoff.BoardPlan, n int, pattern cutting.BoardPattern) string {
	board := plan.Job.Boards[pattern.Board]
	var parts []string
	for i, n := 0, 0; i < len(pattern.Cuts); i += n {
		c := pattern.Cuts[i]
		for n = 1; i+n < len(pattern.Cuts) && pattern.Cuts[i+n].Part == c.Part; n++ {
		}
		said := fmt.Sprintf("%s %s", plan.Job.Parts[c.Part].Label, b.style.Format(c.End-c.Start))
		if n > 1 {
			said = fmt.Sprintf("%d × %s", n, said)
		}
		parts = append(parts, said)
	}
	rest := "nothing is left"
	switch {
	case pattern.Kept:
		rest = "keep the offcut of " + b.style.Format(pattern.Offcut)
	case pattern.Offcut > 0:
		rest = b.style.Format(pattern.Offcut) + " is scrap"
	}
	return fmt.Sprintf("%d.  %d × %s:  %s;  %s", n+1, pattern.Times, board.Name, strings.Join(parts, ", "), rest)
}

// pieces draws a bar's parts and what is lost, each with its label where it has
// room; the caption has them all.
func (b *builder) pieces(p *page, frame dimension.Frame, plan takeoff.BoardPlan, pattern cutting.BoardPattern) {
	board := plan.Job.Boards[pattern.Board]
	part := func(from, to length.Length) plane.Box {
		a := frame.Paper(plane.At(from, 0))
		return plane.BoxOf(a, plane.At(frame.Paper(plane.At(to, 0)).X, frame.Box.Max.Y))
	}
	lost := func(from, to length.Length) {
		if to > from {
			p.marks = append(p.marks, sheet.Fill{Layer: sheet.Panel, Tone: sheet.Tint, Region: plane.Region{part(from, to).Path()}})
		}
	}
	lost(0, plan.Job.TrimStart)
	end := plan.Job.TrimStart
	var boxes []plane.Box
	for _, c := range pattern.Cuts {
		boxes = append(boxes, part(c.Start, c.End))
		end = c.End
	}
	if !pattern.Kept {
		lost(end, board.Length)
	}
	p.line(sheet.Outline, sheet.Wide, frame.Box.Path())
	for _, box := range boxes {
		p.line(sheet.Outline, sheet.Narrow, plane.Path{plane.Line(box.Max, plane.At(box.Max.X, box.Min.Y))})
	}
	for i, box := range boxes {
		p.label(box, plan.Job.Parts[pattern.Cuts[i].Part].Label)
	}
	if pattern.Kept {
		p.label(part(board.Length-pattern.Offcut, board.Length), "keep "+b.style.Format(pattern.Offcut))
	}
}

// onPaper is a box of a view on the paper.
func onPaper(scale catalog.Scale, corner plane.Point, x, y, wide, high length.Length) plane.Box {
	a := corner.Add(scale.OnPaper(x), scale.OnPaper(y))
	return plane.BoxOf(a, corner.Add(scale.OnPaper(x+wide), scale.OnPaper(y+high)))
}
