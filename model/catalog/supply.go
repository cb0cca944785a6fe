package catalog

import "stilewright/model/length"

// Measures of the inch-pound trade in those this package counts in, all exact.
const (
	Quart      = litresPerGallon / 4            // L
	Pound      = poundKG                        // kg
	SquareFoot = squareFootMM2 / squareMetreMM2 // m²
)

// litresPerGallon is the US liquid gallon, 231 in³, exact.
const litresPerGallon = 3.785411784

// A Supply is something bought by the piece, the litre or the metre beside
// boards and sheets: how it is sold, how much is taken to spare, and, for what
// is spread, how far it goes.
type Supply struct {
	Name     string  // "paint"
	Unit     string  // what it is counted in: "each", "L", "m"
	Pack     float64 // units in one pack where one buys in inches
	PackMM   float64 // and where one buys in millimetres
	Spare    float64 // share bought over what is needed; optional
	Coverage float64 // m² one L covers once, or m of bead one unit gives; optional
	Coats    int     // by default; optional
	Mass     float64 // kg of one unit; optional: screws and washers are weighed by their size
	Source   Source
}

// SupplyOf is the supply of that name.
func SupplyOf(name string) (Supply, error) {
	return find("supply", name, Supplies(), func(s Supply) []string { return []string{s.Name} })
}

// spread is a coverage printed in square feet a gallon, in m²/L.
func spread(feetPerGallon float64) float64 {
	return feetPerGallon * squareFootMM2 / squareMetreMM2 / litresPerGallon
}

// Supplies lists what a set of doors takes beside boards and sheets.
func Supplies() []Supply {
	coverage := func(c Confirmation, note string) Source {
		return Source{Work: "paint coverage articles", Edition: "undated", Place: "engineerfix.com, explainthat.com", Confirmed: c, Note: note}
	}
	boxes := practice("sold by the hundred; a tenth is lost or stripped")
	hung := practice("two hangers a leaf, one guide where leaves overlap; half a leaf's hardware mass each")
	return []Supply{
		{"pocket screw", "each", 100, 100, .1, 0, 0, 0, boxes},
		{"washer screw", "each", 100, 100, .1, 0, 0, 0, boxes},
		{"edge washer", "each", 100, 100, .1, 0, 0, 0, boxes},
		{"hanger screw", "each", 100, 100, .1, 0, 0, 0, boxes},
		{"pin", "each", 500, 500, .1, 0, 0, 0, practice("sold by the hundreds; a tenth bends")},
		{"stop screw", "each", 100, 100, .1, 0, 0, 0, boxes},
		{"loose tenon", "each", 1, 1, .1, 0, 0, 0, practice("made or bought by the piece; a tenth fits badly")},
		{"dowel", "each", 50, 50, .1, 0, 0, 0, practice("sold by fifty; a tenth is lost or splits")},
		{"wood glue", "L", Quart / 2, .5, .2, 5, 1, 1.1, practice("200 g a square metre on one of two joining faces; a fifth stays in the bottle")},
		{"primer", "L", Quart, .75, .1, spread(275), 1, 1.3, coverage(ReadOnce, "200 to 350 ft² a gallon, the middle taken; mass from memory")},
		{"paint", "L", Quart, .75, .1, spread(350), 2, 1.3, coverage(ReadTwice, "350 to 400 ft² a gallon and coat, the lower taken; mass from memory")},
		{"clear finish", "L", Quart, .75, .1, spread(400), 3, 1, coverage(FromMemory, "400 to 500 ft² a gallon and coat, the lower taken")},
		{"sealant", "each", 1, 1, .1, 12, 0, .45, practice("a cartridge of 0.3 L gives about 12 m of a bead 5 to 6 mm across")},
		{"hanger", "each", 1, 1, 0, 0, 0, poundKG / 4, hung},
		{"floor guide", "each", 1, 1, 0, 0, 0, poundKG / 8, hung},
		{"boards", "each", 1, 1, .1, 0, 0, 0, practice("one board in ten bows after it is cut; leave it and take the spare")},
	}
}

// A StockLength is a length boards are commonly sold in.
type StockLength struct {
	Length length.Length
	Metric bool // where lumber is sold by the metre
	Source Source
}

