package door

import "stilewright/model/length"

// A milled is the words for what is milled for the panel, and where in the
// model its sizes stand.
type milled struct{ noun, across, depth, width string }

// milled is how the seat is spoken of: a groove's depth is what of a rabbet is
// its width.
func (r *resolver) milled() milled {
	if r.set.Leaf.Rabbet.Kind == Groove {
		return milled{"groove", "deep", "panel.groove.front", "panel.groove.depth"}
	}
	return milled{"rabbet", "wide", r.depthPath(), "panel.rabbet.width"}
}

// depthPath is where the rabbet's depth stands, or what it follows from.
func (r *resolver) depthPath() string {
	switch p := r.model.Panel.Rabbet; {
	case p.Depth != nil:
		return "panel.rabbet.depth"
	case p.Front != nil:
		return "panel.rabbet.front"
	case p.Back != nil:
		return "panel.rabbet.back"
	}
	return "panel.thickness"
}

// seatFits checks the seat against frame, panel and cutter.
func (r *resolver) seatFits() {
	r.lips()
	r.panelsWithin()
	if r.set.Leaf.Rabbet.Kind != Groove {
		r.cutterFits()
	}
	r.wallsFit()
}

// lips checks the wood before the seat, and behind it where there is some.
func (r *resolver) lips() {
	leaf, rab := r.set.Leaf, r.set.Leaf.Rabbet
	lip, thick := leastLip.in(r.units), leaf.Thickness
	if rab.Kind == Groove {
		r.grooveLips(lip)
		return
	}
	left, side, beside := rab.Front, "in front", "in front of the panel"
	if rab.Kind == FaceBead {
		left, side, beside = rab.Back, "behind", "behind the panel"
	}
	switch path := r.depthPath(); {
	case left <= 0:
		r.stop(path, RuleRabbetDeep, "a rabbet %v deep goes through a frame %v thick; leave at least %v %s: up to %v deep", rab.Depth, thick, lip, side, thick-lip)
	case left < lip:
		r.stop(path, RuleRabbetDeep, "a rabbet %v deep in a frame %v thick leaves %v of wood %s; it needs at least %v", rab.Depth, thick, left, beside, lip)
	}
}

// panelsWithin checks that no panel stands out of its rabbet.
func (r *resolver) panelsWithin() {
	leaf := r.set.Leaf
	if leaf.Rabbet.Kind == Groove {
		return
	}
	path, face := "panel.thickness", "back"
	if leaf.Rabbet.Kind == FaceBead {
		face = "front"
	}
	for _, panel := range leaf.panels() {
		switch out := leaf.Bed + panel.Thickness - leaf.Rabbet.Depth; {
		case out <= 0:
		case leaf.Bed > 0:
			r.stop(path, RulePanelProud, "the panel is %v thick, its bed %v, and its rabbet %v deep: it would stand out of the %s by %v", panel.Thickness, leaf.Bed, leaf.Rabbet.Depth, face, out)
		default:
			r.stop(path, RulePanelProud, "the panel is %v thick and its rabbet %v deep: it would stand out of the %s by %v", panel.Thickness, leaf.Rabbet.Depth, face, out)
		}
		path = "panel.solid.thickness"
	}
}

// wallsFit checks that enough wood is left of every member behind the walls and
// what relieves their corners.
func (r *resolver) wallsFit() {
	leaf, words, clear := r.set.Leaf, r.milled(), screwClear.in(r.units)
	if len(leaf.Rails) == 0 {
		return // frame has said so
	}
	wide := leaf.Rabbet.Width
	stile, rail := leaf.Corner.bites()
	narrow := func(name string, width, bite length.Length) bool {
		left := width - 2*(wide+bite)
		if left >= clear {
			return false
		}
		if bite > 0 {
			r.stop("panel.corner.tool", RuleRelief, "%s corners run %v past the walls of rabbets %v wide on both edges of a %s %v wide and leave %v between them; at least %v is needed: take a smaller tool", leaf.Corner.Kind, bite, wide, name, width, left, clear)
		} else {
			r.stop(words.width, RuleRabbetWide, "%ss %v %s on both edges of a %s %v wide leave %v between them; at least %v is needed: %ss from %v", words.noun, wide, words.across, name, width, left, clear, plain(name), 2*wide+clear)
		}
		return true
	}
	for _, cross := range leaf.Rails[1 : len(leaf.Rails)-1] {
		if narrow("cross rail", cross.Width(), rail) {
			break
		}
	}
	for _, m := range leaf.Muntins {
		if narrow("muntin", m.Width(), stile) {
			break
		}
	}
	least, bite := leaf.Stile-stile, stile
	for _, outer := range []Rail{leaf.Rails[0], leaf.Rails[len(leaf.Rails)-1]} {
		if outer.Width()-rail < least {
			least, bite = outer.Width()-rail, rail
		}
	}
	if left := least - wide; left < clear {
		if bite > 0 {
			r.stop("panel.corner.tool", RuleRelief, "%s corners run %v past the wall of a rabbet %v wide in a member %v wide and leave %v; at least %v is needed: take a smaller tool", leaf.Corner.Kind, bite, wide, least+bite, left, clear)
			return
		}
		r.stop(words.width, RuleRabbetWide, "a %s %v %s leaves %v of a member %v wide; at least %v is needed", words.noun, wide, words.across, left, least, clear)
	}
}

// plain is what a member is called when one speaks of its width.
func plain(name string) string {
	if name == "cross rail" {
		return "rail"
	}
	return name
}

// cutterFits checks that the cutter can mill the rabbet: the bearing of a
// guided one is thinner than it by the rabbet on both sides, and must get round
// in the smallest lite; a machine's tool must run along the smallest wall.
func (r *resolver) cutterFits() {
	leaf, rab := r.set.Leaf, r.set.Leaf.Rabbet
	least := length.Longest
	for _, lite := range leaf.Lites {
		least = min(least, lite.Sight.Width(), lite.Sight.Height())
	}
	if relieves(leaf.Corner.Kind) {
		if most := least / 4; leaf.Corner.Tool > most {
			r.stop("panel.corner.tool", RuleRelief, "the corners of a tool %v across would take more than half of the smallest lite side of %v: take one up to %v", leaf.Corner.Tool, least, most.DownTo(r.tick))
		}
		return
	}
	bearing := rab.Cutter - 2*rab.Width
	switch {
	case bearing <= 0:
		r.stop("panel.rabbet.cutter", RuleCutter, "a guided cutter %v across cannot mill a rabbet %v wide: its bearing would be %v; the cutter must be more than %v", rab.Cutter, rab.Width, bearing, 2*rab.Width)
	case least < bearing:
		r.stop("panel.rabbet.cutter", RuleCutter, "the bearing of a cutter %v across is %v; the smallest lite side is %v: take a smaller cutter", rab.Cutter, bearing, least)
	}
}
