package cutting

import (
	"fmt"
)

// CheckSheets replays a layout against its job, without trusting a figure in
// it: every cut runs from edge to edge and loses one kerf, every piece comes
// out once for each time it is asked for, in its own size and turned only where
// it may be, pieces on a sheet keep clear of each other and of the trim, no
// sheet is used more often than there are, cost and areas add up again, and the
// bound is not above the cost. The first thing wrong comes back.
func CheckSheets(j SheetJob, l SheetLayout) error {
	delivered := make([]int, len(j.Pieces))
	used := make([]int, len(j.Sheets))
	for n, p := range l.Patterns {
		if p.Sheet < 0 || p.Sheet >= len(j.Sheets) || p.Times < 1 || p.Root == nil {
			return fmt.Errorf("pattern %d: sheet %d, %d times", n+1, p.Sheet, p.Times)
		}
		r := sheetReplay{job: j, pattern: p, delivered: delivered}
		if err := r.sheet(); err != nil {
			return fmt.Errorf("pattern %d: %w", n+1, err)
		}
		used[p.Sheet] += p.Times
	}
	for i, p := range j.Pieces {
		if delivered[i] != p.Quantity {
			return fmt.Errorf("piece %q: %d cut, %d asked for", p.Label, delivered[i], p.Quantity)
		}
	}
	for s, sheet := range j.Sheets {
		if len(l.Used) != len(used) || l.Used[s] != used[s] {
			return fmt.Errorf("sheet %q: %d used, the layout says %v", sheet.Name, used[s], l.Used)
		}
		if sheet.Available > 0 && used[s] > sheet.Available {
			return fmt.Errorf("sheet %q: %d used, %d available", sheet.Name, used[s], sheet.Available)
		}
	}
	return l.checkSums(j)
}

func (l SheetLayout) checkSums(j SheetJob) error {
	again := SheetLayout{Patterns: l.Patterns, Used: make([]int, len(j.Sheets))}
	again.sum(j)
	switch {
	case again.Cost != l.Cost || again.Count != l.Count:
		return fmt.Errorf("cost %d for %d sheets, the layout says %d for %d", again.Cost, again.Count, l.Cost, l.Count)
	case again.Stock != l.Stock || again.Pieces != l.Pieces || again.Offcuts != l.Offcuts || again.Waste != l.Waste:
		return fmt.Errorf("waste %.1f of %.1f mm², the layout says %.1f of %.1f", again.Waste, again.Stock, l.Waste, l.Stock)
	case l.Bound > l.Cost || l.Bound < 0:
		return fmt.Errorf("bound %d, cost %d", l.Bound, l.Cost)
	case l.Proven != (l.Bound == l.Cost):
		return fmt.Errorf("proven is %t with bound %d and cost %d", l.Proven, l.Bound, l.Cost)
	}
	return nil
}

// A sheetReplay follows the saw over one sheet.
type sheetReplay struct {
	job       SheetJob
	pattern   SheetPattern
	delivered []int
	placed    []*Region
}

func (r *sheetReplay) sheet() error {
	sheet, root := r.job.Sheets[r.pattern.Sheet], r.pattern.Root
	w, h := r.job.clear(sheet)
	if root.X != r.job.Trim || root.Y != r.job.Trim || root.Width != w || root.Height != h {
		return fmt.Errorf("sheet %q is %s × %s after trimming, the layout starts with %s × %s",
			sheet.Name, mm(w), mm(h), mm(root.Width), mm(root.Height))
	}
	if err := r.region(root); err != nil {
		return err
	}
	for i, a := range r.placed {
		for _, b := range r.placed[:i] {
			if a.X < b.X+b.Width+r.job.Kerf && b.X < a.X+a.Width+r.job.Kerf &&
				a.Y < b.Y+b.Height+r.job.Kerf && b.Y < a.Y+a.Height+r.job.Kerf {
				return fmt.Errorf("pieces %d and %d are less than a kerf apart", a.Piece, b.Piece)
			}
		}
	}
	return nil
}

