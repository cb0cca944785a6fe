package dimension

import (
	"cmp"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// A Head is what a leader ends in.
type Head int

// The heads: an arrow touches an edge, a dot lies within an outline.
const (
	Arrow Head = iota
	Dot
	Bare
)

// A Note is lettering with a leader: a slanted line from the tip to the elbow,
// a level shoulder, and the text beyond it, the first line level with the
// shoulder, more lines below. It stands on the side of the elbow that is away from the tip.
type Note struct {
	Tip, Elbow plane.Point
	Lines      []string
	Head       Head
	TextHeight length.Length // height of a capital; at least 2.5 mm
}

const shoulder = 3000 * um

// linePitch is the distance of base lines in tenths of the height of a capital:
// ISO 3098 asks for at least 14; accents and fractions need more.
const linePitch = 19

// Leader draws a note. One without lines draws only the leader.
func Leader(n Note) []sheet.Mark {
	var marks []sheet.Mark
	h, way := max(n.TextHeight, leastText), n.way()
	end := n.Elbow.Add(way*shoulder, 0)
	line := sheet.Stroke{Layer: sheet.Notes, Weight: sheet.Narrow}
	if n.Tip != n.Elbow {
		line.Path = append(line.Path, plane.Line(n.Tip, n.Elbow))
	}
	line.Path = append(line.Path, plane.Line(n.Elbow, end))
	marks = append(marks, line)
	switch n.Head {
	case Arrow:
		tail := n.Elbow
		if n.Tip == n.Elbow {
			tail = end
		}
		if head, ok := triangle(n.Tip, tail); ok {
			marks = append(marks, sheet.Fill{Layer: sheet.Notes, Tone: sheet.Ink, Region: plane.Region{head}})
		}
	case Dot:
		marks = append(marks, sheet.Fill{Layer: sheet.Notes, Tone: sheet.Ink,
			Region: plane.Region{plane.Circle(n.Tip, dotRadius)}})
	}
	at, align := end.Add(way*rowClear, -h.Half()), sheet.Start
	if way < 0 {
		align = sheet.End
	}
	for i, s := range n.Lines {
		s = lettering.Legible(s)
		marks = append(marks, sheet.Text{
			Layer: sheet.Notes, At: at.Add(0, -length.Length(i)*h*linePitch/10), Height: h, Align: align,
			String: s, Advance: lettering.Advance(s, h),
		})
	}
	return marks
}

// way is +1 for a note to the right of its elbow, -1 to the left.
func (n Note) way() length.Length {
	if n.Elbow.X < n.Tip.X {
		return -1
	}
	return 1
}

// Column draws notes one below the other with their elbows at x, each as near
// as may be to the height of its own elbow, in the order of these heights from below.
func Column(notes []Note, x length.Length) []sheet.Mark {
	sorted := slices.Clone(notes)
	slices.SortStableFunc(sorted, func(a, b Note) int { return cmp.Compare(a.Elbow.Y, b.Elbow.Y) })
	var items []item
	for _, n := range sorted {
		h := max(n.TextHeight, leastText)
		it := item{tip: n.Elbow.Y, lo: -h.Half(), hi: h.Half()}
		for i, s := range n.Lines {
			above, below := lettering.Reach(s, h)
			base := -h.Half() - length.Length(i)*h*linePitch/10
			it.lo, it.hi = min(it.lo, base-below), max(it.hi, base+above)
		}
		items = append(items, it)
	}
	var marks []sheet.Mark
	for i, y := range spread(items, 2*between, nil, 0) {
		n := sorted[i]
		n.Elbow = plane.At(x, y)
		marks = append(marks, Leader(n)...)
	}
	return marks
}
