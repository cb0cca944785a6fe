package dxf

import (
	"fmt"

	"stilewright/model/length"
	"stilewright/model/plane"
	typeface "stilewright/render/lettering"
	"stilewright/render/sheet"
)

// dimension writes a DIMENSION and the block that draws it.
func (d *drawing) dimension(m sheet.Dimension) {
	d.last++
	b := block{name: fmt.Sprintf("*D%d", len(d.blocks)+1), record: d.last}
	in := &entities{last: &d.last, owner: b.record}
	for _, s := range m.Strokes {
		d.stroke(in, s)
	}
	for _, f := range m.Fills {
		d.arrow(in, f)
	}
	for _, t := range m.Texts {
		d.text(in, t)
	}
	b.contents = in.out
	d.blocks = append(d.blocks, b)

	line, middle, degrees := setting(m)
	d.model.measure(look{layer: m.Layer.String()}, measure{
		block: b.name, style: d.style(m),
		a: d.point(m.A), b: d.point(m.B), line: d.point(line), middle: d.point(middle),
		degrees: degrees, measured: m.Measured, figure: encodeFigure(typeface.Plain(m.Figure)),
	})
}

// arrow writes a filled triangle as a SOLID, which every reader fills, and any
// other area as a hatch.
func (d *drawing) arrow(to *entities, f sheet.Fill) {
	if len(f.Region) != 1 || len(f.Region[0]) != 3 {
		d.fill(to, f)
		return
	}
	p := d.path(f.Region[0])
	for _, e := range p {
		if e.Turn != plane.Straight {
			d.fill(to, f)
			return
		}
	}
	d.show(p.Bounds())
	to.triangle(look{layer: f.Layer.String(), colour: toneColour(f.Tone)}, p[0].From, p[1].From, p[2].From)
}

// setting is where a dimension stands on the paper: the point of its line
// opposite B, the middle of its figure, and the direction it measures along.
func setting(m sheet.Dimension) (line, middle plane.Point, degrees float64) {
	line, middle = plane.At(m.B.X, m.Line.Y), plane.At((m.A.X+m.B.X).Half(), m.Line.Y)
	if !m.Horizontal {
		line, middle = plane.At(m.Line.X, m.B.Y), plane.At(m.Line.X, (m.A.Y+m.B.Y).Half())
		degrees = 90
	}
	if len(m.Texts) > 0 {
		box, _ := reach(m.Texts[0])
		middle = box.Min.Add(box.Width().Half(), box.Height().Half())
	}
	return line, middle, degrees
}

// style is the name of the style for dimensions of one view's scale; the first
// that needs it adds it, with its own figure height and arrow.
func (d *drawing) style(m sheet.Dimension) string {
	scale := m.Scale
	if scale == (sheet.Scale{}) {
		scale = d.scale
	}
	name := fmt.Sprintf("SCALE_%d_%d", scale.Paper, scale.Real)
	for _, s := range d.styles {
		if s.name == name {
			return name
		}
	}
	s := dimStyle{name: name, measuredFactor: ratio(scale) / ratio(d.scale)}
	if len(m.Texts) > 0 {
		s.figure = m.Texts[0].Height
		s.arrow = s.figure
	}
	if len(m.Fills) > 0 {
		s.arrow = arrowLength(m)
	}
	d.styles = append(d.styles, s)
	return name
}

// arrowLength is the extent of the first arrow head along the dimension line.
func arrowLength(m sheet.Dimension) length.Length {
	b := m.Fills[0].Region.Bounds()
	if m.Horizontal {
		return b.Width()
	}
	return b.Height()
}
