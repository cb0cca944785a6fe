package view

import (
	"iter"
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// leastHatched is the least width on the paper of an area that is hatched; in
// a narrower one the lines would run together. Common practice, no source.
const leastHatched = 2 * length.Millimetre

// The spacings of hatch lines on the paper, one after the other and over
// again. None is less than 0.7 mm (ISO 128-50, from memory). Which hatch
// stands for which material is common practice, no source.
var (
	pairsFar  = []length.Length{900 * length.Micrometre, 2300 * length.Micrometre}
	pairsNear = []length.Length{700 * length.Micrometre, 1400 * length.Micrometre}
	single    = []length.Length{1100 * length.Micrometre}
	uneven    = []length.Length{2200 * length.Micrometre, 1300 * length.Micrometre, 3100 * length.Micrometre, 1700 * length.Micrometre, 2600 * length.Micrometre}
)

// A pattern is a hatch in its direction.
type pattern struct {
	hatch   Hatch
	along   bool // LongGrain: the grain runs along the view's X, else its Y
	variant int  // 0 to variants-1, to tell neighbours apart
}

const variants = 4

// slopes are the directions of the variants of slanted hatches: 45°, 135° and,
// where three or four meet, 27° and 117°.
var slopes = [variants][2]float64{{1, 1}, {-1, 1}, {2, 1}, {-1, 2}}

// pattern is how the body is hatched in a section across a.
func (b Body) pattern(a solid.Axis) (pattern, bool) {
	p := pattern{hatch: b.Hatch}
	if p.hatch == Wood {
		p.hatch = LongGrain
		if a == b.Grain {
			p.hatch = EndGrain
		}
	}
	if p.hatch == LongGrain {
		p.along = solid.Raise(plane.At(1, 0), a, 0).Along(b.Grain) != 0
	}
	return p, p.hatch != NoHatch
}

// spacings are the distances between its lines on the paper.
func (p pattern) spacings() []length.Length {
	switch p.hatch {
	case EndGrain:
		return pairsFar
	case LongGrain:
		return uneven
	case Metal:
		return pairsNear
	default:
		return single
	}
}

// direction is which way its lines run.
func (p pattern) direction() [2]float64 {
	switch {
	case p.hatch != LongGrain:
		return slopes[p.variant]
	case p.along:
		return [2]float64{1, 0}
	default:
		return [2]float64{0, 1}
	}
}

// fill gives the hatch lines inside an area.
func (p pattern) fill(area plane.Region, o Options) []plane.Path {
	var lines []plane.Path
	var clipper plane.Clipper
	within := plane.AreaOf(area)
	for line := range p.lines(area.Bounds(), o) {
		inside, _, _ := clipper.Clip(plane.Path{line}, &within)
		lines = append(lines, inside...)
	}
	return lines
}

// lines yields the pattern's lines through the box, to and fro, each run of
// them from the same side. They are laid out from the view's origin, so that
// they do not hang on the area.
func (p pattern) lines(b plane.Box, o Options) iter.Seq[plane.Edge] {
	d := p.direction()
	size := math.Sqrt(d[0]*d[0] + d[1]*d[1])
	d[0], d[1] = d[0]/size, d[1]/size
	var from, to, least, most float64 // of the box along the lines and across them, mm
	for i, c := range [...]plane.Point{b.Min, plane.At(b.Max.X, b.Min.Y), b.Max, plane.At(b.Min.X, b.Max.Y)} {
		along := float64(c.X.MM()*d[0]) + float64(c.Y.MM()*d[1])
		across := float64(c.Y.MM()*d[0]) - float64(c.X.MM()*d[1])
		if i == 0 {
			from, to, least, most = along, along, across, across
		}
		from, to, least, most = min(from, along), max(to, along), min(least, across), max(most, across)
	}
	at := func(along, across float64) plane.Point {
		return plane.At(length.Round(float64(along*d[0])-float64(across*d[1])), length.Round(float64(along*d[1])+float64(across*d[0])))
	}
	const beyond = 1 // mm, so that they end clear of the box
	from, to = from-beyond, to+beyond
	return func(yield func(plane.Edge) bool) {
		const run = 49
		n := 0
		for across := range p.places(least, most, o) {
			line := plane.Line(at(from, across), at(to, across))
			if n%run%2 == 1 {
				line = line.Reverse()
			}
			n++
			if !yield(line) {
				return
			}
		}
	}
}

// places yields where the lines lie between least and most, in mm across their
// direction from the view's origin.
func (p pattern) places(least, most float64, o Options) iter.Seq[float64] {
	spacings := p.spacings()
	period := o.onPaper(length.Sum(spacings...)).MM()
	shift := period * float64(p.variant) / variants
	return func(yield func(float64) bool) {
		for turn := math.Floor((least - shift) / period); ; turn++ {
			at := float64(turn*period) + shift
			for _, spacing := range spacings {
				if at >= most {
					return
				}
				if at > least && !yield(at) {
					return
				}
				at += o.onPaper(spacing).MM()
			}
		}
	}
}

// narrowness is the width in mm of the rectangle with the area and the outline
// of r; a quarter of the outline if there is none.
func narrowness(r plane.Region) float64 {
	var around float64
	for _, path := range r {
		around += path.Length()
	}
	area, quarter := r.Area(), around/4
	return quarter - math.Sqrt(max(0, float64(quarter*quarter)-area))
}
