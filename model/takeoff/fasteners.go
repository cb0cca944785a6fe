package takeoff

import (
	"fmt"
	"math"
	"strings"

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
		leaves := len(job.Set.Hung)
		for _, s := range job.Set.Leaf.Screws {
			add(t.screw(s), leaves)
		}
		for _, p := range job.Set.Leaf.Hardware {
			add(t.metalPart(p, job.Set.Leaf), leaves)
		}
	}
	for _, p := range t.out.Parts {
		if p.Kind == Hardware {
			size := []string{t.bare(p.Net.Thickness), t.said(p.Net.Length)}
			add(fastener{name: p.Name + " " + strings.Join(size, " x "), supply: p.Name, mass: p.Mass}, p.Quantity)
		}
	}
	for _, f := range kinds {
		row, err := catalog.SupplyOf(f.supply)
		if err != nil {
			row = supply("edge washer") // counted by the piece, with the same spare
		}
		t.piecesOf(groupFasteners, f.name, row, f.count, f.mass, "counted from the leaves")
	}
}

// screw is the kind of a driven screw. Its length is measured from the head's
// underside to the tip, to the micrometre.
func (t *taker) screw(s door.Screw) fastener {
	dx, dy, dz := (s.Tip.X - s.Head.X).MM(), (s.Tip.Y - s.Head.Y).MM(), (s.Tip.Z - s.Head.Z).MM()
	long := length.Round(math.Sqrt(float64(dx*dx) + float64(dy*dy) + float64(dz*dz))).Nearest(length.Micrometre)
	kind := s.For + " screw"
	gauge := "diameter " + t.bare(s.Diameter)
	for _, row := range catalog.WoodScrews() {
		if row.Diameter == s.Diameter {
			gauge = fmt.Sprintf("No. %d", row.Gauge)
		}
	}
	radius := s.Diameter.MM() / 2
	return fastener{name: kind + " " + gauge + " x " + t.said(long), supply: kind, mass: steel(math.Pi * radius * radius * long.MM())}
}

// metalPart is the kind of a hardware part: a washer by its sizes, all else by
// its outer ones.
func (t *taker) metalPart(p door.Part, leaf door.Leaf) fastener {
	f := fastener{supply: p.Name, mass: steel(p.Solid.Volume())}
	if p.Role == door.WasherRole {
		w := leaf.Washer
		f.name = fmt.Sprintf("%s %s x %s hole %s", p.Name, t.bare(w.Outside), t.said(w.Thickness), t.bare(w.Hole))
		return f
	}
	net := netOf(p)
	f.name = p.Name + " " + t.bare(net.Width) + " x " + t.said(net.Length)
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
