package door

import "stilewright/model/length"

// houseRule is the source of every default of ours.
const houseRule = "common practice, no source"

// A choice is a default in both units, and why.
type choice struct {
	inch, metric length.Length
	reason       string
}

const (
	in = length.Inch
	mm = length.Millimetre
)

// Our defaults. A model may replace every one.
var (
	tick           = choice{in / 32, mm / 2, "the finest division of a tape: sizes that must be shared out are shared in whole ticks"}
	overlapSize    = choice{in + in/2, 40 * mm, "covers the gap between passing leaves from most angles"}
	meetingGap     = choice{in / 8, 3 * mm, "room for two leaves to close edge to edge without touching"}
	jambGap        = choice{0, 0, "the outer leaves close against the jambs"}
	floorGap       = choice{3 * in / 8, 10 * mm, "clears a hard floor and leaves a guide room"}
	setbackBare    = choice{in / 4, 6 * mm, "keeps the track behind the opening's front edge"}
	setbackFascia  = choice{in / 4, 6 * mm, "fascia, and room between it and the track"}
	trackShort     = choice{in / 16, 2 * mm, "so that the track goes in without forcing"}
	trackWall      = choice{3 * in / 32, 2 * mm, "typical wall of an extruded track"}
	rabbetWidth    = choice{3 * in / 8, 10 * mm, "bite enough for thin sheet, and what common rabbeting cutters mill"}
	cutterDiameter = choice{in + in/4, 32 * mm, "common bearing-guided rabbeting cutter"}
	perPass        = choice{in / 4, 6 * mm, "most depth taken in one pass"}
	edgeGapStep    = choice{in / 32, mm / 2, "edge gaps are rounded up to this"}
	cornerStep     = choice{in / 16, mm, "clips and radii are rounded up to this"}
	washerOutside  = choice{in / 2, 12 * mm, "common washer for the screw"}
	leastWasher    = choice{5 * in / 16, 8 * mm, "smaller ones do not seat under a screw head"}
	washerLap      = choice{in / 32, mm, "least lap on the panel pushed to one side"}
	washerStep     = choice{in / 32, mm / 2, "washers and spacers come in steps of this"}
	washerSpacing  = choice{8 * in, 200 * mm, "holds thin sheet flat between washers"}
	washerScrew    = choice{5 * in / 8, 16 * mm, "holds in the rabbet wall without reaching through a narrow rail"}
	washerCorner   = choice{in, 25 * mm, "least distance of a washer from a lite's corner"}
	washerPress    = choice{0, 0, "the washer just touches the sheet"}
	screwClear     = choice{in / 8, 3 * mm, "wood left between a screw and any face, edge or other screw"}
	leastThickness = choice{in / 2, 12 * mm, "thinner frames hold neither rabbet nor pocket screw"}
	leastMember    = choice{13 * in / 16, 20 * mm, "narrower members hold neither rabbet nor screw"}
	leastGrip      = choice{in / 4, 6 * mm, "least hold of a washer's screw in the wood"}
	leastLip       = choice{3 * in / 16, 5 * mm, "least wood in front of the panel: thinner breaks away"}
	leastLite      = choice{2 * in, 50 * mm, "smaller lites cannot be rabbeted by a guided cutter"}
	leastFaceGap   = choice{in / 8, 3 * mm, "passing leaves bow and swing"}
	outerHole      = choice{5 * in / 8, 16 * mm, "first pocket hole from a rail's free edge"}
	holeApart      = choice{5 * in / 8, 16 * mm, "least distance between pocket holes: the pockets are 3/8 in wide"}
	leastOverlap   = choice{in / 2, 12 * mm, "less lets one see between passing leaves"}
	plumbAgree     = choice{in / 8, 3 * mm, "widths and plumb measured by tape agree to about this"}
)

// Defaults of the grid of lites.
var muntinLeast = choice{2 * in, 50 * mm, "narrower ones hold no rabbet on both edges and the washers' screws between"}

