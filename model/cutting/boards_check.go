package cutting

import (
	"fmt"

	"stilewright/model/length"
)

// CheckBoards replays a layout against its job, without trusting a figure in
// it: every part is delivered exactly as often as asked and from a board it may
// come from, cuts follow one another at least a kerf apart between the trims,
// no board is used more often than there are, cost, waste and offcuts add up
// again, and the bound is not above the cost. The first thing wrong comes back.
func CheckBoards(j BoardJob, l BoardLayout) error {
	delivered := make([]int, len(j.Parts))
	used := make([]int, len(j.Boards))
	again := BoardLayout{Used: make([]int, len(j.Boards))}
	for n, p := range l.Patterns {
		if err := j.checkPattern(p, delivered); err != nil {
			return fmt.Errorf("pattern %d: %w", n+1, err)
		}
		used[p.Board] += p.Times
	}
	for i, p := range j.Parts {
		if delivered[i] != p.Quantity {
			return fmt.Errorf("part %q: %d cut, %d asked for", p.Label, delivered[i], p.Quantity)
		}
	}
	for s, b := range j.Boards {
		if len(l.Used) != len(used) || l.Used[s] != used[s] {
			return fmt.Errorf("board %q: %d used, the layout says %v", b.Name, used[s], l.Used)
		}
		if b.Available > 0 && used[s] > b.Available {
			return fmt.Errorf("board %q: %d used, %d available", b.Name, used[s], b.Available)
		}
	}
	again.Patterns = l.Patterns
	again.sum(j)
	switch {
	case again.Cost != l.Cost || again.Count != l.Count:
		return fmt.Errorf("cost %d for %d boards, the layout says %d for %d", again.Cost, again.Count, l.Cost, l.Count)
	case again.Stock != l.Stock || again.Parts != l.Parts || again.Offcuts != l.Offcuts || again.Waste != l.Waste:
		return fmt.Errorf("waste %s of %s, the layout says %s of %s", mm(again.Waste), mm(again.Stock), mm(l.Waste), mm(l.Stock))
	case l.Bound > l.Cost || l.Bound < 0:
		return fmt.Errorf("bound %d, cost %d", l.Bound, l.Cost)
	case l.Proven != (l.Bound == l.Cost):
		return fmt.Errorf("proven is %t with bound %d and cost %d", l.Proven, l.Bound, l.Cost)
	}
	return nil
}

// checkPattern walks along one board with the saw.
func (j BoardJob) checkPattern(p BoardPattern, delivered []int) error {
	if p.Board < 0 || p.Board >= len(j.Boards) || p.Times < 1 || len(p.Cuts) == 0 {
		return fmt.Errorf("board %d, %d times, %d cuts", p.Board, p.Times, len(p.Cuts))
	}
	board := j.Boards[p.Board]
	free := j.TrimStart
	for _, c := range p.Cuts {
		if c.Part < 0 || c.Part >= len(j.Parts) {
			return fmt.Errorf("part number %d of %d", c.Part, len(j.Parts))
		}
		part := j.Parts[c.Part]
		switch {
		case c.End-c.Start != part.Length:
			return fmt.Errorf("part %q is cut %s, asked for %s", part.Label, mm(c.End-c.Start), mm(part.Length))
		case c.Start < free:
			return fmt.Errorf("part %q starts at %s, the board is free from %s", part.Label, mm(c.Start), mm(free))
		case c.End > board.Length-j.TrimEnd:
			return fmt.Errorf("part %q ends at %s, board %q at %s", part.Label, mm(c.End), board.Name, mm(board.Length-j.TrimEnd))
		case !allowed(part.From, board.Name):
			return fmt.Errorf("part %q may not come from %q", part.Label, board.Name)
		}
		free = c.End + j.Kerf
		delivered[c.Part] += p.Times
	}
	rest := max(board.Length-free, length.Length(0))
	if p.Offcut != rest || p.Kept != (rest > 0 && rest >= j.LeastOffcut) {
		return fmt.Errorf("offcut %s, the layout says %s (kept: %t)", mm(rest), mm(p.Offcut), p.Kept)
	}
	return nil
}
