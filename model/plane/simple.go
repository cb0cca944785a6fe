package plane

import (
	"fmt"
	"math"
	"slices"
)

// Simple tells what keeps r from being a region as described there, naming
// outline and edge by their number from 0, or returns nil: every outline is
// closed, has edges of some length whose arcs end on their circles, and does
// not meet itself; outlines do not cross and share no stretch of edge, though
// they may touch at points; outer ones run counter-clockwise and holes, which
// lie inside an outer one, clockwise.
func Simple(r Region) error {
	for i, path := range r {
		if err := path.simple(); err != nil {
			return fmt.Errorf("outline %d: %w", i, err)
		}
	}
	for i, path := range r {
		depth := 0
		for k, other := range r {
			if k == i {
				continue
			}
			inside, err := path.within(other)
			if err != nil {
				return fmt.Errorf("outlines %d and %d: %w", i, k, err)
			}
			if inside {
				depth++
			}
		}
		if area := path.Area(); depth%2 == 0 && area <= 0 {
			return fmt.Errorf("outline %d: runs clockwise (%g mm²) but lies in %d other outlines; a hole must lie inside an outer one", i, area, depth)
		} else if depth%2 == 1 && area >= 0 {
			return fmt.Errorf("outline %d: runs counter-clockwise (%g mm²) but lies in %d other outlines; reverse it", i, area, depth)
		}
	}
	return nil
}

// within tells whether the path lies inside the outline.
func (p Path) within(outline Path) (bool, error) {
	if !p.Bounds().Meets(outline.Bounds()) {
		return false, nil
	}
	inside, outside, boundary := Clip(p, Region{outline})
	if len(boundary) > 0 {
		return false, fmt.Errorf("share an edge at %v", boundary[0][0].From)
	}
	if at, is := outline.clear(inside); is {
		if _, out := outline.clear(outside); out {
			return false, fmt.Errorf("cross at %v", at)
		}
		return true, nil
	}
	return false, nil
}

// clear finds a piece whose middle is further than askew from the outline. What
// comes closer may have been put on the other side by rounding.
func (p Path) clear(pieces []Path) (Point, bool) {
	for _, piece := range pieces {
		for _, e := range piece {
			at := e.Middle()
			if !slices.ContainsFunc(p, func(e Edge) bool {
				s := spanOf(e, 0)
				s.near = askew
				return s.box.Grow(askew).Holds(at) && s.on(at)
			}) {
				return e.From, true
			}
		}
	}
	return Point{}, false
}

// simple tells what is wrong with one outline by itself.
func (p Path) simple() error {
	if len(p) == 0 {
		return fmt.Errorf("has no edges")
	}
	spans := make([]span, len(p))
	for i, e := range p {
		if e.From == e.To {
			return fmt.Errorf("edge %d has no length, at %v", i, e.From)
		}
		if next := p[(i+1)%len(p)]; e.To != next.From {
			return fmt.Errorf("open: edge %d ends at %v, the next begins at %v", i, e.To, next.From)
		}
		a, b := norm(e.Centre.to(e.From)), norm(e.Centre.to(e.To))
		if e.Turn != Straight && math.Abs(a-b) > askew {
			return fmt.Errorf("edge %d begins %g nm from its centre and ends %g nm from it", i, a, b)
		}
		spans[i] = spanOf(e, 0)
		spans[i].near = touching
	}
	for i := range spans {
		for k := i + 1; k < len(spans); k++ {
			if at, met := meet(&spans[i], &spans[k]); met {
				return fmt.Errorf("edges %d and %d meet at %v", i, k, at)
			}
		}
	}
	return nil
}

// meet finds a point that two edges share besides the end of one that is the
// beginning of the other.
func meet(a, b *span) (Point, bool) {
	if !a.box.Meets(b.box) {
		return Point{}, false
	}
	for _, end := range [...]struct {
		at    Point
		other *span
	}{{a.From, b}, {a.To, b}, {b.From, a}, {b.To, a}} {
		joint := end.at == a.To && end.at == b.From || end.at == b.To && end.at == a.From
		if !joint && end.other.on(end.at) {
			return end.at, true
		}
	}
	if found := crossings(nil, a, b); len(found) > 0 {
		return found[0], true
	}
	// Two edges with the same ends: alike only if their middles are.
	if a.From == b.To && a.To == b.From && norm(a.Middle().to(b.Middle())) <= near {
		return a.Middle(), true
	}
	return Point{}, false
}
