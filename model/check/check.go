package check

import (
	"fmt"
	"math"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// The rules a set is held to. Each has a set that breaks it in the tests.
const (
	RulePartsMeet  = "parts-meet"  // two parts of a leaf share a place
	RuleDrivenMeet = "driven-meet" // two screws or holes meet, or one and a mortise
	RuleSlideMeet  = "slide-meet"  // something stands in a sliding leaf's way
	RuleOutside    = "outside"     // a leaf stands outside the opening
)

// noVolume is the volume in mm³ that counts as none: a sliver a nanometre thick
// under a whole leaf.
const noVolume = 1e-3

// noMeeting is how far in mm two cylinders may reach into one another by
// rounding: a place passes through floating point a few times.
const noMeeting = 1e-5

// All are the findings of Interference, Sweep, and Slide in the closed place.
func All(set door.Set) []spec.Finding {
	return slices.Concat(Interference(set), Sweep(set), Slide(set, nil))
}

// Interference tells what meets in a leaf: parts that share a place, but for a
// washer pressed into its panel as the model asks; screws and holes that meet
// one another, and those that come into a pull's mortise, the guide's groove
// or, with a warning, the mortise of a joint.
func Interference(set door.Set) []spec.Finding {
	var found []spec.Finding
	leaf := set.Leaf
	parts := slices.Concat(leaf.Parts, leaf.Hardware)
	for i, a := range parts {
		for _, b := range parts[:i] {
			if f, meet := partsMeet(set, a, b); meet {
				found = append(found, f)
			}
		}
	}
	all := drilled(leaf)
	for i, a := range all {
		for _, b := range all[:i] {
			if a.meets(b) {
				found = append(found, a.finding(set, b.name, b.bore.Apart(a.bore), spec.Stops))
			}
		}
		found = append(found, a.cutInto(set)...)
	}
	return found
}

// partsMeet is the finding of two parts that share a place.
func partsMeet(set door.Set, a, b door.Part) (spec.Finding, bool) {
	if pressed := set.Leaf.Washer.Press > 0; pressed && a.Role == door.WasherRole && b.Role == door.PanelRole {
		return spec.Finding{}, false
	}
	p, q := newBody(a.Name+" "+a.Label, "leaf", a.Solid), newBody(b.Name+" "+b.Label, "leaf", b.Solid)
	least, most, meet := common(p, q)
	if !meet {
		return spec.Finding{}, false
	}
	volume := solid.Clash(a.Solid, b.Solid)
	if volume < noVolume {
		return spec.Finding{}, false
	}
	show := style(set)
	return spec.Finding{Path: "leaf", Rule: RulePartsMeet, Severity: spec.Stops, Sentence: fmt.Sprintf(
		"%s and %s share %.2f mm³ of space, within %s to %s from the leaf's left and %s to %s above its bottom; parts may only touch",
		q.name, p.name, volume, show(least.X), show(most.X), show(least.Z), show(most.Z))}, true
}

// A drilling is a hole or a screw in a leaf.
type drilling struct {
	name  string // "pocket screw"
	screw bool
	bore  solid.Bore
}

// drilled are the holes, within the leaf's thickness, and screws of a leaf.
func drilled(leaf door.Leaf) []drilling {
	var all []drilling
	for _, part := range leaf.Parts {
		for _, b := range part.Solid.Bores {
			all = append(all, drilling{b.For + " hole in " + part.Label, false, within(leaf, b)})
		}
	}
	for _, s := range leaf.Screws {
		all = append(all, drilling{s.For + " screw", true, solid.Bore{From: s.Head, To: s.Tip, Diameter: s.Diameter}})
	}
	return all
}

// within is the bore with its axis ended at the leaf's faces, past which some
// are drawn.
func within(leaf door.Leaf, b solid.Bore) solid.Bore {
	b.From, b.To = inside(leaf, b.From, b.To), inside(leaf, b.To, b.From)
	return b
}

// inside is a place, or where the way from it to another comes into the leaf.
func inside(leaf door.Leaf, v, to solid.Vec) solid.Vec {
	y := min(max(v.Y, 0), leaf.Thickness)
	if y == v.Y || to.Y == v.Y {
		return v
	}
	part := float64(y-v.Y) / float64(to.Y-v.Y)
	move := func(a, b length.Length) length.Length { return a + length.Round(float64((b-a).MM()*part)) }
	return solid.Vec{X: move(v.X, to.X), Y: y, Z: move(v.Z, to.Z)}
}

// meets tells whether two drillings meet that are not the work of one: a screw
// and its own hole, a pocket and its pilot, the halves of a dowel's hole lie on
// one line.
func (d drilling) meets(e drilling) bool {
	if d.inLine(e) {
		return d.screw && e.screw && d.overlaps(e)
	}
	return d.bore.Apart(e.bore) < -noMeeting && reaches(d.bore, e.bore)
}

// reaches tells whether two bores that come near one another have space in
// common, with their ends flat where they run along an axis.
func reaches(a, b solid.Bore) bool {
	p, straight := a.Prism()
	q, level := b.Prism()
	switch {
	case straight && level:
		return solid.Clash(solid.Solid{Blank: p}, solid.Solid{Blank: q}) > noVolume
	case straight:
		return b.Off(p) < -noMeeting
	case level:
		return a.Off(q) < -noMeeting
	}
	return true
}

// inLine tells whether two drillings lie on one straight line, to a micrometre.
func (d drilling) inLine(e drilling) bool {
	long, short := d.bore, e.bore
	if size(long) < size(short) {
		long, short = short, long
	}
	long.Diameter = 0
	reach := solid.Bore{From: away(long.To, long.From), To: away(long.From, long.To)}
	for _, end := range []solid.Vec{short.From, short.To} {
		if reach.Apart(solid.Bore{From: end, To: end}) > 1e-3 {
			return false
		}
	}
	return true
}

// away is the place as far beyond `to` as a hundred times the way to it.
func away(from, to solid.Vec) solid.Vec {
	const times = 100
	return solid.Vec{X: to.X + times*(to.X-from.X), Y: to.Y + times*(to.Y-from.Y), Z: to.Z + times*(to.Z-from.Z)}
}

// size is the bore's length in mm.
func size(b solid.Bore) float64 {
	x, y, z := (b.To.X - b.From.X).MM(), (b.To.Y - b.From.Y).MM(), (b.To.Z - b.From.Z).MM()
	return math.Sqrt(float64(x*x) + float64(y*y) + float64(z*z))
}

// overlaps tells whether two drillings in line have some of it in common.
func (d drilling) overlaps(e drilling) bool {
	for _, a := range []solid.Axis{solid.X, solid.Y, solid.Z} {
		p, q, r, s := d.bore.From.Along(a), d.bore.To.Along(a), e.bore.From.Along(a), e.bore.To.Along(a)
		if p != q && (max(p, q) <= min(r, s) || max(r, s) <= min(p, q)) {
			return false
		}
	}
	return true
}

// cutInto is what is found of a drilling that comes into a mortise or groove.
func (d drilling) cutInto(set door.Set) []spec.Finding {
	var found []spec.Finding
	for _, part := range set.Leaf.Parts {
		for _, c := range part.Solid.Cuts {
			severity, name := spec.Stops, c.For+" of "+part.Label
			switch c.For {
			case "pull":
				name = "mortise of the pull in " + part.Label
			case "guide":
				name = "guide's groove in " + part.Label
			case "mortise":
				severity = spec.Warning
				if !d.screw {
					continue
				}
			default:
				continue
			}
			if off := d.bore.Off(c.Prism); off < -noMeeting {
				found = append(found, d.finding(set, name, off, severity))
			}
		}
	}
	return found
}

// finding tells that a drilling meets something, overlapping it by so many mm.
func (d drilling) finding(set door.Set, other string, off float64, severity spec.Severity) spec.Finding {
	show := style(set)
	return spec.Finding{Path: "leaf", Rule: RuleDrivenMeet, Severity: severity, Sentence: fmt.Sprintf(
		"the %s at %s from the leaf's left and %s above its bottom, %s thick, reaches %s into the %s; they must stay apart",
		d.name, show(d.bore.From.X), show(d.bore.From.Z), show(d.bore.Diameter), show(length.Round(-off)), other)}
}
