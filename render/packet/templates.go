package packet

import (
	"bytes"
	"fmt"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/render/dxf"
	"stilewright/render/svg"
	"stilewright/render/template"
	"stilewright/render/tile"
)

// TemplatesFolder holds the full-size templates in a packet.
const TemplatesFolder = "templates/"

// OfficePaper is what an office printer of a set's country takes.
func OfficePaper(s door.Set) tile.Paper {
	name := "A4"
	if s.Units == length.Inches {
		name = "letter"
	}
	paper, _ := tile.Named(name) // both are in the catalogue; a test names them
	return paper
}

// Templates is every full-size template of a set, in a folder named with its
// slash, or "" for none: each as SVG and DXF at 1:1, and templates.pdf with all
// of them on pages of the paper. The places of the track's screws, from the opening's
// left, come on a strip of their own.
func Templates(s door.Set, folder string, paper tile.Paper, o tile.Options, track ...length.Length) ([]File, error) {
	var book bytes.Buffer
	if err := template.Write(&book, s, paper, o, track...); err != nil {
		return nil, fmt.Errorf("templates.pdf: %w", err)
	}
	files := []File{{Name: folder + "templates.pdf", Data: book.Bytes()}}
	for _, t := range template.Sheets(s, track...) {
		var asSVG, asDXF bytes.Buffer
		if err := svg.Write(&asSVG, t); err != nil {
			return nil, fmt.Errorf("%s as SVG: %w", t.Name, err)
		}
		if err := dxf.Write(&asDXF, t); err != nil {
			return nil, fmt.Errorf("%s as DXF: %w", t.Name, err)
		}
		files = append(files, File{Name: folder + t.Name + ".svg", Data: asSVG.Bytes()}, File{Name: folder + t.Name + ".dxf", Data: asDXF.Bytes()})
	}
	return files, nil
}
