package pdf

import (
	"fmt"
	"iter"
	"slices"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// tones are the operators that set a fill's colour.
var tones = [...]string{"0 g", "0.902 0.925 0.941 rg", "1 g"}

// A content is the content stream of a page being written. It remembers what
// the stream last set, so that nothing is set twice.
type content struct {
	data   []byte
	face   *typeface
	layer  sheet.Layer
	inside bool // a layer is open
	pen    pen
	tone   sheet.Tone
	squash string // of text along its line, in percent; "" is 100
}

// A pen is how a stroke is drawn.
type pen struct {
	weight sheet.Weight
	line   sheet.LineType
}

// contentOf is a sheet's page. The correction stretches it.
func contentOf(s sheet.Sheet, face *typeface, c Correction) ([]byte, error) {
	p := content{face: face, pen: pen{weight: -1}, tone: -1}
	for _, factor := range []float64{c.Factors().X, 0, 0, c.Factors().Y} {
		p.data = append(appendNumber(p.data, factor*pointsPerMM, 12), ' ')
	}
	p.data = append(p.data, "0 0 cm\n4 M\n"...) // mitres as SVG has them
	for i, m := range s.Marks {
		if err := p.mark(m); err != nil {
			return nil, fmt.Errorf("mark %d: %w", i, err)
		}
	}
	if p.inside {
		p.data = append(p.data, "EMC\n"...)
	}
	return p.data, nil
}

func (p *content) mark(m sheet.Mark) error {
	switch m := m.(type) {
	case sheet.Stroke:
		p.stroke(m)
	case sheet.Fill:
		p.fill(m)
	case sheet.Text:
		return p.text(m)
	case sheet.Dimension:
		for _, part := range m.Drawing() {
			if err := p.mark(part); err != nil {
				return fmt.Errorf("dimension %q: %w", m.Figure, err)
			}
		}
	}
	return nil
}

// enter makes sure that the open layer is l.
func (p *content) enter(l sheet.Layer) {
	if p.inside && p.layer == l {
		return
	}
	if p.inside {
		p.data = append(p.data, "EMC\n"...)
	}
	p.layer, p.inside = l, true
	p.data = append(p.data, "/OC /"+l.String()+" BDC\n"...)
}

func (p *content) stroke(s sheet.Stroke) {
	p.enter(s.Layer)
	if next := (pen{s.Weight, s.Line}); next != p.pen {
		p.pen = next
		p.data = append(appendLength(p.data, s.Weight.Width()), " w ["...)
		for i, dash := range s.Line.Dashes() {
			if i > 0 {
				p.data = append(p.data, ' ')
			}
			p.data = appendLength(p.data, dash)
		}
		p.data = append(p.data, "] 0 d\n"...)
	}
	p.path(s.Path)
	p.data = append(p.data, "S\n"...)
}

// fill writes a region as one path. An empty one shows nothing.
func (p *content) fill(f sheet.Fill) {
	if len(f.Region) == 0 {
		return
	}
	p.enter(f.Layer)
	p.ink(f.Tone)
	for _, outline := range f.Region {
		p.path(outline)
	}
	p.data = append(p.data, "f*\n"...)
}

// ink makes sure that areas and letters are filled in the tone.
func (p *content) ink(t sheet.Tone) {
	if p.tone != t {
		p.tone = t
		p.data = append(p.data, tones[t]+"\n"...)
	}
}

// path writes a run of edges: m, l, c and h, one a line.
func (p *content) path(path plane.Path) {
	p.data = append(appendPoint(p.data, path[0].From), "m\n"...)
	closed := path.Closed()
	for i, e := range path {
		switch {
		case e.Turn != plane.Straight:
			p.data = appendArc(p.data, e)
		case closed && i == len(path)-1: // h draws it
		default:
			p.data = append(appendPoint(p.data, e.To), "l\n"...)
		}
	}
	if closed {
		p.data = append(p.data, "h\n"...)
	}
}

// text writes one line of lettering. A blank one shows nothing.
func (p *content) text(t sheet.Text) error {
	s := lettering.Legible(t.String)
	if strings.TrimSpace(s) == "" {
		return nil
	}
	glyphs, err := p.face.encode(s)
	if err != nil {
		return err
	}
	p.enter(t.Layer)
	p.ink(sheet.Ink)
	wide, squash := lettering.Advance(s, t.Height), ""
	if t.Advance > 0 && t.Advance != wide {
		squash = string(appendNumber(nil, t.Advance.MM()/wide.MM()*100, decimals))
		wide = t.Advance
	}
	p.data = append(p.data, "BT "...)
	if squash != p.squash {
		p.squash = squash
		if squash == "" {
			squash = "100"
		}
		p.data = append(p.data, squash+" Tz "...)
	}
	back := [...]length.Length{0, wide.Half(), wide}[t.Align]
	at, turned := t.At.Add(-back, 0), "1 0 0 1 "
	if t.Rise {
		at, turned = t.At.Add(0, -back), "0 1 -1 0 "
	}
	p.data = append(p.data, "/"+fontName+" "...)
	p.data = append(appendLength(p.data, lettering.Size(t.Height)), " Tf "+turned...)
	p.data = append(appendPoint(p.data, at), "Tm <"+glyphs+"> Tj ET\n"...)
	return nil
}

// parts are the marks of all sheets, each dimension as its drawing.
func parts(sheets []sheet.Sheet) iter.Seq[sheet.Mark] {
	return func(yield func(sheet.Mark) bool) {
		for _, s := range sheets {
			for _, m := range s.Marks {
				drawn := []sheet.Mark{m}
				if d, ok := m.(sheet.Dimension); ok {
					drawn = d.Drawing()
				}
				for _, part := range drawn {
					if !yield(part) {
						return
					}
				}
			}
		}
	}
}

// lettersOf gathers every character the sheets are lettered in.
func lettersOf(sheets []sheet.Sheet) map[rune]bool {
	letters := map[rune]bool{}
	for m := range parts(sheets) {
		if t, ok := m.(sheet.Text); ok {
			for _, r := range lettering.Legible(t.String) {
				letters[r] = true
			}
		}
	}
	return letters
}

// layersOf tells which layers the sheets draw on, in the order of
// sheet.Layers.
func layersOf(sheets []sheet.Sheet) []sheet.Layer {
	drawn := map[sheet.Layer]bool{}
	for m := range parts(sheets) {
		switch m := m.(type) {
		case sheet.Stroke:
			drawn[m.Layer] = true
		case sheet.Fill:
			drawn[m.Layer] = true
		case sheet.Text:
			drawn[m.Layer] = true
		}
	}
	return slices.DeleteFunc(sheet.Layers(), func(l sheet.Layer) bool { return !drawn[l] })
}
