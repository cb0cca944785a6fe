package dimension

import (
	"cmp"
	"slices"

	"stilewright/model/length"
	"stilewright/render/sheet"
)

// An extension is one straight extension line that is drawn already.
type extension struct{ u, start, end length.Length }

// A window is a place in a row where extension lines of outer rows are broken
// to leave a figure clear.
type window struct{ left, right, low, high length.Length }

// extend draws the extension line of a place to the given w. What a row farther in
// has drawn already is not drawn again, and windows are left open.
func (b *bed) extend(p pen, at place, end length.Length) []sheet.Stroke {
	start := at.start + b.out*extensionGap
	from := start
	for _, e := range b.extensions {
		if e.u == at.u && !b.beyond(e.start, start) && b.beyond(e.end, from) {
			from = e.end
		}
	}
	if !b.beyond(end, from) {
		return nil
	}
	b.extensions = append(b.extensions, extension{at.u, start, end})
	var strokes []sheet.Stroke
	for _, w := range b.windowsAt(at.u) {
		near, far := w.low-side, w.high+side
		if b.out < 0 {
			near, far = far, near
		}
		if !b.beyond(far, from) || !b.beyond(end, near) {
			continue
		}
		if b.beyond(near, from) {
			strokes = append(strokes, p.stroke(spot{at.u, from}, spot{at.u, near}))
		}
		from = far
	}
	if b.beyond(end, from) {
		strokes = append(strokes, p.stroke(spot{at.u, from}, spot{at.u, end}))
	}
	return strokes
}

// windowsAt are the windows that a line at u would cross, nearest first.
func (b *bed) windowsAt(u length.Length) []window {
	var at []window
	for _, w := range b.windows {
		if u > w.left-side && u < w.right+side {
			at = append(at, w)
		}
	}
	slices.SortFunc(at, func(v, w window) int { return cmp.Compare(b.out*v.low, b.out*w.low) })
	return at
}
