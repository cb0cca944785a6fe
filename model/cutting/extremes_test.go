package cutting

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"stilewright/model/length"
)

// anySize is of any magnitude from a nanometre to limit.
func anySize(rnd *rand.Rand, limit length.Length) length.Length {
	top := limit >> rnd.IntN(38)
	return 1 + length.Length(rnd.Int64N(int64(max(top, 1))))
}

// Sizes, prices and quantities of any magnitude: a fault or a layout that
// replays, never a panic, and never a bound above the cost.
func TestExtremes(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 9))
	laid := 0
	for range 150 {
		j := BoardJob{Kerf: anySize(rnd, length.Inch), TrimStart: anySize(rnd, length.Inch) - 1, LeastOffcut: anySize(rnd, length.Metre), Budget: 20_000}
		s := SheetJob{Kerf: j.Kerf, Trim: j.TrimStart, LeastOffcut: j.LeastOffcut, Budget: 20_000}
		for n := range 1 + rnd.IntN(4) {
			b := Board{Name: fmt.Sprint(n), Length: length.Foot + anySize(rnd, LongestBoard-length.Foot)}
			h := Sheet{Name: b.Name, Width: length.Foot + anySize(rnd, LongestSheet/2), Height: length.Foot + anySize(rnd, LongestSheet/2)}
			if rnd.IntN(3) == 0 {
				b.Available = 1 + rnd.IntN(math.MaxInt>>rnd.IntN(30))
				h.Available = b.Available
			}
			j.Boards, s.Sheets = append(j.Boards, b), append(s.Sheets, h)
		}
		for n := range 1 + rnd.IntN(8) {
			quantity := 1 + rnd.IntN(1<<rnd.IntN(11))
			j.Parts = append(j.Parts, Part{Label: fmt.Sprint(n), Length: anySize(rnd, length.Foot*3/4), Quantity: quantity})
			s.Pieces = append(s.Pieces, Piece{Label: fmt.Sprint(n), Width: anySize(rnd, length.Foot*3/4), Height: anySize(rnd, length.Foot*3/4), Quantity: 1 + quantity/16, Turn: n%2 == 0})
		}
		if l, err := LayOutBoards(j); err == nil {
			laid++
			if err := CheckBoards(j, l); err != nil {
				t.Fatalf("seed %d: %v\n%+v", *seed, err, j)
			}
		}
		if l, err := LayOutSheets(s); err == nil {
			laid++
			if err := CheckSheets(s, l); err != nil {
				t.Fatalf("seed %d: %v\n%+v", *seed, err, s)
			}
		}
	}
	if laid < 250 {
		t.Errorf("seed %d: %d jobs laid out; the test tests little", *seed, laid)
	}
	t.Logf("%d of 300 jobs laid out", laid)
}
