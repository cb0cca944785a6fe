package spec

import (
	"encoding/json"
	"reflect"
	"strings"
)

// sizePattern is what the text of a size looks like from afar: an optional
// sign, a digit, point or fraction character, then whatever lengths are
// written with. Every text Read takes fits it; Read itself is stricter.
const sizePattern = `^\s*[-+−]?\s*[0-9.½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞][-0-9. /⁄½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞'"′″’”a-zA-Z\s]*$`

// Schema is the JSON Schema (2020-12) of a model, for editors that complete
// and check YAML as it is typed. It is made from the same tags as the reader,
// always the same bytes, and never refuses what Read takes. It is laxer than
// Read where a schema cannot tell: the text of a size, its limits in another
// unit, the calendar.
func Schema() []byte {
	schema := groupSchema(reflect.TypeFor[Spec]())
	schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	schema["title"] = "model of framed sliding doors"
	text, err := json.MarshalIndent(schema, "", "  ")
	if err != nil {
		panic(err) // maps of texts and numbers always marshal
	}
	return append(text, '\n')
}

// groupSchema is the schema of a group of keys.
func groupSchema(group reflect.Type) map[string]any {
	properties, needed := map[string]any{}, []string{}
	for _, f := range fieldsOf(group) {
		property := f.schema()
		property["description"] = f.description()
		properties[f.key] = property
		if f.need {
			needed = append(needed, f.key)
		}
	}
	schema := map[string]any{"type": "object", "properties": properties, "additionalProperties": false}
	if len(needed) > 0 {
		schema["required"] = needed
	}
	return schema
}

// schema is the schema of one field's value.
func (f field) schema() map[string]any {
	group, isGroup := f.isGroup()
	item, list := f.isList()
	switch {
	case isGroup:
		schema := groupSchema(group)
		if one, has := f.single(fieldsOf(group)); has {
			return map[string]any{"anyOf": []any{one.schema(), schema}}
		}
		return schema
	case f.typ == sizeType:
		return f.sizeSchema()
	case f.typ == overlapType:
		return map[string]any{"anyOf": []any{map[string]any{"const": "stile"}, f.sizeSchema()}}
	case f.typ == sightType:
		return map[string]any{"anyOf": []any{map[string]any{"const": "rest"}, f.sizeSchema()}}
	case list:
		return map[string]any{"type": "array", "items": item.schema(), "minItems": f.fewest, "maxItems": f.mostItems}
	case f.typ.Kind() == reflect.Int:
		return map[string]any{"type": "integer", "minimum": f.low, "maximum": f.high}
	case len(f.choices) > 0:
		return map[string]any{"enum": f.choices}
	case f.form == "date":
		return map[string]any{"type": "string", "format": "date", "pattern": `^\d{4}-\d{2}-\d{2}$`}
	}
	return map[string]any{"type": []string{"string", "number"}, "minLength": 1, "maxLength": longestText}
}

// sizeSchema is the schema of a size. Of its limits only a 0 is the same in
// every unit; the description tells the others.
func (f field) sizeSchema() map[string]any {
	schema := map[string]any{"type": []string{"string", "number"}, "pattern": sizePattern}
	switch {
	case f.least != nil && *f.least == 0:
		schema["minimum"] = 0
	case f.above != nil && *f.above == 0:
		schema["exclusiveMinimum"] = 0
	}
	return schema
}

// description is the field's meaning, with the limits of a size.
func (f field) description() string {
	var limits []string
	switch {
	case f.least != nil:
		limits = append(limits, "at least "+f.least.Decimal()+" mm")
	case f.above != nil:
		limits = append(limits, "more than "+f.above.Decimal()+" mm")
	}
	if f.most != nil {
		limits = append(limits, "at most "+f.most.Decimal()+" mm")
	}
	if limits == nil {
		return f.doc
	}
	return f.doc + " (" + strings.Join(limits, ", ") + ")"
}
