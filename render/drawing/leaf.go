package drawing

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
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
		{At: edges(0, leaf.Stile, leaf.Width-2*leaf.Stile, leaf.Stile), Style: dimension.Chain},
		{At: []length.Length{0, leaf.Width}, Style: dimension.Overall},
	}, left: []dimension.Row{
		{At: railEdges(leaf), Style: dimension.Chain},
		{At: []length.Length{0, leaf.Height}, Style: dimension.Overall},
	}, right: []dimension.Row{
		{At: centres, From: []length.Length{leaf.Width - leaf.Stile.Half()}, Style: dimension.Chain, Label: "RAIL CENTRES"},
		{At: append([]length.Length{0}, centres...), Style: dimension.Running, Label: "FROM THE BOTTOM"},
	}}
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
		p.fill(frame, plane.Region{lite.Sight.Path()}, sheet.Panel, sheet.Tint)
	}
	for _, rail := range leaf.Rails {
		p.stroke(frame, sheet.CentreMark, sheet.Narrow, sheet.Centre, plane.At(leaf.Width-leaf.Stile, rail.Centre()), plane.At(leaf.Width, rail.Centre()))
	}
	p.partLabels(frame, 1)
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
			if at := leaf.Lites[0].Washers[door.Bottom]; len(at) > 1 {
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
	s, f := p.set, p.style.Format
	rows := [][]string{{"PART", "QTY", "NAME", "LENGTH", "WIDTH", "THICK", "KG", "MATERIAL"}}
	for _, k := range kinds(s.Leaf) {
		a, b := k.first.Solid.Bounds()
		along, across := b.Z-a.Z, b.X-a.X
		if k.first.Role == door.RailRole {
			along, across = across, along
		}
		label := k.labels[0]
		if n := len(k.labels); n > 1 {
			label += ".." + k.labels[n-1]
		}
		rows = append(rows, []string{label, fmt.Sprint(len(k.labels)), k.first.Name, f(along), f(across), f(b.Y - a.Y), fmt.Sprintf("%.2f", k.first.Mass), k.first.Material})
	}
	return rows
}

// frontNotes are the notes beside the front of a leaf.
func (p *page) frontNotes() []string {
	s, f := p.set, p.style.Format
	lines := []string{fmt.Sprintf("Sizes are for one leaf; the set has %d.", len(s.Hung))}
	if s.Stock.Board != "" {
		lines = append(lines, fmt.Sprintf("Frame from %s, dressed %s × %s,", s.Stock.Board, f(s.Stock.Dressed.Thickness), f(s.Stock.Dressed.Width)), fmt.Sprintf("planed %s each face.", f(s.Stock.Plane)))
	}
	lines = append(lines, fmt.Sprintf("Panels lie in a back rabbet %s wide,", f(s.Leaf.Rabbet.Width)),
		fmt.Sprintf("%s deep: %s of wood in front.", f(s.Leaf.Rabbet.Depth), f(s.Leaf.Rabbet.Front)),
		"≈ marks a figure rounded for display.",
		"Mind the manuals of saw, planer and",
		"router; wear eye, ear and dust protection.")
	return lines
}

