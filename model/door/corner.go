package door

import (
	"fmt"
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// The kinds of corners.
const (
	Clipped = "clipped"
	Squared = "squared"
	Rounded = "rounded"
	Dogbone = "dogbone"
	TBone   = "t-bone"
)

// The walls that a t-bone runs into.
const (
	intoStile = "stile"
	intoRail  = "rail"
)

// relieves tells whether a machine's tool makes room for a square panel corner.
func relieves(kind string) bool { return kind == Dogbone || kind == TBone }

// corner resolves the corner treatment.
func (r *resolver) corner() {
	c, leaf := r.model.Panel.Corner, &r.set.Leaf
	corner := leaf.Corner
	corner.Kind = r.cornerKind()
	if leaf.Rabbet.Kind != Groove && !relieves(corner.Kind) {
		leaf.Rabbet.Corner = r.derive("rabbet.corner", leaf.Rabbet.Cutter.Half(), "half the cutter's diameter: a guided cutter leaves its own radius", "rabbet.cutter")
	}
	radius := leaf.Rabbet.Corner
	gap, name := leaf.leastGap()
	switch {
	case leaf.Rabbet.Kind == Groove:
		corner = r.easedCorner(corner)
	case relieves(corner.Kind):
		corner = r.relief(corner)
	case corner.Kind == Squared:
		leaf.Rabbet.Corner = 0
	case corner.Kind == Rounded:
		corner.Least = r.derive("corner.least_radius", LeastRadius(radius, gap), "(√2 (r − g) − r) ÷ (√2 − 1): the panel's arc inside the cutter's", "rabbet.corner", name)
		corner.Radius = r.round(c.Radius, corner.Least)
	default:
		corner.Least = r.derive("corner.least_clip", LeastClip(radius, gap), "(r − g) − √(r² − (r − g)²): both ends of the clip inside the cutter's arc", "rabbet.corner", name)
		corner.Leg = r.clip(c.Leg, corner.Least)
	}
	leaf.Corner = corner
	r.cornerUnused(corner.Kind)
	r.outlines()
}

// cornerKind is the treatment as stated, or the default of seat and holder:
// mitred strips need square corners, a groove has none to treat.
func (r *resolver) cornerKind() string {
	stated, leaf := r.model.Panel.Corner.Kind, r.set.Leaf
	strips := leaf.HeldBy == heldByStop || leaf.HeldBy == heldByBead
	switch {
	case leaf.Rabbet.Kind == Groove && relieves(stated):
		r.stop("panel.corner", RuleRelief, "%s corners are milled in a rabbet; a groove %v deep has no corner to relieve: leave panel.corner out", stated, leaf.Rabbet.Width)
		return stated
	case leaf.Rabbet.Kind == Groove && stated == Squared:
		r.warn("panel.corner", RuleSeatUnused, "corners are to be squared and the panel stands in a groove %v deep, which has none: leave panel.corner out", leaf.Rabbet.Width)
		return ""
	case stated == "" && strips:
		return Squared
	case stated == "" && leaf.Rabbet.Kind != Groove:
		return defaultCorner
	case strips && (stated == Clipped || stated == Rounded):
		r.stop("panel.corner", RuleStripCorner, "mitred %ss need square inside corners; a cutter %v across leaves a radius of %v: square them, or have them relieved as dogbone", leaf.HeldBy, leaf.Rabbet.Cutter, leaf.Rabbet.Cutter.Half())
	}
	return stated
}

// easedCorner is the corner of a panel in a groove: square, or taken off so
// that it goes in past the glue.
func (r *resolver) easedCorner(corner Corner) Corner {
	c := r.model.Panel.Corner
	switch corner.Kind {
	case Clipped:
		corner.Leg = r.daylightLeg(r.sized("corner.clip", "panel.corner.leg", c.Leg, grooveCorner))
	case Rounded:
		corner.Radius = r.daylightRadius(r.sized("corner.radius", "panel.corner.radius", c.Radius, grooveCorner))
	}
	return corner
}

// relief resolves what a machine's tool takes beyond the walls.
func (r *resolver) relief(corner Corner) Corner {
	stile, rail := corner.bites()
	words := map[bool]string{true: "the tool's circle through the corner, its middle on the diagonal: radius × (1 − 1/√2) past both walls", false: "the tool runs past the corner by its radius"}[corner.Kind == Dogbone]
	r.derive("corner.past_stile_wall", stile, words, "corner.tool")
	r.derive("corner.past_rail_wall", rail, words, "corner.tool")
	if r.set.Leaf.Rabbet.Kind == FaceBead {
		r.warn("panel.corner", RuleRelief, "%s corners run %v past the walls of a rabbet that opens to the front: the beads do not cover them; square the corners, or seat the panel from the back", corner.Kind, max(stile, rail))
	}
	return corner
}

// across is how far the middle of a dogbone's circle stands from both walls:
// radius ÷ √2, so that the circle goes through the corner.
func (c Corner) across() length.Length {
	return length.Round(c.Tool.Half().MM() / math.Sqrt2)
}

// bites is how far the relief runs past the walls of stiles and muntins, and
// past those of rails.
func (c Corner) bites() (upright, level length.Length) {
	radius := c.Tool.Half()
	switch {
	case c.Kind == Dogbone:
		return radius - c.across(), radius - c.across()
	case c.Kind == TBone && c.Into == intoRail:
		return 0, radius
	case c.Kind == TBone:
		return radius, 0
	}
	return 0, 0
}

// runs is how far from the corner the relief opens the walls of stiles and
// muntins, and those of rails.
func (c Corner) runs() (upright, level length.Length) {
	switch {
	case c.Kind == Dogbone:
		return 2 * c.across(), 2 * c.across()
	case c.Kind == TBone && c.Into == intoRail:
		return 0, 2 * c.Tool.Half()
	case c.Kind == TBone:
		return 2 * c.Tool.Half(), 0
	}
	return 0, 0
}

// takes is how far the seat goes into an upright member from its edge, and into
// a level one: with what relieves the corners and, of a stopped groove, with
// the round ends of the grooves that pass the member's end.
func (l *Leaf) takes() (upright, level length.Length) {
	upright, level = l.Corner.bites()
	wide := l.Rabbet.Width + l.Rabbet.Ends
	return wide + upright, wide + level
}

// cornerUnused warns of sizes that belong to another treatment.
func (r *resolver) cornerUnused(kind string) {
	c := r.model.Panel.Corner
	are := kind
	if kind == "" {
		are = "square"
	}
	if c.Leg != nil && kind != Clipped {
		r.warn("panel.corner.leg", RuleCornerUnused, "a clip of %v is stated and the corners are %s: it is not used; leave it out, or choose clipped", *c.Leg, are)
	}
	if c.Radius != nil && kind != Rounded {
		r.warn("panel.corner.radius", RuleCornerUnused, "a radius of %v is stated and the corners are %s: it is not used; leave it out, or choose rounded", *c.Radius, are)
	}
	if c.Tool != nil && !relieves(kind) {
		r.warn("panel.corner.tool", RuleCornerUnused, "a tool %v across is stated and the corners are %s: it is not used; leave it out, or choose dogbone or t-bone", *c.Tool, are)
	}
	if c.Into != "" && kind != TBone {
		r.warn("panel.corner.into", RuleCornerUnused, "corners are to run into the %s and are %s: it is not used; leave it out, or choose t-bone", c.Into, are)
	}
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
		gap, _ := leaf.leastGap()
		r.stop("panel.corner.leg", RuleCornerClip, "a clip of %v does not clear the cutter's corner of radius %v with an edge gap of %v; the smallest that does is %v", leg, leaf.Rabbet.Corner, gap, least.UpTo(r.tick))
	}
	return r.daylightLeg(leg)
}

