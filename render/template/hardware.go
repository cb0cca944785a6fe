package template

import (
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

// pastHole is shown beyond a hanger's last hole, and beside a pull's mortise.
const pastHole = 25 * mm

// hangerHoles draws the left end of the leaf's top with the places of a
// hanger's screws or, where they are not known, of its middle.
func hangerHoles(s door.Set) []sheet.Sheet {
	l, at := s.Leaf, s.Track.HangerAt[0]
	if at <= 0 {
		return nil
	}
	var middles []plane.Point
	for _, screw := range l.Screws {
		if screw.For == "hanger" && screw.Head.X < l.Width.Half() {
			middles = append(middles, screw.Head.Flat(solid.Z))
		}
	}
	slices.SortFunc(middles, func(a, b plane.Point) int { return int(max(-1, min(1, a.X-b.X))) })
	how := "The crosses are the middles of the hanger's screw holes."
	if len(middles) == 0 {
		middles = []plane.Point{plane.At(at, l.Thickness.Half())}
		how = "The cross is the hanger's middle; its own screw holes follow the hanger in hand."
	}
	d := newDraft(s, "hanger", "Hanger holes")
	long := min(l.Width, middles[len(middles)-1].X+pastHole).UpTo(mm)
	box := plane.BoxOf(plane.Point{}, plane.At(long, l.Thickness))
	d.stroke(sheet.Outline, sheet.Wide, sheet.Continuous, box.Path())
	d.line(sheet.CentreMark, sheet.Narrow, sheet.Centre, plane.At(at, -2*mm), plane.At(at, l.Thickness+2*mm))
	along, across := []length.Length{0}, []length.Length{0, l.Thickness}
	for _, m := range middles {
		d.cross(m, 0)
		along, across = append(along, m.X), append(across, m.Y)
	}
	r := rows{below: chain(along...), left: chain(across...)}
	if len(middles) > 1 {
		r.below = append(r.below, dimension.Row{At: []length.Length{0, at}, Style: dimension.Overall})
	}
	d.dimensions(box, r)
	return []sheet.Sheet{d.finish("The left end of the leaf's top edge, with the places of a hanger's screws.",
		"Lay it on the leaf's top: left end flush with the leaf's left edge, lower line flush with the front. Turned over for the right end.",
		how, fmt.Sprintf("The hanger's middle is %s in from the leaf's side.", d.figure(at)))}
}

// A mortise is a pull's, as it shows on its face.
type mortise struct {
	part  door.Part
	shape plane.Region // on the part's face, the part's lower left corner at the origin
	face  plane.Box    // the whole face
	back  bool
	deep  length.Length
	up    length.Length // middle above the leaf's bottom
}

// mortises are the different mortises for pulls.
func mortises(l door.Leaf) (all []mortise, labels [][]string) {
	for _, p := range l.Parts {
		least, most := p.Solid.Bounds()
		for _, c := range p.Solid.Cuts {
			if c.For != "pull" || c.Axis != solid.Y {
				continue
			}
			m := mortise{part: p, shape: c.Region.Translate(-least.X, -least.Z), face: plane.BoxOf(plane.Point{}, most.Add(solid.Vec{X: -least.X, Z: -least.Z}).Flat(solid.Y)), back: c.To == most.Y, deep: c.To - c.From}
			b := c.Region.Bounds()
			m.up = b.Min.Y + b.Height().Half()
			if m.back {
				m.shape = m.shape.MirrorX(m.face.Max.X.Half())
			}
			same := slices.IndexFunc(all, func(o mortise) bool { return o.back == m.back && o.deep == m.deep && sameRegion(o.shape, m.shape) })
			if same >= 0 {
				labels[same] = append(labels[same], p.Label)
				continue
			}
			all, labels = append(all, m), append(labels, []string{p.Label})
		}
	}
	return all, labels
}

// pulls draws each different mortise for a pull, across the whole part.
func pulls(s door.Set) (sheets []sheet.Sheet) {
	all, labels := mortises(s.Leaf)
	for i, m := range all {
		sheets = append(sheets, m.template(s, named("pull", i, len(all)), labels[i]))
	}
	return sheets
}

func (m mortise) template(s door.Set, name string, labels []string) sheet.Sheet {
	d := newDraft(s, name, fmt.Sprintf("Pull mortise in %s", joined(labels)))
	b := m.shape.Bounds()
	window := b.Grow(pastHole)
	if m.part.Grain == solid.Z {
		window.Min.X, window.Max.X = m.face.Min.X, m.face.Max.X
	} else {
		window.Min.Y, window.Max.Y = m.face.Min.Y, m.face.Max.Y
	}
	window = plane.BoxOf(plane.At(max(window.Min.X, m.face.Min.X), max(window.Min.Y, m.face.Min.Y)), plane.At(min(window.Max.X, m.face.Max.X), min(window.Max.Y, m.face.Max.Y)))
	d.stroke(sheet.Outline, sheet.Narrow, sheet.Continuous, window.Path())
	d.area(sheet.Hardware, m.shape)
	middle := plane.At(b.Min.X+b.Width().Half(), b.Min.Y+b.Height().Half())
	d.line(sheet.CentreMark, sheet.Narrow, sheet.Centre, plane.At(window.Min.X, middle.Y), plane.At(window.Max.X, middle.Y))
	d.line(sheet.CentreMark, sheet.Narrow, sheet.Centre, plane.At(middle.X, window.Min.Y), plane.At(middle.X, window.Max.Y))
	r := rows{below: append(chain(b.Min.X, b.Max.X), chain(window.Min.X, middle.X, window.Max.X)...), left: chain(b.Min.Y, middle.Y, b.Max.Y)}
	if m.part.Grain == solid.X {
		r = rows{below: chain(b.Min.X, middle.X, b.Max.X), left: append(chain(b.Min.Y, b.Max.Y), chain(window.Min.Y, middle.Y, window.Max.Y)...)}
	}
	d.dimensions(window, r)
	face := "front"
	if m.back {
		face = "back"
	}
	return d.finish("The mortise for a flush pull on the face it is let into.",
		fmt.Sprintf("On the %s, seen from there. Its middle is %s above the leaf's bottom; %s deep.", face, d.figure(m.up), d.figure(m.deep)),
		"The heavy line is the mortise's edge.")
}
