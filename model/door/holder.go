package door

import (
	"cmp"
	"fmt"
	"strings"

	"stilewright/model/plane"
	"stilewright/model/solid"
)

// What holds a panel.
const (
	heldByWasher  = "edge-washer"
	heldByStop    = "stop"
	heldBySealant = "sealant"
	heldByBead    = "bead"
)

// heldBy is what holds the panels: as stated, or as the seat asks for. It stops
// where the seat cannot be used with what is stated.
func (r *resolver) heldBy() string {
	stated, seat := r.model.Panel.HeldBy.Kind, r.set.Leaf.Rabbet.Kind
	switch {
	case seat == Groove:
		if stated != "" {
			r.stop("panel.held_by", RuleHolder, "held_by: %s does not go with seat: groove, which holds the panels all round: leave held_by out, or choose seat: rabbet", stated)
		}
		return ""
	case seat == FaceBead && stated != "" && stated != heldByBead:
		r.stop("panel.held_by", RuleHolder, "held_by: %s does not go with seat: face-bead, where a bead holds the panels from the front: leave held_by out, or choose seat: rabbet", stated)
	case seat == BackRabbet && stated == heldByBead:
		r.stop("panel.held_by", RuleHolder, "held_by: bead does not go with a rabbet that opens to the back: choose seat: face-bead, or held_by: stop")
	case seat == FaceBead:
		return heldByBead
	}
	return cmp.Or(stated, heldByWasher)
}

// holder resolves what holds the panels.
func (r *resolver) holder() {
	switch r.set.Leaf.HeldBy {
	case heldByWasher:
		r.washer()
	case heldByStop, heldByBead:
		r.strip()
	default:
		r.set.Leaf.Washer = Washer{} // look-up has left its screw there
	}
}

// bed resolves the bed of sealant between shoulder and panel: what alone holds
// a panel held by sealant, and what any other may be laid in.
func (r *resolver) bed() {
	stated, leaf := r.model.Panel.HeldBy.Bed, &r.set.Leaf
	if stated == nil && leaf.HeldBy != heldBySealant {
		return
	}
	leaf.Bed = r.sized("sealant.bed", "panel.held_by.bed", stated, sealantBed)
	if least := leastBed.in(r.units); leaf.HeldBy == heldBySealant && leaf.Bed < least {
		r.warn("panel.held_by.bed", RuleBed, "a bed of sealant %v thick is all that holds the panels; thinner than %v it tears when they move", leaf.Bed, least)
	}
}

// hold enters what holds the panel of a lite.
func (b *bench) hold(lite int) {
	if b.leaf.Bed > 0 {
		b.sealant(lite)
	}
	switch b.leaf.HeldBy {
	case heldByWasher:
		b.washers(lite)
	case heldByStop, heldByBead:
		b.strips(lite)
	}
}

// sealant enters the bed of a lite: as wide as the panel's bite, all round.
func (b *bench) sealant(i int) {
	lite := b.leaf.Lites[i]
	panel := b.leaf.PanelOf(lite)
	ring := solid.Prism{Axis: solid.Y, Region: plane.Subtract(lite.Panel, plane.Region{lite.Sight.Path()}), From: panel.From - b.leaf.Bed, To: panel.From}
	if b.leaf.Rabbet.Kind == FaceBead {
		ring.From, ring.To = panel.To(), panel.To()+b.leaf.Bed
	}
	bed := Part{Label: fmt.Sprintf("Q%d", i+1), Name: "sealant", Role: SealantRole, Material: "sealant", Grain: solid.Z, Solid: solid.Solid{Blank: ring}}
	bed.Volume = bed.Solid.Volume()
	b.leaf.Hardware = append(b.leaf.Hardware, bed)
}

// A key is one that belongs to a seat or a holder.
type key struct {
	path   string
	stated bool
	of     string // seats or holders it is for
	used   bool
}

// unusedKeys warns of keys that belong to another seat or holder than the ones
// chosen.
func (r *resolver) unusedKeys() {
	p, leaf := r.model.Panel, r.set.Leaf
	rab, groove, hold, stop := p.Rabbet, p.Groove, p.HeldBy, p.HeldBy.Stop
	grooved, washers := leaf.Rabbet.Kind == Groove, leaf.HeldBy == heldByWasher
	strips := leaf.HeldBy == heldByStop || leaf.HeldBy == heldByBead
	fix := stop.Fix == fixScrews
	for _, k := range []key{
		{"panel.rabbet.width", rab.Width != nil, "a rabbet", !grooved},
		{"panel.rabbet.depth", rab.Depth != nil, "a rabbet", !grooved},
		{"panel.rabbet.cutter", rab.Cutter != nil, "a rabbet", !grooved},
		{"panel.rabbet.seat", rab.Seat != "", "a rabbet", !grooved},
		{"panel.rabbet.front", rab.Front != nil, "a rabbet", !grooved},
		{"panel.rabbet.back", rab.Back != nil, "a rabbet", !grooved},
		{"panel.groove.depth", groove.Depth != nil, "a groove", grooved},
		{"panel.groove.room", groove.Room != nil, "a groove", grooved},
		{"panel.groove.front", groove.Front != nil, "a groove", grooved},
		{"panel.groove.run", groove.Run != "", "a groove", grooved},
		{"panel.held_by.bed", hold.Bed != nil, "a rabbet", !grooved},
		{"panel.held_by.washer", hold.Washer.Outside != nil || hold.Washer.Hole != nil || hold.Washer.Thickness != nil, "edge washers", washers},
		{"panel.held_by.press", hold.Press != nil, "edge washers", washers},
		{"panel.held_by.spacing", hold.Spacing != nil, "edge washers", washers},
		{"panel.held_by.stagger", hold.Stagger != "", "edge washers", washers},
		{"panel.held_by.screw", hold.Screw.Length != nil || hold.Screw.Gauge != 0, "edge washers, and stops or beads that are screwed", washers || strips && fix},
		{"panel.held_by.stop", stop.Width != nil || stop.Depth != nil || stop.Fix != "" || stop.Spacing != nil || stop.Pin != nil, "stops and beads", strips},
		{"panel.held_by.stop.pin", stop.Pin != nil, "pinned stops and beads", !strips || !fix},
	} {
		if k.stated && !k.used {
			r.warn(k.path, RuleSeatUnused, "%s is for %s, and the panels are %s: it is not used; leave it out", k.path, k.of, r.seated())
		}
	}
}

// seated tells how the panels are held, in words.
func (r *resolver) seated() string {
	switch leaf := r.set.Leaf; leaf.HeldBy {
	case "":
		return "held by a groove"
	case heldBySealant:
		return "held by sealant"
	default:
		return "held by " + strings.ReplaceAll(leaf.HeldBy, "-", " ") + "s"
	}
}
