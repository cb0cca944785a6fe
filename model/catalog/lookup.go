package catalog

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// longestName is the longest text worth comparing with the known names; what
// is longer is no slip of the pen.
const longestName = 60

// An UnknownName is the error of a look-up that found no row.
type UnknownName struct {
	Table   string   // what was looked for: "wood", "sheet material"
	Name    string   // as written
	Nearest []string // what it may have meant, nearest first; may be empty
	Known   []string // every name of the table, in its order
}

// Error names the nearest rows or, when none is near, all of them.
func (e *UnknownName) Error() string {
	if len(e.Nearest) > 0 {
		return fmt.Sprintf("no %s %s; did you mean %s?", e.Table, quoted(e.Name), choice(e.Nearest))
	}
	return fmt.Sprintf("no %s %s; known are %s", e.Table, quoted(e.Name), strings.Join(e.Known, ", "))
}

// quoted is the name in quotes, cut where it is too long to print.
func quoted(name string) string {
	runes := []rune(name)
	if len(runes) > longestName {
		return fmt.Sprintf("%q…", string(runes[:longestName]))
	}
	return fmt.Sprintf("%q", name)
}

// choice is "a", "a or b", "a, b or c".
func choice(names []string) string {
	last := len(names) - 1
	if last == 0 {
		return names[0]
	}
	return strings.Join(names[:last], ", ") + " or " + names[last]
}

// words are the words of a name in lower case, and fold is their sorted line:
// two names with the same fold are the same name.
func words(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return unicode.IsSpace(r) || strings.ContainsRune(",-_‐‑–", r)
	})
}

func fold(name string) string {
	all := words(name)
	slices.Sort(all)
	return strings.Join(all, " ")
}

// find is the row that goes by the name. names gives a row's names, the proper
// one first.
func find[R any](table, name string, rows []R, names func(R) []string) (R, error) {
	want := fold(name)
	for _, row := range rows {
		for _, known := range names(row) {
			if fold(known) == want {
				return row, nil
			}
		}
	}
	failed := &UnknownName{Table: table, Name: name}
	var all []string
	for _, row := range rows {
		failed.Known = append(failed.Known, names(row)[0])
		all = append(all, names(row)...)
	}
	failed.Nearest = nearest(name, all)
	var none R
	return none, failed
}

// nearest are up to three of the names the written one may have meant: those
// that share a whole word with it, or differ in a third of the letters or less.
func nearest(name string, names []string) []string {
	const most = 3
	want := []rune(fold(name))
	if len(want) == 0 || len(want) > longestName {
		return nil
	}
	type guess struct {
		name          string
		shared, apart int
	}
	var guesses []guess
	for _, known := range names {
		g := guess{known, sharedWords(name, known), distance(want, []rune(fold(known)))}
		if g.shared > 0 || g.apart <= max(1, len(want)/3) {
			guesses = append(guesses, g)
		}
	}
	slices.SortStableFunc(guesses, func(a, b guess) int {
		return cmp.Or(cmp.Compare(a.apart, b.apart), cmp.Compare(b.shared, a.shared))
	})
	var near []string
	for _, g := range guesses[:min(most, len(guesses))] {
		near = append(near, g.name)
	}
	return near
}

func sharedWords(a, b string) int {
	shared, others := 0, words(b)
	for _, word := range words(a) {
		if slices.Contains(others, word) {
			shared++
		}
	}
	return shared
}

// distance is how many letters must be added, dropped or changed to turn one
// text into the other (Levenshtein 1966).
func distance(a, b []rune) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, ra := range a {
		corner := row[0]
		row[0] = i + 1
		for j, rb := range b {
			change := corner
			if ra != rb {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, corner+1, row[j]+1)
		}
	}
	return row[len(b)]
}
