package catalog

import "stilewright/model/length"

// A Quarter is a hardwood thickness as graded and sold, in quarters of an inch.
// Its S1S and S2S sizes are usual, not guaranteed: 4/4 is also delivered at
// 15/16 and 3/4 in, so measure the boards.
type Quarter struct {
	Name  string        // "5/4"
	Rough length.Length // as sawn
	S1S   length.Length // surfaced on one side
	S2S   length.Length // surfaced on both sides
	Source
}

// Quarters lists the hardwood quarters. A 5/4 softwood board is another thing:
// PS 20 leaves 1 in of it, see NominalThicknesses.
func Quarters() []Quarter {
	grading := Source{
		Work: "NHLA hardwood grading thicknesses, surfaced sizes", Edition: "undated web tables",
		Place:     "engineeringtoolbox.com/hardwood-lumber-dimensions-chart-d_1462.html",
		Confirmed: ReadTwice, Note: "S2S is rough less 3/16 in up to 6/4, less 1/4 in above",
	}
	return []Quarter{
		{"4/4", in, 7 * in / 8, 13 * in / 16, grading},
		{"5/4", in + in/4, in + in/8, in + in/16, grading},
		{"6/4", in + in/2, in + 3*in/8, in + 5*in/16, grading},
		{"8/4", 2 * in, in + 13*in/16, in + 3*in/4, grading},
		{"12/4", 3 * in, 2*in + 13*in/16, 2*in + 3*in/4, grading},
		{"16/4", 4 * in, 3*in + 13*in/16, 3*in + 3*in/4, grading},
	}
}

// HardwoodQuarter is the row of a thickness in quarters: "8/4".
func HardwoodQuarter(name string) (Quarter, error) {
	return find("hardwood thickness", name, Quarters(), func(q Quarter) []string { return []string{q.Name} })
}
