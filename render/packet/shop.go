package packet

import (
	"bytes"
	"fmt"

	"stilewright/render/dxf"
	"stilewright/render/shop"
)

// shopFolder holds what a CNC shop or a laser cutter is sent.
const shopFolder = "cnc/"

// Shop is every file of a shop's job: the cuttings as DXF and their list. None
// for an empty job. Each cutting is read back before it leaves, and must be the
// one that was meant.
func Shop(j shop.Job) ([]File, error) {
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
	return append(files, File{Name: shopFolder + "parts.csv", Data: j.List()}), nil
}
