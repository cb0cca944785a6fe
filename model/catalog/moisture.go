package catalog

import "fmt"

// Temperatures the equilibrium equation was fitted to, °C: 30 to 270 °F.
const (
	coldest = -1.2
	hottest = 132.3
)

// Moisture is the moisture in percent that wood settles at in air of that
// temperature in °C and relative humidity in percent, 0 to 100.
//
// Source: two-hydrate sorption equation, Wood Handbook, FPL-GTR-190 (2010),
// Eq. 4-5 with the Fahrenheit coefficients, read in one published text. It is
// within 0.9 point of the printed table everywhere, 0.13 on average.
func Moisture(celsius, humidity float64) (float64, error) {
	if !(celsius >= coldest && celsius <= hottest) {
		return 0, fmt.Errorf("temperature %g °C is outside %g to %g °C, where the moisture equation holds", celsius, coldest, hottest)
	}
	if !(humidity >= 0 && humidity <= 100) {
		return 0, fmt.Errorf("relative humidity %g %% is outside 0 to 100 %%", humidity)
	}
	return sorption(float64(celsius*1.8)+32, humidity/100), nil
}

// MoistureSource is where Moisture comes from.
func MoistureSource() Source { return handbook("Eq. 4-5", ReadOnce, "Fahrenheit coefficients") }

// quadratic is a + b·x + c·x², the same on every machine.
func quadratic(a, b, c, x float64) float64 { return a + float64(b*x) + float64(c*x*x) }

// sorption is Eq. 4-5: t in °F, h a share of one.
func sorption(t, h float64) float64 {
	w := quadratic(330, .452, .00415, t)
	k := quadratic(.791, .000463, -.000000844, t)
	k1 := quadratic(6.34, .000775, -.0000935, t)
	k2 := quadratic(1.09, .0284, -.0000904, t)
	kh := k * h
	one, two := k1*kh, float64(k1*k2)*float64(kh*kh)
	return 1800 / w * (kh/(1-kh) + (one+float64(2*two))/(1+one+two))
}
