package guide

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/hanging"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/render/drawing"
	"stilewright/render/sheet"
)

const mm = length.Millimetre

// A Guide is the building order of a set.
type Guide struct {
	Job, Drawn, By, Revision string
	Units                    length.Unit
	About                    []string // what stands before the first chapter
	Chapters                 []Chapter
	Pictures                 []sheet.Sheet // those the steps name, each once
}

// A Chapter is the steps of one stage, in their order.
type Chapter struct {
	Title string
	Steps []Step
}

// A Step is one piece of work.
type Step struct {
	Title    string
	Lines    []string // paragraphs
	Table    [][]string
	Setups   []Setup
	Figures  []Figure
	Cautions []string
	Picture  string // name of one of the guide's pictures; empty for none
}

// A Setup is one setting of a machine and what is worked with it.
type Setup struct{ Machine, Setting, Work string }

// A Figure is a size that a step takes: a name of the set's figures or of its
// hanging's, or the first words of several names, and the value as written.
type Figure struct{ Name, Value string }

// Of writes the building order of a set. It errs when a step names a figure
// that neither the set nor its hanging has, which is a bug of this package.
func Of(m spec.Spec, s door.Set, h hanging.Hanging) (Guide, error) {
	w := &writer{model: m, set: s, leaf: s.Leaf, hung: h, all: slices.Concat(s.Figures, h.Figures)}
	w.guide = Guide{Job: s.Job, Drawn: s.Drawn, By: s.By, Revision: s.Revision, Units: s.Units}
	w.guide.Pictures = drawing.Pictures(s, plane.At(80*mm, 95*mm), plane.At(130*mm, 75*mm), plane.At(130*mm, 125*mm))
	w.about()
	w.before()
	w.stock()
	w.marking()
	w.joints()
	captive, early := w.leaf.Rabbet.Kind == door.Groove, w.leaf.Corner.Tool > 0 || w.leaf.Rabbet.Kind == door.Groove
	if early {
		w.seat()
	}
	if captive {
		w.panels()
	}
	w.assembly()
	if !early {
		w.seat()
	}
	w.boring()
	w.surface()
	if !captive {
		w.panels()
		w.holders()
	}
	w.hanging()
	w.finish()
	if len(w.missing) > 0 {
		return Guide{}, fmt.Errorf("the building order names %d figures that the set lacks: %s", len(w.missing), strings.Join(w.missing, ", "))
	}
	return w.guide, nil
}

// A writer carries the guide while it grows.
type writer struct {
	model   spec.Spec
	set     door.Set
	leaf    door.Leaf
	hung    hanging.Hanging
	all     []door.Figure
	guide   Guide
	cited   []Figure // by the step being written
	missing []string
}

// chapter begins a chapter.
func (w *writer) chapter(title string) {
	w.guide.Chapters = append(w.guide.Chapters, Chapter{Title: title})
}

// step adds a step to the last chapter, with the figures cited since the last one.
func (w *writer) step(s Step) {
	s.Figures, w.cited = w.cited, nil
	if !slices.ContainsFunc(w.guide.Pictures, func(p sheet.Sheet) bool { return p.Name == s.Picture }) {
		s.Picture = ""
	}
	last := &w.guide.Chapters[len(w.guide.Chapters)-1]
	last.Steps = append(last.Steps, s)
}

// finish drops pictures and chapters without use, and gathers the setups.
func (w *writer) finish() {
	g := &w.guide
	g.Chapters = slices.DeleteFunc(g.Chapters, func(c Chapter) bool { return len(c.Steps) == 0 })
	used := map[string]bool{}
	for _, c := range g.Chapters {
		for _, s := range c.Steps {
			used[s.Picture] = true
		}
	}
	g.Pictures = slices.DeleteFunc(g.Pictures, func(p sheet.Sheet) bool { return !used[p.Name] })
	last := &g.Chapters[0]
	last.Steps = append(last.Steps, Step{Title: "Machines, each set once", Lines: []string{
		"All pieces of all leaves are worked with one setting before it is changed: they are then alike, whatever the scale on the machine says.",
		"A spare piece of the same wood is worked first, measured, and kept until the job is done.",
	}, Table: setupRows(g.Chapters)})
}

