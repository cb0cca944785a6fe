package solid

import (
	"math"

	"stilewright/model/length"
)

// A sample is a plane across an axis that stands for a stretch of it.
type sample struct {
	at        length.Length
	middle    float64 // mm; where on the axis the stretch has its centre
	thickness float64 // mm; what the section's area counts for
}

// samples are the planes to cut between levels in order: one half-way between
// two where sections are constant there, else so many that the sections' areas
// add up to the volume to 1e-6.
func samples(levels []length.Length, even bool) []sample {
	var all []sample
	for i := 1; i < len(levels); i++ {
		from, to := levels[i-1], levels[i]
		if even {
			all = append(all, sample{from + (to-from)/2, (from.MM() + to.MM()) / 2, (to - from).MM()})
			continue
		}
		const parts = 4 // since round prisms may also meet one another between levels
		for _, part := range (to - from).Split(parts) {
			all = append(all, quadrature(from, part)...)
			from += part
		}
	}
	return all
}

// quadrature is Gauss's rule on the stretch of the given size, bent so that it
// bears areas that set in as a square root, as a round prism's do.
func quadrature(from, size length.Length) []sample {
	const order = 16
	all := make([]sample, order)
	half := size.MM() / 2
	for i := range all {
		// Newton's way to the i-th root of the Legendre polynomial.
		x, slope := math.Cos(math.Pi*(float64(i)+0.75)/(order+0.5)), 0.0
		for range 8 {
			before, value := 1.0, x
			for n := 2.0; n <= order; n++ {
				before, value = value, (float64((2*n-1)*x*value)-float64((n-1)*before))/n
			}
			slope = order * (float64(x*value) - before) / (float64(x*x) - 1)
			x -= value / slope
		}
		weight := 2 / ((1 - float64(x*x)) * float64(slope*slope))
		bent := float64(x*(3-float64(x*x))) / 2
		at := from + length.Round(half*(1+bent))
		all[i] = sample{at, at.MM(), half * weight * 1.5 * (1 - float64(x*x))}
	}
	return all
}
