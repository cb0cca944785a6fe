package machining

import (
	"cmp"
	"fmt"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// A Tool is the mill that clears pockets and cuts out parts of wood.
type Tool struct {
	Diameter length.Length
	Reach    length.Length // deepest it cuts
	Relief   Relief        // of inside corners sharper than the tool is round
	// Write is how sentences write sizes; nil writes millimetres, exactly.
	Write func(length.Length) string
}

// write writes a size in a sentence.
func (t Tool) write(l length.Length) string {
	if t.Write == nil {
		return l.Decimal() + " mm"
	}
	return t.Write(l)
}

// Run is how far a pocket runs past an edge it opens to: the tool's radius and
// a millimetre, so that the tool has wholly left the wood.
func (t Tool) Run() length.Length { return t.Diameter.Half() + length.Millimetre }

// A Plan is the work on one part.
type Plan struct {
	// Setups has the setup the part is cut out in first: that of the back
	// where anything is worked from there. The others show the outline as a
	// blank.
	Setups []Setup
	// LeftOut says what the setups do not hold, one clause each, with how
	// often where it is more than once.
	LeftOut []string
}

// Setups plans the work on a solid: its outline, and each cut and bore from the
// face that opens to it, front and back before edges and the shallower before
// the deeper.
//
// Pockets run past edges they open to by the tool's Run. Inside corners get
// the tool's relief. Bores that are inclined, cuts no face opens to, and work
// deeper than the tool reaches are left out and said. A blank that is no slab
// from front to back has no setups at all.
func Setups(body solid.Solid, t Tool) Plan {
	p := &planner{body: solid.Solid{Blank: body.Blank, Cuts: body.Cuts}, tool: t}
	p.least, p.most = body.Bounds()
	if body.Blank.Axis != solid.Y && !isBox(body.Blank) {
		return Plan{LeftOut: []string{"the whole part: it is no flat piece"}}
	}
	for _, c := range body.Cuts {
		p.cut(c)
	}
	for _, b := range body.Bores {
		p.bore(b, body.Bores)
	}
	return Plan{Setups: p.setups(), LeftOut: counted(p.left)}
}

// setups gathers the work by face.
func (p *planner) setups() []Setup {
	worked := map[Face]bool{}
	for _, k := range p.pockets {
		worked[k.face] = true
	}
	for _, b := range p.bores {
		worked[b.face] = true
	}
	first := Front
	if worked[Back] {
		first = Back
	}
	setups := []Setup{p.setup(first, true)}
	for f := Front; f <= Top; f++ {
		if worked[f] && f != first {
			setups = append(setups, p.setup(f, false))
		}
	}
	return setups
}

// setup is the work on one face; out tells that the part is cut out in it.
func (p *planner) setup(f Face, out bool) Setup {
	v := view{f, p.least, p.most}
	s := v.setup()
	outline := v.seen(p.outline(f.axis(), NoRelief)) // what pockets open to
	for _, path := range v.seen(p.outline(f.axis(), p.tool.Relief)) {
		c := Contour{Operation: Blank, Path: path}
		if out {
			c.Operation, c.Depth = Cut, s.Thickness
			if path.Area() < 0 {
				c.Operation = Hole
			}
		}
		s.Contours = append(s.Contours, c)
	}
	byDepth := map[length.Length]plane.Region{}
	for _, k := range p.pockets {
		if k.face == f {
			byDepth[k.depth] = plane.Union(byDepth[k.depth], plane.Intersect(v.seen(k.region), outline))
		}
	}
	for depth, region := range byDepth {
		s.Contours = append(s.Contours, PocketIn(outline, region, depth, p.tool)...)
	}
	for _, b := range p.bores {
		if b.face == f {
			s.Contours = append(s.Contours, Contour{Bore, b.depth, plane.Circle(v.at(b.centre), b.diameter.Half())})
		}
	}
	s.sort()
	return s
}

// PocketIn are the contours of a pocket in a part of that outline: run past the
// outline where the pocket opens to it, its inside corners relieved.
func PocketIn(outline, region plane.Region, depth length.Length, t Tool) []Contour {
	region = past(region, outline, t.Run())
	region = relieved(region, outline, t)
	var contours []Contour
	for _, path := range region {
		contours = append(contours, Contour{Pocket, depth, path})
	}
	return contours
}

// outline is the part's outline flat along an axis, with that relief of its
// inside corners.
func (p *planner) outline(a solid.Axis, r Relief) plane.Region {
	if a != solid.Y {
		return plane.Region{plane.Rect(p.least.Flat(a), p.most.Flat(a))}
	}
	region := plane.Region{plane.Rect(p.least.Flat(a), p.most.Flat(a))}
	if p.body.Blank.Axis == a {
		region = p.body.Blank.Region
	}
	tool := p.tool
	tool.Relief = r
	return plane.Subtract(region, relieved(p.through, region, tool))
}

// sort puts contours by operation, depth, and place: lowest, then leftmost.
func (s *Setup) sort() {
	slices.SortStableFunc(s.Contours, func(a, b Contour) int {
		low, other := a.Path.Bounds().Min, b.Path.Bounds().Min
		return cmp.Or(cmp.Compare(a.Operation, b.Operation), cmp.Compare(a.Depth, b.Depth),
			cmp.Compare(low.Y, other.Y), cmp.Compare(low.X, other.X))
	})
}

// counted puts equal clauses into one with their number.
func counted(clauses []string) []string {
	times := map[string]int{}
	var once []string
	for _, c := range clauses {
		if times[c]++; times[c] == 1 {
			once = append(once, c)
		}
	}
	for i, c := range once {
		if n := times[c]; n > 1 {
			once[i] = fmt.Sprintf("%d × %s", n, c)
		}
	}
	return once
}
