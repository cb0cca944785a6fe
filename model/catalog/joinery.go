package catalog

import "stilewright/model/length"

// A JoinerySize is a size that dowels, or mortise chisels and cutters, are sold
// in.
type JoinerySize struct {
	Size   length.Length
	Unit   length.Unit // the market it is sold in
	Source Source
}

// DowelFor is the largest dowel no thicker than half the frame, or the smallest
// there is.
func DowelFor(thickness length.Length, unit length.Unit) JoinerySize {
	var best JoinerySize
	for _, row := range Dowels() {
		if row.Unit == unit && (best.Size == 0 || 2*row.Size <= thickness) {
			best = row
		}
	}
	return best
}

// MortiseFor is the width of mortise nearest to a third of the frame's
// thickness, the wider one of two as near.
func MortiseFor(thickness length.Length, unit length.Unit) JoinerySize {
	var best JoinerySize
	for _, row := range MortiseWidths() {
		if row.Unit == unit && (best.Size == 0 || (3*row.Size-thickness).Abs() <= (3*best.Size-thickness).Abs()) {
			best = row
		}
	}
	return best
}

// Dowels lists the diameters of dowels, by market and size.
func Dowels() []JoinerySize {
	return joinerySizes(practice("diameters dowels are commonly sold in"),
		[]length.Length{in / 4, 5 * in / 16, 3 * in / 8, in / 2}, []length.Length{6 * mm, 8 * mm, 10 * mm, 12 * mm})
}

// MortiseWidths lists the widths that mortises are chopped, bored or routed to,
// by market and size.
func MortiseWidths() []JoinerySize {
	return joinerySizes(practice("widths mortise chisels and straight cutters are commonly sold in"),
		[]length.Length{in / 4, 5 * in / 16, 3 * in / 8, in / 2, 5 * in / 8, 3 * in / 4},
		[]length.Length{6 * mm, 8 * mm, 10 * mm, 12 * mm, 16 * mm, 20 * mm})
}

func joinerySizes(source Source, inch, metric []length.Length) []JoinerySize {
	var rows []JoinerySize
	for _, size := range inch {
		rows = append(rows, JoinerySize{size, length.Inches, source})
	}
	for _, size := range metric {
		rows = append(rows, JoinerySize{size, length.Millimetres, source})
	}
	return rows
}

// joineryPractices are the proportions of joints.
func joineryPractices() []Practice {
	students := func(c Confirmation, note string) Source {
		return Source{Work: "woodwork notes for students", Edition: "undated web page", Place: "geoffswoodwork.co.uk/mortise01.htm", Confirmed: c, Note: note}
	}
	rules := func(c Confirmation, note string) Source {
		return Source{Work: "mortise and tenon proportions", Edition: "undated web page", Place: "woodworkstuff.net/KnipMT.html", Confirmed: c, Note: note}
	}
	joints := func(c Confirmation, note string) Source {
		return Source{Work: "rules for mortice and tenon joints", Edition: "undated web page", Place: "diyinfo.org/wiki, constructing mortice and tenon joints", Confirmed: c, Note: note}
	}
	dowels := func(note string) Source {
		return Source{Work: "dowel joint sizes", Edition: "undated web page", Place: "superglobalcalculator.com, dowel joint size", Confirmed: ReadTwice, Note: note}
	}
	return []Practice{
		{"tenon-thickness", "a tenon is a third of the frame's thickness, taken to the nearest chisel", 0, 1.0 / 3, students(ReadTwice, "also woodworkstuff.net")},
		{"tenon-length", "a blind tenon goes two thirds through the stile", 0, 2.0 / 3, rules(ReadTwice, "1/2 to 2/3 in a second text")},
		{"tenon-width", "a tenon is at most about 4 in wide", 4 * in, 0, rules(ReadTwice, "and five times its thickness, above which joiners divide it")},
		{"haunch-width", "the haunch is a third of a corner rail's width", 0, 1.0 / 3, students(ReadTwice, "also diyinfo.org")},
		{"haunch-length", "a haunch is about as long as the tenon is thick, and at least 10 mm", 10 * mm, 0, students(ReadOnce, "in a groove, as long as that is deep")},
		{"mortise-behind", "a blind mortise leaves at least 4.5 mm of the stile behind it", 9 * mm / 2, 0, joints(ReadOnce, "")},
		{"mortise-room", "a mortise is 2 mm or 1/16 in deeper than its tenon", 2 * mm, 0, joints(ReadTwice, "1/16 to 1/8 in a second text")},
		{"dowel-thickness", "a dowel is a third to half as thick as the frame", 0, 1.0 / 2, dowels("a third as the least")},
		{"dowel-length", "a dowel goes 2 1/2 diameters into each part", 0, 5.0 / 2, dowels("")},
		{"dowel-room", "its hole is 1/16 in deeper", in / 16, 0, dowels("room for glue")},
	}
}
