package dimension

import (
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

// A Frame is the place of a view on the paper.
type Frame struct {
	Box    plane.Box   // the view's outline on the paper
	Origin plane.Point // the point of the model at the box's lower left corner
	Scale  sheet.Scale // none, or one that is not positive: full size
}

// Paper is the place on the paper of a point of the model, rounded to the
// nanometre.
func (f Frame) Paper(p plane.Point) plane.Point {
	return plane.At(f.x(p.X), f.y(p.Y))
}

func (f Frame) x(at length.Length) length.Length {
	return f.Box.Min.X + onPaper(at-f.Origin.X, f.Scale)
}

func (f Frame) y(at length.Length) length.Length {
	return f.Box.Min.Y + onPaper(at-f.Origin.Y, f.Scale)
}

// onPaper is a model length drawn to scale, halves of a nanometre away from zero.
func onPaper(l length.Length, s sheet.Scale) length.Length {
	if s.Paper <= 0 || s.Real <= 0 {
		return l
	}
	n, half := int64(l)*s.Paper, s.Real/2
	if n < 0 {
		half = -half
	}
	return length.Length((n + half) / s.Real)
}

// A Side is the side of a view that rows of dimensions stand on.
type Side int

// The sides. Rows below and above measure along X, the others along Y.
const (
	Below Side = iota
	Above
	LeftOf
	RightOf
)

// String is the side in words.
func (s Side) String() string {
	return [...]string{"below", "above", "left of", "right of"}[s]
}

// A spot is a point of the ground beside a view, in the frame of a reader who
// holds the row level: u to the right along the row, w up. For rows below and
// above, u is X and w is Y of the paper; for the others the paper is turned, u is Y and w is -X.
// So lettering always stands upright over its line, whatever the side.
type spot struct{ u, w length.Length }

// A ground is the paper beside one side of a view.
type ground struct {
	frame  Frame
	upward bool          // the row runs up the paper
	edge   length.Length // w of the outline's edge
	out    length.Length // +1 or -1: which way w grows away from the view
}

func groundOf(f Frame, side Side) ground {
	switch side {
	case Above:
		return ground{f, false, f.Box.Max.Y, 1}
	case LeftOf:
		return ground{f, true, -f.Box.Min.X, 1}
	case RightOf:
		return ground{f, true, -f.Box.Max.X, -1}
	}
	return ground{f, false, f.Box.Min.Y, -1}
}

// point is the spot's place on the paper.
func (g ground) point(s spot) plane.Point {
	if g.upward {
		return plane.At(-s.w, s.u)
	}
	return plane.At(s.u, s.w)
}

// along is u of a model coordinate along the row, across w of one across it.
func (g ground) along(at length.Length) length.Length {
	if g.upward {
		return g.frame.y(at)
	}
	return g.frame.x(at)
}

func (g ground) across(at length.Length) length.Length {
	if g.upward {
		return -g.frame.x(at)
	}
	return g.frame.y(at)
}

// beyond tells whether w lies farther from the view than other.
func (g ground) beyond(w, other length.Length) bool { return g.out*w > g.out*other }
