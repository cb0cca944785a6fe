package check

import (
	"stilewright/model/catalog"
	"stilewright/model/spec"
)

// The rules of the trade a resolved set is held to, beyond those that
// model/door finds as it resolves. Each has its smallest failing model in the
// tests.
const (
	RuleFloorGap        = "floor-gap"       // the gap below a leaf grows too wide along its travel
	RuleHangerAdjust    = "hanger-adjust"   // the hangers cannot take up the floor's slope
	RuleReveal          = "reveal"          // the reveal at a jamb is visibly uneven
	RuleBow             = "bow"             // how far leaves may bow or twist
	RuleBowTight        = "bow-tight"       // hardly at all
	RuleSquareness      = "squareness"      // what the diagonals may differ by
	RuleCrossRail       = "cross-rail"      // a high leaf without a cross rail
	RuleThinLip         = "thin-lip"        // little wood before or behind the panel's seat
	RuleHardwareGlass   = "hardware-glass"  // a pull's mortise too near a panel's seat
	RuleSheetThin       = "sheet-thin"      // a thin plastic sheet for its size
	RuleSafetyGlazing   = "safety-glazing"  // the class of impact that glazing in doors must pass
	RuleCriticalZone    = "critical-zone"   // the same by the rules of England
	RuleGlassBreaks     = "glass-breaks"    // glass that breaks into blades
	RuleLift            = "lift"            // a leaf too heavy for one person
	RuleSeason          = "season"          // a clearance gone in winter or summer
	RuleSeasonMoisture  = "season-moisture" // wood drier or moister than the coefficients hold for
	RuleToleranceLikely = "tolerance"       // a clearance that likely errors use up
	RuleToleranceWorst  = "tolerance-worst" // a clearance that the worst errors use up
	RuleTrackScrew      = "track-screw"     // the track's screws do not hold
	RuleHeaderSag       = "header-sag"      // the header sags too far
	RuleRailStress      = "rail-stress"     // the top rail is bent hard
	RuleHangerReserve   = "hanger-reserve"  // hangers near their rating
	RulePush            = "push"            // a pushed panel draws out of its seat
	RuleHungLoad        = "hung-load"       // what hangers, screws and joints bear
)

// A Rule is one rule: what it asks, what breaking it does, and where it comes
// from.
type Rule struct {
	ID       string
	Says     string
	Severity spec.Severity
	Source   string
}

const houseRule = "common practice, no source"

// Rules lists the rules of the trade in the order they are checked in.
func Rules() []Rule {
	w, n := spec.Warning, spec.Note
	return []Rule{
		{RuleFloorGap, "the gap below a leaf stays within 3/4 in over its whole travel", w, practised("floor-gap-carpet")},
		{RuleHangerAdjust, "hangers take up what the floor rises between them", w, houseRule},
		{RuleReveal, "a reveal is even from floor to head within 1/4 in or 6 mm", w, houseRule},
		{RuleBow, "passing leaves may each bow or twist by half of what is free between them", n, practised("warp")},
		{RuleBowTight, "at least 1/16 in or 1.5 mm of bow is left for each leaf", w, houseRule},
		{RuleSquareness, "a leaf's diagonals differ by at most 1/8 in", n, practised("squareness")},
		{RuleCrossRail, "a leaf over 60 in high has a cross rail", w, practised("intermediate-rail")},
		{RuleThinLip, "the wood beside the panel's seat is at least 1/4 in or 6 mm thick", w, houseRule},
		{RuleHardwareGlass, "at least 3/8 in is left between a pull's mortise and the panel's seat", w, practised("hardware-to-glass")},
		{RuleSheetThin, "acrylic is as thick as its area asks", n, catalog.SheetThicknesses()[0].Source.String()},
		{RuleSafetyGlazing, "glazing in doors passes the impact class of its area; ask the local authority", n, glazed("us-category-area")},
		{RuleCriticalZone, "glazing in doors below 1500 mm breaks safely or is small; ask the local authority", n, glazed("uk-critical-height")},
		{RuleGlassBreaks, "annealed glass has no place in a door; ask the local authority", w, glazed("us-doors")},
		{RuleLift, "one person lifts at most 23 kg", w, practised("lift-alone")},
		{RuleSeason, "every clearance stays open in winter and summer", w, movementSource()},
		{RuleSeasonMoisture, "wood stays within 6 to 14 % moisture, for which movement is worked out", n, movementSource()},
		{RuleToleranceLikely, "a clearance is larger than its likely error", w, houseRule},
		{RuleToleranceWorst, "a clearance is larger than its worst error", n, houseRule},
		{RuleTrackScrew, "the track's screws reach the framing and bear a leaf each", w, catalog.WithdrawalSource().String()},
		{RuleHeaderSag, "the header sags at most its span ÷ 600, and 1/8 in", w, practised("header-sag")},
		{RuleRailStress, "the top rail breaks at no less than four times its load", w, houseRule},
		{RuleHangerReserve, "hangers are rated for 1.25 times the leaf", n, practised("hanger-reserve")},
		{RulePush, "a panel pushed by hand stays in its seat", w, practised("hand-push")},
		{RuleHungLoad, "what hangers, screws and joints bear", n, catalog.WithdrawalSource().String()},
	}
}

// ruleOf is the rule of an id, and whether the list has it.
func ruleOf(id string) (Rule, bool) {
	for _, r := range Rules() {
		if r.ID == id {
			return r, true
		}
	}
	return Rule{}, false
}

// SourceOf is the source of the rule of an id, "" for rules of other packages.
func SourceOf(id string) string {
	r, _ := ruleOf(id)
	return r.Source
}

// practised is the source of a practice; a test sees to it that each is there.
func practised(name string) string {
	row, err := catalog.Rule(name)
	if err != nil {
		return ""
	}
	return row.Source.String()
}

// glazed is the source of a glazing rule.
func glazed(name string) string {
	row, err := catalog.Glazing(name)
	if err != nil {
		return ""
	}
	return row.Source.String()
}

func movementSource() string {
	return "Wood Handbook, FPL-GTR-190, 2010, Eq. 13-2 and 4-5; read in one published text"
}
