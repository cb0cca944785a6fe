package door

import (
	"fmt"
	"math"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
)

// rabbet resolves the panel's seat.
func (r *resolver) rabbet() {
	p, leaf := r.model.Panel, &r.set.Leaf
	if p.Thickness == nil {
		r.stopped = true // spec has said so
		return
	}
	thick := leaf.Thickness
	sheet := r.given("panel.thickness", "panel.thickness", *p.Thickness)
	leaf.Panel.Thickness = sheet
	rab := Rabbet{
		Width:  r.sized("rabbet.width", "panel.rabbet.width", p.Rabbet.Width, rabbetWidth),
		Cutter: r.sized("rabbet.cutter", "panel.rabbet.cutter", p.Rabbet.Cutter, cutterDiameter),
	}
	if p.Rabbet.Depth != nil {
		rab.Depth = r.given("rabbet.depth", "panel.rabbet.depth", *p.Rabbet.Depth)
		rab.Front = r.derive("rabbet.front", thick-rab.Depth, "thickness less rabbet depth", "leaf.thickness", "rabbet.depth")
	} else {
		rab.Front = r.derive("rabbet.front", (thick - sheet).Half(), "panel centred: half of thickness less panel", "leaf.thickness", "panel.thickness")
		rab.Depth = r.derive("rabbet.depth", thick-rab.Front, "thickness less the wood in front", "leaf.thickness", "rabbet.front")
	}
	rab.Kind, rab.From, rab.To = BackRabbet, rab.Front, thick
	leaf.Panel.From = rab.Front
	rab.Passes = r.passes(rab.Depth)
	leaf.Rabbet = rab
	r.rabbetFits()
}

// passes are the depths the cutter is set to, one after another: full passes,
// and a last one that takes what is left.
func (r *resolver) passes(depth length.Length) []length.Length {
	most := r.sized("rabbet.per_pass", "panel.rabbet.per_pass", r.model.Panel.Rabbet.PerPass, perPass)
	if count := (depth + most - 1) / most; count > mostPasses {
		r.stop("panel.rabbet.per_pass", RuleCutter, "a rabbet %v deep cut %v at a time takes %d passes; up to %d are planned: cut at least %v at a time", depth, most, int(count), mostPasses, roundedUp(depth, mostPasses).UpTo(r.tick))
		return nil
	}
	var set []length.Length
	for at := most; at < depth; at += most {
		set = append(set, at)
	}
	set = append(set, depth)
	for i, at := range set {
		r.derive(fmt.Sprintf("rabbet.pass.%d", i+1), at, "whole passes of the most depth taken at once, the last to full depth", "rabbet.depth", "rabbet.per_pass")
	}
	return set
}

// rabbetFits checks the rabbet against frame, panel and cutter.
func (r *resolver) rabbetFits() {
	leaf, rab := r.set.Leaf, r.set.Leaf.Rabbet
	depthPath, lip := "panel.rabbet.depth", leastLip.in(r.units)
	switch {
	case rab.Front <= 0:
		r.stop(depthPath, RuleRabbetDeep, "a rabbet %v deep goes through a frame %v thick; leave at least %v in front: up to %v deep", rab.Depth, leaf.Thickness, lip, leaf.Thickness-lip)
	case rab.Front < lip:
		r.stop(depthPath, RuleRabbetDeep, "a rabbet %v deep in a frame %v thick leaves %v of wood in front of the panel; it needs at least %v", rab.Depth, leaf.Thickness, rab.Front, lip)
	case leaf.Panel.Thickness > rab.Depth:
		r.stop("panel.thickness", RulePanelProud, "the panel is %v thick and its rabbet %v deep: it would stand out of the back by %v", leaf.Panel.Thickness, rab.Depth, leaf.Panel.Thickness-rab.Depth)
	}
	r.cutterFits()
	if len(leaf.Rails) == 0 {
		return // frame has said so
	}
	clear := screwClear.in(r.units)
	r.betweenRabbets()
	if narrow := min(leaf.Stile, leaf.Rails[0].Width(), leaf.Rails[len(leaf.Rails)-1].Width()); narrow < rab.Width+clear {
		r.stop("panel.rabbet.width", RuleRabbetWide, "a rabbet %v wide leaves %v of a member %v wide; at least %v is needed", rab.Width, narrow-rab.Width, narrow, clear)
	}
}

// cutterFits checks that a bearing-guided cutter can mill the rabbet: the
// bearing is thinner than the cutter by the rabbet on both sides, and must get
// round in the smallest lite.
func (r *resolver) cutterFits() {
	leaf, rab := r.set.Leaf, r.set.Leaf.Rabbet
	bearing := rab.Cutter - 2*rab.Width
	if bearing <= 0 {
		r.stop("panel.rabbet.cutter", RuleCutter, "a guided cutter %v across cannot mill a rabbet %v wide: its bearing would be %v; the cutter must be more than %v", rab.Cutter, rab.Width, bearing, 2*rab.Width)
		return
	}
	for _, lite := range leaf.Lites {
		if side := min(lite.Sight.Width(), lite.Sight.Height()); side < bearing {
			r.stop("panel.rabbet.cutter", RuleCutter, "the bearing of a cutter %v across is %v; the smallest lite side is %v: take a smaller cutter", rab.Cutter, bearing, side)
			return
		}
	}
}

