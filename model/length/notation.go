package length

import (
	"math/big"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Unit is the unit a bare number is in. The zero Unit is the millimetre.
type Unit int

// The units a model or a drawing may be in.
const (
	Millimetres Unit = iota
	Inches
)

// String is the unit's name as it stands in a model file.
func (u Unit) String() string {
	if u == Inches {
		return "inch"
	}
	return "millimetre"
}

// size is the length of one unit.
func (u Unit) size() Length {
	if u == Inches {
		return Inch
	}
	return Millimetre
}

// longestText is the longest text Parse looks at, in bytes. The longest
// sensible one, 5 feet 11 127/128 inches, has less than half of it; the limit
// keeps the arithmetic small whatever a file holds.
const longestText = 64

// A ParseError tells why a text is not a length.
type ParseError struct {
	Text   string // as given to Parse
	Offset int    // where in Text the fault is, in bytes from 0
	Reason string // what is wrong there, without a full stop
}

// Error says what was read, what is wrong, and what a length looks like.
func (e *ParseError) Error() string {
	return quote(e.Text) + " is not a length: " + e.Reason +
		"; write it like 59 7/8, 59.875 in or 1520 mm"
}

// quote shows text in typographic quotes, since inch marks are part of it,
// with everything unprintable escaped and long text cut.
func quote(text string) string {
	if len(text) > longestText {
		text = strings.ToValidUTF8(text[:longestText], "") + "…"
	}
	escaped := strconv.Quote(text)
	return "“" + strings.ReplaceAll(escaped[1:len(escaped)-1], `\"`, `"`) + "”"
}

// Parse reads a length as a woodworker writes it; a number without a unit is
// in the bare unit:
//
//	59 7/8   59-7/8"   59⅞   59.875 in   5' 2 3/8"   5'-2 3/8"   5 ft 2 in
//	1520     1520 mm   152 cm   1.52 m   3/8   -1/16
//
// Primes (′ ″), curly quotes and the fraction slash (⁄) are read like the
// plain characters, and unit words in full too. Reading is exact, without
// floating point: millimetres with up to six decimals, decimal inches with up
// to five, and inch fractions in halves down to 64ths are whole counts of
// nanometres. Anything else (1/128 in, 1/3 in) goes to the nearest nanometre,
// halves away from zero.
//
// Decimal commas, thousands separators, powers of ten, lengths beyond ±Longest
// and everything else are refused with a *ParseError.
func Parse(text string, bare Unit) (Length, error) {
	r := &reader{text: text}
	if len(text) > longestText {
		return 0, r.fault(longestText, "it is longer than "+strconv.Itoa(longestText)+" characters")
	}
	value, err := r.quantity(bare)
	if err != nil {
		return 0, err
	}
	if new(big.Rat).Abs(value).Cmp(nanometres(Longest)) > 0 {
		return 0, r.fault(0, "it is longer than the longest length, 1 km")
	}
	return nearest(value), nil
}

// nanometres is l as a rational count of nanometres.
func nanometres(l Length) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }

// nearest is the whole count nearest to value, halves away from zero. The
// value must fit.
func nearest(value *big.Rat) Length {
	num := new(big.Int).Abs(value.Num())
	num.Lsh(num, 1).Add(num, value.Denom()) // (2·num + den) / (2·den), rounded down
	whole := num.Quo(num, new(big.Int).Lsh(value.Denom(), 1)).Int64()
	if value.Sign() < 0 {
		whole = -whole
	}
	return Length(whole)
}

// A reader walks through the text of one length.
type reader struct {
	text string
	at   int // byte offset of what is read next
}

func (r *reader) fault(offset int, reason string) error {
	return &ParseError{Text: r.text, Offset: offset, Reason: reason}
}

// peek is the next character and its size in bytes; at the end the size is 0.
func (r *reader) peek() (rune, int) { return utf8.DecodeRuneInString(r.text[r.at:]) }

// next takes the next character if it is one of set.
func (r *reader) next(set string) bool {
	c, size := r.peek()
	if size == 0 || c == utf8.RuneError || !strings.ContainsRune(set, c) {
		return false
	}
	r.at += size
	return true
}

// run takes characters as long as they belong.
func (r *reader) run(belongs func(rune) bool) string {
	start := r.at
	for c, size := r.peek(); size > 0 && belongs(c); c, size = r.peek() {
		r.at += size
	}
	return r.text[start:r.at]
}

func (r *reader) digits() string { return r.run(func(c rune) bool { return '0' <= c && c <= '9' }) }
func (r *reader) space() bool    { return r.run(unicode.IsSpace) != "" }

// quantity reads the whole text as a signed count of nanometres.
func (r *reader) quantity(bare Unit) (*big.Rat, error) {
	const signs = "+-−"
	r.space()
	start := r.at
	signed := r.next(signs)
	minus := signed && r.text[start] != '+'
	r.space()
	if signed && r.next(signs) {
		return nil, r.fault(start, "it has two signs")
	}
	value, err := r.magnitude(bare)
	if err != nil {
		return nil, err
	}
	r.space()
	if r.at < len(r.text) {
		return nil, r.leftOver()
	}
	if minus {
		value.Neg(value)
	}
	return value, nil
}

// magnitude reads a number with its unit, or feet and inches.
func (r *reader) magnitude(bare Unit) (*big.Rat, error) {
	first, err := r.number()
	if err != nil {
		return nil, err
	}
	unit, err := r.unit()
	if err != nil {
		return nil, err
	}
	value := first.value
	switch unit {
	case 0:
		return value.Mul(value, nanometres(bare.size())), nil
	case Foot:
		value.Mul(value, nanometres(Foot))
		return r.inches(first, value)
	}
	return value.Mul(value, nanometres(unit)), nil
}

// inches reads the inches that may follow feet and adds them.
func (r *reader) inches(feet number, value *big.Rat) (*big.Rat, error) {
	r.space()
	if r.next("-") {
		r.space()
	} else if r.at == len(r.text) {
		return value, nil
	}
	start := r.at
	inches, err := r.number()
	if err != nil {
		return nil, err
	}
	unit, err := r.unit()
	switch {
	case err != nil:
		return nil, err
	case unit != 0 && unit != Inch:
		return nil, r.fault(start, "only inches may follow feet")
	case !feet.whole:
		return nil, r.fault(start, "feet before inches must be whole")
	case inches.value.Cmp(big.NewRat(12, 1)) >= 0:
		return nil, r.fault(start, "inches after feet must be less than 12")
	}
	return value.Add(value, inches.value.Mul(inches.value, nanometres(Inch))), nil
}
