package door

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// build makes the solids of a leaf.
func (r *resolver) build() {
	leaf := &r.set.Leaf
	leaf.Parts = append(leaf.Parts, r.stilePart("SL", "left stile", 0), r.stilePart("SR", "right stile", leaf.Width-leaf.Stile))
	for i := range leaf.Rails {
		leaf.Parts = append(leaf.Parts, r.railPart(i))
	}
	for i, lite := range leaf.Lites {
		front := leaf.Rabbet.Front
		body := solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: lite.Panel, From: front, To: front + leaf.Panel.Thickness}}
		sheet := leaf.Panel.Material
		leaf.Parts = append(leaf.Parts, weigh(Part{Label: fmt.Sprintf("P%d", i+1), Name: "panel", Role: PanelRole, Material: sheet.Name, Solid: body}, sheet.Density))
		r.washers(i)
	}
	for _, part := range leaf.Parts {
		leaf.Mass += part.Mass
	}
}

// weigh fills in volume and mass. Density is in kg/m³.
func weigh(p Part, density float64) Part {
	p.Volume = p.Solid.Volume()
	p.Mass = p.Volume * density / 1e9
	return p
}

// stilePart is a stile with its left edge at x.
func (r *resolver) stilePart(label, name string, x length.Length) Part {
	leaf := r.set.Leaf
	body := solid.Solid{Blank: solid.Block(solid.Vec{X: x}, solid.Vec{X: x + leaf.Stile, Y: leaf.Thickness, Z: leaf.Height})}
	for _, lite := range leaf.Lites {
		body.Cuts = append(body.Cuts, r.rabbetCut(lite, body.Blank))
	}
	inner, inwards := leaf.Stile-leaf.Rabbet.Width, length.Length(-1)
	if x > 0 {
		inner, inwards = x+leaf.Rabbet.Width, 1
	}
	for _, lite := range leaf.Lites {
		for _, up := range r.washerHeights(lite) {
			body.Bores = append(body.Bores, r.washerBore(solid.Vec{X: inner, Y: leaf.Washer.Depth, Z: up}, solid.Vec{X: inwards}))
		}
	}
	return weigh(Part{Label: label, Name: name, Role: StileRole, Material: r.set.Stock.Species.Name, Solid: body}, r.set.Stock.Species.Density())
}

// rabbetCut is what a lite's rabbet takes from a blank.
func (r *resolver) rabbetCut(lite Lite, blank solid.Prism) solid.Cut {
	leaf := r.set.Leaf
	region := plane.Intersect(lite.Rabbet, blank.Region)
	return solid.Cut{Prism: solid.Prism{Axis: solid.Y, Region: region, From: leaf.Rabbet.Front, To: leaf.Thickness}, For: "rabbet"}
}

// washerBore is the pilot hole of a washer screw from the rabbet wall, in the
// direction given by the sign of one coordinate.
func (r *resolver) washerBore(wall, way solid.Vec) solid.Bore {
	w := r.set.Leaf.Washer
	grip := w.Length - w.Thickness
	return solid.Bore{From: wall, To: wall.Add(solid.Vec{X: way.X * grip, Z: way.Z * grip}), Diameter: w.Screw.Root, For: "washer screw"}
}

// washerHeights are the heights of the washers along a lite's stile edges.
func (r *resolver) washerHeights(lite Lite) []length.Length {
	corner, _ := r.figureValue("washer.corner.stile")
	most, _ := r.figureValue("washer.spacing")
	heights := r.spread(lite.Sight.Height(), corner, most)
	for i := range heights {
		heights[i] += lite.Sight.Min.Y
	}
	return heights
}

// figureValue is the value of a figure resolved before.
func (r *resolver) figureValue(name string) (length.Length, bool) {
	f, ok := named(r.figures, name)
	return f.Value, ok
}

