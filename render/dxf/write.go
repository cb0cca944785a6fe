package dxf

import (
	"fmt"
	"io"

	"stilewright/model/length"
	"stilewright/model/plane"
	typeface "stilewright/render/lettering"
	"stilewright/render/sheet"
)

// Write writes the sheet as a DXF file at full size of its main scale; a sheet
// without scale is written at paper size. Text is encoded as encode tells: what
// the format's code page lacks is replaced visibly.
//
// A dimension is a true DIMENSION, whose own block holds its finished drawing.
// Its style carries the ratio of its view's scale to the main one, so that a
// reader measures the true size; its stored measurement (group 42) is Measured.
//
// The same sheet gives the same bytes. It fails on a sheet that sheet.Check
// refuses and when w does.
func Write(w io.Writer, s sheet.Sheet) error {
	if err := s.Check(); err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	d := newDrawing(s)
	for _, m := range s.Marks {
		d.mark(m)
	}
	if err := d.finish(s).write(w, d.model.out); err != nil {
		return fmt.Errorf("dxf: sheet %s: %w", s.Name, err)
	}
	return nil
}

// A drawing turns a sheet's marks into entities.
type drawing struct {
	scale  sheet.Scale // never zero
	last   handle
	model  entities
	blocks []block
	styles []dimStyle

	extents plane.Box
	drawn   bool       // extents hold something
	scratch plane.Path // the path at full size, reused
}

func newDrawing(s sheet.Sheet) *drawing {
	d := &drawing{scale: s.Scale, last: firstFree - 1}
	if d.scale == (sheet.Scale{}) {
		d.scale = sheet.Scale{Paper: 1, Real: 1}
	}
	d.model = entities{last: &d.last, owner: modelSpace}
	const bytesPerMark = 256 // what a line takes, with room to spare
	d.model.out = make([]byte, 0, bytesPerMark*len(s.Marks))
	return d
}

// finish gathers the tables round the entities drawn.
func (d *drawing) finish(s sheet.Sheet) *file {
	paper := plane.Box{Max: d.point(plane.At(s.Width, s.Height))}
	if !d.drawn {
		d.extents = paper
	}
	return &file{
		last:      d.last,
		lineTypes: lineTypes(),
		layers:    layers(),
		dimStyles: d.styles,
		blocks:    d.blocks,
		extents:   d.extents,
		limits:    paper,
		factor:    ratio(d.scale),
	}
}

// ratio is the factor from paper to full size.
func ratio(s sheet.Scale) float64 { return float64(s.Real) / float64(s.Paper) }

// full is a length on the paper at full size, halves of a nanometre rounded
// away from zero.
func (d *drawing) full(l length.Length) length.Length {
	n, paper := int64(l)*d.scale.Real, d.scale.Paper
	if paper == 1 {
		return length.Length(n)
	}
	half := paper / 2
	if n < 0 {
		half = -half
	}
	return length.Length((n + half) / paper)
}

func (d *drawing) point(p plane.Point) plane.Point { return plane.At(d.full(p.X), d.full(p.Y)) }

// path is the path at full size, until the next call.
func (d *drawing) path(p plane.Path) plane.Path {
	d.scratch = d.scratch[:0]
	for _, e := range p {
		e.From, e.To, e.Centre = d.point(e.From), d.point(e.To), d.point(e.Centre)
		d.scratch = append(d.scratch, e)
	}
	return d.scratch
}

// show adds a box at full size to the extents.
func (d *drawing) show(b plane.Box) {
	if d.drawn {
		b = d.extents.Join(b)
	}
	d.extents, d.drawn = b, true
}

func (d *drawing) mark(m sheet.Mark) {
	switch m := m.(type) {
	case sheet.Stroke:
		d.stroke(&d.model, m)
	case sheet.Fill:
		d.fill(&d.model, m)
	case sheet.Text:
		d.text(&d.model, m)
	case sheet.Dimension:
		d.dimension(m)
	}
}

func (d *drawing) stroke(to *entities, s sheet.Stroke) {
	p := d.path(s.Path)
	for _, e := range p {
		d.show(e.Bounds())
	}
	k := look{layer: s.Layer.String(), weight: weight(s.Weight)}
	if s.Line != layerLine(s.Layer) {
		k.line = lineName(s.Line)
	}
	to.path(k, p)
}

// fill writes an area in its tone. An empty region shows nothing.
func (d *drawing) fill(to *entities, f sheet.Fill) {
	if len(f.Region) == 0 {
		return
	}
	r := make(plane.Region, len(f.Region))
	for i, p := range f.Region {
		r[i] = append(plane.Path(nil), d.path(p)...)
	}
	d.show(r.Bounds())
	to.area(look{layer: f.Layer.String(), colour: toneColour(f.Tone)}, r)
}

// text writes a line of text. One that is blank shows nothing, and readers
// take a TEXT without any letter for a fault.
func (d *drawing) text(to *entities, t sheet.Text) {
	s := encode(typeface.Plain(t.String))
	if isBlank(s) {
		return
	}
	box, start := reach(t)
	box.Min, box.Max, start = d.point(box.Min), d.point(box.Max), d.point(start)
	d.show(box)
	l := lettering{at: d.point(t.At), start: start, height: d.full(t.Height), align: int(t.Align), string: s}
	if t.Rise {
		l.degrees = 90
	}
	to.lettering(look{layer: t.Layer.String()}, l)
}

// reach is where a text stands on the paper, from its base line to the top of
// its capitals, and where its first letter begins.
func reach(t sheet.Text) (plane.Box, plane.Point) {
	back := length.Length(0)
	switch t.Align {
	case sheet.Middle:
		back = t.Advance.Half()
	case sheet.End:
		back = t.Advance
	}
	if t.Rise {
		start := t.At.Add(0, -back)
		return plane.BoxOf(start, start.Add(-t.Height, t.Advance)), start
	}
	start := t.At.Add(-back, 0)
	return plane.BoxOf(start, start.Add(t.Advance, t.Height)), start
}
