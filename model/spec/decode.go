package spec

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"stilewright/model/length"
)

// A decoder fills a Spec from YAML nodes, led by the fields' tags, and
// collects the faults.
type decoder struct {
	spec     Spec
	unit     *length.Unit // of bare numbers; nil when the model does not say
	lines    []string     // of the text, for places inside a value
	findings []Finding
}

// find adds a finding, unless there are more than enough.
func (d *decoder) find(at position, path, rule, sentence string) {
	if !d.full() {
		d.findings = append(d.findings, Finding{
			File: d.spec.file, Line: at.line, Column: at.column,
			Path: path, Rule: rule, Severity: Stops, Sentence: sentence,
		})
	}
}

func (d *decoder) full() bool { return len(d.findings) > mostFindings }

// where notes where the value at path stands.
func (d *decoder) where(path string, node *yaml.Node) { d.spec.where[path] = place(node) }

func place(node *yaml.Node) position { return position{node.Line, node.Column} }

// join is the path of a key in the group at path.
func join(path, key string) string {
	if path == Whole {
		return key
	}
	return path + "." + key
}

// named is a group's name in a sentence.
func named(path string) string {
	if path == Whole {
		return "the model"
	}
	return path
}

// sound tells whether a node is one a model may have: written out, without a
// type tag, and not nothing.
func (d *decoder) sound(node *yaml.Node, path string) bool {
	switch {
	case node.Kind == yaml.AliasNode:
		d.find(place(node), path, Alias, shown("*"+node.Value)+" stands for another value, which is not read; write the value out")
		return false
	case node.Anchor != "":
		d.find(place(node), path, Alias, shown("&"+node.Anchor)+" names a value for use elsewhere, which is not read; remove the name")
		return false
	case node.Style&yaml.TaggedStyle != 0:
		d.find(place(node), path, TypeTag, "the type tag "+shown(node.Tag)+" is not read; remove it")
		return false
	case node.Kind == yaml.ScalarNode && node.Tag == "!!null":
		d.find(place(node), path, NoValue, named(path)+" has no value; give it one or leave the key out")
		return false
	}
	return true
}

// kindOf says what a node is.
func kindOf(node *yaml.Node) string {
	switch {
	case node.Kind == yaml.MappingNode:
		return "a group of keys"
	case node.Kind == yaml.SequenceNode:
		return "a list"
	case node.Tag == "!!bool":
		return "“" + node.Value + "”, which YAML reads as yes or no"
	}
	return shown(node.Value)
}

// shown is a value in quotes, as oneLine gives it.
func shown(value string) string { return "“" + oneLine(value) + "”" }

// oneLine is a value cut when it is long, with everything escaped that does
// not print.
func oneLine(value string) string {
	if runes := []rune(value); len(runes) > longestWord {
		value = string(runes[:longestWord]) + "…"
	}
	quoted := strconv.Quote(value)
	return strings.ReplaceAll(quoted[1:len(quoted)-1], `\"`, `"`)
}

func (d *decoder) wrongKind(node *yaml.Node, f field, path string) {
	d.find(place(node), path, WrongKind, path+" must be "+f.wanted()+"; it is "+kindOf(node))
}

// value reads one node into the struct field it belongs to.
func (d *decoder) value(key, node *yaml.Node, f field, into reflect.Value, path string) {
	d.where(path, node)
	if !d.sound(node, path) {
		return
	}
	if group, isGroup := f.isGroup(); isGroup {
		d.groupOrSingle(key, node, f, group, into, path)
		return
	}
	if item, list := f.isList(); list {
		d.list(node, f, item, into, path)
		return
	}
	if node.Kind != yaml.ScalarNode || node.Tag == "!!bool" {
		d.wrongKind(node, f, path)
		return
	}
	switch {
	case f.typ == sizeType:
		if size := d.size(node, f, path); size != nil {
			into.Set(reflect.ValueOf(size))
		}
	case f.typ == unitType:
		d.unitWord(node, f, into, path)
	case f.typ == overlapType:
		d.overlap(node, f, into, path)
	case f.typ == sightType:
		d.sight(node, f, into, path)
	case f.typ.Kind() == reflect.Int:
		d.whole(node, f, into, path)
	case f.typ.Kind() == reflect.String:
		d.text(node, f, into, path)
	default:
		panic("no reader for " + f.typ.String())
	}
}

