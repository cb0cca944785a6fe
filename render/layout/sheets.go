package layout

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/cutting"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/takeoff"
	"stilewright/render/dimension"
	"stilewright/render/list"
	"stilewright/render/sheet"
)

// sheetPages draws every pattern of every sheet on a page of its own, its cuts
// beside it in the order they are made.
func (b *builder) sheetPages() {
	for _, plan := range b.t.Sheets {
		for n, pattern := range plan.Layout.Patterns {
			if b.err == nil {
				b.sheetPage(plan, n, pattern)
			}
		}
	}
}

func (b *builder) sheetPage(plan takeoff.SheetPlan, n int, pattern cutting.SheetPattern) {
	const about = "A sheet with its pieces to scale, and the saw cuts in the order they are made."
	stock := plan.Job.Sheets[pattern.Sheet]
	title := fmt.Sprintf("Sheets %s, pattern %d", plan.Name(b.t), n+1)
	p := b.add("sheets", title, about)
	p.below(titleHeight, fmt.Sprintf("%s: %d × %s", title, pattern.Times, stock.Name))
	p.top -= 2 * mm
	for _, s := range b.sheetWords(plan, n) {
		p.below(letterHeight, s)
	}
	steps := b.steps(plan, n, pattern)
	g, err := gridOf(steps, p.work.Width().Half())
	if err != nil {
		b.err = err
		return
	}
	wide := 2 * gutter
	for _, w := range g.wide {
		wide += w + 2*cellPad
	}
	right := b.sheetView(p, plan, pattern, plane.BoxOf(p.work.Min, plane.At(p.work.Max.X-wide, p.top-gutter)))
	next, _ := g.draw(p, right+2*gutter, p.top-gutter, p.work.Min.Y, 1)
	for next < len(g.rows) {
		p = b.add("sheets", title+", cuts", about)
		next, _ = g.draw(p, p.work.Min.X, p.top, p.work.Min.Y, next)
	}
}

// sheetWords say how the sheets are used, on the first pattern all of it.
func (b *builder) sheetWords(plan takeoff.SheetPlan, n int) []string {
	f := b.style.Format
	out := []string{fmt.Sprintf("Trim %s off all four edges first, then cut in the order of the list, each from edge to edge; the saw takes %s each time. Keep the sheet as drawn: upright cuts are measured from the left, level ones from the bottom of the piece in hand.", f(plan.Job.Trim), f(plan.Job.Kerf))}
	if n > 0 {
		return out
	}
	out = append(out, "Takes "+plan.Takes(b.t)+"; "+plan.Bound(b.t)+".")
	switch plan.Grain {
	case "up":
		out = append(out, "Grain runs up the sheet and up every panel; no panel is turned.")
	case "across":
		out = append(out, "Grain runs up the sheet and across every panel: panels lie on their sides.")
	}
	for k, piece := range plan.Job.Pieces {
		if piece.Face != "" {
			out = append(out, fmt.Sprintf("%s: %s of the leaf; leave it on until the panel is in.", piece.Label, piece.Face))
		}
		for _, op := range b.t.Parts[plan.Parts[k]].Operations {
			out = append(out, fmt.Sprintf("%s, after cutting: %s", piece.Label, op))
		}
	}
	return out
}

// steps are a pattern's cuts as a table.
func (b *builder) steps(plan takeoff.SheetPlan, n int, pattern cutting.SheetPattern) list.Table {
	whole := list.Sheets(takeoff.Takeoff{Units: b.t.Units, Sheets: []takeoff.SheetPlan{{
		Job: plan.Job, Layout: cutting.SheetLayout{Patterns: []cutting.SheetPattern{pattern}}}}})
	whole.Title = fmt.Sprintf("Cuts of pattern %d", n+1)
	return printed(whole, "sheet", "pattern", "times")
}

