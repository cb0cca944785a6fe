package cutting

import "math/bits"

// A dual is a set of shadow prices checked in whole numbers: for every stock s
// and every pattern p on it Σ value·p ≤ scale·cost[s] + rent[s]. So
// Σ value·demand − Σ rent·avail ≤ scale·cost of every cover.
type dual struct {
	value []int64 // of one more of each item
	rent  []int64 // of a limited stock; 0 for an unlimited one
	scale int64
}

// scale is the power of two by which duals are multiplied before they are
// rounded: the largest that keeps one board's value under 2^44, so that the
// sum over mostParts boards stays under 2^59 and a value is exact in float64.
func (c *cover) scale() int64 {
	dearest := int64(1)
	for _, s := range c.stock {
		dearest = max(dearest, s.cost)
	}
	scale := int64(1)
	for scale < 1<<30 && dearest*64*scale < 1<<43 {
		scale *= 2
	}
	return scale
}

// safeDual rounds the master's shadow prices to whole numbers and repairs them
// until they hold for every pattern: an unlimited stock scales all values down
// (Farley 1990), a limited one raises its rent.
func (c *cover) safeDual(m *master, demand, avail []int) dual {
	d := dual{value: m.values(), rent: make([]int64, len(c.stock)), scale: m.scale}
	num, den := int64(1), int64(1)
	worth := make([]int64, len(c.stock))
	for s := range c.stock {
		got := c.oracle.best(s, d.value, demand)
		c.budget -= got.steps
		worth[s] = got.upper
		limit := c.stock[s].cost * d.scale
		if avail[s] < 0 && worth[s] > limit && less(limit, worth[s], num, den) {
			num, den = limit, worth[s]
		}
	}
	for i := range d.value {
		d.value[i] = mulDiv(d.value[i], num, den)
	}
	for s := range c.stock {
		if avail[s] >= 0 {
			d.rent[s] = max(0, mulDivUp(worth[s], num, den)-c.stock[s].cost*d.scale)
		}
	}
	return d
}

// bound is the proven least cost of meeting the demand.
func (d dual) bound(demand, avail []int) int64 {
	sum := d.scaled(demand, avail)
	if sum <= 0 {
		return 0
	}
	return (sum + d.scale - 1) / d.scale
}

// mostScaled keeps sums of scaled values inside 63 bits.
const mostScaled = int64(1) << 61

// scaled is the bound times scale, not rounded.
func (d dual) scaled(demand, avail []int) int64 {
	sum := int64(0)
	for i, n := range demand {
		sum += d.value[i] * int64(n)
	}
	for s, r := range d.rent {
		switch {
		case r == 0 || avail[s] == 0:
		case r > mostScaled/int64(avail[s]):
			return -mostScaled // rent beyond 62 bits: this dual bounds nothing
		default:
			sum = max(sum-r*int64(avail[s]), -mostScaled)
		}
	}
	return sum
}

// less tells whether a/b < c/d, all positive, in 128 bits.
func less(a, b, c, d int64) bool {
	h1, l1 := bits.Mul64(uint64(a), uint64(d))
	h2, l2 := bits.Mul64(uint64(c), uint64(b))
	return h1 < h2 || h1 == h2 && l1 < l2
}

// mulDiv is a·num/den rounded down, mulDivUp rounded up; num ≤ den.
func mulDiv(a, num, den int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(num))
	q, _ := bits.Div64(hi, lo, uint64(den))
	return int64(q)
}

func mulDivUp(a, num, den int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(num))
	q, r := bits.Div64(hi, lo, uint64(den))
	if r > 0 {
		q++
	}
	return int64(q)
}

// mostMixes is how many mixes of stocks nextMix looks at before it settles for
// the weaker bound it was given.
const mostMixes = 200_000

// nextMix is the least cost, not under least, that some mix of stocks has
// whose measures hold the demand. Every cover is such a mix, so a proven bound
// may be lifted to it. ceiling, where found, ends the search.
func (c *cover) nextMix(least int64, ceiling result) int64 {
	m := mixes{c: c, least: least, best: -1, left: mostMixes}
	if ceiling.found {
		m.best = max(ceiling.cost, least)
	}
	if m.best == least {
		return least
	}
	m.need = make([]int64, len(c.measures))
	for k, ms := range c.measures {
		m.need[k] = ms.need(c.demand)
	}
	m.walk(0, 0, m.need)
	if m.left <= 0 || m.best < 0 {
		return least
	}
	return m.best
}

type mixes struct {
	c     *cover
	least int64
	best  int64 // -1: none yet
	left  int
	need  []int64
}

// walk tries every count of the stocks from s on.
func (m *mixes) walk(s int, cost int64, need []int64) {
	m.left--
	if m.left <= 0 || (m.best >= 0 && cost >= m.best) {
		return
	}
	stock := m.c.stock[s]
	if s == len(m.c.stock)-1 {
		m.last(s, cost, need)
		return
	}
	rest := append([]int64(nil), need...)
	for n := 0; stock.avail < 0 || n <= stock.avail; n++ {
		m.walk(s+1, cost+int64(n)*stock.cost, rest)
		if m.left <= 0 || (m.best >= 0 && cost+int64(n+1)*stock.cost >= m.best) {
			return
		}
		if n > mostParts {
			return
		}
		for k := range rest {
			rest[k] -= m.c.measures[k].holds[s]
		}
	}
}

// last is the least count of the last stock that holds what is left and brings
// the cost up to least.
func (m *mixes) last(s int, cost int64, need []int64) {
	stock := m.c.stock[s]
	n := int64(0)
	if cost < m.least {
		n = (m.least - cost + stock.cost - 1) / stock.cost
	}
	for k, left := range need {
		if left <= 0 {
			continue
		}
		holds := m.c.measures[k].holds[s]
		if holds <= 0 {
			return
		}
		n = max(n, (left+holds-1)/holds)
	}
	if stock.avail >= 0 && n > int64(stock.avail) {
		return
	}
	if whole := cost + n*stock.cost; m.best < 0 || whole < m.best {
		m.best = whole
	}
}
