package layout

import (
	"fmt"
	"slices"
	"strings"

	"github.com/boombuler/barcode/qr"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// ascii is a text in printable ASCII, since readers disagree on what else a code
// says: what is not, is written "?".
func ascii(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '×':
			return 'x'
		case r < ' ' || r > '~':
			return '?'
		}
		return r
	}, s)
}

// codeOf is a QR code of a text as a region of its dark modules in a square of
// that side, quiet zone of four modules included (ISO/IEC 18004, from memory),
// its lower left corner at the origin. Modules are whole nanometres.
func codeOf(text string, side length.Length) (plane.Region, error) {
	code, err := qr.Encode(ascii(text), qr.M, qr.Auto)
	if err != nil {
		return nil, fmt.Errorf("QR code of %q: %w", text, err)
	}
	const quiet = 4
	n := code.Bounds().Dx()
	module := side / length.Length(n+2*quiet)
	dark := func(x, y int) bool { // y upwards
		if x < 0 || y < 0 || x >= n || y >= n {
			return false
		}
		r, _, _, _ := code.At(x, n-1-y).RGBA()
		return r == 0
	}
	place := func(p corner) plane.Point {
		return plane.At(module*length.Length(p.x+quiet), module*length.Length(p.y+quiet))
	}
	var region plane.Region
	for _, loop := range outlines(n, dark) {
		points := make([]plane.Point, len(loop))
		for i, p := range loop {
			points[i] = place(p)
		}
		region = append(region, plane.Polygon(points...))
	}
	return region, nil
}

// A corner is a corner of the grid of modules.
type corner struct{ x, y int }

// outlines walks round the dark modules of a grid, dark to the left: outer
// outlines counter-clockwise, holes clockwise. Where dark modules touch at a
// corner only, outlines touch there, but none meets itself.
func outlines(n int, dark func(x, y int) bool) [][]corner {
	next := map[corner][]corner{} // from a corner to the next along an edge
	var order []corner
	edge := func(from, to corner) {
		if len(next[from]) == 0 {
			order = append(order, from)
		}
		next[from] = append(next[from], to)
	}
	for y := range n {
		for x := range n {
			if !dark(x, y) {
				continue
			}
			a, b, c, d := corner{x, y}, corner{x + 1, y}, corner{x + 1, y + 1}, corner{x, y + 1}
			for _, side := range []struct {
				from, to corner
				beyond   bool
			}{{a, b, dark(x, y-1)}, {b, c, dark(x+1, y)}, {c, d, dark(x, y+1)}, {d, a, dark(x-1, y)}} {
				if !side.beyond {
					edge(side.from, side.to)
				}
			}
		}
	}
	var loops [][]corner
	for _, start := range order {
		for len(next[start]) > 0 {
			loops = append(loops, walk(next, start)...)
		}
	}
	return loops
}

// walk follows edges from a corner until it is back there for good, using them
// up. Each time it comes to a corner it has passed, the way since then is an
// outline.
func walk(next map[corner][]corner, start corner) [][]corner {
	var loops [][]corner
	way := []corner{start}
	for len(next[way[len(way)-1]]) > 0 {
		at := way[len(way)-1]
		to := next[at][0]
		next[at] = next[at][1:]
		if since := slices.Index(way, to); since >= 0 {
			loops = append(loops, straightened(way[since:]))
			way = way[:since]
		}
		way = append(way, to)
	}
	return loops
}

// straightened is a closed way without the corners it goes straight on at.
func straightened(way []corner) []corner {
	var kept []corner
	for i, at := range way {
		before, after := way[(i+len(way)-1)%len(way)], way[(i+1)%len(way)]
		if (at.x-before.x)*(after.y-at.y) != (at.y-before.y)*(after.x-at.x) {
			kept = append(kept, at)
		}
	}
	return kept
}
