package plane

import (
	"math"

	"stilewright/model/length"
)

const nmPerMM = float64(length.Millimetre)

// Radius is the arc's radius in millimetres, the mean of the distances of both
// ends from the centre, which rounding may leave a nanometre apart. It is 0
// for a segment.
func (e Edge) Radius() float64 { return e.radius() / nmPerMM }

// radius is Radius in nanometres.
func (e Edge) radius() float64 {
	if e.Turn == Straight {
		return 0
	}
	return (norm(e.Centre.to(e.From)) + norm(e.Centre.to(e.To))) / 2
}

// Sweep is the angle an arc turns through, in radians, more than 0 when it is
// counter-clockwise. It is 0 for a segment.
func (e Edge) Sweep() float64 {
	if e.Turn == Straight || e.From == e.To {
		return 0
	}
	a, b := e.Centre.to(e.From), e.Centre.to(e.To)
	angle := math.Atan2(cross(a, b).float(), dot(a, b).float())
	if float64(e.Turn)*angle < 0 || angle == 0 {
		angle += float64(e.Turn) * 2 * math.Pi
	}
	return angle
}

// Bulge is the tangent of a quarter of the sweep, more than 0 when the arc is
// counter-clockwise: the measure DXF gives an arc in a polyline. It is 0 for a
// segment.
func (e Edge) Bulge() float64 {
	if e.Turn == Straight || e.From == e.To {
		return 0
	}
	// The sagitta over half the chord is the same tangent without an angle.
	chord := norm(e.From.to(e.To))
	return float64(e.Turn) * (e.radius() - e.chordToCentre(chord)) / (chord / 2)
}

// chordToCentre is the signed distance in nanometres from the arc's chord to
// its centre, less than 0 when the arc sweeps more than half a turn.
//
// The ends are rounded, so a short chord may point well off the tangent: its
// distance follows from the radius. That of a long one follows from where the
// centre is, since near half a turn the radius says little about it.
func (e Edge) chordToCentre(chord float64) float64 {
	reach := float64(e.Turn) * cross(e.From.to(e.To), e.From.to(e.Centre)).float() / chord
	if r := e.radius(); chord < r {
		return math.Copysign(math.Sqrt(float64((r-chord/2)*(r+chord/2))), reach)
	}
	return reach
}

// Length is the length along the edge in millimetres.
func (e Edge) Length() float64 {
	if e.Turn == Straight {
		return norm(e.From.to(e.To)) / nmPerMM
	}
	return float64(e.Radius() * math.Abs(e.Sweep()))
}

// Middle is the point half-way along the edge, rounded to a nanometre.
func (e Edge) Middle() Point {
	x, y := e.middle()
	return e.From.offset(x, y)
}

// middle is the middle in nanometres from From.
func (e Edge) middle() (x, y float64) {
	d := e.From.to(e.To)
	if e.Turn == Straight || e.From == e.To {
		return float64(d.X) / 2, float64(d.Y) / 2
	}
	chord, c := norm(d), e.From.to(e.Centre)
	reach := e.chordToCentre(chord)
	if reach < 0 && chord < e.radius() {
		// Nearly a full circle: the short chord, rounded, gives no direction,
		// but from its middle the arc's lies across the centre.
		cx, cy := float64(c.X), float64(c.Y)
		dx, dy := cx-float64(d.X)/2, cy-float64(d.Y)/2
		stretch := e.radius() / hypot(dx, dy)
		return cx + float64(stretch*dx), cy + float64(stretch*dy)
	}
	// The middle lies square to the chord's, on the right of a left turn.
	rise := float64(e.Turn) * (e.radius() - reach) / chord
	return float64(d.X)/2 + float64(rise*float64(d.Y)), float64(d.Y)/2 - float64(rise*float64(d.X))
}

// Reverse is the edge walked the other way.
func (e Edge) Reverse() Edge {
	return Edge{From: e.To, To: e.From, Centre: e.Centre, Turn: -e.Turn}
}

