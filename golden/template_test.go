package golden

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
	"stilewright/render/template"
	"stilewright/render/tile"
)

// Of any model that resolves, tiny or huge: every template can be written, its
// lettering touches nothing, the story sticks of the stiles have each rail,
// washer and screw where the set has it, and the pages are of one size
// (acceptance: full-size templates).
func TestRandomModelsTemplates(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 21))
	papers := []string{"A4", "letter", "A3", "tabloid"}
	tried, drawn, marks := max(10, *models/fewer/3), 0, 0
	for i := range tried {
		text := anyModel(rnd)
		model, _ := spec.Read("random.yaml", []byte(text))
		set, _ := door.Resolve(model)
		if len(set.Hung) == 0 {
			continue
		}
		drawn++
		sheets := template.Sheets(set)
		for _, s := range sheets {
			require.NoError(t, s.Check(), "seed %d: %s\n%s", *seed, s.Name, text)
			require.Empty(t, dimension.Collisions(s.Marks, plane.BoxOf(plane.At(0, 0), plane.At(s.Width, s.Height))), "seed %d: %s\n%s", *seed, s.Name, text)
		}
		marks += stickMarks(t, set, text)
		paper, err := tile.Named(papers[i%len(papers)])
		require.NoError(t, err)
		plates, lay, err := template.Plates(set, paper, tile.Options{})
		require.NoError(t, err, "seed %d\n%s", *seed, text)
		pages, err := tile.Book(plates, paper, tile.Options{Lay: lay})
		require.NoError(t, err, "seed %d\n%s", *seed, text)
		require.False(t, slices.ContainsFunc(pages, func(p sheet.Sheet) bool { return p.Width != pages[0].Width || p.Height != pages[0].Height }))
	}
	require.Greater(t, drawn, tried/10, "of %d random models", tried)
	require.Greater(t, marks, 10*drawn)
	t.Logf("%d of %d models drawn, %d marks", drawn, tried, marks)
}

// stickMarks counts the marks of both stiles that the set tells of, each of
// which must be there.
func stickMarks(t *testing.T, set door.Set, text string) (n int) {
	t.Helper()
	for _, p := range set.Leaf.Parts {
		if p.Role != door.StileRole {
			continue
		}
		left := p.Label == "SL"
		at := map[length.Length]bool{}
		for _, place := range template.Places(set.Leaf, p) {
			at[place.At] = true
		}
		want := []length.Length{0, set.Leaf.Height}
		for _, r := range set.Leaf.Rails {
			want = append(want, r.From, r.Centre(), r.To)
		}
		for _, lite := range set.Leaf.Lites {
			switch {
			case left && lite.Column == 0:
				want = append(want, lite.Washers[door.Left]...)
			case !left && lite.Column == set.Leaf.Columns-1:
				want = append(want, lite.Washers[door.Right]...)
			}
		}
		for _, s := range set.Leaf.Screws {
			if s.For == "pocket" && s.Head.Z == s.Tip.Z && (s.Tip.X < set.Leaf.Width.Half()) == left {
				want = append(want, s.Tip.Z)
			}
		}
		for _, w := range want {
			require.True(t, at[w], "seed %d: nothing is marked on %s at %v\n%s", *seed, p.Label, w, text)
		}
		n += len(want)
	}
	return n
}
