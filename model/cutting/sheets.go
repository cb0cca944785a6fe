package cutting

import (
	"math/bits"

	"stilewright/model/length"
)

// A Piece is a rectangle to be cut, a number of times. A panel of another
// shape is cut from its bounding box.
type Piece struct {
	Label         string
	Width, Height length.Length // more than 0; Width lies along the sheet's width
	Quantity      int           // 1 or more
	// Turn allows a quarter turn. Leave it false where grain, a film's
	// direction or a pattern runs one way.
	Turn bool
	// Face says which side is the show side or carries the film. It is carried
	// through to the layout and changes nothing in it.
	Face string
	// From names the sheets the piece may come from; empty: any.
	From []string
}

// A Sheet is a kind of stock: sheets of one size and price.
type Sheet struct {
	Name          string // unique in the job
	Width, Height length.Length
	// Price of one sheet in the smallest coin. Price every sheet or none;
	// where none is priced the cost is the area bought.
	Price Cost
	// Available is how many there are; 0: as many as needed.
	Available int
	// InHand marks a sheet or offcut already owned: it costs nothing and
	// needs Available.
	InHand bool
}

// A SheetJob is what is to be cut and from what.
type SheetJob struct {
	Pieces []Piece
	Sheets []Sheet
	Kerf   length.Length // width of the saw cut, 0 or more
	// Trim is lost along all four edges of every sheet, its saw cut included.
	Trim length.Length
	// LeastOffcut is the shorter side of the smallest rest worth keeping.
	LeastOffcut length.Length
	// Budget is the number of search steps; 0: DefaultBudget.
	Budget int
}

// A SawLine is the way a cut runs. Every cut runs from edge to edge.
type SawLine int

// The saw lines: an Upright cut runs along the sheet's height and is measured
// from the left edge of the piece in hand; a Level cut runs along its width and
// is measured from the bottom edge.
const (
	Upright SawLine = iota
	Level
)

// String is the line in words, Edge the edge it is measured from.
func (s SawLine) String() string { return [...]string{"upright", "level"}[s] }

// Edge is the edge of the piece in hand that a cut is measured from.
func (s SawLine) Edge() string { return [...]string{"left", "bottom"}[s] }

// A RegionKind says what becomes of a region.
type RegionKind int

// The kinds of region: one that is cut in two, a finished piece, a rest.
const (
	CutRegion RegionKind = iota
	PieceRegion
	RestRegion
)

// A Region is a rectangle on the way from the sheet to the pieces. A cut turns
// it into two: Low before the kerf and High behind it.
type Region struct {
	Kind RegionKind
	// X and Y of the lower left corner, from the sheet's own lower left corner
	// before trimming.
	X, Y, Width, Height length.Length

	// Line and At (CutRegion): At is from the region's left or bottom edge to
	// the near side of the kerf. High is nil where the kerf takes the rest.
	Line      SawLine
	At        length.Length
	Low, High *Region

	// Piece (PieceRegion) is an index into the job's Pieces; Turned tells that
	// the piece's width lies along the sheet's height.
	Piece  int
	Turned bool
	// Kept (RestRegion) tells that both sides are at least LeastOffcut.
	Kept bool
}

// A SheetPattern is one way to cut a sheet, done Times times.
type SheetPattern struct {
	Sheet int // index into the job's Sheets
	Times int
	Root  *Region // the sheet after trimming
}

// A SheetLayout is a complete answer to a SheetJob.
type SheetLayout struct {
	Patterns []SheetPattern // sheets in hand first, then in the order of the job
	Used     []int          // how many of each of the job's Sheets
	Count    int            // sheets cut in all
	Measure  Measure        // what Cost and Bound count: ByPrice or ByArea
	Cost     Cost
	// Bound is proven: no layout of edge-to-edge cuts costs less.
	Bound Cost
	// Proven tells that Cost equals Bound.
	Proven bool
	// FewestProven tells that no layout of this cost uses fewer sheets.
	FewestProven bool
	// Areas in mm²: of the sheets cut, the pieces, the rests kept, and what is
	// left over: dust, trim and scrap.
	Stock, Pieces, Offcuts, Waste float64
	Steps                         int // search steps spent
}

func (j SheetJob) offers() []offer {
	offers := make([]offer, len(j.Sheets))
	for i, s := range j.Sheets {
		offers[i] = offer{s.Name, s.Price, s.Available, s.InHand}
	}
	return offers
}

// clear is the sheet's size after trimming.
func (j SheetJob) clear(s Sheet) (width, height length.Length) {
	return s.Width - 2*j.Trim, s.Height - 2*j.Trim
}

// price is the cost of one sheet and what it counts.
func (j SheetJob) price(s Sheet) (Cost, Measure) {
	if anyPriced(j.offers()) {
		return s.Price, ByPrice
	}
	if s.InHand {
		return 0, ByArea
	}
	const squareMillimetre = uint64(length.Millimetre) * uint64(length.Millimetre)
	hi, lo := bits.Mul64(uint64(s.Width), uint64(s.Height))
	q, r := bits.Div64(hi, lo, squareMillimetre)
	if r > 0 {
		q++
	}
	return Cost(q), ByArea
}

