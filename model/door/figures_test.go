package door_test

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// Every figure has a name of its own, one origin, and takes only figures
// resolved before it; one that was given is what the model says there.
func TestFiguresExplainThemselves(t *testing.T) {
	eachSet(t, func(t *testing.T, model spec.Spec, set door.Set) {
		require.Empty(t, door.NamesTwice(model))
		seen := map[string]bool{}
		for _, f := range set.Figures {
			require.False(t, seen[f.Name], "%s twice", f.Name)
			origins := 0
			for _, origin := range []string{f.Given, f.Formula, f.Reason} {
				if origin != "" {
					origins++
				}
			}
			require.Equal(t, 1, origins, f.Name)
			require.Equal(t, f.Reason != "", f.Source != "", "source of %s", f.Name)
			for _, from := range f.From {
				require.True(t, seen[from], "%s is taken from %s", f.Name, from)
			}
			if f.Given != "" {
				stated := sizes(model)[f.Given]
				require.NotNil(t, stated, "%s given at %s", f.Name, f.Given)
				require.Equal(t, *stated, f.Value, f.Name)
			}
			seen[f.Name] = true
		}
	})
}

// No size of a model is passed over, but one that says what another answers.
func TestEverySizeIsTaken(t *testing.T) {
	eachSet(t, func(t *testing.T, model spec.Spec, set door.Set) {
		unused := map[string]bool{
			"leaf.rail.cross":     len(set.Leaf.Rails) == 2 || len(model.Leaf.Crosses) > 0,
			"leaf.muntin":         set.Leaf.Columns == 1,
			"hanging.meeting_gap": !strings.Contains(strings.Join(model.Hanging.Tracks, " "), "front front") && !strings.Contains(strings.Join(model.Hanging.Tracks, " "), "back back"),
		}
		for path := range sizes(model) {
			unused[path] = unused[path] || unusedByJoint(model, path)
			taken := slices.ContainsFunc(set.Figures, func(f door.Figure) bool { return f.Given == path })
			require.NotEqual(t, unused[path], taken, path)
		}
	})
}

// sizes are the sizes a model states, by path.
func sizes(model spec.Spec) map[string]*length.Length {
	found := map[string]*length.Length{}
	collect(reflect.ValueOf(model), "", found)
	return found
}

func collect(v reflect.Value, path string, found map[string]*length.Length) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return
		}
		if size, is := v.Interface().(*length.Length); is {
			found[strings.TrimPrefix(path, ".")] = size
			return
		}
		v = v.Elem()
	}
	if v.Kind() == reflect.Slice {
		for i := range v.Len() {
			collect(v.Index(i), fmt.Sprintf("%s[%d]", path, i+1), found)
		}
		return
	}
	if sight, is := v.Interface().(spec.Sight); is {
		if sight.Size != nil {
			found[strings.TrimPrefix(path, ".")] = sight.Size
		}
		return
	}
	if overlap, is := v.Interface().(spec.Overlap); is {
		if overlap.Size != nil {
			found[strings.TrimPrefix(path, ".")] = overlap.Size
		}
		return
	}
	if v.Kind() != reflect.Struct {
		return
	}
	for i := range v.NumField() {
		if f := v.Type().Field(i); f.IsExported() {
			collect(v.Field(i), path+"."+f.Tag.Get("key"), found)
		}
	}
}

// The faults of one model are told at once, each at its value.
func TestFaultsAreToldTogether(t *testing.T) {
	x := written(least, `hanging.track.head_drop=1; hanging.track.spacing=1 1/4; leaf.stile=15; leaf.height=79 1/2
		panel.material=acrylick; panel.held_by.screw.gauge=13; stock.species=oaken; opening.plumb.right=1`)
	_, findings := door.Resolve(x.spec(t))
	spec.Sort(findings)
	var told []string
	for _, f := range findings {
		told = append(told, f.Rule+" "+f.Path)
		require.Equal(t, x.nearest(f.Path), [2]int{f.Line, f.Column}, "%v", f)
	}
	require.Equal(t, []string{
		"plumb-disagrees opening.plumb.right",
		"face-gap hanging.track", "track-section hanging.track",
		"leaf-too-narrow leaf.stile", "leaf-too-high leaf.height",
		"unknown-sheet panel.material", "screw-gauge panel.held_by.screw.gauge",
		"unknown-species stock.species",
	}, told)
}

// Faults of frame and seat come together too.
func TestFaultsOfTheSeatAreToldTogether(t *testing.T) {
	x := written(least, "leaf.lites.rows=14; panel.rabbet.cutter=1/2; panel.rabbet.depth=1 1/4; panel.material=acrylick")
	_, findings := door.Resolve(x.spec(t))
	rules := []string{}
	for _, f := range findings {
		rules = append(rules, f.Rule)
	}
	slices.Sort(rules)
	require.Equal(t, []string{door.RuleCutter, door.RuleLiteTooLow, door.RuleRabbetDeep, door.RuleUnknownSheet}, rules)
}

// The samples resolve.
func TestSamplesResolve(t *testing.T) {
	files, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		model, findings := spec.Read(file, text)
		require.Empty(t, findings)
		set, findings := door.Resolve(model)
		require.NotEmpty(t, set.Hung, "%s: %v", file, findings)
	}
}
