package machining

import (
	"fmt"
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// Compensate moves the lines of cuts and holes by half the kerf of a beam, so
// that what is left has the finished size: outlines grow, holes shrink. Other
// contours stay. It errs when a line cannot be moved so far.
//
// Sharp corners stay sharp: their sides are moved and meet again. The outline's
// least corner then lies at minus half the kerf; Shift brings it back.
func (s Setup) Compensate(kerf length.Length) (Setup, error) {
	moved := s
	moved.Contours = nil
	for i, c := range s.Contours {
		if c.Operation == Cut || c.Operation == Hole {
			path, err := offset(c.Path, kerf.MM()/2)
			if err != nil {
				return Setup{}, fmt.Errorf("%s %d: %w", c.Operation, i, err)
			}
			c.Path = path
		}
		moved.Contours = append(moved.Contours, c)
	}
	return moved, nil
}

// Shift is the setup moved on the table.
func (s Setup) Shift(dx, dy length.Length) Setup {
	moved := s
	moved.Contours = make([]Contour, len(s.Contours))
	for i, c := range s.Contours {
		c.Path = c.Path.Translate(dx, dy)
		moved.Contours[i] = c
	}
	return moved
}

// offset is the closed path moved to its right by d mm: outwards from material
// on its left.
func offset(p plane.Path, d float64) (plane.Path, error) {
	moved := make(plane.Path, len(p))
	for i, e := range p {
		before := p[(i+len(p)-1)%len(p)]
		at, err := joint(before, e, d)
		if err != nil {
			return nil, err
		}
		moved[i] = plane.Edge{From: at, Centre: e.Centre, Turn: e.Turn}
	}
	for i := range moved {
		moved[i].To = moved[(i+1)%len(moved)].From
		if p[i].Turn == plane.Straight {
			if between(moved[i].From, moved[i].To).dot(between(p[i].From, p[i].To)) <= 0 {
				return nil, fmt.Errorf("the edge at %v is too short for a kerf of %.3f mm", p[i].From, 2*d)
			}
		} else if p[i].Radius()+float64(p[i].Turn)*d <= 0 {
			return nil, fmt.Errorf("the radius of %.3f mm at %v is too small for a kerf of %.3f mm", p[i].Radius(), p[i].From, 2*d)
		}
	}
	if err := plane.Simple(plane.Region{counterclockwise(moved)}); err != nil {
		return nil, fmt.Errorf("a kerf of %.3f mm makes it meet itself: %w", 2*d, err)
	}
	return moved, nil
}

func counterclockwise(p plane.Path) plane.Path {
	if p.Area() < 0 {
		return p.Reverse()
	}
	return p
}

// joint is where two neighbouring edges meet once both are moved to the right.
func joint(a, b plane.Edge, d float64) (plane.Point, error) {
	first, second := end(a).right(), start(b).right()
	if math.Abs(turn(a, b)) <= smooth {
		return first.plus(second).unit().times(d).from(b.From), nil
	}
	if a.Turn == plane.Straight && b.Turn == plane.Straight {
		open := 1 + first.dot(second)
		if open < sharpest {
			return plane.Point{}, fmt.Errorf("the corner at %v is too sharp to be moved", b.From)
		}
		return first.plus(second).times(d / open).from(b.From), nil
	}
	return meeting(a, b, d)
}

// meeting finds by Newton's method where two moved edges, at least one of them
// an arc, meet nearest to their old joint.
func meeting(a, b plane.Edge, d float64) (plane.Point, error) {
	x := end(a).right().plus(start(b).right()).times(d / 2)
	const enough = 60
	for range enough {
		fa, na := astray(a, b.From, x, d)
		fb, nb := astray(b, b.From, x, d)
		det := na.cross(nb)
		if math.Abs(det) < 1e-9 {
			break
		}
		step := heading{(float64(fa*nb.y) - float64(fb*na.y)) / det, (float64(na.x*fb) - float64(nb.x*fa)) / det}
		x = heading{x.x - step.x, x.y - step.y}
		if step.size() < length.Nanometre.MM()/10 {
			return x.from(b.From), nil
		}
	}
	return plane.Point{}, fmt.Errorf("the edges at %v do not meet any more", b.From)
}

// astray is how far, in mm, the point at origin + x lies to the right of the
// edge moved right by d, and the direction in which that grows.
func astray(e plane.Edge, origin plane.Point, x heading, d float64) (float64, heading) {
	if e.Turn == plane.Straight {
		n := start(e).right()
		return n.dot(between(e.From, origin).plus(x)) - d, n
	}
	out := between(e.Centre, origin).plus(x)
	n, sign := out.unit(), float64(e.Turn)
	return sign*(out.size()-e.Radius()) - d, n.times(sign)
}
