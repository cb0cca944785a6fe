package catalog

func handbook(place string, c Confirmation, note string) Source {
	return Source{Work: "Wood Handbook, FPL-GTR-190", Edition: "2010", Place: place, Confirmed: c, Note: note}
}

// The kinds of movement sources.
func movementRead() Source { return handbook("Table 13-5", ReadOnce, "") }

func movementDerived() Source {
	return handbook("Table 4-3 shrinkage", Derived, "C = S/(3000 - 20 S)")
}

func movementGuessed() Source {
	return handbook("Table 4-3 shrinkage", FromMemory, "C = S/(3000 - 20 S), shrinkage from memory")
}

func movementExtractive(c Confirmation) Source {
	return handbook("Table 4-3 shrinkage", c, "C = S/(2200 - 12 S), fibre saturation 22 %")
}

// strength is a row of Table 5-3, clear straight-grained wood at 12 %.
func strength(c Confirmation, note string) Source { return handbook("Table 5-3, 12 %", c, note) }

// psi and mpsi turn the inch-pound tables' figures into MPa: psi, million psi.
func psi(stress float64) float64 { return stress * psiMPa }

func mpsi(modulus float64) float64 { return modulus * 1e6 * psiMPa }

// shrinkage sets the movement of a wood from its total shrinkage in percent.
func (w Wood) shrinkage(radial, tangential float64, source Source) Wood {
	w.ShrinkRadial, w.ShrinkTangential, w.Movement = radial, tangential, source
	w.Radial, w.Tangential = coefficient(radial), coefficient(tangential)
	return w
}

// extractive is shrinkage for a wood whose fibre saturation is 22 %.
func (w Wood) extractive(radial, tangential float64, source Source) Wood {
	w = w.shrinkage(radial, tangential, source)
	w.Radial, w.Tangential = coefficientExtractive(radial), coefficientExtractive(tangential)
	return w
}

// printed sets the movement of a wood from printed coefficients.
func (w Wood) printed(radial, tangential float64, source Source) Wood {
	w.Radial, w.Tangential, w.Movement = radial, tangential, source
	return w
}

// shrunk adds the total shrinkage printed beside the coefficients.
func (w Wood) shrunk(radial, tangential float64) Wood {
	w.ShrinkRadial, w.ShrinkTangential = radial, tangential
	return w
}

// strong sets gravity, modulus of rupture and of elasticity, both MPa.
func (w Wood) strong(gravity, mor, moe float64, source Source) Wood {
	w.Gravity, w.MOR, w.MOE, w.Strength = gravity, mor, moe, source
	return w
}

func (w Wood) group(nds string) Wood {
	w.NDS = nds
	return w
}

func softwood(name string, also ...string) Wood {
	return Wood{Name: name, Also: also, Class: Softwood}
}

func hardwood(name string, also ...string) Wood {
	return Wood{Name: name, Also: also, Class: Hardwood}
}

// Woods lists the woods, softwoods first.
func Woods() []Wood { return append(softwoods(), hardwoods()...) }

