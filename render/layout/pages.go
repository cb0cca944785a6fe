package layout

import (
	"stilewright/model/takeoff"
	"stilewright/render/list"
	"stilewright/render/sheet"
)

// Pages are the printed pages of a takeoff, on the first job's paper, in the
// order they are used: shopping list, cut list, boards, sheets, film, and what
// was assumed. They are named "01-shopping" and so on. It errs when the paper
// does not exist or something finds no room on it.
func Pages(t takeoff.Takeoff) ([]sheet.Sheet, error) {
	b, err := newBuilder(t)
	if err != nil {
		return nil, err
	}
	b.tablePages(printed(list.Shopping(t), "in a pack"), "What to buy, with what is bought to spare, what it weighs and costs.")
	b.tablePages(printed(list.CutList(t), "rough width", "rough thick", "one weighs ("+list.MassUnit(t)+")"), "Every distinct part: sizes, what it is cut from and what is done to it.",
		"Length runs along the grain, of a panel up its height. Rough is as crosscut; net is finished. Labels are those of the drawings; sizes in the lists and on the drawings come from one model.")
	b.boardPages()
	b.sheetPages()
	b.filmPages()
	last := b.tablePages(list.Proofs(t), "What each layout takes and the least any layout could, and what the models left open.")
	b.tableOn(last, list.Assumed(t))
	if b.err != nil {
		return nil, b.err
	}
	return b.sheets(), nil
}
