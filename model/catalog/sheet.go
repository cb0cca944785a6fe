package catalog

import "stilewright/model/length"

// A SheetMaterial is what a panel is cut from. Where makers differ it holds the
// usual figure; the user's own sheet may be entered over it.
type SheetMaterial struct {
	Name      string        // "polycarbonate"
	Also      []string      // other names it goes by
	Clear     bool          // seen through
	Brittle   bool          // breaks rather than bends: no pressing, no screws near its edge
	Plastic   bool          // a thermoplastic: moves with heat, drills and saws
	Density   float64       // kg/m³
	E         float64       // modulus of elasticity, MPa
	Poisson   float64       // Poisson's ratio
	Expansion float64       // linear, per K
	Movement  float64       // change per size and percent of wood moisture, in plane; 0 for what is not wood; optional
	Bending   float64       // bending strength, MPa; optional
	Clearance length.Length // working clearance per edge, before heat and moisture
	LeastBite length.Length // least bite by default, with the panel pushed to one side
	Source    Source        // of the material's own figures
	House     Source        // of Clearance and LeastBite
}

// A Humidity is how much a sheet has grown from dry at a relative humidity.
type Humidity struct {
	Sheet   string  // name of the SheetMaterial
	Percent float64 // relative humidity
	Growth  float64 // change per size, from dry
	Source  Source
}

// Sheet is the sheet material of that name.
func Sheet(name string) (SheetMaterial, error) {
	return find("sheet material", name, Sheets(), func(m SheetMaterial) []string { return append([]string{m.Name}, m.Also...) })
}

// room is the temperature in °C at which sheets settle with the air.
const room = 21

// Swells is by how much the sheet grows per size as the air goes from one
// relative humidity to another, in percent (shrinks, when negative). Humidities
// beyond 0 to 100 count as 0 and 100.
//
// A wood sheet follows the wood moisture at 21 °C; a plastic its Humidities,
// straight between the rows and from dry to the first.
func (m SheetMaterial) Swells(from, to float64) float64 { return m.growth(to) - m.growth(from) }

func (m SheetMaterial) growth(humidity float64) float64 {
	humidity = max(0, min(100, humidity))
	if m.Movement > 0 {
		moisture, err := Moisture(room, humidity)
		if err != nil { // only NaN gets here
			return 0
		}
		return m.Movement * moisture
	}
	var below Humidity // dry: 0 growth at 0 %
	for _, row := range Humidities() {
		if row.Sheet != m.Name {
			continue
		}
		if humidity <= row.Percent {
			share := (humidity - below.Percent) / (row.Percent - below.Percent)
			return below.Growth + float64(share*(row.Growth-below.Growth))
		}
		below = row
	}
	return below.Growth
}

// Warms is by how much the sheet grows per size as it goes from one temperature
// to another, in °C.
func (m SheetMaterial) Warms(from, to float64) float64 { return m.Expansion * (to - from) }

// Areal is the mass in kg of a square metre of the sheet.
func (m SheetMaterial) Areal(thickness length.Length) float64 {
	return m.Density * thickness.MM() / 1000
}
