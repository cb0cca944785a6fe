package door

import (
	"stilewright/model/length"
	"stilewright/model/solid"
)

// A taken is a place in the leaf that something has taken: a bore, a screw, or
// a cut. Just one of bore and prism is set.
type taken struct {
	what, part string // "pocket screw", and the label of its part
	bore       *solid.Bore
	prism      *solid.Prism
}

// taken lists what has been bored, driven and cut on the bench, but for the
// blanks' own ends.
func (b *bench) taken() []taken {
	var all []taken
	for _, m := range b.members {
		for i := range m.bores {
			all = append(all, taken{what: m.bores[i].For, part: m.label, bore: &m.bores[i]})
		}
		for i := range m.cuts {
			all = append(all, taken{what: m.cuts[i].For, part: m.label, prism: &m.cuts[i].Prism})
		}
	}
	for _, s := range b.leaf.Screws {
		all = append(all, taken{what: s.For + " screw", part: b.partAt(s.Tip), bore: &solid.Bore{From: s.Head, To: s.Tip, Diameter: s.Diameter}})
	}
	return all
}

// partAt is the label of the member in whose blank a place lies, or "the leaf".
func (b *bench) partAt(v solid.Vec) string {
	for _, m := range b.members {
		if m.least.X <= v.X && v.X <= m.most.X && m.least.Z <= v.Z && v.Z <= m.most.Z {
			return m.label
		}
	}
	return "the leaf"
}

// box is the prism of the box round what is taken.
func (a taken) box() solid.Prism {
	if a.prism != nil {
		low, high := solid.Solid{Blank: *a.prism}.Bounds()
		return solid.Block(low, high)
	}
	r := a.bore.Diameter.Half()
	low := solid.Vec{X: min(a.bore.From.X, a.bore.To.X) - r, Y: min(a.bore.From.Y, a.bore.To.Y) - r, Z: min(a.bore.From.Z, a.bore.To.Z) - r}
	high := solid.Vec{X: max(a.bore.From.X, a.bore.To.X) + r, Y: max(a.bore.From.Y, a.bore.To.Y) + r, Z: max(a.bore.From.Z, a.bore.To.Z) + r}
	return solid.Block(low, high)
}

// nearer is how far apart two takings are, 0 where they meet, and whether that
// is less than a limit. Farther off than the limit the distance is rough.
func (a taken) nearer(o taken, limit length.Length) (length.Length, bool) {
	off := a.box().Gap(o.box())
	if off < limit.MM() {
		switch {
		case a.bore != nil && o.bore != nil:
			off = a.bore.Apart(*o.bore)
		case a.bore != nil:
			off = a.bore.Off(*o.prism)
		case o.bore != nil:
			off = o.bore.Off(*a.prism)
		}
	}
	apart := max(0, length.Round(off))
	return apart, apart < limit
}

// nearest is the first of the others that is nearer to one of the places than
// the limit, and how near.
func nearest(places, others []taken, limit length.Length) (o taken, off length.Length, near bool) {
	for _, place := range places {
		for _, other := range others {
			if off, near := place.nearer(other, limit); near {
				return other, off, true
			}
		}
	}
	return taken{}, 0, false
}
