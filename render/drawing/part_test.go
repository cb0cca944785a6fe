package drawing

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/render/sheet"
)

// eachPart calls a function for every different wooden part of every sample.
func eachPart(t *testing.T, do func(name string, p *page, l laidPart)) {
	t.Helper()
	paths, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		m, _, err := spec.ReadFile(path)
		require.NoError(t, err)
		s, _ := door.Resolve(m)
		papers, err := papersOf(s)
		require.NoError(t, err)
		for _, k := range kinds(s.Leaf) {
			if k.first.Role != door.PanelRole {
				do(filepath.Base(path)+" "+k.labels[0], newPage(s, papers[0], false), lay(k))
			}
		}
	}
}

// A pilot of a panel's holder is drilled from the rabbet's wall, so far inside the
// edge as the rabbet is wide, and its table says so.
func TestHolderPilotsBeginAtTheRabbetsWall(t *testing.T) {
	seen := map[string]int{}
	eachPart(t, func(name string, p *page, l laidPart) {
		rabbet := p.set.Leaf.Rabbet
		if rabbet.Kind == door.Groove {
			return
		}
		faces := l.faces()
		for _, h := range l.holes() {
			if h.use != "washer screw" && h.use != "stop screw" {
				continue
			}
			off := h.at.Z
			if h.face == faces[0].word {
				off = l.width - h.at.Z
			}
			require.Equal(t, "rabbet", h.wall, "%s: hole at %v", name, h.at)
			require.Equal(t, "rabbet wall, "+h.face, h.from(), name)
			require.InDelta(t, rabbet.Width.MM(), off.MM(), mouthOff.MM(), "%s: hole at %v", name, h.at)
			seen[h.use]++
		}
	})
	require.Positive(t, seen["washer screw"])
	require.Positive(t, seen["stop screw"])
}

// A hole told from a face itself has its mouth there, and begins at once in wood.
func TestHolesBeginInTheFaceTheyName(t *testing.T) {
	n := 0
	eachPart(t, func(name string, p *page, l laidPart) {
		left, right := l.ends()
		faces := l.faces()
		for _, h := range l.holes() {
			off := map[string]length.Length{faces[0].word: l.width - h.at.Z, faces[1].word: h.at.Y, faces[2].word: h.at.Z,
				faces[3].word: l.thickness - h.at.Y, left: h.at.X, right: l.length - h.at.X}
			require.Contains(t, off, h.face, name)
			if h.wall == "" {
				require.LessOrEqual(t, off[h.face], mouthOff, "%s: %s at %v", name, h.use, h.at)
				n++
			} else {
				require.Greater(t, off[h.face], mouthOff, "%s: %s at %v", name, h.use, h.at)
			}
		}
	})
	require.Positive(t, n)
}

// The tables count every hole and every cut but rabbets once, and have as many
// places as they count.
func TestPartTablesCountAll(t *testing.T) {
	eachPart(t, func(name string, p *page, l laidPart) {
		cuts := 0
		for _, m := range l.milled() {
			if m.use != "rabbet" {
				cuts++
			}
		}
		for _, wide := range []length.Length{0, 120 * mm, 300 * mm} {
			require.Equal(t, len(l.holes()), counts(t, name, p.holeRows(l, wide)))
			require.Equal(t, cuts, counts(t, name, p.cutRows(l, wide)))
		}
	})
}

// counts adds up a table's numbers and checks that each row has as many places.
func counts(t *testing.T, name string, rows [][]string) (sum int) {
	t.Helper()
	row, places := 0, 0
	check := func() { require.Equal(t, row, places, "%s: %q", name, rows) }
	for _, cells := range rows[1:] {
		if cells[1] != "" {
			check()
			row, places = 0, 0
			for _, digit := range cells[1] {
				row = 10*row + int(digit-'0')
			}
			sum += row
		}
		places += len(strings.Split(cells[len(cells)-1], ", "))
	}
	check()
	return sum
}

