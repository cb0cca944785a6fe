package machining

import (
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// Assembly is the work of one use ("rabbet") on a face of parts that are joined
// already, all of it in one go: the parts' common outline as a blank, and the
// pockets of every part. The face is Front or Back. A part whose own face does
// not lie in that of the whole is taken for outline only. There are no pockets
// in it when no part has such work.
func Assembly(bodies []solid.Solid, f Face, use string, t Tool) Setup {
	var outline plane.Region
	byDepth := map[length.Length]plane.Region{}
	var v view
	for i, body := range bodies {
		least, most := body.Bounds()
		if i == 0 {
			v = view{f, least, most}
		}
		v.least, v.most = join(v.least, v.most, least, most)
	}
	for _, body := range bodies {
		p := &planner{body: solid.Solid{Blank: body.Blank, Cuts: body.Cuts}, tool: t}
		p.least, p.most = body.Bounds()
		for _, c := range body.Cuts {
			p.cut(c)
		}
		outline = plane.Union(outline, p.outline(solid.Y, NoRelief))
		if p.most.Y != v.most.Y || p.least.Y != v.least.Y {
			continue
		}
		for _, k := range p.pockets {
			if k.face == f && k.use == use {
				byDepth[k.depth] = plane.Union(byDepth[k.depth], k.region)
			}
		}
	}
	s := v.setup()
	outline = v.seen(outline)
	for _, path := range outline {
		s.Contours = append(s.Contours, Contour{Operation: Blank, Path: path})
	}
	for depth, region := range byDepth {
		s.Contours = append(s.Contours, PocketIn(outline, v.seen(region), depth, t)...)
	}
	s.sort()
	return s
}

// join gives the corners of the smallest box round two.
func join(least, most, low, high solid.Vec) (solid.Vec, solid.Vec) {
	return solid.Vec{X: min(least.X, low.X), Y: min(least.Y, low.Y), Z: min(least.Z, low.Z)},
		solid.Vec{X: max(most.X, high.X), Y: max(most.Y, high.Y), Z: max(most.Z, high.Z)}
}
