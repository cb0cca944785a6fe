package shop

import (
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
	"stilewright/render/dxf"
)

var (
	seed   = flag.Uint64("seed", 1, "seed of the random models")
	models = flag.Int("models", 60, "how many random models are planned")
)

// resolved resolves a model that must not stop.
func resolved(t testing.TB, text string) (spec.Spec, door.Set) {
	t.Helper()
	m, findings := spec.Read("model.yaml", []byte(text))
	require.Empty(t, findings, text)
	set, findings := door.Resolve(m)
	for _, f := range findings {
		require.NotEqual(t, spec.Stops, f.Severity, "%v\n%s", f, text)
	}
	return m, set
}

const model = `
job: Störkeller, second press
units: millimetre
revision: d
opening: {width: 1500, height: 2050}
hanging: {style: bypass, tracks: [back, front], overlap: 40}
leaf: {thickness: 34, stile: 90, rail: {top: 90, cross: 80, bottom: 130}, lites: {rows: 2}}
panel: {material: polycarbonate, thickness: 3, corner: clipped}
`

// planOf plans a set with what it takes.
func planOf(set door.Set, m spec.Spec) (Job, []spec.Finding) {
	taken, _ := takeoff.Of([]takeoff.Job{{Model: m, Set: set}}, takeoff.Prices{})
	return Plan(set, m, taken)
}

// planned plans a model that must have no finding.
func planned(t testing.TB, text string) Job {
	t.Helper()
	m, set := resolved(t, text)
	job, findings := planOf(set, m)
	require.Empty(t, findings, text)
	require.False(t, len(job.Works) == 0)
	return job
}

func (j Job) of(t testing.TB, label, face string) Work {
	t.Helper()
	i := slices.IndexFunc(j.Works, func(w Work) bool {
		return w.Part.Labels[0] == label && w.Setup.Face.String() == face
	})
	require.GreaterOrEqual(t, i, 0, "%s %s", label, face)
	return j.Works[i]
}

func TestNames(t *testing.T) {
	job := planned(t, model)
	var names []string
	for _, w := range job.Works {
		names = append(names, w.Name)
	}
	const job1 = "st-rkeller-second-press_"
	require.Equal(t, job1+"SL_ponderosa-pine_34mm_x2_revD_back-turned_mm", names[0])
	require.Contains(t, names, job1+"P1-P2_polycarbonate_3mm_x4_revD_front_mm")
	require.Contains(t, names, job1+"LEAF_ponderosa-pine_34mm_x2_revD_back-turned_mm")
	slices.Sort(names)
	require.Len(t, slices.Compact(names), len(job.Works))
}

// Panels: the outline's area is the model's, and so is its place: least corner
// at 0,0, counter-clockwise, arcs and clips as they are.
func TestPanels(t *testing.T) {
	for _, corner := range []string{"clipped", "rounded", "squared"} {
		_, set := resolved(t, strings.Replace(model, "clipped", corner, 1))
		job := planned(t, strings.Replace(model, "clipped", corner, 1))
		w := job.of(t, "P1", "front")
		i := slices.IndexFunc(set.Leaf.Parts, func(p door.Part) bool { return p.Label == "P1" })
		part := set.Leaf.Parts[i]
		require.Len(t, outlines(w), 1)
		require.InEpsilon(t, part.Volume/3, outlines(w)[0].Area(), 1e-6, corner)
		require.Equal(t, plane.Point{}, outlines(w)[0].Bounds().Min)
		arcs := 0
		for _, e := range outlines(w)[0] {
			if e.Turn != plane.Straight {
				arcs++
				require.Equal(t, plane.Left, e.Turn)
				require.InDelta(t, set.Leaf.Corner.Radius.MM(), e.Radius(), 1e-6)
			}
		}
		require.Equal(t, map[string]int{"clipped": 0, "rounded": 4, "squared": 0}[corner], arcs)
	}
}

// outlines are a work's CUT and HOLE contours as written.
func outlines(w Work) []plane.Path {
	var paths []plane.Path
	for _, p := range w.Cutting.Paths {
		if strings.HasPrefix(p.Layer, "CUT-") || strings.HasPrefix(p.Layer, "HOLE-") {
			paths = append(paths, p.Path)
		}
	}
	return paths
}