// Our defaults for joints. Published proportions stand in catalog.Practices.
var (
	seatClear   = choice{in / 8, 3 * mm, "wood left between a joint and the panel's seat"}
	jointBehind = choice{in / 4, 6 * mm, "wood left behind a mortise or dowel hole, and between two from opposite sides"}
	mortiseRoom = choice{in / 16, 2 * mm, "room for glue at the bottom of a mortise"}
	dowelRoom   = choice{in / 16, 3 * mm / 2, "room for glue at the bottom of a dowel's hole"}
	dowelEdge   = choice{3 * in / 4, 20 * mm, "a dowel's middle from a rail's free edge"}
	dowelApart  = choice{3 * in, 75 * mm, "most distance between the middles of two dowels"}
	leastCheek  = choice{in / 8, 3 * mm, "thinner wood beside a tenon or dowel splits"}
	leastTenon  = choice{in / 4, 6 * mm, "narrower or shorter tenons break off"}
	leastEnd    = choice{in / 4, 6 * mm, "less wood between a mortise and the stile's end shears out"}
	haunchLeast = choice{3 * in / 8, 10 * mm, "shorter haunches do not keep the rail from twisting"}
	widestTenon = choice{4 * in, 100 * mm, "wider tenons swell and shrink enough to work loose"}
	leastLap    = choice{3 * in / 16, 5 * mm, "thinner laps break off"}
)

// Defaults of worked edges, pulls, the guide's groove and hangers.
var (
	edgeStop    = choice{in, 25 * mm, "the cutter's pilot cannot go into a lite's corner; an even stop looks meant"}
	edgeRest    = choice{in / 8, 3 * mm, "lip left at a worked sight edge: thinner chips"}
	pullRadius  = choice{in / 8, 3 * mm, "a cutter of twice that mills the mortise"}
	pullRim     = choice{in / 16, 3 * mm / 2, "rim of a common flush pull, that covers the mortise's edge"}
	pullFloor   = choice{in / 8, 3 * mm, "wood left behind a mortise, or between two"}
	pullBeside  = choice{in / 4, 6 * mm, "wood left beside a mortise, under the pull's rim"}
	pullUp      = choice{36 * in, 900 * mm, "where a hand falls; half-way up on a low leaf"}
	guideCheek  = choice{3 * in / 16, 5 * mm, "wood left on both sides of the guide: thinner splits"}
	hangerInset = choice{3 * in, 75 * mm, "near the leaf's ends, so that it does not tip"}
	hangerApart = choice{in, 25 * mm, "common plate with two screws along the leaf's top"}
	hangerScrew = choice{in + in/4, 32 * mm, "holds in a top rail's edge and ends well above the seat"}
)

// A hanger's screw, and its plate along the leaf's top.
const (
	gaugeOfHanger = 10
	hangerPlate   = 40 * mm
)

// defaultSpecies stands in when the model names none.
const defaultSpecies = "ponderosa pine"

// Indoor swing for a panel's edge gap, from fitting day to the far season.
const (
	indoorKelvin   = 15.0 // temperature change
	humidityDry    = 30.0 // relative humidity in heated winter, percent
	humidityMoist  = 60.0 // and in summer
	indoorReason   = "15 K and 30 to 60 % relative humidity indoors"
	gaugeOfWasher  = 6
	mostPasses     = 50 // of a rabbet: more are a slip of the pen
	defaultTrackIn = "two-channel"
	defaultTrackMM = "two-channel-35"
	defaultCorner  = "clipped"
	dowelSpecies   = "american beech" // what dowels are commonly made of
)

// in gives the default in the units.
func (c choice) in(u length.Unit) length.Length {
	if u == length.Inches {
		return c.inch
	}
	return c.metric
}

// Our defaults of seats, corners and holders.
var (
	grooveDepth  = choice{3 * in / 8, 10 * mm, "usual in frame-and-panel work, which takes 3/8 to 1/2 in"}
	grooveRoom   = choice{in / 64, mm / 2, "the panel goes in by hand and does not rattle"}
	grooveCorner = choice{in / 4, 6 * mm, "keeps the panel's corners out of the glue of the joints"}
	machineTool  = choice{in / 4, 6 * mm, "common tool for rabbets on a machine"}
	sealantBed   = choice{in / 8, 3 * mm, "thick enough to give when the panel moves"}
	leastBed     = choice{in / 16, 3 * mm / 2, "thinner beds tear"}
	leastStrip   = choice{3 * in / 16, 5 * mm, "thinner strips split"}
	stripLap     = choice{in / 8, 3 * mm, "least lap of a stop or bead on the panel pushed to one side"}
	stripHold    = choice{in / 2, 12 * mm, "holds a strip without reaching through a narrow rail"}
	stripSpacing = choice{6 * in, 150 * mm, "holds a strip tight between pins"}
	stripCorner  = choice{in, 25 * mm, "clear of the mitre, whose thin end splits"}
	pinStep      = choice{in / 8, 5 * mm, "pins and screws come in steps of this"}
)
