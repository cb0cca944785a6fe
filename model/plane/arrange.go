package plane

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"stilewright/model/length"
)

// A span is an edge on its way into an arrangement.
type span struct {
	Edge
	owner int     // 0 or 1: which of the two it came from
	first bool    // not the second half of a halved arc
	box   Box     // grown by near
	size  float64 // nanometres: a segment's length, an arc's radius
	near  float64 // nanometres: how far off a point still is on it
}

// A piece is a stretch of edge that nothing touches between its ends. Where
// edges of both regions run together they share one piece.
type piece struct {
	Edge          // from the vertex that comes first in order to the later one
	u, v  int     // those vertices
	net   [2]int  // per owner: edges along it less edges against it
	reach float64 // nanometres: an arc's chord to its centre, see chordToCentre
	chord float64 // nanometres
	mid2  Point   // twice its middle, so that a segment's middle is exact
	left  [2]bool // per owner: whether its material lies to the left
	right [2]bool // and to the right
}

// An arrangement is the edges of two regions (or a path and a region) cut at
// every place where they meet, with points and edges that are the same to
// within near made one.
type arrangement struct {
	spans    []span
	vertices []Point // ordered by X, then Y
	pieces   []piece
	chains   []link // the pieces of every span, span after span

	room // for settle
}

// A room is what settling an arrangement takes for a while; the next one
// settled in it need not take it anew.
type room struct {
	met    []crossing
	sites  []site
	groups []group
	rank   []int
	places []int
	forced []stop
	stop   []stop
	raw    []piece
	by     []int
}

// emptied is a slice with no elements and room for n.
func emptied[T any](s []T, n int) []T { return slices.Grow(s[:0], n) }

// A link is a piece as part of a span.
type link struct {
	span, piece int
	forward     bool // the span runs the piece's way
}

func arrange(a, b Region) *arrangement {
	n := 0
	for _, r := range [...]Region{a, b} {
		for _, path := range r {
			n += len(path)
		}
	}
	arr := &arrangement{spans: make([]span, 0, n+8)}
	for owner, r := range [...]Region{a, b} {
		for _, path := range r {
			for _, e := range path {
				arr.add(e, owner)
			}
		}
	}
	arr.settle()
	return arr
}

// settle cuts the edges taken in.
func (arr *arrangement) settle() {
	arr.align()
	arr.met = arr.meetings(arr.met[:0])
	arr.sites = arr.snap(arr.met)
	arr.cut(arr.sites, arr.met)
}

// add takes an edge in.
func (arr *arrangement) add(e Edge, owner int) {
	if e.From != e.To {
		arr.spans = appendSpans(arr.spans, e, owner)
	}
}

// appendSpans adds an edge as a span. An arc of clearly more than a half turn
// is halved, since its middle hangs on its chord too loosely.
func appendSpans(spans []span, e Edge, owner int) []span {
	if !e.long() {
		return append(spans, spanOf(e, owner))
	}
	first, second := e, e
	first.To = e.Middle()
	second.From = first.To
	spans = append(spans, spanOf(first, owner), spanOf(second, owner))
	spans[len(spans)-1].first = false
	return spans
}

func spanOf(e Edge, owner int) span {
	s := span{Edge: e, owner: owner, first: true, box: e.Bounds().Grow(near), size: e.radius(), near: near}
	if e.Turn == Straight {
		s.size = norm(e.From.to(e.To))
	}
	return s
}

// long tells whether an arc sweeps more than a half turn by more than its
// chord's quarter.
func (e Edge) long() bool {
	if e.Turn == Straight {
		return false
	}
	chord := norm(e.From.to(e.To))
	return e.chordToCentre(chord) < -chord/4
}

// A crossing is where two spans meet between their ends.
type crossing struct {
	Point
	spans [2]int
}

