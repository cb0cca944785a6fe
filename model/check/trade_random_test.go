package check_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/check"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// dice writes a random model: leaves of any number, openings out of square,
// sheets and woods of all kinds.
func dice(rnd *rand.Rand) string {
	pick := func(words ...string) string { return words[rnd.IntN(len(words))] }
	size := func(least, most float64) string { return fmt.Sprintf("%.1f", least+rnd.Float64()*(most-least)) }
	leaves := 2 + rnd.IntN(3)
	wide := float64(leaves) * (300 + 700*rnd.Float64())
	high := 600 + 2500*rnd.Float64()
	tracks := []string{"[front, back]", "[back, front, back]", "[back, front, front, back]"}[leaves-2]
	return fmt.Sprintf(`job: Any
units: %s
opening:
  width: {bottom: %s mm, top: %s mm}
  height: {left: %s mm, right: %s mm}
  plumb: {left: %s mm}
hanging:
  style: bypass
  tracks: %s
  header: {lining: %s mm, height: %s mm, thickness: %s mm, wood: %s}
  fixing: {screw: {gauge: %s}, spacing: %s mm}
leaf: {thickness: 35 mm, stile: %s mm, rail: %s mm, lites: {rows: %d, columns: %d}, joint: %s}
panel: {material: %s, thickness: %s mm, edge_gap: %s mm, held_by: %s}
stock: {species: %s, grain: %s}
seasons: {hung: {celsius: %d}, winter: {humidity: %d}, summer: {celsius: %d, humidity: %d}}
`, pick("inch", "millimetre"), size(wide, wide+8), size(wide, wide+8), size(high, high+20), size(high, high+20), size(-10, 10), tracks,
		size(0, 60), size(20, 250), size(10, 90), pick("douglas-fir", "western redcedar"), pick("8", "10", "14"), size(60, 900),
		size(60, 120), size(60, 150), 1+rnd.IntN(4), 1+rnd.IntN(2), pick("pocket-screw", "dowel", "half-lap", "bridle"),
		pick("acrylic", "polycarbonate", "float glass", "tempered glass", "mirror", "plywood", "mdf"), size(2, 8), size(.4, 4), pick("edge-washer", "stop", "sealant"),
		pick("red oak", "sugar pine", "white ash", "redwood"), pick("flat", "quarter"), 1+rnd.IntN(50), 5+rnd.IntN(91), 1+rnd.IntN(50), 5+rnd.IntN(91))
}

// Of every model that resolves, whatever is found is said in whole sentences, at
// a place, by a rule of the list, the same twice; figures of the hanging take
// only figures there are; no clearance's least is more than its most.
func TestRandomModelsAreChecked(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 7))
	resolves, said := 0, map[string]bool{}
	for n := range 120 {
		text := dice(rnd)
		m, findings := spec.Read("any.yaml", []byte(text))
		require.Empty(t, findings, text)
		set, _ := door.Resolve(m)
		if len(set.Hung) == 0 {
			continue
		}
		resolves++
		r := check.Of(m, set)
		require.Equal(t, r, check.Of(m, set), "seed %d model %d", *seed, n)
		for _, f := range r.Findings {
			said[f.Rule] = true
			require.NotContains(t, f.Sentence, "%!", text)
			require.NotContains(t, f.Sentence, "NaN", text)
			require.NotContains(t, f.Sentence, "Inf", text)
			require.Positive(t, f.Line, f.Rule)
			require.NotEmpty(t, check.SourceOf(f.Rule), f.Rule)
		}
		for _, c := range r.Clearances {
			require.LessOrEqual(t, c.Least, c.Most, c.Name)
		}
		before := map[string]bool{}
		for _, f := range append(append([]door.Figure{}, set.Figures...), r.Hanging.Figures...) {
			for _, from := range f.From {
				require.True(t, before[from], "seed %d: %s takes %s\n%s", *seed, f.Name, from, text)
			}
			require.False(t, before[f.Name], f.Name)
			before[f.Name] = true
		}
		require.Less(t, r.Hanging.Track.Through, 4*length.Inch)
		for _, row := range r.Seasons.Rows {
			require.Less(t, (row.At[1] - row.At[0]).Abs(), length.Metre/5, row.Name)
		}
	}
	require.Greater(t, resolves, 20)
	require.Greater(t, len(said), 15, "few rules are ever broken: %v", said)
}
