package golden

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

// dump writes sheets for a person to review line by line: everything that is
// read, word for word and with its place; what is drawn, as counts and totals
// by kind. Places and totals are in millimetres on the paper, to 1/100;
// measured sizes are exact.
func dump(sheets []sheet.Sheet) string {
	var out strings.Builder
	for i, s := range sheets {
		if i > 0 {
			out.WriteString("\n")
		}
		dumpSheet(&out, s)
	}
	return out.String()
}

func dumpSheet(out *strings.Builder, s sheet.Sheet) {
	fmt.Fprintf(out, "sheet %s\n  title: %s\n  description: %s\n  paper %s × %s mm, scale %s, %d marks\n",
		s.Name, s.Title, s.Description, s.Width.Decimal(), s.Height.Decimal(), ratio(s.Scale), len(s.Marks))
	drawn := tally{}
	var dimensions, texts []string
	for _, m := range s.Marks {
		switch m := m.(type) {
		case sheet.Text:
			texts = append(texts, textLine(m))
		case sheet.Dimension:
			dimensions = append(dimensions, dimensionLine(m))
			for _, part := range m.Drawing() {
				drawn.add(part)
			}
		default:
			drawn.add(m)
		}
	}
	for _, part := range []struct {
		name  string
		lines []string
	}{{"dimensions", dimensions}, {"texts", texts}, {"drawn", drawn.lines()}} {
		fmt.Fprintf(out, "  %s\n", part.name)
		for _, line := range part.lines {
			fmt.Fprintf(out, "    %s\n", line)
		}
	}
}

func ratio(s sheet.Scale) string {
	if s == (sheet.Scale{}) {
		return "none"
	}
	return fmt.Sprintf("%d:%d", s.Paper, s.Real)
}

// textLine gives a text's place, height, way and layer, and its words.
func textLine(t sheet.Text) string {
	way := [...]string{sheet.Start: "start", sheet.Middle: "middle", sheet.End: "end"}[t.Align]
	if t.Rise {
		way += " rising"
	}
	return fmt.Sprintf("%s %s %s %v %q", spot(t.At), t.Height.Decimal(), way, t.Layer, t.String)
}

// dimensionLine gives a dimension's figure and measured size, its direction,
// scale, the places of its points on the paper, and what else is written at it.
func dimensionLine(d sheet.Dimension) string {
	way := "up"
	if d.Horizontal {
		way = "across"
	}
	line := fmt.Sprintf("%q %s mm %s %s from %s to %s at %s", d.Figure, d.Measured.Decimal(), way, ratio(d.Scale), spot(d.A), spot(d.B), spot(d.Line))
	for _, t := range d.Texts {
		if t.String != d.Figure {
			line += fmt.Sprintf(" with %q", t.String)
		}
	}
	return line
}

// spot is a place on the paper.
func spot(p plane.Point) string {
	return fmt.Sprintf("(%s, %s)", hundredths(p.X), hundredths(p.Y))
}

func hundredths(l length.Length) string { return l.Nearest(length.Millimetre / 100).Decimal() }

// A tally counts what is drawn, by kind.
type tally map[string]struct {
	marks, edges, arcs int
	total              float64 // mm, or mm² of fills
}

func (a tally) add(m sheet.Mark) {
	switch m := m.(type) {
	case sheet.Stroke:
		kind := fmt.Sprintf("%d stroke %v %s %s", m.Layer, m.Layer, weightName(m.Weight), lineName(m.Line))
		sum := a[kind]
		sum.marks++
		sum.total += m.Path.Length()
		for _, e := range m.Path {
			sum.edges++
			if e.Turn != plane.Straight {
				sum.arcs++
			}
		}
		a[kind] = sum
	case sheet.Fill:
		kind := fmt.Sprintf("%d fill %v %s", m.Layer, m.Layer, [...]string{"ink", "tint", "paper"}[m.Tone])
		sum := a[kind]
		sum.marks++
		for _, p := range m.Region {
			sum.total += p.Area()
			sum.edges += len(p)
		}
		a[kind] = sum
	}
}

// lines are the kinds in the order of layers.
func (a tally) lines() (lines []string) {
	var kinds []string
	for kind := range a {
		kinds = append(kinds, kind)
	}
	slices.Sort(kinds)
	for _, kind := range kinds {
		sum, unit := a[kind], "mm"
		_, name, _ := strings.Cut(kind, " ")
		if strings.HasPrefix(name, "fill") {
			unit = "mm²"
		}
		lines = append(lines, fmt.Sprintf("%s: %d, %d edges, %d arcs, %.2f %s", name, sum.marks, sum.edges, sum.arcs, sum.total, unit))
	}
	return lines
}

func weightName(w sheet.Weight) string {
	return [...]string{sheet.Narrow: "narrow", sheet.Wide: "wide", sheet.Frame: "frame"}[w]
}

func lineName(l sheet.LineType) string {
	return [...]string{sheet.Continuous: "continuous", sheet.Hidden: "hidden", sheet.Centre: "centre", sheet.Phantom: "phantom"}[l]
}

func TestDump(t *testing.T) {
	const mm = length.Millimetre
	line := sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Wide, Line: sheet.Hidden, Path: plane.Path{plane.Line(plane.At(0, 0), plane.At(3*mm, 4*mm))}}
	s := sheet.Sheet{Name: "1-a", Title: "T", Description: "D", Width: 297 * mm, Height: 210 * mm, Scale: sheet.Scale{Paper: 1, Real: 10}, Marks: []sheet.Mark{
		line, line,
		sheet.Fill{Layer: sheet.Panel, Tone: sheet.Tint, Region: plane.Region{plane.Rect(plane.At(0, 0), plane.At(2*mm, 3*mm))}},
		sheet.Text{Layer: sheet.Notes, At: plane.At(mm, 2*mm), Height: 5 * mm / 2, Rise: true, String: "say \"R1\""},
		sheet.Dimension{Horizontal: true, Measured: 50 * mm, Figure: "50", Scale: sheet.Scale{Paper: 1, Real: 10}, B: plane.At(5*mm, 0), Line: plane.At(0, -mm), Strokes: []sheet.Stroke{line},
			Texts: []sheet.Text{{String: "50"}, {String: "GAP"}}},
	}}
	require.Equal(t, `sheet 1-a
  title: T
  description: D
  paper 297 × 210 mm, scale 1:10, 5 marks
  dimensions
    "50" 50 mm across 1:10 from (0, 0) to (5, 0) at (0, -1) with "GAP"
  texts
    (1, 2) 2.5 start rising NOTE "say \"R1\""
  drawn
    stroke OUTLINE wide hidden: 3, 3 edges, 0 arcs, 15.00 mm
    fill PANEL tint: 1, 4 edges, 0 arcs, 6.00 mm²
`, dump([]sheet.Sheet{s}))
}