// passes tells whether the direction d from the centre of an arc lies strictly
// between its ends. It is exact.
func (e Edge) passes(d Point) bool {
	a, b := e.Centre.to(e.From), e.Centre.to(e.To)
	if e.Turn == Right {
		a, b = b, a
	}
	if turn := cross(a, b).sign(); turn > 0 || turn == 0 && dot(a, b).sign() < 0 {
		return cross(a, d).sign() > 0 && cross(d, b).sign() > 0
	}
	return cross(b, d).sign() < 0 || cross(d, a).sign() < 0
}

// reaches tells at which of its circle's furthest points an arc passes between
// its ends: what passes tells of the four directions along the axes.
func (e Edge) reaches() (right, left, up, down bool) {
	a, b := e.Centre.to(e.From), e.Centre.to(e.To)
	if e.Turn == Right {
		a, b = b, a
	}
	turn := cross(a, b).sign()
	if turn > 0 || turn == 0 && dot(a, b).sign() < 0 {
		return a.Y < 0 && b.Y > 0, a.Y > 0 && b.Y < 0, a.X > 0 && b.X < 0, a.X < 0 && b.X > 0
	}
	return a.Y < 0 || b.Y > 0, a.Y > 0 || b.Y < 0, a.X > 0 || b.X < 0, a.X < 0 || b.X > 0
}

// Bounds is the smallest box round the edge: round the arc itself, not its
// circle. Where the arc reaches furthest between its ends the radius is
// rounded to a nanometre.
func (e Edge) Bounds() Box {
	box := Box{
		Min: At(min(e.From.X, e.To.X), min(e.From.Y, e.To.Y)),
		Max: At(max(e.From.X, e.To.X), max(e.From.Y, e.To.Y)),
	}
	if e.Turn == Straight || e.From == e.To {
		return box
	}
	right, left, up, down := e.reaches()
	if !right && !left && !up && !down {
		return box
	}
	r := round(e.radius())
	if right {
		box.Max.X = max(box.Max.X, e.Centre.X+r)
	}
	if left {
		box.Min.X = min(box.Min.X, e.Centre.X-r)
	}
	if up {
		box.Max.Y = max(box.Max.Y, e.Centre.Y+r)
	}
	if down {
		box.Min.Y = min(box.Min.Y, e.Centre.Y-r)
	}
	return box
}

// Flatten gives the points of straight segments that stand in for the edge,
// after From, up to and including To. No segment strays further than chord
// from the arc, besides the rounding of its ends to a nanometre; a chord of
// less than a nanometre counts as one. Arcs are halved until they are flat
// enough, all parts alike.
func (e Edge) Flatten(chord length.Length) []Point {
	halvings := e.halvings(float64(max(chord, length.Nanometre)))
	return e.halve(make([]Point, 0, 1<<halvings), halvings)
}

// halvings is how often the arc must be halved until no part rises more than
// chord above its own chord. The cosine of half the sweep is chordToCentre
// over the radius, and half the angle follows by the root.
func (e Edge) halvings(chord float64) int {
	if e.Turn == Straight || e.From == e.To {
		return 0
	}
	r, n := e.radius(), 0
	cos := max(-1, min(1, e.chordToCentre(norm(e.From.to(e.To)))/r))
	for float64(r*(1-cos)) > chord {
		cos = math.Sqrt((1 + cos) / 2)
		n++
	}
	return n
}

func (e Edge) halve(to []Point, times int) []Point {
	middle := e.Middle()
	if times == 0 || middle == e.From || middle == e.To {
		return append(to, e.To)
	}
	first, second := e, e
	first.To, second.From = middle, middle
	return second.halve(first.halve(to, times-1), times-1)
}

