package guide

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/door"
)

// panels cuts the panels and lays their film.
func (w *writer) panels() {
	w.chapter("Panels")
	if w.used(w.leaf.Panel) {
		w.cutPanels(w.leaf.Panel, "panel")
	}
	if p := w.leaf.SolidPanel; p != nil && w.used(*p) {
		w.cutPanels(*p, "solid")
	}
	w.film()
	if w.leaf.Rabbet.Kind == door.Groove {
		w.step(Step{Title: "Finish the panels first", Lines: []string{"Where panels are finished, do it now, edges and all, before the frame closes round them: else a bare line shows when they shrink."}, Cautions: []string{solventCaution}})
	}
}

// used tells whether a lite has that sheet.
func (w *writer) used(p door.Panel) bool {
	return slices.ContainsFunc(w.leaf.Lites, func(l door.Lite) bool {
		return w.leaf.PanelOf(l).Material.Name == p.Material.Name && w.leaf.PanelOf(l).Thickness == p.Thickness
	})
}

// panelRows are the panels of one sheet by size.
func (w *writer) panelRows(p door.Panel) [][]string {
	rows := [][]string{{"WIDE", "HIGH", "PIECES", "LITES"}}
	n := map[string]int{}
	for _, lite := range w.leaf.Lites {
		of := w.leaf.PanelOf(lite)
		if of.Material.Name != p.Material.Name || of.Thickness != p.Thickness {
			continue
		}
		box := lite.Panel.Bounds()
		wide, high := w.f(box.Width()), w.f(box.Height())
		place := fmt.Sprintf("row %d", lite.Row+1)
		n[wide+high] += len(w.set.Hung)
		i := slices.IndexFunc(rows, func(r []string) bool { return r[0] == wide && r[1] == high })
		if i < 0 {
			rows = append(rows, []string{wide, high, "", place})
			continue
		}
		if !strings.HasSuffix(rows[i][3], place) {
			rows[i][3] += ", " + place
		}
	}
	for _, r := range rows[1:] {
		r[2] = fmt.Sprint(n[r[0]+r[1]])
	}
	return rows
}

// cutPanels cuts one sheet; its figures begin with that word.
func (w *writer) cutPanels(p door.Panel, word string) {
	m := p.Material
	corner := map[string]string{
		door.Clipped: "clip every corner by " + w.f(w.leaf.Corner.Leg) + ": mark it, saw or grind it, break the edge",
		door.Rounded: "round every corner to a radius of " + w.f(w.leaf.Corner.Radius) + ", along a template",
	}[w.leaf.Corner.Kind]
	if corner == "" {
		corner = "the corners stay square; break their edges"
	}
	switch {
	case w.leaf.Corner.Leg > 0 && w.has("corner.clip"):
		w.fig("corner.clip")
	case w.leaf.Corner.Radius > 0 && w.has("corner.radius"):
		w.fig("corner.radius")
	}
	lines := []string{fmt.Sprintf("%s, %s thick. Before cutting, measure two seats: each panel is smaller than its seat by %s at every edge, and lies %s on the shoulder.", capital(m.Name), w.fig(word+".thickness"), w.fig(word+".edge_gap"), w.fig(word+".bite"))}
	caution, setup := []string{sawCaution, dustCaution}, []Setup{{"saw, sheets", "one stop for each size", fmt.Sprintf("%s panels", m.Name)}}
	switch {
	case tempered(m):
		lines = append(lines, "It is ordered to size, with its corners: tempered glass cannot be cut, drilled or ground afterwards. For the corners, "+corner+".")
		caution, setup = []string{glassCaution}, nil
	case glass(m):
		lines = append(lines, "Have it cut, or score and break it on a flat bench, and seam the edges. For the corners, "+corner+".")
		caution, setup = []string{glassCaution}, nil
	case m.Plastic:
		lines = append(lines, "Leave the protective film on. A fine blade for plastics, the sheet held flat close to the cut; "+corner+".")
		caution = []string{plasticCaution, sawCaution}
	default:
		lines = append(lines, "Good face up on a table saw, down under a hand-held circular saw, so that the teeth enter through it; "+corner+".")
	}
	w.step(Step{Title: "Cut the panels of " + m.Name, Lines: lines, Table: w.panelRows(p), Setups: setup, Cautions: caution})
}

// glass tells whether a sheet is glass.
func glass(m catalog.SheetMaterial) bool {
	return strings.Contains(m.Name, "glass") || m.Name == "mirror"
}

// tempered tells whether it can only be ordered to size.
func tempered(m catalog.SheetMaterial) bool { return strings.Contains(m.Name, "tempered") }

