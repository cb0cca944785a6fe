package catalog

import "stilewright/model/length"

// A Practice is a rule of the trade that turns on one size or one number.
type Practice struct {
	Name   string        // "intermediate-rail"
	Says   string        // the rule in a sentence
	Size   length.Length // the size it turns on; optional
	Number float64       // the number it turns on; optional
	Source Source
}

// Rule is the practice of that name.
func Rule(name string) (Practice, error) {
	return find("rule", name, Practices(), func(p Practice) []string { return []string{p.Name} })
}

// BradPin is the pin that small strips are fixed with: a brad of 18 gauge.
func BradPin() Practice {
	return Practice{"brad-pin", "small strips are pinned with brads of 18 gauge", 475 * mil / 10, 0,
		Source{Work: "brad and pin sizes", Edition: "undated web pages", Place: "bestnailers.com, finish nail and brad compared", Confirmed: ReadTwice,
			Note: "0.0475 in, and 1.24 to 1.25 mm; other pages give 1.02 mm, which is the bare wire of another gauge"}}
}

// Practices lists the rules.
func Practices() []Practice {
	aws := func(place, note string) Source {
		return Source{Work: "Architectural Woodwork Standards", Edition: "edition 1, 2009", Place: place, Confirmed: ReadOnce, Note: note}
	}
	house := practice("")
	return append(append(joineryPractices(), servicePractices()...), []Practice{
		{"intermediate-rail", "a stile-and-rail door over 60 in high gets a rail between top and bottom", 60 * in, 0, aws("section 10, 4.4.6.10", "a rule for casework doors")},
		{"frame-thickness", "a stile-and-rail door is at least 3/4 in thick", 3 * in / 4, 0, aws("section 10, 4.4.6.10", "plus or minus 1/32 in")},
		{"door-size-tolerance", "a blank door keeps its height, width and thickness within 1/16 in", in / 16, 0, aws("section 9, 4.1.17", "")},
		{"warp", "a door's corners lie within 1/4 in of one plane", in / 4, 0,
			Source{Work: "national window and door association warp limit", Edition: "undated", Place: "faq.constructionplace.com", Confirmed: ReadOnce, Note: "measured corner to corner"}},
		{"squareness", "a door's diagonals differ by at most 1/8 in", in / 8, 0,
			Source{Work: "WDMA I.S. 6A", Edition: "2013", Place: "table T-3", Confirmed: FromMemory}},
		{"hanger-reserve", "hangers are rated for at least 1.25 times the leaf's mass", 0, 1.25, house},
		{"hanger-least-inset", "a hanger's middle is at least 2 in from the leaf's side", 2 * in, 0, house},
		{"hanger-most-inset", "a hanger's middle is at most 4 in from the leaf's side", 4 * in, 0, house},
		{"hardware-mass", "hangers and guide of one leaf weigh about a pound (kg)", 0, poundKG, house},
		{"header-sag", "a header that carries sliding doors sags at most its span divided by 600", 0, 600, practice("L/360 is for cracking plaster, not for doors")},
		{"header-sag-most", "and at most 1/8 in", in / 8, 0, house},
		{"overlap-least", "leaves overlap at least 1 in when closed", in, 0,
			Source{Work: "bypass door sizing articles", Edition: "undated", Place: "engineerfix.com, bypass door rough opening", Confirmed: ReadTwice, Note: "1 to 1 1/2 in"}},
		{"floor-gap-hard", "over a hard floor leaves clear 1/4 to 3/8 in", 3 * in / 8, 0, house},
		{"floor-gap-carpet", "over carpet leaves clear up to 3/4 in", 3 * in / 4, 0, house},
		{"mid-rail-height", "a single cross rail stands 36 to 40 in above the floor", 38 * in, 0, house},
		{"rabbet-per-pass", "a router takes at most 1/4 in of depth a pass in hardwood", in / 4, 0,
			Source{Work: "routing article", Edition: "undated web page", Place: noAddress, Confirmed: ReadOnce, Note: "one page of low authority"}},
		BradPin(),
		{"groove-depth", "the groove of a frame-and-panel door is 3/8 to 1/2 in deep", 3 * in / 8, 0,
			Source{Work: "frame-and-panel articles", Edition: "undated web pages", Place: "woodworkworkshop.com, basic frame and panel", Confirmed: ReadTwice, Note: "a joiners' forum takes 3/8 in too, with the panel 1/4 in in"}},
	}...)
}
