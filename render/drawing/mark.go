package drawing

import (
	"fmt"
	"math"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

// sheetsBefore is how many sheets stand before the details.
const sheetsBefore = 4

// markRadius is the radius of the circle round what a detail shows.
const markRadius = 5 * mm

// detailMark draws a circle round a place that a detail shows enlarged, and writes
// which one, and on which sheet: "1 ON 05". One that would touch lettering is left
// out and said.
func (p *page) detailMark(frame dimension.Frame, at plane.Point, n int) {
	all := len(detailsOf(p.set))
	if n > all {
		return
	}
	name := fmt.Sprintf("%d ON %02d", n, sheetsBefore+1+evenlyAt(all, n-1))
	c := frame.Paper(at)
	circle := plane.BoxOf(c.Add(-markRadius, -markRadius), c.Add(markRadius, markRadius))
	if p.lettered(circle) {
		p.unplaced = append(p.unplaced, "the mark of detail "+name)
		return
	}
	half := advance(name).Half()
	for _, turn := range []float64{-45, -135, 45, 135, 0, 180, -90, 90} {
		sin, cos := math.Sincos(turn * math.Pi / 180)
		reach := markRadius + 2*mm
		x := length.Round(reach.MM() * cos)
		switch {
		case cos > 0.1:
			x += half
		case cos < -0.1:
			x -= half
		}
		t := centred(c.Add(x, length.Round(reach.MM()*sin)), name, figureHeight, false)
		if p.clear(t) && within(dimension.TextBox(t), p.work) {
			p.over = append(p.over, t)
			p.lines = append(p.lines, sheet.Stroke{Layer: sheet.Notes, Weight: sheet.Narrow, Path: plane.Circle(c, markRadius)})
			return
		}
	}
	p.unplaced = append(p.unplaced, "the mark of detail "+name)
}

// lettered tells whether lettering drawn so far comes into a box.
func (p *page) lettered(box plane.Box) bool {
	for _, mark := range p.over {
		switch m := mark.(type) {
		case sheet.Text:
			if dimension.TextBox(m).Meets(box) {
				return true
			}
		case sheet.Dimension:
			for _, t := range m.Texts {
				if dimension.TextBox(t).Meets(box) {
					return true
				}
			}
		}
	}
	return false
}

// evenlyAt is on which of the sheets that evenly shares out a detail stands.
func evenlyAt(all, i int) int {
	sheets := (all + detailsEach - 1) / detailsEach
	for k := range sheets {
		if i < all*(k+1)/sheets {
			return k
		}
	}
	return sheets - 1
}

// seats is how many details show the panels' seats: they come first, then the
// corner, if there is one.
func seats(leaf door.Leaf) int {
	if leaf.SolidPanel != nil {
		return 2
	}
	return 1
}

// markCorner marks the inside corner where its detail shows it, in the view from
// that side.
func (p *page) markCorner(frame dimension.Frame, back bool) {
	leaf := p.set.Leaf
	if leaf.Rabbet.Kind == door.Groove || back == (leaf.Rabbet.Kind == door.FaceBead) {
		return
	}
	at := leaf.Lites[0].Sight.Min
	if back {
		last := leaf.Lites[leaf.Columns-1].Sight
		at = plane.At(-last.Max.X, last.Min.Y)
	}
	p.detailMark(frame, at, seats(leaf)+1)
}

// markJoints marks the joints of rails with the left stile that details show, in
// the view from the front.
func (p *page) markJoints(frame dimension.Frame) {
	leaf := p.set.Leaf
	n := seats(leaf) + 1
	if leaf.Rabbet.Kind != door.Groove {
		n++
	}
	for _, m := range jointsShown(leaf) {
		if m.Axis == solid.X {
			p.detailMark(frame, plane.At(m.At, m.From+(m.To-m.From).Half()), n)
		}
		n++
		if m.Kind != door.PocketScrew {
			n++
		}
	}
}
