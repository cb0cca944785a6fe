package catalog

import "math"

// An Air is the air of a room at one time of the year.
type Air struct {
	Name     string  // "winter"
	Celsius  float64 // temperature, °C
	Humidity float64 // relative humidity, percent
	Source   Source
}

// AirOf is the air of that name.
func AirOf(name string) (Air, error) {
	return find("season", name, Airs(), func(s Air) []string { return []string{s.Name} })
}

// Airs lists the usual air indoors: when doors are made and hung, at its
// driest, and at its most humid.
func Airs() []Air {
	indoors := practice("heated in winter, not cooled in summer; measure the room, or state your own")
	return []Air{{"hung", 21, 45, indoors}, {"winter", 20, 30, indoors}, {"summer", 27, 60, indoors}}
}

// stiffening is A of w/t + A·(w/t)³ = the small-deflection w/t: see Stiffened.
const stiffening = .272

// Stiffened is how far a plate, simply supported on edges free to draw in,
// bends under a load at its centre, in thicknesses, when the theory of small
// deflections says linear, in thicknesses, from 0 up: as it dishes it stretches
// and resists more. It is the root of x + 0.272·x³ = linear. See
// StiffenedSource.
func Stiffened(linear float64) float64 {
	x := min(linear, math.Cbrt(linear/stiffening)) // above the root, from where Newton's steps only go down
	for range 40 {
		x -= (x + float64(stiffening*x*x*x) - linear) / (1 + float64(3*stiffening*x*x))
	}
	return x
}

// StiffenedSource is where Stiffened comes from.
func StiffenedSource() Source {
	return Source{Work: "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells", Edition: "2nd, 1959", Place: "Table 82", Confirmed: FromMemory,
		Note: "circular plate loaded at its centre, simply supported, edge free to move; taken for rectangles"}
}

// servicePractices are the rules of what doors bear in use.
func servicePractices() []Practice {
	lift := Source{Work: "NIOSH revised lifting equation", Edition: "1991", Place: "load constant", Confirmed: ReadTwice, Note: "23 kg (51 lb) under ideal conditions; a leaf is none"}
	cutout := Source{Work: "Architectural Woodwork Standards", Edition: "edition 1, 2009", Place: "section 10, 4.4.6.10", Confirmed: ReadOnce, Note: "a rule for casework doors"}
	return []Practice{
		{"lift-alone", "one person lifts at most 23 kg (kg)", 0, 23, lift},
		{"hardware-to-glass", "at least 3/8 in is left between what is milled for hardware and the glass's cutout", 3 * in / 8, 0, cutout},
		{"hand-push", "a panel bears the push of a hand at its middle (N)", 0, 150, practice("34 lbf: a firm push, no body's weight")},
	}
}
