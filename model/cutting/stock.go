package cutting

import (
	"errors"
	"fmt"

	"stilewright/model/length"
)

// A Cost is an exact whole number of the price list's smallest coin (cents),
// or, where nothing is priced, of the unit the Measure names.
type Cost int64

// DearestPrice is the highest price of one board or sheet, in the smallest
// coin: high enough for any stock, low enough that sums stay exact.
const DearestPrice Cost = 100_000_000

// A Measure says what a Cost counts.
type Measure int

// The measures: ByPrice counts the smallest coin, ByLength micrometres of board
// bought, ByArea square millimetres of sheet bought (each piece rounded up).
const (
	ByPrice Measure = iota
	ByLength
	ByArea
)

// String is the measure in words.
func (m Measure) String() string {
	return [...]string{"price", "length", "area"}[m]
}

// A Rule names one thing that can be wrong with a job.
type Rule string

// The rules a job can break.
const (
	RuleEmpty     Rule = "nothing-to-cut"
	RuleNoStock   Rule = "no-stock"
	RuleSize      Rule = "size-not-positive"
	RuleTooLong   Rule = "size-beyond-limit"
	RuleQuantity  Rule = "quantity-not-positive"
	RuleTooMany   Rule = "too-many-parts"
	RuleTooBig    Rule = "part-too-big"
	RuleKerf      Rule = "kerf-too-wide"
	RuleTrim      Rule = "trim-too-wide"
	RulePrice     Rule = "price-out-of-range"
	RuleUnpriced  Rule = "price-missing"
	RuleUnknown   Rule = "unknown-stock"
	RuleTwice     Rule = "stock-named-twice"
	RuleAvailable Rule = "available-negative"
	RuleShort     Rule = "not-enough-stock"
	RuleOverlap   Rule = "overlap-too-wide"
	RuleDirection Rule = "unknown-direction"
)

// A Fault is one broken rule of a job. LayOut functions report all faults they
// see, joined in the order of the job's lists.
type Fault struct {
	Rule Rule
	// About is the label of the part or the name of the stock, "" for the job.
	About string
	// Says is one sentence with both numbers and what to do.
	Says string
}

// Error is the rule and the sentence.
func (f Fault) Error() string {
	if f.About == "" {
		return fmt.Sprintf("%s: %s", f.Rule, f.Says)
	}
	return fmt.Sprintf("%s: %s: %s", f.Rule, f.About, f.Says)
}

// faults gathers what is wrong.
type faults []error

func (f *faults) add(rule Rule, about, says string, args ...any) {
	*f = append(*f, Fault{rule, about, fmt.Sprintf(says, args...)})
}

func (f faults) err() error { return errors.Join(f...) }

// mostParts is the most parts a job may have; with DearestPrice it keeps every
// sum of the search inside 63 bits.
const mostParts = 20_000

// DefaultBudget is the number of search steps spent when a job names none:
// about a second or two of an ordinary computer. (Our choice.)
const DefaultBudget = 2_000_000

// mostBudget keeps counts of effort inside 31 bits: some minutes of work.
const mostBudget = 1 << 28

// steps is the budget to work with.
func steps(asked int) int {
	if asked <= 0 {
		return DefaultBudget
	}
	return min(asked, mostBudget)
}

// LongestBoard and LongestSheet are the greatest board and side of a sheet:
// beyond any trade size, and short enough that sums of the search stay exact.
const (
	LongestBoard = 100 * length.Metre
	LongestSheet = 20 * length.Metre
)

// mm is a length for a message: millimetres, exact.
func mm(l length.Length) string { return l.Decimal() + " mm" }

// offer is what both engines' stocks have in common.
type offer struct {
	name      string
	price     Cost
	available int
	inHand    bool
}

// checkOffers finds faults in names, prices and availability.
func checkOffers(offers []offer, found *faults) {
	seen := map[string]bool{}
	priced, unpriced := "", ""
	for _, o := range offers {
		if seen[o.name] {
			found.add(RuleTwice, o.name, "the name stands for two stocks; give each its own")
		}
		seen[o.name] = true
		switch {
		case o.price < 0 || o.price > DearestPrice:
			found.add(RulePrice, o.name, "price is %d; it must lie from 0 to %d", o.price, DearestPrice)
		case o.inHand && o.price != 0:
			found.add(RulePrice, o.name, "price is %d, but stock in hand counts 0; drop the price", o.price)
		case o.price > 0 && priced == "":
			priced = o.name
		case o.price == 0 && !o.inHand && unpriced == "":
			unpriced = o.name
		}
		if o.available < 0 {
			found.add(RuleAvailable, o.name, "%d available; write 0 for as many as needed", o.available)
		}
		if o.inHand && o.available == 0 {
			found.add(RuleAvailable, o.name, "in hand, but 0 available; say how many there are")
		}
	}
	if priced != "" && unpriced != "" {
		found.add(RuleUnpriced, unpriced, "has no price while %q has one; price every stock or none", priced)
	}
}

// checkFrom finds names no stock has.
func checkFrom(label string, from []string, offers []offer, found *faults) {
	for _, name := range from {
		known := false
		for _, o := range offers {
			known = known || o.name == name
		}
		if !known {
			found.add(RuleUnknown, label, "must come from %q, which is not among the %d stocks; the first is %q",
				name, len(offers), firstName(offers))
		}
	}
}

func firstName(offers []offer) string {
	if len(offers) == 0 {
		return ""
	}
	return offers[0].name
}

// allowed tells whether a part that names from may be cut from the stock.
func allowed(from []string, stock string) bool {
	if len(from) == 0 {
		return true
	}
	for _, name := range from {
		if name == stock {
			return true
		}
	}
	return false
}

// anyPriced tells whether the stock is priced at all.
func anyPriced(offers []offer) bool {
	for _, o := range offers {
		if o.price > 0 {
			return true
		}
	}
	return false
}

// gcd is the greatest common divisor; gcd(0, b) is b.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
