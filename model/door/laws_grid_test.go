package door_test

import (
	"cmp"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// In every column rails and lites add up to the leaf's height, in every row
// stiles, lites and muntins to its width, and each begins where the one before
// it ends.
func TestGridAddsUp(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		require.Len(t, leaf.Lites, leaf.Rows()*leaf.Columns)
		require.Len(t, leaf.Muntins, leaf.Rows()*(leaf.Columns-1))
		for column := range leaf.Columns {
			var at length.Length
			for row, rail := range leaf.Rails {
				require.Equal(t, at, rail.From)
				if at = rail.To; row < leaf.Rows() {
					sight := leaf.Lite(row, column).Sight
					require.Equal(t, []length.Length{at, at + figure(t, set, fmt.Sprintf("lite.%d.height", row+1))}, []length.Length{sight.Min.Y, sight.Max.Y})
					at = sight.Max.Y
				}
			}
			require.Equal(t, leaf.Height, at)
		}
		for row := range leaf.Rows() {
			at := leaf.Stile
			for column := range leaf.Columns {
				lite := leaf.Lite(row, column)
				require.Equal(t, []int{row, column}, []int{lite.Row, lite.Column})
				require.Equal(t, at, lite.Sight.Min.X)
				require.Equal(t, figure(t, set, columnWidth(leaf, column)), lite.Sight.Width())
				if at = lite.Sight.Max.X; column < leaf.Columns-1 {
					m := leaf.Muntins[row*(leaf.Columns-1)+column]
					require.Equal(t, []length.Length{at, at + figure(t, set, "leaf.muntin")}, []length.Length{m.From, m.To})
					require.Equal(t, figure(t, set, fmt.Sprintf("muntin.%d.from", column+1)), at)
					require.Equal(t, row, m.Row)
					at = m.To
				}
			}
			require.Equal(t, leaf.Width, at+leaf.Stile)
		}
	})
}

// columnWidth is the name of the figure of a column's sight width.
func columnWidth(leaf door.Leaf, column int) string {
	if leaf.Columns == 1 {
		return "lite.width"
	}
	return fmt.Sprintf("lite.column.%d.width", column+1)
}

// Lites are as the model asks for: as listed, and those with the rest alike; or
// all alike; or between members whose centres are evenly apart. Alike is to a
// tick.
func TestLitesAreAsAsked(t *testing.T) {
	tried := map[string]int{}
	eachSet(t, func(t *testing.T, model spec.Spec, set door.Set) {
		leaf, l, tick := set.Leaf, model.Leaf.Lites, figure(t, set, "tick")
		var rails, uprights, high, wide []length.Length // centres, sight sizes
		for _, rail := range leaf.Rails {
			rails = append(rails, rail.Centre())
		}
		uprights = append(uprights, leaf.Stile.Half())
		for _, m := range leaf.Muntins[:leaf.Columns-1] {
			uprights = append(uprights, m.Centre())
		}
		uprights = append(uprights, leaf.Width-leaf.Stile.Half())
		for row := range leaf.Rows() {
			high = append(high, leaf.Lite(row, 0).Sight.Height())
		}
		for column := range leaf.Columns {
			wide = append(wide, leaf.Lite(0, column).Sight.Width())
		}
		tried[asAsked(t, "heights", l.Heights, l.Spacing, rails, high, tick)]++
		tried[asAsked(t, "widths", l.Widths, l.Across, uprights, wide, tick)]++
		for i, cross := range model.Leaf.Crosses {
			require.Equal(t, *cross, leaf.Rails[i+1].Width())
		}
	})
	for _, way := range []string{"heights listed", "heights alike", "heights centred", "widths listed", "widths alike", "widths centred"} {
		require.Greater(t, tried[way], *models/50, way)
	}
}

