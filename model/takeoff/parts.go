package takeoff

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// A Kind is what a part is cut from.
type Kind int

// The kinds of part.
const (
	Wooden   Kind = iota // from a board
	Sheeted              // from a sheet
	Hardware             // bought as it is
)

// A Size is a part's length along the grain (a panel's height), its width and
// its thickness.
type Size struct{ Length, Width, Thickness length.Length }

// A Part is one row of the cut list: parts of one job that are the same piece.
type Part struct {
	Job        int      // index into the Takeoff's Jobs
	Labels     []string // in a leaf: "R2", "R3"
	Name       string
	Kind       Kind
	Material   string
	Leaves     []string // labels of the leaves it is in; none: a part of the set
	PerLeaf    int
	Quantity   int // in the set
	Net        Size
	Rough      Size   // as crosscut: net length + allowance, the board's width and thickness; a panel's is its net size
	From       string // the board or sheet: "2x6 ponderosa pine"; empty for hardware
	SideBySide int    // how many are ripped from one block; 1 for most
	Operations []string
	Note       string
	Mass       float64 // kg, of one
}

// Label is all labels in one text: "R2, R3".
func (p Part) Label() string { return strings.Join(p.Labels, ", ") }

// Mark is the part in a layout: its labels, led by the job's letter where
// several are pooled.
func (t Takeoff) Mark(p Part) string {
	mark := strings.Join(p.Labels, "/")
	if len(p.Labels) > 3 {
		mark = p.Labels[0] + "..." + p.Labels[len(p.Labels)-1]
	}
	if letter := t.Letter(p.Job); letter != "" {
		return letter + "." + mark
	}
	return mark
}

// An item is a part with what the lists do not show.
type item struct {
	part  door.Part
	role  door.Role
	stile bool
}

// parts takes the parts off every set.
func (t *taker) parts() {
	for i, job := range t.jobs {
		var leaves []string
		for _, h := range job.Set.Hung {
			leaves = append(leaves, h.Label)
		}
		for _, p := range job.Set.Leaf.Parts {
			t.addPart(i, p, leaves)
		}
		for _, p := range job.Set.Leaf.Hardware {
			if strip(p.Role) {
				t.addPart(i, p, leaves)
			}
		}
		if f := job.Set.Fascia; f != nil {
			wood := job.Set.Stock.Species
			volume := f.Solid.Volume()
			t.addPart(i, door.Part{Label: "F", Name: "fascia", Role: door.RailRole, Material: wood.Name, Grain: solid.X, Solid: f.Solid, Volume: volume, Mass: volume * wood.Density() / 1e9}, nil)
		}
	}
}

// strip tells that a part of a leaf's hardware is cut from a board, not bought.
func strip(r door.Role) bool { return r == door.StopRole || r == door.BeadRole }

// addPart enters a part, or counts it with the row of the same piece.
func (t *taker) addPart(job int, p door.Part, leaves []string) {
	form := formOf(p)
	for i := range t.out.Parts {
		row := &t.out.Parts[i]
		if row.Job == job && len(row.Leaves) == len(leaves) && row.Name == p.Name && row.Material == p.Material && formOf(t.whole[i].part) == form {
			row.Labels = append(row.Labels, p.Label)
			row.PerLeaf++
			row.Quantity += max(1, len(leaves))
			return
		}
	}
	row := Part{Job: job, Labels: []string{p.Label}, Name: p.Name, Kind: kindOf(p), Material: p.Material,
		Leaves: leaves, PerLeaf: 1, Quantity: max(1, len(leaves)), Net: netOf(p), SideBySide: 1, Operations: t.operations(p), Mass: p.Mass}
	row.Rough = row.Net
	if strip(p.Role) {
		row.Note = "mitred at both ends; its length is to the long points"
	}
	t.out.Parts = append(t.out.Parts, row)
	t.whole = append(t.whole, item{part: p, role: p.Role, stile: p.Role == door.StileRole})
}

