package door

import (
	"stilewright/model/length"
)

// A Figure is one resolved length and how it came about. Just one of Given,
// Formula and Reason is set: it was measured or chosen in the model, computed
// from other figures, or assumed.
type Figure struct {
	Name    string        // "leaf.width": unique in the set
	Value   length.Length //
	Given   string        // path in the model file: "opening.width.bottom"
	Formula string        // in words: "least width plus overlaps, shared by the leaves"
	From    []string      // names of the figures the formula takes
	Reason  string        // of a default
	Source  string        // of a default or a table value
}

// A ledger collects figures in the order they are resolved.
type ledger struct {
	figures []Figure
	seen    map[string]bool
	twice   []string // names put twice: bugs of ours
}

// put adds a figure. A name put twice is a bug of ours; the second is dropped,
// noted, and a test sees to it that there is none.
func (l *ledger) put(f Figure) length.Length {
	if l.seen == nil {
		l.seen = map[string]bool{}
	}
	if l.seen[f.Name] {
		l.twice = append(l.twice, f.Name)
		return f.Value
	}
	l.seen[f.Name] = true
	l.figures = append(l.figures, f)
	return f.Value
}

// given enters a size the model states.
func (l *ledger) given(name, path string, v length.Length) length.Length {
	return l.put(Figure{Name: name, Value: v, Given: path})
}

// derive enters a size computed from others.
func (l *ledger) derive(name string, v length.Length, formula string, from ...string) length.Length {
	return l.put(Figure{Name: name, Value: v, Formula: formula, From: from})
}

// assume enters a default.
func (l *ledger) assume(name string, v length.Length, reason, source string) length.Length {
	return l.put(Figure{Name: name, Value: v, Reason: reason, Source: source})
}

// Figure is the figure of that name.
func (s Set) Figure(name string) (Figure, bool) { return named(s.Figures, name) }

// named is the figure of that name among the figures.
func named(figures []Figure, name string) (Figure, bool) {
	for _, f := range figures {
		if f.Name == name {
			return f, true
		}
	}
	return Figure{}, false
}
