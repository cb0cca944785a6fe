package solid

import (
	"cmp"
	"slices"
)

// rims are the outlines of connected cells of a grid, the outer one first, as
// corners where they turn: counter-clockwise round the cells, clockwise round
// holes. A cell lies between corners (i, k) and (i+1, k+1). Where outlines
// touch at a corner each keeps to itself.
func rims(cells map[[2]int]bool) [][][2]int {
	leaving := map[[2]int][][2]int{} // by corner: where sides lead from there
	var corners [][2]int
	for c := range cells {
		i, k := c[0], c[1]
		for _, side := range [...]struct{ beyond, from, to [2]int }{
			{[2]int{i, k - 1}, [2]int{i, k}, [2]int{i + 1, k}},
			{[2]int{i + 1, k}, [2]int{i + 1, k}, [2]int{i + 1, k + 1}},
			{[2]int{i, k + 1}, [2]int{i + 1, k + 1}, [2]int{i, k + 1}},
			{[2]int{i - 1, k}, [2]int{i, k + 1}, [2]int{i, k}},
		} {
			if !cells[side.beyond] {
				leaving[side.from] = append(leaving[side.from], side.to)
				corners = append(corners, side.from)
			}
		}
	}
	order := func(a, b [2]int) int { return cmp.Or(cmp.Compare(a[1], b[1]), cmp.Compare(a[0], b[0])) }
	slices.SortFunc(corners, order)
	for _, to := range leaving {
		slices.SortFunc(to, order)
	}
	var all [][][2]int
	for _, first := range corners {
		if len(leaving[first]) > 0 {
			all = append(all, rim(leaving, first))
		}
	}
	return all // the lowest corner is one of the outer outline
}

// rim walks from a corner back to it, taking sides away, and gives the corners
// where the walk turns.
func rim(leaving map[[2]int][][2]int, first [2]int) [][2]int {
	walk := [][2]int{first}
	at, way := first, [2]int{}
	for {
		to := leaving[at]
		next := 0
		for i, t := range to[1:] {
			if leftness(way, step(at, t)) > leftness(way, step(at, to[next])) {
				next = i + 1
			}
		}
		way, at, leaving[at] = step(at, to[next]), to[next], slices.Delete(slices.Clone(to), next, next+1)
		if at == first {
			break
		}
		walk = append(walk, at)
	}
	var turns [][2]int
	for i, c := range walk {
		before, after := walk[(i+len(walk)-1)%len(walk)], walk[(i+1)%len(walk)]
		if step(before, c) != step(c, after) {
			turns = append(turns, c)
		}
	}
	return turns
}

func step(from, to [2]int) [2]int { return [2]int{to[0] - from[0], to[1] - from[1]} }

// leftness is 1 for a turn to the left, 0 straight on, -1 to the right.
func leftness(way, next [2]int) int { return way[0]*next[1] - way[1]*next[0] }
