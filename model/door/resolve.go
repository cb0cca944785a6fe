package door

import (
	"fmt"

	"stilewright/model/length"
	"stilewright/model/spec"
)

// Resolve turns a model into a set. When any finding stops, the set is the
// zero Set; warnings and notes come with a whole one. Findings are in the
// order of the stages; spec's order by position is the caller's to restore.
func Resolve(m spec.Spec) (Set, []spec.Finding) {
	r := &resolver{model: m, units: m.Units.Unit, style: length.Style{Unit: m.Units.Unit, Mark: true}}
	r.set = Set{Job: m.Job, Drawn: m.Drawn, By: m.By, Revision: m.Revision, Units: r.units, Paper: m.Paper}
	r.tick = r.ledger.assume("tick", tick.in(r.units), tick.reason, houseRule)
	r.opening()
	r.stock()
	r.track()
	r.size()
	if !r.stopped {
		r.frame()
		r.rabbet()
		r.pocket()
	}
	if !r.stopped {
		r.panel()
		r.corner()
		r.washer()
	}
	if r.stopped {
		return Set{}, r.findings
	}
	r.build()
	r.hang()
	r.set.Figures = r.figures
	if r.stopped {
		return Set{}, r.findings
	}
	return r.set, r.findings
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
