package door_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// A panel lies in its seat: within the walls and what the cutter or the tool
// leaves in the corners, its edge gap away from every wall, no daylight beside
// it, and on the shoulder or its bed; pushed to any side it keeps its least
// bite.
func TestPanelLiesInItsSeat(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		for _, lite := range leaf.Lites {
			panel := leaf.PanelOf(lite)
			gap, wall := panel.EdgeGap, lite.Sight.Grow(leaf.Rabbet.Width)
			require.Less(t, plane.Subtract(lite.Panel, lite.Rabbet).Area(), noArea, "panel outside its seat")
			require.Equal(t, wall, lite.Panel.Bounds().Grow(gap))
			if leaf.Corner.Tool == 0 {
				require.Equal(t, wall, lite.Rabbet.Bounds())
			}
			sight := plane.Of(lite.Sight.Path())
			require.Less(t, plane.Subtract(sight, lite.Panel).Area(), noArea, "daylight beside the panel")
			for _, way := range [][2]length.Length{{gap, gap}, {gap, -gap}, {-gap, gap}, {-gap, -gap}} {
				box := lite.Panel.Bounds()
				box = plane.BoxOf(box.Min.Add(way[0], way[1]), box.Max.Add(way[0], way[1]))
				least := min(lite.Sight.Min.X-box.Min.X, lite.Sight.Min.Y-box.Min.Y, box.Max.X-lite.Sight.Max.X, box.Max.Y-lite.Sight.Max.Y)
				require.Equal(t, panel.LeastBite, least)
			}
			require.NoError(t, plane.Simple(lite.Panel))
			require.NoError(t, plane.Simple(lite.Rabbet))
			liesOn(t, leaf, panel)
		}
	})
}

// liesOn checks where front to back a panel lies: on the shoulder or the bed on
// it, or midway in its groove.
func liesOn(t *testing.T, leaf door.Leaf, panel door.Panel) {
	rab := leaf.Rabbet
	switch rab.Kind {
	case door.BackRabbet:
		require.Equal(t, rab.Front+leaf.Bed, panel.From)
		require.Equal(t, [2]length.Length{rab.Front, leaf.Thickness}, [2]length.Length{panel.SeatFrom, panel.SeatTo})
	case door.FaceBead:
		require.Equal(t, leaf.Thickness-rab.Back-leaf.Bed, panel.To())
		require.Equal(t, [2]length.Length{0, leaf.Thickness - rab.Back}, [2]length.Length{panel.SeatFrom, panel.SeatTo})
	case door.Groove:
		before, behind := panel.From-panel.SeatFrom, panel.SeatTo-panel.To()
		require.LessOrEqual(t, (before - behind).Abs(), length.Nanometre)
		require.GreaterOrEqual(t, before, length.Length(0))
	}
	require.GreaterOrEqual(t, panel.From, length.Length(0))
	require.LessOrEqual(t, panel.To(), leaf.Thickness)
}

// A relieved corner takes in the whole square corner, goes as far past the
// walls as it says and no farther, and its radius is the tool's.
func TestReliefFreesTheSquareCorner(t *testing.T) {
	relieved := 0
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		if leaf.Corner.Tool == 0 {
			return
		}
		relieved++
		stile, rail := figure(t, set, "corner.past_stile_wall"), figure(t, set, "corner.past_rail_wall")
		require.Zero(t, leaf.Rabbet.Corner)
		for _, lite := range leaf.Lites {
			wall := lite.Sight.Grow(leaf.Rabbet.Width)
			require.Less(t, plane.Subtract(plane.Of(wall.Path()), lite.Rabbet).Area(), noArea)
			around := lite.Rabbet.Bounds()
			require.InDelta(t, 0, float64(wall.Min.X-stile-around.Min.X), 2, "nm")
			require.InDelta(t, 0, float64(around.Max.Y-rail-wall.Max.Y), 2, "nm")
			all, _ := relief(leaf.Corner, leaf.Rabbet.Width.MM(), false)
			require.InDelta(t, 4*all, lite.Rabbet.Area()-plane.Of(wall.Path()).Area(), 1e-3)
			for _, e := range lite.Rabbet[0] {
				if e.Turn != plane.Straight {
					require.InDelta(t, leaf.Corner.Tool.MM()/2, e.Radius(), 3e-6)
				}
			}
		}
	})
	require.Greater(t, relieved, *models/100)
}

