package door

import (
	"fmt"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// frame places rails, muntins and lites.
func (r *resolver) frame() {
	rows, columns, agree := r.counts()
	if !agree {
		return
	}
	rails, ok := r.railWidths(rows)
	if !ok {
		return
	}
	muntin := r.muntinWidth(columns)
	leaf := &r.set.Leaf
	up, across := r.upward(rails), r.sideways(columns, muntin)
	if !r.roomIn(up) || !r.roomIn(across) || r.stopped {
		return
	}
	r.derive("rail.length", leaf.Width-2*leaf.Stile, "leaf width less two stiles", "leaf.width", "leaf.stile")
	high, wide := r.divide(up), r.divide(across)
	if r.stopped {
		return
	}
	r.place(rails, high)
	leaf.Columns = columns
	r.columns(muntin, wide)
	r.rows(high)
}

// counts are the rows and columns of lites: as stated, or as many as the lists
// of sizes have. It tells whether those agree.
func (r *resolver) counts() (rows, columns int, agree bool) {
	l, crosses := r.model.Leaf.Lites, len(r.model.Leaf.Crosses)
	agree = true
	count := func(key string, stated int, list string, sizes int) int {
		if stated > 0 && sizes > 0 && stated != sizes {
			agree = false
			r.stop("leaf.lites."+list, RuleLiteCount, "leaf.lites.%s is %d and leaf.lites.%s lists %d sizes: list %d, or leave %s out", key, stated, list, sizes, stated, key)
		}
		return max(stated, sizes)
	}
	rows, columns = count("rows", l.Rows, "heights", len(l.Heights)), max(1, count("columns", l.Columns, "widths", len(l.Widths)))
	if rows == 0 {
		rows = crosses + 1
	}
	if agree && crosses > 0 && crosses != rows-1 {
		agree = false
		r.stop("leaf.crosses", RuleCrosses, "leaf.crosses lists %d cross rails; %d rows of lites have %d between them: list %d, or make it %d rows", crosses, rows, rows-1, rows-1, crosses+1)
	}
	return rows, columns, agree
}

// railWidths enters the widths of the rails from the bottom up.
func (r *resolver) railWidths(rows int) ([]length.Length, bool) {
	rail := r.model.Leaf.Rail
	widths := []length.Length{r.railWidth("bottom", rail.Bottom)}
	crosses := r.model.Leaf.Crosses
	for i, stated := range crosses {
		if stated == nil {
			r.stopped = true // spec has said so
			continue
		}
		path := fmt.Sprintf("leaf.crosses[%d]", i+1)
		r.fromBoard(path, "cross rail", *stated)
		widths = append(widths, r.given(fmt.Sprintf("rail.cross.%d", i+1), path, *stated))
	}
	if rows > 1 && len(crosses) == 0 {
		cross := r.railWidth("cross", rail.Cross)
		for range rows - 1 {
			widths = append(widths, cross)
		}
	}
	widths = append(widths, r.railWidth("top", rail.Top))
	return widths, !r.stopped
}

// railWidth enters the width of the bottom, the top or every cross rail.
func (r *resolver) railWidth(name string, stated *length.Length) length.Length {
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

// muntinWidth enters the width of the muntins, if there are any.
func (r *resolver) muntinWidth(columns int) length.Length {
	stated, half := r.model.Leaf.Muntin, r.set.Leaf.Stile.Half().UpTo(r.tick)
	switch {
	case columns == 1:
		return 0
	case stated != nil:
		r.fromBoard("leaf.muntin", "muntin", *stated)
		return r.given("leaf.muntin", "leaf.muntin", *stated)
	case half < muntinLeast.in(r.units):
		return r.assume("leaf.muntin", muntinLeast.in(r.units), muntinLeast.reason, houseRule)
	}
	return r.derive("leaf.muntin", half, "half a stile, up to the next tick: lighter than the frame, and wide enough to be rabbeted on both edges", "leaf.stile", "tick")
}

// place puts the rails where the sight heights between them leave them.
func (r *resolver) place(widths, high []length.Length) {
	var at length.Length
	for i, width := range widths {
		r.set.Leaf.Rails = append(r.set.Leaf.Rails, Rail{Label: fmt.Sprintf("R%d", i+1), From: at, To: at + width})
		if at += width; i < len(high) {
			at += high[i]
		}
	}
}

// columns places muntins and lites, row by row.
func (r *resolver) columns(muntin length.Length, wide []length.Length) {
	leaf := &r.set.Leaf
	for row := range leaf.Rows() {
		below, above := leaf.Rails[row], leaf.Rails[row+1]
		at := leaf.Stile
		for column, sight := range wide {
			box := plane.BoxOf(plane.At(at, below.To), plane.At(at+sight, above.From))
			leaf.Lites = append(leaf.Lites, Lite{Row: row, Column: column, Sight: box})
			at += sight
			if column < len(wide)-1 {
				leaf.Muntins = append(leaf.Muntins, Muntin{Label: fmt.Sprintf("M%d", len(leaf.Muntins)+1), Row: row, From: at, To: at + muntin})
				at += muntin
			}
		}
	}
	if leaf.Columns == 1 && r.model.Leaf.Lites.Widths == nil {
		r.derive("lite.width", wide[0], "leaf width less two stiles", "leaf.width", "leaf.stile")
		return
	}
	shared := "what stiles and muntins leave, shared by the lites so that left and right are alike"
	from := []string{"leaf.width", "leaf.stile"}
	if leaf.Columns > 1 {
		from = append(from, "leaf.muntin")
	}
	names := make([]string, len(wide))
	for i := range wide {
		names[i] = r.columnFigure(i)
	}
	r.enterSights("leaf.lites.widths", r.model.Leaf.Lites.Widths, names, wide, shared, from)
	for i, m := range leaf.Muntins[:leaf.Columns-1] {
		before := append([]string{"leaf.stile", "leaf.muntin"}, names[:i+1]...)
		r.derive(fmt.Sprintf("muntin.%d.from", i+1), m.From, "stile, lites and muntins before it, from the leaf's left, in every row", before...)
	}
}

// columnFigure is the name of the figure of a column's sight width, counted
// from 0.
func (r *resolver) columnFigure(column int) string {
	if r.set.Leaf.Columns == 1 {
		return "lite.width"
	}
	return fmt.Sprintf("lite.column.%d.width", column+1)
}

// rowFigure is the name of the figure of a row's sight height, counted from 0.
func rowFigure(row int) string { return fmt.Sprintf("lite.%d.height", row+1) }

// rows enters the sight heights and the rails' centres.
func (r *resolver) rows(high []length.Length) {
	names := make([]string, len(high))
	for i := range high {
		names[i] = rowFigure(i)
	}
	r.enterSights("leaf.lites.heights", r.model.Leaf.Lites.Heights, names, high, "what the rails leave, shared by the lites in whole ticks", []string{"leaf.height"})
	for i, rail := range r.set.Leaf.Rails {
		r.derive(fmt.Sprintf("rail.%d.centre", i+1), rail.Centre(), "height of the rail's middle above the leaf's bottom", "leaf.height")
	}
}
