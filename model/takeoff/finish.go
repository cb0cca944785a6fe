package takeoff

import (
	"stilewright/model/door"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

const (
	perSquareMetre = 1e6 // mm²
	perMetre       = 1e3 // mm
	perLitre       = 1e6 // mm³
)

// Surface is the area in mm² of a solid's body, both faces and all edges, with
// what its cuts open and close; bores are left out. It is measured in slabs
// along Y, as solid.Solid.Stack gives them.
func Surface(s solid.Solid) float64 {
	slabs := s.Stack()
	area := 0.0
	for i, slab := range slabs {
		for _, path := range slab.Region {
			area += float64(path.Length() * (slab.To - slab.From).MM())
		}
		if i == 0 || slabs[i-1].To != slab.From {
			area += slab.Region.Area()
		}
		if i == len(slabs)-1 || slabs[i+1].From != slab.To {
			area += slab.Region.Area()
		} else {
			area += differs(slab.Region, slabs[i+1].Region)
		}
	}
	return area
}

// differs is the area in mm² that belongs to one of two regions only.
func differs(a, b plane.Region) float64 {
	return a.Area() + b.Area() - float64(2*plane.Intersect(a, b).Area())
}

// joined is the area in mm² of a part's two ends, which stand against other
// parts: of rails and muntins.
func joined(p Part, role door.Role) float64 {
	if len(p.Leaves) == 0 || role != door.RailRole && role != door.MuntinRole {
		return 0
	}
	return 2 * float64(p.Net.Width.MM()*p.Net.Thickness.MM())
}

// cheeks is how many times a member's section the glued faces of a joint with
// tenons, dowels or laps come to: its end, and two cheeks about as large.
// Common practice, no source.
const cheeks = 3

// areas are the areas in m² of a job's wood that are finished, and of its glued
// joints. A joint's area is not finished, neither at the end that stands
// against a part nor on that part.
func (t *taker) areas(job int) (finished, glued float64) {
	faces := 1.0
	if t.jobs[job].Set.Leaf.Joint.Kind != door.PocketScrew {
		faces = cheeks
	}
	for i, p := range t.out.Parts {
		if p.Job != job || p.Kind != Wooden {
			continue
		}
		ends := joined(p, t.whole[i].role)
		n := float64(p.Quantity)
		finished += float64(n * (Surface(t.whole[i].part.Solid) - float64(2*ends)))
		glued += float64(n * ends * faces)
	}
	return finished / perSquareMetre, glued / perSquareMetre
}
