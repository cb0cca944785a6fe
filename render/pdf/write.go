package pdf

import (
	"cmp"
	"fmt"
	"io"
	"strings"
	"time"

	"stilewright/model/length"
	"stilewright/render/sheet"
)

// Options are what a file says beside its sheets. The zero Options are usable.
type Options struct {
	Title  string // of the set; empty is the first sheet's
	Author string // empty for none
	Date   string // when the set was drawn, YYYY-MM-DD; empty for none

	// ActualSize has readers print at 100 %: no fitting to the page.
	ActualSize bool
	// Correction stretches all pages for a printer that is not true.
	Correction Correction
}

// A Correction stretches a drawing by a factor along X and along Y, paper and all, so that it
// comes true from a printer that is off by the inverse. Each is from
// LeastFactor to MostFactor; 0 stands for 1.
type Correction struct{ X, Y float64 }

// What a printer can be off by: beyond it is not the printer's error but a
// print fitted to its page.
const (
	LeastFactor = 0.9
	MostFactor  = 1.1
)

// Measured is the correction to print with after a print made with c, on which
// a square that should measure side both ways measures wide along X and high
// along Y.
func (c Correction) Measured(side, wide, high length.Length) (Correction, error) {
	if min(side, wide, high) <= 0 {
		return Correction{}, fmt.Errorf("a square of %s mm measured as %s mm by %s mm: all three must be above 0",
			side.Decimal(), wide.Decimal(), high.Decimal())
	}
	f := c.Factors()
	c = Correction{X: f.X * side.MM() / wide.MM(), Y: f.Y * side.MM() / high.MM()}
	return c, c.Check()
}

// Check tells whether both factors can be a printer's error.
func (c Correction) Check() error {
	for _, one := range []struct {
		axis   string
		factor float64
	}{{"X", c.Factors().X}, {"Y", c.Factors().Y}} {
		if !(one.factor >= LeastFactor && one.factor <= MostFactor) { // also refuses NaN
			return fmt.Errorf("correction along %s is %.4f; it must be from %.1f to %.1f: print the test page at 100 %% and measure again",
				one.axis, one.factor, LeastFactor, MostFactor)
		}
	}
	return nil
}

// Factors are the correction with 1 for 0.
func (c Correction) Factors() Correction { return Correction{cmp.Or(c.X, 1), cmp.Or(c.Y, 1)} }

// LongestPage is the longest side of a page that readers are sure to show, 14 400
// points or 200 in (ISO 32000-1, annex C).
const LongestPage = 200 * length.Inch

