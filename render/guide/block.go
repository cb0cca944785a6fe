package guide

import (
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// sideBySide is the widest picture that stands beside the text.
const sideBySide = 86 * mm

// step is a step: its title with the text and its picture, then table, cautions
// and sizes, beside the picture as far as they find room there.
func (l *layout) step(no string, s Step) []block {
	wide := l.frame.Width()
	head := block{high: apart}
	head.tick()
	head.paragraph(indent, wide, stepHeight, no+"  "+s.Title)
	head.high += mm
	text, picture := block{}, block{}
	pic, ok := l.pictures[s.Picture]
	column := wide
	if ok {
		picture.marks, picture.high = moved(pic.Marks, wide-pic.Width, -pic.Height), pic.Height
		if pic.Width <= sideBySide {
			column = wide - pic.Width - gutter
		}
	}
	for _, p := range s.Lines {
		text.paragraph(indent, column, bodyHeight, p)
		text.high += mm
	}
	rest := []func(length.Length) []block{
		func(to length.Length) []block { return tableBlocks(s.Table, to) },
		func(to length.Length) []block { return cautionBlocks(s.Cautions, to) },
		func(to length.Length) []block { return sizes(s.Figures, to) },
	}
	switch {
	case ok && column < wide:
		rest = text.beside(rest, column, picture.high)
		head.add(picture, 0)
		head.high -= picture.high
		head.add(text, 0)
		head.high += max(0, picture.high-text.high)
	case ok:
		head.add(text, 0)
		head.add(picture, -(wide-pic.Width)/2)
	default:
		head.add(text, 0)
	}
	blocks := []block{head}
	for _, part := range rest {
		blocks = append(blocks, part(wide)...)
	}
	return blocks
}

// beside puts below the text what still finds room beside a picture that high,
// and returns the rest.
func (b *block) beside(parts []func(length.Length) []block, column, high length.Length) []func(length.Length) []block {
	for len(parts) > 0 {
		more := block{}
		for _, part := range parts[0](column) {
			more.add(part, 0)
		}
		if b.high+more.high > high {
			return parts
		}
		b.add(more, 0)
		parts = parts[1:]
	}
	return nil
}

// add puts another block below, moved across.
func (b *block) add(other block, dx length.Length) {
	b.marks = append(b.marks, moved(other.marks, dx, -b.high)...)
	b.high += other.high
}

// tick is an empty box to tick off.
func (b *block) tick() {
	box := plane.BoxOf(plane.At(0, -b.high-pitch+mm/2), plane.At(3*mm, -b.high-pitch+mm/2+3*mm))
	b.marks = append(b.marks, sheet.Stroke{Layer: sheet.Border, Weight: sheet.Narrow, Path: box.Path()})
}

// rule is a line across.
func (b *block) rule(from, to length.Length, weight sheet.Weight) {
	b.high += mm
	b.marks = append(b.marks, sheet.Stroke{Layer: sheet.Border, Weight: weight, Path: plane.Path{plane.Line(plane.At(from, -b.high), plane.At(to, -b.high))}})
}

// line sets one line on the base line at the block's foot.
func (b *block) line(x, height length.Length, align sheet.Align, s string) {
	s = legible(s)
	if s == "" {
		return
	}
	b.marks = append(b.marks, sheet.Text{Layer: sheet.Notes, At: plane.At(x, -b.high), Height: height, Align: align, String: s, Advance: lettering.Advance(s, height)})
}

// paragraph sets text between two places across, wrapped.
func (b *block) paragraph(from, to, height length.Length, s string) {
	step := max(pitch, height*9/5)
	for _, line := range wrapped(s, height, to-from) {
		b.high += step
		b.line(from, height, sheet.Start, line)
	}
}

// legible is a text with its parts held together by plain spaces.
func legible(s string) string { return lettering.Legible(strings.ReplaceAll(s, "\u00a0", " ")) }

// advance is the width of a text as it is set.
func advance(s string, height length.Length) length.Length {
	return lettering.Advance(legible(s), height)
}

// wrapped are the lines of a text no wider than the room, broken at spaces; a
// word that is wider is broken anywhere.
func wrapped(s string, height, room length.Length) []string {
	var lines []string
	line := ""
	for _, word := range strings.Split(s, " ") {
		for advance(word, height) > room {
			cut := fits(word, height, room)
			if line != "" {
				lines, line = append(lines, line), ""
			}
			lines, word = append(lines, word[:cut]), word[cut:]
		}
		switch longer := line + " " + word; {
		case line == "":
			line = word
		case advance(longer, height) <= room:
			line = longer
		default:
			lines, line = append(lines, line), word
		}
	}
	return append(lines, line)
}

// fits is how many bytes of a word find room, at least one character.
func fits(word string, height, room length.Length) int {
	last := 0
	for i := range word {
		if i > 0 && advance(word[:i], height) > room {
			break
		}
		if i > 0 {
			last = i
		}
	}
	if last == 0 {
		for i := range word {
			if i > 0 {
				return i
			}
		}
		return len(word)
	}
	return last
}

// shortened is a text cut with dots where it is wider than the room.
func shortened(s string, room length.Length) string {
	for cut := []rune(s); advance(s, bodyHeight) > room && len(cut) > 0; {
		cut = cut[:len(cut)-1]
		s = strings.TrimSpace(string(cut)) + "..."
	}
	return s
}

// cautionBlocks are cautions, one a block.
func cautionBlocks(cautions []string, wide length.Length) []block {
	var all []block
	for _, c := range cautions {
		all = append(all, cautionBlock(c, wide))
	}
	return all
}

// cautionBlock is a caution beside a heavy line.
func cautionBlock(s string, wide length.Length) block {
	b := block{high: mm}
	top := -b.high - mm
	b.paragraph(indent+3*mm, wide, bodyHeight, s)
	b.marks = append(b.marks, sheet.Stroke{Layer: sheet.Border, Weight: sheet.Frame, Path: plane.Path{plane.Line(plane.At(indent+mm, top), plane.At(indent+mm, -b.high-mm))}})
	b.high += mm
	return b
}

// sizes are the figures a step takes, by name.
func sizes(figures []Figure, wide length.Length) []block {
	if len(figures) == 0 {
		return nil
	}
	var words []string
	for _, f := range figures {
		words = append(words, f.Name+"\u00a0"+f.Value)
	}
	b := block{high: mm}
	b.paragraph(indent, wide, bodyHeight, "Sizes by name: "+strings.Join(words, "; "))
	return []block{b}
}

// tablePad is left between columns.
const tablePad = 4 * mm

// leastColumn is the least width of a table's last column.
const leastColumn = 25 * mm

// shrunk are columns made narrower, the widest first, until they fit the room;
// what no longer fits on a line of theirs wraps.
func shrunk(columns []length.Length, room length.Length) []length.Length {
	for length.Sum(columns...) > room {
		widest := 0
		for i := range columns {
			if columns[i] > columns[widest] {
				widest = i
			}
		}
		if columns[widest] <= 2*mm {
			break
		}
		columns[widest] -= mm
	}
	return columns
}

// tableBlocks are a table's rows, the head kept with the first. The last column
// takes what the others leave, and wraps.
func tableBlocks(rows [][]string, wide length.Length) []block {
	if len(rows) < 2 {
		return nil
	}
	columns := make([]length.Length, len(rows[0]))
	for _, row := range rows {
		for i, s := range row[:len(row)-1] {
			columns[i] = max(columns[i], advance(s, bodyHeight))
		}
	}
	if taken := length.Sum(columns...) + tablePad*length.Length(len(columns)); wide-indent-taken < leastColumn {
		columns = shrunk(columns, wide-indent-leastColumn-tablePad*length.Length(len(columns)))
	}
	var out []block
	for n, row := range rows {
		b, x := block{}, indent
		if n == 0 {
			b.high = mm
		}
		start, low := b.high, b.high
		for i, s := range row {
			room := wide
			if i < len(row)-1 {
				room = x + columns[i] + 1
			}
			b.high = start
			b.paragraph(x, room, bodyHeight, s)
			low = max(low, b.high)
			x += columns[i] + tablePad
		}
		b.high = low + mm/2
		if n == 0 {
			b.rule(indent, wide, sheet.Narrow)
		}
		if n == 1 {
			out = joined(out[0], []block{b})
			continue
		}
		out = append(out, b)
	}
	return out
}
