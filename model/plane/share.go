package plane

import (
	"cmp"
	"slices"
)

// share makes the pieces that run together one, and tells the chains.
func (arr *arrangement) share(raw []piece) {
	by := emptied(arr.by, len(raw))
	for i := range raw {
		by = append(by, i)
	}
	arr.by = by
	slices.SortFunc(by, func(i, j int) int { return raw[i].compare(&raw[j]) })
	arr.pieces = emptied(arr.pieces, len(raw))
	for _, i := range by {
		k := arr.same(&raw[i])
		if k < 0 {
			k = len(arr.pieces)
			arr.pieces = append(arr.pieces, raw[i])
		} else {
			for owner, n := range raw[i].net {
				arr.pieces[k].net[owner] += n
			}
		}
		arr.chains[i].piece = k
	}
}

// compare orders pieces by ends, straight ones before arcs, then by centre.
func (p *piece) compare(q *piece) int {
	return cmp.Or(cmp.Compare(p.u, q.u), cmp.Compare(p.v, q.v), cmp.Compare(p.Turn.bends(), q.Turn.bends()),
		inOrder(p.Centre, q.Centre), cmp.Compare(p.Turn, q.Turn))
}

func (t Turn) bends() int {
	if t == Straight {
		return 0
	}
	return 1
}

// same is the piece among those made so far that runs along p, or -1.
func (arr *arrangement) same(p *piece) int {
	for k := len(arr.pieces) - 1; k >= 0; k-- {
		q := &arr.pieces[k]
		if q.u != p.u || q.v != p.v {
			return -1
		}
		if norm(p.mid2.to(q.mid2)) <= 2*near {
			return k
		}
	}
	return -1
}
