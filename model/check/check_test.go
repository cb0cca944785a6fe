package check_test

import (
	"flag"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/check"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

const (
	in = length.Inch
	mm = length.Millimetre
)

// hall is a set with most that may meet: pulls on both faces, a guide's groove,
// worked edges, a fascia.
const hall = `
job: Hall
units: inch
opening: {width: 60, height: 80}
hanging: {style: bypass, tracks: [front, back], fascia: {height: 3, thickness: 3/4}}
leaf:
  thickness: 1 3/8
  stile: 4
  rail: 4
  lites: {rows: 2}
  joint: {kind: dowel}
  edges: [{edge: outside, face: front, shape: roundover, size: 1/4}]
  pull: {shape: round, face: both, width: 2, depth: 3/8}
  guide: {width: 1/4, depth: 1/4}
panel: {material: acrylic, thickness: 1/8, edge_gap: 1/16, held_by: {kind: edge-washer}}
`

// resolved is the set of a model.
func resolved(t *testing.T, text string) door.Set {
	t.Helper()
	model, findings := spec.Read("hall.yaml", []byte(text))
	require.Empty(t, findings)
	set, findings := door.Resolve(model)
	require.NotEmpty(t, set.Hung, "%v", findings)
	return set
}

// sentences are what the findings say.
func sentences(findings []spec.Finding) []string {
	var all []string
	for _, f := range findings {
		all = append(all, f.Rule+": "+f.Sentence)
	}
	return all
}

// In the samples nothing meets, closed or slid to random places.
func TestSamplesAreClear(t *testing.T) {
	files, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		set := resolved(t, string(text))
		require.Empty(t, sentences(check.All(set)), file)
		if len(set.Hung) > 2 {
			continue // more may not stand in any places
		}
		free := int64(set.Opening.Width - set.Leaf.Width)
		for range 3 {
			at := []length.Length{length.Length(rnd.Int64N(free)), length.Length(rnd.Int64N(free))}
			require.Empty(t, sentences(check.Slide(set, at)), "seed %d: %s at %v", *seed, file, at)
		}
	}
}

