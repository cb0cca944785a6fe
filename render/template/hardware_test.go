package template

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

// crosses are the middles of the crosses on a template, relative to the lower
// left corner of its outline.
func crosses(t *testing.T, p sheet.Sheet) (at []plane.Point) {
	t.Helper()
	var outline plane.Box
	for _, m := range p.Marks {
		if s, ok := m.(sheet.Stroke); ok && s.Layer == sheet.Outline && s.Weight == sheet.Wide && len(s.Path) == 4 {
			outline = s.Path.Bounds()
		}
	}
	require.NotZero(t, outline.Width())
	for _, m := range p.Marks {
		s, ok := m.(sheet.Stroke)
		if !ok || s.Layer != sheet.CentreMark || s.Line != sheet.Continuous || s.Path[0].From.Y != s.Path[0].To.Y {
			continue
		}
		middle := s.Path[0].Middle()
		at = append(at, middle.Add(-outline.Min.X, -outline.Min.Y))
	}
	return at
}

// The hanger's template has the set's screws of the left hanger, from the
// leaf's left edge and from its front.
func TestHangerHolesAreTheSet(t *testing.T) {
	every(t, func(t *testing.T, s door.Set, sheets []sheet.Sheet) {
		i := slices.IndexFunc(sheets, func(p sheet.Sheet) bool { return p.Name == "hanger" })
		require.GreaterOrEqual(t, i, 0)
		var want []plane.Point
		for _, screw := range s.Leaf.Screws {
			if screw.For == "hanger" && screw.Head.X < s.Leaf.Width.Half() {
				want = append(want, plane.At(screw.Head.X, screw.Head.Y))
			}
		}
		require.NotEmpty(t, want)
		require.ElementsMatch(t, want, crosses(t, sheets[i]))
	})
}

// Every pull of the set has a template of its size at its place across the
// part; pulls that are alike share one.
func TestPullsAreTheSet(t *testing.T) {
	found := 0
	every(t, func(t *testing.T, s door.Set, sheets []sheet.Sheet) {
		all, labels := mortises(s.Leaf)
		n := 0
		for i, m := range all {
			n += len(labels[i])
			for _, pull := range s.Leaf.Pulls {
				if pull.Label != labels[i][0] || pull.Back != m.back {
					continue
				}
				require.InDelta(t, pull.Width.MM(), m.shape.Bounds().Width().MM(), 2e-6)
				require.InDelta(t, pull.Height.MM(), m.shape.Bounds().Height().MM(), 2e-6)
				require.Equal(t, pull.Depth, m.deep)
				require.InDelta(t, pull.Centre.Y.MM(), m.up.MM(), 2e-6)
				least, most := m.part.Solid.Bounds()
				across := pull.Centre.X - least.X
				if m.back {
					across = most.X - pull.Centre.X
				}
				b := m.shape.Bounds()
				require.InDelta(t, across.MM(), (b.Min.X + b.Width().Half()).MM(), 2e-6)
				found++
			}
		}
		require.Equal(t, len(s.Leaf.Pulls), n)
		drawn := 0
		for _, p := range sheets {
			if len(p.Name) >= 4 && p.Name[:4] == "pull" {
				drawn++
			}
		}
		require.Equal(t, len(all), drawn)
	})
	require.Positive(t, found)
}

// Seats of each kind are named and seen as they are.
func TestSeatsInWords(t *testing.T) {
	for _, c := range []struct{ sample, word, from string }{
		{"attic-linen", "Rabbet", "Seen from the back."},
		{"grooved-pantry", "Groove", "Seen from the back."},
		{"bead-vitrine", "Rabbet", "Seen from the front."},
	} {
		s := sample(t, c.sample)
		words, f := wordsOf(seatCorners(s)[0]), length.Style{Unit: s.Units}.Format
		wide, deep := s.Leaf.Rabbet.Width, s.Leaf.Rabbet.Depth
		if s.Leaf.Rabbet.Kind == door.Groove {
			wide, deep = deep, wide
		}
		require.Contains(t, words, c.word+" "+f(wide)+" wide and "+f(deep)+" deep")
		require.Contains(t, words, c.from)
	}
}
