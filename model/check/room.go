package check

import (
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
)

// jambAt is where a jamb's line stands at a height, between its points straight.
func jambAt(line []plane.Point, z length.Length) length.Length {
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		if z > b.Y && i < len(line)-1 || a.Y == b.Y {
			continue
		}
		part := float64(z-a.Y) / float64(b.Y-a.Y)
		return a.X + length.Round(float64((b.X-a.X).MM()*part))
	}
	return line[0].X
}

// floor checks the gap below each leaf along its travel, and what its hangers
// can take up.
func (c *checker) floor() {
	var worst Clearance
	for _, gap := range c.report.Clearances {
		if strings.HasSuffix(gap.Name, "to the floor") && gap.Most > worst.Most {
			worst = gap
		}
	}
	most, err := catalog.Rule("floor-gap-carpet")
	if err == nil && worst.Most > most.Size {
		c.find(RuleFloorGap, "opening.height", "the floor falls: below %s the gap grows from %v to %v, %v from the opening's left; more than %v shows: level the floor, or lay a threshold",
			strings.TrimSuffix(worst.Name, " to the floor"), worst.Least, worst.Most, worst.MostAt, most.Size)
	}
	c.adjust()
}

// adjust checks that the hangers can hang each closed leaf along the floor.
func (c *checker) adjust() {
	t := c.set.Track
	for _, h := range c.set.Hung {
		rise := (c.set.Opening.FloorAt(h.At.X+t.HangerAt[0]) - c.set.Opening.FloorAt(h.At.X+t.HangerAt[1])).Abs()
		if rise > 2*t.Adjust {
			c.find(RuleHangerAdjust, "opening.height", "the floor rises %v between the hangers of leaf %s and they adjust by %v up and down, %v together: it cannot hang along the floor; the gap below it stays uneven", c.fine(rise), h.Label, c.fine(t.Adjust), c.fine(2*t.Adjust))
			return
		}
	}
}

// reveals checks that the outer leaves' reveals are even.
func (c *checker) reveals() {
	limit := c.in(unevenReveal)
	for _, gap := range c.report.Clearances {
		if uneven := gap.Most - gap.Least; strings.HasSuffix(gap.Name, "jamb, closed") && uneven > limit {
			c.find(RuleReveal, "opening.plumb", "%s: the reveal goes from %v to %v between floor and head; %v of unevenness is seen, more than %v: scribe a filler strip to the jamb", strings.TrimSuffix(gap.Name, ", closed"), gap.Least, gap.Most, uneven, limit)
		}
	}
}

// faces tells how far leaves may bow.
func (c *checker) faces() {
	front, back := proud(c.set.Leaf)
	free := c.set.Track.FaceGap - front - back
	each, warp := free.Half(), length.Length(0)
	if row, err := catalog.Rule("warp"); err == nil {
		warp = row.Size
	}
	c.find(RuleBow, "hanging.track", "each leaf may bow or twist by %v, half of the %v free between passing faces; a door as traded may by %v: choose straight boards and try each leaf on a flat floor", max(0, each), free, warp)
	if least := c.in(tightBow); each < least {
		c.find(RuleBowTight, "hanging.track", "only %v is free between passing faces, %v for the bow of each leaf; at least %v each is safe: a wider channel spacing, or nothing that stands proud", free, max(0, each), least)
	}
}

// frame checks the leaf's frame.
func (c *checker) frame() {
	leaf := c.set.Leaf
	if row, err := catalog.Rule("squareness"); err == nil {
		c.find(RuleSquareness, "leaf", "both diagonals of a leaf are %v; glued up they may differ by %v", diagonal(leaf.Width, leaf.Height), row.Size)
	}
	if row, err := catalog.Rule("intermediate-rail"); err == nil && leaf.Height > row.Size && leaf.Rows() < 2 {
		c.find(RuleCrossRail, "leaf.lites", "a leaf %v high has no cross rail; over %v it should have one: lites: {rows: 2}", leaf.Height, row.Size)
	}
	rab, lip := leaf.Rabbet, c.in(thinLip)
	for _, side := range []struct {
		wood length.Length
		word string
	}{{rab.Front, "in front of"}, {rab.Back, "behind"}} {
		if side.wood > 0 && side.wood < lip {
			c.find(RuleThinLip, "panel", "%v of wood is left %s the panel's seat; under %v it chips and splits easily: a thicker frame, or the panel further from that face", side.wood, side.word, lip)
		}
	}
}

// pulls checks what is left between the pulls' mortises and the panels' seats.
func (c *checker) pulls() {
	row, err := catalog.Rule("hardware-to-glass")
	if err != nil {
		return
	}
	leaf := c.set.Leaf
	for _, p := range leaf.Pulls {
		mortise := plane.BoxOf(p.Centre.Add(-p.Width.Half(), -p.Height.Half()), p.Centre.Add(p.Width.Half(), p.Height.Half()))
		for _, lite := range leaf.Lites {
			if left := between(mortise, lite.Sight.Grow(leaf.Rabbet.Width)); left < row.Size {
				c.find(RuleHardwareGlass, "leaf.pull", "the pull's mortise in %s is %v from the seat of a panel; at least %v should be left: a smaller pull, or one further out", p.Label, max(0, left), row.Size)
				return
			}
		}
	}
}

// between is the larger of the gaps of two boxes along X and Y; less than 0 when
// they lie over one another.
func between(a, b plane.Box) length.Length {
	return max(a.Min.X-b.Max.X, b.Min.X-a.Max.X, a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y)
}

// lift cautions about a leaf's mass.
func (c *checker) lift() {
	row, err := catalog.Rule("lift-alone")
	if err == nil && c.set.Leaf.Mass > row.Number {
		c.find(RuleLift, "leaf", "a leaf weighs %s; one person lifts at most %s, and less at arm's length: two people, or hang it unglazed", c.mass(c.set.Leaf.Mass), c.mass(row.Number))
	}
}

// blades tells whether a sheet breaks into blades: annealed glass.
func blades(panel door.Panel) bool {
	return panel.Material.Name == "float glass" || panel.Material.Name == "mirror"
}
