package cutting

import "slices"

// mostPolished is how many boards a layout may have for its offcuts and
// patterns to be tidied; beyond it only equal patterns are joined.
const mostPolished = 80

// polish returns uses of the same stocks with fewer different patterns, then
// with longer offcuts; nil when it finds none better. It moves and swaps single
// parts between boards while that helps, and merges pairs of patterns.
func (b *boardBench) polish(uses []use) []use {
	uses = b.merge(gather(uses))
	count := 0
	for _, u := range uses {
		count += u.times
	}
	if count > mostPolished {
		return uses
	}
	var boards []use
	for _, u := range uses {
		for range u.times {
			boards = append(boards, use{u.stock, slices.Clone(u.pattern), 1})
		}
	}
	t := tidy{b: b, boards: boards}
	t.now = t.score()
	for t.improve() {
		if b.cover.budget <= 0 {
			break
		}
	}
	var kept []use
	for _, u := range t.boards {
		if firstLeft(u.pattern) >= 0 {
			kept = append(kept, u)
		}
	}
	return gather(kept)
}

// merge replaces two patterns on one stock by one that does both their work.
func (b *boardBench) merge(uses []use) []use {
	for i := 0; i < len(uses); i++ {
		for k := i + 1; k < len(uses); k++ {
			one, ok := b.average(uses[i], uses[k])
			if ok {
				uses[i] = one
				uses = slices.Delete(uses, k, k+1)
				uses = gather(uses)
				i, k = 0, 0
			}
		}
	}
	return uses
}

func (b *boardBench) average(x, y use) (use, bool) {
	if x.stock != y.stock {
		return use{}, false
	}
	one := use{x.stock, make([]int, len(x.pattern)), x.times + y.times}
	for i := range one.pattern {
		sum := x.pattern[i]*x.times + y.pattern[i]*y.times
		if sum%one.times != 0 {
			return use{}, false
		}
		one.pattern[i] = sum / one.times
	}
	return one, b.rest(one) >= 0
}

// rest is the room the pattern leaves, kerfs counted; negative: does not fit.
func (b *boardBench) rest(u use) int64 {
	room := b.rods.room[u.stock]
	for i, n := range u.pattern {
		if n > 0 && !b.rods.fits[u.stock][i] {
			return -1
		}
		room -= int64(n) * b.rods.weight[i]
	}
	return room
}

// A tidy is a layout being tidied, board by board.
type tidy struct {
	b      *boardBench
	boards []use
	now    score
}

// A score orders layouts of one cost: fewer different patterns, then longer
// offcuts, the longest compared first.
type score struct {
	patterns int
	offcuts  []int64
}

func (s score) betterThan(o score) bool {
	if s.patterns != o.patterns {
		return s.patterns < o.patterns
	}
	return slices.Compare(s.offcuts, o.offcuts) > 0
}

func (t *tidy) score() score {
	s := score{patterns: len(gather(t.boards))}
	least := int64(t.b.job.LeastOffcut)
	for _, u := range t.boards {
		offcut := t.b.rest(u) - int64(t.b.job.Kerf) + int64(t.b.job.TrimEnd)
		if firstLeft(u.pattern) < 0 || t.b.rest(u) < 0 {
			continue
		}
		if off := offcut; off > 0 && off >= least {
			s.offcuts = append(s.offcuts, off)
		}
	}
	slices.SortFunc(s.offcuts, func(x, y int64) int { return int(min(max(y-x, -1), 1)) })
	return s
}

// improve makes the first change that betters the score.
func (t *tidy) improve() bool {
	for from := range t.boards {
		for to := range t.boards {
			if from == to {
				continue
			}
			for i := range t.boards[from].pattern {
				if t.boards[from].pattern[i] > 0 && t.shift(from, to, i) {
					return true
				}
			}
		}
	}
	return false
}

// shift moves an item, or swaps it for one other, if that betters the score.
func (t *tidy) shift(from, to, item int) bool {
	for back := -1; back < item; back++ {
		if back >= 0 && t.boards[to].pattern[back] == 0 {
			continue
		}
		t.b.cover.budget--
		t.move(from, to, item, back)
		if t.b.rest(t.boards[to]) >= 0 && t.b.rest(t.boards[from]) >= 0 {
			if s := t.score(); s.betterThan(t.now) {
				t.now = s
				return true
			}
		}
		t.move(to, from, item, back)
	}
	return false
}

// move takes the item over and gives back another (none when negative).
func (t *tidy) move(from, to, item, back int) {
	t.boards[from].pattern[item]--
	t.boards[to].pattern[item]++
	if back >= 0 {
		t.boards[to].pattern[back]--
		t.boards[from].pattern[back]++
	}
}