// The kerf moves panels only; name and list say so.
func TestKerf(t *testing.T) {
	plain, moved := planned(t, model), planned(t, model+"shop: {kerf: 0.3}\n")
	p, q := plain.of(t, "P1", "front"), moved.of(t, "P1", "front")
	require.Contains(t, q.Name, "_kerf0.3mm_")
	a, b := outlines(p)[0].Bounds(), outlines(q)[0].Bounds()
	require.Equal(t, plane.BoxOf(plane.Point{}, a.Max.Add(300*length.Micrometre, 300*length.Micrometre)), b)
	require.Equal(t, plain.of(t, "SL", "back").Cutting, moved.of(t, "SL", "back").Cutting, "a mill's program moves its own path")
	rows, err := csv.NewReader(strings.NewReader(string(moved.List()))).ReadAll()
	require.NoError(t, err)
	at := slices.Index(rows[0], "kerf")
	for _, row := range rows[1:] {
		require.Equal(t, strings.Contains(row[0], "kerf"), row[at] == "0.3", row[0])
	}
}

// Segments stray from the arcs by no more than what was asked.
func TestSegments(t *testing.T) {
	text := strings.Replace(model, "clipped", "rounded", 1)
	plain, straight := planned(t, text), planned(t, text+"shop: {segments: 0.02}\n")
	for i, w := range straight.Works {
		for k, p := range w.Cutting.Paths {
			arcs := plain.Works[i].Cutting.Paths[k].Path
			if isCircle(arcs) {
				require.Equal(t, arcs, p.Path)
				continue
			}
			for _, e := range p.Path {
				require.Equal(t, plane.Straight, e.Turn)
				require.GreaterOrEqual(t, e.Length(), 0.01)
			}
			require.LessOrEqual(t, math.Abs(arcs.Area()-p.Path.Area()), 0.02*arcs.Length())
		}
	}
}

// A letter F is no other letter mirrored: the mark of every face reads from
// left to right and stands upright in its file.
func TestMarksAreNotMirrored(t *testing.T) {
	job := planned(t, model)
	marks := 0
	for _, w := range job.Works {
		if w.Part.Solid.Blank.Region == nil && w.Part.Labels[0] != "LEAF" {
			continue
		}
		text := w.Part.Labels[0] + " " + w.Setup.Face.String()
		var drawn []plane.Path
		for _, c := range w.Setup.Contours {
			if c.Operation == machining.Mark {
				drawn = append(drawn, c.Path)
			}
		}
		if strings.HasPrefix(text, "JIG") {
			continue // carries lines of its own
		}
		require.NotEmpty(t, drawn, w.Name)
		low := drawn[0].Bounds().Min
		for _, p := range drawn {
			low = plane.At(min(low.X, p.Bounds().Min.X), min(low.Y, p.Bounds().Min.Y))
		}
		found := false
		for height := markLeast; height <= markHeight; height += mm {
			want := strokes(text, plane.Point{}, height)
			first := want[0].Bounds().Min
			for _, p := range want {
				first = plane.At(min(first.X, p.Bounds().Min.X), min(first.Y, p.Bounds().Min.Y))
			}
			same := len(want) == len(drawn)
			for _, p := range want {
				moved := p.Translate(low.X-first.X, low.Y-first.Y)
				same = same && slices.ContainsFunc(drawn, func(q plane.Path) bool { return slices.Equal(moved, q) })
			}
			found = found || same
		}
		require.True(t, found, w.Name)
		marks++
	}
	require.Greater(t, marks, 8)
	for _, w := range planned(t, model+"shop: {marks: none}\n").Works {
		for _, c := range w.Setup.Contours {
			require.True(t, c.Operation != machining.Mark || strings.HasPrefix(w.Part.Labels[0], "JIG"))
		}
	}
}

