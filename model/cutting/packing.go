package cutting

import (
	"math/rand/v2"
	"sort"
)

// This file packs tiles one after the other into free rooms, each place cut out
// by edge-to-edge cuts. It is quick and proves nothing; many orders and rules
// are tried and the cheapest packing kept.

// A packed sheet.
type packed struct {
	sheet   int
	root    *room
	pattern []int
}

// A packer fills sheets.
type packer struct {
	tiles  []tile
	demand []int
	rooms  [][2]int64
	stock  []coverStock
	steps  int // spent
}

// A packRule is one way to choose: the order of the tiles, which free room is
// taken, and which way the rest of it is cut.
type packRule struct {
	order  []int // tiles, first to last
	snug   bool  // the room that leaves the narrowest strip, not the smallest room
	along  int   // rest cut: 0 leaves the larger room, 1 upright, 2 level
	wander *rand.Rand
}

// packing seeds: fixed, so that a job always gets the same layout.
const packSeed1, packSeed2 = 0x5347, 0x1977

// mostPackings is how many packings are tried at most.
const mostPackings = 600

// pack tries rule after rule within so many steps and is the cheapest packing;
// nil when none places all. Every sheet packed goes to the pool.
func (p *packer) pack(budget int, enough int64, pool *pool) ([]packed, int64) {
	var best []packed
	var least int64
	rnd := rand.New(rand.NewPCG(packSeed1, packSeed2))
	orders := p.orders()
	for n := 0; n < mostPackings && p.steps < budget; n++ {
		rule := packRule{order: orders[n%len(orders)], snug: n/len(orders)%2 == 0, along: n / len(orders) / 2 % 3}
		if n >= len(orders)*6 {
			rule.order, rule.wander = shaken(rule.order, rnd), rnd
		}
		got, cost := p.once(rule)
		for _, s := range got {
			if len(pool.onSheet[s.sheet]) < mostPooled {
				pool.add(s)
			}
		}
		if got != nil && (best == nil || cost < least) {
			for _, s := range got {
				pool.add(s)
			}
			best, least = got, cost
			if least <= enough {
				break
			}
		}
	}
	return best, least
}

// orders are the tiles by area, by longer side, by height, width and perimeter.
func (p *packer) orders() [][]int {
	keys := []func(t tile) float64{
		func(t tile) float64 { return float64(float64(t.w) * float64(t.h)) },
		func(t tile) float64 { return float64(max(t.w, t.h)) },
		func(t tile) float64 { return float64(t.h) },
		func(t tile) float64 { return float64(t.w) },
		func(t tile) float64 { return float64(t.w + t.h) },
	}
	var orders [][]int
	for _, key := range keys {
		order := make([]int, len(p.tiles))
		for i := range order {
			order[i] = i
		}
		sort.SliceStable(order, func(a, b int) bool { return key(p.tiles[order[a]]) > key(p.tiles[order[b]]) })
		orders = append(orders, order)
	}
	return orders
}

// shaken is the order with a few neighbours exchanged.
func shaken(order []int, rnd *rand.Rand) []int {
	order = append([]int(nil), order...)
	for range 1 + len(order)/3 {
		if len(order) > 1 {
			k := rnd.IntN(len(order) - 1)
			order[k], order[k+1] = order[k+1], order[k]
		}
	}
	return order
}

// once fills sheet after sheet, each time the one that costs least per area
// filled.
func (p *packer) once(rule packRule) ([]packed, int64) {
	left := append([]int(nil), p.demand...)
	avail := make([]int, len(p.stock))
	for s, stock := range p.stock {
		avail[s] = stock.avail
	}
	var all []packed
	cost := int64(0)
	for firstLeft(left) >= 0 {
		best, rate := packed{}, 0.0
		for s, stock := range p.stock {
			if avail[s] == 0 {
				continue
			}
			got, area := p.fill(s, left, rule)
			if r := float64(stock.cost) / (1 + area); area > 0 && (best.root == nil || r < rate) {
				best, rate = got, r
			}
		}
		if best.root == nil {
			return nil, 0
		}
		for i, n := range best.pattern {
			left[i] -= n
		}
		if avail[best.sheet] > 0 {
			avail[best.sheet]--
		}
		all = append(all, best)
		cost += p.stock[best.sheet].cost
	}
	return all, cost
}

// fill packs one sheet and is the area packed.
func (p *packer) fill(sheet int, left []int, rule packRule) (packed, float64) {
	got := packed{sheet, newRoom(0, 0, p.rooms[sheet][0], p.rooms[sheet][1]), make([]int, len(left))}
	free := []*room{got.root}
	area := 0.0
	for _, i := range rule.order {
		if !p.tiles[i].fits[sheet] {
			continue
		}
		for got.pattern[i] < left[i] {
			p.steps += 1 + len(free)/4
			at, turned := p.choose(free, p.tiles[i], rule)
			if at < 0 {
				break
			}
			rests := p.place(free[at], i, turned, rule)
			free = append(append(free[:at:at], free[at+1:]...), rests...)
			got.pattern[i]++
			area += float64(float64(p.tiles[i].w) * float64(p.tiles[i].h))
		}
	}
	return got, area
}

// choose is the free room the tile goes into, -1 for none.
func (p *packer) choose(free []*room, t tile, rule packRule) (at int, turned bool) {
	at = -1
	least := 0.0
	for k, r := range free {
		for _, turn := range []bool{false, true} {
			w, h := t.w, t.h
			if turn {
				w, h = h, w
			}
			if w > r.w || h > r.h || turn && !t.turn {
				continue
			}
			badness := float64(float64(r.w)*float64(r.h)) - float64(float64(w)*float64(h))
			if rule.snug {
				badness = float64(min(r.w-w, r.h-h))
			}
			if rule.wander != nil {
				badness *= 0.9 + 0.2*rule.wander.Float64()
			}
			if at < 0 || badness < least {
				at, turned, least = k, turn, badness
			}
		}
	}
	return at, turned
}

// place cuts the tile out of the room's lower left corner and is the rests.
func (p *packer) place(r *room, i int, turned bool, rule packRule) []*room {
	w, h := p.tiles[i].w, p.tiles[i].h
	if turned {
		w, h = h, w
	}
	first := Upright
	switch rule.along {
	case 0:
		if float64(float64(r.w)*float64(r.h-h)) > float64(float64(r.h)*float64(r.w-w)) {
			first = Level
		}
	case 2:
		first = Level
	}
	var rests []*room
	for _, line := range []SawLine{first, 1 - first} {
		at, whole := w, r.w
		if line == Level {
			at, whole = h, r.h
		}
		if at < whole {
			low, high := r.cut(line, at)
			rests = append(rests, high)
			r = low
		}
	}
	r.tile, r.turned = i, turned
	return rests
}
