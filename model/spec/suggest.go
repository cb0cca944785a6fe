package spec

import (
	"strings"
	"unicode/utf8"
)

// longestWord is the longest word, in characters, for which a near one is
// looked for: more than any key of a model.
const longestWord = 40

// nearestWord is the word of known that differs least from word, by at most a
// third of its characters (at least one); "" when there is none so near. Of
// equally near ones it is the first. Case does not count.
func nearestWord(word string, known []string) string {
	count := utf8.RuneCountInString(word)
	if count > longestWord {
		return ""
	}
	best, least := "", max(1, count/3)+1
	for _, candidate := range known {
		if d := editDistance(strings.ToLower(word), strings.ToLower(candidate)); d < least {
			best, least = candidate, d
		}
	}
	return best
}

// editDistance is the number of characters to insert, remove, replace or swap
// with a neighbour that turns a into b (optimal string alignment).
func editDistance(a, b string) int {
	from, to := []rune(a), []rune(b)
	rows := make([][]int, len(from)+1) // rows[i][j]: between the first i and the first j characters
	for i := range rows {
		rows[i] = make([]int, len(to)+1)
		for j := range rows[i] {
			if i == 0 || j == 0 {
				rows[i][j] = i + j
				continue
			}
			change := 1
			if from[i-1] == to[j-1] {
				change = 0
			}
			d := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+change)
			if i > 1 && j > 1 && from[i-1] == to[j-2] && from[i-2] == to[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(from)][len(to)]
}
