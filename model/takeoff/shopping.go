package takeoff

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/cutting"
	"stilewright/model/door"
	"stilewright/model/length"
)

// cartridge is how much sealant one holds, in L: common practice, no source.
const cartridge = 0.3

// Groups of the shopping list, in their order.
const (
	groupBoards    = "boards"
	groupSheets    = "sheets and film"
	groupFasteners = "fasteners"
	groupHardware  = "hardware"
	groupFinish    = "glue and finish"
)

// An Item is one row of the shopping list.
type Item struct {
	Group  string
	Name   string
	Unit   string       // what need and pack count: "each", "L", "m"
	Need   float64      // units the parts take
	Spare  float64      // units over that
	Pack   float64      // units in one pack
	Buy    int          // packs
	Priced bool         // the price file has it
	Price  cutting.Cost // of one pack
	Cost   cutting.Cost // of all
	Mass   float64      // kg of all that is bought; 0: not known
	Why    string       // how it was counted, and why so much to spare
}

// A Sum is the foot of the shopping list.
type Sum struct {
	Coin     string
	Cost     cutting.Cost
	Unpriced int     // items without a price
	Mass     float64 // kg to carry
}

// Money is an amount in whole coins: "12.40".
func Money(c cutting.Cost) string { return fmt.Sprintf("%d.%02d", c/100, c%100) }

// buy fills in the shopping list.
func (t *taker) buy() {
	t.buyBoards()
	t.buySheets()
	t.buyFilm()
	t.buyFasteners()
	t.buyHardware()
	t.buyFinish()
	t.out.Sum.Coin = t.prices.Coin
	for _, i := range t.out.Buy {
		t.out.Sum.Mass += i.Mass
		t.out.Sum.Cost += i.Cost
		if !i.Priced {
			t.out.Sum.Unpriced++
		}
	}
}

// add enters an item, with what the price file says of it. mass is of one unit;
// an item listed before is counted up.
func (t *taker) add(i Item, mass float64) {
	at := slices.IndexFunc(t.out.Buy, func(o Item) bool { return o.Name == i.Name && o.Group == i.Group })
	if at >= 0 {
		before := t.out.Buy[at]
		i.Need, i.Spare = i.Need+before.Need, i.Spare+before.Spare
	}
	if row, ok := t.prices.of(i.Name); ok {
		i.Priced, i.Price = true, row.price
		if row.pack > 0 {
			i.Pack = row.pack
		}
		if row.unit != "" && row.unit != i.Unit {
			t.assume("prices", i.Name, fmt.Sprintf("priced by the %s, counted in %s: taken as %s", row.unit, i.Unit, i.Unit))
		}
	}
	const dust = 1e-9 // of a pack: what floating point may add to whole ones
	i.Buy = int(math.Ceil((i.Need+i.Spare)/i.Pack - dust))
	i.Cost = cutting.Cost(i.Buy) * i.Price
	i.Mass = float64(float64(i.Buy)*i.Pack) * mass
	if at >= 0 {
		t.out.Buy[at] = i
		return
	}
	t.out.Buy = append(t.out.Buy, i)
}

// piecesOf enters a supply counted by the piece, with its spare rounded up.
func (t *taker) piecesOf(group, name string, row catalog.Supply, n int, mass float64, why string) {
	if n > 0 {
		t.add(Item{Group: group, Name: name, Unit: row.Unit, Need: float64(n), Spare: math.Ceil(float64(n) * row.Spare), Pack: t.pack(row), Why: why + "; " + row.Source.String()}, mass)
	}
}

// measured enters a supply counted by measure; litres are quarts where one buys
// in inches.
func (t *taker) measured(group string, row catalog.Supply, need float64, why string) {
	if need <= 0 {
		return
	}
	unit, one := row.Unit, 1.0
	if unit == "L" && t.unit == length.Inches {
		unit, one = "qt", catalog.Quart
	}
	t.add(Item{Group: group, Name: row.Name, Unit: unit, Need: need / one, Spare: need * row.Spare / one, Pack: t.pack(row) / one, Why: why + "; " + row.Source.String()}, row.Mass*one)
}

