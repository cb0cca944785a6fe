package tile

import (
	"stilewright/model/length"
	"stilewright/model/plane"
)

// A spot is a tile's place: row from the top, column from the left, from 0.
type spot struct{ row, column int }

// neighbours are the spots on all four sides.
func (s spot) neighbours() [4]spot {
	return [...]spot{{s.row - 1, s.column}, {s.row + 1, s.column}, {s.row, s.column - 1}, {s.row, s.column + 1}}
}

// A grid is the windows laid over the drawing.
type grid struct {
	area          plane.Box // of the drawing
	window        plane.Point
	step          plane.Point // from a window to the next
	overlap       length.Length
	rows, columns int
}

func gridOf(area plane.Box, l layout, overlap length.Length) grid {
	g := grid{area: area, window: plane.At(l.window.Width(), l.window.Height()), overlap: overlap}
	g.step = g.window.Add(-overlap, -overlap)
	g.rows = count(area.Height(), g.window.Y, g.step.Y)
	g.columns = count(area.Width(), g.window.X, g.step.X)
	return g
}

// count is how many windows cover a length.
func count(whole, window, step length.Length) int {
	if whole <= window {
		return 1
	}
	return 1 + int((whole-window+step-1)/step)
}

// box is what a tile shows of the drawing.
func (g grid) box(s spot) plane.Box {
	corner := plane.At(g.area.Min.X, g.area.Max.Y).Add(g.step.X*length.Length(s.column), -g.step.Y*length.Length(s.row))
	return plane.BoxOf(corner, corner.Add(g.window.X, -g.window.Y))
}

// spots are all tiles in the order they are read.
func (g grid) spots() (all []spot) {
	for row := range g.rows {
		for column := range g.columns {
			all = append(all, spot{row, column})
		}
	}
	return all
}

// printed tells which tiles are printed: those that show something, and as
// many blank ones as it takes for all to hang together by their overlaps.
func printed(all []spot, blank map[spot]bool) map[spot]bool {
	keep := map[spot]bool{}
	for _, s := range all {
		keep[s] = true
	}
	for again := true; again; { // one left out may make others needless
		again = false
		for _, s := range all {
			if !keep[s] || !blank[s] {
				continue
			}
			delete(keep, s)
			if len(keep) == 0 || !hangTogether(all, keep) {
				keep[s] = true
			} else {
				again = true
			}
		}
	}
	return keep
}

// hangTogether tells whether each tile is reached from the first over neighbours.
func hangTogether(all []spot, keep map[spot]bool) bool {
	seen := map[spot]bool{}
	var todo []spot
	for _, s := range all {
		if keep[s] {
			seen[s], todo = true, append(todo, s)
			break
		}
	}
	for len(todo) > 0 {
		s := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		for _, n := range s.neighbours() {
			if keep[n] && !seen[n] {
				seen[n], todo = true, append(todo, n)
			}
		}
	}
	return len(seen) == len(keep)
}

// crosses are the centres, on the drawing, of the marks in a tile's overlap
// with a neighbour: two on the overlap's middle line, a fifth of its length
// from its ends.
func (g grid) crosses(a, b spot) [2]plane.Point {
	one, two := g.box(a), g.box(b)
	shared := plane.BoxOf(
		plane.At(max(one.Min.X, two.Min.X), max(one.Min.Y, two.Min.Y)),
		plane.At(min(one.Max.X, two.Max.X), min(one.Max.Y, two.Max.Y)))
	middle := plane.At((shared.Min.X + shared.Max.X).Half(), (shared.Min.Y + shared.Max.Y).Half())
	if a.row == b.row {
		in := shared.Height() / 5
		return [2]plane.Point{plane.At(middle.X, shared.Min.Y+in), plane.At(middle.X, shared.Max.Y-in)}
	}
	in := shared.Width() / 5
	return [2]plane.Point{plane.At(shared.Min.X+in, middle.Y), plane.At(shared.Max.X-in, middle.Y)}
}
