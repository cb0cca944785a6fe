package check

import (
	"fmt"
	"math"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
)

// diagonal is the diagonal of a rectangle.
func diagonal(w, h length.Length) length.Length {
	return length.Round(math.Sqrt(float64(w.MM()*w.MM()) + float64(h.MM()*h.MM())))
}

// A pane is the largest panel of one kind of sheet.
type pane struct {
	door.Panel
	path       string
	wide, high length.Length
	area       float64       // mm²
	low        length.Length // of its sight above the floor, the lowest of all
}

// panes are the largest panels of the leaf's sheets.
func (c *checker) panes() []pane {
	leaf := c.set.Leaf
	all := []pane{{Panel: leaf.Panel, path: "panel.material"}}
	if leaf.SolidPanel != nil {
		all = append(all, pane{Panel: *leaf.SolidPanel, path: "panel.solid.material"})
	}
	for i := range all {
		p, first := &all[i], true
		for _, lite := range leaf.Lites {
			if lite.Solid != (i == 1) {
				continue
			}
			box := lite.Panel.Bounds()
			if area := box.Width().MM() * box.Height().MM(); area > p.area {
				p.wide, p.high, p.area = box.Width(), box.Height(), area
			}
			if low := c.set.Hung[0].At.Z + lite.Sight.Min.Y; first || low < p.low {
				p.low, first = low, false
			}
		}
	}
	return all
}

// areaOf is an area in the set's units.
func (c *checker) areaOf(mm2 float64) string {
	if c.set.Units == length.Inches {
		return fmt.Sprintf("%.1f ft²", mm2/1e6/catalog.SquareFoot)
	}
	return fmt.Sprintf("%.2f m²", mm2/1e6)
}

// glazing tells what rules on glass and clear plastics in doors ask. None of it
// is advice on the law.
func (c *checker) glazing() {
	for _, p := range c.panes() {
		if !p.Material.Clear && p.Material.Name != "mirror" || p.area == 0 {
			continue
		}
		class := map[int]string{1: "I", 2: "II"}[catalog.ImpactCategory(p.area)]
		mark := "each piece with its maker's permanent mark"
		if p.Material.Plastic {
			mark = "a plastic sheet without that mark is no proof of it"
		}
		c.find(RuleSafetyGlazing, p.path, "the largest piece of %s is %v by %v, %s: by US rules doors with pieces up to 9 ft² (0.84 m²) need safety glazing of category I, larger ones II, so %s here; %s: ask the local authority", p.Material.Name, p.wide, p.high, c.areaOf(p.area), class, mark)
		c.critical(p)
		if blades(p.Panel) {
			c.find(RuleGlassBreaks, p.path, "%s of %s, %v from the floor, breaks into blades; in doors it is not allowed in most places: take tempered or laminated glass and ask the local authority", c.areaOf(p.area), p.Material.Name, p.low)
		}
	}
}

// critical tells of the zone near the floor by the rules of England.
func (c *checker) critical(p pane) {
	zone, err := catalog.Glazing("uk-critical-height")
	wide, err2 := catalog.Glazing("uk-wide-pane")
	if err != nil || err2 != nil || p.low >= zone.Size {
		return
	}
	class := "3"
	if p.wide > wide.Size {
		class = "2"
	}
	c.find(RuleCriticalZone, p.path, "glazing begins %v above the floor; by English rules doors are critical below %v, where panes break safely: up to %v wide by class 3 of EN 12600, so class %s for %v here: ask the local authority", p.low, zone.Size, wide.Size, class, p.wide)
}

// sheets checks acrylic's thickness against its area.
func (c *checker) sheets() {
	for _, p := range c.panes() {
		if p.Material.Name != "acrylic" {
			continue
		}
		rows := catalog.SheetThicknesses()
		least := rows[len(rows)-1]
		for i := len(rows) - 1; i >= 0; i-- {
			if p.area <= rows[i].UpTo {
				least = rows[i]
			}
		}
		if p.Thickness < least.Thickness {
			c.find(RuleSheetThin, p.path, "acrylic of %s is %v thick; up to %s it should be at least %v", c.areaOf(p.area), p.Thickness, c.areaOf(least.UpTo), least.Thickness)
		}
	}
}
