package shop

import (
	"cmp"
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/machining"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// Sizes of jigs. Common practice, no source.
var (
	jigThick  = choice{in / 2, 12 * mm}     // template stock
	jigMargin = choice{5 * in / 2, 60 * mm} // round a window, for the router's base
	jigLand   = choice{3 * in / 2, 40 * mm} // on the frame's back beside a rabbet
	jigBore   = choice{in / 4, 6 * mm}      // guides a bradawl or a bush
	chisel    = choice{in / 2, 12 * mm}     // wall guided beyond the round corner
)

const jigStock = "template stock"

// jigs plans the templates for router, chisel and drill that this leaf needs.
func (p *planner) jigs() {
	p.cornerJig()
	p.pullJigs()
	p.hangerJig()
}

// jig adds a template: a plate with windows and bores, marks, and how it is
// used.
func (p *planner) jig(label, name string, plate plane.Box, windows plane.Region, bores []solid.Bore, marks []plane.Path, notes ...string) {
	thick := jigThick.of(nil, p.set.Units)
	body := solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: plane.Region{plate.Path()}, To: thick}, Bores: bores}
	for _, window := range windows {
		body.Cuts = append(body.Cuts, solid.Cut{Prism: solid.Prism{Axis: solid.Y, Region: plane.Region{window}, To: thick}, For: "window"})
	}
	plan := machining.Setups(body, p.job.Options.Profile.Tool)
	part := Part{Labels: []string{label}, Name: name, Material: jigStock, Thickness: thick, Quantity: 1, Solid: body, Notes: notes}
	w := Work{Part: part, Setup: plan.Setups[0]}
	for _, m := range marks {
		w.Setup.Contours = append(w.Setup.Contours, machining.Contour{Operation: machining.Mark, Path: m.Translate(-plate.Min.X, -plate.Min.Y)})
	}
	p.add(w)
}

// cornerJig guides a chisel that squares the rabbet's round corners: a window
// with a square corner, held to the rabbet's walls by two strips under it.
func (p *planner) cornerJig() {
	leaf := p.set.Leaf
	if leaf.Corner.Kind != "squared" {
		return
	}
	land, zone := jigLand.of(nil, p.set.Units), leaf.Rabbet.Cutter.Half()+chisel.of(nil, p.set.Units)
	far := zone + land
	plate := plane.BoxOf(plane.At(-land, -land), plane.At(far, far))
	window := plane.Region{plane.Rect(plane.Point{}, plane.At(zone, zone))}
	strip := land - 4*mm
	marks := []plane.Path{
		{plane.Line(plane.At(0, zone+2*mm), plane.At(0, zone+2*mm+strip))},
		{plane.Line(plane.At(zone+2*mm, 0), plane.At(zone+2*mm+strip, 0))},
	}
	write := p.job.Options.Profile.Tool.Write
	p.jig("JIG-CORNER", "corner-squaring jig", plate, window, nil, marks,
		fmt.Sprintf("under it two strips %s long and at most %s high, outer edge on the marked lines, hang into the rabbet and bear on its walls", write(strip), write(leaf.Rabbet.Depth)))
}

// pullJigs guide a router with a bearing above its cutter round a flush pull's
// mortise, one for each different one.
func (p *planner) pullJigs() {
	var done []plane.Region
	n := 0
	for _, part := range p.set.Leaf.Parts {
		for _, c := range part.Solid.Cuts {
			if c.For != "pull" || c.Axis != solid.Y || part.Role == door.PanelRole {
				continue
			}
			low := c.Region.Bounds().Min
			shape := c.Region.Translate(-low.X, -low.Y)
			if slices.ContainsFunc(done, func(r plane.Region) bool { return slices.EqualFunc(r, shape, slices.Equal[plane.Path]) }) {
				continue
			}
			done = append(done, shape)
			n++
			p.pullJig(n, part, c)
		}
	}
}

// pullJig is the jig of one mortise. Its long edge lies flush with the nearer
// long edge of the part.
func (p *planner) pullJig(n int, part door.Part, c solid.Cut) {
	write := p.job.Options.Profile.Tool.Write
	margin := jigMargin.of(nil, p.set.Units)
	hole, least, most := c.Region.Bounds(), solid.Vec{}, solid.Vec{}
	least, most = part.Solid.Bounds()
	plate := hole.Grow(margin)
	edge := "right"
	if hole.Min.X-least.X <= most.X-hole.Max.X {
		edge = "left"
		plate.Min.X = least.X
	} else {
		plate.Max.X = most.X
	}
	middle := hole.Min.Y + hole.Height().Half()
	p.jig(fmt.Sprintf("JIG-PULL%d", n), "flush-pull jig", plate, c.Region, nil, nil,
		fmt.Sprintf("for a cutter with its bearing on the shank; %s edge, as seen from the room, flush with that of %s; window's middle %s above the leaf's bottom; mortise %s deep",
			edge, part.Label, write(middle), write(c.To-c.From)))
}

// hangerJig places the bores of one hanger on the leaf's top: those of its
// screws where the set has them, else its middle.
func (p *planner) hangerJig() {
	inset := p.set.Track.HangerAt[0]
	if inset <= 0 {
		return
	}
	units, thick := p.set.Units, p.set.Leaf.Thickness
	diameter, deep := jigBore.of(nil, units), jigThick.of(nil, units)
	places, what := p.hangerBores(), "bores for the screws of a hanger"
	if len(places) == 0 {
		places, what = []plane.Point{plane.At(inset, thick.Half())}, "bores a hanger's middle; its own screw holes follow the hanger in hand"
	}
	plate := plane.BoxOf(plane.Point{}, plane.At(inset, thick))
	var bores []solid.Bore
	for _, at := range places {
		plate.Max.X = max(plate.Max.X, at.X)
		bores = append(bores, solid.Bore{From: solid.Raise(at, solid.Y, 0), To: solid.Raise(at, solid.Y, deep), Diameter: diameter, For: "hanger"})
	}
	plate.Max.X += jigLand.of(nil, units)
	last := places[len(places)-1].Add(diameter, 0)
	marks := []plane.Path{{plane.Line(last, last.Add(jigLand.of(nil, units).Half(), 0))}} // the leaf's middle plane
	p.jig("JIG-HANGER", "hanger drilling jig", plate, nil, bores, marks,
		"lies on the leaf's top, left edge flush with the leaf's edge; turned over for the other hanger; "+what)
}

// hangerBores are the places of the left hanger's screws on the leaf's top:
// from the left and from the front.
func (p *planner) hangerBores() []plane.Point {
	var places []plane.Point
	for _, part := range p.set.Leaf.Parts {
		for _, b := range part.Solid.Bores {
			mouth := solid.Vec{X: b.From.X, Y: b.From.Y, Z: max(b.From.Z, b.To.Z)}
			if b.For == "hanger screw" && b.From.Flat(solid.Z) == b.To.Flat(solid.Z) && mouth.Z >= p.set.Leaf.Height && mouth.X < p.set.Leaf.Width.Half() {
				places = append(places, mouth.Flat(solid.Z))
			}
		}
	}
	slices.SortFunc(places, func(a, b plane.Point) int { return cmp.Compare(a.X, b.X) })
	return slices.Compact(places)
}
