package door

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// Resolve turns a model into a set. When any finding stops, the set is the
// zero Set; warnings and notes come with a whole one. Findings are in the
// order of the stages; spec's order by position is the caller's to restore.
func Resolve(m spec.Spec) (Set, []spec.Finding) {
	r := &resolver{model: m, units: m.Units.Unit, style: length.Style{Unit: m.Units.Unit, Mark: true}}
	r.set = Set{Job: m.Job, Drawn: m.Drawn, By: m.By, Revision: m.Revision, Units: r.units, Paper: m.Paper, Written: m.Figures}
	r.run()
	if r.stopped {
		return Set{}, r.findings
	}
	r.set.Figures = r.figures
	return r.set, r.findings
}

// run takes the stages in turn. One that needs what an earlier one could not
// tell is left out, so that every finding is a fault of its own.
func (r *resolver) run() {
	r.tick = r.ledger.assume("tick", tick.in(r.units), tick.reason, houseRule)
	r.opening()
	r.stock()
	r.track()
	r.size()
	if !r.stopped {
		r.frame()
		r.seat()
		r.joint()
	}
	r.lookUp()
	if r.stopped {
		return
	}
	r.panel()
	if r.set.Leaf.Panel.LeastBite > 0 {
		r.corner()
		r.holder()
	}
	if r.stopped {
		return
	}
	r.edges()
	r.pull()
	r.guide()
	r.hangers()
	if r.stopped {
		return
	}
	r.build()
	if r.stopped {
		return
	}
	r.hang()
}

// lookUp finds in the catalogue what the model names: wood, sheet and screw.
func (r *resolver) lookUp() {
	var err error
	species, gauge := r.model.Stock.Species, r.model.Panel.HeldBy.Screw.Gauge
	if species == "" {
		species = defaultSpecies
	}
	if gauge == 0 {
		gauge = gaugeOfWasher
	}
	if r.set.Stock.Species, err = catalog.Species(species); err != nil {
		r.stop("stock.species", RuleUnknownSpecies, "%v", err)
	}
	if r.set.Leaf.Panel.Material, err = catalog.Sheet(r.model.Panel.Material); err != nil {
		r.stop("panel.material", RuleUnknownSheet, "%v", err)
	}
	if solid := r.model.Panel.Solid; solid != nil {
		if r.set.Leaf.SolidPanel == nil {
			r.set.Leaf.SolidPanel = &Panel{} // size has stopped before the seat
		}
		if r.set.Leaf.SolidPanel.Material, err = catalog.Sheet(solid.Material); err != nil {
			r.stop("panel.solid.material", RuleUnknownSheet, "%v", err)
		}
	}
	if r.set.Leaf.Washer.Screw, err = catalog.Screw(gauge); err != nil {
		r.stop("panel.held_by.screw.gauge", RuleScrewGauge, "%v", err)
	}
}

// A resolver carries the set while it grows.
type resolver struct {
	ledger
	model    spec.Spec
	units    length.Unit
	style    length.Style
	tick     length.Length
	set      Set
	findings []spec.Finding
	stopped  bool
}

// stop records a finding that stops the run.
func (r *resolver) stop(path, rule, sentence string, values ...any) {
	r.stopped = true
	r.find(path, rule, spec.Stops, sentence, values...)
}

// warn records a finding that does not.
func (r *resolver) warn(path, rule, sentence string, values ...any) {
	r.find(path, rule, spec.Warning, sentence, values...)
}

// find records a finding; lengths among the values are written in the model's
// units.
func (r *resolver) find(path, rule string, severity spec.Severity, sentence string, values ...any) {
	for i, v := range values {
		if l, ok := v.(length.Length); ok {
			values[i] = r.style.Format(l)
		}
	}
	r.findings = append(r.findings, r.model.Find(path, rule, severity, fmt.Sprintf(sentence, values...)))
}

// sized enters the size a model states under path, or the default.
func (r *resolver) sized(name, path string, stated *length.Length, otherwise choice) length.Length {
	if stated != nil {
		return r.given(name, path, *stated)
	}
	return r.assume(name, otherwise.in(r.units), otherwise.reason, houseRule)
}

// share divides a whole number of ticks, and what is left over a tick, into n
// parts that differ by at most one tick and add up again.
func (r *resolver) share(whole length.Length, n int) []length.Length {
	parts := make([]length.Length, n)
	base := (whole / length.Length(n)).DownTo(r.tick)
	rest := whole - base*length.Length(n)
	for i := range parts {
		give := min(rest, r.tick)
		parts[i] = base + give
		rest -= give
	}
	return parts
}
