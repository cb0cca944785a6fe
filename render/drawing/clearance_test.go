package drawing_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/render/drawing"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// written are the texts of a sample's clearance sheet, its fractions plain.
func written(t *testing.T, path string) []string {
	t.Helper()
	sheets, err := drawing.Draw(sample(t, path), drawing.Options{Only: []string{"clearance"}})
	require.NoError(t, err)
	require.Len(t, sheets, 1)
	var all []string
	for _, mark := range sheets[0].Marks {
		switch m := mark.(type) {
		case sheet.Text:
			all = append(all, lettering.Plain(m.String))
		case sheet.Dimension:
			t.Fatalf("a true dimension in a view without scale: %q", m.Figure)
		}
	}
	return all
}

// Worked by hand. Linen store: the opening is 59 7/8 wide at the floor and 60 at
// the head, its left jamb upright, so that 1/8 is left at the right above; the
// floor lies 80 1/4 − 80 3/16 = 1/16 lower there, below a gap of 3/8. A leaf
// 30 11/16 wide slides 59 7/8 − 30 11/16 = 29 3/16. Pantry: 1498 − 1483 = 15 more at the
// floor, 6 of it left of a left jamb that leans by 6, 9 right; the floor falls
// from 2041 by 11 to 2052.
func TestClearanceByHand(t *testing.T) {
	for path, want := range map[string][]string{
		"../../samples/attic-linen.yaml":     {"1/8", "3/8", "7/16", "1 7/8", "1 1/2", "0 to 29 3/16", "least 3/8"},
		"../../samples/pantry-one-lite.yaml": {"6", "9", "45", "0 to 719", "~ 20.9"},
		"../../samples/gallery-four.yaml":    {"1/16", "1/8", "3/16", "0 to 58 1/16", "30 15/16 to 89", "least 1/2"},
	} {
		got := written(t, path)
		for _, figure := range want {
			require.Contains(t, got, figure, path)
		}
		for _, text := range got {
			require.False(t, strings.HasPrefix(text, "No room"), "%s: %s", path, text)
		}
	}
}