// capital is a word with a capital letter.
func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// film is laid on the panels.
func (w *writer) film() {
	side := w.leaf.Panel.Film
	f := w.model.Stock.Film
	if side == "" && f == nil {
		return
	}
	if side == "" {
		side = f.Side
	}
	if side == "" {
		side = "front"
	}
	lines := []string{
		fmt.Sprintf("On the %s of each panel. Clean the sheet, wet it with a drop of soap in water if the film's maker allows it, lay the film from one edge, and press the water out from the middle.", side),
		"Trim it on the panel with a new blade, and let it dry before the panel goes in.",
	}
	if f != nil && f.Margin != nil {
		lines = append(lines, fmt.Sprintf("Cut it %s larger at every edge.", w.f(*f.Margin)))
	}
	w.step(Step{Title: "Lay the film", Lines: lines, Cautions: []string{"Knife: a new blade, the hand behind it, the cut away from the body."}})
}

// holders put the panels in and hold them.
func (w *writer) holders() {
	into, caution := "Leaf face down on blankets; the panels go in from the back", []string(nil)
	if w.leaf.Rabbet.Kind == door.FaceBead {
		into = "Leaf on its back on blankets; the panels go in from the front"
	}
	if glass(w.leaf.Panel.Material) {
		caution = append(caution, glassCaution)
	}
	set := fmt.Sprintf("%s, centred, with %s free all round: setting blocks of that thickness below, and a strip of card at the other edges.", into, w.fig("panel.edge_gap"))
	switch w.leaf.HeldBy {
	case "edge-washer":
		w.washers(set, caution)
	case "stop", "bead":
		w.strips(set, caution)
	case "sealant":
		w.step(Step{Title: "Bed the panels in sealant", Picture: "seat", Lines: []string{set,
			fmt.Sprintf("A bed %s thick between shoulder and panel, of a sealant that its maker allows for %s: spacers of that thickness, a bead without gaps, the panel pressed onto the spacers. It alone holds the panel.", w.fig("sealant.bed"), w.leaf.Panel.Material.Name),
			"The leaf stays flat until the sealant has cured as its maker says; then trim what came out.",
		}, Cautions: append(caution, solventCaution)})
	}
}

// washers are the edge washers.
func (w *writer) washers(set string, caution []string) {
	a := w.leaf.Washer
	press := "they touch it, without pressing"
	if a.Press > 0 {
		press = "they bear " + w.fig("washer.press") + " into it"
	}
	w.step(Step{Title: "Hold the panels with edge washers", Picture: "seat", Lines: []string{set,
		fmt.Sprintf("%d washers %s across and %s thick, on No. %d screws %s long, into the holes in the seats' walls. Their rims lap %s over the panel's back: %s.", w.count(door.WasherRole), w.fig("washer.outside"), w.fig("washer.thickness"), a.Screw.Gauge, w.fig("washer.screw.length"), w.fig("washer.lap"), press),
		"By hand, the last turns evenly; the panel must still be movable by the edge gap.",
	}, Cautions: caution})
}

// strips are stops or beads.
func (w *writer) strips(set string, caution []string) {
	word, s := w.leaf.HeldBy, w.leaf.Strip
	n := w.count(door.StopRole) + w.count(door.BeadRole)
	fix := fmt.Sprintf("Pins %s long", w.f(s.Length))
	if w.has(word + ".pin") {
		fix = fmt.Sprintf("Pins %s long", w.fig(word+".pin"))
	}
	if s.Fix == "screws" {
		fix = fmt.Sprintf("No. %d screws %s long, in holes drilled %s", s.Screw.Gauge, w.f(s.Length), w.f(w.pilot(s.Screw)))
		if w.has(word + ".screw") {
			w.fig(word + ".screw")
		}
	}
	lines := []string{
		fmt.Sprintf("Rip the strips %s wide and %s deep; mitre them one lite at a time, long point to long point, the two short ones first. %d in all.", w.f(s.Width), w.f(s.Depth), n),
	}
	for _, name := range []string{word + ".width", word + ".depth"} {
		if w.has(name) {
			w.fig(name)
		}
	}
	w.step(Step{Title: "Cut the " + word + "s", Lines: lines,
		Setups:   []Setup{{"saw, fence", w.f(s.Width) + " by " + w.f(s.Depth), word + "s"}, {"saw, mitres", "45°", fmt.Sprintf("%d %ss", n, word)}},
		Cautions: []string{sawCaution}})
	lines = []string{set, fmt.Sprintf("%s, slanting into the wall, never towards the panel. From each corner of a lite the first is %s along a stile and %s along a rail, the others at most %s apart.", fix, w.fig(word+".corner.stile"), w.fig(word+".corner.rail"), w.fig(word+".spacing"))}
	if s.Fix == "screws" {
		lines[1] = fmt.Sprintf("%s. From each corner of a lite the first is %s along a stile and %s along a rail, the others at most %s apart.", fix, w.fig(word+".corner.stile"), w.fig(word+".corner.rail"), w.fig(word+".spacing"))
	}
	w.step(Step{Title: "Hold the panels with " + word + "s", Picture: "seat", Lines: append(lines, "The "+word+" bears on the panel lightly: a strip of card between them while it is fixed."), Cautions: caution})
}
