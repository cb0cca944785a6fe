package shop

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/cutting"
	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
)

// nestSteps is how many steps the search for a layout may take: a fraction of a
// second. What it gives away is seen in the bound of a cutting layout.
const nestSteps = 50_000

// nests lays the panels out on sheets, a file for each different sheet. Those
// ordered to size are not cut from any.
func (p *planner) nests() {
	type stock struct {
		material  string
		thickness length.Length
	}
	var order []stock
	groups := map[stock][]Work{}
	for _, w := range p.job.Works {
		if !w.Part.Sheet || w.Part.Order {
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

// sheets are the sheets a part is cut from; false where the takeoff has none.
func (p *planner) sheets(part Part) (takeoff.SheetPlan, bool) {
	material, err := catalog.Sheet(part.Material)
	if err != nil || !part.Sheet {
		return takeoff.SheetPlan{}, false
	}
	i := slices.IndexFunc(p.taken.Sheets, func(s takeoff.SheetPlan) bool {
		return s.Material.Name == material.Name && s.Thickness == part.Thickness
	})
	if i < 0 {
		return takeoff.SheetPlan{}, false
	}
	return p.taken.Sheets[i], true
}

// ordered marks a part that is ordered cut to size, and notes why.
func (p *planner) ordered(part Part) Part {
	if plan, found := p.sheets(part); found && plan.ToSize {
		part.Order = true
		part.Notes = append(slices.Clone(part.Notes), "order drawing, not for cutting here: ordered to size, "+plan.Why)
	}
	return part
}

// nest lays out the panels of one material and thickness on the sheets that are
// bought for them; where these do not hold them it takes what else is to be had
// and says so.
func (p *planner) nest(panels []Work) {
	part, o := panels[0].Part, p.job.Options
	plan, found := p.sheets(part)
	if !found {
		p.find("stock.sheet", RuleNest, spec.Warning, "the %s panels are not nested: the lists name 0 sheets to cut them from; mend what stops the lists first", part.Material)
		return
	}
	job := cutting.SheetJob{Kerf: o.Spacing, Trim: o.Spacing, Budget: nestSteps, Sheets: bought(plan), Pieces: nestedPieces(panels, plan.Grain, o.Kerf)}
	layout, err := cutting.LayOutSheets(job)
	if err != nil {
		job.Sheets = lying(plan.Job.Sheets, plan.Grain)
		layout, err = cutting.LayOutSheets(job)
	}
	if err != nil {
		p.find("shop.spacing", RuleNest, spec.Warning, "the %s panels are not nested with %s between them: %s",
			part.Material, o.Profile.Tool.Write(o.Spacing), strings.ReplaceAll(err.Error(), "\n", "; "))
		return
	}
	p.compare(plan, part.Material, job.Sheets, layout.Used)
	var works []Work
	for i, pattern := range layout.Patterns {
		works = append(works, p.nested(panels, pattern, job.Sheets[pattern.Sheet], i+1, len(layout.Patterns)))
	}
	p.addNests(works)
}

// addNests adds the sheets, if the table holds them all: the panels' own files
// do without.
func (p *planner) addNests(works []Work) {
	o := p.job.Options
	write, table := o.Profile.Tool.Write, o.Profile.Machine
	for _, w := range works {
		if slices.ContainsFunc(w.Setup.Lint(o.Profile, true), func(f machining.Fault) bool { return f.Rule == machining.RuleMachine }) {
			p.find("shop.machine", RuleNest, spec.Warning, "the %s panels are not nested: they are cut from sheets of %s × %s, and the machine's table holds %s × %s; state smaller sheets under shop.sheet, and they are bought",
				w.Part.Material, write(w.Setup.Width), write(w.Setup.Height), write(table.Width), write(table.Height))
			return
		}
	}
	for _, w := range works {
		p.add(w)
	}
}

// compare says where nests take other sheets than the lists buy.
func (p *planner) compare(plan takeoff.SheetPlan, material string, nests []cutting.Sheet, used []int) {
	write := p.job.Options.Profile.Tool.Write
	if takes, buys := counted(nests, used), counted(plan.Job.Sheets, plan.Layout.Used); takes != buys {
		p.find("shop.spacing", RuleNest, spec.Warning, "nested with %s between them the %s panels take %s; the lists saw them with %s from %s: buy what the nests take, or have them sawn",
			write(p.job.Options.Spacing), material, takes, write(plan.Job.Kerf), buys)
	}
}

// counted are sheets in words, by name.
func counted(sheets []cutting.Sheet, used []int) string {
	var said []string
	for i, n := range used {
		if n > 0 {
			said = append(said, fmt.Sprintf("%d × %s", n, sheets[i].Name))
		}
	}
	slices.Sort(said)
	return strings.Join(said, " and ")
}

// bought are the sheets a plan takes, as they lie, no more than it takes.
func bought(plan takeoff.SheetPlan) []cutting.Sheet {
	var sheets []cutting.Sheet
	for i, used := range plan.Layout.Used {
		if used > 0 {
			s := plan.Job.Sheets[i]
			s.Available = used
			sheets = append(sheets, s)
		}
	}
	return lying(sheets, plan.Grain)
}

// lying are sheets as they lie: on their long side where the grain runs across
// the panels.
func lying(sheets []cutting.Sheet, grain string) []cutting.Sheet {
	sheets = slices.Clone(sheets)
	for i, s := range sheets {
		if grain == "across" {
			sheets[i].Width, sheets[i].Height = s.Height, s.Width
		}
	}
	return sheets
}

// nestedPieces are the panels with half the kerf all round.
func nestedPieces(panels []Work, grain string, kerf length.Length) []cutting.Piece {
	var pieces []cutting.Piece
	for _, w := range panels {
		pieces = append(pieces, cutting.Piece{
			Label: w.Part.Labels[0], Width: w.Setup.Width + kerf, Height: w.Setup.Height + kerf,
			Quantity: w.Part.Quantity, Turn: grain == "none",
		})
	}
	return pieces
}

// nested is one sheet with its panels.
func (p *planner) nested(panels []Work, pattern cutting.SheetPattern, sheet cutting.Sheet, n, of int) Work {
	o := p.job.Options
	first := panels[0].Part
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
	notes := append([]string{fmt.Sprintf("layout %d of %d: %d × %s; instead of the single panels' files", n, of, pattern.Times, sheet.Name)}, first.Notes...)
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