// StockLengths lists the common board lengths, the shortest first: by the foot,
// then by the metre.
func StockLengths() []StockLength {
	feet := Source{Work: "American Softwood Lumber Standard PS 20", Edition: "PS 20-20", Place: "lengths in multiples of 1 ft", Confirmed: FromMemory, Note: "yards keep even feet"}
	metres := practice("sawmills keep every 0.5 or 0.6 m; half metres taken")
	var rows []StockLength
	for n := length.Length(8); n <= 16; n += 2 {
		rows = append(rows, StockLength{n * length.Foot, false, feet})
	}
	for n := length.Length(5); n <= 10; n++ {
		rows = append(rows, StockLength{n * length.Metre / 2, true, metres})
	}
	return rows
}

// A SheetSize is a size sheets of a kind are commonly sold in.
type SheetSize struct {
	For           string // "plastic", "wood": what kind of sheet
	Metric        bool
	Width, Height length.Length // Height is the longer side, along which grain and film run
	Source        Source
}

// SheetSizes lists the common sheets, the smallest of each kind first. Glass is
// bought cut to size, so it has none.
func SheetSizes() []SheetSize {
	inch := practice("the 4 ft by 8 ft sheet of the building trade, and its half")
	larger := practice("stocked by plastics dealers")
	metric := practice("the sheet of the European trade")
	return []SheetSize{
		{"plastic", false, 24 * in, 48 * in, inch},
		{"plastic", false, 48 * in, 96 * in, inch},
		{"plastic", false, 72 * in, 120 * in, larger},
		{"wood", false, 48 * in, 48 * in, inch},
		{"wood", false, 48 * in, 96 * in, inch},
		{"plastic", true, 1000 * mm, 2000 * mm, metric},
		{"plastic", true, 2050 * mm, 3050 * mm, metric},
		{"wood", true, 1250 * mm, 2500 * mm, metric},
	}
}

// A TrackLength is a length tracks are commonly sold in.
type TrackLength struct {
	Length length.Length
	Metric bool
	Source Source
}

// TrackLengths lists the common track lengths, the shortest first.
func TrackLengths() []TrackLength {
	sold := practice("sold for openings of 4, 5, 6 and 8 ft, and by the half metre")
	return []TrackLength{
		{48 * in, false, sold}, {60 * in, false, sold}, {72 * in, false, sold}, {96 * in, false, sold}, {144 * in, false, sold},
		{1500 * mm, true, sold}, {2000 * mm, true, sold}, {2500 * mm, true, sold}, {3000 * mm, true, sold}, {4000 * mm, true, sold},
	}
}

// Densities of what hangs and holds the leaves, kg/m³.
const (
	steelDensity     = 7850
	aluminiumDensity = 2700
)

// A Metal is what hardware is made of.
type Metal struct {
	Name    string
	Density float64 // kg/m³
	Source  Source
}

// Metals lists them: steel of screws and washers, aluminium of tracks.
func Metals() []Metal {
	book := Source{Work: "engineering handbooks", Edition: "undated", Place: "densities of metals", Confirmed: FromMemory}
	return []Metal{{"steel", steelDensity, book}, {"aluminium", aluminiumDensity, book}}
}

// MetalOf is the metal of that name.
func MetalOf(name string) (Metal, error) {
	return find("metal", name, Metals(), func(m Metal) []string { return []string{m.Name} })
}

// A LabelStock is a sheet of stick-on labels.
type LabelStock struct {
	Name          string
	Paper         string // name of the Paper it comes on
	Across, Down  int    // labels in a row, and rows
	Width, Height length.Length
	Left, Top     length.Length // paper's edge to the first label; Left is optional
	StepX, StepY  length.Length // from one label to the next
	Source        Source
}

// LabelStocks lists the common ones.
func LabelStocks() []LabelStock {
	return []LabelStock{
		{"letter-30", "letter", 3, 10, 2*in + 5*in/8, in, 3 * in / 16, in / 2, 2*in + 3*in/4, in, practice("thirty labels 1 in by 2 5/8 in on letter paper; print one on plain paper and hold it before a sheet of labels")},
		{"A4-24", "A4", 3, 8, 70 * mm, 37 * mm, 0, mm / 2, 70 * mm, 37 * mm, practice("twenty-four labels 70 mm by 37 mm on A4; print one on plain paper and hold it before a sheet of labels")},
	}
}

// Labels is the label stock of that name.
func Labels(name string) (LabelStock, error) {
	return find("label stock", name, LabelStocks(), func(l LabelStock) []string { return []string{l.Name} })
}