// panel resolves the sheet, its edge gap and bite.
func (r *resolver) panel() {
	p, leaf := r.model.Panel, &r.set.Leaf
	sheet := leaf.Panel.Material
	if p.EdgeGap != nil {
		leaf.Panel.EdgeGap = r.given("panel.edge_gap", "panel.edge_gap", *p.EdgeGap)
	} else {
		leaf.Panel.EdgeGap = r.edgeGap(sheet)
	}
	gap, width := leaf.Panel.EdgeGap, leaf.Rabbet.Width
	leaf.Panel.Bite = r.derive("panel.bite", width-gap, "rabbet width less edge gap", "rabbet.width", "panel.edge_gap")
	leaf.Panel.LeastBite = r.derive("panel.least_bite", width-2*gap, "rabbet width less twice the edge gap: panel pushed to one side", "rabbet.width", "panel.edge_gap")
	switch least := sheet.LeastBite; {
	case leaf.Panel.LeastBite <= 0:
		r.stop("panel.edge_gap", RuleBite, "pushed to one side the panel keeps %v on a shoulder %v wide with an edge gap of %v: it falls out; the gap must be under %v", leaf.Panel.LeastBite, width, gap, width.Half())
	case leaf.Panel.LeastBite < least:
		r.warn("panel.edge_gap", RuleBite, "pushed to one side the panel keeps a bite of %v; %v wants %v", leaf.Panel.LeastBite, sheet.Name, least)
	}
}

// edgeGap is the working clearance and half of what the sheet's longest side
// moves, up to the next step.
func (r *resolver) edgeGap(sheet catalog.SheetMaterial) length.Length {
	var span length.Length
	for _, lite := range r.set.Leaf.Lites {
		span = max(span, lite.Sight.Width(), lite.Sight.Height())
	}
	span += 2 * r.set.Leaf.Rabbet.Width
	r.derive("panel.longest", span, "longest lite side plus the rabbet on both sides", r.columnFigure(0), "rabbet.width")
	clear := r.assume("panel.clearance", sheet.Clearance, "working clearance at each edge", sheet.House.String())
	moves := sheet.Warms(0, indoorKelvin) + sheet.Swells(humidityDry, humidityMoist)
	move := r.derive("panel.movement", length.Round(float64(span.MM()*moves)), "longest side × (expansion × warming + swelling): "+indoorReason+"; "+sheet.Source.String(), "panel.longest")
	return r.derive("panel.edge_gap", (clear + move.Half()).UpTo(edgeGapStep.in(r.units)), "working clearance plus half the movement, up to the next step", "panel.clearance", "panel.movement")
}

// corner resolves the corner treatment.
func (r *resolver) corner() {
	c, leaf := r.model.Panel.Corner, &r.set.Leaf
	kind := c.Kind
	if kind == "" {
		kind = defaultCorner
	}
	corner := Corner{Kind: kind}
	radius, gap := leaf.Rabbet.Cutter.Half(), leaf.Panel.EdgeGap
	leaf.Rabbet.Corner = r.derive("rabbet.corner", radius, "half the cutter's diameter: a guided cutter leaves its own radius", "rabbet.cutter")
	switch kind {
	case "squared":
		leaf.Rabbet.Corner = 0
	case "clipped":
		corner.Least = r.derive("corner.least_clip", LeastClip(radius, gap), "(r − g) − √(r² − (r − g)²): both ends of the clip inside the cutter's arc", "rabbet.corner", "panel.edge_gap")
		corner.Leg = r.clip(c.Leg, corner.Least)
	case "rounded":
		corner.Least = r.derive("corner.least_radius", LeastRadius(radius, gap), "(√2 (r − g) − r) ÷ (√2 − 1): the panel's arc inside the cutter's", "rabbet.corner", "panel.edge_gap")
		corner.Radius = r.round(c.Radius, corner.Least)
	}
	leaf.Corner = corner
	if c.Leg != nil && kind != "clipped" {
		r.warn("panel.corner.leg", RuleCornerUnused, "a clip of %v is stated and the corners are %s: it is not used; leave it out, or choose clipped", *c.Leg, kind)
	}
	if c.Radius != nil && kind != "rounded" {
		r.warn("panel.corner.radius", RuleCornerUnused, "a radius of %v is stated and the corners are %s: it is not used; leave it out, or choose rounded", *c.Radius, kind)
	}
	r.outlines()
}

// LeastClip is the smallest leg of a 45° clip that lets a panel's corner into a
// rabbet corner of that radius with that edge gap: (r − g) − √(r² − (r − g)²),
// at least 0. It asks both ends of the clip to lie inside the arc.
func LeastClip(radius, gap length.Length) length.Length {
	r, in := radius.MM(), (radius - gap).MM()
	if in <= 0 || gap < 0 {
		return 0
	}
	if least := length.Round(in - math.Sqrt(float64(r*r)-float64(in*in))); least > 0 && !squareClears(r, gap.MM()) {
		return least
	}
	return 0
}

