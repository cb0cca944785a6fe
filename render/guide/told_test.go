package guide_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/render/guide"
)

// outline is a guide's chapters and the titles of their steps.
func outline(g guide.Guide) string {
	var b strings.Builder
	for _, c := range g.Chapters {
		b.WriteString(c.Title + "\n")
		for _, s := range c.Steps {
			b.WriteString("  " + s.Title + "\n")
		}
	}
	return b.String()
}

// The order of work for one sample, as a joiner would do it. Common practice, no
// source.
func TestOrderOfWork(t *testing.T) {
	all := samples(t)
	j := all[slices.IndexFunc(all, func(j job) bool { return j.name == "attic-linen" })]
	require.Equal(t, `Before cutting
  Measure again, with the track in hand
  Machines, each set once
Boards to size
  Choose the boards
  Plane to thickness
  Rip to width
  Crosscut to length
Marking
  Story stick for the stiles
  Name every part
Joints
  Pocket holes in the rails
Assembly
  Put each leaf together dry
  Join the frames
  Check gaps and diagonals
Rabbets, in the joined frame
  Mill the rabbets in passes
  Leave the corners round
Before the finish
  Pilot holes for the edge washers
  Bores for the hangers
  Fill and sand
  Break the edges
Finish
  Prime
  Coats of paint: 2
Panels
  Cut the panels of polycarbonate
  Hold the panels with edge washers
Hanging
  Fix the track
  Screw the hangers to the leaves
  Make the fascia ready
  Hang the leaves
  Fix the floor guides
  Set the bumpers
  Adjust
`, outline(j.g))
}

// Worked by hand. A leaf 30 11/16 by 77 15/16: √(30.6875² + 77.9375²) = 83.7614,
// 83 49/64 to the next 64th; a lite 21 11/16 by 20 13/32: √(21.6875² + 20.40625²) =
// 29.7786, 29 25/32. A cutter 1 1/4 across turns at most 18 000 times a minute
// (router bit speed list, above 1 in up to 2 in). The rabbet 3/4 deep goes in three
// passes of 1/4.
func TestNumbersByHand(t *testing.T) {
	all := samples(t)
	j := all[slices.IndexFunc(all, func(j job) bool { return j.name == "attic-linen" })]
	step := func(title string) guide.Step {
		for _, c := range j.g.Chapters {
			for _, s := range c.Steps {
				if s.Title == title {
					return s
				}
			}
		}
		t.Fatalf("no step %q", title)
		return guide.Step{}
	}
	plain := func(row []string) string { return strings.ReplaceAll(strings.Join(row, " | "), "\u00a0", " ") }
	square := step("Check gaps and diagonals").Table
	require.Equal(t, `leaf, outside | 30 11/16" | 77 15/16" | ≈ 83 49/64"`, plain(square[1]))
	require.Equal(t, `lite, row 1 | 21 11/16" | 20 13/32" | ≈ 29 25/32"`, plain(square[2]))
	passes := step("Mill the rabbets in passes")
	require.Equal(t, [][]string{{"PASS", "DEPTH SET TO"}, {"1", `1/4"`}, {"2", `1/2"`}, {"3", `3/4"`}}, passes.Table)
	require.Contains(t, strings.Join(passes.Lines, " "), "at most 18000 times a minute")
	require.Contains(t, plain(step("Story stick for the stiles").Table[2]), `5 1/4" | upper edge of R1`)
}

// Every setup stands once in the table of machines, those of one machine together,
// with the number of its step.
func TestMachinesAreSetOnce(t *testing.T) {
	for _, j := range samples(t) {
		rows := j.g.Chapters[0].Steps[1].Table[1:]
		n := 0
		for _, c := range j.g.Chapters {
			for _, s := range c.Steps {
				n += len(s.Setups)
			}
		}
		require.Len(t, rows, n, j.name)
		done := map[string]bool{}
		for i, row := range rows {
			if i > 0 && rows[i-1][0] != row[0] {
				done[rows[i-1][0]] = true
			}
			require.False(t, done[row[0]], "%s: %s is set up again", j.name, row[0])
		}
	}
}
