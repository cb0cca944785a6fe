package main

import (
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/hanging"
	"stilewright/model/length"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
	"stilewright/render/shop"
)

const repository = "../.." // seen from this package

func readme(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(repository, "README.md"))
	require.NoError(t, err)
	return string(text)
}

// examples are the model files the text shows.
func examples(text string) []string {
	var models []string
	for _, m := range regexp.MustCompile("(?s)```yaml\n(.*?)```").FindAllStringSubmatch(text, -1) {
		models = append(models, m[1])
	}
	return models
}

// A keyRow is one row of the table of keys.
type keyRow struct{ key, otherwise string }

// keyRows reads the rows of the README's table of keys.
func keyRows(text string) []keyRow {
	_, table, _ := strings.Cut(text, "| key | default | meaning |\n")
	var rows []keyRow
	for line := range strings.Lines(table) {
		cells := strings.Split(line, "|")
		if len(cells) < 5 {
			break
		}
		if key := strings.TrimSpace(cells[1]); strings.HasPrefix(key, "`") {
			rows = append(rows, keyRow{strings.Trim(key, "`"), strings.TrimSpace(cells[2])})
		}
	}
	return rows
}

// A schemaNode is as much of a JSON Schema as these tests read.
type schemaNode struct {
	Properties map[string]schemaNode
	AnyOf      []schemaNode
	Items      *schemaNode `json:"items"`
	Required   []string
}

// walk gives every key below the node by its path, and whether its group needs
// it.
func (n schemaNode) walk(path string, found map[string]bool) {
	for key, child := range n.Properties {
		found[path+key] = slices.Contains(n.Required, key)
		child.walk(path+key+".", found)
	}
	for _, other := range n.AnyOf {
		other.walk(path, found)
	}
	if n.Items != nil {
		n.Items.walk(path, found)
	}
}

func schemaKeys(t *testing.T) map[string]bool {
	t.Helper()
	var top schemaNode
	require.NoError(t, json.Unmarshal(spec.Schema(), &top))
	found := map[string]bool{}
	top.walk("", found)
	require.Contains(t, found, "panel.held_by.screw.gauge", "the walk does not reach the innermost keys")
	return found
}

// resolved is the set of a model that must have no finding that stops.
func resolved(t *testing.T, text string) door.Set {
	t.Helper()
	model, findings := spec.Read("README.md", []byte(text))
	require.Empty(t, findings)
	set, findings := door.Resolve(model)
	require.False(t, stops(findings), "%v", findings)
	require.NotEmpty(t, set.Hung)
	return set
}

func TestReadmeExamplesResolve(t *testing.T) {
	models := examples(readme(t))
	require.Len(t, models, 2)
	for _, model := range models {
		resolved(t, model)
	}
}

// Every key of a model is stated by an example here or by a sample.
func TestEveryKeyIsShown(t *testing.T) {
	stated := map[string]bool{}
	var walk func(path string, group map[string]any)
	walk = func(path string, group map[string]any) {
		for key, value := range group {
			stated[path+key] = true
			items, list := value.([]any)
			if !list {
				items = []any{value}
			}
			for _, item := range items {
				if inner, ok := item.(map[string]any); ok {
					walk(path+key+".", inner)
				}
			}
		}
	}
	texts := examples(readme(t))
	found, err := filepath.Glob(filepath.Join(repository, "samples", "*.yaml"))
	require.NoError(t, err)
	for _, path := range found {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		texts = append(texts, string(data))
	}
	for _, text := range texts {
		var model map[string]any
		require.NoError(t, yaml.Unmarshal([]byte(text), &model))
		walk("", model)
	}
	for key := range schemaKeys(t) {
		require.True(t, stated[key], "%s stands in no example and no sample", key)
	}
}

func TestReadmeTellsEveryKey(t *testing.T) {
	keys := schemaKeys(t)
	told := map[string]bool{}
	for _, row := range keyRows(readme(t)) {
		require.NotContains(t, told, row.key, "told twice")
		told[row.key] = row.otherwise == "needed"
	}
	require.Equal(t, keys, told, "key, and whether its group needs it")
}