// Every letter has strokes, and each is told from its own mirror image.
func TestStrokes(t *testing.T) {
	for r := 'A'; r <= 'Z'; r++ {
		require.True(t, lettered(string(r)))
	}
	require.True(t, lettered("0123456789 -./+"))
	require.False(t, lettered("Ä"))
	seen := map[string]rune{}
	for r, s := range strokesOf {
		require.Zero(t, seen[s], "%c and %c", r, seen[s])
		seen[s] = r
	}
}

// The parts list names every file once, with the quantity of the set.
func TestList(t *testing.T) {
	m, set := resolved(t, model)
	job, _ := planOf(set, m)
	rows, err := csv.NewReader(strings.NewReader(string(job.List()))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 1+len(job.Works))
	quantity := map[string]string{}
	for i, row := range rows[1:] {
		require.Equal(t, job.Works[i].Name+".dxf", row[0])
		require.Contains(t, row[0], "_x"+row[5]+"_")
		for label := range strings.FieldsSeq(row[1]) {
			quantity[label] = row[5]
		}
	}
	for _, p := range set.Leaf.Parts {
		if p.Material != "" {
			require.NotEmpty(t, quantity[p.Label], p.Label)
		}
	}
}

// What a shop cannot do stops the run, names key and both numbers, and leaves
// nothing to write; where the model says nothing of a shop it is only told.
func TestRefusals(t *testing.T) {
	for _, c := range []struct{ shop, rule, key, says string }{
		{"machine: {width: 500, height: 600}", machining.RuleMachine, "shop.machine", "500 mm"},
		{"sheet: {width: 500, height: 400}", machining.RuleSheet, "shop.sheet", "500 mm"},
		{"least_bore: 5", machining.RuleBore, "shop.least_bore", "5 mm"},
		{"bridge: 50", machining.RuleBridge, "shop.bridge", "50 mm"},
		{"least_feature: 40", machining.RuleFeature, "shop.least_feature", "40 mm"},
		{"layers: {cut: SCHNITT-AUSSENKONTUR}", RuleLayerName, "shop.layers.cut", "12"},
		{"layers: {cut: außen}", RuleLayerName, "shop.layers.cut", "A to Z"},
		{"layers: {cut: X, hole: x}", RuleLayerName, "shop.layers.hole", "both"},
	} {
		m, set := resolved(t, model+"shop: {"+c.shop+"}\n")
		job, findings := planOf(set, m)
		require.True(t, len(job.Works) == 0, c.shop)
		i := slices.IndexFunc(findings, func(f spec.Finding) bool { return f.Rule == c.rule })
		require.GreaterOrEqual(t, i, 0, "%s: %v", c.shop, findings)
		f := findings[i]
		require.Equal(t, spec.Stops, f.Severity)
		require.Equal(t, c.key, f.Path)
		require.Contains(t, f.Sentence, c.says)
		require.Positive(t, f.Line)
	}
	m, set := resolved(t, strings.Replace(model, "height: 2050", "height: 3800", 1))
	job, findings := planOf(set, m)
	require.False(t, len(job.Works) == 0)
	for _, w := range job.Works {
		require.NotContains(t, []string{"SL", "SR", "LEAF"}, w.Part.Labels[0], "longer than a common table")
	}
	for _, f := range findings {
		require.NotEqual(t, spec.Stops, f.Severity)
	}
	require.Equal(t, RuleLeft, findings[len(findings)-1].Rule)
}

// Layer words, unit, release and table are the model's own.
func TestOptions(t *testing.T) {
	job := planned(t, model+"shop: {layers: {cut: outside}, units: inch, release: r12}\n")
	w := job.of(t, "P1", "front")
	require.Equal(t, dxf.R12, w.Cutting.Release)
	require.Equal(t, length.Inches, w.Cutting.Unit)
	require.Equal(t, "OUTSIDE-0_11811-FRONT", w.Cutting.Layers[0].Name)
	require.Contains(t, w.Name, "_0.11811in_")
}

