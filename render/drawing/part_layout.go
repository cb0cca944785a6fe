package drawing

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

// partSheet draws one part: its faces unrolled, its end, and tables of its cuts and
// holes, at the largest standard scale at which all find room in some arrangement.
// Only where there is none are views left out, and the sheet says which.
func partSheet(k kind) func(*page) {
	return func(p *page) {
		l := lay(k)
		texts := p.partTexts(l)
		shown, out := l.shown(), []string(nil)
		for {
			if p.arranged(l, shown, texts) {
				break
			}
			i := slices.IndexFunc(shown, func(f face) bool { return f.turns != 0 })
			if i < 0 {
				p.err = fmt.Errorf("part %s, %s long, fits no standard scale on %s paper: name a larger paper", l.first.Label, p.format(l.length), p.paper.Name)
				return
			}
			for i = len(shown) - 1; shown[i].turns == 0; i-- {
			}
			out = append(out, "the view of the "+shown[i].word)
			shown = slices.Delete(slices.Clone(shown), i, i+1)
		}
		if len(out) > 0 {
			p.unplaced = append(p.unplaced, strings.Join(out, " and ")+" (name a larger paper)")
		}
	}
}

// A partText is a part's tables and notes as they share a block of the sheet, and
// the zone that is left for the views.
type partText struct {
	tables  [][][]string
	corners []plane.Point // upper left, of the tables
	notes   []string
	corner  plane.Point // of the notes
	zone    plane.Box
}

// partTexts are the places of a part's tables and notes that may be tried: at the
// foot with the notes at the right; tables at the foot and notes in a column at the
// right; all in a column at the right; all at the foot one below another.
func (p *page) partTexts(l laidPart) []partText {
	notes := p.partNotes(l)
	wide, high := columns(1, notes)
	var texts []partText
	if foot, ok := p.footText(l, notes, wide, high); ok {
		texts = append(texts, foot)
	}
	texts = append(texts, p.splitText(l, notes, wide, high))
	least := p.partTables(l, 0)
	for _, rows := range least {
		wide = max(wide, tableWidth(rows))
	}
	beside := partText{notes: notes, tables: p.partTables(l, wide), zone: p.work}
	beside.zone.Max.X -= wide + gutter
	below := p.down(&beside, plane.At(p.work.Max.X-wide, p.work.Max.Y))
	if below-high >= p.work.Min.Y {
		texts = append(texts, beside)
	}
	under := partText{notes: notes, tables: p.partTables(l, p.work.Width()), zone: p.work}
	taken := p.work.Max.Y - p.down(&under, p.work.Min.Add(0, p.work.Height())) + high
	p.down(&under, plane.At(p.work.Min.X, p.work.Min.Y+taken))
	under.zone.Min.Y += taken + gutter
	return append(texts, under)
}

// footText is the text at the foot: tables side by side or one below another at
// the left, the notes at the right; not ok if that is too wide.
func (p *page) footText(l laidPart, notes []string, wide, high length.Length) (t partText, ok bool) {
	room := p.work.Width() - wide - gutter
	t = partText{notes: notes, zone: p.work}
	tall, ok := p.abreast(&t, l, room, high)
	t.corner = plane.At(p.work.Max.X-wide, p.work.Min.Y+tall)
	t.zone.Min.Y += tall + gutter
	return t, ok
}

// splitText has the tables at the foot and the notes in a column at the right.
func (p *page) splitText(l laidPart, notes []string, wide, high length.Length) partText {
	t := partText{notes: notes, zone: p.work, corner: p.work.Max.Add(-wide, 0)}
	tall, _ := p.abreast(&t, l, p.work.Width(), 0)
	t.zone.Min.Y += tall + gutter
	t.zone.Max.X -= wide + gutter
	if t.zone.Height() < high {
		t.zone.Max.X = t.zone.Min.X // the notes would meet the tables
	}
	return t
}

