package drawing

import (
	"fmt"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// setElevation draws the opening as measured, with the leaves closed.
func setElevation(p *page) {
	s := p.set
	o, leaf := s.Opening, s.Leaf
	least := o.Floor[0].Y
	for _, at := range o.Floor {
		least = min(least, at.Y)
	}
	last := len(o.Right) - 1
	box := plane.BoxOf(plane.At(min(o.Left[0].X, o.Left[1].X), least), plane.At(max(o.Right[0].X, o.Right[last].X), o.Head))
	for _, at := range o.Right {
		box.Max.X = max(box.Max.X, at.X)
	}
	bottom, top := s.Hung[0].At.Z, s.Hung[0].At.Z+leaf.Height
	layout := layout{box: box, title: "FROM THE ROOM, LEAVES CLOSED", below: p.shareRows(), left: []dimension.Row{
		{At: []length.Length{o.FloorAt(0), bottom, top, o.Head}, Style: dimension.Chain},
		{At: []length.Length{o.Floor[0].Y, o.Head}, Style: dimension.Overall},
	}, right: []dimension.Row{
		{At: []length.Length{o.FloorAt(box.Max.X), bottom, top, o.Head}, Style: dimension.Chain},
		{At: []length.Length{o.Floor[len(o.Floor)-1].Y, o.Head}, Style: dimension.Overall},
	}}
	layout.above = []dimension.Row{{At: []length.Length{o.Left[1].X, o.Right[last].X}, Style: dimension.Overall}}
	if first, end := s.Hung[0].At.X, s.Hung[len(s.Hung)-1].At.X+leaf.Width; first != o.Left[1].X || end != o.Right[last].X {
		reveals := dimension.Row{At: []length.Length{o.Left[1].X, first, end, o.Right[last].X}, Style: dimension.Chain}
		layout.above = append([]dimension.Row{reveals}, layout.above...)
	}
	notes := p.setNotes()
	n := 1
	wide, high := columns(n, notes)
	column := wide
	if p.work.Width() >= leastShared {
		column = max(wide, p.work.Width()*36/100)
		if two, _ := columns(2, notes); two <= column {
			n = 2
			_, high = columns(n, notes)
		}
	}
	zone, corner := p.beside(column, high)
	frame := p.place(zone, layout)
	if p.err != nil {
		return
	}
	p.draw(frame, view.Elevation(setBodies(s), view.Front, view.Options{Scale: frame.Scale, NoHidden: true, NoBores: true}))
	p.opening(frame)
	p.behind(frame)
	p.tintPanels(frame)
	for _, h := range s.Hung {
		p.leafName(frame, h)
	}
	p.cutMark(frame, "A", plane.At(box.Min.X, bottom+cutHeight(leaf)), plane.At(box.Max.X, bottom+cutHeight(leaf)))
	across := p.sectioned().At.X + cutX(leaf)
	p.cutMark(frame, "B", plane.At(across, box.Min.Y), plane.At(across, box.Max.Y))
	p.notes(corner, n, notes...)
	p.openAndKey(plane.BoxOf(plane.At(corner.X, p.work.Min.Y), corner.Add(column, -high-gutter)))
}

// leastShared is the least width of a sheet's work area that has room for the
// opened leaves and the key plan beside the set.
const leastShared = 330 * mm

// shareRows are the rows below the set: what the leaves' edges leave between
// them, each track's leaves, and the opening at the floor.
func (p *page) shareRows() []dimension.Row {
	s := p.set
	left, right := s.Opening.Left[0].X, s.Opening.Right[0].X
	chain := []length.Length{left, right}
	tracks := [2][]length.Length{}
	for _, h := range s.Hung {
		chain = append(chain, h.At.X, h.At.X+s.Leaf.Width)
		tracks[h.Channel] = append(tracks[h.Channel], h.At.X, h.At.X+s.Leaf.Width)
	}
	return []dimension.Row{
		{At: chain, Style: dimension.Chain},
		{At: tracks[door.Front], Style: dimension.Chain, Label: "FRONT TRACK"},
		{At: tracks[door.Back], Style: dimension.Chain, Label: "BACK TRACK"},
		{At: []length.Length{left, right}, Style: dimension.Overall},
	}
}

// opening draws head, jambs and floor.
func (p *page) opening(frame dimension.Frame) {
	o := p.set.Opening
	line := func(points []plane.Point) {
		p.stroke(frame, sheet.Opening, sheet.Wide, sheet.Continuous, points...)
	}
	line(o.Left)
	line(o.Right)
	line(o.Floor)
	line([]plane.Point{o.Left[1], o.Right[len(o.Right)-1]})
}

// behind draws the covered edges of leaves on the back track, dashed.
func (p *page) behind(frame dimension.Frame) {
	s := p.set
	for i, h := range s.Hung {
		if h.Channel != door.Back {
			continue
		}
		for _, x := range []length.Length{h.At.X, h.At.X + s.Leaf.Width} {
			for k, other := range s.Hung {
				if k != i && other.Channel == door.Front && other.At.X < x && x < other.At.X+s.Leaf.Width {
					p.stroke(frame, sheet.HiddenEdge, sheet.Narrow, sheet.Hidden, plane.At(x, h.At.Z), plane.At(x, h.At.Z+s.Leaf.Height))
				}
			}
		}
	}
}

// tintPanels tints what one sees of the panels from the room, where one can see
// through them.
func (p *page) tintPanels(frame dimension.Frame) {
	for _, h := range p.set.Hung {
		for _, lite := range p.set.Leaf.Lites {
			if p.set.Leaf.PanelOf(lite).Material.Clear {
				p.fill(frame, p.seen(h, lite), sheet.Panel, sheet.Tint)
			}
		}
	}
}

// A nameForm is one way to write a leaf's name, more than one line from the top.
type nameForm struct {
	lines  []string
	height []length.Length
}

// leafName writes a leaf's number and track in its highest lite with room for
// it, in the fullest form that fits.
func (p *page) leafName(frame dimension.Frame, h door.Hung) {
	track := strings.ToUpper(h.Channel.String())
	forms := []nameForm{
		{[]string{"LEAF " + h.Label, track + " TRACK"}, []length.Length{titleHeight, figureHeight}},
		{[]string{"LEAF " + h.Label, track}, []length.Length{figureHeight, figureHeight}},
		{[]string{h.Label, track}, []length.Length{figureHeight, figureHeight}},
		{[]string{h.Label}, []length.Length{figureHeight}},
	}
	for _, form := range forms {
		for i := len(p.set.Leaf.Lites) - 1; i >= 0; i-- {
			seen := p.seen(h, p.set.Leaf.Lites[i])
			if !seen.Empty() && p.name(frame, seen.Bounds(), form) {
				return
			}
		}
	}
	p.unplaced = append(p.unplaced, "leaf "+h.Label+" ("+strings.ToLower(track)+" track)")
}

// name sets a form in the middle of a box of the model if it fits.
func (p *page) name(frame dimension.Frame, box plane.Box, form nameForm) bool {
	on := plane.BoxOf(frame.Paper(box.Min), frame.Paper(box.Max))
	middle := plane.At((on.Min.X + on.Max.X).Half(), (on.Min.Y + on.Max.Y).Half())
	var texts []sheet.Text
	for i, s := range form.lines {
		down := (linePitch/2)*length.Length(len(form.lines)-1) - linePitch*length.Length(i)
		t := centred(middle.Add(0, down), s, form.height[i], false)
		if !within(dimension.TextBox(t), on) || !p.clear(t) {
			return false
		}
		texts = append(texts, t)
	}
	for _, t := range texts {
		p.over = append(p.over, t)
	}
	return true
}

// seen is what one sees of a leaf's lite from the room.
func (p *page) seen(h door.Hung, lite door.Lite) plane.Region {
	s := p.set
	seen := plane.Region{lite.Sight.Path()}.Translate(h.At.X, h.At.Z)
	for _, other := range s.Hung {
		if other.Channel == door.Front && h.Channel == door.Back {
			cover := plane.BoxOf(plane.At(other.At.X, other.At.Z), plane.At(other.At.X+s.Leaf.Width, other.At.Z+s.Leaf.Height))
			seen = plane.Subtract(seen, plane.Region{cover.Path()})
		}
	}
	return seen
}

// setNotes are the notes beside the set.
func (p *page) setNotes() []string {
	s, f := p.set, p.format
	clear, _ := s.Figure("opening.clear")
	lines := []string{
		fmt.Sprintf("%d leaves alike, each", len(s.Hung)),
		fmt.Sprintf("%s × %s × %s", f(s.Leaf.Width), f(s.Leaf.Height), f(s.Leaf.Thickness)),
		fmt.Sprintf("weight of one leaf %.1f kg (%.0f lb)", s.Leaf.Mass, s.Leaf.Mass/pound),
		"",
		"least usable opening",
		fmt.Sprintf("%s × %s", f(s.Opening.Width), f(s.Opening.Height)),
		fmt.Sprintf("clear opening %s", f(clear.Value)),
		fmt.Sprintf("face gap %s", f(s.Track.FaceGap)),
		fmt.Sprintf("head drop %s", f(s.Track.HeadDrop)),
		fmt.Sprintf("track, typical: %s", s.Track.Row),
		fmt.Sprintf("cut track %s long", f(s.Track.Length)),
		"",
		"Measure the track in hand before",
		"cutting: head drop and channel",
		"spacing differ by maker.",
		"",
		"Lift leaves with two people. Glass",
		"and plastics in doors may have to be",
		"safety glazing: ask the local",
		"authority.",
	}
	return lines
}