// groupOrSingle reads a group of keys, or the single value that stands for it.
func (d *decoder) groupOrSingle(key, node *yaml.Node, f field, group reflect.Type, into reflect.Value, path string) {
	fields := fieldsOf(group)
	one, has := f.single(fields)
	switch {
	case node.Kind == yaml.MappingNode:
		if f.typ.Kind() == reflect.Pointer {
			into.Set(reflect.New(group))
			into = into.Elem()
		}
		d.group(key, node, into, path)
	case node.Kind != yaml.ScalarNode || !has || node.Tag == "!!bool":
		d.wrongKind(node, f, path)
	case f.one != "all":
		d.value(key, node, one, into.Field(one.index), path)
	default:
		for size, i := d.size(node, one, path), 0; size != nil && i < len(fields); i++ {
			each := *size
			into.Field(fields[i].index).Set(reflect.ValueOf(&each))
		}
	}
}

// group reads a mapping into a struct; key is where a missing key is missed.
func (d *decoder) group(key, node *yaml.Node, into reflect.Value, path string) {
	fields := fieldsOf(into.Type())
	lines := map[string]int{} // of the keys read so far
	for i := 0; i+1 < len(node.Content) && !d.full(); i += 2 {
		name, value := node.Content[i], node.Content[i+1]
		if !d.isKey(name, path) {
			continue
		}
		f, known := fieldNamed(fields, name.Value)
		first, twice := lines[name.Value]
		switch {
		case twice:
			at := join(path, oneLine(name.Value))
			d.find(place(name), at, KeyTwice, fmt.Sprintf("%s is written twice, first in line %d; keep one", at, first))
		case !known:
			d.unknownKey(name, keysOf(fields), path)
		default:
			d.value(name, value, f, into.Field(f.index), join(path, f.key))
		}
		lines[name.Value] = name.Line
	}
	for _, f := range fields {
		if _, written := lines[f.key]; f.need && !written {
			d.find(place(key), join(path, f.key), MissingKey, named(path)+" needs the key “"+f.key+"”: "+f.doc)
		}
	}
}

// isKey tells whether a node can be a key, and finds fault with it if not.
func (d *decoder) isKey(name *yaml.Node, path string) bool {
	switch {
	case name.Kind == yaml.ScalarNode && name.Tag == "!!merge":
		d.find(place(name), path, Alias, "“<<” merges another group into this one, which is not read; write its keys out")
	case name.Kind == yaml.ScalarNode && name.Value == "":
		d.find(place(name), path, WrongKind, "a key of "+named(path)+" is missing before its colon")
	case name.Kind != yaml.ScalarNode && name.Kind != yaml.AliasNode || name.Tag == "!!null":
		d.find(place(name), path, WrongKind, "a key of "+named(path)+" must be a word; it is "+kindOf(name))
	default:
		return d.sound(name, path)
	}
	return false
}

// list reads a list.
func (d *decoder) list(node *yaml.Node, f, item field, into reflect.Value, path string) {
	if node.Kind != yaml.SequenceNode {
		d.wrongKind(node, f, path)
		return
	}
	if count := len(node.Content); count < f.fewest || count > f.mostItems {
		d.find(place(node), path, WrongCount, fmt.Sprintf("%s has %d items; it must have %s", path, count, spanWords(f.fewest, f.mostItems)))
	}
	for i, value := range node.Content {
		if d.full() {
			return
		}
		one := reflect.New(item.typ).Elem()
		d.value(value, value, item, one, fmt.Sprintf("%s[%d]", path, i+1))
		into.Set(reflect.Append(into, one))
	}
}
