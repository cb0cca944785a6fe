package length

import (
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A number is what stands before a unit.
type number struct {
	value *big.Rat
	whole bool // written without point and fraction
}

// slashes stand between the top and the bottom of a fraction.
const slashes = "/⁄"

// number reads 59, 59.875, 7/8, 59 7/8, 59-7/8, ⅞ or 59⅞.
func (r *reader) number() (number, error) {
	if fraction := r.vulgar(); fraction != nil {
		return number{value: fraction}, nil
	}
	start := r.at
	top := r.digits()
	if r.next(".") {
		return r.decimal(start)
	}
	if top == "" {
		return number{}, r.noNumber()
	}
	value := ratio(top)
	if r.next(slashes) {
		fraction, err := r.over(value)
		return number{value: fraction}, err
	}
	fraction, err := r.mixed()
	if err != nil {
		return number{}, err
	}
	if fraction == nil {
		return number{value: value, whole: true}, nil
	}
	return number{value: value.Add(value, fraction)}, nil
}

// decimal reads on after the point of a number that began at start.
func (r *reader) decimal(start int) (number, error) {
	if r.digits() == "" {
		return number{}, r.fault(r.at, "digits are missing after the point")
	}
	value := ratio(r.text[start:r.at])
	end := r.at
	r.space()
	if fraction, _ := r.fraction(); fraction != nil {
		return number{}, r.fault(end, "a decimal and a fraction do not go together")
	}
	r.at = end
	return number{value: value}, nil
}

// mixed reads the fraction that may follow a whole number, after spaces or one
// hyphen. Nil means that none follows.
func (r *reader) mixed() (*big.Rat, error) {
	end := r.at
	spaced := r.space()
	hyphen := !spaced && r.next("-")
	start := r.at
	if !spaced && !hyphen {
		return r.vulgar(), nil
	}
	fraction, err := r.fraction()
	switch {
	case err != nil:
		return nil, err
	case fraction == nil:
		r.at = end
	case fraction.Cmp(big.NewRat(1, 1)) >= 0:
		return nil, r.fault(start, "the fraction after a whole number must be less than 1")
	}
	return fraction, nil
}

// fraction reads 7/8 or ⅞; when neither is next it gives nil.
func (r *reader) fraction() (*big.Rat, error) {
	if fraction := r.vulgar(); fraction != nil {
		return fraction, nil
	}
	start := r.at
	top := r.digits()
	if top == "" || !r.next(slashes) {
		r.at = start
		return nil, nil
	}
	return r.over(ratio(top))
}

// over reads the bottom of a fraction whose top and slash are read.
func (r *reader) over(top *big.Rat) (*big.Rat, error) {
	start := r.at
	digits := r.digits()
	if digits == "" {
		return nil, r.fault(start, "the bottom of the fraction is missing")
	}
	bottom := ratio(digits)
	if bottom.Sign() == 0 {
		return nil, r.fault(start, "the bottom of the fraction is 0")
	}
	return top.Quo(top, bottom), nil
}

// ratio is the value of decimal digits with at most one point. They are few,
// since Parse limits the text.
func ratio(digits string) *big.Rat {
	value, _ := new(big.Rat).SetString(digits)
	return value
}

// vulgars are the fractions that have a character of their own.
// Source: Unicode 15, blocks Latin-1 Supplement and Number Forms.
var vulgars = map[rune][2]int64{
	'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4},
	'⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
	'⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
}

// vulgar takes a fraction character if one is next.
func (r *reader) vulgar() *big.Rat {
	c, size := r.peek()
	parts, known := vulgars[c]
	if !known {
		return nil
	}
	r.at += size
	return big.NewRat(parts[0], parts[1])
}

// unit reads the unit that may follow a number; 0 means that none follows.
func (r *reader) unit() (Length, error) {
	end := r.at
	r.space()
	switch {
	case r.next("″”\""):
		return Inch, nil
	case r.next("′’'"):
		if r.next("′’'") {
			return Inch, nil
		}
		return Foot, nil
	}
	start := r.at
	word := r.run(unicode.IsLetter)
	if word == "" {
		r.at = end
		return 0, nil
	}
	unit := unitNamed(strings.ToLower(word))
	switch {
	case unit != 0:
		r.next(".")
		return unit, nil
	case strings.EqualFold(word, "e") && start == end:
		return 0, r.fault(start, "a power of ten is not read")
	}
	return 0, r.fault(start, quote(word)+" is not a unit (in, ft, mm, cm, m)")
}

// unitNamed is the unit of a lower-case word, 0 when there is none.
func unitNamed(word string) Length {
	switch word {
	case "in", "inch", "inches":
		return Inch
	case "ft", "foot", "feet":
		return Foot
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return Millimetre
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return Centimetre
	case "m", "metre", "metres", "meter", "meters":
		return Metre
	}
	return 0
}

// noNumber is the fault of text in which a number should begin.
func (r *reader) noNumber() error {
	c, size := r.peek()
	switch {
	case strings.TrimSpace(r.text) == "":
		return r.fault(0, "it is empty")
	case size == 0:
		return r.fault(r.at, "a number is missing at its end")
	case c == '≈':
		return r.fault(r.at, "≈ marks a rounded figure; give the size itself")
	}
	return r.fault(r.at, "a number is missing before "+quote(r.text[r.at:]))
}

// leftOver is the fault of text that stands after a whole length.
func (r *reader) leftOver() error {
	rest := r.text[r.at:]
	c, _ := utf8.DecodeRuneInString(rest)
	switch {
	case c == ',':
		return r.fault(r.at, "a comma is not read; decimals take a point, thousands stand without a mark")
	case c == '_':
		return r.fault(r.at, "an underscore is not read")
	case strings.ContainsRune(slashes, c):
		return r.fault(r.at, "it has a slash too many")
	case '0' <= c && c <= '9':
		return r.fault(r.at, quote(rest)+" is a second number; a fraction needs its slash")
	}
	return r.fault(r.at, quote(rest)+" is left over")
}