// kindOf tells what a part is cut from.
func kindOf(p door.Part) Kind {
	switch p.Role {
	case door.PanelRole:
		return Sheeted
	case door.StileRole, door.RailRole, door.MuntinRole, door.StopRole, door.BeadRole:
		return Wooden
	}
	return Hardware
}

// netOf is a part's size. Its length runs along the grain and its thickness from
// front to back; of a strip the thickness is the lesser of the two.
func netOf(p door.Part) Size {
	least, most := p.Solid.Bounds()
	x, y, z := most.X-least.X, most.Y-least.Y, most.Z-least.Z
	along, wide := z, x
	if p.Grain == solid.X {
		along, wide = x, z
	}
	if kindOf(p) == Hardware || strip(p.Role) {
		return Size{along, max(wide, y), min(wide, y)}
	}
	return Size{along, wide, y}
}

// formOf is a text that two parts share when one is the other moved: blank, cuts
// and bores from the least corner on, to the micrometre, which is more than
// rounding may part them by.
//
// Strips are alike when their sizes are: each has a mitre at both ends.
func formOf(p door.Part) string {
	if strip(p.Role) {
		return fmt.Sprint("strip", netOf(p))
	}
	least, _ := p.Solid.Bounds()
	body := p.Solid.Move(solid.Vec{X: -least.X, Y: -least.Y, Z: -least.Z})
	var said []string
	for _, c := range body.Cuts {
		said = append(said, c.For+prismForm(c.Prism))
	}
	for _, b := range body.Bores {
		said = append(said, fmt.Sprint(b.For, vecForm(b.From), vecForm(b.To), b.Diameter))
	}
	slices.Sort(said)
	return prismForm(body.Blank) + strings.Join(said, ";")
}

func prismForm(p solid.Prism) string {
	var outlines []string
	for _, path := range p.Region {
		outlines = append(outlines, pathForm(path))
	}
	slices.Sort(outlines)
	return fmt.Sprint(p.Axis, round(p.From), round(p.To), outlines)
}

// pathForm writes a closed path from its least corner on.
func pathForm(path plane.Path) string {
	start := 0
	for i, e := range path {
		if cmp.Or(cmp.Compare(round(e.From.X), round(path[start].From.X)), cmp.Compare(round(e.From.Y), round(path[start].From.Y))) < 0 {
			start = i
		}
	}
	var b strings.Builder
	for i := range path {
		e := path[(start+i)%len(path)]
		fmt.Fprint(&b, round(e.From.X), " ", round(e.From.Y), " ", e.Turn, "/")
		if e.Turn != plane.Straight {
			fmt.Fprint(&b, round(e.Centre.X), " ", round(e.Centre.Y))
		}
	}
	return b.String()
}

func vecForm(v solid.Vec) string { return fmt.Sprint(round(v.X), round(v.Y), round(v.Z)) }

func round(l length.Length) length.Length { return l.Nearest(length.Micrometre) / length.Micrometre }

// operations say what is cut away from a part and bored into it, with counts,
// in the order they first come.
func (t *taker) operations(p door.Part) []string {
	var order []string
	count := map[string]int{}
	add := func(what string) {
		if count[what]++; count[what] == 1 {
			order = append(order, what)
		}
	}
	for _, c := range p.Solid.Cuts {
		add(c.For)
	}
	for _, b := range p.Solid.Bores {
		add(b.For + " hole " + t.style.Format(b.Diameter))
	}
	if p.Role == door.PanelRole {
		t.corners(p, add)
	}
	for i, what := range order {
		if n := count[what]; n > 1 {
			order[i] = fmt.Sprintf("%d × %s", n, what)
		}
	}
	return order
}

// corners say what is done to a panel's four corners.
func (t *taker) corners(p door.Part, add func(string)) {
	for _, path := range p.Solid.Blank.Region {
		box := path.Bounds()
		for _, e := range path {
			switch at := e.Bounds(); {
			case e.Turn != plane.Straight:
				add("corner rounded " + t.style.Format(length.Round(e.Radius())))
			case at.Width() > 0 && at.Height() > 0 && at.Width() < box.Width().Half():
				add("corner clipped " + t.style.Format(at.Width()))
			}
		}
	}
}
