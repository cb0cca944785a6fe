package plane

import (
	"slices"

	"stilewright/model/length"
)

// align moves ends that lie within near of a segment along an axis, and not on
// it, onto that segment, so that it stays along its axis when it is cut there.
// All ends with the same coordinate move together, and so keep their own
// segments along the axis; of two such segments the one with the smaller
// coordinate stays.
func (arr *arrangement) align() {
	for _, vertical := range [...]bool{true, false} {
		touched := arr.beside(vertical)
		if len(touched) == 0 {
			continue
		}
		moves := moves(touched)
		for i := range arr.spans {
			s := &arr.spans[i]
			for _, end := range [...]*Point{&s.From, &s.To} {
				at := end.coordinate(vertical)
				if to, ok := moves[*at]; ok {
					*at = to
				}
			}
			first := s.first
			*s = spanOf(s.Edge, s.owner)
			s.first = first
		}
		arr.spans = slices.DeleteFunc(arr.spans, func(s span) bool { return s.From == s.To })
	}
}

// coordinate is the one that is the same all along a vertical, or horizontal,
// line.
func (p *Point) coordinate(vertical bool) *length.Length {
	if vertical {
		return &p.X
	}
	return &p.Y
}

// beside lists the coordinates of segments along the axis, each with that of an
// end that lies beside it.
func (arr *arrangement) beside(vertical bool) [][2]length.Length {
	var touched [][2]length.Length
	for i := range arr.spans {
		s := &arr.spans[i]
		at := *s.From.coordinate(vertical)
		if s.Turn != Straight || at != *s.To.coordinate(vertical) {
			continue
		}
		for k := range arr.spans {
			t := &arr.spans[k]
			if !s.box.Meets(t.box) {
				continue
			}
			for _, p := range [...]Point{t.From, t.To} {
				if c := *p.coordinate(vertical); c != at && s.box.Holds(p) {
					touched = append(touched, [2]length.Length{at, c})
				}
			}
		}
	}
	return touched
}

// moves tells for every coordinate that is to change what it becomes.
func moves(touched [][2]length.Length) map[length.Length]length.Length {
	slices.SortFunc(touched, func(a, b [2]length.Length) int { return slices.Compare(a[:], b[:]) })
	stays := make(map[length.Length]length.Length, len(touched))
	last := touched[0][0]
	for _, pair := range touched {
		if pair[0]-last > near {
			last = pair[0]
		}
		stays[pair[0]] = last
	}
	for _, pair := range touched {
		if _, ok := stays[pair[1]]; !ok {
			stays[pair[1]] = stays[pair[0]]
		}
	}
	return stays
}
