package cutting

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"stilewright/model/length"
)

// Each case spoils a good job in one way; the fault names its rule and holds
// the words listed, both numbers among them.
func TestBoardFaults(t *testing.T) {
	for _, c := range []struct {
		rule  Rule
		spoil func(j *BoardJob)
		says  string
	}{
		{RuleTooBig, func(j *BoardJob) { j.Parts[0].Length = 97 * length.Inch }, "2463.8 mm 2438.4 mm"},
		{RuleTooBig, func(j *BoardJob) { j.TrimStart = 17 * length.Inch }, "2032 mm 2006.6 mm"},
		{RuleKerf, func(j *BoardJob) { j.Kerf = 96 * length.Inch }, "2438.4 mm"},
		{RuleKerf, func(j *BoardJob) { j.Kerf = -1 }, "-0.000001 mm"},
		{RuleTrim, func(j *BoardJob) { j.TrimEnd = 100 * length.Inch }, "2540 mm 2438.4 mm"},
		{RulePrice, func(j *BoardJob) { j.Boards[0].Price = -5 }, "-5 100000000"},
		{RulePrice, func(j *BoardJob) { j.Boards[0].InHand, j.Boards[0].Available, j.Boards[0].Price = true, 1, 3 }, "3 0"},
		{RuleUnpriced, func(j *BoardJob) {
			j.Boards[0].Price = 7
			j.Boards = append(j.Boards, Board{Name: "other", Length: length.Foot})
		}, "other board 1"},
		{RuleUnknown, func(j *BoardJob) { j.Parts[0].From = []string{"oak"} }, "oak board 1"},
		{RuleTwice, func(j *BoardJob) { j.Boards = append(j.Boards, j.Boards[0]) }, "board 1"},
		{RuleQuantity, func(j *BoardJob) { j.Parts[1].Quantity = 0 }, "P2 0 1"},
		{RuleQuantity, func(j *BoardJob) { j.Parts[1].Quantity = -3 }, "P2 -3"},
		{RuleTooMany, func(j *BoardJob) { j.Parts[1].Quantity = math.MaxInt }, "20000"},
		{RuleSize, func(j *BoardJob) { j.Parts[1].Length = 0 }, "P2 0 mm"},
		{RuleSize, func(j *BoardJob) { j.Boards[0].Length = -length.Inch }, "-25.4 mm"},
		{RuleTooLong, func(j *BoardJob) { j.Boards[0].Length = 1 << 62 }, "100000 mm"},
		{RuleAvailable, func(j *BoardJob) { j.Boards[0].Available = -2 }, "-2 0"},
		{RuleAvailable, func(j *BoardJob) { j.Boards[0].InHand = true }, "0 available"},
		{RuleEmpty, func(j *BoardJob) { j.Parts = nil }, "0 parts 1 boards"},
		{RuleNoStock, func(j *BoardJob) { j.Boards = nil }, "2 parts 0 boards"},
		{RuleShort, func(j *BoardJob) { j.Boards[0].Available = 2 }, "8940.8 mm 4876.8 mm"},
	} {
		j := boardJob(t, "0.125; 96; 80x4 32x1")
		c.spoil(&j)
		_, err := LayOutBoards(j)
		holdsFault(t, err, c.rule, c.says)
	}
}