// abreast sets a part's tables at the foot of the sheet, side by side where room
// allows and else one below another, at least so high; it returns their height and
// whether they are no wider than that room.
func (p *page) abreast(t *partText, l laidPart, room, least length.Length) (tall length.Length, ok bool) {
	t.tables = p.partTables(l, room)
	var widths, highs []length.Length
	for _, rows := range t.tables {
		w, h := p.tableSize(rows)
		widths, highs = append(widths, w+gutter), append(highs, h+gutter)
	}
	if len(highs) == 0 {
		return least, true
	}
	side := length.Sum(widths...) <= room+gutter
	tall = max(least, length.Sum(highs...)-gutter)
	if side {
		tall = max(least, slices.Max(highs)-gutter)
	}
	corner := plane.At(p.work.Min.X, p.work.Min.Y+tall)
	for i := range t.tables {
		t.corners = append(t.corners, corner)
		if side {
			corner.X += widths[i]
		} else {
			corner.Y -= highs[i]
		}
	}
	return tall, slices.Max(widths) <= room+gutter
}

// partTables are the tables of a part that have rows, at most so wide where their
// words allow.
func (p *page) partTables(l laidPart, wide length.Length) [][][]string {
	var tables [][][]string
	for _, rows := range [][][]string{p.cutRows(l, wide), p.holeRows(l, wide)} {
		if len(rows) > 1 {
			tables = append(tables, rows)
		}
	}
	return tables
}

// down sets tables and notes one below another from a corner; it returns where the
// notes begin.
func (p *page) down(t *partText, corner plane.Point) length.Length {
	t.corners = nil
	for _, rows := range t.tables {
		t.corners = append(t.corners, corner)
		_, high := p.tableSize(rows)
		corner.Y -= high + gutter
	}
	t.corner = corner
	return corner.Y
}

// A placedView is a view of a part with its lower left corner on the paper: a face, or
// the right-hand end.
type placedView struct {
	face face
	end  bool
	at   plane.Point
}

// arranged draws the views and texts at the largest scale at which some arrangement
// holds them; it tells whether there is one.
func (p *page) arranged(l laidPart, shown []face, texts []partText) bool {
	for _, scale := range p.scalesTaken {
		if scale.Paper > scale.Real || scale.OnPaper(l.length) > p.work.Width() {
			continue
		}
		s := partStack{page: p, part: l, scale: scale}
		if views, text, ok := s.bestOf(shown, texts); ok {
			s.draw(text.zone, views)
			p.partText(text)
			return true
		}
	}
	return false
}

// bestOf is the first arrangement that holds the views at the scale with nothing
// on their lettering, or where all have something there the first that holds them.
func (s partStack) bestOf(shown []face, texts []partText) (best []placedView, in partText, ok bool) {
	boxes := s.boxes(shown)
	for _, columns := range splits(len(shown)) {
		for _, place := range []endPlace{besideFront, ownColumn, belowFaces} {
			for _, text := range texts {
				zone := text.zone
				zone.Min.Y += titleRoom
				views, fits := s.arrange(zone, shown, boxes, columns, place)
				if !fits {
					continue
				}
				if s.readsWell(views, text.zone) {
					return views, text, true
				}
				if !ok {
					best, in, ok = views, text, true
				}
			}
		}
	}
	return best, in, ok
}

// readsWell tells whether the dimensions of views touch neither one another nor
// what is outside of the zone. The room of a view is found about the origin; where
// two ways to place figures are equally good, the one taken may differ at its place.
func (s partStack) readsWell(views []placedView, zone plane.Box) bool {
	var marks []sheet.Mark
	for _, v := range views {
		rows, frame := s.rowsOf(v)
		marks = append(marks, s.page.dimensions(frame, rows)...)
	}
	return len(dimension.Collisions(marks, zone)) == 0
}

// rowsOf are a placed view's dimensions and frame.
func (s partStack) rowsOf(v placedView) (layout, dimension.Frame) {
	if v.end {
		return s.endRows(), s.frame(v.at, s.part.thickness, s.part.width)
	}
	return s.rows(v.face), s.frame(v.at, s.part.length, v.face.high)
}

// splits are the ways to share n views among columns in turn, by the number of views
// in each, those of few columns first.
func splits(n int) [][]int {
	if n == 0 {
		return [][]int{{}}
	}
	var all [][]int
	for first := n; first > 0; first-- {
		for _, rest := range splits(n - first) {
			all = append(all, append([]int{first}, rest...))
		}
	}
	slices.SortStableFunc(all, func(a, b []int) int { return len(a) - len(b) })
	return all
}

