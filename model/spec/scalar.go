package spec

import (
	"errors"
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"stilewright/model/length"
)

// longestText is the most characters a text may have: a title block has room
// for about a third of it.
const longestText = 200

// unitNamed is the unit with that name in a model file.
func unitNamed(word string) (length.Unit, bool) {
	for _, unit := range []length.Unit{length.Millimetres, length.Inches} {
		if unit.String() == word {
			return unit, true
		}
	}
	return 0, false
}

// size reads a length within the field's limits. Nil means that there is none:
// it is faulty, or needs the model's units and they are missing.
func (d *decoder) size(node *yaml.Node, f field, path string) *length.Length {
	unit := length.Inches
	if d.unit != nil {
		unit = *d.unit
	}
	size, err := length.Parse(node.Value, unit)
	if err != nil {
		d.badSize(node, path, err)
		return nil
	}
	if d.unit == nil {
		if other, _ := length.Parse(node.Value, length.Millimetres); other != size {
			return nil
		}
	}
	if !f.allows(size) {
		d.find(place(node), path, OutOfRange, path+" is "+figure(size, unit)+"; it must be "+f.limits(unit))
		return nil
	}
	return &size
}

// badSize finds fault with a size, at the faulty character if it can be told.
func (d *decoder) badSize(node *yaml.Node, path string, err error) {
	at := place(node)
	var fault *length.ParseError
	if errors.As(err, &fault) && d.standsAt(at, node.Value) {
		at.column += utf8.RuneCountInString(node.Value[:fault.Offset])
	}
	d.find(at, path, BadSize, path+": "+err.Error())
}

// standsAt tells whether the text stands literally at that place, on one line.
func (d *decoder) standsAt(at position, text string) bool {
	if at.line < 1 || at.line > len(d.lines) {
		return false
	}
	line := []rune(d.lines[at.line-1])
	return at.column <= len(line) && strings.HasPrefix(string(line[at.column-1:]), text)
}

// figure is a size as a drawing has it, or exactly where that would round.
func figure(size length.Length, unit length.Unit) string {
	text := length.Style{Unit: unit, Mark: true}.Format(size)
	switch {
	case !strings.HasPrefix(text, "≈"):
		return text
	case unit == length.Inches:
		return length.FormatDecimalInch(size, 6) + `"`
	}
	return size.Decimal() + " mm"
}

func (d *decoder) unitWord(node *yaml.Node, f field, into reflect.Value, path string) {
	if unit, known := unitNamed(node.Value); known {
		into.Set(reflect.ValueOf(Unit{Unit: unit, Written: true}))
		return
	}
	d.unknownWord(node, f.choices, path)
}

func (d *decoder) overlap(node *yaml.Node, f field, into reflect.Value, path string) {
	size, stile := d.sizeOr("stile", node, f, path)
	into.Set(reflect.ValueOf(Overlap{size, stile}))
}

func (d *decoder) sight(node *yaml.Node, f field, into reflect.Value, path string) {
	size, rest := d.sizeOr("rest", node, f, path)
	into.Set(reflect.ValueOf(Sight{size, rest}))
}

// sizeOr reads a size, or tells that the word stands in its place.
func (d *decoder) sizeOr(word string, node *yaml.Node, f field, path string) (size *length.Length, stands bool) {
	switch {
	case node.Value == word:
		return nil, true
	case nearestWord(node.Value, []string{word}) != "":
		d.unknownWord(node, []string{word}, path)
		return nil, false
	}
	return d.size(node, f, path), false
}

// whole reads a whole number in plain decimal digits.
func (d *decoder) whole(node *yaml.Node, f field, into reflect.Value, path string) {
	digits := strings.TrimPrefix(node.Value, "-")
	if strings.Trim(digits, "0123456789") != "" || digits == "" {
		d.find(place(node), path, BadNumber, path+" is "+shown(node.Value)+"; it must be "+f.wanted()+", in plain digits")
		return
	}
	number, err := strconv.Atoi(node.Value)
	if err != nil || number < f.low || number > f.high { // err: beyond what an int holds
		d.find(place(node), path, OutOfRange, path+" is "+oneLine(node.Value)+"; it must be "+f.wanted())
		return
	}
	into.SetInt(int64(number))
}

// text reads one line of plain text, a word to choose, or a date.
func (d *decoder) text(node *yaml.Node, f field, into reflect.Value, path string) {
	text := node.Value
	if len(f.choices) > 0 {
		for _, choice := range f.choices {
			if text == choice {
				into.SetString(text)
				return
			}
		}
		d.unknownWord(node, f.choices, path)
		return
	}
	if fault := textFault(text); fault != "" {
		d.find(place(node), path, BadText, path+" "+fault)
		return
	}
	if f.form == "date" {
		if _, err := time.Parse(time.DateOnly, text); err != nil {
			d.find(place(node), path, BadDate, path+" is "+shown(text)+"; it must be a day of the calendar, written like 2026-03-14")
			return
		}
	}
	into.SetString(text)
}

// textFault says what is wrong with a text; "" when nothing is.
func textFault(text string) string {
	count := utf8.RuneCountInString(text)
	switch {
	case strings.TrimSpace(text) == "":
		return "is empty; give it a text or leave the key out"
	case count > longestText:
		return fmt.Sprintf("has %d characters; it may have at most %d", count, longestText)
	case !utf8.ValidString(text) || strings.ContainsFunc(text, func(c rune) bool { return !plain(c) }):
		return "holds a line break or another control character; it must be one plain line"
	}
	return ""
}

// unknownWord finds fault with a word that is not among the choices.
func (d *decoder) unknownWord(node *yaml.Node, choices []string, path string) {
	advice := "it must be one of " + strings.Join(choices, ", ")
	if near := nearestWord(node.Value, choices); near != "" {
		advice = "did you mean “" + near + "”?"
	} else if len(choices) == 1 {
		advice = "it must be “" + choices[0] + "”"
	}
	d.find(place(node), path, UnknownWord, path+" is "+shown(node.Value)+"; "+advice)
}

// unknownKey finds fault with a key that means nothing in the group at path.
func (d *decoder) unknownKey(name *yaml.Node, known []string, path string) {
	advice := "its keys are " + strings.Join(known, ", ")
	if near := nearestWord(name.Value, known); near != "" {
		advice = "did you mean “" + near + "”?"
	} else if homes := homesOf(name.Value, reflect.TypeFor[Spec](), Whole); len(homes) > 0 {
		advice = "it belongs under " + strings.Join(homes, " or ")
	}
	d.find(place(name), join(path, oneLine(name.Value)), UnknownKey, named(path)+" has no key "+shown(name.Value)+"; "+advice)
}

// homesOf lists the groups that have the key, in the order of the model.
func homesOf(key string, group reflect.Type, path string) []string {
	var homes []string
	for _, f := range fieldsOf(group) {
		if f.key == key {
			homes = append(homes, named(path))
		}
		if item, list := f.isList(); list {
			f = item
		}
		if inner, isGroup := f.isGroup(); isGroup {
			homes = append(homes, homesOf(key, inner, join(path, f.key))...)
		}
	}
	return homes
}