func softwoods() []Wood {
	read, memory := strength(ReadOnce, ""), strength(FromMemory, "")
	derived, guessed := movementDerived(), movementGuessed()
	working := strength(ReadOnce, "same values in owic.oregonstate.edu/table-relative-working-and-physical-properties-inch-pound")
	white := strength(FromMemory, "modulus of elasticity read in one published text, the rest from memory")
	mixed := practice("mixed bundles: of lodgepole pine and Engelmann spruce the larger movement, the greater mass, the lesser strength")
	return []Wood{
		softwood("douglas-fir", "coast douglas-fir", "oregon pine").shrinkage(4.8, 7.6, derived).
			strong(.48, psi(12_400), mpsi(1.95), working).group("douglas fir-larch"),
		softwood("western hemlock", "hemlock", "hem-fir").shrinkage(4.2, 7.8, guessed).
			strong(.45, psi(11_300), mpsi(1.63), working).group("hem-fir"),
		softwood("white fir").shrinkage(3.3, 7.0, guessed).
			strong(.39, psi(9_800), mpsi(1.50), memory).group("hem-fir"),
		softwood("eastern white pine", "white pine").printed(.00071, .00212, movementRead()).shrunk(2.1, 6.1).
			strong(.35, psi(8_600), mpsi(1.24), white).group("eastern white pine"),
		softwood("western white pine").shrinkage(4.1, 7.4, guessed).
			strong(.35, 67, 10_100, read),
		softwood("ponderosa pine").shrinkage(3.9, 6.2, guessed).
			strong(.40, 65, 8_900, read).group("ponderosa pine"),
		softwood("sugar pine").shrinkage(2.9, 5.6, guessed).
			strong(.36, 57, 8_200, read),
		softwood("lodgepole pine").shrinkage(4.3, 6.7, guessed).
			strong(.41, psi(9_400), mpsi(1.34), memory).group("spruce-pine-fir"),
		softwood("loblolly pine", "southern yellow pine", "southern pine").shrinkage(4.8, 7.4, guessed).
			strong(.51, psi(12_800), mpsi(1.79), memory).group("southern pine"),
		softwood("longleaf pine").shrinkage(5.1, 7.5, guessed).
			strong(.59, psi(14_500), mpsi(1.98), memory).group("southern pine"),
		softwood("sitka spruce").shrinkage(4.3, 7.5, guessed).
			strong(.40, psi(10_200), mpsi(1.57), memory),
		softwood("engelmann spruce", "spruce").shrinkage(3.8, 7.1, guessed).
			strong(.35, psi(9_300), mpsi(1.30), working),
		softwood("spruce-pine-fir", "spf", "whitewood").shrinkage(4.3, 7.1, mixed).
			strong(.41, psi(9_300), mpsi(1.30), mixed).group("spruce-pine-fir"),
		softwood("western redcedar", "western red cedar", "red cedar", "cedar").extractive(2.4, 5.0, movementExtractive(Derived)).
			strong(.32, psi(7_500), mpsi(1.11), memory).group("western cedars"),
		softwood("redwood", "old-growth redwood").extractive(2.6, 4.4, movementExtractive(FromMemory)).
			strong(.40, 69, 9_200, read).group("redwood"),
	}
}

func hardwoods() []Wood {
	read, twice, memory := strength(ReadOnce, ""), strength(ReadTwice, ""), strength(FromMemory, "")
	printed := movementRead()
	alder := strength(FromMemory, "gravity and modulus of elasticity read in one published text, rupture from memory")
	redOak := strength(FromMemory, "northern red oak; gravity and rupture read in one published text, elasticity from memory")
	basic := strength(FromMemory, "gravity is on green volume, a little low")
	return []Wood{
		hardwood("red alder", "alder").printed(.00151, .00256, printed).shrunk(4.4, 7.3).
			strong(.41, psi(9_800), mpsi(1.38), alder),
		hardwood("white ash", "ash").printed(.00169, .00274, printed).shrunk(4.9, 7.8).
			strong(.60, psi(15_000), mpsi(1.74), twice),
		hardwood("american beech", "beech").printed(.00190, .00431, printed).shrunk(5.5, 11.9).
			strong(.64, psi(14_900), mpsi(1.72), twice),
		hardwood("yellow birch", "birch").printed(.00256, .00338, printed).shrunk(7.3, 9.5).
			strong(.62, psi(16_600), mpsi(2.01), twice),
		hardwood("paper birch", "white birch").printed(.00219, .00304, printed).shrunk(6.3, 8.6).
			strong(.55, psi(12_300), mpsi(1.59), memory),
		hardwood("black cherry", "cherry").printed(.00126, .00248, printed).shrunk(3.7, 7.1).
			strong(.50, psi(12_300), mpsi(1.49), twice),
		hardwood("sugar maple", "hard maple").printed(.00165, .00353, printed).shrunk(4.8, 9.9).
			strong(.63, psi(15_800), mpsi(1.83), twice),
		hardwood("red maple", "soft maple").printed(.00137, .00289, printed).
			strong(.54, psi(13_400), mpsi(1.64), memory).group("red maple"),
		hardwood("red oak", "northern red oak").printed(.00158, .00369, printed).
			strong(.63, psi(14_300), mpsi(1.82), redOak).group("red oak"),
		hardwood("white oak").printed(.00180, .00365, printed).
			strong(.68, psi(15_200), mpsi(1.78), twice).group("white oak"),
		hardwood("black walnut", "walnut").printed(.00190, .00274, printed).shrunk(5.5, 7.8).
			strong(.55, psi(14_600), mpsi(1.68), read),
		hardwood("yellow-poplar", "poplar", "tulip poplar", "tulipwood").shrinkage(4.6, 8.2, movementDerived()).
			strong(.42, psi(10_100), mpsi(1.58), read),
		hardwood("honduras mahogany", "mahogany").printed(.00172, .00238, printed).
			strong(.45, psi(11_500), mpsi(1.50), basic),
	}
}
