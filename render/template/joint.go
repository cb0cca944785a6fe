package template

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
)

// hair is off a plane, so that a section does not graze the faces in it.
const hair = length.Micrometre

// pastJoint is shown of a member beyond what its joint takes.
const pastJoint = 8 * mm

// An end is one end of a member at the part it meets. Its views have these
// coordinates: a along the member from the shoulder, away from the other part;
// c across its face from its lower or left edge; y from the front.
type end struct {
	door.Meeting
	member, into door.Part     // before the panels' rabbets are milled
	milled       door.Part     // the member afterwards
	thick        length.Length // of the frame
	holes        []hole
}

// A hole is where a bore's axis crosses the shoulder.
type hole struct {
	c, y, diameter length.Length
}

// endsOf are the ends that are drawn: the left ones of rails and the upper ones
// of muntins, which look from outside as drawn.
func endsOf(l door.Leaf) (ends []end) {
	for _, m := range l.Meetings {
		if (m.Axis == solid.X) != (m.Way > 0) {
			continue
		}
		member, found := partOf(l, m.Member)
		into, there := partOf(l, m.Into)
		if !found || !there {
			continue
		}
		e := end{Meeting: m, member: jointed(l, member), into: jointed(l, into), milled: member, thick: l.Thickness}
		e.findHoles()
		ends = append(ends, e)
	}
	return ends
}

// jointed is a part as it is when it is jointed: rabbets are milled in the
// assembled leaf, grooves before.
func jointed(l door.Leaf, p door.Part) door.Part {
	if l.Rabbet.Kind == door.Groove {
		return p
	}
	p.Solid.Cuts = slices.DeleteFunc(slices.Clone(p.Solid.Cuts), func(c solid.Cut) bool { return c.For == "rabbet" })
	return p
}

// ofRail tells whether a rail ends here.
func (e end) ofRail() bool { return e.Axis == solid.X }

// findHoles finds where bores of the member, and of the part it meets, cross
// the shoulder.
func (e *end) findHoles() {
	across := solid.Z
	if !e.ofRail() {
		across = solid.X
	}
	for _, b := range append(slices.Clip(e.member.Solid.Bores), e.into.Solid.Bores...) {
		from, to := b.From.Along(e.Axis), b.To.Along(e.Axis)
		if from == to || e.At < min(from, to) || e.At > max(from, to) {
			continue
		}
		part := float64(e.At-from) / float64(to-from)
		at := func(a, b length.Length) length.Length { return a + length.Round(float64((b-a).MM()*part)) }
		h := hole{at(b.From.Along(across), b.To.Along(across)) - e.From, at(b.From.Y, b.To.Y), b.Diameter}
		inside := h.c > 0 && h.c < e.Width() && h.y > 0 && h.y < e.thick
		if inside && !slices.ContainsFunc(e.holes, func(o hole) bool { return o.c == h.c && o.y == h.y }) {
			e.holes = append(e.holes, h)
		}
	}
}

// face is a region across the member at a place from the shoulder, as seen on
// its end: the front at the right, c up.
func (e end) face(p door.Part, a length.Length) plane.Region {
	at := e.At + e.Way*a
	if e.ofRail() { // Y, Z
		return p.Solid.Section(solid.X, at).Map(func(q plane.Point) plane.Point { return plane.At(e.thick-q.X, q.Y-e.From) }, true)
	}
	return p.Solid.Section(solid.Z, at).Map(func(q plane.Point) plane.Point { return plane.At(e.thick-q.Y, q.X-e.From) }, false)
}

// back is a section just under the back face, seen from the back: a to the
// left, c up.
func (e end) back(p door.Part) plane.Region {
	r := p.Solid.Section(solid.Y, e.thick-hair) // X, Z
	if e.ofRail() {
		return r.Map(func(q plane.Point) plane.Point { return plane.At(e.At-q.X, q.Y-e.From) }, true)
	}
	return r.Map(func(q plane.Point) plane.Point { return plane.At(q.Y-e.At, q.X-e.From) }, true)
}

// through is a section along the member at a place across it: a to the right, y
// up.
func (e end) through(p door.Part, c length.Length) plane.Region {
	if e.ofRail() { // X, Y
		return p.Solid.Section(solid.Z, e.From+c).Map(func(q plane.Point) plane.Point { return plane.At(q.X-e.At, q.Y) }, false)
	}
	return p.Solid.Section(solid.X, e.From+c).Map(func(q plane.Point) plane.Point { return plane.At(e.At-q.Y, q.X) }, false) // Y, Z
}

