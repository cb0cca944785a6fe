package guide

import (
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

// cropMargin is left round the ink of a picture.
const cropMargin = 2 * mm

// cropped is a picture on paper no larger than its ink asks for.
func cropped(s sheet.Sheet) sheet.Sheet {
	box, ok := dimension.Extent(s.Marks)
	if !ok {
		return s
	}
	box = box.Grow(cropMargin)
	s.Marks = moved(s.Marks, -box.Min.X, -box.Min.Y)
	s.Width, s.Height = box.Width(), box.Height()
	return s
}

// moved are marks in another place on the paper; dimensions as their drawing.
func moved(marks []sheet.Mark, dx, dy length.Length) []sheet.Mark {
	shift := func(p plane.Point) plane.Point { return p.Add(dx, dy) }
	var out []sheet.Mark
	for _, mark := range marks {
		switch m := mark.(type) {
		case sheet.Stroke:
			m.Path = m.Path.Map(shift, false)
			out = append(out, m)
		case sheet.Fill:
			m.Region = m.Region.Map(shift, false)
			out = append(out, m)
		case sheet.Text:
			m.At = shift(m.At)
			out = append(out, m)
		case sheet.Dimension:
			out = append(out, moved(m.Drawing(), dx, dy)...)
		}
	}
	return out
}
