package dxf

import (
	"fmt"
	"io"
	"testing"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/sheet"
)

// tenThousand is what cmd/bench-dxf.sh has the other writer set down too:
// lines, arcs and texts in turn.
func tenThousand() sheet.Sheet {
	var marks []sheet.Mark
	for i := range 10_000 {
		o := plane.At(length.Length(i%100)*3_175_000, length.Length(i/100)*3_175_000)
		switch i % 3 {
		case 0:
			marks = append(marks, sheet.Stroke{Layer: sheet.Outline, Weight: sheet.Wide, Path: plane.Path{plane.Line(o, o.Add(2*mm, mm))}})
		case 1:
			marks = append(marks, sheet.Stroke{Layer: sheet.Outline, Path: plane.Path{plane.Arc(o.Add(mm, 0), o.Add(0, mm), o, plane.Left)}})
		default:
			marks = append(marks, sheet.Text{Layer: sheet.Notes, At: o, Height: 2 * mm, String: fmt.Sprintf("%d 5/8", i)})
		}
	}
	return page(marks...)
}

func BenchmarkWrite10000(b *testing.B) {
	s := tenThousand()
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}
