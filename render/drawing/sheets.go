package drawing

import (
	"errors"
	"fmt"
	"slices"
	"sync"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/render/sheet"
)

// A plan is one sheet to be drawn.
type plan struct {
	name, title, description string
	draw                     func(*page)
	tall                     bool // may stand upright where that allows a larger scale
}

// plans lists the sheets of a set in their order.
func plans(s door.Set) []plan {
	all := []plan{
		{"set", "Set in the opening", "The opening as measured, from the room, with its leaves closed.", setElevation, false},
		{"leaf-front", "Leaf from the front", "One leaf from the room, with the sizes of its frame and lites, and its parts.", leafFront, true},
		{"leaf-back", "Leaf from the back", "One leaf from inside the closet, with rabbets, panels, pocket holes and washers.", leafBack, true},
		{"sections", "Sections", "A plan of the closed leaves, a horizontal section where two leaves overlap, and a vertical section from head to floor.", sections, false},
	}
	enlarged := slices.Collect(slices.Chunk(detailsOf(s), detailsEach))
	for i, some := range enlarged {
		name, title := "details", "Details"
		if len(enlarged) > 1 {
			name, title = fmt.Sprintf("details-%d", i+1), fmt.Sprintf("Details, %d of %d", i+1, len(enlarged))
		}
		all = append(all, plan{name, title, "Seat of the panel, inside corner, joints, head and floor, enlarged.", detailSheet(some), false})
	}
	for _, k := range kinds(s.Leaf) {
		if k.first.Role == door.PanelRole {
			continue
		}
		all = append(all, plan{"part-" + k.labels[0], "Part " + k.label() + ", " + k.first.Name, "The part's faces unrolled about its length, its end, and a table of its holes.", partSheet(k), false})
	}
	panels := slices.Collect(slices.Chunk(panelKinds(s.Leaf), panelsEach))
	for i, some := range panels {
		name, title := "panels", "Panels"
		if len(panels) > 1 {
			name, title = fmt.Sprintf("panels-%d", i+1), fmt.Sprintf("Panels, sheet %d of %d", i+1, len(panels))
		}
		all = append(all, plan{name, title, "The different panels from the room, with their sizes, corners and number.", panelSheet(some), false})
	}
	all = append(all, plan{"schedules", "Schedules and notes", "The parts and the hardware of the whole set, and notes and cautions.", schedules, false})
	for i := range all {
		all[i].name = fmt.Sprintf("%02d-%s", i+1, all[i].name)
	}
	return all
}

// Sheets draws the set. It errs when the paper asked for does not exist or a
// view finds no standard scale at which it fits.
func Sheets(s door.Set) ([]sheet.Sheet, error) {
	paper, err := paperOf(s)
	if err != nil {
		return nil, err
	}
	all := plans(s)
	sheets, errs := make([]sheet.Sheet, len(all)), make([]error, len(all))
	var drawn sync.WaitGroup
	for i, plan := range all {
		drawn.Go(func() {
			p := draw(s, paper, plan)
			if p.err != nil {
				errs[i] = fmt.Errorf("sheet %s: %w", plan.name, p.err)
				return
			}
			p.sayUnplaced()
			p.title(plan, i+1, len(all))
			sheets[i] = p.finish(plan)
		})
	}
	drawn.Wait()
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	return sheets, nil
}

// draw draws a plan lying, or upright where it may and that fits at a larger
// scale.
func draw(s door.Set, paper catalog.Paper, plan plan) *page {
	p := newPage(s, paper, plan.tall && standsLarger(s, paper, plan))
	plan.draw(p)
	return p
}

// standsLarger tells whether a plan fits at a larger scale on upright paper.
func standsLarger(s door.Set, paper catalog.Paper, plan plan) bool {
	try := func(upright bool) *page {
		p := newPage(s, paper, upright)
		p.trial = true
		plan.draw(p)
		return p
	}
	lying, upright := try(false), try(true)
	return upright.err == nil && (lying.err != nil || larger(upright.scale, lying.scale))
}

// larger tells whether scale a draws larger than b.
func larger(a, b sheet.Scale) bool { return a.Paper*b.Real > b.Paper*a.Real }

// Papers of a set that names none: what an office printer of the country takes.
const (
	inchPaper   = "tabloid"
	metricPaper = "A3"
)

func paperOf(s door.Set) (catalog.Paper, error) {
	name := s.Paper
	if name == "" {
		name = metricPaper
		if s.Units == length.Inches {
			name = inchPaper
		}
	}
	return catalog.PaperSize(name)
}
