package dxf

import (
	"io"

	"stilewright/model/plane"
)

// Names and numbers the format gives a fixed meaning.
const (
	continuous    = "Continuous"
	foreground    = 7  // colour index: black on light, white on dark
	defaultWeight = -3 // line weight: the reader's default
	inches        = 1  // $INSUNITS
	millimetres   = 4
)

// write sets down the whole file around the entities of model space. The
// header stands first and holds the next free handle, so it is made last.
func (f *file) write(w io.Writer, model []byte) error {
	f.tables()
	f.blockSection()
	f.open("ENTITIES")
	before := f.out
	f.out = nil
	f.shut()
	f.objects()
	f.text(0, "EOF")
	after := f.out
	f.out = nil
	f.header()
	for _, piece := range [][]byte{f.out, before, model, after} {
		if _, err := w.Write(piece); err != nil {
			return err
		}
	}
	return nil
}

// header writes the HEADER section and the CLASSES section, which is empty.
func (f *file) header() {
	f.open("HEADER")
	f.variable("$ACADVER").text(1, "AC1015")
	f.variable("$DWGCODEPAGE").text(3, "ANSI_1252")
	f.variable("$INSBASE").point(10, plane.Point{})
	f.variable("$EXTMIN").point(10, f.extents.Min)
	f.variable("$EXTMAX").point(10, f.extents.Max)
	f.variable("$LIMMIN").flat(10, f.limits.Min)
	f.variable("$LIMMAX").flat(10, f.limits.Max)
	f.variable("$LTSCALE").real(40, f.factor, factorDecimals)
	f.variable("$TEXTSTYLE").text(7, textStyle)
	f.variable("$CLAYER").text(8, "0")
	f.variable("$DIMSCALE").real(40, f.factor, factorDecimals)
	f.variable("$LUNITS").count(70, 2) // decimal
	f.variable("$LUPREC").count(70, 3)
	f.unit()
	f.variable("$LWDISPLAY").count(290, 1) // show line weights
	f.variable("$TILEMODE").count(70, 1)   // open in model space
	f.variable("$HANDSEED").handle(5, f.last+1)
	f.shut()
	f.open("CLASSES")
	f.shut()
}

// unit writes the header variables that tell the unit of lengths.
func (f *file) unit() {
	unit, metric := millimetres, 1
	if f.inches {
		unit, metric = inches, 0
	}
	f.variable("$INSUNITS").count(70, unit)
	f.variable("$MEASUREMENT").count(70, metric)
}

// variable begins a header variable; its value follows.
func (f *file) variable(name string) *tags {
	f.text(9, name)
	return &f.tags
}

// objects writes the dictionaries and the two layouts the format demands.
func (f *file) objects() {
	f.open("OBJECTS")
	type entry struct {
		name string
		of   handle
	}
	dictionary := func(own, owner handle, entries ...entry) {
		f.text(0, "DICTIONARY")
		f.handle(5, own)
		f.handle(330, owner)
		f.text(100, "AcDbDictionary")
		f.count(281, 1) // keep duplicates as they are
		for _, e := range entries {
			f.text(3, e.name)
			f.handle(350, e.of)
		}
	}
	dictionary(rootDictionary, noHandle, entry{"ACAD_GROUP", groupDictionary}, entry{"ACAD_LAYOUT", layoutDictionary})
	dictionary(groupDictionary, rootDictionary)
	dictionary(layoutDictionary, rootDictionary, entry{"Model", modelLayout}, entry{"Layout1", paperLayout})
	f.layout("Model", modelLayout, modelSpace, 0)
	f.layout("Layout1", paperLayout, paperSpace, 1)
	f.shut()
}

// layout writes a layout without any plot settings of its own.
func (f *file) layout(name string, own, record handle, order int) {
	const modelType = 1024
	f.text(0, "LAYOUT")
	f.handle(5, own)
	f.handle(330, layoutDictionary)
	f.text(100, "AcDbPlotSettings")
	f.text(1, "")
	f.text(2, "none_device")
	f.text(4, "")
	f.text(6, "")
	for _, code := range []int{40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 140, 141} {
		f.real(code, 0, 1)
	}
	f.real(142, 1, 1) // plot scale 1:1
	f.real(143, 1, 1)
	f.count(70, modelType*(1-order))
	f.count(72, 1) // millimetres
	f.count(73, 0)
	f.count(74, 5) // what the layout shows
	f.text(7, "")
	f.count(75, 16)
	f.real(147, 1, 1)
	f.real(148, 0, 1)
	f.real(149, 0, 1)
	f.text(100, "AcDbLayout")
	f.text(1, name)
	f.count(70, 1)
	f.count(71, order)
	f.flat(10, f.limits.Min)
	f.flat(11, f.limits.Max)
	f.point(12, plane.Point{})
	f.point(14, f.extents.Min)
	f.point(15, f.extents.Max)
	f.real(146, 0, 1)
	f.point(13, plane.Point{})
	f.axis(16, 1, 0)
	f.axis(17, 0, 1)
	f.count(76, 0)
	f.handle(330, record)
}

// axis writes a direction in the plane.
func (f *file) axis(code int, x, y float64) {
	f.real(code, x, 1)
	f.real(code+10, y, 1)
	f.real(code+20, 0, 1)
}
