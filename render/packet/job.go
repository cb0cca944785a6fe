package packet

import (
	"bytes"
	"fmt"

	"stilewright/model/door"
	"stilewright/render/drawing"
	"stilewright/render/dxf"
	"stilewright/render/pdf"
	"stilewright/render/record"
	"stilewright/render/svg"
)

// sheetSet is the file that holds all sheets of a set.
const sheetSet = "sheets.pdf"

// Of is every file a job writes: each sheet as SVG and DXF, all of them in one
// PDF, and the record of all resolved lengths.
func Of(s door.Set) ([]File, error) {
	sheets, err := drawing.Sheets(s)
	if err != nil {
		return nil, err
	}
	var files []File
	for _, page := range sheets {
		var asSVG, asDXF bytes.Buffer
		if err := svg.Write(&asSVG, page); err != nil {
			return nil, fmt.Errorf("%s as SVG: %w", page.Name, err)
		}
		if err := dxf.Write(&asDXF, page); err != nil {
			return nil, fmt.Errorf("%s as DXF: %w", page.Name, err)
		}
		files = append(files, File{Name: page.Name + ".svg", Data: asSVG.Bytes()}, File{Name: page.Name + ".dxf", Data: asDXF.Bytes()})
	}
	var asPDF bytes.Buffer
	if err := pdf.Write(&asPDF, sheets, pdf.Options{Title: s.Job, Author: s.By, Date: s.Drawn}); err != nil {
		return nil, fmt.Errorf("%s: %w", sheetSet, err)
	}
	resolved, err := record.JSON(s)
	if err != nil {
		return nil, fmt.Errorf("resolved.json: %w", err)
	}
	return append(files, File{Name: sheetSet, Data: asPDF.Bytes()}, File{Name: "resolved.json", Data: resolved}), nil
}
