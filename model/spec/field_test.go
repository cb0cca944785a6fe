package spec

import (
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
)

// every walks all fields of the model.
func every(group reflect.Type, path string, visit func(path string, tagged reflect.StructField, f field)) {
	for _, f := range fieldsOf(group) {
		at := join(path, f.key)
		visit(at, group.Field(f.index), f)
		if item, list := f.isList(); list {
			f = item
		}
		if inner, isGroup := f.isGroup(); isGroup {
			every(inner, at, visit)
		}
	}
}

// The tags say what reader and schema need, and nothing they do not know.
func TestTags(t *testing.T) {
	known := []string{"key", "doc", "need", "one", "choice", "form", "least", "above", "most", "range", "count"}
	forms := []string{"", "date", "overlap", "track-row", "sheet-material", "species", "board"}
	paths := map[string]bool{}
	every(reflect.TypeFor[Spec](), Whole, func(path string, tagged reflect.StructField, f field) {
		for _, name := range tagNames(string(tagged.Tag)) {
			require.Contains(t, known, name, path)
		}
		require.NotEmpty(t, f.key, path)
		require.NotEmpty(t, f.doc, path)
		require.Contains(t, forms, f.form, path)
		require.False(t, paths[path], "%s twice", path)
		paths[path] = true
		require.False(t, f.least != nil && f.above != nil, path)
		low := f.least
		if f.above != nil {
			low = f.above
		}
		switch {
		case f.typ == sizeType || f.typ == overlapType || f.typ == sightType:
			require.True(t, low != nil && f.most != nil && *low < *f.most, "limits of %s", path)
		case f.typ.Kind() == reflect.Int:
			require.Less(t, f.low, f.high, path)
		case f.typ.Kind() == reflect.Slice:
			require.Less(t, f.fewest, f.mostItems, path)
		}
		if group, isGroup := f.isGroup(); isGroup && f.one != "" {
			one, has := f.single(fieldsOf(group))
			require.True(t, has, path)
			for _, each := range fieldsOf(group) {
				if f.one == "all" {
					require.Equal(t, sizeType, each.typ, path)
					require.True(t, *each.least == *one.least && *each.most == *one.most, "one size for all of %s", path)
				}
			}
		}
	})
	require.Greater(t, len(paths), 60)
}

// tagNames are the names in a struct tag.
func tagNames(tag string) []string {
	var names []string
	start, quoted := 0, false
	for i, c := range tag {
		switch {
		case c == '"':
			quoted = !quoted
			start = i + 1
		case c == ':' && !quoted:
			names = append(names, tag[start:i])
		case c == ' ' && !quoted:
			start = i + 1
		}
	}
	return names
}

// The limits a message names are within the limits, in either unit.
func TestNamedLimitsWork(t *testing.T) {
	every(reflect.TypeFor[Spec](), Whole, func(path string, _ reflect.StructField, f field) {
		for unit, tick := range map[length.Unit]length.Length{length.Inches: length.Inch / 64, length.Millimetres: length.Millimetre / 10} {
			if f.least != nil && !f.allows(f.least.UpTo(tick)) || f.most != nil && !f.allows(f.most.DownTo(tick)) {
				t.Errorf("%s: %s is not within the limits", path, f.limits(unit))
			}
			require.NotContains(t, f.limits(unit), "≈", path)
		}
	})
}

func TestNearestWord(t *testing.T) {
	known := []string{"width", "height", "thickness", "left"}
	for word, want := range map[string]string{
		"width": "width", "WIDTH": "width", "widht": "width", "with": "width", "hieght": "height", "thicknes": "thickness",
		"colour": "", "": "", "lft": "left", "wide": "", "wi": "",
	} {
		require.Equal(t, want, nearestWord(word, known), word)
	}
	require.Empty(t, nearestWord("x"+string(slices.Repeat([]byte("y"), 1<<20)), known))
}

func TestEditDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "rail", 4}, {"rail", "rail", 0}, {"rail", "rial", 1}, {"rail", "rails", 1},
		{"stile", "style", 1}, {"stop", "step", 1}, {"kitten", "sitting", 3}, {"é", "e", 1},
	} {
		require.Equal(t, c.want, editDistance(c.a, c.b), "%s, %s", c.a, c.b)
		require.Equal(t, c.want, editDistance(c.b, c.a), "%s, %s", c.b, c.a)
	}
}
