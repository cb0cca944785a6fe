package door_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/solid"
	"stilewright/model/spec"
)

// A drilled is the axis and the radius in mm of a screw or a hole.
type drilled struct {
	from, to [3]float64
	radius   float64
	what     string
}

func axis(from, to solid.Vec, diameter length.Length, what string) drilled {
	mm := func(v solid.Vec) [3]float64 { return [3]float64{v.X.MM(), v.Y.MM(), v.Z.MM()} }
	return drilled{mm(from), mm(to), diameter.MM() / 2, what}
}

// upTo is the part of a rising hole below the back face: it is drawn past it.
func (d drilled) upTo(back float64) drilled {
	part := (back - d.from[1]) / (d.to[1] - d.from[1])
	for i := range d.to {
		d.to[i] = d.from[i] + part*(d.to[i]-d.from[i])
	}
	return d
}

// flat is the hole with its bottom's roundness, which apart would reckon with
// and a flat bottom has not, kept within it.
func (d drilled) flat() drilled {
	long := math.Abs(d.to[0]-d.from[0]) + math.Abs(d.to[2]-d.from[2]) // along X or Z
	for i := range d.to {
		d.to[i] = d.from[i] + (d.to[i]-d.from[i])*(long-d.radius)/long
	}
	return d
}

// Every screw ends in the wood of a stile or rail, the least clearance from
// its faces and edges, and no screw meets another or a pocket.
func TestScrewsStayInTheWood(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		clear := in / 8
		if set.Units == length.Millimetres {
			clear = 3 * mm
		}
		var all []drilled
		for _, s := range leaf.Screws {
			home := 0
			for _, part := range leaf.Parts {
				along := map[door.Role]solid.Axis{door.StileRole: solid.Z, door.RailRole: solid.X, door.MuntinRole: solid.Z}[part.Role]
				if part.Role != door.PanelRole && inWood(part.Solid, s, along, clear) {
					home++
					require.True(t, s.For != "pocket" || part.Role != door.MuntinRole, part.Label)
				}
			}
			require.Equal(t, 1, home, "%s screw to %v", s.For, s.Tip)
			all = append(all, axis(s.Head, s.Tip, s.Diameter, s.For))
		}
		for _, part := range leaf.Parts {
			for _, b := range part.Solid.Bores {
				switch b.For {
				case "pocket":
					all = append(all, axis(b.From, b.To, b.Diameter, part.Label).upTo(leaf.Thickness.MM()))
				case "dowel":
					all = append(all, axis(b.From, b.To, b.Diameter, part.Label).flat())
				}
			}
		}
		for i, a := range all {
			for _, b := range all[:i] {
				if a.from == b.from { // a pocket and its own screw, the two holes of a dowel
					continue
				}
				least := a.radius + b.radius
				if opposite(a, b) { // in a cross rail or muntin, tip to tip
					least = clear.MM() - 1e-6
				}
				require.Greater(t, apart(a, b), least, "%s at %v and %s at %v", a.what, a.from, b.what, b.from)
			}
		}
	})
}

// A stile's washers stand equally far from both corners of a lite, and no
// farther apart than asked for.
func TestWashersAreSpreadEvenly(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf, bores := set.Leaf, slices.DeleteFunc(slices.Clone(set.Leaf.Parts[0].Solid.Bores), func(b solid.Bore) bool { return b.For != "washer screw" })
		for _, lite := range leaf.Lites {
			if lite.Column > 0 {
				continue
			}
			var at []length.Length
			for _, b := range bores {
				if b.From.Z > lite.Sight.Min.Y && b.From.Z < lite.Sight.Max.Y {
					at = append(at, b.From.Z-lite.Sight.Min.Y)
				}
			}
			if len(at) == 0 {
				continue
			}
			last := len(at) - 1
			require.LessOrEqual(t, (at[0] - (lite.Sight.Height() - at[last])).Abs(), length.Nanometre) // the one in the middle: half a nanometre
			if last > 0 {
				require.Equal(t, figure(t, set, "washer.corner.stile"), at[0])
			}
			for i := range last {
				require.LessOrEqual(t, at[i+1]-at[i], figure(t, set, "washer.spacing"))
			}
			bores = bores[len(at):]
		}
		require.Empty(t, bores)
	})
}

