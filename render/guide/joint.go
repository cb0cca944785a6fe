package guide

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
)

// joints sets up and cuts the joints, each kind once.
func (w *writer) joints() {
	w.chapter("Joints")
	j := w.leaf.Joint
	for i, kind := range []string{j.Kind, j.Muntin} {
		if kind == "" || i > 0 && kind == j.Kind {
			continue
		}
		who := "rails"
		switch {
		case j.Kind == j.Muntin:
			who = "rails and muntins"
		case kind == j.Muntin:
			who = "muntins"
		}
		switch kind {
		case door.PocketScrew:
			w.pocket(who)
		case door.DowelJoint:
			w.dowel(who)
		case door.LooseTenon:
			w.loose(who)
		case door.MortiseAndTenon:
			w.tenon(who)
		case door.HalfLap:
			w.lap(who)
		case door.Bridle:
			w.bridle(who)
		}
	}
}

// places are the rows of holes at the ends of rails and muntins, members with
// the same holes in one row.
func (w *writer) places(word string) [][]string {
	rows := [][]string{{"AT EACH END OF", "FROM ITS LOWER OR LEFT EDGE"}}
	add := func(label, name string) {
		if len(w.numbered(name)) == 0 {
			return
		}
		at := w.family(name)
		if last := rows[len(rows)-1]; len(rows) > 1 && last[1] == at {
			last[0] += ", " + label
			return
		}
		rows = append(rows, []string{label, at})
	}
	for _, rail := range w.leaf.Rails {
		add(rail.Label, word+"."+rail.Label)
	}
	add("every muntin", word+".muntin")
	return rows
}

// pocket is the pocket holes.
func (w *writer) pocket(who string) {
	p := w.leaf.Joint.Pocket
	w.step(Step{Title: "Pocket holes in the " + who, Picture: "joint-" + door.PocketScrew, Table: w.places("pocket"), Lines: []string{
		fmt.Sprintf("%d holes in all, in the backs of the %s. Set the jig to %g°; set the stepped bit's collar so that the pocket's flat floor lies %s from the member's end, along the screw.", p.Holes*len(w.set.Hung), who, p.Angle, w.fig("pocket.shoulder")),
		fmt.Sprintf("Bit %s across. A %s screw then goes %s into the other part; prove it on a spare piece: the tip must stay inside the wood.", w.fig("pocket.diameter"), w.fig("pocket.screw"), w.fig("pocket.bite")),
		"Clear the chips from each hole, and the burr from the end: it would hold the joint open.",
	}, Setups: []Setup{{"pocket jig", fmt.Sprintf("%g°, floor of the pocket %s from the end", p.Angle, w.f(p.Shoulder)), fmt.Sprintf("%d holes in the %s", p.Holes*len(w.set.Hung), who)}},
		Cautions: []string{drillCaution}})
}

// dowel is the dowel holes.
func (w *writer) dowel(who string) {
	d := w.leaf.Joint.Dowel
	n := d.Count * len(w.set.Hung)
	w.step(Step{Title: "Dowel holes for the " + who, Picture: "joint-" + door.DowelJoint, Table: w.places("dowel"), Lines: []string{
		fmt.Sprintf("%d dowels in all, %s thick and %s long. Holes %s deep in both parts, so that glue and air have room below the dowel.", n, w.fig("dowel.diameter"), w.fig("dowel.length"), w.fig("dowel.hole")),
		fmt.Sprintf("Set the jig %s from the front face, and always lay it against that face: then the fronts come flush.", w.fig("dowel.front")),
		"Mark the holes of both parts together, the member held against its place by the story stick. Chamfer the holes and the dowels' ends.",
	}, Setups: []Setup{{"dowel jig", fmt.Sprintf("%s bit, %s from the front, %s deep", w.f(d.Diameter), w.fig("dowel.front"), w.f(d.Hole)), fmt.Sprintf("%d holes", 2*n)}},
		Cautions: []string{drillCaution}})
}

// loose is the mortises of loose tenons.
func (w *writer) loose(who string) {
	t := w.leaf.Joint.Tenon
	n := t.Count * len(w.set.Hung)
	lines := []string{
		fmt.Sprintf("%d loose tenons in all, %s thick, and a mortise for each in both parts, %s from the front face.", n, w.fig("tenon.thickness"), w.fig("tenon.front")),
		fmt.Sprintf("A tenon goes %s into each part; mortises are %s deep, so that glue has room.", w.fig("tenon.length"), w.fig("tenon.mortise")),
		"Rout with the fence against the front face, in passes, from the marks of the story stick. The mortises' ends stay round, and the tenons' edges are rounded to them.",
	}
	if w.has("tenon.muntin.length") {
		lines = append(lines, fmt.Sprintf("Those of the muntins are %s wide, %s into each part, in mortises %s deep.", w.fig("tenon.muntin.width"), w.fig("tenon.muntin.length"), w.fig("tenon.muntin.mortise")))
	}
	w.step(Step{Title: "Mortises for loose tenons, " + who, Picture: "joint-" + door.LooseTenon, Table: w.tenonRows(), Lines: append(lines, w.speed(t.Thickness)...),
		Setups:   []Setup{{"router, mortises", fmt.Sprintf("%s cutter, %s from the front, %s deep", w.f(t.Thickness), w.f(t.Front), w.f(t.Mortise)), fmt.Sprintf("%d mortises", 2*n)}},
		Cautions: []string{routerCaution, dustCaution}})
}

