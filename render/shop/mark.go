package shop

import (
	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/plane"
)

// Sizes of part marks. A panel's mark lies low at its edge, where the frame
// covers it. Common practice, no source.
const (
	markHeight = 4 * mm
	markLeast  = 2 * mm // below it strokes run together
	markEdge   = 3 * mm / 2
)

// marked is the setup with its mark: text in single strokes where nothing else
// is worked, as low and as far left as there is room. Where there is none at
// the full height, smaller; else no mark.
func marked(s machining.Setup, text string) machining.Setup {
	for height := markHeight; height >= markLeast; height -= mm {
		at, found := roomFor(s, plane.At(letterWidth(height)*length.Length(len(text)), height))
		if !found {
			continue
		}
		out := s
		out.Contours = append([]machining.Contour{}, s.Contours...)
		for _, path := range strokes(text, at, height) {
			out.Contours = append(out.Contours, machining.Contour{Operation: machining.Mark, Path: path})
		}
		return out
	}
	return s
}

// roomFor finds a place for a box on the face: inside the outline, clear of
// everything worked.
func roomFor(s machining.Setup, size plane.Point) (plane.Point, bool) {
	outline := s.Outline()
	var taken plane.Region
	for _, c := range s.Contours {
		if c.Operation == machining.Pocket || c.Operation == machining.Bore {
			taken = plane.Union(taken, plane.Region{c.Path})
		}
	}
	const steps = 24
	dx, dy := (s.Width-size.X)/steps, (s.Height-size.Y)/steps
	if dx <= 0 || dy <= 0 {
		return plane.Point{}, false
	}
	for row := range steps {
		for column := range steps {
			at := plane.At(dx*length.Length(column), dy*length.Length(row)).Add(markEdge, markEdge)
			box := plane.Region{plane.Rect(at.Add(-mm, -mm), at.Add(size.X+mm, size.Y+mm))}
			if plane.Subtract(box, outline).Empty() && plane.Intersect(box, taken).Empty() {
				return at, true
			}
		}
	}
	return plane.Point{}, false
}
