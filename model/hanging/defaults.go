package hanging

import "stilewright/model/length"

const houseRule = "common practice, no source"

// A choice is a default in both units, and why.
type choice struct {
	inch, metric length.Length
	reason       string
}

// in gives the default in the units.
func (c choice) in(u length.Unit) length.Length {
	if u == length.Inches {
		return c.inch
	}
	return c.metric
}

const (
	inch = length.Inch
	mm   = length.Millimetre
)

// Our defaults.
var (
	lining      = choice{3 * inch / 4, 18 * mm, "the usual board or plaster that lines a head"}
	spacing     = choice{16 * inch, 400 * mm, "keeps a track straight, and meets framing at its usual centres"}
	screwEnd    = choice{2 * inch, 50 * mm, "first screw from the track's end: near it, and clear of the split end"}
	screwStep   = choice{inch / 4, 5 * mm, "lengths screws are sold in"}
	leastHold   = choice{inch, 25 * mm, "least thread in the framing"}
	trackWall   = choice{3 * inch / 32, 2 * mm, "typical wall of an extruded track"}
	fasciaEnd   = choice{2 * inch, 50 * mm, "first screw from the fascia's end, clear of splitting"}
	fasciaApart = choice{16 * inch, 400 * mm, "holds a thin board straight"}
)

const (
	defaultHeader = "spruce-pine-fir" // framing where the model names none
	gaugeOfTrack  = 10                // screw through the track
	gaugeOfFascia = 8
	gravity       = 9.80665 // N per kg, exact by convention
	permanent     = .9      // NDS load duration factor of what hangs for good (C_D, Table 2.3.2), from memory
)
