package hanging

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
)

// A Load is what the leaves weigh on their hangers.
type Load struct {
	Mass   float64    // kg of one leaf with hangers and guide
	Centre float64    // mm, of its mass, from the leaf's left
	Hanger [2]float64 // N, on the left and the right one
	Most   float64    // N, the greatest pull on one track screw
}

// load finds the centre of a leaf's mass and shares its weight between the two
// hangers. The worst screw has a hanger of each channel just below it, which
// happens when leaves stand behind one another.
func (w *work) load() {
	var l Load
	var moment float64
	for _, parts := range [][]door.Part{w.set.Leaf.Parts, w.set.Leaf.Hardware} {
		for _, p := range parts {
			x, _, _ := p.Solid.Centroid()
			l.Mass += p.Mass
			moment += float64(p.Mass * x)
		}
	}
	half := w.set.Leaf.Width.MM() / 2
	if hardware, err := catalog.Rule("hardware-mass"); err == nil {
		l.Mass += hardware.Number
		moment += float64(hardware.Number * half)
	}
	l.Centre = moment / l.Mass
	left, right := w.set.Track.HangerAt[0].MM(), w.set.Track.HangerAt[1].MM()
	share := .5
	if right > left {
		share = (right - l.Centre) / (right - left)
	}
	l.Hanger = [2]float64{l.Mass * gravity * share, l.Mass * gravity * (1 - share)}
	l.Most = 2 * max(l.Hanger[0], l.Hanger[1])
	w.hanging.Load = l
}

// A Rail is how the top rail and its joints are loaded.
type Rail struct {
	Arm      length.Length // from a joint's shoulder to the nearer hanger; 0 when it stands over the stile
	Joint    float64       // N, that a joint of the top rail carries upright
	Moment   float64       // N·mm in the rail
	Stress   float64       // MPa, by the section below
	Deep     length.Length // of the section reckoned with: the rail less the panel's seat
	Thick    length.Length // of it
	Strength float64       // MPa, modulus of rupture of clear wood; 0 when not known
	Sag      length.Length // of the rail's middle above its hangers: it bends upwards there
	Source   string
}

// Factor is how many times its stress the rail's clear wood bears; 0 when its
// strength is not known.
func (r Rail) Factor() float64 {
	if r.Stress == 0 {
		return 0
	}
	return r.Strength / r.Stress
}

// rail reckons with two equal loads, one at each joint, below a rail held by two
// hangers: between these the moment is load × arm throughout.
func (w *work) rail() {
	leaf, wood := w.set.Leaf, w.set.Stock.Species
	top := leaf.Rails[leaf.Rows()]
	own := 0.0
	for _, p := range leaf.Parts {
		if p.Label == top.Label {
			own = p.Mass
		}
	}
	inset := min(w.set.Track.HangerAt[0], leaf.Width-w.set.Track.HangerAt[1])
	r := Rail{Arm: max(0, inset-leaf.Stile), Deep: top.Width() - leaf.Rabbet.Width, Thick: leaf.Thickness, Strength: wood.MOR, Source: wood.Strength.String()}
	r.Joint = (w.hanging.Load.Mass - own) * gravity / 2
	r.Moment = r.Joint * r.Arm.MM()
	d, t := r.Deep.MM(), r.Thick.MM()
	between := max(0, leaf.Width-2*inset).MM()
	if d > 0 {
		r.Stress = r.Moment / (t * d * d / 6)
	}
	if d > 0 && wood.MOE > 0 {
		r.Sag = length.Round(r.Moment * between * between / (8 * wood.MOE * t * d * d * d / 12))
	}
	w.hanging.Rail = r
}

// A Sag is how far a header of stated size sags under leaves and track.
type Sag struct {
	Span, Height, Thickness length.Length
	Load                    float64 // N, all leaves and hardware
	Sag                     length.Length
	Most                    length.Length // what leaves and their floor gap bear
	Wood                    string
	Source                  string
}

// sag reckons with all leaves at the middle of the span, as when they are slid
// together: F·L³ ÷ 48·E·I of a beam on two supports.
func (w *work) sag() {
	h := w.model.Hanging.Header
	if h.Height == nil || h.Thickness == nil || w.framing.MOE <= 0 {
		return
	}
	s := Sag{Span: w.set.Opening.Width, Height: *h.Height, Thickness: *h.Thickness, Wood: w.framing.Name}
	w.sized("hanging.header.height", "hanging.header.height", h.Height, lining)
	w.sized("hanging.header.thickness", "hanging.header.thickness", h.Thickness, lining)
	from := []string{"hanging.header.height", "hanging.header.thickness"}
	if h.Span != nil {
		s.Span = w.sized("hanging.header.span", "hanging.header.span", h.Span, lining)
		from = append(from, "hanging.header.span")
	} else {
		from = append(from, "opening.width")
	}
	s.Load = float64(len(w.set.Hung)) * w.hanging.Load.Mass * gravity
	l, d, t := s.Span.MM(), s.Height.MM(), s.Thickness.MM()
	s.Sag = w.derive("header.sag", length.Round(s.Load*l*l*l/(48*w.framing.MOE*t*d*d*d/12)), fmt.Sprintf("load × span³ ÷ 48·E·I: %.0f N, all leaves slid to the middle, E %.0f MPa of %s", s.Load, w.framing.MOE, w.framing.Name), from...)
	part, err := catalog.Rule("header-sag")
	most, err2 := catalog.Rule("header-sag-most")
	if err == nil && err2 == nil {
		s.Most = min(length.Round(l/part.Number), most.Size)
		s.Source = part.Source.String()
	}
	w.hanging.Header = &s
}