// relief is the area in mm² that one relieved corner takes past the walls, and
// what of it lies in the member that runs through there, whose side of the seat
// is as wide as the rabbet: left of that line, or, past a muntin's end, below.
// The circle's middle stands on the diagonal or on the wall; strips are added up.
func relief(c door.Corner, wide float64, muntin bool) (all, through float64) {
	r := c.Tool.MM() / 2
	x, y := r/math.Sqrt2, r/math.Sqrt2
	if c.Kind == "t-bone" {
		x, y = 0, r
		if c.Into == "rail" {
			x, y = r, 0
		}
	}
	if muntin {
		x, y = y, x
	}
	const strips = 10_000 // closer together at the circle's ends
	for i := range strips {
		turn := math.Pi * (float64(i) + .5) / strips
		at, half, step := x-r*math.Cos(turn), r*math.Sin(turn), r*math.Sin(turn)*math.Pi/strips
		long := 2 * half // of the strip, before the wall
		if at > 0 {
			long = max(0, half-y)
		}
		all += long * step
		if at < wide {
			through += long * step
		}
	}
	return all, through
}

// The four strips of a lite fill its rabbet from wall to inner edge, touch the
// panel and the walls, meet in their mitres, and are fixed in the wood.
func TestStripsFillTheRabbet(t *testing.T) {
	held := map[string]int{}
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		if leaf.HeldBy != "stop" && leaf.HeldBy != "bead" {
			require.Zero(t, leaf.Strip)
			return
		}
		held[leaf.HeldBy]++
		var strips []door.Part
		for _, part := range leaf.Hardware {
			if part.Role == door.StopRole || part.Role == door.BeadRole {
				strips = append(strips, part)
			}
		}
		require.Len(t, strips, 4*len(leaf.Lites))
		for i, lite := range leaf.Lites {
			s, panel, wall := leaf.StripOf(lite), leaf.PanelOf(lite), lite.Sight.Grow(leaf.Rabbet.Width)
			ring := plane.Subtract(plane.Of(wall.Path()), plane.Of(wall.Grow(-s.Width).Path()))
			var all plane.Region
			sum := 0.0
			for _, part := range strips[4*i : 4*i+4] {
				blank := part.Solid.Blank
				require.Equal(t, solid.Y, blank.Axis)
				require.Equal(t, s.From, blank.From)
				require.Equal(t, s.From+s.Depth, blank.To)
				all = plane.Union(all, blank.Region)
				sum += blank.Region.Area()
				low, high := part.Solid.Bounds()
				long := (high.Along(part.Grain) - low.Along(part.Grain)).MM()
				want := s.Width.MM() * (long - s.Width.MM()) * s.Depth.MM()
				for _, b := range part.Solid.Bores {
					want -= math.Pi * b.Diameter.MM() * b.Diameter.MM() / 4 * s.Width.MM()
				}
				require.InEpsilon(t, want, part.Volume, 1e-6, part.Label)
			}
			require.InDelta(t, ring.Area(), sum, noArea)
			require.Less(t, plane.Subtract(all, ring).Area()+plane.Subtract(ring, all).Area(), noArea)
			if leaf.HeldBy == "stop" {
				require.Equal(t, panel.To(), s.From)
				require.Equal(t, s.Proud, max(0, s.From+s.Depth-leaf.Thickness))
			} else {
				require.Equal(t, panel.From, s.From+s.Depth)
				require.Equal(t, s.Proud, max(0, -s.From))
			}
			require.Less(t, s.Proud, set.Track.FaceGap)
			require.Greater(t, s.Width-2*panel.EdgeGap, length.Length(0), "does not hold its panel")
		}
	})
	require.Greater(t, min(held["stop"], held["bead"]), *models/100)
}

