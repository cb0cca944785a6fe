package cutting

// A cover is the problem both engines share: meet the demand of each item with
// patterns cut from stocks at least cost. What fits on a stock only the oracle
// knows. Items are ordered from the largest to the smallest.
type cover struct {
	demand []int
	stock  []coverStock
	oracle oracle
	// measures are superadditive sizes: no pattern of stock s holds more than
	// holds[s] of them. Every mix of stocks must hold the demand's sizes.
	measures []measure
	budget   int // search steps left
	// proposing tells that the oracle does not know every pattern: its
	// bound and what it refutes hold for the patterns it knows only.
	proposing bool
}

// A coverStock is a stock with its cost in the search's own whole numbers.
type coverStock struct {
	cost  int64 // more than 0
	avail int   // unlimited: negative
}

// A measure is one way to weigh a demand against stocks.
type measure struct {
	size  []int64 // per item
	holds []int64 // per stock
}

// need is the size of the demand.
func (m measure) need(demand []int) int64 {
	sum := int64(0)
	for i, n := range demand {
		sum += m.size[i] * int64(n)
	}
	return sum
}

// An oracle knows which patterns fit a stock. A pattern counts items; every
// part of a pattern that fits must fit as well.
type oracle interface {
	// best is a pattern within limit of great value, and an upper bound on the
	// value of every pattern within limit. steps is the effort.
	best(stock int, value []int64, limit []int) (found choice)
	// each visits the patterns within limit that hold item first, that no
	// further item fits and whose value is at least least, until visit is false.
	each(q query, visit func(pattern []int) bool)
	// fill is a quick, well filled pattern within limit holding item first, or
	// nil where the item does not fit the stock.
	fill(stock, first int, limit []int) []int
}

type choice struct {
	pattern      []int
	value, upper int64
	steps        int
}

type query struct {
	stock, first int
	value        []int64
	limit        []int
	least        int64
}

// A use is a pattern cut a number of times from a stock.
type use struct {
	stock   int
	pattern []int
	times   int
}

// A result is what the search has found and proven.
type result struct {
	uses  []use
	cost  int64
	bound int64 // proven: no cover costs less
	found bool
	steps int
}

// solve finds a cover of little cost and a proven lower bound.
func (c *cover) solve() result {
	whole := c.budget
	best := c.greedy(c.demand, c.avail())
	master := c.relax(c.demand, c.avail())
	dual := c.safeDual(master, c.demand, c.avail())
	bound := c.nextMix(dual.bound(c.demand, c.avail()), best)
	best = c.dives(best, bound)
	best, bound = c.deepen(dual, best, bound)
	best.bound, best.steps = bound, whole-max(c.budget, 0)
	if best.found && bound > best.cost {
		best.bound = best.cost
	}
	return best
}

// avail is how many of each stock there are.
func (c *cover) avail() []int {
	avail := make([]int, len(c.stock))
	for s, stock := range c.stock {
		avail[s] = stock.avail
	}
	return avail
}

// greedy takes, again and again, the stock that costs least per measure filled
// by a quick pattern with the largest item left, as often as it goes.
func (c *cover) greedy(demand, avail []int) result {
	left, stock := append([]int(nil), demand...), append([]int(nil), avail...)
	var r result
	for first := firstLeft(left); first >= 0; first = firstLeft(left) {
		s, pattern := c.cheapestFill(first, left, stock)
		if pattern == nil {
			return result{}
		}
		u := use{s, pattern, mostTimes(pattern, left, stock[s])}
		r.cost += c.take(u, left, stock)
		r.uses = append(r.uses, u)
	}
	r.found = true
	return r
}

func (c *cover) cheapestFill(first int, left, avail []int) (stock int, pattern []int) {
	bestRate := 0.0
	for s := range c.stock {
		if avail[s] == 0 {
			continue
		}
		p := c.oracle.fill(s, first, left)
		if p == nil {
			continue
		}
		rate := float64(c.stock[s].cost) / (1 + c.size(p))
		if pattern == nil || rate < bestRate {
			stock, pattern, bestRate = s, p, rate
		}
	}
	return stock, pattern
}

// size is the pattern's part of the first measure, as the items' share.
func (c *cover) size(pattern []int) float64 {
	whole := 0.0
	sizes := c.oracle.(sizer).sizes()
	for i, n := range pattern {
		whole += float64(float64(n) * float64(sizes[i]))
	}
	return whole
}

// A sizer tells the items' sizes in the first measure.
type sizer interface{ sizes() []int64 }

// take cuts the use and is its cost.
func (c *cover) take(u use, left, avail []int) int64 {
	for i, n := range u.pattern {
		left[i] -= n * u.times
	}
	if avail[u.stock] >= 0 {
		avail[u.stock] -= u.times
	}
	return c.stock[u.stock].cost * int64(u.times)
}

// firstLeft is the largest item still to be cut, -1 when all are.
func firstLeft(left []int) int {
	for i, n := range left {
		if n > 0 {
			return i
		}
	}
	return -1
}

// mostTimes is how often the pattern can be cut without cutting too much.
func mostTimes(pattern, left []int, avail int) int {
	times := -1
	for i, n := range pattern {
		if n > 0 && (times < 0 || left[i]/n < times) {
			times = left[i] / n
		}
	}
	if avail >= 0 && times > avail {
		times = avail
	}
	return times
}

// within tells whether the pattern asks for nothing beyond limit.
func within(pattern, limit []int) bool {
	for i, n := range pattern {
		if n > limit[i] {
			return false
		}
	}
	return true
}
