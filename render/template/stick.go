package template

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// Sizes across a story stick, from its lower edge up.
const (
	tickZone  = 8 * mm  // lines stand at their places, from the edge to be laid along the part
	fanZone   = 7 * mm  // lines slant to their lettering
	wordPitch = 5 * mm  // from lettering to lettering along the stick
	bandZone  = 7 * mm  // the members that meet the part
	headZone  = 11 * mm // two lines of words
	beyond    = 8 * mm  // paper past both ends of the part
	headEvery = 200 * mm
	headRoom  = 90 * mm // short, so that pages seldom tear it
)

// A batch is parts whose sticks are the same.
type batch struct {
	parts  []door.Part
	places []Place
	spans  []Span
}

// batches are the stiles, rails and muntins, those with the same marks
// together, but for parts that nothing but their ends is marked on.
func batches(l door.Leaf) (all []batch) {
	for _, p := range l.Parts {
		if p.Role != door.StileRole && p.Role != door.RailRole && p.Role != door.MuntinRole {
			continue
		}
		b := batch{[]door.Part{p}, Places(l, p), Spans(l, p)}
		if len(b.places) <= 2 {
			continue
		}
		same := slices.IndexFunc(all, func(o batch) bool {
			return o.parts[0].Role == p.Role && slices.EqualFunc(o.places, b.places, samePlace)
		})
		if same >= 0 {
			all[same].parts = append(all[same].parts, p)
		} else {
			all = append(all, b)
		}
	}
	return all
}

// samePlace leaves out which member meets the part there.
func samePlace(a, b Place) bool {
	bare := func(p Place) string {
		if head, tail, found := strings.Cut(p.What, " "); found && (p.Edge || p.Axis) && strings.HasPrefix(head, "M") {
			return tail
		}
		return p.What
	}
	return a.At == b.At && bare(a) == bare(b)
}

// labels names the parts of a batch: "SL, SR", or "M1 to M6" for many.
func (b batch) labels() string {
	if n := len(b.parts); n > 4 {
		return fmt.Sprintf("%s to %s (%d)", b.parts[0].Label, b.parts[n-1].Label, n)
	}
	var labels []string
	for _, p := range b.parts {
		labels = append(labels, p.Label)
	}
	return strings.Join(labels, ", ")
}

// word is the batch's kind of part.
func (b batch) word() string {
	if len(b.parts) == 1 {
		return b.parts[0].Name
	}
	return b.parts[0].Role.String() + "s"
}

// sticks draws a story stick for every batch.
func sticks(s door.Set) (sheets []sheet.Sheet) {
	for _, b := range batches(s.Leaf) {
		sheets = append(sheets, stick(s, b))
	}
	return sheets
}

// stick draws one: lines from the lower edge at their places, slanted where
// their lettering is dense, and above them a band with the members that meet
// the part.
func stick(s door.Set, b batch) sheet.Sheet {
	label, size := b.parts[0].Label, Size(b.parts[0])
	d := newDraft(s, "stick-"+label, "Story stick "+b.labels())
	var words []string
	for _, p := range b.places {
		words = append(words, lettering.Legible(p.What+"  "+d.style.Format(p.At)))
	}
	high := d.ticks(b.places, words, size)
	band := high + 2*mm
	head := band
	if len(b.spans) > 0 {
		d.band(b.spans, band)
		head += bandZone
	}
	d.heads(b, size, head)
	edge := plane.BoxOf(plane.At(-beyond, 0), plane.At(size+beyond, head+headZone))
	d.shift(beyond, 0)
	wide, tall := edge.Width().UpTo(mm), edge.Height().UpTo(mm)
	d.stroke(sheet.Border, sheet.Narrow, sheet.Continuous, plane.Rect(plane.Point{}, plane.At(wide, tall)))
	return sheet.Sheet{Name: d.name, Title: d.title, Width: wide, Height: tall, Scale: sheet.Scale{Paper: 1, Real: 1}, Marks: d.marks(),
		Description: fmt.Sprintf("A strip with every mark along %s, %s, at full size.", b.labels(), b.word())}
}

// ticks draws the lines and their lettering; it returns how high they reach.
func (d *draft) ticks(places []Place, words []string, size length.Length) (high length.Length) {
	letters := spread(places, size)
	for i, p := range places {
		weight, line := sheet.Narrow, sheet.Continuous
		if p.Edge {
			weight = sheet.Wide
		}
		if p.Axis {
			line = sheet.Centre
		}
		foot, knee, top := plane.At(p.At, 0), plane.At(p.At, tickZone), plane.At(letters[i], tickZone+fanZone)
		d.line(sheet.Outline, weight, line, foot, knee)
		d.line(sheet.Dimensions, sheet.Narrow, sheet.Continuous, knee, top)
		d.text(top.Add(noteHeight.Half(), mm), noteHeight, sheet.Start, true, words[i])
		high = max(high, tickZone+fanZone+mm+lettering.Advance(words[i], noteHeight))
	}
	return high
}

// spread are the places of the lettering along the stick: as near to their
// lines as may be, in their order, and wordPitch apart.
func spread(places []Place, size length.Length) []length.Length {
	type run struct {
		sum   length.Length // of where each would have the run begin
		count length.Length
	}
	var runs []run
	begin := func(r run) length.Length { return r.sum / r.count }
	for _, p := range places {
		r := run{p.At, 1}
		for len(runs) > 0 {
			before := runs[len(runs)-1]
			if begin(before)+before.count*wordPitch <= begin(r) {
				break
			}
			r = run{before.sum + r.sum - r.count*before.count*wordPitch, before.count + r.count}
			runs = runs[:len(runs)-1]
		}
		runs = append(runs, r)
	}
	var at []length.Length
	for _, r := range runs {
		for i := range r.count {
			at = append(at, begin(r)+i*wordPitch)
		}
	}
	return at
}

// band draws the members that meet the part, with their labels.
func (d *draft) band(spans []Span, y length.Length) {
	for i, s := range spans {
		if i > 0 && spans[i-1].From == s.From {
			continue // the other edge's
		}
		box := plane.BoxOf(plane.At(s.From, y), plane.At(s.To, y+bandZone-2*mm))
		d.area(sheet.Outline, plane.Region{box.Path()})
		label := s.Label
		if i+1 < len(spans) && spans[i+1].From == s.From {
			label += ", " + spans[i+1].Label
		}
		if lettering.Advance(label, noteHeight) < box.Width()-mm {
			d.text(plane.At(s.From+box.Width().Half(), y+(box.Height()-noteHeight).Half()), noteHeight, sheet.Middle, false, label)
		}
	}
}

// heads writes what the strip is, again and again along it: the part, and under
// it in turn the job and what a line stands for.
func (d *draft) heads(b batch, size, y length.Length) {
	way := "right end →"
	if b.parts[0].Grain == solid.Z {
		way = "upper end →"
	}
	part := fmt.Sprintf("%s, %s · %s long · %s", b.labels(), b.word(), d.figure(size), way)
	under := []string{revised(d.set), sizeRule}
	room := min(headRoom, size)
	if headEvery+2*mm+headRoom >= size { // no second time
		under, room = []string{revised(d.set) + " · " + sizeRule}, size
	}
	for i, x := 0, 2*mm; i == 0 || x+headRoom < size; i, x = i+1, x+headEvery {
		d.text(plane.At(x, y+6*mm), noteHeight, sheet.Start, false, fitted(part, room, noteHeight))
		d.text(plane.At(x, y+mm), noteHeight, sheet.Start, false, fitted(under[i%len(under)], room, noteHeight))
	}
}
