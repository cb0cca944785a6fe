package shop

import (
	"fmt"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

// Covers are the sheets a shop can quote from: how the files are to be read,
// the layers, what is cut of each material, and a card for every file with its
// picture, sizes to check the import, cut length, pierces and layers. None for
// an empty job. It errs when the paper does not exist or no card fits on it.
func (j Job) Covers(s door.Set) ([]sheet.Sheet, error) {
	if len(j.Works) == 0 {
		return nil, nil
	}
	name := s.Paper
	if name == "" {
		name = "A3"
		if s.Units == length.Inches {
			name = "tabloid"
		}
	}
	paper, err := catalog.PaperSize(name)
	if err != nil {
		return nil, err
	}
	cards := j.notes(s)
	for i := range j.Works {
		cards = append(cards, j.card(i))
	}
	return deal(s, j.Options, paper, cards)
}

// A card is one block of a cover sheet: a title, lines of text, and maybe a
// picture at its left.
type card struct {
	title   string
	file    string // its name, on lines of its own across the card
	lines   []string
	picture *machining.Setup
}

// notes are the cards of text.
func (j Job) notes(s door.Set) []card {
	o := j.Options
	unit := "millimetres"
	if o.Unit == length.Inches {
		unit = "inches"
	}
	files := []string{
		fmt.Sprintf("%d files, DXF %s, in %s, at full size. Check sizes after the import: they stand on each card.", len(j.Works), o.Release, unit),
		"0,0 is the lower left corner of the piece as it lies. Only pockets that run past its left or lower edge go below.",
		"Turned over: the piece lies with that face up; the file shows it so on purpose. The label in strokes must read right.",
		"Closed polylines and circles, outlines counter-clockwise, holes clockwise.",
		j.kerfWords(), j.arcWords(), reliefWords(o),
	}
	return []card{{title: "How to read the files", lines: files}, {title: "Layers", lines: j.legend()}, {title: "What is cut", lines: j.totals()}, {title: "Tolerances", lines: j.tolerances(s)}}
}

func (j Job) kerfWords() string {
	if j.Options.Kerf > 0 {
		return fmt.Sprintf("Lines of panels are moved for a kerf of %s: outlines grow and holes shrink by half of it. Do not compensate again.", j.Options.figure(j.Options.Kerf))
	}
	return "Lines have the finished sizes: no kerf and no tool radius is added."
}

func (j Job) arcWords() string {
	if j.Options.Segments > 0 {
		return fmt.Sprintf("Arcs are straight segments that stray no further than %s.", j.Options.figure(j.Options.Segments))
	}
	return "Arcs are true arcs, written as bulges of polylines."
}

func reliefWords(o Options) string {
	tool := o.figure(o.Profile.Tool.Diameter)
	switch o.Profile.Tool.Relief {
	case machining.TBone:
		return "Inside corners are relieved by T-bones for a tool of " + tool + "."
	case machining.NoRelief:
		return "Sharp inside corners stay as drawn: the tool of " + tool + " leaves them round."
	}
	return "Inside corners sharper than the tool are relieved by dogbones for a tool of " + tool + "."
}

// legend explains the layer names of this job.
func (j Job) legend() []string {
	names := j.Options.Names
	example := names.Layer(machining.Pocket, j.depthShown(), machining.Back, j.Options.Unit)
	lines := []string{"Operation, depth from the face that lies up, face: " + example + "."}
	for _, o := range machining.Operations() {
		lines = append(lines, names[o]+": "+o.Meaning()+".")
	}
	return append(lines, "Pockets run past edges they open to by "+j.Options.figure(j.Options.Profile.Tool.Run())+".")
}

// depthShown is the depth of some pocket of the job, to explain a name by.
func (j Job) depthShown() length.Length {
	for _, w := range j.Works {
		for _, c := range w.Setup.Contours {
			if c.Operation == machining.Pocket {
				return c.Depth
			}
		}
	}
	return 10 * mm
}

// totals sum up, by material and thickness, what single parts take.
func (j Job) totals() []string {
	type stock struct {
		material  string
		thickness length.Length
	}
	var order []stock
	pieces, cuts, pierces := map[stock]int{}, map[stock]float64{}, map[stock]int{}
	last, ordered := map[stock]string{}, map[stock]bool{}
	for _, w := range j.Works {
		if w.Part.Instead {
			continue
		}
		k := stock{w.Part.Material, w.Part.Thickness}
		ordered[k] = ordered[k] || w.Part.Order
		if last[k] == "" {
			order = append(order, k)
		}
		if last[k] != w.Part.Labels[0] {
			pieces[k] += w.Part.Quantity
			last[k] = w.Part.Labels[0]
		}
		cuts[k] += float64(w.Part.Quantity) * w.Setup.CutLength()
		pierces[k] += w.Part.Quantity * w.Setup.Pierces()
	}
	var lines []string
	for _, k := range order {
		if ordered[k] {
			lines = append(lines, fmt.Sprintf("%s, %s thick: pieces %d, ordered to size: their files are order drawings, nothing is cut here.", k.material, j.Options.figure(k.thickness), pieces[k]))
			continue
		}
		lines = append(lines, fmt.Sprintf("%s, %s thick: pieces %d, cuts %s, pierces %d.", k.material, j.Options.figure(k.thickness), pieces[k], j.Options.measure(cuts[k]), pierces[k]))
	}
	return append(lines, "Of single parts; the assembled leaf and nested sheets are instead of some of them.")
}

// tolerances are what holds unless something else is agreed: what a machine
// keeps easily, and leaves the edge gap of a panel room.
func (j Job) tolerances(s door.Set) []string {
	var longest length.Length
	for _, w := range j.Works {
		if !w.Part.Instead {
			longest = max(longest, w.Setup.Width, w.Setup.Height)
		}
	}
	lines := []string{"ISO 2768-1 class m, unless agreed otherwise."}
	if span, found := catalog.LinearToleranceFor(longest); found {
		lines[0] = fmt.Sprintf("ISO 2768-1 class m, unless agreed otherwise: for the longest part, %s, that is ± %s.", j.Options.figure(longest), j.Options.measure(span.Medium.MM()))
	}
	if gap := s.Leaf.Panel.EdgeGap; gap > 0 {
		lines = append(lines, fmt.Sprintf("Panels have an edge gap of %s on every side in the frame: rather small than large.", j.Options.figure(gap)))
	}
	return append(lines, "Panels: front face up; leave film on.")
}

// card is the card of a file.
func (j Job) card(i int) card {
	w, o := j.Works[i], j.Options
	s, box := w.Setup, bounds(w.Cutting)
	face := "from " + s.Face.Words()
	if s.Face.Turned() {
		face += ", turned over"
	}
	lines := []string{
		fmt.Sprintf("%s, %s thick, quantity %d", w.Part.Material, o.figure(w.Part.Thickness), w.Part.Quantity),
		"labels " + strings.Join(w.Part.Labels, ", "),
		fmt.Sprintf("piece %s × %s", o.figure(s.Width), o.figure(s.Height)),
		fmt.Sprintf("lines from %s, %s to %s, %s", o.figure(box.Min.X), o.figure(box.Min.Y), o.figure(box.Max.X), o.figure(box.Max.Y)),
	}
	if !w.Part.Order {
		lines = append(lines, fmt.Sprintf("cuts %s, pierces %d", o.measure(s.CutLength()), s.Pierces()))
	}
	var layers []string
	for _, l := range w.Cutting.Layers {
		layers = append(layers, l.Name)
	}
	lines = append(lines, "layers "+strings.Join(layers, ", "))
	for _, note := range w.Part.Notes {
		lines = append(lines, "note: "+note)
	}
	for _, out := range w.LeftOut {
		lines = append(lines, "not in a file: "+out)
	}
	return card{title: fmt.Sprintf("%d  %s, %s", i+1, w.Part.title(), face), file: w.Name + ".dxf", lines: lines, picture: &s}
}

// shown tells whether a contour is drawn in a picture, and how.
func shown(c machining.Contour) (sheet.Stroke, bool) {
	switch c.Operation {
	case machining.Blank:
		return sheet.Stroke{Layer: sheet.HiddenEdge, Line: sheet.Phantom}, true
	case machining.Cut, machining.Hole:
		return sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Wide}, true
	case machining.Pocket, machining.Bore:
		return sheet.Stroke{Layer: sheet.Hardware}, true
	}
	return sheet.Stroke{}, false
}

// extent is the box round all that a picture shows.
func extent(s machining.Setup) plane.Box {
	box := plane.Box{Max: plane.At(s.Width, s.Height)}
	for _, c := range s.Contours {
		box = box.Join(c.Path.Bounds())
	}
	return box
}
