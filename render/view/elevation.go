package view

import (
	"cmp"
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
)

// Elevation gives the lines seen from a side, in the coordinates that Side
// tells. Visible edges are wide and continuous, covered ones narrow and Hidden.
// Edges that fall on one another are drawn once, as what the nearest of them
// is; where two bodies meet in one face the joint is drawn. Where a round face
// turns away from the eye its outline is drawn; where it runs smoothly into a
// flat one, a narrow line (see tangentGap).
//
// Of bores, a mouth in a face that one looks at is visible, with what shows of
// the bore's end in it; the rest of a bore is its covered outline. Bodies must
// not clash. One that has no shell (solid.Solid.Shell) is drawn as its slabs,
// what is round across the eye as half-way through it.
func Elevation(bodies []Body, from Side, o Options) []Line {
	bodies, from = turned(bodies, from)
	s := scene{bodies: bodies, from: from, options: o, drawn: ink{}, ovals: map[oval]bool{}, shapes: map[oval]plane.Path{}}
	s.lay()
	for i := range s.outlines {
		f := &s.outlines[i]
		for _, path := range f.paths {
			visible, hidden := s.split(path, f.near, f.shaped)
			s.see(visible, bodies[f.body].Layer)
			s.hide(hidden, f)
		}
	}
	if !o.NoBores {
		for i := range bodies {
			s.bores(i)
		}
	}
	s.seeTangents()
	return append(joined(s.strokes), s.curves...)
}

// A scene is an elevation on its way.
type scene struct {
	bodies  []Body
	from    Side
	options Options
	faces   []face // what hides: nearest first

	outlines []outlined // nearest first
	tangents []outlined

	clipper plane.Clipper
	drawn   ink
	strokes []stroke

	curves []Line              // ends and mouths of bores
	ovals  map[oval]bool       // those drawn
	shapes map[oval]plane.Path // about the origin, since bores repeat
}

// A face is a slab of a body as seen from where one stands.
type face struct {
	body int
	near length.Length // the distance of its near side, growing away from the eye
	at   length.Length // the near side's Y
	cover
}

// A cover is a region of the view that paths are clipped by.
type cover struct {
	region plane.Region
	bounds plane.Box
	area   plane.Area
	edges  []plane.Box // round its edges
}

func coverOf(r plane.Region) cover {
	c := cover{region: r, bounds: r.Bounds(), area: plane.AreaOf(r)}
	for _, path := range r {
		for _, e := range path {
			c.edges = append(c.edges, e.Bounds())
		}
	}
	return c
}

// lay sorts what hides and what is drawn by its distance from the eye.
func (s *scene) lay() {
	stacks := make([][]solid.Slab, len(s.bodies))
	for i, b := range s.bodies {
		if !b.Solid.Even(solid.Y) && !disc(b.Solid) && s.shaped(i) {
			continue
		}
		stacks[i] = s.stack(i, stacks)
		for _, slab := range stacks[i] {
			f := s.faceOf(i, slab)
			s.faces = append(s.faces, f)
			s.outlines = append(s.outlines, outlined{body: i, near: f.near, paths: f.region})
		}
	}
	slices.SortStableFunc(s.faces, func(a, b face) int { return cmp.Compare(a.near, b.near) })
	slices.SortStableFunc(s.outlines, func(a, b outlined) int { return cmp.Compare(a.near, b.near) })
}

// stack is a body's stack. Since leaves are alike, it is taken, moved, from a
// body of the same label before it, if one is the same.
func (s *scene) stack(i int, stacks [][]solid.Slab) []solid.Slab {
	b := s.bodies[i]
	for k, other := range s.bodies[:i] {
		if b.Label == "" || other.Label != b.Label || stacks[k] == nil {
			continue
		}
		by, is := b.Solid.MovedFrom(other.Solid)
		if !is {
			continue
		}
		var moved []solid.Slab
		for _, slab := range stacks[k] {
			moved = append(moved, solid.Slab{From: slab.From + by.Y, To: slab.To + by.Y, Region: slab.Region.Translate(by.X, by.Z)})
		}
		return moved
	}
	return b.Solid.Stack()
}

// faceOf is a slab as it hides what lies behind it.
func (s *scene) faceOf(body int, slab solid.Slab) face {
	f := face{body: body, near: slab.From, at: slab.From}
	region := slab.Region
	if s.from == Back {
		f.near, f.at, region = -slab.To, slab.To, region.MirrorX(0)
	}
	f.cover = coverOf(region)
	return f
}

