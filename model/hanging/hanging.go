package hanging

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// A Hanging is how a set is hung.
type Hanging struct {
	Track   Screws
	Fascia  *Screws // nil when there is no fascia
	Load    Load
	Rail    Rail
	Header  *Sag // nil when the model does not tell the header's size
	Guides  []Guide
	Bumpers []Bumper
	Figures []door.Figure // the lengths, explained; they follow those of the set
}

// Of works the hanging out. Its findings are those of keys that name what the
// catalogue does not have; then the Hanging is the zero one.
func Of(m spec.Spec, s door.Set) (Hanging, []spec.Finding) {
	w := &work{model: m, set: s, units: s.Units}
	w.lookUp()
	if len(w.findings) > 0 {
		return Hanging{}, w.findings
	}
	w.load()
	w.track()
	w.fascia()
	w.rail()
	w.sag()
	w.guides()
	w.bumpers()
	w.hanging.Figures = w.figures
	return w.hanging, nil
}

// A work carries the hanging while it grows.
type work struct {
	model    spec.Spec
	set      door.Set
	units    length.Unit
	framing  catalog.Wood
	screw    catalog.WoodScrew // of the track
	small    catalog.WoodScrew // of the fascia
	hanging  Hanging
	figures  []door.Figure
	findings []spec.Finding
}

// lookUp finds framing and screws in the catalogue.
func (w *work) lookUp() {
	name, gauge := w.model.Hanging.Header.Wood, w.model.Hanging.Fixing.Screw.Gauge
	if name == "" {
		name = defaultHeader
	}
	if gauge == 0 {
		gauge = gaugeOfTrack
	}
	var err error
	if w.framing, err = catalog.Species(name); err != nil {
		w.findings = append(w.findings, w.model.Find("hanging.header.wood", door.RuleUnknownSpecies, spec.Stops, err.Error()))
	}
	if w.screw, err = catalog.Screw(gauge); err != nil {
		w.findings = append(w.findings, w.model.Find("hanging.fixing.screw.gauge", door.RuleScrewGauge, spec.Stops, err.Error()))
	}
	if w.small, err = catalog.Screw(gaugeOfFascia); err != nil {
		w.findings = append(w.findings, w.model.Find("hanging.fascia", door.RuleScrewGauge, spec.Stops, err.Error()))
	}
}

// sized enters the size stated under the path, or the default.
func (w *work) sized(name, path string, stated *length.Length, otherwise choice) length.Length {
	f := door.Figure{Name: name, Value: otherwise.in(w.units), Reason: otherwise.reason, Source: houseRule}
	if stated != nil {
		f = door.Figure{Name: name, Value: *stated, Given: path}
	}
	w.figures = append(w.figures, f)
	return f.Value
}

// derive enters a size computed from others.
func (w *work) derive(name string, v length.Length, formula string, from ...string) length.Length {
	w.figures = append(w.figures, door.Figure{Name: name, Value: v, Formula: formula, From: from})
	return v
}

// spread enters places at the same distance from both ends of a stretch and
// evenly between, no further apart than most.
func (w *work) spread(name string, from, to, end, most length.Length, formula string, takes ...string) []length.Length {
	if to-from < 2*end {
		end = (to - from) / 4
	}
	first, last := from+end, to-end
	count := max(1, int((last-first+most-1)/most))
	at, places := first, []length.Length{first}
	for _, step := range (last - first).Split(count) {
		at += step
		places = append(places, at)
	}
	for i, x := range places {
		w.derive(fmt.Sprintf("%s.%d", name, i+1), x, formula, takes...)
	}
	return places
}
