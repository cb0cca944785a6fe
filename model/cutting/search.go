package cutting

import "sort"

// This file turns the relaxation into whole patterns: dives for a good cover,
// and an exact search that either finds a cheaper one or proves there is none.

// mostDives is how many dives are made before the exact search: the first goes
// straight, each further one strays once, at another depth. (Our choice: on
// 120-item packing problems one to four suffice.)
const mostDives = 12

// dives improves best by rounding the relaxation, until it meets the bound.
func (c *cover) dives(best result, bound int64) result {
	for stray := 0; stray < mostDives; stray++ {
		if best.found && best.cost <= bound || c.budget <= 0 {
			break
		}
		if got := c.dive(stray); got.found && (!best.found || got.cost < best.cost) {
			best = got
		}
	}
	return best
}

// dive solves the relaxation, cuts what it cuts a whole number of times, else
// the pattern it cuts most, and goes on with what is left.
func (c *cover) dive(stray int) result {
	left, avail := append([]int(nil), c.demand...), c.avail()
	var r result
	for depth := 1; firstLeft(left) >= 0; depth++ {
		if c.budget <= 0 {
			return result{}
		}
		if rest := c.endgame(left, avail); rest.found {
			r.uses, r.cost = append(r.uses, rest.uses...), r.cost+rest.cost
			break
		}
		chosen := c.rounded(c.relax(left, avail), left, avail, depth == stray)
		if len(chosen) == 0 {
			rest := c.greedy(left, avail)
			if !rest.found {
				return result{}
			}
			r.uses, r.cost = append(r.uses, rest.uses...), r.cost+rest.cost
			break
		}
		for _, u := range chosen {
			r.cost += c.take(u, left, avail)
			r.uses = append(r.uses, u)
		}
	}
	r.found = true
	return r
}

// A dive hands over to the exact search when it has mostEndgame parts left, and
// that search may spend endgameBudget. (Our choice: about eight boards of three
// parts, which the search closes in a few thousand steps.)
const (
	mostEndgame   = 24
	endgameBudget = 20_000
)

// endgame covers a small rest at least cost, or finds nothing.
func (c *cover) endgame(left, avail []int) result {
	count := 0
	for _, n := range left {
		count += n
	}
	if count > mostEndgame || count == 0 {
		return result{}
	}
	rest := &cover{demand: append([]int(nil), left...), oracle: c.oracle, proposing: c.proposing, measures: c.measures, budget: min(c.budget, endgameBudget)}
	for s, stock := range c.stock {
		rest.stock = append(rest.stock, coverStock{stock.cost, avail[s]})
	}
	whole := rest.budget
	best := rest.greedy(rest.demand, rest.avail())
	d := rest.safeDual(rest.relax(rest.demand, rest.avail()), rest.demand, rest.avail())
	best, bound := rest.deepen(d, best, rest.nextMix(d.bound(rest.demand, rest.avail()), best))
	c.budget -= whole - rest.budget
	if best.found && best.cost > bound {
		return result{} // not the best rest: let the dive go on
	}
	return best
}

// rounded are the uses a dive takes from one relaxation. A dive that strays
// takes the second best pattern.
func (c *cover) rounded(m *master, left, avail []int, strays bool) []use {
	type level struct {
		row  int
		frac float64
	}
	var whole []use
	var parts []level
	l, a := append([]int(nil), left...), append([]int(nil), avail...)
	for r, col := range m.basis {
		if col.kind != patternColumn || m.level[r] < 1e-6 {
			continue
		}
		n := int(m.level[r] + 1e-6)
		if n > 0 {
			n = min(n, mostTimes(col.pattern, l, a[col.stock]))
		}
		if n > 0 {
			u := use{col.stock, col.pattern, n}
			c.take(u, l, a)
			whole = append(whole, u)
			continue
		}
		parts = append(parts, level{r, m.level[r]})
	}
	if len(whole) > 0 && !strays {
		return whole
	}
	sort.SliceStable(parts, func(i, j int) bool { return parts[i].frac > parts[j].frac+1e-9 })
	if strays && len(parts) > 1 {
		parts = parts[1:]
	}
	for _, p := range parts {
		col := m.basis[p.row]
		if mostTimes(col.pattern, left, avail[col.stock]) > 0 {
			return []use{{col.stock, col.pattern, 1}}
		}
	}
	return whole
}

// deepen asks for a cover at each cost a mix of stocks can have, from the bound
// upwards. The first found is the cheapest; a cost refuted lifts the bound.
func (c *cover) deepen(d dual, best result, bound int64) (result, int64) {
	for !best.found || bound < best.cost {
		if c.budget <= 0 {
			break
		}
		e := exact{c: c, d: d, goal: bound, seen: map[string]int64{}}
		e.left, e.avail = append([]int(nil), c.demand...), c.avail()
		switch e.from(0) {
		case coverFound:
			return result{uses: gather(e.chosen), cost: e.cost(), found: true}, bound
		case outOfSteps:
			return best, bound
		}
		next := c.nextMix(bound+1, best)
		if !best.found && (next <= bound || c.hopeless(next)) {
			break
		}
		bound = next
	}
	return best, bound
}

