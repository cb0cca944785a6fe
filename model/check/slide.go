package check

import (
	"fmt"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// noArea is the area in mm² that counts as none: a sliver two nanometres wide
// along a whole leaf.
const noArea = 1e-5

// Slide tells what meets when the leaves stand with their left edges at the
// given places, from the left of the opening, in the order of set.Hung; a leaf
// without a place stands closed. It compares the solids themselves: leaves,
// what stands out of their faces and hangers, with one another, the track and
// the fascia; and it tells of a leaf that stands outside the opening.
func Slide(set door.Set, at []length.Length) []spec.Finding {
	var found []spec.Finding
	own, fixed := bodies(set), around(set)
	hung := make([][]body, len(set.Hung))
	for i, h := range set.Hung {
		if i < len(at) {
			h.At.X = at[i]
		}
		for _, b := range own {
			hung[i] = append(hung[i], b.at(h.At))
		}
		found = append(found, outside(set, h)...)
		who := "leaf " + h.Label
		found = append(found, clashes(set, who, hung[i], "", fixed)...)
		for k := range i {
			found = append(found, clashes(set, who, hung[i], "leaf "+set.Hung[k].Label, hung[k])...)
		}
	}
	return found
}

// around are the track and the fascia.
func around(set door.Set) []body {
	fixed := []body{newBody("track", "hanging.track", set.Track.Solid)}
	if set.Fascia != nil {
		fixed = append(fixed, newBody("fascia", "hanging.fascia", set.Fascia.Solid))
	}
	return fixed
}

// outside tells of a leaf that is not within the jambs and above the floor.
func outside(set door.Set, h door.Hung) []spec.Finding {
	var found []spec.Finding
	show, right := style(set), h.At.X+set.Leaf.Width
	if h.At.X < 0 || right > set.Opening.Width {
		found = append(found, spec.Finding{Path: "opening.width", Rule: RuleOutside, Sentence: fmt.Sprintf(
			"leaf %s stands from %s to %s in an opening %s wide", h.Label, show(h.At.X), show(right), show(set.Opening.Width))})
	}
	places := []length.Length{h.At.X, right}
	for _, p := range set.Opening.Floor {
		if h.At.X < p.X && p.X < right {
			places = append(places, p.X)
		}
	}
	for _, x := range places {
		if floor := set.Opening.FloorAt(x); h.At.Z < floor {
			found = append(found, spec.Finding{Path: "hanging.floor_gap", Rule: RuleOutside, Sentence: fmt.Sprintf(
				"the bottom of leaf %s hangs at %s and the floor below it, %s from the left, is at %s", h.Label, show(h.At.Z), show(x), show(floor))})
			break
		}
	}
	return found
}

// clashes are the findings of two groups of bodies; whose is empty for what does
// not move.
func clashes(set door.Set, who string, moving []body, whose string, others []body) []spec.Finding {
	var found []spec.Finding
	show := style(set)
	for _, a := range moving {
		for _, b := range others {
			least, most, meet := common(a, b)
			if !meet {
				continue
			}
			volume := solid.Clash(a.solid, b.solid)
			if volume < noVolume {
				continue
			}
			found = append(found, spec.Finding{Path: pathOf(a, b), Rule: RuleSlideMeet, Sentence: fmt.Sprintf(
				"%s shares %.2f mm³ of space with %s, within %s to %s from the opening's left, %s to %s behind its front and %s to %s above its floor; they must stay apart",
				owned(who, a), volume, owned(whose, b), show(least.X), show(most.X), show(least.Y), show(most.Y), show(least.Z), show(most.Z))})
		}
	}
	return found
}

// owned is a body's name with whose it is.
func owned(who string, b body) string {
	if who == "" {
		return "the " + b.name
	}
	return "the " + b.name + " of " + who
}

// pathOf is the path that tells of one of two bodies that is no plain part.
func pathOf(a, b body) string {
	for _, body := range []body{a, b} {
		if body.path != "leaf" && body.path != "hanging.hangers" {
			return body.path
		}
	}
	return "hanging"
}

// A travel is where a leaf's left edge may be slid to.
type travel struct{ least, most length.Length }

// travels are those of the leaves: from jamb to jamb, but for the leaves on the
// same track to its left and right.
func travels(set door.Set) []travel {
	all := make([]travel, len(set.Hung))
	for i, h := range set.Hung {
		all[i].most = set.Opening.Width - set.Leaf.Width
		for k, o := range set.Hung {
			switch {
			case o.Channel != h.Channel || k == i:
			case k < i:
				all[i].least += set.Leaf.Width
			default:
				all[i].most -= set.Leaf.Width
			}
		}
	}
	return all
}

// Sweep tells what could meet with the leaves slid to any places, each as far
// as jambs and the leaves on its own track let it. A leaf moves along X only:
// two bodies meet at some places just when their outlines seen from the side
// do and their ways along X come together. Outlines are those of the boxes
// round them, so that a round body may be found that just passes; all is found
// that meets.
func Sweep(set door.Set) []spec.Finding {
	var found []spec.Finding
	own, ways := bodies(set), travels(set)
	for i, h := range set.Hung {
		for k, o := range set.Hung[:i] {
			// How much farther right than the other the leaf may stand.
			least, most := ways[i].least-ways[k].most, ways[i].most-ways[k].least
			if o.Channel == h.Channel {
				least = max(least, set.Leaf.Width)
			}
			found = append(found, pass(set, own, h, o, least, most)...)
		}
	}
	return append(found, passFixed(set, own)...)
}

// pass tells what meets of two leaves, the first least to most farther right
// than the second.
func pass(set door.Set, own []body, h, o door.Hung, least, most length.Length) []spec.Finding {
	var found []spec.Finding
	if h.Channel != o.Channel {
		front, back := h, o
		if o.Channel == door.Front {
			front, back = o, h
		}
		if deepest(own)+front.At.Y <= shallowest(own)+back.At.Y {
			return nil
		}
	}
	show, seen := style(set), map[string]bool{}
	for _, a := range own {
		for _, b := range own {
			if max(least, b.least.X-a.most.X) >= min(most, b.most.X-a.least.X) && (least != most || b.least.X-a.most.X >= least || b.most.X-a.least.X <= least) {
				continue
			}
			y0, y1 := max(a.least.Y+h.At.Y, b.least.Y+o.At.Y), min(a.most.Y+h.At.Y, b.most.Y+o.At.Y)
			z0, z1 := max(a.least.Z+h.At.Z, b.least.Z+o.At.Z), min(a.most.Z+h.At.Z, b.most.Z+o.At.Z)
			if y0 >= y1 || z0 >= z1 || seen[a.name+b.name] {
				continue
			}
			seen[a.name+b.name] = true
			found = append(found, spec.Finding{Path: pathOf(a, b), Rule: RuleSlideMeet, Sentence: fmt.Sprintf(
				"%s and %s both take what lies %s to %s behind the opening's front and %s to %s above its floor: they meet as the leaves pass, and must stay apart",
				owned("leaf "+h.Label, a), owned("leaf "+o.Label, b), show(y0), show(y1), show(z0), show(z1))})
		}
	}
	return found
}

// deepest is the farthest that the bodies reach to the back, shallowest to the
// front.
func deepest(all []body) length.Length {
	far := -length.Longest
	for _, b := range all {
		far = max(far, b.most.Y)
	}
	return far
}

func shallowest(all []body) length.Length {
	near := length.Longest
	for _, b := range all {
		near = min(near, b.least.Y)
	}
	return near
}

// passFixed tells what of the leaves meets track or fascia, which run along the
// whole opening.
func passFixed(set door.Set, own []body) []spec.Finding {
	var found []spec.Finding
	show := style(set)
	for _, fixed := range around(set) {
		section := fixed.solid.Section(solid.X, fixed.least.X+(fixed.most.X-fixed.least.X).Half())
		for _, h := range onePerTrack(set) {
			for _, b := range own {
				side := plane.BoxOf(b.least.Add(h.At).Flat(solid.X), b.most.Add(h.At).Flat(solid.X))
				met := plane.Intersect(section, plane.Region{side.Path()})
				if met.Area() < noArea {
					continue
				}
				at := met.Bounds()
				found = append(found, spec.Finding{Path: pathOf(fixed, b), Rule: RuleSlideMeet, Sentence: fmt.Sprintf(
					"the %s of a leaf on the %s track and the %s both take what lies %s to %s behind the opening's front and %s to %s above its floor; they must stay apart",
					b.name, h.Channel, fixed.name, show(at.Min.X), show(at.Max.X), show(at.Min.Y), show(at.Max.Y))})
			}
		}
	}
	return found
}

// onePerTrack is the first leaf on each track that has one.
func onePerTrack(set door.Set) []door.Hung {
	var first []door.Hung
	for _, channel := range []door.Channel{door.Front, door.Back} {
		for _, h := range set.Hung {
			if h.Channel == channel {
				first = append(first, h)
				break
			}
		}
	}
	return first
}
