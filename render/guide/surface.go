package guide

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
)

// boring is what else is cut into the wood before it is finished.
func (w *writer) boring() {
	w.chapter("Before the finish")
	if w.leaf.HeldBy == "edge-washer" {
		w.washerHoles()
	}
	w.hangerHoles()
	w.pulls()
	w.guideGroove()
	w.plugs()
	w.step(Step{Title: "Fill and sand", Lines: []string{
		"Fill screw heads, dents and open grain at the joints; let the filler harden, then sand with the grain, joints level first, in two or three grits.",
		"Do not round the shoulders that the panels lie on.",
	}, Cautions: []string{dustCaution, solventCaution}})
	w.edges()
}

// pilot is the drill for a screw in the frame's wood.
func (w *writer) pilot(screw catalog.WoodScrew) length.Length {
	if w.set.Stock.Species.Class == catalog.Hardwood {
		return screw.Hard
	}
	return screw.Soft
}

// washerHoles are the pilot holes of the edge washers.
func (w *writer) washerHoles() {
	a := w.leaf.Washer
	depth := a.Length - a.Thickness
	n := w.count(door.WasherRole)
	lines := []string{
		fmt.Sprintf("%d holes in the walls of the seats, their middles %s from the frame's front face, %s across and %s deep: a collar on the bit, a block as fence against the shoulder.", n, w.fig("washer.depth"), w.f(w.pilot(a.Screw)), w.f(depth)),
		fmt.Sprintf("From each corner of a lite the first is %s along a stile, and %s along a rail; the others stand evenly between, at most %s apart.", w.fig("washer.corner.stile"), w.fig("washer.corner.rail"), w.fig("washer.spacing")),
	}
	if w.has("washer.corner.muntin") {
		lines = append(lines, fmt.Sprintf("Along a muntin the first is %s from the corner.", w.fig("washer.corner.muntin")))
	}
	if w.has("washer.solid_depth") {
		lines = append(lines, fmt.Sprintf("Behind the thicker panels the middles are %s from the front face.", w.fig("washer.solid_depth")))
	}
	if a.Stagger {
		lines = append(lines, "On the two sides of a narrow member they stand between one another, so that their screws do not meet: follow the drawing of the leaf's back.")
	}
	w.step(Step{Title: "Pilot holes for the edge washers", Lines: lines, Table: w.washerRows(),
		Setups:   []Setup{{"drill, washers", fmt.Sprintf("%s bit, %s from the front, %s deep", w.f(w.pilot(a.Screw)), w.f(a.Depth), w.f(depth)), fmt.Sprintf("%d holes", n)}},
		Cautions: []string{drillCaution}})
}

// washerRows are the places of the washers, equal edges together.
func (w *writer) washerRows() [][]string {
	rows := [][]string{{"LITE", "EDGE", "MIDDLES, FROM THE LEAF'S LEFT OR BOTTOM"}}
	for _, lite := range w.leaf.Lites {
		name := fmt.Sprintf("row %d", lite.Row+1)
		if w.leaf.Columns > 1 {
			name += fmt.Sprintf(", column %d", lite.Column+1)
		}
		for _, pair := range [][2]door.Side{{door.Bottom, door.Top}, {door.Left, door.Right}} {
			one, other := w.list(lite.Washers[pair[0]]), w.list(lite.Washers[pair[1]])
			if one == other {
				rows = append(rows, []string{name, pair[0].String() + ", " + pair[1].String(), one})
				continue
			}
			rows = append(rows, []string{name, pair[0].String(), one}, []string{name, pair[1].String(), other})
		}
	}
	return rows
}

// count is how many pieces of hardware of a role the set takes.
func (w *writer) count(role door.Role) int {
	n := 0
	for _, part := range w.leaf.Hardware {
		if part.Role == role {
			n++
		}
	}
	return n * len(w.set.Hung)
}

// hangerHoles are the bores in the leaf's top.
func (w *writer) hangerHoles() {
	h, n := w.leaf.Hanger, 0
	for _, c := range w.leaf.Screws {
		if c.For == "hanger" {
			n++
		}
	}
	if n == 0 {
		return
	}
	at := w.set.Track.HangerAt
	lines := []string{fmt.Sprintf("In the leaf's top, in the middle of its thickness: hangers stand with their middles %s and %s from the leaf's left. %d bores in all, %s across, for No. %d screws %s long.", w.f(at[0]), w.f(at[1]), n*len(w.set.Hung), w.fig("hanger.pilot"), h.Screw.Gauge, w.fig("hanger.screw.length"))}
	w.fig("hanger.inset")
	if h.Apart > 0 {
		lines = append(lines, fmt.Sprintf("Each hanger has two screws, %s apart along the top. Hold the hanger in hand to the marks before boring.", w.fig("hanger.apart")))
	}
	w.step(Step{Title: "Bores for the hangers", Lines: lines,
		Setups:   []Setup{{"drill, hangers", fmt.Sprintf("%s bit, %s deep", w.f(h.Pilot), w.f(h.Length)), fmt.Sprintf("%d bores", n*len(w.set.Hung))}},
		Cautions: []string{drillCaution}})
}

