package cutting

import "sort"

// A rods oracle answers for boards: a pattern fits when its weights (part plus
// kerf) add up to no more than the stock's room (clear length plus kerf).
type rods struct {
	weight []int64  // per item, descending
	room   []int64  // per stock, 0 or less when nothing fits
	fits   [][]bool // per stock and item: the part may come from that stock
	step   int64    // greatest common divisor of all weights
}

// Effort of one knapsack: branch and bound up to firstTry steps; then dynamic
// programming where the room is at most mostCells steps of length; then branch
// and bound up to lastTry, after which the fractional bound stands in.
const (
	firstTry  = 4_000
	lastTry   = 60_000
	mostCells = 60_000
)

func (r *rods) sizes() []int64 { return r.weight }

// fill puts in the item first and then the largest that still fit.
func (r *rods) fill(stock, first int, limit []int) []int {
	room := r.room[stock]
	if !r.fits[stock][first] || limit[first] == 0 || r.weight[first] > room {
		return nil
	}
	pattern := make([]int, len(limit))
	for i := first; i < len(limit); i++ {
		if !r.fits[stock][i] {
			continue
		}
		n := asOften(limit[i], room, r.weight[i])
		pattern[i] = n
		room -= int64(n) * r.weight[i]
	}
	return pattern
}

// best is the bounded knapsack.
func (r *rods) best(stock int, value []int64, limit []int) choice {
	k := knapsack{room: r.room[stock], weight: r.weight, value: value, limit: limit}
	for i, v := range value {
		if v > 0 && limit[i] > 0 && r.fits[stock][i] && r.weight[i] <= k.room {
			k.order = append(k.order, i)
		}
	}
	if len(k.order) == 0 {
		return choice{}
	}
	k.prepare()
	k.search(firstTry)
	if k.left > 0 {
		return k.answer(k.bestValue)
	}
	if cells := k.room / r.step; cells <= mostCells {
		return k.table(r.step, cells)
	}
	k.search(lastTry)
	if k.left > 0 {
		return k.answer(k.bestValue)
	}
	return k.answer(int64(float64(k.room)*k.rate[0]*(1+slack)) + 1)
}

// slack covers the rounding of a float64 bound on values under 2^53.
const slack = 1e-12

// A knapsack is one pricing problem.
type knapsack struct {
	room   int64
	weight []int64
	value  []int64
	limit  []int
	order  []int     // items worth taking, best value per length first
	rate   []float64 // value per length along order
	least  []int64   // least weight from a place of order on

	taken, kept []int
	bestValue   int64
	left, spent int
}

func (k *knapsack) prepare() {
	rate := func(i int) float64 { return float64(k.value[i]) / float64(k.weight[i]) }
	sort.SliceStable(k.order, func(a, b int) bool { return rate(k.order[a]) > rate(k.order[b]) })
	k.rate = make([]float64, len(k.order))
	k.least = make([]int64, len(k.order))
	for a := len(k.order) - 1; a >= 0; a-- {
		k.rate[a] = rate(k.order[a])
		k.least[a] = k.weight[k.order[a]]
		if a+1 < len(k.order) {
			k.least[a] = min(k.least[a], k.least[a+1])
		}
	}
}

// search runs branch and bound for so many steps; left is 0 when they ran out.
func (k *knapsack) search(steps int) {
	k.left, k.bestValue = steps, 0
	k.taken, k.kept = make([]int, len(k.order)), make([]int, len(k.order))
	k.branch(0, k.room, 0)
	k.spent += steps - k.left
}

func (k *knapsack) branch(a int, room, value int64) {
	if k.left <= 0 {
		return
	}
	k.left--
	if value > k.bestValue {
		k.bestValue = value
		copy(k.kept, k.taken)
		for b := a; b < len(k.kept); b++ {
			k.kept[b] = 0
		}
	}
	if a == len(k.order) || room < k.least[a] {
		return
	}
	item := k.order[a]
	for n := asOften(k.limit[item], room, k.weight[item]); n >= 0; n-- {
		inside := value + int64(n)*k.value[item]
		rest := room - int64(n)*k.weight[item]
		next := 0.0
		if a+1 < len(k.order) {
			next = k.rate[a+1]
		}
		if float64(inside)+float64(float64(rest)*next)*(1+slack) < float64(k.bestValue+1) {
			break // fewer of this item only lower the bound: its rate is the higher one
		}
		k.taken[a] = n
		k.branch(a+1, rest, inside)
	}
	k.taken[a] = 0
}

