package drawing

import (
	"fmt"
	"math"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// scaleWords is a scale's name as written below a view.
func scaleWords(name string) string { return "SCALE " + strings.ToUpper(name) }

// details draws the rabbet, an inside corner, and the joint.
func details(p *page) {
	half := (p.work.Width() - gutter).Half()
	left, right := p.work, p.work
	left.Max.X = p.work.Min.X + half
	right.Min.X = left.Max.X + gutter
	right.Max.X -= 20 * mm // the corner's note stands beside it
	rabbet, joint := left, left
	rabbet.Min.Y = left.Min.Y + left.Height()*52/100
	joint.Max.Y = rabbet.Min.Y - gutter
	p.rabbetDetail(rabbet)
	p.jointDetail(joint)
	p.cornerDetail(right)
}

// rabbetDetail draws the rabbet of the left stile with panel, washer and screw.
func (p *page) rabbetDetail(zone plane.Box) {
	leaf := p.set.Leaf
	rab, panel, washer := leaf.Rabbet, leaf.Panel, leaf.Washer
	wall, sight := leaf.Stile-rab.Width, leaf.Stile
	grip := washer.Length - washer.Thickness
	box := plane.BoxOf(plane.At(wall-grip-8*mm, 0), plane.At(sight+25*mm, leaf.Thickness))
	edge := wall + panel.EdgeGap
	l := layout{box: box, title: "RABBET, SECTION", largest: 2, above: []dimension.Row{
		{At: []length.Length{wall, edge, sight}, Style: dimension.Chain, Label: "GAP, BITE"},
		{At: []length.Length{wall, wall + washer.Thickness}, Style: dimension.Chain, Label: "WASHER"},
	}, below: []dimension.Row{{At: []length.Length{wall, sight}, Style: dimension.Chain, Label: "RABBET"}},
		right: []dimension.Row{{At: []length.Length{0, rab.Front, rab.Front + panel.Thickness, leaf.Thickness}, Style: dimension.Chain}, {At: []length.Length{rab.Front, leaf.Thickness}, Style: dimension.Chain}},
		left:  []dimension.Row{{At: []length.Length{0, washer.Depth}, Style: dimension.Chain}, {At: []length.Length{0, leaf.Thickness}, Style: dimension.Overall}},
	}
	frame := p.place(zone, l)
	lines, _ := view.Section(near(leafBodies(leaf, false), solid.Z, box), solid.Z, cutHeight(leaf), view.Options{Scale: frame.Scale})
	p.draw(frame, window(lines, box))
	p.breakLine(frame, plane.At(box.Min.X, 0), plane.At(box.Min.X, leaf.Thickness))
	p.breakLine(frame, plane.At(box.Max.X, rab.Front), plane.At(box.Max.X, rab.Front+panel.Thickness))
	p.screw(frame, plane.At(wall+washer.Thickness, washer.Depth), plane.At(wall-grip, washer.Depth), washer.Screw.Diameter)
	p.stroke(frame, sheet.CentreMark, sheet.Narrow, sheet.Centre, plane.At(wall-grip-2*mm, washer.Depth), plane.At(wall+washer.Thickness+3*mm, washer.Depth))
	p.stroke(frame, sheet.Outline, sheet.Narrow, sheet.Continuous, plane.At(sight, 0), plane.At(sight, rab.Front))
}

// cornerDetail draws the lower inside corner of a lite from the back: the left
// stile as one stands behind the leaf.
func (p *page) cornerDetail(zone plane.Box) {
	leaf := p.set.Leaf
	rab, lite := leaf.Rabbet, leaf.Lites[0]
	show := max(rab.Cutter, leaf.Corner.Leg, leaf.Corner.Radius) + 15*mm
	inner := -leaf.Width + leaf.Stile // sight edge as seen from behind
	wall, sill := inner-rab.Width, lite.Sight.Min.Y
	box := plane.BoxOf(plane.At(wall-12*mm, sill-rab.Width-12*mm), plane.At(wall+show, sill-rab.Width+show))
	gap := leaf.Panel.EdgeGap
	below := []dimension.Row{{At: []length.Length{wall, wall + gap, inner}, Style: dimension.Chain, Label: "GAP, BITE"}, {At: []length.Length{wall, inner}, Style: dimension.Chain, Label: "RABBET"}}
	if leaf.Corner.Leg > 0 {
		below = append(below, dimension.Row{At: []length.Length{wall + gap, wall + gap + leaf.Corner.Leg}, Style: dimension.Chain, Label: "CLIP"})
	}
	left := []dimension.Row{{At: []length.Length{sill - rab.Width, sill - rab.Width + gap, sill}, Style: dimension.Chain}}
	frame := p.besideNote(zone, layout{box: box, title: "INSIDE CORNER, FROM THE BACK", largest: 2, below: below, left: left}, p.cornerNote())
	bodies := near(leafBodies(leaf, true), solid.Y, box.Path().MirrorX(0).Bounds())
	lines := view.Elevation(bodies, view.Back, view.Options{Scale: frame.Scale, NoBores: true, NoHidden: true})
	p.draw(frame, window(lines, box))
	p.fill(frame, plane.Intersect(lite.Panel.MirrorX(0), plane.Region{box.Path()}), sheet.Panel, sheet.Tint)
	if rab.Corner > 0 {
		on := rab.Corner.MM() * (1 - math.Sqrt2/2)
		tip := plane.At(wall+length.Round(on), sill-rab.Width+length.Round(on))
		at := frame.Paper(tip)
		p.note(frame, tip, frame.Box.Max.X-at.X+noteOff, (frame.Box.Max.Y-at.Y)*3/5, dimension.Arrow, p.cornerNote()...)
	}
}

// noteOff is how far right of its view a note stands.
const noteOff = 6 * mm

// besideNote places a view, farther left where the note at its right would
// otherwise leave the work area.
func (p *page) besideNote(zone plane.Box, l layout, note []string) dimension.Frame {
	leader := dimension.Leader(dimension.Note{Elbow: plane.At(noteOff, noteOff), Lines: note, TextHeight: figureHeight})
	extent, _ := dimension.Extent(leader)
	before := len(p.over)
	frame := p.place(zone, l)
	if p.err != nil || frame.Box.Max.X+extent.Max.X <= p.work.Max.X {
		return frame
	}
	p.over = p.over[:before]
	zone.Max.X -= extent.Max.X
	return p.place(zone, l)
}

// cornerNote says what is done about the corner.
func (p *page) cornerNote() []string {
	leaf, f := p.set.Leaf, p.style.Format
	lines := []string{"cutter leaves R " + f(leaf.Rabbet.Corner)}
	switch {
	case leaf.Corner.Leg > 0:
		lines = append(lines, "panel clipped "+f(leaf.Corner.Leg), "least clip "+f(leaf.Corner.Least))
	case leaf.Corner.Radius > 0:
		lines = append(lines, "panel corner R "+f(leaf.Corner.Radius), "least R "+f(leaf.Corner.Least))
	}
	return lines
}

// jointDetail draws the pocket-screw joint of the bottom rail with the left
// stile, cut through a hole.
func (p *page) jointDetail(zone plane.Box) {
	leaf, f := p.set.Leaf, p.style.Format
	pocket := leaf.Joint.Pocket
	screw := leaf.Screws[0]
	end := leaf.Stile
	box := plane.BoxOf(plane.At(end-pocket.Bite-12*mm, 0), plane.At(end+pocket.Reach+10*mm, leaf.Thickness))
	l := layout{box: box, title: "POCKET-SCREW JOINT, SECTION", below: []dimension.Row{{At: []length.Length{end - pocket.Bite, end, end + pocket.Reach}, Style: dimension.Chain}},
		left:  []dimension.Row{{At: []length.Length{0, pocket.Tip}, Style: dimension.Chain}, {At: []length.Length{0, leaf.Thickness}, Style: dimension.Overall}},
		right: []dimension.Row{{At: []length.Length{0, leaf.Thickness.Half(), leaf.Thickness}, Style: dimension.Chain}}}
	room := zone
	room.Min.Y += 2 * linePitch
	frame := p.place(room, l)
	lines, _ := view.Section(near(leafBodies(leaf, false), solid.Z, box), solid.Z, screw.Head.Z, view.Options{Scale: frame.Scale})
	p.draw(frame, window(lines, box))
	for _, x := range []length.Length{box.Min.X, box.Max.X} {
		p.breakLine(frame, plane.At(x, 0), plane.At(x, leaf.Thickness))
	}
	p.screw(frame, screw.Head.Flat(solid.Z), screw.Tip.Flat(solid.Z), screw.Diameter)
	p.text(plane.At((zone.Min.X+zone.Max.X).Half(), zone.Min.Y+mm), figureHeight, sheet.Middle, false,
		fmt.Sprintf("Pocket %s at %g° to the face; screw %s; collar %s along the screw.", f(pocket.Diameter), pocket.Angle, f(pocket.Screw), f(pocket.Shoulder)))
}
