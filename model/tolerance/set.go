package tolerance

import (
	"fmt"
	"math"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
)

// A choice is a default in both units, and why.
type choice struct {
	inch, metric length.Length
	reason       string
}

// Our defaults: common practice, no source.
var (
	measured  = choice{length.Inch / 16, 3 * length.Millimetre / 2, "openings are measured by tape to this"}
	trackMade = choice{length.Inch / 32, length.Millimetre, "a track's section in hand, measured by calliper where it matters"}
	hangerSet = choice{length.Inch / 32, length.Millimetre, "hangers are set by eye and tape to this"}
	washerOff = choice{length.Inch / 128, length.Millimetre / 5, "stamped washers differ by this"}
)

const house = "common practice, no source: "

func (c choice) part(name string, units length.Unit, share float64) Part {
	off := c.metric
	if units == length.Inches {
		off = c.inch
	}
	return Part{name, off, share, house + c.reason}
}

// made is a piece of that size cut against a stop.
func made(name string, size length.Length, share float64) Part {
	row, _ := catalog.LinearToleranceFor(size)
	return Part{name, row.Medium, share, row.Source.String() + ", class m"}
}

// practised is what a rule of the trade allows; a rule there is no row for
// contributes nothing, and a test sees to it that there is none.
func practised(name, rule string, share float64) Part {
	row, err := catalog.Rule(rule)
	if err != nil {
		return Part{Name: name, Share: share}
	}
	return Part{name, row.Size, share, row.Source.String()}
}

// Of lists the stacks of a set's clearances.
func Of(s door.Set) []Stack {
	stacks := []Stack{faceGap(s), floorGap(s), jamb(s)}
	if over, has := overlap(s); has {
		stacks = append(stacks, over)
	}
	stacks = append(stacks, panel(s, s.Leaf.Panel, false)...)
	if s.Leaf.SolidPanel != nil {
		stacks = append(stacks, panel(s, *s.Leaf.SolidPanel, true)...)
	}
	return stacks
}

func faceGap(s door.Set) Stack {
	return Stack{"face gap", "hanging.track", s.Track.FaceGap, []Part{
		trackMade.part("track's channel spacing", s.Units, 1),
		thickness("front leaf's thickness"), thickness("back leaf's thickness"),
	}}
}

// thickness is half of what one frame's thickness may be off by: a leaf hangs in
// its middle. The figure is that of the standard's stile-and-rail doors.
func thickness(name string) Part {
	row, err := catalog.Rule("frame-thickness")
	if err != nil {
		return Part{Name: name, Share: .5}
	}
	return Part{name, length.Inch / 32, .5, row.Source.String()}
}

func floorGap(s door.Set) Stack {
	gap := s.Opening.Height - s.Track.HeadDrop - s.Leaf.Height
	return Stack{"floor gap", "hanging.floor_gap", gap, []Part{
		measured.part("opening's height", s.Units, 1),
		practised("leaf's height", "door-size-tolerance", 1),
		trackMade.part("track's head drop", s.Units, 1),
		hangerSet.part("hangers' setting", s.Units, 1),
	}}
}

// jamb is how even the reveal at a jamb is from floor to head: the leaf's edge
// leans with its diagonals, with the setting of its hangers, and the jamb with
// what its plumb was measured to.
func jamb(s door.Set) Stack {
	leaf := s.Leaf
	w, h := leaf.Width.MM(), leaf.Height.MM()
	diagonal := math.Sqrt(float64(w*w) + float64(h*h))
	apart := max(s.Track.HangerAt[1]-s.Track.HangerAt[0], length.Millimetre)
	return Stack{"evenness of the reveal at a jamb", "opening.plumb", 0, []Part{
		practised("leaf's squareness", "squareness", diagonal/(2*w)),
		hangerSet.part("hangers' setting", s.Units, h/apart.MM()),
		measured.part("jamb's plumb", s.Units, 1),
	}}
}

func overlap(s door.Set) (Stack, bool) {
	count, least := 0, length.Length(0)
	for i := 1; i < len(s.Hung); i++ {
		if s.Hung[i].Channel == s.Hung[i-1].Channel {
			continue
		}
		over := s.Hung[i-1].At.X + s.Leaf.Width - s.Hung[i].At.X
		if count++; count == 1 || over < least {
			least = over
		}
	}
	if count == 0 {
		return Stack{}, false
	}
	stack := Stack{Name: "overlap", Path: "hanging.overlap", Nominal: least, Parts: []Part{measured.part("opening's width", s.Units, 1/float64(count))}}
	for _, h := range s.Hung {
		stack.Parts = append(stack.Parts, practised("width of leaf "+h.Label, "door-size-tolerance", 1/float64(count)))
	}
	return stack, true
}

// panel lists the stacks of one sheet, across its largest lite's longer way.
func panel(s door.Set, p door.Panel, solid bool) []Stack {
	leaf, word, path := s.Leaf, "panel", "panel.edge_gap"
	if solid {
		word, path = "solid panel", "panel.solid.edge_gap"
	}
	var sight length.Length
	for _, lite := range leaf.Lites {
		if lite.Solid == solid {
			sight = max(sight, lite.Sight.Width(), lite.Sight.Height())
		}
	}
	seat := leaf.Rabbet.Width
	hole := func(share float64) Part { return made("lite between shoulders", sight, share) }
	sheet := func(share float64) Part { return made(word, sight+2*p.Bite, share) }
	wall := func(n int, share float64) Part { return made(fmt.Sprintf("rabbet's width, side %d", n), seat, share) }
	stacks := []Stack{
		{word + " edge gap", path, p.EdgeGap, []Part{hole(.5), sheet(.5), wall(1, .5), wall(2, .5)}},
		{word + " bite", path, p.Bite, []Part{hole(.5), sheet(.5)}},
		{word + " least bite", path, p.LeastBite, []Part{hole(1), sheet(1), wall(1, 1)}},
	}
	switch leaf.HeldBy {
	case "edge-washer":
		stacks = append(stacks, Stack{word + " least washer lap", "panel.held_by.washer.thickness", leaf.Washer.Thickness - 2*p.EdgeGap,
			[]Part{washerOff.part("washer's thickness", s.Units, 1), hole(1), sheet(1), wall(1, 1), wall(2, 1)}})
	case "stop", "bead":
		strip := leaf.StripOf(door.Lite{Solid: solid}).Width
		stacks = append(stacks, Stack{word + " least " + leaf.HeldBy + " lap", "panel.held_by.stop", strip - 2*p.EdgeGap,
			[]Part{made(leaf.HeldBy+"'s width", strip, 1), hole(1), sheet(1), wall(1, 1), wall(2, 1)}})
	}
	return stacks
}
