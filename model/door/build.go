package door

import (
	"fmt"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// build makes the solids of a leaf.
func (r *resolver) build() {
	leaf := &r.set.Leaf
	b := &bench{resolver: r, leaf: leaf}
	b.lay()
	for _, m := range leaf.Meetings {
		b.join(m)
	}
	grooved := map[string]bool{}
	for _, lite := range leaf.Lites {
		b.seat(lite, grooved)
	}
	for i := range leaf.Lites {
		b.hold(i)
	}
	b.workEdges()
	b.letIn()
	b.guideGroove()
	b.hangerHoles()
	b.finish()
}

// seat mills the rabbet or groove of a lite into the members round it. grooved
// are the edges grooved from end to end already.
func (b *bench) seat(lite Lite, grooved map[string]bool) {
	if b.leaf.Rabbet.Kind == Groove {
		b.groove(lite, grooved)
		return
	}
	mill := solid.Prism{Axis: solid.Y, Region: lite.Rabbet, From: b.leaf.Rabbet.From, To: b.leaf.Rabbet.To}
	for _, m := range b.members {
		m.cut(mill, "rabbet")
	}
}

// finish enters the members and panels as parts and weighs the leaf.
func (b *bench) finish() {
	leaf, wood := b.leaf, b.set.Stock.Species
	for _, m := range b.members {
		leaf.Parts = append(leaf.Parts, weigh(Part{Label: m.label, Name: m.name, Role: m.role, Material: wood.Name, Grain: m.grain, Solid: m.solid()}, wood.Density()))
	}
	for i, lite := range leaf.Lites {
		panel := leaf.PanelOf(lite)
		body := solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: lite.Panel, From: panel.From, To: panel.To()}}
		leaf.Parts = append(leaf.Parts, weigh(Part{Label: fmt.Sprintf("P%d", i+1), Name: "panel", Role: PanelRole, Material: panel.Material.Name, Grain: solid.Z, Solid: body}, panel.Material.Density))
	}
	for _, parts := range [][]Part{leaf.Parts, leaf.Hardware} {
		for _, part := range parts {
			leaf.Mass += part.Mass
		}
	}
}

// weigh fills in volume and mass. Density is in kg/m³.
func weigh(p Part, density float64) Part {
	p.Volume = p.Solid.Volume()
	p.Mass = p.Volume * density / 1e9
	return p
}

// washers bores the holes of a lite's washers and enters them and their screws.
func (b *bench) washers(i int) {
	lite, w := b.leaf.Lites[i], b.leaf.Washer
	wall := lite.Sight.Grow(b.leaf.Rabbet.Width)
	grip, n := w.Length-w.Thickness, 0
	for _, side := range []Side{Left, Right, Bottom, Top} {
		for _, along := range lite.Washers[side] {
			at, way := onWall(wall, side, along)
			at.Y = b.leaf.WasherDepth(lite)
			into := solid.Vec{X: -way.X * grip, Z: -way.Z * grip}
			b.beside(lite, side).bore(solid.Bore{From: at, To: at.Add(into), Diameter: w.Screw.Root, For: "washer screw"})
			n++
			b.leaf.Hardware = append(b.leaf.Hardware, b.washerPart(washerName(i+1, n), at, way))
			b.leaf.Screws = append(b.leaf.Screws, Screw{Head: at.Add(solid.Vec{X: way.X * w.Thickness, Z: way.Z * w.Thickness}), Tip: at.Add(into), Diameter: w.Screw.Diameter, For: "washer"})
		}
	}
}

// onWall is a place on a side's rabbet wall, and the way from the wall into the
// lite, of length 1 nm.
func onWall(wall plane.Box, side Side, along length.Length) (at, way solid.Vec) {
	switch side {
	case Left:
		return solid.Vec{X: wall.Min.X, Z: along}, solid.Vec{X: 1}
	case Right:
		return solid.Vec{X: wall.Max.X, Z: along}, solid.Vec{X: -1}
	case Bottom:
		return solid.Vec{X: along, Z: wall.Min.Y}, solid.Vec{Z: 1}
	default:
		return solid.Vec{X: along, Z: wall.Max.Y}, solid.Vec{Z: -1}
	}
}

// washerPart is a washer flat on the rabbet wall at a point, standing out the
// way one coordinate's sign tells.
func (r *resolver) washerPart(label string, at, way solid.Vec) Part {
	w := r.set.Leaf.Washer
	axis, sign := solid.X, way.X
	if way.Z != 0 {
		axis, sign = solid.Z, way.Z
	}
	centre, wall := at.Flat(axis), at.Along(axis)
	disc := solid.Prism{Axis: axis, Region: plane.Region{plane.Circle(centre, w.Outside.Half())}, From: min(wall, wall+sign*w.Thickness), To: max(wall, wall+sign*w.Thickness)}
	hole := solid.Cut{Prism: solid.Prism{Axis: axis, Region: plane.Region{plane.Circle(centre, w.Hole.Half())}, From: disc.From, To: disc.To}, For: "screw"}
	return Part{Label: label, Name: "edge washer", Role: WasherRole, Solid: solid.Solid{Blank: disc, Cuts: []solid.Cut{hole}}}
}

// figureValue is the value of a figure resolved before.
func (r *resolver) figureValue(name string) (length.Length, bool) {
	f, ok := named(r.figures, name)
	return f.Value, ok
}