func TestSheetFaults(t *testing.T) {
	for _, c := range []struct {
		rule  Rule
		spoil func(j *SheetJob)
		says  string
	}{
		{RuleTooBig, func(j *SheetJob) { j.Pieces[0].Height = 49 * length.Inch }, "1244.6 mm 1219.2 mm"},
		{RuleTooBig, func(j *SheetJob) { j.Pieces[0].Height = 95 * length.Inch }, "fit turned"},
		{RuleTrim, func(j *SheetJob) { j.Trim = 24 * length.Inch }, "1219.2 mm"},
		{RuleKerf, func(j *SheetJob) { j.Kerf = 48 * length.Inch }, "1219.2 mm"},
		{RulePrice, func(j *SheetJob) { j.Sheets[0].Price = -5 }, "-5 100000000"},
		{RuleUnknown, func(j *SheetJob) { j.Pieces[0].From = []string{"ply"} }, "ply sheet 1"},
		{RuleQuantity, func(j *SheetJob) { j.Pieces[0].Quantity = 0 }, "L1 0 1"},
		{RuleTooMany, func(j *SheetJob) { j.Pieces[0].Quantity = math.MaxInt }, "2000"},
		{RuleSize, func(j *SheetJob) { j.Pieces[0].Width = 0 }, "0 mm 1016 mm"},
		{RuleSize, func(j *SheetJob) { j.Sheets[0].Width = 0 }, "0 mm 1219.2 mm"},
		{RuleTooLong, func(j *SheetJob) { j.Sheets[0].Width = 1 << 62 }, "20000 mm"},
		{RuleEmpty, func(j *SheetJob) { j.Pieces = nil }, "0 pieces 1 sheets"},
		{RuleNoStock, func(j *SheetJob) { j.Sheets = nil }, "1 pieces 0 sheets"},
		{RuleShort, func(j *SheetJob) { j.Sheets[0].Available = 1 }, "mm²"},
	} {
		j := sheetJob(t, "0.125 0; 96x48; 30x40*5")
		c.spoil(&j)
		_, err := LayOutSheets(j)
		holdsFault(t, err, c.rule, c.says)
	}
}

func TestFilmFaults(t *testing.T) {
	good := FilmJob{RollWidth: 600 * length.Millimetre, Faces: []FilmFace{{"L", length.Metre, length.Metre, 1, UpTheFace}}}
	for _, c := range []struct {
		rule  Rule
		spoil func(j *FilmJob)
		says  string
	}{
		{RuleOverlap, func(j *FilmJob) { j.Overlap = j.RollWidth }, "600 mm"},
		{RuleSize, func(j *FilmJob) { j.RollWidth = 0 }, "0 mm"},
		{RuleSize, func(j *FilmJob) { j.Margin = -1 }, "-0.000001 mm"},
		{RuleQuantity, func(j *FilmJob) { j.Faces = []FilmFace{{Label: "L"}} }, "L 0"},
		{RuleSize, func(j *FilmJob) { j.Faces = []FilmFace{{Label: "L", Quantity: 1}} }, "L 0 mm"},
		{RuleTooBig, func(j *FilmJob) { j.RollLength = 900 * length.Millimetre }, "1000 mm 900 mm"},
		{RuleTooMany, func(j *FilmJob) { j.RollWidth = 2 }, "20001 20000"},
		{RuleDirection, func(j *FilmJob) { j.Faces = []FilmFace{{"L", 1, 1, 1, 9}} }, "9 3"},
		{RuleEmpty, func(j *FilmJob) { j.Faces = nil }, "0 faces"},
	} {
		j := good
		c.spoil(&j)
		_, err := LayOutFilm(j)
		holdsFault(t, err, c.rule, c.says)
	}
	if _, err := LayOutFilm(good); err != nil {
		t.Error(err)
	}
}

func holdsFault(t *testing.T, err error, rule Rule, says string) {
	t.Helper()
	if err == nil {
		t.Errorf("%s: no fault", rule)
		return
	}
	joined, ok := err.(interface{ Unwrap() []error })
	if !ok {
		t.Errorf("%s: %v is not a list of faults", rule, err)
		return
	}
	for _, e := range joined.Unwrap() {
		var f Fault
		if !errors.As(e, &f) || f.Rule != rule {
			continue
		}
		for _, word := range strings.Split(says, " ") {
			if !strings.Contains(f.Error(), word) {
				t.Errorf("%v does not say %q", f, word)
			}
		}
		return
	}
	t.Errorf("want %s, got %v", rule, err)
}

