package guide

import (
	"math"

	"stilewright/model/catalog"
	"stilewright/model/length"
)

// pound is a pound in kg.
const pound = catalog.Pound

// diagonal is the length from corner to corner of a rectangle: √(w² + h²).
func diagonal(w, h length.Length) length.Length {
	return length.Round(math.Sqrt(float64(w.MM()*w.MM()) + float64(h.MM()*h.MM())))
}

// gravity turns kg into N: the standard acceleration, m/s² (exact by definition).
const gravity = 9.80665