// LeastRadius is the smallest corner radius of a panel that clears a rabbet
// corner of that radius with that edge gap: (√2 (r − g) − r) ÷ (√2 − 1), at
// least 0.
func LeastRadius(radius, gap length.Length) length.Length {
	r, in := radius.MM(), (radius - gap).MM()
	return max(0, length.Round((float64(math.Sqrt2*in)-r)/(math.Sqrt2-1)))
}

// squareClears tells whether a square panel corner clears the arc: gap at
// least r (1 − 1/√2). All in millimetres.
func squareClears(r, gap float64) bool { return gap >= float64(r*(1-1/math.Sqrt2)) }

// clip resolves the clip's leg.
func (r *resolver) clip(stated *length.Length, least length.Length) length.Length {
	leaf := r.set.Leaf
	var leg length.Length
	if stated != nil {
		leg = r.given("corner.clip", "panel.corner.leg", *stated)
	} else {
		leg = r.derive("corner.clip", least.UpTo(cornerStep.in(r.units)), "smallest clip that clears, up to the next step", "corner.least_clip")
	}
	if leg < least {
		r.stop("panel.corner.leg", RuleCornerClip, "a clip of %v does not clear the cutter's corner of radius %v with an edge gap of %v; the smallest that does is %v", leg, leaf.Rabbet.Corner, leaf.Panel.EdgeGap, least.UpTo(r.tick))
	}
	if most := 2 * leaf.Panel.Bite; leg > most {
		r.stop("panel.corner", RuleCornerDaylight, "a clip of %v reaches past the shoulder: with a bite of %v daylight shows beyond %v; square the corners, take a smaller cutter or a wider rabbet", leg, leaf.Panel.Bite, most)
	}
	return leg
}

// round resolves the panel's corner radius.
func (r *resolver) round(stated *length.Length, least length.Length) length.Length {
	leaf := r.set.Leaf
	var radius length.Length
	if stated != nil {
		radius = r.given("corner.radius", "panel.corner.radius", *stated)
	} else {
		radius = r.derive("corner.radius", max(0, leaf.Rabbet.Corner-leaf.Panel.EdgeGap), "corner radius of the rabbet less the edge gap: the gap stays even", "rabbet.corner", "panel.edge_gap")
	}
	if radius < least {
		r.stop("panel.corner.radius", RuleCornerRadius, "a corner radius of %v does not clear the cutter's corner of radius %v with an edge gap of %v; the smallest that does is %v", radius, leaf.Rabbet.Corner, leaf.Panel.EdgeGap, least.UpTo(r.tick))
	}
	// A round corner lies inside the sight corner when its arc's middle does:
	// radius × (√2 − 1) ≤ √2 × bite.
	if most := length.Round(leaf.Panel.Bite.MM() * math.Sqrt2 / (math.Sqrt2 - 1)); radius > most {
		r.stop("panel.corner.radius", RuleCornerDaylight, "a corner radius of %v reaches past the shoulder: with a bite of %v daylight shows beyond %v; square the corners, take a smaller cutter or a wider rabbet", radius, leaf.Panel.Bite, most)
	}
	return radius
}

// outlines draws rabbet and panel of every lite.
func (r *resolver) outlines() {
	leaf := &r.set.Leaf
	for i := range leaf.Lites {
		lite := &leaf.Lites[i]
		wall, edge := lite.Sight.Grow(leaf.Rabbet.Width), lite.Sight.Grow(leaf.Panel.Bite)
		if edge.Width() <= 2*max(leaf.Corner.Leg, leaf.Corner.Radius) || edge.Height() <= 2*max(leaf.Corner.Leg, leaf.Corner.Radius) {
			r.stop("panel.corner", RuleCornerClip, "the corners of a panel %v by %v would meet: %v are taken off each", edge.Width(), edge.Height(), max(leaf.Corner.Leg, leaf.Corner.Radius))
			return
		}
		lite.Rabbet = plane.Region{wall.Path()}
		if leaf.Rabbet.Corner > 0 {
			lite.Rabbet = plane.Region{plane.RoundedRect(wall, leaf.Rabbet.Corner)}
		}
		switch {
		case leaf.Corner.Leg > 0:
			lite.Panel = plane.Region{plane.ClippedRect(edge, leaf.Corner.Leg)}
		case leaf.Corner.Radius > 0:
			lite.Panel = plane.Region{plane.RoundedRect(edge, leaf.Corner.Radius)}
		default:
			lite.Panel = plane.Region{edge.Path()}
		}
		r.derive(fmt.Sprintf("panel.%d.width", i+1), edge.Width(), "sight width plus two rabbet widths less two edge gaps", r.columnFigure(lite.Column), "rabbet.width", "panel.edge_gap")
		r.derive(fmt.Sprintf("panel.%d.height", i+1), edge.Height(), "sight height plus two rabbet widths less two edge gaps", rowFigure(lite.Row), "rabbet.width", "panel.edge_gap")
	}
}
