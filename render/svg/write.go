package svg

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// Numbers are written to the micrometre, a quarter of a thousandth of the
// narrowest line.
const (
	decimals = 3
	finest   = length.Micrometre
)

// Write writes the sheet as an SVG file of the paper's size.
//
// Marks keep their order. A run of marks on one layer is a group, whose class
// is "layer-" and the layer's name in small letters; the first group of a layer
// has the id "sheet-NAME-LAYER", the next "sheet-NAME-LAYER-2". Text stays
// text; control characters in it become spaces.
//
// The same sheet gives the same bytes. It fails on a sheet that sheet.Check
// refuses and when w does.
func Write(w io.Writer, s sheet.Sheet) error {
	if err := s.Check(); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	// The buffer keeps the first error of w, which svgo drops.
	out := bufio.NewWriterSize(w, 1<<16)
	p := page{
		out: out, svg: svgo.New(out), height: s.Height,
		id: "sheet-" + token(s.Name), groups: map[sheet.Layer]int{},
	}
	p.svg.Decimals = decimals
	p.open(s)
	for _, m := range s.Marks {
		p.mark(m)
	}
	p.close()
	if err := out.Flush(); err != nil {
		return fmt.Errorf("svg: sheet %s: %w", s.Name, err)
	}
	return nil
}

// A page is a file being written.
type page struct {
	out    *bufio.Writer
	svg    *svgo.SVG
	height length.Length // of the paper
	id     string
	groups map[sheet.Layer]int // how often a layer was opened
	layer  sheet.Layer         // the open group's
	inside bool                // a group is open
	data   []byte              // path data, reused
}

func (p *page) open(s sheet.Sheet) {
	w, h := string(appendLength(nil, s.Width)), string(appendLength(nil, s.Height))
	fmt.Fprintf(p.out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"+
		`<svg xmlns="http://www.w3.org/2000/svg" id="%s" width="%smm" height="%smm" viewBox="0 0 %s %s">`+"\n", p.id, w, h, w, h)
	p.svg.Title(spaced(cmp.Or(s.Title, s.Name)))
	if s.Description != "" {
		p.svg.Desc(spaced(s.Description))
	}
	p.svg.Style("text/css", styles(p.id, w, h))
	p.svg.Rect(0, 0, mm(s.Width), mm(s.Height), `class="tone-paper"`)
}

func (p *page) close() {
	if p.inside {
		p.svg.Gend()
	}
	p.svg.End()
}

// group makes sure that the open group is the layer's.
func (p *page) group(l sheet.Layer) {
	if p.inside && p.layer == l {
		return
	}
	if p.inside {
		p.svg.Gend()
	}
	p.layer, p.inside = l, true
	p.groups[l]++
	name := strings.ToLower(l.String())
	id := p.id + "-" + name
	if n := p.groups[l]; n > 1 {
		id += fmt.Sprintf("-%d", n)
	}
	p.svg.Group(attribute("id", id), attribute("class", "layer-"+name))
}

func (p *page) mark(m sheet.Mark) {
	switch m := m.(type) {
	case sheet.Stroke:
		p.stroke(m)
	case sheet.Fill:
		p.fill(m)
	case sheet.Text:
		p.text(m)
	case sheet.Dimension:
		for _, part := range m.Drawing() {
			p.mark(part)
		}
	}
}

func (p *page) stroke(s sheet.Stroke) {
	p.group(s.Layer)
	class := strokeClass[s.Weight][s.Line]
	if isCircle(s.Path) {
		centre := s.Path[0].Centre
		p.svg.Circle(mm(centre.X), mm(p.height-centre.Y), mm(length.Round(s.Path[0].Radius())), class)
		return
	}
	p.data = p.appendPath(p.data[:0], s.Path)
	p.svg.Path(string(p.data), class)
}

// isCircle tells whether two arcs make one full circle.
func isCircle(p plane.Path) bool {
	return len(p) == 2 && p[0].Turn != plane.Straight && p[0].Turn == p[1].Turn &&
		p[0].Centre == p[1].Centre && p[0].To == p[1].From && p[1].To == p[0].From
}

// fill writes a region as one path. An empty one shows nothing.
func (p *page) fill(f sheet.Fill) {
	if len(f.Region) == 0 {
		return
	}
	p.group(f.Layer)
	p.data = p.data[:0]
	for _, outline := range f.Region {
		p.data = p.appendPath(p.data, outline)
	}
	p.svg.Path(string(p.data), toneClass[f.Tone])
}

func (p *page) text(t sheet.Text) {
	s := spaced(t.String)
	if strings.TrimSpace(s) == "" {
		return
	}
	p.group(t.Layer)
	x, y := t.At.X, p.height-t.At.Y
	attributes := []string{attribute("font-size", decimal(lettering.Size(t.Height)))}
	if t.Align != sheet.Start {
		attributes = append(attributes, attribute("text-anchor", [...]string{"start", "middle", "end"}[t.Align]))
	}
	if t.Rise {
		attributes = append(attributes, attribute("transform", "rotate(-90 "+decimal(x)+" "+decimal(y)+")"))
	}
	if t.Advance > 0 {
		attributes = append(attributes, attribute("textLength", decimal(t.Advance)), attribute("lengthAdjust", "spacingAndGlyphs"))
	}
	p.svg.Text(mm(x), mm(y), s, attributes...)
}
