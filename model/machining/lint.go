package machining

import (
	"fmt"
	"math"

	"stilewright/model/length"
	"stilewright/model/plane"
)

// Rules Lint holds a setup to. Each has its smallest broken setup in the tests.
const (
	RuleOpen     = "contour-open"      // a contour that should be closed is not
	RuleShort    = "contour-short"     // an edge a controller may trip over
	RuleShape    = "contour-shape"     // it crosses itself or others, or runs the wrong way round
	RuleTwice    = "contour-twice"     // two contours share a stretch: cut twice
	RuleEmpty    = "contour-missing"   // no outline
	RuleDepth    = "depth"             // deeper than the part is thick, or no depth
	RuleCorner   = "inside-radius"     // an inside corner is sharper than the tool is round
	RuleFeature  = "least-feature"     // an opening is narrower than the tool or the least
	RuleBridge   = "bridge"            // a wall is thinner than may stand
	RuleHole     = "hole-to-thickness" // a hole is too small for the thickness
	RuleBore     = "least-bore"        // a bore is thinner than the thinnest drill
	RuleMachine  = "larger-than-machine"
	RuleSheet    = "larger-than-sheet"
	RuleOpenEdge = "open-edge" // a pocket ends at an edge it opens to
)

// shortest is the shortest edge a contour may have: a hundredth of a
// millimetre, below which controllers drop or stumble over moves. Common
// practice, no source.
const shortest = length.Millimetre / 100

// A Fault is one thing a shop would stumble over.
type Fault struct {
	Rule     string
	Sentence string // with both numbers
	Minor    bool   // can be made all the same, by hand or with another tool
}

// Lint tells what is wrong with a setup's contours in themselves, and for the
// shop. Contours that are broken are not held against the shop's limits.
// sheet tells that the part is cut from sheet material.
func (s Setup) Lint(p Profile, sheet bool) []Fault {
	l := &linter{Setup: s, profile: p}
	l.paths()
	if len(l.faults) > 0 {
		return l.faults
	}
	l.shapes()
	l.twice()
	if len(l.faults) > 0 {
		return l.faults
	}
	l.depths()
	l.size(sheet)
	l.openEdges()
	l.corners()
	l.holes()
	l.walls()
	return l.faults
}

type linter struct {
	Setup
	profile Profile
	faults  []Fault
}

// find records a fault; lengths among the values are written in the profile's
// style.
func (l *linter) find(rule, sentence string, values ...any) {
	for i, v := range values {
		switch v := v.(type) {
		case length.Length:
			values[i] = l.profile.Tool.write(v)
		case plane.Point:
			values[i] = fmt.Sprintf("(%s, %s)", l.profile.Tool.write(v.X), l.profile.Tool.write(v.Y))
		}
	}
	l.faults = append(l.faults, Fault{Rule: rule, Sentence: fmt.Sprintf(sentence, values...)})
}

// minor records a fault that does not stop the file.
func (l *linter) minor(rule, sentence string, values ...any) {
	l.find(rule, sentence, values...)
	l.faults[len(l.faults)-1].Minor = true
}

// paths holds every contour by itself: closed, and without short edges.
func (l *linter) paths() {
	for i, c := range l.Contours {
		if len(c.Path) == 0 {
			l.find(RuleOpen, "%v %d has no edges", c.Operation, i)
			continue
		}
		for k, e := range c.Path {
			if mm := e.Length(); mm < shortest.MM() {
				l.find(RuleShort, "%v %d: edge %d at %v is %.4f mm long; at least %.2f mm can be cut", c.Operation, i, k, e.From, mm, shortest.MM())
			}
			if k > 0 && c.Path[k-1].To != e.From {
				l.find(RuleOpen, "%v %d: edge %d ends at %v, the next begins at %v", c.Operation, i, k-1, c.Path[k-1].To, e.From)
			}
		}
		if last := c.Path[len(c.Path)-1].To; c.Operation != Mark && last != c.Path[0].From {
			l.find(RuleOpen, "%v %d begins at %v and ends at %v; it must close", c.Operation, i, c.Path[0].From, last)
		}
	}
}

// shapes holds contours that belong together: each group must be a region.
func (l *linter) shapes() {
	check := func(what string, r plane.Region) {
		if err := plane.Simple(r); err != nil {
			l.find(RuleShape, "%v: %v", what, err)
		}
	}
	check("the part's outline", l.region(-1, Cut, Hole))
	check("the blank", l.region(-1, Blank))
	check("bores", l.region(-1, Bore))
	for _, depth := range l.pocketDepths() {
		check(fmt.Sprintf("pockets %s deep", l.profile.Tool.write(depth)), l.region(depth, Pocket))
	}
	if l.Outline().Empty() {
		l.find(RuleEmpty, "the setup has no outline: neither a cut nor a blank")
	}
}

// pocketDepths lists the depths of the pockets, which stand in order.
func (l *linter) pocketDepths() []length.Length {
	var depths []length.Length
	for _, c := range l.Contours {
		if n := len(depths); c.Operation == Pocket && (n == 0 || depths[n-1] != c.Depth) {
			depths = append(depths, c.Depth)
		}
	}
	return depths
}

