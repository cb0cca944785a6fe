package door

import (
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// looseEnd cuts one end's two mortises, whose ends are round as the cutter
// leaves them, and enters the loose tenon.
func (b *bench) looseEnd(m Meeting) {
	t := b.leaf.Joint.Tenon
	long, deep := b.leaf.Joint.tenonLengths(m)
	low, high := b.tenonSpan(m)
	slot := plane.BoxOf(m.Point(0, t.Front, low).Flat(m.Axis), m.Point(0, t.Front+t.Thickness, high).Flat(m.Axis))
	section := plane.Region{plane.Slot(slot)}
	mortise := solid.Prism{Axis: m.Axis, Region: section, From: m.At - deep, To: m.At + deep}
	b.member(m.Member).cut(mortise, "mortise")
	b.member(m.Into).cut(mortise, "mortise")
	b.key(m, Part{Label: "LT", Name: "loose tenon", Role: TenonRole}, section, long, b.set.Stock.Species)
}
