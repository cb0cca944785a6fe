package spec

import (
	"cmp"
	"slices"
	"strconv"
)

// A Finding is one fault, or one thing worth knowing, in a model file.
// Its text is "file:line:col: rule: sentence".
type Finding struct {
	File         string
	Line, Column int    // from 1, columns in characters; 0 when the fault has no place in the file
	Path         string // the key it is about: "panel.rabbet.depth"; Whole for the file itself
	Rule         string // a constant of the package that found it: "unknown-key"
	Severity     Severity
	Sentence     string // with both numbers, and what would work
}

// Whole is the Path of a finding about the file as a whole.
const Whole = "."

// A Severity tells what a finding does to the run.
type Severity int

// The severities.
const (
	Stops   Severity = iota // nothing is written
	Warning                 // written, and said on the sheets
	Note                    // worth knowing
)

// String is the severity's word.
func (s Severity) String() string { return [...]string{"stops", "warning", "note"}[s] }

// String is "file:line:col: rule: sentence". What the finding does not have,
// the file's name or a place in it, is left out.
func (f Finding) String() string {
	text := f.Rule + ": " + f.Sentence
	if f.Line > 0 {
		text = strconv.Itoa(f.Line) + ":" + strconv.Itoa(f.Column) + ": " + text
	} else if f.File != "" {
		text = " " + text
	}
	if f.File != "" {
		text = f.File + ":" + text
	}
	return text
}

// Sort puts findings in the order of their places; those without a place come
// first, and those at one place follow rule, path and sentence.
func Sort(findings []Finding) {
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(a.File, b.File),
			cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Column, b.Column),
			cmp.Compare(a.Rule, b.Rule),
			cmp.Compare(a.Path, b.Path),
			cmp.Compare(a.Sentence, b.Sentence),
		)
	})
}
