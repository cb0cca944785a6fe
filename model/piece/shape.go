package piece

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

func circle(x, y, radius float64) plane.Path { return plane.Circle(point(x, y), length.Round(radius)) }

// seats are pieces of what holds a panel: grooves, rabbets to the front,
// reliefs of their corners, stops and sealant.
func seats() []Piece {
	through := with(block(100, thick, 600), hole("groove", at(88, 14, -1), at(101, 21, 601)))
	stopped := with(block(100, thick, 600), cut("groove", solid.X, 88, 101, rounded(box(14, 60, 21, 540), 3.5)))
	across := with(block(400, thick, 80), cut("groove", solid.Z, 70, 81, rounded(box(40, 14, 360, 21), 3.5)))
	ahead := with(block(100, thick, 600), cut("rabbet", solid.Y, -1, deep, rounded(box(90, 60, 300, 540), cutter)))
	bone := with(block(200, thick, 200), cut("rabbet", solid.Y, front, thick, dogbone(box(40, 40, 160, 160), 6)))
	tbone := with(block(200, thick, 200), cut("rabbet", solid.Y, front, thick, plane.Union(
		plane.Of(plane.Rect(point(40, 40), point(160, 160))),
		plane.Union(plane.Of(circle(46, 40, 6)), plane.Of(circle(154, 40, 6))))[0]))
	stop := solid.Solid{Blank: prism(solid.Y, 20, 33, plane.Polygon(point(0, 0), point(300, 0), point(288, 12), point(12, 12)))}
	bed := solid.Solid{Blank: prism(solid.Y, 16, 17.5, rounded(box(0, 0, 300, 500), 16), rounded(box(8, 8, 292, 492), 8).Reverse())}
	return []Piece{
		{"grooved stile", through, 100*thick*600 - 12*7*600},
		{"stile with a stopped groove", stopped, 100*thick*600 - 12*slot(480, 7)},
		{"rail with a stopped groove", across, 400*thick*80 - 10*slot(320, 7)},
		{"stile rabbeted to the front", ahead, 100*thick*600 - deep*(480*wide-kept())},
		{"dogbone relief", bone, 200*thick*200 - deep*(120*120+4*6*6*(math.Pi/2-1))},
		{"T-bone relief", tbone, 200*thick*200 - deep*(120*120+2*disc(6)/2)},
		{"mitred stop", stop, 13 * 288 * 12},
		{"sealant bed", bed, 1.5 * (300*500 - 4*corner(16) - 284*484 + 4*corner(8))},
	}
}

// dogbone is a box with a circle through each corner, about a point on its
// diagonal: a segment of a quarter turn beyond each wall.
func dogbone(b plane.Box, r float64) plane.Path {
	off := length.Round(r / math.Sqrt2)
	region := plane.Of(b.Path())
	for _, c := range [...]plane.Point{b.Min.Add(off, off), plane.At(b.Max.X-off, b.Min.Y+off), b.Max.Add(-off, -off), plane.At(b.Min.X+off, b.Max.Y-off)} {
		region = plane.Union(region, plane.Of(plane.Circle(c, length.Round(r))))
	}
	return region[0]
}

// edges are pieces with shaped edges.
func edges() []Piece {
	over := with(block(100, thick, 600),
		cut("roundover", solid.Z, 0, 600, spandrel(0, 0, 6, 6)), cut("roundover", solid.Z, 0, 600, spandrel(0, thick, 6, -6)),
		cut("roundover", solid.Z, 80, 520, spandrel(100, 0, -5, 5)),
		cut("groove", solid.X, 88, 101, rounded(box(14, 60, 21, 540), 3.5)))
	bevelled := with(block(100, thick, 600),
		cut("chamfer", solid.Z, 0, 600, bevel(0, 0, 4, 4)), cut("chamfer", solid.Z, 0, 600, bevel(0, thick, 4, -4)),
		cut("chamfer", solid.Z, 80, 520, bevel(100, 0, -3, 3)),
		cut("rabbet", solid.Y, front, thick, rounded(box(90, 60, 300, 540), cutter)))
	sight := with(block(400, thick, 80),
		cut("roundover", solid.X, 30, 370, spandrel(0, 80, 5, -5)),
		cut("rabbet", solid.Y, front, thick, rounded(box(-10, 70, 410, 300), cutter)))
	return []Piece{
		{"stile with roundovers and a groove", over, 100*thick*600 - 2*corner(6)*600 - corner(5)*440 - 12*slot(480, 7)},
		{"chamfered stile with a rabbet", bevelled, 100*thick*600 - 2*8*600 - 4.5*440 - deep*(480*wide-kept())},
		{"rail with a rounded sight edge", sight, 400*thick*80 - corner(5)*340 - deep*(400*wide-2*(corner(cutter)-strip(cutter, 10)))},
	}
}

// fittings are pieces with what hangs, guides and pulls a leaf.
func fittings() []Piece {
	round := with(block(100, thick, 400), cut("pull", solid.Y, -1, 12, circle(50, 200, 28)), cut("pull", solid.Y, 25, 36, circle(50, 200, 28)))
	rim := with(block(100, thick, 400), cut("pull", solid.Y, -1, 2, rounded(box(25, 120, 75, 280), 8)), cut("pull", solid.Y, -1, 14, rounded(box(30, 125, 70, 275), 5)))
	hung := bored(with(block(100, thick, 700),
		hole("guide", at(-1, 14, -1), at(101, 21, 18)),
		cut("roundover", solid.Z, 0, 700, spandrel(0, 0, 6, 6)),
		cut("rabbet", solid.Y, front, thick, rounded(box(90, 150, 300, 600), cutter))),
		"hanger", 5, at(50, 17.5, 701), at(50, 17.5, 640))
	return []Piece{
		{"round pulls", round, 100*thick*400 - (12+10)*disc(28)},
		{"pull with a stepped rim", rim, 100*thick*400 - 2*(50*160-4*corner(8)) - 12*(40*150-4*corner(5))},
		{"hung and guided stile", hung, 100*thick*700 - 100*7*18 - corner(6)*700 - deep*(450*wide-kept()) - disc(2.5)*60},
	}
}
