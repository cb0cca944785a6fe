package view

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// A drill is a bore as seen along Y.
type drill struct {
	bore   *solid.Bore
	radius float64    // mm
	slope  float64    // the part of the bore's direction that runs along Y
	along  [2]float64 // the rest of it, as a direction in X and Z
	size   float64    // mm, along the bore
}

// bores draws the bores of a body.
func (s *scene) bores(body int) {
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
			s.straightIn(d, body)
			continue
		}
		d.along = [2]float64{x / flat, z / flat}
		s.slanting(d, body)
	}
}

// straightIn draws a bore along Y: one circle, seen or covered.
func (s *scene) straightIn(d drill, body int) {
	circle := plane.Region{s.path(plane.Circle(d.bore.From.Flat(solid.Y), d.bore.Diameter.Half()))}
	for _, run := range s.bodies[body].Solid.Pierce(d.bore.From, d.bore.To) {
		for _, end := range [...]solid.End{run.In, run.Out} {
			if s.facing(end) {
				s.mouth(circle, d.place(end).Y, d, body)
			}
		}
		s.hide(circle, body, d.bore)
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
	var ends, shut []plane.Path
	for i, run := range part.Pierce(d.bore.From, d.bore.To) {
		for k, end := range [...]solid.End{run.In, run.Out} {
			switch steep := math.Abs(end.Normal[solid.Y]); {
			case end.Normal == [3]float64{}:
				ends = append(ends, s.path(d.end(end)))
			case steep == 1 && s.facing(end):
				y := d.place(end).Y
				seen = append(seen, s.mouth(s.region(d.bore.Section(solid.Y, y)), y, d, body)...)
			case steep == 1:
				shut = append(shut, s.region(d.bore.Section(solid.Y, d.place(end).Y))...)
			case i < len(left) && i < len(right):
				shut = append(shut, plane.Path{plane.Line(left[i][k], right[i][k])})
			}
		}
	}
	for _, end := range ends {
		s.within(end, seen, d, body)
	}
	for _, lines := range [...][][2]plane.Point{left, right} {
		for _, l := range lines {
			shut = append(shut, plane.Path{plane.Line(l[0], l[1])})
		}
	}
	s.hide(shut, body, d.bore)
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
		for _, path := range section {
			inside, _, _ := plane.Clip(path, f.region)
			for _, p := range inside {
				visible, hidden := s.split(p, f.near)
				s.see(visible, s.bodies[body].Layer)
				s.hide(hidden, body, d.bore)
			}
		}
		seen = append(seen, opening{plane.Intersect(section, f.region), f.near})
	}
	return seen
}

// within draws the end of a bore, as far as one looks into it through its
// mouths, and the rest of it as covered.
func (s *scene) within(end plane.Path, seen []opening, d drill, body int) {
	rest := []plane.Path{end}
	for _, o := range seen {
		var outside []plane.Path
		for _, p := range rest {
			inside, out, _ := plane.Clip(p, o.region)
			for _, q := range inside {
				visible, hidden := s.split(q, o.near)
				s.see(visible, s.bodies[body].Layer)
				s.hide(hidden, body, d.bore)
			}
			outside = append(outside, out...)
		}
		rest = outside
	}
	s.hide(rest, body, d.bore)
}

// end is the bore's flat end as seen along Y: a circle on edge or at a slant.
func (d drill) end(e solid.End) plane.Path {
	centre := d.place(e).Flat(solid.Y)
	radius, flat := length.Round(d.radius), length.Round(d.radius*d.slope)
	if flat <= length.Micrometre {
		dx, dy := length.Round(-d.along[1]*d.radius), length.Round(d.along[0]*d.radius)
		return plane.Path{plane.Line(centre.Add(-dx, -dy), centre.Add(dx, dy))}
	}
	return plane.Ellipse(centre, radius, flat, math.Atan2(d.along[0], -d.along[1]))
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
