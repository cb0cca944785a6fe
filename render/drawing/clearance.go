package drawing

import (
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// clearance draws what is left free: reveals and gaps wider than they are beside
// the leaves, the face gap from above, and the floor gap along the travel.
func clearance(p *page) {
	left, right := p.work, p.work
	left.Max.X = p.work.Min.X + p.work.Width()*46/100
	right.Min.X = left.Max.X + gutter
	rows := p.travelRows()
	_, high := p.tableSize(rows)
	plot, above := right, right
	above.Max.Y = right.Min.Y + right.Height()*30/100
	plot.Min.Y = above.Max.Y + high + gutter
	p.gapsView(left)
	p.floorPlot(plot)
	p.table(plane.At(right.Min.X, above.Max.Y+high), rows, nil)
	p.faceGapView(above)
}

// times are how much wider than the leaves gaps may be drawn.
var times = [...]int64{100, 50, 40, 30, 20, 15, 10, 8, 5, 4, 3, 2, 1}

// widest is the most times that a gap, drawn so large at the leaves' scale, still
// fits into the room; a gap of nothing is drawn once.
func widest(drawn, room length.Length) int64 {
	if drawn <= 0 {
		return 1
	}
	for _, n := range times {
		if drawn*length.Length(n) <= room {
			return n
		}
	}
	return 1
}

// A stretch maps true places to the paper, some spaces wider than others: at the
// places given it stands at the paper's places given, between them even, and
// beyond them as in the first and the last space.
type stretch struct{ at, on []length.Length }

// newStretch maps places in ascending order; space i is drawn by share·widen[i].
func newStretch(at []length.Length, share float64, widen []int64) stretch {
	s := stretch{at: at, on: []length.Length{0}}
	for i := 1; i < len(at); i++ {
		s.on = append(s.on, s.on[i-1]+length.Round((at[i]-at[i-1]).MM()*share*float64(widen[i-1])))
	}
	return s
}

// paper is the place on the paper.
func (s stretch) paper(x length.Length) length.Length {
	i := 1
	for i < len(s.at)-1 && x > s.at[i] {
		i++
	}
	if s.at[i] == s.at[i-1] {
		return s.on[i]
	}
	share := (x - s.at[i-1]).MM() / (s.at[i] - s.at[i-1]).MM()
	return s.on[i-1] + length.Round((s.on[i]-s.on[i-1]).MM()*share)
}

// spaces is a chain at true places: drawn where they stand on the paper, with the
// true sizes as its figures.
func (p *page) spaces(s stretch, label string, at ...length.Length) dimension.Row {
	at = distinct(slices.Clone(at))
	row := dimension.Row{Style: dimension.Chain, Label: label}
	for i, x := range at {
		row.At = append(row.At, s.paper(x))
		if i > 0 {
			row.Figures = append(row.Figures, p.format(x-at[i-1]))
		}
	}
	return row
}

// A scheme is a picture that keeps to no scale: its outline on the paper, and its
// rows with true figures.
type scheme struct {
	box                       plane.Box
	below, above, left, right []dimension.Row
	title, says               string
}

// placeScheme draws a scheme as large as its zone allows; make gives it for an
// outline of a certain size. What finds no room is said on the sheet.
func (p *page) placeScheme(zone plane.Box, make func(wide, high length.Length) scheme) (dimension.Frame, bool) {
	for share := length.Length(100); share >= 20; share -= 4 {
		s := make(zone.Width()*share/100, zone.Height()*share/100)
		frame := dimension.Frame{Box: plane.Box{Max: plane.At(s.box.Width(), s.box.Height())}, Origin: s.box.Min}
		whole := frame.Box
		if extent, ok := dimension.Extent(p.schemeRows(frame, s)); ok {
			whole = whole.Join(extent)
		}
		half, middle := max(lettering.Advance(s.title, titleHeight), advance(s.says)).Half(), frame.Box.Max.X.Half()
		whole.Min.X, whole.Max.X, whole.Min.Y = min(whole.Min.X, middle-half), max(whole.Max.X, middle+half), whole.Min.Y-titleRoom
		if whole.Width() > zone.Width() || whole.Height() > zone.Height() {
			continue
		}
		dx, dy := toMiddle(whole, zone)
		frame.Box = plane.Box{Min: frame.Box.Min.Add(dx, dy), Max: frame.Box.Max.Add(dx, dy)}
		p.over = append(p.over, p.schemeRows(frame, s)...)
		foot := plane.At((frame.Box.Min.X + frame.Box.Max.X).Half(), whole.Min.Y+dy)
		p.text(foot.Add(0, 13*mm/2), titleHeight, sheet.Middle, false, s.title)
		p.text(foot.Add(0, 3*mm/2), figureHeight, sheet.Middle, false, s.says)
		return frame, true
	}
	p.unplaced = append(p.unplaced, "a picture of clearance")
	return dimension.Frame{}, false
}

// schemeRows are the rows of a scheme as finished marks: no true dimensions, for
// their points stand elsewhere than their figures say.
func (p *page) schemeRows(frame dimension.Frame, s scheme) []sheet.Mark {
	marks, _ := dimension.Around(frame, [4][]dimension.Row{dimension.Below: s.below, dimension.Above: s.above, dimension.LeftOf: s.left, dimension.RightOf: s.right}, dimension.Options{Format: p.format, TextHeight: figureHeight})
	var out []sheet.Mark
	for _, mark := range marks {
		if d, is := mark.(sheet.Dimension); is {
			out = append(out, d.Drawing()...)
			continue
		}
		out = append(out, mark)
	}
	return out
}

// gapRoom is how wide the widest gap is drawn, about.
const gapRoom = 12 * mm

// A gapped is the set in the opening with its gaps widened.
type gapped struct {
	x, z                stretch
	sides, floor, above int64 // how many times
}

// gapped lays the set out within a size on the paper.
func (p *page) gapped(wide, high length.Length) gapped {
	s, o := p.set, p.set.Opening
	left, right := jambSpan(o)
	first, last := s.Hung[0].At.X, s.Hung[len(s.Hung)-1].At.X+s.Leaf.Width
	bottom, top := s.Hung[0].At.Z, s.Hung[0].At.Z+s.Leaf.Height
	low := o.Floor[0].Y
	for _, at := range o.Floor {
		low = min(low, at.Y)
	}
	share := min((wide-2*gapRoom).MM()/(last-first).MM(), (high-2*gapRoom).MM()/s.Leaf.Height.MM())
	drawn := func(l length.Length) length.Length { return length.Round(l.MM() * share) }
	at := []length.Length{left, first}
	for i := 1; i < len(s.Hung); i++ {
		if a, b := s.Hung[i-1], s.Hung[i]; a.Channel == b.Channel && b.At.X > a.At.X+s.Leaf.Width {
			at = append(at, a.At.X+s.Leaf.Width, b.At.X)
		}
	}
	at = append(at, last, right)
	most := length.Length(0)
	for i := 1; i < len(at); i += 2 {
		most = max(most, at[i]-at[i-1])
	}
	g := gapped{sides: widest(drawn(most), gapRoom), floor: widest(drawn(bottom-low), gapRoom), above: widest(drawn(o.Head-top), gapRoom)}
	var widen []int64
	for i := 1; i < len(at); i++ {
		n := int64(1)
		if i%2 == 1 {
			n = g.sides
		}
		widen = append(widen, n)
	}
	g.x = newStretch(at, share, widen)
	g.z = newStretch([]length.Length{low, bottom, top, o.Head}, share, []int64{g.floor, 1, g.above})
	return g
}

// jambSpan is from the leftmost to the rightmost point of the jambs, leaves within.
func jambSpan(o door.Opening) (left, right length.Length) {
	left, right = o.Left[0].X, o.Right[0].X
	for _, at := range o.Left {
		left = min(left, at.X)
	}
	for _, at := range o.Right {
		right = max(right, at.X)
	}
	return left, right
}

// gapsView draws the closed leaves from the room with reveals and gaps widened.
func (p *page) gapsView(zone plane.Box) {
	s, o := p.set, p.set.Opening
	bottom, top := s.Hung[0].At.Z, s.Hung[0].At.Z+s.Leaf.Height
	var g gapped
	frame, fits := p.placeScheme(zone, func(wide, high length.Length) scheme {
		g = p.gapped(wide, high)
		edges := func(jambs ...length.Length) []length.Length {
			for _, h := range s.Hung {
				jambs = append(jambs, h.At.X, h.At.X+s.Leaf.Width)
			}
			return jambs
		}
		foot, head := o.Right[0].X, o.Right[len(o.Right)-1].X
		return scheme{
			box:   plane.Box{Max: plane.At(g.x.on[len(g.x.on)-1], g.z.on[3])},
			below: []dimension.Row{p.spaces(g.x, "AT THE FLOOR", edges(o.Left[0].X, foot)...)},
			above: []dimension.Row{p.spaces(g.x, "AT THE HEAD", edges(o.Left[len(o.Left)-1].X, head)...)},
			left:  []dimension.Row{p.spaces(g.z, "", o.FloorAt(0), bottom, top, o.Head)},
			right: []dimension.Row{p.spaces(g.z, "", o.FloorAt(o.Width), bottom, top, o.Head)},
			title: "REVEALS AND GAPS, NOT TO SCALE",
			says:  fmt.Sprintf("gaps drawn wider: sides %d, floor %d, head %d times", g.sides, g.floor, g.above),
		}
	})
	if !fits {
		return
	}
	line := func(points []plane.Point) {
		var on []plane.Point
		for _, at := range points {
			on = append(on, plane.At(g.x.paper(at.X), g.z.paper(at.Y)))
		}
		p.stroke(frame, sheet.Opening, sheet.Wide, sheet.Continuous, slices.Compact(on)...)
	}
	last := len(o.Floor) - 1
	line(append([]plane.Point{plane.At(o.Left[0].X, o.Floor[0].Y)}, o.Left[1:]...))
	line(append([]plane.Point{plane.At(o.Right[0].X, o.Floor[last].Y)}, o.Right[1:]...))
	line(append(append([]plane.Point{plane.At(o.Left[0].X, o.Floor[0].Y)}, o.Floor...), plane.At(o.Right[0].X, o.Floor[last].Y)))
	line([]plane.Point{o.Left[len(o.Left)-1], o.Right[len(o.Right)-1]})
	p.gapLeaves(frame, g)
}

// gapLeaves draws the leaves of the widened view with their names.
func (p *page) gapLeaves(frame dimension.Frame, g gapped) {
	s := p.set
	box := func(h door.Hung) plane.Box {
		return plane.BoxOf(plane.At(g.x.paper(h.At.X), g.z.paper(h.At.Z)), plane.At(g.x.paper(h.At.X+s.Leaf.Width), g.z.paper(h.At.Z+s.Leaf.Height)))
	}
	bare := make([]plane.Region, len(s.Hung)) // where no other leaf stands before or behind
	for i, h := range s.Hung {
		seen := plane.Region{box(h).Path()}
		bare[i] = seen
		for k, other := range s.Hung {
			if k != i {
				bare[i] = plane.Subtract(bare[i], plane.Region{box(other).Path()})
			}
			if h.Channel == door.Back && other.Channel == door.Front {
				seen = plane.Subtract(seen, plane.Region{box(other).Path()})
				p.coveredSides(frame, box(h), box(other))
			}
		}
		for _, path := range seen {
			p.lines = append(p.lines, sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Wide, Path: onPaper(frame, path)})
		}
	}
	for i, h := range s.Hung {
		forms := []nameForm{{[]string{"LEAF " + h.Label, capitals(h.Channel.String()) + " TRACK"}, []length.Length{titleHeight, figureHeight}},
			{[]string{h.Label}, []length.Length{figureHeight}}}
		if !slices.ContainsFunc(forms, func(f nameForm) bool { return !bare[i].Empty() && p.name(frame, bare[i].Bounds(), f) }) {
			p.unplaced = append(p.unplaced, "leaf "+h.Label)
		}
	}
}