// A pocket is bored until it has wholly left the back, and its pilot until it
// has wholly left the rail's end.
func TestPocketsAreBoredThrough(t *testing.T) {
	eachSet(t, func(t *testing.T, _ spec.Spec, set door.Set) {
		leaf := set.Leaf
		sin, cos := math.Sincos(math.Pi / 12)
		for _, part := range leaf.Parts {
			for _, b := range part.Solid.Bores {
				low, high := part.Solid.Bounds()
				along := map[door.Role]solid.Axis{door.RailRole: solid.X, door.MuntinRole: solid.Z}[part.Role]
				middle, half := (low.Along(along)+high.Along(along)).MM()/2, (high.Along(along)-low.Along(along)).MM()/2
				end := math.Abs(b.To.Along(along).MM() - middle)
				switch r := b.Diameter.MM() / 2; b.For {
				case "pocket":
					require.GreaterOrEqual(t, b.To.Y.MM()-r*cos, leaf.Thickness.MM())
				case "pilot":
					require.GreaterOrEqual(t, end-r*sin, half-1e-6)
				}
			}
		}
	})
}

// opposite tells whether two screws are driven at one another, up and down or
// from left and right.
func opposite(a, b drilled) bool {
	for along, across := range map[int]int{0: 2, 2: 0} {
		if a.to[across] == b.to[across] && a.to[1] == b.to[1] && a.from[across] == b.from[across] && (a.to[along]-a.from[along])*(b.to[along]-b.from[along]) < 0 {
			return true
		}
	}
	return false
}

// inWood tells whether a screw's tip lies in the solid and the clearance from
// its long edges; a pocket or hanger screw's also from the faces.
func inWood(s solid.Solid, screw door.Screw, along solid.Axis, clear length.Length) bool {
	low, high := s.Bounds()
	for _, a := range []solid.Axis{solid.X, solid.Y, solid.Z} {
		margin := clear
		if a == along || a == solid.Y && screw.For == "washer" {
			margin = 0 // the washer lies within the back face, and the screw within the washer
		}
		if at := screw.Tip.Along(a); at < low.Along(a)+margin || at > high.Along(a)-margin {
			return false
		}
	}
	reach := screw.Tip.Add(solid.Vec{Y: -low.Y}) // to the front face
	reach.Y = 0
	return len(s.Pierce(screw.Tip, reach)) > 0
}

// apart is the distance of two straight stretches in mm (Ericson, Real-Time
// Collision Detection, 5.1.9; from memory).
func apart(a, b drilled) float64 {
	sub := func(p, q [3]float64) [3]float64 { return [3]float64{p[0] - q[0], p[1] - q[1], p[2] - q[2]} }
	dot := func(p, q [3]float64) float64 { return p[0]*q[0] + p[1]*q[1] + p[2]*q[2] }
	u, v, w := sub(a.to, a.from), sub(b.to, b.from), sub(a.from, b.from)
	uu, vv, uv, uw, vw := dot(u, u), dot(v, v), dot(u, v), dot(u, w), dot(v, w)
	clamp := func(x float64) float64 { return max(0, min(1, x)) }
	s := 0.0
	if d := uu*vv - uv*uv; d > 1e-9*uu*vv {
		s = clamp((uv*vw - uw*vv) / d)
	}
	q := (uv*s + vw) / vv
	if q < 0 {
		q, s = 0, clamp(-uw/uu)
	} else if q > 1 {
		q, s = 1, clamp((uv-uw)/uu)
	}
	for i := range w {
		w[i] += s*u[i] - q*v[i]
	}
	return math.Sqrt(dot(w, w))
}
