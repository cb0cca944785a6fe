package drawing

import (
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/solid"
)

// A laidPart is a wooden part in its own frame, its length along X, its width
// along Z and its front face at Y 0, its least corner at the origin.
type laidPart struct {
	kind
	solid                    solid.Solid
	length, width, thickness length.Length
}

// lay lays a part down: what stands is turned so that its upper end points to
// the right.
func lay(k kind) laidPart {
	body := k.first.Solid
	if k.first.Grain == solid.Z {
		body = body.Turn(solid.Y, 1)
	}
	least, most := body.Bounds()
	body = body.Move(solid.Vec{X: -least.X, Y: -least.Y, Z: -least.Z})
	return laidPart{k, body, most.X - least.X, most.Z - least.Z, most.Y - least.Y}
}

// A face is one side of a laid part as it is drawn, unrolled about its length.
type face struct {
	word  string // of the face in tables
	turns int    // quarter turns about X that bring it to the front
	high  length.Length
}

// faces are the four long faces of a part, from the top of the page down: upper edge,
// front, lower edge, back.
func (l laidPart) faces() [4]face {
	upper, lower := "top edge", "bottom edge"
	switch {
	case l.first.Label == "SL":
		upper, lower = "outer edge", "inner edge"
	case l.first.Label == "SR":
		upper, lower = "inner edge", "outer edge"
	case l.first.Grain == solid.Z:
		upper, lower = "left edge", "right edge"
	}
	return [4]face{{upper, 1, l.thickness}, {"front", 0, l.width}, {lower, 3, l.thickness}, {"back", 2, l.width}}
}

// worked tells whether anything is cut or bored into a face from outside.
func (l laidPart) worked(f face) bool {
	for _, m := range l.milled() {
		if m.face == f.word {
			return true
		}
	}
	for _, h := range l.holes() {
		if h.face == f.word {
			return true
		}
	}
	return false
}

// shown are the faces that are drawn: the front, those that are worked, and of a
// part with a joint in its front or back one edge at least, which shows how thick
// it leaves the part.
func (l laidPart) shown() []face {
	faces, edges := l.faces(), 0
	var shown []face
	for i, f := range faces {
		wanted := f.turns == 0 || l.worked(f) || i == 2 && edges == 0 && l.thinned()
		if !wanted {
			continue
		}
		shown = append(shown, f)
		if i%2 == 0 {
			edges++
		}
	}
	return shown
}

// thinned tells whether a joint is cut into front or back through to the lower edge.
func (l laidPart) thinned() bool {
	f := l.faces()
	for _, m := range l.milled() {
		if m.joint() && (m.face == f[1].word || m.face == f[3].word) && l.reaches(m, f[2].word) {
			return true
		}
	}
	return false
}

// partNotes are the notes of a part's sheet.
func (p *page) partNotes(l laidPart) []string {
	f := p.format
	n := len(l.labels) * len(p.set.Hung)
	lines := []string{fmt.Sprintf("Part %s, %s: %d a leaf, %d in the set.", l.short(), l.first.Name, len(l.labels), n),
		fmt.Sprintf("Blank %s × %s × %s, %s.", f(l.length), f(l.width), f(l.thickness), l.first.Material),
		"Sizes along run from the left end of a view,", "those across from its lower line; the tables", "say from where they count."}
	if l.first.Role == door.StileRole {
		lines = append(lines, "The stile's foot is at the left.")
	}
	return append(lines, rabbetNotes(l, p.set.Leaf.Rabbet.Kind)...)
}

// rabbetNotes say where a part's rabbets are dimensioned and what that means for
// the holes in their walls.
func rabbetNotes(l laidPart, kind string) []string {
	var lines []string
	if slices.ContainsFunc(l.milled(), func(m milled) bool { return m.use == "rabbet" }) {
		side := "back"
		if kind == door.FaceBead {
			side = "front"
		}
		lines = append(lines, "Rabbets are milled in the assembled leaf;", "they are dimensioned on the leaf's "+side+".")
	}
	if slices.ContainsFunc(l.holes(), func(h hole) bool { return h.wall == "rabbet" }) {
		lines = append(lines, "Holes in a rabbet's wall are drilled after", "it is milled, so deep from the wall.")
	}
	return lines
}
