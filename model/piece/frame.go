package piece

import "stilewright/model/solid"

// Sizes of frame pieces: a frame 35 thick with a rabbet 10 wide and 19 deep
// round a lite, milled with a cutter of radius 16.
const (
	thick, front, wide = 35.0, 16.0, 10.0
	cutter             = 16.0
	deep               = thick - front
)

// All are the test pieces.
func All() []Piece {
	return append(append(append(append(joints(), loose()...), seats()...), edges()...), fittings()...)
}

// kept is the area that the round corners keep back of the two ends of a
// rabbet's strip, wide across, beside the wall it runs along.
func kept() float64 { return 2 * strip(cutter, wide) }

// joints are pieces of tenon, lap and bridle joints.
func joints() []Piece {
	rabbets := []solid.Cut{
		cut("rabbet", solid.Y, front, thick, rounded(box(30, 90, 470, 900), cutter)),
		cut("rabbet", solid.Y, front, thick, rounded(box(30, -900, 470, 10), cutter)),
	}
	tenoned := with(block(500, thick, 100), append(rabbets,
		hole("tenon", at(-1, -1, -1), at(40, 11, 101)), hole("tenon", at(-1, 24, -1), at(40, 36, 101)),
		hole("tenon", at(460, -1, -1), at(501, 11, 101)), hole("tenon", at(460, 24, -1), at(501, 36, 101)),
		hole("tenon", at(-1, 11, -1), at(40, 24, 15)), hole("tenon", at(-1, 11, 85), at(40, 24, 101)),
		hole("tenon", at(460, 11, -1), at(501, 24, 15)), hole("tenon", at(460, 11, 85), at(501, 24, 101)))...)
	// Between the shoulders at 40 and 460 the rabbet's round corner is 10 to 16
	// from its end wall.
	between := 420*wide - 2*(corner(cutter)-strip(cutter, 10))
	stile := with(block(100, thick, 900),
		cut("rabbet", solid.Y, front, thick, rounded(box(90, 150, 300, 700), cutter)),
		hole("mortise", at(60, 11, 20), at(101, 24, 110)), hole("mortise", at(60, 11, 760), at(101, 24, 850)))
	lapped := with(block(100, thick, 600), hole("lap", at(-1, 17, -1), at(101, 36, 80)), hole("lap", at(-1, -1, 520), at(101, 17, 601)),
		cut("roundover", solid.Z, 0, 600, spandrel(0, 0, 6, 6)))
	forked := with(block(400, thick, 80), hole("bridle", at(-1, 12, -1), at(70, 23, 81)), hole("bridle", at(330, 12, -1), at(401, 23, 81)))
	tongue := with(block(100, thick, 600), hole("bridle", at(-1, -1, 500), at(101, 12, 580)), hole("bridle", at(-1, 23, 500), at(101, 36, 580)))
	return []Piece{
		{"tenoned rail", tenoned, 420*thick*100 - 2*deep*between + 2*40*13*70},
		{"mortised stile", stile, 100*thick*900 - deep*(550*wide-kept()) - 2*40*13*90},
		{"half-lapped stile", lapped, 100*thick*600 - 100*18*80 - 100*17*80 - corner(6)*520},
		{"forked rail", forked, 400*thick*80 - 2*70*11*80},
		{"stile for a fork", tongue, 100*thick*600 - 100*24*80},
	}
}

// loose are pieces of loose-tenon and dowel joints.
func loose() []Piece {
	end := rounded(box(11, 20, 24, 80), 6.5) // of a mortise in the end of a rail 100 high
	rail := with(block(400, thick, 100), cut("mortise", solid.X, -1, 30, end), cut("mortise", solid.X, 370, 401, end),
		cut("rabbet", solid.Y, front, thick, rounded(box(-10, 90, 410, 700), cutter)))
	// The rabbet's round corners are 10 to 16 from its end walls.
	strips := 400*wide - 2*(corner(cutter)-strip(cutter, 10))
	stile := with(block(100, thick, 800), cut("mortise", solid.X, 70, 101, rounded(box(11, 20, 24, 80), 6.5)),
		cut("mortise", solid.X, 70, 101, rounded(box(11, 720, 24, 780), 6.5)),
		cut("rabbet", solid.Y, front, thick, rounded(box(90, 90, 600, 710), cutter)))
	tip := rounded(box(14, 11, 46, 24), 6.5)
	muntin := with(block(60, thick, 500), cut("mortise", solid.Z, -1, 30, tip), cut("mortise", solid.Z, 470, 501, tip),
		cut("rabbet", solid.Y, front, thick, rounded(box(-300, -10, 10, 510), cutter)),
		cut("rabbet", solid.Y, front, thick, rounded(box(50, -10, 300, 510), cutter)))
	sides := 500*wide - 2*(corner(cutter)-strip(cutter, 10))
	dowelled := bored(bored(block(400, thick, 100), "dowel", 10, at(-1, 17.5, 25), at(32, 17.5, 25)), "dowel", 10, at(-1, 17.5, 75), at(32, 17.5, 75))
	return []Piece{
		{"rail for loose tenons", rail, 400*thick*100 - 2*30*slot(60, 13) - deep*strips},
		{"stile for loose tenons", stile, 100*thick*800 - 2*30*slot(60, 13) - deep*(620*wide-kept())},
		{"muntin with two rabbets", muntin, 60*thick*500 - 2*30*slot(32, 13) - 2*deep*sides},
		{"loose tenon", solid.Solid{Blank: prism(solid.X, 0, 60, end)}, 60 * slot(60, 13)},
		{"loose tenon upright", solid.Solid{Blank: prism(solid.Z, 0, 60, tip)}, 60 * slot(32, 13)},
		{"dowelled rail", dowelled, 400*thick*100 - 2*disc(5)*32},
		{"dowel", solid.Solid{Blank: prism(solid.X, 0, 60, circle(17.5, 25, 5))}, 60 * disc(5)},
		{"pinned tenon", bored(with(block(100, thick, 200), hole("mortise", at(40, 11, 50), at(101, 24, 150))), "pin", 8, at(70, -1, 100), at(70, 36, 100)),
			100*thick*200 - 60*13*100 - disc(4)*(thick-13)},
	}
}