// meetings adds to met where spans cross or touch between their ends. Those of one
// owner do not cross, but an arc may touch another outline.
func (arr *arrangement) meetings(met []crossing) []crossing {
	var points [2]Point
	for i := range arr.spans {
		a := &arr.spans[i]
		for k := i + 1; k < len(arr.spans); k++ {
			b := &arr.spans[k]
			if a.box.Meets(b.box) && (a.owner != b.owner || a.Turn != Straight || b.Turn != Straight) {
				for _, p := range crossings(points[:0], a, b) {
					met = append(met, crossing{p, [2]int{i, k}})
				}
			}
		}
	}
	return met
}

// A site is a point that becomes a vertex, maybe together with others.
type site struct {
	Point
	rank   int // 0 an end, else a crossing: 1 of two segments along the axes, 2 of one, 3 of none
	vertex int
}

// snap makes the vertices: all ends and crossings, those within near of one
// another made one. The one of least rank stands for all, of equals the first. It returns the sites in order, for lookup.
func (arr *arrangement) snap(met []crossing) []site {
	sites := emptied(arr.sites, 2*len(arr.spans)+len(met))
	for _, s := range arr.spans {
		sites = append(sites, site{Point: s.From}, site{Point: s.To})
	}
	for _, c := range met {
		sites = append(sites, site{Point: c.Point, rank: 3 - arr.spans[c.spans[0]].axial() - arr.spans[c.spans[1]].axial()})
	}
	slices.SortFunc(sites, func(a, b site) int {
		return cmp.Or(inOrder(a.Point, b.Point), cmp.Compare(a.rank, b.rank))
	})
	sites = slices.CompactFunc(sites, func(a, b site) bool { return a.Point == b.Point })
	arr.cluster(sites)
	return sites
}

// axial is 1 for a segment along an axis, otherwise 0.
func (s *span) axial() int {
	if s.Turn == Straight && (s.From.X == s.To.X || s.From.Y == s.To.Y) {
		return 1
	}
	return 0
}

// A group is sites that become one vertex: the first, and the one it stands at.
type group struct{ anchor, stands int }

// cluster gives every site its vertex.
func (arr *arrangement) cluster(sites []site) {
	groups := emptied(arr.groups, len(sites))
	for i := range sites {
		sites[i].vertex = -1
		for g := len(groups) - 1; g >= 0 && sites[i].X-sites[groups[g].anchor].X <= near; g-- {
			anchor := sites[groups[g].anchor]
			if norm(anchor.to(sites[i].Point)) <= near {
				sites[i].vertex = g
				if sites[i].rank < sites[groups[g].stands].rank {
					groups[g].stands = i
				}
				break
			}
		}
		if sites[i].vertex < 0 {
			sites[i].vertex = len(groups)
			groups = append(groups, group{i, i})
		}
	}
	// A vertex may stand a little after its anchor: put them in order again.
	rank := emptied(arr.rank, len(groups))
	for g := range groups {
		rank = append(rank, g)
	}
	at := func(g int) Point { return sites[groups[g].stands].Point }
	slices.SortFunc(rank, func(g, h int) int { return inOrder(at(g), at(h)) })
	place := emptied(arr.places, len(groups))[:len(groups)]
	arr.vertices = emptied(arr.vertices, len(groups))
	for v, g := range rank {
		place[g] = v
		arr.vertices = append(arr.vertices, at(g))
	}
	arr.groups, arr.rank, arr.places = groups, rank, place
	for i := range sites {
		sites[i].vertex = place[sites[i].vertex]
	}
}

// inOrder orders points by X, then Y.
func inOrder(a, b Point) int {
	if a.X != b.X {
		return order(a.X, b.X)
	}
	return order(a.Y, b.Y)
}

// vertexOf is the vertex a point among the sites became.
func vertexOf(sites []site, p Point) int {
	i, _ := slices.BinarySearchFunc(sites, p, func(s site, p Point) int { return inOrder(s.Point, p) })
	return sites[i].vertex
}

// A stop is a vertex on a span and how far along it lies.
type stop struct {
	span, vertex int
	along        float64
}

