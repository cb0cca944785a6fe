package takeoff

import (
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// A Job is one model with the set it resolved to.
type Job struct {
	Model spec.Spec
	Set   door.Set
}

// A Takeoff is what one or several jobs take. Nothing in it is changed after Of
// has returned it.
type Takeoff struct {
	Jobs    []door.Set // in the order given; their letters are A, B, C …
	Units   length.Unit
	Parts   []Part       // every distinct part, by job, leaf parts first
	Boards  []BoardPlan  // one for each species and section
	Sheets  []SheetPlan  // one for each material and thickness
	Film    []FilmPlan   // one for each job with film
	Buy     []Item       // the shopping list
	Offers  []Item       // every board and sheet to be had, bought or not: a price would choose among them
	Sum     Sum          // of the shopping list
	Assumed []Assumption // what the models left open
}

// An Assumption is a value the model left out, and why it was taken.
type Assumption struct {
	Name   string // the key that states another: "stock.kerf"
	Value  string // with its unit
	Reason string // with its source
}

// Of takes off the jobs, at the prices (the zero Prices has none). With a
// finding that stops, the Takeoff is the zero one. Findings are in no order of
// places; spec.Sort puts them there.
func Of(jobs []Job, prices Prices) (Takeoff, []spec.Finding) {
	t := &taker{jobs: jobs, prices: prices}
	if len(jobs) == 0 {
		return Takeoff{}, []spec.Finding{{Path: spec.Whole, Rule: RuleNothing, Sentence: "0 models were given; a takeoff needs at least 1"}}
	}
	t.out.Units = jobs[0].Set.Units
	t.words = t.out.words()
	t.style = length.Style{Unit: t.unit, Mark: true}
	for i, job := range jobs {
		t.out.Jobs = append(t.out.Jobs, job.Set)
		t.stocks = append(t.stocks, t.stockOf(i))
	}
	t.parts()
	if !t.stopped {
		t.boards()
		t.sheets()
		t.film()
	}
	if t.stopped {
		return Takeoff{}, t.findings
	}
	t.buy()
	return t.out, t.findings
}

// A taker carries the takeoff while it grows.
type taker struct {
	words
	jobs     []Job
	prices   Prices
	stocks   []stock   // one a job
	named    [][]named // sheets a job names, one list a job; empty: the common ones
	style    length.Style
	out      Takeoff
	whole    []item // parts with what the lists do not show; parallel to out.Parts
	findings []spec.Finding
	stopped  bool
}

// Letter is a job's letter where several are pooled: A, B, … Z, AA; empty for
// the only one.
func (t Takeoff) Letter(job int) string {
	if len(t.Jobs) < 2 {
		return ""
	}
	return letters(job)
}

func letters(n int) string {
	const alphabet = 26
	if n < alphabet {
		return string(rune('A' + n))
	}
	return letters(n/alphabet-1) + letters(n%alphabet)
}

// assume notes a value the model of the job left out, once.
func (t *taker) assume(name, value, reason string) {
	for _, a := range t.out.Assumed {
		if a.Name == name && a.Value == value {
			return
		}
	}
	t.out.Assumed = append(t.out.Assumed, Assumption{name, value, reason})
}
