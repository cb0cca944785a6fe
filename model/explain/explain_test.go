package explain_test

import (
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/explain"
	"stilewright/model/length"
	"stilewright/model/spec"
)

var seed = flag.Uint64("seed", 1, "seed of the random figures")

const model = `job: Bathroom towels
units: inch
opening: {width: 60, height: 80}
hanging: {style: bypass, tracks: [back, front], overlap: 1 1/2}
leaf: {thickness: 1 3/8, stile: 4, rail: 4, joint: pocket-screw}
panel: {material: acrylic, thickness: 1/8, edge_gap: 1/16}
`

func bookOf(t *testing.T) explain.Book {
	t.Helper()
	m, findings := spec.Read("towels.yaml", []byte(model))
	require.Empty(t, findings)
	set, findings := door.Resolve(m)
	require.Empty(t, findings)
	return explain.Of(set.Figures, set.Units)
}

func tree(t *testing.T, b explain.Book, name string) string {
	t.Helper()
	roots, err := b.Roots(name)
	require.NoError(t, err)
	return b.Tree(roots)
}

// A width by formula, back to measurements and defaults; and a depth two steps
// behind what is stated.
func TestTrees(t *testing.T) {
	b := bookOf(t)
	require.Equal(t, `leaf.width = 30 3/4"
| (least usable width − jamb and meeting gaps + 1 × overlap asked for) ÷ 2
| leaves, up to the next tick
  opening.width = 60"
  | least distance between the jambs as a plumb leaf sees them
    opening.width.bottom = 60", as stated
    opening.width.top = 60", as stated
    opening.width.middle = 60", as stated
  hanging.jamb_gap.left = 0"
  | default: the outer leaves close against the jambs
  | source: common practice, no source
  hanging.jamb_gap.right = 0"
  | default: the outer leaves close against the jambs
  | source: common practice, no source
  hanging.overlap = 1 1/2", as stated
  tick = 1/32"
  | default: the finest division of a tape: sizes that must be shared out are
  | shared in whole ticks
  | source: common practice, no source
`, tree(t, b, "leaf.width"))
	require.Equal(t, `rabbet.depth = 3/4"
| thickness less the wood in front
  leaf.thickness = 1 3/8", as stated
  rabbet.front = 5/8"
  | panel centred: half of thickness less panel
    leaf.thickness = 1 3/8", as stated
    panel.thickness = 1/8", as stated
`, tree(t, b, "rabbet.depth"))
}

// A figure taken twice is told once; one that lies on no tick says so.
func TestToldOnce(t *testing.T) {
	text := tree(t, bookOf(t), "lite.width")
	require.Contains(t, text, "leaf.stile = 4\", as stated")
	two := explain.Of([]door.Figure{
		{Name: "a", Value: length.Inch / 3, Reason: "why", Source: "who"},
		{Name: "b", Value: length.Inch, Formula: "a and a", From: []string{"a", "a"}},
	}, length.Inches)
	require.Equal(t, "b = 1\"\n| a and a\n  a ≈ 21/64\"\n  | default: why\n  | source: who\n  a ≈ 21/64\", as above\n", tree(t, two, "b"))
}

func TestUnknownNames(t *testing.T) {
	b := bookOf(t)
	for name, want := range map[string]string{
		"leaf.widht":                   `no length is called "leaf.widht"; did you mean leaf.width, `,
		"floor_gap":                    `did you mean hanging.floor_gap?`,
		"chandelier of the grand hall": "explain without a name lists all",
		"":                             "explain without a name lists all",
	} {
		_, err := b.Roots(name)
		require.ErrorContains(t, err, want)
	}
	group, err := b.Roots("leaf")
	require.NoError(t, err)
	require.Greater(t, len(group), 3)
	for _, f := range group {
		require.True(t, strings.HasPrefix(f.Name, "leaf."), f.Name)
	}
}

// Of every sample each figure can be told, within 80 columns; it takes only
// figures there are, and never itself in the end.
func TestSamplesAreTold(t *testing.T) {
	files, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		m, findings, err := spec.ReadFile(file)
		require.NoError(t, err)
		require.Empty(t, findings)
		set, _ := door.Resolve(m)
		require.NotEmpty(t, set.Figures)
		requireSound(t, set.Figures)
		b := explain.Of(set.Figures, set.Units)
		narrow(t, b.List())
		for _, f := range set.Figures {
			narrow(t, tree(t, b, f.Name))
			require.Contains(t, b.List(), "  "+f.Name+" ")
		}
	}
}

