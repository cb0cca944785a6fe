package shop

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// only are a work's contours of one operation.
func only(w Work, o machining.Operation) []plane.Path {
	var paths []plane.Path
	for _, c := range w.Setup.Contours {
		if c.Operation == o {
			paths = append(paths, c.Path)
		}
	}
	return paths
}

// The corner jig is made only where corners are squared. Its window's square
// corner stands where the marked wall lines cross, and clears what the cutter
// left round: a cutter of 30 leaves a radius of 15, so that the window goes
// 15 + 12 along each wall.
func TestCornerJig(t *testing.T) {
	has := func(corner string) bool {
		job := planned(t, strings.Replace(model, "clipped", corner, 1))
		return slices.ContainsFunc(job.Works, func(w Work) bool { return w.Part.Labels[0] == "JIG-CORNER" })
	}
	require.False(t, has("clipped"))
	require.False(t, has("rounded"))
	text := strings.Replace(model, "corner: clipped", "corner: squared, rabbet: {cutter: 30}", 1) + "shop: {relief: none, inside_radius: 0}\n"
	w := planned(t, text).of(t, "JIG-CORNER", "front")
	window := only(w, machining.Hole)[0].Bounds()
	require.Equal(t, plane.BoxOf(plane.At(40*mm, 40*mm), plane.At(67*mm, 67*mm)), window)
	lines := only(w, machining.Mark)[:2]
	require.Equal(t, window.Min.X, lines[0][0].From.X, "the upright wall line")
	require.Equal(t, window.Min.Y, lines[1][0].From.Y, "the level wall line")
}

// A flush pull's jig: the window is the mortise, and its side lies flush with
// the nearer edge of the stile.
func TestPullJig(t *testing.T) {
	m, set := resolved(t, model)
	mortise := plane.RoundedRect(plane.BoxOf(plane.At(30*mm, 900*mm), plane.At(70*mm, 1020*mm)), 8*mm)
	cut := solid.Cut{Prism: solid.Prism{Axis: solid.Y, Region: plane.Region{mortise}, To: 12 * mm}, For: "pull"}
	set.Leaf.Parts = slices.Clone(set.Leaf.Parts)
	for i, p := range set.Leaf.Parts {
		if p.Label == "SL" {
			p.Solid.Cuts = append(slices.Clone(p.Solid.Cuts), cut)
			set.Leaf.Parts[i] = p
		}
	}
	job, findings := planOf(set, m)
	require.Empty(t, findings)
	w := job.of(t, "JIG-PULL1", "front")
	hole := only(w, machining.Hole)[0]
	require.InEpsilon(t, mortise.Area(), -hole.Area(), 1e-9)
	// 20 from the right edge of a stile 90 wide, 30 from its left.
	require.Equal(t, w.Setup.Width-20*mm, hole.Bounds().Max.X)
	require.Equal(t, 60*mm, hole.Bounds().Min.X)
	require.Contains(t, strings.Join(w.Part.Notes, ""), "right edge")
	require.Contains(t, strings.Join(w.Part.Notes, ""), "960 mm above")
	require.Contains(t, strings.Join(w.Part.Notes, ""), "12 mm deep")

	stile := job.of(t, "SL", "front")
	require.Equal(t, 12*mm, stile.Setup.Contours[slices.IndexFunc(stile.Setup.Contours, func(c machining.Contour) bool { return c.Operation == machining.Pocket })].Depth)
	require.Equal(t, plane.BoxOf(plane.At(30*mm, 900*mm), plane.At(70*mm, 1020*mm)), only(stile, machining.Pocket)[0].Bounds(), "seen from the front as it is")
}

// The hanger jig bores where the screws are bored in the leaf's top, from its
// left edge and its front.
func TestHangerJig(t *testing.T) {
	m, set := resolved(t, model)
	set.Track.HangerAt[0] = 75 * mm
	bore := func(x length.Length) solid.Bore {
		from := solid.Vec{X: x, Y: 17 * mm, Z: set.Leaf.Height}
		return solid.Bore{From: from, To: from.Add(solid.Vec{Z: -30 * mm}), Diameter: 3 * mm, For: "hanger screw"}
	}
	set.Leaf.Parts = slices.Clone(set.Leaf.Parts)
	for i, p := range set.Leaf.Parts {
		p.Solid.Bores = slices.DeleteFunc(slices.Clone(p.Solid.Bores), func(b solid.Bore) bool { return b.For == "hanger screw" })
		if p.Role == door.StileRole {
			for _, x := range []length.Length{85 * mm, 65 * mm, set.Leaf.Width - 65*mm, set.Leaf.Width - 85*mm} {
				if b := bore(x); p.Solid.Blank.Region.Where(b.From.Flat(solid.Y)) != plane.Outside {
					p.Solid.Bores = append(p.Solid.Bores, b)
				}
			}
		}
		set.Leaf.Parts[i] = p
	}
	job, findings := planOf(set, m)
	require.Empty(t, findings)
	w := job.of(t, "JIG-HANGER", "front")
	require.Equal(t, set.Leaf.Thickness, w.Setup.Height)
	var places []plane.Point
	for _, p := range only(w, machining.Bore) {
		places = append(places, p[0].Centre)
	}
	require.ElementsMatch(t, []plane.Point{plane.At(65*mm, 17*mm), plane.At(85*mm, 17*mm)}, places)
	require.Equal(t, 2, len(only(job.of(t, "SL", "top"), machining.Bore)), "and the stile's own file has them too")
}

// Film is told on the panels and on the sheets they are nested on.
func TestFilm(t *testing.T) {
	job := planned(t, strings.Replace(model, "corner: clipped", "corner: clipped, film: back", 1))
	for _, w := range job.Works {
		require.Equal(t, w.Part.Sheet, slices.Contains(w.Part.Notes, "film on the back face, which lies down"), w.Name)
	}
}
