package door_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
)

// checks are figures worked out by hand, by model; sizes as length.Parse reads
// them. Sources stand beside them.
var checks = []struct{ model, figures string }{
	// A sheet midway in the frame's thickness; common practice, no source.
	{"leaf.thickness=1 3/8; panel.thickness=1/8", "rabbet.front=5/8; rabbet.depth=3/4"},
	{"leaf.thickness=1 1/2; panel.thickness=1/8", "rabbet.front=11/16; rabbet.depth=13/16"},
	{"panel.rabbet.depth=5/8", "rabbet.front=3/4"},
	// American Softwood Lumber Standard PS 20, table 3: a dry 2x6 is 1 1/2 by
	// 5 1/2. Planing and ripping: arithmetic.
	{"leaf.thickness=; leaf.stile=; leaf.rail=; stock.board=2x6; stock.plane=1/16; stock.rip=1/4",
		"stock.dressed.thickness=1 1/2; stock.dressed.width=5 1/2; leaf.thickness=1 3/8; leaf.stile=5; rail.bottom=5; rail.top=5"},
	{"leaf.thickness=; leaf.stile=; leaf.rail=; stock.board=2x6; stock.season=green", "leaf.thickness=1 9/16; leaf.stile=5 5/8"},
	// Two leaves from jamb to jamb: w = (W + o)/2; common practice, no source.
	{"hanging.overlap=1 1/2", "leaf.width=30 3/4; overlap.1=1 1/2; leaf.1.left=0; leaf.2.left=29 1/4; opening.clear=29 1/4"},
	{"hanging.overlap=stile", "leaf.width=32; overlap.1=4"},
	{"leaf.width=31", "leaf.width=31; overlap.1=2"},
	{"hanging.jamb_gap.left=1/8; hanging.jamb_gap.right=1/4; hanging.overlap=1 1/2", "leaf.width=30 9/16; leaf.1.left=1/8; leaf.2.left=29 3/16"},
	// n leaves, every neighbour on the other track: w = (W + (n−1) o)/n.
	{"opening.width=90; hanging.tracks=[front, back, front]; hanging.overlap=1 1/2", "leaf.width=31; overlap.1=1 1/2; overlap.2=1 1/2; leaf.3.left=59"},
	// Four leaves, the middle ones meeting on one track: 4 w = W + 2 o − m.
	{"opening.width=120 1/8; hanging.tracks=[back, front, front, back]; hanging.overlap=2; hanging.meeting_gap=1/8",
		"leaf.width=31; leaf.2.left=29; leaf.3.left=60 1/8; leaf.4.left=89 1/8; opening.clear=58 1/8"},
	// Height: least height less head drop and floor gap; common practice, no source.
	{"opening.height=; opening.height.left=80 3/16; opening.height.middle=80 1/8; opening.height.right=80 1/4; hanging.track.head_drop=2; hanging.floor_gap=3/8",
		"opening.height=80 1/8; leaf.height=77 3/4; leaf.bottom=3/8"},
	// Least usable width: the left jamb leans 1/4 in to the right, so that at
	// the head the right one stands at 60 3/16; arithmetic.
	{"opening.width=; opening.width.bottom=60 1/8; opening.width.top=59 15/16; opening.plumb.left=1/4", "opening.width=59 7/8"},
	{"opening.width=; opening.width.bottom=60; opening.width.middle=59 7/8; opening.width.top=60", "opening.width=59 7/8"},
	// Five equal rails, four lites: a quarter of the way between the outer
	// rails' centres from mark to mark; common practice, no source.
	{"leaf.height=81 3/4; opening.height=84; leaf.rail=5; leaf.lites.rows=4",
		"rail.1.centre=2 1/2; rail.2.centre=21 11/16; rail.3.centre=40 7/8; rail.4.centre=60 1/16; rail.5.centre=79 1/4; lite.1.height=14 3/16; lite.4.height=14 3/16"},
	{"leaf.height=81 3/4; opening.height=84; leaf.rail=5; leaf.lites.rows=4; leaf.lites.spacing=equal-centres",
		"rail.centres=76 3/4; rail.2.centre=21 11/16; rail.3.centre=40 7/8; rail.4.centre=60 1/16"},
	// Passes: whole ones of the most depth, the last to full depth; common
	// practice, no source.
	{"panel.rabbet.per_pass=1/4", "rabbet.pass.1=1/4; rabbet.pass.2=1/2; rabbet.pass.3=3/4"},
	{"panel.rabbet.per_pass=5/16", "rabbet.pass.1=5/16; rabbet.pass.2=5/8; rabbet.pass.3=3/4"},
	{"panel.rabbet.per_pass=1", "rabbet.pass.1=3/4"},
	// Hole centre f + p + D/2 − press: 5/8 + 1/8 + 1/4 − press.
	{"panel.held_by.washer.outside=1/2", "washer.depth=1"},
	{"panel.held_by.washer.outside=1/2; panel.held_by.press=1/64", "washer.depth=63/64"},
	{"panel.edge_gap=1/16; panel.held_by.washer.thickness=3/16", "washer.lap=1/8; washer.least_lap=1/16; panel.bite=5/16; panel.least_bite=1/4"},
	// Panel: sight + 2 rabbets − 2 gaps: 23 + 3/4 − 1/8.
	{"leaf.width=31; panel.edge_gap=1/16", "lite.width=23; panel.1.width=23 5/8"},
	// The clip of a 1 1/4 in cutter, 0.290 in, up to the next 1/16: 5/16.
	{"panel.edge_gap=1/16; panel.corner=clipped", "rabbet.corner=5/8; corner.clip=5/16"},
	{"panel.edge_gap=1/16; panel.corner=rounded", "corner.radius=9/16"},
	// Three columns: two stiles and two muntins of half a stile leave
	// 30 3/4 − 8 − 4 = 18 3/4, a third of which is 6 1/4. Common practice, no
	// source; so are the divisions below.
	{"leaf.lites.columns=3", "leaf.muntin=2; lite.column.1.width=6 1/4; lite.column.2.width=6 1/4; lite.column.3.width=6 1/4; muntin.1.from=10 1/4; muntin.2.from=18 1/2; panel.2.width=6 7/8"},
	// A narrow stile, half of which holds no two rabbets.
	{"leaf.stile=3; leaf.lites.columns=2", "leaf.muntin=2; lite.column.1.width=11 3/8"},
	// Centres evenly apart: (30 3/4 − 4)/3 = 856/32 ÷ 3, the odd 32nd in the
	// middle; outer lites less half a stile and half a muntin, the inner one
	// less a muntin.
	{"leaf.lites.columns=3; leaf.lites.across=equal-centres", "muntin.centres=26 3/4; lite.column.1.width=5 29/32; lite.column.2.width=6 15/16; lite.column.3.width=5 29/32; muntin.1.from=9 29/32; muntin.2.from=18 27/32"},
	// An odd 32nd between two lites is halved: the muntin is in the middle.
	{"leaf.width=31 1/32; leaf.lites.columns=2", "lite.column.1.width=10 33/64; lite.column.2.width=10 33/64; muntin.1.from=14 33/64"},
	// Listed: 30 3/4 − 8 − 2 − 10, and 77 3/4 − 12 − 30.
	{"leaf.lites.widths=[rest, 10]", "lite.column.1.width=10 3/4; lite.column.2.width=10; muntin.1.from=14 3/4"},
	{"leaf.lites.heights=[30, rest]", "lite.1.height=30; lite.2.height=35 3/4; rail.2.centre=36; panel.1.height=30 5/8; panel.2.height=36 3/8"},
	// A wide cross rail: 77 3/4 − 4 − 6 − 4 − 4 = 59 3/4 for three lites, the
	// odd 32nd to the lowest.
	{"leaf.crosses=[6, 4]", "rail.cross.1=6; rail.cross.2=4; lite.1.height=19 15/16; lite.2.height=19 29/32; lite.3.height=19 29/32; rail.2.centre=26 15/16"},
}

