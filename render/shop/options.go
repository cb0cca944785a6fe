package shop

import (
	"cmp"
	"fmt"
	"strings"

	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
	"stilewright/render/dxf"
)

// Options are how the files are written and what the shop can do.
type Options struct {
	Profile  machining.Profile
	Release  dxf.Release
	Unit     length.Unit
	Kerf     length.Length // 0: lines have the finished sizes
	Segments length.Length // 0: arcs stay arcs
	Marks    bool
	Names    machining.Names
	Spacing  length.Length // between nested panels, and to the sheet's edge
}

// A choice is a default in both units. All of those here are common practice,
// no source: a shop's own sizes go into the model.
type choice struct{ inch, metric length.Length }

const (
	mm = length.Millimetre
	in = length.Inch
)

var (
	tool      = choice{in / 4, 6 * mm}      // the mill most routers hold, small enough for pulls and rabbets
	reach     = choice{2 * in, 50 * mm}     // of such a mill with a long shank, in passes
	leastBore = choice{in / 16, 3 * mm / 2} // thinner drills break in hardwood
	bridge    = choice{in / 16, 3 * mm / 2} // thinner walls break out
	tableWide = choice{61 * in, 1550 * mm}  // a table that takes a sheet of 4 ft by 8 ft
	tableHigh = choice{121 * in, 3070 * mm}
	spacing   = choice{3 * in / 8, 10 * mm} // a mill and a wall that stands
)

// holePercent is the least diameter of a hole in percent of the thickness: a
// beam keeps smaller ones no longer round. Common practice, no source.
const holePercent = 100

// of is the stated size, or the default.
func (c choice) of(stated *length.Length, u length.Unit) length.Length {
	if stated != nil {
		return *stated
	}
	if u == length.Inches {
		return c.inch
	}
	return c.metric
}

// OptionsOf are the options of a model, with a default for all it leaves out. Of a
// layer word that cannot stand nothing is said here; Plan does.
func OptionsOf(m spec.Spec) Options {
	s := spec.Shop{}
	if m.Shop != nil {
		s = *m.Shop
	}
	u := m.Units.Unit
	o := Options{Unit: u, Marks: s.Marks != "none", Spacing: spacing.of(s.Spacing, u), Names: namesOf(s.Layers)}
	switch s.Units {
	case "inch":
		o.Unit = length.Inches
	case "millimetre":
		o.Unit = length.Millimetres
	}
	if s.Release == dxf.R12.String() {
		o.Release = dxf.R12
	}
	if s.Kerf != nil {
		o.Kerf = *s.Kerf
	}
	if s.Segments != nil {
		o.Segments = *s.Segments
	}
	mill := machining.Tool{Diameter: tool.of(s.Tool, u), Reach: reach.of(s.Reach, u), Write: writer(u)}
	switch s.Relief {
	case "t-bone":
		mill.Relief = machining.TBone
	case "none":
		mill.Relief = machining.NoRelief
	}
	wide, high, _ := takeoff.ShopSheet(m)
	own := func(d length.Length) choice { return choice{d, d} }
	o.Profile = machining.Profile{
		Tool:         mill,
		InsideRadius: own(mill.Diameter.Half()).of(s.InsideRadius, u),
		LeastFeature: own(mill.Diameter).of(s.LeastFeature, u),
		LeastBore:    leastBore.of(s.LeastBore, u),
		Bridge:       bridge.of(s.Bridge, u),
		HolePercent:  cmp.Or(s.HolePercent, holePercent),
		Sheet:        machining.Size{Width: wide, Height: high},
		Machine:      machining.Size{Width: tableWide.of(s.Machine.Width, u), Height: tableHigh.of(s.Machine.Height, u)},
	}
	return o
}

// writer writes sizes in sentences: in the model's unit, in fractions of an inch
// where that is exact, else in decimals.
func writer(u length.Unit) func(length.Length) string {
	return func(l length.Length) string {
		const places = 3
		switch {
		case u == length.Millimetres:
			return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.3f", l.MM()), "0"), ".") + " mm"
		case l%(in/64) == 0:
			return length.Style{Unit: u, Mark: true}.Format(l)
		}
		return strings.TrimPrefix(length.FormatDecimalInch(l, places), "≈ ") + `"`
	}
}

// namesOf are the layer words, the model's own in capitals.
func namesOf(l spec.ShopLayers) machining.Names {
	names := machining.DefaultNames()
	for o, own := range map[machining.Operation]string{
		machining.Blank: l.Blank, machining.Cut: l.Cut, machining.Hole: l.Hole,
		machining.Pocket: l.Pocket, machining.Bore: l.Bore, machining.Mark: l.Mark,
	} {
		if own != "" {
			names[o] = strings.ToUpper(own)
		}
	}
	return names
}
