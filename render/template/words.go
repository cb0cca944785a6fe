package template

import (
	"fmt"
	"strings"

	"stilewright/model/door"
)

// words are what an end's template says besides its views.
func (e end) words(d *draft) []string {
	edge, other := "lower", "The other end is the same: turn the template over."
	if !e.ofRail() {
		edge, other = "left", "Where the lower end is the same, turn the template over."
	}
	how := "mark round it"
	if len(e.holes) > 0 {
		how = "prick the middles through"
	}
	notes := []string{fmt.Sprintf("END: seen from outside, %s edge at the foot, front face at the right. Lay it on the %s's end and %s.", edge, e.member.Role, how)}
	if e.Kind == door.PocketScrew {
		notes = append(notes, "BACK: the pockets' mouths and middles; dimensioned is the far end of a mouth from the shoulder.")
	}
	if (e.Low > 0 || e.High > 0) && d.set.Leaf.Rabbet.Kind != door.Groove {
		notes = append(notes, "Dashed: the panel's rabbet, milled later.")
	}
	return append(notes, other)
}

// sizes are what a section's template says besides its view.
func (e end) sizes(d *draft) []string {
	j, f := d.set.Leaf.Joint, d.figure
	deep, _ := e.reach(j)
	switch e.Kind {
	case door.PocketScrew:
		p := j.Pocket
		return []string{
			fmt.Sprintf("Pockets ⌀ %s from the back at %g° to the face; the bit's shoulder stops %s from the end, along the bit.", f(p.Diameter), p.Angle, f(p.Shoulder)),
			fmt.Sprintf("Screws %s long: %s into the %s, the tip (cross) %s from the front face.", f(p.Screw), f(p.Bite), e.into.Role, f(p.Tip))}
	case door.DowelJoint:
		return []string{fmt.Sprintf("Dowels ⌀ %s and %s long; holes %s deep in both parts.", f(j.Dowel.Diameter), f(j.Dowel.Length), f(j.Dowel.Hole))}
	case door.LooseTenon:
		return []string{fmt.Sprintf("Mortises %s thick and %s deep in both parts, %s behind the front face.", f(j.Tenon.Thickness), f(deep), f(j.Tenon.Front))}
	case door.MortiseAndTenon:
		return []string{fmt.Sprintf("Tenon %s thick and %s long, %s behind the front face.", f(j.Tenon.Thickness), f(deep), f(j.Tenon.Front))}
	case door.HalfLap:
		return []string{fmt.Sprintf("The %s keeps %s of its front.", e.into.Role, f(j.Lap.Front))}
	}
	return []string{title(strings.ReplaceAll(e.Kind, "-", " ")) + " joint."}
}
