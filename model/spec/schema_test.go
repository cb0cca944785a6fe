package spec_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"stilewright/model/spec"
)

// compiled is the schema as an outside validator takes it, held to the
// 2020-12 metaschema.
func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(spec.Schema()))
	require.NoError(t, err)
	compiler := jsonschema.NewCompiler()
	compiler.AssertFormat()
	require.NoError(t, compiler.AddResource("model.json", document))
	schema, err := compiler.Compile("model.json")
	require.NoError(t, err)
	return schema
}

// asJSON is a YAML value as an editor hands it to a schema: YAML 1.2 core,
// where a date is text.
func asJSON(node *yaml.Node) any {
	switch {
	case node.Kind == yaml.DocumentNode:
		return asJSON(node.Content[0])
	case node.Kind == yaml.SequenceNode:
		list := []any{}
		for _, item := range node.Content {
			list = append(list, asJSON(item))
		}
		return list
	case node.Kind == yaml.MappingNode:
		group := map[string]any{}
		for i := 0; i < len(node.Content); i += 2 {
			group[node.Content[i].Value] = asJSON(node.Content[i+1])
		}
		return group
	case node.Tag == "!!int" || node.Tag == "!!float":
		var number float64
		if err := node.Decode(&number); err != nil {
			return node.Value
		}
		return json.Number(fmt.Sprint(number))
	case node.Tag == "!!bool":
		return node.Value == "true"
	case node.Tag == "!!null":
		return nil
	}
	return node.Value
}

func validate(t *testing.T, schema *jsonschema.Schema, text string) error {
	t.Helper()
	var node yaml.Node
	require.NoError(t, yaml.Unmarshal([]byte(text), &node))
	return schema.Validate(asJSON(&node))
}

func TestSchemaTakesGoodModels(t *testing.T) {
	schema := compiled(t)
	for _, text := range []string{
		closet, pantry, completed("by: me"),
		completed("opening: {width: 59⅞, height: 5' 11 1/2\", plumb: {left: -1/16, right: '- 1.5 mm'}}"),
		completed("hanging: {style: bypass, tracks: [back, front], overlap: stile, floor_gap: 0.375 in., track: {spacing: ½″}}"),
	} {
		readGood(t, text)
		require.NoError(t, validate(t, schema, text), text)
	}
}

// What the schema can tell it refuses, as Read does.
func TestSchemaRefuses(t *testing.T) {
	schema := compiled(t)
	lax := map[string]bool{ // what a schema cannot tell
		spec.KeyTwice: true, spec.Alias: true, spec.TypeTag: true,
	}
	refused := 0
	for _, c := range faults {
		var node yaml.Node
		if lax[c.rule] || yaml.Unmarshal([]byte(completed(c.text)), &node) != nil {
			continue
		}
		if schema.Validate(asJSON(&node)) != nil {
			refused++
			continue
		}
		switch c.rule {
		case spec.BadSize, spec.OutOfRange, spec.BadText, spec.BadNumber: // its text, its limits, the numbers YAML makes of text
		default:
			t.Errorf("%s: the schema takes %s", c.rule, c.text)
		}
	}
	require.Greater(t, refused, 35)
	for _, text := range []string{
		completed("leaf: {stile: wide}"), completed("leaf: {stile: --1}"), completed("leaf: {lites: {rows: 21}}"),
		completed("hanging: {style: bypass, tracks: [back, front], floor_gap: 0}"), completed("opening: {width: 60}"),
	} {
		require.Error(t, validate(t, schema, text), text)
	}
}

// Same tags, same bytes; each property says what it is.
func TestSchemaBytes(t *testing.T) {
	text := spec.Schema()
	require.Equal(t, string(text), string(spec.Schema()))
	require.True(t, json.Valid(text))
	require.Contains(t, string(text), `"$schema": "https://json-schema.org/draft/2020-12/schema"`)
	require.Contains(t, string(text), `"description": "of the sheet (at least 1 mm, at most 30 mm)"`)
}
