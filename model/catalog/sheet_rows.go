package catalog

// data is the source of a plastic's or glass's data sheet figures.
func data(c Confirmation, note string) Source {
	return Source{Work: "makers' data sheets", Edition: "undated", Place: noAddress, Confirmed: c, Note: note}
}

func floatGlass(c Confirmation, note string) Source {
	return Source{Work: "EN 572-1 basic soda-lime glass", Edition: "2012", Place: "general properties", Confirmed: c, Note: note}
}

// Sheets lists the sheet materials.
func Sheets() []SheetMaterial { return append(plastics(), append(glasses(), woodSheets()...)...) }

func plastics() []SheetMaterial {
	house := practice("interior: 3/8 in rabbets recommended for plastics, 1/4 in kept when pushed aside; 1/32 in to work with")
	acrylic := data(ReadOnce, "modulus 2800 to 3300; expansion read twice")
	poly := data(FromMemory, "expansion read twice")
	const clearance, bite = in / 32, in / 4
	return []SheetMaterial{
		{Name: "acrylic", Also: []string{"pmma", "acrylic glass"}, Clear: true, Brittle: true, Plastic: true,
			Density: 1190, E: 3100, Poisson: .37, Expansion: 72e-6, Bending: 117,
			Clearance: clearance, LeastBite: bite, Source: acrylic, House: house},
		{Name: "polycarbonate", Also: []string{"pc"}, Clear: true, Plastic: true,
			Density: 1200, E: 2350, Poisson: .375, Expansion: 68e-6, Bending: 93,
			Clearance: clearance, LeastBite: bite, Source: poly, House: house},
		{Name: "petg", Also: []string{"copolyester"}, Clear: true, Plastic: true,
			Density: 1270, E: 2100, Poisson: .38, Expansion: 68e-6, Bending: 77,
			Clearance: clearance, LeastBite: bite, Source: data(FromMemory, ""), House: house},
	}
}

func glasses() []SheetMaterial {
	house := practice("small interior panes in wood: 1/16 in each side, 1/4 in least bite")
	const clearance, bite = in / 16, in / 4
	read := floatGlass(ReadOnce, "expansion read twice; strength is the characteristic one")
	glass := func(name string, also []string, clear bool, bending float64, source Source) SheetMaterial {
		return SheetMaterial{Name: name, Also: also, Clear: clear, Brittle: true,
			Density: 2500, E: 70_000, Poisson: .2, Expansion: 9e-6, Bending: bending,
			Clearance: clearance, LeastBite: bite, Source: source, House: house}
	}
	tempered := Source{Work: "EN 12150-1 thermally toughened glass", Edition: "2015", Place: "mechanical strength", Confirmed: ReadOnce, Note: "strength read in a published text that quotes it; stiffness and mass as float glass"}
	laminated := floatGlass(FromMemory, "as float glass of the same total thickness; bends further under lasting load")
	mirror := floatGlass(FromMemory, "as float glass; needs full backing or a plastic film")
	return []SheetMaterial{
		glass("float glass", []string{"glass", "annealed glass"}, true, 45, read),
		glass("tempered glass", []string{"toughened glass"}, true, 120, tempered),
		glass("laminated glass", nil, true, 45, laminated),
		glass("mirror", []string{"mirror glass"}, false, 45, mirror),
	}
}

func woodSheets() []SheetMaterial {
	house := practice("wood sheets: 1/16 in each side, 1/4 in least bite")
	const clearance, bite = in / 16, in / 4
	sheet := func(name string, also []string, density, e, poisson, movement, bending float64, source Source) SheetMaterial {
		return SheetMaterial{Name: name, Also: also, Density: density, E: e, Poisson: poisson, Expansion: 6e-6,
			Movement: movement, Bending: bending, Clearance: clearance, LeastBite: bite, Source: source, House: house}
	}
	plywood := handbook("ch. 12, in-plane movement of plywood", FromMemory, "movement read in one published text, the rest from memory")
	mdf := handbook("ch. 12, linear expansion of fibreboard", FromMemory, "movement derived: 0.30 % from 50 to 90 % humidity over 11 points; the rest from memory")
	board := handbook("ch. 12", FromMemory, "")
	return []SheetMaterial{
		sheet("plywood", nil, 600, 7_000, .3, .0002, 35, plywood),
		sheet("mdf", []string{"medium density fibreboard", "medium density fiberboard", "fibreboard"}, 750, 3_000, .25, .0003, 25, mdf),
		sheet("hardboard", nil, 950, 4_500, .25, .0003, 35, board),
		sheet("particleboard", []string{"chipboard"}, 680, 2_500, .25, .0003, 13, board),
	}
}

// Humidities lists how far plastics have grown from dry, driest first.
func Humidities() []Humidity {
	read := data(ReadOnce, "growth of acrylic sheet with humidity")
	small := data(FromMemory, "saturation takes up about a third of a percent of water")
	return []Humidity{
		{"acrylic", 60, .002, read},
		{"acrylic", 80, .003, read},
		{"acrylic", 100, .006, read},
		{"polycarbonate", 100, .001, small},
		{"petg", 100, .001, small},
	}
}
