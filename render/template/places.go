package template

import (
	"cmp"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// A Place is one mark of a story stick: how far it lies from the part's foot or
// left end, along its grain, and what is there.
type Place struct {
	At   length.Length
	What string
	Edge bool // an edge of a member that meets the part: drawn heavier
	Axis bool // a middle: drawn as a centre line
}

// A Span is what a member takes of the part it meets.
type Span struct {
	From, To length.Length
	Label    string // of the member
}

// along is a point's coordinate along a part's grain, from its foot or left end.
func along(p door.Part) func(solid.Vec) length.Length {
	least, _ := p.Solid.Bounds()
	return func(v solid.Vec) length.Length { return v.Along(p.Grain) - least.Along(p.Grain) }
}

// Size is the part's whole length along its grain.
func Size(p door.Part) length.Length {
	least, most := p.Solid.Bounds()
	return most.Along(p.Grain) - least.Along(p.Grain)
}

// Spans are what the members that end at a part take of it, from its foot or
// left end on. Two that end at the same place of both edges are two.
func Spans(l door.Leaf, p door.Part) (spans []Span) {
	least, _ := p.Solid.Bounds()
	for _, m := range l.Meetings {
		if m.Into == p.Label {
			spans = append(spans, Span{m.From - least.Along(p.Grain), m.To - least.Along(p.Grain), m.Member})
		}
	}
	slices.SortStableFunc(spans, func(a, b Span) int { return cmp.Compare(a.From, b.From) })
	return spans
}

// Places are all marks of a stile, rail or muntin, from its foot or left end on:
// its ends, edges and middles of the members that meet it, ends of what is cut
// into it, and middles of what is bored and screwed into it across its grain.
// Holes along its grain are the joint template's.
func Places(l door.Leaf, p door.Part) []Place {
	names := [2]string{"left end", "right end"}
	if p.Grain == solid.Z {
		names = [2]string{"foot", "upper end"}
	}
	c := &collector{size: Size(p)}
	c.add(0, names[0], true, false)
	c.add(c.size, names[1], true, false)
	c.members(l, p)
	c.walls(l, p)
	c.cuts(p)
	c.bores(p)
	c.screws(l, p)
	for _, pull := range l.Pulls {
		if pull.Label == p.Label {
			c.add(along(p)(solid.Vec{X: pull.Centre.X, Z: pull.Centre.Y}), "pull, middle", false, true)
		}
	}
	slices.SortStableFunc(c.places, func(a, b Place) int { return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.What, b.What)) })
	return paired(slices.Compact(c.places))
}

// paired makes one place of two that stand opposite one another in both edges.
func paired(places []Place) (all []Place) {
	for _, p := range places {
		if n := len(all); n > 0 && all[n-1].At == p.At {
			before, _, edge := strings.Cut(all[n-1].What, ", ")
			now, _, also := strings.Cut(p.What, ", ")
			if edge && also && before == now {
				all[n-1].What = now + ", both edges"
				continue
			}
		}
		all = append(all, p)
	}
	return all
}

// A collector gathers the places of one part.
type collector struct {
	size   length.Length
	places []Place
}

func (c *collector) add(at length.Length, what string, edge, axis bool) {
	c.places = append(c.places, Place{at, what, edge, axis})
}

// taken tells whether an edge or end is marked there already.
func (c *collector) taken(at length.Length) bool {
	return slices.ContainsFunc(c.places, func(p Place) bool { return p.Edge && p.At == at })
}

// members marks edges and middles of the members that meet the part.
func (c *collector) members(l door.Leaf, p door.Part) {
	edges := [2]string{"left edge", "right edge"}
	if p.Grain == solid.Z {
		edges = [2]string{"lower edge", "upper edge"}
	}
	for _, s := range Spans(l, p) {
		if !c.taken(s.From) {
			c.add(s.From, s.Label+" "+edges[0], true, false)
		}
		c.add(s.From+(s.To-s.From).Half(), s.Label+" middle", false, true)
		if !c.taken(s.To) {
			c.add(s.To, s.Label+" "+edges[1], true, false)
		}
	}
}

// walls marks the walls of the panels' seats that run across the part.
func (c *collector) walls(l door.Leaf, p door.Part) {
	if l.Rabbet.Through && p.Role == door.StileRole {
		return // the groove has no end there
	}
	name := "rabbet wall"
	if l.Rabbet.Kind == door.Groove {
		name = "groove end"
	}
	at := along(p)
	least, most := p.Solid.Bounds()
	for _, lite := range l.Lites {
		seat := lite.Sight.Grow(l.Rabbet.Width)
		if seat.Min.X >= most.X || seat.Max.X <= least.X || seat.Min.Y >= most.Z || seat.Max.Y <= least.Z {
			continue
		}
		for _, corner := range []plane.Point{seat.Min, seat.Max} {
			if end := at(solid.Vec{X: corner.X, Z: corner.Y}); end > 0 && end < c.size {
				c.add(end, name, false, false)
			}
		}
	}
}

// cuts marks the ends of what is cut into the part, but for the panels' seats,
// where no edge is.
func (c *collector) cuts(p door.Part) {
	at := along(p)
	for _, cut := range p.Solid.Cuts {
		if cut.For == "rabbet" {
			continue
		}
		least, most := (solid.Solid{Blank: cut.Prism}).Bounds()
		from, to := at(least), at(most)
		name := cut.For + " end"
		if (from <= 0 || to >= c.size) && slices.Contains([]string{"tenon", "lap", "bridle"}, cut.For) {
			name = "shoulder"
		}
		for _, end := range []length.Length{from, to} {
			if end > 0 && end < c.size && !c.taken(end) {
				c.add(end, name, false, false)
			}
		}
	}
}

// bores marks the middles of what is bored across the grain, and of what is
// bored aslant but not along it.
func (c *collector) bores(p door.Part) {
	at := along(p)
	for _, b := range p.Solid.Bores {
		if run := at(b.To) - at(b.From); run != 0 {
			continue
		}
		c.add(at(b.From), boreName(b, p), false, false)
	}
}

// boreName is what a hole is for and, of one in a rail's or muntin's edge, in
// which.
func boreName(b solid.Bore, p door.Part) string {
	name := strings.TrimSuffix(b.For, " screw") // a washer's, a hanger's
	if p.Role == door.StileRole {
		return name
	}
	way := solid.Z
	if p.Grain == solid.Z {
		way = solid.X
	}
	up := b.To.Along(way) - b.From.Along(way) // into the wood: up from the lower edge
	switch {
	case up == 0:
		return name
	case way == solid.Z && up > 0:
		return name + ", lower edge"
	case way == solid.Z:
		return name + ", upper edge"
	case up > 0:
		return name + ", left edge"
	default:
		return name + ", right edge"
	}
}

// screws marks the pocket screws whose tips lie in the part.
func (c *collector) screws(l door.Leaf, p door.Part) {
	at := along(p)
	least, most := p.Solid.Bounds()
	within := func(v solid.Vec) bool {
		return least.X < v.X && v.X < most.X && least.Y < v.Y && v.Y < most.Y && least.Z < v.Z && v.Z < most.Z
	}
	for _, s := range l.Screws {
		if s.For == "pocket" && within(s.Tip) && at(s.Head) == at(s.Tip) {
			c.add(at(s.Tip), "pocket screw", false, false)
		}
	}
}
