package door

import (
	"cmp"
	"fmt"

	"stilewright/model/length"
)

// seat resolves what is milled for the panel and where the panel lies in it.
func (r *resolver) seat() {
	p, leaf := r.model.Panel, &r.set.Leaf
	if p.Thickness == nil || p.Solid != nil && p.Solid.Thickness == nil {
		r.stopped = true // spec has said so
		return
	}
	leaf.Rabbet.Kind = BackRabbet
	if p.Seat == Groove || p.Seat == FaceBead {
		leaf.Rabbet.Kind = p.Seat
	}
	leaf.HeldBy = r.heldBy()
	leaf.Panel.Thickness = r.given("panel.thickness", "panel.thickness", *p.Thickness)
	leaf.Panel.Film = p.Film
	r.solidRows()
	if leaf.Rabbet.Kind == Groove {
		r.groove()
	} else {
		r.bed()
		r.rabbet()
	}
	r.layInSeat()
	leaf.Rabbet.Passes = r.passes()
	r.seatFits()
	r.unusedKeys()
}

// rabbet resolves a rabbet from the back or, with a face bead, from the front.
func (r *resolver) rabbet() {
	p, leaf := r.model.Panel.Rabbet, &r.set.Leaf
	leaf.Rabbet.Width = r.sized("rabbet.width", "panel.rabbet.width", p.Width, rabbetWidth)
	r.cutter()
	if p.Depth != nil && p.Seat == "" && p.Front == nil && p.Back == nil {
		r.byDepth(*p.Depth)
		return
	}
	r.byPlace()
	rab := &leaf.Rabbet
	if p.Depth == nil {
		name := []string{"leaf.thickness", "rabbet.front"}
		formula := "thickness less the wood in front"
		if rab.Kind == FaceBead {
			name[1], formula = "rabbet.back", "thickness less the wood behind"
		}
		rab.Depth = r.derive("rabbet.depth", leaf.Thickness-rab.Front-rab.Back, formula, name...)
		return
	}
	rab.Depth = r.given("rabbet.depth", "panel.rabbet.depth", *p.Depth)
	if makes := leaf.Thickness - rab.Front - rab.Back; rab.Depth != makes {
		r.stop("panel.rabbet.depth", RuleSeatTwice, "a rabbet %v deep is stated; where the panel is to lie makes it %v deep: leave one of them out", rab.Depth, makes)
	}
}

// byDepth finds the wood before or behind the shoulder from the rabbet's depth.
func (r *resolver) byDepth(depth length.Length) {
	leaf := &r.set.Leaf
	rab := &leaf.Rabbet
	rab.Depth = r.given("rabbet.depth", "panel.rabbet.depth", depth)
	if rab.Kind == FaceBead {
		rab.Back = r.derive("rabbet.back", leaf.Thickness-depth, "thickness less rabbet depth", "leaf.thickness", "rabbet.depth")
		return
	}
	rab.Front = r.derive("rabbet.front", leaf.Thickness-depth, "thickness less rabbet depth", "leaf.thickness", "rabbet.depth")
}

// byPlace finds the wood before or behind the shoulder from where the panel is
// to lie.
func (r *resolver) byPlace() {
	leaf := &r.set.Leaf
	rab, sheet := &leaf.Rabbet, leaf.Panel.Thickness
	from, formula, names := r.lies()
	if rab.Kind == FaceBead {
		rab.Back = r.derive("rabbet.back", leaf.Thickness-from-sheet-leaf.Bed, "what is left of the thickness behind panel and bed: "+formula, append(names, r.bedName()...)...)
		return
	}
	if leaf.Bed > 0 {
		formula += ", less the bed"
	}
	rab.Front = r.derive("rabbet.front", from-leaf.Bed, formula, append(names, r.bedName()...)...)
}

// bedName is the figure of the bed, when there is one.
func (r *resolver) bedName() []string {
	if r.set.Leaf.Bed == 0 {
		return nil
	}
	return []string{"sealant.bed"}
}

// lies is where the panel's front face is asked to lie, and how that follows
// from which figures.
func (r *resolver) lies() (from length.Length, formula string, names []string) {
	p, leaf := r.model.Panel.Rabbet, r.set.Leaf
	thick, sheet := leaf.Thickness, leaf.Panel.Thickness
	seat := r.seatWord()
	switch {
	case seat == "front" && p.Front != nil:
		return r.given("panel.front", "panel.rabbet.front", *p.Front), "where the panel's front is to lie", []string{"panel.front"}
	case seat == "back" && p.Back != nil:
		behind := r.given("panel.behind", "panel.rabbet.back", *p.Back)
		return thick - behind - sheet, "thickness less what is to lie behind the panel, less the panel", []string{"leaf.thickness", "panel.behind", "panel.thickness"}
	case seat == "front" || seat == "back":
		r.stop("panel.rabbet.seat", RuleSeat, "seat: %s needs how far from that face the panel is to lie: state panel.rabbet.%s, less than the %v that a frame %v thick leaves beside a panel of %v", seat, seat, thick-sheet, thick, sheet)
	}
	return (thick - sheet).Half(), "panel centred: half of thickness less panel", []string{"leaf.thickness", "panel.thickness"}
}

