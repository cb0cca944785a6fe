package packet

import (
	"bytes"
	"fmt"
	"strings"

	"stilewright/model/takeoff"
	"stilewright/render/dxf"
	"stilewright/render/layout"
	"stilewright/render/list"
	"stilewright/render/pdf"
	"stilewright/render/sheet"
	"stilewright/render/svg"
)

// ListsFolder holds a takeoff in a packet.
const ListsFolder = "lists/"

// Lists is every file of a takeoff, in a folder ("" for none): each list as CSV,
// all of them as a workbook, a price file to fill in, the printed pages and the
// labels as PDF, and the layouts as SVG and DXF.
func Lists(t takeoff.Takeoff, folder string) ([]File, error) {
	files, err := tables(t, folder)
	if err != nil {
		return nil, err
	}
	pages, err := layout.Pages(t)
	if err != nil {
		return nil, fmt.Errorf("lists: %w", err)
	}
	labels, err := layout.Labels(t)
	if err != nil {
		return nil, fmt.Errorf("labels: %w", err)
	}
	for _, p := range pages {
		if p.Scale.Paper == 0 {
			continue // a page of text
		}
		var asSVG, asDXF bytes.Buffer
		if err := svg.Write(&asSVG, p); err != nil {
			return nil, fmt.Errorf("%s as SVG: %w", p.Name, err)
		}
		if err := dxf.Write(&asDXF, p); err != nil {
			return nil, fmt.Errorf("%s as DXF: %w", p.Name, err)
		}
		files = append(files, File{folder + p.Name + ".svg", asSVG.Bytes()}, File{folder + p.Name + ".dxf", asDXF.Bytes()})
	}
	for _, set := range []struct {
		name   string
		sheets []sheet.Sheet
		actual bool
	}{{"takeoff.pdf", pages, false}, {"labels.pdf", labels, true}} {
		var out bytes.Buffer
		if err := pdf.Write(&out, set.sheets, pdf.Options{Title: title(t), Author: t.Jobs[0].By, Date: t.Jobs[0].Drawn, ActualSize: set.actual}); err != nil {
			return nil, fmt.Errorf("%s: %w", set.name, err)
		}
		files = append(files, File{folder + set.name, out.Bytes()})
	}
	return files, nil
}

// tables are the lists as CSV and as a workbook, and the price file.
func tables(t takeoff.Takeoff, folder string) ([]File, error) {
	all := list.Tables(t)
	var files []File
	for _, table := range all {
		var out bytes.Buffer
		if err := list.CSV(&out, table); err != nil {
			return nil, fmt.Errorf("%s.csv: %w", table.Name, err)
		}
		files = append(files, File{folder + table.Name + ".csv", out.Bytes()})
	}
	var book, prices bytes.Buffer
	if err := list.XLSX(&book, all, title(t), t.Jobs[0].By, t.Jobs[0].Drawn); err != nil {
		return nil, fmt.Errorf("lists.xlsx: %w", err)
	}
	if err := list.Prices(&prices, t); err != nil {
		return nil, fmt.Errorf("prices.csv: %w", err)
	}
	return append(files, File{folder + "lists.xlsx", book.Bytes()}, File{folder + "prices.csv", prices.Bytes()}), nil
}

// title names the jobs.
func title(t takeoff.Takeoff) string {
	var names []string
	for _, set := range t.Jobs {
		names = append(names, set.Job)
	}
	return strings.Join(names, ", ")
}