// Sets with one thing wrong: what is done to the sound one, and what is said.
// The leaves are 30 3/4 by 77 3/4, hang 3/8 up and 3/8 apart; by hand: the panel
// reaches 1/8 x 1/8 x 10 in³ into the stile beside its rabbet, 2560.48 mm³; rims
// of 5/16 overlap by 1/4, π/4 in³ or 12 870.37 mm³.
func TestFaultsAreFound(t *testing.T) {
	for name, c := range map[string]struct {
		do    func(s *door.Set)
		check func(s door.Set) []spec.Finding
		rule  string
		says  string
	}{
		"panel too wide": {func(s *door.Set) {
			part := &s.Leaf.Parts[len(s.Leaf.Parts)-1]
			part.Solid.Blank = solid.Block(solid.Vec{X: 3*in + in/2, Y: 5 * in / 8, Z: 50 * in}, solid.Vec{X: 20 * in, Y: 3 * in / 4, Z: 60 * in})
		}, check.Interference, check.RulePartsMeet, `left stile SL and panel P2 share 2560.48 mm³ of space, within 3 1/2" to 4" from the leaf's left and 50" to 60" above its bottom; parts may only touch`},
		"screws meet": {func(s *door.Set) {
			at := solid.Vec{X: 2 * in, Y: in / 2, Z: 30 * in}
			for _, d := range []solid.Vec{{X: in}, {Z: in}} {
				s.Leaf.Screws = append(s.Leaf.Screws, door.Screw{Head: at, Tip: at.Add(d), Diameter: in / 8, For: "stop"})
			}
		}, check.Interference, check.RuleDrivenMeet, `the stop screw at 2" from the leaf's left and 30" above its bottom, 1/8" thick, reaches 1/8" into the stop screw; they must stay apart`},
		"screw in a pull": {func(s *door.Set) {
			at := solid.Vec{X: 2 * in, Y: in / 4, Z: 34*in + in/2}
			s.Leaf.Screws = append(s.Leaf.Screws, door.Screw{Head: at, Tip: at.Add(solid.Vec{Z: in}), Diameter: in / 8, For: "stop"})
		}, check.Interference, check.RuleDrivenMeet, `the stop screw at 2" from the leaf's left and 34 1/2" above its bottom, 1/8" thick, reaches 1/16" into the mortise of the pull in SL; they must stay apart`},
		"pull too proud": {func(s *door.Set) {
			for i := range s.Leaf.Pulls {
				s.Leaf.Pulls[i].Rim = in / 2
			}
		}, check.Sweep, check.RuleSlideMeet, `the left stile SL of leaf 2 and the pull in SL of leaf 1 both take what lies 2 15/16" to 3 1/16" behind the opening's front and 35 9/16" to 37 9/16" above its floor: they meet as the leaves pass, and must stay apart`},
		"pull too proud, closed": {func(s *door.Set) {
			for i := range s.Leaf.Pulls {
				s.Leaf.Pulls[i].Rim = 5 * in / 16
			}
			s.Hung[1].At.X = s.Hung[0].At.X
		}, func(s door.Set) []spec.Finding { return check.Slide(s, nil) }, check.RuleSlideMeet, `the pull in SL of leaf 2 shares 12870.37 mm³ of space with the pull in SL of leaf 1, within 1" to 3" from the opening's left, 2 5/8" to 2 7/8" behind its front and 35 9/16" to 37 9/16" above its floor; they must stay apart`},
		"fascia": {func(s *door.Set) {
			s.Fascia.Solid.Blank.To = s.Hung[0].At.Y + in/4
		}, check.Sweep, check.RuleSlideMeet, `the left stile SL of a leaf on the front track and the fascia both take what lies 1 3/16" to 1 7/16" behind the opening's front and 77" to 78 1/8" above its floor; they must stay apart`},
		"track too low": {func(s *door.Set) {
			s.Track.Solid = s.Track.Solid.Move(solid.Vec{Z: -in / 2})
		}, func(s door.Set) []spec.Finding { return check.Slide(s, nil) }, check.RuleSlideMeet, `the left stile SL of leaf 1 shares 5195.45 mm³ of space with the track, within 1/32" to 4" from the opening's left, 1 3/16" to 2 9/16" behind its front and 78" to 78 1/8" above its floor; they must stay apart`},
		"outside": {func(*door.Set) {}, func(s door.Set) []spec.Finding { return check.Slide(s, []length.Length{-in, 0}) }, check.RuleOutside,
			`leaf 1 stands from -1" to 29 3/4" in an opening 60" wide`},
		"floor": {func(s *door.Set) {
			for i := range s.Opening.Floor {
				s.Opening.Floor[i].Y = in / 2
			}
		}, func(s door.Set) []spec.Finding { return check.Slide(s, nil) }, check.RuleOutside, `the bottom of leaf 1 hangs at 3/8" and the floor below it, 0" from the left, is at 1/2"`},
	} {
		set := resolved(t, hall)
		require.Empty(t, sentences(check.All(set)), "sound")
		c.do(&set)
		found := c.check(set)
		require.NotEmpty(t, found, name)
		require.Equal(t, c.rule, found[0].Rule, name)
		if c.says != found[0].Sentence {
			t.Errorf("%s:\n want %s\n said %s", name, c.says, found[0].Sentence)
		}
	}
}

// A screw into a tenon's mortise is told, and does not stop.
func TestScrewIntoAMortiseWarns(t *testing.T) {
	set := resolved(t, strings.Replace(hall, "kind: dowel", "kind: loose-tenon", 1))
	at := solid.Vec{X: 3*in + 3*in/4, Z: 2 * in}
	set.Leaf.Screws = append(set.Leaf.Screws, door.Screw{Head: at, Tip: at.Add(solid.Vec{Y: in}), Diameter: in / 8, For: "stop"})
	found := check.Interference(set)
	require.Len(t, found, 1)
	require.Equal(t, spec.Warning, found[0].Severity)
	require.Contains(t, found[0].Sentence, "into the mortise of SL")
}

// The sweep finds every set in which some places of the leaves make two bodies
// meet: rims of any height, tried at many places.
func TestSweepFindsWhatSlideFinds(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 1))
	met := 0
	for range 12 {
		set := resolved(t, hall)
		rim := length.Length(rnd.Int64N(int64(in / 2)))
		for i := range set.Leaf.Pulls {
			set.Leaf.Pulls[i].Rim = rim
		}
		slid := false
		for x := length.Length(0); x <= set.Opening.Width-set.Leaf.Width && !slid; x += 7 * mm {
			slid = len(check.Slide(set, []length.Length{0, x})) > 0
		}
		if slid {
			met++
		}
		require.Equal(t, slid, len(check.Sweep(set)) > 0, "seed %d: rim %v", *seed, rim)
	}
	require.Greater(t, met, 0)
	require.Less(t, met, 12)
}
