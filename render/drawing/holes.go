package drawing

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"stilewright/model/length"
	"stilewright/model/solid"
	"stilewright/render/lettering"
)

// A hole is a bore of a laid part as it shows in one of its faces.
type hole struct {
	use      string // what it is for
	face     string // the face it is drilled from
	wall     string // the cut in whose wall its mouth lies; empty for the face itself
	diameter length.Length
	deep     length.Length // from its mouth on
	at       solid.Vec     // its mouth, in the part's frame
}

// from is where a hole is drilled from, in words.
func (h hole) from() string {
	if h.wall == "" {
		return h.face
	}
	return h.wall + " wall, " + h.face
}

// shownAt is a point's place across a face as it is drawn, from its lower line.
func (l laidPart) shownAt(f face, at solid.Vec) length.Length {
	switch f.turns {
	case 1:
		return at.Y
	case 2:
		return l.width - at.Z
	case 3:
		return l.thickness - at.Y
	}
	return at.Z
}

// mouthOff is how far a mouth may lie off a face and still be in it: the rounding
// of a place along a slanted bore is far below it, any rabbet far above.
const mouthOff = mm / 100

// wallOf is the use of the cut in whose wall the mouth of a hole drilled from a
// face lies; empty if it lies in the face itself or no cut is near.
func (l laidPart) wallOf(face string, at solid.Vec) string {
	faces := l.faces()
	left, right := l.ends()
	off := map[string]length.Length{faces[0].word: l.width - at.Z, faces[1].word: at.Y, faces[2].word: at.Z,
		faces[3].word: l.thickness - at.Y, left: at.X, right: l.length - at.X}[face]
	if off <= mouthOff {
		return ""
	}
	for _, m := range l.milled() {
		low, high := m.low.Add(solid.Vec{X: -mouthOff, Y: -mouthOff, Z: -mouthOff}), m.high.Add(solid.Vec{X: mouthOff, Y: mouthOff, Z: mouthOff})
		if low.X <= at.X && at.X <= high.X && low.Y <= at.Y && at.Y <= high.Y && low.Z <= at.Z && at.Z <= high.Z {
			return m.use
		}
	}
	return ""
}

// holes are the bores of a part, each with the face its mouth lies in.
func (l laidPart) holes() []hole {
	var all []hole
	for _, b := range l.solid.Bores {
		if b.For == "pilot" {
			continue // the tip of the bit that drills the pocket
		}
		dx, dy, dz := (b.To.X - b.From.X).MM(), (b.To.Y - b.From.Y).MM(), (b.To.Z - b.From.Z).MM()
		size := math.Sqrt(dx*dx + dy*dy + dz*dz)
		for _, run := range l.solid.Pierce(b.From, b.To) {
			end, normal := run.In, run.In.Normal
			if normal == [3]float64{} {
				end, normal = run.Out, run.Out.Normal
			}
			if normal == [3]float64{} { // from a rabbet's wall: it begins there
				end, normal = run.In, [3]float64{-dx, -dy, -dz}
			}
			at := func(from length.Length, d float64) length.Length {
				return from + length.Round(float64(d*end.Along)/size)
			}
			mouth, face := solid.Vec{X: at(b.From.X, dx), Y: at(b.From.Y, dy), Z: at(b.From.Z, dz)}, l.faceOf(normal)
			all = append(all, hole{use: b.For, face: face, wall: l.wallOf(face, mouth), diameter: b.Diameter,
				deep: length.Round(run.Out.Along - run.In.Along), at: mouth})
		}
	}
	return all
}

// faceOf is the word of the face with that outward direction.
func (l laidPart) faceOf(normal [3]float64) string {
	faces := l.faces()
	axis := solid.X
	for _, a := range []solid.Axis{solid.Y, solid.Z} {
		if math.Abs(normal[a]) > math.Abs(normal[axis]) {
			axis = a
		}
	}
	positive := normal[axis] > 0
	left, right := l.ends()
	switch {
	case axis == solid.Z && positive:
		return faces[0].word
	case axis == solid.Z:
		return faces[2].word
	case axis == solid.Y && positive:
		return faces[3].word
	case axis == solid.Y:
		return faces[1].word
	case positive:
		return right
	}
	return left
}

// holeRows is the table of a part's holes, at most so wide: those alike in one
// row, with their places along the part.
func (p *page) holeRows(l laidPart, wide length.Length) [][]string {
	var items []listed
	for _, h := range l.holes() {
		items = append(items, p.listedAt(l, h.face, h.at, h.use, "", h.from(), p.format(h.diameter), p.format(h.deep)))
	}
	return p.gathered([]string{"HOLES", "QTY", "FROM", "⌀", "DEEP", "ACROSS", "ALONG"}, items, wide)
}

// leastAlong is the least width of a column of places along a part.
const leastAlong = 25 * mm

// filled are words with commas between, in lines of a width.
func filled(words []string, wide length.Length) []string {
	var lines []string
	for _, word := range words {
		if n := len(lines); n > 0 && advance(lines[n-1]+", "+word+",") <= wide {
			lines[n-1] += ", " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}

// label is the part's label, or those of the parts that are alike: "R2..R4" for
// a run of them.
func (k kind) label() string {
	var words []string
	for i := 0; i < len(k.labels); {
		last := i
		for last+1 < len(k.labels) && follows(k.labels[last], k.labels[last+1]) {
			last++
		}
		word := k.labels[i]
		switch {
		case last == i+1:
			word += ", " + k.labels[last]
		case last > i:
			word += ".." + k.labels[last]
		}
		words = append(words, word)
		i = last + 1
	}
	return strings.Join(words, ", ")
}

// longestLabel is how many characters of labels stand in one line.
const longestLabel = 14

// short is the label, or how many parts are alike where naming all is too long for a
// title.
func (k kind) short() string {
	if s := k.label(); len(s) <= longestLabel {
		return s
	}
	return fmt.Sprintf("%s AND %d MORE", k.labels[0], len(k.labels)-1)
}

// rowsOf are a row of a parts list with the labels first, in as many lines as the
// labels need.
func (k kind) rowsOf(cells ...string) [][]string {
	var lines []string
	for _, word := range strings.Split(k.label(), ", ") {
		if n := len(lines); n > 0 && len(lines[n-1])+len(word)+2 <= longestLabel {
			lines[n-1] += ", " + word
			continue
		}
		lines = append(lines, word)
	}
	rows := [][]string{append([]string{lines[0]}, cells...)}
	for _, line := range lines[1:] {
		rows = append(rows, append([]string{line}, make([]string, len(cells))...))
	}
	return rows
}

// follows tells whether label b is the next one after a: "R4" after "R3".
func follows(a, b string) bool {
	letters := strings.TrimRight(a, "0123456789")
	n, err := strconv.Atoi(a[len(letters):])
	return err == nil && b == letters+strconv.Itoa(n+1)
}

// capitals is a word in capitals.
func capitals(s string) string { return strings.ToUpper(s) }

// sortedKeys are the keys of a map in order.
func sortedKeys(m map[string][]length.Length) []string { return slices.Sorted(maps.Keys(m)) }

// advance is the width of a figure on the paper.
func advance(s string) length.Length { return lettering.Advance(lettering.Legible(s), figureHeight) }
