package step

import (
	"fmt"
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// alongside is the least part of a bore's direction that must run across a
// face it opens into: a bore held truer to the face counts as along it.
const alongside = 1.0 / 1000

// rays is how many lines round a bore are asked whether they run as its axis
// does.
const rays = 16

// A mouth is where a bore opens into a face.
type mouth struct {
	face int
	at   float64 // mm along the axis
}

// A drill is a bore on its way into a shell.
type drill struct {
	solid.Bore
	from          vec
	way           vec // direction
	size, radius  float64
	low, high     *mouth  // nil: a flat end in the wood
	begins, stops float64 // mm along the axis
	floor         int     // the face at low when that is flat: 1 + its number; 0 before it is made
}

// bored adds a part's bores aslant to the axes to the shell of its body, in
// which those along the axes are cut already.
func bored(s *shell, part solid.Solid) error {
	drilled := part.Drilled()
	var drills, straight []drill
	var numbers [2][]int // in the part, of both
	for i, b := range part.Bores {
		if _, along := b.Prism(); along {
			straight, numbers[1] = append(straight, straightIn(part, b)), append(numbers[1], i+1)
			continue
		}
		var d drill
		if err := d.find(s, drilled, b); err != nil {
			return fmt.Errorf("bore %d (%s): %w", i+1, b.For, err)
		}
		drills, numbers[0] = append(drills, d), append(numbers[0], i+1)
	}
	numbered := append(numbers[0], numbers[1]...)
	on := make([]int, len(drills)) // the bore whose floor it begins in, or -1
	for i := range drills {
		on[i] = slices.IndexFunc(drills, func(d drill) bool { return drills[i].inFloor(d) })
		for k, other := range append(drills[:len(drills):len(drills)], straight...) {
			if k == i || drills[i].inFloor(other) || other.inFloor(drills[i]) || !drills[i].meets(other) {
				continue
			}
			first, second := min(numbered[i], numbered[k]), max(numbered[i], numbered[k])
			return fmt.Errorf("bores %d (%s) and %d (%s) meet: set them further apart", first, part.Bores[first-1].For, second, part.Bores[second-1].For)
		}
	}
	return intoAll(s, drills, numbers[0], on)
}

// straightIn is a bore along an axis, from where it enters the wood to where it
// leaves it.
func straightIn(part solid.Solid, b solid.Bore) drill {
	d := drill{Bore: b, from: in(b.From), radius: b.Diameter.MM() / 2}
	across := in(b.To).minus(d.from)
	d.way, d.size = across.unit(), across.size()
	if runs := part.Pierce(b.From, b.To); len(runs) > 0 {
		d.begins, d.stops = runs[0].In.Along, runs[len(runs)-1].Out.Along
	}
	return d
}

// intoAll makes the faces of all bores, those that begin in another's floor
// after that one.
func intoAll(s *shell, drills []drill, numbers, on []int) error {
	for pass := range 2 {
		for i := range drills {
			if (on[i] < 0) != (pass == 0) {
				continue
			}
			var floor *drill
			if on[i] >= 0 {
				floor = &drills[on[i]]
			}
			if err := drills[i].into(s, floor); err != nil {
				return fmt.Errorf("bore %d (%s): %w", numbers[i], drills[i].For, err)
			}
		}
	}
	return nil
}

// find works out where the bore opens and that it does so as a whole.
func (d *drill) find(s *shell, part solid.Solid, b solid.Bore) error {
	d.Bore, d.from, d.radius = b, in(b.From), b.Diameter.MM()/2
	across := in(b.To).minus(d.from)
	d.way, d.size = across.unit(), across.size()
	d.stops = d.size
	for i, f := range s.faces {
		slope := f.axis.dot(d.way)
		if f.flat == nil || math.Abs(slope) < alongside {
			continue
		}
		at := f.at.minus(d.from).dot(f.axis) / slope
		if at < -off || at > d.size+off || !d.opens(f, at) {
			continue
		}
		side, end := &d.low, &d.begins
		if slope > 0 {
			side, end = &d.high, &d.stops
		}
		if *side != nil {
			return fmt.Errorf("it opens into more than two faces, at %.4f mm and %.4f mm along it: bore each board by itself", (*side).at, at)
		}
		*side, *end = &mouth{i, at}, at
	}
	if d.low == nil && d.high == nil {
		return fmt.Errorf("its axis passes no flat face, square to X, Y or Z, that it could open into: let it begin or end outside the wood, away from corners and round faces")
	}
	return d.sound(s, part)
}

// opens tells whether the axis passes the face at the place.
func (d *drill) opens(f face, at float64) bool {
	axis, _ := f.axis.square()
	return f.flat.Where(d.from.plus(d.way, at).whole().Flat(axis)) == plane.Inside
}

// sound tells whether lines round the bore enter and leave the wood as its
// axis does, and none of them comes out elsewhere.
func (d *drill) sound(s *shell, part solid.Solid) error {
	if d.stops-d.begins <= off {
		return fmt.Errorf("it ends before it enters the wood, at %.4f mm along it", d.begins)
	}
	first := d.way.aside()
	second := d.way.cross(first)
	for i := range rays {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / rays)
		aside := first.times(d.radius*cos).plus(second, d.radius*sin)
		shift := aside.whole()
		runs := part.Pierce(d.From.Add(shift), d.To.Add(shift))
		begins, stops := d.edgeAt(s, d.low, aside, 0), d.edgeAt(s, d.high, aside, d.size)
		if begins < -off || stops > d.size+off {
			return fmt.Errorf("its flat end crosses the face it opens into: let it run %.4f mm further out", max(-begins, stops-d.size))
		}
		const slack = 1e-4 // mm: the line is moved by whole nanometres, the bore slopes
		if len(runs) != 1 || math.Abs(runs[0].In.Along-begins) > slack || math.Abs(runs[0].Out.Along-stops) > slack {
			return fmt.Errorf("it breaks out, or opens into more than one face: on one side of it the wood does not reach from %.4f mm to %.4f mm along it: move it, or bore smaller", begins, stops)
		}
	}
	return d.clear(s)
}

