package door_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// joint joins the frame in one way or another.
func (c *chance) joint(thick float64) {
	kinds := []string{"pocket-screw", "pocket-screw", "dowel", "loose-tenon", "mortise-and-tenon", "half-lap", "bridle"}
	kind := kinds[c.IntN(len(kinds))]
	c.set("leaf.joint.kind", kind)
	if kind == "pocket-screw" || kind == "dowel" {
		c.word(20, "leaf.joint.holes_per_end", "1", "2")
	}
	c.word(20, "leaf.joint.plugs", "yes", "no")
	c.word(40, "leaf.joint.muntin", "pocket-screw", "dowel", "loose-tenon", "mortise-and-tenon", "half-lap")
	switch kind {
	case "dowel":
		c.size(30, "leaf.joint.dowel.diameter", thick/4, thick/2)
		c.size(20, "leaf.joint.dowel.length", 25, 60)
	case "half-lap":
		c.size(40, "leaf.joint.lap", 6, thick-6)
	case "pocket-screw":
	default:
		c.size(30, "leaf.joint.tenon.thickness", thick/4, thick/2)
		c.size(20, "leaf.joint.tenon.front", thick/4, thick/3)
	}
	switch kind {
	case "mortise-and-tenon":
		c.word(50, "leaf.joint.tenon.through", "yes", "no")
		c.word(60, "leaf.joint.tenon.haunch", "yes", "no")
		c.size(30, "leaf.joint.tenon.edge", 7, 25)
	case "loose-tenon":
		c.size(30, "leaf.joint.tenon.length", 15, 40)
		c.size(20, "leaf.joint.tenon.width", 15, 25)
		c.size(30, "leaf.joint.tenon.edge", 7, 25)
	}
}

// unusedByJoint tells whether the joints chosen take nothing from the size at
// the path.
func unusedByJoint(model spec.Spec, path string) bool {
	uses := map[string]string{
		"leaf.joint.screw": "pocket-screw", "leaf.joint.lap": "half-lap",
		"leaf.joint.dowel.diameter": "dowel", "leaf.joint.dowel.length": "dowel",
		"leaf.joint.tenon.thickness": "loose-tenon mortise-and-tenon bridle", "leaf.joint.tenon.front": "loose-tenon mortise-and-tenon bridle",
		"leaf.joint.tenon.length": "loose-tenon mortise-and-tenon", "leaf.joint.tenon.edge": "loose-tenon mortise-and-tenon",
		"leaf.joint.tenon.width": "loose-tenon",
	}[path]
	joint := model.Leaf.Joint
	if strings.HasPrefix(path, "leaf.joint.tenon.edge") {
		joint.Muntin = "" // the edges are the rails'
	}
	return uses != "" && !slices.Contains(strings.Fields(uses), joint.Kind) && !slices.Contains(strings.Fields(uses), joint.Muntin)
}

// tenonOf are the size across and along of the tenon at a meeting.
func tenonOf(leaf door.Leaf, m door.Meeting) (wide, long, deep length.Length) {
	j := leaf.Joint
	if i := slices.IndexFunc(leaf.Rails, func(r door.Rail) bool { return r.Label == m.Member }); i >= 0 {
		return j.Tenon.Width[i], j.Tenon.Length, j.Tenon.Mortise
	}
	return j.Tenon.MuntinWidth, j.Tenon.MuntinLength, j.Tenon.MuntinMortise
}

// lapped is how far a lap or bridle goes into the other part.
func lapped(m door.Meeting) length.Length {
	switch {
	case !m.Opposite:
		return m.Deep
	case m.Way > 0:
		return m.Deep / 2
	default:
		return m.Deep - m.Deep/2
	}
}