// The laws every file of every set holds.
func holdLaws(t *testing.T, set door.Set, job Job, findings []spec.Finding) {
	t.Helper()
	byLabel := map[string]door.Part{}
	for _, p := range set.Leaf.Parts {
		byLabel[p.Label] = p
	}
	names := map[string]bool{}
	for _, w := range job.Works {
		require.False(t, names[strings.ToLower(w.Name)], w.Name)
		names[strings.ToLower(w.Name)] = true
		require.NoError(t, w.Cutting.Check(), w.Name)
		require.Less(t, len(w.Name), 190)
		blank := w.Setup.Outline().Bounds()
		if nested := w.Part.Solid.Blank.Region == nil && w.Part.Sheet; !nested {
			require.Equal(t, plane.BoxOf(plane.Point{}, plane.At(w.Setup.Width, w.Setup.Height)), blank, w.Name)
		}
		run := job.Options.Profile.Tool.Run()
		for _, c := range w.Setup.Contours {
			b := c.Path.Bounds()
			if c.Operation == machining.Pocket {
				require.GreaterOrEqual(t, min(b.Min.X, b.Min.Y), -4*run, w.Name)
				continue
			}
			require.GreaterOrEqual(t, min(b.Min.X, b.Min.Y), length.Length(0), w.Name)
			require.True(t, b.Max.X <= w.Setup.Width && b.Max.Y <= w.Setup.Height, w.Name)
		}
		if part, one := byLabel[w.Part.Labels[0]]; one && w.Part.Sheet {
			require.InEpsilon(t, part.Volume/w.Part.Thickness.MM(), w.Setup.Outline().Area(), 1e-6, w.Name)
		}
	}
	for _, p := range partsOf(set) {
		holdVolume(t, p)
	}
	told := slices.ContainsFunc(findings, func(f spec.Finding) bool { return f.Rule == RuleNest })
	nested := map[string]int{}
	for _, w := range job.Works {
		if !strings.HasPrefix(w.Part.Labels[0], "NEST") {
			continue
		}
		_, list, _ := strings.Cut(w.Part.Name, ", ")
		for piece := range strings.SplitSeq(list, ", ") {
			var n int
			var label string
			_, err := fmt.Sscanf(piece, "%d × %s", &n, &label)
			require.NoError(t, err, piece)
			nested[label] += n * w.Part.Quantity
		}
	}
	for _, w := range job.Works {
		if n := nested[w.Part.Labels[0]]; w.Part.Order || told && n == 0 {
			require.Zero(t, n, "%s is ordered to size", w.Part.Labels[0])
		} else if w.Part.Sheet && w.Part.Solid.Blank.Region != nil {
			require.Equal(t, w.Part.Quantity, n, "all of %s are nested", w.Part.Labels[0])
		}
	}
}

// holdVolume: a blank worked as the files tell, face by face, is the part.
func holdVolume(t *testing.T, p Part) {
	t.Helper()
	body := p.Solid
	body.Bores = nil
	plan := machining.Setups(body, machining.Tool{Diameter: 6 * mm, Reach: 400 * mm, Relief: machining.NoRelief})
	if len(plan.LeftOut) > 0 || len(plan.Setups) == 0 {
		return
	}
	least, most := body.Bounds()
	worked := solid.Solid{Blank: solid.Block(least, most)}
	face := plane.Region{plane.Rect(least.Flat(solid.Y), most.Flat(solid.Y))}
	for i, s := range plan.Setups {
		outline := s.Outline()
		if i == 0 {
			if waste := plane.Subtract(face, whence(outline, s, most)); !waste.Empty() {
				worked.Cuts = append(worked.Cuts, solid.Cut{Prism: solid.Prism{Axis: solid.Y, Region: waste, To: most.Y}})
			}
		}
		byDepth := map[length.Length]plane.Region{}
		for _, c := range s.Contours {
			if c.Operation == machining.Pocket {
				byDepth[c.Depth] = append(byDepth[c.Depth], c.Path)
			}
		}
		for depth, region := range byDepth {
			axis := [...]solid.Axis{solid.Y, solid.Y, solid.X, solid.X, solid.Z, solid.Z}[s.Face]
			cut := solid.Prism{Axis: axis, Region: whence(plane.Intersect(region, outline), s, most), To: depth}
			if s.Face == machining.Back || s.Face == machining.Right || s.Face == machining.Top {
				cut.From, cut.To = most.Along(axis)-depth, most.Along(axis)
			}
			worked.Cuts = append(worked.Cuts, solid.Cut{Prism: cut})
		}
	}
	require.InDelta(t, body.Volume(), worked.Volume(), worked.Blank.Region.Area()*most.Y.MM()*1e-6, p.title())
}

