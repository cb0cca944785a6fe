package dimension

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

const um = length.Micrometre

// Sizes on paper. The gap, the overshoot, the arrow and the distances of rows are
// those of our acceptance list, after ISO 129-1 (from memory); the rest is
// common practice, no source.
const (
	leastText    = 2500 * um // height of a capital
	leastFirst   = 10_000 * um
	leastNext    = 6_000 * um
	usualNext    = 7_000 * um
	extensionGap = 1_000 * um // outline to extension line
	overshoot    = 2_000 * um // extension line past the dimension line
	arrowLong    = 2_500 * um
	arrowHalf    = 400 * um   // 2.5 mm long and 0.8 mm wide: 18.2° at the tip
	arrowTail    = 2_000 * um // line behind an arrow that points in from outside
	leastInside  = 6_500 * um // room for two arrows and some line between them
	tickReach    = 750 * um   // an oblique stroke's reach each way, at 45°
	originRadius = 750 * um   // circle at the origin of a running row
	dotRadius    = 500 * um   // dot at the tip of a leader
	lift         = 900 * um   // line to the lowest ink of the lettering on it
	side         = 600 * um   // least from lettering to an extension line beside it
	between      = 1_500 * um // least from figure to figure side by side
	rowClear     = 1_000 * um // least from the ink of one row to the next
	stub         = 500 * um   // the straight ends of a jogged leader, and its distance from the lettering
	leastFan     = 1_000 * um // height over which leaders slant
	mostFan      = 6_000 * um
)

// A pen draws one row, in its ground, about its dimension line.
type pen struct {
	ground
	line   length.Length // w of the dimension line
	height length.Length // of lettering
}

// out is the spot at u, d away from the dimension line, outwards.
func (p pen) outward(u, d length.Length) spot { return spot{u, p.line + p.out*d} }

// stroke is a run of straight lines.
func (p pen) stroke(spots ...spot) sheet.Stroke {
	var path plane.Path
	for i := 1; i < len(spots); i++ {
		path = append(path, plane.Line(p.point(spots[i-1]), p.point(spots[i])))
	}
	return sheet.Stroke{Layer: sheet.Dimensions, Weight: sheet.Narrow, Path: path}
}

// arrow is a head with its tip on the dimension line at u. Way is +1 when it
// points to greater u, else -1.
func (p pen) arrow(u, way length.Length) sheet.Fill {
	back := u - way*arrowLong
	return sheet.Fill{Layer: sheet.Dimensions, Tone: sheet.Ink, Region: plane.Region{plane.Polygon(
		p.point(spot{u, p.line}),
		p.point(spot{back, p.line + way*arrowHalf}),
		p.point(spot{back, p.line - way*arrowHalf}),
	)}}
}

// tick is an oblique stroke over the dimension line at u.
func (p pen) tick(u length.Length) sheet.Stroke {
	return p.stroke(spot{u - tickReach, p.line - tickReach}, spot{u + tickReach, p.line + tickReach})
}

// ring is the circle that marks the origin of a running row.
func (p pen) ring(u length.Length) sheet.Stroke {
	s := p.stroke()
	s.Path = plane.Circle(p.point(spot{u, p.line}), originRadius)
	return s
}

// level is lettering along the row, centred on u, its base line at w.
func (p pen) level(at spot, text string) sheet.Text {
	return sheet.Text{
		Layer: sheet.Dimensions, At: p.point(at), Height: p.height, Align: sheet.Middle,
		Rise: p.upward, String: text, Advance: lettering.Advance(text, p.height),
	}
}

// triangle is an arrow head of any direction, its tip at tip, coming from tail.
// False when the two are one point.
func triangle(tip, tail plane.Point) (plane.Path, bool) {
	dx, dy := (tip.X - tail.X).MM(), (tip.Y - tail.Y).MM()
	long := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if long == 0 {
		return nil, false
	}
	dx, dy = dx/long, dy/long
	corner := func(back, left length.Length) plane.Point {
		return tip.Add(
			length.Round(-float64(dx*back.MM())-float64(dy*left.MM())),
			length.Round(-float64(dy*back.MM())+float64(dx*left.MM())))
	}
	return plane.Polygon(tip, corner(arrowLong, arrowHalf), corner(arrowLong, -arrowHalf)), true
}
