package spec_test

import (
	"flag"
	"math/rand/v2"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"stilewright/model/spec"
)

var seed = flag.Uint64("seed", 1, "seed of the random tests")

// needed is the shortest good model, one line for each key.
var needed = []string{
	"job: j",
	"units: inch",
	"opening: {width: 60, height: 80}",
	"hanging: {style: bypass, tracks: [back, front]}",
	"leaf: {}",
	"panel: {material: acrylic, thickness: 1/8}",
}

// completed is a part of a model with what else is needed behind it, so that
// the part keeps its lines.
func completed(part string) string {
	text := part + "\n"
	for _, line := range needed {
		key, _, _ := strings.Cut(line, ":")
		if !regexp.MustCompile(`(?m)^` + key + `:`).MatchString(part) {
			text += line + "\n"
		}
	}
	return text
}

// texts are the findings as text without the file's name, one a line.
func texts(findings []spec.Finding) string {
	var all []string
	for _, found := range findings {
		all = append(all, found.String())
	}
	return strings.Join(all, "\n")
}

func rulesOf(findings []spec.Finding) (rules []string) {
	for _, found := range findings {
		rules = append(rules, found.Rule)
	}
	return rules
}

type faulty struct{ rule, text, want string }

// faults are parts of a model, each with its whole list of findings.
var faults = []faulty{
	{spec.UnknownKey, "papre: A4", `1:1: unknown-key: the model has no key “papre”; did you mean “paper”?`},
	{spec.UnknownKey, "Units: inch\nunits: inch", `1:1: unknown-key: the model has no key “Units”; did you mean “units”?`},
	{spec.UnknownKey, "leaf: {floor_gap: 3/8}", `1:8: unknown-key: leaf has no key “floor_gap”; it belongs under hanging`},
	{spec.UnknownKey, "leaf: {gauge: 8}", `1:8: unknown-key: leaf has no key “gauge”; it belongs under hanging.fixing.screw or hanging.hangers.screw or panel.held_by.screw`},
	{spec.UnknownKey, "stock: {colour: red}", `1:9: unknown-key: stock has no key “colour”; its keys are species, grain, board, season, plane, rip, also, lengths, offcuts, boards, kerf, trim, allowance, keep, sheet, film, finish`},
	{spec.KeyTwice, "paper: A4\npaper: A3", `2:1: key-twice: paper is written twice, first in line 1; keep one`},
	{spec.KeyTwice, "\"a\\nb\": 1\n\"a\\nb\": 1", "1:1: unknown-key: the model has no key “a\\nb”; its keys are job, drawn, by, revision, units, figures, paper, opening, hanging, leaf, panel, stock, seasons, shop\n" +
		"2:1: key-twice: a\\nb is written twice, first in line 1; keep one"},
	{spec.KeyTwice, "leaf:\n  stile: 4\n  stile: 5", `3:3: key-twice: leaf.stile is written twice, first in line 2; keep one`},
	{spec.MissingKey, "opening: {width: 60}", `1:1: missing-key: opening needs the key “height”: clear height from floor to head at three places, or one size for all`},
	{spec.MissingKey, "leaf:\n  joint: {}", `2:3: missing-key: leaf.joint needs the key “kind”: pocket-screw: screws from the back of the rail into the stile; dowel; loose-tenon: a tenon of its own in mortises of both; mortise-and-tenon; half-lap: each half as thick; bridle: an open mortise and tenon`},
	{spec.MissingKey, "opening: {height: 80, width: {top: 60}}", `1:23: missing-key: opening.width needs the key “bottom”: at the floor`},
	{spec.NoValue, "paper:", `1:7: no-value: paper has no value; give it one or leave the key out`},
	{spec.NoValue, "leaf: {stile: ~}", `1:15: no-value: leaf.stile has no value; give it one or leave the key out`},
	{spec.NoValue, "leaf: {stile: null}", `1:15: no-value: leaf.stile has no value; give it one or leave the key out`},
	{spec.NoValue, "leaf:", `1:6: no-value: leaf has no value; give it one or leave the key out`},
	{spec.WrongKind, "leaf: [4]", `1:7: wrong-kind: leaf must be a group of keys (width, height, thickness, stile, rail, crosses, muntin, lites, joint, edges, pull, guide); it is a list`},
	{spec.WrongKind, "leaf: {rail: [4]}", `1:14: wrong-kind: leaf.rail must be a group of keys (top, cross, bottom) or a size; it is a list`},
	{spec.WrongKind, "leaf: {stile: {top: 4}}", `1:15: wrong-kind: leaf.stile must be a size; it is a group of keys`},
	{spec.WrongKind, "leaf: {stile: true}", `1:15: wrong-kind: leaf.stile must be a size; it is “true”, which YAML reads as yes or no`},
	{spec.WrongKind, "by: false", `1:5: wrong-kind: by must be a text; it is “false”, which YAML reads as yes or no`},
	{spec.WrongKind, "leaf: {edges: {edge: sight}}", `1:15: wrong-kind: leaf.edges must be a list, each item a group of keys (edge, face, shape, size, stop); it is a group of keys`},
	{spec.WrongKind, "panel: {material: acrylic, thickness: 1/8, corner: [clipped]}", `1:52: wrong-kind: panel.corner must be a group of keys (kind, leg, radius, tool, into) or one of clipped, squared, rounded, dogbone, t-bone; it is a list`},
	{spec.WrongKind, "hanging: {style: bypass, tracks: back}", `1:34: wrong-kind: hanging.tracks must be a list of words (front, back); it is “back”`},
	{spec.WrongKind, "hanging: {style: bypass, tracks: [back, [front]]}", `1:41: wrong-kind: hanging.tracks[2] must be one of front, back; it is a list`},
	{spec.WrongKind, "leaf: {[a]: 4}", `1:8: wrong-kind: a key of leaf must be a word; it is a list`},
	{spec.WrongKind, "leaf: {? : 4}", `1:10: wrong-kind: a key of leaf is missing before its colon`},
	{spec.WrongKind, "'': 4", `1:1: wrong-kind: a key of the model is missing before its colon`},
	{spec.WrongKind, "leaf: {~: 4}", `1:8: wrong-kind: a key of leaf must be a word; it is “~”`},
	{spec.WrongCount, "hanging: {style: bypass, tracks: [back]}", `1:34: wrong-count: hanging.tracks has 1 items; it must have 2 to 4`},
	{spec.BadSize, "leaf: {stile: 4 1//2}", `1:19: bad-size: leaf.stile: “4 1//2” is not a length: the bottom of the fraction is missing; write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, `leaf: {stile: "4 1//2"}`, `1:15: bad-size: leaf.stile: “4 1//2” is not a length: the bottom of the fraction is missing; write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, "leaf: {stile: 0x1F}", `1:16: bad-size: leaf.stile: “0x1F” is not a length: “x” is not a unit (in, ft, mm, cm, m); write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, "leaf: {stile: 1_000}", `1:16: bad-size: leaf.stile: “1_000” is not a length: an underscore is not read; write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, "leaf: {stile: 1e3}", `1:16: bad-size: leaf.stile: “1e3” is not a length: a power of ten is not read; write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, "leaf: {stile: 0o17}", `1:16: bad-size: leaf.stile: “0o17” is not a length: “o” is not a unit (in, ft, mm, cm, m); write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, "leaf: {stile: .nan}", `1:16: bad-size: leaf.stile: “.nan” is not a length: digits are missing after the point; write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, "leaf: {stile: -.inf}", `1:17: bad-size: leaf.stile: “-.inf” is not a length: digits are missing after the point; write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, "leaf: {stile: yes}", `1:15: bad-size: leaf.stile: “yes” is not a length: a number is missing before “yes”; write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, "leaf: {stile: ''}", `1:15: bad-size: leaf.stile: “” is not a length: it is empty; write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadSize, "hanging: {style: bypass, tracks: [back, front], overlap: half}", `1:58: bad-size: hanging.overlap: “half” is not a length: a number is missing before “half”; write it like 59 7/8, 59.875 in or 1520 mm`},
	{spec.BadNumber, "leaf: {lites: {rows: three}}", `1:22: bad-number: leaf.lites.rows is “three”; it must be a whole number from 1 to 20, in plain digits`},
	{spec.BadNumber, "leaf: {lites: {rows: 3.0}}", `1:22: bad-number: leaf.lites.rows is “3.0”; it must be a whole number from 1 to 20, in plain digits`},
	{spec.BadNumber, "leaf: {lites: {rows: 0x3}}", `1:22: bad-number: leaf.lites.rows is “0x3”; it must be a whole number from 1 to 20, in plain digits`},
	{spec.BadNumber, "leaf: {lites: {rows: 1_0}}", `1:22: bad-number: leaf.lites.rows is “1_0”; it must be a whole number from 1 to 20, in plain digits`},
	{spec.BadNumber, "leaf: {lites: {rows: 1e1}}", `1:22: bad-number: leaf.lites.rows is “1e1”; it must be a whole number from 1 to 20, in plain digits`},
	{spec.OutOfRange, "leaf: {lites: {rows: 0}}", `1:22: out-of-range: leaf.lites.rows is 0; it must be a whole number from 1 to 20`},
	{spec.OutOfRange, "leaf: {lites: {rows: 99999999999999999999}}", `1:22: out-of-range: leaf.lites.rows is 99999999999999999999; it must be a whole number from 1 to 20`},
	{spec.OutOfRange, "leaf: {stile: 40}", `1:15: out-of-range: leaf.stile is 40"; it must be at least 51/64" and at most 15 47/64"`},
	{spec.OutOfRange, "units: millimetre\nleaf: {stile: 1 in}\nopening: {width: 199, height: 2000}\npanel: {material: glass, thickness: 4}", `3:18: out-of-range: opening.width is 199 mm; it must be at least 200 mm and at most 12000 mm`},
	{spec.OutOfRange, "units: millimetre\nopening: {width: 60 in, height: 4000.001}\npanel: {material: glass, thickness: 4}", `2:33: out-of-range: opening.height is 4000.001 mm; it must be at least 300 mm and at most 4000 mm`},
	{spec.OutOfRange, "hanging: {style: bypass, tracks: [back, front], floor_gap: 0}", `1:60: out-of-range: hanging.floor_gap is 0"; it must be more than 0" and at most 3 59/64"`},
	{spec.OutOfRange, "hanging: {style: bypass, tracks: [back, front], overlap: -1}", `1:58: out-of-range: hanging.overlap is -1"; it must be at least 0" and at most 39 23/64"`},
	{spec.BadDate, "drawn: 2026-02-30", `1:8: bad-date: drawn is “2026-02-30”; it must be a day of the calendar, written like 2026-03-14`},
	{spec.BadDate, "drawn: 14.3.2026", `1:8: bad-date: drawn is “14.3.2026”; it must be a day of the calendar, written like 2026-03-14`},
	{spec.BadDate, "drawn: 2026-03-14T10:00:00Z", `1:8: bad-date: drawn is “2026-03-14T10:00:00Z”; it must be a day of the calendar, written like 2026-03-14`},
	{spec.BadText, `by: ""`, `1:5: bad-text: by is empty; give it a text or leave the key out`},
	{spec.BadText, `by: "a\nb"`, `1:5: bad-text: by holds a line break or another control character; it must be one plain line`},
	{spec.BadText, `by: "a\u202Eb"`, `1:5: bad-text: by holds a line break or another control character; it must be one plain line`},
	{spec.BadText, "by: " + strings.Repeat("é", 201), `1:5: bad-text: by has 201 characters; it may have at most 200`},
	{spec.UnknownWord, "paper: A5", `1:8: unknown-word: paper is “A5”; did you mean “A4”?`},
	{spec.UnknownWord, "paper: foolscap", `1:8: unknown-word: paper is “foolscap”; it must be one of A4, A3, A2, A1, letter, tabloid, ansi-c, ansi-d, arch-b, arch-c, arch-d`},
	{spec.UnknownWord, "leaf: {joint: {kind: glue}}", `1:22: unknown-word: leaf.joint.kind is “glue”; it must be one of pocket-screw, dowel, loose-tenon, mortise-and-tenon, half-lap, bridle`},
	{spec.UnknownWord, "hanging: {style: bypass, tracks: [back, frnot]}", `1:41: unknown-word: hanging.tracks[2] is “frnot”; did you mean “front”?`},
	{spec.UnknownWord, "hanging: {style: bypass, tracks: [back, front], overlap: Stile}", `1:58: unknown-word: hanging.overlap is “Stile”; did you mean “stile”?`},
	{spec.UnknownWord, "panel: {material: acrylic, thickness: 1/8, corner: cliped}", `1:52: unknown-word: panel.corner is “cliped”; did you mean “clipped”?`},
	{spec.Alias, "by: &me x", `1:5: alias: “&me” names a value for use elsewhere, which is not read; remove the name`},
	{spec.Alias, "by: &me x\nrevision: *me", "1:5: alias: “&me” names a value for use elsewhere, which is not read; remove the name\n2:11: alias: “*me” stands for another value, which is not read; write the value out"},
	{spec.Alias, "leaf:\n  <<: {stile: 4}", `2:3: alias: “<<” merges another group into this one, which is not read; write its keys out`},
	{spec.TypeTag, "leaf: {stile: !!int 4}", `1:15: type-tag: the type tag “!!int” is not read; remove it`},
	{spec.TypeTag, "by: !mine 4", `1:5: type-tag: the type tag “!mine” is not read; remove it`},
	// Without units the bare sizes are passed over, the others are checked.
	{spec.UnknownWord, "units: inches\nleaf: {stile: 9999, width: 1 mm, height: 1//2}", "1:8: unknown-word: units is “inches”; did you mean “inch”?\n" +
		"2:28: out-of-range: leaf.width is ≈ 0.03937\"; it must be at least 3 15/16\" and at most 118 7/64\"\n" +
		"2:44: bad-size: leaf.height: “1//2” is not a length: the bottom of the fraction is missing; write it like 59 7/8, 59.875 in or 1520 mm"},
}

// files are whole files, each with its whole list of findings.
var files = []faulty{
	{spec.EmptyFile, "", "empty-file: the file is empty; a model begins with job and units"},
	{spec.EmptyFile, "# later\n", "empty-file: the file is empty; a model begins with job and units"},
	{spec.EmptyFile, "---\n", "empty-file: the file is empty; a model begins with job and units"},
	{spec.NotText, "job: \xff", "1:6: not-text: byte 0xff is not UTF-8; save the file as UTF-8"},
	{spec.NotText, "\xff\xfej\x00", "1:1: not-text: byte 0xff is not UTF-8; save the file as UTF-8"},
	{spec.NotText, "a: b\r\nc: é\x00", "2:5: not-text: U+0000 is not plain text; remove it"},
	{spec.NotText, "a: \u2028", "1:4: not-text: U+2028 is not plain text; remove it"},
	{spec.WrongKind, "- a", "1:1: wrong-kind: the model must be a group of keys, each with a colon and a value; it is a list"},
	{spec.WrongKind, "doors", "1:1: wrong-kind: the model must be a group of keys, each with a colon and a value; it is “doors”"},
	{spec.SecondDocument, completed("by: me") + "---\nby: you\n", "8:1: second-document: a second document begins; a model is one, so remove the line --- and what follows it"},
	{spec.TabIndent, "opening:\n\twidth: 60\n", "2:1: tab-indent: this line is indented with a tab; indent with spaces"},
	{spec.TabIndent, "opening:\n  width: 60\n \theight: 80\n", "3:2: tab-indent: this line is indented with a tab; indent with spaces"},
	{spec.TooDeep, "leaf: " + strings.Repeat("[", 20_000), "1:1: too-deep: brackets or indents lie too deep within one another; a model needs five levels"},
	{spec.Alias, "by: x\nleaf: {stile: *all}\n", "2:15: alias: an alias (*) stands for another value, which is not read; write the value out"},
	{spec.NotYAML, "units: inch\njob: doors: two\n", "2:11: not-yaml: a colon too many, or an indent that does not fit the line above: put a text with a colon in quotes, and begin all keys of a group in one column"},
	{spec.NotYAML, "job: x\n units: inch\n", "2:2: not-yaml: a colon too many, or an indent that does not fit the line above: put a text with a colon in quotes, and begin all keys of a group in one column"},
	{spec.NotYAML, "job: x\nby: @home\n", "2:5: not-yaml: a value cannot begin with this character; put it in quotes"},
	{spec.NotYAML, "leaf: {stile: %4}\n", "1:15: not-yaml: a value cannot begin with this character; put it in quotes"},
	{spec.NotYAML, "job: x\nhanging: {tracks: [back, front}\n", "2:19: not-yaml: the list that opens with [ here is not closed with ], or a comma is missing in it"},
	{spec.NotYAML, "job: x\nleaf: {stile: 4\nby: me\n", "2:7: not-yaml: the group that opens with { here is not closed with }, or a comma is missing in it"},
	{spec.NotYAML, "job: x\nby: \"me\nleaf: {}\n", "2:5: not-yaml: a quotation mark opens here and is not closed; a size needs none: 59 7/8\""},
	{spec.NotYAML, "job: x\nunits\nby: me\n", "2:1: not-yaml: a key needs a colon and a value, as in width: 60"},
	{spec.NotYAML, "job: x\nby: 'me' too\n", "2:1: not-yaml: this does not fit what stands above it; begin all keys of a group in one column, and put a text that begins with a quotation mark in quotes as a whole"},
	{spec.NotYAML, "tracks:\n  - back\n - front\n", "3:2: not-yaml: this does not fit what stands above it; begin all keys of a group in one column, and put a text that begins with a quotation mark in quotes as a whole"},
	{spec.NotYAML, "- back\njob: x\n", "2:1: not-yaml: a key cannot stand among the items of a list; indent it, or begin it with -"},
	{spec.NotYAML, "job: x\ntracks: - back\n", "2:9: not-yaml: a list written with - begins on a line of its own; on this line write it as [a, b]"},
	{spec.NotYAML, `job: "a\qb"`, `1:8: not-yaml: a backslash in "…" is not plain text; use '…' instead`},
	{spec.NotYAML, "leaf: }\n", "1:1: not-yaml: a value is missing, or there is a bracket or comma too many"},
	{spec.NotYAML, "%YAML 9.9\n---\njob: x\n", "1:1: not-yaml: this is not YAML: found incompatible YAML document"},
}

func TestRules(t *testing.T) {
	for _, c := range faults {
		_, findings := spec.Read("", []byte(completed(c.text)))
		assert.Equal(t, c.want, texts(findings), c.text)
		assert.Contains(t, rulesOf(findings), c.rule)
	}
	for _, c := range files {
		_, findings := spec.Read("", []byte(c.text))
		assert.Equal(t, c.want, texts(findings), c.text)
		assert.Contains(t, rulesOf(findings), c.rule)
	}
	_, findings := spec.Read("", []byte(completed("by: me")))
	require.Empty(t, findings, "the shortest good model")
}

// Every rule that the package names has a file that breaks it.
func TestEveryRuleIsShown(t *testing.T) {
	source, err := os.ReadFile("rules.go")
	require.NoError(t, err)
	shown := map[string]bool{
		spec.TooLarge:   true, // TestReadFile
		spec.MoreFaults: true, // TestManyFaults
	}
	for _, c := range append(faults, files...) {
		shown[c.rule] = true
	}
	named := regexp.MustCompile(`= "([a-z-]+)" +// `).FindAllStringSubmatch(string(source), -1)
	require.Greater(t, len(named), 20)
	for _, rule := range named {
		require.True(t, shown[rule[1]], rule[1])
	}
}

// A model without units has the sizes it writes with a unit, and one finding.
func TestMissingUnits(t *testing.T) {
	_, findings := spec.Read("", []byte(strings.Replace(completed("leaf: {stile: 4, rail: 9999}"), "units: inch\n", "", 1)))
	require.Equal(t, "1:1: missing-key: the model needs the key “units”: unit of bare numbers and of every figure on the drawings", texts(findings))
}

// All faults come at once, in the order of their places.
func TestAllAtOnce(t *testing.T) {
	_, findings := spec.Read("hall.yaml", []byte("unit: inch\nopening:\n  width: wide\nhanging: {style: bypass, tracks: [back, front], track: [1]}\nleaf: {lites: {rows: 99}}\n"))
	require.Equal(t, strings.Join([]string{
		"hall.yaml:1:1: missing-key: the model needs the key “job”: what the doors are for; stands in the title block",
		"hall.yaml:1:1: missing-key: the model needs the key “panel”: the sheet that fills a lite, and its seat",
		"hall.yaml:1:1: missing-key: the model needs the key “units”: unit of bare numbers and of every figure on the drawings",
		"hall.yaml:1:1: unknown-key: the model has no key “unit”; did you mean “units”?",
		"hall.yaml:2:1: missing-key: opening needs the key “height”: clear height from floor to head at three places, or one size for all",
		"hall.yaml:3:10: bad-size: opening.width: “wide” is not a length: a number is missing before “wide”; write it like 59 7/8, 59.875 in or 1520 mm",
		"hall.yaml:4:56: wrong-kind: hanging.track must be a group of keys (row, spacing, head_drop, height, depth, setback) or a text; it is a list",
		"hall.yaml:5:22: out-of-range: leaf.lites.rows is 99; it must be a whole number from 1 to 20",
	}, "\n"), texts(findings))
}

func TestManyFaults(t *testing.T) {
	_, findings := spec.Read("", []byte(completed(strings.Repeat("x: 1\n", 100_000))))
	require.Len(t, findings, 201)
	require.Equal(t, "201:1: more-faults: there are more than 200 faults; mend those above first", findings[200].String())
}

// Groups of aliases that would unfold to billions of values cost nothing.
func TestAliasBomb(t *testing.T) {
	bomb := "a: &a [x, x, x, x, x, x, x, x, x]\n"
	for c := 'b'; c <= 'z'; c++ {
		bomb += strings.ReplaceAll("Q: &Q [P, P, P, P, P, P, P, P, P]\n", "Q", string(c))
		bomb = strings.ReplaceAll(bomb, "P", "*"+string(c-1))
	}
	_, findings := spec.Read("", []byte("leaf: *z\n"+bomb))
	require.NotEmpty(t, findings)
	_, findings = spec.Read("", []byte(bomb+"leaf: *z\n"))
	require.Contains(t, texts(findings), "27:7: alias: “*z” stands for another value, which is not read; write the value out")
}

// A good model with any one character changed is read or refused with a place.
func TestOneSlip(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 0))
	const slips = "\t\n :-,#&*!|>'\"%@`[]{}\\0x/\x00é"
	for range 500 {
		text := []byte(closet)
		text[rnd.IntN(len(text))] = slips[rnd.IntN(len(slips))]
		_, findings := spec.Read("x.yaml", text)
		for _, found := range findings {
			require.Positive(t, found.Line, "seed %d: %v in\n%s", *seed, found, text)
			require.LessOrEqual(t, found.Line, strings.Count(string(text), "\n")+1)
		}
	}
}
