package dxf

import (
	"fmt"
	"io"
	"strings"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// A Release is the version of the format a cutting file is written in.
type Release int

// The releases.
const (
	R2000 Release = iota // AC1015
	R12                  // AC1009: what old controllers and laser programs read
)

// String is the release as a model file names it.
func (r Release) String() string { return [...]string{"r2000", "r12"}[r] }

// A Cutting is what a machine is to follow, at full size: closed outlines,
// circles and engraved lines on layers, and nothing else.
type Cutting struct {
	Unit    length.Unit // coordinates are written in
	Release Release
	Layers  []CuttingLayer
	Paths   []CuttingPath
}

// A CuttingLayer is a named layer. Its name is of the characters A to Z, 0 to
// 9, "-", "_" and "$", at most 31 of them, which every release takes.
type CuttingLayer struct {
	Name   string
	Colour int // index in the format's palette: 1 red, 3 green, 4 cyan, 5 blue, 6 magenta, 7 foreground
}

// A CuttingPath is one line to follow. A closed one of two arcs about one
// centre is a circle; any other is a polyline, its arcs true arcs.
type CuttingPath struct {
	Layer string
	Path  plane.Path
}

// longestLayer is the most characters release 12 allows in a name (DXF
// Reference, symbol table names; from memory).
const longestLayer = 31

// Check tells what keeps the cutting from being written: a layer's name, a
// path that is broken or empty, or on a layer that is not listed.
func (c Cutting) Check() error {
	names := map[string]bool{}
	for _, l := range c.Layers {
		bad := strings.IndexFunc(l.Name, func(r rune) bool {
			return (r < 'A' || r > 'Z') && (r < '0' || r > '9') && !strings.ContainsRune("-_$", r)
		})
		switch {
		case l.Name == "" || len(l.Name) > longestLayer:
			return fmt.Errorf("layer %q: its name has %d characters; 1 to %d are allowed", l.Name, len(l.Name), longestLayer)
		case bad >= 0:
			return fmt.Errorf("layer %q: only A to Z, 0 to 9, - _ and $ are allowed in a name", l.Name)
		case names[l.Name]:
			return fmt.Errorf("layer %q is listed twice", l.Name)
		}
		names[l.Name] = true
	}
	for i, p := range c.Paths {
		if len(p.Path) == 0 {
			return fmt.Errorf("path %d has no edges", i)
		}
		if !names[p.Layer] {
			return fmt.Errorf("path %d: layer %q is not listed", i, p.Layer)
		}
		for k, e := range p.Path {
			if k > 0 && p.Path[k-1].To != e.From {
				return fmt.Errorf("path %d: edge %d does not begin where the last one ends", i, k)
			}
			if far := max(e.From.X.Abs(), e.From.Y.Abs(), e.To.X.Abs(), e.To.Y.Abs()); far > length.Longest {
				return fmt.Errorf("path %d: edge %d lies %s mm out; at most %s mm are allowed", i, k, far.Decimal(), length.Longest.Decimal())
			}
		}
	}
	return nil
}

// bounds is the smallest box round all paths.
func (c Cutting) bounds() plane.Box {
	var box plane.Box
	for i, p := range c.Paths {
		if i == 0 {
			box = p.Path.Bounds()
		}
		box = box.Join(p.Path.Bounds())
	}
	return box
}

// WriteCutting writes the cutting as a DXF file. It holds LWPOLYLINE (in release
// 12 POLYLINE) and CIRCLE entities only, each on its layer and without a colour
// or line type of its own. The same cutting gives the same bytes.
func WriteCutting(w io.Writer, c Cutting) error {
	if err := c.Check(); err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	if c.Release == R12 {
		return c.writeR12(w)
	}
	last := handle(firstFree - 1)
	model := entities{last: &last, owner: modelSpace, tags: tags{inches: c.Unit == length.Inches}}
	for _, p := range c.Paths {
		if isCircle(p.Path) {
			model.circle(look{layer: p.Layer}, p.Path[0])
			continue
		}
		model.outline(look{layer: p.Layer}, p.Path)
	}
	f := &file{tags: tags{inches: c.Unit == length.Inches}, last: last, extents: c.bounds(), factor: 1}
	f.limits = f.extents
	if f.limits.Width() <= 0 || f.limits.Height() <= 0 { // an empty file still has a view
		f.limits = plane.Box{Min: f.limits.Min, Max: f.limits.Min.Add(length.Metre, length.Metre)}
	}
	for _, l := range c.Layers {
		f.layers = append(f.layers, layer{name: l.Name, line: continuous, colour: l.Colour, weight: defaultWeight})
	}
	if err := f.write(w, model.out); err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	return nil
}

// outline writes a path as an LWPOLYLINE with no flag but whether it is closed:
// readers of shops test that value as a whole.
func (e *entities) outline(k look, p plane.Path) {
	e.begin("LWPOLYLINE", k)
	e.text(100, "AcDbPolyline")
	vertices := verticesOf(p)
	e.count(90, len(vertices))
	e.count(70, closedFlag(p))
	for _, v := range vertices {
		e.flat(10, v.at)
		if v.bulge != 0 {
			e.real(42, v.bulge, factorDecimals)
		}
	}
}

// closedFlag is 1 of a closed path and 0 of an open one.
func closedFlag(p plane.Path) int {
	if p.Closed() {
		return closedPolyline
	}
	return 0
}

// A vertex is a polyline's corner and the bulge of the edge that leaves it.
type vertex struct {
	at    plane.Point
	bulge float64
}

// verticesOf lists a path's corners, each once.
func verticesOf(p plane.Path) []vertex {
	var vertices []vertex
	for _, e := range p {
		vertices = append(vertices, vertex{e.From, e.Bulge()})
	}
	if !p.Closed() {
		vertices = append(vertices, vertex{at: p[len(p)-1].To})
	}
	return vertices
}
