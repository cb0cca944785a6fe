package sheet

import (
	"fmt"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// finest is the largest number either side of a scale may have. With it and
// length.Longest a coordinate at full size stays within an int64.
const finest = 1_000_000

// Check tells whether the sheet can be written by every writer: it has a name
// for a file and a paper size, its scales are usable, and every mark holds
// known values, connected edges and coordinates within length.Longest. The
// first fault is the error, with the mark's index. Nothing is drawn outside of
// what Check accepts, so writers call it first and then need no checks of
// their own.
func (s Sheet) Check() error {
	if err := checkName(s.Name); err != nil {
		return err
	}
	if s.Width <= 0 || s.Height <= 0 || s.Width > length.Longest || s.Height > length.Longest {
		return fmt.Errorf("sheet %s: paper is %s mm wide and %s mm high; both must be above 0 and at most %s mm",
			s.Name, s.Width.Decimal(), s.Height.Decimal(), length.Longest.Decimal())
	}
	if err := s.Scale.check(); err != nil {
		return fmt.Errorf("sheet %s: %w", s.Name, err)
	}
	for i, m := range s.Marks {
		if err := checkMark(m); err != nil {
			return fmt.Errorf("sheet %s: mark %d: %w", s.Name, i, err)
		}
	}
	return nil
}

func checkName(name string) error {
	if name == "" {
		return fmt.Errorf("sheet has no name; give it a file name stem such as \"2-leaf\"")
	}
	for _, r := range name {
		if r <= ' ' || r > '~' || strings.ContainsRune(`/\:*?"<>|`, r) {
			return fmt.Errorf("sheet name %q holds %q; use ASCII letters, digits and hyphens", name, r)
		}
	}
	return nil
}

func (s Scale) check() error {
	if s == (Scale{}) {
		return nil
	}
	if s.Paper < 1 || s.Real < 1 || s.Paper > finest || s.Real > finest {
		return fmt.Errorf("scale is %d:%d; both sides must be from 1 to %d", s.Paper, s.Real, finest)
	}
	return nil
}

func checkMark(m Mark) error {
	switch m := m.(type) {
	case Stroke:
		return m.check()
	case Fill:
		return m.check()
	case Text:
		return m.check()
	case Dimension:
		return m.check()
	}
	return fmt.Errorf("a %T is not a Stroke, Fill, Text or Dimension", m)
}

func (s Stroke) check() error {
	if err := s.Layer.check(); err != nil {
		return fmt.Errorf("stroke: %w", err)
	}
	if s.Weight < Narrow || s.Weight > Frame {
		return fmt.Errorf("stroke on %v: unknown weight %d", s.Layer, s.Weight)
	}
	if s.Line < Continuous || s.Line > Phantom {
		return fmt.Errorf("stroke on %v: unknown line type %d", s.Layer, s.Line)
	}
	if err := checkPath(s.Path); err != nil {
		return fmt.Errorf("stroke on %v: %w", s.Layer, err)
	}
	return nil
}

func (f Fill) check() error {
	if err := f.Layer.check(); err != nil {
		return fmt.Errorf("fill: %w", err)
	}
	if f.Tone < Ink || f.Tone > Paper {
		return fmt.Errorf("fill on %v: unknown tone %d", f.Layer, f.Tone)
	}
	for i, p := range f.Region {
		if err := checkPath(p); err != nil {
			return fmt.Errorf("fill on %v: outline %d: %w", f.Layer, i, err)
		}
		if a, b := p[0].From, p[len(p)-1].To; a != b {
			return fmt.Errorf("fill on %v: outline %d begins at %s and ends at %s; it must be closed", f.Layer, i, at(a), at(b))
		}
	}
	return nil
}

func (t Text) check() error {
	if err := t.Layer.check(); err != nil {
		return fmt.Errorf("text %q: %w", t.String, err)
	}
	if t.Align < Start || t.Align > End {
		return fmt.Errorf("text %q: unknown alignment %d", t.String, t.Align)
	}
	if t.Height <= 0 || t.Height > length.Longest || t.Advance < 0 || t.Advance > length.Longest {
		return fmt.Errorf("text %q: height is %s mm and advance %s mm; height must be above 0 and advance not below it",
			t.String, t.Height.Decimal(), t.Advance.Decimal())
	}
	return checkPoint(t.At)
}

func (d Dimension) check() error {
	if err := d.Layer.check(); err != nil {
		return fmt.Errorf("dimension %q: %w", d.Figure, err)
	}
	if err := d.Scale.check(); err != nil {
		return fmt.Errorf("dimension %q: %w", d.Figure, err)
	}
	for _, p := range []plane.Point{d.A, d.B, d.Line} {
		if err := checkPoint(p); err != nil {
			return fmt.Errorf("dimension %q: %w", d.Figure, err)
		}
	}
	for _, m := range d.Drawing() {
		if err := checkMark(m); err != nil {
			return fmt.Errorf("dimension %q: %w", d.Figure, err)
		}
	}
	return nil
}

// Drawing is the dimension's finished drawing as marks, back to front: for
// writers that know no true dimensions.
func (d Dimension) Drawing() []Mark {
	marks := make([]Mark, 0, len(d.Strokes)+len(d.Fills)+len(d.Texts))
	for _, s := range d.Strokes {
		marks = append(marks, s)
	}
	for _, f := range d.Fills {
		marks = append(marks, f)
	}
	for _, t := range d.Texts {
		marks = append(marks, t)
	}
	return marks
}

func (l Layer) check() error {
	if l < Border || l > Notes {
		return fmt.Errorf("unknown layer %d", int(l))
	}
	return nil
}

// checkPath tells whether the path has edges, each of some length and
// beginning where the last ended.
func checkPath(p plane.Path) error {
	if len(p) == 0 {
		return fmt.Errorf("path has no edges")
	}
	for i, e := range p {
		if e.From == e.To {
			return fmt.Errorf("edge %d at %s has no length", i, at(e.From))
		}
		if i > 0 && p[i-1].To != e.From {
			return fmt.Errorf("edge %d ends at %s but edge %d begins at %s", i-1, at(p[i-1].To), i, at(e.From))
		}
		if err := checkEdge(e); err != nil {
			return fmt.Errorf("edge %d: %w", i, err)
		}
	}
	return nil
}

func checkEdge(e plane.Edge) error {
	for _, p := range [...]plane.Point{e.From, e.To, e.Centre} {
		if err := checkPoint(p); err != nil {
			return err
		}
	}
	switch e.Turn {
	case plane.Straight:
	case plane.Left, plane.Right:
		if e.Centre == e.From || e.Centre == e.To {
			return fmt.Errorf("arc from %s to %s has its centre at one end", at(e.From), at(e.To))
		}
	default:
		return fmt.Errorf("unknown turn %d", e.Turn)
	}
	return nil
}

func checkPoint(p plane.Point) error {
	if min(p.X, p.Y) < -length.Longest || max(p.X, p.Y) > length.Longest {
		return fmt.Errorf("point %s is more than %s mm from the origin", at(p), length.Longest.Decimal())
	}
	return nil
}

func at(p plane.Point) string { return "(" + p.X.Decimal() + ", " + p.Y.Decimal() + ") mm" }
