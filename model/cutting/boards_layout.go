package cutting

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"stilewright/model/length"
)

// LayOutBoards lays the job's parts out on its boards: least cost, then fewest
// boards, then fewest different patterns, then long offcuts. Faults of the job
// come back joined; RuleShort means that the boards there are do not hold the
// parts, or that the budget ended before a layout was found.
func LayOutBoards(j BoardJob) (BoardLayout, error) {
	if err := j.Faults(); err != nil {
		return BoardLayout{}, err
	}
	b := j.bench()
	found := b.cover.solve()
	if !found.found {
		return BoardLayout{}, j.short()
	}
	uses := found.uses
	if polished := b.polish(uses); polished != nil {
		uses = polished
	}
	return b.layout(uses, found), nil
}

// A boardBench is a job in the search's own terms.
type boardBench struct {
	job    BoardJob
	cover  *cover
	rods   *rods
	items  []boardItem
	unit   int64 // one step of money: the greatest common divisor of the prices
	boards int64 // costs count unit·boards for money and 1 for a board
}

// A boardItem is all parts of one length that may come from the same boards.
type boardItem struct {
	length length.Length
	parts  []int // indices into the job's Parts
	fits   []bool
}

// bench sets the job up. A stock's cost in the search is money·boards + 1, so
// that the least cost with the fewest boards is the least sum.
func (j BoardJob) bench() boardBench {
	b := boardBench{job: j, items: j.items(), boards: 1}
	demand := make([]int, len(b.items))
	for i, it := range b.items {
		for _, p := range it.parts {
			demand[i] += j.Parts[p].Quantity
		}
		b.boards += int64(demand[i])
	}
	b.rods = &rods{}
	for _, it := range b.items {
		w := int64(it.length + j.Kerf)
		b.rods.weight = append(b.rods.weight, w)
		b.rods.step = gcd(b.rods.step, w)
	}
	for s, board := range j.Boards {
		price, _ := j.price(board)
		b.unit = gcd(b.unit, int64(price))
		b.rods.room = append(b.rods.room, int64(j.clear(board)+j.Kerf))
		fits := make([]bool, len(b.items))
		for i, it := range b.items {
			fits[i] = it.fits[s]
		}
		b.rods.fits = append(b.rods.fits, fits)
	}
	b.cover = &cover{demand: demand, oracle: b.rods, budget: steps(j.Budget), stock: b.stock()}
	b.cover.measures = b.measures()
	return b
}

func (b *boardBench) stock() []coverStock {
	stock := make([]coverStock, len(b.job.Boards))
	for s, board := range b.job.Boards {
		price, _ := b.job.price(board)
		money := int64(0)
		if b.unit > 0 {
			money = int64(price) / b.unit
		}
		stock[s] = coverStock{money*b.boards + 1, -1}
		if board.Available > 0 {
			stock[s].avail = min(board.Available, int(b.boards))
		}
	}
	return stock
}

// items groups the parts, the longest first.
func (j BoardJob) items() []boardItem {
	index := map[string]int{}
	var items []boardItem
	for p, part := range j.Parts {
		fits := make([]bool, len(j.Boards))
		for s, board := range j.Boards {
			fits[s] = allowed(part.From, board.Name) && part.Length <= j.clear(board)
		}
		key := fmt.Sprint(part.Length, fits)
		at, ok := index[key]
		if !ok {
			at = len(items)
			index[key] = at
			items = append(items, boardItem{length: part.Length, fits: fits})
		}
		items[at].parts = append(items[at].parts, p)
	}
	sort.SliceStable(items, func(a, b int) bool { return items[a].length > items[b].length })
	return items
}

// measures weigh the demand: by length, and by length with one threshold e,
// where what is under e counts nothing and what is over room − e counts as the
// whole room (a superadditive dual feasible function, Fekete and Schepers 2001).
func (b *boardBench) measures() []measure {
	largest := slices.Max(b.rods.room)
	thresholds := []int64{0}
	for _, w := range b.rods.weight {
		if 2*w <= largest && len(thresholds) < mostThresholds {
			thresholds = append(thresholds, w)
		}
	}
	var measures []measure
	for _, e := range thresholds {
		m := measure{}
		for _, w := range b.rods.weight {
			m.size = append(m.size, threshold(w, e, largest))
		}
		for _, room := range b.rods.room {
			m.holds = append(m.holds, threshold(room, e, largest))
		}
		measures = append(measures, m)
	}
	return measures
}