// whence is a region of a setup where it lies on the part, flat along the
// face's axis; the part's least corner is at 0.
func whence(r plane.Region, s machining.Setup, most solid.Vec) plane.Region {
	return r.Map(func(q plane.Point) plane.Point {
		switch s.Face {
		case machining.Back:
			return plane.At(most.X-q.X, q.Y)
		case machining.Left:
			return plane.At(most.Y-q.X, q.Y)
		case machining.Bottom:
			return plane.At(q.X, most.Y-q.Y)
		}
		return q
	}, s.Face.Turned())
}

func TestLawsOfSamples(t *testing.T) {
	paths, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		m, _, err := spec.ReadFile(path)
		require.NoError(t, err)
		set, _ := door.Resolve(m)
		job, findings := planOf(set, m)
		for _, f := range findings {
			require.NotEqual(t, spec.Stops, f.Severity, "%v", f)
		}
		require.False(t, len(job.Works) == 0, path)
		holdLaws(t, set, job, findings)
	}
}

func TestLawsOfRandomModels(t *testing.T) {
	good := 0
	for n := range *models {
		rnd := rand.New(rand.NewPCG(*seed, uint64(n)))
		text := anyModel(rnd)
		m, findings := spec.Read("model.yaml", []byte(text))
		require.Empty(t, findings, text)
		set, findings := door.Resolve(m)
		if slices.ContainsFunc(findings, func(f spec.Finding) bool { return f.Severity == spec.Stops }) {
			continue
		}
		job, findings := planOf(set, m)
		for _, f := range findings {
			require.NotContains(t, f.Sentence, "%!", text)
			require.True(t, f.Severity != spec.Stops || m.Shop != nil)
			require.Contains(t, []string{machining.RuleMachine, machining.RuleSheet, RuleLeft, RuleNest, machining.RuleBridge, machining.RuleCorner, machining.RuleFeature}, f.Rule, "seed %d model %d: %v\n%s", *seed, n, f, text)
		}
		if len(job.Works) == 0 {
			require.NotEmpty(t, findings)
			continue
		}
		good++
		if !t.Run(fmt.Sprintf("seed %d model %d", *seed, n), func(t *testing.T) { holdLaws(t, set, job, findings) }) {
			t.Fatal(text)
		}
	}
	require.Greater(t, good, *models/3, "models that resolve and pass, of %d", *models)
}