// Closed tells whether the path has edges, each beginning where the last one
// ended and the first where the last ends.
func (p Path) Closed() bool {
	if len(p) == 0 {
		return false
	}
	at := p[len(p)-1].To
	for _, e := range p {
		if e.From != at {
			return false
		}
		at = e.To
	}
	return true
}

// Bounds is the smallest box round the path, the zero Box for no edges.
func (p Path) Bounds() Box {
	if len(p) == 0 {
		return Box{}
	}
	box := p[0].Bounds()
	for _, e := range p[1:] {
		box = box.Join(e.Bounds())
	}
	return box
}

// Length is the length along the path in millimetres.
func (p Path) Length() float64 {
	var whole float64
	for _, e := range p {
		whole += e.Length()
	}
	return whole
}

// Area is the area a closed path encloses in mm², more than 0 when it runs
// counter-clockwise. Arcs count as arcs.
func (p Path) Area() float64 {
	area, _, _ := p.moments()
	return area
}

// Flatten is the path with every arc replaced by straight segments, see
// Edge.Flatten.
func (p Path) Flatten(chord length.Length) Path {
	flat := make(Path, 0, len(p))
	for _, e := range p {
		at := e.From
		for _, next := range e.Flatten(chord) {
			flat = append(flat, Line(at, next))
			at = next
		}
	}
	return flat
}

// moments gives the signed area in mm² and the first moments in mm³ about the
// path's first point.
func (p Path) moments() (area, mx, my float64) {
	for _, e := range p {
		a, x, y := e.moments(p[0].From)
		area, mx, my = area+a, mx+x, my+y
	}
	return area, mx, my
}

// moments gives the area in mm² of the triangle from o to the edge's chord and
// of the circular segment between chord and arc, and its first moments about o
// in mm³.
func (e Edge) moments(o Point) (area, mx, my float64) {
	a, b := o.to(e.From), o.to(e.To)
	ax, ay, bx, by := a.X.MM(), a.Y.MM(), b.X.MM(), b.Y.MM()
	area = cross(a, b).float() / (2 * nmPerMM * nmPerMM)
	mx, my = area*(ax+bx)/3, area*(ay+by)/3
	if e.Turn == Straight || e.From == e.To {
		return area, mx, my
	}
	r, sweep := e.Radius(), e.Sweep()
	segment := float64(float64(r*r) / 2 * lessSine(sweep))
	// The segment's centroid lies towards the arc's middle: its first moment
	// about the centre is chord³/12, square to the chord.
	chord := norm(e.From.to(e.To)) / nmPerMM
	reach := float64(chord*chord) / 12
	c := o.to(e.Centre)
	mx += float64(segment*c.X.MM()) + float64(reach*(by-ay))
	my += float64(segment*c.Y.MM()) - float64(reach*(bx-ax))
	return area + segment, mx, my
}

// lessSine is x - sin x. Below the limit the series is closer: its first
// neglected term is x⁹/9! < 1e-15 of the first, while the difference loses
// digits as x³.
func lessSine(x float64) float64 {
	const limit = 0.05
	if math.Abs(x) > limit {
		return x - math.Sin(x)
	}
	xx := float64(x * x)
	return x * xx / 6 * (1 - float64(xx/20*(1-float64(xx/42))))
}

// Join is the smallest box round both boxes.
func (b Box) Join(c Box) Box {
	return Box{
		Min: At(min(b.Min.X, c.Min.X), min(b.Min.Y, c.Min.Y)),
		Max: At(max(b.Max.X, c.Max.X), max(b.Max.Y, c.Max.Y)),
	}
}

// Grow is the box with every side moved outwards by d, inwards if d is less
// than 0.
func (b Box) Grow(d length.Length) Box { return Box{b.Min.Add(-d, -d), b.Max.Add(d, d)} }

// Meets tells whether the boxes share a point.
func (b Box) Meets(c Box) bool {
	return b.Min.X <= c.Max.X && c.Min.X <= b.Max.X && b.Min.Y <= c.Max.Y && c.Min.Y <= b.Max.Y
}