// seatWord is the face the panel's place is measured from: as stated, or as the
// one size stated tells.
func (r *resolver) seatWord() string {
	p := r.model.Panel.Rabbet
	switch {
	case p.Front != nil && p.Back != nil:
		r.stop("panel.rabbet.back", RuleSeatTwice, "%v before the panel and %v behind it are both stated, and each follows from the other: leave one of them out", *p.Front, *p.Back)
		return "centred"
	case p.Front != nil && p.Seat != "" && p.Seat != "front":
		r.stop("panel.rabbet.front", RuleSeatTwice, "the panel is to lie %v from the front and its seat is %s: leave panel.rabbet.front out, or choose seat: front", *p.Front, p.Seat)
		return "centred"
	case p.Back != nil && p.Seat != "" && p.Seat != "back":
		r.stop("panel.rabbet.back", RuleSeatTwice, "the panel is to lie %v from the back and its seat is %s: leave panel.rabbet.back out, or choose seat: back", *p.Back, p.Seat)
		return "centred"
	case p.Front != nil:
		return "front"
	case p.Back != nil:
		return "back"
	}
	return p.Seat
}

// cutter resolves what mills the rabbet: a guided cutter, or a machine's tool
// when its corners are relieved.
func (r *resolver) cutter() {
	p, leaf := r.model.Panel, &r.set.Leaf
	if !relieves(p.Corner.Kind) {
		leaf.Rabbet.Cutter = r.sized("rabbet.cutter", "panel.rabbet.cutter", p.Rabbet.Cutter, cutterDiameter)
		return
	}
	leaf.Corner.Kind = p.Corner.Kind
	leaf.Corner.Tool = r.sized("corner.tool", "panel.corner.tool", p.Corner.Tool, machineTool)
	leaf.Rabbet.Cutter = leaf.Corner.Tool
	if p.Corner.Kind == TBone {
		leaf.Corner.Into = cmp.Or(p.Corner.Into, intoStile)
	}
	if p.Rabbet.Cutter != nil {
		r.warn("panel.rabbet.cutter", RuleSeatUnused, "a guided cutter %v across is stated and the corners are %s, milled by a machine's tool %v across: it is not used; leave it out, or choose clipped", *p.Rabbet.Cutter, p.Corner.Kind, leaf.Corner.Tool)
	}
}

// layInSeat puts the panels in the seat: on its shoulder, or midway in the
// groove.
func (r *resolver) layInSeat() {
	leaf := &r.set.Leaf
	rab := &leaf.Rabbet
	switch rab.Kind {
	case Groove:
		rab.To = rab.From + rab.Depth
	case FaceBead:
		rab.To = leaf.Thickness - rab.Back
	default:
		rab.From, rab.To = rab.Front, leaf.Thickness
	}
	for _, panel := range leaf.panels() {
		switch rab.Kind {
		case Groove:
			panel.From = panel.SeatFrom + (panel.SeatTo - panel.SeatFrom - panel.Thickness).Half()
			continue
		case FaceBead:
			panel.From = rab.To - leaf.Bed - panel.Thickness
		default:
			panel.From = rab.From + leaf.Bed
		}
		panel.SeatFrom, panel.SeatTo = rab.From, rab.To
	}
}

// passes are the depths the cutter is set to, one after another: full passes,
// and a last one that takes what is left.
func (r *resolver) passes() []length.Length {
	rab := r.set.Leaf.Rabbet
	depth, what, from := rab.Depth, "rabbet", "rabbet.depth"
	if rab.Kind == Groove {
		depth, what, from = rab.Width, "groove", "groove.depth"
	}
	most := r.sized("rabbet.per_pass", "panel.rabbet.per_pass", r.model.Panel.Rabbet.PerPass, perPass)
	if count := (depth + most - 1) / most; count > mostPasses {
		r.stop("panel.rabbet.per_pass", RuleCutter, "a %s %v deep cut %v at a time takes %d passes; up to %d are planned: cut at least %v at a time", what, depth, most, int(count), mostPasses, roundedUp(depth, mostPasses).UpTo(r.tick))
		return nil
	}
	var set []length.Length
	for at := most; at < depth; at += most {
		set = append(set, at)
	}
	set = append(set, depth)
	for i, at := range set {
		r.derive(fmt.Sprintf("rabbet.pass.%d", i+1), at, "whole passes of the most depth taken at once, the last to full depth", from, "rabbet.per_pass")
	}
	return set
}