// railPart is the i-th rail from the bottom.
func (r *resolver) railPart(i int) Part {
	leaf, rail := r.set.Leaf, r.set.Leaf.Rails[i]
	body := solid.Solid{Blank: solid.Block(solid.Vec{X: leaf.Stile, Z: rail.From}, solid.Vec{X: leaf.Width - leaf.Stile, Y: leaf.Thickness, Z: rail.To})}
	name := "cross rail"
	if i > 0 {
		body.Cuts = append(body.Cuts, r.rabbetCut(leaf.Lites[i-1], body.Blank))
		r.railWasherBores(&body, rail.From+leaf.Rabbet.Width, 1)
	} else {
		name = "bottom rail"
	}
	if i < len(leaf.Lites) {
		body.Cuts = append(body.Cuts, r.rabbetCut(leaf.Lites[i], body.Blank))
		r.railWasherBores(&body, rail.To-leaf.Rabbet.Width, -1)
	} else {
		name = "top rail"
	}
	r.pocketBores(&body, i)
	return weigh(Part{Label: rail.Label, Name: name, Role: RailRole, Material: r.set.Stock.Species.Name, Solid: body}, r.set.Stock.Species.Density())
}

// railWasherBores bores a rail's washer holes from the rabbet wall at height z,
// upwards or downwards.
func (r *resolver) railWasherBores(body *solid.Solid, z, way length.Length) {
	leaf := r.set.Leaf
	for _, x := range leaf.Washer.Across {
		body.Bores = append(body.Bores, r.washerBore(solid.Vec{X: leaf.Stile + x, Y: leaf.Washer.Depth, Z: z}, solid.Vec{Z: way}))
	}
}

// pocketBores bores both ends of a rail and enters their screws.
func (r *resolver) pocketBores(body *solid.Solid, i int) {
	leaf, practice := &r.set.Leaf, catalog.PocketPractice()
	p, slope := leaf.Pocket, leaf.Pocket.slope()
	mid := leaf.Thickness.Half()
	way := func(x, z, side, along length.Length) solid.Vec {
		dx, dy := slope.along(along)
		return solid.Vec{X: x + side*dx, Y: mid + dy, Z: z}
	}
	// Far enough that the cylinder has wholly left the back, or the end.
	out := length.Round(mid.MM()/slope.sin + p.Diameter.MM()/slope.sin)
	for _, z := range r.holeHeights(i, p.PerEnd[i], practice) {
		for _, end := range []struct{ x, side length.Length }{{leaf.Stile, 1}, {leaf.Width - leaf.Stile, -1}} {
			shoulder := way(end.x, z, end.side, p.Shoulder)
			body.Bores = append(body.Bores,
				solid.Bore{From: shoulder, To: way(end.x, z, end.side, out), Diameter: p.Diameter, For: "pocket"},
				solid.Bore{From: shoulder, To: way(end.x, z, end.side, -practice.Pilot), Diameter: practice.Pilot, For: "pilot"})
			leaf.Screws = append(leaf.Screws, Screw{Head: shoulder, Tip: way(end.x, z, end.side, p.Shoulder-p.Screw), Diameter: catalog.GaugeDiameter(practice.Gauge), For: "pocket"})
		}
	}
}

// washers enters the washers of a lite and their screws.
func (r *resolver) washers(i int) {
	leaf := &r.set.Leaf
	wall := leaf.Lites[i].Sight.Grow(leaf.Rabbet.Width)
	y, n := leaf.Washer.Depth, 0
	add := func(at, way solid.Vec) {
		n++
		leaf.Hardware = append(leaf.Hardware, r.washerPart(washerName(i+1, n), at, way))
		t, grip := leaf.Washer.Thickness, leaf.Washer.Length-leaf.Washer.Thickness
		leaf.Screws = append(leaf.Screws, Screw{Head: at.Add(solid.Vec{X: way.X * t, Z: way.Z * t}), Tip: at.Add(solid.Vec{X: -way.X * grip, Z: -way.Z * grip}), Diameter: leaf.Washer.Screw.Diameter, For: "washer"})
	}
	for _, z := range r.washerHeights(leaf.Lites[i]) {
		add(solid.Vec{X: wall.Min.X, Y: y, Z: z}, solid.Vec{X: 1})
		add(solid.Vec{X: wall.Max.X, Y: y, Z: z}, solid.Vec{X: -1})
	}
	for _, x := range leaf.Washer.Across {
		add(solid.Vec{X: leaf.Stile + x, Y: y, Z: wall.Min.Y}, solid.Vec{Z: 1})
		add(solid.Vec{X: leaf.Stile + x, Y: y, Z: wall.Max.Y}, solid.Vec{Z: -1})
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