// fits tells how the piece fits the sheet: as it lies, or turned.
func (j SheetJob) fits(p Piece, s Sheet) (lying, turned bool) {
	if !allowed(p.From, s.Name) {
		return false, false
	}
	w, h := j.clear(s)
	return p.Width <= w && p.Height <= h, p.Turn && p.Height <= w && p.Width <= h
}

// mostPieces is the most pieces of a sheet job; areas cost more digits.
const mostPieces = 2_000

// Faults are all broken rules of the job, joined; nil when it can be laid out
// as far as single pieces and sheets go.
func (j SheetJob) Faults() error {
	var found faults
	offers := j.offers()
	checkOffers(offers, &found)
	j.checkSaw(&found)
	for _, s := range j.Sheets {
		j.checkSheet(s, &found)
	}
	if len(j.Sheets) == 0 {
		found.add(RuleNoStock, "", "there are %d pieces and 0 sheets; list at least one sheet", len(j.Pieces))
	}
	if len(j.Pieces) == 0 {
		found.add(RuleEmpty, "", "there are 0 pieces for %d sheets; list at least one piece", len(j.Sheets))
	}
	count := 0
	for _, p := range j.Pieces {
		checkFrom(p.Label, p.From, offers, &found)
		if j.checkPiece(p, &found) {
			count = min(count+min(p.Quantity, mostPieces+1), mostPieces+1)
		}
	}
	if count > mostPieces {
		found.add(RuleTooMany, "", "more than %d pieces; split the job, its pieces were over %d", mostPieces, mostPieces)
	}
	return found.err()
}

func (j SheetJob) checkSaw(found *faults) {
	if j.Kerf < 0 || j.Kerf > LongestSheet {
		found.add(RuleKerf, "", "kerf is %s; it must lie from 0 to %s", mm(j.Kerf), mm(LongestSheet))
	}
	for _, l := range []length.Length{j.Trim, j.LeastOffcut} {
		if l < 0 || l > LongestSheet {
			found.add(RuleTrim, "", "a trim or least offcut is %s; it must lie from 0 to %s", mm(l), mm(LongestSheet))
		}
	}
}

func (j SheetJob) checkSheet(s Sheet, found *faults) {
	small, large := min(s.Width, s.Height), max(s.Width, s.Height)
	switch {
	case small <= 0:
		found.add(RuleSize, s.Name, "the sheet is %s × %s; both must be more than 0", mm(s.Width), mm(s.Height))
	case large > LongestSheet:
		found.add(RuleTooLong, s.Name, "the sheet is %s × %s; the limit is %s", mm(s.Width), mm(s.Height), mm(LongestSheet))
	case j.Kerf >= small:
		found.add(RuleKerf, s.Name, "kerf is %s, the sheet only %s; use a narrower kerf", mm(j.Kerf), mm(small))
	case small-2*j.Trim <= 0:
		found.add(RuleTrim, s.Name, "trimming takes %s of a side of %s; trim less", mm(2*j.Trim), mm(small))
	}
}

// checkPiece tells whether the quantity can be counted.
func (j SheetJob) checkPiece(p Piece, found *faults) bool {
	if p.Quantity <= 0 {
		found.add(RuleQuantity, p.Label, "quantity is %d; it must be 1 or more", p.Quantity)
		return false
	}
	if p.Width <= 0 || p.Height <= 0 {
		found.add(RuleSize, p.Label, "the piece is %s × %s; both must be more than 0", mm(p.Width), mm(p.Height))
		return true
	}
	largest, area := -1, 0.0
	for i, s := range j.Sheets {
		if !allowed(p.From, s.Name) {
			continue
		}
		if lying, turned := j.fits(p, s); lying || turned {
			return true
		}
		if a := float64(s.Width.MM() * s.Height.MM()); largest < 0 || a > area {
			largest, area = i, a
		}
	}
	if largest >= 0 {
		s := j.Sheets[largest]
		w, h := j.clear(s)
		hint := "make it smaller or list a larger sheet"
		if q := (Piece{Width: p.Height, Height: p.Width, From: p.From}); !p.Turn && j.someFit(q) {
			hint = "it would fit turned, if that is allowed"
		}
		found.add(RuleTooBig, p.Label, "the piece is %s × %s; the largest sheet it may come from, %q, leaves %s × %s after trimming; %s",
			mm(p.Width), mm(p.Height), s.Name, mm(w), mm(h), hint)
	}
	return true
}

func (j SheetJob) someFit(p Piece) bool {
	for _, s := range j.Sheets {
		if lying, _ := j.fits(p, s); lying {
			return true
		}
	}
	return false
}