func TestReadmeSamples(t *testing.T) {
	named := map[string]bool{}
	for _, path := range regexp.MustCompile(`samples/[\w-]+\.yaml`).FindAllString(readme(t), -1) {
		named[path] = true
	}
	there := map[string]bool{}
	found, err := filepath.Glob(filepath.Join(repository, "samples", "*"))
	require.NoError(t, err)
	for _, path := range found {
		there["samples/"+filepath.Base(path)] = true
	}
	require.NotEmpty(t, there)
	require.Equal(t, there, named)
}

func TestReadmeLinksExist(t *testing.T) {
	links := regexp.MustCompile(`\]\(([^)]+)\)`).FindAllStringSubmatch(readme(t), -1)
	require.NotEmpty(t, links)
	for _, link := range links {
		require.FileExists(t, filepath.Join(repository, link[1]))
	}
}

// Defaults with two sizes are held against what a model without them resolves
// to, in either unit.
func TestReadmeDefaults(t *testing.T) {
	const tail = `
hanging: {style: bypass, tracks: [back, front, front, back]}
panel: {material: acrylic, thickness: 3 mm}
leaf: {thickness: 34 mm, stile: 80 mm, rail: 80 mm}
opening: {width: 2400 mm, height: 2000 mm}
`
	sets := [2]door.Set{
		hungToo(t, "job: inches\nunits: inch"+tail),
		hungToo(t, "job: millimetres\nunits: millimetre"+tail),
	}
	two := regexp.MustCompile("^`([^`]+)` or `([^`]+ mm)`$")
	checked := 0
	for _, row := range keyRows(readme(t)) {
		told := two.FindStringSubmatch(row.otherwise)
		if told == nil || ofStock(row.key) || shopped(row.key) {
			continue
		}
		for i, set := range sets {
			want, err := length.Parse(told[i+1], set.Units)
			require.NoError(t, err, row.key)
			require.Equal(t, want, figureOf(t, set, row.key), "%s in %v", row.key, set.Units)
		}
		checked++
	}
	require.Greater(t, checked, 10)
}

// hungToo is the set of a model, its figures followed by those of its hanging.
func hungToo(t *testing.T, text string) door.Set {
	t.Helper()
	set := resolved(t, text)
	model, findings := spec.Read("README.md", []byte(text))
	require.Empty(t, findings)
	hung, findings := hanging.Of(model, set)
	require.Empty(t, findings)
	set.Figures = append(slices.Clip(set.Figures), hung.Figures...)
	return set
}

// ofStock tells that a key's default is the takeoff's, not the set's.
func ofStock(key string) bool { return strings.HasPrefix(key, "stock.") }

// shopped tells that a key's default is the shop's, not the set's.
func shopped(key string) bool { return strings.HasPrefix(key, "shop.") }

// The shop's defaults with two sizes are held against those files are made with.
func TestReadmeShopDefaults(t *testing.T) {
	have := [2]map[string]length.Length{}
	for i, unit := range []string{"inch", "millimetre"} {
		model, findings := spec.Read("README.md", []byte("job: Any\nunits: "+unit+`
hanging: {style: bypass, tracks: [back, front]}
panel: {material: acrylic, thickness: 3 mm}
leaf: {thickness: 34 mm, stile: 80 mm, rail: 80 mm}
opening: {width: 1200 mm, height: 2000 mm}
`))
		require.Empty(t, findings)
		o := shop.OptionsOf(model)
		p := o.Profile
		have[i] = map[string]length.Length{
			"tool": p.Tool.Diameter, "reach": p.Tool.Reach, "least_bore": p.LeastBore, "bridge": p.Bridge, "spacing": o.Spacing,
			"machine.width": p.Machine.Width, "machine.height": p.Machine.Height,
		}
		require.Equal(t, p.Tool.Diameter.Half(), p.InsideRadius)
		require.Equal(t, p.Tool.Diameter, p.LeastFeature)
	}
	two := regexp.MustCompile("^`([^`]+)` or `([^`]+ mm)`$")
	checked := 0
	for _, row := range keyRows(readme(t)) {
		told := two.FindStringSubmatch(row.otherwise)
		if told == nil || !shopped(row.key) {
			continue
		}
		for i, unit := range []length.Unit{length.Inches, length.Millimetres} {
			want, err := length.Parse(told[i+1], unit)
			require.NoError(t, err, row.key)
			got, known := have[i][strings.TrimPrefix(row.key, "shop.")]
			require.True(t, known, row.key)
			require.Equal(t, want, got, row.key)
		}
		checked++
	}
	require.Equal(t, len(have[0]), checked)
}

