package spec

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"reflect"
	"strings"
	"unicode"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// Largest is the most bytes of a model that are read, 1 MiB; a long model has
// a hundredth of it.
const Largest = 1 << 20

// mostFindings is how many faults one reading lists. A file with more is not a
// model that someone is mending line by line.
const mostFindings = 200

// ReadFile reads the model in the file at path, of which it never takes in
// more than Largest bytes and one, be it a file, a pipe or a device. The
// findings name the file by path as given. The error is about the file itself:
// that it cannot be opened or read.
func ReadFile(path string) (Spec, []Finding, error) {
	file, err := os.Open(path)
	if err != nil {
		return Spec{}, nil, err
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, Largest+1))
	if err != nil {
		return Spec{}, nil, err
	}
	model, findings := Read(path, text)
	return model, findings, nil
}

// Read reads the text of a model. It gives all faults at once, in the order of
// their places; file is only their name for it. With any finding the Spec
// holds what could be read and must not be drawn.
//
// What stands in a scalar is taken from its text as written, never through
// YAML's own numbers: 010 is ten, and 0x1F, 1_000 and 1e3 are faults. A size
// without a unit is in the model's units; when those are missing that is the
// one finding about it, and such sizes stay nil.
func Read(file string, text []byte) (Spec, []Finding) {
	d := &decoder{spec: Spec{file: file, where: positions{}}}
	if d.readable(text) {
		text = bytes.TrimPrefix(text, []byte("\ufeff"))
		d.lines = splitLines(text)
		d.document(text)
	}
	Sort(d.findings)
	if len(d.findings) > mostFindings {
		d.findings = d.findings[:mostFindings+1]
		last := &d.findings[mostFindings]
		last.Path, last.Rule = Whole, MoreFaults
		last.Sentence = fmt.Sprintf("there are more than %d faults; mend those above first", mostFindings)
	}
	return d.spec, d.findings
}

// splitLines splits text the way YAML counts lines.
func splitLines(text []byte) []string {
	return strings.Split(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(text)), "\n")
}

// readable tells whether text is small enough and plain text, and finds fault
// with it if not.
func (d *decoder) readable(text []byte) bool {
	if len(text) > Largest {
		d.find(position{}, Whole, TooLarge, fmt.Sprintf("the file has more than %d bytes; a model needs a few thousand", Largest))
		return false
	}
	at := position{1, 1}
	for i := 0; i < len(text); {
		c, size := utf8.DecodeRune(text[i:])
		switch {
		case c == utf8.RuneError && size == 1:
			d.find(at, Whole, NotText, fmt.Sprintf("byte %#02x is not UTF-8; save the file as UTF-8", text[i]))
			return false
		case !plain(c) && !strings.ContainsRune("\t\r\n", c):
			d.find(at, Whole, NotText, fmt.Sprintf("%U is not plain text; remove it", c))
			return false
		}
		i += size
		at.column++
		if c == '\n' || c == '\r' && (i == len(text) || text[i] != '\n') {
			at = position{at.line + 1, 1}
		}
	}
	return true
}

// plain tells whether a character may stand in a text: no control character,
// no line or paragraph separator, nothing that turns the direction of reading.
func plain(c rune) bool {
	return !unicode.In(c, unicode.Cc, unicode.Zl, unicode.Zp, unicode.Bidi_Control)
}

// document reads the one YAML document that text must be.
func (d *decoder) document(text []byte) {
	reader := yaml.NewDecoder(bytes.NewReader(text))
	var document yaml.Node
	switch err := reader.Decode(&document); {
	case errors.Is(err, io.EOF):
		d.empty()
		return
	case err != nil:
		d.syntax(err)
		return
	}
	root := document.Content[0]
	if root.Kind == yaml.ScalarNode && root.ShortTag() == "!!null" {
		d.empty()
	} else {
		d.root(root)
	}
	var second yaml.Node
	switch err := reader.Decode(&second); {
	case errors.Is(err, io.EOF):
	case err != nil:
		d.syntax(err)
	default:
		d.find(d.dashes(place(second.Content[0])), Whole, SecondDocument, "a second document begins; a model is one, so remove the line --- and what follows it")
	}
}

// dashes is the place of the nearest line of three dashes that is not after at;
// at itself when there is none, kept within the text.
func (d *decoder) dashes(at position) position {
	for line := min(at.line, len(d.lines)); line > 0; line-- {
		if strings.HasPrefix(d.lines[line-1], "---") {
			return position{line, 1}
		}
	}
	return position{min(at.line, len(d.lines)), at.column}
}

func (d *decoder) empty() {
	d.find(position{}, Whole, EmptyFile, "the file is empty; a model begins with job and units")
}

// root reads the top group. The units come first, since sizes need them.
func (d *decoder) root(node *yaml.Node) {
	d.where(Whole, node)
	model := reflect.ValueOf(&d.spec).Elem()
	if node.Kind != yaml.MappingNode {
		if d.sound(node, Whole) {
			d.find(place(node), Whole, WrongKind, "the model must be a group of keys, each with a colon and a value; it is "+kindOf(node))
		}
		return
	}
	units, _ := fieldNamed(fieldsOf(model.Type()), "units")
	for i := 0; i+1 < len(node.Content); i += 2 {
		if node.Content[i].Value != units.key {
			continue
		}
		if unit, known := unitNamed(node.Content[i+1].Value); known {
			d.unit = &unit
		}
		break
	}
	d.group(node, node, model, Whole)
}
