package lettering

import "stilewright/model/length"

// Size is the font size (the em, what file formats ask for) of lettering whose
// capitals are height high, rounded to the nanometre.
func Size(height length.Length) length.Length {
	return scaled(emUnits, height)
}

// Advance is the width of one line of text on paper, as it is drawn: after
// Legible, with the letters set side by side and no kerning, since readers of
// DXF do none. Height is that of a capital. Rounded up to the nanometre, so
// that what is set is never wider.
func Advance(text string, height length.Length) length.Length {
	table, units := glyphs(), int64(0)
	for _, r := range Legible(text) {
		units += table[r].advance
	}
	return scaled(units, height)
}

// Reach is how far a line of text stands above and below its base line, both
// positive or 0. Even figures hang under the base line by a hair, because round
// ones overshoot it.
func Reach(text string, height length.Length) (above, below length.Length) {
	table := glyphs()
	var up, down int64
	for _, r := range Legible(text) {
		up, down = max(up, table[r].above), max(down, table[r].below)
	}
	return scaled(up, height), scaled(down, height)
}

// scaled is font units as a length, for capitals of the given height, rounded
// up. Lettering up to 1 m high and 9 million units (some 15 000 letters) long
// stays far from overflow.
func scaled(units int64, height length.Length) length.Length {
	n := units * int64(max(0, height))
	return length.Length((n + capUnits - 1) / capUnits)
}
