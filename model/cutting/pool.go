package cutting

import "sort"

// A pool oracle answers for sheets too full to list: its patterns are the
// sheets packed so far, and it packs more for the values it is asked about. It
// may miss patterns that fit, so no bound comes from it, only better layouts.
type pool struct {
	p       *packer
	sheets  []packed
	known   map[string]int // use key of a pattern, or of what is left of one, to its sheet
	onSheet [][]int
	size    []int64
}

func newPool(p *packer, size []int64) *pool {
	return &pool{p: p, known: map[string]int{}, onSheet: make([][]int, len(p.rooms)), size: size}
}

func (o *pool) sizes() []int64 { return o.size }

// mostPooled is how many packed sheets of one stock the pool takes before it is
// asked for values.
const mostPooled = 300

// add remembers a packed sheet.
func (o *pool) add(s packed) {
	key := useKey(use{s.sheet, s.pattern, 1})
	if _, ok := o.known[key]; ok {
		return
	}
	o.known[key] = len(o.sheets)
	o.onSheet[s.sheet] = append(o.onSheet[s.sheet], len(o.sheets))
	o.sheets = append(o.sheets, s)
}

// clipped is the pattern without what is beyond the limit, and its value.
func clipped(pattern []int, value []int64, limit []int) ([]int, int64) {
	cut := make([]int, len(pattern))
	sum := int64(0)
	for i, n := range pattern {
		cut[i] = min(n, limit[i])
		sum += int64(cut[i]) * value[i]
	}
	return cut, sum
}

// clippedValue is clipped's value alone.
func clippedValue(pattern []int, value []int64, limit []int) int64 {
	sum := int64(0)
	for i, n := range pattern {
		if n > 0 {
			sum += int64(min(n, limit[i])) * value[i]
		}
	}
	return sum
}

// best packs the sheet by value per area, and looks through the pool.
func (o *pool) best(stock int, value []int64, limit []int) choice {
	before := o.p.steps
	for _, rule := range o.rules(value) {
		got, area := o.p.fill(stock, limit, rule)
		if area > 0 {
			o.add(got)
		}
	}
	best, most := -1, int64(0)
	for _, k := range o.onSheet[stock] {
		if v := clippedValue(o.sheets[k].pattern, value, limit); v > most {
			best, most = k, v
		}
	}
	found := choice{value: most, upper: most, steps: 1 + len(o.onSheet[stock])/8 + 2*(o.p.steps-before)}
	if best >= 0 {
		found.pattern = o.clip(best, limit)
	}
	return found
}

// rules order the tiles by value per area and by value.
func (o *pool) rules(value []int64) []packRule {
	keys := []func(i int) float64{
		func(i int) float64 { return float64(value[i]) / float64(o.size[i]+1) },
		func(i int) float64 { return float64(value[i]) },
	}
	var rules []packRule
	for _, key := range keys {
		var order []int
		for i, v := range value {
			if v > 0 {
				order = append(order, i)
			}
		}
		sort.SliceStable(order, func(a, b int) bool { return key(order[a]) > key(order[b]) })
		for along := range 3 {
			rules = append(rules, packRule{order: order, snug: true, along: along})
		}
	}
	return rules
}

// clip is what is left of a pool sheet's pattern within limit; its sheet is
// remembered.
func (o *pool) clip(k int, limit []int) []int {
	pattern, _ := clipped(o.sheets[k].pattern, o.size, limit)
	key := useKey(use{o.sheets[k].sheet, pattern, 1})
	if _, ok := o.known[key]; !ok {
		o.known[key] = k
	}
	return pattern
}

// each visits what the pool's sheets hold within limit, each pattern once.
func (o *pool) each(q query, visit func(pattern []int) bool) {
	seen := map[string]bool{}
	for _, k := range o.onSheet[q.stock] {
		p := o.sheets[k].pattern
		if p[q.first] == 0 || clippedValue(p, q.value, q.limit) < q.least {
			continue
		}
		pattern := o.clip(k, q.limit)
		if key := groupKey(pattern); !seen[key] {
			seen[key] = true
			if !visit(pattern) {
				return
			}
		}
	}
}

// fill is the pool's fullest sheet that holds the tile.
func (o *pool) fill(stock, first int, limit []int) []int {
	best, most := -1, int64(0)
	for _, k := range o.onSheet[stock] {
		if o.sheets[k].pattern[first] == 0 {
			continue
		}
		if v := clippedValue(o.sheets[k].pattern, o.size, limit); best < 0 || v > most {
			best, most = k, v
		}
	}
	if best < 0 {
		return nil
	}
	return o.clip(best, limit)
}

// root is the room tree of a use: that of its sheet, less what was clipped off.
func (o *pool) root(u use) *room {
	quota := append([]int(nil), u.pattern...)
	return o.sheets[o.known[useKey(u)]].root.keep(quota)
}

// keep is a copy of the room with no more tiles than the quota; a room left
// without tiles is not cut.
func (r *room) keep(quota []int) *room {
	c := *r
	switch {
	case r.low != nil:
		c.low, c.high = r.low.keep(quota), r.high.keep(quota)
		if c.low.empty() && c.high.empty() {
			return newRoom(r.x, r.y, r.w, r.h)
		}
	case r.tile >= 0 && quota[r.tile] > 0:
		quota[r.tile]--
	case r.tile >= 0:
		c.tile = -1
	}
	return &c
}

func (r *room) empty() bool { return r.low == nil && r.tile < 0 }
