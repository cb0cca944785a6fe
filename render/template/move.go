package template

import (
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

// moved is a mark moved by (dx, dy).
func moved(m sheet.Mark, dx, dy length.Length) sheet.Mark {
	switch m := m.(type) {
	case sheet.Stroke:
		return movedStroke(m, dx, dy)
	case sheet.Fill:
		return movedFill(m, dx, dy)
	case sheet.Text:
		m.At = m.At.Add(dx, dy)
		return m
	case sheet.Dimension:
		m.A, m.B, m.Line = m.A.Add(dx, dy), m.B.Add(dx, dy), m.Line.Add(dx, dy)
		m.Strokes, m.Fills, m.Texts = append([]sheet.Stroke{}, m.Strokes...), append([]sheet.Fill{}, m.Fills...), append([]sheet.Text{}, m.Texts...)
		for i, s := range m.Strokes {
			m.Strokes[i] = movedStroke(s, dx, dy)
		}
		for i, f := range m.Fills {
			m.Fills[i] = movedFill(f, dx, dy)
		}
		for i := range m.Texts {
			m.Texts[i].At = m.Texts[i].At.Add(dx, dy)
		}
		return m
	}
	return m
}

func movedStroke(s sheet.Stroke, dx, dy length.Length) sheet.Stroke {
	s.Path = s.Path.Translate(dx, dy)
	return s
}

func movedFill(f sheet.Fill, dx, dy length.Length) sheet.Fill {
	f.Region = f.Region.Map(func(p plane.Point) plane.Point { return p.Add(dx, dy) }, false)
	return f
}