func TestFiguresByHand(t *testing.T) {
	for _, c := range checks {
		set := resolved(t, least, c.model)
		for name, want := range pairs(c.figures) {
			size, err := length.Parse(want, length.Inches)
			require.NoError(t, err, want)
			require.Equal(t, length.Style{Unit: length.Inches}.Format(size), length.Style{Unit: length.Inches}.Format(figure(t, set, name)), "%s: %s", c.model, name)
			require.Equal(t, size, figure(t, set, name), "%s: %s", c.model, name)
		}
	}
}

// Four lites with squared corners have sixteen corners to chop, and five rails
// of 5 in with three holes an end thirty pocket holes; common practice, no
// source.
func TestCounts(t *testing.T) {
	leaf := resolved(t, least, "leaf.rail=5; leaf.lites.rows=4; panel.corner=squared").Leaf
	square := 0
	for _, lite := range leaf.Lites {
		for i, e := range lite.Rabbet[0] {
			next := lite.Rabbet[0][(i+1)%len(lite.Rabbet[0])]
			if e.Turn == 0 && next.Turn == 0 && (e.From.X == e.To.X) != (next.From.X == next.To.X) {
				square++
			}
		}
	}
	require.Equal(t, 16, square)
	pockets, screws := 0, 0
	for _, part := range leaf.Parts {
		for _, b := range part.Solid.Bores {
			if b.For == "pocket" {
				pockets++
			}
		}
	}
	for _, s := range leaf.Screws {
		if s.For == "pocket" {
			screws++
		}
	}
	require.Equal(t, []int{30, 30, 30}, []int{leaf.Joint.Pocket.Holes, pockets, screws})
	require.Equal(t, []int{3, 3, 3, 3, 3}, leaf.Joint.Pocket.PerEnd)
	require.Zero(t, leaf.Rabbet.Corner)
}

// By hand from (r − g) − √(r² − (r − g)²): both ends of the clip within the
// cutter's arc. Common practice, no source; the formula that only asks the
// middle to clear gives 0.586 r − 2 g and is too small.
func TestLeastClip(t *testing.T) {
	for _, c := range []struct {
		radius, gap length.Length
		want        string
	}{
		{5 * in / 8, in / 16, ".290"}, {11 * in / 16, in / 16, ".339"},
		{in / 2, 0, ".500"},           // without a gap the clip takes the whole arc
		{in / 2, 3 * in / 20, "0"},    // a square corner clears: gap over 0.2929 r
		{in / 2, 7 * in / 50, ".013"}, // and just not: 0.28 r
		{in / 2, in, "0"}, {0, 0, "0"},
	} {
		require.Equal(t, c.want, thousandths(door.LeastClip(c.radius, c.gap)), "%v, %v", c.radius, c.gap)
	}
}

// By hand from (√2 (r − g) − r) ÷ (√2 − 1); common practice, no source.
func TestLeastRadius(t *testing.T) {
	for _, c := range []struct {
		radius, gap length.Length
		want        string
	}{
		{5 * in / 8, in / 16, ".412"}, {in / 2, 0, ".500"}, {in / 2, 3 * in / 20, "0"}, {0, 0, "0"},
	} {
		require.Equal(t, c.want, thousandths(door.LeastRadius(c.radius, c.gap)), "%v, %v", c.radius, c.gap)
	}
}

func thousandths(l length.Length) string {
	if l == 0 {
		return "0"
	}
	return fmt.Sprintf("%.3f", l.Inches())[1:]
}
