package shop

import (
	"fmt"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/cutting"
	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/plane"
	"stilewright/model/spec"
)

// nestSteps is how many steps the search for a layout may take: a fraction of a
// second. What it gives away is seen in the bound of a cutting layout.
const nestSteps = 50_000

// nests lays the panels out on sheets, a file for each different sheet.
func (p *planner) nests() {
	type stock struct {
		material  string
		thickness length.Length
	}
	var order []stock
	groups := map[stock][]Work{}
	for _, w := range p.job.Works {
		if !w.Part.Sheet {
			continue
		}
		s := stock{w.Part.Material, w.Part.Thickness}
		if groups[s] == nil {
			order = append(order, s)
		}
		groups[s] = append(groups[s], w)
	}
	for _, s := range order {
		p.nest(groups[s])
	}
}

// nest lays out the panels of one material and thickness.
func (p *planner) nest(panels []Work) {
	o := p.job.Options
	kerf := o.Kerf
	sheet, turn := p.sheet(panels[0].Part.Material)
	job := cutting.SheetJob{
		Sheets: []cutting.Sheet{{Name: "sheet", Width: sheet.Width, Height: sheet.Height}},
		Kerf:   o.Spacing, Trim: o.Spacing, Budget: nestSteps,
	}
	for _, w := range panels {
		job.Pieces = append(job.Pieces, cutting.Piece{
			Label: w.Part.Labels[0], Width: w.Setup.Width + kerf, Height: w.Setup.Height + kerf,
			Quantity: w.Part.Quantity, Turn: turn,
		})
	}
	layout, err := cutting.LayOutSheets(job)
	if err != nil {
		write := o.Profile.Tool.Write
		p.find("shop.sheet", RuleNest, spec.Warning, "the %s panels are not nested on sheets of %s × %s with %s between them: %s",
			panels[0].Part.Material, write(sheet.Width), write(sheet.Height), write(o.Spacing), strings.ReplaceAll(err.Error(), "\n", "; "))
		return
	}
	for i, pattern := range layout.Patterns {
		p.add(p.nested(panels, pattern, i+1, len(layout.Patterns)))
	}
}

// sheet is the sheet as it lies, and whether panels may lie either way on it.
// Where the grain runs across the panels the sheet lies on its long side.
func (p *planner) sheet(material string) (size machining.Size, turn bool) {
	size = p.job.Options.Profile.Sheet
	switch p.model.Stock.Sheet.Grain {
	case "none":
		return size, true
	case "across":
		return machining.Size{Width: size.Height, Height: size.Width}, false
	case "up":
		return size, false
	}
	m, err := catalog.Sheet(material)
	return size, err == nil && m.Movement == 0 // wood has a grain
}

// nested is one sheet with its panels.
func (p *planner) nested(panels []Work, pattern cutting.SheetPattern, n, of int) Work {
	o := p.job.Options
	first := panels[0].Part
	sheet, _ := p.sheet(first.Material)
	s := machining.Setup{Face: machining.Front, Width: sheet.Width, Height: sheet.Height, Thickness: first.Thickness}
	s.Contours = append(s.Contours, machining.Contour{Operation: machining.Blank, Path: plane.Rect(plane.Point{}, plane.At(sheet.Width, sheet.Height))})
	count := make([]int, len(panels))
	var place func(r *cutting.Region)
	place = func(r *cutting.Region) {
		switch {
		case r == nil:
		case r.Kind == cutting.CutRegion:
			place(r.Low)
			place(r.High)
		case r.Kind == cutting.PieceRegion:
			count[r.Piece]++
			s.Contours = append(s.Contours, lain(panels[r.Piece].Setup, *r, o.Kerf)...)
		}
	}
	place(pattern.Root)
	var holds []string
	for i, w := range panels {
		if count[i] > 0 {
			holds = append(holds, fmt.Sprintf("%d × %s", count[i], w.Part.Labels[0]))
		}
	}
	notes := append([]string{fmt.Sprintf("sheet %d of %d; instead of the single panels' files", n, of)}, first.Notes...)
	part := Part{
		Labels: []string{fmt.Sprintf("NEST%d-%s", n, slug(first.Material, longestJob))}, Name: "nested panels, " + strings.Join(holds, ", "),
		Material: first.Material, Thickness: first.Thickness, Quantity: pattern.Times, Sheet: true, Instead: true,
		Notes: notes,
	}
	return Work{Part: part, Setup: s}
}

// lain are a panel's contours where it lies on the sheet, with half the kerf
// left free on each side.
func lain(panel machining.Setup, r cutting.Region, kerf length.Length) []machining.Contour {
	var contours []machining.Contour
	for _, c := range panel.Contours {
		c.Path = c.Path.Map(func(q plane.Point) plane.Point {
			if r.Turned {
				q = plane.At(panel.Height-q.Y, q.X)
			}
			return q.Add(r.X+kerf.Half(), r.Y+kerf.Half())
		}, false)
		contours = append(contours, c)
	}
	return contours
}
