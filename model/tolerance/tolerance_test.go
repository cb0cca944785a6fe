package tolerance_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
	"stilewright/model/tolerance"
)

var seed = flag.Uint64("seed", 1, "seed of the random stacks")

const mm = length.Millimetre

// A stack worked by hand: 3, 4 and half of 24: worst 19, likely 13.
func TestStack(t *testing.T) {
	s := tolerance.Stack{Name: "gap", Nominal: 20 * mm, Parts: []tolerance.Part{
		{Name: "a", Off: 3 * mm, Share: 1}, {Name: "b", Off: 4 * mm, Share: 1}, {Name: "c", Off: 24 * mm, Share: .5},
	}}
	require.Equal(t, 19*mm, s.Worst())
	require.Equal(t, 13*mm, s.Likely())
	require.Equal(t, "c", s.Dominant().Name)
	require.InDelta(t, 144.0/169, s.Weight(), 1e-9)
	require.Equal(t, "gap 20 mm: likely within ± 13 mm, at worst ± 19 mm; most of it from c (± 24 mm)", s.Text(length.Style{Mark: true}))
	require.Zero(t, tolerance.Stack{}.Worst())
	require.Zero(t, tolerance.Stack{}.Weight())
}

// The likely error is never above the worst, never below the dominant part, and
// is what many random doors of even errors keep: their spread is it over √3.
func TestLaws(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for range 200 {
		var s tolerance.Stack
		for i := range 1 + rnd.IntN(6) {
			s.Parts = append(s.Parts, tolerance.Part{Name: fmt.Sprint(i), Off: length.Length(rnd.Int64N(int64(5 * mm))), Share: .1 + rnd.Float64()})
		}
		require.LessOrEqual(t, s.Likely(), s.Worst()+length.Length(len(s.Parts)))
		require.GreaterOrEqual(t, s.Likely()+1, s.Dominant().Reaches())
	}
	s := tolerance.Stack{Parts: []tolerance.Part{{Name: "a", Off: 2 * mm, Share: 1}, {Name: "b", Off: mm, Share: 1}, {Name: "c", Off: mm, Share: .5}}}
	var squares float64
	const doors = 20_000
	for range doors {
		var off float64
		for _, p := range s.Parts {
			off += (2*rnd.Float64() - 1) * p.Reaches().MM()
		}
		squares += off * off
	}
	require.InDelta(t, s.Likely().MM()/math.Sqrt(3), math.Sqrt(squares/doors), .03, "seed %d", *seed)
}

// Of a model: the face gap is 1/32 of the track and twice half of 1/32 of a
// leaf (Architectural Woodwork Standards, section 10, 4.4.6.10); the overlap of
// two leaves 1/16 of the tape and twice 1/16 (section 9, 4.1.17); a panel of 400
// to 1000 mm is within 0.8 mm, a rabbet of 6 to 30 mm within 0.2 (ISO 2768-1,
// class m).
func TestOfASet(t *testing.T) {
	m, findings := spec.Read("towels.yaml", []byte(`job: Bathroom towels
units: inch
opening: {width: 60, height: 80}
hanging: {style: bypass, tracks: [back, front], overlap: 1 1/2}
leaf: {thickness: 1 3/8, stile: 4, rail: 5, lites: {rows: 3}, joint: pocket-screw}
panel: {material: acrylic, thickness: 1/8, edge_gap: 1/8}
`))
	require.Empty(t, findings)
	set, _ := door.Resolve(m)
	require.NotEmpty(t, set.Hung)
	got := map[string]tolerance.Stack{}
	for _, s := range tolerance.Of(set) {
		got[s.Name] = s
		for _, p := range s.Parts {
			require.NotEmpty(t, p.Source, "%s of %s", p.Name, s.Name)
			require.Positive(t, p.Off, "%s of %s", p.Name, s.Name)
		}
	}
	require.Equal(t, length.Inch/16, got["face gap"].Worst())
	require.Equal(t, "track's channel spacing", got["face gap"].Dominant().Name)
	require.Equal(t, 3*length.Inch/16, got["overlap"].Worst())
	require.Equal(t, length.Round((.8+.8+.2+.2)/2), got["panel edge gap"].Worst())
	require.Equal(t, length.Round(.8), got["panel bite"].Worst())
	require.Equal(t, set.Leaf.Panel.LeastBite, got["panel least bite"].Nominal)
	require.Equal(t, length.Round(.2+1.6+.4), got["panel least washer lap"].Worst().Nearest(mm/10))
}
