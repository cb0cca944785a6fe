package takeoff

import (
	"fmt"
	"math"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
)

// A fastener is a kind of screw or hardware part and how many there are.
type fastener struct {
	name, supply string
	mass         float64 // kg of one
	count        int
}

// buyFasteners counts screws, washers and what else the leaves' hardware is.
func (t *taker) buyFasteners() {
	var kinds []fastener
	add := func(f fastener, n int) {
		for i := range kinds {
			if kinds[i].name == f.name {
				kinds[i].count += n
				return
			}
		}
		f.count = n
		kinds = append(kinds, f)
	}
	for _, job := range t.jobs {
		leaf, leaves := job.Set.Leaf, len(job.Set.Hung)
		for _, s := range leaf.Screws {
			add(t.screw(s, leaf), leaves)
		}
		for _, p := range leaf.Hardware {
			if !strip(p.Role) && p.Role != door.SealantRole {
				add(t.hardwarePart(p, leaf), leaves)
			}
		}
		if p := leaf.Joint.Pocket; p.Plugs && p.Holes > 0 {
			add(fastener{name: fmt.Sprintf("pocket plug %s x %s", t.bare(p.Diameter), t.said(p.Plug)), supply: "dowel"}, leaves*p.Holes)
		}
	}
	for _, f := range kinds {
		row, err := catalog.SupplyOf(f.supply)
		if err != nil {
			row = supply("washer screw") // counted by the piece, with the same spare
		}
		t.piecesOf(groupFasteners, f.name, row, f.count, f.mass, "counted from the leaves")
	}
}

// screw is the kind of a driven screw or pin. Its length is measured from the
// head's underside to the tip, to the micrometre.
func (t *taker) screw(s door.Screw, leaf door.Leaf) fastener {
	dx, dy, dz := (s.Tip.X - s.Head.X).MM(), (s.Tip.Y - s.Head.Y).MM(), (s.Tip.Z - s.Head.Z).MM()
	long := length.Round(math.Sqrt(float64(dx*dx) + float64(dy*dy) + float64(dz*dz))).Nearest(length.Micrometre)
	kind := s.For + " screw"
	if s.For == "stop" && leaf.Strip.Fix == "pins" {
		kind = "pin"
	}
	gauge := t.bare(s.Diameter)
	for _, row := range catalog.WoodScrews() {
		if row.Diameter == s.Diameter {
			gauge = fmt.Sprintf("No. %d", row.Gauge)
		}
	}
	radius := s.Diameter.MM() / 2
	return fastener{name: kind + " " + gauge + " x " + t.said(long), supply: kind, mass: steel(math.Pi * radius * radius * long.MM())}
}

// hardwarePart is the kind of a hardware part: a washer and a dowel by their own
// sizes, all else by its outer ones.
func (t *taker) hardwarePart(p door.Part, leaf door.Leaf) fastener {
	f := fastener{supply: p.Name, mass: p.Mass}
	net := netOf(p)
	switch p.Role {
	case door.WasherRole:
		w := leaf.Washer
		f.name = fmt.Sprintf("%s %s x %s hole %s", p.Name, t.bare(w.Outside), t.said(w.Thickness), t.bare(w.Hole))
		f.mass = steel(p.Solid.Volume())
	case door.DowelRole:
		d := leaf.Joint.Dowel
		f.name = fmt.Sprintf("%s %s %s x %s", p.Name, p.Material, t.bare(d.Diameter), t.said(d.Length))
	default:
		f.name = fmt.Sprintf("%s %s %s x %s x %s", p.Name, p.Material, t.bare(net.Thickness), t.bare(net.Width), t.said(net.Length))
	}
	return f
}

// steel is the mass in kg of a volume of steel in mm³.
func steel(volume float64) float64 {
	metal, err := catalog.MetalOf("steel")
	if err != nil {
		return 0
	}
	return volume * metal.Density / 1e9
}