// pulls are the mortises of flush pulls.
func (w *writer) pulls() {
	if len(w.leaf.Pulls) == 0 {
		return
	}
	p := w.leaf.Pulls[0]
	size := fmt.Sprintf("%s wide and %s high, corners of radius %s", w.fig("pull.width"), w.f(p.Height), w.f(p.Radius))
	if p.Round {
		size = w.fig("pull.width") + " across"
	}
	rows := [][]string{{"PART", "FACE", "FROM THE LEAF'S LEFT", "FROM ITS BOTTOM"}}
	for _, pull := range w.leaf.Pulls {
		face := "front"
		if pull.Back {
			face = "back"
		}
		rows = append(rows, []string{pull.Label, face, w.f(pull.Centre.X), w.f(pull.Centre.Y)})
	}
	w.step(Step{Title: "Mortises for the flush pulls", Picture: "pull", Table: rows, Lines: []string{
		fmt.Sprintf("%d in all, %s, %s deep: rout along a template, the middle at the places below.", len(w.leaf.Pulls)*len(w.set.Hung), size, w.fig("pull.depth")),
		"Try the pull itself in a spare piece first.",
	}, Setups: []Setup{{"router, template", w.f(p.Depth) + " deep", "flush pulls"}}, Cautions: []string{routerCaution}})
}

// guideGroove is the groove along the leaf's bottom.
func (w *writer) guideGroove() {
	g := w.leaf.Guide
	if g == nil {
		return
	}
	w.step(Step{Title: "Groove for the floor guide", Picture: "floor", Lines: append([]string{
		fmt.Sprintf("Along each leaf's bottom, from side to side, %s wide and %s deep, %s behind the front face; in two passes or more.", w.fig("guide.width"), w.fig("guide.depth"), w.fig("guide.front")),
	}, w.speed(g.Width)...), Setups: []Setup{{"router, fence", fmt.Sprintf("%s cutter, %s from the front, %s deep", w.f(g.Width), w.f(g.Front), w.f(g.Depth)), "bottoms of the leaves"}},
		Cautions: []string{routerCaution, dustCaution}})
}

// plugs fill pocket holes.
func (w *writer) plugs() {
	p := w.leaf.Joint.Pocket
	if !p.Plugs || p.Holes == 0 {
		return
	}
	w.step(Step{Title: "Plug the pockets", Lines: []string{
		fmt.Sprintf("%d plugs, at least %s long, grain along the member. Glue them in, let them dry, and plane them flush with the back.", p.Holes*len(w.set.Hung), w.fig("pocket.plug")),
	}, Cautions: []string{chiselCaution}})
}

// edges are the rounded and chamfered edges.
func (w *writer) edges() {
	var lines []string
	var setups []Setup
	for _, e := range w.leaf.Edges {
		face, where, how := "front", "the stiles' outer edges", "chamfer"
		if e.Back {
			face = "back"
		}
		if e.Sight {
			where = "the edges round every lite"
		}
		if e.Round {
			how = "roundover"
		}
		line := fmt.Sprintf("On the %s, %s: a %s of %s.", face, where, how, w.f(e.Size))
		if e.Stop > 0 {
			line = fmt.Sprintf("On the %s, %s: a %s of %s that stops %s short of the corners.", face, where, how, w.f(e.Size), w.f(e.Stop))
		}
		lines = append(lines, line)
		setups = append(setups, Setup{"router, edges", how + " " + w.f(e.Size), face + ", " + where})
	}
	if len(lines) == 0 {
		w.step(Step{Title: "Break the edges", Lines: []string{"By hand, with fine paper on a block, one light stroke: a sharp edge holds no finish."}})
		return
	}
	w.step(Step{Title: "Round and chamfer the edges", Lines: append(lines, "Prove the height of the cutter on a spare piece. All other edges: one light stroke with fine paper."), Setups: setups, Cautions: []string{routerCaution}})
}

// Words of finishes, as in a model.
const (
	finishNone  = "none"
	finishClear = "clear"
)

// surface is the finish of the wood.
func (w *writer) surface() {
	w.chapter("Finish")
	kind, coats := w.model.Stock.Finish.Kind, w.model.Stock.Finish.Coats
	if kind == finishNone {
		return
	}
	name := "paint"
	if kind == finishClear {
		name = "clear finish"
	}
	if supply, err := catalog.SupplyOf(name); err == nil && coats == 0 {
		coats = supply.Coats
	}
	if kind != finishClear {
		w.step(Step{Title: "Prime", Lines: []string{
			"One coat of primer on every face, edge and end, top and bottom of the leaf too: wood that is sealed on one side only bends. Sand lightly when it is dry.",
		}, Cautions: []string{solventCaution, dustCaution}})
	}
	w.step(Step{Title: fmt.Sprintf("Coats of %s: %d", name, coats), Lines: []string{
		"Faces, edges and seat alike, as many coats on the back as on the front. Between coats let it dry as its maker says, and sand lightly.",
		fmt.Sprintf("Thin on the shoulders and walls of the seat: the panel has %s at each edge.", w.fig("panel.edge_gap")),
	}, Cautions: []string{solventCaution}})
}
