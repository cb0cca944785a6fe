package explain

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
)

// A Book is the figures of one set, and how sizes are written.
type Book struct {
	figures []door.Figure
	at      map[string]int // place of a name among the figures
	style   length.Style
}

// Of is the book of the figures, in their order. Of two figures of one name the
// first counts.
func Of(figures []door.Figure, units length.Unit) Book {
	b := Book{figures: figures, at: map[string]int{}, style: length.Style{Unit: units, Mark: true}}
	for i, f := range figures {
		if _, twice := b.at[f.Name]; !twice {
			b.at[f.Name] = i
		}
	}
	return b
}

// An UnknownFigure is the error of a name no figure has.
type UnknownFigure struct {
	Name    string
	Nearest []string // nearest first; may be empty
}

// Error names the nearest figures.
func (e *UnknownFigure) Error() string {
	if len(e.Nearest) == 0 {
		return fmt.Sprintf("no length is called %q; explain without a name lists all", e.Name)
	}
	return fmt.Sprintf("no length is called %q; did you mean %s?", e.Name, strings.Join(e.Nearest, ", "))
}

// Figure is the figure of that name.
func (b Book) Figure(name string) (door.Figure, bool) {
	i, has := b.at[name]
	if !has {
		return door.Figure{}, false
	}
	return b.figures[i], true
}

// Group is a name's first word: "leaf" of "leaf.width".
func Group(name string) string {
	word, _, _ := strings.Cut(name, ".")
	return word
}

// groups are the groups in the order they first occur, and each one's figures.
func (b Book) groups() (names []string, of map[string][]door.Figure) {
	of = map[string][]door.Figure{}
	for _, f := range b.figures {
		group := Group(f.Name)
		if len(of[group]) == 0 {
			names = append(names, group)
		}
		of[group] = append(of[group], f)
	}
	return names, of
}

// Roots are the figures a name stands for: that of the name or, when it is the
// first word or words of names, all of those.
func (b Book) Roots(name string) ([]door.Figure, error) {
	if f, has := b.Figure(name); has {
		return []door.Figure{f}, nil
	}
	var group []door.Figure
	for _, f := range b.figures {
		if strings.HasPrefix(f.Name, name+".") {
			group = append(group, f)
		}
	}
	if len(group) == 0 {
		return nil, &UnknownFigure{name, b.nearest(name)}
	}
	return group, nil
}

// Behind are the roots and every figure they are taken from, in the book's
// order.
func (b Book) Behind(roots []door.Figure) []door.Figure {
	wanted := map[int]bool{}
	var want func(name string)
	want = func(name string) {
		i, has := b.at[name]
		if !has || wanted[i] {
			return
		}
		wanted[i] = true
		for _, from := range b.figures[i].From {
			want(from)
		}
	}
	for _, f := range roots {
		want(f.Name)
	}
	var behind []door.Figure
	for i, f := range b.figures {
		if wanted[i] {
			behind = append(behind, f)
		}
	}
	return behind
}

// longestName is the longest name worth comparing: more than any figure's.
const longestName = 60

// nearest are up to three names the written one may have meant: those with a
// word of it, and those that differ in a third of the letters or less.
func (b Book) nearest(name string) []string {
	const most = 3
	written := strings.ToLower(name)
	if len(written) == 0 || len(written) > longestName {
		return nil
	}
	type guess struct {
		name  string
		apart int
	}
	var guesses []guess
	for _, f := range b.figures {
		apart := distance(written, f.Name)
		if apart <= max(1, len(written)/3) || slices.Contains(strings.Split(f.Name, "."), written) {
			guesses = append(guesses, guess{f.Name, apart})
		}
	}
	slices.SortStableFunc(guesses, func(a, b guess) int { return cmp.Compare(a.apart, b.apart) })
	var names []string
	for _, g := range guesses[:min(most, len(guesses))] {
		names = append(names, g.name)
	}
	return names
}

// distance is how many bytes must be added, dropped or changed to turn one text
// into the other (Levenshtein 1966).
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		corner := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := corner
			if a[i] != b[j] {
				change++
			}
			corner = row[j+1]
			row[j+1] = min(change, corner+1, row[j]+1)
		}
	}
	return row[len(b)]
}
