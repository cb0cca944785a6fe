package drawing

import (
	"cmp"
	"fmt"
	"slices"

	"stilewright/model/length"
	"stilewright/model/solid"
)

// A milled is what one cut takes from a laid part: the box round it.
type milled struct {
	use       string    // what it is: "mortise", "tenon", "haunch"
	face      string    // the face it is worked from
	low, high solid.Vec // within the blank
	beside    bool      // it is cut away beside a tenon
}

// jointUses are the cuts that make joints or let something in. Others are the
// panel's seat or worked edges.
var jointUses = []string{"tenon", "haunch", "shoulder", "mortise", "lap", "bridle", "bridle slot", "pull", "guide"}

// joint tells whether the cut belongs to a joint, a pull or a guide.
func (m milled) joint() bool { return slices.Contains(jointUses, m.use) }

// onLeaf tells whether the cut is made in the assembled leaf: rabbets and
// worked edges.
func (m milled) onLeaf() bool { return !m.joint() && m.use != "groove" }

// milled are the cuts of a part, each with the face it is drawn and
// dimensioned on: front or back if it opens there, else the edge, else the end.
func (l laidPart) milled() []milled {
	var all []milled
	for _, c := range l.solid.Cuts {
		low, high := (solid.Solid{Blank: c.Prism}).Bounds()
		m := milled{use: c.For, low: solid.Vec{X: max(low.X, 0), Y: max(low.Y, 0), Z: max(low.Z, 0)},
			high: solid.Vec{X: min(high.X, l.length), Y: min(high.Y, l.thickness), Z: min(high.Z, l.width)}}
		if m.low.X >= m.high.X || m.low.Y >= m.high.Y || m.low.Z >= m.high.Z {
			continue
		}
		for _, word := range l.opens() {
			if l.reaches(m, word) {
				m.face = word
				break
			}
		}
		all = append(all, m)
	}
	for i, m := range all {
		all[i].use = l.useOf(m, all)
		all[i].beside = m.use == "tenon" && all[i].use != m.use
	}
	return all
}

// opens are the words of all six faces in the order in which they are asked
// whether a cut opens there.
func (l laidPart) opens() [6]string {
	f := l.faces()
	left, right := l.ends()
	return [6]string{f[1].word, f[3].word, f[0].word, f[2].word, right, left}
}

// ends are the words of the left and the right end as the part lies.
func (l laidPart) ends() (left, right string) {
	if l.first.Grain == solid.Z {
		return "foot", "upper end"
	}
	return "left end", "right end"
}

// reaches tells whether a cut opens in the face of that word.
func (l laidPart) reaches(m milled, word string) bool {
	f := l.faces()
	left, right := l.ends()
	switch word {
	case f[0].word:
		return m.high.Z == l.width
	case f[1].word:
		return m.low.Y == 0
	case f[2].word:
		return m.low.Z == 0
	case f[3].word:
		return m.high.Y == l.thickness
	case left:
		return m.low.X == 0
	case right:
		return m.high.X == l.length
	}
	return false
}

// useOf is what a cut is called on the sheet: what is cut away beside a tenon,
// as far in as its cheeks, is a shoulder; less far, it leaves a haunch.
func (l laidPart) useOf(m milled, all []milled) string {
	f := l.faces()
	edge := m.face == f[0].word || m.face == f[2].word
	switch {
	case m.use == "bridle" && edge:
		return "bridle slot"
	case m.use != "tenon" || !edge:
		return m.use
	}
	for _, cheek := range all {
		if cheek.face == "front" && cheek.low.X <= m.low.X && cheek.high.X >= m.high.X && (cheek.low.X < m.low.X || cheek.high.X > m.high.X) {
			return "haunch"
		}
	}
	return "shoulder"
}

// across are a cut's limits across a face as it is drawn, the lower first.
func (m milled) across(l laidPart, f face) (low, high length.Length) {
	a, b := l.shownAt(f, m.low), l.shownAt(f, m.high)
	return min(a, b), max(a, b)
}