// cut makes the pieces of every span.
func (arr *arrangement) cut(sites []site, met []crossing) {
	forced := emptied(arr.forced, 2*len(met))
	for _, c := range met {
		v := vertexOf(sites, c.Point)
		forced = append(forced, stop{span: c.spans[0], vertex: v}, stop{span: c.spans[1], vertex: v})
	}
	arr.forced = forced
	slices.SortFunc(forced, func(a, b stop) int { return cmp.Or(cmp.Compare(a.span, b.span), cmp.Compare(a.vertex, b.vertex)) })
	raw := emptied(arr.raw, len(arr.spans)+2*len(met)+4)
	arr.chains = emptied(arr.chains, cap(raw))
	stops := arr.stop
	for i := range arr.spans {
		s := &arr.spans[i]
		stops = stops[:0]
		for len(forced) > 0 && forced[0].span == i {
			stops = append(stops, forced[0])
			forced = forced[1:]
		}
		at, to := vertexOf(sites, s.From), vertexOf(sites, s.To)
		stops = append(arr.stops(stops, s, at, to), stop{vertex: to})
		for _, next := range stops {
			if next.vertex == at {
				continue
			}
			raw = append(raw, arr.piece(s, at, next.vertex))
			arr.chains = append(arr.chains, link{span: i, forward: at < next.vertex})
			at = next.vertex
		}
	}
	arr.raw, arr.stop = raw, stops
	arr.share(raw)
}

// stops adds to the crossings the other vertices that lie on the span, and
// gives all that are not its ends in the span's order. A crossing counts even
// if it was made one with an end a little further off than on allows.
func (arr *arrangement) stops(stops []stop, s *span, from, to int) []stop {
	first := sort.Search(len(arr.vertices), func(i int) bool { return arr.vertices[i].X >= s.box.Min.X })
	for v := first; v < len(arr.vertices) && arr.vertices[v].X <= s.box.Max.X; v++ {
		if p := arr.vertices[v]; p.Y >= s.box.Min.Y && p.Y <= s.box.Max.Y && s.on(p) {
			stops = append(stops, stop{vertex: v})
		}
	}
	stops = slices.DeleteFunc(stops, func(at stop) bool { return at.vertex == from || at.vertex == to })
	for i := range stops {
		stops[i].along = s.along(arr.vertices[stops[i].vertex])
	}
	slices.SortFunc(stops, func(a, b stop) int {
		return cmp.Or(cmp.Compare(a.along, b.along), cmp.Compare(a.vertex, b.vertex))
	})
	return stops
}

// along grows as p moves along the edge; only its order means anything.
func (s *span) along(p Point) float64 {
	if s.Turn == Straight {
		return dot(s.From.to(s.To), s.From.to(p)).float()
	}
	a, q := s.Centre.to(s.From), s.Centre.to(p)
	if !s.passes(q) && norm(s.From.to(p)) < norm(s.To.to(p)) {
		return 0 // snapped a little before the beginning
	}
	return diamond(dot(a, q).float(), float64(s.Turn)*cross(a, q).float())
}

// diamond grows with the angle of (x, y), from 0 to 4 in a full turn.
func diamond(x, y float64) float64 {
	part := x / (math.Abs(x) + math.Abs(y))
	if y >= 0 {
		return 1 - part
	}
	return 3 + part
}

// piece is the stretch of a span between two vertices. An arc so short that
// snapping has put its ends the other way round becomes a segment.
func (arr *arrangement) piece(s *span, from, to int) piece {
	p := piece{Edge: s.Edge, u: from, v: to}
	p.From, p.To = arr.vertices[from], arr.vertices[to]
	p.net[s.owner] = 1
	if from > to {
		p.Edge, p.u, p.v = p.Reverse(), to, from
		p.net[s.owner] = -1
	}
	p.chord = norm(p.From.to(p.To))
	if p.Turn != Straight && p.chord < s.size && int(p.Turn)*side(p.Centre, p.From, p.To) <= 0 {
		p.Edge = Line(p.From, p.To)
	}
	if p.Turn == Straight {
		p.mid2 = At(p.From.X+p.To.X, p.From.Y+p.To.Y)
		return p
	}
	p.reach = p.chordToCentre(p.chord)
	x, y := p.middle()
	p.mid2 = At(2*p.From.X+length.Length(2*x), 2*p.From.Y+length.Length(2*y))
	return p
}
