package cutting

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Outside check: CBC (coinor-cbc) and GLPK (glpk-utils) solve a model of the
// same job in which every pattern that fits is listed. Neither shares a line
// with this package. A missing solver fails the test.

// patternModel writes the job in the LP format both solvers read. The objective
// is money·weight + boards; patterns are listed by plain recursion over parts.
func patternModel(j BoardJob, weight Cost) string {
	var objective, general []string
	cover := make([][]string, len(j.Parts))
	limit := make([][]string, len(j.Boards))
	for s, b := range j.Boards {
		price, _ := j.price(b)
		cost := price*weight + 1
		count := make([]int, len(j.Parts))
		var list func(i int, used int64)
		list = func(i int, used int64) {
			if i < len(j.Parts) {
				p := j.Parts[i]
				for n := 0; n <= p.Quantity; n++ {
					now := used + int64(n)*int64(p.Length+j.Kerf)
					if n > 0 && (now > int64(j.clear(b)+j.Kerf) || !allowed(p.From, b.Name)) {
						break
					}
					count[i] = n
					list(i+1, now)
				}
				count[i] = 0
				return
			}
			if used == 0 || roomForMore(j, b, count, used) {
				return
			}
			x := fmt.Sprintf("x%d", len(general)+1)
			general = append(general, x)
			objective = append(objective, fmt.Sprintf("%d %s", cost, x))
			limit[s] = append(limit[s], x)
			for i, n := range count {
				if n > 0 {
					cover[i] = append(cover[i], fmt.Sprintf("%d %s", n, x))
				}
			}
		}
		list(0, 0)
	}
	var w strings.Builder
	fmt.Fprintf(&w, "Minimize\n obj: %s\nSubject To\n", strings.Join(objective, "\n + "))
	for i, terms := range cover {
		fmt.Fprintf(&w, " part%d: %s >= %d\n", i, strings.Join(terms, "\n + "), j.Parts[i].Quantity)
	}
	for s, terms := range limit {
		if j.Boards[s].Available > 0 && len(terms) > 0 {
			fmt.Fprintf(&w, " stock%d: %s <= %d\n", s, strings.Join(terms, "\n + "), j.Boards[s].Available)
		}
	}
	fmt.Fprintf(&w, "General\n %s\nEnd\n", strings.Join(general, "\n "))
	return w.String()
}

// roomForMore tells whether a further part fits; the pattern that holds it does
// the same work, so this one need not be listed.
func roomForMore(j BoardJob, b Board, count []int, used int64) bool {
	for i, p := range j.Parts {
		if count[i] < p.Quantity && allowed(p.From, b.Name) && used+int64(p.Length+j.Kerf) <= int64(j.clear(b)+j.Kerf) {
			return true
		}
	}
	return false
}

var (
	cbcSays   = regexp.MustCompile(`Optimal[^\n]*objective value\s+([-0-9.e+]+)`)
	glpkSays  = regexp.MustCompile(`Objective:\s+obj = ([-0-9.e+]+)`)
	glpkState = regexp.MustCompile(`Status:\s+INTEGER OPTIMAL`)
)

// cbcSolves and glpkSolves are the optimum of the model, to be proven optimal.
func cbcSolves(t testing.TB, model string) float64 {
	t.Helper()
	in, out := files(t, model)
	run(t, "cbc", in, "ratio", "0", "allow", "0", "solve", "solution", out)
	return figure(t, out, cbcSays)
}

func glpkSolves(t testing.TB, model string) float64 {
	t.Helper()
	in, out := files(t, model)
	run(t, "glpsol", "--lp", in, "--cuts", "--tmlim", "30", "-o", out)
	figure(t, out, glpkState)
	return figure(t, out, glpkSays)
}

func files(t testing.TB, model string) (in, out string) {
	t.Helper()
	dir := t.TempDir()
	in, out = filepath.Join(dir, "job.lp"), filepath.Join(dir, "answer.txt")
	if err := os.WriteFile(in, []byte(model), 0o600); err != nil {
		t.Fatal(err)
	}
	return in, out
}

func run(t testing.TB, name string, args ...string) {
	t.Helper()
	if said, err := exec.Command(name, args...).CombinedOutput(); err != nil {
		t.Fatalf("%s: %v\n%s", name, err, said)
	}
}

func figure(t testing.TB, file string, pattern *regexp.Regexp) float64 {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	found := pattern.FindSubmatch(text)
	if found == nil {
		t.Fatalf("%s: no match for %v in\n%.400s", file, pattern, text)
	}
	if len(found) == 1 {
		return 0
	}
	x, err := strconv.ParseFloat(string(found[1]), 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// smallMoney divides prices (or lengths) by what they have in common, so that
// the solvers' floating point holds them exactly.
func smallMoney(j BoardJob) (BoardJob, Cost) {
	unit := int64(0)
	for _, b := range j.Boards {
		price, _ := j.price(b)
		unit = gcd(unit, int64(price))
	}
	k := j
	k.Boards = append([]Board(nil), j.Boards...)
	for s, b := range k.Boards {
		price, _ := j.price(b)
		k.Boards[s].Price = price / Cost(unit)
	}
	return k, Cost(unit)
}

func TestBoardsAgainstOutsideSolvers(t *testing.T) {
	rnd := rand.New(rand.NewPCG(*seed, 2))
	for n := range 60 {
		j := randomDoorJob(rnd)
		for i := range j.Parts {
			if n%2 == 1 { // GLPK is left smaller jobs, which it closes at once
				j.Parts[i].Quantity = (j.Parts[i].Quantity + 2) / 3
			}
		}
		l := layOut(t, j)
		small, unit := smallMoney(j)
		model := patternModel(small, 1000) // fewer than 1000 boards: money first, then boards
		solver, name := cbcSolves, "CBC"
		if n%2 == 1 {
			solver, name = glpkSolves, "GLPK"
		}
		best := int64(solver(t, model) + 0.5)
		money, boards := Cost(best/1000)*unit, int(best%1000)
		if l.Cost > money || l.Cost == money && l.FewestProven && l.Count != boards {
			t.Errorf("job %d: cost %d with %d boards, %s %d with %d", n, l.Cost, l.Count, name, money, boards)
		}
		if l.Cost < money || l.Bound > money {
			t.Errorf("job %d: cost %d, bound %d; %s proves %d", n, l.Cost, l.Bound, name, money)
		}
	}
}
