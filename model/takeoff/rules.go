package takeoff

import (
	"errors"
	"fmt"

	"stilewright/model/cutting"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// The rules a takeoff holds a model and a price file to.
const (
	RuleNothing    = "nothing-to-take-off" // no model
	RuleStock      = "unknown-stock"       // a board that is not sold, or of another thickness
	RuleTooLong    = "part-longer-than-board"
	RuleTooWide    = "part-wider-than-board"
	RuleTooLarge   = "panel-larger-than-sheet"
	RuleClear      = "clear-longer-than-board"
	RuleShopSheet  = "sheet-larger-than-shops" // a sheet to be had that the shop cannot lay down
	RuleTempered   = "tempered-not-cut"
	RuleFilm       = "film-does-not-fit"
	RuleNotCut     = "cannot-be-cut" // what package cutting finds: its own rule stands in the sentence
	RulePriceFile  = "price-file"    // a price file that is not one: its head, its text
	RulePriceRow   = "price-row"     // a row with too many or too few fields
	RulePrice      = "bad-price"     // a price that is no amount, or negative
	RulePack       = "bad-pack"      // a pack that is no number above 0
	RulePriceTwice = "price-twice"   // an item priced twice
	RuleUnit       = "other-price-unit"
)

// find records a finding about a job's model; lengths among the values are
// written in the takeoff's units.
func (t *taker) find(job int, severity spec.Severity, path, rule, sentence string, values ...any) {
	for i, v := range values {
		if l, ok := v.(length.Length); ok {
			values[i] = t.style.Format(l)
		}
	}
	t.stopped = t.stopped || severity == spec.Stops
	t.findings = append(t.findings, t.jobs[job].Model.Find(path, rule, severity, fmt.Sprintf(sentence, values...)))
}

// faults records what package cutting found wrong with a layout of the job,
// each under the key it is about.
func (t *taker) faults(job int, err error, paths map[cutting.Rule]string, otherwise string) {
	var list interface{ Unwrap() []error }
	all := []error{err}
	if errors.As(err, &list) {
		all = list.Unwrap()
	}
	for _, one := range all {
		path := otherwise
		var fault cutting.Fault
		if errors.As(one, &fault) && paths[fault.Rule] != "" {
			path = paths[fault.Rule]
		}
		t.find(job, spec.Stops, path, RuleNotCut, "%v", one)
	}
}
