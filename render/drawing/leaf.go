package drawing

import (
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// columns is the room that lines take in n columns of one width.
func columns(n int, lines []string) (wide, high length.Length) {
	for _, s := range lines {
		wide = max(wide, lettering.Advance(lettering.Legible(s), figureHeight))
	}
	rows := 0
	for _, column := range paragraphs(n, lines) {
		rows = max(rows, len(column))
	}
	return (wide+gutter)*length.Length(n) - gutter, length.Length(rows+1) * linePitch
}

// paragraphs shares lines among n columns, breaking only at empty lines.
func paragraphs(n int, lines []string) [][]string {
	target := (len(lines) + n - 1) / n
	shared := [][]string{nil}
	for _, s := range lines {
		last := len(shared) - 1
		if s == "" && len(shared[last]) >= target-1 && len(shared) < n {
			shared = append(shared, nil)
			continue
		}
		shared[last] = append(shared[last], s)
	}
	return shared
}

// railEdges are the heights of all rail edges, from the bottom up.
func railEdges(leaf door.Leaf) []length.Length {
	var at []length.Length
	for _, rail := range leaf.Rails {
		at = append(at, rail.From, rail.To)
	}
	return at
}

// railCentres are the heights of the rails' middles.
func railCentres(leaf door.Leaf) []length.Length {
	var at []length.Length
	for _, rail := range leaf.Rails {
		at = append(at, rail.Centre())
	}
	return at
}

// leafFront draws one leaf from the room, and lists its parts.
func leafFront(p *page) {
	leaf := p.set.Leaf
	box := plane.Box{Max: plane.At(leaf.Width, leaf.Height)}
	centres := railCentres(leaf)
	l := layout{box: box, title: "LEAF FROM THE FRONT", below: []dimension.Row{
		{At: liteEdges(leaf, 0), Style: dimension.Chain},
		{At: []length.Length{0, leaf.Width}, Style: dimension.Overall},
	}, left: []dimension.Row{
		{At: railEdges(leaf), Style: dimension.Chain},
		{At: []length.Length{0, leaf.Height}, Style: dimension.Overall},
	}, right: []dimension.Row{
		{At: centres, From: []length.Length{leaf.Width - leaf.Stile.Half()}, Style: dimension.Chain, Label: "CENTRES"},
		{At: append([]length.Length{0}, centres...), Style: dimension.Running, Label: "UP"},
	}}
	if len(leaf.Pulls) > 0 {
		l.right = append(l.right, dimension.Row{At: []length.Length{0, leaf.Pulls[0].Centre.Y}, Style: dimension.Running, Label: "PULL"})
	}
	rows := p.partRows()
	start := len(p.over)
	wide, high := p.table(plane.At(0, 0), rows, map[int]bool{1: true, 6: true})
	p.over, p.lines = p.over[:start], p.lines[:len(p.lines)-1]
	notes := p.frontNotes()
	across, down := columns(1, notes)
	beside := p.upright && wide+2*gutter+across <= p.work.Width() // notes beside the table, not below it
	tall := high + gutter + down
	if beside {
		tall = max(high, down)
	}
	zone, corner := p.beside(max(wide, across), tall)
	frame := p.place(zone, l)
	if p.trial {
		return
	}
	p.table(corner, rows, map[int]bool{1: true, 6: true})
	if beside {
		p.notes(corner.Add(wide+2*gutter, 0), 1, notes...)
	} else {
		p.notes(corner.Add(5*mm/2, -high-gutter), 1, notes...)
	}
	p.draw(frame, view.Elevation(leafBodies(leaf, false), view.Front, view.Options{Scale: frame.Scale, NoHidden: true, NoBores: true}))
	for _, lite := range leaf.Lites {
		if leaf.PanelOf(lite).Material.Clear {
			p.fill(frame, plane.Region{lite.Sight.Path()}, sheet.Panel, sheet.Tint)
		}
	}
	for _, rail := range leaf.Rails {
		p.stroke(frame, sheet.CentreMark, sheet.Narrow, sheet.Centre, plane.At(leaf.Width-leaf.Stile, rail.Centre()), plane.At(leaf.Width, rail.Centre()))
	}
	p.partLabels(frame, 1)
	p.markCorner(frame, false)
	p.markJoints(frame)
}

// partLabels writes each part's label on it; way is -1 where the view is
// mirrored.
func (p *page) partLabels(frame dimension.Frame, way length.Length) {
	leaf := p.set.Leaf
	for _, part := range leaf.Parts {
		least, most := part.Solid.Bounds()
		switch part.Role {
		case door.StileRole: // beside a lite, clear of the rails' centre lines
			least.Z, most.Z = leaf.Lites[0].Sight.Min.Y, leaf.Lites[0].Sight.Max.Y
		case door.RailRole: // between washers
			if at := leaf.Lites[0].Washers[door.Bottom]; way < 0 && len(at) > 1 {
				least.X, most.X = at[0], at[1]
			}
		}
		box := plane.BoxOf(plane.At(way*least.X, least.Z), plane.At(way*most.X, most.Z))
		if way > 0 {
			p.balloon(frame, box, part.Label)
		} else {
			p.label(frame, box, part.Label)
		}
	}
}

// A kind is parts of one leaf that are alike.
type kind struct {
	first  door.Part
	labels []string
}

// kinds groups the parts of a leaf that have the same name, size and mass.
func kinds(leaf door.Leaf) []kind {
	var all []kind
	for _, part := range leaf.Parts {
		a, b := part.Solid.Bounds()
		i := slices.IndexFunc(all, func(k kind) bool {
			c, d := k.first.Solid.Bounds()
			return k.first.Name == part.Name && k.first.Mass == part.Mass && b.X-a.X == d.X-c.X && b.Z-a.Z == d.Z-c.Z
		})
		if i < 0 {
			all = append(all, kind{first: part, labels: []string{part.Label}})
			continue
		}
		all[i].labels = append(all[i].labels, part.Label)
	}
	return all
}

// partRows is the parts list of one leaf.
func (p *page) partRows() [][]string {
	s, f := p.set, p.format
	rows := [][]string{{"PART", "QTY", "NAME", "LENGTH", "WIDTH", "THICK", p.weightUnit(), "MATERIAL"}}
	for _, k := range kinds(s.Leaf) {
		a, b := k.first.Solid.Bounds()
		along, across := b.Z-a.Z, b.X-a.X
		if k.first.Role == door.RailRole {
			along, across = across, along
		}
		rows = append(rows, k.rowsOf(fmt.Sprint(len(k.labels)), k.first.Name, f(along), f(across), f(b.Y-a.Y), p.weight(k.first.Mass), k.first.Material)...)
	}
	return rows
}

// leafBack draws one leaf from the closet, with all that is milled and bored.
func leafBack(p *page) {
	s := p.set
	leaf := s.Leaf
	box := plane.BoxOf(plane.At(-leaf.Width, 0), plane.At(0, leaf.Height))
	l := layout{box: box, title: "LEAF FROM THE BACK", below: p.backBelow(), left: []dimension.Row{
		{At: append([]length.Length{0}, places(leaf, "washer", solid.Z)...), Style: dimension.Running, Label: "WASHERS"},
	}, right: []dimension.Row{
		{At: append([]length.Length{0}, places(leaf, "pocket", solid.Z)...), Style: dimension.Running, Label: "POCKET HOLES"},
		{At: append([]length.Length{0}, dowelHeights(leaf)...), Style: dimension.Running, Label: "DOWELS"},
	}}
	notes := p.backNotes()
	side := 1
	if p.upright {
		side = 3
	}
	for wide, _ := columns(side, notes); side > 1 && wide > p.work.Width(); wide, _ = columns(side, notes) {
		side--
	}
	zone, corner := p.beside(columns(side, notes))
	frame := p.place(zone, l)
	if p.trial {
		return
	}
	lines := view.Elevation(leafBodies(leaf, true), view.Back, view.Options{Scale: frame.Scale, HiddenFor: hiddenBehind(leaf)})
	p.draw(frame, thinned(lines))
	p.stroke(frame, sheet.Outline, sheet.Wide, sheet.Continuous, box.Min, plane.At(box.Max.X, box.Min.Y), box.Max, plane.At(box.Min.X, box.Max.Y), box.Min)
	p.partLabels(frame, -1)
	p.markCorner(frame, true)
	p.notes(corner, side, notes...)
}

// hiddenBehind are the purposes of the covered edges drawn in the back view: where
// the seat does not open to the back, it and the panels are covered too.
func hiddenBehind(leaf door.Leaf) []string {
	purposes := []string{"washer screw", "dowel", "mortise"}
	if leaf.Rabbet.Kind != door.BackRabbet {
		purposes = append(purposes, "rabbet", "groove")
	}
	return purposes
}

// thinned are the lines of a back view with its rabbets, panels and holes close
// together: all narrow, panels dashed.
func thinned(lines []view.Line) []view.Line {
	for i := range lines {
		lines[i].Weight = sheet.Narrow
		if lines[i].Layer == sheet.Panel {
			lines[i].Type = sheet.Hidden
		}
	}
	return lines
}

// liteEdges are the sides of the lowest row's lites, as far as grown, and of the leaf, from
// its left.
func liteEdges(leaf door.Leaf, grown length.Length) []length.Length {
	at := []length.Length{0}
	for _, lite := range leaf.Lites[:leaf.Columns] {
		at = append(at, lite.Sight.Min.X, lite.Sight.Max.X)
		if grown > 0 {
			at = append(at, lite.Sight.Min.X-grown, lite.Sight.Max.X+grown)
		}
	}
	return distinct(append(at, leaf.Width))
}

// backBelow are the rows below the back view: lites and seats, then what is
// fixed to the rails or bored into them.
func (p *page) backBelow() []dimension.Row {
	leaf := p.set.Leaf
	rows := []dimension.Row{{At: mirrored(liteEdges(leaf, leaf.Rabbet.Width)), Style: dimension.Chain}}
	for _, use := range usesAcross(leaf) {
		at := append([]length.Length{-leaf.Width}, mirrored(places(leaf, use.screw, solid.X))...)
		rows = append(rows, dimension.Row{At: at, Style: dimension.Running, Label: use.name})
	}
	return append(rows, dimension.Row{At: []length.Length{-leaf.Width, 0}, Style: dimension.Overall})
}

// A screwUse is screws whose places are dimensioned.
type screwUse struct{ screw, name string }

// usesAcross are the uses of the screws that run up or down.
func usesAcross(leaf door.Leaf) []screwUse {
	var uses []screwUse
	for _, use := range []screwUse{{"washer", "WASHERS"}, {"pocket", "POCKET HOLES"}} {
		if len(places(leaf, use.screw, solid.X)) > 0 {
			uses = append(uses, use)
		}
	}
	return uses
}

// places are the places along an axis of the screws of one use that run square to
// it in the leaf's face, each once and in order.
func places(leaf door.Leaf, use string, a solid.Axis) []length.Length {
	other := solid.Z
	if a == solid.Z {
		other = solid.X
	}
	var at []length.Length
	for _, c := range leaf.Screws {
		if c.For == use && c.Head.Along(a) == c.Tip.Along(a) && c.Head.Along(other) != c.Tip.Along(other) {
			at = append(at, c.Head.Along(a))
		}
	}
	return distinct(at)
}

// mirrored are places seen from behind, in order.
func mirrored(at []length.Length) []length.Length {
	var out []length.Length
	for _, x := range slices.Backward(at) {
		out = append(out, -x)
	}
	return out
}

// dowelHeights are the heights of the dowels between rails and stiles.
func dowelHeights(leaf door.Leaf) []length.Length {
	var at []length.Length
	for _, part := range leaf.Hardware {
		least, most := part.Solid.Bounds()
		if part.Role == door.DowelRole && part.Solid.Blank.Axis == solid.X {
			at = append(at, (least.Z + most.Z).Half())
		}
	}
	return distinct(at)
}
