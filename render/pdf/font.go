package pdf

import (
	"crypto/sha256"
	"encoding/ascii85"
	"fmt"
	"maps"
	"slices"
	"strings"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"stilewright/render/lettering"
)

// fontName is the typeface's name inside pages.
const fontName = "F1"

// A typeface is the lettering's, cut down to the letters that are used.
type typeface struct {
	file   []byte // TrueType
	glyphs map[rune]sfnt.GlyphIndex
	widths map[sfnt.GlyphIndex]int64 // in font units
	parsed *sfnt.Font
}

// cut makes the typeface for the letters. A letter that the typeface lacks is
// an error: a reader would show a box for it.
func cut(letters map[rune]bool) (*typeface, error) {
	order := slices.Sorted(maps.Keys(letters))
	var lacking []rune
	for _, r := range order {
		if !lettering.Covers(r) {
			lacking = append(lacking, r)
		}
	}
	if len(lacking) > 0 {
		return nil, fmt.Errorf("the typeface has no %s; write it in other characters", named(lacking))
	}
	file := fpdf.UTF8CutFont(lettering.Font(), string(order))
	parsed, err := sfnt.Parse(file)
	if err != nil {
		return nil, fmt.Errorf("the typeface cut down to %d letters cannot be read: %w", len(order), err)
	}
	t := &typeface{file: file, parsed: parsed, glyphs: map[rune]sfnt.GlyphIndex{}, widths: map[sfnt.GlyphIndex]int64{}}
	var buf sfnt.Buffer
	for _, r := range order {
		glyph, err := parsed.GlyphIndex(&buf, r)
		if err != nil || glyph == 0 {
			return nil, fmt.Errorf("the typeface cut down to %d letters has lost %s", len(order), named([]rune{r}))
		}
		advance, err := parsed.GlyphAdvance(&buf, glyph, fixed.Int26_6(parsed.UnitsPerEm()), font.HintingNone)
		if err != nil {
			return nil, fmt.Errorf("the typeface's %s: %w", named([]rune{r}), err)
		}
		t.glyphs[r], t.widths[glyph] = glyph, int64(advance)
	}
	return t, nil
}

// named lists characters for a person, each with its number.
func named(letters []rune) string {
	names := make([]string, len(letters))
	for i, r := range letters {
		names[i] = fmt.Sprintf("%q (%U)", r, r)
	}
	return strings.Join(names, ", ")
}

// encode is the text as the numbers of its glyphs, in hexadecimal.
func (t *typeface) encode(text string) (string, error) {
	var b strings.Builder
	for _, r := range text {
		glyph, has := t.glyphs[r]
		if !has {
			return "", fmt.Errorf("text %q: the typeface has no %s", text, named([]rune{r}))
		}
		fmt.Fprintf(&b, "%04X", glyph)
	}
	return b.String(), nil
}

// write adds the typeface's objects to the file and returns the font's number.
func (t *typeface) write(f *file) (int, error) {
	var packed strings.Builder
	encoder := ascii85.NewEncoder(&packed)
	if _, err := encoder.Write(t.file); err != nil {
		return 0, err
	}
	if err := encoder.Close(); err != nil {
		return 0, err
	}
	embedded := f.stream(fmt.Sprintf("/Filter /ASCII85Decode /Length1 %d", len(t.file)), []byte(broken(packed.String())+"~>"))
	described, err := t.descriptor(embedded)
	if err != nil {
		return 0, err
	}
	name := t.name()
	descends := f.add(fmt.Sprintf("<< /Type /Font /Subtype /CIDFontType2 /BaseFont /%s\n"+
		"/CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >>\n"+
		"/FontDescriptor %s /CIDToGIDMap /Identity\n/W [%s] >>", name, reference(f.add(described)), t.widthList()))
	return f.add(fmt.Sprintf("<< /Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H\n"+
		"/DescendantFonts [%s] /ToUnicode %s >>", name, reference(descends), reference(f.stream("", t.toUnicode())))), nil
}

// name is the typeface's name with the tag that tells one subset from another
// (ISO 32000-1, 9.6.4): six letters, here from a hash of the subset.
func (t *typeface) name() string {
	sum := sha256.Sum256(t.file)
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag) + "+" + strings.ReplaceAll(lettering.Family, " ", "")
}

// descriptor is the font descriptor, in thousandths of the em.
func (t *typeface) descriptor(embedded int) (string, error) {
	const (
		em       = fixed.Int26_6(1000) // one thousandth is one unit of the fixed-point numbers
		symbolic = 4                   // flag: letters are found by glyph, not by a standard encoding
	)
	var buf sfnt.Buffer
	box, err := t.parsed.Bounds(&buf, em, font.HintingNone)
	if err != nil {
		return "", fmt.Errorf("the typeface's bounds: %w", err)
	}
	m, err := t.parsed.Metrics(&buf, em, font.HintingNone)
	if err != nil {
		return "", fmt.Errorf("the typeface's metrics: %w", err)
	}
	capHeight, stem := lettering.CapHeight*1000, lettering.CapHeight*100 // lines a tenth of the capitals (ISO 3098 type B)
	return fmt.Sprintf("<< /Type /FontDescriptor /FontName /%s /Flags %d\n/FontBBox [%d %d %d %d] /ItalicAngle 0\n"+
		"/Ascent %d /Descent %d /CapHeight %.0f /StemV %.0f /FontFile2 %s >>",
		t.name(), symbolic, box.Min.X, -box.Max.Y, box.Max.X, -box.Min.Y, // the font library's Y points down
		m.Ascent, -m.Descent, capHeight, stem, reference(embedded)), nil
}

// widthList is each glyph's width in thousandths of the em: whole font units
// of 1/1024, so that seven decimals are exact.
func (t *typeface) widthList() string {
	var b strings.Builder
	for _, glyph := range slices.Sorted(maps.Keys(t.widths)) {
		width := float64(t.widths[glyph]) * 1000 / float64(t.parsed.UnitsPerEm())
		fmt.Fprintf(&b, "%d [%s]\n", glyph, strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.7f", width), "0"), "."))
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// toUnicode maps glyphs back to characters, so that text can be searched and
// copied (ISO 32000-1, 9.10.3).
func (t *typeface) toUnicode() []byte {
	const most = 100 // entries in one block
	order := slices.SortedFunc(maps.Keys(t.glyphs), func(a, b rune) int { return int(t.glyphs[a]) - int(t.glyphs[b]) })
	var b strings.Builder
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for block := range slices.Chunk(order, most) {
		fmt.Fprintf(&b, "%d beginbfchar\n", len(block))
		for _, r := range block {
			fmt.Fprintf(&b, "<%04X> <%04X>\n", t.glyphs[r], r)
		}
		b.WriteString("endbfchar\n")
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend")
	return []byte(b.String())
}

// broken is long text in lines.
func broken(text string) string {
	const line = 80
	var b strings.Builder
	for len(text) > line {
		b.WriteString(text[:line] + "\n")
		text = text[line:]
	}
	return b.String() + text
}