// A replay that cannot fail is none: every way to spoil a layout is found out.
func TestCheckBoardsFindsOut(t *testing.T) {
	j := boardJob(t, "0.125; 96!1 120@900; 40x2 30x4 20x3")
	j.LeastOffcut, j.Parts[0].From = 10*length.Inch, []string{"board 2"}
	for name, spoil := range map[string]func(l *BoardLayout){
		"a part less":      func(l *BoardLayout) { l.Patterns[0].Cuts = l.Patterns[0].Cuts[1:] },
		"a pattern twice":  func(l *BoardLayout) { l.Patterns[0].Times++ },
		"a part shifted":   func(l *BoardLayout) { l.Patterns[0].Cuts[1].Start--; l.Patterns[0].Cuts[1].End-- },
		"a part short":     func(l *BoardLayout) { l.Patterns[0].Cuts[0].End-- },
		"another board":    func(l *BoardLayout) { l.Patterns[0].Board = 1 },
		"no such board":    func(l *BoardLayout) { l.Patterns[0].Board = 7 },
		"no such part":     func(l *BoardLayout) { l.Patterns[0].Cuts[0].Part = 99 },
		"cost":             func(l *BoardLayout) { l.Cost-- },
		"bound":            func(l *BoardLayout) { l.Bound = l.Cost + 1 },
		"proven":           func(l *BoardLayout) { l.Proven = !l.Proven },
		"offcut":           func(l *BoardLayout) { l.Patterns[0].Offcut++ },
		"kept":             func(l *BoardLayout) { l.Patterns[0].Kept = !l.Patterns[0].Kept },
		"waste":            func(l *BoardLayout) { l.Waste-- },
		"used":             func(l *BoardLayout) { l.Used[0]++ },
		"more than is had": func(l *BoardLayout) { l.Patterns[0].Times, l.Used[0] = 2, 2 },
	} {
		l := layOut(t, j)
		spoil(&l)
		if CheckBoards(j, l) == nil {
			t.Errorf("%s passes", name)
		}
	}
}

func TestCheckSheetsFindsOut(t *testing.T) {
	j := sheetJob(t, "0.125 0.25; 96x48@900; 30x20*2 40x20*1")
	piece := func(l *SheetLayout) (found *Region) {
		l.Patterns[0].Root.each(func(g *Region) {
			if g.Kind == PieceRegion {
				found = g
			}
		})
		return found
	}
	for name, spoil := range map[string]func(l *SheetLayout){
		"a cut moved":     func(l *SheetLayout) { l.Patterns[0].Root.At++ },
		"a cut turned":    func(l *SheetLayout) { l.Patterns[0].Root.Line = 1 - l.Patterns[0].Root.Line },
		"a part lost":     func(l *SheetLayout) { l.Patterns[0].Root.High = nil },
		"a piece shifted": func(l *SheetLayout) { piece(l).X++ },
		"a piece short":   func(l *SheetLayout) { piece(l).Width-- },
		"a piece turned":  func(l *SheetLayout) { piece(l).Turned = true },
		"another piece":   func(l *SheetLayout) { piece(l).Piece ^= 1 },
		"a piece lost":    func(l *SheetLayout) { piece(l).Kind = RestRegion },
		"sheet twice":     func(l *SheetLayout) { l.Patterns[0].Times++ },
		"cost":            func(l *SheetLayout) { l.Cost-- },
		"bound":           func(l *SheetLayout) { l.Bound = l.Cost + 1 },
		"waste":           func(l *SheetLayout) { l.Waste++ },
		"trim forgotten":  func(l *SheetLayout) { l.Patterns[0].Root.X = 0 },
	} {
		l := layOutSheets(t, j)
		spoil(&l)
		if CheckSheets(j, l) == nil {
			t.Errorf("%s passes", name)
		}
	}
}

// The same job gives the same layout, to the last figure.
func TestLayoutsRepeat(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 5))
	for range 10 {
		j, s := randomDoorJob(rnd), smallSheetJob(rnd)
		if a, b := layOut(t, j), layOut(t, j); !reflect.DeepEqual(a, b) {
			t.Fatalf("seed %d: %+v\n%+v", *seed, a, b)
		}
		if a, b := layOutSheets(t, s), layOutSheets(t, s); !reflect.DeepEqual(a, b) {
			t.Fatalf("seed %d: %+v\n%+v", *seed, a, b)
		}
	}
}
