package cutting

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"stilewright/model/length"
)

// sheetJob reads "kerf trim; 96x48@900 48x48!1; 20x30*4 20x30r*2" in inches:
// sheets with price or number in hand, pieces with quantity; r may turn.
func sheetJob(t testing.TB, text string) SheetJob {
	t.Helper()
	fields := strings.Split(text, ";")
	saw := strings.Fields(fields[0])
	j := SheetJob{Kerf: inches(t, saw[0]), Trim: inches(t, saw[1])}
	size := func(s string) (w, h length.Length) {
		a, b, _ := strings.Cut(s, "x")
		return inches(t, a), inches(t, b)
	}
	for i, f := range strings.Fields(fields[1]) {
		s := Sheet{Name: fmt.Sprintf("sheet %d", i+1)}
		if a, n, ok := strings.Cut(f, "!"); ok {
			f, s.InHand, s.Available = a, true, whole(t, n)
		}
		a, price, ok := strings.Cut(f, "@")
		if ok {
			s.Price = Cost(whole(t, price))
		}
		s.Width, s.Height = size(a)
		j.Sheets = append(j.Sheets, s)
	}
	for i, f := range strings.Fields(fields[2]) {
		a, n, _ := strings.Cut(f, "*")
		p := Piece{Label: fmt.Sprintf("L%d", i+1), Quantity: whole(t, n)}
		a, p.Turn = strings.CutSuffix(a, "r")
		p.Width, p.Height = size(a)
		j.Pieces = append(j.Pieces, p)
	}
	return j
}

func layOutSheets(t testing.TB, j SheetJob) SheetLayout {
	t.Helper()
	l, err := LayOutSheets(j)
	if err != nil {
		t.Fatal(err)
	}
	if err := CheckSheets(j, l); err != nil {
		t.Fatal(err)
	}
	return l
}

func TestSheetsByHand(t *testing.T) {
	for _, c := range []struct {
		job    string
		sheets int
		why    string
	}{
		{"0 0; 96x48@1; 24x24*8", 1, "eight squares fill the sheet"},
		{"0.125 0; 96x48@1; 24x24*8", 3, "three in a row, one row: the kerf costs a column and a row"},
		{"0 0; 96x48@1; 48x96*1", 0, "grain forbids turning"},
		{"0 0; 96x48@1; 48x96r*1", 1, "turned it fills the sheet"},
		{"0.125 0.5; 96x48@1; 95x47*2", 2, "trimmed, each takes a sheet"},
		{"0 0; 5x5@1; 3x2r*4 1x1*1", 2, "a pinwheel fills the square, but no cut runs from edge to edge"},
		{"0 0; 5x6@1; 3x2r*4 1x1*1", 1, "one more strip lets the saw through"},
		{"0.125 0; 96x48@4000 48x48@2200; 46x23*3", 1, "three narrow panels: one sheet at 4000 beats two at 2200"},
	} {
		j := sheetJob(t, c.job)
		l, err := LayOutSheets(j)
		if (err != nil) != (c.sheets == 0) {
			t.Errorf("%s (%s): %v", c.job, c.why, err)
			continue
		}
		if err == nil && (l.Count != c.sheets || !l.Proven || CheckSheets(j, l) != nil) {
			t.Errorf("%s: %d sheets, bound %d, want %d: %s", c.job, l.Count, l.Bound, c.sheets, c.why)
		}
	}
}

// A bruteSaw tries every edge-to-edge cut there is: reference for small jobs.
// It works on the sheet with real kerfs, from the top down, and shares nothing
// with the engine.
type bruteSaw struct {
	kerf   int
	pieces []brutePiece
	fits   map[[3]int]bool
}

type brutePiece struct {
	w, h int
	turn bool
}

// can tells whether the set of pieces can be sawn from w × h. Cuts are tried at
// every whole position: the sizes are small whole numbers.
func (b *bruteSaw) can(w, h, set int) bool {
	if set == 0 {
		return true
	}
	if w <= 0 || h <= 0 {
		return false
	}
	key := [3]int{w, h, set}
	if known, ok := b.fits[key]; ok {
		return known
	}
	b.fits[key] = b.try(w, h, set)
	return b.fits[key]
}

func (b *bruteSaw) try(w, h, set int) bool {
	if set&(set-1) == 0 {
		for i, p := range b.pieces {
			if set == 1<<i {
				return p.w <= w && p.h <= h || p.turn && p.h <= w && p.w <= h
			}
		}
	}
	for part := (set - 1) & set; part > 0; part = (part - 1) & set {
		for at := 1; at < w; at++ {
			if b.can(at, h, part) && b.can(w-at-b.kerf, h, set&^part) {
				return true
			}
		}
		for at := 1; at < h; at++ {
			if b.can(w, at, part) && b.can(w, h-at-b.kerf, set&^part) {
				return true
			}
		}
	}
	return false
}

