package guide

import (
	"fmt"
	"strings"

	"stilewright/model/door"
)

// hanging puts the leaves into the opening.
func (w *writer) hanging() {
	w.chapter("Hanging")
	w.track()
	w.hangers()
	w.fascia()
	w.hang()
	w.guides()
	w.adjust()
}

// track is cutting and fixing the track.
func (w *writer) track() {
	t, h := w.set.Track, w.hung.Track
	w.step(Step{Title: "Fix the track", Picture: "head", Lines: []string{
		fmt.Sprintf("Cut it %s long and file the burrs off. It stands %s behind the opening's front, level: pack it where the head is not.", w.fig("track.length"), w.fig("track.setback")),
		fmt.Sprintf("Screws No. %d, %s long, at %s from the left end of the opening's least width. They go through %s of track and lining and hold %s in the framing (%s).", h.Screw.Gauge, w.fig("track.screw.length"), w.family("track.screw"), w.fig("track.screw.through"), w.fig("track.screw.held"), h.Wood),
		fmt.Sprintf("Channels: front %s, back %s behind the opening's front. Slide the hangers or rollers in before the second end is closed, if this track asks for it.", w.fig("track.centre.front"), w.fig("track.centre.back")),
	}, Setups: []Setup{{"metal saw", w.f(t.Length), "track"}}, Cautions: []string{overheadCaution}})
}

// hangers are screwed to the leaves.
func (w *writer) hangers() {
	at := w.set.Track.HangerAt
	w.step(Step{Title: "Screw the hangers to the leaves", Lines: []string{
		fmt.Sprintf("%d hangers, their middles %s and %s from each leaf's left, in the bores. Turn their adjusters to the middle of their travel, which is %s.", 2*len(w.set.Hung), w.f(at[0]), w.f(at[1]), w.fig("track.adjust")),
		fmt.Sprintf("Each bears at most %.0f N (%.0f lb).", max(w.hung.Load.Hanger[0], w.hung.Load.Hanger[1]), max(w.hung.Load.Hanger[0], w.hung.Load.Hanger[1])/(pound*gravity)),
	}})
}

// fascia is the trim before the track.
func (w *writer) fascia() {
	if w.set.Fascia == nil {
		return
	}
	a, b := w.set.Fascia.Solid.Bounds()
	lines := []string{fmt.Sprintf("%s long, %s high, %s thick. Cut, drill and finish it now; it goes on when the leaves hang and are adjusted, for it stands in their way.", w.f(b.X-a.X), w.fig("fascia.height"), w.fig("fascia.thickness"))}
	if w.hung.Fascia != nil {
		lines = append(lines, fmt.Sprintf("Screws No. %d, %s long, at %s from the left.", w.hung.Fascia.Screw.Gauge, w.fig("fascia.screw.length"), w.family("fascia.screw")))
	}
	w.step(Step{Title: "Make the fascia ready", Lines: lines, Cautions: []string{sawCaution}})
}

// hang is lifting the leaves in.
func (w *writer) hang() {
	var back, front []string
	for _, h := range w.set.Hung {
		if h.Channel == door.Back {
			back = append(back, h.Label)
		} else {
			front = append(front, h.Label)
		}
	}
	w.step(Step{Title: "Hang the leaves", Lines: []string{
		fmt.Sprintf("The back track first: %s. Then the front: %s. Each weighs about %.1f kg (%.0f lb).", leaves(back), leaves(front), w.hung.Load.Mass, w.hung.Load.Mass/pound),
		"Tilt the leaf's foot towards the room, lift both hangers into their channel, and let it hang plumb before the next. Close the locks against lifting out, if the hangers have them.",
	}, Cautions: []string{liftCaution}})
}

// leaves are leaves by their labels.
func leaves(labels []string) string {
	switch len(labels) {
	case 0:
		return "none"
	case 1:
		return "leaf " + labels[0]
	}
	return "leaves " + strings.Join(labels, " and ")
}

// guides are the floor guides and the bumpers.
func (w *writer) guides() {
	if len(w.hung.Guides) > 0 {
		var at []string
		for i, g := range w.hung.Guides {
			at = append(at, fmt.Sprintf("%s, below the overlap of leaves %s and %s", w.fig(fmt.Sprintf("guide.%d", i+1)), g.Between[0], g.Between[1]))
		}
		w.step(Step{Title: "Fix the floor guides", Picture: "floor", Lines: []string{
			"With the leaves closed and plumb, from the left of the opening: " + strings.Join(at, "; ") + ".",
			"A guide must not press: a strip of card passes on both sides over the whole travel.",
		}, Cautions: []string{"Drilling into the floor: know what pipes and cables lie in it."}})
	}
	if len(w.hung.Bumpers) > 0 {
		rows := [][]string{{"CHANNEL", "END", "STOPS LEAF", "THE HANGER'S MIDDLE COMES TO REST AT"}}
		for _, b := range w.hung.Bumpers {
			end := "left"
			if b.Right {
				end = "right"
			}
			rows = append(rows, []string{b.Channel.String(), end, b.Leaf, w.fig("bumper." + b.Channel.String() + "." + end)})
		}
		w.step(Step{Title: "Set the bumpers", Table: rows, Lines: []string{"In the channels, so that the leaf comes to rest against rubber before it strikes a jamb. Places are from the left of the opening's least width."}})
	}
}

// adjust evens the gaps.
func (w *writer) adjust() {
	rows := [][]string{{"LEAF", "FLOOR GAP, LEFT CORNER", "RIGHT CORNER"}}
	for _, h := range w.set.Hung {
		left, right := h.At.Z-w.set.Opening.FloorAt(h.At.X), h.At.Z-w.set.Opening.FloorAt(h.At.X+w.leaf.Width)
		rows = append(rows, []string{h.Label, w.f(left), w.f(right)})
	}
	lines := []string{
		fmt.Sprintf("With the hangers even, the closed leaves stand over the floor as in the table, and the least gap over the whole travel is %s. The hangers take up %s.", w.fig("leaf.bottom"), w.fig("track.adjust")),
		"Plumb first: turn one hanger until the leaf's edge is parallel to the jamb. Then height: both hangers alike, until the tops of all leaves are in one line. Tighten the lock nuts.",
		"Slide every leaf from end to end: it must run free, stop where it is let go, and pass its neighbour without touching.",
	}
	if w.has("overlap.1") {
		lines = append(lines, fmt.Sprintf("Closed, the leaves overlap by %s.", w.family("overlap")))
	}
	if w.set.Fascia != nil {
		lines = append(lines, "Last, the fascia: screw it on, clear of the leaves.")
	}
	w.step(Step{Title: "Adjust", Lines: lines, Table: rows, Cautions: []string{"Keep fingers out from between leaves, and between leaf and jamb."}})
}