// clear tells whether the bore keeps off all edges of the wood.
func (d *drill) clear(s *shell) error {
	for _, f := range s.faces {
		for _, loop := range f.loops {
			for _, u := range loop {
				if s.edges[u.edge].shape == round {
					continue
				}
				from, to := s.ends(u)
				a, b := s.points[from], s.points[to]
				edge := drill{from: a, way: b.minus(a).unit(), stops: b.minus(a).size()}
				if far := d.distance(edge); far < d.radius {
					return fmt.Errorf("its axis comes within %.4f mm of an edge of the wood and its radius is %g mm: move it, or bore smaller", far, d.radius)
				}
			}
		}
	}
	return nil
}

// edgeAt is where along the bore its side at a displacement from the axis
// meets the face of a mouth; end without one.
func (d *drill) edgeAt(s *shell, m *mouth, aside vec, end float64) float64 {
	if m == nil {
		return end
	}
	n := s.faces[m.face].axis
	return m.at - n.dot(aside)/n.dot(d.way)
}

// inFloor tells whether the bore begins in the flat floor of a wider one and
// leads on from there.
func (d *drill) inFloor(wide drill) bool {
	return d.From == wide.From && d.low == nil && wide.low == nil && d.radius < wide.radius && d.way.dot(wide.way) < -1+1e-12
}

// meets tells whether the wood taken by two bores may meet. Those side by side
// are told exactly, others as if their ends were round.
func (d *drill) meets(e drill) bool {
	reach := d.radius + e.radius
	if d.distance(e) >= reach {
		return false
	}
	if math.Abs(d.way.dot(e.way)) < 1-1e-12 {
		return true
	}
	a, b := e.from.plus(e.way, e.begins).minus(d.from).dot(d.way), e.from.plus(e.way, e.stops).minus(d.from).dot(d.way)
	return min(a, b) <= d.stops && max(a, b) >= d.begins
}

// distance is that between the axes, as far as they run in the wood: from an
// end of one to the other axis, or between two points within them.
func (d *drill) distance(e drill) float64 {
	a, b := d.from.plus(d.way, d.begins), d.from.plus(d.way, d.stops)
	p, q := e.from.plus(e.way, e.begins), e.from.plus(e.way, e.stops)
	least := min(fromAxis(a, p, q), fromAxis(b, p, q), fromAxis(p, a, b), fromAxis(q, a, b))
	normal := d.way.cross(e.way)
	if normal.size() < 1e-9 {
		return least
	}
	apart := p.minus(a)
	s := apart.cross(e.way).dot(normal) / normal.dot(normal)
	t := apart.cross(d.way).dot(normal) / normal.dot(normal)
	if s > 0 && t > 0 && s < b.minus(a).size() && t < q.minus(p).size() {
		return math.Abs(apart.dot(normal)) / normal.size()
	}
	return least
}

// fromAxis is the distance of p from the straight line between a and b.
func fromAxis(p, a, b vec) float64 {
	d := b.minus(a)
	part := max(0, min(1, p.minus(a).dot(d)/d.dot(d)))
	return p.minus(a.plus(d, part)).size()
}

// A rim is one end of a bore: the ellipse in which the plane across normal
// cuts it, in two halves between the bore's two straight edges.
type rim struct {
	points [2]int
	halves [2]int
}

