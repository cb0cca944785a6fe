package golden

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/hanging"
	"stilewright/model/spec"
	"stilewright/render/dimension"
	"stilewright/render/guide"
)

// Random models have a building order that names only figures there are, on
// pages that read well.
func TestRandomGuidesReadWell(t *testing.T) {
	rnd, enough := rand.New(rand.NewPCG(*seed, 1)), max(1, *models/fewer/8)
	for drawn, tries := 0, 0; drawn < enough; tries++ {
		require.Less(t, tries, 40*enough+40, "seed %d: too few of the random models resolve", *seed)
		text := anyModel(rnd)
		set, fault := settled(text)
		if fault != "" {
			continue
		}
		drawn++
		model, _ := spec.Read("random", []byte(text))
		hung, found := hanging.Of(model, set)
		require.Empty(t, found, "seed %d:\n%s", *seed, text)
		g, err := guide.Of(model, set, hung)
		require.NoError(t, err, "seed %d:\n%s", *seed, text)
		pages, err := guide.Sheets(g)
		require.NoError(t, err, "seed %d:\n%s", *seed, text)
		for _, page := range pages {
			require.NoError(t, page.Check(), "seed %d:\n%s", *seed, text)
			paper, _ := dimension.Extent(page.Marks)
			require.Empty(t, dimension.Collisions(page.Marks, paper), "seed %d, %s:\n%s", *seed, page.Name, text)
		}
	}
}
