package drawing

import (
	"fmt"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// panelsEach is how many different panels stand on one sheet.
const panelsEach = 4

// panelKinds are the different panels of a leaf.
func panelKinds(leaf door.Leaf) []kind {
	var panels []kind
	for _, k := range kinds(leaf) {
		if k.first.Role == door.PanelRole {
			panels = append(panels, k)
		}
	}
	return panels
}

// panelSheet draws different panels side by side, from the room.
func panelSheet(panels []kind) func(*page) {
	return func(p *page) {
		n := length.Length(len(panels))
		var materials []string
		for _, k := range panels {
			materials = append(materials, k.first.Material)
		}
		p.material = strings.Join(distinctWords(materials...), ", ")
		each := (p.work.Width() - gutter*(n-1)) / n
		for i, k := range panels {
			zone := p.work
			zone.Min.X += (each + gutter) * length.Length(i)
			zone.Max.X = zone.Min.X + each
			p.panel(zone, k)
			if p.err != nil {
				return
			}
		}
	}
}

// panel draws one panel with its sizes and what is said about it.
func (p *page) panel(zone plane.Box, k kind) {
	leaf := p.set.Leaf
	notes := p.panelNotes(k)
	_, down := columns(1, notes)
	view0 := zone
	view0.Min.Y += down + gutter
	least, most := k.first.Solid.Bounds()
	box := plane.BoxOf(least.Flat(solid.Y), most.Flat(solid.Y))
	l := layout{box: box, title: "PANEL " + k.short(), below: []dimension.Row{{At: []length.Length{box.Min.X, box.Max.X}, Style: dimension.Overall}},
		left: []dimension.Row{{At: []length.Length{box.Min.Y, box.Max.Y}, Style: dimension.Overall}}}
	if cut := max(leaf.Corner.Leg, leaf.Corner.Radius); cut > 0 {
		l.above = []dimension.Row{{At: []length.Length{box.Min.X, box.Min.X + cut}, Style: dimension.Chain}}
	}
	frame := p.place(view0, l)
	if p.trial || p.err != nil {
		return
	}
	body := view.Body{Solid: k.first.Solid, Layer: sheet.Panel}
	p.draw(frame, view.Elevation([]view.Body{body}, view.Front, view.Options{Scale: frame.Scale}))
	if p.panelOf(k).Material.Clear {
		p.fill(frame, k.first.Solid.Blank.Region, sheet.Panel, sheet.Tint)
	}
	wide, _ := columns(1, notes)
	p.notes(plane.At((zone.Min.X+zone.Max.X-wide).Half(), zone.Min.Y+down), 1, notes...)
}

// panelOf is the sheet a kind of panel is cut from.
func (p *page) panelOf(k kind) door.Panel {
	for i, lite := range p.set.Leaf.Lites {
		if fmt.Sprintf("P%d", i+1) == k.first.Label {
			return p.set.Leaf.PanelOf(lite)
		}
	}
	return p.set.Leaf.Panel
}

// panelNotes are what is said about a panel.
func (p *page) panelNotes(k kind) []string {
	leaf, f := p.set.Leaf, p.format
	n := len(k.labels)
	panel := p.panelOf(k)
	lines := []string{}
	for _, row := range k.rowsOf() {
		lines = append(lines, row[0])
	}
	lines = append(lines, fmt.Sprintf("%d a leaf, %d in the set", n, n*len(p.set.Hung)), fmt.Sprintf("%s, %s thick", panel.Material.Name, f(panel.Thickness)), p.weight(k.first.Mass)+" "+strings.ToLower(p.weightUnit())+" each")
	switch {
	case leaf.Corner.Leg > 0:
		lines = append(lines, fmt.Sprintf("all four corners clipped %s × %s", f(leaf.Corner.Leg), f(leaf.Corner.Leg)))
	case leaf.Corner.Radius > 0:
		lines = append(lines, "all four corners rounded R "+f(leaf.Corner.Radius))
	default:
		lines = append(lines, "corners square")
	}
	if panel.Film != "" {
		lines = append(lines, "film on the "+panel.Film+" face")
	}
	lines = append(lines, fmt.Sprintf("edge gap %s, bite %s all round", f(panel.EdgeGap), f(panel.Bite)))
	return lines
}
