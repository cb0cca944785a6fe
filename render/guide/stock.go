package guide

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/solid"
)

// A piece is equal wooden parts of a leaf.
type piece struct {
	name, labels        string
	role                door.Role
	each                int // in a leaf
	along, across, deep length.Length
}

// pieces are the stiles, rails and muntins of a leaf, equal ones together.
func (w *writer) pieces() []piece {
	var all []piece
	for _, part := range w.leaf.Parts {
		if part.Role == door.PanelRole {
			continue
		}
		a, b := part.Solid.Bounds()
		p := piece{name: part.Name, labels: part.Label, role: part.Role, each: 1, along: b.Z - a.Z, across: b.X - a.X, deep: b.Y - a.Y}
		if part.Grain == solid.X {
			p.along, p.across = p.across, p.along
		}
		i := slices.IndexFunc(all, func(q piece) bool {
			return q.role == p.role && q.along == p.along && q.across == p.across && q.deep == p.deep
		})
		if i < 0 {
			all = append(all, p)
			continue
		}
		all[i].each++
		all[i].labels += ", " + p.labels
		if all[i].name != p.name {
			all[i].name = p.role.String() + "s"
		}
	}
	return all
}

// before is what is done before wood is bought.
func (w *writer) before() {
	w.chapter("Before cutting")
	w.step(Step{Title: "Measure again, with the track in hand", Picture: "set", Lines: []string{
		fmt.Sprintf("The drawings rest on a least width of %s and a least height of %s. Measure the opening again at three heights and three places.", w.fig("opening.width"), w.fig("opening.height")),
		fmt.Sprintf("They count on a track with its channels %s apart and the leaf's top %s below the head. Makers differ: measure the track in hand.", w.fig("track.spacing"), w.fig("track.head_drop")),
		"What differs goes into the model, and the drawings are made anew, before any wood is cut.",
	}})
}

// stock is choosing and sizing the boards.
func (w *writer) stock() {
	w.chapter("Boards to size")
	w.choose()
	w.plane()
	w.rip()
	w.crosscut()
}

// choose is picking the boards.
func (w *writer) choose() {
	boards := w.set.Stock.Species.Name
	if w.set.Stock.Board != "" {
		boards = w.set.Stock.Board + " " + boards
	}
	w.step(Step{Title: "Choose the boards", Lines: []string{
		fmt.Sprintf("Of the %s, the straightest boards, with upright even grain, are for the %d stiles: sight along both edges and across the ends.", boards, 2*len(w.set.Hung)),
		"Let the boards lie in the room where the doors will hang, on sticks, until they no longer change weight.",
		"Knots and checks stay away from joints, from the panel's seat and from places of screws.",
		"Mark on each board which way it is crowned, and its best face: that one faces the room.",
	}})
}

// plane is thickness.
func (w *writer) plane() {
	t := w.fig("leaf.thickness")
	if w.has("stock.plane") && w.set.Stock.Plane == 0 {
		w.step(Step{Title: "No planing", Lines: []string{
			fmt.Sprintf("The boards are used as dressed, %s thick. Reject a board that is cupped, or thicker or thinner than the others by more than a fingernail feels.", t),
		}})
		return
	}
	line := fmt.Sprintf("Flatten one face of each board, then plane all of them to %s thick.", t)
	if w.has("stock.plane") {
		line = fmt.Sprintf("The boards are %s thick as dressed. Plane %s off each face, to %s.", w.fig("stock.dressed.thickness"), w.fig("stock.plane"), t)
	}
	w.step(Step{Title: "Plane to thickness", Lines: []string{line,
		"Both faces give up the same, so that the boards stay flat. The last pass of every board goes through at one setting."},
		Setups:   []Setup{{"planer", t, "all boards of the frame"}},
		Cautions: []string{planerCaution, dustCaution}})
}

