package dxf

import (
	"stilewright/model/length"
	"stilewright/model/plane"
)

// A look is what an entity carries besides its shape. Zero fields are left to
// the entity's layer.
type look struct {
	layer  string
	line   string // name in the LTYPE table
	weight int    // hundredths of a millimetre
	colour int    // colour index
}

// entities writes entities into one owner: model space or a block.
type entities struct {
	tags
	last  *handle // the last handle given out, one count for the whole file
	owner handle  // block record
}

// take gives out the next handle.
func (e *entities) take() handle {
	*e.last++
	return *e.last
}

// begin writes what all entities have in common.
func (e *entities) begin(kind string, k look) {
	e.text(0, kind)
	e.handle(5, e.take())
	e.handle(330, e.owner)
	e.text(100, "AcDbEntity")
	e.text(8, k.layer)
	if k.line != "" {
		e.text(6, k.line)
	}
	if k.colour != 0 {
		e.count(62, k.colour)
	}
	if k.weight != 0 {
		e.count(370, k.weight)
	}
}

// path writes a run of edges as the simplest entity that shows it: a LINE, an
// ARC, a CIRCLE or an LWPOLYLINE.
func (e *entities) path(k look, p plane.Path) {
	switch {
	case len(p) == 1 && p[0].Turn == plane.Straight:
		e.segment(k, p[0].From, p[0].To)
	case len(p) == 1:
		e.arc(k, p[0])
	case isCircle(p):
		e.circle(k, p[0])
	default:
		e.polyline(k, p)
	}
}

// isCircle tells whether two arcs make one full circle: same centre, same turn,
// and the second ends where the first began, so that their sweeps add up to a
// full turn.
func isCircle(p plane.Path) bool {
	return len(p) == 2 && p[0].Turn != plane.Straight && p[0].Turn == p[1].Turn &&
		p[0].Centre == p[1].Centre && p[0].To == p[1].From && p[1].To == p[0].From
}

func (e *entities) segment(k look, a, b plane.Point) {
	e.begin("LINE", k)
	e.text(100, "AcDbLine")
	e.point(10, a)
	e.point(11, b)
}

// arc writes an arc, which DXF always draws counter-clockwise: one that turns
// right is written from its end.
func (e *entities) arc(k look, a plane.Edge) {
	from, to := a.From, a.To
	if a.Turn == plane.Right {
		from, to = to, from
	}
	e.begin("ARC", k)
	e.text(100, "AcDbCircle")
	e.point(10, a.Centre)
	e.length(40, length.Round(a.Radius()))
	e.text(100, "AcDbArc")
	e.real(50, degrees(a.Centre, from), degreeDecimals)
	e.real(51, degrees(a.Centre, to), degreeDecimals)
}

func (e *entities) circle(k look, a plane.Edge) {
	e.begin("CIRCLE", k)
	e.text(100, "AcDbCircle")
	e.point(10, a.Centre)
	e.length(40, length.Round(a.Radius()))
}

// Flags of an LWPOLYLINE (group 70).
const (
	closedPolyline = 1
	runOnDashes    = 128 // the dash pattern runs on across the vertices
)

func (e *entities) polyline(k look, p plane.Path) {
	e.begin("LWPOLYLINE", k)
	e.text(100, "AcDbPolyline")
	n, flags := len(p), runOnDashes
	if p.Closed() {
		flags |= closedPolyline
	} else {
		n++
	}
	e.count(90, n)
	e.count(70, flags)
	for _, edge := range p {
		e.flat(10, edge.From)
		if edge.Turn != plane.Straight {
			e.real(42, edge.Bulge(), factorDecimals)
		}
	}
	if !p.Closed() {
		e.flat(10, p[len(p)-1].To)
	}
}

// Flags of a hatch boundary path (group 92).
const (
	outerPath    = 1
	polylinePath = 2
	holePath     = 16
)

// area writes a region as a HATCH in one colour.
func (e *entities) area(k look, r plane.Region) {
	e.begin("HATCH", k)
	e.text(100, "AcDbHatch")
	e.point(10, plane.Point{})
	e.real(210, 0, 1)
	e.real(220, 0, 1)
	e.real(230, 1, 1)
	e.text(2, "SOLID")
	e.count(70, 1) // solid
	e.count(71, 0) // not associative
	e.count(91, len(r))
	for _, p := range r {
		e.boundary(p)
	}
	e.count(75, 0) // odd parity, so that holes stay open
	e.count(76, 1) // predefined pattern
	e.count(98, 0) // no seed points
}

func (e *entities) boundary(p plane.Path) {
	kind := outerPath
	if p.Area() < 0 {
		kind = holePath
	}
	e.count(92, kind|polylinePath)
	e.count(72, 1) // with bulges
	e.count(73, 1) // closed
	e.count(93, len(p))
	for _, edge := range p {
		e.flat(10, edge.From)
		e.real(42, edge.Bulge(), factorDecimals)
	}
	e.count(97, 0) // no source objects
}

// triangle writes a filled triangle as a SOLID, whose fourth corner repeats
// the third.
func (e *entities) triangle(k look, a, b, c plane.Point) {
	e.begin("SOLID", k)
	e.text(100, "AcDbTrace")
	e.point(10, a)
	e.point(11, b)
	e.point(12, c)
	e.point(13, c)
}

// A lettering is one line of text. Its string is in the file's encoding.
type lettering struct {
	at      plane.Point // on the base line, where align tells
	start   plane.Point // where the first letter begins, as far as is known
	height  length.Length
	degrees float64
	align   int // group 72: 0 left, 1 centre, 2 right
	string  string
}

func (e *entities) lettering(k look, t lettering) {
	e.begin("TEXT", k)
	e.text(100, "AcDbText")
	e.point(10, t.start)
	e.length(40, t.height)
	e.text(1, t.string)
	e.real(50, t.degrees, degreeDecimals)
	e.text(7, textStyle)
	if t.align != 0 {
		e.count(72, t.align)
		e.point(11, t.at)
	}
	e.text(100, "AcDbText")
	if t.align != 0 {
		e.count(73, 0) // on the base line
	}
}

// A measure is a horizontal or vertical dimension, drawn by its block.
type measure struct {
	block, style string
	a, b         plane.Point // measured points
	line         plane.Point // on the dimension line, opposite b
	middle       plane.Point // of the figure
	degrees      float64     // direction measured along
	measured     length.Length
	figure       string // as displayed; empty: the reader writes its own
}

// Kind of a DIMENSION (group 70).
const (
	rotated      = 0
	ownBlock     = 32
	placedFigure = 128 // the figure stands where group 11 tells
)

func (e *entities) measure(k look, m measure) {
	e.begin("DIMENSION", k)
	e.text(100, "AcDbDimension")
	e.text(2, m.block)
	e.point(10, m.line)
	e.point(11, m.middle)
	e.count(70, rotated|ownBlock|placedFigure)
	if m.figure != "" {
		e.text(1, m.figure)
	}
	e.count(71, 5) // group 11 is the figure's middle
	e.length(42, m.measured)
	e.text(3, m.style)
	e.text(100, "AcDbAlignedDimension")
	e.point(13, m.a)
	e.point(14, m.b)
	e.real(50, m.degrees, degreeDecimals)
	e.text(100, "AcDbRotatedDimension")
}
