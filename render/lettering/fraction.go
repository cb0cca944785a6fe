package lettering

import (
	"regexp"
	"strings"
)

// A fraction is digits, a slash and digits, with the whole number before it if
// there is one; no digit, letter, slash or point may touch it.
var (
	written = regexp.MustCompile(`(^|[^0-9A-Za-z/.])(?:([0-9]+) )?([0-9]{1,3})/([0-9]{1,3})($|[^0-9/.]|\.$|\.[^0-9])`)
	set     = regexp.MustCompile(`(?:([0-9])\x{200A})?([⁰¹²³⁴⁵⁶⁷⁸⁹]+)⁄([₀₁₂₃₄₅₆₇₈₉]+)`)
)

var (
	raised   = strings.NewReplacer("0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")
	lowered  = strings.NewReplacer("0", "₀", "1", "₁", "2", "₂", "3", "₃", "4", "₄", "5", "₅", "6", "₆", "7", "₇", "8", "₈", "9", "₉")
	ordinary = strings.NewReplacer("⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9",
		"₀", "0", "₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7", "₈", "8", "₉", "9")
)

// hair is the space between a whole number and its fraction.
const hair = "\u200A"

// fractions sets "30 11/16" as "30 ¹¹⁄₁₆", a hair
// space between, with the typeface's raised and
// lowered figures and its fraction bar.
func fractions(text string) string {
	if !strings.Contains(text, "/") {
		return text
	}
	one := func(text string) string {
		m := written.FindStringSubmatch(text)
		whole := m[2]
		if whole != "" {
			whole += hair
		}
		return m[1] + whole + raised.Replace(m[3]) + "⁄" + lowered.Replace(m[4]) + m[5]
	}
	// Twice, since a blank may end one match and begin the next.
	return written.ReplaceAllStringFunc(written.ReplaceAllStringFunc(text, one), one)
}

// Plain is the text with its fractions in ordinary figures again, "30 11/16",
// for files whose readers bring their own typeface.
func Plain(text string) string {
	if !strings.Contains(text, "⁄") {
		return text
	}
	return set.ReplaceAllStringFunc(text, func(text string) string {
		m := set.FindStringSubmatch(text)
		whole := m[1]
		if whole != "" {
			whole += " "
		}
		return whole + ordinary.Replace(m[2]) + "/" + ordinary.Replace(m[3])
	})
}
