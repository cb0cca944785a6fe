package catalog

import "stilewright/model/length"

// A Paper is a sheet size and the frame drawn on it.
type Paper struct {
	Name    string   // as in a model file: "A3", "arch-c"
	Also    []string // other names
	Metric  bool     // an ISO size, in whole millimetres
	Short   length.Length
	Long    length.Length
	Binding length.Length // left margin of the landscape sheet
	Sides   length.Length // right margin
	Ends    length.Length // top and bottom margin
	Source  Source        // of the size
	Border  Source        // of the margins
}

// Landscape is the sheet with its long side across: width, height.
func (p Paper) Landscape() (width, height length.Length) { return p.Long, p.Short }

// Portrait is the sheet with its short side across: width, height.
func (p Paper) Portrait() (width, height length.Length) { return p.Short, p.Long }

// PaperSize is the sheet of that name.
func PaperSize(name string) (Paper, error) {
	return find("paper", name, Papers(), func(p Paper) []string { return append([]string{p.Name}, p.Also...) })
}

// Papers lists the sheet sizes: ISO, then ANSI, then ARCH, small to large.
func Papers() []Paper { return append(isoPapers(), append(ansiPapers(), archPapers()...)...) }

func isoPapers() []Paper {
	size := Source{Work: "ISO 216 trimmed sizes", Edition: "2007", Place: "A series", Confirmed: ReadTwice}
	border := Source{Work: "ISO 5457 sizes and layout of drawing sheets", Edition: "1999", Place: "borders and frame", Confirmed: FromMemory}
	a := func(name string, short, long length.Length) Paper {
		return Paper{name, nil, true, short * mm, long * mm, 20 * mm, 10 * mm, 10 * mm, size, border}
	}
	return []Paper{a("A4", 210, 297), a("A3", 297, 420), a("A2", 420, 594), a("A1", 594, 841), a("A0", 841, 1189)}
}

func ansiPapers() []Paper {
	size := Source{Work: "ASME Y14.1 decimal inch drawing sheet size", Edition: "2020", Place: "flat sheets A to E", Confirmed: ReadTwice, Note: "sizes read in published lists, edition from memory"}
	border := Source{Work: "ASME Y14.1 decimal inch drawing sheet size", Edition: "2020", Place: "margins", Confirmed: FromMemory}
	const half, hundredth = in / 2, in / 100
	return []Paper{
		{"letter", []string{"ansi-a"}, false, 8*in + half, 11 * in, 38 * hundredth, 38 * hundredth, 25 * hundredth, size, border},
		{"tabloid", []string{"ansi-b", "ledger"}, false, 11 * in, 17 * in, 62 * hundredth, 62 * hundredth, 38 * hundredth, size, border},
		{"ansi-c", nil, false, 17 * in, 22 * in, 50 * hundredth, 50 * hundredth, 75 * hundredth, size, border},
		{"ansi-d", nil, false, 22 * in, 34 * in, 100 * hundredth, 100 * hundredth, 50 * hundredth, size, border},
		{"ansi-e", nil, false, 34 * in, 44 * in, 50 * hundredth, 50 * hundredth, 100 * hundredth, size, border},
	}
}

func archPapers() []Paper {
	size := Source{Work: "architectural sheet sizes, National CAD Standard", Edition: "undated lists", Place: "ARCH A to E1", Confirmed: ReadTwice}
	border := practice("half an inch all round")
	arch := func(name string, short, long length.Length) Paper {
		return Paper{name, nil, false, short * in, long * in, in / 2, in / 2, in / 2, size, border}
	}
	return []Paper{arch("arch-a", 9, 12), arch("arch-b", 12, 18), arch("arch-c", 18, 24),
		arch("arch-d", 24, 36), arch("arch-e1", 30, 42), arch("arch-e", 36, 48)}
}
