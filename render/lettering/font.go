package lettering

import (
	_ "embed"
	"fmt"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Family is the name that programs know the typeface by once it is installed.
const Family = "Routed Gothic"

const (
	emUnits  = 1024 // font units in one em (table head)
	capUnits = 736  // height of a capital H in font units (table glyf)
)

// CapHeight is the height of a capital letter as a fraction of the em, exactly
// 0.71875: lettering 2.5 mm high is set in a font size of Size(2.5 mm).
const CapHeight = float64(capUnits) / emUnits

//go:embed routed-gothic.ttf
var ttf string

// Font is the typeface as a TrueType file, for writers that embed it.
// The caller may change the bytes; they are a copy.
func Font() []byte { return []byte(ttf) }

// A glyph is one character's measure in font units.
type glyph struct {
	advance      int64
	above, below int64 // reach over and under the base line, both positive or 0
}

// lastRune is the last character looked for: the font has none beyond the
// basic plane.
const lastRune = 0xFFFF

// glyphs is the measure of every character the font has.
var glyphs = sync.OnceValue(func() map[rune]glyph {
	table, err := measure([]byte(ttf))
	if err != nil {
		panic(fmt.Sprintf("lettering: the embedded font cannot be read: %v", err))
	}
	return table
})

// measure reads a font at one pixel a font unit, where its fixed-point numbers
// are whole font units.
func measure(file []byte) (map[rune]glyph, error) {
	face, err := sfnt.Parse(file)
	if err != nil {
		return nil, err
	}
	if face.UnitsPerEm() != emUnits {
		return nil, fmt.Errorf("%d units in an em, want %d", face.UnitsPerEm(), emUnits)
	}
	var buf sfnt.Buffer
	table := make(map[rune]glyph)
	for r := rune(' '); r <= lastRune; r++ {
		index, err := face.GlyphIndex(&buf, r)
		if err != nil {
			return nil, fmt.Errorf("character %U: %w", r, err)
		}
		if index == 0 { // the box that stands for a missing character
			continue
		}
		bounds, advance, err := face.GlyphBounds(&buf, index, fixed.Int26_6(emUnits), font.HintingNone)
		if err != nil {
			return nil, fmt.Errorf("character %U: %w", r, err)
		}
		table[r] = glyph{
			advance: int64(advance),
			above:   max(0, int64(-bounds.Min.Y)), // the font library's Y points down
			below:   max(0, int64(bounds.Max.Y)),
		}
	}
	return table, nil
}
