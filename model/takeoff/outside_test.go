package takeoff

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/cutting"
	"stilewright/model/length"
)

// Outside check: CBC (coinor-cbc) and GLPK (glpk-utils) solve the samples' board
// jobs, each pattern that fits written out as a column. A missing solver fails
// the test.

// columnsOf lists every way to fill a board that leaves no room for another part,
// by plain recursion.
func columnsOf(j cutting.BoardJob, b cutting.Board) [][]int {
	room := b.Length - j.TrimStart - j.TrimEnd + j.Kerf
	count := make([]int, len(j.Parts))
	var all [][]int
	var fill func(i int, used length.Length)
	fill = func(i int, used length.Length) {
		if i == len(j.Parts) {
			for k, p := range j.Parts {
				if count[k] < p.Quantity && used+p.Length+j.Kerf <= room {
					return
				}
			}
			all = append(all, append([]int(nil), count...))
			return
		}
		for n := 0; n <= j.Parts[i].Quantity && used <= room; n++ {
			count[i] = n
			fill(i+1, used)
			used += j.Parts[i].Length + j.Kerf
		}
		count[i] = 0
	}
	fill(0, 0)
	return all
}

// modelOf writes a job in the LP format both solvers read: least length bought,
// in decimetres or feet, whichever divides all boards.
func modelOf(t *testing.T, j cutting.BoardJob) (text string, unit length.Length) {
	t.Helper()
	unit = length.Foot
	if j.Boards[0].Length%unit != 0 {
		unit = length.Metre / 10
	}
	var objective, names []string
	cover := make([][]string, len(j.Parts))
	for _, b := range j.Boards {
		require.Zero(t, b.Length%unit)
		for _, column := range columnsOf(j, b) {
			x := fmt.Sprintf("x%d", len(names)+1)
			names = append(names, x)
			objective = append(objective, fmt.Sprintf("%d %s", b.Length/unit, x))
			for k, n := range column {
				if n > 0 {
					cover[k] = append(cover[k], fmt.Sprintf("%d %s", n, x))
				}
			}
		}
	}
	var w strings.Builder
	fmt.Fprintf(&w, "Minimize\n obj: %s\nSubject To\n", strings.Join(objective, "\n + "))
	for k, terms := range cover {
		fmt.Fprintf(&w, " part%d: %s >= %d\n", k, strings.Join(terms, "\n + "), j.Parts[k].Quantity)
	}
	fmt.Fprintf(&w, "General\n %s\nEnd\n", strings.Join(names, "\n "))
	return w.String(), unit
}

func TestBoardsNeverWorse(t *testing.T) {
	solvers := []struct {
		args []string
		says *regexp.Regexp
	}{
		{[]string{"cbc", "IN", "ratio", "0", "allow", "0", "solve", "solution", "OUT"}, regexp.MustCompile(`Optimal[^\n]*objective value\s+([-0-9.e+]+)`)},
		{[]string{"glpsol", "--lp", "IN", "--cuts", "--tmlim", "30", "-o", "OUT"}, regexp.MustCompile(`Status:\s+INTEGER OPTIMAL\s+Objective:\s+obj = ([-0-9.e+]+)`)},
	}
	jobs := 0
	for name, job := range samples(t) {
		for _, plan := range take(t, Prices{}, job).Boards {
			model, unit := modelOf(t, plan.Job)
			for _, solver := range solvers {
				best := solve(t, model, solver.args, solver.says)
				got := int64(plan.Layout.Stock / unit)
				require.LessOrEqual(t, got, best, "%s %s against %s", name, plan.Name(), solver.args[0])
				require.True(t, plan.Layout.Proven, "%s %s", name, plan.Name())
				require.Equal(t, best, got, "%s %s: proven, and %s finds less or more", name, plan.Name(), solver.args[0])
				jobs++
			}
		}
	}
	require.GreaterOrEqual(t, jobs, 20)
}

// solve is the optimum a solver proves.
func solve(t *testing.T, model string, args []string, says *regexp.Regexp) int64 {
	t.Helper()
	dir := t.TempDir()
	in, out := filepath.Join(dir, "job.lp"), filepath.Join(dir, "answer.txt")
	require.NoError(t, os.WriteFile(in, []byte(model), 0o600))
	call := append([]string(nil), args...)
	for i, a := range call {
		switch a {
		case "IN":
			call[i] = in
		case "OUT":
			call[i] = out
		}
	}
	said, err := exec.Command(call[0], call[1:]...).CombinedOutput()
	require.NoError(t, err, "%s", said)
	answer, err := os.ReadFile(out)
	require.NoError(t, err)
	found := says.FindSubmatch(answer)
	require.NotNil(t, found, "%.400s", answer)
	x, err := strconv.ParseFloat(string(found[1]), 64)
	require.NoError(t, err)
	return int64(x + 0.5)
}
