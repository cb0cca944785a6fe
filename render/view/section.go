package view

import (
	"slices"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
)

// Section gives the lines of what the plane at `at` across the axis cuts, in
// the coordinates of solid.Vec.Flat: outlines wide, where two bodies meet only
// once, and hatching narrow. The plane must not graze a face, see
// solid.Solid.Section. cut has the cut region of every body, in the same order,
// nil for those not met.
func Section(bodies []Body, a solid.Axis, at length.Length, o Options) (lines []Line, cut []plane.Region) {
	cut = make([]plane.Region, len(bodies))
	drawn := ink{}
	var strokes []stroke
	for i, b := range bodies {
		least, most := b.Solid.Bounds()
		if at < least.Along(a) || at > most.Along(a) {
			continue
		}
		cut[i] = b.Solid.Section(a, at)
		for _, path := range cut[i] {
			for _, e := range path {
				for _, part := range drawn.draw(e) {
					strokes = append(strokes, stroke{part, style{b.Layer, sheet.Wide, sheet.Continuous}})
				}
			}
		}
	}
	lines = joined(strokes)
	if !o.NoHatch {
		lines = append(lines, hatching(bodies, cut, a, o)...)
	}
	return lines, cut
}

// hatching is the hatch lines of all cut regions. Of regions that touch each
// other and bear the same hatch, each gets a variant of its own.
func hatching(bodies []Body, cut []plane.Region, a solid.Axis, o Options) []Line {
	type done struct {
		bounds  plane.Box
		pattern pattern
	}
	var before []done
	var lines []Line
	for i, b := range bodies {
		p, hatched := b.pattern(a)
		if !hatched {
			continue
		}
		for _, piece := range cut[i].Pieces() {
			if narrowness(piece) < o.onPaper(leastHatched).MM() {
				continue
			}
			bounds := piece.Bounds().Grow(same)
			p.variant = 0
			taken := func(d done) bool { return d.pattern == p && overlap(d.bounds, bounds) }
			for p.variant < variants-1 && slices.ContainsFunc(before, taken) {
				p.variant++
			}
			before = append(before, done{bounds, p})
			for _, path := range p.fill(piece, o) {
				lines = append(lines, Line{path, sheet.Hatch, sheet.Narrow, sheet.Continuous})
			}
		}
	}
	return lines
}
