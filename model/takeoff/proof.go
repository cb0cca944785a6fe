package takeoff

import (
	"fmt"

	"stilewright/model/cutting"
	"stilewright/model/length"
)

// percent is a share as "12.5 %".
func percent(part, whole float64) string {
	const hundred = 100
	if whole == 0 {
		return "0 %"
	}
	return fmt.Sprintf("%.1f %%", hundred*part/whole)
}

// Takes says what a layout takes: boards, length, and what is lost.
func (p BoardPlan) Takes(t Takeoff) string {
	l, w := p.Layout, t.words()
	kept := "no offcut kept"
	if l.Offcuts > 0 {
		kept = "offcuts kept " + w.said(l.Offcuts)
	}
	hand, inHand := length.Length(0), ""
	for i, n := range l.Used {
		if b := p.Job.Boards[i]; b.InHand {
			hand += b.Length * length.Length(n)
		}
	}
	if hand > 0 {
		inHand = ", " + w.long(hand) + " of it in hand"
	}
	return fmt.Sprintf("%s, %s%s: parts %s, %s, lost %s", several(l.Count, "board"), w.long(l.Stock), inHand, w.said(l.Parts), kept, percent(l.Waste.MM(), l.Stock.MM()))
}

// Bound says what no layout can do without, and whether this one is proven.
func (p BoardPlan) Bound(t Takeoff) string {
	l, w := p.Layout, t.words()
	bound := "no layout costs less than " + Money(l.Bound)
	if l.Measure == cutting.ByLength {
		bound = "no layout buys less than " + w.long(length.Length(l.Bound)*length.Micrometre)
	}
	return bound + proven(l.Proven, l.Cost, l.Bound) + fewest(l.Proven && l.FewestProven, "boards")
}

// Name is the sheets in a few words.
func (p SheetPlan) Name(t Takeoff) string { return p.Material.Name + " " + t.words().said(p.Thickness) }

// Takes says what a layout takes: sheets, and what is lost.
func (p SheetPlan) Takes(Takeoff) string {
	if p.ToSize {
		return "ordered to size: " + p.Why
	}
	l := p.Layout
	return fmt.Sprintf("%s: panels %s, offcuts kept %s, lost %s", several(l.Count, "sheet"), percent(l.Pieces, l.Stock), percent(l.Offcuts, l.Stock), percent(l.Waste, l.Stock))
}

// Bound says what no layout can do without, and whether this one is proven.
func (p SheetPlan) Bound(t Takeoff) string {
	l := p.Layout
	switch {
	case p.ToSize:
		return ""
	case l.Measure == cutting.ByArea:
		return "no layout buys less than " + t.words().area(float64(l.Bound)/perSquareMetre) + proven(l.Proven, l.Cost, l.Bound) + fewest(l.Proven && l.FewestProven, "sheets")
	}
	return "no layout costs less than " + Money(l.Bound) + proven(l.Proven, l.Cost, l.Bound) + fewest(l.Proven && l.FewestProven, "sheets")
}

// Name is the film in a few words.
func (p FilmPlan) Name(t Takeoff) string { return "film " + t.words().said(p.Job.RollWidth) + " wide" }

// Takes says what a layout takes from the roll.
func (p FilmPlan) Takes(t Takeoff) string {
	return fmt.Sprintf("%s pulled in %s, lost %s", t.words().said(p.Layout.Length), several(len(p.Layout.Pulls), "pull"), percent(p.Layout.Waste, p.Layout.Pulled))
}

// Bound says what no layout can do without.
func (p FilmPlan) Bound(t Takeoff) string {
	return "no layout of these strips pulls less than " + t.words().said(p.Layout.Bound) + proven(p.Layout.Proven, cutting.Cost(p.Layout.Length), cutting.Cost(p.Layout.Bound))
}

// proven says that a layout is at its bound, or how far from it.
func proven(is bool, cost, bound cutting.Cost) string {
	if is {
		return ": proven least"
	}
	return ": gap " + percent(float64(cost-bound), float64(cost))
}

func fewest(is bool, what string) string {
	if is {
		return ", and fewest " + what
	}
	return ""
}

// several is "1 board" or "3 boards".
func several(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return fmt.Sprint(n, " ", what)
}
