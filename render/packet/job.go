package packet

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"stilewright/model/door"
	"stilewright/render/drawing"
	"stilewright/render/dxf"
	"stilewright/render/pdf"
	"stilewright/render/record"
	"stilewright/render/sheet"
	"stilewright/render/svg"
)

// sheetSet is the file that holds all sheets of a set.
const sheetSet = "sheets.pdf"

// Of is every file of a job's drawings: each sheet as SVG and DXF, all of them in
// one PDF, and the record of all resolved lengths.
func Of(s door.Set) ([]File, error) {
	files, err := Sheets(s, SheetOrder{})
	if err != nil {
		return nil, err
	}
	resolved, err := Record(s)
	return append(files, resolved...), err
}

// A SheetOrder tells which sheets are written, and in which formats. The zero
// order is for all.
type SheetOrder struct {
	drawing.Options
	Formats []string // of SheetFormats; all when empty
}

// SheetFormats are the formats sheets are written in.
func SheetFormats() []string { return []string{"svg", "dxf", "pdf"} }

// Sheets are the sheets ordered.
func Sheets(s door.Set, o SheetOrder) ([]File, error) {
	for _, format := range o.Formats {
		if !slices.Contains(SheetFormats(), format) {
			return nil, fmt.Errorf("sheets are not written as %q; the formats are %s", format, strings.Join(SheetFormats(), ", "))
		}
	}
	asked := func(format string) bool { return len(o.Formats) == 0 || slices.Contains(o.Formats, format) }
	sheets, err := drawing.Draw(s, o.Options)
	if err != nil {
		return nil, err
	}
	var files []File
	for _, page := range sheets {
		for _, f := range []struct {
			format string
			write  func(io.Writer, sheet.Sheet) error
		}{{"svg", svg.Write}, {"dxf", dxf.Write}} {
			if !asked(f.format) {
				continue
			}
			var out bytes.Buffer
			if err := f.write(&out, page); err != nil {
				return nil, fmt.Errorf("%s as %s: %w", page.Name, strings.ToUpper(f.format), err)
			}
			files = append(files, File{Name: page.Name + "." + f.format, Data: out.Bytes()})
		}
	}
	if !asked("pdf") {
		return files, nil
	}
	var asPDF bytes.Buffer
	if err := pdf.Write(&asPDF, sheets, pdf.Options{Title: s.Job, Author: s.By, Date: s.Drawn}); err != nil {
		return nil, fmt.Errorf("%s: %w", sheetSet, err)
	}
	return append(files, File{Name: sheetSet, Data: asPDF.Bytes()}), nil
}

// Record is the record of all resolved lengths, resolved.json.
func Record(s door.Set) ([]File, error) {
	resolved, err := record.JSON(s)
	if err != nil {
		return nil, fmt.Errorf("resolved.json: %w", err)
	}
	return []File{{Name: "resolved.json", Data: resolved}}, nil
}

// Others are the files a packet at dir holds by its manifest that are not among
// the names; none where no packet stands.
func Others(dir string, names []string) []string {
	s, err := stateOf(filepath.Clean(dir))
	if err != nil {
		return nil
	}
	var others []string
	for _, f := range s.manifest.Files {
		if !slices.Contains(names, f.Name) {
			others = append(others, f.Name)
		}
	}
	return others
}
