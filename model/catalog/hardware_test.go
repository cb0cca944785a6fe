package catalog

import (
	"math"
	"testing"

	"stilewright/model/length"
)

// Laws of a two-channel head track: the section holds two leaves' worth of
// channels, the leaf's top clears the section with the hanger raised fully, and
// the thickest leaves still pass one another by 1/4 in.
func TestTracks(t *testing.T) {
	for _, row := range Tracks() {
		if gap := row.FaceGap(row.Thickest); gap < in/4 {
			t.Errorf("%s: the thickest leaves pass by %s mm only", row.Name, gap.Decimal())
		}
		if row.Depth < row.Spacing+row.Thickest {
			t.Errorf("%s: section %s mm deep for leaves of %s mm, %s mm apart", row.Name, row.Depth.Decimal(), row.Thickest.Decimal(), row.Spacing.Decimal())
		}
		if row.HeadDrop-row.Adjust <= row.Height {
			t.Errorf("%s: a leaf raised fully strikes the track", row.Name)
		}
		if row.Thinnest >= row.Thickest || !row.Carries(row.Thickest) || row.Carries(row.Thinnest-1) {
			t.Errorf("%s: carries %s to %s mm", row.Name, row.Thinnest.Decimal(), row.Thickest.Decimal())
		}
		if row.Source.Confirmed != CommonPractice {
			t.Errorf("%s is not marked as typical", row.Name)
		}
	}
	got, err := Track("Two Channel")
	if err != nil || got.FaceGap(11*in/8) != 3*in/8 {
		t.Errorf("two-channel leaves %v between 1 3/8 leaves, %v; want 3/8 in", got.FaceGap(11*in/8), err)
	}
}

func TestScrews(t *testing.T) {
	for _, row := range WoodScrews() {
		if row.Diameter != GaugeDiameter(row.Gauge) {
			t.Errorf("No. %d: %s mm is not the formula's", row.Gauge, row.Diameter.Decimal())
		}
		if !(row.Root < row.Diameter && row.Diameter < row.Head && 2*row.Root > row.Diameter) {
			t.Errorf("No. %d: root, shank, head do not ascend", row.Gauge)
		}
		if !(row.Soft <= row.Hard && row.Hard < row.Body && row.Soft < row.Root) {
			t.Errorf("No. %d: pilot drills and body do not ascend", row.Gauge)
		}
		if row.Body < row.Diameter-3*mil {
			t.Errorf("No. %d: body drill %s mm is below the shank", row.Gauge, row.Body.Decimal())
		}
		if got, err := Screw(row.Gauge); err != nil || got != row {
			t.Errorf("Screw(%d) = %v, %v", row.Gauge, got.Gauge, err)
		}
	}
	for _, gauge := range []int{-9, 0, 11, 13, math.MaxInt, math.MinInt} {
		if _, err := Screw(gauge); err == nil {
			t.Errorf("Screw(%d) found", gauge)
		}
	}
	if GaugeDiameter(8) != 164*mil || GaugeDiameter(10) != 190*mil {
		t.Error("No. 8 is .164 in, No. 10 .190 in")
	}
}

// The published example: G .45, D .190 gives 109 lb/in (exactly 109.65); and
// the table computed from NDS 12.2.2.
func TestWithdrawal(t *testing.T) {
	near(t, "published example", Withdrawal(.45, 190*mil).PoundsPerInch(), 109.65, .005)
	for gravity, want := range map[float64][3]float64{
		.36: {51, 61, 70}, .42: {69, 82, 96}, .50: {98, 117, 135}, .55: {119, 141, 164}, .67: {177, 210, 243}, .73: {210, 249, 289},
	} {
		for i, gauge := range []int{6, 8, 10} {
			near(t, "W", Withdrawal(gravity, GaugeDiameter(gauge)).PoundsPerInch(), want[i], .5)
		}
	}
	near(t, "one inch holds", Withdrawal(.45, 190*mil).Newtons(in), 109.65*4.4482216, .03)
}