// sheetView draws the sheet in a zone: pieces with label and size, rests, and
// the number of each cut beside its line. It returns the sheet's right edge.
func (b *builder) sheetView(p *page, plan takeoff.SheetPlan, pattern cutting.SheetPattern, zone plane.Box) length.Length {
	const rowsRoom = 16 * mm // for the overall dimensions below and left
	stock := plan.Job.Sheets[pattern.Sheet]
	p.scale = b.scaled(stock.Width, stock.Height, zone.Width()-rowsRoom, zone.Height()-rowsRoom)
	if b.err != nil {
		return 0
	}
	corner := plane.At(zone.Min.X+rowsRoom, zone.Max.Y-p.scale.OnPaper(stock.Height))
	v := sheetView{b: b, p: p, plan: plan, scale: p.scale, corner: corner}
	whole := onPaper(p.scale, corner, 0, 0, stock.Width, stock.Height)
	v.tint(whole)
	v.region(pattern.Root)
	p.line(sheet.Outline, sheet.Wide, whole.Path())
	frame := dimension.Frame{Box: whole, Scale: sheet.Scale{Paper: p.scale.Paper, Real: p.scale.Real}}
	marks, _ := dimension.Around(frame, [4][]dimension.Row{
		dimension.Below:  {{At: []length.Length{0, stock.Width}, Style: dimension.Overall}},
		dimension.LeftOf: {{At: []length.Length{0, stock.Height}, Style: dimension.Overall}},
	}, b.options())
	p.marks = append(p.marks, marks...)
	v.letter(pattern.Root)
	v.number(pattern.Root)
	return whole.Max.X
}

// A sheetView is a sheet being drawn.
type sheetView struct {
	b      *builder
	p      *page
	plan   takeoff.SheetPlan
	scale  catalog.Scale
	corner plane.Point
	step   int
}

func (v *sheetView) box(g *cutting.Region) plane.Box {
	return onPaper(v.scale, v.corner, g.X, g.Y, g.Width, g.Height)
}

func (v *sheetView) fill(box plane.Box, tone sheet.Tone) {
	if box.Width() > 0 && box.Height() > 0 {
		v.p.marks = append(v.p.marks, sheet.Fill{Layer: sheet.Panel, Tone: tone, Region: plane.Region{box.Path()}})
	}
}

func (v *sheetView) tint(box plane.Box) { v.fill(box, sheet.Tint) }

// region draws pieces and kept rests white, each with its outline, over the
// tinted sheet: what stays tinted is lost.
func (v *sheetView) region(g *cutting.Region) {
	switch {
	case g == nil:
	case g.Kind == cutting.CutRegion:
		v.region(g.Low)
		v.region(g.High)
	case g.Kind == cutting.PieceRegion || g.Kept:
		v.fill(v.box(g), sheet.Paper)
		v.p.line(sheet.Outline, sheet.Narrow, v.box(g).Path())
	}
}

// letter writes label and size on pieces and kept rests, or the label alone.
func (v *sheetView) letter(g *cutting.Region) {
	switch {
	case g == nil:
	case g.Kind == cutting.CutRegion:
		v.letter(g.Low)
		v.letter(g.High)
	case g.Kind == cutting.PieceRegion || g.Kept:
		size := v.b.style.Format(g.Width) + " x " + v.b.style.Format(g.Height)
		name, turned := "offcut, keep", false
		if g.Kind == cutting.PieceRegion {
			name, turned = v.plan.Job.Pieces[g.Piece].Label, g.Turned
		}
		tries := [][]string{{name, size}, {name}}
		if turned {
			tries = [][]string{{name + ", turned", size}, {name, "turned", size}, {name, "turned"}, {name}}
		}
		for _, lines := range tries {
			if v.p.label(v.box(g), lines...) {
				return
			}
		}
	}
}

// number writes the number of each cut beside its line where there is room; the
// list has them all.
func (v *sheetView) number(g *cutting.Region) {
	if g == nil || g.Kind != cutting.CutRegion {
		return
	}
	v.step++
	box, said := v.box(g), fmt.Sprint(v.step)
	at := v.scale.OnPaper(g.At)
	for _, along := range []length.Length{50, 20, 80, 35, 65, 10, 90} {
		foot := box.Min.Add(at-mm, box.Height()*along/100)
		align := sheet.End
		if g.Line == cutting.Level {
			foot, align = box.Min.Add(box.Width()*along/100, at-letterHeight-mm), sheet.Start
		}
		if v.p.addClear(textAt(foot, letterHeight, align, said)) {
			break
		}
	}
	v.number(g.Low)
	v.number(g.High)
}