// size are a cut's length, width and depth as its face shows it; of one in an
// end the length is that across the part.
func (m milled) size(l laidPart) (long, wide, deep length.Length) {
	x, y, z := m.high.X-m.low.X, m.high.Y-m.low.Y, m.high.Z-m.low.Z
	f := l.faces()
	switch m.face {
	case f[0].word, f[2].word:
		return x, y, z
	case f[1].word, f[3].word:
		return x, z, y
	}
	return z, y, x
}

// through tells whether a cut goes through to the opposite face.
func (m milled) through(l laidPart) bool {
	f := l.faces()
	left, right := l.ends()
	opposite := map[string]string{f[0].word: f[2].word, f[1].word: f[3].word, f[2].word: f[0].word, left: right, right: left}
	return m.face != f[3].word && l.reaches(m, opposite[m.face])
}

// listedAt is a cut or hole of a face for a table, its place across as the last
// cell: from the front on edges and ends, else from the part's lower edge. Along it
// counts from the left end or, on ends, from that edge.
func (p *page) listedAt(l laidPart, face string, at solid.Vec, cells ...string) listed {
	f, faces := p.format, l.faces()
	lower := " from " + faces[2].word
	left, right := l.ends()
	switch face {
	case faces[1].word, faces[3].word:
		return listed{append(cells, f(at.Z)+lower), at.X, ""}
	case left, right:
		return listed{append(cells, f(at.Y)+" from front"), at.Z, lower}
	}
	return listed{append(cells, f(at.Y)+" from front"), at.X, ""}
}

// cutRows is the table of a part's cuts but for its rabbets, at most so wide:
// those alike in one row, with the places where they begin along the part.
func (p *page) cutRows(l laidPart, wide length.Length) [][]string {
	var items []listed
	for _, m := range l.milled() {
		if m.use == "rabbet" {
			continue // dimensioned on the leaf
		}
		long, across, deep := m.size(l)
		depth := p.format(deep)
		if m.through(l) {
			depth = "through"
		}
		items = append(items, p.listedAt(l, m.face, m.low, m.use, "", m.face, p.format(long), p.format(across), depth))
	}
	return p.gathered([]string{"CUT", "QTY", "IN", "LONG", "WIDE", "DEEP", "ACROSS", "BEGINS ALONG"}, items, wide)
}

// A listed is one cut or hole for a table: its cells without number and place
// along, and that place.
type listed struct {
	cells []string
	along length.Length
	from  string // said after the last place: from where they count
}

// gathered is a table at most so wide of those things, equal ones in one row with
// their number in the second column and their places in the last. Rows go by use,
// by face, and by their first place.
func (p *page) gathered(head []string, items []listed, wide length.Length) [][]string {
	slices.SortStableFunc(items, func(a, b listed) int {
		return cmp.Or(cmp.Compare(a.cells[0], b.cells[0]), cmp.Compare(a.cells[2], b.cells[2]), cmp.Compare(a.along, b.along))
	})
	rows, alongs, froms := [][]string{head}, [][]string{nil}, map[int]string{}
	for _, item := range items {
		i := slices.IndexFunc(rows, func(row []string) bool { return slices.Equal(row[:len(row)-1], item.cells) })
		if i < 0 {
			i = len(rows)
			rows, alongs = append(rows, append(slices.Clone(item.cells), "")), append(alongs, nil)
		}
		alongs[i] = append(alongs[i], p.format(item.along))
		froms[i] = item.from
	}
	for i, places := range alongs[1:] {
		rows[i+1][1] = fmt.Sprint(len(places))
		places[len(places)-1] += froms[i+1]
	}
	last := len(head) - 1
	room := wide - tableWidth(rows) + advance(head[last])
	whole := [][]string{head}
	for i, row := range rows[1:] {
		for _, line := range filled(alongs[i+1], max(room, leastAlong)) {
			whole = append(whole, append(slices.Clone(row[:last]), line))
			row = make([]string, len(head))
		}
	}
	return whole
}