// The takeoff's defaults with two sizes are held against what it assumes.
func TestReadmeStockDefaults(t *testing.T) {
	const tail = `
hanging: {style: bypass, tracks: [back, front]}
panel: {material: acrylic, thickness: 3 mm}
leaf: {thickness: 34 mm, stile: 80 mm, rail: 80 mm}
opening: {width: 1200 mm, height: 2000 mm}
stock: {film: {width: 900 mm}}
`
	assumed := [2]map[string]string{{}, {}}
	for i, head := range []string{"job: inches\nunits: inch", "job: millimetres\nunits: millimetre"} {
		model, findings := spec.Read("README.md", []byte(head+tail))
		require.Empty(t, findings)
		set, _ := door.Resolve(model)
		taken, findings := takeoff.Of([]takeoff.Job{{Model: model, Set: set}}, takeoff.Prices{})
		require.Empty(t, findings)
		for _, a := range taken.Assumed {
			assumed[i][a.Name] = strings.Trim(a.Value, `"`)
		}
	}
	two := regexp.MustCompile("^`([^`]+)` or `([^`]+ mm)`$")
	checked := 0
	for _, row := range keyRows(readme(t)) {
		if told := two.FindStringSubmatch(row.otherwise); told != nil && ofStock(row.key) {
			require.Equal(t, []string{told[1], told[2]}, []string{assumed[0][row.key], assumed[1][row.key]}, row.key)
			checked++
		}
	}
	require.Equal(t, 9, checked)
}

// figureOf is the default's figure of a key. It is named like the key, or
// without its group; what holds the panel is the washer.
func figureOf(t *testing.T, set door.Set, key string) length.Length {
	t.Helper()
	_, short, _ := strings.Cut(key, ".")
	names := []string{key, short, strings.Replace(key, "panel.held_by.", "washer.", 1), strings.TrimPrefix(key, "panel.held_by.")}
	i := slices.IndexFunc(set.Figures, func(f door.Figure) bool { return slices.Contains(names, f.Name) })
	require.GreaterOrEqual(t, i, 0, "no figure of %s", key)
	require.NotEmpty(t, set.Figures[i].Reason, "%s is no default", key)
	return set.Figures[i].Value
}

func TestReadmeTracks(t *testing.T) {
	_, table, _ := strings.Cut(readme(t), "| row | spacing |")
	told := map[string][]string{}
	for line := range strings.Lines(table) {
		cells := strings.Split(line, "|")
		if name := strings.Trim(strings.TrimSpace(cells[min(1, len(cells)-1)]), "`"); strings.HasPrefix(name, "two-") {
			told[name] = cells[2:6]
		}
	}
	rows := map[string]catalog.TwoChannelTrack{}
	for _, row := range catalog.Tracks() {
		rows[row.Name] = row
	}
	require.ElementsMatch(t, slices.Collect(maps.Keys(rows)), slices.Collect(maps.Keys(told)))
	for name, row := range rows {
		for i, want := range []length.Length{row.Spacing, row.HeadDrop, row.Height, row.Depth} {
			got, err := length.Parse(strings.TrimSpace(told[name][i]), length.Inches)
			require.NoError(t, err)
			require.Equal(t, want, got, name)
		}
	}
}

func TestReadmeSheets(t *testing.T) {
	for _, sheet := range catalog.Sheets() {
		require.Contains(t, readme(t), "`"+sheet.Name+"`")
	}
}
