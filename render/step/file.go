package step

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Decimals are fixed: lengths to a thousandth of a nanometre, directions so
// that 10 m along one are as true.
const (
	lengthPlaces    = 9
	directionPlaces = 13
	colourPlaces    = 6
)

// A file writes entities of an exchange file one after another. It keeps the
// first error of its writer.
type file struct {
	w    *bufio.Writer
	last int
}

// A ref is an entity's number.
type ref int

func (r ref) String() string { return "#" + strconv.Itoa(int(r)) }

// add writes an entity and gives its number.
func (f *file) add(format string, values ...any) ref {
	f.last++
	fmt.Fprintf(f.w, "#%d=", f.last)
	fmt.Fprintf(f.w, format, values...)
	f.w.WriteString(";\n")
	return ref(f.last)
}

// list is references in brackets.
func list(refs []ref) string {
	words := make([]string, len(refs))
	for i, r := range refs {
		words[i] = r.String()
	}
	return "(" + strings.Join(words, ",") + ")"
}

// decimal writes a number with fixed decimals and never as minus nothing.
func decimal(v float64, places int) string {
	text := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

func triple(v vec, places int) string {
	return "(" + decimal(v[0], places) + "," + decimal(v[1], places) + "," + decimal(v[2], places) + ")"
}

func (f *file) point(v vec) ref { return f.add("CARTESIAN_POINT('',%s)", triple(v, lengthPlaces)) }

func (f *file) direction(v vec) ref { return f.add("DIRECTION('',%s)", triple(v, directionPlaces)) }

// frame writes an origin, a Z direction and an X direction.
func (f *file) frame(at, z, x vec) ref {
	return f.add("AXIS2_PLACEMENT_3D('',%v,%v,%v)", f.point(at), f.direction(z), f.direction(x))
}

// text is a string as ISO 10303-21, 6.4.3 writes it: apostrophe and backslash
// doubled, and what is not printable ASCII by its code point.
func text(s string) string {
	var out strings.Builder
	out.WriteByte('\'')
	for _, r := range s {
		switch {
		case r == '\'' || r == '\\':
			out.WriteRune(r)
			out.WriteRune(r)
		case r >= ' ' && r <= '~':
			out.WriteRune(r)
		case r == utf8.RuneError:
			out.WriteString(`\X2\FFFD\X0\`)
		case r < 0x10000:
			fmt.Fprintf(&out, `\X2\%04X\X0\`, r)
		default:
			fmt.Fprintf(&out, `\X4\%08X\X0\`, r)
		}
	}
	out.WriteByte('\'')
	return out.String()
}

// begin writes the header. Its time stamp is a fixed one, since the same parts
// must give the same bytes.
func begin(w io.Writer, name string) *file {
	f := &file{w: bufio.NewWriter(w)}
	f.w.WriteString("ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\n")
	fmt.Fprintf(f.w, "FILE_NAME(%s,'1970-01-01T00:00:00',(''),(''),'stilewright','stilewright','');\n", text(name))
	f.w.WriteString("FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\nENDSEC;\nDATA;\n")
	return f
}

// end writes the end and gives the writer's first error.
func (f *file) end() error {
	f.w.WriteString("ENDSEC;\nEND-ISO-10303-21;\n")
	return f.w.Flush()
}