// setupRows lists the setups by machine, those of one machine together, with the
// number of the step each belongs to.
func setupRows(chapters []Chapter) [][]string {
	rows := [][]string{{"MACHINE", "STEP", "WORK", "SET TO"}}
	var machines []string
	found := map[string][][]string{}
	for i, c := range chapters {
		for k, s := range c.Steps {
			for _, u := range s.Setups {
				if found[u.Machine] == nil {
					machines = append(machines, u.Machine)
				}
				found[u.Machine] = append(found[u.Machine], []string{u.Machine, number(i, k), u.Work, u.Setting})
			}
		}
	}
	for _, m := range machines {
		rows = append(rows, found[m]...)
	}
	return rows
}

// number is a step's number by the indices of chapter and step.
func number(chapter, step int) string { return fmt.Sprintf("%d.%d", chapter+1, step+1) }

// f writes a size with its unit, its parts held together.
func (w *writer) f(l length.Length) string {
	return strings.ReplaceAll(w.written(l), " ", "\u00a0")
}

// written is a size as the model wants it.
func (w *writer) written(l length.Length) string {
	style, other := length.Style{Unit: w.set.Units, Mark: true}, length.Style{Unit: length.Inches, Mark: true}
	if w.set.Units == length.Inches {
		other.Unit = length.Millimetres
	}
	switch {
	case w.set.Written == "decimal" && w.set.Units == length.Inches:
		return length.FormatDecimalInch(l, 3) + `"`
	case w.set.Written == "dual":
		return style.Format(l) + " [" + strings.TrimPrefix(other.Format(l), "≈ ") + "]"
	}
	return style.Format(l)
}

// list writes several sizes.
func (w *writer) list(at []length.Length) string {
	var all []string
	for _, l := range at {
		all = append(all, w.f(l))
	}
	return strings.Join(all, ", ")
}

// fig cites a figure and writes its value.
func (w *writer) fig(name string) string {
	for _, f := range w.all {
		if f.Name == name {
			w.cite(name, w.f(f.Value))
			return w.f(f.Value)
		}
	}
	w.missing = append(w.missing, name)
	return "?"
}

// family cites all figures that are called so and numbered, and lists them.
func (w *writer) family(words string) string {
	at := w.numbered(words)
	if len(at) == 0 {
		w.missing = append(w.missing, words)
	}
	w.cite(words, w.list(at))
	return w.list(at)
}

// numbered are the values of "words.1", "words.2" and on.
func (w *writer) numbered(words string) []length.Length {
	var at []length.Length
	for _, f := range w.all {
		if f.Name == fmt.Sprintf("%s.%d", words, len(at)+1) {
			at = append(at, f.Value)
		}
	}
	return at
}

// has tells whether there is a figure of that name.
func (w *writer) has(name string) bool {
	return slices.ContainsFunc(w.all, func(f door.Figure) bool { return f.Name == name })
}

// cite notes a figure once.
func (w *writer) cite(name, value string) {
	if !slices.ContainsFunc(w.cited, func(f Figure) bool { return f.Name == name }) {
		w.cited = append(w.cited, Figure{name, value})
	}
}

// about is what stands before the first chapter.
func (w *writer) about() {
	w.guide.About = []string{
		fmt.Sprintf("%d leaves alike, each %s wide, %s high and %s thick, about %.1f kg (%.0f lb).", len(w.set.Hung), w.f(w.leaf.Width), w.f(w.leaf.Height), w.f(w.leaf.Thickness), w.leaf.Mass, w.leaf.Mass/pound),
		"The steps stand in the order of the work. Sizes are of one leaf, quantities of the whole set, unless a step says otherwise. ≈ marks a figure rounded for reading.",
		"Each size is named below its step: “stilewright explain MODEL NAME” tells where it comes from, back to what was measured.",
		"Manuals of machines and makers, local codes and licensed practice go before anything said here.",
	}
}
