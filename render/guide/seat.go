package guide

import (
	"fmt"

	"stilewright/model/door"
)

// seat mills what the panels lie in, and treats its corners.
func (w *writer) seat() {
	r := w.leaf.Rabbet
	switch {
	case r.Kind == door.Groove:
		w.chapter("Grooves, before assembly")
		w.groove()
		return
	case w.leaf.Corner.Tool > 0:
		w.chapter("Rabbets by the machine, before assembly")
		w.milled()
		return
	}
	w.chapter("Rabbets, in the joined frame")
	side, words := "back", "from the back"
	if r.Kind == door.FaceBead {
		side, words = "front", "from the front"
	}
	lines := append([]string{
		fmt.Sprintf("Rabbet %s, round every lite of %d leaves: %s wide, %s deep. Leaf flat on the bench, %s up, well supported below the rails.", words, len(w.set.Hung), w.fig("rabbet.width"), w.fig("rabbet.depth"), side),
		fmt.Sprintf("Cutter %s across with a bearing that leaves %s. In %d passes, the router's depth set to %s; all lites of all leaves at one depth before the next.", w.fig("rabbet.cutter"), w.f(r.Width), len(r.Passes), w.family("rabbet.pass")),
		fmt.Sprintf("%s of wood stay beyond the shoulder: measure it on a spare piece after the last pass.", w.fig(w.frontName())),
	}, w.speed(r.Cutter)...)
	lines = append(lines, "Inside a lite the router goes round clockwise as one looks down on it. A light last pass leaves the shoulder clean.")
	w.step(Step{Title: "Mill the rabbets in passes", Picture: "seat", Lines: lines, Table: w.passes(), Setups: w.passSetups("router, rabbets"), Cautions: []string{routerCaution, dustCaution}})
	w.corners()
}

// frontName is the figure of the wood that the rabbet leaves.
func (w *writer) frontName() string {
	if w.leaf.Rabbet.Kind == door.FaceBead {
		return "rabbet.back"
	}
	return "rabbet.front"
}

// passes are the router's depths, one a row.
func (w *writer) passes() [][]string {
	rows := [][]string{{"PASS", "DEPTH SET TO"}}
	for i, at := range w.leaf.Rabbet.Passes {
		rows = append(rows, []string{fmt.Sprint(i + 1), w.f(at)})
	}
	return rows
}

// passSetups are the same as setups.
func (w *writer) passSetups(machine string) []Setup {
	var all []Setup
	for i, at := range w.leaf.Rabbet.Passes {
		all = append(all, Setup{machine, w.f(at) + " deep", fmt.Sprintf("pass %d, every lite", i+1)})
	}
	return all
}

// groove is the groove that holds panels captive.
func (w *writer) groove() {
	r := w.leaf.Rabbet
	run := "In the stiles it stops with the lites; in rails and muntins it goes from end to end."
	if r.Through {
		run = "It goes from end to end of every part."
	}
	w.step(Step{Title: "Groove the parts", Picture: "seat", Lines: []string{
		fmt.Sprintf("A groove %s wide and %s deep in every edge that a lite comes to, %s behind the front face. The front face is against the fence each time.", w.fig("groove.width"), w.fig("groove.depth"), w.fig("groove.front")), run,
		fmt.Sprintf("In %d passes, set to %s. Try it with an offcut of the panel, which must slide without force.", len(r.Passes), w.family("rabbet.pass")),
	}, Table: w.passes(), Setups: w.passSetups("router or saw, grooves"), Cautions: []string{routerCaution, sawCaution, dustCaution}})
}

// milled is the rabbet with relieved corners that a machine cuts.
func (w *writer) milled() {
	c := w.leaf.Corner
	into := "through each corner"
	if c.Into != "" {
		into = "past each corner into the " + c.Into
	}
	w.step(Step{Title: "Mill the rabbets by machine", Picture: "corner", Lines: []string{
		fmt.Sprintf("The files in cnc/ have every rabbet, %s wide and %s deep, in parts that lie with their back up; %s of wood stay in front.", w.fig("rabbet.width"), w.fig("rabbet.depth"), w.fig("rabbet.front")),
		fmt.Sprintf("The tool, %s across, runs round %s (%s), so that square panels go in: nothing is left to chisel.", w.fig("corner.tool"), into, c.Kind),
		"Check the first part of each kind against its sheet before the others are cut.",
	}, Table: w.passes(), Setups: []Setup{{"CNC router", w.f(c.Tool) + " tool", "all parts"}}, Cautions: []string{machineCaution, dustCaution}})
}

// corners is what is done about the round inside corners.
func (w *writer) corners() {
	c, r := w.leaf.Corner, w.leaf.Rabbet
	n := 4 * len(w.leaf.Lites) * len(w.set.Hung)
	switch c.Kind {
	case door.Squared:
		w.step(Step{Title: "Chop the corners square", Picture: "corner", Lines: []string{
			fmt.Sprintf("%d corners. The cutter leaves a radius of %s: mark both walls through to the corner and chop to the marks, in slices, down to the shoulder.", n, w.f(r.Cutter.Half())),
			"Undercut by a hair's breadth, never the walls.",
		}, Cautions: []string{chiselCaution}})
	case door.Clipped:
		w.step(Step{Title: "Leave the corners round", Picture: "corner", Lines: []string{
			fmt.Sprintf("The cutter leaves a radius of %s in %d corners, and it stays: the panels' corners are clipped by %s to clear it (least %s).", w.fig("rabbet.corner"), n, w.fig("corner.clip"), w.f(c.Least)),
		}})
	case door.Rounded:
		w.step(Step{Title: "Leave the corners round", Picture: "corner", Lines: []string{
			fmt.Sprintf("The cutter leaves a radius of %s in %d corners, and it stays: the panels' corners are rounded to %s (least %s).", w.fig("rabbet.corner"), n, w.fig("corner.radius"), w.f(c.Least)),
		}})
	}
}