// Mortises, and tenons with their haunches, come into the table with the depth and
// length that the joint has.
func TestDepthsOfJoints(t *testing.T) {
	mortises, haunches := 0, 0
	eachPart(t, func(name string, p *page, l laidPart) {
		if !strings.HasPrefix(name, "tenon-dresser") {
			return
		}
		tenon := p.set.Leaf.Joint.Tenon
		for _, m := range l.milled() {
			long, wide, deep := m.size(l)
			switch {
			case m.use == "mortise":
				require.Equal(t, tenon.Mortise, deep, name)
				require.Equal(t, tenon.Thickness, wide, name)
				mortises++
			case m.use == "haunch" && l.first.Role == door.RailRole:
				require.Equal(t, tenon.Length-tenon.Haunch, long, name)
				haunches++
			}
		}
	})
	require.Positive(t, mortises)
	require.Positive(t, haunches)
}

// The heights of a tenon stand across the front.
func TestTenonHeightsAcrossTheFront(t *testing.T) {
	n := 0
	eachPart(t, func(name string, p *page, l laidPart) {
		for _, m := range l.milled() {
			if !m.beside {
				continue
			}
			s := partStack{page: p, part: l, scale: catalog.Scale{Paper: 1, Real: 5}}
			at := s.rows(l.faces()[1]).left[0].At
			for _, z := range []length.Length{m.low.Z, m.high.Z} {
				require.True(t, slices.ContainsFunc(at, func(x length.Length) bool { return (x - z).Abs() < mm/10 }), "%s: %v has no %v", name, at, z)
			}
			n++
		}
	})
	require.Positive(t, n)
}

// Views of n faces are shared among columns in every way: 2ⁿ⁻¹ of them.
func TestSplits(t *testing.T) {
	for n := 1; n <= 4; n++ {
		all := splits(n)
		require.Len(t, all, 1<<(n-1))
		for _, columns := range all {
			sum := 0
			for _, c := range columns {
				require.Positive(t, c)
				sum += c
			}
			require.Equal(t, n, sum)
		}
	}
}

// However views are arranged, none lies on another, and all lie in the zone, be it
// as tight as may be.
func TestArrangedViewsLieApart(t *testing.T) {
	n := 0
	eachPart(t, func(name string, p *page, l laidPart) {
		s := partStack{page: p, part: l, scale: catalog.Scale{Paper: 1, Real: 50}}
		shown := l.shown()
		boxes := s.boxes(shown)
		for _, columns := range splits(len(shown)) {
			for _, place := range []endPlace{besideFront, ownColumn, belowFaces} {
				for wide := 60 * mm; wide < 900*mm; wide += 13 * mm {
					zone := plane.BoxOf(plane.At(20*mm, 30*mm), plane.At(20*mm+wide, 400*mm))
					views, ok := s.arrange(zone, shown, boxes, columns, place)
					if !ok {
						continue
					}
					require.Len(t, views, len(shown)+1)
					require.Empty(t, touching(views, shown, boxes, zone), "%s %v %v", name, columns, place)
					n++
				}
			}
		}
	})
	require.Greater(t, n, 100)
}

// touching are the boxes of views that lie on another or not in the zone.
func touching(views []placedView, shown []face, boxes []plane.Box, zone plane.Box) (bad []plane.Box) {
	var taken []plane.Box
	for _, v := range views {
		box := boxes[len(shown)]
		if !v.end {
			box = boxes[slices.Index(shown, v.face)]
		}
		box = plane.Box{Min: box.Min.Add(v.at.X, v.at.Y), Max: box.Max.Add(v.at.X, v.at.Y)}
		on := func(other plane.Box) bool {
			return box.Max.X > other.Min.X && other.Max.X > box.Min.X && box.Max.Y > other.Min.Y && other.Max.Y > box.Min.Y
		}
		if zone.Join(box) != zone || slices.ContainsFunc(taken, on) {
			bad = append(bad, box)
		}
		taken = append(taken, box)
	}
	return bad
}

// No part of a sample loses a view, and rails and muntins up to 800 mm are drawn at
// 1:10 or larger.
func TestPartSheetsShowAll(t *testing.T) {
	eachPart(t, func(name string, p *page, l laidPart) {
		partSheet(l.kind)(p)
		require.NoError(t, p.err)
		require.Empty(t, p.unplaced, name)
		require.False(t, p.mixed, name)
		if l.length <= 800*mm {
			require.False(t, larger(sheet.Scale{Paper: 1, Real: 10}, p.scale), "%s is drawn at %s", name, p.scaleName)
		}
	})
}