// distance is how far a place along Y lies from the eye, as face.near.
func (s *scene) distance(y length.Length) length.Length {
	if s.from == Back {
		return -y
	}
	return y
}

// split parts a path that lies at the distance near into what one sees of it
// and what is covered. What runs along the edge of a nearer face is in
// neither, since that edge is drawn, unless rims keeps it in sight.
func (s *scene) split(path plane.Path, near length.Length, rims bool) (visible, hidden []plane.Path) {
	bounds := path.Bounds()
	visible = []plane.Path{path}
	for i := range s.faces {
		f := &s.faces[i]
		if f.near >= near || len(visible) == 0 {
			break
		}
		if s.bodies[f.body].SeeThrough || !overlap(bounds, f.bounds) {
			continue
		}
		var rest []plane.Path
		for _, p := range visible {
			in, out, on := s.clip(p, &f.cover)
			hidden = append(hidden, in...)
			rest = append(rest, out...)
			if rims {
				rest = append(rest, on...)
			}
		}
		visible = rest
	}
	return visible, hidden
}

// clip is plane.Clip. A path that no edge comes near is inside or outside as a
// whole.
func (s *scene) clip(p plane.Path, by *cover) (inside, outside, boundary []plane.Path) {
	bounds := p.Bounds().Grow(same)
	if slices.ContainsFunc(by.edges, func(b plane.Box) bool { return overlap(b, bounds) }) {
		return s.clipper.Clip(p, &by.area)
	}
	if by.region.Where(p[0].From) == plane.Inside {
		return []plane.Path{p}, nil, nil
	}
	return nil, []plane.Path{p}, nil
}

// overlap tells whether the boxes meet in more than a point on their sides;
// a box may be as thin as a line.
func overlap(a, b plane.Box) bool {
	return a.Min.X <= b.Max.X && b.Min.X <= a.Max.X && a.Min.Y <= b.Max.Y && b.Min.Y <= a.Max.Y &&
		!(a.Max.X == b.Min.X || a.Min.X == b.Max.X || a.Max.Y == b.Min.Y || a.Min.Y == b.Max.Y)
}

// see draws visible paths.
func (s *scene) see(paths []plane.Path, layer sheet.Layer) {
	s.draw(paths, style{layer, sheet.Wide, sheet.Continuous})
}

// covered is the style of all covered edges.
var covered = style{sheet.HiddenEdge, sheet.Narrow, sheet.Hidden}

// hide draws covered paths as far as the options ask for them.
func (s *scene) hide(paths []plane.Path, of *outlined) {
	use := func(e plane.Edge) string {
		if of.shaped {
			return of.use
		}
		return s.purpose(e, of.body)
	}
	for _, path := range paths {
		for _, e := range path {
			for _, part := range s.drawn.draw(e) {
				if s.options.NoHidden || len(s.options.HiddenFor) > 0 && !s.wanted(use(part)) {
					continue
				}
				s.strokes = append(s.strokes, stroke{part, covered})
			}
		}
	}
}

// wanted tells whether covered edges of the purpose are drawn.
func (s *scene) wanted(purpose string) bool {
	return !s.options.NoHidden && (len(s.options.HiddenFor) == 0 || slices.Contains(s.options.HiddenFor, purpose))
}

func (s *scene) draw(paths []plane.Path, as style) {
	for _, path := range paths {
		for _, e := range path {
			for _, part := range s.drawn.draw(e) {
				s.strokes = append(s.strokes, stroke{part, as})
			}
		}
	}
}

// purpose is what the cut is for that made an edge of the body; "" for an edge
// of the blank.
func (s *scene) purpose(e plane.Edge, body int) string {
	middle := s.mirror(e.Middle())
	b := s.bodies[body].Solid
	if outline(b.Blank).Where(middle) == plane.Boundary {
		return ""
	}
	for _, c := range b.Cuts {
		if outline(c.Prism).Where(middle) == plane.Boundary {
			return c.For
		}
	}
	return ""
}

// outline is the prism as seen along Y.
func outline(p solid.Prism) plane.Region {
	if p.Axis == solid.Y {
		return p.Region
	}
	least, most := solid.Solid{Blank: p}.Bounds()
	return plane.Region{plane.Rect(least.Flat(solid.Y), most.Flat(solid.Y))}
}

// mirror leads from space to the view and back.
func (s *scene) mirror(p plane.Point) plane.Point {
	if s.from == Back {
		p.X = -p.X
	}
	return p
}
