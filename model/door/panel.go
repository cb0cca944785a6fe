package door

import (
	"slices"

	"stilewright/model/catalog"
	"stilewright/model/length"
)

// solidRows resolves which lites the solid panel fills, and its thickness.
func (r *resolver) solidRows() {
	p, leaf := r.model.Panel.Solid, &r.set.Leaf
	if p == nil {
		return
	}
	leaf.SolidPanel = &Panel{Material: leaf.Panel.Material, Thickness: r.given("solid.thickness", "panel.solid.thickness", *p.Thickness)}
	rows := leaf.Rows()
	if rows < 1 {
		return // frame has said so
	}
	for _, row := range p.Rows {
		if row > rows {
			r.stop("panel.solid.rows", RuleSolidRows, "row %d is to have the solid panel; the leaf has %d, counted from the bottom", row, rows)
			return
		}
	}
	glazed := false
	for i := range leaf.Lites {
		leaf.Lites[i].Solid = slices.Contains(p.Rows, leaf.Lites[i].Row+1)
		glazed = glazed || !leaf.Lites[i].Solid
	}
	if !glazed {
		r.stop("panel.solid.rows", RuleSolidRows, "all %d rows are to have the solid panel, and no lite is left for panel.material: make that the solid panel's, and leave panel.solid out", rows)
	}
}

// panel resolves edge gap and bite of every sheet.
func (r *resolver) panel() {
	p, leaf := r.model.Panel, &r.set.Leaf
	r.sheetEdge(&leaf.Panel, "panel", "panel.edge_gap", p.EdgeGap)
	if leaf.SolidPanel != nil {
		r.sheetEdge(leaf.SolidPanel, "solid", "panel.solid.edge_gap", p.Solid.EdgeGap)
	}
}

// sheetEdge resolves one sheet's edge gap and bite.
func (r *resolver) sheetEdge(panel *Panel, name, path string, stated *length.Length) {
	sheet, width := panel.Material, r.set.Leaf.Rabbet.Width
	if stated != nil {
		panel.EdgeGap = r.given(name+".edge_gap", path, *stated)
	} else {
		panel.EdgeGap = r.edgeGap(sheet, name)
	}
	gap := panel.EdgeGap
	panel.Bite = r.derive(name+".bite", width-gap, "rabbet width less edge gap", "rabbet.width", name+".edge_gap")
	panel.LeastBite = r.derive(name+".least_bite", width-2*gap, "rabbet width less twice the edge gap: panel pushed to one side", "rabbet.width", name+".edge_gap")
	lies := "on a shoulder %v wide"
	if r.set.Leaf.Rabbet.Kind == Groove {
		lies = "in a groove %v deep"
	}
	switch least := sheet.LeastBite; {
	case panel.LeastBite <= 0:
		r.stop(path, RuleBite, "pushed to one side the panel keeps %v "+lies+" with an edge gap of %v: it falls out; the gap must be under %v", panel.LeastBite, width, gap, width.Half())
	case panel.LeastBite < least:
		r.warn(path, RuleBite, "pushed to one side the panel keeps a bite of %v; %v wants %v", panel.LeastBite, sheet.Name, least)
	}
}

// edgeGap is the working clearance and half of what the sheet's longest side
// moves, up to the next step.
func (r *resolver) edgeGap(sheet catalog.SheetMaterial, name string) length.Length {
	var span length.Length
	for _, lite := range r.set.Leaf.Lites {
		if lite.Solid == (name == "solid") {
			span = max(span, lite.Sight.Width(), lite.Sight.Height())
		}
	}
	span += 2 * r.set.Leaf.Rabbet.Width
	r.derive(name+".longest", span, "longest lite side plus the rabbet on both sides", r.columnFigure(0), "rabbet.width")
	clear := r.assume(name+".clearance", sheet.Clearance, "working clearance at each edge", sheet.House.String())
	moves := sheet.Warms(0, indoorKelvin) + sheet.Swells(humidityDry, humidityMoist)
	move := r.derive(name+".movement", length.Round(float64(span.MM()*moves)), "longest side × (expansion × warming + swelling): "+indoorReason+"; "+sheet.Source.String(), name+".longest")
	return r.derive(name+".edge_gap", (clear + move.Half()).UpTo(edgeGapStep.in(r.units)), "working clearance plus half the movement, up to the next step", name+".clearance", name+".movement")
}

// leastGap and mostGap are the smallest and the largest edge gap of the leaf's
// panels, and the names of their figures.
func (l *Leaf) leastGap() (length.Length, string) {
	if l.SolidPanel != nil && l.SolidPanel.EdgeGap < l.Panel.EdgeGap {
		return l.SolidPanel.EdgeGap, "solid.edge_gap"
	}
	return l.Panel.EdgeGap, "panel.edge_gap"
}

func (l *Leaf) mostGap() (length.Length, string) {
	if l.SolidPanel != nil && l.SolidPanel.EdgeGap > l.Panel.EdgeGap {
		return l.SolidPanel.EdgeGap, "solid.edge_gap"
	}
	return l.Panel.EdgeGap, "panel.edge_gap"
}
