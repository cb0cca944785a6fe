package dxf

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// ReadCutting reads back a file of closed outlines, circles and engraved lines,
// of either release, and refuses everything a cutting file must not hold: any
// other kind of entity in ENTITIES or BLOCKS (TEXT, SPLINE, ELLIPSE, DIMENSION,
// INSERT, HATCH, LINE, ARC …), an entity on a layer that is not listed, a file
// without unit, a handle given twice or not below $HANDSEED.
//
// Arcs get their centre from their bulge, to the nanometre. It is the gate a
// written file goes through before it leaves.
func ReadCutting(r io.Reader) (Cutting, error) {
	tags, err := readTags(r)
	if err != nil {
		return Cutting{}, fmt.Errorf("dxf: %w", err)
	}
	d := cuttingReader{handles: map[string]bool{}}
	for i := 0; i < len(tags); {
		next := i + 1
		for next < len(tags) && tags[next].code != 0 {
			next++
		}
		if err := d.item(tags[i:next]); err != nil {
			return Cutting{}, fmt.Errorf("dxf: line %d: %w", tags[i].line, err)
		}
		i = next
	}
	if err := d.finish(); err != nil {
		return Cutting{}, fmt.Errorf("dxf: %w", err)
	}
	return d.Cutting, nil
}

// A tag is a group code and its value, as read.
type tag struct {
	code  int
	value string
	line  int
}

func readTags(r io.Reader) ([]tag, error) {
	var tags []tag
	lines := bufio.NewScanner(r)
	for n := 1; lines.Scan(); n += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines.Text()))
		if err != nil {
			return nil, fmt.Errorf("line %d: %q is no group code", n, lines.Text())
		}
		if !lines.Scan() {
			return nil, fmt.Errorf("line %d: the value is missing", n+1)
		}
		tags = append(tags, tag{code, lines.Text(), n})
	}
	return tags, lines.Err()
}

// A cuttingReader gathers a cutting.
type cuttingReader struct {
	Cutting
	section  string
	hasUnit  bool
	seed     string
	handles  map[string]bool
	open     bool     // a POLYLINE's vertices follow
	closed   bool     // it is closed
	corners  []vertex // so far
	ended    bool
	layerNow string
}

// item takes an object: a tag of code 0 and all up to the next.
func (d *cuttingReader) item(tags []tag) error {
	kind := tags[0].value
	switch {
	case tags[0].code != 0:
		return fmt.Errorf("the file begins with group code %d", tags[0].code)
	case kind == "SECTION":
		d.section = find(tags, 2)
		if d.section == "HEADER" {
			return d.header(tags)
		}
		return nil
	case kind == "ENDSEC":
		d.section = ""
		return nil
	case kind == "EOF":
		d.ended = true
		return nil
	}
	if d.section != "HEADER" {
		if err := d.handle(tags); err != nil {
			return err
		}
	}
	switch d.section {
	case "TABLES":
		if kind == "LAYER" && find(tags, 2) != "0" {
			colour, _ := strconv.Atoi(find(tags, 62))
			d.Layers = append(d.Layers, CuttingLayer{find(tags, 2), colour})
		}
	case "BLOCKS":
		if kind != "BLOCK" && kind != "ENDBLK" {
			return fmt.Errorf("a block holds a %s; a cutting file has no blocks with something in them", kind)
		}
	case "ENTITIES":
		return d.entity(kind, tags)
	}
	return nil
}

// header takes the variables that matter.
func (d *cuttingReader) header(tags []tag) error {
	for i := 0; i+1 < len(tags); i++ {
		if tags[i].code != 9 {
			continue
		}
		value := tags[i+1].value
		switch tags[i].value {
		case "$ACADVER":
			switch value {
			case "AC1015":
				d.Release = R2000
			case "AC1009":
				d.Release = R12
			default:
				return fmt.Errorf("release %q; AC1015 and AC1009 are known", value)
			}
		case "$INSUNITS":
			switch n, _ := strconv.Atoi(strings.TrimSpace(value)); n {
			case inches:
				d.Unit, d.hasUnit = length.Inches, true
			case millimetres:
				d.Unit, d.hasUnit = length.Millimetres, true
			}
		case "$HANDSEED":
			d.seed = value
		}
	}
	return nil
}

// handle enters an object's own handle.
func (d *cuttingReader) handle(tags []tag) error {
	own := find(tags, 5)
	if tags[0].value == "DIMSTYLE" {
		own = find(tags, 105)
	}
	if own == "" {
		return nil
	}
	if d.handles[own] {
		return fmt.Errorf("handle %s is given twice", own)
	}
	d.handles[own] = true
	return nil
}

func (d *cuttingReader) entity(kind string, tags []tag) error {
	if kind != "VERTEX" && kind != "SEQEND" {
		if d.open {
			return fmt.Errorf("a %s stands between a polyline's vertices", kind)
		}
		d.layerNow = find(tags, 8)
		if !slices.ContainsFunc(d.Layers, func(l CuttingLayer) bool { return l.Name == d.layerNow }) {
			return fmt.Errorf("a %s lies on layer %q, which is not listed", kind, d.layerNow)
		}
	}
	switch kind {
	case "CIRCLE":
		centre, err := d.place(tags)
		if err != nil {
			return err
		}
		radius, err := d.size(find(tags, 40))
		if err != nil {
			return err
		}
		d.Paths = append(d.Paths, CuttingPath{d.layerNow, plane.Circle(centre, radius)})
	case "LWPOLYLINE":
		return d.lightweight(tags)
	case "POLYLINE":
		d.open, d.closed, d.corners = true, find(tags, 70) == "1", nil
	case "VERTEX":
		return d.corner(tags)
	case "SEQEND":
		d.open = false
		d.add()
	default:
		return fmt.Errorf("a %s; a cutting file holds polylines and circles only", kind)
	}
	return nil
}

