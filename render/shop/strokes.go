package shop

import (
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// The single-stroke letters part marks are written in: our own. A letter
// stands on a grid 4 wide and 6 high; two digits are a place, X and Y from the
// lower left, places in a row are joined, and a comma begins a new stroke.
var strokesOf = map[rune]string{
	'A': "00 26 40,13 33", 'B': "00 06 36 45 44 33 03,33 42 41 30 00", 'C': "45 36 16 05 01 10 30 41",
	'D': "00 06 26 44 42 20 00", 'E': "46 06 00 40,03 33", 'F': "46 06 00,03 33", 'G': "45 36 16 05 01 10 30 41 43 23",
	'H': "00 06,40 46,03 43", 'I': "10 30,20 26,16 36", 'J': "01 10 20 31 36,16 36", 'K': "00 06,46 03 40", 'L': "06 00 40",
	'M': "00 06 23 46 40", 'N': "00 06 40 46", 'O': "10 30 41 45 36 16 05 01 10", 'P': "00 06 36 45 44 33 03",
	'Q': "10 30 41 45 36 16 05 01 10,22 40", 'R': "00 06 36 45 44 33 03,23 40", 'S': "45 36 16 05 04 13 33 42 41 30 10 01",
	'T': "06 46,20 26", 'U': "06 01 10 30 41 46", 'V': "06 20 46", 'W': "06 10 23 30 46", 'X': "00 46,06 40",
	'Y': "06 23 46,23 20", 'Z': "06 46 00 40",
	'0': "10 30 41 45 36 16 05 01 10,12 34", '1': "15 26 20,10 30", '2': "05 16 36 45 44 00 40", '3': "05 16 36 45 44 33 42 41 30 10 01",
	'4': "30 36 02 42", '5': "46 06 04 34 43 41 30 10 01", '6': "45 36 16 05 01 10 30 41 42 33 13 02",
	'7': "06 46 10", '8': "13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33", '9': "01 10 30 41 45 36 16 05 04 13 33 44",
	'-': "13 33", '.': "20 21", '/': "00 46", '+': "03 43,21 25",
}

// lettered tells whether every letter of the text, in capitals, has strokes.
func lettered(text string) bool {
	return !strings.ContainsFunc(strings.ToUpper(text), func(r rune) bool { return r != ' ' && strokesOf[r] == "" })
}

// letterWidth is the room of a letter of that height, the gap after it included.
func letterWidth(height length.Length) length.Length { return height }

// strokes writes text from its lower left corner. Letters are capitals of that
// height; one that has no strokes leaves its room empty.
func strokes(text string, at plane.Point, height length.Length) []plane.Path {
	var paths []plane.Path
	for _, r := range strings.ToUpper(text) {
		for run := range strings.SplitSeq(strokesOf[r], ",") {
			var path plane.Path
			var last plane.Point
			for i, place := range strings.Fields(run) {
				next := at.Add(height*length.Length(place[0]-'0')/6, height*length.Length(place[1]-'0')/6)
				if i > 0 {
					path = append(path, plane.Line(last, next))
				}
				last = next
			}
			if path != nil {
				paths = append(paths, path)
			}
		}
		at.X += letterWidth(height)
	}
	return paths
}