// hopeless tells whether the cost is beyond buying every board there is.
func (c *cover) hopeless(cost int64) bool {
	all := int64(0)
	for _, s := range c.stock {
		if s.avail < 0 {
			return false
		}
		all += s.cost * int64(s.avail)
	}
	return cost > all
}

// gather joins equal uses, in order of their first one.
func gather(uses []use) []use {
	var joined []use
next:
	for _, u := range uses {
		for i, j := range joined {
			if j.stock == u.stock && same(j.pattern, u.pattern) {
				joined[i].times += u.times
				continue next
			}
		}
		joined = append(joined, u)
	}
	return joined
}

func same(a, b []int) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// An exact search covers the demand at no more than goal, one board at a time,
// each holding the largest item left. A board may waste of its shadow value
// only what the goal leaves over the bound; a state seen before at no higher
// cost is not entered again.
type exact struct {
	c      *cover
	d      dual
	goal   int64
	left   []int
	avail  []int
	chosen []use
	seen   map[string]int64
}

// proposedState is what a state costs more where the oracle looks through a pool
// of packed sheets for it.
const proposedState = 60

type outcome int

const (
	noCover outcome = iota
	coverFound
	outOfSteps
)

// A step is one board the search may cut next.
type step struct {
	stock   int
	pattern []int
	waste   int64
}

// mostSteps bounds the boards listed at one state, for the memory's sake.
const mostSteps = 50_000

func (e *exact) cost() int64 {
	sum := int64(0)
	for _, u := range e.chosen {
		sum += int64(u.times) * e.c.stock[u.stock].cost
	}
	return sum
}

func (e *exact) from(cost int64) outcome {
	first := firstLeft(e.left)
	if first < 0 {
		return coverFound
	}
	e.c.budget--
	if e.c.proposing {
		e.c.budget -= proposedState
	}
	spare := (e.goal-cost)*e.d.scale - e.d.scaled(e.left, e.avail)
	if spare < 0 {
		return noCover
	}
	key := e.key()
	if before, ok := e.seen[key]; ok && before <= cost {
		return noCover
	}
	e.seen[key] = cost
	steps, complete := e.steps(first, spare, e.goal-cost)
	for _, s := range steps {
		if e.c.budget <= 0 {
			return outOfSteps
		}
		if got := e.cut(s, cost); got != noCover {
			return got
		}
	}
	if !complete || e.c.budget <= 0 {
		return outOfSteps
	}
	return noCover
}

// cut tries one board and takes it back when it leads nowhere.
func (e *exact) cut(s step, cost int64) outcome {
	u := use{s.stock, s.pattern, 1}
	cost += e.c.take(u, e.left, e.avail)
	e.chosen = append(e.chosen, u)
	got := e.from(cost)
	if got == coverFound {
		return got
	}
	e.chosen = e.chosen[:len(e.chosen)-1]
	for i, n := range s.pattern {
		e.left[i] += n
	}
	if e.avail[s.stock] >= 0 {
		e.avail[s.stock]++
	}
	return got
}

// steps are the boards that hold the item first and waste no more than spare,
// the least wasteful first.
func (e *exact) steps(first int, spare, purse int64) (steps []step, complete bool) {
	complete = true
	for s, stock := range e.c.stock {
		if e.avail[s] == 0 || stock.cost > purse {
			continue
		}
		full := stock.cost*e.d.scale + e.d.rent[s]
		q := query{s, first, e.d.value, e.left, full - spare}
		e.c.oracle.each(q, func(pattern []int) bool {
			worth := int64(0)
			for i, n := range pattern {
				worth += int64(n) * e.d.value[i]
			}
			steps = append(steps, step{s, append([]int(nil), pattern...), full - worth})
			e.c.budget--
			complete = len(steps) < mostSteps && e.c.budget > 0
			return complete
		})
		if !complete {
			break
		}
	}
	sort.SliceStable(steps, func(i, j int) bool { return steps[i].waste < steps[j].waste })
	return steps, complete
}

// key names the state: what is left to cut, and of what.
func (e *exact) key() string {
	key := make([]byte, 0, 2*(len(e.left)+len(e.avail)))
	for _, n := range e.left {
		key = append(key, byte(n), byte(n>>8))
	}
	for _, n := range e.avail {
		if n >= 0 {
			key = append(key, byte(n), byte(n>>8))
		}
	}
	return string(key)
}
