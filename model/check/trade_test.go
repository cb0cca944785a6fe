package check_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/check"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// towels breaks no rule; it has only what is worth knowing of any model.
const towels = `job: Bathroom towels
units: inch
opening: {width: 60, height: 80}
hanging: {style: bypass, tracks: [back, front]}
leaf: {thickness: 1 3/8, stile: 4, rail: 4, lites: {rows: 2}, joint: dowel}
panel: {material: acrylic, thickness: 1/8, edge_gap: 1/16, held_by: {kind: edge-washer, washer: {thickness: 1/4}}}
`

// reported is what a model is told, which must resolve.
func reported(t *testing.T, text string) (check.Report, door.Set) {
	t.Helper()
	m, findings := spec.Read("towels.yaml", []byte(text))
	require.Empty(t, findings, text)
	set, findings := door.Resolve(m)
	require.NotEmpty(t, set.Hung, "%v\n%s", findings, text)
	return check.Of(m, set), set
}

// told are the findings of a rule.
func told(r check.Report, rule string) []spec.Finding {
	var found []spec.Finding
	for _, f := range r.Findings {
		if f.Rule == rule {
			found = append(found, f)
		}
	}
	return found
}

// broken is the smallest model that breaks each rule, written as what is
// replaced in towels, "old => new" apart by semicolons, with the sentence.
var broken = []struct{ rule, change, sentence string }{
	{check.RuleFloorGap, `height: 80 => height: {left: 80, right: 80 1/2}`, `the floor falls: below leaf 1, lower right corner the gap grows from ≈ 5/8" to 7/8", 60" from the opening's left; more than 3/4" shows: level the floor, or lay a threshold`},
	{check.RuleHangerAdjust, `height: 80 => height: {left: 80, right: 81 1/4}`, `the floor rises 0.378" between the hangers of leaf 1 and they adjust by 0.188" up and down, 0.375" together: it cannot hang along the floor; the gap below it stays uneven`},
	{check.RuleReveal, `width: 60 => width: {bottom: 60, top: 60 3/8}`, `leaf 2 to the right jamb: the reveal goes from ≈ 0" to ≈ 23/64" between floor and head; ≈ 23/64" of unevenness is seen, more than 1/4": scribe a filler strip to the jamb`},
	{check.RuleBow, ``, `each leaf may bow or twist by 3/16", half of the 3/8" free between passing faces; a door as traded may by 1/4": choose straight boards and try each leaf on a flat floor`},
	{check.RuleBowTight, `[back, front] => [back, front], track: {spacing: 1 7/16}`, `only 1/16" is free between passing faces, 1/32" for the bow of each leaf; at least 1/16" each is safe: a wider channel spacing, or nothing that stands proud`},
	{check.RuleSquareness, ``, `both diagonals of a leaf are ≈ 83 39/64"; glued up they may differ by 1/8"`},
	{check.RuleCrossRail, `rows: 2 => rows: 1`, `a leaf 77 3/4" high has no cross rail; over 60" it should have one: lites: {rows: 2}`},
	{check.RuleThinLip, `1/8, => 1/8, rabbet: {depth: 1 3/16},`, `3/16" of wood is left in front of the panel's seat; under 1/4" it chips and splits easily: a thicker frame, or the panel further from that face`},
	{check.RuleHardwareGlass, `joint: dowel => joint: dowel, pull: {shape: round, width: 2 5/8, depth: 3/8}`, `the pull's mortise in SL is 5/16" from the seat of a panel; at least 3/8" should be left: a smaller pull, or one further out`},
	{check.RuleSheetThin, `thickness: 1/8 => thickness: 3/32`, `acrylic of 5.4 ft² is 3/32" thick; up to 12.0 ft² it should be at least 1/8"`},
	{check.RuleSafetyGlazing, ``, `the largest piece of acrylic is 23 3/8" by 33 1/2", 5.4 ft²: by US rules doors with pieces up to 9 ft² (0.84 m²) need safety glazing of category I, larger ones II, so I here; a plastic sheet without that mark is no proof of it: ask the local authority`},
	{check.RuleSafetyGlazing, `rows: 2 => rows: 1; acrylic => tempered glass`, `the largest piece of tempered glass is 23 3/8" by 70 3/8", 11.4 ft²: by US rules doors with pieces up to 9 ft² (0.84 m²) need safety glazing of category I, larger ones II, so II here; each piece with its maker's permanent mark: ask the local authority`},
	{check.RuleCriticalZone, ``, `glazing begins 4 3/8" above the floor; by English rules doors are critical below ≈ 59 1/16", where panes break safely: up to ≈ 35 7/16" wide by class 3 of EN 12600, so class 3 for 23 3/8" here: ask the local authority`},
	{check.RuleGlassBreaks, `acrylic => mirror`, `5.4 ft² of mirror, 4 3/8" from the floor, breaks into blades; in doors it is not allowed in most places: take tempered or laminated glass and ask the local authority`},
	{check.RuleLift, `acrylic, thickness: 1/8 => tempered glass, thickness: 1/4`, `a leaf weighs 54.2 lb; one person lifts at most 50.7 lb, and less at arm's length: two people, or hang it unglazed`},
	{check.RuleSeason, `edge_gap: 1/16 => edge_gap: 1/64`, `the panel edge gap up and down is 0.016" when hung and -0.01" in summer (27 °C, 60 % humidity, wood at 10.8 %; less half of what the panel's height grows and the rails beside it take): the panel jams and bows; make it larger by 1/16"`},
	{check.RuleSeasonMoisture, `job: => seasons: {winter: {humidity: 10}}|job:`, `winter wood settles at 2.5 % moisture (20 °C, 10 % humidity); movement is worked out for 6 to 14 %, and is off by about a twentieth beyond`},
	{check.RuleToleranceLikely, `edge_gap: 1/16 => edge_gap: 1/64`, `the panel edge gap is 0.016" and likely to come out off by 0.023"; most of that is the lite between shoulders, ± 0.031": measure and fit that, or make it wider`},
	{check.RuleToleranceWorst, `washer: {thickness: 1/4} => washer: {thickness: 3/16}`, `the panel least washer lap is 0.063"; likely it comes out off by 0.047", at worst by 0.087", and is gone; most of that is the lite between shoulders, ± 0.031"`},
	{check.RuleTrackScrew, `[back, front] => [back, front], fixing: {screw: {length: 3/4}}`, `the track's screws are 3/4" long and go through 27/32" of track and lining: they do not reach the framing`},
	{check.RuleTrackScrew, `[back, front] => [back, front], fixing: {screw: {length: 1}}`, `a track screw may bear 13 lbf by NDS, with 5/32" of thread in spruce-pine-fir, and a leaf weighs 28 lbf: longer screws, or the next gauge`},
	{check.RuleHeaderSag, `[back, front] => [back, front], header: {height: 1 1/2, thickness: 3/4}`, `with all leaves at its middle, 57 lbf, a header 1 1/2" by 3/4" over 60" sags ≈ 15/16"; at most ≈ 3/32" keeps the doors running: a higher one`},
	{check.RuleRailStress, `joint: dowel => joint: half-lap; rail: 4 => rail: {top: 1, cross: 4, bottom: 4}; acrylic, thickness: 1/8 => tempered glass, thickness: 3/8; [back, front] => [back, front], hangers: {inset: 13, screw: {length: 3/8}}`, `the top rail bears 37 lbf at 9" from its joints and is bent to 3675 psi; clear wood breaks at 9427 psi, 2.6 times that, and 4 is safe: a wider top rail, or hangers nearer to the sides`},
	{check.RuleHangerReserve, `acrylic, thickness: 1/8 => tempered glass, thickness: 5/16`, `a leaf weighs 63.0 lb; its hangers should be rated for 1.25 times that, 78.8 lb, and a typical two-channel track is for 75.0 lb`},
	{check.RulePush, `rows: 2 => rows: 1; thickness: 1/8 => thickness: 1/16; washer: {thickness: 1/4} => washer: {thickness: 5/32}`, `pushed at its middle with 34 lbf, the panel of 22 3/4" by 69 3/4" bends 0.727" and its edges draw in by 0.062" together; pushed to one side, the washers' lap is 0.031": a thicker sheet, or smaller lites`},
	{check.RuleHungLoad, ``, `a leaf with its hardware weighs 28.4 lb: its hangers bear 14 lbf and 14 lbf, a top joint 13 lbf, a track screw at most 28 lbf, 3.5 times which it may by NDS`},
}

