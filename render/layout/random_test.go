package layout

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/cutting"
	"stilewright/model/door"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
	"stilewright/render/dimension"
)

var models = flag.Int("models", 24, "how many random models are taken off")

func pick[T any](rnd *rand.Rand, from ...T) T { return from[rnd.IntN(len(from))] }

// anyStocked is a random model with random stock; many do not resolve, or have
// no board for a part.
func anyStocked(rnd *rand.Rand) string {
	var w strings.Builder
	line := func(format string, values ...any) { fmt.Fprintf(&w, format+"\n", values...) }
	leaves := pick(rnd, "[back, front]", "[front, back, front]", "[back, front, front, back]")
	line("job: %s\nunits: millimetre\npaper: %s", pick(rnd, "Shed", "Küche Süd, der dritte von drei Schränken hinter der Treppe"), pick(rnd, "A4", "A3", "A2", "letter"))
	line("opening: {width: %d, height: %d}", 1000+rnd.IntN(2600), 900+rnd.IntN(2000))
	line("hanging: {style: bypass, tracks: %s, overlap: %d%s}", leaves, 30+rnd.IntN(40), pick(rnd, "", ", fascia: {height: 60, thickness: 18}"))
	line("leaf:\n  thickness: 34\n  stile: %d\n  rail: {top: %d, cross: %d, bottom: %d}", 70+rnd.IntN(50), 70+rnd.IntN(50), 65+rnd.IntN(30), 80+rnd.IntN(60))
	line("  muntin: %d\n  lites: {rows: %d, columns: %d}", 45+rnd.IntN(30), 1+rnd.IntN(6), 1+rnd.IntN(3))
	line("  joint: {kind: %s}", pick(rnd, "pocket-screw", "dowel", "loose-tenon", "mortise-and-tenon", "half-lap", "bridle"))
	line("panel: {material: %s, thickness: 4, edge_gap: 2, held_by: %s}", pick(rnd, "acrylic", "plywood", "tempered glass", "mirror"), pick(rnd, "edge-washer", "edge-washer", "stop", "sealant"))
	line("stock:\n  species: %s\n  kerf: %d\n  trim: %d\n  allowance: %d", pick(rnd, "white ash", "ponderosa pine"), rnd.IntN(6), rnd.IntN(40), rnd.IntN(40))
	if rnd.IntN(2) == 0 {
		line("  lengths: [%d, %d]", 2400+rnd.IntN(600), 3000+rnd.IntN(2000))
	}
	if rnd.IntN(2) == 0 {
		line("  offcuts: [%d, %d, %d]", 300+rnd.IntN(900), 300+rnd.IntN(900), 1000+rnd.IntN(2000))
	}
	if rnd.IntN(2) == 0 {
		line("  boards: [{length: 3000, clear: [%d, %d], count: 2}]", 300+rnd.IntN(1000), 300+rnd.IntN(1000))
	}
	if rnd.IntN(2) == 0 {
		line("  sheet: {grain: %s, sizes: [{width: %d, height: %d}, {width: 700, height: 900, in_hand: 1}]}", pick(rnd, "up", "across", "none"), 900+rnd.IntN(1200), 1500+rnd.IntN(1500))
	}
	if rnd.IntN(3) == 0 {
		line("  film: {width: %d, side: %s}", 300+rnd.IntN(1000), pick(rnd, "front", "both"))
	}
	line("  finish: %s", pick(rnd, "paint", "clear", "none"))
	return w.String()
}

// TestRandomTakeoffs: of random models, every layout is replayed by its checker,
// every piece is laid out or ordered, and every page and label reads well.
func TestRandomTakeoffs(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 2))
	read := 0
	for n := range *models {
		text := anyStocked(rnd)
		model, findings := spec.Read("model.yaml", []byte(text))
		require.Empty(t, findings, text)
		set, _ := door.Resolve(model)
		if len(set.Hung) == 0 {
			continue
		}
		one, findings := takeoff.Of([]takeoff.Job{{Model: model, Set: set}}, takeoff.Prices{})
		if len(one.Parts) == 0 {
			require.NotEmpty(t, findings, text)
			for _, f := range findings {
				require.Positive(t, f.Line, "%v", f)
			}
			continue
		}
		read++
		replayed(t, one, fmt.Sprintf("seed %d, model %d:\n%s", *seed, n, text))
	}
	require.Greater(t, read, *models/5, "too few resolve for the sweep to tell anything")
}

func replayed(t *testing.T, one takeoff.Takeoff, about string) {
	t.Helper()
	laid := make([]int, len(one.Parts))
	for _, p := range one.Boards {
		require.NoError(t, cutting.CheckBoards(p.Job, p.Layout), about)
		for n, i := range p.Parts {
			laid[i] += p.Job.Parts[n].Quantity * one.Parts[i].SideBySide
		}
	}
	for _, p := range one.Sheets {
		if !p.ToSize {
			require.NoError(t, cutting.CheckSheets(p.Job, p.Layout), about)
		}
		for _, i := range p.Parts {
			laid[i] += one.Parts[i].Quantity
		}
	}
	for _, p := range one.Film {
		require.NoError(t, cutting.CheckFilm(p.Job, p.Layout), about)
	}
	for i, p := range one.Parts {
		if p.Kind != takeoff.Hardware {
			require.GreaterOrEqual(t, laid[i], p.Quantity, "%s of %s", p.Label(), about)
		}
	}
	for _, i := range one.Buy {
		require.Positive(t, i.Buy, "%s of %s", i.Name, about)
		require.GreaterOrEqual(t, float64(i.Buy)*i.Pack, i.Need-1e-9, "%s of %s", i.Name, about)
	}
	pages, err := Pages(one)
	require.NoError(t, err, about)
	labels, err := Labels(one)
	require.NoError(t, err, about)
	for _, p := range append(pages, labels...) {
		require.NoError(t, p.Check(), "%s of %s", p.Name, about)
		require.Empty(t, dimension.Collisions(p.Marks, plane.Box{Max: plane.At(p.Width, p.Height)}), "%s of %s", p.Name, about)
	}
}
