package packet

import (
	"bytes"
	"fmt"

	"stilewright/model/door"
	"stilewright/render/dxf"
	"stilewright/render/pdf"
	"stilewright/render/shop"
	"stilewright/render/svg"
)

// shopFolder holds what a CNC shop or a laser cutter is sent.
const shopFolder = "cnc/"

// Shop is every file of a shop's job: the cuttings as DXF, their list, and the
// cover sheets as SVG and in one PDF. None for an empty job. Each cutting is read back before it leaves, and must be the
// one that was meant.
func Shop(s door.Set, j shop.Job) ([]File, error) {
	if len(j.Works) == 0 {
		return nil, nil
	}
	var files []File
	for _, w := range j.Works {
		var out bytes.Buffer
		if err := dxf.WriteCutting(&out, w.Cutting); err != nil {
			return nil, fmt.Errorf("%s.dxf: %w", w.Name, err)
		}
		back, err := dxf.ReadCutting(bytes.NewReader(out.Bytes()))
		if err == nil {
			err = w.Cutting.Same(back)
		}
		if err != nil {
			return nil, fmt.Errorf("%s.dxf does not read back as it was meant: %w", w.Name, err)
		}
		files = append(files, File{Name: shopFolder + w.Name + ".dxf", Data: out.Bytes()})
	}
	files = append(files, File{Name: shopFolder + "parts.csv", Data: j.List()})
	covers, err := shopCovers(s, j)
	return append(files, covers...), err
}

// shopCovers are the cover sheets.
func shopCovers(s door.Set, j shop.Job) ([]File, error) {
	sheets, err := j.Covers(s)
	if err != nil {
		return nil, fmt.Errorf("cover sheets: %w", err)
	}
	var files []File
	for _, page := range sheets {
		var out bytes.Buffer
		if err := svg.Write(&out, page); err != nil {
			return nil, fmt.Errorf("%s as SVG: %w", page.Name, err)
		}
		files = append(files, File{Name: shopFolder + page.Name + ".svg", Data: out.Bytes()})
	}
	var out bytes.Buffer
	if err := pdf.Write(&out, sheets, pdf.Options{Title: s.Job + ", cover for the shop", Author: s.By, Date: s.Drawn}); err != nil {
		return nil, fmt.Errorf("cover.pdf: %w", err)
	}
	return append(files, File{Name: shopFolder + "cover.pdf", Data: out.Bytes()}), nil
}