// A bed of sealant lies between shoulder and panel, as wide as the bite.
func TestSealantLiesUnderThePanel(t *testing.T) {
	beds := 0
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		var rings []door.Part
		for _, part := range leaf.Hardware {
			if part.Role == door.SealantRole {
				rings = append(rings, part)
			}
		}
		if leaf.Bed == 0 {
			require.Empty(t, rings)
			require.NotEqual(t, "sealant", leaf.HeldBy)
			return
		}
		beds++
		require.Len(t, rings, len(leaf.Lites))
		for i, lite := range leaf.Lites {
			low, high := rings[i].Solid.Bounds()
			panel := leaf.PanelOf(lite)
			require.Equal(t, leaf.Bed, high.Y-low.Y)
			if leaf.Rabbet.Kind == door.FaceBead {
				require.Equal(t, panel.To(), low.Y)
			} else {
				require.Equal(t, panel.From, high.Y)
			}
			want := (lite.Panel.Area() - plane.Of(lite.Sight.Path()).Area()) * leaf.Bed.MM()
			require.InEpsilon(t, want, rings[i].Volume, 1e-6)
			require.Zero(t, rings[i].Mass)
		}
	})
	require.Greater(t, beds, *models/100)
}

// Every groove is as deep as stated and as wide as its panel and room; one from
// end to end leaves no wood, and a stopped one holds the panel's whole edge,
// pushed to either side, before its round ends begin.
func TestGroovesHoldThePanel(t *testing.T) {
	runs := map[bool]int{}
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		if leaf.Rabbet.Kind != door.Groove {
			return
		}
		runs[leaf.Rabbet.Through]++
		require.Empty(t, leaf.HeldBy)
		cuts := 0
		for _, part := range leaf.Parts {
			for _, cut := range cutsFor(part, "groove") {
				cuts++
				require.Equal(t, leaf.Rabbet.Width, cut.To-cut.From, part.Label)
				across, along := cut.Region.Bounds().Width(), cut.Region.Bounds().Height()
				if part.Grain == solid.X {
					across, along = along, across
				}
				low, high := part.Solid.Bounds()
				want := across.MM() * along.MM()
				if along < high.Along(part.Grain)-low.Along(part.Grain) {
					want -= (1 - math.Pi/4) * across.MM() * across.MM()
				}
				require.InEpsilon(t, want, cut.Region.Area(), 1e-6, part.Label)
				if part.Role == door.StileRole {
					require.Equal(t, leaf.Rabbet.Through, along == leaf.Height)
				}
			}
		}
		require.GreaterOrEqual(t, cuts, 2*leaf.Rows()+2)
		for i, lite := range leaf.Lites {
			p := leaf.PanelOf(lite)
			require.Equal(t, p.Thickness+figure(t, set, "groove.room"), p.SeatTo-p.SeatFrom)
			edge := lite.Panel.Bounds().Grow(p.EdgeGap) // wherever it is pushed
			room := solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: plane.Of(edge.Path()), From: p.SeatFrom, To: p.SeatTo}}
			for _, part := range leaf.Parts {
				if part.Role != door.PanelRole {
					require.Less(t, solid.Clash(room, part.Solid), noVolume, "panel %d in %s", i+1, part.Label)
				}
			}
		}
	})
	require.Greater(t, min(runs[true], runs[false]), *models/200)
}

// cutsFor are the cuts of a part made for one thing.
func cutsFor(part door.Part, what string) []solid.Cut {
	return slices.DeleteFunc(slices.Clone(part.Solid.Cuts), func(c solid.Cut) bool { return c.For != what })
}

// ungrooved is the part before its grooves were milled: what is lost by them is
// what of the grooves was wood.
func ungrooved(t *testing.T, part door.Part) door.Part {
	grooves := cutsFor(part, "groove")
	body := part.Solid
	body.Bores = nil
	left := body.Volume()
	body.Cuts = slices.DeleteFunc(slices.Clone(body.Cuts), func(c solid.Cut) bool { return c.For == "groove" })
	whole := body.Volume()
	for _, cut := range grooves {
		whole -= solid.Clash(body, solid.Solid{Blank: cut.Prism})
	}
	require.InEpsilon(t, left, whole, 1e-6, part.Label)
	body.Bores = part.Solid.Bores
	part.Solid, part.Volume = body, body.Volume()
	return part
}

// thickOf is how thick a panel is, in mm.
func thickOf(part door.Part) float64 {
	low, high := part.Solid.Bounds()
	return (high.Y - low.Y).MM()
}

