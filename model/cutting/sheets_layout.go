package cutting

import (
	"fmt"
	"math/bits"
	"slices"
	"sort"

	"stilewright/model/length"
)

// LayOutSheets lays the job's pieces out on its sheets by edge-to-edge cuts:
// least cost, then fewest sheets. Where every group of pieces that fits a sheet
// can be listed, the search is exact and its bound that of the listed groups;
// else pieces are packed by many rules and the bound is by area and by sizes
// that cannot share a sheet. Faults of the job come back joined.
func LayOutSheets(j SheetJob) (SheetLayout, error) {
	if err := j.Faults(); err != nil {
		return SheetLayout{}, err
	}
	b := j.bench()
	found, roots := b.solve()
	if !found.found {
		return SheetLayout{}, j.short()
	}
	return b.layout(found, roots), nil
}

// A sheetBench is a job in the search's own terms.
type sheetBench struct {
	job    SheetJob
	cover  *cover
	packer *packer
	tiles  []tile
	pieces [][]int // per tile: indices into the job's Pieces
	unit   int64   // one step of money
	sheets int64   // costs count money·sheets + 1
}

func (j SheetJob) bench() *sheetBench {
	b := &sheetBench{job: j, sheets: 1}
	b.sortTiles()
	demand := make([]int, len(b.tiles))
	for i, pieces := range b.pieces {
		for _, p := range pieces {
			demand[i] += j.Pieces[p].Quantity
		}
		b.sheets += int64(demand[i])
	}
	for _, s := range j.Sheets {
		price, _ := j.price(s)
		b.unit = gcd(b.unit, int64(price))
	}
	b.cover = &cover{demand: demand, budget: steps(j.Budget)}
	b.packer = &packer{tiles: b.tiles, demand: demand}
	for _, s := range j.Sheets {
		price, _ := j.price(s)
		stock := coverStock{int64(price)/max(b.unit, 1)*b.sheets + 1, -1}
		if s.Available > 0 {
			stock.avail = min(s.Available, int(b.sheets))
		}
		b.cover.stock = append(b.cover.stock, stock)
		w, h := j.clear(s)
		b.packer.rooms = append(b.packer.rooms, [2]int64{int64(w + j.Kerf), int64(h + j.Kerf)})
	}
	b.packer.stock = b.cover.stock
	b.cover.measures = b.measures()
	return b
}

// sortTiles groups pieces of one size, turn and origin, the largest first.
func (b *sheetBench) sortTiles() {
	type sorted struct {
		tile
		pieces []int
	}
	index := map[string]int{}
	var all []sorted
	for p, piece := range b.job.Pieces {
		fits := make([]bool, len(b.job.Sheets))
		for s, sheet := range b.job.Sheets {
			fits[s] = allowed(piece.From, sheet.Name)
		}
		key := fmt.Sprint(piece.Width, piece.Height, piece.Turn, fits)
		at, ok := index[key]
		if !ok {
			at = len(all)
			index[key] = at
			t := tile{int64(piece.Width + b.job.Kerf), int64(piece.Height + b.job.Kerf), piece.Turn, fits}
			all = append(all, sorted{tile: t})
		}
		all[at].pieces = append(all[at].pieces, p)
	}
	area := func(s sorted) float64 { return float64(float64(s.w) * float64(s.h)) }
	sort.SliceStable(all, func(x, y int) bool { return area(all[x]) > area(all[y]) })
	for _, s := range all {
		b.tiles, b.pieces = append(b.tiles, s.tile), append(b.pieces, s.pieces)
	}
}

// measures weigh tiles and sheets by area, each side through a threshold (see
// boardBench.measures); of a tile that may turn, the lesser way counts.
func (b *sheetBench) measures() []measure {
	widest, highest := int64(0), int64(0)
	for _, r := range b.packer.rooms {
		widest, highest = max(widest, r[0]), max(highest, r[1])
	}
	var measures []measure
	for _, e := range b.thresholds(widest) {
		for _, f := range b.thresholds(highest) {
			m := measure{}
			for _, t := range b.tiles {
				size := areaDown(threshold(t.w, e, widest), threshold(t.h, f, highest))
				if t.turn {
					size = min(size, areaDown(threshold(t.h, e, widest), threshold(t.w, f, highest)))
				}
				m.size = append(m.size, size)
			}
			for _, r := range b.packer.rooms {
				m.holds = append(m.holds, areaDown(threshold(r[0], e, widest), threshold(r[1], f, highest))+1)
			}
			measures = append(measures, m)
		}
	}
	return measures
}

// thresholds are 0 and the sides that are at most half of whole; few, since
// they are combined.
func (b *sheetBench) thresholds(whole int64) []int64 {
	all := []int64{0}
	for _, t := range b.tiles {
		for _, side := range []int64{t.w, t.h} {
			for _, e := range []int64{side, whole - side + 1} {
				if e > 0 && 2*e <= whole && len(all) < mostThresholds/2 && !slices.Contains(all, e) {
					all = append(all, e)
				}
			}
		}
	}
	return all
}

// areaUnit is the grain of areas in measures, nm²: fine enough to lose nothing
// that matters, coarse enough that mostPieces of LongestSheet² stay in 63 bits.
const areaUnit = 1_000_000

// areaDown is w·h in areaUnits, rounded down.
func areaDown(w, h int64) int64 {
	hi, lo := bits.Mul64(uint64(w), uint64(h))
	q, _ := bits.Div64(hi, lo, areaUnit)
	return int64(q)
}

