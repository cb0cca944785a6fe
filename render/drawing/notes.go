package drawing

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/door"
)

// frontNotes are the notes beside the front of a leaf.
func (p *page) frontNotes() []string {
	s, f := p.set, p.format
	lines := []string{fmt.Sprintf("Sizes are for one leaf; the set has %d.", len(s.Hung))}
	if s.Stock.Board != "" {
		planed := "not planed."
		if s.Stock.Plane > 0 {
			planed = fmt.Sprintf("planed %s each face.", f(s.Stock.Plane))
		}
		lines = append(lines, fmt.Sprintf("Frame from %s, dressed %s × %s,", s.Stock.Board, f(s.Stock.Dressed.Thickness), f(s.Stock.Dressed.Width)), planed)
	}
	lines = append(append(append(lines, p.seatPlace()...), p.edgeNotes()...),
		"≈ marks a figure rounded for display.",
		"Mind the manuals of saw, planer and",
		"router; wear eye, ear and dust protection.")
	return lines
}

// edgeNotes tell of worked edges and pulls.
func (p *page) edgeNotes() []string {
	leaf, f := p.set.Leaf, p.format
	var lines []string
	for _, e := range leaf.Edges {
		shape, face, edge := "chamfered", "front", "Outer edges of the stiles"
		if e.Round {
			shape = "rounded R"
		}
		if e.Back {
			face = "back"
		}
		if e.Sight {
			edge = "Edges round the lites"
		}
		line := fmt.Sprintf("%s, %s: %s %s", edge, face, shape, f(e.Size))
		if e.Stop > 0 {
			lines = append(lines, line+",", fmt.Sprintf("stopped %s before the corners.", f(e.Stop)))
			continue
		}
		lines = append(lines, line+".")
	}
	for i, pull := range leaf.Pulls {
		face, size := "front", "⌀ "+f(pull.Width)
		if pull.Back {
			face = "back"
		}
		if !pull.Round {
			size = fmt.Sprintf("%s × %s, R %s", f(pull.Width), f(pull.Height), f(pull.Radius))
		}
		if i > 0 && pull.Label == leaf.Pulls[i-1].Label && pull.Back == leaf.Pulls[i-1].Back {
			continue
		}
		lines = append(lines, fmt.Sprintf("Pull in %s, %s: %s,", pull.Label, face, size), fmt.Sprintf("%s deep, middle %s up, %s from the left.", f(pull.Depth), f(pull.Centre.Y), f(pull.Centre.X)))
	}
	return lines
}

// seatPlace tells where the panels lie.
func (p *page) seatPlace() []string {
	rab, f := p.set.Leaf.Rabbet, p.format
	switch rab.Kind {
	case door.Groove:
		return []string{fmt.Sprintf("Panels stand in grooves %s deep,", f(rab.Width)), fmt.Sprintf("%s wide, %s of wood in front.", f(rab.Depth), f(rab.From))}
	case door.FaceBead:
		return []string{fmt.Sprintf("Panels lie in a front rabbet %s wide,", f(rab.Width)), fmt.Sprintf("%s deep, under a face bead.", f(rab.Depth))}
	}
	return []string{fmt.Sprintf("Panels lie in a back rabbet %s wide,", f(rab.Width)), fmt.Sprintf("%s deep: %s of wood in front.", f(rab.Depth), f(rab.Front))}
}

// backNotes are the notes beside the back of a leaf.
func (p *page) backNotes() []string {
	leaf, f := p.set.Leaf, p.format
	lines := append(p.seatNotes(), "",
		fmt.Sprintf("Panels %s %s thick,", leaf.Panel.Material.Name, f(leaf.Panel.Thickness)),
		fmt.Sprintf("edge gap %s, bite %s.", f(leaf.Panel.EdgeGap), f(leaf.Panel.Bite)))
	if leaf.Panel.Film != "" {
		lines = append(lines, "Film on the panel's "+leaf.Panel.Film+" face.")
	}
	if other := leaf.SolidPanel; other != nil {
		lines = append(lines, fmt.Sprintf("Others %s %s thick,", other.Material.Name, f(other.Thickness)), fmt.Sprintf("edge gap %s, bite %s.", f(other.EdgeGap), f(other.Bite)))
	}
	lines = append(append(append(lines, ""), p.jointNotes()...), "")
	return append(append(lines, p.holderNotes()...), "",
		"Dashed: panels, and what is bored or",
		"cut into the wood.",
		"Rout in passes, against the feed;",
		"guards on, cutter speed by diameter.")
}

