package movement

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// A Row is one size or clearance through the year.
type Row struct {
	Name  string           // "floor gap"
	Path  string           // of the key in a model it hangs on: where a finding about it stands
	Clear bool             // a clearance: at 0 something binds or falls; else a size
	At    [3]length.Length // by Time
	How   string           // what moves, in words
	Gone  string           // of a clearance: what happens when it is gone
}

// Least is the smallest the row becomes, and when.
func (r Row) Least() (length.Length, Time) {
	least := Hung
	for _, t := range Times() {
		if r.At[t] < r.At[least] {
			least = t
		}
	}
	return r.At[least], least
}

// A Table is a set through the year.
type Table struct {
	Airs [3]Air // by Time
	Wood Wood
	Rows []Row
}

// Row is the row of that name.
func (t Table) Row(name string) (Row, bool) {
	for _, r := range t.Rows {
		if r.Name == name {
			return r, true
		}
	}
	return Row{}, false
}

// Of is the table of a set resolved from the model. It errs only for air the
// moisture equation does not hold for, which no model's limits allow.
func Of(m spec.Spec, s door.Set) (Table, error) {
	airs, err := Airs(m)
	if err != nil {
		return Table{}, err
	}
	t := Table{Airs: airs, Wood: Wood{Species: s.Stock.Species}}
	if m.Stock.Grain == "quarter" {
		t.Wood.Grain = catalog.QuarterSawn
	}
	t.frame(s)
	t.hung(s)
	for _, sheet := range sheets(s.Leaf) {
		t.panel(s.Leaf, sheet)
	}
	return t, nil
}

// row enters a size and what it grows by at each time.
func (t *Table) row(r Row, built length.Length, grows func(from, to Air) length.Length) {
	for _, at := range Times() {
		r.At[at] = built + grows(t.Airs[Hung], t.Airs[at])
	}
	t.Rows = append(t.Rows, r)
}

// frame enters the leaf's own sizes.
func (t *Table) frame(s door.Set) {
	leaf := s.Leaf
	bottom, top := leaf.Rails[0].Width(), leaf.Rails[leaf.Rows()].Width()
	t.row(Row{Name: "leaf width", Path: "leaf.width", How: "two stiles across the grain"}, leaf.Width,
		func(from, to Air) length.Length { return t.Wood.Wide(2*leaf.Stile, from, to) })
	t.row(Row{Name: "leaf height at its rails", Path: "leaf.height", How: "bottom and top rail across the grain, all of it past the stiles' ends"}, leaf.Height,
		func(from, to Air) length.Length { return t.Wood.Wide(bottom+top, from, to) })
	t.row(Row{Name: "leaf thickness", Path: "leaf.thickness", How: "through the boards' thickness"}, leaf.Thickness,
		func(from, to Air) length.Length { return t.Wood.Thick(leaf.Thickness, from, to) })
}

// hung enters the clearances of the hung leaves.
func (t *Table) hung(s door.Set) {
	leaf := s.Leaf
	bottom, top := leaf.Rails[0].Width(), leaf.Rails[leaf.Rows()].Width()
	gap := s.Opening.Height - s.Track.HeadDrop - leaf.Height
	t.row(Row{Name: "floor gap", Path: "hanging.floor_gap", Clear: true, Gone: "the leaf drags on the floor", How: "less what the bottom rail grows"}, gap,
		func(from, to Air) length.Length { return -t.Wood.Wide(bottom, from, to) })
	t.row(Row{Name: "leaf top to track", Path: "hanging.track", Clear: true, Gone: "the leaf rubs below the track", How: "less what the top rail grows"}, s.Track.HeadDrop-s.Track.Height,
		func(from, to Air) length.Length { return -t.Wood.Wide(top, from, to) })
	t.row(Row{Name: "face gap", Path: "hanging.track", Clear: true, Gone: "passing leaves rub", How: "less half of what each of two leaves grows in thickness"}, s.Track.FaceGap,
		func(from, to Air) length.Length { return -t.Wood.Thick(leaf.Thickness, from, to) })
	overlaps, least := overlapsOf(s)
	if overlaps > 0 {
		t.row(Row{Name: "overlap", Path: "hanging.overlap", Clear: true, Gone: "one sees between the leaves", How: "what all leaves grow in width, shared by the overlaps"}, least,
			func(from, to Air) length.Length {
				return t.Wood.Wide(2*leaf.Stile, from, to) * length.Length(len(s.Hung)) / length.Length(overlaps)
			})
	}
}

