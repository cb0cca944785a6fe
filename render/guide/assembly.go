package guide

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
)

// assembly joins the frames and proves them.
func (w *writer) assembly() {
	w.chapter("Assembly")
	w.step(Step{Title: "Put each leaf together dry", Lines: []string{
		"On a flat bench, without glue: every shoulder must close by hand pressure.",
		fmt.Sprintf("Best faces to the room. Both stiles of a leaf with their crowns the same way: neighbouring leaves pass at %s, and a leaf that winds takes that away.", w.fig("track.face_gap")),
		"Where a rail is bowed in its length, its crown goes up, in every leaf alike.",
	}})
	w.step(Step{Title: "Join the frames", Lines: w.order(), Cautions: []string{solventCaution}})
	w.square()
}

// order is what is joined to what, and how it is drawn together.
func (w *writer) order() []string {
	j, captive := w.leaf.Joint, w.leaf.Rabbet.Kind == door.Groove
	var lines []string
	add := func(s string) { lines = append(lines, s) }
	if len(w.leaf.Muntins) > 0 {
		add("First the muntins between their rails, row by row from the bottom: they make a ladder that stays square on the bench.")
	}
	if captive {
		add("Panels go in as the frame closes: rails into one stile, panels into their grooves without glue, then the other stile.")
	} else {
		add("Then all rails into one stile, from the bottom up, then the other stile over their ends.")
	}
	glued := j.Kind != door.PocketScrew
	switch {
	case glued && captive:
		add("Glue only the joints, sparingly at the groove's side: a panel that is glued in splits or opens a joint.")
	case glued:
		add("Glue on all faces of the joint, a thin film; have clamps and blocks set before the glue is opened.")
	}
	switch j.Kind {
	case door.PocketScrew:
		add("Clamp the faces of rail and stile flush on the bench, front down, then drive the screws: middle rails first, then bottom and top. Glue in the joint helps, if it is wiped off at once.")
	case door.HalfLap, door.Bridle:
		add("Draw the shoulders home with a clamp along the rail, then press each crossing with a clamp and a block across its faces.")
	default:
		add("One clamp over each rail, alternately above and below the leaf, so that it stays flat; tighten in turns, and look along both stiles.")
	}
	return append(lines, "A stile that is bowed in its width is drawn straight from its middle rail outwards.")
}

// square is the check of every gap and both diagonals.
func (w *writer) square() {
	rows := [][]string{{"WHAT", "WIDE", "HIGH", "BOTH DIAGONALS"}}
	add := func(name string, wide, high length.Length) {
		row := []string{name, w.f(wide), w.f(high), w.f(diagonal(wide, high))}
		for _, r := range rows[1:] {
			if slices.Equal(r[1:], row[1:]) {
				return
			}
		}
		rows = append(rows, row)
	}
	add("leaf, outside", w.leaf.Width, w.leaf.Height)
	for _, lite := range w.leaf.Lites {
		name := fmt.Sprintf("lite, row %d", lite.Row+1)
		if w.leaf.Columns > 1 {
			name += fmt.Sprintf(", column %d", lite.Column+1)
		}
		add(name, lite.Sight.Width(), lite.Sight.Height())
	}
	w.fig("leaf.width")
	w.fig("leaf.height")
	var heights []string
	for _, lite := range w.leaf.Lites {
		if lite.Column == 0 {
			heights = append(heights, w.f(lite.Sight.Height()))
		}
	}
	lines := []string{
		fmt.Sprintf("Before the glue sets: the gaps between the rails, from the bottom up, are %s, at both stiles.", strings.Join(heights, ", ")),
		"Both diagonals of a rectangle w wide and h high are √(w² + h²). Measure both: they must be equal first, and then right. Push at the longer one. Sizes alike are in the table once.",
	}
	if rule, err := catalog.Rule("squareness"); err == nil {
		lines = append(lines, fmt.Sprintf("Outside they may differ by %s.", w.f(rule.Size)))
	}
	if rule, err := catalog.Rule("warp"); err == nil {
		lines = append(lines, fmt.Sprintf("Sight across both stiles with two straight sticks: the corners of a door lie within %s of one plane, and here they must also pass one another at %s.", w.f(rule.Size), w.fig("track.face_gap")))
	}
	w.step(Step{Title: "Check gaps and diagonals", Picture: "square", Lines: lines, Table: rows})
}