// lightweight takes a polyline whose corners stand in one object.
func (d *cuttingReader) lightweight(tags []tag) error {
	d.closed, d.corners = find(tags, 70) == "1", nil
	for i, t := range tags {
		if t.code != 10 {
			continue
		}
		end := i + 1
		for end < len(tags) && tags[end].code != 10 {
			end++
		}
		if err := d.corner(tags[i:end]); err != nil {
			return err
		}
	}
	d.add()
	return nil
}

func (d *cuttingReader) corner(tags []tag) error {
	at, err := d.place(tags)
	if err != nil {
		return err
	}
	v := vertex{at: at}
	if text := find(tags, 42); text != "" {
		if v.bulge, err = strconv.ParseFloat(text, 64); err != nil || math.IsInf(v.bulge, 0) || math.IsNaN(v.bulge) {
			return fmt.Errorf("bulge %q is no number", text)
		}
	}
	d.corners = append(d.corners, v)
	return nil
}

// add makes a path of the corners read.
func (d *cuttingReader) add() {
	var path plane.Path
	for i, v := range d.corners {
		last := i == len(d.corners)-1
		if last && !d.closed {
			break
		}
		path = append(path, bulged(v.at, d.corners[(i+1)%len(d.corners)].at, v.bulge))
	}
	d.Paths = append(d.Paths, CuttingPath{d.layerNow, path})
}

// bulged is the edge between two points with a bulge.
func bulged(a, b plane.Point, bulge float64) plane.Edge {
	if bulge == 0 || a == b {
		return plane.Line(a, b)
	}
	// The centre lies on the chord's upright middle line, h to the left.
	dx, dy := (b.X - a.X).MM(), (b.Y - a.Y).MM()
	h := (1 - float64(bulge*bulge)) / (4 * bulge)
	x, y := (a.X.MM()+b.X.MM())/2, (a.Y.MM()+b.Y.MM())/2
	centre := plane.At(length.Round(x-float64(dy*h)), length.Round(y+float64(dx*h)))
	turn := plane.Left
	if bulge < 0 {
		turn = plane.Right
	}
	return plane.Arc(a, b, centre, turn)
}

func (d *cuttingReader) place(tags []tag) (plane.Point, error) {
	x, err := d.size(find(tags, 10))
	if err != nil {
		return plane.Point{}, err
	}
	y, err := d.size(find(tags, 20))
	return plane.At(x, y), err
}

func (d *cuttingReader) size(text string) (length.Length, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("size %q is no number", text)
	}
	if d.Unit == length.Inches {
		v *= length.Inch.MM()
	}
	return length.Round(v), nil
}

func (d *cuttingReader) finish() error {
	switch {
	case !d.ended:
		return fmt.Errorf("the file ends before its end is marked")
	case !d.hasUnit:
		return fmt.Errorf("$INSUNITS does not tell millimetres or inches")
	}
	seed, err := strconv.ParseUint(d.seed, 16, 64)
	if err != nil {
		return fmt.Errorf("$HANDSEED %q is no handle", d.seed)
	}
	for h := range d.handles {
		if own, err := strconv.ParseUint(h, 16, 64); err != nil || own >= seed {
			return fmt.Errorf("handle %s does not lie below $HANDSEED %s", h, d.seed)
		}
	}
	return nil
}

// find is the value of the first tag of that code, "" if there is none.
func find(tags []tag, code int) string {
	for _, t := range tags {
		if t.code == code {
			return strings.TrimSpace(t.value)
		}
	}
	return ""
}

// Same tells where another cutting differs: in unit, release, layers or paths,
// of which corners may be a nanometre apart and centres of arcs as far as a
// bulge of twelve decimals tells them.
func (c Cutting) Same(o Cutting) error {
	switch {
	case c.Unit != o.Unit || c.Release != o.Release:
		return fmt.Errorf("%s in %s, not %s in %s", o.Release, o.Unit, c.Release, c.Unit)
	case !slices.Equal(c.Layers, o.Layers):
		return fmt.Errorf("layers %v, not %v", o.Layers, c.Layers)
	case len(c.Paths) != len(o.Paths):
		return fmt.Errorf("%d paths, not %d", len(o.Paths), len(c.Paths))
	}
	for i, p := range c.Paths {
		if err := samePath(p, o.Paths[i]); err != nil {
			return fmt.Errorf("path %d: %w", i, err)
		}
	}
	return nil
}

func samePath(a, b CuttingPath) error {
	if a.Layer != b.Layer || len(a.Path) != len(b.Path) {
		return fmt.Errorf("%d edges on %s, not %d on %s", len(b.Path), b.Layer, len(a.Path), a.Layer)
	}
	if isCircle(a.Path) && isCircle(b.Path) {
		a, b = CuttingPath{Path: a.Path.Bounds().Path()}, CuttingPath{Path: b.Path.Bounds().Path()}
	}
	apart := func(p, q plane.Point) length.Length { return max((p.X - q.X).Abs(), (p.Y - q.Y).Abs()) }
	for k, e := range a.Path {
		f := b.Path[k]
		// The middle of an arc moves with its bulge, half the chord for each 1.
		if off := max(apart(e.From, f.From), apart(e.To, f.To)); off > length.Nanometre || e.Turn != f.Turn {
			return fmt.Errorf("edge %d from %v to %v, not from %v to %v", k, f.From, f.To, e.From, e.To)
		}
		if off := apart(e.Middle(), f.Middle()); off > 3*length.Nanometre {
			return fmt.Errorf("edge %d is %d nm off in its middle", k, off)
		}
	}
	return nil
}
