package catalog

import (
	"fmt"

	"stilewright/model/length"
)

// A Class tells softwoods from hardwoods. The zero Class is no class.
type Class int

// The classes of wood.
const (
	Softwood Class = iota + 1
	Hardwood
)

// String is the class in a word.
func (c Class) String() string {
	switch c {
	case Softwood:
		return "softwood"
	case Hardwood:
		return "hardwood"
	}
	return "unclassed"
}

// A Grain is how the year rings lie in a board. The zero Grain is FlatSawn, the
// one that moves more.
type Grain int

// The grains.
const (
	FlatSawn    Grain = iota // width along the rings: moves by the tangential coefficient
	QuarterSawn              // width across the rings: moves by the radial coefficient
)

// A Wood is one species, or a commercial group of them.
type Wood struct {
	Name  string   // "ponderosa pine"
	Also  []string // other names it goes by
	Class Class

	Radial     float64 // C_R: change of size per size and percent moisture, quartersawn
	Tangential float64 // C_T: the same, flatsawn
	Movement   Source

	ShrinkRadial     float64 // S_R: percent from green to oven-dry; optional
	ShrinkTangential float64 // S_T; optional

	Gravity  float64 // G: oven-dry mass over volume at 12 % moisture, times water
	MOR      float64 // modulus of rupture at 12 %, MPa, clear straight grain; optional
	MOE      float64 // modulus of elasticity at 12 %, MPa, from bending at span/depth 14; optional
	Strength Source

	NDS string // name of its NDSGravity row; empty when NDS groups it with none we hold
}

// Species is the wood of that name.
func Species(name string) (Wood, error) {
	return find("wood", name, Woods(), func(w Wood) []string { return append([]string{w.Name}, w.Also...) })
}

// Moisture limits of the linear movement coefficients, percent
// (Wood Handbook, FPL-GTR-190, Eq. 13-2). Beyond them the change is off by
// about a twentieth.
const (
	LeastMoisture = 6.0
	MostMoisture  = 14.0
)

// Coefficient is the change of size per size and percent of moisture.
func (w Wood) Coefficient(g Grain) float64 {
	if g == QuarterSawn {
		return w.Radial
	}
	return w.Tangential
}

// Moves is by how much a size across the grain grows (shrinks, when negative)
// as the wood goes from one moisture to another, in percent: ΔD = D·C·(to−from)
// (Wood Handbook, FPL-GTR-190, Eq. 13-2). Whoever leaves LeastMoisture to
// MostMoisture should say so beside the figure: see CheckMoisture.
func (w Wood) Moves(size length.Length, g Grain, from, to float64) length.Length {
	return length.Round(size.MM() * w.Coefficient(g) * (to - from))
}

// Density is the wood's density at 12 % moisture, kg/m³.
func (w Wood) Density() float64 { return WoodDensity(w.Gravity, 12) }

// WoodDensity is the density in kg/m³ of wood of specific gravity g (oven-dry
// mass over volume at that moisture) at moisture percent:
// 1000·g·(1 + moisture/100) (Wood Handbook, FPL-GTR-190, ch. 4).
func WoodDensity(g, moisture float64) float64 { return 1000 * g * (1 + moisture/100) }

// ScrewGravity is the specific gravity to take for screws, and its source: that
// of the wood's NDS group, or its own at 12 %, which is lower and so on the
// safe side.
func (w Wood) ScrewGravity() (float64, Source) {
	if w.NDS != "" {
		if row, err := NDSGravity(w.NDS); err == nil {
			return row.Gravity, row.Source
		}
	}
	return w.Gravity, w.Strength
}

// coefficient is C = S/(3000 − 20·S), S the total shrinkage in percent: Eq. 13-2
// from the shrinkage of Table 4-3 with fibre saturation at 30 % and sizes taken
// at 10 %. It reproduces the printed Table 13-5.
func coefficient(shrinkage float64) float64 { return shrinkage / (3000 - float64(20*shrinkage)) }

// coefficientExtractive is the same with fibre saturation at 22 %, as for
// redcedar and redwood: C = S/(2200 − 12·S).
func coefficientExtractive(shrinkage float64) float64 {
	return shrinkage / (2200 - float64(12*shrinkage))
}

// CheckMoisture errs when the moisture, in percent, lies where the linear
// movement coefficients no longer hold.
func CheckMoisture(percent float64) error {
	if percent >= LeastMoisture && percent <= MostMoisture {
		return nil
	}
	return fmt.Errorf("moisture %g %% is outside %g to %g %%, where the movement coefficients hold", percent, LeastMoisture, MostMoisture)
}