// leafBack draws one leaf from the closet, with all that is milled and bored.
func leafBack(p *page) {
	s := p.set
	leaf := s.Leaf
	box := plane.BoxOf(plane.At(-leaf.Width, 0), plane.At(0, leaf.Height))
	l := layout{box: box, title: "LEAF FROM THE BACK", below: p.backBelow(), left: []dimension.Row{
		{At: append([]length.Length{0}, p.washerHeights()...), Style: dimension.Running, Label: "WASHERS"},
	}, right: []dimension.Row{
		{At: append([]length.Length{0}, p.pocketHeights()...), Style: dimension.Running, Label: "POCKET HOLES"},
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
	lines := view.Elevation(leafBodies(leaf, true), view.Back, view.Options{Scale: frame.Scale, HiddenFor: []string{"washer screw"}})
	p.draw(frame, thinned(lines))
	p.stroke(frame, sheet.Outline, sheet.Wide, sheet.Continuous, box.Min, plane.At(box.Max.X, box.Min.Y), box.Max, plane.At(box.Min.X, box.Max.Y), box.Min)
	p.partLabels(frame, -1)
	p.notes(corner, side, notes...)
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

// backBelow are the rows below the back view: the washers along the rails, the
// pockets' reach, and the rabbet.
func (p *page) backBelow() []dimension.Row {
	leaf := p.set.Leaf
	inner := []length.Length{-leaf.Width + leaf.Stile, -leaf.Stile}
	rows := []dimension.Row{{At: []length.Length{-leaf.Width, inner[0] - leaf.Rabbet.Width, inner[0], inner[1], inner[1] + leaf.Rabbet.Width, 0}, Style: dimension.Chain}}
	if across := leaf.Lites[0].Washers[door.Bottom]; len(across) > 0 {
		at := []length.Length{-leaf.Width}
		for _, x := range across {
			at = append(at, -x)
		}
		slices.Sort(at)
		rows = append(rows, dimension.Row{At: at, Style: dimension.Running, Label: "WASHERS"})
	}
	return append(rows, dimension.Row{At: []length.Length{-leaf.Width, 0}, Style: dimension.Overall})
}

// washerHeights are the heights of all washers along the stiles.
func (p *page) washerHeights() []length.Length {
	var at []length.Length
	for _, screw := range p.set.Leaf.Screws {
		if screw.For == "washer" && screw.Head.Z == screw.Tip.Z {
			at = append(at, screw.Head.Z)
		}
	}
	slices.Sort(at)
	return slices.Compact(at)
}

// pocketHeights are the heights of all pocket holes.
func (p *page) pocketHeights() []length.Length {
	var at []length.Length
	for _, screw := range p.set.Leaf.Screws {
		if screw.For == "pocket" {
			at = append(at, screw.Head.Z)
		}
	}
	slices.Sort(at)
	return slices.Compact(at)
}

// backNotes are the notes beside the back of a leaf.
func (p *page) backNotes() []string {
	leaf, f := p.set.Leaf, p.style.Format
	lines := []string{
		fmt.Sprintf("Rabbet %s wide, %s deep,", f(leaf.Rabbet.Width), f(leaf.Rabbet.Depth)),
		fmt.Sprintf("%s cutter, in %d passes set to", f(leaf.Rabbet.Cutter), len(leaf.Rabbet.Passes)),
	}
	var depths []string
	for _, at := range leaf.Rabbet.Passes {
		depths = append(depths, f(at))
	}
	const inLine = 6 // depths
	for i := 0; i < len(depths); i += inLine {
		lines = append(lines, strings.Join(depths[i:min(i+inLine, len(depths))], ", "))
	}
	lines = append(lines, fmt.Sprintf("%d inside corners a leaf, %s", 4*len(leaf.Lites), p.cornerWords()), "",
		fmt.Sprintf("Panels %s %s thick,", leaf.Panel.Material.Name, f(leaf.Panel.Thickness)),
		fmt.Sprintf("edge gap %s, bite %s.", f(leaf.Panel.EdgeGap), f(leaf.Panel.Bite)), "",
		fmt.Sprintf("%d pocket holes a leaf, %g°:", leaf.Joint.Pocket.Holes, leaf.Joint.Pocket.Angle),
		fmt.Sprintf("screw %s, collar set %s", f(leaf.Joint.Pocket.Screw), f(leaf.Joint.Pocket.Shoulder)),
		"from the rail's end.", "",
		fmt.Sprintf("%d edge washers a leaf, %s", len(leaf.Hardware), f(leaf.Washer.Outside)),
		fmt.Sprintf("across, %s thick; No. %d screws", f(leaf.Washer.Thickness), leaf.Washer.Screw.Gauge),
		fmt.Sprintf("%s long, holes %s behind", f(leaf.Washer.Length), f(leaf.Washer.Depth)),
		"the front face.", "",
		"Dashed: panels, and washer screws",
		"in the wood.",
		"Rout in passes, against the feed;",
		"guards on, cutter speed by diameter.")
	return lines
}

// cornerWords says what is done about the corners.
func (p *page) cornerWords() string {
	leaf, f := p.set.Leaf, p.style.Format
	switch {
	case leaf.Corner.Leg > 0:
		return "clipped " + f(leaf.Corner.Leg)
	case leaf.Corner.Radius > 0:
		return "rounded " + f(leaf.Corner.Radius)
	case leaf.Rabbet.Corner == 0:
		return "chiselled square"
	}
	return "round"
}
