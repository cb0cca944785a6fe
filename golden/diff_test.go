package golden

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const (
	mostShown    = 60   // lines of a difference that are shown
	mostCompared = 3000 // lines either side that are matched one by one: more would take too much room
)

// lineDiff tells in which lines two texts differ, with their numbers: "-" for
// those only in the first, "+" for those only in the second.
func lineDiff(a, b string) string {
	old, now := strings.Split(a, "\n"), strings.Split(b, "\n")
	from := 0
	for from < len(old) && from < len(now) && old[from] == now[from] {
		from++
	}
	till := 0
	for till < len(old)-from && till < len(now)-from && old[len(old)-1-till] == now[len(now)-1-till] {
		till++
	}
	lines := changes(old[from:len(old)-till], now[from:len(now)-till], from+1)
	if more := len(lines) - mostShown; more > 0 {
		lines = append(lines[:mostShown], fmt.Sprintf("... and %d lines more", more))
	}
	return strings.Join(lines, "\n") + "\n"
}

// changes are the lines not in the longest run common to both; first is the
// number of the first line.
func changes(old, now []string, first int) (lines []string) {
	if len(old) > mostCompared || len(now) > mostCompared {
		return append(numbered("-", old, first), numbered("+", now, first)...)
	}
	common := make([][]int, len(old)+1) // common[i][j]: of old from i, now from j
	for i := range common {
		common[i] = make([]int, len(now)+1)
	}
	for i := len(old) - 1; i >= 0; i-- {
		for j := len(now) - 1; j >= 0; j-- {
			if old[i] == now[j] {
				common[i][j] = common[i+1][j+1] + 1
			} else {
				common[i][j] = max(common[i+1][j], common[i][j+1])
			}
		}
	}
	i, j := 0, 0
	for i < len(old) && j < len(now) {
		switch {
		case old[i] == now[j]:
			i, j = i+1, j+1
		case common[i+1][j] >= common[i][j+1]:
			lines, i = append(lines, numbered("-", old[i:i+1], first+i)...), i+1
		default:
			lines, j = append(lines, numbered("+", now[j:j+1], first+j)...), j+1
		}
	}
	lines = append(lines, numbered("-", old[i:], first+i)...)
	return append(lines, numbered("+", now[j:], first+j)...)
}

func numbered(mark string, lines []string, first int) []string {
	out := make([]string, len(lines))
	for i, line := range lines {
		out[i] = fmt.Sprintf("%s %d %s", mark, first+i, line)
	}
	return out
}

func TestLineDiff(t *testing.T) {
	for _, row := range [][3]string{
		{"a\nb\nc", "a\nc", "- 2 b\n"},
		{"a\nc", "a\nb\nc", "+ 2 b\n"},
		{"a\nb\nc\nd\ne", "a\nx\nc\ny\ne", "- 2 b\n+ 2 x\n- 4 d\n+ 4 y\n"},
		{"a", "a\n", "+ 2 \n"},
		{"", "x", "- 1 \n+ 1 x\n"},
		{"a\na\na", "a\na", "- 3 a\n"},
	} {
		require.Equal(t, row[2], lineDiff(row[0], row[1]), "%q and %q", row[0], row[1])
	}
	long := lineDiff(strings.Repeat("x\n", mostCompared+2), strings.Repeat("y\n", 2))
	require.Contains(t, long, "lines more")
	require.Equal(t, mostShown+1, strings.Count(long, "\n"))
}