// bruteCost is the least cost and then fewest sheets of cutting the set, or
// false where the sheets do not hold it.
func bruteCost(b *bruteSaw, j SheetJob, avail []int, set int) (cost Cost, sheets int, ok bool) {
	if set == 0 {
		return 0, 0, true
	}
	first := set & -set
	for s, sheet := range j.Sheets {
		if avail[s] == 0 {
			continue
		}
		for part := set; part > 0; part = (part - 1) & set {
			if part&first == 0 || !b.can(int(sheet.Width/length.Millimetre), int(sheet.Height/length.Millimetre), part) {
				continue
			}
			avail[s]--
			c, n, fine := bruteCost(b, j, avail, set&^part)
			avail[s]++
			price, _ := j.price(sheet)
			if fine && (!ok || c+price < cost || c+price == cost && n+1 < sheets) {
				cost, sheets, ok = c+price, n+1, true
			}
		}
	}
	return cost, sheets, ok
}

// smallSheetJob has up to five pieces with sides of a few whole millimetres.
func smallSheetJob(rnd *rand.Rand) SheetJob {
	whole := func(least, most int) length.Length {
		return length.Length(least+rnd.IntN(most-least+1)) * length.Millimetre
	}
	j := SheetJob{Kerf: whole(0, 2)}
	priced := rnd.IntN(2) == 0
	for n := range 1 + rnd.IntN(3) {
		s := Sheet{Name: fmt.Sprint("S", n), Width: whole(8, 16), Height: whole(8, 16)}
		switch {
		case n > 0 && rnd.IntN(3) == 0:
			s.InHand, s.Available = true, 1
		case priced:
			s.Price = Cost(50 + rnd.IntN(100))
		}
		j.Sheets = append(j.Sheets, s)
	}
	for left := 1 + rnd.IntN(5); left > 0; {
		p := Piece{Label: fmt.Sprint("L", len(j.Pieces)), Width: whole(2, 8), Height: whole(2, 8), Turn: rnd.IntN(2) == 0}
		p.Quantity = 1 + rnd.IntN(left)
		left -= p.Quantity
		j.Pieces = append(j.Pieces, p)
	}
	return j
}

// Outside of the engine: an exhaustive search agrees on cost and on the number
// of sheets, in every job.
func TestSheetsAgainstBruteForce(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 3))
	for n := range 300 {
		j := smallSheetJob(rnd)
		l := layOutSheets(t, j)
		b := bruteSaw{kerf: int(j.Kerf / length.Millimetre), fits: map[[3]int]bool{}}
		for _, p := range j.Pieces {
			for range p.Quantity {
				b.pieces = append(b.pieces, brutePiece{int(p.Width / length.Millimetre), int(p.Height / length.Millimetre), p.Turn})
			}
		}
		var avail []int
		for _, s := range j.Sheets {
			avail = append(avail, s.Available)
			if s.Available == 0 {
				avail[len(avail)-1] = -1
			}
		}
		cost, sheets, _ := bruteCost(&b, j, avail, 1<<len(b.pieces)-1)
		if l.Bound > cost || l.Proven && l.Cost != cost || l.FewestProven && l.Count != sheets || !l.Proven {
			t.Fatalf("seed %d job %d %+v: cost %d bound %d (%t), %d sheets; brute force %d, %d sheets",
				*seed, n, j, l.Cost, l.Bound, l.Proven, l.Count, cost, sheets)
		}
	}
}

// Packing, the way for large jobs, is held to the same replay and its bound to
// the exact cost.
func TestPackingAgainstComposing(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 4))
	equal := 0
	const jobs = 200
	for range jobs {
		j := smallSheetJob(rnd)
		exact := layOutSheets(t, j)
		b := j.bench()
		found, roots := b.packed()
		if !found.found {
			continue // stock in hand alone, packed clumsily
		}
		l := b.layout(found, roots)
		if err := CheckSheets(j, l); err != nil {
			t.Fatalf("seed %d: %v", *seed, err)
		}
		if l.Cost < exact.Cost || l.Bound > exact.Cost {
			t.Fatalf("seed %d: packed at %d, bound %d, exact %d", *seed, l.Cost, l.Bound, exact.Cost)
		}
		if l.Cost == exact.Cost {
			equal++
		}
	}
	if equal < jobs*9/10 {
		t.Errorf("seed %d: packing meets the optimum in %d of %d jobs", *seed, equal, jobs)
	}
}

func TestSheetSteps(t *testing.T) {
	j := sheetJob(t, "0.125 0; 96x48@1; 40x20*1 30x20*1")
	l := layOutSheets(t, j)
	steps := l.Patterns[0].Steps(j)
	made := map[string]bool{"sheet": true}
	for _, s := range steps {
		if !made[s.Take] {
			t.Errorf("step %d takes %q before it is made", s.Number, s.Take)
		}
		made[s.Near], made[s.Far] = true, true
	}
	if !made["L1"] || !made["L2"] || !made["offcut"] {
		t.Errorf("steps make %v", made)
	}
}
