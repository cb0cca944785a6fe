package catalog

import "stilewright/model/length"

// A Scale is a drawing's scale: Paper on the sheet stands for Real.
type Scale struct {
	Name   string   // as written on the sheet: "1:5", `3" = 1'-0"`
	Also   []string // other ways to write it
	Metric bool     // an ISO scale; false for an inch scale
	Paper  int64
	Real   int64
	Source Source
}

// OnPaper is how long a real length of up to length.Longest is drawn, to the
// nearest nanometre.
func (s Scale) OnPaper(real length.Length) length.Length {
	return (real * length.Length(s.Paper)).Nearest(length.Length(s.Real)) / length.Length(s.Real)
}

// ScaleNamed is the scale of that name.
func ScaleNamed(name string) (Scale, error) {
	rows := append(ISOScales(), InchScales()...)
	return find("scale", name, rows, func(s Scale) []string { return append([]string{s.Name}, s.Also...) })
}

// ISOScales lists the scales of ISO 5455 that door drawings use, largest first.
func ISOScales() []Scale {
	source := Source{Work: "ISO 5455 scales", Edition: "1979", Place: "recommended scales", Confirmed: ReadOnce, Note: "read in part"}
	scale := func(name string, paper, real int64) Scale { return Scale{name, nil, true, paper, real, source} }
	return []Scale{
		scale("10:1", 10, 1), scale("5:1", 5, 1), scale("2:1", 2, 1), scale("1:1", 1, 1),
		scale("1:2", 1, 2), scale("1:5", 1, 5), scale("1:10", 1, 10), scale("1:20", 1, 20),
		scale("1:50", 1, 50), scale("1:100", 1, 100), scale("1:200", 1, 200),
	}
}

// InchScales lists the architectural inch scales, largest first.
func InchScales() []Scale {
	source := Source{Work: "architectural inch scales", Edition: "customary", Place: "architect's scale rule", Confirmed: FromMemory}
	scale := func(name, also string, real int64) Scale { return Scale{name, []string{also}, false, 1, real, source} }
	return []Scale{
		scale("full size", `12" = 1'-0"`, 1),
		scale(`6" = 1'-0"`, "half size", 2),
		scale(`3" = 1'-0"`, "quarter size", 4),
		scale(`1 1/2" = 1'-0"`, `1 1/2" = 1'`, 8),
		scale(`1" = 1'-0"`, `1" = 1'`, 12),
		scale(`3/4" = 1'-0"`, `3/4" = 1'`, 16),
		scale(`1/2" = 1'-0"`, `1/2" = 1'`, 24),
		scale(`3/8" = 1'-0"`, `3/8" = 1'`, 32),
		scale(`1/4" = 1'-0"`, `1/4" = 1'`, 48),
		scale(`3/16" = 1'-0"`, `3/16" = 1'`, 64),
		scale(`1/8" = 1'-0"`, `1/8" = 1'`, 96),
	}
}
