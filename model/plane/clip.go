package plane

import (
	"cmp"
	"slices"

	"stilewright/model/length"
)

// Clip cuts a path along the edges of r and gives the pieces in r's interior,
// those outside it, and those that run along its boundary, each list in the
// order of the path and each piece in the path's direction. Neighbouring
// stretches with the same fate stay one piece; of a closed path also the last
// with the first. The path may cross itself. A stretch within 2 nm of an edge
// runs along it and follows it.
func Clip(p Path, r Region) (inside, outside, boundary []Path) {
	a := AreaOf(r)
	return new(Clipper).Clip(p, &a)
}

// An Area is a region made ready for many paths to be clipped by it. The zero
// Area is that of an empty region.
type Area struct{ spans []span }

// AreaOf makes a region ready.
func AreaOf(r Region) Area {
	n := 0
	for _, path := range r {
		n += len(path)
	}
	spans := make([]span, 0, n)
	for _, path := range r {
		for _, e := range path {
			if e.From != e.To {
				spans = appendSpans(spans, e, 1)
			}
		}
	}
	return Area{spans}
}

// A Clipper clips many paths, one after another, and takes the room for it only
// once. The zero Clipper is ready.
type Clipper struct {
	area *Area
	cuts []Point
	arr  arrangement
	all  []clipping // in the order of the path
}

// Clip is the function Clip.
func (k *Clipper) Clip(p Path, a *Area) (inside, outside, boundary []Path) {
	k.area, k.all = a, k.all[:0]
	if !k.plainly(p) {
		k.all = k.all[:0]
		k.arranged(p)
	}
	all := k.all
	if n := len(all) - 1; n > 0 && all[0].at == all[n].at && all[n].end() == all[0].path[0].From {
		all[0].path = append(all[n].path, all[0].path...)
		all = all[:n]
	}
	for _, c := range all {
		switch c.at {
		case Inside:
			inside = append(inside, c.path)
		case Outside:
			outside = append(outside, c.path)
		default:
			boundary = append(boundary, c.path)
		}
	}
	return inside, outside, boundary
}

// plainly cuts edge by edge. It gives up, and tells so, where an end of an edge
// of the one comes near an edge of the other, or two cuts come together: there
// points and edges must be made one first.
func (k *Clipper) plainly(p Path) bool {
	for _, e := range p {
		if e.From == e.To {
			continue
		}
		if e.long() {
			return false
		}
		s := spanOf(e, 0)
		cuts := k.cuts[:0]
		for i := range k.area.spans {
			t := &k.area.spans[i]
			if !s.box.Meets(t.box) {
				continue
			}
			if s.on(t.From) || s.on(t.To) || t.on(s.From) || t.on(s.To) {
				return false
			}
			cuts = crossings(cuts, &s, t)
		}
		k.cuts = cuts
		if !k.cut(&s, cuts) {
			return false
		}
	}
	return true
}

// cut adds the pieces of an edge between the places where it is cut; it tells
// whether they lie apart.
func (k *Clipper) cut(s *span, cuts []Point) bool {
	if len(cuts) > 1 {
		slices.SortFunc(cuts, func(a, b Point) int { return cmp.Compare(s.along(a), s.along(b)) })
	}
	for i, at := range cuts {
		if norm(at.to(s.From)) <= near || norm(at.to(s.To)) <= near || i > 0 && norm(at.to(cuts[i-1])) <= near {
			return false
		}
	}
	e := s.Edge
	for i, at := range append(cuts, s.To) {
		e.To = at
		k.add(e, k.fate(e), i > 0)
		e.From = at
	}
	return true
}

// fate is where an edge that meets none of the region's lies.
func (k *Clipper) fate(e Edge) Position {
	x, y := e.middle()
	m2 := At(2*e.From.X+length.Length(2*x), 2*e.From.Y+length.Length(2*y))
	if e.Turn == Straight {
		m2 = At(e.From.X+e.To.X, e.From.Y+e.To.Y)
	}
	return k.around(m2)
}

// around is where a point on no edge of the region lies, given twice as far out.
func (k *Clipper) around(m2 Point) Position {
	turns := 0
	for i := range k.area.spans {
		turns += k.area.spans[i].half(m2)
	}
	if turns == 0 {
		return Outside
	}
	return Inside
}

// add adds a piece; same tells whether it goes on from the piece before it on
// one edge.
func (k *Clipper) add(e Edge, at Position, same bool) {
	last := len(k.all) - 1
	if last < 0 || k.all[last].at != at || k.all[last].end() != e.From {
		k.all = append(k.all, clipping{at: at, path: Path{e}})
		return
	}
	k.all[last].add(e, same)
}

// arranged cuts the path together with those edges of the region that come
// near it.
func (k *Clipper) arranged(p Path) {
	arr := &k.arr
	arr.spans = arr.spans[:0]
	for _, e := range p {
		arr.add(e, 0)
	}
	reach := p.Bounds().Grow(2 * near)
	for i := range k.area.spans {
		if t := &k.area.spans[i]; t.box.Meets(reach) {
			arr.spans = append(arr.spans, *t)
		}
	}
	arr.settle()
	for i, l := range arr.chains {
		s := &arr.spans[l.span]
		if s.owner != 0 {
			break
		}
		piece := &arr.pieces[l.piece]
		e := piece.Edge
		if !l.forward {
			e = e.Reverse()
		}
		at := Boundary
		if piece.net[1] == 0 {
			at = k.around(piece.mid2)
		}
		k.add(e, at, i > 0 && arr.chains[i-1].span == l.span || !s.first)
	}
}

// A clipping is a piece of a clipped path.
type clipping struct {
	at   Position
	path Path
}

func (c *clipping) end() Point { return c.path[len(c.path)-1].To }

// add lengthens the clipping by e, which continues its last edge if both were
// cut from the same one.
func (c *clipping) add(e Edge, same bool) {
	last := &c.path[len(c.path)-1]
	if same && continues(*last, e) {
		last.To = e.To
		return
	}
	c.path = append(c.path, e)
}
