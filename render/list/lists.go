package list

import (
	"fmt"
	"strings"

	"stilewright/model/length"
	"stilewright/model/takeoff"
)

const poundKG = 0.45359237 // exact by definition

// mass is a mass in the unit of the trade: pounds where lengths are inches.
func mass(t takeoff.Takeoff, kg float64) float64 {
	if t.Units == length.Inches {
		return kg / poundKG
	}
	return kg
}

// MassUnit is that unit's word.
func MassUnit(t takeoff.Takeoff) string {
	if t.Units == length.Inches {
		return "lb"
	}
	return "kg"
}

// CutList is every distinct part.
func CutList(t takeoff.Takeoff) Table {
	out := Table{Name: "cut-list", Title: "Cut list", Units: t.Units, Columns: append(jobColumn(t),
		Column{"label", Text}, Column{"part", Text}, Column{"a leaf", Count}, Column{"leaves", Text}, Column{"in all", Count},
		Column{"length", Size}, Column{"width", Size}, Column{"thick", Size},
		Column{"rough length", Size}, Column{"rough width", Size}, Column{"rough thick", Size},
		Column{"from", Text}, Column{"a block", Count}, Column{"operations", Text}, Column{"one weighs (" + MassUnit(t) + ")", Measure}, Column{"note", Text})}
	for _, p := range t.Parts {
		leaf, leaves := count(p.PerLeaf), text(strings.Join(p.Leaves, " "))
		if len(p.Leaves) == 0 {
			leaf, leaves = none(), text("set")
		}
		from := p.From
		if from == "" {
			from = p.Material
		}
		out.Rows = append(out.Rows, append(jobCell(t, p.Job),
			text(p.Label()), text(p.Name), leaf, leaves, count(p.Quantity),
			size(p.Net.Length), size(p.Net.Width), size(p.Net.Thickness),
			size(p.Rough.Length), size(p.Rough.Width), size(p.Rough.Thickness),
			text(from), count(p.SideBySide), text(join(p.Operations)), measure(mass(t, p.Mass)), text(p.Note)))
	}
	return out
}

// Boards is every cut in every board, in the order they are made. Marks run from
// the board's left end before it is squared.
func Boards(t takeoff.Takeoff) Table {
	out := Table{Name: "board-cuts", Title: "Board cuts", Units: t.Units, Columns: []Column{
		{"board", Text}, {"pattern", Count}, {"times", Count}, {"cut", Count}, {"part", Text}, {"from", Size}, {"to", Size}, {"rough length", Size}, {"side by side", Count}}}
	for _, plan := range t.Boards {
		for n, p := range plan.Layout.Patterns {
			board := text(plan.Job.Boards[p.Board].Name)
			for k, c := range p.Cuts {
				out.Rows = append(out.Rows, []Cell{board, count(n + 1), count(p.Times), count(k + 1), text(plan.Job.Parts[c.Part].Label),
					size(c.Start), size(c.End), size(c.End - c.Start), count(t.Parts[plan.Parts[c.Part]].SideBySide)})
			}
			if p.Offcut > 0 {
				end := plan.Job.Boards[p.Board].Length
				what := "scrap"
				if p.Kept {
					what = "offcut, keep"
				}
				out.Rows = append(out.Rows, []Cell{board, count(n + 1), count(p.Times), none(), text(what), size(end - p.Offcut), size(end), size(p.Offcut), none()})
			}
		}
	}
	return out
}

// Sheets is every saw cut in every sheet, in the order they are made.
func Sheets(t takeoff.Takeoff) Table {
	out := Table{Name: "sheet-cuts", Title: "Sheet cuts", Units: t.Units, Columns: []Column{
		{"sheet", Text}, {"pattern", Count}, {"times", Count}, {"step", Count}, {"take", Text}, {"cut", Text}, {"from the", Text}, {"at", Size}, {"gives", Text}, {"and", Text}}}
	for _, plan := range t.Sheets {
		for n, p := range plan.Layout.Patterns {
			name := text(plan.Job.Sheets[p.Sheet].Name)
			for _, s := range p.Steps(plan.Job) {
				out.Rows = append(out.Rows, []Cell{name, count(n + 1), count(p.Times), count(s.Number), text(s.Take), text(s.Line.String()), text(s.Line.Edge() + " edge"), size(s.At), text(s.Near), text(s.Far)})
			}
		}
	}
	return out
}

