package shop

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"
)

// List is the parts list of the job as CSV: a row for every cutting file, in
// the order of the job. Sizes are in the files' unit: of the blank as it lies
// with finished sizes, of all lines as written, and the length of all cuts, which
// is empty for what is ordered to size.
func (j Job) List() []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	rows := [][]string{{"file", "parts", "name", "material", "thickness", "quantity", "face", "turned over", "unit", "width", "height", "lines from x", "from y", "to x", "to y", "kerf", "cut length", "pierces", "not in the file"}}
	for _, k := range j.Works {
		rows = append(rows, j.row(k))
	}
	if err := w.WriteAll(rows); err != nil {
		panic(err) // a buffer takes everything
	}
	return out.Bytes()
}

func (j Job) row(k Work) []string {
	o, s := j.Options, k.Setup
	box := bounds(k.Cutting)
	turned, kerf := "no", ""
	if s.Face.Turned() {
		turned = "yes"
	}
	if taken := o.kerfOf(k.Part); taken > 0 {
		kerf = o.figure(taken)
	}
	cuts, pierces := strings.Fields(o.measure(s.CutLength()))[0], fmt.Sprint(s.Pierces())
	if k.Part.Order {
		cuts, pierces = "", ""
	}
	return []string{
		k.Name + ".dxf", strings.Join(k.Part.Labels, " "), k.Part.Name, k.Part.Material, o.figure(k.Part.Thickness), fmt.Sprint(k.Part.Quantity),
		s.Face.String(), turned, o.Unit.String(), o.figure(s.Width), o.figure(s.Height),
		o.figure(box.Min.X), o.figure(box.Min.Y), o.figure(box.Max.X), o.figure(box.Max.Y), kerf,
		cuts, pierces, strings.Join(append(append([]string{}, k.Part.Notes...), k.LeftOut...), "; "),
	}
}
