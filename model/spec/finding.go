package spec

// A Finding is one fault, or one thing worth knowing, in a model file.
// Its text is "file:line:col: rule: sentence".
type Finding struct {
	File         string
	Line, Column int    // from 1; 0 when the fault has no place in the file
	Path         string // the key it is about: "panel.rabbet.depth"
	Rule         string // a constant of the package that found it: "unknown-key"
	Severity     Severity
	Sentence     string // with both numbers, and what would work
}

// A Severity tells what a finding does to the run.
type Severity int

// The severities.
const (
	Stops   Severity = iota // nothing is written
	Warning                 // written, and said on the sheets
	Note                    // worth knowing
)