// tenonRows list the tenons' widths by rail.
func (w *writer) tenonRows() [][]string {
	rows := [][]string{{"RAIL", "TENON WIDE"}}
	for _, rail := range w.leaf.Rails {
		if name := "tenon." + rail.Label + ".width"; w.has(name) {
			rows = append(rows, []string{rail.Label, w.fig(name)})
		}
	}
	if len(rows) == 1 && w.has("tenon.width") {
		rows = append(rows, []string{"every rail", w.fig("tenon.width")})
	}
	if len(rows) == 1 {
		return nil
	}
	return rows
}

// tenon is mortises, then tenons to fit them.
func (w *writer) tenon(who string) {
	t := w.leaf.Joint.Tenon
	depth := fmt.Sprintf("They are %s deep, a little deeper than the tenon is long.", w.f(t.Mortise))
	if w.has("tenon.mortise") && !t.Through {
		depth = fmt.Sprintf("They are %s deep, a little deeper than the tenon is long.", w.fig("tenon.mortise"))
	}
	if t.Through {
		depth = "They go right through: cut from both edges towards the middle."
	}
	w.step(Step{Title: "Mortises for the " + who, Picture: "joint-" + door.MortiseAndTenon, Lines: []string{
		fmt.Sprintf("Mortises first, tenons to fit them. %s wide, %s from the front face.", w.fig("tenon.thickness"), w.fig("tenon.front")), depth,
		"Mark them from the story stick with a gauge set once, its stock against the front face.",
	}, Setups: []Setup{{"mortiser", fmt.Sprintf("%s wide, %s from the front, %s deep", w.f(t.Thickness), w.f(t.Front), w.f(t.Mortise)), "mortises of the " + who}},
		Cautions: []string{drillCaution, chiselCaution}})
	lines := []string{fmt.Sprintf("Tenons %s thick and %s long, the shoulders of both faces in one line. Saw the shoulders with one stop, then the cheeks; a tenon goes in by hand, without a hammer.", w.fig("tenon.thickness"), w.fig("tenon.length"))}
	if w.has("tenon.edge") {
		lines = append(lines, fmt.Sprintf("Bottom and top rail have a shoulder of %s at their outer edge.", w.fig("tenon.edge")))
	}
	if w.has("tenon.haunch") {
		lines = append(lines, fmt.Sprintf("There the haunch, %s long, stays and fills the groove to the stile's end.", w.fig("tenon.haunch")))
	}
	if w.has("tenon.muntin.length") {
		lines = append(lines, fmt.Sprintf("Tenons of the muntins: %s long, %s wide.", w.fig("tenon.muntin.length"), w.fig("tenon.muntin.width")))
	}
	w.step(Step{Title: "Tenons of the " + who, Picture: "joint-" + door.MortiseAndTenon + "-face", Table: w.tenonRows(), Lines: lines,
		Setups:   []Setup{{"saw, stop for shoulders", w.f(t.Length), "tenons of the " + who}},
		Cautions: []string{sawCaution}})
}

// lap is the half-laps.
func (w *writer) lap(who string) {
	l := w.leaf.Joint.Lap
	front, back := w.f(l.Front), w.f(w.leaf.Thickness-l.Front)
	if w.has("lap.front") {
		front = w.fig("lap.front")
	}
	w.step(Step{Title: "Half-laps of the " + who, Picture: "joint-" + door.HalfLap, Lines: []string{
		fmt.Sprintf("Where two parts cross, the stile keeps %s in front, and the rail %s behind it.", front, back),
		"Saw the shoulders to the marks of the story stick, the width taken from the other part itself; clear the waste between them.",
		"Prove both depths on spare pieces laid together: the faces must come flush before any part is cut.",
	}, Setups: []Setup{{"saw or router, laps of the stiles", back + " deep, from the back", "stiles"}, {"saw or router, laps of the rails", front + " deep, from the front", who}},
		Cautions: []string{sawCaution, routerCaution, dustCaution}})
}

// bridle is the bridle joints.
func (w *writer) bridle(who string) {
	l := w.leaf.Joint.Lap
	thick := w.f(l.To - l.From)
	w.step(Step{Title: "Bridle joints of the " + who, Picture: "joint-" + door.Bridle, Lines: []string{
		fmt.Sprintf("The tenon is %s thick and lies from %s to %s behind the front face; what takes it is open at its end.", thick, w.f(l.From), w.f(l.To)),
		"At a cross rail the rail is the fork and the stile the web.",
		"Cut the open mortises first, then the tenons to fit; the front face is against the fence each time.",
	}, Setups: []Setup{{"saw, cheeks", fmt.Sprintf("%s and %s from the front face", w.f(l.From), w.f(l.To)), "joints of the " + who}},
		Cautions: []string{sawCaution}})
}

// speed tells how fast a cutter of that diameter may turn.
func (w *writer) speed(diameter length.Length) []string {
	row, err := catalog.RouterSpeedFor(diameter)
	if err != nil {
		return []string{"No speed is tabled for this cutter: take the one marked on it."}
	}
	return []string{fmt.Sprintf("A cutter %s across turns at most %.0f times a minute; the speed marked on it governs.", w.f(diameter), row.RPM)}
}
