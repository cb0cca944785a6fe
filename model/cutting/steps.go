package cutting

import (
	"fmt"

	"stilewright/model/length"
)

// A SheetStep is one saw cut in the order a person makes them: cut the sheet,
// then all of the part nearer to the measured edge, then the other part.
type SheetStep struct {
	Number int // from 1
	// Take is what is laid on the saw: "sheet", or what an earlier step made.
	Take string
	Line SawLine
	// At is the fence setting, from Line.Edge() of what is taken. The sheet is
	// kept in the layout's orientation throughout.
	At length.Length
	// Near and Far are what the cut makes: "part 3" when it is cut further, a
	// piece's label, "offcut", "scrap", or "" where the kerf takes the rest.
	Near, Far string
}

// Steps are the pattern's cuts in order. The trim cuts along the four edges come
// before them.
func (p SheetPattern) Steps(j SheetJob) []SheetStep {
	s := stepper{job: j}
	s.follow(p.Root, "sheet")
	return s.steps
}

type stepper struct {
	job   SheetJob
	parts int
	steps []SheetStep
}

func (s *stepper) follow(g *Region, take string) {
	if g == nil || g.Kind != CutRegion {
		return
	}
	near, far := s.name(g.Low), s.name(g.High)
	s.steps = append(s.steps, SheetStep{len(s.steps) + 1, take, g.Line, g.At, near, far})
	s.follow(g.Low, near)
	s.follow(g.High, far)
}

func (s *stepper) name(g *Region) string {
	switch {
	case g == nil:
		return ""
	case g.Kind == PieceRegion:
		return s.job.Pieces[g.Piece].Label
	case g.Kind == CutRegion:
		s.parts++
		return fmt.Sprintf("part %d", s.parts)
	case g.Kept:
		return "offcut"
	}
	return "scrap"
}
