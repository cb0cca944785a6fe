package view

import (
	"math"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
)

// A drill is a bore as seen along Y.
type drill struct {
	bore   *solid.Bore
	radius float64    // mm
	slope  float64    // the part of the bore's direction that runs along Y
	along  [2]float64 // the rest of it, as a direction in X and Z
	size   float64    // mm, along the bore
}

// bores draws the bores of a body: first the mouths one looks into, so that no
// bore behind one covers it, then the rest.
func (s *scene) bores(body int) {
	s.boresOf(body, true)
	s.boresOf(body, false)
}

// boresOf draws the mouths of bores along Y that face the eye, or all the rest.
func (s *scene) boresOf(body int, mouths bool) {
	b := s.bodies[body].Solid
	for i := range b.Bores {
		bore := &b.Bores[i]
		x, y, z := (bore.To.X - bore.From.X).MM(), (bore.To.Y - bore.From.Y).MM(), (bore.To.Z - bore.From.Z).MM()
		flat := math.Sqrt(float64(x*x) + float64(z*z))
		size := math.Sqrt(float64(flat*flat) + float64(y*y))
		if size == 0 || bore.Diameter <= 0 {
			continue
		}
		d := drill{bore: bore, radius: bore.Diameter.MM() / 2, slope: math.Abs(y) / size, size: size}
		if flat == 0 {
			s.straightIn(d, body, mouths)
			continue
		}
		if mouths {
			continue
		}
		d.along = [2]float64{x / flat, z / flat}
		s.slanting(d, body)
	}
}

// straightIn draws a bore along Y: one circle, that of its nearest mouth, seen
// or covered.
func (s *scene) straightIn(d drill, body int, mouths bool) {
	at, radius := d.bore.From.Flat(solid.Y), d.bore.Diameter.Half()
	circle := oval{s.mirror(at), radius, radius, 0}
	runs := s.bodies[body].Solid.Pierce(d.bore.From, d.bore.To)
	var facing []length.Length // the distances of mouths one looks at
	for _, run := range runs {
		for _, end := range [...]solid.End{run.In, run.Out} {
			if s.facing(end) {
				facing = append(facing, s.distance(d.place(end).Y))
			}
		}
	}
	if mouths && len(facing) > 0 && !s.ovals[circle] {
		s.ovals[circle] = true
		s.mouth(plane.Region{s.shape(circle)}, s.distance(slices.Min(facing)), d, body)
	}
	if !mouths && len(runs) > 0 {
		s.cover(circle, d)
	}
}

// slanting draws a bore that is not along Y: its mouths, its ends, and the two
// lines furthest to its sides.
func (s *scene) slanting(d drill, body int) {
	part := s.bodies[body].Solid
	aside := solid.Vec{X: length.Round(-d.along[1] * d.radius), Z: length.Round(d.along[0] * d.radius)}
	left := s.side(part, d, aside)
	right := s.side(part, d, solid.Vec{X: -aside.X, Z: -aside.Z})
	var seen []opening
	var ends []solid.End
	var shut []plane.Path
	for i, run := range part.Pierce(d.bore.From, d.bore.To) {
		for k, end := range [...]solid.End{run.In, run.Out} {
			switch steep := math.Abs(end.Normal[solid.Y]); {
			case end.Normal == [3]float64{}:
				ends = append(ends, end)
			case steep == 1 && s.facing(end):
				seen = append(seen, s.open(end, d, body)...)
			case steep == 1:
				s.cover(s.oval(d, end, d.radius/d.slope), d)
			case i < len(left) && i < len(right):
				shut = append(shut, plane.Path{plane.Line(left[i][k], right[i][k])})
			}
		}
	}
	for _, end := range ends {
		s.within(end, seen, d)
	}
	for _, lines := range [...][][2]plane.Point{left, right} {
		for _, l := range lines {
			shut = append(shut, plane.Path{plane.Line(l[0], l[1])})
		}
	}
	s.coverLines(shut, d)
}

// side is where the bore's line to one side of its axis runs in the body, in
// the view.
func (s *scene) side(part solid.Solid, d drill, aside solid.Vec) [][2]plane.Point {
	var found [][2]plane.Point
	for _, run := range part.Pierce(d.bore.From.Add(aside), d.bore.To.Add(aside)) {
		in, out := d.place(run.In).Add(aside), d.place(run.Out).Add(aside)
		found = append(found, [2]plane.Point{s.mirror(in.Flat(solid.Y)), s.mirror(out.Flat(solid.Y))})
	}
	return found
}

// open draws a mouth that faces the eye. The bore's own flat end may cut it.
func (s *scene) open(end solid.End, d drill, body int) []opening {
	whole := s.oval(d, end, d.radius/d.slope)
	y := d.place(end).Y
	reach := d.radius / d.slope * math.Sqrt(max(0, 1-float64(d.slope*d.slope))) // along the bore
	if end.Along < reach || end.Along+reach > d.size {
		return s.mouth(s.region(d.bore.Section(solid.Y, y)), y, d, body)
	}
	if s.ovals[whole] {
		return nil
	}
	s.ovals[whole] = true
	return s.mouth(plane.Region{s.shape(whole)}, y, d, body)
}

// An opening is a hole in a face through which one looks.
type opening struct {
	region plane.Region
	near   length.Length // as face.near
}

