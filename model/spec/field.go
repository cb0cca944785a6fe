package spec

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"stilewright/model/length"
)

// A field is what the tags of one struct field say; reader and schema both
// follow it. The tags:
//
//	key     the key in the file
//	doc     its meaning, one line
//	need    "yes": it cannot be left out of its group
//	one     a single value may stand for the group: "all" fills every field
//	        of it, any other word names the field that is meant
//	choice  the words to choose from
//	form    what a text is: date; or a word that package door looks up
//	least, above, most   limits of a size in millimetres
//	range   limits of a whole number, both included
//	count   limits of the number of items of a list, both included
//
// What else stands at a list is meant for each of its items.
type field struct {
	index              int
	typ                reflect.Type
	key, doc, one      string
	form               string
	need               bool
	choices            []string
	least, above, most *length.Length
	low, high          int // of range; 0 and 0 when there is none
	fewest, mostItems  int // of count
}

// The types a field may have beside string, int, groups, and lists of these.
var (
	sizeType    = reflect.TypeFor[*length.Length]()
	unitType    = reflect.TypeFor[Unit]()
	overlapType = reflect.TypeFor[Overlap]()
	sightType   = reflect.TypeFor[Sight]()
)

// fieldsOf lists the fields of a group in the order they are declared in.
func fieldsOf(group reflect.Type) []field {
	var fields []field
	for i := range group.NumField() {
		if tagged := group.Field(i); tagged.IsExported() {
			fields = append(fields, newField(i, tagged))
		}
	}
	return fields
}

// newField reads the tags of one struct field. A tag that cannot be read is a
// bug of ours; TestTags walks them all.
func newField(index int, tagged reflect.StructField) field {
	tag := tagged.Tag
	f := field{
		index: index, typ: tagged.Type,
		key: tag.Get("key"), doc: tag.Get("doc"), one: tag.Get("one"), form: tag.Get("form"),
		need: tag.Get("need") == "yes", choices: strings.Fields(tag.Get("choice")),
		least: limit(tag.Get("least")), above: limit(tag.Get("above")), most: limit(tag.Get("most")),
	}
	f.low, f.high = span(tag.Get("range"))
	f.fewest, f.mostItems = span(tag.Get("count"))
	return f
}

// span are the two whole numbers of a tag, 0 and 0 for an empty one.
func span(tag string) (low, high int) {
	if tag == "" {
		return 0, 0
	}
	if _, err := fmt.Sscanf(tag, "%d %d", &low, &high); err != nil {
		panic(fmt.Sprintf("tag %q: %v", tag, err))
	}
	return low, high
}

// isList tells whether the field holds a list, and what each item is.
func (f field) isList() (item field, list bool) {
	if f.typ.Kind() != reflect.Slice {
		return field{}, false
	}
	item = f
	item.typ = f.typ.Elem()
	return item, true
}

// limit is the size a tag gives in millimetres, nil for an empty one.
func limit(tag string) *length.Length {
	if tag == "" {
		return nil
	}
	size, err := length.Parse(tag, length.Millimetres)
	if err != nil {
		panic(err)
	}
	return &size
}

// isGroup tells whether the field holds a group of keys, and of which type.
func (f field) isGroup() (reflect.Type, bool) {
	group := f.typ
	if group.Kind() == reflect.Pointer {
		group = group.Elem()
	}
	return group, group.Kind() == reflect.Struct && f.typ != unitType && f.typ != overlapType && f.typ != sightType
}

// keysOf lists the keys of fields.
func keysOf(fields []field) []string {
	var keys []string
	for _, f := range fields {
		keys = append(keys, f.key)
	}
	return keys
}

// fieldNamed is the field with that key.
func fieldNamed(fields []field, key string) (field, bool) {
	for _, f := range fields {
		if f.key == key {
			return f, true
		}
	}
	return field{}, false
}

// single is the field that one value standing for the group is read as.
func (f field) single(fields []field) (field, bool) {
	if f.one == "all" {
		return fields[0], true
	}
	return fieldNamed(fields, f.one)
}

// wanted says what kind of value the field takes.
func (f field) wanted() string {
	group, isGroup := f.isGroup()
	item, list := f.isList()
	switch {
	case isGroup:
		fields := fieldsOf(group)
		text := "a group of keys (" + strings.Join(keysOf(fields), ", ") + ")"
		if one, has := f.single(fields); has {
			text += " or " + one.wanted()
		}
		return text
	case f.typ == sizeType:
		return "a size"
	case f.typ == overlapType:
		return "a size or the word “stile”"
	case f.typ == sightType:
		return "a size or the word “rest”"
	case list && len(f.choices) > 0:
		return "a list of words (" + strings.Join(f.choices, ", ") + ")"
	case list:
		return "a list, each item " + item.wanted()
	case f.typ.Kind() == reflect.Int:
		return "a whole number from " + spanWords(f.low, f.high)
	case len(f.choices) == 1:
		return "the word “" + f.choices[0] + "”"
	case len(f.choices) > 0:
		return "one of " + strings.Join(f.choices, ", ")
	}
	return "a text"
}

// spanWords is "1 to 20".
func spanWords(low, high int) string { return strconv.Itoa(low) + " to " + strconv.Itoa(high) }

// allows tells whether a size is within the limits.
func (f field) allows(size length.Length) bool {
	return (f.least == nil || size >= *f.least) &&
		(f.above == nil || size > *f.above) &&
		(f.most == nil || size <= *f.most)
}

// limits says in the unit which sizes are within the limits. The figures are
// rounded inwards to the finest tick of a tape, so that each of them works.
func (f field) limits(unit length.Unit) string {
	style := length.Style{Unit: unit, Mark: true}
	tick := length.Inch / 64
	if unit == length.Millimetres {
		tick = length.Millimetre / 10
	}
	var parts []string
	switch {
	case f.least != nil:
		parts = append(parts, "at least "+style.Format(f.least.UpTo(tick)))
	case f.above != nil:
		parts = append(parts, "more than "+style.Format(f.above.UpTo(tick)))
	}
	if f.most != nil {
		parts = append(parts, "at most "+style.Format(f.most.DownTo(tick)))
	}
	return strings.Join(parts, " and ")
}
