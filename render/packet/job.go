package packet

import (
	"bytes"
	"fmt"

	"stilewright/model/door"
	"stilewright/render/drawing"
	"stilewright/render/dxf"
	"stilewright/render/record"
	"stilewright/render/svg"
)

// Of is every file a job writes: each sheet as SVG and DXF, and the record
// of all resolved lengths.
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
	resolved, err := record.JSON(s)
	if err != nil {
		return nil, fmt.Errorf("resolved.json: %w", err)
	}
	return append(files, File{Name: "resolved.json", Data: resolved}), nil
}