// reach is how far the joint goes into the other part and up the member.
func (e end) reach(j door.Joint) (into, up length.Length) {
	long, deep := j.Tenon.Length, j.Tenon.Mortise
	if !e.ofRail() {
		long, deep = j.Tenon.MuntinLength, j.Tenon.MuntinMortise
	}
	switch e.Kind {
	case door.PocketScrew:
		return j.Pocket.Bite, j.Pocket.Reach
	case door.DowelJoint:
		return j.Dowel.Hole, j.Dowel.Hole
	case door.LooseTenon:
		return deep, deep
	case door.MortiseAndTenon:
		return long, 0
	}
	least, most := e.member.Solid.Bounds() // laps and bridles: what runs past the shoulder
	return max((e.At-least.Along(e.Axis))*e.Way, (e.At-most.Along(e.Axis))*e.Way), 0
}

// joints draws every different joint.
func joints(s door.Set) (sheets []sheet.Sheet) {
	var ends []end
	var alike [][]string
	for _, e := range endsOf(s.Leaf) {
		same := slices.IndexFunc(ends, func(o end) bool { return sameEnd(o, e) })
		if same >= 0 {
			alike[same] = append(alike[same], e.Member)
			continue
		}
		ends, alike = append(ends, e), append(alike, []string{e.Member})
	}
	for i, e := range ends {
		sheets = append(sheets, e.template(s, alike[i]))
	}
	return sheets
}

// sameEnd tells whether two ends are worked alike.
func sameEnd(a, b end) bool {
	return a.Kind == b.Kind && a.Axis == b.Axis && a.Width() == b.Width() && slices.Equal(a.holes, b.holes) &&
		sameRegion(a.face(a.milled, hair), b.face(b.milled, hair)) && sameRegion(a.face(a.member, -hair), b.face(b.member, -hair))
}

// template draws an end as one looks at it and, for pocket holes, its back.
func (e end) template(s door.Set, labels []string) sheet.Sheet {
	d := newDraft(s, "joint-"+e.Member, fmt.Sprintf("Joint of %s, %s", strings.Join(labels, ", "), e.which()))
	box := d.put(e.endView(s), plane.Point{})
	if e.Kind == door.PocketScrew {
		d.put(e.backView(s), plane.At(box.Max.X+viewGap, box.Max.Y))
	}
	return d.finish("The end of a member at the part it meets, as one looks at it.", e.words(d)...)
}

// which is the end in words.
func (e end) which() string {
	if e.ofRail() {
		return "left end"
	}
	return "upper end"
}

// sections draws a section along the member through every different joint;
// members of unlike widths often share one.
func sections(s door.Set) (sheets []sheet.Sheet) {
	var cut []end
	var alike [][]string
	for _, e := range endsOf(s.Leaf) {
		member, into, _ := e.cut(s.Leaf.Joint)
		same := slices.IndexFunc(cut, func(o end) bool {
			otherMember, otherInto, _ := o.cut(s.Leaf.Joint)
			return o.Kind == e.Kind && o.Axis == e.Axis && sameRegion(member, otherMember) && sameRegion(into, otherInto)
		})
		if same >= 0 {
			alike[same] = append(alike[same], e.Member)
			continue
		}
		cut, alike = append(cut, e), append(alike, []string{e.Member})
	}
	for i, e := range cut {
		d := newDraft(s, "joint-section-"+e.Member, fmt.Sprintf("Section through the joint of %s, %s", strings.Join(alike[i], ", "), e.which()))
		d.put(e.sectionView(s), plane.Point{})
		sheets = append(sheets, d.finish("A section along a member through its joint.", e.sizes(d)...))
	}
	return sheets
}

// views' words stand over them.
func (d *draft) caption(box plane.Box, words string) {
	d.text(plane.At(box.Min.X, d.extent().Max.Y+2*mm), noteHeight, sheet.Start, false, words)
}

// endView is the end as one looks at it: the shoulder, the tenon if there is
// one, and the middles of the holes.
func (e end) endView(s door.Set) *draft {
	d := newDraft(s, "", "")
	box := plane.BoxOf(plane.Point{}, plane.At(e.thick, e.Width()))
	d.stroke(sheet.Outline, sheet.Wide, sheet.Continuous, box.Path())
	tenon := plane.Intersect(e.face(e.member, -hair), plane.Region{box.Path()})
	d.area(sheet.Outline, tenon)
	d.later(e.face(e.member, hair), e.face(e.milled, hair), box)
	up, across := []length.Length{0, e.Width()}, []length.Length{0, e.thick}
	for _, h := range e.holes {
		d.cross(plane.At(e.thick-h.y, h.c), h.diameter)
		up, across = append(up, h.c), append(across, e.thick-h.y)
	}
	shapes := tenon
	if e.Kind == door.LooseTenon {
		shapes = plane.Subtract(plane.Region{box.Path()}, e.face(e.member, hair)) // the mortise
	}
	for _, path := range shapes {
		b := path.Bounds()
		up, across = append(up, b.Min.Y, b.Max.Y), append(across, b.Min.X, b.Max.X)
	}
	d.dimensions(box, rows{below: chain(across...), left: chain(up...)})
	d.caption(box, "END")
	return d
}

