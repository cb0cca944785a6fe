package view_test

import (
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
	"stilewright/render/view"
)

var seed = view.Seed

const mm = length.Millimetre

// at is a point in space in millimetres.
func at(x, y, z float64) solid.Vec {
	return solid.Vec{X: length.Round(x), Y: length.Round(y), Z: length.Round(z)}
}

func box(x0, y0, x1, y1 float64) plane.Box {
	return plane.BoxOf(plane.At(length.Round(x0), length.Round(y0)), plane.At(length.Round(x1), length.Round(y1)))
}

// The test leaf, in millimetres: 720 wide, 2000 high, 35 thick.
const (
	width, height, thick  = 720.0, 2000.0, 35.0
	front, wide, cutter   = 16.0, 10.0, 16.0
	stileWidth, sheetSize = 110.0, 3.0
)

// A leafOf tells what goes into a test leaf.
type leafOf struct {
	rails   []float64 // lower and upper edges in turn, from the bottom up
	radius  float64   // of the rabbets' corners
	panels  bool
	pockets bool
	washers bool
}

// seven is a leaf of seven wooden parts and four lites.
var seven = leafOf{rails: []float64{0, 150, 520, 610, 980, 1070, 1440, 1530, 1890, 2000}, radius: cutter, panels: true, pockets: true, washers: true}

// bodies are the leaf's, its origin moved to d.
func (l leafOf) bodies(d solid.Vec) []view.Body {
	var rabbets []solid.Cut
	var panels []view.Body
	for i := 1; i+1 < len(l.rails); i += 2 {
		b := box(stileWidth-wide, l.rails[i]-wide, width-stileWidth+wide, l.rails[i+1]+wide)
		region := plane.Region{plane.RoundedRect(b, length.Round(l.radius))}
		rabbets = append(rabbets, solid.Cut{Prism: solid.Prism{Axis: solid.Y, Region: region, From: length.Round(front), To: length.Round(thick)}, For: "rabbet"})
		if l.panels {
			sheetRegion := plane.Region{plane.ClippedRect(b.Grow(-2*mm), 8*mm)}
			panels = append(panels, view.Body{Label: "panel", Layer: sheet.Panel, SeeThrough: true, Hatch: view.Sheet,
				Solid: solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: sheetRegion, From: length.Round(front), To: length.Round(front + sheetSize)}}})
		}
	}
	wood := func(label string, grain solid.Axis, a, b solid.Vec) view.Body {
		s := solid.Solid{Blank: solid.Block(a, b)}
		for _, cut := range rabbets {
			if c := cut.Region.Bounds(); c.Max.X > a.X && c.Min.X < b.X && c.Max.Y > a.Z && c.Min.Y < b.Z {
				s.Cuts = append(s.Cuts, cut)
			}
		}
		return view.Body{Label: label, Layer: sheet.Outline, Hatch: view.Wood, Grain: grain, Solid: s}
	}
	all := []view.Body{
		wood("left stile", solid.Z, at(0, 0, 0), at(stileWidth, thick, height)),
		wood("right stile", solid.Z, at(width-stileWidth, 0, 0), at(width, thick, height)),
	}
	for i := 0; i+1 < len(l.rails); i += 2 {
		rail := wood("rail", solid.X, at(stileWidth, 0, l.rails[i]), at(width-stileWidth, thick, l.rails[i+1]))
		if l.pockets {
			for _, z := range []float64{l.rails[i] + 30, l.rails[i+1] - 30} {
				rail.Solid.Bores = append(rail.Solid.Bores, pocket(stileWidth, z, 1)...)
				rail.Solid.Bores = append(rail.Solid.Bores, pocket(width-stileWidth, z, -1)...)
			}
		}
		all = append(all, rail)
	}
	if l.washers {
		for i := 1; i+1 < len(l.rails); i += 2 {
			z, wall := (l.rails[i]+l.rails[i+1])/2, stileWidth-wide
			y := front + sheetSize + 6.5
			disc := solid.Prism{Axis: solid.X, Region: plane.Region{plane.Circle(plane.At(length.Round(y), length.Round(z)), 65*mm/10)}, From: length.Round(wall), To: length.Round(wall + 2)}
			all = append(all, view.Body{Label: "washer", Layer: sheet.Hardware, Hatch: view.Metal, Solid: solid.Solid{Blank: disc}})
			all[0].Solid.Bores = append(all[0].Solid.Bores, solid.Bore{From: at(wall, y, z), To: at(wall-20, y, z), Diameter: 3 * mm, For: "washer screw"})
		}
	}
	all = append(all, panels...)
	for i := range all {
		all[i].Solid = all[i].Solid.Move(d)
	}
	return all
}

// pocket is a pocket hole at 15° with its pilot, in a rail whose end is at x;
// the rail lies to the side way of it.
func pocket(x, z, way float64) []solid.Bore {
	sin, cos := math.Sincos(math.Pi / 12)
	along := func(d float64) solid.Vec { return at(x+way*d*cos, thick/2+d*sin, z) }
	return []solid.Bore{
		{From: along(25), To: along(110), Diameter: 19 * mm / 2, For: "pocket"},
		{From: along(25), To: along(-8), Diameter: 4 * mm, For: "pilot"},
	}
}
