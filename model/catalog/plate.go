package catalog

import (
	"fmt"
	"math"
)

// A PlateCoefficient is how a simply supported plate of one ratio of long to
// short side bends: deflection = Uniform·q·b⁴/(E·t³) and stress =
// Stress·q·b²/t² under a uniform q; deflection = Point·W·b²/(E·t³) under a load
// W at the centre. b is the short side; Poisson's ratio 0.3. They hold while
// the deflection is at most half the thickness and err on the safe side beyond.
type PlateCoefficient struct {
	ShortOverLong float64 // b/a: 1 square, 0 an endless strip
	Uniform       float64 // alpha
	Stress        float64 // beta
	Point         float64 // alpha of a central load
	Source        Source
	PointSource   Source
}

// PlateCoefficients lists the ratios from square to endless.
func PlateCoefficients() []PlateCoefficient {
	roark := func(c Confirmation, note string) Source {
		return Source{Work: "Roark's Formulas for Stress and Strain", Edition: "7th", Place: "Table 11.4, cases 1a and 1b", Confirmed: c, Note: note}
	}
	read := roark(ReadOnce, "within 0.6 % of the series solution")
	point := roark(ReadOnce, "")
	between := roark(Derived, "between 2 and an endless strip no row is read: straight in b/a between .1805 and .1851")
	row := func(ratio, alpha, beta, w float64, source Source) PlateCoefficient {
		return PlateCoefficient{1 / ratio, alpha, beta, w, read, source}
	}
	strip := func(ratio float64) float64 { return .1851 - float64((.1851-.1805)*2/ratio) }
	return []PlateCoefficient{
		row(1.0, .0444, .2874, .1267, point),
		row(1.2, .0616, .3762, .1478, point),
		row(1.4, .0770, .4530, .1621, point),
		row(1.6, .0906, .5172, .1715, point),
		row(1.8, .1017, .5688, .1770, point),
		row(2.0, .1110, .6102, .1805, point),
		row(3.0, .1335, .7134, strip(3), between),
		row(4.0, .1400, .7410, strip(4), between),
		row(5.0, .1417, .7476, strip(5), between),
		row(math.Inf(1), .1421, .7500, .1851, point),
	}
}

// Plate is the coefficients of a plate a × b, straight in b/a between the
// rows, whichever side is the longer. It errs for sides not above 0.
func Plate(a, b float64) (PlateCoefficient, error) {
	if !(a > 0 && b > 0) || math.IsInf(a, 1) || math.IsInf(b, 1) {
		return PlateCoefficient{}, fmt.Errorf("a plate of %g by %g has no bending: both sides must be above 0", a, b)
	}
	ratio := min(a, b) / max(a, b)
	rows := PlateCoefficients()
	wider := rows[0]
	for _, row := range rows[1:] {
		if ratio >= row.ShortOverLong {
			return wider.between(row, ratio), nil
		}
		wider = row
	}
	return wider, nil
}

// between is the row of that ratio on the straight line from p to q.
func (p PlateCoefficient) between(q PlateCoefficient, ratio float64) PlateCoefficient {
	share := (p.ShortOverLong - ratio) / (p.ShortOverLong - q.ShortOverLong)
	mix := func(from, to float64) float64 { return from + float64(share*(to-from)) }
	p.ShortOverLong = ratio
	p.Uniform, p.Stress, p.Point = mix(p.Uniform, q.Uniform), mix(p.Stress, q.Stress), mix(p.Point, q.Point)
	return p
}

// PoissonFactor is what Uniform and Point are multiplied with for another
// Poisson's ratio than 0.3: (1 − ν²)/(1 − 0.3²).
func PoissonFactor(nu float64) float64 { return (1 - float64(nu*nu)) / (1 - .3*.3) }
