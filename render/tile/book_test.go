package tile

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/render/sheet"
)

// A book counts its pages through, has one overview at its head and one for each
// further drawing of more than two pages, and pages of one size.
func TestBook(t *testing.T) {
	a4, err := Named("A4")
	require.NoError(t, err)
	long, small, two, longer := stick(900, 120), stick(150, 100), stick(400, 150), stick(1200, 100)
	small.Title, two.Title, longer.Title = "A small one", "One of two pages", "A longer one"
	sheets := []sheet.Sheet{long, small, two, longer}
	pages, err := Book(sheets, a4, Options{Revision: "B", Lay: Lying})
	require.NoError(t, err)
	alone := 0
	for _, s := range sheets {
		own, err := Tile(s, a4, Options{Lay: Lying})
		require.NoError(t, err)
		alone += len(own)
	}
	require.Len(t, pages, alone-2, "the small one and that of two pages go without overview")
	overviews := map[int]string{}
	for i, p := range pages {
		require.Equal(t, pages[0].Width, p.Width)
		require.Equal(t, pages[0].Height, p.Height)
		words := wordsOf(p)
		require.Contains(t, words, fmt.Sprintf("PAGE %d OF %d", i+1, len(pages)))
		require.Contains(t, words, "REV B")
		if p.Title == "Overview" {
			overviews[i] = p.Name
		}
	}
	require.Len(t, overviews, 2)
	require.Contains(t, overviews[0], "overview")
	require.Contains(t, wordsOf(pages[len(pages)-1]), "A longer one")

	upright, err := Book(sheets, a4, Options{Lay: Upright})
	require.NoError(t, err)
	require.Less(t, upright[0].Width, upright[0].Height)
	require.Greater(t, pages[0].Width, pages[0].Height)

	_, err = Book(nil, a4, Options{})
	require.ErrorContains(t, err, "no drawing")
	_, err = Book(sheets, a4, Options{Lay: 7})
	require.ErrorContains(t, err, "lay 7")
}

// A drawing as large as the window takes one page; a nanometre more takes two.
func TestWindows(t *testing.T) {
	for _, name := range []string{"A4", "letter", "A3", "tabloid"} {
		paper, err := Named(name)
		require.NoError(t, err)
		windows, err := Windows(paper, Options{})
		require.NoError(t, err)
		for i, lay := range []Lay{Upright, Lying} {
			s := stick(150, 100)
			s.Width, s.Height = windows[i][0], windows[i][1]
			j, err := bind([]sheet.Sheet{s}, paper, Options{Lay: lay})
			require.NoError(t, err)
			require.Equal(t, 1, j[0].grid.rows*j[0].grid.columns, "%s %d", name, lay)
			s.Width += length.Nanometre
			j, err = bind([]sheet.Sheet{s}, paper, Options{Lay: lay})
			require.NoError(t, err)
			require.Equal(t, 2, j[0].grid.columns)
		}
	}
	_, err := Windows(Paper{Name: "stamp", Width: 20 * mm, Height: 30 * mm}, Options{})
	require.ErrorContains(t, err, "larger paper")
}
