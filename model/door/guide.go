package door

import (
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// guide resolves the floor guide's groove.
func (r *resolver) guide() {
	written, leaf := r.model.Leaf.Guide, &r.set.Leaf
	switch {
	case written == nil:
		return
	case written.Width == nil || written.Depth == nil:
		r.stopped = true // spec has said so
		return
	}
	g := Guide{Width: r.given("guide.width", "leaf.guide.width", *written.Width), Depth: r.given("guide.depth", "leaf.guide.depth", *written.Depth)}
	path := "leaf.guide.width"
	if written.Front != nil {
		path = "leaf.guide.front"
		g.Front = r.given("guide.front", path, *written.Front)
	} else {
		g.Front = r.derive("guide.front", (leaf.Thickness - g.Width).Half(), "groove centred: half of thickness less groove", "leaf.thickness", "guide.width")
	}
	leaf.Guide = &g
	cheek := guideCheek.in(r.units)
	if left := min(g.Front, leaf.Thickness-g.Front-g.Width); left < cheek {
		r.stop(path, RuleGuide, "a groove %v wide that begins %v from the front of a frame %v thick leaves a cheek of %v; at least %v is needed on both sides: up to %v wide, centred", g.Width, g.Front, leaf.Thickness, left, cheek, max(0, leaf.Thickness-2*cheek))
	}
	rail, clear := leaf.Rails[0], screwClear.in(r.units)
	if left := rail.Width() - leaf.Rabbet.Width - g.Depth; left < clear {
		r.stop("leaf.guide.depth", RuleGuide, "a groove %v deep leaves %v below the panel's seat in a bottom rail %v wide; at least %v is needed: up to %v deep", g.Depth, left, rail.Width(), clear, max(0, rail.Width()-leaf.Rabbet.Width-clear))
	}
}

// groove is the prism of the guide's groove at a depth.
func (l Leaf) groove(depth length.Length) solid.Prism {
	g := l.Guide
	return solid.Prism{Axis: solid.X, Region: plane.Region{plane.Rect(plane.At(g.Front, 0), plane.At(g.Front+g.Width, depth))}, To: l.Width}
}

// guideGroove cuts the floor guide's groove, clear of all that was taken
// before. What a joint fills again with wood (round a tenon, a lap, the seat's
// own groove under a haunch) is no hindrance, nor is a worked edge.
func (b *bench) guideGroove() {
	leaf := b.leaf
	if leaf.Guide == nil {
		return
	}
	others := slices.DeleteFunc(b.taken(), func(o taken) bool {
		return slices.Contains([]string{"rabbet", "groove", "roundover", "chamfer", "tenon", "haunch", "lap", "bridle"}, o.what)
	})
	clear, groove := screwClear.in(b.units), leaf.groove(leaf.Guide.Depth)
	if o, off, near := nearest([]taken{{prism: &groove}}, others, clear); near {
		b.stop("leaf.guide", RuleGuide, "a groove %v deep comes within %v of a %s in %s; at least %v must be left: up to %v deep is clear", leaf.Guide.Depth, off, o.what, o.part, clear, b.grooveUpTo(others, clear))
		return
	}
	for _, m := range b.members {
		m.cut(groove, "guide")
	}
}

// grooveUpTo is the greatest depth on the tick at which the groove is clear of
// the others; 0 when none is.
func (b *bench) grooveUpTo(others []taken, clear length.Length) length.Length {
	for depth := (b.leaf.Guide.Depth - 1).DownTo(b.tick); depth > 0; depth -= b.tick {
		groove := b.leaf.groove(depth)
		if _, _, near := nearest([]taken{{prism: &groove}}, others, clear); !near {
			return depth
		}
	}
	return 0
}
