package drawing

import (
	"errors"
	"fmt"
	"slices"
	"strings"
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
	tall                     bool           // may stand upright where that allows a larger scale
	scale                    *catalog.Scale // of its first view, where one is asked for
}

// scaled are the sheets that take a scale that is asked for.
var scaled = []string{"set", "leaf-front", "leaf-back", "panels"}

// plans lists the sheets of a set in their order.
func plans(s door.Set) []plan {
	all := []plan{
		{"set", "Set in the opening", "The opening as measured, from the room, with its leaves closed and slid open.", setElevation, false, nil},
		{"leaf-front", "Leaf from the front", "One leaf from the room, with the sizes of its frame and lites, and its parts.", leafFront, true, nil},
		{"leaf-back", "Leaf from the back", "One leaf from inside the closet, with rabbets, panels, pocket holes and washers.", leafBack, true, nil},
		{"sections", "Sections", "A plan of the closed leaves, a horizontal section where two leaves overlap, and a vertical section from head to floor.", sections, false, nil},
	}
	enlarged := evenly(detailsOf(s), detailsEach)
	first := 1
	for i, some := range enlarged {
		name, title := "details", "Details"
		if len(enlarged) > 1 {
			name, title = fmt.Sprintf("details-%d", i+1), fmt.Sprintf("Details, %d of %d", i+1, len(enlarged))
		}
		all = append(all, plan{name, title, "Seat of the panel, inside corner, joints, head and floor, enlarged.", detailSheet(some, first), false, nil})
		first += len(some)
	}
	for _, k := range kinds(s.Leaf) {
		if k.first.Role == door.PanelRole {
			continue
		}
		all = append(all, plan{"part-" + k.labels[0], "Part " + k.short() + ", " + k.first.Name, "The part's faces unrolled about its length, its end, and a table of its holes.", partSheet(k), false, nil})
	}
	panels := slices.Collect(slices.Chunk(panelKinds(s.Leaf), panelsEach))
	for i, some := range panels {
		name, title := "panels", "Panels"
		if len(panels) > 1 {
			name, title = fmt.Sprintf("panels-%d", i+1), fmt.Sprintf("Panels, sheet %d of %d", i+1, len(panels))
		}
		all = append(all, plan{name, title, "The different panels from the room, with their sizes, corners and number.", panelSheet(some), false, nil})
	}
	all = append(all, plan{"clearance", "Clearance", "Reveals and gaps drawn wider than they are, the face gap from above, and the floor gap along the travel.", clearance, false, nil})
	all = append(all, plan{"schedules", "Schedules and notes", "The parts and the hardware of the whole set, and notes and cautions.", schedules, false, nil})
	for i := range all {
		all[i].name = fmt.Sprintf("%02d-%s", i+1, all[i].name)
	}
	return all
}

// evenly shares details among as few sheets as hold them, at most so many on each.
func evenly(all []detail, most int) [][]detail {
	sheets := (len(all) + most - 1) / most
	var shared [][]detail
	for i := range sheets {
		shared = append(shared, all[len(all)*i/sheets:len(all)*(i+1)/sheets])
	}
	return shared
}

// Options choose among the sheets. The zero Options draw all of them at the
// scales that fit.
type Options struct {
	Only  []string // names or numbers of the sheets to draw: "02-leaf-front", "leaf-front", "2"
	Scale string   // of the main views of the set, the leaf and the panels, as "1:10" or its name in inches
}

// Sheets draws the set. It errs when the paper asked for does not exist or a
// view finds no standard scale at which it fits.
func Sheets(s door.Set) ([]sheet.Sheet, error) { return Draw(s, Options{}) }

// Draw draws the sheets chosen. A set that names no paper is drawn on what an
// office prints, or on the next larger paper of its series on which every view
// finds room. The error is about a paper, a scale or a sheet that does not
// exist, or a view that does not fit.
func Draw(s door.Set, o Options) ([]sheet.Sheet, error) {
	papers, err := papersOf(s)
	if err != nil {
		return nil, err
	}
	var scale *catalog.Scale
	if o.Scale != "" {
		named, err := catalog.ScaleNamed(o.Scale)
		if err != nil {
			return nil, err
		}
		scale = &named
	}
	all := plans(s)
	chosen, err := choose(all, o.Only)
	if err != nil {
		return nil, err
	}
	for _, paper := range papers {
		var sheets []sheet.Sheet
		if sheets, err = drawOn(s, paper, scale, all, chosen); err == nil {
			return sheets, nil
		}
	}
	return nil, err
}

// choose are the indices of the plans with those names or numbers, all without any.
func choose(all []plan, only []string) ([]int, error) {
	var chosen []int
	for i, plan := range all {
		if len(only) == 0 || slices.ContainsFunc(only, plan.called) {
			chosen = append(chosen, i)
		}
	}
	for _, name := range only {
		if !slices.ContainsFunc(all, func(p plan) bool { return p.called(name) }) {
			var names []string
			for _, plan := range all {
				names = append(names, plan.name)
			}
			return nil, fmt.Errorf("there is no sheet %q; the sheets are %s", name, strings.Join(names, ", "))
		}
	}
	return chosen, nil
}

// called tells whether a sheet goes by that name: its own, the same without the
// number, or the number.
func (p plan) called(name string) bool {
	number, bare, _ := strings.Cut(p.name, "-")
	return name == p.name || name == bare || name == number || name == strings.TrimLeft(number, "0")
}

// drawOn draws the chosen plans on one paper.
func drawOn(s door.Set, paper catalog.Paper, scale *catalog.Scale, all []plan, chosen []int) ([]sheet.Sheet, error) {
	sheets, errs := make([]sheet.Sheet, len(chosen)), make([]error, len(chosen))
	var drawn sync.WaitGroup
	for k, i := range chosen {
		drawn.Go(func() {
			plan := all[i]
			if _, bare, _ := strings.Cut(plan.name, "-"); slices.Contains(scaled, bare) {
				plan.scale = scale
			}
			p := draw(s, paper, plan)
			if p.err != nil {
				errs[k] = fmt.Errorf("sheet %s: %w", plan.name, p.err)
				return
			}
			p.sayUnplaced()
			p.title(plan, i+1, len(all))
			sheets[k] = p.finish(plan)
		})
	}
	drawn.Wait()
	return sheets, errors.Join(errs...)
}

// draw draws a plan lying, or upright where it may and that fits at a larger
// scale.
func draw(s door.Set, paper catalog.Paper, plan plan) *page {
	p := newPage(s, paper, plan.tall && standsLarger(s, paper, plan))
	p.asked = plan.scale
	plan.draw(p)
	return p
}

// standsLarger tells whether a plan fits at a larger scale on upright paper.
func standsLarger(s door.Set, paper catalog.Paper, plan plan) bool {
	try := func(upright bool) *page {
		p := newPage(s, paper, upright)
		p.asked = plan.scale
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

// papersOf are the papers to try: the one named, or the usual one and the larger
// ones of its series.
func papersOf(s door.Set) ([]catalog.Paper, error) {
	if s.Paper != "" {
		paper, err := catalog.PaperSize(s.Paper)
		return []catalog.Paper{paper}, err
	}
	names := []string{metricPaper, "A2", "A1", "A0"}
	if s.Units == length.Inches {
		names = []string{inchPaper, "ansi-c", "ansi-d", "ansi-e"}
	}
	var papers []catalog.Paper
	for _, name := range names {
		paper, err := catalog.PaperSize(name)
		if err != nil {
			return nil, err
		}
		papers = append(papers, paper)
	}
	return papers, nil
}
