package pdf

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/render/sheet"
)

// A reader of our own files for the tests: it follows the cross-reference
// table and the pages, and draws their content in millimetres on the paper.

// A read is a file taken apart.
type read struct {
	t       testing.TB
	objects map[int]string
	trailer string
}

func readFile(t testing.TB, data []byte) read {
	t.Helper()
	r := read{t: t, objects: map[int]string{}}
	_, tail, found := bytes.Cut(data, []byte("\nstartxref\n"))
	require.True(t, found)
	start, err := strconv.Atoi(string(tail[:bytes.IndexByte(tail, '\n')]))
	require.NoError(t, err)
	require.True(t, bytes.HasPrefix(data[start:], []byte("xref\n0 ")))
	lines := strings.Split(string(data[start:]), "\n")
	for n, line := range lines[3:] {
		if line == "trailer" {
			r.trailer = lines[n+4]
			break
		}
		require.Len(t, line, 19, "an entry has 20 bytes with its line's end")
		at, err := strconv.Atoi(line[:10])
		require.NoError(t, err)
		body, found := strings.CutPrefix(string(data[at:start]), fmt.Sprintf("%d 0 obj\n", n+1))
		require.True(t, found, "entry %d of the cross-reference table", n+1)
		r.objects[n+1], _, found = strings.Cut(body, "\nendobj\n")
		require.True(t, found)
	}
	return r
}

// object is the object that another's key refers to.
func (r read) object(in, key string) string {
	m := regexp.MustCompile(`/` + key + ` (\d+) 0 R`).FindStringSubmatch(in)
	require.NotNil(r.t, m, "no %s in %s", key, in)
	n, err := strconv.Atoi(m[1])
	require.NoError(r.t, err)
	return r.objects[n]
}

func (r read) catalog() string { return r.object(r.trailer, "Root") }

// pages are the page objects in order.
func (r read) pages() (all []string) {
	kids := regexp.MustCompile(`/Kids \[([^]]*)\]`).FindStringSubmatch(r.object(r.catalog(), "Pages"))
	for _, m := range regexp.MustCompile(`(\d+) 0 R`).FindAllStringSubmatch(kids[1], -1) {
		n, err := strconv.Atoi(m[1])
		require.NoError(r.t, err)
		all = append(all, r.objects[n])
	}
	return all
}

// content is a page's stream.
func (r read) content(page string) string {
	dictionary, stream, found := strings.Cut(r.object(page, "Contents"), "\nstream\n")
	require.True(r.t, found)
	stream = strings.TrimSuffix(stream, "\nendstream")
	require.Contains(r.t, dictionary, fmt.Sprintf("/Length %d ", len(stream)))
	return stream
}

type spot struct{ x, y float64 }

func (p spot) to(q spot) float64 { return math.Hypot(q.x-p.x, q.y-p.y) }

// A piece is a straight line (two spots) or a Bézier curve (four), in
// millimetres from the lower left corner of the printed page.
type piece []spot

// at is the place at t, from 0 to 1.
func (c piece) at(t float64) spot {
	if len(c) == 2 {
		return spot{c[0].x + t*(c[1].x-c[0].x), c[0].y + t*(c[1].y-c[0].y)}
	}
	u := 1 - t
	w := [...]float64{u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t}
	var p spot
	for i, q := range c {
		p.x, p.y = p.x+w[i]*q.x, p.y+w[i]*q.y
	}
	return p
}

// A shown is one painting of a path, or one text.
type shown struct {
	by     string // S, f* or Tj
	layer  string
	pieces []piece
	width  float64 // of the line, mm on the sheet
	dashes string
	colour string
	at     spot // of a text
	glyphs string
}

// A painter follows a content stream.
type painter struct {
	t      testing.TB
	matrix [6]float64 // into points
	stack  []string
	now    shown
	from   spot // where the path is
	begun  spot // where its part began
	all    []shown
}

func painted(t testing.TB, content string) []shown {
	t.Helper()
	p := painter{t: t, matrix: [6]float64{1, 0, 0, 1, 0, 0}}
	for _, word := range strings.Fields(content) {
		if strings.ContainsAny(word[:1], "-.0123456789/[]<") {
			p.stack = append(p.stack, word)
			continue
		}
		p.do(word)
		p.stack = p.stack[:0]
	}
	return p.all
}

// number is the operand i from the operator's left.
func (p *painter) number(i int) float64 {
	require.Greater(p.t, len(p.stack), i)
	x, err := strconv.ParseFloat(strings.Trim(p.stack[i], "[]"), 64)
	require.NoError(p.t, err)
	return x
}

func (p *painter) spot(i int) spot {
	x, y, m := p.number(i), p.number(i+1), p.matrix
	return spot{(m[0]*x + m[2]*y + m[4]) / 72 * 25.4, (m[1]*x + m[3]*y + m[5]) / 72 * 25.4}
}

func (p *painter) do(operator string) {
	count := map[string]int{"cm": 6, "w": 1, "M": 1, "m": 2, "l": 2, "c": 6, "h": 0, "S": 0, "f*": 0, "g": 1, "rg": 3, "BDC": 2, "EMC": 0, "BT": 0, "ET": 0}
	if want, fixed := count[operator]; fixed {
		require.Len(p.t, p.stack, want, "operands of %s", operator)
	}
	switch operator {
	case "cm":
		for i := range p.matrix {
			p.matrix[i] = p.number(i)
		}
	case "w":
		p.now.width = p.number(0)
	case "d":
		p.now.dashes = strings.Trim(strings.Join(p.stack[:len(p.stack)-1], " "), "[]")
	case "g", "rg":
		p.now.colour = strings.Join(p.stack, " ")
	case "BDC":
		p.now.layer = strings.TrimPrefix(p.stack[1], "/")
	case "m":
		p.from = p.spot(0)
		p.begun = p.from
	case "l":
		p.add(p.from, p.spot(0))
	case "c":
		p.add(p.from, p.spot(0), p.spot(2), p.spot(4))
	case "h":
		if p.from != p.begun {
			p.add(p.from, p.begun)
		}
	case "Tm":
		p.now.at = p.spot(4)
	case "Tj":
		p.now.glyphs = strings.Trim(p.stack[0], "<>")
		p.show("Tj")
	case "S", "f*":
		p.show(operator)
	case "M", "BT", "ET", "Tf", "Tz", "EMC":
	default:
		p.t.Fatalf("unknown operator %q", operator)
	}
}

func (p *painter) add(spots ...spot) {
	p.now.pieces = append(p.now.pieces, spots)
	p.from = spots[len(spots)-1]
}

func (p *painter) show(by string) {
	p.now.by = by
	p.all = append(p.all, p.now)
	p.now.pieces, p.now.glyphs = nil, ""
}

func written(t testing.TB, o Options, sheets ...sheet.Sheet) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Write(&out, sheets, o))
	return out.Bytes()
}

// drawn is what the only page of a sheet shows.
func drawn(t testing.TB, o Options, s sheet.Sheet) []shown {
	t.Helper()
	r := readFile(t, written(t, o, s))
	require.Len(t, r.pages(), 1)
	return painted(t, r.content(r.pages()[0]))
}