// remedy is what helps against daylight at a corner.
func (r *resolver) remedy() string {
	if r.set.Leaf.Rabbet.Kind == Groove {
		return "take less off, or make the groove deeper"
	}
	return "square the corners, take a smaller cutter or a wider rabbet"
}

// daylightLeg checks that a clip of that leg stays behind the shoulder.
func (r *resolver) daylightLeg(leg length.Length) length.Length {
	gap, _ := r.set.Leaf.mostGap()
	bite := r.set.Leaf.Rabbet.Width - gap
	if most := 2 * bite; leg > most {
		r.stop("panel.corner", RuleCornerDaylight, "a clip of %v reaches past the shoulder: with a bite of %v daylight shows beyond %v; %s", leg, bite, most, r.remedy())
	}
	return leg
}

// round resolves the panel's corner radius.
func (r *resolver) round(stated *length.Length, least length.Length) length.Length {
	leaf := r.set.Leaf
	gap, name := leaf.leastGap()
	var radius length.Length
	if stated != nil {
		radius = r.given("corner.radius", "panel.corner.radius", *stated)
	} else {
		radius = r.derive("corner.radius", max(0, leaf.Rabbet.Corner-gap), "corner radius of the rabbet less the edge gap: the gap stays even", "rabbet.corner", name)
	}
	if radius < least {
		r.stop("panel.corner.radius", RuleCornerRadius, "a corner radius of %v does not clear the cutter's corner of radius %v with an edge gap of %v; the smallest that does is %v", radius, leaf.Rabbet.Corner, gap, least.UpTo(r.tick))
	}
	return r.daylightRadius(radius)
}

