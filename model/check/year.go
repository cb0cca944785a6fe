package check

import (
	"strings"

	"stilewright/model/bending"
	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/movement"
	"stilewright/model/tolerance"
)

// seasons checks every clearance in winter and summer.
func (c *checker) seasons() {
	table, err := movement.Of(c.model, c.set)
	if err != nil {
		return // no air that a model's limits allow
	}
	c.report.Seasons = table
	for _, row := range table.Rows {
		if least, when := row.Least(); row.Clear && least <= 0 && row.At[movement.Hung] > 0 {
			c.find(RuleSeason, row.Path, "the %s is %v when hung and %v in %v (%v; %s): %s; make it larger by %v", row.Name, c.fine(row.At[movement.Hung]), c.fine(least), when, table.Airs[when], row.How, row.Gone, (-least).UpTo(c.in(step))+c.in(step))
		}
	}
	for _, when := range movement.Times() {
		if air := table.Airs[when]; catalog.CheckMoisture(air.Moisture) != nil {
			c.find(RuleSeasonMoisture, "seasons."+when.String(), "%v wood settles at %.1f %% moisture (%.0f °C, %.0f %% humidity); movement is worked out for %.0f to %.0f %%, and is off by about a twentieth beyond", when, air.Moisture, air.Celsius, air.Humidity, catalog.LeastMoisture, catalog.MostMoisture)
		}
	}
}

// tolerances checks clearances against what they may come out off by. Least bite
// and lap are those of a panel pushed aside, which likely errors need not
// survive as well.
func (c *checker) tolerances() {
	c.report.Tolerances = tolerance.Of(c.set)
	for _, s := range c.report.Tolerances {
		likely, worst, most := s.Likely(), s.Worst(), s.Dominant()
		switch {
		case s.Nominal <= 0:
		case likely >= s.Nominal && !strings.Contains(s.Name, "least"):
			c.find(RuleToleranceLikely, s.Path, "the %s is %v and likely to come out off by %v; most of that is the %s, ± %v: measure and fit that, or make it wider", s.Name, c.fine(s.Nominal), c.fine(likely), most.Name, c.fine(most.Off))
		case worst >= s.Nominal:
			c.find(RuleToleranceWorst, s.Path, "the %s is %v; likely it comes out off by %v, at worst by %v, and is gone; most of that is the %s, ± %v", s.Name, c.fine(s.Nominal), c.fine(likely), c.fine(worst), most.Name, c.fine(most.Off))
		}
	}
}

// hung checks what hangs and what it hangs on.
func (c *checker) hung() {
	h := c.report.Hanging
	s := h.Track
	switch {
	case s.Held <= 0:
		c.find(RuleTrackScrew, "hanging.fixing.screw.length", "the track's screws are %v long and go through %v of track and lining: they do not reach the framing", s.Length, s.Through)
	case s.Factor() < 1:
		c.find(RuleTrackScrew, "hanging.fixing.screw.length", "a track screw may bear %s by NDS, with %v of thread in %s, and a leaf weighs %s: longer screws, or the next gauge", c.force(s.Holds), s.Held, s.Wood, c.force(s.Most))
	}
	if g := h.Header; g != nil && g.Sag > g.Most {
		c.find(RuleHeaderSag, "hanging.header", "with all leaves at its middle, %s, a header %v by %v over %v sags %v; at most %v keeps the doors running: a higher one", c.force(g.Load), g.Height, g.Thickness, g.Span, g.Sag, g.Most)
	}
	if r := h.Rail; r.Strength > 0 && r.Stress > 0 && r.Factor() < leastRailFactor {
		c.find(RuleRailStress, "leaf.rail.top", "the top rail bears %s at %v from its joints and is bent to %s; clear wood breaks at %s, %.1f times that, and %d is safe: a wider top rail, or hangers nearer to the sides", c.force(r.Joint), r.Arm, c.stress(r.Stress), c.stress(r.Strength), r.Factor(), leastRailFactor)
	}
	c.reserve()
	c.find(RuleHungLoad, "hanging", "a leaf with its hardware weighs %s: its hangers bear %s and %s, a top joint %s, a track screw at most %s, %.1f times which it may by NDS", c.mass(h.Load.Mass), c.force(h.Load.Hanger[0]), c.force(h.Load.Hanger[1]), c.force(h.Rail.Joint), c.force(s.Most), s.Factor())
}

// reserve tells when hangers are near their rating; above it door warns.
func (c *checker) reserve() {
	row, err := catalog.Track(c.set.Track.Row)
	rule, err2 := catalog.Rule("hanger-reserve")
	mass := c.set.Leaf.Mass
	if err == nil && err2 == nil && mass <= row.Rated && mass*rule.Number > row.Rated {
		c.find(RuleHangerReserve, "hanging.track", "a leaf weighs %s; its hangers should be rated for %.2f times that, %s, and a typical %s track is for %s", c.mass(mass), rule.Number, c.mass(mass*rule.Number), row.Name, c.mass(row.Rated))
	}
}

// pushed checks panels under a hand's push.
func (c *checker) pushed() {
	pushes, err := bending.Of(c.set)
	if err != nil {
		return // no panel has sides of 0
	}
	for _, p := range pushes {
		if p.DrawsIn >= p.Holds && p.Holds > length.Length(0) {
			path := "panel.thickness"
			if p.Solid {
				path = "panel.solid.thickness"
			}
			c.find(RulePush, path, "pushed at its middle with %s, the panel of %v by %v bends %v and its edges draw in by %v together; pushed to one side, the %s is %v: a thicker sheet, or smaller lites", c.force(p.Force), p.Wide, p.High, c.fine(p.Deflection), c.fine(p.DrawsIn), p.By, c.fine(p.Holds))
		}
	}
}
