package guide

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

// Sizes on the paper.
const (
	bodyHeight    = 5 * mm / 2 // capitals: the least ISO 3098 allows on A4 to A2 (from memory)
	stepHeight    = 3 * mm
	chapterHeight = 9 * mm / 2
	pitch         = 5 * mm // base line to base line
	apart         = 3 * mm // between steps
	footHeight    = 9 * mm
	gutter        = 5 * mm
	indent        = 8 * mm
)

// Papers that are read in the hand, by the units of the model.
const (
	inchPaper   = "letter"
	metricPaper = "A4"
)

// Sheets lays a guide on upright pages of letter or A4 paper, as its units are
// those of inches or not. A step stays on one page where it can.
func Sheets(g Guide) ([]sheet.Sheet, error) {
	name := metricPaper
	if g.Units == length.Inches {
		name = inchPaper
	}
	paper, err := catalog.PaperSize(name)
	if err != nil {
		return nil, err
	}
	l := newLayout(g, paper)
	l.head()
	for i, c := range g.Chapters {
		for k, s := range c.Steps {
			blocks := l.step(number(i, k), s)
			if k == 0 {
				blocks = joined(l.chapter(fmt.Sprintf("%d  %s", i+1, c.Title)), blocks)
			}
			l.put(blocks)
		}
	}
	return l.sheets(), nil
}

// A layout is the pages while they grow.
type layout struct {
	guide      Guide
	wide, high length.Length
	frame      plane.Box // of the text
	pages      [][]sheet.Mark
	top        length.Length // of what is still free
	pictures   map[string]sheet.Sheet
}

func newLayout(g Guide, paper catalog.Paper) *layout {
	w, h := paper.Portrait()
	l := &layout{guide: g, wide: w, high: h, pictures: map[string]sheet.Sheet{}}
	side := max(paper.Binding, 3*paper.Sides/2)
	l.frame = plane.BoxOf(plane.At(side, paper.Ends+footHeight+gutter), plane.At(w-side, h-paper.Ends-gutter))
	for _, p := range g.Pictures {
		l.pictures[p.Name] = cropped(p)
	}
	l.turn()
	return l
}

// turn begins a page.
func (l *layout) turn() {
	l.pages = append(l.pages, nil)
	l.top = l.frame.Max.Y
}

// A block is marks that stay together, drawn down from 0, at the left at 0.
type block struct {
	marks []sheet.Mark
	high  length.Length
}

// joined puts one block before others, so that it stays with the first of them.
func joined(before block, blocks []block) []block {
	if len(blocks) == 0 {
		return []block{before}
	}
	first := before
	first.marks = append(first.marks, moved(blocks[0].marks, 0, -before.high)...)
	first.high += blocks[0].high
	return append([]block{first}, blocks[1:]...)
}

// put sets blocks that belong together: on what is left of the page, or on the
// next one, or, where a page does not hold them, one after another.
func (l *layout) put(blocks []block) {
	total := length.Length(0)
	for _, b := range blocks {
		total += b.high
	}
	if free := l.top - l.frame.Min.Y; total > free && (total <= l.frame.Height() || len(blocks) > 0 && blocks[0].high > free) {
		l.turn()
	}
	for _, b := range blocks {
		if b.high > l.top-l.frame.Min.Y && l.top < l.frame.Max.Y {
			l.turn()
		}
		at := len(l.pages) - 1
		l.pages[at] = append(l.pages[at], moved(b.marks, l.frame.Min.X, l.top)...)
		l.top -= b.high
	}
}

// head is the title and what is said before the first chapter.
func (l *layout) head() {
	wide := l.frame.Width()
	b := block{}
	b.paragraph(0, wide, chapterHeight, l.guide.Job+": building order")
	b.high += 2 * mm
	for _, s := range l.guide.About {
		b.paragraph(0, wide, bodyHeight, s)
		b.high += mm
	}
	l.put([]block{b})
}

// chapter is a chapter's title over a line.
func (l *layout) chapter(title string) block {
	b := block{high: 4 * mm}
	b.paragraph(0, l.frame.Width(), chapterHeight, title)
	b.high += mm
	b.rule(0, l.frame.Width(), sheet.Wide)
	b.high += 3 * mm
	return b
}

// sheets are the finished pages with their feet.
func (l *layout) sheets() []sheet.Sheet {
	var out []sheet.Sheet
	for i, marks := range l.pages {
		foot := l.frame.Min.Y - gutter
		b := block{}
		b.rule(0, l.frame.Width(), sheet.Wide)
		b.high += pitch
		right := fmt.Sprintf("%d of %d", i+1, len(l.pages))
		if l.guide.Revision != "" {
			right = "rev " + l.guide.Revision + " · " + right
		}
		room := l.frame.Width() - advance(right, bodyHeight) - gutter
		b.line(0, bodyHeight, sheet.Start, shortened(l.guide.Job+" · building order", room))
		b.line(l.frame.Width(), bodyHeight, sheet.End, right)
		marks = append(marks, moved(b.marks, l.frame.Min.X, foot)...)
		out = append(out, sheet.Sheet{Name: fmt.Sprintf("guide-%d", i+1), Title: fmt.Sprintf("%s · building order, page %d", l.guide.Job, i+1),
			Description: "One page of the building order.", Width: l.wide, Height: l.high, Marks: marks})
	}
	return out
}
