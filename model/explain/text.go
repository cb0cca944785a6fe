package explain

import (
	"strings"
	"unicode/utf8"

	"stilewright/model/door"
)

const (
	columns = 80 // of a plain terminal
	step    = 2  // columns a line is indented by for each figure it is behind
	deepest = 20 // levels that are indented further: deeper ones would have no room for words
)

// Tree tells where each root comes from, back to what was measured: a line with
// name and value, below it how it came about, and indented the figures it takes.
func (b Book) Tree(roots []door.Figure) string {
	t := &teller{book: b, told: map[string]bool{}}
	for i, f := range roots {
		if i > 0 {
			t.out.WriteString("\n")
		}
		t.figure(f, 0)
	}
	return t.out.String()
}

// List is all figures by group: a line each, with how it came about in a word.
func (b Book) List() string {
	var out strings.Builder
	names, of := b.groups()
	for i, group := range names {
		if i > 0 {
			out.WriteString("\n")
		}
		out.WriteString(group + "\n")
		b.table(&out, of[group])
	}
	return out.String()
}

// table writes names, values and ways in three columns.
func (b Book) table(out *strings.Builder, figures []door.Figure) {
	wide, high := 0, 0
	for _, f := range figures {
		wide, high = max(wide, utf8.RuneCountInString(f.Name)), max(high, utf8.RuneCountInString(b.style.Format(f.Value)))
	}
	for _, f := range figures {
		value := b.style.Format(f.Value)
		out.WriteString("  " + padded(f.Name, wide) + "  " + strings.Repeat(" ", high-utf8.RuneCountInString(value)) + value + "  " + way(f) + "\n")
	}
}

func padded(text string, wide int) string {
	return text + strings.Repeat(" ", wide-utf8.RuneCountInString(text))
}

// way is how a figure came about, in a word.
func way(f door.Figure) string {
	switch {
	case f.Given != "":
		return "stated"
	case f.Reason != "":
		return "default"
	}
	return "worked out"
}

// A teller writes a tree.
type teller struct {
	book Book
	told map[string]bool
	out  strings.Builder
}

// figure tells one figure at a depth, and what it is taken from.
func (t *teller) figure(f door.Figure, depth int) {
	again := t.told[f.Name]
	t.told[f.Name] = true
	head := f.Name + strings.Replace(" = "+t.book.style.Format(f.Value), "= ≈", "≈", 1)
	switch {
	case f.Given == f.Name:
		head += ", as stated"
	case f.Given != "":
		head += ", stated as " + f.Given
	case again:
		head += ", as above"
	}
	t.line(head, depth, 0)
	if again || f.Given != "" {
		return
	}
	if f.Reason != "" {
		t.line("default: "+f.Reason, depth, 1)
		t.line("source: "+f.Source, depth, 1)
		return
	}
	t.line(f.Formula, depth, 1)
	for _, name := range f.From {
		if from, has := t.book.Figure(name); has {
			t.figure(from, depth+1)
		}
	}
}

// line writes a text at a depth, folded at spaces; inner ones stand a bar in
// from the figure they belong to.
func (t *teller) line(text string, depth, inner int) {
	indent := strings.Repeat(" ", step*min(depth, deepest))
	if inner > 0 {
		indent += "| "
	}
	room, line := columns-len(indent), ""
	for _, word := range strings.Fields(text) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > room {
			t.out.WriteString(indent + line + "\n")
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	t.out.WriteString(indent + line + "\n")
}
