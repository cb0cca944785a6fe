package catalog

import (
	"math"
	"testing"
)

// Stiffened solves its equation, and is the small-deflection value of small
// deflections.
func TestStiffened(t *testing.T) {
	for _, linear := range []float64{0, 1e-6, .01, .5, 1.272, 4, 21, 1e3, 1e6} {
		x := Stiffened(linear)
		if back := x + .272*x*x*x; math.Abs(back-linear) > 1e-9*max(1, linear) {
			t.Errorf("Stiffened(%g) = %g, which stands for %g", linear, x, back)
		}
	}
	if got := Stiffened(1.272); math.Abs(got-1) > 1e-12 {
		t.Errorf("one thickness at 1 + 0.272: got %g", got)
	}
}

// Moisture against figures an article prints for wood indoors: 30 % humidity
// makes 6 % moisture, 50 % 9, 65 % 12, 80 % 16 (woodworkingnetwork.com,
// fdmc-magazine, "RH equivalent").
func TestMoistureOfSeasons(t *testing.T) {
	for humidity, printed := range map[float64]float64{30: 6, 50: 9, 65: 12, 80: 16} {
		got, err := Moisture(21, humidity)
		if err != nil || math.Abs(got-printed) > .5 {
			t.Errorf("at %g %% wood settles at %.2f %%; printed is %g (%v)", humidity, got, printed, err)
		}
	}
}
