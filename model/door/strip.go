package door

import (
	"cmp"
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// How strips are fixed.
const (
	fixPins   = "pins"
	fixScrews = "screws"
)

// strip resolves the stops behind the panels, or the beads before them: sizes,
// what fixes them and where.
func (r *resolver) strip() {
	h, leaf := r.model.Panel.HeldBy.Stop, &r.set.Leaf
	name := leaf.HeldBy
	strip := Strip{Fix: cmp.Or(h.Fix, fixPins)}
	if h.Width != nil {
		strip.Width = r.given(name+".width", "panel.held_by.stop.width", *h.Width)
	} else {
		strip.Width = r.derive(name+".width", leaf.Rabbet.Width, "to the lite's edge: the rabbet's width", "rabbet.width")
	}
	r.stripDepth(&strip, leaf.Panel, name, "panel.thickness")
	if solid := leaf.SolidPanel; solid != nil && solid.Thickness != leaf.Panel.Thickness {
		other := strip
		r.stripDepth(&other, *solid, name+".solid", "solid.thickness")
		leaf.SolidStrip = &other
	}
	r.stripFix(&strip, name)
	if leaf.SolidStrip != nil {
		leaf.SolidStrip.Length, leaf.SolidStrip.Diameter, leaf.SolidStrip.Spacing, leaf.SolidStrip.Screw = strip.Length, strip.Diameter, strip.Spacing, strip.Screw
	}
	leaf.Strip, leaf.Washer = strip, Washer{}
	r.stripFits()
	r.stripProud()
	r.stripPlaces(name)
}

// stripDepth resolves the depth of the strips that hold one sheet: flush with
// the frame's face unless stated, and where they begin.
func (r *resolver) stripDepth(strip *Strip, panel Panel, name, sheet string) {
	stated, leaf := r.model.Panel.HeldBy.Stop.Depth, r.set.Leaf
	flush, formula, from := leaf.Thickness-panel.To(), "flush: thickness less the wood in front, the bed and the panel", []string{"leaf.thickness", "rabbet.front", sheet}
	if leaf.HeldBy == heldByBead {
		flush, formula, from = panel.From, "flush: thickness less the wood behind, the bed and the panel", []string{"leaf.thickness", "rabbet.back", sheet}
	}
	switch {
	case stated == nil:
		strip.Depth = r.derive(name+".depth", flush, formula, append(from, r.bedName()...)...)
	case sheet == "panel.thickness":
		strip.Depth = r.given(name+".depth", "panel.held_by.stop.depth", *stated)
	default:
		strip.Depth = r.derive(name+".depth", *stated, "as those of the other panels", leaf.HeldBy+".depth")
	}
	strip.From, strip.Proud = panel.To(), max(0, strip.Depth-flush)
	if leaf.HeldBy == heldByBead {
		strip.From = panel.From - strip.Depth
	}
	if least := leastStrip.in(r.units); strip.Depth < least {
		r.stop("panel.held_by.stop.depth", RuleStrip, "%ss %v deep split when they are fixed; they need at least %v: the frame is %v thick and the panel %v", leaf.HeldBy, strip.Depth, least, leaf.Thickness, panel.Thickness)
	}
}

// stripFix resolves pins or screws.
func (r *resolver) stripFix(strip *Strip, name string) {
	h := r.model.Panel.HeldBy
	if strip.Fix == fixScrews {
		strip.Screw = r.set.Leaf.Washer.Screw
		strip.Diameter = strip.Screw.Diameter
		if h.Screw.Length != nil {
			strip.Length = r.given(name+".screw", "panel.held_by.screw.length", *h.Screw.Length)
			return
		}
	} else {
		pin := catalog.BradPin()
		strip.Diameter = r.assume(name+".pin.diameter", pin.Size, "thin enough not to split a strip", pin.Source.String())
		if h.Stop.Pin != nil {
			strip.Length = r.given(name+".pin", "panel.held_by.stop.pin", *h.Stop.Pin)
			return
		}
	}
	word := map[string]string{fixScrews: "screw", fixPins: "pin"}[strip.Fix]
	hold := r.assume(name+"."+word+".hold", stripHold.in(r.units), stripHold.reason, houseRule)
	strip.Length = r.derive(name+"."+word, (strip.Width + hold).UpTo(pinStep.in(r.units)), "strip's width and the hold in the wood, up to the next length sold", name+".width", name+"."+word+".hold")
}

// stripFits checks strips, and their pins or screws, against panel and frame.
func (r *resolver) stripFits() {
	leaf, s := r.set.Leaf, r.set.Leaf.Strip
	gap, _ := leaf.mostGap()
	path := "panel.held_by.stop.width"
	switch lap := s.Width - 2*gap; {
	case lap <= 0:
		r.stop(path, RuleStrip, "%ss %v wide do not reach a panel that may stand %v away (twice the edge gap of %v): they must be wider than that", leaf.HeldBy, s.Width, 2*gap, gap)
	case lap < stripLap.in(r.units):
		r.warn(path, RuleStrip, "with the panel pushed away the %ss lap it by %v; %v is safer", leaf.HeldBy, lap, stripLap.in(r.units))
	}
	if past := s.Width - leaf.Rabbet.Width; past > 0 {
		r.warn(path, RuleStrip, "%ss %v wide in a rabbet %v wide stand %v into the lite; up to %v they end at its edge", leaf.HeldBy, s.Width, leaf.Rabbet.Width, past, leaf.Rabbet.Width)
		for _, lite := range leaf.Lites {
			if side := min(lite.Sight.Width(), lite.Sight.Height()); side-2*past < leastLite.in(r.units) {
				r.stop(path, RuleStrip, "%ss that stand %v into a lite %v across leave %v open; it needs at least %v: make them narrower", leaf.HeldBy, past, side, side-2*past, leastLite.in(r.units))
				break
			}
		}
	}
	if least := min(s.Depth, leaf.StripOf(Lite{Solid: true}).Depth); s.Fix == fixScrews && least < 3*s.Diameter {
		r.stop("panel.held_by.screw.gauge", RuleStrip, "screws %v thick split %ss %v deep; they need at least %v: thinner screws, or pins", s.Diameter, leaf.HeldBy, least, 3*s.Diameter)
	}
	r.stripGrip()
}

// stripGrip checks the hold of pins and screws in the frame, and their tips.
func (r *resolver) stripGrip() {
	leaf, s := r.set.Leaf, r.set.Leaf.Strip
	clear, least, word := screwClear.in(r.units), leastGrip.in(r.units), s.Fix
	path := "panel.held_by.stop.pin"
	if s.Fix == fixScrews {
		path = "panel.held_by.screw.length"
	}
	grip := s.Length - s.Width
	if grip < least {
		r.stop(path, RuleStrip, "%s %v long through %ss %v wide hold %v in the wood; they need at least %v: from %v long", word, s.Length, leaf.HeldBy, s.Width, grip, least, (s.Width + least).UpTo(r.tick))
		return
	}
	for _, m := range r.milledMembers() {
		if left := m.width - m.edges*(leaf.Rabbet.Width+grip); left < clear {
			r.stop(path, RuleStrip, "%s going %v into %s, %v wide, leave %v between tip and tip or edge; at least %v is needed: up to %v long", word, grip, m.name, m.width, left, clear, ((m.width-clear)/m.edges - leaf.Rabbet.Width + s.Width).DownTo(r.tick))
			return
		}
	}
}

// stripProud checks what stands out of the frame's face against the face gap.
func (r *resolver) stripProud() {
	leaf, gap := r.set.Leaf, r.set.Track.FaceGap
	out := max(leaf.Strip.Proud, leaf.StripOf(Lite{Solid: true}).Proud)
	face, least := "back", leastFaceGap.in(r.units)
	if leaf.HeldBy == heldByBead {
		face = "front"
	}
	switch {
	case out == 0:
	case out >= gap:
		r.stop("panel.held_by.stop.depth", RuleStripProud, "%ss stand %v out of the %s and the face gap is %v: passing leaves would catch them; up to %v leaves %v free", leaf.HeldBy, out, face, gap, max(0, gap-least), least)
	case gap-out < least:
		r.warn("panel.held_by.stop.depth", RuleStripProud, "%ss stand %v out of the %s and leave %v of a face gap of %v; passing leaves want at least %v", leaf.HeldBy, out, face, gap-out, gap, least)
	}
}

// beadsOut is how far beads stand out of the frame's front.
func (l *Leaf) beadsOut() length.Length {
	if l.HeldBy != heldByBead {
		return 0
	}
	return max(l.Strip.Proud, l.StripOf(Lite{Solid: true}).Proud)
}

// A milledMember is a member as pins and screws driven into its edges find it.
type milledMember struct {
	name  string
	width length.Length
	edges length.Length // 2 when both are milled, else 1
}

// milledMembers are the stile, the rails and the muntins.
func (r *resolver) milledMembers() []milledMember {
	leaf := r.set.Leaf
	all := []milledMember{{"a stile", leaf.Stile, 1}}
	for i, rail := range leaf.Rails {
		edges := length.Length(2)
		if i == 0 || i == len(leaf.Rails)-1 {
			edges = 1
		}
		all = append(all, milledMember{"rail " + rail.Label, rail.Width(), edges})
	}
	for _, m := range leaf.Muntins {
		all = append(all, milledMember{"muntin " + m.Label, m.Width(), 2})
	}
	return all
}

// stripPlaces finds where the strips are fixed: the same distance from both
// ends, evenly between, and along rails and muntins clear of the joints.
func (r *resolver) stripPlaces(name string) {
	leaf := &r.set.Leaf
	s := &leaf.Strip
	s.Spacing = r.sized(name+".spacing", "panel.held_by.stop.spacing", r.model.Panel.HeldBy.Stop.Spacing, stripSpacing)
	past := max(0, s.Width-leaf.Rabbet.Width)
	corner := r.derive(name+".corner.stile", (stripCorner.in(r.units) + past).UpTo(r.tick), "from a lite's corner to the first "+s.Fix+" along a stile: "+stripCorner.reason, name+".width", "rabbet.width")
	j := leaf.Joint
	at := starts{up: corner, across: r.clearOfJoint(j.Reach, corner, s.Diameter), muntin: r.clearOfJoint(j.MuntinReach, corner, s.Diameter)}
	r.derive(name+".corner.rail", at.across, "from a lite's corner to the first "+s.Fix+" along a rail: clear of the joint", name+".corner.stile")
	if j.Muntin != "" {
		r.derive(name+".corner.muntin", at.muntin, "from a lite's corner to the first "+s.Fix+" along a muntin: clear of its joint", name+".corner.stile")
	}
	if leaf.SolidStrip != nil {
		leaf.SolidStrip.Spacing = s.Spacing
	}
	for i := range leaf.Lites {
		lite := &leaf.Lites[i]
		lite.Fixings = r.spreadRound(*lite, at, s.Spacing, 2*stripCorner.in(r.units))
		for _, side := range []Side{Bottom, Left, Right} {
			if len(lite.Fixings[side]) == 0 {
				r.stop("panel.held_by", RuleStrip, "no %s find room on the %s edge of a lite %v by %v, between joints that reach %v from its corners", s.Fix, side, lite.Sight.Width(), lite.Sight.Height(), max(at.across, at.muntin))
				return
			}
		}
	}
}

// strips enters the four strips of a lite, mitred at their ends, and what fixes
// them.
func (b *bench) strips(i int) {
	leaf, lite := b.leaf, b.leaf.Lites[i]
	s := leaf.StripOf(lite)
	role, letter := StopRole, "T"
	if leaf.HeldBy == heldByBead {
		role, letter = BeadRole, "B"
	}
	wall := lite.Sight.Grow(leaf.Rabbet.Width)
	for n, side := range []Side{Left, Right, Bottom, Top} {
		part := Part{Label: fmt.Sprintf("%s%d.%d", letter, i+1, n+1), Name: role.String(), Role: role, Material: b.set.Stock.Species.Name, Grain: solid.Z}
		if side == Bottom || side == Top {
			part.Grain = solid.X
		}
		part.Solid.Blank = solid.Prism{Axis: solid.Y, Region: plane.Region{mitred(wall, side, s.Width)}, From: s.From, To: s.From + s.Depth}
		for _, along := range lite.Fixings[side] {
			at, way := onWall(wall, side, along)
			at.Y = b.fixedAt(s)
			part.Solid.Bores = append(part.Solid.Bores, b.fix(b.beside(lite, side), s, at, way)...)
		}
		leaf.Hardware = append(leaf.Hardware, weigh(part, b.set.Stock.Species.Density()))
	}
}

// fixedAt is how far from the frame's front a strip is fixed: in the middle of
// what of it lies in the rabbet.
func (b *bench) fixedAt(s Strip) length.Length {
	from, to := max(0, s.From), min(b.leaf.Thickness, s.From+s.Depth)
	return from + (to - from).Half()
}

// fix drives one pin or screw through a strip into a place on the wall, and
// gives the strip's hole: screws are bored for, pins are not.
func (b *bench) fix(into *member, s Strip, at, way solid.Vec) []solid.Bore {
	far := func(by length.Length) solid.Vec { return at.Add(solid.Vec{X: way.X * by, Z: way.Z * by}) }
	b.leaf.Screws = append(b.leaf.Screws, Screw{Head: far(s.Width), Tip: far(s.Width - s.Length), Diameter: s.Diameter, For: "stop"})
	if s.Fix != fixScrews {
		return nil
	}
	into.bore(solid.Bore{From: at, To: far(s.Width - s.Length), Diameter: s.Screw.Root, For: "stop screw"})
	return []solid.Bore{{From: far(s.Width), To: at, Diameter: max(s.Screw.Body, s.Screw.Diameter), For: "stop screw"}}
}

// mitred is a strip's outline along one side of the walls, its ends cut at 45
// degrees: its long edge on the wall, from corner to corner.
func mitred(wall plane.Box, side Side, width length.Length) plane.Path {
	in := wall.Grow(-width)
	lowRight, highLeft := plane.At(wall.Max.X, wall.Min.Y), plane.At(wall.Min.X, wall.Max.Y)
	inLowRight, inHighLeft := plane.At(in.Max.X, in.Min.Y), plane.At(in.Min.X, in.Max.Y)
	switch side {
	case Left:
		return plane.Polygon(wall.Min, in.Min, inHighLeft, highLeft)
	case Right:
		return plane.Polygon(lowRight, wall.Max, in.Max, inLowRight)
	case Bottom:
		return plane.Polygon(wall.Min, lowRight, inLowRight, in.Min)
	default:
		return plane.Polygon(highLeft, inHighLeft, in.Max, wall.Max)
	}
}