// later draws what is cut into a face when it is jointed, and dashed what is
// milled away later.
func (d *draft) later(now, milled plane.Region, box plane.Box) {
	d.clipped(sheet.Outline, sheet.Narrow, sheet.Continuous, now, box.Grow(-hair))
	gone := plane.Intersect(plane.Subtract(now, milled), plane.Region{box.Path()})
	d.clipped(sheet.HiddenEdge, sheet.Narrow, sheet.Hidden, gone, box.Grow(-hair))
}

// backView is the end of the back with the pockets' mouths.
func (e end) backView(s door.Set) *draft {
	d := newDraft(s, "", "")
	_, up := e.reach(s.Leaf.Joint)
	box := plane.BoxOf(plane.At(-up-pastJoint, 0), plane.At(0, e.Width()))
	d.stroke(sheet.Outline, sheet.Wide, sheet.Continuous, box.Path())
	d.later(e.back(e.member), e.back(e.milled), box)
	for _, h := range e.holes {
		d.line(sheet.CentreMark, sheet.Narrow, sheet.Centre, plane.At(box.Min.X, h.c), plane.At(4*mm, h.c))
	}
	d.dimensions(box, rows{below: chain(-up, 0)})
	d.caption(box, "BACK, shoulder at the right")
	return d
}

// middle is where across the member a section goes: through a hole, or the
// joint's middle.
func (e end) middle() length.Length {
	if len(e.holes) > 0 {
		return e.holes[0].c
	}
	if tenon := e.face(e.member, -hair).Bounds(); tenon.Height() > 0 {
		return tenon.Min.Y + tenon.Height().Half()
	}
	return e.Width().Half()
}

// cut is what the section shows of the member and of the part it meets, and its
// box.
func (e end) cut(j door.Joint) (member, into plane.Region, box plane.Box) {
	deep, up := e.reach(j)
	box = plane.BoxOf(plane.At(-min(e.Deep, deep+pastJoint), 0), plane.At(up+pastJoint, e.thick))
	window, c := plane.Region{box.Path()}, e.middle()
	return plane.Intersect(e.through(e.member, c), window), plane.Intersect(e.through(e.into, c), window), box
}

// sectionView draws the section.
func (e end) sectionView(s door.Set) *draft {
	d := newDraft(s, "", "")
	member, into, box := e.cut(s.Leaf.Joint)
	deep, up := e.reach(s.Leaf.Joint)
	d.area(sheet.Outline, member)
	for _, path := range into {
		d.stroke(sheet.Outline, sheet.Wide, sheet.Continuous, path)
	}
	along, y := []length.Length{-deep, 0}, []length.Length{0, e.thick}
	if up > 0 {
		along = append(along, up)
	}
	for _, screw := range s.Leaf.Screws {
		head, tip := e.local(screw.Head), e.local(screw.Tip)
		if screw.For == "pocket" && head.c == e.middle() && tip.a < 0 && head.a > 0 && -tip.a < e.Deep {
			d.line(sheet.Hardware, sheet.Narrow, sheet.Centre, plane.At(head.a, head.y), plane.At(tip.a, tip.y))
			d.cross(plane.At(tip.a, tip.y), 0)
			y = append(y, tip.y)
			break
		}
	}
	for _, h := range e.holes[:min(1, len(e.holes))] {
		y = append(y, h.y)
	}
	d.dimensions(box, rows{below: chain(along...), left: chain(y...)})
	d.caption(box, fmt.Sprintf("Front below, the %s at the left; cut %s from the %s's edge", e.into.Role, d.figure(e.middle()), e.member.Role))
	return d
}

// A local is a point in an end's coordinates.
type local struct{ a, y, c length.Length }

func (e end) local(v solid.Vec) local {
	across := solid.Z
	if !e.ofRail() {
		across = solid.X
	}
	return local{e.Way * (v.Along(e.Axis) - e.At), v.Y, v.Along(across) - e.From}
}
