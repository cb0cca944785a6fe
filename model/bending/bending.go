package bending

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
)

// A Push is a hand's push at the middle of one panel.
type Push struct {
	Lite       int           // of the leaf's lites, from 0
	Solid      bool          // it is the solid panel's
	Wide, High length.Length // of the panel between its supports: the sight size
	Force      float64       // N
	Linear     length.Length // deflection by the theory of small ones
	Deflection length.Length // as the panel stiffens by dishing
	DrawsIn    length.Length // what the panel is shorter by across its short way
	Holds      length.Length // least bite, or least lap of the washers that hold it
	By         string        // "bite", "washers' lap"
	Source     string
}

// Of is the push on the panel that it draws furthest out of its seat, of each of
// the leaf's sheets. It errs when the catalogue lacks the push.
func Of(s door.Set) ([]Push, error) {
	hand, err := catalog.Rule("hand-push")
	if err != nil {
		return nil, err
	}
	var worst []Push
	for _, solid := range []bool{false, true} {
		var most *Push
		for i, lite := range s.Leaf.Lites {
			if lite.Solid != solid {
				continue
			}
			p, err := push(s.Leaf, i, hand.Number)
			if err != nil {
				return nil, err
			}
			if most == nil || p.DrawsIn > most.DrawsIn {
				most = &p
			}
		}
		if most != nil {
			most.Source = hand.Source.String()
			worst = append(worst, *most)
		}
	}
	return worst, nil
}

// push is a force on the middle of one lite's panel.
func push(leaf door.Leaf, i int, force float64) (Push, error) {
	lite := leaf.Lites[i]
	panel := leaf.PanelOf(lite)
	p := Push{Lite: i, Solid: lite.Solid, Wide: lite.Sight.Width(), High: lite.Sight.Height(), Force: force, Holds: panel.LeastBite, By: "bite"}
	switch strip := leaf.StripOf(lite).Width - 2*panel.EdgeGap; {
	case leaf.HeldBy == "edge-washer" && leaf.Washer.LeastLap < p.Holds:
		p.Holds, p.By = leaf.Washer.LeastLap, "washers' lap"
	case (leaf.HeldBy == "stop" || leaf.HeldBy == "bead") && strip < p.Holds:
		p.Holds, p.By = strip, leaf.HeldBy+"s' lap"
	}
	var err error
	p.Linear, p.Deflection, p.DrawsIn, err = Bend(panel.Material, panel.Thickness, p.Wide, p.High, force)
	if err != nil {
		return p, fmt.Errorf("panel %d: %w", i+1, err)
	}
	return p, nil
}

// Bend is how far a panel a × b of that thickness bends under a force in N at
// its middle, by the theory of small deflections and as it stiffens by dishing,
// and how much it is then shorter across its short way: that of a flat parabola,
// 8/3 of the rise squared over the span.
//
// Sources: Roark's point load (catalog.Plate), catalog.Stiffened; the parabola
// is geometry.
func Bend(m catalog.SheetMaterial, thick, a, b length.Length, force float64) (linear, dished, drawsIn length.Length, err error) {
	plate, err := catalog.Plate(a.MM(), b.MM())
	if err != nil {
		return 0, 0, 0, err
	}
	t, short := thick.MM(), min(a, b).MM()
	small := plate.Point * catalog.PoissonFactor(m.Poisson) * force * short * short / (m.E * t * t * t)
	deep := catalog.Stiffened(small/t) * t
	return length.Round(small), length.Round(deep), length.Round(8 * deep * deep / (3 * short)), nil
}