// changed is towels with the changes made, each of which must find its place.
func changed(t *testing.T, changes string) string {
	t.Helper()
	text := towels
	for _, change := range strings.Split(changes, "; ") {
		if from, to, has := strings.Cut(change, " => "); has {
			require.Contains(t, text, from)
			text = strings.Replace(text, from, strings.ReplaceAll(to, "|", "\n"), 1)
		}
	}
	return text
}

// Every rule is broken by its model, with its severity, in its sentence, and at
// a place in the file; the list has no rule twice and none without a test.
func TestRulesOfTheTrade(t *testing.T) {
	tried := map[string]bool{}
	for _, c := range broken {
		tried[c.rule] = true
		r, _ := reported(t, changed(t, c.change))
		found := told(r, c.rule)
		require.NotEmpty(t, found, "%s: %s", c.rule, c.change)
		if found[0].Sentence != c.sentence {
			t.Errorf("%s %s:\n want %s\n said %s", c.rule, c.change, c.sentence, found[0].Sentence)
		}
		require.Positive(t, found[0].Line, c.rule)
	}
	listed := map[string]bool{}
	for _, rule := range check.Rules() {
		require.False(t, listed[rule.ID], rule.ID)
		listed[rule.ID] = true
		require.NotEmpty(t, rule.Source, rule.ID)
		require.NotEmpty(t, rule.Says, rule.ID)
		require.True(t, tried[rule.ID], "%s has no model that breaks it", rule.ID)
		require.NotEqual(t, spec.Stops, rule.Severity, "what stops is found as the set is resolved")
	}
	require.Len(t, listed, len(tried))
}