// into makes the faces of the bore and its mouths in the shell. Floor is the
// bore whose floor it begins in, or nil.
func (d *drill) into(s *shell, floor *drill) error {
	start := d.start(s)
	low, high := d.rim(s, d.low, d.begins, start), d.rim(s, d.high, d.stops, start)
	var side [2]int
	for i := range side {
		side[i] = s.edge(edge{from: low.points[i], to: high.points[i]})
	}
	for i := range side {
		wall := surface{shape: round, at: d.from, axis: d.way, start: start.times(1 - 2*float64(i)), radius: d.radius, hollow: true}
		s.faces = append(s.faces, face{surface: wall, loops: [][]use{{
			{low.halves[i], true}, {side[i], false}, {high.halves[i], false}, {side[1-i], true},
		}}})
	}
	lower := []use{{low.halves[0], false}, {low.halves[1], false}}
	upper := []use{{high.halves[1], true}, {high.halves[0], true}}
	switch {
	case d.low != nil:
		if err := d.open(s, d.low, lower); err != nil {
			return err
		}
	case floor != nil:
		wide := &s.faces[floor.floor-1]
		wide.loops = append(wide.loops, lower)
	default:
		s.faces = append(s.faces, face{surface: surface{at: d.from.plus(d.way, d.begins), axis: d.way}, loops: [][]use{lower}})
		d.floor = len(s.faces)
	}
	if d.high != nil {
		return d.open(s, d.high, upper)
	}
	s.faces = append(s.faces, face{surface: surface{at: d.from.plus(d.way, d.stops), axis: d.way.times(-1)}, loops: [][]use{upper}})
	return nil
}

// start is the direction from the axis to the bore's first straight edge:
// where a slanted mouth reaches furthest.
func (d *drill) start(s *shell) vec {
	for _, m := range [...]*mouth{d.high, d.low} {
		if m == nil {
			continue
		}
		n := s.faces[m.face].axis
		if across := n.plus(d.way, -n.dot(d.way)); across.size() > alongside {
			return across.unit().times(-1)
		}
	}
	return d.way.aside()
}

// rim makes an end's vertices and edges, running counter-clockwise about the
// bore's direction. The first half leads from the first straight edge to the
// second.
func (d *drill) rim(s *shell, m *mouth, at float64, start vec) rim {
	centre, normal := d.from.plus(d.way, at), d.way
	if m != nil {
		normal = s.faces[m.face].axis
		if normal.dot(d.way) < 0 {
			normal = normal.times(-1)
		}
	}
	slope := normal.dot(d.way)
	e := edge{shape: round, centre: centre, axis: normal, a: d.radius / slope, b: d.radius}
	e.major = d.way.plus(normal, -slope)
	if e.major.size() <= alongside { // square, or so little aslant that nothing shows it
		e.major = start.plus(normal, -start.dot(normal))
	}
	e.major = e.major.unit()
	if e.major.dot(start) < 0 {
		e.major = e.major.times(-1)
	}
	var r rim
	for i := range r.points {
		aside := start.times(d.radius * (1 - 2*float64(i)))
		r.points[i] = s.point(centre.plus(aside, 1).plus(d.way, -normal.dot(aside)/slope))
	}
	for i := range r.halves {
		e.from, e.to = r.points[i], r.points[1-i]
		r.halves[i] = s.edge(e)
	}
	return r
}

// open cuts a mouth into its face, within which it must lie whole.
func (d *drill) open(s *shell, m *mouth, loop []use) error {
	f := &s.faces[m.face]
	axis, _ := f.axis.square()
	outline := d.outline(s.edges[loop[0].edge], axis)
	inside, outside, along := plane.Clip(outline, f.flat)
	hole := slices.ContainsFunc(f.flat, func(p plane.Path) bool {
		return plane.Region{outline}.Where(p[0].From) != plane.Outside
	})
	if len(inside) == 0 || len(outside) > 0 || len(along) > 0 || hole {
		return fmt.Errorf("its mouth, %g mm across at %v, does not lie within one flat face: move it, or bore smaller", 2*d.radius, d.from.plus(d.way, m.at))
	}
	f.flat = append(f.flat[:len(f.flat):len(f.flat)], outline.Reverse())
	f.loops = append(f.loops, loop)
	return nil
}

// outline is a mouth seen along the axis its face is square to.
func (d *drill) outline(e edge, axis solid.Axis) plane.Path {
	centre := e.centre.whole().Flat(axis)
	var major [2]float64
	switch axis {
	case solid.X:
		major = [2]float64{e.major[1], e.major[2]}
	case solid.Y:
		major = [2]float64{e.major[0], e.major[2]}
	default:
		major = [2]float64{e.major[0], e.major[1]}
	}
	return plane.Ellipse(centre, length.Round(e.a), length.Round(e.b), math.Atan2(major[1], major[0]))
}
