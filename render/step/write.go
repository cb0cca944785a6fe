package step

import (
	"fmt"
	"io"

	"stilewright/model/length"
	"stilewright/model/solid"
)

// A Part is one product of a file, and where it stands.
type Part struct {
	// Label is the product's number, unique in a file and not empty; Name says
	// what it is.
	Label, Name string
	// Solid is the part in a frame of its own, or in its place.
	Solid solid.Solid
	// At are displacements from the solid's frame to where it stands, an
	// instance each. Without any it stands once, where its solid is.
	At []solid.Vec
	// Colour is red, green and blue from 0 to 1; the zero Colour is black.
	Colour [3]float64
}

// Write writes an assembly of the name with the parts as an AP214 exchange
// file in millimetres. The same parts give the same bytes. It refuses what the
// package comment tells, naming part and place, and then has written nothing.
func Write(w io.Writer, name string, parts []Part) error {
	if len(parts) == 0 {
		return fmt.Errorf("step: no parts to write: give at least 1")
	}
	shells := make([]*shell, len(parts))
	labels := map[string]int{}
	for i, p := range parts {
		if first, taken := labels[p.Label]; taken {
			return fmt.Errorf("step: parts %d and %d are both labelled %q: list one of them once, with two places", first+1, i+1, p.Label)
		}
		labels[p.Label] = i
		var err error
		if shells[i], err = p.shell(); err != nil {
			return fmt.Errorf("step: part %d, %q: %w", i+1, p.Label, err)
		}
	}
	f := begin(w, name)
	f.assembly(name, parts, shells)
	if err := f.end(); err != nil {
		return fmt.Errorf("step: %w", err)
	}
	return nil
}

// shell is the part's boundary, or why it has none.
func (p Part) shell() (*shell, error) {
	if p.Label == "" {
		return nil, fmt.Errorf("it has no label: give it one")
	}
	for _, c := range p.Colour {
		if !(c >= 0 && c <= 1) {
			return nil, fmt.Errorf("its colour has a share of %g: each must be from 0 to 1", c)
		}
	}
	for _, at := range append(reach(p.Solid), p.At...) {
		if max(at.X, at.Y, at.Z) > length.Longest || min(at.X, at.Y, at.Z) < -length.Longest {
			return nil, fmt.Errorf("it reaches or stands at %v: up to %g mm is written", in(at), length.Longest.MM())
		}
	}
	for i, b := range p.Solid.Bores {
		if b.From == b.To || b.Diameter <= 0 {
			return nil, fmt.Errorf("bore %d (%s): it is %g mm long and %g mm across: both must be more than 0", i+1, b.For, in(b.To).minus(in(b.From)).size(), b.Diameter.MM())
		}
	}
	s, err := bodyOf(p.Solid.Drilled())
	if err != nil {
		return nil, err
	}
	return s, bored(s, p.Solid)
}

// reach are points as far out as anything of the solid.
func reach(s solid.Solid) []solid.Vec {
	prisms := []solid.Prism{s.Blank}
	for _, c := range s.Cuts {
		prisms = append(prisms, c.Prism)
	}
	var points []solid.Vec
	for _, p := range prisms {
		for _, path := range p.Region {
			for _, e := range path {
				points = append(points, solid.Raise(e.From, p.Axis, p.From), solid.Raise(e.To, p.Axis, p.To), solid.Raise(e.Centre, p.Axis, p.To))
			}
		}
	}
	for _, b := range s.Bores {
		points = append(points, b.From, b.To, solid.Vec{X: b.Diameter})
	}
	return points
}
