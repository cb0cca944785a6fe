package solid

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// ellipse stands in until plane has its own.
func ellipse(centre plane.Point, a, b length.Length, angle float64) plane.Path {
	var points []plane.Point
	sin, cos := math.Sincos(angle)
	for i := range 720 {
		y, x := math.Sincos(float64(i) * math.Pi / 360)
		x, y = x*a.MM(), y*b.MM()
		points = append(points, centre.Add(length.Round(x*cos-y*sin), length.Round(x*sin+y*cos)))
	}
	return plane.Polygon(points...)
}
