package tile

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/pdf"
)

// A Paper is what is printed on.
type Paper struct {
	Name   string
	Width  length.Length // of the upright sheet, or of the roll
	Height length.Length // 0 is a roll, cut off as long as the drawing needs
}

// Named is the paper size of that name: "A4", "letter", "A3", "tabloid" and
// the others of the catalogue.
func Named(name string) (Paper, error) {
	size, err := catalog.PaperSize(name)
	if err != nil {
		return Paper{}, err
	}
	wide, high := size.Portrait()
	return Paper{Name: size.Name, Width: wide, Height: high}, nil
}

// Roll is a roll of that width.
func Roll(width length.Length) Paper {
	return Paper{Name: "roll " + width.Decimal() + " mm wide", Width: width}
}

func (p Paper) isRoll() bool { return p.Height == 0 }

// Sizes on a page, in millimetres of the print.
const (
	mm = length.Millimetre

	leftStrip = 10 * mm // holds the bar along Y and its ticks
	footStrip = 20 * mm // holds the bar along X and two lines of words

	// barLength is what one measures with a steel rule on a page of office paper.
	barLength = 100 * mm
	// leastRoom is what a printer must leave printable on the shorter and on the
	// longer side: office paper (A4, letter) with a margin of half an inch and
	// the largest correction has it. The overview's squares and words need it.
	leastShort, leastLong = 160 * mm, 220 * mm
	// leastAcross is the same across a roll, whose length is free: the squares
	// beside the left strip, or the bar along Y above the foot.
	leastAcross = 140 * mm
	leastAlong  = 280 * mm // a page of a roll is at least this long, overview and all

	// What stands before the drawing on a roll's only page: squares and words
	// side by side, or one over the other.
	blockBeside, blockOver = 240 * mm, 200 * mm
)

// A layout is how a page is divided.
type layout struct {
	wide, high length.Length // the page
	room       plane.Box     // inside the printer's margin
	window     plane.Box     // shows the drawing
	block      plane.Box     // holds the overview when it has no page of its own; empty otherwise
}

// A trueSize is a printer's paper and margin in lengths as they come out.
type trueSize struct {
	factors          pdf.Correction // none 0
	margin           length.Length  // on the paper as the printer sees it
	longest          plane.Point    // sides of the longest page that readers show
	overlap          length.Length
	marginX, marginY length.Length
}

func trueSizes(o Options) trueSize {
	f := o.Correction.Factors()
	across := func(l length.Length, factor float64) length.Length { return length.Round(l.MM() / factor) }
	return trueSize{
		factors: f, margin: o.margin(), overlap: o.overlap(),
		longest: plane.At(across(pdf.LongestPage, f.X)-1, across(pdf.LongestPage, f.Y)-1), // never longer once stretched
		marginX: across(o.margin(), f.X), marginY: across(o.margin(), f.Y),
	}
}

// page divides a page of a size as it comes out.
func (t trueSize) page(wide, high length.Length) layout {
	l := layout{wide: wide, high: high}
	l.room = plane.BoxOf(plane.At(t.marginX, t.marginY), plane.At(wide-t.marginX, high-t.marginY))
	l.window = plane.BoxOf(l.room.Min.Add(leftStrip, footStrip), l.room.Max)
	return l
}

// sides are a paper's two sides along X and Y as they come out.
func (t trueSize) sides(wide, high length.Length) (length.Length, length.Length) {
	return length.Round(wide.MM() / t.factors.X), length.Round(high.MM() / t.factors.Y)
}

// layouts are the ways to lay the paper for an area: upright and on its side.
func (t trueSize) layouts(p Paper, area plane.Box) ([]layout, error) {
	if p.Width <= 0 || p.Height < 0 {
		return nil, fmt.Errorf("paper %s is %s mm wide and %s mm high; it must be above 0", p.Name, p.Width.Decimal(), p.Height.Decimal())
	}
	if err := t.fits(p); err != nil {
		return nil, err
	}
	if p.isRoll() {
		return t.rolled(p, area), nil
	}
	var both []layout
	for _, side := range [][2]length.Length{{p.Width, p.Height}, {p.Height, p.Width}} {
		wide, high := t.sides(side[0], side[1])
		both = append(both, t.page(wide, high))
	}
	return both, nil
}

// fits tells whether the paper has room for a page's own marks.
func (t trueSize) fits(p Paper) error {
	most := max(t.factors.X, t.factors.Y)
	room := func(side length.Length) length.Length { return length.Round((side - 2*t.margin).MM() / most) }
	short, long, atShort, atLong := room(min(p.Width, p.Height)), room(max(p.Width, p.Height)), leastShort, leastLong
	if p.isRoll() {
		short, long, atShort, atLong = room(p.Width), leastAlong, leastAcross, leastAlong
	}
	if short < atShort || long < atLong {
		return fmt.Errorf("paper %s leaves %s mm by %s mm inside margins of %s mm; a page needs %s mm by %s mm: take larger paper, such as A4 or letter, or a smaller margin",
			p.Name, short.Nearest(mm/10).Decimal(), long.Nearest(mm/10).Decimal(), t.margin.Decimal(), atShort.Decimal(), atLong.Decimal())
	}
	if wide := max(p.Width, p.Height); wide > pdf.LongestPage {
		return fmt.Errorf("paper %s is %s mm long; readers show pages up to %s mm: take a roll and let the drawing set its length", p.Name, wide.Decimal(), pdf.LongestPage.Decimal())
	}
	return nil
}

// rolled lays a roll for an area, along Y and along X: as long as the area
// needs, up to the longest page. Where the whole area then fits and there is
// length left, the overview comes before it.
func (t trueSize) rolled(p Paper, area plane.Box) []layout {
	wide, high := t.sides(p.Width, p.Width)
	margins := plane.At(2*t.marginX, 2*t.marginY)

	long := max(area.Height()+footStrip+margins.Y, leastAlong)
	along := t.page(wide, min(long, t.longest.Y))
	if along.window.Width() >= area.Width() && long+blockOver <= t.longest.Y {
		along = t.page(wide, long+blockOver)
		along.window.Max.Y -= blockOver
		along.block = plane.BoxOf(plane.At(along.window.Min.X, along.window.Max.Y), along.room.Max)
	}

	long = max(area.Width()+leftStrip+margins.X, leastAlong)
	across := t.page(min(long, t.longest.X), high)
	if across.window.Height() >= area.Height() && long+blockBeside <= t.longest.X {
		across = t.page(long+blockBeside, high)
		across.window.Max.X -= blockBeside
		across.block = plane.BoxOf(plane.At(across.window.Max.X, across.window.Min.Y), across.room.Max)
	}
	return []layout{along, across}
}
