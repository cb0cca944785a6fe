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
	woodColour  = [3]float64{0.80, 0.65, 0.45}
	panelColour = [3]float64{0.75, 0.85, 0.90}
	metalColour = [3]float64{0.60, 0.60, 0.62}
)

// Solids is the set as solids for other programs, set.step: the leaves closed in
// their places, washers, track, hangers and fascia, in the set's frame. It errs when a part
// cannot be bounded exactly by planes and cylinders; the rest of the packet does not need it.
func Solids(s door.Set) (File, error) {
	var at []solid.Vec
	for _, h := range s.Hung {
		at = append(at, h.At)
	}
	var parts []step.Part
	for _, p := range s.Leaf.Parts {
		colour := woodColour
		if p.Role == door.PanelRole {
			colour = panelColour
		}
		parts = append(parts, step.Part{Label: p.Label, Name: p.Name, Solid: p.Solid, At: at, Colour: colour})
	}
	parts = append(parts, washers(s, at)...)
	parts = append(parts, track(s)...)
	var out bytes.Buffer
	if err := step.Write(&out, s.Job, parts); err != nil {
		return File{}, fmt.Errorf("set.step: %w", err)
	}
	return File{Name: "set.step", Data: out.Bytes()}, nil
}

// washers are the edge washers of all leaves: one product for those on stiles
// and one for those on rails, each at all its places.
func washers(s door.Set, leaves []solid.Vec) []step.Part {
	var parts []step.Part
	for _, kind := range []struct {
		axis        solid.Axis
		label, name string
	}{{solid.X, "WS", "edge washer on a stile"}, {solid.Z, "WR", "edge washer on a rail"}} {
		one := step.Part{Label: kind.label, Name: kind.name, Colour: metalColour}
		for _, w := range s.Leaf.Hardware {
			if w.Solid.Blank.Axis != kind.axis {
				continue
			}
			least, _ := w.Solid.Bounds()
			if one.At == nil {
				one.Solid = w.Solid.Move(solid.Vec{X: -least.X, Y: -least.Y, Z: -least.Z})
			}
			for _, leaf := range leaves {
				one.At = append(one.At, leaf.Add(least))
			}
		}
		if one.At != nil {
			parts = append(parts, one)
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
