package catalog

import (
	"fmt"

	"stilewright/model/length"
)

// A LinearTolerance is one span of ISO 2768-1: sizes above Over up to UpTo may
// differ by plus or minus the class's figure. 0 where the standard gives none.
type LinearTolerance struct {
	Over   length.Length // excluded, but 0.5 mm itself belongs to the first span
	UpTo   length.Length // included
	Fine   length.Length // class f; optional
	Medium length.Length // class m
	Coarse length.Length // class c; realistic for wood frames
	Very   length.Length // class v; optional
	Source Source
}

// LinearToleranceFor is the span of ISO 2768-1 a size falls in, and false for
// sizes below 0.5 mm or above 4 m, which the standard leaves to the drawing.
func LinearToleranceFor(size length.Length) (LinearTolerance, bool) {
	for i, row := range LinearTolerances() {
		if size <= row.UpTo && (size > row.Over || i == 0 && size == row.Over) {
			return row, true
		}
	}
	return LinearTolerance{}, false
}

// LinearTolerances lists the spans of ISO 2768-1, smallest first.
func LinearTolerances() []LinearTolerance {
	source := Source{Work: "ISO 2768-1 general tolerances", Edition: "1989", Place: "Table 1, linear dimensions", Confirmed: ReadTwice,
		Note: "one published copy prints other values for class c below 6 mm"}
	const tenth, hundredth = mm / 10, mm / 100
	return []LinearTolerance{
		{mm / 2, 3 * mm, 5 * hundredth, tenth, 2 * tenth, 0, source},
		{3 * mm, 6 * mm, 5 * hundredth, tenth, 3 * tenth, 5 * tenth, source},
		{6 * mm, 30 * mm, tenth, 2 * tenth, 5 * tenth, mm, source},
		{30 * mm, 120 * mm, 15 * hundredth, 3 * tenth, 8 * tenth, 15 * tenth, source},
		{120 * mm, 400 * mm, 2 * tenth, 5 * tenth, 12 * tenth, 25 * tenth, source},
		{400 * mm, 1000 * mm, 3 * tenth, 8 * tenth, 2 * mm, 4 * mm, source},
		{1000 * mm, 2000 * mm, 5 * tenth, 12 * tenth, 3 * mm, 6 * mm, source},
		{2000 * mm, 4000 * mm, 0, 2 * mm, 4 * mm, 8 * mm, source},
	}
}

// ShopTolerance is class c of ISO 2768-1 for a size, plus or minus. It errs
// where the standard gives none.
func ShopTolerance(size length.Length) (length.Length, error) {
	row, ok := LinearToleranceFor(size)
	if !ok {
		return 0, fmt.Errorf("no general tolerance for %s mm; ISO 2768-1 goes from 0.5 to 4000 mm", size.Decimal())
	}
	return row.Coarse, nil
}
