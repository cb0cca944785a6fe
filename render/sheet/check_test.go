package sheet

import (
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
)

const mm = length.Millimetre

func page(marks ...Mark) Sheet {
	return Sheet{Name: "1-leaf", Width: 297 * mm, Height: 210 * mm, Scale: Scale{1, 10}, Marks: marks}
}

func line(x, y length.Length) plane.Path {
	return plane.Path{{To: plane.At(x*mm, y*mm)}}
}

// Every fault Check knows, and the words that must be in its message.
func TestCheckRefuses(t *testing.T) {
	named := func(name string) Sheet { s := page(); s.Name = name; return s }
	scaled := func(a, b int64) Sheet { s := page(); s.Scale = Scale{a, b}; return s }
	bare := page()
	bare.Width = 0
	for _, c := range []struct {
		sheet Sheet
		want  string
	}{
		{named(""), "no name"},
		{named("a/b"), `"a/b" holds '/'`},
		{named("Tür"), `holds 'ü'`},
		{bare, "0 mm wide and 210 mm high"},
		{scaled(0, 10), "0:10"},
		{scaled(-1, 10), "-1:10"},
		{scaled(1, 2_000_000), "1:2000000"},
		{page(nil), "mark 0"},
		{page(&Stroke{}), "mark 0: a *sheet.Stroke"},
		{page(Stroke{}), "no edges"},
		{page(Stroke{Path: line(0, 0)}), "no length"},
		{page(Stroke{Path: append(line(1, 0), plane.Edge{To: plane.At(mm, mm)})}), "ends at (1, 0) mm but edge 1 begins at (0, 0) mm"},
		{page(Stroke{Layer: 10, Path: line(1, 0)}), "unknown layer 10"},
		{page(Stroke{Weight: 3, Path: line(1, 0)}), "unknown weight 3"},
		{page(Stroke{Line: -1, Path: line(1, 0)}), "unknown line type -1"},
		{page(Stroke{Path: line(1_000_001, 0)}), "from the origin"},
		{page(Stroke{Path: plane.Path{{To: plane.At(mm, 0), Turn: plane.Left}}}), "centre at one end"},
		{page(Stroke{Path: plane.Path{{To: plane.At(mm, 0), Turn: 2}}}), "unknown turn 2"},
		{page(Fill{Tone: 3}), "unknown tone 3"},
		{page(Fill{Region: plane.Region{line(1, 0)}}), "must be closed"},
		{page(Text{String: "a"}), "height is 0 mm"},
		{page(Text{String: "a", Height: mm, Align: 3}), "unknown alignment 3"},
		{page(Dimension{Figure: "10", Scale: Scale{1, 0}}), "scale is 1:0"},
		{page(Dimension{Figure: "10", Texts: []Text{{}}}), `dimension "10": text ""`},
	} {
		require.ErrorContains(t, c.sheet.Check(), c.want)
	}
}

func TestCheckAccepts(t *testing.T) {
	require.NoError(t, page(
		Stroke{Layer: Notes, Weight: Frame, Line: Phantom, Path: line(1, 2)},
		Fill{Tone: Paper},
		Text{Height: mm},
		Dimension{Figure: "10", Strokes: []Stroke{{Path: line(1, 0)}}},
	).Check())
	plain := page()
	plain.Scale = Scale{}
	require.NoError(t, plain.Check(), "the zero Scale means none")
}
