package machining

import (
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/length"
	"stilewright/model/plane"
)

const mm = length.Millimetre

func at(x, y float64) plane.Point { return plane.At(length.Round(x), length.Round(y)) }

func rect(x0, y0, x1, y1 float64) plane.Path { return plane.Rect(at(x0, y0), at(x1, y1)) }

func circle(x, y, d float64) plane.Path { return plane.Circle(at(x, y), length.Round(d/2)) }

func polygon(xy ...float64) plane.Path {
	var points []plane.Point
	for i := 0; i < len(xy); i += 2 {
		points = append(points, at(xy[i], xy[i+1]))
	}
	return plane.Polygon(points...)
}

// plate is a setup 200 × 100, 10 thick, cut out, with more contours.
func plate(more ...Contour) Setup {
	s := Setup{Width: 200 * mm, Height: 100 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 10 * mm, rect(0, 0, 200, 100)}}}
	s.Contours = append(s.Contours, more...)
	s.sort()
	return s
}

func hole(p plane.Path) Contour                    { return Contour{Hole, 10 * mm, p.Reverse()} }
func pocketed(depth float64, p plane.Path) Contour { return Contour{Pocket, length.Round(depth), p} }
func bored(depth float64, p plane.Path) Contour    { return Contour{Bore, length.Round(depth), p} }

// shop is a profile of round numbers.
func shop() Profile {
	return Profile{
		Tool: Tool{Diameter: 6 * mm, Reach: 50 * mm}, InsideRadius: 3 * mm, LeastFeature: 6 * mm, LeastBore: 2 * mm, Bridge: 3 * mm,
		HolePercent: 100, Sheet: Size{1220 * mm, 2440 * mm}, Machine: Size{1300 * mm, 2500 * mm},
	}
}

// open leaves out the last edge.
func open(p plane.Path) plane.Path { return p[:len(p)-1] }

// The smallest broken setups, and the rule that must catch each. None of the
// outside readers refuses them.
var broken = []struct {
	name, rule string
	setup      Setup
}{
	{"open contour", RuleOpen, plate(pocketed(5, open(rect(20, 20, 60, 60))))},
	{"gap of a hundredth", RuleOpen, plate(pocketed(5, append(open(rect(20, 20, 60, 60)), plane.Line(at(20, 60), at(20, 20.01)))))},
	{"edges apart", RuleOpen, plate(pocketed(5, plane.Path{plane.Line(at(20, 20), at(60, 20)), plane.Line(at(60, 21), at(20, 60)), plane.Line(at(20, 60), at(20, 20))}))},
	{"no edges", RuleOpen, plate(Contour{Operation: Pocket, Depth: 5 * mm})},
	{"edge of no length", RuleShort, plate(pocketed(5, append(rect(20, 20, 60, 60), plane.Line(at(20, 20), at(20, 20)))))},
	{"edge of 5 µm", RuleShort, plate(pocketed(5, polygon(20, 20, 60, 20, 60, 60, 20.005, 60, 20, 60)))},
	{"bow-tie", RuleShape, plate(pocketed(5, polygon(20, 20, 60, 60, 60, 20, 20, 60)))},
	{"clockwise outline", RuleShape, Setup{Width: 200 * mm, Height: 100 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 10 * mm, rect(0, 0, 200, 100).Reverse()}}}},
	{"counter-clockwise hole", RuleShape, plate(Contour{Hole, 10 * mm, rect(20, 20, 60, 60)})},
	{"hole outside", RuleShape, plate(hole(rect(220, 20, 260, 60)))},
	{"hole across the outline", RuleShape, plate(hole(circle(200, 50, 30)))},
	{"duplicate pocket", RuleShape, plate(pocketed(5, rect(20, 20, 60, 60)), pocketed(5, rect(20, 20, 60, 60)))},
	{"outline twice", RuleTwice, plate(Contour{Blank, 0, rect(0, 0, 200, 100)})},
	{"collinear stretch", RuleTwice, plate(hole(rect(20, 20, 60, 60)), pocketed(5, rect(60, 30, 90, 50)))},
	{"same bore twice", RuleShape, plate(bored(5, circle(50, 50, 5)), bored(8, circle(50, 50, 5)))},
	{"no outline", RuleEmpty, Setup{Thickness: 10 * mm, Contours: []Contour{pocketed(5, rect(20, 20, 60, 60))}}},
	{"pocket deeper than the part", RuleDepth, plate(pocketed(11, rect(20, 20, 60, 60)))},
	{"pocket of no depth", RuleDepth, plate(pocketed(0, rect(20, 20, 60, 60)))},
	{"cut not through", RuleDepth, Setup{Width: 200 * mm, Height: 100 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 9 * mm, rect(0, 0, 200, 100)}}}},
	{"longer than the machine", RuleMachine, Setup{Width: 2501 * mm, Height: 1300 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 10 * mm, rect(0, 0, 2501, 1300)}}}},
	{"wider than the machine", RuleMachine, Setup{Width: 2500 * mm, Height: 1301 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 10 * mm, rect(0, 0, 2500, 1301)}}}},
	{"wider than the sheet", RuleSheet, Setup{Width: 1221 * mm, Height: 2440 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 10 * mm, rect(0, 0, 1221, 2440)}}}},
	{"pocket that stops at the edge", RuleOpenEdge, plate(pocketed(5, plane.RoundedRect(plane.BoxOf(at(160, 20), at(200, 60)), 4*mm)))},
	{"sharp corner in a pocket", RuleCorner, plate(pocketed(5, rect(20, 20, 60, 60)))},
	{"sharp corner in a hole", RuleCorner, plate(hole(rect(20, 20, 60, 60)))},
	{"sharp corner in the outline", RuleCorner, Setup{Width: 200 * mm, Height: 100 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 10 * mm, polygon(0, 0, 200, 0, 200, 50, 100, 50, 100, 100, 0, 100)}}}},
	{"radius below the tool's", RuleCorner, plate(pocketed(5, plane.RoundedRect(plane.BoxOf(at(20, 20), at(60, 60)), 2900*length.Micrometre)))},
	{"slot narrower than the tool", RuleFeature, plate(pocketed(5, rounded(20, 20, 80, 25.9)))},
	{"slit narrower than the tool", RuleFeature, plate(hole(rounded(20, 20, 80, 25.9)))},
	{"notch narrower than the tool", RuleFeature, Setup{Width: 200 * mm, Height: 100 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 10 * mm, polygon(0, 0, 200, 0, 200, 100, 105, 100, 105, 40, 100, 40, 100, 100, 0, 100)}}}},
	{"thin wall to the edge", RuleBridge, plate(hole(circle(50, 17.9, 30)))},
	{"thin wall between holes", RuleBridge, plate(hole(circle(50, 50, 30)), hole(circle(82.9, 50, 30)))},
	{"thin wall between pockets", RuleBridge, plate(pocketed(5, rounded(20, 20, 60, 60)), pocketed(7, rounded(62.9, 20, 90, 60)))},
	{"thin neck of the part", RuleBridge, Setup{Width: 200 * mm, Height: 100 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 10 * mm, polygon(0, 0, 200, 0, 200, 100, 120, 100, 120, 2.9, 80, 2.9, 80, 100, 0, 100)}}}},
	{"small hole in thick stock", RuleHole, plate(hole(circle(50, 50, 9.9)))},
	{"thin bore", RuleBore, plate(bored(5, circle(50, 50, 1.9)))},
}

