package cutting

import (
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"stilewright/model/length"
)

// patternsOf lists every pattern of a stock by plain recursion.
func patternsOf(c *cover, r *rods, stock int) [][]int {
	var all [][]int
	count := make([]int, len(c.demand))
	var list func(i int, room int64)
	list = func(i int, room int64) {
		if i == len(count) {
			all = append(all, append([]int(nil), count...))
			return
		}
		for n := 0; n <= c.demand[i] && int64(n)*r.weight[i] <= room && (n == 0 || r.fits[stock][i]); n++ {
			count[i] = n
			list(i+1, room-int64(n)*r.weight[i])
		}
		count[i] = 0
	}
	list(0, r.room[stock])
	return all
}

// The shadow prices hold for every pattern there is, in whole numbers; the
// relaxation's value is the one GLPK finds over all patterns.
func TestBoundAgainstAllPatterns(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 7))
	for n := range 40 {
		j := randomDoorJob(rnd)
		for i := range j.Parts {
			j.Parts[i].Quantity = min(j.Parts[i].Quantity, 3)
		}
		b := j.bench()
		m := b.cover.relax(b.cover.demand, b.cover.avail())
		d := b.cover.safeDual(m, b.cover.demand, b.cover.avail())
		var costs []int64
		var columns [][]float64
		rows := m.rows
		for s, stock := range b.cover.stock {
			for _, p := range patternsOf(b.cover, b.rods, s) {
				if worth(p, d.value) > stock.cost*d.scale+d.rent[s] {
					t.Fatalf("seed %d job %d: pattern %v is worth %d, its board %d", *seed, n, p, worth(p, d.value), stock.cost*d.scale+d.rent[s])
				}
				if firstLeft(p) < 0 {
					continue
				}
				entries := make([]float64, rows)
				m.entries(column{stock: s, pattern: p}, func(row int, v float64) { entries[row] = v })
				costs, columns = append(costs, stock.cost), append(columns, entries)
			}
		}
		want := relaxationBy(t, m, costs, columns)
		if math.Abs(m.value()-want) > 1e-6*want {
			t.Errorf("seed %d job %d: relaxation %.6f, GLPK %.6f", *seed, n, m.value(), want)
		}
		if got := float64(d.scaled(b.cover.demand, b.cover.avail())) / float64(d.scale); got > want*(1+1e-8) || got < want*(1-1e-6) {
			t.Errorf("seed %d job %d: safe bound %.6f, relaxation %.6f", *seed, n, got, want)
		}
	}
}

// relaxationBy is the optimum GLPK finds for the same columns, integrality
// dropped.
func relaxationBy(t *testing.T, m *master, costs []int64, columns [][]float64) float64 {
	t.Helper()
	var w strings.Builder
	w.WriteString("Minimize\n obj: 0 x0")
	for k, cost := range costs {
		fmt.Fprintf(&w, "\n + %d x%d", cost, k+1)
	}
	w.WriteString("\nSubject To\n")
	for r := range m.rows {
		fmt.Fprintf(&w, " r%d: 0 x0", r)
		for k, entries := range columns {
			if entries[r] != 0 {
				fmt.Fprintf(&w, "\n + %g x%d", entries[r], k+1)
			}
		}
		sense := "<="
		if r < len(m.demand) {
			sense = ">="
		}
		fmt.Fprintf(&w, " %s %g\n", sense, m.rightHand(r))
	}
	w.WriteString("End\n")
	in, out := files(t, w.String())
	run(t, "glpsol", "--lp", in, "--nomip", "-o", out)
	figure(t, out, regexp.MustCompile(`Status:\s+OPTIMAL`))
	return figure(t, out, glpkSays)
}

// Rows that depend on one another: two parts always wanted alike, a stock
// limited to just what is needed. The relaxation must not stumble.
func TestBoundDependentRows(t *testing.T) {
	for _, text := range []string{
		"0; 100@1; 50x2 49.5x2 49x2",
		"0; 100~3; 100x3",
		"0; 100!1 100!1 100@5; 100x3 50x2",
		"0.125; 96~2 96~1; 40x6",
	} {
		l := layOut(t, boardJob(t, text))
		if !l.Proven {
			t.Errorf("%s: cost %d, bound %d", text, l.Cost, l.Bound)
		}
	}
}

// A tiny budget ends the search early; the layout is still right and the bound
// still true.
func TestBoardsBudget(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 8))
	gaps := 0
	for range 60 {
		j := randomDoorJob(rnd)
		full := layOut(t, j)
		for _, budget := range []int{1, 10, 40, 200} {
			j.Budget = budget
			l, err := LayOutBoards(j)
			if err != nil {
				continue // stock in hand alone may need the search
			}
			if err := CheckBoards(j, l); err != nil {
				t.Fatal(err)
			}
			if l.Bound > full.Cost || l.Cost < full.Bound {
				t.Fatalf("seed %d: budget %d: %d..%d, full %d..%d", *seed, budget, l.Bound, l.Cost, full.Bound, full.Cost)
			}
			if !l.Proven {
				gaps++
			}
		}
	}
	if gaps == 0 {
		t.Error("no budget was too small: the test tests nothing")
	}
}

func TestBoardsPreferences(t *testing.T) {
	// In hand first: the offcut saves a board.
	l := layOut(t, boardJob(t, "0.125; 96@900 50!1; 47x3"))
	if l.Cost != 900 || l.Used[1] != 1 || l.Patterns[0].Board != 1 {
		t.Errorf("the offcut is not used or not listed first: %+v", l)
	}
	// One long offcut rather than two short ones: 40 + 35 + 20 beside 30.
	j := boardJob(t, "0; 100@1; 40x1 35x1 30x1 20x1")
	j.LeastOffcut = 20 * length.Inch
	l = layOut(t, j)
	longest := length.Length(0)
	for _, p := range l.Patterns {
		longest = max(longest, p.Offcut)
	}
	if l.Count != 2 || longest != 70*length.Inch {
		t.Errorf("longest offcut %s", longest.Decimal())
	}
	// A part may end exactly at the board's end; a rest under a kerf is dust.
	for text, boards := range map[string]int{"0.125; 96.125@1; 48x2": 1, "0.125; 96.1@1; 48x2": 2, "0.125; 96.2@1; 48x2": 1} {
		if l := layOut(t, boardJob(t, text)); l.Count != boards || boards == 1 && l.Patterns[0].Offcut != 0 {
			t.Errorf("%s: %d boards, offcut %s", text, l.Count, l.Patterns[0].Offcut.Decimal())
		}
	}
}
