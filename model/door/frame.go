package door

import (
	"fmt"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// Lite spacings.
const equalCentres = "equal-centres"

// frame places rails and lites.
func (r *resolver) frame() {
	rows := max(1, r.model.Leaf.Lites.Rows)
	widths, ok := r.railWidths(rows)
	if !ok {
		return
	}
	leaf := &r.set.Leaf
	wood := length.Sum(widths...)
	least := leastLite.in(r.units)
	if free := leaf.Height - wood; free < length.Length(rows)*least {
		r.stop(r.litePath(), RuleLiteTooLow, "%d rails take %v of a leaf %v high and leave %v for the lites, %d of them; each needs at least %v: fewer rows or narrower rails", len(widths), wood, leaf.Height, free, rows, least)
		return
	}
	r.derive("rail.length", leaf.Width-2*leaf.Stile, "leaf width less two stiles", "leaf.width", "leaf.stile")
	froms := r.railPlaces(widths, rows)
	if r.stopped {
		return
	}
	for i, width := range widths {
		leaf.Rails = append(leaf.Rails, Rail{Label: fmt.Sprintf("R%d", i+1), From: froms[i], To: froms[i] + width})
	}
	r.lites()
}

// litePath is where the number of rows stands, or what stands in for it.
func (r *resolver) litePath() string {
	if r.model.Leaf.Lites.Rows > 0 {
		return "leaf.lites.rows"
	}
	return "leaf.rail"
}

// railWidths enters the widths of the rails from the bottom up.
func (r *resolver) railWidths(rows int) ([]length.Length, bool) {
	rail := r.model.Leaf.Rail
	one := func(name string, stated *length.Length) length.Length {
		path := "leaf.rail." + name
		switch {
		case stated != nil:
			r.fromBoard(path, name+" rail", *stated)
			return r.given("rail."+name, path, *stated)
		case r.set.Stock.Board != "":
			return r.derive("rail."+name, r.ripped(), "dressed width less what is ripped off both edges", r.ripFrom()...)
		}
		r.stop("leaf", RuleStockUnknown, "the %v rail's width is not known: state %v, or name the board under stock.board", name, path)
		return 0
	}
	widths := []length.Length{one("bottom", rail.Bottom)}
	if rows > 1 {
		cross := one("cross", rail.Cross)
		for range rows - 1 {
			widths = append(widths, cross)
		}
	}
	widths = append(widths, one("top", rail.Top))
	return widths, !r.stopped
}

// railPlaces is the height of each rail's lower edge.
func (r *resolver) railPlaces(widths []length.Length, rows int) []length.Length {
	leaf := r.set.Leaf
	froms := make([]length.Length, len(widths))
	if r.model.Leaf.Lites.Spacing == equalCentres {
		first, last := widths[0].Half(), leaf.Height-widths[rows].Half()
		apart := r.derive("rail.centres", last-first, "distance between the centres of bottom and top rail", "leaf.height", "rail.bottom", "rail.top")
		at := first
		for i, step := range r.share(apart, rows) {
			at += step
			froms[i+1] = at - widths[i+1].Half()
		}
		r.unequal(froms, widths)
		return froms
	}
	lites := r.share(leaf.Height-length.Sum(widths...), rows)
	for i, lite := range lites {
		froms[i+1] = froms[i] + widths[i] + lite
	}
	return froms
}

// unequal warns when equal centres make unequal lites, and stops when they
// leave one too low.
func (r *resolver) unequal(froms, widths []length.Length) {
	least, most := length.Longest, -length.Longest
	for i := range len(widths) - 1 {
		sight := froms[i+1] - froms[i] - widths[i]
		least, most = min(least, sight), max(most, sight)
	}
	if needs := leastLite.in(r.units); least < needs {
		r.stop("leaf.lites.spacing", RuleLiteTooLow, "equal centres leave a lite %v high; it needs at least %v: space by equal-lites, or make the rails alike", least, needs)
		return
	}
	if most-least > r.tick {
		r.warn("leaf.lites.spacing", RuleLitesDiffer, "with rail centres evenly apart the lites are %v to %v high; equal-lites makes them the same", least, most)
	}
}

// lites lays out the sight sizes between the rails.
func (r *resolver) lites() {
	leaf := &r.set.Leaf
	leaf.Columns = 1
	r.derive("lite.width", leaf.Width-2*leaf.Stile, "leaf width less two stiles", "leaf.width", "leaf.stile")
	for i := range len(leaf.Rails) - 1 {
		below, above := leaf.Rails[i], leaf.Rails[i+1]
		box := plane.BoxOf(plane.At(leaf.Stile, below.To), plane.At(leaf.Width-leaf.Stile, above.From))
		leaf.Lites = append(leaf.Lites, Lite{Row: i, Sight: box})
		r.derive(fmt.Sprintf("lite.%d.height", i+1), box.Height(), "what the rails leave, shared by the lites in whole ticks", "leaf.height", "tick")
	}
	for i, rail := range leaf.Rails {
		r.derive(fmt.Sprintf("rail.%d.centre", i+1), rail.Centre(), "height of the rail's middle above the leaf's bottom", "leaf.height")
	}
}
