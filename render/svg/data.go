package svg

import (
	"encoding/xml"
	"math"
	"strings"
	"unicode"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// appendPath writes a run of edges as path data: M, L, A and Z.
func (p *page) appendPath(data []byte, path plane.Path) []byte {
	data = p.appendPoint(append(data, 'M'), path[0].From)
	closed := path.Closed()
	for i, e := range path {
		switch {
		case e.Turn != plane.Straight:
			data = p.appendArc(data, e)
		case closed && i == len(path)-1: // Z draws it
		default:
			data = p.appendPoint(append(data, 'L'), e.To)
		}
	}
	if closed {
		data = append(data, 'Z')
	}
	return data
}

// appendArc writes an arc. Y is turned over in the file, so an arc that turns
// left on the paper runs against SVG's positive angles: its sweep flag is 0.
func (p *page) appendArc(data []byte, e plane.Edge) []byte {
	radius := length.Round(e.Radius())
	data = appendLength(append(data, 'A'), radius)
	data = appendLength(append(data, ' '), radius)
	flags := [...]byte{' ', '0', ' ', '0', ' ', '0', ' '} // turn of the axes, large arc, sweep
	if math.Abs(e.Sweep()) > math.Pi {
		flags[3] = '1'
	}
	if e.Turn == plane.Right {
		flags[5] = '1'
	}
	return p.appendPoint(append(data, flags[:]...), e.To)
}

func (p *page) appendPoint(data []byte, q plane.Point) []byte {
	data = appendLength(data, q.X)
	return appendLength(append(data, ' '), p.height-q.Y)
}

// appendLength writes a length in millimetres to the micrometre, without
// trailing zeros.
func appendLength(data []byte, l length.Length) []byte {
	return l.Nearest(finest).AppendDecimal(data)
}

func decimal(l length.Length) string { return string(appendLength(nil, l)) }

// mm is the length for svgo, on a whole micrometre so that no rounding is left
// to do and nothing small is written as -0.
func mm(l length.Length) float64 { return l.Nearest(finest).MM() }

// attribute is one attribute with its value escaped, which svgo does not do.
func attribute(name, value string) string {
	var b strings.Builder
	b.WriteString(name)
	b.WriteString(`="`)
	xml.EscapeText(&b, []byte(value)) // a strings.Builder never fails
	b.WriteString(`"`)
	return b.String()
}

// token is a name as part of an id: letters, digits, dot, hyphen and underscore
// stay, anything else is a hyphen.
func token(name string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '.', r == '_':
			return r
		}
		return '-'
	}, name)
}

// spaced is text with spaces for control characters, which XML has no place
// for. What else XML cannot hold is written as U+FFFD by svgo.
func spaced(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, s)
}
