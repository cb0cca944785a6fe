package door_test

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// words are names for the texts of a wild model, some of them wrong.
var words = map[string][]string{
	"row": {"", "two-channel", "two-channel-28", "monorail"}, "material": {"", "acrylic", "mirror", "lead"},
	"species": {"", "red oak", "oaken"}, "board": {"", "2x6", "1x2", "5/4x12", "4x4", "2x", "x"},
	"season": {"", "green"}, "spacing": {"", "equal-centres"}, "across": {"", "equal-centres"},
	"kind": {"", "clipped", "squared", "rounded"},
}

// wordsOf are the texts that a field's tag allows, and none.
func wordsOf(tag reflect.StructTag) []string {
	if choices := strings.Fields(tag.Get("choice")); len(choices) > 0 {
		return append(choices, "")
	}
	return words[tag.Get("key")]
}

// wild fills a model with whatever its field tags allow: nothing, the least,
// the most, or anything between.
func (c *chance) wild(v reflect.Value) {
	for i := range v.NumField() {
		if !v.Type().Field(i).IsExported() {
			continue
		}
		field, tag := v.Field(i), v.Type().Field(i).Tag
		switch to := field.Addr().Interface().(type) {
		case **length.Length:
			c.wildSize(to, tag)
			continue
		case *spec.Overlap:
			to.Stile = c.odds(30)
			if !to.Stile {
				c.wildSize(&to.Size, tag)
			}
			continue
		case *[]int:
			for range c.IntN(4) {
				*to = append(*to, 1+c.IntN(6))
			}
			continue
		case *[]*length.Length:
			for range c.IntN(4) {
				var size *length.Length
				c.wildSize(&size, tag)
				*to = append(*to, size)
			}
			continue
		case *[]spec.Sight:
			for range c.IntN(4) {
				sight := spec.Sight{Rest: c.odds(40)}
				if !sight.Rest {
					c.wildSize(&sight.Size, tag)
				}
				*to = append(*to, sight)
			}
			continue
		case *[]string:
			for range 2 + c.IntN(3) {
				*to = append(*to, []string{"front", "back"}[c.IntN(2)])
			}
			continue
		}
		switch names := wordsOf(tag); {
		case field.Kind() == reflect.Slice && field.Type().Elem().Kind() == reflect.Struct:
			for range c.IntN(3) {
				item := reflect.New(field.Type().Elem()).Elem()
				c.wild(item)
				field.Set(reflect.Append(field, item))
			}
		case field.Kind() == reflect.Struct && field.Type() != reflect.TypeFor[spec.Unit]():
			c.wild(field)
		case field.Kind() == reflect.Pointer && c.odds(50):
			field.Set(reflect.New(field.Type().Elem()))
			c.wild(field.Elem())
		case field.Kind() == reflect.String && names != nil:
			field.SetString(names[c.IntN(len(names))])
		case field.Kind() == reflect.Int && c.odds(50):
			field.SetInt(int64(1 + c.IntN(20)))
		}
	}
}

// wildSize is a size that the tag's limits allow, or none.
func (c *chance) wildSize(to **length.Length, tag reflect.StructTag) {
	limit := func(key string) length.Length {
		if tag.Get(key) == "" {
			return length.Nanometre
		}
		size, err := length.Parse(tag.Get(key), length.Millimetres)
		if err != nil {
			panic(err)
		}
		return size
	}
	low, high := limit("least"), limit("most")
	size := [...]length.Length{low, high, low + length.Length(c.Int64N(int64(high-low))), low + length.Length(c.Int64N(int64(high-low)/8+1))}[c.IntN(4)]
	if c.odds(60) {
		*to = &size
	}
}

// No model panics, however odd; and one that does not resolve says why, unless
// a size is missing that cannot be read without.
func TestNoModelPanics(t *testing.T) {
	for n := range 10 * *models {
		c := newChance(n)
		model := spec.Spec{}
		if n > 0 {
			c.wild(reflect.ValueOf(&model).Elem())
			if c.inches {
				model.Units.Unit = length.Inches
			}
		}
		try(t, n, model)
	}
}

func try(t *testing.T, n int, model spec.Spec) {
	defer func() {
		if fault := recover(); fault != nil {
			t.Fatalf("seed %d model %d: %v: %+v", *seed, n, fault, sizes(model))
		}
	}()
	set, findings := door.Resolve(model)
	for _, f := range findings {
		require.NotContains(t, f.Sentence, "%!", fmt.Sprint(f))
		require.NotContains(t, f.Sentence, "\n")
	}
	if len(set.Hung) > 0 {
		return
	}
	o, leaf := model.Opening, model.Leaf
	worked := leaf.Pull == nil || leaf.Pull.Width != nil && leaf.Pull.Depth != nil
	worked = worked && (leaf.Guide == nil || leaf.Guide.Width != nil && leaf.Guide.Depth != nil)
	worked = worked && (model.Panel.Solid == nil || model.Panel.Solid.Thickness != nil)
	for _, e := range leaf.Edges {
		worked = worked && e.Size != nil
	}
	complete := worked && o.Width.Bottom != nil && o.Width.Top != nil && o.Height.Left != nil && o.Height.Right != nil && model.Panel.Thickness != nil
	if complete {
		stops := 0
		for _, f := range findings {
			if f.Severity == spec.Stops {
				stops++
			}
		}
		require.Positive(t, stops, "seed %d model %d does not resolve and says nothing", *seed, n)
	}
}