// daylightRadius checks that a round corner stays behind the shoulder. It lies
// inside the sight corner when its arc's middle does: radius × (√2 − 1) ≤
// √2 × bite.
func (r *resolver) daylightRadius(radius length.Length) length.Length {
	gap, _ := r.set.Leaf.mostGap()
	bite := r.set.Leaf.Rabbet.Width - gap
	if most := length.Round(bite.MM() * math.Sqrt2 / (math.Sqrt2 - 1)); radius > most {
		r.stop("panel.corner.radius", RuleCornerDaylight, "a corner radius of %v reaches past the shoulder: with a bite of %v daylight shows beyond %v; %s", radius, bite, most, r.remedy())
	}
	return radius
}

// outlines draws seat and panel of every lite.
func (r *resolver) outlines() {
	leaf := &r.set.Leaf
	off := max(leaf.Corner.Leg, leaf.Corner.Radius)
	for i := range leaf.Lites {
		lite := &leaf.Lites[i]
		wall, edge := lite.Sight.Grow(leaf.Rabbet.Width), lite.Sight.Grow(leaf.PanelOf(*lite).Bite)
		if edge.Width() <= 2*off || edge.Height() <= 2*off {
			r.stop("panel.corner", RuleCornerClip, "the corners of a panel %v by %v would meet: %v are taken off each", edge.Width(), edge.Height(), off)
			return
		}
		lite.Rabbet = plane.Region{plane.RoundedRect(wall, leaf.Rabbet.Corner)}
		if relieves(leaf.Corner.Kind) {
			lite.Rabbet = plane.Region{leaf.Corner.relieved(wall)}
		}
		lite.Panel = plane.Region{edge.Path()}
		switch {
		case leaf.Corner.Leg > 0:
			lite.Panel = plane.Region{plane.ClippedRect(edge, leaf.Corner.Leg)}
		case leaf.Corner.Radius > 0:
			lite.Panel = plane.Region{plane.RoundedRect(edge, leaf.Corner.Radius)}
		}
		name := "panel"
		if lite.Solid {
			name = "solid"
		}
		r.derive(fmt.Sprintf("panel.%d.width", i+1), edge.Width(), "sight width plus two rabbet widths less two edge gaps", r.columnFigure(lite.Column), "rabbet.width", name+".edge_gap")
		r.derive(fmt.Sprintf("panel.%d.height", i+1), edge.Height(), "sight height plus two rabbet widths less two edge gaps", rowFigure(lite.Row), "rabbet.width", name+".edge_gap")
	}
}

// relieved is the outline of walls whose corners the tool runs through. A
// dogbone's circle meets both walls twice its middle's distance from the
// corner, half a turn apart; a t-bone's has its middle on the wall it runs into.
func (c Corner) relieved(wall plane.Box) plane.Path {
	d, radius := c.across(), c.Tool.Half()
	var path plane.Path
	corners := [...]plane.Point{wall.Min, plane.At(wall.Max.X, wall.Min.Y), wall.Max, plane.At(wall.Min.X, wall.Max.Y)}
	for i, at := range corners {
		sx, sy := length.Length(1), length.Length(1) // into the lite
		if at.X == wall.Max.X {
			sx = -1
		}
		if at.Y == wall.Max.Y {
			sy = -1
		}
		upright, level := at.Add(0, 2*sy*d), at.Add(2*sx*d, 0) // where the circle meets the walls
		centre := at.Add(sx*d, sy*d)
		if c.Kind == TBone {
			upright, level, centre = at.Add(0, 2*sy*radius), at, at.Add(0, sy*radius)
			if c.Into == intoRail {
				upright, level, centre = at, at.Add(2*sx*radius, 0), at.Add(sx*radius, 0)
			}
		}
		from, to := upright, level // the lower left and the upper right corner come down or up a wall
		if i%2 == 1 {
			from, to = level, upright
		}
		if len(path) > 0 {
			path = append(path, plane.Line(path[len(path)-1].To, from))
		}
		path = append(path, plane.Arc(from, to, centre, plane.Left))
	}
	return append(path, plane.Line(path[len(path)-1].To, path[0].From))
}
