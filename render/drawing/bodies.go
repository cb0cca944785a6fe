package drawing

import (
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

// leafBodies are a leaf's parts in its own frame. Panels are see-through where
// they are to show what lies behind them.
func leafBodies(leaf door.Leaf, seeThrough bool) []view.Body {
	var bodies []view.Body
	for _, part := range leaf.Parts {
		b := view.Body{Solid: part.Solid, Layer: sheet.Outline, Hatch: view.Wood, Grain: part.Grain, Label: part.Label}
		if part.Role == door.PanelRole {
			b.Layer, b.Hatch, b.SeeThrough = sheet.Panel, view.Sheet, seeThrough
		}
		bodies = append(bodies, b)
	}
	for _, part := range leaf.Hardware {
		b := view.Body{Solid: part.Solid, Layer: sheet.Hardware, Hatch: view.Metal, Grain: part.Grain, Label: part.Label}
		switch part.Role {
		case door.DowelRole, door.TenonRole, door.StopRole, door.BeadRole, door.PlugRole:
			b.Layer, b.Hatch = sheet.Outline, view.Wood
		case door.SealantRole:
			b.Hatch = view.Sheet
		}
		bodies = append(bodies, b)
	}
	return bodies
}

// moved are bodies in another place.
func moved(bodies []view.Body, by solid.Vec) []view.Body {
	out := make([]view.Body, len(bodies))
	for i, b := range bodies {
		b.Solid = b.Solid.Move(by)
		out[i] = b
	}
	return out
}

// setBodies are all leaves, closed, with track, hangers and fascia.
func setBodies(s door.Set) []view.Body {
	leaf := leafBodies(s.Leaf, false)
	var bodies []view.Body
	for _, h := range s.Hung {
		bodies = append(bodies, moved(leaf, h.At)...)
	}
	var at []length.Length
	for _, h := range s.Hung {
		at = append(at, h.At.X)
	}
	return append(bodies, hardwareBodies(s, at)...)
}

// hardwareBodies are track and fascia, and the hangers of leaves with their left
// edges at those places.
func hardwareBodies(s door.Set, leaves []length.Length) []view.Body {
	bodies := []view.Body{{Solid: s.Track.Solid, Layer: sheet.Hardware, Hatch: view.Metal, Label: "track"}}
	for i, h := range s.Hung {
		for _, x := range s.Track.HangerAt {
			at := solid.Vec{X: leaves[i] + x, Y: s.Track.Centre[h.Channel], Z: h.At.Z + s.Leaf.Height}
			for _, piece := range s.Track.Hanger {
				bodies = append(bodies, view.Body{Solid: piece.Move(at), Layer: sheet.Hardware, Hatch: view.Metal, Label: "hanger"})
			}
		}
	}
	if s.Fascia != nil {
		bodies = append(bodies, view.Body{Solid: s.Fascia.Solid, Layer: sheet.Outline, Hatch: view.Wood, Grain: solid.X, Label: "fascia"})
	}
	return bodies
}

// window keeps what of the lines lies inside a box of the view.
func window(lines []view.Line, box plane.Box) []view.Line {
	frame := plane.Region{box.Path()}
	var kept []view.Line
	for _, line := range lines {
		at := line.Path.Bounds()
		if !at.Meets(box) {
			continue
		}
		if box.Holds(at.Min) && box.Holds(at.Max) {
			kept = append(kept, line)
			continue
		}
		inside, _, boundary := plane.Clip(line.Path, frame)
		for _, path := range append(inside, boundary...) {
			line.Path = path
			kept = append(kept, line)
		}
	}
	return kept
}

// near are the bodies that come into a box of a view along an axis.
func near(bodies []view.Body, a solid.Axis, box plane.Box) []view.Body {
	var kept []view.Body
	for _, b := range bodies {
		least, most := b.Solid.Bounds()
		if plane.BoxOf(least.Flat(a), most.Flat(a)).Meets(box) {
			kept = append(kept, b)
		}
	}
	return kept
}
