//go:build sidebyside

package cutting

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os/exec"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"testing"
	"time"
)

var sideBySide = flag.Int("side-by-side", 5, "time LayOutBoards beside CBC and GLPK, so many runs each; prints a table")

// TestSideBySide prints medians and asserts no time. See
// cmd/bench-cutting.sh, which builds it: the tests proper leave it out.
func TestSideBySide(t *testing.T) {
	type job struct {
		name, model string
		j           BoardJob
	}
	var jobs []job
	for _, c := range knownBoards {
		j := boardJob(t, c.job)
		jobs = append(jobs, job{c.name, patternModel(j, 1000), j})
	}
	rnd := rand.New(rand.NewPCG(*seed, 2))
	for n := range 8 {
		j := randomDoorJob(rnd)
		small, _ := smallMoney(j)
		jobs = append(jobs, job{fmt.Sprint("random door job ", n+1), patternModel(small, 1000), j})
	}
	for _, p := range binpack1(t)[:4] {
		jobs = append(jobs, job{p.name, arcModel(p.job), p.job})
	}
	fmt.Printf("%-24s %10s %10s %10s   medians of %d, milliseconds, start of the solver included\n", "job", "stilewright", "cbc", "glpsol", *sideBySide)
	for _, c := range jobs {
		ours := median(func() { layOut(t, c.j) })
		in, out := files(t, c.model)
		cbc := solverTime(t, "cbc", in, "sec", "30", "ratio", "0", "allow", "0", "solve", "solution", out)
		glpk := solverTime(t, "glpsol", "--lp", in, "--cuts", "--tmlim", "30", "-o", filepath.Join(t.TempDir(), "glpk.txt"))
		fmt.Printf("%-24s %10.1f %10s %10s\n", c.name, ours.Seconds()*1000, cbc, glpk)
	}
}

// solverTime is the median run, or ">30000" when the limit of 30 s ended it.
func solverTime(t *testing.T, name string, args ...string) string {
	late := false
	took := median(func() {
		said, err := exec.Command(name, args...).CombinedOutput()
		if err != nil {
			t.Fatalf("%s: %v\n%s", name, err, said)
		}
		late = late || strings.Contains(string(said), "TIME LIMIT EXCEEDED") || strings.Contains(string(said), "Stopped on time")
	})
	if late {
		return ">30000"
	}
	return fmt.Sprintf("%.1f", took.Seconds()*1000)
}

// median is of -side-by-side runs, fewer where one takes over five seconds.
func median(f func()) time.Duration {
	var took []time.Duration
	for range *sideBySide {
		start := time.Now()
		f()
		took = append(took, time.Since(start))
		if took[0] > 5*time.Second {
			break
		}
	}
	slices.Sort(took)
	return took[len(took)/2]
}

// arcModel writes a job of one stock as a flow from 0 to the board's end whose
// arcs are parts (Valério de Carvalho 1999), for jobs with too many patterns to
// list. Parts follow each other from the longest to the shortest.
func arcModel(j BoardJob) string {
	unit, room := int64(0), int64(j.clear(j.Boards[0])+j.Kerf)
	demand := map[int64]int{}
	for _, p := range j.Parts {
		w := int64(p.Length + j.Kerf)
		demand[w] += p.Quantity
		unit = gcd(unit, w)
	}
	var sizes []int64
	for w := range demand {
		sizes = append(sizes, w)
	}
	sort.Slice(sizes, func(a, b int) bool { return sizes[a] > sizes[b] })
	end := int(room / unit)
	reached := make([]bool, end+1)
	reached[0] = true
	in, out := make([][]string, end+1), make([][]string, end+1)
	var cover, general []string
	for _, w := range sizes {
		var terms []string
		step := int(w / unit)
		from := slices.Clone(reached)
		for n := 0; n < demand[w]; n++ {
			for at := end - step; at >= 0; at-- {
				x := fmt.Sprintf("x%d_%d", at, step)
				if !from[at] || slices.Contains(terms, x) {
					continue
				}
				from[at+step] = true
				terms = append(terms, x)
				out[at], in[at+step] = append(out[at], x), append(in[at+step], x)
			}
		}
		reached = from
		general = append(general, terms...)
		cover = append(cover, fmt.Sprintf("%s >= %d", strings.Join(terms, "\n + "), demand[w]))
	}
	var w strings.Builder
	fmt.Fprintf(&w, "Minimize\n obj: %s\nSubject To\n", strings.Join(out[0], "\n + "))
	for at := 1; at <= end; at++ {
		if len(in[at]) > 0 && len(out[at]) > 0 { // flow may end anywhere: the rest is waste
			fmt.Fprintf(&w, " at%d: %s - %s <= 0\n", at, strings.Join(out[at], "\n + "), strings.Join(in[at], "\n - "))
		}
	}
	for i, row := range cover {
		fmt.Fprintf(&w, " part%d: %s\n", i, row)
	}
	fmt.Fprintf(&w, "General\n %s\nEnd\n", strings.Join(general, "\n "))
	return w.String()
}
