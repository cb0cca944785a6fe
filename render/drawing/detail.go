package drawing

import (
	"math"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// scaleWords is a scale's name as written below a view.
func scaleWords(name string) string { return "SCALE " + strings.ToUpper(name) }

// A detail is one enlarged view in a zone of its sheet.
type detail func(p *page, zone plane.Box)

// detailsEach is how many details stand on one sheet.
const detailsEach = 4

// detailsOf lists the details of a set.
func detailsOf(s door.Set) []detail {
	leaf := s.Leaf
	all := []detail{seatDetail(leaf, cutHeight(leaf), false)}
	for _, lite := range leaf.Lites {
		if lite.Solid {
			all = append(all, seatDetail(leaf, cutIn(leaf, lite), true))
			break
		}
	}
	if leaf.Rabbet.Kind != door.Groove {
		all = append(all, (*page).cornerDetail)
	}
	for _, m := range jointsShown(leaf) {
		all = append(all, jointSection(m))
		if m.Kind != door.PocketScrew {
			all = append(all, jointFace(m))
		}
	}
	all = append(all, (*page).headDetail, (*page).floorDetail)
	if len(leaf.Pulls) > 0 {
		all = append(all, (*page).pullDetail)
	}
	return all
}

// detailSheet draws up to four details in the quarters of a sheet, numbered on from
// the first one's number.
func detailSheet(some []detail, first int) func(*page) {
	return func(p *page) {
		wide, high := (p.work.Width() - gutter).Half(), (p.work.Height() - gutter).Half()
		if len(some) <= 2 {
			high = p.work.Height()
		}
		for i, d := range some {
			corner := plane.At(p.work.Min.X, p.work.Max.Y-high)
			if i%2 == 1 {
				corner.X += wide + gutter
			}
			if i >= 2 {
				corner.Y = p.work.Min.Y
			}
			p.detail = first + i
			d(p, plane.BoxOf(corner, corner.Add(wide, high)))
			if p.err != nil {
				return
			}
		}
	}
}

// seatDetail draws the panel's seat in the left stile, with what holds the panel,
// cut at a height; other tells that it is a solid panel's.
func seatDetail(leaf door.Leaf, at length.Length, other bool) detail {
	lite := door.Lite{Solid: other}
	return func(p *page, zone plane.Box) { p.seat(zone, lite, at) }
}

// firstSeat draws the seat of the panels that are no solid ones.
func firstSeat(p *page, zone plane.Box) {
	seatDetail(p.set.Leaf, cutHeight(p.set.Leaf), false)(p, zone)
}

// seat draws the seat of a lite's panel, cut at a height.
func (p *page) seat(zone plane.Box, lite door.Lite, at length.Length) {
	leaf := p.set.Leaf
	rab, panel, strip := leaf.Rabbet, leaf.PanelOf(lite), leaf.StripOf(lite)
	title := capitals(seatWords(leaf)) + ", SECTION"
	if leaf.SolidPanel != nil {
		title = capitals(panel.Material.Name) + ", " + title
	}
	thick := []dimension.Row{{At: []length.Length{0, panel.From, panel.To(), leaf.Thickness}, Style: dimension.Chain}, {At: []length.Length{rab.From, rab.To}, Style: dimension.Chain}}
	if leaf.Bed > 0 {
		thick = []dimension.Row{{At: distinct([]length.Length{0, rab.From, rab.To, panel.From, panel.To(), leaf.Thickness}), Style: dimension.Chain, Label: "BED " + p.format(leaf.Bed)}}
	}
	if rab.Kind == door.Groove {
		thick = []dimension.Row{{At: []length.Length{panel.From, panel.To()}, Style: dimension.Chain}, {At: []length.Length{0, panel.SeatFrom, panel.SeatTo, leaf.Thickness}, Style: dimension.Chain, Label: "GROOVE"}}
	}
	wall, sight, edge := leaf.Stile-rab.Width, leaf.Stile, leaf.Stile-rab.Width+panel.EdgeGap
	box := plane.BoxOf(plane.At(max(0, wall-p.grip()-8*mm), 0), plane.At(sight+25*mm, leaf.Thickness))
	l := layout{box: box, title: title, largest: 2, above: []dimension.Row{
		{At: []length.Length{wall, edge, sight}, Style: dimension.Chain, Label: "GAP, BITE"},
	}, below: []dimension.Row{{At: []length.Length{wall, sight}, Style: dimension.Chain, Label: capitals(seatWord(rab))}},
		right: thick,
		left:  []dimension.Row{{At: []length.Length{0, leaf.Thickness}, Style: dimension.Overall}},
	}
	switch w := leaf.Washer; {
	case leaf.HeldBy == "edge-washer":
		l.above = append(l.above, dimension.Row{At: []length.Length{wall, wall + w.Thickness}, Style: dimension.Chain, Label: "WASHER"})
		l.left = append([]dimension.Row{{At: []length.Length{0, leaf.WasherDepth(lite)}, Style: dimension.Chain}}, l.left...)
	case leaf.Strip.Width > 0:
		l.above = append(l.above, dimension.Row{At: []length.Length{wall, wall + strip.Width}, Style: dimension.Chain, Label: capitals(leaf.HeldBy)})
		l.left = append([]dimension.Row{{At: []length.Length{strip.From, strip.From + strip.Depth}, Style: dimension.Chain}}, l.left...)
	}
	frame := p.place(zone, l)
	if p.err != nil {
		return
	}
	lines, _ := view.Section(near(leafBodies(leaf, false), solid.Z, box), solid.Z, at, view.Options{Scale: frame.Scale})
	p.draw(frame, window(lines, box))
	p.breakLine(frame, plane.At(box.Min.X, 0), plane.At(box.Min.X, leaf.Thickness))
	p.breakLine(frame, plane.At(box.Max.X, panel.From), plane.At(box.Max.X, panel.To()))
	for _, c := range leaf.Screws {
		if c.Head.Z == at && c.Tip.Z == at && c.For != "pocket" && box.Holds(c.Tip.Flat(solid.Z)) && box.Holds(c.Head.Flat(solid.Z)) {
			p.screw(frame, c.Head.Flat(solid.Z), c.Tip.Flat(solid.Z), c.Diameter)
		}
	}
}

// grip is how far the screws that hold a panel go into the wood behind the
// seat's wall.
func (p *page) grip() length.Length {
	leaf := p.set.Leaf
	if leaf.HeldBy == "edge-washer" {
		return leaf.Washer.Length - leaf.Washer.Thickness
	}
	return 12 * mm
}

// seatWord is what a seat is called.
func seatWord(rab door.Rabbet) string {
	if rab.Kind == door.Groove {
		return "groove"
	}
	return "rabbet"
}

// seatWords are a seat and what holds the panel in it.
func seatWords(leaf door.Leaf) string {
	switch {
	case leaf.Rabbet.Kind == door.Groove:
		return "groove"
	case leaf.Rabbet.Kind == door.FaceBead:
		return "rabbet and face bead"
	case leaf.HeldBy == "edge-washer":
		return "rabbet and edge washer"
	case leaf.HeldBy == "":
		return "rabbet"
	}
	return "rabbet and " + leaf.HeldBy
}

// cornerDetail draws the lower inside corner of a lite beside the left stile, from
// the side the seat opens to.
func (p *page) cornerDetail(zone plane.Box) {
	leaf := p.set.Leaf
	rab, lite := leaf.Rabbet, leaf.Lites[0]
	from, way, words := view.Back, length.Length(-1), "BACK"
	inner := -leaf.Width + leaf.Stile // sight edge as seen from behind: the right stile's
	if rab.Kind == door.FaceBead {
		from, way, words = view.Front, 1, "FRONT"
		inner = leaf.Stile
	}
	show := max(rab.Cutter, 2*leaf.Corner.Tool, leaf.Corner.Leg, leaf.Corner.Radius) + 15*mm
	wall, sill, gap := inner-rab.Width, lite.Sight.Min.Y, leaf.Panel.EdgeGap
	box := plane.BoxOf(plane.At(wall-12*mm, sill-rab.Width-12*mm), plane.At(wall+show, sill-rab.Width+show))
	below := []dimension.Row{{At: []length.Length{wall, wall + gap, inner}, Style: dimension.Chain, Label: "GAP, BITE"}, {At: []length.Length{wall, inner}, Style: dimension.Chain, Label: "RABBET"}}
	if leaf.Corner.Leg > 0 {
		below = append(below, dimension.Row{At: []length.Length{wall + gap, wall + gap + leaf.Corner.Leg}, Style: dimension.Chain, Label: "CLIP"})
	}
	left := []dimension.Row{{At: []length.Length{sill - rab.Width, sill - rab.Width + gap, sill}, Style: dimension.Chain}}
	frame := p.besideNote(zone, layout{box: box, title: "INSIDE CORNER, FROM THE " + words, largest: 2, below: below, left: left}, p.cornerNote())
	if p.err != nil {
		return
	}
	seen := box.Path()
	if way < 0 {
		seen = seen.MirrorX(0)
	}
	var bodies []view.Body
	for _, b := range near(leafBodies(leaf, true), solid.Y, seen.Bounds()) {
		if !isBead(leaf, b.Label) {
			bodies = append(bodies, b)
		}
	}
	p.draw(frame, window(view.Elevation(bodies, from, view.Options{Scale: frame.Scale, NoBores: true, NoHidden: true}), box))
	panel, sight := lite.Panel, lite.Sight
	if way < 0 {
		sight = leaf.Lites[leaf.Columns-1].Sight.Path().MirrorX(0).Bounds()
		panel = leaf.Lites[leaf.Columns-1].Panel.MirrorX(0)
	}
	if leaf.PanelOf(lite).Material.Clear {
		p.fill(frame, plane.Intersect(plane.Intersect(panel, plane.Region{sight.Path()}), plane.Region{box.Path()}), sheet.Panel, sheet.Tint)
	}
	on := length.Round(rab.Corner.MM() * (1 - math.Sqrt2/2))
	tip := plane.At(wall+on, sill-rab.Width+on)
	at := frame.Paper(tip)
	p.note(frame, tip, frame.Box.Max.X-at.X+noteOff, (frame.Box.Max.Y-at.Y)*3/5, dimension.Arrow, p.cornerNote()...)
}

// isBead tells whether a part with that label is a bead, which would hide what lies
// behind it.
func isBead(leaf door.Leaf, label string) bool {
	return slices.ContainsFunc(leaf.Hardware, func(part door.Part) bool { return part.Label == label && part.Role == door.BeadRole })
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
	leaf, f := p.set.Leaf, p.format
	switch c := leaf.Corner; {
	case c.Leg > 0:
		return []string{"cutter leaves R " + f(leaf.Rabbet.Corner), "panel clipped " + f(c.Leg), "least clip " + f(c.Least)}
	case c.Radius > 0:
		return []string{"cutter leaves R " + f(leaf.Rabbet.Corner), "panel corner R " + f(c.Radius), "least R " + f(c.Least)}
	case c.Tool > 0 && c.Into != "":
		return []string{"T-bone: tool " + f(c.Tool), "runs into the " + c.Into}
	case c.Tool > 0:
		return []string{"dogbone: tool " + f(c.Tool), "through the corner"}
	case leaf.Rabbet.Corner > 0:
		return []string{"cutter leaves R " + f(leaf.Rabbet.Corner), "panel square: it clears"}
	}
	return []string{"chiselled square from", "the cutter's R " + f(leaf.Rabbet.Cutter.Half())}
}