// joined is the volume that a member's joints add beyond its shoulders, less
// what joints take from it.
func joined(leaf door.Leaf, part door.Part) float64 {
	var volume float64
	for _, m := range leaf.Meetings {
		sign := map[string]float64{m.Member: 1, m.Into: -1}[part.Label]
		if sign == 0 {
			continue
		}
		t := leaf.Joint.Tenon
		switch m.Kind {
		case door.MortiseAndTenon:
			wide, long, deep := tenonOf(leaf, m)
			if sign < 0 {
				long = deep
			}
			volume += sign * t.Thickness.MM() * wide.MM() * long.MM()
			if m.Low == 0 || m.High == 0 {
				volume += sign * t.Thickness.MM() * t.Edge.MM() * t.Haunch.MM()
			}
		case door.LooseTenon:
			wide, _, deep := tenonOf(leaf, m)
			volume -= slot(t.Thickness, wide) * deep.MM()
		case door.HalfLap:
			volume += sign * lap(leaf, m, leaf.Joint.Lap.Front, leaf.Thickness)
		case door.Bridle:
			whole, tongue := lap(leaf, m, 0, leaf.Thickness), lap(leaf, m, leaf.Joint.Lap.From, leaf.Joint.Lap.To)
			if m.Low > 0 && m.High > 0 {
				tongue = whole - tongue
			}
			volume += sign * tongue
		}
	}
	return volume
}

// slot is the area of a section with round ends.
func slot(thick, wide length.Length) float64 {
	return thick.MM()*(wide-thick).MM() + math.Pi*thick.MM()*thick.MM()/4
}

// lap is the volume from one depth to another of what lies where two members
// cross, less what the rabbets take of it.
func lap(leaf door.Leaf, m door.Meeting, from, to length.Length) float64 {
	deep := lapped(m)
	face := plane.BoxOf(m.Point(-deep, 0, m.From).Flat(solid.Y), m.Point(0, 0, m.To).Flat(solid.Y))
	volume := face.Width().MM() * face.Height().MM() * (to - from).MM()
	both := min(to, leaf.Rabbet.To) - max(from, leaf.Rabbet.From)
	for _, lite := range leaf.Lites {
		if both > 0 {
			volume -= plane.Intersect(plane.Of(face.Path()), lite.Rabbet).Area() * both.MM()
		}
	}
	return volume
}

// Whatever the joint, a rail is as long between its shoulders as the stiles
// leave; its blank is longer by its tenons or laps, and a through tenon ends
// flush with the stile's edge.
func TestRailsAreAsLongAsTheirJointsAsk(t *testing.T) {
	eachSet(t, func(t *testing.T, model spec.Spec, set door.Set) {
		leaf := set.Leaf
		more := map[string]length.Length{door.MortiseAndTenon: leaf.Joint.Tenon.Length, door.HalfLap: leaf.Stile, door.Bridle: leaf.Stile}[leaf.Joint.Kind]
		require.Equal(t, leaf.Width-2*leaf.Stile, figure(t, set, "rail.length"))
		for _, part := range leaf.Parts {
			if part.Role != door.RailRole {
				continue
			}
			low, high := part.Solid.Bounds()
			require.Equal(t, figure(t, set, "rail.length")+2*more, high.X-low.X)
			require.Equal(t, leaf.Stile-more, low.X)
			if model.Leaf.Joint.Tenon.Through == "yes" && leaf.Joint.Kind == door.MortiseAndTenon {
				require.Zero(t, low.X)
				require.Equal(t, leaf.Width, high.X)
			}
			for _, at := range []length.Length{leaf.Stile + length.Micrometre, leaf.Width - leaf.Stile - length.Micrometre} { // just inside the shoulders nothing is off but the seats
				section := part.Solid.Section(solid.X, at).Area()
				whole := (high.Z - low.Z).MM() * leaf.Thickness.MM()
				require.LessOrEqual(t, section, whole)
			}
		}
	})
}

// A tenon's cheeks lie on the walls of its mortise: the sections of both across
// the tenon are the same rectangle. A mortise's floor is as far behind the
// tenon's end as the figures say.
func TestGlueFacesCoincide(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		for _, m := range leaf.Meetings {
			if m.Kind != door.MortiseAndTenon {
				continue
			}
			wide, long, deep := tenonOf(leaf, m)
			part, into := unworked(partOf(t, leaf, m.Member)), unworked(partOf(t, leaf, m.Into))
			middle := m.Point(-(leaf.Joint.Tenon.Haunch+long)/2, 0, 0).Along(m.Axis)
			tenon := part.Solid.Section(m.Axis, middle)
			blank := into.Solid
			blank.Cuts, blank.Bores = nil, nil
			hole := plane.Subtract(window(blank.Section(m.Axis, middle), m), into.Solid.Section(m.Axis, middle))
			require.Less(t, plane.Subtract(tenon, hole).Area()+plane.Subtract(hole, tenon).Area(), noArea, "%s in %s", m.Member, m.Into)
			require.InEpsilon(t, wide.MM()*leaf.Joint.Tenon.Thickness.MM(), tenon.Area(), 1e-9)
			floor := into.Solid.Section(m.Axis, m.Point(-deep+length.Micrometre, 0, 0).Along(m.Axis))
			behind := into.Solid.Section(m.Axis, m.Point(-deep-length.Micrometre, 0, 0).Along(m.Axis))
			if deep < m.Deep {
				require.Greater(t, window(behind, m).Area()-window(floor, m).Area(), tenon.Area()-noArea)
			}
		}
	})
}

