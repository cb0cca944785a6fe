package catalog

import (
	"testing"

	"stilewright/model/length"
)

func mustSheet(t *testing.T, name string) SheetMaterial {
	t.Helper()
	m, err := Sheet(name)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// Areal masses in lb/ft², computed from the published densities.
func TestArealMass(t *testing.T) {
	for _, row := range []struct {
		sheet     string
		thickness length.Length
		lb        float64
	}{
		{"acrylic", in / 8, .774}, {"acrylic", 3 * in / 16, 1.161}, {"PMMA", in / 4, 1.548},
		{"polycarbonate", in / 8, .780}, {"glass", in / 8, 1.626}, {"float glass", in / 4, 3.251}, {"plywood", in / 8, .39},
	} {
		got := mustSheet(t, row.sheet).Areal(row.thickness) / poundKG * squareFootMM2 / squareMetreMM2
		near(t, row.sheet, got, row.lb, .0006)
	}
	near(t, "glass, kg/m² per mm (rule: 2.5)", mustSheet(t, "glass").Areal(mm), 2.5, 1e-12)
}

// 72 in of acrylic over 30 °F moves .086 in; 1800 mm over 15 K: acrylic 1.9,
// polycarbonate 1.8, glass .24 mm (computed from published coefficients).
func TestWarms(t *testing.T) {
	near(t, "acrylic, in", 72*mustSheet(t, "acrylic").Warms(0, 30/1.8), .086, .0006)
	near(t, "acrylic, mm", 1800*mustSheet(t, "acrylic").Warms(5, 20), 1.9, .06)
	near(t, "polycarbonate, mm", 1800*mustSheet(t, "polycarbonate").Warms(5, 20), 1.8, .06)
	near(t, "glass, mm", 1800*mustSheet(t, "glass").Warms(5, 20), .24, .006)
}

// Acrylic grows .2 % from dry to 60 % humidity, .3 to 80, .6 to 100 (supplier's
// page): 3.6 mm in 1800. MDF grows about .30 % from 50 to 90 %.
func TestSwells(t *testing.T) {
	acrylic := mustSheet(t, "acrylic")
	near(t, "acrylic 1800 mm", 1800*acrylic.Swells(0, 60), 3.6, 1e-9)
	near(t, "acrylic to 30", acrylic.Swells(0, 30), .001, 1e-12)
	near(t, "acrylic 70 to 90", acrylic.Swells(70, 90), .0045-.0025, 1e-12)
	near(t, "acrylic back", acrylic.Swells(100, 0), -.006, 1e-12)
	near(t, "acrylic beyond", acrylic.Swells(-20, 300), .006, 1e-12)
	near(t, "mdf", mustSheet(t, "mdf").Swells(50, 90), .0030, .0006)
	near(t, "glass", mustSheet(t, "glass").Swells(0, 100), 0, 0)
}

func TestSheetFlags(t *testing.T) {
	for name, want := range map[string][3]bool{ // clear, brittle, plastic
		"acrylic": {true, true, true}, "polycarbonate": {true, false, true}, "float glass": {true, true, false},
		"mirror": {false, true, false}, "plywood": {false, false, false},
	} {
		m := mustSheet(t, name)
		if got := [3]bool{m.Clear, m.Brittle, m.Plastic}; got != want {
			t.Errorf("%s: clear, brittle, plastic %v, want %v", name, got, want)
		}
	}
}

// Roark Table 11.4 against the series solution, which it matches within 0.6 %.
func TestPlate(t *testing.T) {
	for _, row := range []struct{ ratio, alpha float64 }{
		{1, .0444}, {1.2, .0617}, {1.4, .0774}, {1.6, .0907}, {1.8, .1017}, {2, .1106}, {3, .1336}, {4, .1400}, {5, .1416},
	} {
		for _, sides := range [][2]float64{{row.ratio, 1}, {500, 500 * row.ratio}} {
			got, err := Plate(sides[0], sides[1])
			if err != nil {
				t.Fatal(err)
			}
			near(t, "alpha", got.Uniform, row.alpha, .006*row.alpha)
		}
	}
	// 600 x 1800 acrylic, 50 Pa, E 3200 MPa: 10.0 mm at 3 mm thick, 1.25 at 6.
	got, _ := Plate(600, 1800)
	for thickness, want := range map[float64]float64{3: 10.0, 6: 1.25} {
		near(t, "deflection", got.Uniform*50e-6*600*600*600*600/(3200*thickness*thickness*thickness), want, .02)
	}
	if _, err := Plate(0, 600); err == nil {
		t.Error("a plate without width bends")
	}
	near(t, "Poisson .3", PoissonFactor(.3), 1, 1e-12)
}

// A longer plate of the same width never bends less.
func TestPlateGrows(t *testing.T) {
	before, _ := Plate(1, 1)
	for long := 1.05; long < 30; long *= 1.05 {
		now, err := Plate(long, 1)
		if err != nil || now.Uniform < before.Uniform || now.Stress < before.Stress || now.Point < before.Point {
			t.Errorf("ratio %g: %+v after %+v, %v", long, now, before, err)
		}
		before = now
	}
}
