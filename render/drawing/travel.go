package drawing

import (
	"fmt"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

// travel is from where to where a leaf's left edge slides, the others on its
// track pushed out of its way.
func travel(s door.Set, i int) (from, to length.Length) {
	to = s.Opening.Width - s.Leaf.Width
	for k, h := range s.Hung {
		switch {
		case h.Channel != s.Hung[i].Channel || k == i:
		case k < i:
			from += s.Leaf.Width
		default:
			to -= s.Leaf.Width
		}
	}
	return from, max(from, to)
}

// floorGaps are the least and the greatest floor gap of a point of a leaf's
// bottom that slides between two places.
func floorGaps(s door.Set, bottom, from, to length.Length) (least, most length.Length) {
	at := []length.Length{from, to}
	for _, point := range s.Opening.Floor {
		if from < point.X && point.X < to {
			at = append(at, point.X)
		}
	}
	least, most = bottom-s.Opening.FloorAt(from), bottom-s.Opening.FloorAt(from)
	for _, x := range at {
		gap := bottom - s.Opening.FloorAt(x)
		least, most = min(least, gap), max(most, gap)
	}
	return least, most
}

// travelRows lists each leaf's travel and the floor gap of its two corners over it.
func (p *page) travelRows() [][]string {
	s, f := p.set, p.format
	rows := [][]string{{"LEAF", "LEFT EDGE SLIDES", "GAP, LEFT CORNER", "RIGHT CORNER"}}
	span := func(a, b length.Length) string {
		if a == b {
			return f(a)
		}
		return f(a) + " to " + f(b)
	}
	for i, h := range s.Hung {
		from, to := travel(s, i)
		a, b := floorGaps(s, h.At.Z, from, to)
		c, d := floorGaps(s, h.At.Z, from+s.Leaf.Width, to+s.Leaf.Width)
		rows = append(rows, []string{h.Label, span(from, to), span(a, b), span(c, d)})
	}
	return rows
}

// mostLines is the most lines of the plot's grid above its axis.
const mostLines = 6

// gridStep is the distance of the plot's lines.
func (p *page) gridStep(most length.Length) length.Length {
	steps := []length.Length{mm, 2 * mm, 5 * mm, 10 * mm, 20 * mm, 50 * mm}
	if p.set.Units == length.Inches {
		steps = []length.Length{length.Inch / 16, length.Inch / 8, length.Inch / 4, length.Inch / 2, length.Inch, 2 * length.Inch}
	}
	for _, step := range steps {
		if most.UpTo(step)/step <= mostLines {
			return step
		}
	}
	return most.UpTo(steps[len(steps)-1])
}

// floorPlot plots the floor gap below a leaf's bottom along the opening.
func (p *page) floorPlot(zone plane.Box) {
	s := p.set
	bottom := s.Hung[0].At.Z
	least, most := floorGaps(s, bottom, 0, s.Opening.Width)
	step := p.gridStep(most)
	lines := most.UpTo(step) / step
	places := []length.Length{0}
	for _, at := range s.Opening.Floor {
		if at.X > 0 && at.X < s.Opening.Width {
			places = append(places, at.X)
		}
	}
	places = append(places, s.Opening.Width)
	named := "least " + p.format(least)
	zone.Min.X += advance(p.format(step*lines)) + advance(p.format(step)) + 4*mm
	zone.Max.X -= advance(named) + 4*mm
	var x, y stretch
	frame, fits := p.placeScheme(zone, func(wide, high length.Length) scheme {
		x = newStretch([]length.Length{0, s.Opening.Width}, wide.MM()/s.Opening.Width.MM(), []int64{1})
		high = min(high, wide*6/10)
		y = newStretch([]length.Length{0, step * lines}, high.MM()/(step*lines).MM(), []int64{1})
		return scheme{box: plane.Box{Max: plane.At(x.on[1], y.on[1])}, below: []dimension.Row{p.spaces(x, "", places...)},
			title: "FLOOR GAP ALONG THE TRAVEL", says: fmt.Sprintf("hangers even; they raise or lower a leaf by %s", p.format(s.Track.Adjust))}
	})
	if !fits {
		return
	}
	for i := range lines + 1 {
		at := plane.At(0, y.paper(step*i))
		p.stroke(frame, sheet.CentreMark, sheet.Narrow, sheet.Continuous, at, plane.At(x.on[1], at.Y))
		p.text(frame.Paper(at).Add(-2*mm, -figureHeight.Half()), figureHeight, sheet.End, false, p.format(step*i))
	}
	p.stroke(frame, sheet.CentreMark, sheet.Narrow, sheet.Continuous, plane.At(0, 0), plane.At(0, y.on[1]))
	var curve []plane.Point
	for _, at := range places {
		curve = append(curve, plane.At(x.paper(at), y.paper(bottom-s.Opening.FloorAt(at))))
	}
	p.stroke(frame, sheet.Outline, sheet.Wide, sheet.Continuous, curve...)
	level := y.paper(least)
	p.stroke(frame, sheet.CentreMark, sheet.Narrow, sheet.Phantom, plane.At(0, level), plane.At(x.on[1], level))
	p.text(frame.Paper(plane.At(x.on[1], level)).Add(2*mm, -figureHeight.Half()), figureHeight, sheet.Start, false, named)
}
