package plane

import "stilewright/model/length"

// Line is the straight segment from a to b.
func Line(a, b Point) Edge { return Edge{From: a, To: b} }

// Arc is the arc about centre from from to to, less than a full turn. Both
// ends must lie on one circle to within a nanometre a coordinate. A Straight
// turn gives a segment.
func Arc(from, to, centre Point, turn Turn) Edge {
	if turn == Straight {
		return Line(from, to)
	}
	return Edge{From: from, To: to, Centre: centre, Turn: turn}
}

// BoxOf is the box between two opposite corners.
func BoxOf(a, b Point) Box {
	return Box{At(min(a.X, b.X), min(a.Y, b.Y)), At(max(a.X, b.X), max(a.Y, b.Y))}
}

// Polygon is the closed outline through the points in the order given; it is
// counter-clockwise only if they are. A point equal to the one before it is
// left out.
func Polygon(points ...Point) Path {
	path := make(Path, 0, len(points))
	for i, p := range points {
		if next := points[(i+1)%len(points)]; next != p {
			path = append(path, Line(p, next))
		}
	}
	return path
}

// Rect is the rectangle between two opposite corners, from its lower left.
func Rect(a, b Point) Path { return BoxOf(a, b).Path() }

// Path is the box's outline, from its lower left corner.
func (b Box) Path() Path {
	return Polygon(b.Min, At(b.Max.X, b.Min.Y), b.Max, At(b.Min.X, b.Max.Y))
}

// Circle is a full circle as two half arcs, from its point furthest along +X.
func Circle(centre Point, radius length.Length) Path {
	right, left := centre.Add(radius, 0), centre.Add(-radius, 0)
	return Path{Arc(right, left, centre, Left), Arc(left, right, centre, Left)}
}

// RoundedRect is the box's outline with its corners rounded, from the right
// end of its lower left corner. A radius of 0 or less leaves square corners;
// one above half the shorter side is cut down to that half.
func RoundedRect(b Box, radius length.Length) Path {
	radius = min(radius, b.Width().Half(), b.Height().Half())
	if radius <= 0 {
		return b.Path()
	}
	path := cornered(b, radius)
	in := b.Grow(-radius)
	centres := [...]Point{At(in.Max.X, in.Min.Y), in.Max, At(in.Min.X, in.Max.Y), in.Min}
	for i := range centres {
		path[2*i+1] = Arc(path[2*i+1].From, path[2*i+1].To, centres[i], Left)
	}
	return path.withoutPoints().merged()
}

// ClippedRect is the box's outline with its corners cut off at 45°, leg along
// each side, from the right end of its lower left corner. A leg of 0 or less
// leaves square corners; one above half the shorter side is cut down to it.
func ClippedRect(b Box, leg length.Length) Path {
	leg = min(leg, b.Width().Half(), b.Height().Half())
	if leg <= 0 {
		return b.Path()
	}
	return cornered(b, leg).withoutPoints()
}

// Slot is the box's outline with half circles for its two shorter sides. Of a
// square it is the circle. If the shorter side is an odd number of nanometres
// a flat of one nanometre stays between the quarter circles.
func Slot(b Box) Path { return RoundedRect(b, min(b.Width(), b.Height()).Half()) }

// cornered is the box's outline with every corner cut off by the leg: bottom
// side, lower right corner, right side and so on, some maybe of no length.
func cornered(b Box, leg length.Length) Path {
	in := b.Grow(-leg)
	corners := [...]Point{
		At(in.Min.X, b.Min.Y), At(in.Max.X, b.Min.Y), At(b.Max.X, in.Min.Y), At(b.Max.X, in.Max.Y),
		At(in.Max.X, b.Max.Y), At(in.Min.X, b.Max.Y), At(b.Min.X, in.Max.Y), At(b.Min.X, in.Min.Y),
	}
	path := make(Path, len(corners))
	for i, p := range corners {
		path[i] = Line(p, corners[(i+1)%len(corners)])
	}
	return path
}

// withoutPoints is the path without edges of no length.
func (p Path) withoutPoints() Path {
	kept := p[:0]
	for _, e := range p {
		if e.From != e.To {
			kept = append(kept, e)
		}
	}
	return kept
}