// rip is width.
func (w *writer) rip() {
	byWidth := map[length.Length]int{}
	names := map[length.Length][]string{}
	for _, p := range w.pieces() {
		byWidth[p.across] += p.each * len(w.set.Hung)
		if name := p.role.String() + "s"; !slices.Contains(names[p.across], name) {
			names[p.across] = append(names[p.across], name)
		}
	}
	rows := [][]string{{"WIDTH", "PIECES", "FOR"}}
	var setups []Setup
	for _, width := range sorted(byWidth) {
		what := strings.Join(names[width], " and ")
		rows = append(rows, []string{w.f(width), fmt.Sprint(byWidth[width]), what})
		setups = append(setups, Setup{"saw, fence", w.f(width), what})
	}
	lines := []string{"The widest first: a piece that fails still makes a narrower one. Set the fence once for each width."}
	if w.has("stock.rip") && w.set.Stock.Rip > 0 {
		lines = append(lines, fmt.Sprintf("At least %s comes off each edge, so that the rounded corners of the board are gone.", w.fig("stock.rip")))
	}
	if w.has("leaf.stile") {
		w.fig("leaf.stile")
	}
	w.step(Step{Title: "Rip to width", Lines: lines, Table: rows, Setups: setups, Cautions: []string{sawCaution, dustCaution}})
}

// sorted are the widths, the greatest first.
func sorted(m map[length.Length]int) []length.Length {
	var at []length.Length
	for l := range m {
		at = append(at, l)
	}
	slices.SortFunc(at, func(a, b length.Length) int { return cmp.Compare(b, a) })
	return at
}

// crosscut is length.
func (w *writer) crosscut() {
	rows := [][]string{{"LENGTH", "PIECES", "PARTS", "WIDTH"}}
	lengths := map[length.Length]int{}
	all := w.pieces()
	slices.SortStableFunc(all, func(a, b piece) int { return cmp.Compare(b.along, a.along) })
	for _, p := range all {
		lengths[p.along] += p.each * len(w.set.Hung)
		rows = append(rows, []string{w.f(p.along), fmt.Sprint(p.each * len(w.set.Hung)), p.name + " " + p.labels, w.f(p.across)})
	}
	var setups []Setup
	for _, l := range sorted(lengths) {
		setups = append(setups, Setup{"saw, stop for length", w.f(l), fmt.Sprintf("%d pieces", lengths[l])})
	}
	lines := []string{"Square one end of every piece, then cut all pieces of one length against the same stop, long ones first.", "Ends square across the face and across the edge: the joints show every error twice."}
	w.fig("leaf.height")
	if w.has("rail.length") {
		lines = append(lines, fmt.Sprintf("Between the stiles a rail shows %s; what a joint takes of it is in the lengths below.", w.fig("rail.length")))
	}
	w.step(Step{Title: "Crosscut to length", Lines: lines, Table: rows, Setups: setups, Cautions: []string{sawCaution}})
}

// marking is the story stick and the marks of the parts.
func (w *writer) marking() {
	w.chapter("Marking")
	rows := [][]string{{"FROM THE BOTTOM", "MARK"}}
	for _, rail := range w.leaf.Rails {
		rows = append(rows, []string{w.f(rail.From), "lower edge of " + rail.Label}, []string{w.f(rail.To), "upper edge of " + rail.Label})
	}
	w.step(Step{Title: "Story stick for the stiles", Picture: "stick", Table: rows, Lines: []string{
		fmt.Sprintf("On a straight strip %s long mark every edge of the rails, from one end, without moving the rule.", w.fig("leaf.height")),
		"All stiles are marked from the stick, side by side in a clamp, square across. Nothing is measured twice.",
	}})
	if len(w.leaf.Muntins) > 0 {
		rows := [][]string{{"FROM THE LEAF'S LEFT", "FROM THE RAIL'S LEFT SHOULDER", "MARK"}}
		for _, m := range w.leaf.Muntins {
			if m.Row == 0 {
				rows = append(rows, []string{w.f(m.From), w.f(m.From - w.leaf.Stile), "left edge of " + m.Label}, []string{w.f(m.To), w.f(m.To - w.leaf.Stile), "right edge of " + m.Label})
			}
		}
		w.step(Step{Title: "Second stick, for the rails", Table: rows, Lines: []string{"Mark the muntins of the lowest row on a shorter strip and carry them over to all rails; for a row with other muntins see the drawing of the leaf."}})
	}
	w.step(Step{Title: "Name every part", Picture: "leaf", Lines: []string{
		fmt.Sprintf("Write leaf and part on the back of each piece: 1-%s is %s of leaf 1. Draw an arrow upwards, and mark the edge that the lite comes to.", w.leaf.Parts[0].Label, "the "+w.leaf.Parts[0].Name),
		"Best faces to the room. The two stiles of a leaf come from boards that are crowned alike, and both crowns go the same way.",
	}})
}
