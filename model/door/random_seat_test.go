package door_test

import "fmt"

// panel states sheet, seat and what holds the panels: mostly edge washers in a
// rabbet from the back.
func (c *chance) panel(thick float64) {
	c.set("panel.material", []string{"acrylic", "polycarbonate", "float glass", "plywood"}[c.IntN(4)])
	c.set("panel.thickness", c.between(1.5, 5))
	c.size(60, "panel.edge_gap", 0.5, 2.5)
	c.word(20, "panel.film", "front", "back")
	if c.odds(25) && c.rows > 1 {
		c.set("panel.solid.rows", fmt.Sprintf("[%d]", 1+c.IntN(c.rows)))
		c.set("panel.solid.material", "plywood")
		c.set("panel.solid.thickness", c.between(1.5, 7))
		c.size(50, "panel.solid.edge_gap", 0.5, 2)
	}
	switch n := c.IntN(100); {
	case n < 15:
		c.groove(thick)
	case n < 30:
		c.set("panel.seat", "face-bead")
		c.rabbet(thick)
		c.strips("bead")
	case n < 42:
		c.rabbet(thick)
		c.strips("stop")
	case n < 50:
		c.rabbet(thick)
		c.corner("clipped", "squared", "rounded")
		c.set("panel.held_by.kind", "sealant")
		c.size(60, "panel.held_by.bed", 1, 4)
	default:
		c.rabbet(thick)
		c.corner("clipped", "squared", "rounded")
		c.washers(thick)
	}
}

// rabbet states its sizes, and sometimes where the panel is to lie.
func (c *chance) rabbet(thick float64) {
	c.wide = 9 + 5*c.Float64()
	c.size(60, "panel.rabbet.width", c.wide, c.wide+1)
	c.size(20, "panel.rabbet.per_pass", 2, 12)
	switch c.IntN(6) {
	case 0, 1:
		c.size(100, "panel.rabbet.depth", thick-13, thick-6)
	case 2:
		c.word(50, "panel.rabbet.seat", "front")
		c.size(100, "panel.rabbet.front", 6, thick-16)
	case 3:
		c.word(50, "panel.rabbet.seat", "back")
		c.size(100, "panel.rabbet.back", 6, thick-16)
	case 4:
		c.set("panel.rabbet.seat", "centred")
	}
}

// corner states a treatment, that of a machine's tool among them; else the
// cutter's size.
func (c *chance) corner(kinds ...string) {
	if c.odds(25) {
		kind := []string{"dogbone", "t-bone"}[c.IntN(2)]
		c.set("panel.corner.kind", kind)
		c.size(50, "panel.corner.tool", 4, 12)
		if kind == "t-bone" {
			c.word(60, "panel.corner.into", "stile", "rail")
		}
		return
	}
	c.word(80, "panel.corner.kind", kinds...)
	c.size(60, "panel.rabbet.cutter", 2*c.wide+6, 2*c.wide+22)
}

func (c *chance) groove(thick float64) {
	c.set("panel.seat", "groove")
	c.size(60, "panel.groove.depth", 9, 14)
	c.size(40, "panel.groove.room", 0, 1)
	c.size(20, "panel.groove.front", thick/2-4, thick/2)
	c.word(50, "panel.groove.run", "through", "stopped")
	c.size(20, "panel.rabbet.per_pass", 2, 12)
	switch c.IntN(4) {
	case 0:
		c.set("panel.corner.kind", "clipped")
		c.size(50, "panel.corner.leg", 3, 8)
	case 1:
		c.set("panel.corner.kind", "rounded")
		c.size(50, "panel.corner.radius", 3, 8)
	}
}

// strips states stops or beads, and what fixes them.
func (c *chance) strips(kind string) {
	c.corner("squared")
	c.set("panel.held_by.kind", kind)
	c.size(20, "panel.held_by.stop.width", 8, 15)
	c.size(30, "panel.held_by.stop.depth", 7, 14)
	c.size(40, "panel.held_by.stop.spacing", 40, 300)
	c.size(20, "panel.held_by.bed", 1, 2)
	if c.odds(50) {
		c.set("panel.held_by.stop.fix", "screws")
		c.size(40, "panel.held_by.screw.length", 20, 26)
		c.word(70, "panel.held_by.screw.gauge", "2", "3", "4")
		return
	}
	c.word(50, "panel.held_by.stop.fix", "pins")
	c.size(40, "panel.held_by.stop.pin", 20, 30)
}

func (c *chance) washers(thick float64) {
	c.set("panel.held_by.kind", "edge-washer")
	c.size(60, "panel.held_by.washer.outside", 5, min(12, thick/2-3))
	c.size(20, "panel.held_by.washer.thickness", 4, 7)
	c.size(20, "panel.held_by.press", 0.5, 1)
	c.size(10, "panel.held_by.bed", 1, 2)
	c.size(30, "panel.held_by.spacing", 60, 400)
	c.size(20, "panel.held_by.screw.length", 12, 34)
	c.word(20, "panel.held_by.screw.gauge", "4", "5", "8")
	c.word(30, "panel.held_by.stagger", "yes", "no")
}