func (t *taker) pack(row catalog.Supply) float64 {
	if t.unit == length.Millimetres {
		return row.PackMM
	}
	return row.Pack
}

// buyBoards counts the boards of every plan, and the spare ones for stiles, of
// the longest kind bought.
func (t *taker) buyBoards() {
	row := supply("boards")
	for _, plan := range t.out.Boards {
		p := pool{section: plan.Section, wood: plan.Wood}
		bought, longest := 0, -1
		for i, n := range plan.Layout.Used {
			if b := plan.Job.Boards[i]; n > 0 && !b.InHand {
				bought += n
				if longest < 0 || b.Length > plan.Job.Boards[longest].Length {
					longest = i
				}
			}
		}
		for i, n := range plan.Layout.Used {
			b := plan.Job.Boards[i]
			if n == 0 || b.InHand {
				continue
			}
			item := Item{Group: groupBoards, Name: t.boardName(p, b.Length), Unit: "each", Need: float64(n), Pack: 1, Why: "by the layout of " + plan.Name()}
			if plan.Stiles && i == longest {
				item.Spare = math.Ceil(float64(bought) * row.Spare)
				item.Why += "; " + row.Source.String()
			}
			volume := float64(float64(plan.Section.Thickness.MM()*plan.Section.Width.MM()) * b.Length.MM())
			t.add(item, volume*plan.Wood.Density()/1e9)
		}
	}
}

// buySheets counts sheets, and panels ordered to size.
func (t *taker) buySheets() {
	for _, plan := range t.out.Sheets {
		areal := plan.Material.Areal(plan.Thickness)
		for i, n := range plan.Layout.Used {
			if s := plan.Job.Sheets[i]; n > 0 && !s.InHand {
				area := float64(s.Width.MM()*s.Height.MM()) / perSquareMetre
				t.add(Item{Group: groupSheets, Name: s.Name, Unit: "each", Need: float64(n), Pack: 1, Why: "by the layout of its panels"}, area*areal)
			}
		}
		for _, i := range plan.Parts {
			if p := t.out.Parts[i]; plan.ToSize {
				name := fmt.Sprintf("panel %s %s %s x %s", plan.Material.Name, t.said(plan.Thickness), t.bare(p.Net.Width), t.said(p.Net.Length))
				t.add(Item{Group: groupSheets, Name: name, Unit: "each", Need: float64(p.Quantity), Pack: 1, Why: strings.Join(append([]string{"ordered to size: " + plan.Why}, p.Operations...), "; ")}, p.Mass)
			}
		}
	}
}

// buyFilm counts rolls, or metres where the roll's length is not stated.
func (t *taker) buyFilm() {
	for _, plan := range t.out.Film {
		unit, one := t.foot()
		i := Item{Group: groupSheets, Name: "film " + t.said(plan.Job.RollWidth) + " wide", Unit: unit, Need: plan.Layout.Length.MM() / one.MM(), Pack: 1, Why: "by the layout of its strips"}
		if plan.Layout.Rolls > 0 {
			i.Name += " roll of " + t.said(plan.Job.RollLength)
			i.Unit, i.Need, i.Pack = "each", float64(plan.Layout.Rolls), 1
		}
		t.add(i, 0)
	}
}

// buyHardware counts tracks, hangers, guides and hardware parts.
func (t *taker) buyHardware() {
	for _, job := range t.jobs {
		set := job.Set
		leaves := len(set.Hung)
		t.buyTrack(job)
		hanger, guide := supply("hanger"), supply("floor guide")
		t.piecesOf(groupHardware, hanger.Name+" for "+set.Track.Row, hanger, 2*leaves, hanger.Mass, "two a leaf")
		for _, p := range set.Leaf.Pulls {
			t.add(t.pull(p, leaves), 0)
		}
		t.piecesOf(groupHardware, guide.Name, guide, set.Overlaps(), guide.Mass, "one below each overlap")
	}
}

