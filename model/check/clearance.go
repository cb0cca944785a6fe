package check

import (
	"fmt"

	"stilewright/model/door"
	"stilewright/model/length"
)

// A Clearance is what is free beside a leaf over its whole slide.
type Clearance struct {
	Name        string // "leaf 1, lower left corner to the floor"
	Least, Most length.Length
	LeastAt     length.Length // X in the set's frame of the corner at the least
	MostAt      length.Length // and at the most
}

// Clearances lists what is free beside the leaves over their whole slide: each
// lower corner to the floor, leaf top to head and track, closed outer leaves to
// the jambs from floor to head, faces to the fascia and to one another with what
// stands proud.
func Clearances(s door.Set) []Clearance {
	var all []Clearance
	for i, h := range s.Hung {
		least, most := slides(s, i)
		for corner, word := range []string{"left", "right"} {
			off := s.Leaf.Width * length.Length(corner)
			c := toFloor(s, h.At.Z, least+off, most+off)
			c.Name = fmt.Sprintf("leaf %s, lower %s corner to the floor", h.Label, word)
			all = append(all, c)
		}
	}
	all = append(all, level("leaf top to head", s.Track.HeadDrop), level("leaf top to track", s.Track.HeadDrop-s.Track.Height))
	last := s.Hung[len(s.Hung)-1]
	all = append(all, toJamb(s, "leaf "+s.Hung[0].Label+" to the left jamb, closed", true, s.Hung[0].At.X),
		toJamb(s, "leaf "+last.Label+" to the right jamb, closed", false, last.At.X+s.Leaf.Width))
	front, back := proud(s.Leaf)
	if s.Fascia != nil {
		all = append(all, level("fascia to the front leaf, with what stands proud", s.Track.Centre[door.Front]-s.Leaf.Thickness.Half()-front-s.Fascia.Thickness))
	}
	return append(all, level("face to face of passing leaves, with what stands proud", s.Track.FaceGap-front-back))
}

// level is a clearance that is the same all along.
func level(name string, size length.Length) Clearance {
	return Clearance{Name: name, Least: size, Most: size}
}

// slides is how far a leaf's left edge may be slid, between the jambs and the
// leaves of its own channel pushed aside.
func slides(s door.Set, i int) (least, most length.Length) {
	most = s.Opening.Width - s.Leaf.Width
	for k, other := range s.Hung {
		switch {
		case k == i || other.Channel != s.Hung[i].Channel:
		case k < i:
			least += s.Leaf.Width
		default:
			most -= s.Leaf.Width
		}
	}
	return least, most
}

// toFloor is a corner at a height on its way between two places: the floor is
// straight between its measured points, so the extremes lie at those or at the
// ends.
func toFloor(s door.Set, height, from, to length.Length) Clearance {
	places := []length.Length{from, to}
	for _, p := range s.Opening.Floor {
		if from < p.X && p.X < to {
			places = append(places, p.X)
		}
	}
	var c Clearance
	for i, x := range places {
		gap := height - s.Opening.FloorAt(x)
		if i == 0 || gap < c.Least {
			c.Least, c.LeastAt = gap, x
		}
		if i == 0 || gap > c.Most {
			c.Most, c.MostAt = gap, x
		}
	}
	return c
}

// toJamb is the reveal of a closed outer leaf from its bottom to its top, at the
// jamb's measured points and at the leaf's ends.
func toJamb(s door.Set, name string, left bool, edge length.Length) Clearance {
	line := s.Opening.Right
	if left {
		line = s.Opening.Left
	}
	bottom := s.Hung[0].At.Z
	heights := []length.Length{bottom, bottom + s.Leaf.Height}
	for _, p := range line {
		if heights[0] < p.Y && p.Y < heights[1] {
			heights = append(heights, p.Y)
		}
	}
	c := Clearance{Name: name}
	for i, z := range heights {
		x := jambAt(line, z)
		gap := x - edge
		if left {
			gap = edge - x
		}
		if i == 0 || gap < c.Least {
			c.Least, c.LeastAt = gap, x
		}
		if i == 0 || gap > c.Most {
			c.Most, c.MostAt = gap, x
		}
	}
	return c
}

// proud is the most that stands out of a leaf's front and back: rims of pulls,
// stops and beads.
func proud(leaf door.Leaf) (front, back length.Length) {
	for _, p := range leaf.Pulls {
		if p.Back {
			back = max(back, p.Rim)
		} else {
			front = max(front, p.Rim)
		}
	}
	strip := leaf.Strip.Proud
	if leaf.SolidStrip != nil {
		strip = max(strip, leaf.SolidStrip.Proud)
	}
	if leaf.Rabbet.Kind == door.FaceBead {
		return max(front, strip), back
	}
	return front, max(back, strip)
}