// boxes are the room of each shown face about its own corner, and last that of the
// end, whose figures may lie either way, see readsWell.
func (s partStack) boxes(shown []face) []plane.Box {
	var boxes []plane.Box
	for _, f := range shown {
		boxes = append(boxes, s.extent(s.frame(plane.At(0, 0), s.part.length, f.high), s.rows(f)))
	}
	end := s.endExtent(s.frame(plane.At(0, 0), s.part.thickness, s.part.width))
	far := s.page.work.Max
	there := s.endExtent(s.frame(far, s.part.thickness, s.part.width))
	return append(boxes, end.Join(plane.Box{Min: there.Min.Add(-far.X, -far.Y), Max: there.Max.Add(-far.X, -far.Y)}))
}

// viewGap is left between two views of a part, beside their dimensions and names.
const viewGap = 3 * mm

// An endPlace is where the right-hand end stands.
type endPlace int

// The places of the end: beside the front as projection has it, in a column of its
// own, below the last face.
const (
	besideFront endPlace = iota
	ownColumn
	belowFaces
)

// arrange shares the shown faces among columns of so many each, from the left,
// their left ends in line, and the end in its place.
// It is not ok if the zone does not hold them.
func (s partStack) arrange(zone plane.Box, shown []face, boxes []plane.Box, columns []int, place endPlace) (views []placedView, ok bool) {
	end := boxes[len(shown)]
	var x, tallest length.Length
	next := 0
	for c, n := range columns {
		var left, right, y length.Length
		for i := next; i < next+n; i++ {
			left, right = min(left, boxes[i].Min.X), max(right, boxes[i].Max.X)
		}
		last := c == len(columns)-1
		corner, widest := x-left, right
		for i := next; i < next+n; i++ {
			top, foot := boxes[i].Max.Y, boxes[i].Min.Y
			withEnd := shown[i].turns == 0 && place == besideFront
			if withEnd {
				top, foot = max(top, end.Max.Y), min(foot, end.Min.Y)
			}
			y -= top
			views = append(views, placedView{face: shown[i], at: plane.At(corner, y)})
			if withEnd {
				off := boxes[i].Max.X + gutter - end.Min.X
				views = append(views, placedView{end: true, at: plane.At(corner+off, y)})
				widest = max(widest, off+end.Max.X)
			}
			y += foot - viewGap
		}
		if last && place == belowFaces {
			y -= end.Max.Y
			off := max(0, left-end.Min.X)
			views = append(views, placedView{end: true, at: plane.At(corner+off, y)})
			widest = max(widest, off+end.Max.X)
			y += end.Min.Y - viewGap
		}
		x, tallest, next = corner+widest+gutter, max(tallest, -y-viewGap), next+n
	}
	if place == ownColumn {
		views = append(views, placedView{end: true, at: plane.At(x-end.Min.X, -end.Max.Y)})
		x, tallest = x+end.Width()+gutter, max(tallest, end.Height())
	}
	x -= gutter
	if x > zone.Width() || tallest > zone.Height() {
		return nil, false
	}
	shift := plane.At(zone.Min.X+(zone.Width()-x).Half(), zone.Max.Y-(zone.Height()-tallest).Half())
	for i := range views {
		views[i].at = views[i].at.Add(shift.X, shift.Y)
	}
	return views, true
}

// draw draws the views where they stand, and their common title below them.
func (s partStack) draw(zone plane.Box, views []placedView) {
	p, foot := s.page, zone.Max.Y
	if p.trial {
		return
	}
	for _, v := range views {
		rows, frame := s.rowsOf(v)
		foot = min(foot, s.extent(frame, rows).Min.Y)
		if v.end {
			s.endView(frame)
		} else {
			s.face(frame, v.face)
		}
	}
	title, height := fitted(fmt.Sprintf("%s, %s: FACES UNROLLED ABOUT ITS LENGTH", s.part.short(), capitals(s.part.first.Name)), zone.Width(), titleHeight)
	p.caption(plane.At((zone.Min.X+zone.Max.X).Half(), foot-titleRoom), title, height, s.scale)
}

// partText sets a part's tables and notes.
func (p *page) partText(t partText) {
	for i, rows := range t.tables {
		p.table(t.corners[i], rows, map[int]bool{1: true})
	}
	p.notes(t.corner, 1, t.notes...)
}
