package cutting

import (
	"stilewright/model/length"
)

// A Part is a length to be cut, a number of times.
type Part struct {
	Label string
	// Length is the rough length as cut, more than 0.
	Length   length.Length
	Quantity int // 1 or more
	// From names the stocks the part may come from; empty: any.
	From []string
}

// A Board is a kind of stock: boards of one length and price.
type Board struct {
	Name   string // unique in the job
	Length length.Length
	// Price of one board in the smallest coin. Price every board or none;
	// where none is priced the cost is the length bought.
	Price Cost
	// Available is how many there are; 0: as many as needed.
	Available int
	// InHand marks an offcut or board already owned: it costs nothing and
	// needs Available.
	InHand bool
}

// A BoardJob is what is to be cut and from what.
type BoardJob struct {
	Parts  []Part
	Boards []Board
	Kerf   length.Length // width of the saw cut, 0 or more
	// TrimStart and TrimEnd are lost at the ends of every board, the saw cut
	// that squares the end included. No part reaches into them.
	TrimStart, TrimEnd length.Length
	// LeastOffcut is the shortest rest worth keeping; 0: none is waste.
	LeastOffcut length.Length
	// Budget is the number of search steps; 0: DefaultBudget.
	Budget int
}

// A Cut is one part on a board, measured from the board's left end before
// trimming.
type Cut struct {
	Part       int // index into the job's Parts
	Start, End length.Length
}

// A BoardPattern is one way to cut a board, done Times times.
type BoardPattern struct {
	Board int // index into the job's Boards
	Times int
	// Cuts in cutting order, from the left end, longest first.
	Cuts []Cut
	// Offcut is the piece left at the right end, its untrimmed end included;
	// 0 where the last saw cut takes it all.
	Offcut length.Length
	// Kept tells that the offcut is at least LeastOffcut long.
	Kept bool
}

// A BoardLayout is a complete answer to a BoardJob.
type BoardLayout struct {
	Patterns []BoardPattern // boards in hand first, then in the order of the job
	Used     []int          // how many of each of the job's Boards
	Count    int            // boards cut in all
	Measure  Measure        // what Cost and Bound count: ByPrice or ByLength
	Cost     Cost
	// Bound is proven: no layout costs less.
	Bound Cost
	// Proven tells that Cost equals Bound. Otherwise the search ran out of
	// steps and Cost − Bound is the gap.
	Proven bool
	// FewestProven tells that no layout of this cost uses fewer boards.
	FewestProven bool
	Stock        length.Length // of all boards cut, in hand or bought
	Parts        length.Length // of all parts
	Offcuts      length.Length // of all offcuts kept
	Waste        length.Length // Stock − Parts − Offcuts: dust, trim, scrap
	Steps        int           // search steps spent
}

// clear is the length of a board between its trims.
func (j BoardJob) clear(b Board) length.Length { return b.Length - j.TrimStart - j.TrimEnd }

// offers are the boards as the checks common to both engines see them.
func (j BoardJob) offers() []offer {
	offers := make([]offer, len(j.Boards))
	for i, b := range j.Boards {
		offers[i] = offer{b.Name, b.Price, b.Available, b.InHand}
	}
	return offers
}

// price is the cost of one board and what it counts.
func (j BoardJob) price(b Board) (Cost, Measure) {
	if anyPriced(j.offers()) {
		return b.Price, ByPrice
	}
	if b.InHand {
		return 0, ByLength
	}
	return Cost(b.Length.UpTo(length.Micrometre) / length.Micrometre), ByLength
}

// Faults are all broken rules of the job, joined; nil when it can be laid out
// as far as single parts and boards go.
func (j BoardJob) Faults() error {
	var found faults
	offers := j.offers()
	checkOffers(offers, &found)
	j.checkSaw(&found)
	for _, b := range j.Boards {
		j.checkBoard(b, &found)
	}
	if len(j.Boards) == 0 {
		found.add(RuleNoStock, "", "there are %d parts and 0 boards; list at least one board", len(j.Parts))
	}
	if len(j.Parts) == 0 {
		found.add(RuleEmpty, "", "there are 0 parts for %d boards; list at least one part", len(j.Boards))
	}
	count := 0
	for _, p := range j.Parts {
		checkFrom(p.Label, p.From, offers, &found)
		if j.checkPart(p, &found) {
			count = min(count+min(p.Quantity, mostParts+1), mostParts+1)
		}
	}
	if count > mostParts {
		found.add(RuleTooMany, "", "more than %d parts; split the job, its parts were over %d", mostParts, mostParts)
	}
	return found.err()
}

func (j BoardJob) checkSaw(found *faults) {
	if j.Kerf < 0 || j.Kerf > length.Longest {
		found.add(RuleKerf, "", "kerf is %s; it must lie from 0 to %s", mm(j.Kerf), mm(length.Longest))
	}
	for _, trim := range []length.Length{j.TrimStart, j.TrimEnd, j.LeastOffcut} {
		if trim < 0 || trim > length.Longest {
			found.add(RuleTrim, "", "a trim or least offcut is %s; it must lie from 0 to %s", mm(trim), mm(length.Longest))
		}
	}
}

func (j BoardJob) checkBoard(b Board, found *faults) {
	switch {
	case b.Length <= 0:
		found.add(RuleSize, b.Name, "the board is %s long; it must be more than 0", mm(b.Length))
	case b.Length > LongestBoard:
		found.add(RuleTooLong, b.Name, "the board is %s long; the limit is %s", mm(b.Length), mm(LongestBoard))
	case j.Kerf >= b.Length:
		found.add(RuleKerf, b.Name, "kerf is %s, the board only %s; use a narrower kerf", mm(j.Kerf), mm(b.Length))
	case j.clear(b) <= 0:
		found.add(RuleTrim, b.Name, "trimming takes %s of a board %s long; trim less",
			mm(j.TrimStart+j.TrimEnd), mm(b.Length))
	}
}

// checkPart tells whether the quantity can be counted.
func (j BoardJob) checkPart(p Part, found *faults) bool {
	if p.Quantity <= 0 {
		found.add(RuleQuantity, p.Label, "quantity is %d; it must be 1 or more", p.Quantity)
		return false
	}
	if p.Length <= 0 {
		found.add(RuleSize, p.Label, "the part is %s long; it must be more than 0", mm(p.Length))
		return true
	}
	longest, name := length.Length(0), ""
	for _, b := range j.Boards {
		if allowed(p.From, b.Name) && j.clear(b) > longest {
			longest, name = j.clear(b), b.Name
		}
	}
	if name != "" && p.Length > longest {
		found.add(RuleTooBig, p.Label, "the part is %s long; the longest board it may come from, %q, leaves %s after trimming",
			mm(p.Length), name, mm(longest))
	}
	return true
}