// mouth draws a bore's mouth in those faces of the body that lie at Y = y and
// face the eye.
func (s *scene) mouth(section plane.Region, y length.Length, d drill, body int) []opening {
	var seen []opening
	for i := range s.faces {
		f := &s.faces[i]
		if f.body != body || (f.at-y).Abs() > same || !overlap(f.bounds, section.Bounds()) {
			continue
		}
		cut := false
		for _, path := range section {
			inside, outside, _ := s.clip(path, &f.cover)
			cut = cut || len(outside) > 0
			for _, p := range inside {
				s.curve(p, f.near, d, s.bodies[body].Layer)
			}
		}
		if cut {
			section = plane.Intersect(section, f.region)
		}
		seen = append(seen, opening{section, f.near})
	}
	return seen
}

// curve draws a curve that shows at the distance near, unless it is covered.
func (s *scene) curve(p plane.Path, near length.Length, d drill, layer sheet.Layer) {
	visible, hidden := s.split(p, near, false)
	for _, q := range visible {
		s.curves = append(s.curves, Line{q, layer, sheet.Wide, sheet.Continuous})
	}
	s.coverCurves(hidden, d)
}

// coverCurves draws covered curves of a bore, if they are wanted.
func (s *scene) coverCurves(paths []plane.Path, d drill) {
	if !s.wanted(d.bore.For) {
		return
	}
	for _, p := range paths {
		s.curves = append(s.curves, Line{p, covered.layer, covered.weight, covered.line})
	}
}

// coverLines draws covered lines of a bore, if they are wanted.
func (s *scene) coverLines(paths []plane.Path, d drill) {
	if s.wanted(d.bore.For) {
		s.draw(paths, covered)
	}
}

// cover draws a covered end or mouth of a bore, if it is wanted and not drawn.
func (s *scene) cover(o oval, d drill) {
	if !s.ovals[o] && s.wanted(d.bore.For) {
		s.ovals[o] = true
		s.coverCurves([]plane.Path{s.shape(o)}, d)
	}
}

// within draws the flat end of a bore, as far as one looks on it through the
// bore's mouths, and the rest of it as covered.
func (s *scene) within(e solid.End, seen []opening, d drill) {
	flat := s.oval(d, e, d.radius*d.slope)
	if flat.b <= length.Micrometre { // on edge
		centre := d.place(e).Flat(solid.Y)
		dx, dy := length.Round(-d.along[1]*d.radius), length.Round(d.along[0]*d.radius)
		s.coverLines([]plane.Path{s.path(plane.Path{plane.Line(centre.Add(-dx, -dy), centre.Add(dx, dy))})}, d)
		return
	}
	if s.ovals[flat] {
		return
	}
	rest := []plane.Path{s.shape(flat)}
	for _, o := range seen {
		mouth := coverOf(o.region)
		var outside []plane.Path
		for _, p := range rest {
			if !overlap(p.Bounds(), mouth.bounds) {
				outside = append(outside, p)
				continue
			}
			inside, out, _ := s.clip(p, &mouth)
			for _, q := range inside {
				s.curve(q, o.near, d, sheet.Outline)
			}
			outside = append(outside, out...)
		}
		rest = outside
	}
	s.ovals[flat] = true
	s.coverCurves(rest, d)
}

// An oval is an ellipse in the view: the half axis a, turned by angle from +X,
// and b. Ends and mouths of bores are ovals.
type oval struct {
	centre plane.Point
	a, b   length.Length
	angle  float64
}

// oval is the bore's end or mouth that measures half mm from its centre along
// the bore.
func (s *scene) oval(d drill, e solid.End, half float64) oval {
	x, y := d.along[0], d.along[1]
	if s.from == Back {
		x = -x
	}
	centre := s.mirror(d.place(e).Flat(solid.Y))
	if half < d.radius {
		return oval{centre, length.Round(d.radius), length.Round(half), halfTurn(math.Atan2(x, -y))}
	}
	return oval{centre, length.Round(half), length.Round(d.radius), halfTurn(math.Atan2(y, x))}
}

// halfTurn is the angle from 0 up to half a turn that turns an oval alike.
func halfTurn(angle float64) float64 {
	switch {
	case angle >= math.Pi:
		return angle - math.Pi
	case angle < 0:
		return angle + math.Pi
	}
	return angle
}

// shape is the oval's outline.
func (s *scene) shape(o oval) plane.Path {
	about := o
	about.centre = plane.Point{}
	path, known := s.shapes[about]
	if !known {
		path = plane.Ellipse(about.centre, o.a, o.b, o.angle)
		s.shapes[about] = path
	}
	return path.Translate(o.centre.X, o.centre.Y)
}

// place is the point on the bore's axis at an end of a stretch.
func (d drill) place(e solid.End) solid.Vec {
	part := e.Along / d.size
	from, to := d.bore.From, d.bore.To
	return solid.Vec{
		X: from.X + length.Round(part*(to.X-from.X).MM()),
		Y: from.Y + length.Round(part*(to.Y-from.Y).MM()),
		Z: from.Z + length.Round(part*(to.Z-from.Z).MM()),
	}
}

// facing tells whether the face at an end is one that one looks at squarely.
func (s *scene) facing(e solid.End) bool {
	if s.from == Back {
		return e.Normal[solid.Y] == 1
	}
	return e.Normal[solid.Y] == -1
}

// path leads from space to the view, as mirror does.
func (s *scene) path(p plane.Path) plane.Path {
	if s.from == Back {
		return p.MirrorX(0)
	}
	return p
}

// region is path for regions.
func (s *scene) region(r plane.Region) plane.Region {
	if s.from == Back {
		return r.MirrorX(0)
	}
	return r
}