// The sound model breaks no rule.
func TestSoundModelIsNotWarned(t *testing.T) {
	r, _ := reported(t, towels)
	require.NotEmpty(t, r.Findings)
	for _, f := range r.Findings {
		require.Equal(t, spec.Note, f.Severity, "%v", f)
		require.NotContains(t, f.Sentence, "%!")
	}
	require.NotEmpty(t, r.Clearances)
	require.NotEmpty(t, r.Tolerances)
	require.NotEmpty(t, r.Seasons.Rows)
}

// What is worth a warning of a sample takes a few lines at most.
func TestSamplesAreNotNoisy(t *testing.T) {
	files, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		r, _ := reported(t, string(text))
		var said []string
		for _, f := range r.Findings {
			require.NotContains(t, f.Sentence, "%!", file)
			if f.Severity != spec.Note {
				said = append(said, f.String())
			}
		}
		require.LessOrEqual(t, len(said), 5, strings.Join(said, "\n"))
	}
}

// Clearances of a floor that falls 1/2 in over 60: straight between, so that a
// corner 30 3/4 in from the left has 3/8 + 1/4 × 30.75/30 below it; the other
// leaf slides as far.
func TestClearances(t *testing.T) {
	r, set := reported(t, changed(t, `height: 80 => height: {left: 80, right: 80 1/2}`))
	by := map[string]check.Clearance{}
	for _, c := range r.Clearances {
		by[c.Name] = c
	}
	left := by["leaf 1, lower left corner to the floor"]
	require.Equal(t, 3*length.Inch/8, left.Least)
	require.Equal(t, set.Opening.Width-set.Leaf.Width, left.MostAt)
	right := by["leaf 1, lower right corner to the floor"]
	require.InDelta(t, float64(3*length.Inch/8)+float64(length.Inch/2)*30.75/60, float64(right.Least), 2)
	require.Equal(t, 7*length.Inch/8, right.Most)
	require.Equal(t, 3*length.Inch/8, by["face to face of passing leaves, with what stands proud"].Least)
	require.Equal(t, 15*length.Inch/8, by["leaf top to head"].Least)
}

// What the catalogue does not have stops, at its key.
func TestUnknownFramingStops(t *testing.T) {
	r, _ := reported(t, changed(t, `[back, front] => [back, front], header: {wood: brass}`))
	found := told(r, door.RuleUnknownSpecies)
	require.Len(t, found, 1)
	require.Equal(t, spec.Stops, found[0].Severity)
	require.Equal(t, 4, found[0].Line)
	require.Empty(t, told(r, check.RuleHungLoad))
}
