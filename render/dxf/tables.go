package dxf

import (
	"stilewright/model/length"
	"stilewright/model/plane"
)

// Handles of the objects every file has. What is counted comes after.
const (
	noHandle handle = iota
	viewportTable
	lineTypeTable
	layerTable
	textStyleTable
	viewTable
	axesTable
	applicationTable
	dimStyleTable
	blockTable
	modelSpace // block records
	paperSpace
	rootDictionary
	groupDictionary
	layoutDictionary
	modelLayout
	paperLayout
	firstFree
)

// textStyle is the one text style. Its font is the format's own plain stroke
// font, which every reader has or replaces.
const (
	textStyle = "Standard"
	textFont  = "txt"
)

// A file is a whole DXF file but for its entities.
type file struct {
	tags
	last handle // the last handle given out

	lineTypes []lineType
	layers    []layer
	dimStyles []dimStyle
	blocks    []block
	extents   plane.Box // of all entities
	limits    plane.Box // of the paper, at full size
	factor    float64   // from paper to full size: of dashes, figures and arrows
}

// A lineType is a dash pattern in paper sizes: drawn and left in turn.
type lineType struct {
	name, meaning string
	dashes        []length.Length
}

type layer struct {
	name, line     string
	colour, weight int
}

// A dimStyle tells readers how to redraw a dimension somebody edits. Sizes are
// those on paper.
type dimStyle struct {
	name           string
	figure, arrow  length.Length
	measuredFactor float64 // from the drawing's distance to the true one
}

// A block is a named run of entities, finished by the time the file is written.
type block struct {
	name     string
	record   handle
	contents []byte
}

// take gives out the next handle.
func (f *file) take() handle {
	f.last++
	return f.last
}

// open and shut enclose a section.
func (f *file) open(name string) { f.text(0, "SECTION"); f.text(2, name) }
func (f *file) shut()            { f.text(0, "ENDSEC") }

// table begins a symbol table of n entries; write endTable after them.
func (f *file) table(name string, h handle, n int) {
	f.text(0, "TABLE")
	f.text(2, name)
	f.handle(5, h)
	f.handle(330, noHandle)
	f.text(100, "AcDbSymbolTable")
	f.count(70, n)
}

func (f *file) endTable() { f.text(0, "ENDTAB") }

// entry begins an entry of a symbol table.
func (f *file) entry(kind string, table handle, class, name string) {
	f.record(kind, 5, table, f.take())
	f.class(class, name)
}

func (f *file) record(kind string, code int, table, own handle) {
	f.text(0, kind)
	f.handle(code, own)
	f.handle(330, table)
	f.text(100, "AcDbSymbolTableRecord")
}

func (f *file) class(class, name string) {
	f.text(100, class)
	f.text(2, name)
}

func (f *file) tables() {
	f.open("TABLES")
	f.viewports()
	f.lineTypeEntries()
	f.layerEntries()
	f.textStyles()
	f.table("VIEW", viewTable, 0)
	f.endTable()
	f.table("UCS", axesTable, 0)
	f.endTable()
	f.table("APPID", applicationTable, 1)
	f.entry("APPID", applicationTable, "AcDbRegAppTableRecord", "ACAD")
	f.count(70, 0)
	f.endTable()
	f.dimStyleEntries()
	f.blockRecords()
	f.shut()
}

// viewports writes the view the file opens with: the whole sheet.
func (f *file) viewports() {
	w, h := f.limits.Width(), f.limits.Height()
	f.table("VPORT", viewportTable, 1)
	f.entry("VPORT", viewportTable, "AcDbViewportTableRecord", "*Active")
	f.count(70, 0)
	f.flat(10, plane.Point{}) // of the screen
	f.flat(11, plane.At(length.Millimetre, length.Millimetre))
	f.flat(12, f.limits.Min.Add(w.Half(), h.Half())) // middle of the view
	for _, code := range []int{13, 14, 15} {         // snap and grid, not used
		f.flat(code, plane.At(length.Millimetre, length.Millimetre))
	}
	f.real(16, 0, 1) // looking down the Z axis
	f.real(26, 0, 1)
	f.real(36, 1, 1)
	f.point(17, plane.Point{})
	f.length(40, h)
	f.real(41, w.MM()/h.MM(), factorDecimals)
	f.real(42, 50, 1) // lens
	for _, code := range []int{43, 44} {
		f.real(code, 0, 1)
	}
	for _, code := range []int{50, 51} {
		f.real(code, 0, 1)
	}
	for _, pair := range [][2]int{{71, 0}, {72, 1000}, {73, 1}, {74, 3}, {75, 0}, {76, 0}, {77, 0}, {78, 0}, {281, 0}, {65, 0}} {
		f.count(pair[0], pair[1])
	}
	f.endTable()
}