// overlapsOf counts the overlaps of the closed leaves, and is the least of them.
func overlapsOf(s door.Set) (count int, least length.Length) {
	for i := 1; i < len(s.Hung); i++ {
		if s.Hung[i].Channel == s.Hung[i-1].Channel {
			continue
		}
		over := s.Hung[i-1].At.X + s.Leaf.Width - s.Hung[i].At.X
		if count == 0 || over < least {
			least = over
		}
		count++
	}
	return count, least
}

// A sheet is the panel of some lites, and its largest ones.
type sheet struct {
	door.Panel
	solid      bool
	wide, high length.Length
	rails      length.Length // widths of the rails below and above the highest one, beyond what seats take
}

// sheets are the leaf's sheets.
func sheets(leaf door.Leaf) []sheet {
	all := []sheet{{Panel: leaf.Panel}}
	if leaf.SolidPanel != nil {
		all = append(all, sheet{Panel: *leaf.SolidPanel, solid: true})
	}
	for i := range all {
		sh := &all[i]
		grow := 2 * (leaf.Rabbet.Width - sh.EdgeGap)
		for _, lite := range leaf.Lites {
			if lite.Solid != sh.solid {
				continue
			}
			sh.wide = max(sh.wide, lite.Sight.Width()+grow)
			if high := lite.Sight.Height() + grow; high > sh.high {
				sh.high = high
				sh.rails = leaf.Rails[lite.Row].Width() + leaf.Rails[lite.Row+1].Width()
			}
		}
	}
	return all
}

// panel enters a sheet's clearances in its seat.
func (t *Table) panel(leaf door.Leaf, sh sheet) {
	name, path := "panel", "panel.edge_gap"
	if sh.solid {
		name, path = "solid panel", "panel.solid.edge_gap"
	}
	across := func(from, to Air) length.Length { return -Sheet(sh.Material, sh.wide, from, to).Half() }
	up := func(from, to Air) length.Length {
		return -(Sheet(sh.Material, sh.high, from, to) + t.Wood.Wide(sh.rails, from, to).Half()).Half()
	}
	t.row(Row{Name: name + " edge gap across", Path: path, Clear: true, Gone: "the panel jams and bows", How: "less half of what the panel's width grows"}, sh.EdgeGap, across)
	t.row(Row{Name: name + " edge gap up and down", Path: path, Clear: true, Gone: "the panel jams and bows", How: "less half of what the panel's height grows and the rails beside it take"}, sh.EdgeGap, up)
	loose := func(from, to Air) length.Length { return -2 * max(across(from, to), up(from, to)) }
	t.row(Row{Name: name + " least bite", Path: path, Clear: true, Gone: "the panel, pushed to one side, slips off its shoulder", How: "rabbet less twice the larger edge gap"}, sh.LeastBite, loose)
	switch leaf.HeldBy {
	case "edge-washer":
		t.row(Row{Name: name + " least washer lap", Path: "panel.held_by.washer.thickness", Clear: true, Gone: "the panel, pushed to one side, slips past the washers on the other", How: "washer less twice the larger edge gap"}, leaf.Washer.Thickness-2*sh.EdgeGap, loose)
	case "stop", "bead":
		t.row(Row{Name: name + " least " + leaf.HeldBy + " lap", Path: "panel.held_by.stop", Clear: true, Gone: "the panel, pushed to one side, slips past the " + leaf.HeldBy + " on the other", How: leaf.HeldBy + "'s width less twice the larger edge gap"}, leaf.StripOf(door.Lite{Solid: sh.solid}).Width-2*sh.EdgeGap, loose)
	}
}

// Text is the table in words for a plain terminal, sizes in the style.
func (t Table) Text(style length.Style) string {
	out := fmt.Sprintf("%s, %s\n", t.Wood.Species.Name, [...]string{"flatsawn", "quartersawn"}[t.Wood.Grain])
	for _, at := range Times() {
		out += fmt.Sprintf("%-7s %v\n", at, t.Airs[at])
	}
	for _, r := range t.Rows {
		out += fmt.Sprintf("%-32s %12s %12s %12s\n", r.Name, style.Format(r.At[Hung]), style.Format(r.At[Winter]), style.Format(r.At[Summer]))
	}
	return out
}
