package lettering

import (
	"strings"
	"unicode"
)

// Covers tells whether the typeface has the character.
func Covers(r rune) bool {
	_, ok := glyphs()[r]
	return ok
}

// missing stands in for a character that has no replacement.
const missing = "?"

// replacements are written for characters that the typeface lacks. All are in
// characters it has, which a test checks.
var replacements = map[rune]string{
	'…':      "...",
	'≤':      "<=",
	'≥':      ">=",
	'≈':      "~",
	'≠':      "!=",
	'≡':      "=",
	'√':      "sqrt ",
	'∞':      "inf.",
	'∅':      "⌀",
	'∥':      "‖",
	'⟂':      "perp.",
	'∠':      "angle ",
	'⌖':      "pos.",
	'⌴':      "c'bore",
	'⌵':      "c'sink",
	'↧':      "deep",
	'□':      "sq. ",
	'Δ':      "delta ",
	'∆':      "delta ",
	'Ω':      "ohm",
	'\u2126': "ohm", // the unit's own sign
	'μ':      "µ",   // Greek mu for the micro sign
	'π':      "pi",
	'α':      "alpha",
	'€':      "EUR ",
	'⇒':      "→",
	'⇐':      "←",
	'∙':      "·",
	'⋅':      "·",
	'∕':      "/",
	'ﬁ':      "fi",
	'ﬂ':      "fl",
}

// Legible is the text in characters the typeface has, so that what is measured
// is what is drawn. The rule: a character the font has stays; white space, also
// a line's end, becomes a space; other control characters and invisible marks
// vanish; the signs named in this package's table of replacements are written
// out ("≤" as "<=", "≈" as "~", "…" as "..."); a combining accent the font
// lacks vanishes; everything else becomes "?". A fraction written with a slash,
// "59 7/8", is set as one, "59⁷⁄₈". Text that is legible already is returned
// unchanged.
func Legible(text string) string {
	table, ok := glyphs(), true
	text = fractions(text)
	for _, r := range text {
		if _, has := table[r]; !has {
			ok = false
			break
		}
	}
	if ok && !strings.ContainsRune(text, unicode.ReplacementChar) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		_, has := table[r]
		switch {
		case has:
			b.WriteRune(r)
		case unicode.IsSpace(r):
			b.WriteByte(' ')
		case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Mn):
		default:
			b.WriteString(replacement(r))
		}
	}
	return b.String()
}

// replacement is what is written for a character the font lacks.
func replacement(r rune) string {
	if s, ok := replacements[r]; ok {
		return s
	}
	return missing
}