func (f *file) lineTypeEntries() {
	all := append([]lineType{{name: "ByBlock"}, {name: "ByLayer"}, {name: continuous, meaning: "Solid line"}}, f.lineTypes...)
	f.table("LTYPE", lineTypeTable, len(all))
	for _, t := range all {
		f.entry("LTYPE", lineTypeTable, "AcDbLinetypeTableRecord", t.name)
		f.count(70, 0)
		f.text(3, t.meaning)
		f.count(72, 'A') // dashes fitted to the ends
		f.count(73, len(t.dashes))
		f.length(40, length.Sum(t.dashes...))
		for i, d := range t.dashes {
			if i%2 == 1 {
				d = -d // left out
			}
			f.length(49, d)
			f.count(74, 0) // no shape
		}
	}
	f.endTable()
}

func (f *file) layerEntries() {
	all := append([]layer{{name: "0", line: continuous, colour: foreground, weight: defaultWeight}}, f.layers...)
	f.table("LAYER", layerTable, len(all))
	for _, l := range all {
		f.entry("LAYER", layerTable, "AcDbLayerTableRecord", l.name)
		f.count(70, 0)
		f.count(62, l.colour)
		f.text(6, l.line)
		f.count(370, l.weight)
	}
	f.endTable()
}

func (f *file) textStyles() {
	f.table("STYLE", textStyleTable, 1)
	f.entry("STYLE", textStyleTable, "AcDbTextStyleTableRecord", textStyle)
	f.count(70, 0)
	f.real(40, 0, 1) // height: the text's own
	f.real(41, 1, 1) // width factor
	f.real(50, 0, 1) // slant
	f.count(71, 0)
	f.real(42, 1, 1) // height last used
	f.text(3, textFont)
	f.text(4, "")
	f.endTable()
}

func (f *file) dimStyleEntries() {
	all := append([]dimStyle{{name: "Standard", measuredFactor: 1}}, f.dimStyles...)
	f.table("DIMSTYLE", dimStyleTable, len(all))
	f.text(100, "AcDbDimStyleTable")
	for _, s := range all {
		f.record("DIMSTYLE", 105, dimStyleTable, f.take())
		f.class("AcDbDimStyleTableRecord", s.name)
		f.count(70, 0)
		f.real(40, f.factor, factorDecimals)
		if s.figure > 0 {
			f.length(41, s.arrow)
			f.length(140, s.figure)
			f.length(147, s.figure.Half()) // gap round the figure
		}
		f.real(144, s.measuredFactor, factorDecimals)
		f.count(73, 0) // figures along the dimension line
		f.count(74, 0)
		f.count(77, 0) // in the line, not above it
		f.count(271, 3)
		f.count(277, 2) // decimal
	}
	f.endTable()
}

func (f *file) blockRecords() {
	f.table("BLOCK_RECORD", blockTable, 2+len(f.blocks))
	write := func(name string, own, layout handle) {
		f.record("BLOCK_RECORD", 5, blockTable, own)
		f.class("AcDbBlockTableRecord", name)
		f.handle(340, layout)
	}
	write("*Model_Space", modelSpace, modelLayout)
	write("*Paper_Space", paperSpace, paperLayout)
	for _, b := range f.blocks {
		write(b.name, b.record, noHandle)
	}
	f.endTable()
}

func (f *file) blockSection() {
	f.open("BLOCKS")
	f.block(block{name: "*Model_Space", record: modelSpace}, 0)
	f.block(block{name: "*Paper_Space", record: paperSpace}, 0)
	for _, b := range f.blocks {
		f.block(b, 1) // anonymous
	}
	f.shut()
}

func (f *file) block(b block, flags int) {
	begin := func(kind, class string) {
		f.text(0, kind)
		f.handle(5, f.take())
		f.handle(330, b.record)
		f.text(100, "AcDbEntity")
		f.text(8, "0")
		f.text(100, class)
	}
	begin("BLOCK", "AcDbBlockBegin")
	f.text(2, b.name)
	f.count(70, flags)
	f.point(10, plane.Point{})
	f.text(3, b.name)
	f.text(1, "")
	f.out = append(f.out, b.contents...)
	begin("ENDBLK", "AcDbBlockEnd")
}
