package takeoff

import (
	"fmt"
	"slices"

	"stilewright/model/catalog"
	"stilewright/model/cutting"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// A SheetPlan is the sheets of one material and thickness, and how they are
// cut. One without sheets is ordered cut to size.
type SheetPlan struct {
	Material  catalog.SheetMaterial
	Thickness length.Length
	ToSize    bool   // ordered cut: Job and Layout are empty
	Why       string // it is
	Grain     string // "up", "across", "none"
	Job       cutting.SheetJob
	Layout    cutting.SheetLayout
	Parts     []int // indices into the Takeoff's Parts, one for each of the Job's Pieces
}

// sheets lays all panels out on sheets.
func (t *taker) sheets() {
	for job := range t.jobs {
		t.named = append(t.named, t.namedSheets(job))
	}
	for i, p := range t.out.Parts {
		if p.Kind != Sheeted {
			continue
		}
		material, err := catalog.Sheet(p.Material)
		if err != nil {
			t.find(p.Job, spec.Stops, "panel.material", RuleStock, "%v", err)
			continue
		}
		at := slices.IndexFunc(t.out.Sheets, func(s SheetPlan) bool { return s.Material.Name == material.Name && s.Thickness == p.Net.Thickness })
		if at < 0 {
			at = len(t.out.Sheets)
			t.out.Sheets = append(t.out.Sheets, SheetPlan{Material: material, Thickness: p.Net.Thickness})
		}
		t.out.Sheets[at].Parts = append(t.out.Sheets[at].Parts, i)
	}
	for i := range t.out.Sheets {
		t.layOutSheets(&t.out.Sheets[i])
	}
}

// layOutSheets lays out one material's panels, or says that they are ordered to
// size.
func (t *taker) layOutSheets(plan *SheetPlan) {
	first := t.out.Parts[plan.Parts[0]].Job
	stock := t.jobs[first].Model.Stock.Sheet
	stated := len(stock.Sizes) > 0
	switch {
	case plan.Material.Name == "tempered glass":
		plan.ToSize, plan.Why = true, "it cannot be cut after tempering"
		if stated {
			t.find(first, spec.Warning, "stock.sheet.sizes", RuleTempered, "%d sheet sizes are named and the %d panels of tempered glass cannot be cut from any: they are ordered to size", len(stock.Sizes), t.count(plan.Parts))
		}
		return
	case !stated && !plan.Material.Plastic && plan.Material.Movement == 0:
		plan.ToSize, plan.Why = true, "glass is commonly bought cut; name sheets under stock.sheet.sizes to cut it"
		return
	}
	t.sheetSaw(first, plan)
	t.offerSheets(plan)
	t.pieces(plan)
	if !t.largeEnough(plan, len(t.named[first]) > 0) {
		return
	}
	layout, err := cutting.LayOutSheets(plan.Job)
	if err != nil {
		t.faults(first, err, map[cutting.Rule]string{cutting.RuleKerf: "stock.sheet.kerf", cutting.RuleTrim: "stock.sheet.trim"}, "stock.sheet")
		return
	}
	plan.Layout = layout
}

// count is the quantity of parts.
func (t *taker) count(parts []int) int {
	n := 0
	for _, i := range parts {
		n += t.out.Parts[i].Quantity
	}
	return n
}

// sheetSaw is kerf, trim and grain: the widest of the jobs.
func (t *taker) sheetSaw(first int, plan *SheetPlan) {
	for _, i := range plan.Parts {
		job := t.out.Parts[i].Job
		m := t.jobs[job].Model.Stock.Sheet
		plan.Job.Kerf = max(plan.Job.Kerf, t.size(job, "stock.sheet.kerf", m.Kerf, sheetKerf))
		plan.Job.Trim = max(plan.Job.Trim, t.size(job, "stock.sheet.trim", m.Trim, sheetTrim))
		plan.Job.LeastOffcut = max(plan.Job.LeastOffcut, t.size(job, "stock.sheet.keep", m.Keep, sheetKeep))
	}
	if plan.Grain = t.jobs[first].Model.Stock.Sheet.Grain; plan.Grain == "" {
		plan.Grain = grainNone
		if plan.Material.Movement > 0 {
			plan.Grain = grainUp
		}
		t.assume("stock.sheet.grain", plan.Grain, "as "+plan.Material.Name+" is commonly laid; "+houseRule)
	}
}

// offerSheets lists the sheets to be had: the models', or the common ones.
func (t *taker) offerSheets(plan *SheetPlan) {
	var sheets []cutting.Sheet
	seen := map[string]bool{}
	add := func(width, height length.Length, hand int) {
		s := cutting.Sheet{Name: t.sheetName(*plan, width, height), Width: width, Height: height, Available: hand, InHand: hand > 0}
		if s.InHand {
			s.Name = "in hand: " + s.Name
		}
		if !seen[s.Name] {
			seen[s.Name] = true
			sheets = append(sheets, s)
		}
	}
	for _, i := range plan.Parts {
		for _, s := range t.named[t.out.Parts[i].Job] {
			add(s.width, s.height, s.hand)
		}
	}
	kind := "plastic"
	if plan.Material.Movement > 0 {
		kind = "wood"
	}
	for _, row := range catalog.SheetSizes() {
		if row.For == kind && row.Metric == (t.unit == length.Millimetres) && !t.statesSheets(plan) {
			add(row.Width, row.Height, 0)
		}
	}
	plan.Job.Sheets = t.pricedSheets(sheets)
}

// pricedSheets enters the prices. Where some sheets have one, those without are
// left out.
func (t *taker) pricedSheets(sheets []cutting.Sheet) []cutting.Sheet {
	var offered []cutting.Sheet
	priced := false
	for i := range sheets {
		if row, ok := t.prices.of(sheets[i].Name); ok && !sheets[i].InHand {
			sheets[i].Price, priced = row.price, true
		}
	}
	for _, s := range sheets {
		if !s.InHand {
			t.offer(s.Name, s.Price)
		}
		if priced && !s.InHand && s.Price == 0 {
			t.assume("prices", s.Name, "not offered: other sheets have a price and it has none")
			continue
		}
		offered = append(offered, s)
	}
	return offered
}

// statesSheets tells whether one of the plan's models names sheets.
func (t *taker) statesSheets(plan *SheetPlan) bool {
	return slices.ContainsFunc(plan.Parts, func(i int) bool {
		return len(t.named[t.out.Parts[i].Job]) > 0
	})
}

// sheetName is a sheet on the shopping list and in the price file.
func (t *taker) sheetName(plan SheetPlan, width, height length.Length) string {
	size := t.words.section(width, height)
	if t.exact(width, height) == t.words {
		size += " " + t.name()
	}
	return fmt.Sprintf("sheet %s %s %s", plan.Material.Name, t.said(plan.Thickness), size)
}

// pieces are the panels' bounding boxes. With the grain across, a piece lies on
// its side.
func (t *taker) pieces(plan *SheetPlan) {
	for _, i := range plan.Parts {
		part := &t.out.Parts[i]
		part.From = fmt.Sprintf("%s %s", plan.Material.Name, t.said(plan.Thickness))
		piece := cutting.Piece{Label: t.out.Mark(*part), Width: part.Net.Width, Height: part.Net.Length, Quantity: part.Quantity, Turn: plan.Grain == grainNone}
		if plan.Grain == grainAcross {
			piece.Width, piece.Height = piece.Height, piece.Width
		}
		if film := t.jobs[part.Job].Model.Panel.Film; film != "" {
			piece.Face = "film to the " + film
			part.Note = piece.Face
		}
		plan.Job.Pieces = append(plan.Job.Pieces, piece)
	}
}

// largeEnough tells whether each panel fits a sheet. One too large for the
// common sheets is ordered to size.
func (t *taker) largeEnough(plan *SheetPlan, stated bool) bool {
	large := cutting.Sheet{}
	fits := true
	for n, p := range plan.Job.Pieces {
		some := false
		for _, s := range plan.Job.Sheets {
			w, h := s.Width-2*plan.Job.Trim, s.Height-2*plan.Job.Trim
			some = some || p.Width <= w && p.Height <= h || p.Turn && p.Height <= w && p.Width <= h
			if s.Width.MM()*s.Height.MM() > large.Width.MM()*large.Height.MM() {
				large = s
			}
		}
		if some {
			continue
		}
		fits = false
		part := t.out.Parts[plan.Parts[n]]
		severity, end := spec.Warning, "the panels are ordered to size"
		if stated {
			severity, end = spec.Stops, "name a larger sheet, or let it be turned with grain: none"
		}
		key := "stock.sheet.sizes"
		if stated && len(t.jobs[part.Job].Model.Stock.Sheet.Sizes) == 0 {
			key = "shop.sheet"
		}
		t.find(part.Job, severity, key, RuleTooLarge, "panel %s is %v wide and %v high; the largest sheet, %v by %v, leaves %v by %v after trimming: %s", part.Label(), part.Net.Width, part.Net.Length, large.Width, large.Height, large.Width-2*plan.Job.Trim, large.Height-2*plan.Job.Trim, end)
	}
	if !fits {
		plan.ToSize, plan.Why, plan.Job = true, "it is larger than the common sheets", cutting.SheetJob{}
	}
	return fits
}