// Wood Handbook ch. 8: 315, 412, 593, 1022 lbf per inch for No. 8; in metric
// 108.25·G²·D N per mm.
func TestUltimateWithdrawal(t *testing.T) {
	for gravity, want := range map[float64]float64{.35: 315, .40: 412, .48: 593, .63: 1022} {
		near(t, "No. 8", UltimateWithdrawal(gravity, 164*mil).PoundsPerInch(), want, .5)
	}
	near(t, "metric", float64(UltimateWithdrawal(1, mm)), 108.25, .01)
}

func TestLateral(t *testing.T) {
	for diameter, want := range map[length.Length]float64{138 * mil: 2.2, 170 * mil: 2.2, 190 * mil: 2.4, 242 * mil: 2.92} {
		k, ok := ReductionTerm(diameter)
		if !ok {
			t.Errorf("no K_D for %v", diameter)
		}
		near(t, "K_D", k, want, 1e-9)
	}
	for _, diameter := range []length.Length{0, -1, in / 4, in} {
		if k, ok := ReductionTerm(diameter); ok {
			t.Errorf("K_D of %v is %g", diameter, k)
		}
	}
	if LeastPenetration(164*mil) != 984*mil || FullPenetration(164*mil) != 1640*mil {
		t.Error("6 D and 10 D")
	}
}

// Published rows, then metric thicknesses that stand for them.
func TestPocketScrewFor(t *testing.T) {
	for _, row := range []struct{ stock, screw length.Length }{
		{in / 2, in}, {3 * in / 4, in + in/4}, {in + in/2, 2*in + in/2}, // read in published charts
		{19 * mm, in + in/4}, {25 * mm, in + in/2}, {38 * mm, 2*in + in/2}, {35 * mm, 2*in + in/2}, {44 * mm, 2*in + in/2},
		{in - in/64 - in/32, in + in/2}, {13 * in / 16, in + in/4}, {2 * in, 2*in + in/2},
	} {
		if got, err := PocketScrewFor(row.stock); err != nil || got.Screw != row.screw {
			t.Errorf("stock %s mm: %s mm, %v; want %s", row.stock.Decimal(), got.Screw.Decimal(), err, row.screw.Decimal())
		}
	}
	for _, stock := range []length.Length{0, -in, 12 * mm, 51 * mm} {
		if got, err := PocketScrewFor(stock); err == nil {
			t.Errorf("stock %s mm gets %s mm", stock.Decimal(), got.Screw.Decimal())
		}
	}
}

// House rule: two up to 3 in, three up to 5 1/2, then one more per 2 in begun.
func TestPocketHoles(t *testing.T) {
	for width, want := range map[length.Length]int{
		-in: 0, 0: 0, in: 2, 3 * in: 2, 3*in + 1: 3, 9 * in / 2: 3, 11 * in / 2: 3, 11*in/2 + 1: 4, 15 * in / 2: 4, 15*in/2 + 1: 5, 8 * in: 5,
	} {
		if got := PocketHoles(width); got != want {
			t.Errorf("rail of %s mm: %d holes, want %d", width.Decimal(), got, want)
		}
	}
}

// Rim speeds at the greatest speed, ft/min, from the published list: 6283,
// 9425, 10472, 10996.
func TestRouterSpeeds(t *testing.T) {
	want := []float64{6283, 9425, 10472, 10996}
	for i, row := range RouterSpeeds() {
		near(t, "rim", RimSpeed(row.UpTo, row.RPM)*60/.3048, want[i], .6)
	}
	if got, err := RouterSpeedFor(5 * in / 4); err != nil || got.RPM != 18_000 {
		t.Errorf("1 1/4 in cutter: %v, %v", got.RPM, err)
	}
	for _, diameter := range []length.Length{0, -1, 4 * in} {
		if _, err := RouterSpeedFor(diameter); err == nil {
			t.Errorf("a cutter of %s mm has a speed", diameter.Decimal())
		}
	}
}
