package door

import (
	"stilewright/model/length"
	"stilewright/model/plane"
)

// opening lays out the measured opening: jambs from widths and plumb, floor
// from heights under a level head.
func (r *resolver) opening() {
	o := r.model.Opening
	if o.Width.Bottom == nil || o.Width.Top == nil || o.Height.Left == nil || o.Height.Right == nil {
		r.stopped = true // spec has said so
		return
	}
	heights := r.heights()
	least, most := heights[0], heights[0]
	for _, h := range heights {
		least, most = min(least, h), max(most, h)
	}
	r.set.Opening.Height = r.derive("opening.height", least, "the least of the measured heights", r.names("opening.height.")...)
	r.set.Opening.Head = least
	r.jambs(least - most)
	r.floor(heights, least)
}

// heights enters the measured heights: left, middle, right.
func (r *resolver) heights() []length.Length {
	h := r.model.Opening.Height
	left := r.given("opening.height.left", "opening.height.left", *h.Left)
	right := r.given("opening.height.right", "opening.height.right", *h.Right)
	if h.Middle == nil {
		return []length.Length{left, right}
	}
	return []length.Length{left, r.given("opening.height.middle", "opening.height.middle", *h.Middle), right}
}

// names lists the names of figures that begin so.
func (r *resolver) names(prefix string) []string {
	var names []string
	for _, f := range r.figures {
		if len(f.Name) > len(prefix) && f.Name[:len(prefix)] == prefix {
			names = append(names, f.Name)
		}
	}
	return names
}

// jambs lays out both jambs and finds the least usable width. The left jamb
// leans by its plumb; the right one stands off it by the measured widths.
func (r *resolver) jambs(foot length.Length) {
	w, p := r.model.Opening.Width, r.model.Opening.Plumb
	o := &r.set.Opening
	var lean length.Length
	if p.Left != nil {
		lean = r.given("opening.plumb.left", "opening.plumb.left", *p.Left)
	}
	bottom := r.given("opening.width.bottom", "opening.width.bottom", *w.Bottom)
	top := r.given("opening.width.top", "opening.width.top", *w.Top)
	o.Left = []plane.Point{{X: 0, Y: foot}, {X: lean, Y: o.Head}}
	o.Right = []plane.Point{{X: bottom, Y: foot}, {X: lean + top, Y: o.Head}}
	if w.Middle != nil {
		middle := r.given("opening.width.middle", "opening.width.middle", *w.Middle)
		half := (foot + o.Head).Half()
		at := between(0, 0, o.Head-foot, lean, half-foot)
		o.Right = []plane.Point{o.Right[0], {X: at + middle, Y: half}, o.Right[1]}
	}
	r.agree(top - bottom + lean)
	left, right := max(0, lean), o.Right[0].X
	for _, at := range o.Right {
		right = min(right, at.X)
	}
	for _, line := range [][]plane.Point{o.Left, o.Right} {
		for i := range line {
			line[i].X -= left
		}
	}
	from := append(r.names("opening.width."), r.names("opening.plumb.")...)
	o.Width = r.derive("opening.width", right-left, "least distance between the jambs as a plumb leaf sees them", from...)
}

// agree warns when the plumb of the right jamb is not what widths and left
// plumb make it.
func (r *resolver) agree(lean length.Length) {
	p := r.model.Opening.Plumb
	if p.Right == nil {
		return
	}
	stated := r.given("opening.plumb.right", "opening.plumb.right", *p.Right)
	limit := plumbAgree.in(r.units)
	if (stated - lean).Abs() > limit {
		r.warn("opening.plumb.right", RulePlumb, "right jamb is said to lean %v; the widths and the left jamb make it %v, more than %v apart: measure widths and plumb again", stated, lean, limit)
	}
}

// floor lays the floor under the level head.
func (r *resolver) floor(heights []length.Length, least length.Length) {
	o := &r.set.Opening
	span := o.Right[0].X - o.Left[0].X
	steps := length.Length(len(heights) - 1)
	for i, h := range heights {
		o.Floor = append(o.Floor, plane.At(o.Left[0].X+span*length.Length(i)/steps, least-h))
	}
}