// mostThresholds bounds the measures tried per direction.
const mostThresholds = 24

// threshold is the dual feasible function with threshold e ≤ whole/2.
func threshold(x, e, whole int64) int64 {
	switch {
	case x > whole-e:
		return whole
	case x < e:
		return 0
	}
	return x
}

// short says what there is and what is needed.
func (j BoardJob) short() error {
	var need, have length.Length
	for _, p := range j.Parts {
		need += p.Length * length.Length(p.Quantity)
	}
	var names []string
	for _, b := range j.Boards {
		if b.Available > 0 {
			have += j.clear(b) * length.Length(min(b.Available, mostParts))
			names = append(names, b.Name)
		}
	}
	var f faults
	f.add(RuleShort, "", "the parts add up to %s before kerfs; the limited boards (%s) offer %s and no layout was found; add boards",
		mm(need), strings.Join(names, ", "), mm(have))
	return f.err()
}

// layout turns uses of items into cuts of parts.
func (b *boardBench) layout(uses []use, found result) BoardLayout {
	_, measure := b.job.price(b.job.Boards[0])
	l := BoardLayout{Used: make([]int, len(b.job.Boards)), Measure: measure, Steps: found.steps}
	uses = gather(uses)
	b.sort(uses)
	left := make([]int, len(b.job.Parts))
	for p, part := range b.job.Parts {
		left[p] = part.Quantity
	}
	for _, u := range uses {
		for u.times > 0 {
			p := b.cut(u, left)
			l.Patterns = append(l.Patterns, p)
			u.times -= p.Times
		}
	}
	l.sum(b.job)
	l.Bound = Cost(found.bound / b.boards * b.unit)
	l.Bound = min(l.Bound, l.Cost)
	l.Proven = l.Bound == l.Cost
	l.FewestProven = found.bound >= b.searchCost(l)
	return l
}

func (b *boardBench) searchCost(l BoardLayout) int64 {
	sum := int64(0)
	for s, n := range l.Used {
		sum += int64(n) * b.cover.stock[s].cost
	}
	return sum
}

// sort puts boards in hand first, then the job's order, then the most used.
func (b *boardBench) sort(uses []use) {
	rank := func(u use) int {
		if b.job.Boards[u.stock].InHand {
			return u.stock
		}
		return len(b.job.Boards) + u.stock
	}
	sort.SliceStable(uses, func(i, k int) bool {
		if rank(uses[i]) != rank(uses[k]) {
			return rank(uses[i]) < rank(uses[k])
		}
		if uses[i].times != uses[k].times {
			return uses[i].times > uses[k].times
		}
		return slices.Compare(uses[i].pattern, uses[k].pattern) > 0
	})
}

// cut names the parts of a pattern and takes them from left. Times is how often
// the same parts are to be had.
func (b *boardBench) cut(u use, left []int) BoardPattern {
	taken := make([]int, len(left))
	var order []int
	for i, n := range u.pattern {
		for _, p := range b.items[i].parts {
			got := min(n, left[p])
			for range got {
				order = append(order, p)
			}
			taken[p] += got
			n -= got
		}
	}
	times := u.times
	for p, n := range taken {
		if n > 0 {
			times = min(times, left[p]/n)
		}
	}
	for p, n := range taken {
		left[p] -= n * times
	}
	pattern := BoardPattern{Board: u.stock, Times: times}
	at := b.job.TrimStart
	for _, p := range order {
		end := at + b.job.Parts[p].Length
		pattern.Cuts = append(pattern.Cuts, Cut{p, at, end})
		at = end + b.job.Kerf
	}
	pattern.Offcut = max(b.job.Boards[u.stock].Length-at, 0)
	pattern.Kept = pattern.Offcut > 0 && pattern.Offcut >= b.job.LeastOffcut
	return pattern
}

// sum adds the patterns up.
func (l *BoardLayout) sum(j BoardJob) {
	for _, p := range l.Patterns {
		times := length.Length(p.Times)
		l.Used[p.Board] += p.Times
		l.Count += p.Times
		price, _ := j.price(j.Boards[p.Board])
		l.Cost += price * Cost(p.Times)
		l.Stock += j.Boards[p.Board].Length * times
		for _, c := range p.Cuts {
			l.Parts += (c.End - c.Start) * times
		}
		if p.Kept {
			l.Offcuts += p.Offcut * times
		}
	}
	l.Waste = l.Stock - l.Parts - l.Offcuts
}