// anyModel writes a random model; most resolve.
func anyModel(rnd *rand.Rand) string {
	mm := func(least, most int) string {
		return fmt.Sprintf("%d.%d mm", least+rnd.IntN(most-least), 5*rnd.IntN(2))
	}
	pick := func(from ...string) string { return from[rnd.IntN(len(from))] }
	leaves := 2 + rnd.IntN(3)
	tracks := strings.Join([]string{"back", "front", "back", "front"}[:leaves], ", ")
	text := fmt.Sprintf("job: %s\nunits: %s\n", pick("Any", "Press 7/8, the long name of a cupboard under a stair in the north wing", "—"), pick("inch", "millimetre"))
	text += fmt.Sprintf("opening: {width: %s, height: %s}\n", mm(leaves*350, leaves*900), mm(700, 2900))
	text += fmt.Sprintf("hanging: {style: bypass, tracks: [%s], overlap: %s}\n", tracks, mm(20, 60))
	text += fmt.Sprintf("leaf: {thickness: %s, stile: %s, rail: {top: %s, cross: %s, bottom: %s}, lites: {rows: %d, columns: %d}, muntin: %s, joint: %s%s}\n",
		mm(30, 36), mm(60, 120), mm(60, 120), mm(60, 110), mm(60, 200), 1+rnd.IntN(6), 1+rnd.IntN(6)/4, mm(45, 80),
		pick("pocket-screw", "dowel", "loose-tenon", "mortise-and-tenon", "half-lap", "bridle"),
		pick("", "", ", guide: {width: 8 mm, depth: 15 mm}", ", edges: [{edge: outside, face: front, shape: roundover, size: 4 mm}]",
			", pull: {shape: round, face: front, width: 35 mm, depth: 8 mm}", ", pull: {shape: rectangular, face: both, width: 25 mm, height: 80 mm, depth: 6 mm, radius: 5 mm}"))
	text += fmt.Sprintf("panel: {material: %s, thickness: %s, ", pick("acrylic", "polycarbonate", "plywood", "float glass"), mm(3, 5))
	switch rnd.IntN(5) {
	case 0:
		text += "seat: groove, film: back}\n"
	case 1:
		text += fmt.Sprintf("seat: face-bead, corner: %s}\n", pick("squared", "clipped", "rounded"))
	case 2:
		text += fmt.Sprintf("held_by: %s, corner: %s, film: front}\n", pick("stop", "sealant"), pick("dogbone", "t-bone", "squared"))
	default:
		text += fmt.Sprintf("corner: %s}\n", pick("clipped", "rounded", "squared", "dogbone", "t-bone"))
	}
	switch rnd.IntN(4) {
	case 0:
		text += fmt.Sprintf("shop: {kerf: 0.%d mm, relief: %s, release: r12}\n", 1+rnd.IntN(9), pick("dogbone", "t-bone"))
	case 1:
		text += fmt.Sprintf("shop: {tool: %s, segments: 0.0%d mm, units: %s}\n", mm(3, 9), 1+rnd.IntN(9), pick("inch", "millimetre"))
	}
	return text
}

// Whatever the shop's limits: no panic, every finding has its place, and what
// is written reads back.
func TestWildShops(t *testing.T) {
	written := 0
	for n := range *models {
		rnd := rand.New(rand.NewPCG(*seed, uint64(5000+n)))
		size := func(key string, least, most float64) string {
			if rnd.IntN(3) > 0 {
				return ""
			}
			return fmt.Sprintf("  %s: %.3f mm\n", key, least+rnd.Float64()*(most-least))
		}
		text := model + "shop:\n  marks: strokes\n" + size("kerf", 0.01, 10) + size("segments", 0.005, 1) + size("tool", 0.5, 50) + size("reach", 3, 200) +
			size("inside_radius", 0, 25) + size("least_feature", 0, 50) + size("least_bore", 0, 4) + size("bridge", 0, 8) + size("spacing", 0, 50) +
			fmt.Sprintf("  relief: %s\n  hole_percent: %d\n", []string{"dogbone", "t-bone", "none"}[rnd.IntN(3)], 1+rnd.IntN(200))
		m, set := resolved(t, text)
		job, findings := planOf(set, m)
		for _, f := range findings {
			require.Positive(t, f.Line, text)
			require.NotContains(t, f.Sentence, "%!", text)
		}
		for _, w := range job.Works {
			var out bytes.Buffer
			require.NoError(t, dxf.WriteCutting(&out, w.Cutting), text)
			back, err := dxf.ReadCutting(&out)
			require.NoError(t, err, text)
			require.NoError(t, w.Cutting.Same(back), text)
			written++
		}
	}
	require.Positive(t, written)
}