// seatNotes tell how the panel's seat is made.
func (p *page) seatNotes() []string {
	leaf, f := p.set.Leaf, p.format
	if leaf.Rabbet.Kind == door.Groove {
		run := "stopped between the lites in the stiles,"
		if leaf.Rabbet.Through {
			run = "through from end to end in the stiles,"
		}
		return []string{fmt.Sprintf("Groove %s wide, %s deep,", f(leaf.Rabbet.Depth), f(leaf.Rabbet.Width)), fmt.Sprintf("%s behind the front face,", f(leaf.Rabbet.From)), run, "milled before the frame is put together:", "the panels go in with it."}
	}
	side := "from the back"
	if leaf.Rabbet.Kind == door.FaceBead {
		side = "from the front"
	}
	lines := []string{
		fmt.Sprintf("Rabbet %s, %s wide, %s deep,", side, f(leaf.Rabbet.Width), f(leaf.Rabbet.Depth)),
		fmt.Sprintf("%s cutter, in %d passes set to", f(leaf.Rabbet.Cutter), len(leaf.Rabbet.Passes)),
	}
	var depths []string
	for _, at := range leaf.Rabbet.Passes {
		depths = append(depths, f(at))
	}
	const inLine = 6 // depths
	for i := 0; i < len(depths); i += inLine {
		lines = append(lines, strings.Join(depths[i:min(i+inLine, len(depths))], ", "))
	}
	return append(lines, fmt.Sprintf("%d inside corners a leaf, %s", 4*len(leaf.Lites), p.cornerWords()))
}

// jointNotes tell how the frame is joined.
func (p *page) jointNotes() []string {
	leaf, f := p.set.Leaf, p.format
	j := leaf.Joint
	var lines []string
	for _, kind := range distinctWords(j.Kind, j.Muntin) {
		switch kind {
		case door.PocketScrew:
			lines = append(lines, fmt.Sprintf("%d pocket holes a leaf, %g°:", j.Pocket.Holes, j.Pocket.Angle), fmt.Sprintf("screw %s, collar set %s", f(j.Pocket.Screw), f(j.Pocket.Shoulder)), "along the screw.")
			if j.Pocket.Plugs {
				lines = append(lines, "Plug the pockets and plane flush.")
			}
		case door.DowelJoint:
			lines = append(lines, fmt.Sprintf("%d dowels a leaf, %s thick, %s long,", j.Dowel.Count, f(j.Dowel.Diameter), f(j.Dowel.Length)), fmt.Sprintf("holes %s deep in both parts.", f(j.Dowel.Hole)))
		case door.LooseTenon:
			lines = append(lines, fmt.Sprintf("%d loose tenons a leaf, %s thick,", j.Tenon.Count, f(j.Tenon.Thickness)), fmt.Sprintf("%s into each part, %s from the front.", f(j.Tenon.Length), f(j.Tenon.Front)))
		case door.MortiseAndTenon:
			how := "blind"
			if j.Tenon.Through {
				how = "through"
			}
			lines = append(lines, fmt.Sprintf("Mortise and tenon, %s: tenons %s thick,", how, f(j.Tenon.Thickness)), fmt.Sprintf("%s long, %s from the front.", f(j.Tenon.Length), f(j.Tenon.Front)))
		case door.HalfLap:
			if kind != j.Kind {
				lines = append(lines, fmt.Sprintf("Muntins half-lapped: the rail keeps %s in front.", f(j.Lap.Front)))
				break
			}
			lines = append(lines, fmt.Sprintf("Half-laps: the stile keeps %s in front.", f(j.Lap.Front)))
		case door.Bridle:
			lines = append(lines, fmt.Sprintf("Bridle joints: tenon from %s to %s", f(j.Lap.From), f(j.Lap.To)), "behind the front face.")
		}
	}
	return lines
}

