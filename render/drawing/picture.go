package drawing

import (
	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// A picture is one view by its name.
type picture struct {
	name, title string
	draw        detail
}

// picturesOf lists the views that Pictures draws. A joint goes by its kind; what
// is shown of it from the front has "-face" behind its name.
func picturesOf(s door.Set) []picture {
	all := []picture{
		{"set", "The leaves closed, from the room", (*page).setPicture},
		{"leaf", "The parts of a leaf", (*page).leafPicture},
		{"stick", "The marks of the story stick", (*page).stickPicture},
		{"square", "The diagonals of a leaf", (*page).squarePicture},
		{"seat", "The panel's seat, cut across", firstSeat},
		{"head", "Head and track, cut across", (*page).headDetail},
		{"floor", "The foot of a leaf, cut across", (*page).floorDetail},
	}
	if s.Leaf.Rabbet.Kind != door.Groove {
		all = append(all, picture{"corner", "An inside corner of the seat", (*page).cornerDetail})
	}
	if len(s.Leaf.Pulls) > 0 {
		all = append(all, picture{"pull", "A flush pull, cut across", (*page).pullDetail})
	}
	seen := map[string]bool{}
	for _, m := range jointsShown(s.Leaf) {
		if seen[m.Kind] {
			continue
		}
		seen[m.Kind] = true
		all = append(all, picture{"joint-" + m.Kind, "A joint, cut along its member", jointSection(m)})
		if m.Kind != door.PocketScrew {
			all = append(all, picture{"joint-" + m.Kind + "-face", "A joint, from the front", jointFace(m)})
		}
	}
	return all
}

// Pictures draws single views of a set for a text beside them, each on the first
// of the papers that it fits on, X across and Y up, without border or title
// block: the set, the leaf, the story stick, the diagonals, the seat, the corner,
// the joints by their kind, the head, the floor and the pull. A paper on which more
// labels of the leaf find room goes before one on which fewer do. A view
// that fits on none of them, or whose lettering would touch, is left out.
func Pictures(s door.Set, papers ...plane.Point) []sheet.Sheet {
	var drawn []sheet.Sheet
	for _, pic := range picturesOf(s) {
		var best *sheet.Sheet
		least := 0 // labels left out of the best
		for _, paper := range papers {
			page, fits, missing := pic.on(s, paper)
			if fits && (best == nil || missing < least) {
				best, least = &page, missing
			}
			if fits && missing == 0 {
				break
			}
		}
		if best != nil {
			drawn = append(drawn, *best)
		}
	}
	return drawn
}

// on draws a picture on a paper of that size, and tells whether it fits, and
// how many labels were left out.
func (pic picture) on(s door.Set, paper plane.Point) (drawn sheet.Sheet, fits bool, missing int) {
	p := &page{set: s, style: length.Style{Unit: s.Units}, paper: catalog.Paper{Name: "a picture's"}, wide: paper.X, high: paper.Y, scalesTaken: scalesOf(s.Units)}
	p.border = plane.Box{Max: paper}
	p.frame, p.work = p.border, p.border.Grow(-mm)
	pic.draw(p, p.work)
	drawn = p.finish(plan{name: pic.name, description: pic.title + "."})
	drawn.Title = pic.title
	return drawn, p.err == nil && len(dimension.Collisions(drawn.Marks, p.border)) == 0, len(p.unplaced)
}

// setPicture draws the closed leaves in the opening.
func (p *page) setPicture(zone plane.Box) {
	o := p.set.Opening
	box := plane.BoxOf(plane.At(o.Left[0].X, o.FloorAt(0)), plane.At(o.Right[0].X, o.Head))
	for _, at := range append(append([]plane.Point{}, o.Floor...), append(o.Left, o.Right...)...) {
		box = box.Join(plane.BoxOf(at, at))
	}
	frame := p.place(zone, layout{box: box, title: "FROM THE ROOM"})
	if p.err != nil {
		return
	}
	p.draw(frame, view.Elevation(setBodies(p.set), view.Front, view.Options{Scale: frame.Scale, NoHidden: true, NoBores: true}))
	p.opening(frame)
	p.tintPanels(frame)
}

// bareLeaf draws a leaf from the front with the rows of a layout.
func (p *page) bareLeaf(zone plane.Box, l layout) (dimension.Frame, bool) {
	leaf := p.set.Leaf
	l.box = plane.Box{Max: plane.At(leaf.Width, leaf.Height)}
	frame := p.place(zone, l)
	if p.err != nil {
		return frame, false
	}
	p.draw(frame, view.Elevation(leafBodies(leaf, false), view.Front, view.Options{Scale: frame.Scale, NoHidden: true, NoBores: true}))
	for _, lite := range leaf.Lites {
		p.fill(frame, plane.Region{lite.Sight.Path()}, sheet.Panel, sheet.Tint)
	}
	return frame, true
}

// leafPicture draws a leaf with the labels of its parts.
func (p *page) leafPicture(zone plane.Box) {
	if frame, ok := p.bareLeaf(zone, layout{title: "PARTS, FROM THE FRONT"}); ok {
		p.partLabels(frame, 1)
	}
}

// stickPicture draws a leaf with the marks of the story stick beside it.
func (p *page) stickPicture(zone plane.Box) {
	row := dimension.Row{At: railEdges(p.set.Leaf), Style: dimension.Running, Label: "STORY STICK"}
	p.bareLeaf(zone, layout{title: "MARKS FROM THE BOTTOM", left: []dimension.Row{row}})
}

// squarePicture draws a leaf with its diagonals, and those of its lowest lites.
func (p *page) squarePicture(zone plane.Box) {
	leaf := p.set.Leaf
	frame, ok := p.bareLeaf(zone, layout{title: "DIAGONALS", below: []dimension.Row{{At: []length.Length{0, leaf.Width}, Style: dimension.Overall}},
		left: []dimension.Row{{At: []length.Length{0, leaf.Height}, Style: dimension.Overall}}})
	if !ok {
		return
	}
	boxes := []plane.Box{{Max: plane.At(leaf.Width, leaf.Height)}}
	for _, lite := range leaf.Lites[:leaf.Columns] {
		boxes = append(boxes, lite.Sight)
	}
	for _, b := range boxes {
		p.stroke(frame, sheet.CentreMark, sheet.Narrow, sheet.Phantom, b.Min, b.Max)
		p.stroke(frame, sheet.CentreMark, sheet.Narrow, sheet.Phantom, plane.At(b.Min.X, b.Max.Y), plane.At(b.Max.X, b.Min.Y))
	}
}