// Nests are cut from the sheets that are bought, sample by sample: as many of
// each, in their size; and none of what is ordered to size, whose file says so.
func TestNestsTakeWhatIsBought(t *testing.T) {
	paths, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	nests, orders, same := 0, 0, 0
	for _, path := range paths {
		m, _, err := spec.ReadFile(path)
		require.NoError(t, err)
		set, _ := door.Resolve(m)
		taken, _ := takeoff.Of([]takeoff.Job{{Model: m, Set: set}}, takeoff.Prices{})
		job, findings := Plan(set, m, taken)
		bought, cut := map[string]int{}, map[string]int{}
		key := func(material string, thick, w, h length.Length) string {
			return fmt.Sprint(material, thick, min(w, h), max(w, h))
		}
		for _, plan := range taken.Sheets {
			for i, n := range plan.Layout.Used {
				if s := plan.Job.Sheets[i]; n > 0 {
					bought[key(plan.Material.Name, plan.Thickness, s.Width, s.Height)] += n
				}
			}
		}
		for _, w := range job.Works {
			if strings.HasPrefix(w.Part.Labels[0], "NEST") {
				nests++
				cut[key(w.Part.Material, w.Part.Thickness, w.Setup.Width, w.Setup.Height)] += w.Part.Quantity
			}
			if w.Part.Order {
				orders++
				require.Contains(t, w.Name, "order-drawing")
				require.Contains(t, string(job.List()), w.Part.Notes[len(w.Part.Notes)-1])
				require.Contains(t, strings.Join(job.totals(), " "), "ordered to size")
			}
		}
		if !slices.ContainsFunc(findings, func(f spec.Finding) bool { return f.Rule == RuleNest }) {
			require.Equal(t, bought, cut, path)
			same++
		}
	}
	require.Positive(t, nests)
	require.Positive(t, same)
	require.Positive(t, orders)
}

// A sheet stated under shop: is bought and nested; stated sizes beyond it are
// not, and that is told. Nests wider spaced than the lists saw say what they take.
func TestShopSheetIsBought(t *testing.T) {
	for _, c := range []struct {
		tail  string
		sheet string // as the lists name it
		rule  string
	}{
		{"shop: {sheet: {width: 1500, height: 2200}}", "1500 x 2200", ""},
		{"shop: {sheet: {width: 1250, height: 2500}}\nstock: {sheet: {sizes: [{width: 1000, height: 2400}, {width: 1500, height: 2500}]}}", "1000 x 2400", takeoff.RuleShopSheet},
		{"shop: {sheet: {width: 1250, height: 2500}}\nstock: {sheet: {sizes: [{width: 1500, height: 2500}]}}", "1250 x 2500", takeoff.RuleShopSheet},
		{"shop: {spacing: 50}\nstock: {sheet: {sizes: [{width: 1290, height: 1770}]}}", "1290 x 1770", RuleNest},
	} {
		m, set := resolved(t, model+c.tail+"\n")
		taken, findings := takeoff.Of([]takeoff.Job{{Model: m, Set: set}}, takeoff.Prices{})
		job, more := Plan(set, m, taken)
		findings = append(findings, more...)
		if c.rule == "" {
			require.Empty(t, findings, c.tail)
		} else {
			require.Len(t, findings, 1, c.tail)
			require.Equal(t, c.rule, findings[0].Rule)
			require.Equal(t, spec.Warning, findings[0].Severity)
			require.Positive(t, findings[0].Line)
		}
		i := slices.IndexFunc(job.Works, func(w Work) bool { return strings.HasPrefix(w.Part.Labels[0], "NEST") })
		require.GreaterOrEqual(t, i, 0, c.tail)
		require.Contains(t, job.Works[i].Part.Notes[0], c.sheet)
		require.Contains(t, taken.Offers[len(taken.Offers)-1].Name, c.sheet)
		t.Log(findings)
	}
}

// A sheet that the table does not hold is not nested, whatever the model says of
// the shop: the panels' own files do without.
func TestNestOnTheTable(t *testing.T) {
	for _, tail := range []string{"shop: {machine: {width: 1500, height: 2200}}\n", ""} {
		m, set := resolved(t, model+tail+"stock: {sheet: {sizes: [{width: 2000, height: 3050}]}}\n")
		job, findings := planOf(set, m)
		require.Len(t, findings, 1)
		require.Equal(t, RuleNest+" shop.machine", findings[0].Rule+" "+findings[0].Path)
		require.Equal(t, spec.Warning, findings[0].Severity)
		require.Contains(t, findings[0].Sentence, "2000 mm × 3050 mm")
		require.False(t, slices.ContainsFunc(job.Works, func(w Work) bool { return strings.HasPrefix(w.Part.Labels[0], "NEST") }))
		job.of(t, "P1", "front")
	}
}