// solve tries the exact way, then packs.
func (b *sheetBench) solve() (result, map[string]*room) {
	comp := &composer{tiles: b.tiles, demand: b.cover.demand, rooms: b.packer.rooms, joints: jointsPerStep * b.cover.budget}
	if comp.compose() {
		b.cover.oracle = newSlabs(comp, b.cover.measures[0].size)
		found := b.cover.solve()
		roots := map[string]*room{}
		for _, u := range found.uses {
			roots[useKey(u)] = comp.tree(u.stock, u.pattern)
		}
		return found, roots
	}
	return b.packed()
}

// packed packs, and bounds the cost by the measures.
func (b *sheetBench) packed() (result, map[string]*room) {
	bound := b.cover.nextMix(0, result{})
	pool := newPool(b.packer, b.cover.measures[0].size)
	packed, cost := b.packer.pack(b.cover.budget/2, bound, pool)
	found := result{cost: cost, found: packed != nil}
	for _, p := range packed {
		found.uses = append(found.uses, use{p.sheet, p.pattern, 1})
	}
	spent := b.packer.steps
	if !found.found || cost > bound {
		b.cover.oracle, b.cover.budget = pool, max(b.cover.budget-spent, 1)
		b.cover.proposing = true
		better := b.cover.solve()
		spent += better.steps
		if better.found && (!found.found || better.cost < cost) {
			found = better
		}
	}
	found.bound, found.steps = bound, spent
	roots := map[string]*room{}
	for _, u := range found.uses {
		roots[useKey(u)] = pool.root(u)
	}
	return found, roots
}

func useKey(u use) string { return fmt.Sprint(u.stock, u.pattern) }

// short says what there is and what is needed.
func (j SheetJob) short() error {
	need, have := 0.0, 0.0
	for _, p := range j.Pieces {
		need += float64(float64(p.Width.MM()*p.Height.MM()) * float64(p.Quantity))
	}
	for _, s := range j.Sheets {
		w, h := j.clear(s)
		have += float64(float64(w.MM()*h.MM()) * float64(s.Available))
	}
	var f faults
	f.add(RuleShort, "", "the pieces add up to %.0f mm² before kerfs; the limited sheets offer %.0f mm² and no layout was found; add sheets",
		need, have)
	return f.err()
}

// layout turns rooms of tiles into regions of pieces.
func (b *sheetBench) layout(found result, roots map[string]*room) SheetLayout {
	_, measure := b.job.price(b.job.Sheets[0])
	l := SheetLayout{Used: make([]int, len(b.job.Sheets)), Measure: measure, Steps: found.steps}
	left := make([]int, len(b.job.Pieces))
	for p, piece := range b.job.Pieces {
		left[p] = piece.Quantity
	}
	uses := gather(found.uses)
	sort.SliceStable(uses, func(x, y int) bool { return b.rank(uses[x]) < b.rank(uses[y]) })
	for _, u := range uses {
		for u.times > 0 {
			p := b.name(u, roots[useKey(u)], left)
			l.Patterns = append(l.Patterns, p)
			u.times -= p.Times
		}
	}
	l.sum(b.job)
	l.Bound = min(Cost(found.bound/b.sheets*b.unit), l.Cost)
	l.Proven = l.Bound == l.Cost
	searched := int64(0)
	for s, n := range l.Used {
		searched += int64(n) * b.cover.stock[s].cost
	}
	l.FewestProven = found.bound >= searched
	return l
}

func (b *sheetBench) rank(u use) int {
	if b.job.Sheets[u.stock].InHand {
		return u.stock
	}
	return len(b.job.Sheets) + u.stock
}

// name gives the tiles of a pattern the job's pieces and takes them from left.
func (b *sheetBench) name(u use, root *room, left []int) SheetPattern {
	queue := make([][]int, len(b.tiles))
	times := u.times
	for i, n := range u.pattern {
		for _, p := range b.pieces[i] {
			got := min(n, left[p])
			for range got {
				queue[i] = append(queue[i], p)
			}
			n -= got
			if got > 0 {
				times = min(times, left[p]/got)
			}
		}
	}
	for _, pieces := range queue {
		for _, p := range pieces {
			left[p] -= times
		}
	}
	return SheetPattern{u.stock, times, b.region(root, queue)}
}

// region turns a room into a region: the kerf goes off its sides again.
func (b *sheetBench) region(r *room, queue [][]int) *Region {
	if r == nil || length.Length(r.w) <= b.job.Kerf || length.Length(r.h) <= b.job.Kerf {
		return nil
	}
	g := &Region{
		X: b.job.Trim + length.Length(r.x), Y: b.job.Trim + length.Length(r.y),
		Width: length.Length(r.w) - b.job.Kerf, Height: length.Length(r.h) - b.job.Kerf,
	}
	switch {
	case r.low != nil:
		g.Kind, g.Line, g.At = CutRegion, r.line, length.Length(r.at)-b.job.Kerf
		g.Low, g.High = b.region(r.low, queue), b.region(r.high, queue)
	case r.tile >= 0:
		g.Kind, g.Turned, g.Piece = PieceRegion, r.turned, queue[r.tile][0]
		queue[r.tile] = queue[r.tile][1:]
	default:
		g.Kind = RestRegion
		g.Kept = min(g.Width, g.Height) >= b.job.LeastOffcut
	}
	return g
}
