package catalog

import "stilewright/model/length"

// A GlazingRule is one rule on glazing in doors, in our own words. None of them
// is advice on the law: ask the local authority.
type GlazingRule struct {
	Name   string        // "us-category-area"
	Says   string        // the rule in a sentence
	Area   float64       // mm², the area it turns on; optional
	Size   length.Length // the size it turns on; optional
	Source Source
}

// Glazing is the rule of that name.
func Glazing(name string) (GlazingRule, error) {
	return find("glazing rule", name, GlazingRules(), func(r GlazingRule) []string { return []string{r.Name} })
}

// categoryArea is 9 ft² in mm².
const categoryArea = 9 * squareFootMM2

// ImpactCategory is the impact category, 1 or 2, that 16 CFR 1201 asks of the
// glazing of a door whose largest single piece has that area in mm²: 1 up to
// 9 ft², 2 above. The rule: GlazingRules, "us-category-area".
func ImpactCategory(area float64) int {
	if area > categoryArea {
		return 2
	}
	return 1
}

// GlazingRules lists the rules.
func GlazingRules() []GlazingRule {
	cfr := func(c Confirmation, note string) Source {
		return Source{Work: "16 CFR 1201, architectural glazing materials", Edition: "as in force", Place: "1201.2", Confirmed: c, Note: note}
	}
	irc := func(c Confirmation, note string) Source {
		return Source{Work: "International Residential Code", Edition: "2015", Place: "R308", Confirmed: c, Note: note}
	}
	ad := func(c Confirmation, note string) Source {
		return Source{Work: "Approved Document K (England)", Edition: "2013", Place: "section 5, glazing", Confirmed: c, Note: note}
	}
	return []GlazingRule{
		{"us-category-area", "a door whose largest piece is at most 9 ft² needs impact category I, a larger piece category II", categoryArea, 0,
			cfr(ReadOnce, "patio, shower and tub doors are II at any size")},
		{"us-doors", "glazing in sliding and bifold doors counts as a hazardous place; openings that a 3 in ball cannot pass, and decorative glazing, are exempt", 0, 3 * in,
			irc(ReadOnce, "R308.4.1; the 2006 text named closet doors")},
		{"us-mark", "every pane carries its maker's permanent mark of the class it passed", 0, 0, irc(FromMemory, "R308.1")},
		{"uk-critical-height", "in doors, glazing from the floor to 1500 mm is critical", 0, 1500 * mm, ad(ReadTwice, "")},
		{"uk-wide-pane", "a door pane wider than 900 mm must break safely by class 2 of EN 12600, narrower ones by class 3", 0, 900 * mm, ad(FromMemory, "")},
		{"uk-small-pane-width", "panes of annealed glass at least 6 mm thick may stay when at most 250 mm wide and 0.5 m² large", .5 * squareMetreMM2, 250 * mm, ad(ReadOnce, "")},
		{"unmarked-plastic", "a plastic sheet without the mark of a passed test is no proof of safety glazing", 0, 0, practice("acrylic breaks into large sharp pieces; polycarbonate does not normally break; both burn")},
	}
}

// A SheetThickness is the least thickness of interior acrylic up to an area.
type SheetThickness struct {
	UpTo      float64       // mm²
	Thickness length.Length // least
	Source    Source
}

// SheetThicknesses lists the usual least thicknesses of interior acrylic.
func SheetThicknesses() []SheetThickness {
	note := Source{Work: "acrylic glazing guideline", Edition: "undated", Place: noAddress, Confirmed: ReadOnce, Note: "interior glazing held along all edges"}
	return []SheetThickness{
		{12 * squareFootMM2, in / 8, note},
		{32 * squareFootMM2, 3 * in / 16, note},
	}
}
