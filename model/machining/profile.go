package machining

import "stilewright/model/length"

// A Size is how large a sheet or a machine's table is. Which side is which does
// not matter: a part may lie either way.
type Size struct{ Width, Height length.Length }

// holds tells whether a piece fits, either way round.
func (z Size) holds(w, h length.Length) bool {
	return w <= z.Width && h <= z.Height || h <= z.Width && w <= z.Height
}

// A Profile is what a shop can do. The zero limits ask for nothing.
type Profile struct {
	Tool         Tool
	InsideRadius length.Length // least radius a tool or beam leaves inside
	LeastFeature length.Length // narrowest opening it cuts
	LeastBore    length.Length // thinnest drill
	Bridge       length.Length // narrowest wall left standing
	HolePercent  int           // least hole, in percent of the thickness
	Sheet        Size          // largest sheet of panel material
	Machine      Size          // the table
}
