package template

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/render/dimension"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

const samplesDir = "../../samples/"

// sample resolves a sample, each pair of words in it replaced.
func sample(t testing.TB, name string, replace ...string) door.Set {
	t.Helper()
	model, findings, err := spec.ReadFile(samplesDir + name + ".yaml")
	require.NoError(t, err)
	if len(replace) > 0 {
		text := readFile(t, samplesDir+name+".yaml")
		for i := 0; i < len(replace); i += 2 {
			require.Contains(t, text, replace[i])
			text = strings.Replace(text, replace[i], replace[i+1], 1)
		}
		model, findings = spec.Read(name, []byte(text))
	}
	set, more := door.Resolve(model)
	require.NotEmpty(t, set.Hung, "%v %v", findings, more)
	return set
}

// samples are all of them by name.
func samples(t testing.TB) map[string]door.Set {
	t.Helper()
	paths, err := filepath.Glob(samplesDir + "*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	sets := map[string]door.Set{}
	for _, path := range paths {
		name := strings.TrimSuffix(filepath.Base(path), ".yaml")
		sets[name] = sample(t, name)
	}
	return sets
}

// jointSet is the attic sample with muntins and another joint.
func jointSet(t testing.TB, kind string) door.Set {
	t.Helper()
	return sample(t, "attic-linen", "joint: {kind: pocket-screw}", "joint: {kind: "+kind+"}", "lites: {rows: 3}", "lites: {rows: 2, columns: 2}")
}

func kinds() []string {
	return []string{door.PocketScrew, door.DowelJoint, door.LooseTenon, door.MortiseAndTenon, door.HalfLap, door.Bridle}
}

func part(t testing.TB, s door.Set, label string) door.Part {
	t.Helper()
	p, found := partOf(s.Leaf, label)
	require.True(t, found, label)
	return p
}

// told is the marks that have a word, as "what at" in order.
func told(places []Place, word string) (at []length.Length) {
	for _, p := range places {
		if strings.Contains(p.What, word) {
			at = append(at, p.At)
		}
	}
	return at
}

// The marks of the left stile, against the set's figures, not its solids.
func TestStileStickIsTheSet(t *testing.T) {
	for name, s := range samples(t) {
		t.Run(name, func(t *testing.T) {
			places, l := Places(s.Leaf, part(t, s, "SL")), s.Leaf
			require.Equal(t, []length.Length{0}, told(places, "foot"))
			require.Equal(t, []length.Length{l.Height}, told(places, "upper end"))
			var middles, washers, walls, screws []length.Length
			for i, r := range l.Rails {
				figure, found := s.Figure(fmt.Sprintf("rail.%d.centre", i+1))
				require.True(t, found)
				middles = append(middles, figure.Value)
				for n := 1; ; n++ {
					hole, found := s.Figure(fmt.Sprintf("pocket.R%d.%d", i+1, n))
					if !found {
						break
					}
					screws = append(screws, r.From+hole.Value)
				}
				edges := told(places, r.Label+" ")
				require.Contains(t, edges, r.Centre())
				if i > 0 {
					require.Contains(t, edges, r.From)
				}
				if i < len(l.Rails)-1 {
					require.Contains(t, edges, r.To)
				}
			}
			for _, lite := range l.Lites {
				if lite.Column == 0 {
					washers = append(washers, lite.Washers[door.Left]...)
					walls = append(walls, lite.Sight.Min.Y-l.Rabbet.Width, lite.Sight.Max.Y+l.Rabbet.Width)
				}
			}
			bare := slices.DeleteFunc(slices.Clone(places), func(p Place) bool { return strings.HasPrefix(p.What, "pull") })
			require.Equal(t, middles, told(bare, "middle"))
			for _, pull := range l.Pulls {
				if pull.Label == "SL" {
					require.Contains(t, told(places, "pull, middle"), pull.Centre.Y)
					require.Contains(t, told(places, "pull end"), pull.Centre.Y-pull.Height.Half())
				}
			}
			require.Equal(t, washers, told(places, "washer"))
			wall := "rabbet wall"
			if l.Rabbet.Kind == door.Groove {
				wall = "groove end"
			}
			if !l.Rabbet.Through {
				require.Equal(t, walls, told(places, wall))
			}
			slices.Sort(screws)
			require.Equal(t, screws, told(places, "pocket screw"))
			if l.Joint.Kind != door.PocketScrew || len(l.Edges) > 0 {
				return
			}
			require.NotEmpty(t, screws)
			require.Len(t, bare, 2+3*len(l.Rails)-2+len(washers)+len(walls)+len(screws), "nothing else is marked")
		})
	}
}

// The marks of rails and muntins, against the set's figures.
func TestRailSticksAreTheSet(t *testing.T) {
	s := jointSet(t, door.DowelJoint)
	l := s.Leaf
	low, middle := part(t, s, "R1"), part(t, s, "R2")
	muntin := l.Muntins[0]
	lone := Places(l, low)
	require.Equal(t, []length.Length{muntin.From - l.Stile, muntin.Centre() - l.Stile, muntin.To - l.Stile}, told(lone, "M1 "))
	var washers []length.Length
	for _, lite := range l.Lites[:2] {
		for _, at := range lite.Washers[door.Bottom] {
			washers = append(washers, at-l.Stile)
		}
	}
	require.NotEmpty(t, washers)
	require.Equal(t, washers, told(lone, "washer, upper edge"))
	require.Equal(t, washers, told(Places(l, middle), "washer, both edges"), "lites stand one above another")
	dowel, found := s.Figure("dowel.muntin.1")
	require.True(t, found)
	require.Equal(t, []length.Length{muntin.From + dowel.Value - l.Stile}, told(lone, "dowel, upper edge"))

	upright := Places(l, part(t, s, "M1"))
	for _, at := range l.Lites[0].Washers[door.Right] {
		require.Contains(t, told(upright, "washer"), at-l.Lites[0].Sight.Min.Y)
	}
	require.Equal(t, l.Lites[0].Sight.Height(), upright[len(upright)-1].At)
}

// Of every joint, what the stile gets is on its stick.
func TestSticksOfJoints(t *testing.T) {
	dowels := jointSet(t, door.DowelJoint)
	first, _ := dowels.Figure("dowel.R1.1")
	require.Contains(t, told(Places(dowels.Leaf, part(t, dowels, "SL")), "dowel"), first.Value)

	tenons := jointSet(t, door.MortiseAndTenon)
	j := tenons.Leaf.Joint.Tenon
	ends := told(Places(tenons.Leaf, part(t, tenons, "SL")), "mortise end")
	require.Len(t, ends, 2*len(tenons.Leaf.Rails))
	require.Equal(t, []length.Length{j.Edge, j.Edge + j.Width[0]}, ends[:2], "the bottom rail's: its shoulder at the foot, then its tenon")
	rail := Places(tenons.Leaf, part(t, tenons, "R1"))
	require.Equal(t, []length.Length{j.Length, Size(part(t, tenons, "R1")) - j.Length}, told(rail, "shoulder"))

	laps := jointSet(t, door.HalfLap)
	require.Empty(t, told(Places(laps.Leaf, part(t, laps, "SL")), "lap"), "a lap ends at the rail's edges, which are marked")
	require.Equal(t, []length.Length{laps.Leaf.Stile, laps.Leaf.Width - laps.Leaf.Stile}, told(Places(laps.Leaf, part(t, laps, "R1")), "shoulder"))
}

// every calls for each template of the samples and of each kind of joint.
func every(t *testing.T, do func(t *testing.T, s door.Set, sheets []sheet.Sheet)) {
	t.Helper()
	sets := samples(t)
	for _, kind := range kinds() {
		sets["joint "+kind] = jointSet(t, kind)
	}
	for name, s := range sets {
		t.Run(name, func(t *testing.T) { do(t, s, Sheets(s)) })
	}
}

// Every template can be written, says what it must, shows no lettering that
// touches something, and stays inside its edge.
func TestTemplates(t *testing.T) {
	every(t, func(t *testing.T, s door.Set, sheets []sheet.Sheet) {
		names := map[string]bool{}
		for _, p := range sheets {
			require.NoError(t, p.Check(), p.Name)
			require.False(t, names[p.Name], "%s twice", p.Name)
			names[p.Name] = true
			require.Equal(t, sheet.Scale{Paper: 1, Real: 1}, p.Scale)
			edge := plane.BoxOf(plane.At(0, 0), plane.At(p.Width, p.Height))
			require.Empty(t, dimension.Collisions(p.Marks, edge), p.Name)
			extent, _ := dimension.Extent(p.Marks)
			require.Equal(t, edge.Grow(mm), edge.Grow(mm).Join(extent), "%s: ink outside of its edge", p.Name)
			words := wordsOf(p)
			for _, want := range []string{"Print at 100 %.", "The middle of each line is the size.", s.Job, "rev " + s.Revision} {
				if want != "rev " {
					require.Contains(t, words, want, p.Name)
				}
			}
		}
		for _, want := range []string{"stick-SL", "joint-R1", "joint-section-R1", "section", "corner", "panel-corner", "hanger"} {
			require.True(t, names[want] || names[want+"-1"], "%s is missing of %v", want, names)
		}
	})
}

// wordsOf is all lettering of a sheet, dimensions included.
func wordsOf(p sheet.Sheet) string {
	var b strings.Builder
	for _, m := range p.Marks {
		switch m := m.(type) {
		case sheet.Text:
			b.WriteString(lettering.Plain(m.String) + " ")
		case sheet.Dimension:
			b.WriteString(m.Figure + " ")
		}
	}
	return b.String()
}

// The lines of a story stick stand where its marks say, from the strip's edge
// up, and each has its figure.
func TestStickLinesAreItsMarks(t *testing.T) {
	every(t, func(t *testing.T, s door.Set, sheets []sheet.Sheet) {
		for _, b := range batches(s.Leaf) {
			i := slices.IndexFunc(sheets, func(p sheet.Sheet) bool { return p.Name == "stick-"+b.parts[0].Label })
			require.GreaterOrEqual(t, i, 0)
			var drawn, want []length.Length
			for _, m := range sheets[i].Marks {
				if line, ok := m.(sheet.Stroke); ok && line.Layer == sheet.Outline && len(line.Path) == 1 && line.Path[0].From.Y == 0 {
					require.Equal(t, line.Path[0].From.X, line.Path[0].To.X, "upright")
					drawn = append(drawn, line.Path[0].From.X-beyond)
				}
			}
			words := wordsOf(sheets[i])
			for _, p := range b.places {
				want = append(want, p.At)
				require.Contains(t, words, lettering.Plain(lettering.Legible(p.What+"  "+length.Style{Unit: s.Units}.Format(p.At))))
			}
			slices.Sort(drawn)
			require.Equal(t, want, drawn)
		}
	})
}

// Lettering keeps its order and its distance, and stays at its line where there
// is room.
func TestSpread(t *testing.T) {
	for _, c := range []struct{ at, want []length.Length }{
		{[]length.Length{0, 50, 100}, []length.Length{0, 50, 100}},
		{[]length.Length{50, 50}, []length.Length{47, 52}},
		{[]length.Length{50, 51, 52}, []length.Length{46, 51, 56}},
		{[]length.Length{0, 100, 100, 107}, []length.Length{0, 97, 102, 107}},
	} {
		var places []Place
		for _, at := range c.at {
			places = append(places, Place{At: at * mm})
		}
		var got []length.Length
		for _, at := range spread(places, 200*mm) {
			got = append(got, at.DownTo(mm)/mm)
		}
		require.Equal(t, c.want, got)
	}
}

// The corner is drawn as the set has it: wall, panel's edge and lite's edge at
// their distances, the arc and the clip of their sizes.
func TestCornerIsTheSet(t *testing.T) {
	s := sample(t, "attic-linen")
	l := s.Leaf
	all := corners(l)
	require.Len(t, all, 1)
	c := all[0]
	require.Equal(t, plane.At(-l.Rabbet.Width, -l.Rabbet.Width), c.walls.Bounds().Min)
	require.Equal(t, plane.At(l.Panel.EdgeGap-l.Rabbet.Width, l.Panel.EdgeGap-l.Rabbet.Width), c.panel.Bounds().Min)
	arcs := 0
	for _, e := range c.walls[0] {
		if e.Turn != plane.Straight {
			require.InDelta(t, l.Rabbet.Corner.MM(), e.Radius(), 2e-6)
			arcs++
		}
	}
	require.Equal(t, 4, arcs)
	words := wordsOf(seatCorners(s)[0])
	for _, figure := range []length.Length{l.Rabbet.Width, l.Rabbet.Depth, l.Panel.EdgeGap, l.Rabbet.Corner, l.Corner.Leg} {
		require.Contains(t, words, length.Style{Unit: s.Units}.Format(figure))
	}
}

// The middles of the pocket holes on the joint templates are the set's.
func TestJointHolesAreTheSet(t *testing.T) {
	s := sample(t, "attic-linen")
	for i, rail := range s.Leaf.Rails {
		e := endsOf(s.Leaf)[i]
		require.Equal(t, rail.Label, e.Member)
		slices.SortFunc(e.holes, func(a, b hole) int { return cmp.Compare(a.c, b.c) })
		for n, h := range e.holes {
			figure, found := s.Figure(fmt.Sprintf("pocket.R%d.%d", i+1, n+1))
			require.True(t, found)
			require.Equal(t, figure.Value, h.c)
			require.Equal(t, s.Leaf.Thickness.Half(), h.y, "the screw crosses the joint in the middle")
		}
		require.Len(t, e.holes, s.Leaf.Joint.Pocket.PerEnd[i])
	}
}

// The strip of the track has a line for every screw, at its place along the track,
// and its two ends.
func TestTrackStrip(t *testing.T) {
	every(t, func(t *testing.T, s door.Set, _ []sheet.Sheet) {
		require.Empty(t, trackStrip(s, nil))
		least, most := s.Track.Solid.Bounds()
		screws := []length.Length{least.X + 50*mm, least.X + 437*mm, most.X - 50*mm}
		all := Sheets(s, screws...)
		strip := all[len(all)-1]
		require.Equal(t, "track", strip.Name)
		require.NoError(t, strip.Check())
		at := map[length.Length]int{}
		for _, m := range strip.Marks {
			if line, is := m.(sheet.Stroke); is && line.Layer == sheet.Outline {
				at[line.Path[0].From.X-beyond]++
			}
		}
		require.Equal(t, map[length.Length]int{0: 1, 50 * mm: 1, 437 * mm: 1, s.Track.Length - 50*mm: 1, s.Track.Length: 1}, at)
		require.Equal(t, most.X-least.X, s.Track.Length)
	})
}