// asAsked checks one direction, and tells what was asked for.
func asAsked(t *testing.T, what string, list []spec.Sight, spacing string, centres, sights []length.Length, tick length.Length) string {
	spread := func(sizes []length.Length) length.Length {
		if len(sizes) == 0 {
			return 0
		}
		return slices.Max(sizes) - slices.Min(sizes)
	}
	switch {
	case list != nil:
		var rest []length.Length
		for i, s := range list {
			if s.Rest {
				rest = append(rest, sights[i])
			} else {
				require.Equal(t, *s.Size, sights[i], what)
			}
		}
		require.LessOrEqual(t, spread(rest), tick, what)
		return what + " listed"
	case spacing == "equal-centres":
		var steps []length.Length
		for i := range len(centres) - 1 {
			steps = append(steps, centres[i+1]-centres[i])
		}
		require.LessOrEqual(t, spread(steps), tick+length.Nanometre, what) // halves of odd widths
		return what + " centred"
	}
	require.LessOrEqual(t, spread(sights), tick, what)
	return what + " alike"
}

// A leaf mirrored about its middle is the leaf of the mirrored model, the one
// whose widths are listed from the other side and whose pull is in the other
// stile. A washer along a rail may be off by a tick for each of them: odd ticks
// are given from the left, and a hanger may then stand clear on its other side.
func TestMirroredLeafIsOfMirroredModel(t *testing.T) {
	reversed := 0
	eachSet(t, func(t *testing.T, model spec.Spec, set door.Set) {
		model.Leaf.Lites.Widths = slices.Clone(model.Leaf.Lites.Widths)
		slices.Reverse(model.Leaf.Lites.Widths)
		if len(model.Leaf.Lites.Widths) > 1 {
			reversed++
		}
		if pull := model.Leaf.Pull; pull != nil {
			turned := *pull
			turned.In = cmp.Or(map[string]string{"left-stile": "right-stile", "right-stile": "left-stile"}[pull.In], pull.In)
			model.Leaf.Pull = &turned
		}
		other, findings := door.Resolve(model)
		require.NotEmpty(t, other.Hung, "%v", findings)
		leaf, tick := set.Leaf, figure(t, set, "tick")
		off := length.Length(0) // of a washer, or what fixes a stop or bead, along a rail
		for _, lite := range leaf.Lites {
			off = max(off, tick*length.Length(max(len(lite.Washers[door.Bottom]), len(lite.Fixings[door.Bottom]))))
		}
		images := map[string]door.Part{}
		for _, part := range other.Leaf.Parts {
			images[part.Label] = part
		}
		require.Len(t, images, len(leaf.Parts))
		hung := set.Track.HangerAt == other.Track.HangerAt
		for _, part := range leaf.Parts {
			image := images[across(leaf, part.Label)]
			if part.Role == door.MuntinRole && leaf.Washer.Stagger {
				require.Len(t, image.Solid.Bores, len(part.Solid.Bores), part.Label)
				part.Solid.Bores, image.Solid.Bores = notAcross(part.Solid.Bores), notAcross(image.Solid.Bores)
			}
			if !hung {
				part, image = unhung(part), unhung(image)
			}
			mirrors(t, leaf.Width, part, image, off)
		}
		var screws, others []solid.Bore // heads and tips
		for _, s := range leaf.Screws {
			screws = append(screws, solid.Bore{From: s.Head, To: s.Tip, Diameter: s.Diameter, For: s.For})
		}
		for _, s := range other.Leaf.Screws {
			others = append(others, solid.Bore{From: s.Head, To: s.Tip, Diameter: s.Diameter, For: s.For})
		}
		require.Len(t, others, len(screws))
		if leaf.Washer.Stagger && leaf.Columns > 1 { // those into stiles are holes of the stiles, too
			screws, others = notAcross(screws), notAcross(others)
		}
		if !hung {
			hanger := func(b solid.Bore) bool { return b.For == "hanger" }
			screws, others = slices.DeleteFunc(screws, hanger), slices.DeleteFunc(others, hanger)
		}
		boresMirror(t, leaf.Width, screws, others, off, "screws")
		require.InEpsilon(t, leaf.Mass, other.Leaf.Mass, 1e-9)
	})
	require.Greater(t, reversed, *models/50)
}

// notAcross are the bores but for those of washers driven to the left or right:
// between one another on the two sides of a muntin they are no mirror images.
func notAcross(bores []solid.Bore) []solid.Bore {
	return slices.DeleteFunc(slices.Clone(bores), func(b solid.Bore) bool {
		return (b.For == "washer" || b.For == "washer screw") && b.From.Z == b.To.Z
	})
}