// twice finds stretches that two contours share: always a fault but between
// two pockets of unlike depth, which may lie side by side; openEdges tells of a
// pocket that ends at the outline.
func (l *linter) twice() {
	for i, a := range l.Contours {
		for k, b := range l.Contours[:i] {
			pockets := a.Operation == Pocket && b.Operation == Pocket && a.Depth != b.Depth
			ends := a.Operation == Pocket && (b.Operation == Cut || b.Operation == Blank)
			if a.Operation == Mark || b.Operation == Mark || pockets || ends {
				continue
			}
			if !a.Path.Bounds().Meets(b.Path.Bounds()) {
				continue
			}
			if _, _, along := plane.Clip(a.Path, plane.Region{b.Path}); len(along) > 0 {
				l.find(RuleTwice, "%v %d and %v %d run along one another from %v; it would be cut twice", b.Operation, k, a.Operation, i, along[0][0].From)
			}
		}
	}
}

func (l *linter) depths() {
	for i, c := range l.Contours {
		switch c.Operation {
		case Cut, Hole:
			if c.Depth != l.Thickness {
				l.find(RuleDepth, "%v %d is %v deep; the part is %v thick", c.Operation, i, c.Depth, l.Thickness)
			}
		case Pocket, Bore:
			if c.Depth <= 0 || c.Depth > l.Thickness {
				l.find(RuleDepth, "%v %d is %v deep; between 0 and the part's %v can be cut", c.Operation, i, c.Depth, l.Thickness)
			}
		}
	}
}

func (l *linter) size(sheet bool) {
	z := l.profile.Machine
	if z != (Size{}) && !z.holds(l.Width, l.Height) {
		l.find(RuleMachine, "it is %v × %v; the machine's table holds %v × %v", l.Width, l.Height, z.Width, z.Height)
	}
	z = l.profile.Sheet
	if sheet && z != (Size{}) && !z.holds(l.Width, l.Height) {
		l.find(RuleSheet, "it is %v × %v; the sheet is %v × %v", l.Width, l.Height, z.Width, z.Height)
	}
}

// openEdges finds pockets that end at the outline.
func (l *linter) openEdges() {
	outline := l.Outline()
	for i, c := range l.Contours {
		if c.Operation != Pocket {
			continue
		}
		if _, _, along := plane.Clip(c.Path, outline); len(along) > 0 {
			l.find(RuleOpenEdge, "pocket %d ends at the edge of the part at %v; it must run past by the tool's radius, %v", i, along[0][0].From, l.profile.Tool.Diameter.Half())
		}
	}
}

// cleared is a contour walked so that what the tool takes lies on its left.
func (c Contour) cleared() plane.Path {
	if c.Operation == Cut || c.Operation == Hole {
		return c.Path.Reverse()
	}
	return c.Path
}

// corners finds inside corners that no tool of the profile's radius makes.
func (l *linter) corners() {
	least := l.profile.InsideRadius
	if least <= 0 {
		return
	}
	outline := l.Outline()
	for i, c := range l.Contours {
		if c.Operation != Cut && c.Operation != Hole && c.Operation != Pocket {
			continue
		}
		path := c.cleared()
		for k, e := range path {
			air := c.Operation == Pocket && outline.Where(e.To) == plane.Outside
			if next := path[(k+1)%len(path)]; !air && turn(e, next) > 2*slant {
				l.minor(RuleCorner, "%v %d has a sharp inside corner at %v; the tool leaves a radius of %v: relieve it, or square it by hand", c.Operation, i, e.To, least)
			}
			if r := e.Radius(); e.Turn == plane.Left && r < (least-2*length.Nanometre).MM() {
				l.minor(RuleCorner, "%v %d has an inside radius of %v at %v; the tool leaves %v: take a smaller tool", c.Operation, i, length.Round(r), e.Middle(), least)
			}
		}
	}
}

// holes holds round holes against the thickness, and bores against the drills.
func (l *linter) holes() {
	for i, c := range l.Contours {
		d := c.Path.Bounds().Width()
		least := length.Length(math.Round(float64(l.Thickness) * float64(l.profile.HolePercent) / 100))
		switch {
		case c.Operation == Hole && isCircle(c.Path) && d < least:
			l.find(RuleHole, "hole %d is %v across; in a thickness of %v at least %v (%d %%) can be cut", i, d, l.Thickness, least, l.profile.HolePercent)
		case c.Operation == Bore && d < l.profile.LeastBore:
			l.find(RuleBore, "bore %d is %v across; the thinnest drill is %v", i, d, l.profile.LeastBore)
		}
	}
}

// isCircle tells whether the path is a full circle.
func isCircle(p plane.Path) bool {
	return len(p) == 2 && p[0].Turn != plane.Straight && p[0].Turn == p[1].Turn && p[0].Centre == p[1].Centre
}
