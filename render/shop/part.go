package shop

import (
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/solid"
)

// A Part is one or more pieces of the set that are alike.
type Part struct {
	Labels    []string // in the leaf: "R2", "R3"
	Name      string   // "cross rail"
	Material  string
	Thickness length.Length // front to back
	Quantity  int           // in the whole set
	Sheet     bool          // cut from sheet material
	Solid     solid.Solid   // its lower left front corner at the origin
	Notes     []string      // what the shop must know
	Order     bool          // ordered cut to size: its file is an order drawing
	Instead   bool          // made instead of other parts of the list
}

// partsOf lists the distinct parts of a set that are cut to shape, in the order
// of the leaf.
func partsOf(s door.Set) []Part {
	var parts []Part
	for _, p := range s.Leaf.Parts {
		if p.Material == "" {
			continue
		}
		least, most := p.Solid.Bounds()
		one := Part{
			Labels: []string{p.Label}, Name: p.Name, Material: p.Material, Sheet: p.Role == door.PanelRole,
			Thickness: most.Y - least.Y, Quantity: len(s.Hung),
			Notes: filmed(s, p), Solid: p.Solid.Move(solid.Vec{X: -least.X, Y: -least.Y, Z: -least.Z}),
		}
		i := slices.IndexFunc(parts, func(o Part) bool { return o.alike(one) })
		if i < 0 {
			parts = append(parts, one)
			continue
		}
		parts[i].Labels = append(parts[i].Labels, p.Label)
		parts[i].Quantity += one.Quantity
	}
	return parts
}

// filmed tells which face of a panel carries film.
func filmed(s door.Set, p door.Part) []string {
	if film := s.Leaf.Panel.Film; p.Role == door.PanelRole && film != "" {
		up := map[string]string{"front": "up", "back": "down"}[film]
		return []string{"film on the " + film + " face, which lies " + up}
	}
	return nil
}

// alike tells whether two parts are made by the same files.
func (p Part) alike(o Part) bool {
	return p.Name == o.Name && p.Material == o.Material && p.Sheet == o.Sheet && sameSolid(p.Solid, o.Solid)
}

// sameSolid tells whether two solids are the same, cut by cut.
func sameSolid(a, b solid.Solid) bool {
	samePrism := func(a, b solid.Prism) bool {
		if a.Axis != b.Axis || a.From != b.From || a.To != b.To || len(a.Region) != len(b.Region) {
			return false
		}
		for i := range a.Region {
			if !slices.Equal(a.Region[i], b.Region[i]) {
				return false
			}
		}
		return true
	}
	return samePrism(a.Blank, b.Blank) &&
		slices.EqualFunc(a.Cuts, b.Cuts, func(a, b solid.Cut) bool { return a.For == b.For && samePrism(a.Prism, b.Prism) }) &&
		slices.Equal(a.Bores, b.Bores)
}