// requireSound requires that figures take only figures, without a circle.
func requireSound(t *testing.T, figures []door.Figure) {
	t.Helper()
	require.Empty(t, unsound(figures))
}

// unsound are the names taken that no figure before has: there is then neither
// an unknown name nor a circle.
func unsound(figures []door.Figure) []string {
	before := map[string]bool{}
	var bad []string
	for _, f := range figures {
		for _, from := range f.From {
			if !before[from] {
				bad = append(bad, f.Name+" takes "+from)
			}
		}
		before[f.Name] = true
	}
	return bad
}

func TestUnsoundFiguresAreFound(t *testing.T) {
	require.Len(t, unsound([]door.Figure{{Name: "a", From: []string{"b"}}, {Name: "b", From: []string{"a"}}}), 1)
	require.Len(t, unsound([]door.Figure{{Name: "a", From: []string{"a"}}}), 1)
	require.Len(t, unsound([]door.Figure{{Name: "a", From: []string{"ghost"}}}), 1)
}

func narrow(t *testing.T, text string) {
	t.Helper()
	for line := range strings.Lines(text) {
		require.LessOrEqual(t, utf8.RuneCountInString(strings.TrimSuffix(line, "\n")), 80, line)
	}
}

// Of random figures, the tree of one names just those it is taken from, each
// told once; and what lies behind has all before what takes it. Circles end.
func TestRandomFigures(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	for range 300 {
		var figures []door.Figure
		for i := range 1 + rnd.IntN(40) {
			f := door.Figure{Name: fmt.Sprintf("g%d.f%d", rnd.IntN(4), i), Value: length.Length(rnd.Int64N(int64(length.Metre))), Formula: strings.Repeat("word ", 1+rnd.IntN(40))}
			for range min(i, rnd.IntN(4)) {
				f.From = append(f.From, figures[rnd.IntN(i)].Name)
			}
			figures = append(figures, f)
		}
		b := explain.Of(figures, length.Millimetres)
		last := figures[len(figures)-1]
		behind := b.Behind([]door.Figure{last})
		requireSound(t, behind)
		text := tree(t, b, last.Name)
		narrow(t, text)
		for _, f := range figures {
			told := strings.Count("\n"+text, f.Name+" ")
			require.Equal(t, contains(behind, f.Name), told > 0, "seed %d: %s", *seed, f.Name)
		}
		require.Equal(t, len(behind), strings.Count(text, "| word")-folded(text), "seed %d: each told once", *seed)
		figures[0].From = []string{last.Name}
		require.NotEmpty(t, explain.Of(figures, length.Millimetres).Tree(figures[:1]))
	}
}

// folded counts the lines that go on a formula.
func folded(text string) int {
	count, before := 0, ""
	for line := range strings.Lines(text) {
		if strings.Contains(line, "| ") && strings.Contains(before, "| ") {
			count++
		}
		before = line
	}
	return count
}

func contains(figures []door.Figure, name string) bool {
	for _, f := range figures {
		if f.Name == name {
			return true
		}
	}
	return false
}

func TestJSON(t *testing.T) {
	b := bookOf(t)
	roots, err := b.Roots("rabbet.depth")
	require.NoError(t, err)
	data, err := b.JSON(roots)
	require.NoError(t, err)
	var got struct {
		Format  string
		Version int
		Units   string
		Asked   []string
		Lengths []struct {
			Name, Group, MM, Shown, Given, Formula string
			NM                                     int64
			From                                   []string
		}
	}
	require.NoError(t, json.Unmarshal(data, &got))
	require.Equal(t, "stilewright explained lengths", got.Format)
	require.Equal(t, []string{"rabbet.depth"}, got.Asked)
	names := []string{}
	for _, row := range got.Lengths {
		names = append(names, row.Name)
		require.Equal(t, explain.Group(row.Name), row.Group)
	}
	require.Equal(t, []string{"leaf.thickness", "panel.thickness", "rabbet.front", "rabbet.depth"}, names)
	require.Equal(t, "19.05", got.Lengths[3].MM)
	require.Equal(t, int64(19_050_000), got.Lengths[3].NM)
	require.Equal(t, `3/4"`, got.Lengths[3].Shown)
	again, err := b.JSON(roots)
	require.NoError(t, err)
	require.Equal(t, data, again)
	all, err := b.JSON(nil)
	require.NoError(t, err)
	require.Contains(t, string(all), `"asked": []`)
	require.Contains(t, string(all), `"opening.width.bottom"`)
}