// window is what of a section across a member lies within the member's width
// and clear of the panels' seats.
func window(section plane.Region, m door.Meeting) plane.Region {
	far := 10_000 * mm
	a, b := m.Point(0, -far, m.From+m.Low).Flat(m.Axis), m.Point(0, far, m.To-m.High).Flat(m.Axis)
	return plane.Intersect(section, plane.Of(plane.BoxOf(a, b).Path()))
}

func partOf(t testing.TB, leaf door.Leaf, label string) door.Part {
	t.Helper()
	i := slices.IndexFunc(leaf.Parts, func(p door.Part) bool { return p.Label == label })
	require.GreaterOrEqual(t, i, 0, label)
	return leaf.Parts[i]
}

// Put together, a frame is as full as if it were sawn from one piece: what is
// missing is the seats, the holes, the worked edges, pulls and groove, and the room
// at the bottom of mortises.
func TestJointsFillTheFrame(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		want := leaf.Width.MM() * leaf.Height.MM() * leaf.Thickness.MM()
		seat := (leaf.Rabbet.To - leaf.Rabbet.From).MM()
		if leaf.Rabbet.Kind == door.Groove {
			seat = 0 // asked before the grooves are milled
		}
		for _, lite := range leaf.Lites {
			sight := lite.Sight.Width().MM() * lite.Sight.Height().MM()
			want -= sight*leaf.Thickness.MM() + (lite.Rabbet.Area()-sight)*seat
		}
		for _, m := range leaf.Meetings {
			wide, long, deep := length.Length(0), length.Length(0), length.Length(0)
			switch m.Kind {
			case door.MortiseAndTenon:
				wide, long, deep = tenonOf(leaf, m)
				want -= wide.MM() * leaf.Joint.Tenon.Thickness.MM() * (deep - long).MM()
			case door.LooseTenon:
				wide, long, deep = tenonOf(leaf, m)
				want -= 2 * slot(leaf.Joint.Tenon.Thickness, wide) * (deep - long).MM()
			}
		}
		var got float64
		for _, list := range [][]door.Part{leaf.Parts, leaf.Hardware} {
			for _, part := range list {
				switch part.Role {
				case door.StileRole, door.RailRole, door.MuntinRole:
					want -= holes(leaf, part) + workedVolume(leaf, part)
					if leaf.Rabbet.Kind == door.Groove {
						part = ungrooved(t, part)
					}
					got += part.Volume
				case door.TenonRole:
					got += part.Volume
				}
			}
		}
		require.InEpsilon(t, want, got, 1e-7)
	})
}