func (k *knapsack) answer(upper int64) choice {
	pattern := make([]int, len(k.limit))
	for a, n := range k.kept {
		pattern[k.order[a]] = n
	}
	return choice{pattern, k.bestValue, upper, 1 + k.spent/8}
}

// table is the knapsack by dynamic programming over the room in whole steps;
// multiplicities are split into powers of two.
func (k *knapsack) table(step, cells int64) choice {
	type lot struct{ item, n int }
	var lots []lot
	for _, i := range k.order {
		left := asOften(k.limit[i], k.room, k.weight[i])
		for n := 1; left > 0; n *= 2 {
			lots = append(lots, lot{i, min(n, left)})
			left -= min(n, left)
		}
	}
	best := make([]int64, cells+1)
	took := make([][]bool, len(lots))
	for a, l := range lots {
		took[a] = make([]bool, cells+1)
		w, v := int64(l.n)*k.weight[l.item]/step, int64(l.n)*k.value[l.item]
		for at := cells; at >= w; at-- {
			if with := best[at-w] + v; with > best[at] {
				best[at], took[a][at] = with, true
			}
		}
	}
	pattern, at := make([]int, len(k.limit)), cells
	for a := len(lots) - 1; a >= 0; a-- {
		if took[a][at] {
			pattern[lots[a].item] += lots[a].n
			at -= int64(lots[a].n) * k.weight[lots[a].item] / step
		}
	}
	return choice{pattern, best[cells], best[cells], 1 + k.spent/8 + int(cells)*len(lots)/256}
}

// each visits the maximal patterns that hold the item first.
func (r *rods) each(q query, visit func(pattern []int) bool) {
	w := walk{r: r, query: q, visit: visit, pattern: make([]int, len(q.limit))}
	room := r.room[q.stock]
	if !r.fits[q.stock][q.first] || q.limit[q.first] == 0 || r.weight[q.first] > room {
		return
	}
	w.rate = make([]float64, len(q.limit)+1)
	for i := len(q.limit) - 1; i >= 0; i-- {
		w.rate[i] = w.rate[i+1]
		if r.fits[q.stock][i] && q.limit[i] > 0 {
			w.rate[i] = max(w.rate[i], float64(q.value[i])/float64(r.weight[i]))
		}
	}
	w.from(q.first, room, 0)
}

// A walk enumerates patterns, larger items and more of them first.
type walk struct {
	r *rods
	query
	visit   func([]int) bool
	pattern []int
	rate    []float64 // best value per length of the items from i on
	stopped bool
}

func (w *walk) from(i int, room, value int64) {
	if float64(value)+float64(float64(room)*w.rate[i])*(1+slack) < float64(w.least) {
		return
	}
	if i == len(w.pattern) {
		if value >= w.least && w.maximal(room) && !w.visit(w.pattern) {
			w.stopped = true
		}
		return
	}
	if w.limit[i] == 0 || !w.r.fits[w.stock][i] || w.r.weight[i] > room {
		w.from(i+1, room, value)
		return
	}
	least := 0
	if i == w.first {
		least = 1
	}
	for n := asOften(w.limit[i], room, w.r.weight[i]); n >= least && !w.stopped; n-- {
		w.pattern[i] = n
		w.from(i+1, room-int64(n)*w.r.weight[i], value+int64(n)*w.value[i])
	}
	w.pattern[i] = 0
}

// maximal tells whether no further item fits the room left.
func (w *walk) maximal(room int64) bool {
	for i := len(w.pattern) - 1; i >= 0 && w.r.weight[i] <= room; i-- {
		if w.limit[i] > w.pattern[i] && w.r.fits[w.stock][i] {
			return false
		}
	}
	return true
}

// asOften is how often the weight goes into the room, at most limit.
func asOften(limit int, room, weight int64) int {
	return int(min(int64(limit), room/weight))
}
