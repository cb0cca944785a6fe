package catalog

import (
	"strings"

	"stilewright/model/length"
)

const (
	in  = length.Inch
	mm  = length.Millimetre
	mil = length.Inch / 1000 // 25 400 nm, exact
)

// Units of force, stress and mass as the inch-pound tables give them.
const (
	poundKG        = 0.45359237                              // kg, exact by definition
	poundForceN    = poundKG * 9.80665                       // N, exact by definition
	psiMPa         = poundForceN / (25.4 * 25.4)             // MPa
	lbfPerInchNmm  = poundForceN / 25.4                      // N/mm
	squareFootMM2  = 12 * 25.4 * 12 * 25.4                   // mm², exact
	squareMetreMM2 = 1_000_000.0                             // mm²
	wordsNoSource  = "common practice, no source"            // Work of every CommonPractice row
	noAddress      = "supplier's page; its address left out" // kept brand-free
)

// A Confirmation tells how far a row was confirmed. The zero Confirmation is
// not a valid one: a row that forgot to say fails the walk over all rows.
type Confirmation int

// The kinds of confirmation.
const (
	ReadOnce       Confirmation = iota + 1 // read in one published text
	ReadTwice                              // read in two independent published texts
	Derived                                // computed from published values; the note says how
	FromMemory                             // a published value not seen again: edit it when in doubt
	CommonPractice                         // what shops do; no source, edit freely
)

// String is the kind in words, as it stands in an explanation.
func (c Confirmation) String() string {
	switch c {
	case ReadOnce:
		return "read in one published text"
	case ReadTwice:
		return "read in two published texts"
	case Derived:
		return "derived from published values"
	case FromMemory:
		return "from memory"
	case CommonPractice:
		return wordsNoSource
	}
	return "not confirmed"
}

// A Source is where a row comes from.
type Source struct {
	Work      string       // the public name: a standard, a handbook, or "common practice, no source"
	Edition   string       // whose numbering the row follows; empty only for common practice
	Place     string       // table, section or address; empty only for common practice
	Confirmed Confirmation // how far that was confirmed
	Note      string       // what else to know: a formula, a doubt, a disagreement
}

// String is the source in one line, as it stands in an explanation.
func (s Source) String() string {
	if s.Confirmed == CommonPractice {
		return join(": ", s.Work, s.Note)
	}
	where := join(", ", s.Work, s.Edition, s.Place)
	return join("; ", where, s.Confirmed.String(), s.Note)
}

// join joins the parts that are not empty.
func join(between string, parts ...string) string {
	var said []string
	for _, part := range parts {
		if part != "" {
			said = append(said, part)
		}
	}
	return strings.Join(said, between)
}

// practice is the source of a row nobody published.
func practice(note string) Source {
	return Source{Work: wordsNoSource, Confirmed: CommonPractice, Note: note}
}