// pull is a flush pull for every leaf.
func (t *taker) pull(p door.Pull, leaves int) Item {
	name := fmt.Sprintf("flush pull for a mortise %s x %s, %s deep", t.bare(p.Width), t.bare(p.Height), t.said(p.Depth))
	if p.Round {
		name = fmt.Sprintf("flush pull round for a mortise %s across, %s deep", t.bare(p.Width), t.said(p.Depth))
	}
	return Item{Group: groupHardware, Name: strings.ReplaceAll(name, ",", ""), Unit: "each", Need: float64(leaves), Pack: 1, Why: "one a mortise"}
}

// buyTrack takes the shortest track sold that is long enough, or several of the
// longest.
func (t *taker) buyTrack(job Job) {
	track := job.Set.Track
	var sold []length.Length
	said := ""
	for _, row := range catalog.TrackLengths() {
		if row.Metric == (job.Set.Units == length.Millimetres) {
			sold, said = append(sold, row.Length), row.Source.String()
		}
	}
	take, n := sold[len(sold)-1], 1
	if at := slices.IndexFunc(sold, func(l length.Length) bool { return l >= track.Length }); at >= 0 {
		take = sold[at]
	} else {
		n = int((track.Length + take - 1) / take)
	}
	metal, err := catalog.MetalOf("aluminium")
	mass := 0.0
	if err == nil && track.Length > 0 {
		mass = float64(track.Solid.Volume()*metal.Density/1e9) * (take.MM() / track.Length.MM())
	}
	t.add(Item{Group: groupHardware, Name: "track " + track.Row + " " + t.said(take), Unit: "each", Need: float64(n), Pack: 1,
		Why: "cut to " + t.said(track.Length) + "; " + said}, mass)
}

// buyFinish counts glue, primer, finish and sealant.
func (t *taker) buyFinish() {
	for i, job := range t.jobs {
		s := t.stocks[i]
		finished, glued := t.areas(i)
		glue, primer, sealant := supply("wood glue"), supply("primer"), supply("sealant")
		t.measured(groupFinish, glue, glued/glue.Coverage, t.area(glued)+" of joints")
		if !s.bare {
			if s.finish.Name == "paint" {
				t.measured(groupFinish, primer, finished*float64(primer.Coats)/primer.Coverage, t.area(finished)+" of wood, both faces and edges, one coat")
			}
			t.measured(groupFinish, s.finish, finished*float64(s.coats)/s.finish.Coverage, fmt.Sprintf("%s of wood, both faces and edges, %d coats", t.area(finished), s.coats))
		}
		if bead := t.bead(job); bead > 0 {
			unit, one := t.foot()
			t.measured(groupFinish, sealant, bead/sealant.Coverage, fmt.Sprintf("%.1f %s of bead along the fascia", bead*perMetre/one.MM(), unit))
		}
		if bed := t.bed(job); bed > 0 {
			t.measured(groupFinish, sealant, bed/cartridge, fmt.Sprintf("%.2f L of bed under the panels", bed))
		}
	}
}

// bead is the length in m of sealant along the fascia's top and ends.
func (t *taker) bead(job Job) float64 {
	f := job.Set.Fascia
	if f == nil {
		return 0
	}
	least, most := f.Solid.Bounds()
	return (most.X - least.X + 2*(most.Z-least.Z)).MM() / perMetre
}

// bed is the volume in L of the sealant panels lie in.
func (t *taker) bed(job Job) float64 {
	volume := 0.0
	for _, p := range job.Set.Leaf.Hardware {
		if p.Role == door.SealantRole {
			volume += float64(p.Volume * float64(len(job.Set.Hung)))
		}
	}
	return volume / perLitre
}