func (r *sheetReplay) region(g *Region) error {
	switch g.Kind {
	case CutRegion:
		return r.cut(g)
	case PieceRegion:
		return r.piece(g)
	case RestRegion:
		if g.Kept != (min(g.Width, g.Height) >= r.job.LeastOffcut) {
			return fmt.Errorf("rest %s × %s: kept is %t", mm(g.Width), mm(g.Height), g.Kept)
		}
		return nil
	}
	return fmt.Errorf("region of kind %d", g.Kind)
}

// cut works out what the saw leaves and compares.
func (r *sheetReplay) cut(g *Region) error {
	low, high := Region{X: g.X, Y: g.Y, Width: g.Width, Height: g.Height}, Region{}
	across := g.Width
	if g.Line == Level {
		across = g.Height
	}
	if g.At <= 0 || g.At >= across || (g.Line != Upright && g.Line != Level) {
		return fmt.Errorf("cut at %s of %s", mm(g.At), mm(across))
	}
	high = low
	rest := across - g.At - r.job.Kerf
	if g.Line == Upright {
		low.Width, high.Width, high.X = g.At, rest, g.X+g.At+r.job.Kerf
	} else {
		low.Height, high.Height, high.Y = g.At, rest, g.Y+g.At+r.job.Kerf
	}
	if g.Low == nil || !g.Low.lies(low) {
		return fmt.Errorf("cut at %s: the near part is not what is left", mm(g.At))
	}
	if err := r.region(g.Low); err != nil {
		return err
	}
	if rest <= 0 {
		if g.High != nil {
			return fmt.Errorf("cut at %s: the kerf takes the rest, yet there is a far part", mm(g.At))
		}
		return nil
	}
	if g.High == nil || !g.High.lies(high) {
		return fmt.Errorf("cut at %s: the far part is not what is left", mm(g.At))
	}
	return r.region(g.High)
}

// lies tells whether the two are one rectangle.
func (g *Region) lies(o Region) bool {
	return g.X == o.X && g.Y == o.Y && g.Width == o.Width && g.Height == o.Height
}

func (r *sheetReplay) piece(g *Region) error {
	if g.Piece < 0 || g.Piece >= len(r.job.Pieces) {
		return fmt.Errorf("piece number %d of %d", g.Piece, len(r.job.Pieces))
	}
	p, sheet := r.job.Pieces[g.Piece], r.job.Sheets[r.pattern.Sheet]
	w, h := p.Width, p.Height
	if g.Turned {
		w, h = h, w
	}
	switch {
	case g.Turned && !p.Turn:
		return fmt.Errorf("piece %q is turned and may not be", p.Label)
	case g.Width != w || g.Height != h:
		return fmt.Errorf("piece %q is cut %s × %s, asked for %s × %s", p.Label, mm(g.Width), mm(g.Height), mm(w), mm(h))
	case !allowed(p.From, sheet.Name):
		return fmt.Errorf("piece %q may not come from %q", p.Label, sheet.Name)
	}
	r.placed = append(r.placed, g)
	r.delivered[g.Piece] += r.pattern.Times
	return nil
}

// sum adds the patterns up.
func (l *SheetLayout) sum(j SheetJob) {
	for _, p := range l.Patterns {
		sheet := j.Sheets[p.Sheet]
		price, _ := j.price(sheet)
		l.Used[p.Sheet] += p.Times
		l.Count += p.Times
		l.Cost += price * Cost(p.Times)
		times := float64(p.Times)
		l.Stock += float64(times * float64(sheet.Width.MM()*sheet.Height.MM()))
		p.Root.each(func(g *Region) {
			area := float64(times * float64(g.Width.MM()*g.Height.MM()))
			switch {
			case g.Kind == PieceRegion:
				l.Pieces += area
			case g.Kind == RestRegion && g.Kept:
				l.Offcuts += area
			}
		})
	}
	l.Waste = l.Stock - l.Pieces - l.Offcuts
}

// each visits the region and all it is cut into, in cutting order.
func (g *Region) each(visit func(*Region)) {
	if g == nil {
		return
	}
	visit(g)
	g.Low.each(visit)
	g.High.each(visit)
}
