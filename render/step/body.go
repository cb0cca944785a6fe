package step

import (
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// off is how far in mm a point may lie off a plane or a line and still count as
// lying in it: corners lie within a nanometre or two of slanted ones.
const off = 4e-6

// bodyOf is the boundary of the solid's body as curves and surfaces.
func bodyOf(body solid.Solid) (*shell, error) {
	found, err := body.Shell()
	if err != nil {
		return nil, err
	}
	s := &shell{}
	for _, v := range found.Corners {
		s.point(in(v))
	}
	for _, e := range found.Edges {
		s.edge(s.bent(e))
	}
	for _, f := range found.Faces {
		shown := face{surface: surfaceOf(f), flat: f.Region}
		for _, loop := range f.Loops {
			var uses []use
			for _, u := range loop {
				uses = append(uses, use{u.Edge, u.Back})
			}
			shown.loops = append(shown.loops, uses)
		}
		s.faces = append(s.faces, shown)
	}
	return s, nil
}

// hand is 1 when the two flat coordinates and the axis are right-handed in
// that order, else -1.
func hand(a solid.Axis) float64 {
	if a == solid.Y {
		return -1
	}
	return 1
}

// bent is an edge of the solid's as a curve.
func (s *shell) bent(found solid.Edge) edge {
	e := edge{from: found.From, to: found.To}
	if found.Arc.Turn == plane.Straight {
		return e
	}
	from, to := s.points[e.from], s.points[e.to]
	e.shape, e.axis = round, along(found.Axis, hand(found.Axis)*float64(found.Arc.Turn))
	// The centre is moved by less than a nanometre, to where both ends lie
	// equally far from it.
	chord, middle := to.minus(from).unit(), from.plus(to, 1).times(0.5)
	e.centre = in(solid.Raise(found.Arc.Centre, found.Axis, found.At))
	e.centre = e.centre.plus(chord, middle.minus(e.centre).dot(chord))
	e.a = from.minus(e.centre).size()
	e.b, e.major = e.a, from.minus(e.centre).unit()
	return e
}

// surfaceOf is the surface that a face lies in.
func surfaceOf(f solid.Face) surface {
	if f.Side != 0 {
		return surface{at: in(solid.Raise(f.Region[0][0].From, f.Axis, f.At)), axis: along(f.Axis, float64(f.Side))}
	}
	from := in(solid.Raise(f.Trace.From, f.Axis, 0))
	way := in(solid.Raise(f.Trace.To, f.Axis, 0)).minus(from)
	if f.Trace.Turn == plane.Straight { // the material lies to the trace's left
		return surface{at: from, axis: way.cross(along(f.Axis, hand(f.Axis))).unit()}
	}
	centre := in(solid.Raise(f.Trace.Centre, f.Axis, 0))
	return surface{shape: round, at: centre, axis: along(f.Axis, hand(f.Axis)), start: from.minus(centre).unit(), radius: f.Trace.Radius(), hollow: f.Trace.Turn == plane.Right}
}