// Washers on the two sides of a member stand between one another where they are
// said to, and their screws pass with the least clearance between.
func TestStaggeredWashersPassOneAnother(t *testing.T) {
	staggered := 0
	eachSet(t, func(t *testing.T, model spec.Spec, set door.Set) {
		leaf := set.Leaf
		if !leaf.Washer.Stagger {
			return
		}
		staggered++
		clear := in / 8
		if set.Units == length.Millimetres {
			clear = 3 * mm
		}
		grip := leaf.Washer.Length - leaf.Washer.Thickness
		facing := func(a, b []length.Length, width length.Length) {
			if left := width - 2*(leaf.Rabbet.Width+grip); left >= clear && model.Panel.HeldBy.Stagger != "yes" {
				require.Equal(t, a, b) // those that cannot meet are left as they are
				return
			}
			require.LessOrEqual(t, len(a)-len(b), 1)
			for _, x := range a {
				for _, y := range b {
					require.GreaterOrEqual(t, (x - y).Abs(), leaf.Washer.Screw.Diameter+clear)
				}
			}
		}
		for _, lite := range leaf.Lites {
			if lite.Row > 0 {
				facing(leaf.Lite(lite.Row-1, lite.Column).Washers[door.Top], lite.Washers[door.Bottom], leaf.Rails[lite.Row].Width())
			}
			if lite.Column > 0 {
				facing(leaf.Lite(lite.Row, lite.Column-1).Washers[door.Right], lite.Washers[door.Left], leaf.Muntins[lite.Row*(leaf.Columns-1)+lite.Column-1].Width())
			}
		}
	})
	require.Greater(t, staggered, *models/100)
}

// A washer lies flat on a straight stretch of the rabbet wall, within the
// frame's back, touches the panel's back and laps it even when the panel is
// pushed away; and every edge that has room has some.
func TestWashersHoldThePanel(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf, w := set.Leaf, set.Leaf.Washer
		if leaf.HeldBy != "edge-washer" {
			require.Zero(t, w)
			return
		}
		washers := 0
		for _, part := range leaf.Hardware {
			if part.Role != door.WasherRole {
				continue
			}
			washers++
			low, high := part.Solid.Bounds()
			require.LessOrEqual(t, high.Y, leaf.Thickness, part.Label)
			seen := plane.BoxOf(plane.At(low.X, low.Z), plane.At(high.X, high.Z))
			held := 0
			for _, lite := range leaf.Lites {
				if plane.Intersect(plane.Of(seen.Path()), lite.Rabbet).Empty() {
					continue
				}
				held++
				panel := leaf.PanelOf(lite)
				require.Equal(t, panel.To()-w.Press, low.Y, part.Label)
				require.Equal(t, leaf.WasherDepth(lite), low.Y+w.Outside.Half(), part.Label)
				require.Less(t, plane.Subtract(plane.Of(seen.Path()), lite.Rabbet).Area(), noArea, "%s in the wood", part.Label)
				for _, way := range []plane.Point{plane.At(panel.EdgeGap, 0), plane.At(-panel.EdgeGap, 0), plane.At(0, panel.EdgeGap), plane.At(0, -panel.EdgeGap)} {
					pushed := lite.Panel.Translate(way.X, way.Y)
					require.Greater(t, plane.Intersect(plane.Of(seen.Path()), pushed).Area(), noArea, "%s does not hold its panel", part.Label)
				}
			}
			require.Equal(t, 1, held, part.Label)
		}
		require.Positive(t, washers)
		up, across := figure(t, set, "washer.corner.stile"), figure(t, set, "washer.corner.rail")
		muntin := across
		if f, has := set.Figure("washer.corner.muntin"); has {
			muntin = f.Value
		}
		for _, lite := range leaf.Lites {
			first := [4]length.Length{across, across, up, up}
			if lite.Column > 0 {
				first[door.Left] = muntin
			}
			if lite.Column < leaf.Columns-1 {
				first[door.Right] = muntin
			}
			for side, edge := range []length.Length{lite.Sight.Width(), lite.Sight.Width(), lite.Sight.Height(), lite.Sight.Height()} {
				if edge >= 2*first[side] {
					require.NotEmpty(t, lite.Washers[side], "%v side", door.Side(side))
				}
			}
		}
	})
}