// coveredSides are the upright edges of a leaf that another one covers, dashed.
func (p *page) coveredSides(frame dimension.Frame, leaf, other plane.Box) {
	for _, x := range []length.Length{leaf.Min.X, leaf.Max.X} {
		if other.Min.X < x && x < other.Max.X {
			p.stroke(frame, sheet.HiddenEdge, sheet.Narrow, sheet.Hidden, plane.At(x, leaf.Min.Y), plane.At(x, leaf.Max.Y))
		}
	}
}

// faceGapView draws the closed leaves from above with the face gap widened.
func (p *page) faceGapView(zone plane.Box) {
	s := p.set
	const thick = 6 * mm // of a leaf
	front, back := length.Longest, -length.Longest
	for _, h := range s.Hung {
		front, back = min(front, h.At.Y), max(back, h.At.Y)
	}
	share := thick.MM() / s.Leaf.Thickness.MM()
	y := []length.Length{front, front + s.Leaf.Thickness}
	widen := []int64{1}
	n := int64(1)
	if back > front {
		n = widest(length.Round((back-y[1]).MM()*share), thick)
		y, widen = append(y, back, back+s.Leaf.Thickness), []int64{1, n, 1}
	}
	across := newStretch(y, share, widen)
	var g gapped
	frame, fits := p.placeScheme(zone, func(wide, _ length.Length) scheme {
		g = p.gapped(wide, length.Longest)
		return scheme{box: plane.Box{Max: plane.At(g.x.on[len(g.x.on)-1], across.on[len(across.on)-1])},
			right: []dimension.Row{p.spaces(across, "", y...)}, title: "FROM ABOVE, NOT TO SCALE",
			says: fmt.Sprintf("face gap drawn %d times; the room is below", n)}
	})
	if !fits {
		return
	}
	for _, h := range s.Hung {
		box := plane.BoxOf(plane.At(g.x.paper(h.At.X), across.paper(h.At.Y)), plane.At(g.x.paper(h.At.X+s.Leaf.Width), across.paper(h.At.Y+s.Leaf.Thickness)))
		p.lines = append(p.lines, sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Wide, Path: onPaper(frame, box.Path())})
		if !p.name(frame, box, nameForm{[]string{"LEAF " + h.Label}, []length.Length{figureHeight}}) {
			p.unplaced = append(p.unplaced, "leaf "+h.Label+" from above")
		}
	}
}
