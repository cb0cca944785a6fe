package template

import (
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

// intoLite is how much of the panel a section shows beyond the stile's edge.
const intoLite = 25 * mm

// profile draws the section through the left stile and the panel beside it, to
// set a cutter by: through a washer's hole where there is one.
func profile(s door.Set) []sheet.Sheet {
	l := s.Leaf
	stile, found := partOf(l, "SL")
	if !found || len(l.Lites) == 0 {
		return nil
	}
	lite := l.Lites[0]
	at := lite.Sight.Min.Y + lite.Sight.Height().Half()
	if holes := lite.Washers[door.Left]; len(holes) > 0 {
		at = holes[0]
	}
	d := newDraft(s, "section", "Section through stile SL")
	d.area(sheet.Outline, stile.Solid.Section(solid.Z, at))
	panel := l.PanelOf(lite)
	edge := lite.Panel.Bounds().Min.X
	glass := plane.BoxOf(plane.At(edge, panel.From), plane.At(l.Stile+intoLite, panel.To()))
	d.area(sheet.Panel, plane.Region{glass.Path()})
	box := plane.BoxOf(plane.Point{}, plane.At(l.Stile, l.Thickness))
	steps := []length.Length{0, l.Rabbet.From, l.Rabbet.To, l.Thickness}
	slices.Sort(steps)
	r := rows{
		below: append(chain(0, l.Stile-l.Rabbet.Width, l.Stile), dimension.Row{At: []length.Length{0, l.Stile}, Style: dimension.Overall}),
		left:  append(chain(steps...), dimension.Row{At: []length.Length{0, l.Thickness}, Style: dimension.Overall}),
	}
	notes := []string{"Front face below, back above; seen from above, the left stile.",
		fmt.Sprintf("Panel %s: %s thick, its front %s behind the frame's.", panel.Material.Name, d.figure(panel.Thickness), d.figure(panel.From))}
	if l.HeldBy == "edge-washer" {
		d.line(sheet.CentreMark, sheet.Narrow, sheet.Centre, plane.At(l.Stile.Half(), l.Washer.Depth), plane.At(l.Stile+intoLite, l.Washer.Depth))
		notes = append(notes, fmt.Sprintf("Middle of the washers' holes: %s from the front, on the wall; ⌀ %s, %s deep.",
			d.figure(l.Washer.Depth), d.figure(l.Washer.Screw.Root), d.figure(l.Washer.Length-l.Washer.Thickness)))
	}
	d.dimensions(box, r)
	return []sheet.Sheet{d.finish("A section through the left stile and the panel in its seat, from above.", notes...)}
}

// partOf is the part with that label.
func partOf(l door.Leaf, label string) (door.Part, bool) {
	i := slices.IndexFunc(l.Parts, func(p door.Part) bool { return p.Label == label })
	if i < 0 {
		return door.Part{}, false
	}
	return l.Parts[i], true
}