// A mortise or a dowel's hole leaves wood behind it, between it and another
// from the opposite side, and at the stile's ends, and keeps out of every
// panel's seat.
func TestJointsLeaveWood(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		least := map[length.Unit]length.Length{length.Inches: in / 4, length.Millimetres: 6 * mm}[set.Units]
		for _, m := range leaf.Meetings {
			var boxes []plane.Box // in the other part, seen from the front
			deep := length.Length(0)
			into := partOf(t, leaf, m.Into).Solid
			for _, cut := range into.Cuts {
				low, high := solid.Solid{Blank: cut.Prism}.Bounds()
				if at := high.Along(m.Axis); cut.For == "mortise" && (at == m.At || low.Along(m.Axis) == m.At) {
					boxes = append(boxes, plane.BoxOf(low.Flat(solid.Y), high.Flat(solid.Y)))
					deep = high.Along(m.Axis) - low.Along(m.Axis)
				}
			}
			for _, bore := range into.Bores {
				if bore.For == "dowel" && bore.From.Along(m.Axis) == m.At {
					r := bore.Diameter.Half()
					low, high := bore.From.Flat(solid.Y), bore.To.Flat(solid.Y)
					if m.Axis == solid.X {
						boxes = append(boxes, plane.BoxOf(low.Add(0, -r), high.Add(0, r)))
					} else {
						boxes = append(boxes, plane.BoxOf(low.Add(-r, 0), high.Add(r, 0)))
					}
					deep = (bore.To.Along(m.Axis) - bore.From.Along(m.Axis)).Abs()
				}
			}
			require.Equal(t, slices.Contains([]string{door.DowelJoint, door.LooseTenon, door.MortiseAndTenon}, m.Kind), len(boxes) > 0)
			if left := m.Deep - deep; left > 0 {
				if m.Opposite {
					left -= deep
				}
				require.GreaterOrEqual(t, left, least, "%s in %s", m.Member, m.Into)
			}
			for _, box := range boxes {
				require.GreaterOrEqual(t, box.Min.Y, min(least, box.Min.Y+1))
				if m.Axis == solid.X {
					require.GreaterOrEqual(t, box.Min.Y, least)
					require.LessOrEqual(t, box.Max.Y, leaf.Height-least)
				}
				for _, lite := range leaf.Lites {
					require.Less(t, plane.Intersect(plane.Of(box.Path()), lite.Rabbet).Area(), noArea, "%s in %s", m.Member, m.Into)
				}
			}
		}
	})
}

// A washer's screw runs in wood over its whole grip: no mortise and no lap's
// step interrupts it.
func TestWasherScrewsMeetNoMortise(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		for _, part := range set.Leaf.Parts {
			for _, b := range part.Solid.Bores {
				if b.For != "washer screw" {
					continue
				}
				runs := part.Solid.Pierce(b.From, b.To)
				require.Len(t, runs, 1, part.Label)
				require.InDelta(t, (set.Leaf.Washer.Length - set.Leaf.Washer.Thickness).MM(), runs[0].Out.Along-runs[0].In.Along, 1e-6, part.Label)
			}
		}
	})
}

// slicesOf are the bores but those for one use.
func slicesOf(bores []solid.Bore, but string) []solid.Bore {
	return slices.DeleteFunc(slices.Clone(bores), func(b solid.Bore) bool { return b.For == but })
}

// A sound frame with any joint and seat whatever: it resolves, or says why not,
// and what resolves has no parts that share a place.
func TestNoJointPanics(t *testing.T) {
	const grid = "leaf.lites.rows=2; leaf.lites.columns=2; leaf.rail=4"
	for _, base := range []string{least, grooved, grooved + "; panel.groove.run=through", grooved + "; panel.groove.run=stopped; panel.thickness=1/2", stopped, beaded, least + "; panel.corner=dogbone"} {
		sound, resolve := written(base, grid).spec(t), 0
		for n := range *models {
			c := newChance(n)
			model := sound
			c.wild(reflect.ValueOf(&model.Leaf.Joint).Elem())
			set, findings := door.Resolve(model)
			for _, f := range findings {
				require.NotContains(t, f.Sentence, "%!", "%v", f)
			}
			if len(set.Hung) == 0 {
				require.NotEmpty(t, findings, "%+v", model.Leaf.Joint)
				continue
			}
			resolve++
			apartInSpace(t, set.Leaf, fmt.Sprintf("seed %d model %d of %s", *seed, n, base))
		}
		require.Greater(t, resolve, *models/20, base)
	}
}

// apartInSpace holds the parts of a leaf, but its washers, to share no place.
func apartInSpace(t *testing.T, leaf door.Leaf, what string) {
	parts := slices.DeleteFunc(slices.Concat(leaf.Parts, leaf.Hardware), func(p door.Part) bool { return p.Role == door.WasherRole })
	for i, a := range parts {
		for _, b := range parts[:i] {
			require.Less(t, solid.Clash(a.Solid, b.Solid), noVolume, "%s: %s and %s: %+v", what, a.Label, b.Label, leaf.Joint)
		}
	}
}
