package drawing

import (
	"fmt"
	"math"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

const mm = length.Millimetre

// Sizes on the paper.
const (
	figureHeight = 5 * mm / 2 // capitals of figures: the least ISO 3098 allows on A4 to A2 (from memory)
	titleHeight  = 7 * mm / 2 // capitals of view titles
	stripRow     = 14 * mm    // a row of the title strip along the bottom
	gutter       = 6 * mm     // between views, and to the frame
	titleRoom    = 15 * mm    // below a view for its title and scale
	linePitch    = 5 * mm     // base line to base line of notes
	zoneBand     = 5 * mm     // with the zone marks, inside the border
	zoneField    = 50 * mm    // one zone, about; ISO 5457 (from memory)
	leastZoned   = 300 * mm   // smaller papers, A4 and letter, have no zones
)

// A page is a sheet being drawn.
type page struct {
	set         door.Set
	style       length.Style // figures: bare
	paper       catalog.Paper
	border      plane.Box // the heavy line
	frame       plane.Box // inside the zone marks, if there are any
	work        plane.Box // what views may fill
	fills       []sheet.Mark
	lines       []sheet.Mark
	over        []sheet.Mark // figures and lettering
	scale       sheet.Scale  // of the first view
	scaleName   string
	mixed       bool     // views of more than one scale
	upright     bool     // the long side stands
	trial       bool     // only the scale is asked for: nothing after placing need be drawn
	unplaced    []string // labels that found no room
	err         error
	wide, high  length.Length
	scalesTaken []catalog.Scale
	detail      int            // number of the detail being drawn; 0 for other views
	material    string         // for the title block
	asked       *catalog.Scale // of the first view; nil for the largest that fits
}

func newPage(s door.Set, paper catalog.Paper, upright bool) *page {
	w, h := paper.Landscape()
	if upright {
		w, h = paper.Portrait()
	}
	p := &page{upright: upright, set: s, style: length.Style{Unit: s.Units}, paper: paper, material: s.Stock.Species.Name, wide: w, high: h, scalesTaken: scalesOf(s.Units)}
	p.border = plane.BoxOf(plane.At(paper.Binding, paper.Ends), plane.At(w-paper.Sides, h-paper.Ends))
	p.frame = p.border
	if paper.Long > leastZoned {
		p.frame = p.border.Grow(-zoneBand)
	}
	p.work = plane.BoxOf(p.frame.Min.Add(gutter, p.stripHeight()+gutter), p.frame.Max.Add(-gutter, -gutter))
	return p
}

// scalesOf lists the standard scales, largest first.
func scalesOf(u length.Unit) []catalog.Scale {
	if u == length.Inches {
		return catalog.InchScales()
	}
	return catalog.ISOScales()
}

// finish is the sheet as drawn: fills below lines below lettering.
func (p *page) finish(plan plan) sheet.Sheet {
	marks := append(append(append([]sheet.Mark{}, p.fills...), p.lines...), p.over...)
	return sheet.Sheet{Name: plan.name, Title: p.set.Job + " · " + plan.title, Description: plan.description, Width: p.wide, Height: p.high, Scale: p.scale, Marks: marks}
}

// beside shares the work area between a view and a block of lettering of that
// size: in a column at the right, or on an upright sheet at the foot. It returns
// the view's zone and the block's upper left corner.
func (p *page) beside(wide, high length.Length) (zone plane.Box, corner plane.Point) {
	zone = p.work
	if p.upright {
		zone.Min.Y += high + gutter
		return zone, plane.At(p.work.Min.X, p.work.Min.Y+high)
	}
	zone.Max.X -= wide + gutter
	return zone, plane.At(p.work.Max.X-wide, p.work.Max.Y)
}

// A layout is what a view needs on the paper: the model's box it shows, in the
// view's coordinates, its dimensions, and its title.
type layout struct {
	box                       plane.Box
	below, above, left, right []dimension.Row
	title                     string
	pad                       length.Length // kept free above and below the view
	largest                   int64         // greatest enlargement, paper to real: 1 for full size, 2 for 2:1
}

// place fits a view into a zone at the largest standard scale, draws its
// dimensions and title, and returns its frame.
func (p *page) place(zone plane.Box, l layout) dimension.Frame {
	scales := p.scalesTaken
	if p.asked != nil && p.scaleName == "" {
		scales = []catalog.Scale{*p.asked}
	}
	for _, scale := range scales {
		if scale.Paper > max(1, l.largest)*scale.Real {
			continue
		}
		bare := boxOnPaper(l.box, scale)
		if bare.Width() > zone.Width() || bare.Height() > zone.Height() {
			continue // before its dimensions are laid out
		}
		frame := dimension.Frame{Box: bare, Origin: l.box.Min, Scale: sheet.Scale{Paper: scale.Paper, Real: scale.Real}}
		marks := p.dimensions(frame, l)
		whole := frame.Box
		if extent, ok := dimension.Extent(marks); ok {
			whole = whole.Join(extent)
		}
		title, height := fitted(p.numbered(l.title), zone.Width(), titleHeight)
		half, middle := lettering.Advance(title, height).Half(), (frame.Box.Min.X + frame.Box.Max.X).Half()
		whole.Min.X, whole.Max.X = min(whole.Min.X, middle-half), max(whole.Max.X, middle+half)
		whole.Min.Y -= titleRoom + l.pad
		whole.Max.Y += l.pad
		if whole.Width() > zone.Width() || whole.Height() > zone.Height() {
			continue
		}
		dx, dy := toMiddle(whole, zone)
		frame.Box = plane.Box{Min: frame.Box.Min.Add(dx, dy), Max: frame.Box.Max.Add(dx, dy)}
		p.over = append(p.over, p.dimensions(frame, l)...)
		p.caption(plane.At((frame.Box.Min.X+frame.Box.Max.X).Half(), whole.Min.Y+dy), title, height, scale)
		return frame
	}
	if len(scales) == 1 {
		p.err = fmt.Errorf("%s, %s by %s, does not fit on %s paper at %s: ask for a smaller scale or name a larger paper", l.title, p.format(l.box.Width()), p.format(l.box.Height()), p.paper.Name, scales[0].Name)
		return dimension.Frame{Scale: sheet.Scale{Paper: 1, Real: 1}}
	}
	p.err = fmt.Errorf("%s, %s by %s, fits no standard scale in the room left on %s paper: name a larger paper", l.title, p.format(l.box.Width()), p.format(l.box.Height()), p.paper.Name)
	return dimension.Frame{Scale: sheet.Scale{Paper: 1, Real: 1}}
}

// toMiddle is how far a box must move to stand in the middle of a zone.
func toMiddle(box, zone plane.Box) (dx, dy length.Length) {
	return zone.Min.X + (zone.Width() - box.Width()).Half() - box.Min.X, zone.Min.Y + (zone.Height() - box.Height()).Half() - box.Min.Y
}

// numbered is a view's title, behind its number if it is a detail.
func (p *page) numbered(title string) string {
	if p.detail == 0 {
		return title
	}
	return fmt.Sprintf("%d. %s", p.detail, title)
}

// boxOnPaper is a model's box at a scale, its lower left corner at the origin.
func boxOnPaper(b plane.Box, scale catalog.Scale) plane.Box {
	return plane.Box{Max: plane.At(scale.OnPaper(b.Width()), scale.OnPaper(b.Height()))}
}

// dimensions draws the rows of a layout.
func (p *page) dimensions(frame dimension.Frame, l layout) []sheet.Mark {
	options := dimension.Options{Format: p.format, TextHeight: figureHeight, Tick: p.tick()}
	marks, _ := dimension.Around(frame, [4][]dimension.Row{dimension.Below: l.below, dimension.Above: l.above, dimension.LeftOf: l.left, dimension.RightOf: l.right}, options)
	return marks
}

// tick is what figures are rounded to.
func (p *page) tick() length.Length {
	if p.set.Units == length.Inches {
		return length.Inch / 64
	}
	return mm / 10
}

// caption writes a view's title and scale, their foot at a point of the paper.
func (p *page) caption(foot plane.Point, title string, height length.Length, scale catalog.Scale) {
	p.took(sheet.Scale{Paper: scale.Paper, Real: scale.Real}, scale.Name)
	p.text(foot.Add(0, 13*mm/2), height, sheet.Middle, false, title)
	p.text(foot.Add(0, 3*mm/2), figureHeight, sheet.Middle, false, scaleWords(scale.Name))
}

// took notes the scale of a view; the first one is the sheet's.
func (p *page) took(scale sheet.Scale, name string) {
	if p.scaleName == "" {
		p.scale, p.scaleName = scale, name
	} else if p.scaleName != name {
		p.mixed = true
	}
}

// text sets one line.
func (p *page) text(at plane.Point, height length.Length, align sheet.Align, rise bool, s string) {
	s = lettering.Legible(s)
	if s == "" {
		return
	}
	p.over = append(p.over, sheet.Text{Layer: sheet.Notes, At: at, Height: height, Align: align, Rise: rise, String: s, Advance: lettering.Advance(s, height)})
}

// draw sets lines of a view on the paper.
func (p *page) draw(frame dimension.Frame, lines []view.Line) {
	for _, line := range lines {
		p.lines = append(p.lines, sheet.Stroke{Layer: line.Layer, Weight: line.Weight, Line: line.Type, Path: onPaper(frame, line.Path)})
	}
}

// fill tints a region of a view.
func (p *page) fill(frame dimension.Frame, region plane.Region, layer sheet.Layer, tone sheet.Tone) {
	if !region.Empty() {
		p.fills = append(p.fills, sheet.Fill{Layer: layer, Tone: tone, Region: region.Map(frame.Paper, false)})
	}
}

// onPaper is a path of a view on the paper; edges that vanish at its scale are
// left out.
func onPaper(frame dimension.Frame, path plane.Path) plane.Path {
	moved := path.Map(frame.Paper, false)
	kept := moved[:0]
	for _, e := range moved {
		if e.From != e.To {
			kept = append(kept, e)
		}
	}
	return kept
}

// stroke draws a line of the page's own in the model's coordinates of a view.
func (p *page) stroke(frame dimension.Frame, layer sheet.Layer, weight sheet.Weight, kind sheet.LineType, points ...plane.Point) {
	var path plane.Path
	for i := 1; i < len(points); i++ {
		path = append(path, plane.Line(frame.Paper(points[i-1]), frame.Paper(points[i])))
	}
	p.lines = append(p.lines, sheet.Stroke{Layer: layer, Weight: weight, Line: kind, Path: path})
}

// screw draws a driven screw: its shank, pointed, and a line for the head.
func (p *page) screw(frame dimension.Frame, head, tip plane.Point, diameter length.Length) {
	dx, dy := (tip.X - head.X).MM(), (tip.Y - head.Y).MM()
	long := math.Hypot(dx, dy)
	if long == 0 {
		return
	}
	ux, uy, r := dx/long, dy/long, diameter.MM()/2
	at := func(along, across float64) plane.Point {
		return head.Add(length.Round(float64(ux*along)-float64(uy*across)), length.Round(float64(uy*along)+float64(ux*across)))
	}
	point := long - min(3*r, long/3)
	p.stroke(frame, sheet.Hardware, sheet.Narrow, sheet.Continuous, at(0, r), at(point, r), tip, at(point, -r), at(0, -r))
	p.stroke(frame, sheet.Hardware, sheet.Wide, sheet.Continuous, at(0, -2*r), at(0, 2*r))
}

// note points at a place of a view with a leader; the elbow is given on the
// paper, from the tip.
func (p *page) note(frame dimension.Frame, tip plane.Point, dx, dy length.Length, head dimension.Head, lines ...string) {
	at := frame.Paper(tip)
	p.over = append(p.over, dimension.Leader(dimension.Note{Tip: at, Elbow: at.Add(dx, dy), Lines: lines, Head: head, TextHeight: figureHeight})...)
}
