package shop

import (
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
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

// hangerJig places a hanger's middle on the leaf's top.
func (p *planner) hangerJig() {
	at := p.set.Track.HangerAt[0]
	if at <= 0 {
		return
	}
	thick, land := p.set.Leaf.Thickness, jigLand.of(nil, p.set.Units)
	plate := plane.BoxOf(plane.Point{}, plane.At(at+land, thick))
	middle := plane.At(at, thick.Half())
	bore := solid.Bore{From: solid.Raise(middle, solid.Y, 0), To: solid.Raise(middle, solid.Y, jigThick.of(nil, p.set.Units)), Diameter: jigBore.of(nil, p.set.Units), For: "hanger"}
	cross := func(reach length.Length) []plane.Path {
		from := bore.Diameter.Half() + mm
		return []plane.Path{
			{plane.Line(middle.Add(-reach, 0), middle.Add(-from, 0))}, {plane.Line(middle.Add(from, 0), middle.Add(reach, 0))},
		}
	}
	p.jig("JIG-HANGER", "hanger drilling jig", plate, nil, []solid.Bore{bore}, cross(land.Half()),
		"lies on the leaf's top, left edge flush with the leaf's edge; turned over for the other hanger; bores the hanger's middle, its own screw holes follow the hanger in hand")
}
