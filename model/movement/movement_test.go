package movement_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/movement"
	"stilewright/model/spec"
)

const model = `job: Bathroom towels
units: inch
opening: {width: 60, height: 80}
hanging: {style: bypass, tracks: [back, front], overlap: 1 1/2}
leaf: {thickness: 1 3/8, stile: 4, rail: 5, lites: {rows: 2}, joint: pocket-screw}
panel: {material: acrylic, thickness: 1/8, edge_gap: 1/8}
stock: {species: eastern white pine}
`

func tableOf(t *testing.T, text string) movement.Table {
	t.Helper()
	m, findings := spec.Read("towels.yaml", []byte(text))
	require.Empty(t, findings)
	set, _ := door.Resolve(m)
	require.NotEmpty(t, set.Hung)
	table, err := movement.Of(m, set)
	require.NoError(t, err)
	return table
}

// Published changes of size: 5 1/2 in of flatsawn eastern white pine, 6 to
// 11 %, 0.058 in, and 11 1/4 in of red oak over 4 points, 0.166 in (coefficients
// of Wood Handbook, FPL-GTR-190, Table 13-5, Eq. 13-2); 232 mm of white fir
// flooring, 8 to 11 %, 1.7 mm (its example to that equation, from memory).
func TestPublishedMovement(t *testing.T) {
	for _, c := range []struct {
		wood     string
		mm       float64
		from, to float64
		moved    float64
	}{
		{"eastern white pine", 5.5 * 25.4, 6, 11, .058 * 25.4},
		{"red oak", 11.25 * 25.4, 8, 12, .166 * 25.4},
		{"white fir", 232, 8, 11, 1.7},
	} {
		species, err := catalog.Species(c.wood)
		require.NoError(t, err)
		got := movement.Wood{Species: species}.Wide(length.Round(c.mm), movement.Air{Moisture: c.from}, movement.Air{Moisture: c.to})
		require.InDelta(t, c.moved, got.MM(), .02, c.wood)
	}
}

// Heat on a metre of acrylic: 72e-6 × 1000 × 10 K = 0.72 mm (makers' data
// sheets); moisture from 60 to 80 %: 1 mm.
func TestSheetMoves(t *testing.T) {
	acrylic, err := catalog.Sheet("acrylic")
	require.NoError(t, err)
	dry, warm, moist := movement.Air{Celsius: 20, Humidity: 60}, movement.Air{Celsius: 30, Humidity: 60}, movement.Air{Celsius: 20, Humidity: 80}
	require.Equal(t, length.Round(.72), movement.Sheet(acrylic, length.Metre, dry, warm))
	require.Equal(t, length.Round(1), movement.Sheet(acrylic, length.Metre, dry, moist))
}

// Worked by hand: flatsawn C .00212, quartersawn .00071; moisture from hung to
// winter and to summer by the equation.
func TestTable(t *testing.T) {
	table := tableOf(t, model)
	dry, moist := table.Airs[movement.Winter].Moisture-table.Airs[movement.Hung].Moisture, table.Airs[movement.Summer].Moisture-table.Airs[movement.Hung].Moisture
	require.InDelta(t, -2.2, dry, .3)
	require.InDelta(t, 2.3, moist, .3)
	at := func(name string) [3]float64 {
		row, has := table.Row(name)
		require.True(t, has, name)
		return [3]float64{row.At[0].Inches(), row.At[1].Inches(), row.At[2].Inches()}
	}
	for name, grows := range map[string]struct{ built, perPoint float64 }{
		"leaf width":               {30.75, 8 * .00212},
		"leaf height at its rails": {77.75, 10 * .00212},
		"leaf thickness":           {1.375, 1.375 * .00071},
		"floor gap":                {.375, -5 * .00212},
		"leaf top to track":        {.375, -5 * .00212},
		"face gap":                 {.375, -1.375 * .00071},
		"overlap":                  {1.5, 2 * 8 * .00212},
	} {
		got := at(name)
		require.InDelta(t, grows.built, got[movement.Hung], 1e-6, name)
		require.InDelta(t, grows.built+grows.perPoint*dry, got[movement.Winter], 1e-5, name)
		require.InDelta(t, grows.built+grows.perPoint*moist, got[movement.Summer], 1e-5, name)
	}
	// The panel: 22.75 + 2 × (3/8 − 1/8) = 23.25 wide, warmed by 6 K and moistened
	// from 45 to 60 %: 0.002 × 15/60.
	grown := 23.25 * (72e-6*6 + .0005)
	across := at("panel edge gap across")
	require.InDelta(t, .125-grown/2, across[movement.Summer], 1e-5)
	up := at("panel edge gap up and down")
	require.Less(t, up[movement.Summer], across[movement.Summer], "the panels are higher than wide, and rails grow into them")
	bite := at("panel least bite")
	require.InDelta(t, .375-2*math.Max(across[movement.Winter], up[movement.Winter]), bite[movement.Winter], 1e-5)
}

// Quartersawn boards change width and thickness about.
func TestGrain(t *testing.T) {
	flat := tableOf(t, model)
	quarter := tableOf(t, model[:len(model)-len("stock: {species: eastern white pine}\n")]+"stock: {species: eastern white pine, grain: quarter}\n")
	require.Equal(t, catalog.QuarterSawn, quarter.Wood.Grain)
	w, _ := flat.Row("leaf width")
	q, _ := quarter.Row("leaf width")
	require.Greater(t, w.At[movement.Summer], q.At[movement.Summer])
	w, _ = flat.Row("face gap")
	q, _ = quarter.Row("face gap")
	require.Greater(t, w.At[movement.Summer], q.At[movement.Summer])
}

// With one air all year nothing moves.
func TestStill(t *testing.T) {
	still := "{celsius: 20, humidity: 50}"
	table := tableOf(t, model+"seasons: {hung: "+still+", winter: "+still+", summer: "+still+"}\n")
	require.NotEmpty(t, table.Rows)
	for _, row := range table.Rows {
		require.Equal(t, [3]length.Length{row.At[0], row.At[0], row.At[0]}, row.At, row.Name)
	}
}

// Stops lap a panel pushed to one side by their width less twice the edge gap,
// and in winter by less.
func TestStopsLap(t *testing.T) {
	table := tableOf(t, strings.Replace(model, "edge_gap: 1/8", "edge_gap: 1/16, held_by: stop", 1))
	row, has := table.Row("panel least stop lap")
	require.True(t, has)
	require.Positive(t, row.At[movement.Hung])
	bite, _ := table.Row("panel least bite")
	require.Equal(t, bite.At[movement.Winter]-bite.At[movement.Hung], row.At[movement.Winter]-row.At[movement.Hung])
	_, has = table.Row("panel least washer lap")
	require.False(t, has)
}