// Film is every strip of every pull.
func Film(t takeoff.Takeoff) Table {
	out := Table{Name: "film-cuts", Title: "Film cuts", Units: t.Units, Columns: append(jobColumn(t),
		Column{"pull", Count}, Column{"pull off", Size}, Column{"for", Text}, Column{"strip", Text}, Column{"from the left", Size}, Column{"wide", Size}, Column{"long", Size}, Column{"lies", Text})}
	for _, plan := range t.Film {
		for n, p := range plan.Layout.Pulls {
			for _, s := range p.Strips {
				out.Rows = append(out.Rows, append(jobCell(t, plan.Of), count(n+1), size(p.Length), text(plan.Job.Faces[s.Face].Label),
					text(fmt.Sprintf("%d of %d", s.Number, s.Of)), size(s.At), size(s.Width), size(s.Length), text(s.Direction.String())))
			}
		}
	}
	return out
}

// Shopping is what to buy, with its foot: what it costs and weighs.
func Shopping(t takeoff.Takeoff) Table {
	coin := strings.TrimSpace(" " + t.Sum.Coin)
	head := func(s string) string { return strings.TrimSpace(s + " " + coin) }
	out := Table{Name: "shopping", Title: "Shopping list", Units: t.Units, Columns: []Column{
		{"group", Text}, {"item", Text}, {"needed", Measure}, {"to spare", Measure}, {"unit", Text}, {"in a pack", Measure}, {"buy", Count},
		{head("price"), Money}, {head("cost"), Money}, {"weighs (" + MassUnit(t) + ")", Measure}, {"how counted", Text}}}
	for _, i := range t.Buy {
		weighs := none()
		if i.Mass > 0 {
			weighs = measure(mass(t, i.Mass))
		}
		out.Rows = append(out.Rows, []Cell{text(i.Group), text(i.Name), measure(i.Need), measure(i.Spare), text(i.Unit), measure(i.Pack), count(i.Buy),
			money(i.Priced, int64(i.Price)), money(i.Priced, int64(i.Cost)), weighs, text(i.Why)})
	}
	said := fmt.Sprintf("%d of %d items have a price", len(t.Buy)-t.Sum.Unpriced, len(t.Buy))
	out.Rows = append(out.Rows, []Cell{text("total"), text(""), none(), none(), text(""), none(), none(), none(),
		money(t.Sum.Unpriced < len(t.Buy), int64(t.Sum.Cost)), measure(mass(t, t.Sum.Mass)), text(said)})
	return out
}

// Proofs says of every layout what it takes, the least any could, and whether it
// is proven.
func Proofs(t takeoff.Takeoff) Table {
	out := Table{Name: "layouts", Title: "Layouts and their bounds", Units: t.Units, Columns: []Column{
		{"stock", Text}, {"pieces", Count}, {"layout", Text}, {"bound", Text}}}
	for _, p := range t.Boards {
		out.Rows = append(out.Rows, []Cell{text(p.Name()), count(p.Layout.Count), text(p.Takes(t)), text(p.Bound(t))})
	}
	for _, p := range t.Sheets {
		out.Rows = append(out.Rows, []Cell{text(p.Name(t)), count(p.Layout.Count), text(p.Takes(t)), text(p.Bound(t))})
	}
	for _, p := range t.Film {
		out.Rows = append(out.Rows, []Cell{text(p.Name(t)), count(len(p.Layout.Pulls)), text(p.Takes(t)), text(p.Bound(t))})
	}
	return out
}

// Assumed is what the models left open.
func Assumed(t takeoff.Takeoff) Table {
	out := Table{Name: "assumed", Title: "What the models left open", Units: t.Units, Columns: []Column{{"key", Text}, {"taken", Text}, {"why", Text}}}
	for _, a := range t.Assumed {
		out.Rows = append(out.Rows, []Cell{text(a.Name), text(a.Value), text(a.Reason)})
	}
	return out
}