// distinctWords are the words that are not empty, each once.
func distinctWords(words ...string) []string {
	var kept []string
	for _, word := range words {
		if word != "" && !slices.Contains(kept, word) {
			kept = append(kept, word)
		}
	}
	return kept
}

// holderNotes tell what holds the panels.
func (p *page) holderNotes() []string {
	leaf, f := p.set.Leaf, p.format
	count := func(role door.Role) int {
		n := 0
		for _, part := range leaf.Hardware {
			if part.Role == role {
				n++
			}
		}
		return n
	}
	switch leaf.HeldBy {
	case "edge-washer":
		return []string{fmt.Sprintf("%d edge washers a leaf, %s", count(door.WasherRole), f(leaf.Washer.Outside)),
			fmt.Sprintf("across, %s thick; No. %d screws", f(leaf.Washer.Thickness), leaf.Washer.Screw.Gauge),
			fmt.Sprintf("%s long, holes %s behind", f(leaf.Washer.Length), f(leaf.Washer.Depth)), "the front face" + p.otherDepth() + "."}
	case "stop", "bead":
		return []string{fmt.Sprintf("%d mitred %ss a leaf, %s × %s,", count(door.StopRole)+count(door.BeadRole), leaf.HeldBy, f(leaf.Strip.Width), f(leaf.Strip.Depth)),
			fmt.Sprintf("fixed by %s at most %s apart.", leaf.Strip.Fix, f(leaf.Strip.Spacing)),
			fmt.Sprintf("Of panel P1 they are %s.", p.stripNames())}
	case "sealant":
		return []string{fmt.Sprintf("Panels bedded in sealant %s thick:", f(leaf.Bed)), "one its maker allows for this sheet."}
	}
	return []string{"The panels are captive: nothing holds", "them but the grooves."}
}

// otherDepth tells how deep the washers' holes are at a solid panel, where that differs.
func (p *page) otherDepth() string {
	leaf := p.set.Leaf
	if deep := leaf.WasherDepth(door.Lite{Solid: true}); leaf.SolidPanel != nil && deep != leaf.Washer.Depth {
		return fmt.Sprintf(", at %s %s", leaf.SolidPanel.Material.Name, p.format(deep))
	}
	return ""
}

// stripNames are the labels of the first panel's strips and the sides they lie on.
func (p *page) stripNames() string {
	lite := p.set.Leaf.Lites[0].Sight
	var names []string
	for _, part := range p.set.Leaf.Hardware {
		if part.Role != door.StopRole && part.Role != door.BeadRole || len(names) == 4 {
			continue
		}
		least, most := part.Solid.Bounds()
		side := "right"
		switch {
		case most.X-least.X > most.Z-least.Z && least.Z < lite.Min.Y:
			side = "below"
		case most.X-least.X > most.Z-least.Z:
			side = "above"
		case least.X < lite.Min.X:
			side = "left"
		}
		names = append(names, part.Label+" "+side)
	}
	return strings.Join(names, ", ")
}

// cornerWords says what is done about the corners.
func (p *page) cornerWords() string {
	leaf, f := p.set.Leaf, p.format
	switch {
	case leaf.Corner.Leg > 0:
		return "clipped " + f(leaf.Corner.Leg)
	case leaf.Corner.Radius > 0:
		return "rounded " + f(leaf.Corner.Radius)
	case leaf.Corner.Tool > 0:
		return "relieved by " + leaf.Corner.Kind
	case leaf.Rabbet.Corner == 0:
		return "chiselled square"
	}
	return "round"
}
