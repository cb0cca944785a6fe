package packet

import (
	"bytes"
	"fmt"

	"stilewright/model/door"
	"stilewright/model/solid"
	"stilewright/render/step"
)

// Colours of the STEP file: red, green, blue from 0 to 1.
var (
	woodColour    = [3]float64{0.80, 0.65, 0.45}
	panelColour   = [3]float64{0.75, 0.85, 0.90}
	metalColour   = [3]float64{0.60, 0.60, 0.62}
	sealantColour = [3]float64{0.30, 0.30, 0.30}
)

// colour is that of a part by what it is.
func colour(r door.Role) [3]float64 {
	switch r {
	case door.PanelRole:
		return panelColour
	case door.WasherRole:
		return metalColour
	case door.SealantRole:
		return sealantColour
	default:
		return woodColour
	}
}

// Solids is the set as solids for other programs, set.step: the leaves closed in
// their places with all that holds them and their panels, track, hangers and fascia, in the set's frame. It errs when a part
// cannot be bounded exactly by planes and cylinders; the rest of the packet does not need it.
func Solids(s door.Set) (File, error) {
	var at []solid.Vec
	for _, h := range s.Hung {
		at = append(at, h.At)
	}
	var parts []step.Part
	for _, p := range s.Leaf.Parts {
		parts = append(parts, step.Part{Label: p.Label, Name: p.Name, Solid: p.Solid, At: at, Colour: colour(p.Role)})
	}
	parts = append(parts, hardware(s.Leaf.Hardware, at)...)
	parts = append(parts, track(s)...)
	var out bytes.Buffer
	if err := step.Write(&out, s.Job, parts); err != nil {
		return File{}, fmt.Errorf("set.step: %w", err)
	}
	return File{Name: "set.step", Data: out.Bytes()}, nil
}

// hardware is the washers, dowels, loose tenons, plugs, stops, beads and sealant
// of all leaves: those that are alike as one product, labelled as the first of
// them, at all its places.
func hardware(pieces []door.Part, leaves []solid.Vec) []step.Part {
	var parts []step.Part
	var first []door.Part
	for _, p := range pieces {
		i, from := 0, solid.Vec{}
		for alike := false; i < len(first); i++ {
			if from, alike = p.Solid.MovedFrom(first[i].Solid); alike && p.Role == first[i].Role && len(p.Solid.Bores)+len(first[i].Solid.Bores) == 0 {
				break
			}
		}
		if i == len(first) {
			from = solid.Vec{}
			first = append(first, p)
			parts = append(parts, step.Part{Label: p.Label, Name: p.Name, Solid: p.Solid, Colour: colour(p.Role)})
		}
		for _, leaf := range leaves {
			parts[i].At = append(parts[i].At, leaf.Add(from))
		}
	}
	return parts
}

// track is the track, the hangers of every leaf, and the fascia.
func track(s door.Set) []step.Part {
	parts := []step.Part{{Label: "TRACK", Name: "two-channel track, typical", Solid: s.Track.Solid, Colour: metalColour}}
	var at []solid.Vec
	for _, h := range s.Hung {
		for _, x := range s.Track.HangerAt {
			at = append(at, solid.Vec{X: h.At.X + x, Y: s.Track.Centre[h.Channel], Z: h.At.Z + s.Leaf.Height})
		}
	}
	for i, piece := range s.Track.Hanger {
		parts = append(parts, step.Part{Label: fmt.Sprintf("HANGER%d", i+1), Name: "hanger, typical", Solid: piece, At: at, Colour: metalColour})
	}
	if s.Fascia != nil {
		parts = append(parts, step.Part{Label: "FASCIA", Name: "fascia", Solid: s.Fascia.Solid, Colour: woodColour})
	}
	return parts
}
