package spec

import (
	"bytes"
	"errors"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// lookBack is how many bytes are parsed again to tell the faulty line of text
// that is not YAML: every prefix of a model of 60 lines takes 60 kB.
const lookBack = 4 << 20

// syntax turns the YAML library's error into a finding with the line that is
// at fault. The library's own line is that of the group the fault is in, or
// missing, so it is only taken when the text is too large to look back.
func (d *decoder) syntax(err error) {
	message, line := splitError(err)
	if good, told := d.lastGood(); told {
		line = good + 1
	}
	line = min(max(line, 1), len(d.lines))
	text := d.lines[line-1]
	indent := text[:len(text)-len(strings.TrimLeft(text, " \t"))]
	if tab := strings.IndexByte(indent, '\t'); tab >= 0 {
		d.find(position{line, tab + 1}, Whole, TabIndent, "this line is indented with a tab; indent with spaces")
		return
	}
	fault := faultOf(message)
	column := len(indent)
	if fault.mark != nil {
		if spot := fault.mark.FindStringSubmatchIndex(text[len(indent):]); spot != nil {
			column += spot[2]
		}
	}
	at := position{line, utf8.RuneCountInString(text[:column]) + 1}
	d.find(at, Whole, fault.rule, fault.sentence)
}

// lastGood is the number of lines that are sound YAML by themselves, so that
// the fault is in the line after them. It is not told for large files.
func (d *decoder) lastGood() (int, bool) {
	budget := lookBack
	for n := len(d.lines) - 1; n > 0; n-- {
		prefix := strings.Join(d.lines[:n], "\n") + "\n"
		if budget -= len(prefix); budget < 0 {
			return 0, false
		}
		if parses(prefix) {
			return n, true
		}
	}
	return 0, true
}

// parses tells whether all documents of text are YAML.
func parses(text string) bool {
	reader := yaml.NewDecoder(bytes.NewReader([]byte(text)))
	for {
		var document yaml.Node
		if err := reader.Decode(&document); err != nil {
			return errors.Is(err, io.EOF)
		}
	}
}

var errorText = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

// splitError is the library's message and its line, 0 when it gives none.
func splitError(err error) (string, int) {
	parts := errorText.FindStringSubmatch(err.Error())
	if parts == nil {
		return err.Error(), 0
	}
	line, _ := strconv.Atoi(parts[1]) // none: 0
	return parts[2], line
}

// A syntaxFault is one of the library's messages in plain words.
type syntaxFault struct {
	message  string         // part of the library's
	mark     *regexp.Regexp // whose group is the place in the line, indent cut off; else its start
	rule     string
	sentence string
}

// syntaxFaults are the messages that common slips give; the first match counts.
var syntaxFaults = []syntaxFault{
	{"exceeded max depth", nil, TooDeep, "brackets or indents lie too deep within one another; a model needs five levels"},
	{"unknown anchor", regexp.MustCompile(`(\*)`), Alias, "an alias (*) stands for another value, which is not read; write the value out"},
	{"mapping values are not allowed", regexp.MustCompile(`:\s.*?(:)(?:\s|$)`), NotYAML, "a colon too many, or an indent that does not fit the line above: put a text with a colon in quotes, and begin all keys of a group in one column"},
	{"cannot start any token", regexp.MustCompile("(?:^|[:\\-,\\[{] *)([%@`])"), NotYAML, "a value cannot begin with this character; put it in quotes"},
	{"expected ',' or ']'", regexp.MustCompile(`(\[)`), NotYAML, "the list that opens with [ here is not closed with ], or a comma is missing in it"},
	{"expected ',' or '}'", regexp.MustCompile(`(\{)`), NotYAML, "the group that opens with { here is not closed with }, or a comma is missing in it"},
	{"unexpected end of stream", regexp.MustCompile(`(['"])`), NotYAML, `a quotation mark opens here and is not closed; a size needs none: 59 7/8"`},
	{"could not find expected ':'", nil, NotYAML, "a key needs a colon and a value, as in width: 60"},
	{"expected '-' indicator", nil, NotYAML, "a key cannot stand among the items of a list; indent it, or begin it with -"},
	{"did not find expected key", nil, NotYAML, "this does not fit what stands above it; begin all keys of a group in one column, and put a text that begins with a quotation mark in quotes as a whole"},
	{"block sequence entries are not allowed", regexp.MustCompile(`(?:^|\s)(-)\s`), NotYAML, "a list written with - begins on a line of its own; on this line write it as [a, b]"},
	{"unknown escape character", regexp.MustCompile(`(\\)`), NotYAML, `a backslash in "…" is not plain text; use '…' instead`},
	{"expected node content", nil, NotYAML, "a value is missing, or there is a bracket or comma too many"},
}

// faultOf is the fault in plain words that a message of the library tells of.
func faultOf(message string) syntaxFault {
	for _, fault := range syntaxFaults {
		if strings.Contains(message, fault.message) {
			return fault
		}
	}
	return syntaxFault{rule: NotYAML, sentence: "this is not YAML: " + message}
}
