package dxf

import (
	"fmt"
	"io"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// writeR12 writes the cutting in release 12: sections HEADER, TABLES, BLOCKS
// and ENTITIES, polylines as POLYLINE, VERTEX and SEQEND. The header variables
// for the unit are younger than the release; readers that know them use them,
// and tests hold that three others read past them.
func (c Cutting) writeR12(w io.Writer) error {
	f := &file{tags: tags{inches: c.Unit == length.Inches}, last: noHandle}
	f.open("ENTITIES")
	for _, p := range c.Paths {
		if isCircle(p.Path) {
			f.plain("CIRCLE", p.Layer)
			f.point(10, p.Path[0].Centre)
			f.length(40, length.Round(p.Path[0].Radius()))
			continue
		}
		f.polyline12(p)
	}
	f.shut()
	f.text(0, "EOF")
	body := f.out
	f.out = nil
	f.header12(c.bounds())
	f.tables12(c)
	f.open("BLOCKS")
	f.shut()
	for _, piece := range [][]byte{f.out, body} {
		if _, err := w.Write(piece); err != nil {
			return fmt.Errorf("dxf: %w", err)
		}
	}
	return nil
}

func (f *file) header12(extents plane.Box) {
	f.open("HEADER")
	f.variable("$ACADVER").text(1, "AC1009")
	f.variable("$INSBASE").point(10, plane.Point{})
	f.variable("$EXTMIN").point(10, extents.Min)
	f.variable("$EXTMAX").point(10, extents.Max)
	f.variable("$LIMMIN").flat(10, extents.Min)
	f.variable("$LIMMAX").flat(10, extents.Max)
	f.variable("$LUNITS").count(70, 2) // decimal
	f.unit()
	f.variable("$HANDLING").count(70, 1)
	f.variable("$HANDSEED").handle(5, f.last+1)
	f.shut()
}

func (f *file) tables12(c Cutting) {
	table := func(name string, n int) {
		f.text(0, "TABLE")
		f.text(2, name)
		f.count(70, n)
	}
	f.open("TABLES")
	table("LTYPE", 1)
	f.text(0, "LTYPE")
	f.text(2, "CONTINUOUS")
	f.count(70, 0)
	f.text(3, "Solid line")
	f.count(72, 'A')
	f.count(73, 0)
	f.real(40, 0, 1)
	f.endTable()
	layers := append([]CuttingLayer{{"0", foreground}}, c.Layers...)
	table("LAYER", len(layers))
	for _, l := range layers {
		f.text(0, "LAYER")
		f.text(2, l.Name)
		f.count(70, 0)
		f.count(62, l.Colour)
		f.text(6, "CONTINUOUS")
	}
	f.endTable()
	table("STYLE", 1)
	f.text(0, "STYLE")
	f.text(2, "STANDARD")
	f.count(70, 0)
	f.real(40, 0, 1)
	f.real(41, 1, 1)
	f.real(50, 0, 1)
	f.count(71, 0)
	f.real(42, 1, 1)
	f.text(3, textFont)
	f.text(4, "")
	f.endTable()
	f.shut()
}

// plain begins an entity of release 12.
func (f *file) plain(kind, layer string) {
	f.text(0, kind)
	f.handle(5, f.take())
	f.text(8, layer)
}

func (f *file) polyline12(p CuttingPath) {
	f.plain("POLYLINE", p.Layer)
	f.count(66, 1) // vertices follow
	f.point(10, plane.Point{})
	f.count(70, closedFlag(p.Path))
	for _, v := range verticesOf(p.Path) {
		f.plain("VERTEX", p.Layer)
		f.point(10, v.at)
		if v.bulge != 0 {
			f.real(42, v.bulge, factorDecimals)
		}
	}
	f.plain("SEQEND", p.Layer)
}
