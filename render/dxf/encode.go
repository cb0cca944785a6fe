package dxf

import (
	"strings"
	"unicode/utf8"
)

// longestString is the most bytes a string value may hold from release 2000 on
// (DXF Reference, group code value types: 2049 with the closing zero).
const longestString = 2048

// encode turns a line of text into the bytes of a TEXT entity. Release 2000
// knows no Unicode: its strings are in the code page the header names, here
// Windows 1252, and readers look for control codes in them. So
//
//   - what the code page has from U+00A1 to U+00FF is written as its byte;
//   - the diameter sign becomes the control code %%c, which draws it;
//   - signs with a plain spelling get it (see spelling), a letter with an
//     accent the code page lacks stands without it; a fraction sign after a
//     digit is set off by a space: 59⅞ is 59 7/8;
//   - line ends, tabs and other control characters become a space;
//   - marks of no width are left out, and anything else becomes "?";
//   - a space is set between two percent signs, after a backslash that would
//     begin \U+ or \M+, and after a caret, for these would be taken as codes
//     (a caret and a space is the code for the caret itself);
//   - text beyond longestString is cut and ends in "...".
func encode(s string) string {
	if isPlain(s) {
		return s
	}
	var e encoder
	for _, r := range s {
		e.rune(r)
	}
	return shorten(e.out)
}

// encodeFigure is encode for the text of a dimension, where readers also take
// braces and backslashes as formatting and <> as the measured value.
func encodeFigure(s string) string {
	s = strings.ReplaceAll(s, "<>", "< >")
	s = encode(s)
	return strings.NewReplacer(`\`, `\\`, "{", `\{`, "}", `\}`).Replace(s)
}

// isPlain tells whether s needs no change at all.
func isPlain(s string) bool {
	for i := 0; i < len(s); i++ {
		if c := s[i]; c < ' ' || c > '~' || c == '%' || c == '\\' || c == '^' {
			return false
		}
	}
	return len(s) <= longestString
}

func shorten(s []byte) string {
	const cut = "..."
	if len(s) <= longestString {
		return string(s)
	}
	s = s[:longestString-len(cut)]
	// No half of a control code may stay at the end.
	return strings.TrimRight(string(s), `%\^`) + cut
}

type encoder struct{ out []byte }

func (e *encoder) last() byte {
	if len(e.out) == 0 {
		return 0
	}
	return e.out[len(e.out)-1]
}

func (e *encoder) rune(r rune) {
	switch {
	case r == '⌀' || r == '∅':
		e.percent()
		e.out = append(e.out, "%c"...)
	case r == '%':
		e.percent()
	case r == '^':
		e.out = append(e.out, "^ "...)
	case r == '+' && e.beginsCode():
		e.out = append(e.out[:len(e.out)-1], ' ', e.last(), '+')
	case r < ' ' || r == 0x7f:
		e.out = append(e.out, ' ')
	case r < 0x7f:
		e.out = append(e.out, byte(r))
	default:
		e.foreign(r)
	}
}

// percent writes a percent sign that makes no code with the one before it.
func (e *encoder) percent() {
	if e.last() == '%' {
		e.out = append(e.out, ' ')
	}
	e.out = append(e.out, '%')
}

// beginsCode tells whether a plus sign would complete \U+ or \M+.
func (e *encoder) beginsCode() bool {
	n := len(e.out)
	return n >= 2 && e.out[n-2] == '\\' && strings.IndexByte("UuMm", e.out[n-1]) >= 0
}

func (e *encoder) foreign(r rune) {
	if b, ok := codePage(r); ok {
		e.out = append(e.out, b)
		return
	}
	plain, ok := spelling[r]
	if !ok {
		plain, ok = bareLetter(r)
	}
	if !ok {
		plain = "?"
	}
	if c := e.last(); c >= '0' && c <= '9' && len(plain) == 3 && plain[1] == '/' {
		e.out = append(e.out, ' ')
	}
	e.out = append(e.out, plain...)
}

// codePage is the byte of a character from U+00A1 on in Windows 1252. Its bytes
// from 0x80 to 0x9F (dashes, quotes) are not used: some readers take the code
// page for Latin-1, which has none there (tried: GDAL 3.6).
func codePage(r rune) (byte, bool) {
	if r > 0xA0 && r <= 0xFF && r != 0xAD {
		return byte(r), true
	}
	return 0, false
}

// spelling is how characters outside of the code page are written. Our own
// choice, for drawings: no standard gives such a list.
var spelling = map[rune]string{
	'≈': "~", '≤': "<=", '≥': ">=", '≠': "!=", '−': "-", '∕': "/", '⁄': "/",
	'→': "->", '←': "<-", '↔': "<->", '∞': "inf.", '√': "sqrt", 'Δ': "D", '∆': "D", '′': "'", '″': `"`,
	'⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8", '⅓': "1/3", '⅔': "2/3",
	'⅕': "1/5", '⅖': "2/5", '⅗': "3/5", '⅘': "4/5", '⅙': "1/6", '⅚': "5/6",
	'–': "-", '—': "-", '‘': "'", '’': "'", '‚': ",", '“': `"`, '”': `"`, '„': `"`, '‹': "<", '›': ">", '•': "*", '…': "...",
	'€': "EUR", '™': "(TM)", '†': "+", '‰': "0/00", 'Œ': "OE", 'œ': "oe", 'Ĳ': "IJ", 'ĳ': "ij", 'ẞ': "SS",
	'\u2010': "-", '\u2011': "-", '\u2012': "-", '\u2015': "-",
	'\u00a0': " ", '\u2002': " ", '\u2003': " ", '\u2007': " ", '\u2008': " ", '\u2009': " ", '\u200a': " ", '\u202f': " ",
	'\u2028': " ", '\u2029': " ", '\u0085': " ",
	'\u00ad': "", '\u200b': "", '\u200c': "", '\u200d': "", '\u2060': "", '\ufeff': "",
}

// bareLetters are letters outside of the code page, each before the one that is
// written for it.
const bareLetters = "" +
	"ĀAāaĂAăaĄAąaĆCćcĈCĉcĊCċcČCčcĎDďdĐDđdĒEēeĔEĕeĖEėeĘEęeĚEěeĜGĝgĞGğg" +
	"ĠGġgĢGģgĤHĥhĦHħhĨIĩiĪIīiĬIĭiĮIįiİIıiĴJĵjĶKķkĸkĹLĺlĻLļlĽLľlŁLłlŃN" +
	"ńnŅNņnŇNňnŊNŋnŌOōoŎOŏoŐOőoŔRŕrŖRŗrŘRřrŚSśsŜSŝsŞSşsŠSšsŢTţtŤTťtŦT" +
	"ŧtŨUũuŪUūuŬUŭuŮUůuŰUűuŲUųuŴWŵwŶYŷyŸYŹZźzŻZżzŽZžzſsȘSșsȚTțt"

// bareLetter is the letter without the mark the code page does not have.
func bareLetter(r rune) (string, bool) {
	at := strings.IndexRune(bareLetters, r)
	if at < 0 || r < utf8.RuneSelf {
		return "", false
	}
	after := at + utf8.RuneLen(r)
	return bareLetters[after : after+1], true
}