// Write writes the sheets as one PDF file: each a page of its paper's size, in
// their order, with a bookmark of its title.
//
// Marks keep their order; each layer in use is an optional layer of the file
// by its sheet.Layer name. Arcs are Bézier curves within 0.001 mm. Text is
// text, in the embedded typeface, after lettering.Legible.
//
// The same sheets give the same bytes. It fails on no sheets, on one that
// sheet.Check refuses or that is longer than LongestPage, on a Date that is
// none, on a Correction that its Check refuses, on text the typeface has no
// letters for, and when w does.
func Write(w io.Writer, sheets []sheet.Sheet, o Options) error {
	data, err := encode(sheets, o)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	if _, err := w.Write(data); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

func encode(sheets []sheet.Sheet, o Options) ([]byte, error) {
	if len(sheets) == 0 {
		return nil, fmt.Errorf("there are no sheets; a file needs at least one page")
	}
	if err := o.Correction.Check(); err != nil {
		return nil, err
	}
	for _, s := range sheets {
		if err := s.Check(); err != nil {
			return nil, err
		}
		f := o.Correction.Factors()
		if long := max(s.Width.MM()*f.X, s.Height.MM()*f.Y); long > LongestPage.MM() {
			return nil, fmt.Errorf("sheet %s: the page is %.1f mm long; readers show pages up to %s mm: cut it into tiles", s.Name, long, LongestPage.Decimal())
		}
	}
	face, err := cut(lettersOf(sheets))
	if err != nil {
		return nil, err
	}
	d := document{options: o, sheets: sheets, face: face}
	return d.assemble()
}

// A document is a file being written.
type document struct {
	file
	options   Options
	sheets    []sheet.Sheet
	face      *typeface
	layers    []int // object numbers, in the order of sheet.Layers
	resources int
}

func (d *document) assemble() ([]byte, error) {
	catalog, info, pages := d.reserve(), d.reserve(), d.reserve()
	font, err := d.face.write(&d.file)
	if err != nil {
		return nil, err
	}
	d.addResources(font)
	numbers := make([]int, len(d.sheets))
	for i, s := range d.sheets {
		if numbers[i], err = d.page(s, pages); err != nil {
			return nil, fmt.Errorf("sheet %s: %w", s.Name, err)
		}
	}
	d.set(pages, fmt.Sprintf("<< /Type /Pages /Count %d /Kids [%s] >>", len(numbers), references(numbers)))
	about, err := d.information()
	if err != nil {
		return nil, err
	}
	d.set(info, about)
	d.set(catalog, d.catalog(pages, d.outlines(numbers)))
	return d.file.assemble(catalog, info), nil
}

// addResources adds what every page's content refers to: typeface and layers.
func (d *document) addResources(font int) {
	var named strings.Builder
	for _, l := range layersOf(d.sheets) {
		n := d.add("<< /Type /OCG /Name " + quoted(l.String()) + " >>")
		d.layers = append(d.layers, n)
		fmt.Fprintf(&named, " /%s %s", l, reference(n))
	}
	d.resources = d.add(fmt.Sprintf("<< /Font << /%s %s >> /Properties <<%s >> >>", fontName, reference(font), named.String()))
}

func (d *document) page(s sheet.Sheet, pages int) (int, error) {
	data, err := contentOf(s, d.face, d.options.Correction)
	if err != nil {
		return 0, err
	}
	factor := d.options.Correction.Factors()
	return d.add(fmt.Sprintf("<< /Type /Page /Parent %s /MediaBox [0 0 %s %s]\n/Resources %s /Contents %s >>",
		reference(pages), points(s.Width, factor.X), points(s.Height, factor.Y), reference(d.resources), reference(d.stream("", data)))), nil
}

// outlines adds one bookmark a page and returns the number of their list.
func (d *document) outlines(pages []int) int {
	list := d.reserve()
	first := list + 1
	for i, s := range d.sheets {
		var around string
		if i > 0 {
			around += " /Prev " + reference(first+i-1)
		}
		if i < len(pages)-1 {
			around += " /Next " + reference(first+i+1)
		}
		d.add(fmt.Sprintf("<< /Title %s /Parent %s%s /Dest [%s /Fit] >>", quoted(titleOf(s)), reference(list), around, reference(pages[i])))
	}
	d.set(list, fmt.Sprintf("<< /Type /Outlines /First %s /Last %s /Count %d >>", reference(first), reference(first+len(pages)-1), len(pages)))
	return list
}

func titleOf(s sheet.Sheet) string { return cmp.Or(s.Title, s.Name) }

func (d *document) catalog(pages, outlines int) string {
	shown := "/DisplayDocTitle true"
	if d.options.ActualSize {
		shown += " /PrintScaling /None /Enforce [/PrintScaling] /PickTrayByPDFSize true"
	}
	layers := references(d.layers)
	return fmt.Sprintf("<< /Type /Catalog /Pages %s /Outlines %s /PageMode /UseOutlines /Lang (en)\n"+
		"/ViewerPreferences << %s >>\n/OCProperties << /OCGs [%s] /D << /Name (Layers) /Order [%s] /ON [%s] >> >> >>",
		reference(pages), reference(outlines), shown, layers, layers, layers)
}

func (d *document) information() (string, error) {
	about := "<< /Title " + quoted(cmp.Or(d.options.Title, titleOf(d.sheets[0]))) + " /Creator (stilewright) /Producer (stilewright)"
	if d.options.Author != "" {
		about += " /Author " + quoted(d.options.Author)
	}
	if d.options.Date != "" {
		day, err := time.Parse(time.DateOnly, d.options.Date)
		if err != nil {
			return "", fmt.Errorf("date %q: write it as YYYY-MM-DD, such as 2026-11-25", d.options.Date)
		}
		stamp := "(D:" + day.Format("20060102") + ")"
		about += " /CreationDate " + stamp + " /ModDate " + stamp
	}
	return about + " >>", nil
}
