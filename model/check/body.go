package check

import (
	"fmt"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// A body is something of a leaf that takes up space, in the leaf's frame.
type body struct {
	name        string // "left stile SL"
	path        string // of the model, that tells of it
	solid       solid.Solid
	least, most solid.Vec // of the box round it
}

// newBody is the body of a solid.
func newBody(name, path string, s solid.Solid) body {
	b := body{name: name, path: path, solid: s}
	b.least, b.most = s.Bounds()
	return b
}

// at is the body moved to where its leaf hangs.
func (b body) at(v solid.Vec) body { return newBody(b.name, b.path, b.solid.Move(v)) }

// bodies are those of one leaf: parts, hardware, what stands out of its faces,
// and hangers.
func bodies(set door.Set) []body {
	var all []body
	leaf := set.Leaf
	for _, list := range [][]door.Part{leaf.Parts, leaf.Hardware} {
		for _, part := range list {
			all = append(all, newBody(part.Name+" "+part.Label, "leaf", part.Solid))
		}
	}
	for _, p := range leaf.Pulls {
		if p.Rim > 0 {
			all = append(all, newBody("pull in "+p.Label, "leaf.pull", rim(leaf, p)))
		}
	}
	for i, x := range set.Track.HangerAt {
		for _, piece := range set.Track.Hanger {
			piece = piece.Move(solid.Vec{X: x, Y: leaf.Thickness.Half(), Z: leaf.Height})
			all = append(all, newBody(fmt.Sprintf("hanger %d", i+1), "hanging.hangers", piece))
		}
	}
	return all
}

// rim is what of a pull stands out of the leaf's face: the mortise's outline.
func rim(leaf door.Leaf, p door.Pull) solid.Solid {
	w, h := p.Width.Half(), p.Height.Half()
	way := plane.RoundedRect(plane.BoxOf(p.Centre.Add(-w, -h), p.Centre.Add(w, h)), p.Radius)
	if p.Round {
		way = plane.Circle(p.Centre, w)
	}
	prism := solid.Prism{Axis: solid.Y, Region: plane.Region{way}, From: -p.Rim}
	if p.Back {
		prism.From, prism.To = leaf.Thickness, leaf.Thickness+p.Rim
	}
	return solid.Solid{Blank: prism}
}

// common is the box common to two bodies, and whether it has a volume.
func common(a, b body) (least, most solid.Vec, meet bool) {
	least = solid.Vec{X: max(a.least.X, b.least.X), Y: max(a.least.Y, b.least.Y), Z: max(a.least.Z, b.least.Z)}
	most = solid.Vec{X: min(a.most.X, b.most.X), Y: min(a.most.Y, b.most.Y), Z: min(a.most.Z, b.most.Z)}
	return least, most, least.X < most.X && least.Y < most.Y && least.Z < most.Z
}

// style is how lengths are written in the set's units.
func style(set door.Set) func(length.Length) string {
	return length.Style{Unit: set.Units, Mark: true}.Format
}