// unhung is the part without the holes of the hangers.
func unhung(part door.Part) door.Part {
	part.Solid.Bores = slices.DeleteFunc(slices.Clone(part.Solid.Bores), func(b solid.Bore) bool { return b.For == "hanger screw" })
	part.Volume = part.Solid.Volume()
	return part
}

// across is the label of the part that stands on the other side of the leaf's
// middle.
func across(leaf door.Leaf, label string) string {
	var n int
	fmt.Sscanf(label[1:], "%d", &n)
	turned := func(columns int) string {
		row, column := (n-1)/columns, (n-1)%columns
		return fmt.Sprintf("%c%d", label[0], row*columns+columns-column)
	}
	switch {
	case label == "SL":
		return "SR"
	case label == "SR":
		return "SL"
	case label[0] == 'M':
		return turned(leaf.Columns - 1)
	case label[0] == 'P':
		return turned(leaf.Columns)
	}
	return label
}

// mirrors checks that a part is another one's mirror image about the middle of
// the width: the same body, and every bore.
func mirrors(t *testing.T, width length.Length, part, image door.Part, off length.Length) {
	turned, body := part.Solid.Mirror(solid.X, 0).Move(solid.Vec{X: width}), image.Solid
	if part.Role == door.RailRole {
		boresMirror(t, width, part.Solid.Bores, body.Bores, off, part.Label)
	} else {
		boresMirror(t, width, part.Solid.Bores, body.Bores, 0, part.Label)
	}
	turned.Bores, body.Bores = nil, nil
	require.InEpsilon(t, turned.Volume(), body.Volume(), 1e-9, part.Label)
	require.InEpsilon(t, turned.Volume(), solid.Clash(turned, body), 1e-9, part.Label)
}

// boresMirror checks that holes or screws are the others' mirror images; those
// of washers may be off so far.
func boresMirror(t *testing.T, width length.Length, bores, others []solid.Bore, off length.Length, what string) {
	bores, others = slices.Clone(bores), slices.Clone(others)
	for i, b := range bores {
		bores[i].From.X, bores[i].To.X = width-b.From.X, width-b.To.X
	}
	slices.SortFunc(bores, inOrder)
	slices.SortFunc(others, inOrder)
	require.Len(t, others, len(bores), what)
	for i, b := range bores {
		c := others[i]
		if by := b.From.X - c.From.X; by.Abs() <= off && slices.Contains([]string{"washer screw", "washer", "stop screw", "stop"}, b.For) {
			b.From.X, b.To.X = b.From.X-by, b.To.X-by
		}
		require.Equal(t, b, c, what)
	}
}

// inOrder sorts bores by purpose, height, depth and place across.
func inOrder(a, b solid.Bore) int {
	return cmp.Or(cmp.Compare(a.For, b.For), cmp.Compare(a.From.Z, b.From.Z), cmp.Compare(a.To.Z, b.To.Z), cmp.Compare(a.From.Y, b.From.Y), cmp.Compare(a.From.X, b.From.X))
}

// Shares across a leaf add up, differ by at most a tick and, but for a
// nanometre that cannot be halved, read the same from both ends; where whole
// ticks can be paired they are whole ticks.
func TestSharesReadAlikeFromBothEnds(t *testing.T) {
	c := newChance(0)
	for range 20 * *models {
		n, tick := 1+c.IntN(12), length.Length(1+c.Int64N(1000))
		whole := length.Length(c.Int64N(1_000_000))
		if c.odds(50) {
			whole = whole.DownTo(tick)
		}
		parts := door.ShareAlike(whole, tick, n)
		require.Equal(t, whole, length.Sum(parts...))
		require.LessOrEqual(t, slices.Max(parts)-slices.Min(parts), tick, "%v", parts)
		for i := range n / 2 {
			require.LessOrEqual(t, (parts[i] - parts[n-1-i]).Abs(), length.Nanometre, "%v", parts)
		}
		if base := whole.DownTo(tick); base == whole && (n%2 == 1 || whole/tick%2 == 0) {
			for _, part := range parts {
				require.Zero(t, part%tick, "%v of %v by %d", parts, whole, tick)
			}
		}
	}
}