// rounded is a rectangle with corners of 3 mm, or of half its shorter side.
func rounded(x0, y0, x1, y1 float64) plane.Path {
	return plane.RoundedRect(plane.BoxOf(at(x0, y0), at(x1, y1)), 3*mm)
}

func rulesOf(faults []Fault) []string {
	var rules []string
	for _, f := range faults {
		rules = append(rules, f.Rule)
	}
	return rules
}

// tenon is the lower left of a rail's end: a tenon with its shoulder relieved, the
// shoulder's pocket run past the sides of the tenon, and a rabbet that rounds out
// through the shoulder. The shoulder's pocket passes 1.5 mm from the rabbet where
// the relief has taken the wood already.
func tenon() Setup {
	return Setup{Width: 70 * mm, Height: 100 * mm, Thickness: 44 * mm, Contours: []Contour{
		{Cut, 44 * mm, plane.Path{
			plane.Line(at(13, 0), at(70, 0)), plane.Line(at(70, 0), at(70, 100)), plane.Line(at(70, 100), at(0, 100)), plane.Line(at(0, 100), at(0, 42.5)),
			plane.Line(at(0, 42.5), at(8.757359, 42.5)), plane.Arc(at(8.757359, 42.5), at(13, 38.257359), at(10.87868, 40.37868), plane.Right), plane.Line(at(13, 38.257359), at(13, 0)),
		}},
		{Pocket, 15 * mm, polygon(9, -4, 74, -4, 74, 42.54, 70, 42.5, 13, 42.5, 9, 42.46)},
		{Pocket, 24 * mm, plane.Path{
			plane.Line(at(-4, 38.5), at(7.214, 38.5)), plane.Line(at(7.214, 38.5), at(8.832397, 42.5)), plane.Arc(at(8.832397, 42.5), at(10, 48.5), at(-6, 48.5), plane.Left),
			plane.Line(at(10, 48.5), at(10, 104)), plane.Line(at(10, 104), at(-4, 104)), plane.Line(at(-4, 104), at(-4, 38.5)),
		}},
	}}
}

func TestLintCatches(t *testing.T) {
	for _, c := range broken {
		faults := c.setup.Lint(shop(), c.rule == RuleSheet)
		require.Contains(t, rulesOf(faults), c.rule, "%s: %v", c.name, faults)
		for _, f := range faults {
			require.NotContains(t, f.Sentence, "%!", c.name)
		}
	}
}

// The same contours just within each limit.
func TestLintPasses(t *testing.T) {
	for name, s := range map[string]Setup{
		"plate":           plate(),
		"slot":            plate(pocketed(5, rounded(20, 20, 80, 26))),
		"island":          plate(pocketed(5, rounded(20, 20, 120, 80)), Contour{Pocket, 5 * mm, rounded(40, 40, 60, 60).Reverse()}),
		"wall to edge":    plate(hole(circle(50, 18, 30))),
		"two holes":       plate(hole(circle(50, 50, 30)), hole(circle(83, 50, 30))),
		"hole":            plate(hole(circle(50, 50, 10))),
		"bore":            plate(bored(10, circle(50, 50, 2))),
		"full table":      {Width: 2500 * mm, Height: 1300 * mm, Thickness: 10 * mm, Contours: []Contour{{Cut, 10 * mm, rect(0, 0, 2500, 1300)}}},
		"open mark":       plate(Contour{Mark, 0, plane.Path{plane.Line(at(5, 5), at(5, 9))}}),
		"pocket past end": plate(pastEnd()...),
		"tenon":           tenon(),
	} {
		require.Empty(t, s.Lint(shop(), false), name)
	}
}

// pastEnd is a pocket over one whole end of the plate.
func pastEnd() []Contour {
	return PocketIn(plane.Region{rect(0, 0, 200, 100)}, plane.Region{rect(150, 0, 200, 100)}, 5*mm, shop().Tool)
}
