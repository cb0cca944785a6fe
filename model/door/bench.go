package door

import (
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// Labels of the stiles.
const (
	leftStile  = "SL"
	rightStile = "SR"
)

// A member is a stile, rail or muntin on the bench: its blank, which grows when
// a tenon is added, and what is taken from it.
type member struct {
	label, name string
	role        Role
	grain       solid.Axis
	least, most solid.Vec // opposite corners of the blank
	cuts        []solid.Cut
	bores       []solid.Bore
}

// blank is the member's blank.
func (m *member) blank() solid.Prism { return solid.Block(m.least, m.most) }

// solid is the member as worked.
func (m *member) solid() solid.Solid {
	return solid.Solid{Blank: m.blank(), Cuts: m.cuts, Bores: m.bores}
}

// reach lets the blank run to a place along its grain, if it does not yet.
func (m *member) reach(to length.Length) {
	if m.grain == solid.X {
		m.least.X, m.most.X = min(m.least.X, to), max(m.most.X, to)
	} else {
		m.least.Z, m.most.Z = min(m.least.Z, to), max(m.most.Z, to)
	}
}

// cut takes from the member what of the prism lies in its blank; nothing when
// they do not meet.
func (m *member) cut(p solid.Prism, why string) {
	a := p.Axis
	window := plane.BoxOf(m.least.Flat(a), m.most.Flat(a))
	around := p.Region.Bounds()
	low, high := max(p.From, m.least.Along(a)), min(p.To, m.most.Along(a))
	if low >= high || around.Min.X >= window.Max.X || window.Min.X >= around.Max.X || around.Min.Y >= window.Max.Y || window.Min.Y >= around.Max.Y {
		return
	}
	if around.Join(window) != window {
		p.Region = plane.Intersect(p.Region, plane.Region{window.Path()})
	}
	if !p.Region.Empty() {
		m.cuts = append(m.cuts, solid.Cut{Prism: solid.Prism{Axis: a, Region: p.Region, From: low, To: high}, For: why})
	}
}

// bore bores the member.
func (m *member) bore(b solid.Bore) { m.bores = append(m.bores, b) }

// A bench is a leaf while it is made.
type bench struct {
	*resolver
	leaf    *Leaf
	members []*member // stiles, rails from the bottom up, muntins
}

// member is the member with that label; there is one.
func (b *bench) member(label string) *member {
	i := slices.IndexFunc(b.members, func(m *member) bool { return m.label == label })
	return b.members[i]
}

// lay puts the blanks on the bench, each from shoulder to shoulder.
func (b *bench) lay() {
	leaf := b.leaf
	add := func(label, name string, role Role, grain solid.Axis, x0, x1, z0, z1 length.Length) {
		b.members = append(b.members, &member{label: label, name: name, role: role, grain: grain, least: solid.Vec{X: x0, Z: z0}, most: solid.Vec{X: x1, Y: leaf.Thickness, Z: z1}})
	}
	inner := leaf.Width - leaf.Stile
	add(leftStile, "left stile", StileRole, solid.Z, 0, leaf.Stile, 0, leaf.Height)
	add(rightStile, "right stile", StileRole, solid.Z, inner, leaf.Width, 0, leaf.Height)
	for i, rail := range leaf.Rails {
		name := "cross rail"
		switch i {
		case 0:
			name = "bottom rail"
		case leaf.Rows():
			name = "top rail"
		}
		add(rail.Label, name, RailRole, solid.X, leaf.Stile, inner, rail.From, rail.To)
	}
	for _, m := range leaf.Muntins {
		add(m.Label, "muntin", MuntinRole, solid.Z, m.From, m.To, leaf.Rails[m.Row].To, leaf.Rails[m.Row+1].From)
	}
}

// beside is the member on a side of a lite.
func (b *bench) beside(lite Lite, side Side) *member {
	row, column := lite.Row, lite.Column
	switch {
	case side == Bottom:
		return b.member(b.leaf.Rails[row].Label)
	case side == Top:
		return b.member(b.leaf.Rails[row+1].Label)
	case side == Left && column == 0:
		return b.member(leftStile)
	case side == Right && column == b.leaf.Columns-1:
		return b.member(rightStile)
	case side == Left:
		column--
	}
	return b.member(b.leaf.Muntins[row*(b.leaf.Columns-1)+column].Label)
}
