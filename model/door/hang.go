package door

import (
	"fmt"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
)

// hang places track, fascia and leaves in the opening.
func (r *resolver) hang() {
	r.placeTrack()
	r.fascia()
	r.placeLeaves()
	r.trackSolid()
	r.rated()
}

// placeTrack finds the channels' middles, front to back.
func (r *resolver) placeTrack() {
	t, h := &r.set.Track, r.model.Hanging
	back := choice{setbackBare.inch, setbackBare.metric, setbackBare.reason}
	if h.Fascia != nil && h.Fascia.Thickness != nil {
		back = choice{setbackFascia.inch + *h.Fascia.Thickness, setbackFascia.metric + *h.Fascia.Thickness, setbackFascia.reason}
	}
	t.Setback = r.sized("track.setback", "hanging.track.setback", h.Track.Setback, back)
	t.Centre[Front] = r.derive("track.centre.front", t.Setback+(t.Depth-t.Spacing).Half(), "setback + half of depth less spacing", "track.setback", "track.depth", "track.spacing")
	t.Centre[Back] = r.derive("track.centre.back", t.Centre[Front]+t.Spacing, "front channel plus spacing", "track.centre.front", "track.spacing")
	t.Length = r.derive("track.length", r.set.Opening.Right[len(r.set.Opening.Right)-1].X-r.set.Opening.Left[1].X-r.assume("track.short", trackShort.in(r.units), trackShort.reason, houseRule), "width of the opening at the head, less room to get it in", "opening.width.top", "track.short")
}

// fascia places the trim before the track.
func (r *resolver) fascia() {
	f := r.model.Hanging.Fascia
	if f == nil || f.Height == nil || f.Thickness == nil {
		return
	}
	o := r.set.Opening
	height, thick := r.given("fascia.height", "hanging.fascia.height", *f.Height), r.given("fascia.thickness", "hanging.fascia.thickness", *f.Thickness)
	left, right := o.Left[1].X, o.Right[len(o.Right)-1].X
	body := solid.Solid{Blank: solid.Block(solid.Vec{X: left, Z: o.Head - height}, solid.Vec{X: right, Y: thick, Z: o.Head})}
	r.set.Fascia = &Fascia{Height: height, Thickness: thick, Solid: body}
	clear, leafFront := screwClear.in(r.units), r.set.Track.Centre[Front]-r.set.Leaf.Thickness.Half()-r.set.Leaf.beadsOut()
	if height > r.set.Track.HeadDrop && thick+clear > leafFront {
		r.stop("hanging.fascia", RuleFascia, "the fascia is %v thick and hangs %v below the head, before a front leaf whose face is %v behind the opening's front; %v must be left between: set the track back by %v more", thick, height, leafFront, clear, thick+clear-leafFront)
	}
	if setback := r.set.Track.Setback; setback < thick {
		r.stop("hanging.track.setback", RuleFascia, "the track begins %v behind the opening's front and the fascia is %v thick: they stand in one another; set the track back by at least %v", setback, thick, thick)
	}
	if height < r.set.Track.Height {
		r.warn("hanging.fascia.height", RuleFascia, "the fascia is %v high and the track %v: the track shows below it", height, r.set.Track.Height)
	}
}

// placeLeaves hangs the closed leaves from left to right.
func (r *resolver) placeLeaves() {
	leaf, t := r.set.Leaf, r.set.Track
	bottom := r.set.Opening.Height - t.HeadDrop - leaf.Height
	r.derive("leaf.bottom", bottom, "opening height − head drop − leaf height: floor gap at the floor's highest point", "opening.height", "track.head_drop", "leaf.height")
	x, _ := r.figureValue("hanging.jamb_gap.left")
	meeting, _ := r.figureValue("hanging.meeting_gap")
	joint := 0
	var before Channel
	for i, word := range r.model.Hanging.Tracks {
		channel := Front
		if word == Back.String() {
			channel = Back
		}
		if i > 0 {
			x += leaf.Width
			if channel == before {
				x += meeting
			} else {
				joint++
				o, _ := r.figureValue(fmt.Sprintf("overlap.%d", joint))
				x -= o
			}
		}
		r.derive(fmt.Sprintf("leaf.%d.left", i+1), x, "left edge of the closed leaf: the widths and overlaps before it", "leaf.width")
		r.set.Hung = append(r.set.Hung, Hung{Label: fmt.Sprint(i + 1), Channel: channel, At: solid.Vec{X: x, Y: t.Centre[channel] - leaf.Thickness.Half(), Z: bottom}})
		before = channel
	}
	r.derive("opening.clear", r.clearOpening(), "the widest stretch left free with every leaf slid to one side", "opening.width", "leaf.width")
}

// clearOpening is the opening less the most that the leaves of one track take
// when the others are stacked with them.
func (r *resolver) clearOpening() length.Length {
	count := [2]length.Length{}
	for _, h := range r.set.Hung {
		count[h.Channel]++
	}
	return max(0, r.set.Opening.Width-max(count[Front], count[Back])*r.set.Leaf.Width)
}

// trackSolid is the track's typical section swept along the head: two channels
// open below.
func (r *resolver) trackSolid() {
	t, o := &r.set.Track, r.set.Opening
	wall := trackWall.in(r.units)
	left := o.Left[1].X + (o.Right[len(o.Right)-1].X - o.Left[1].X - t.Length).Half()
	section := plane.Region{plane.Rect(plane.At(t.Setback, o.Head-t.Height), plane.At(t.Setback+t.Depth, o.Head))}
	inside := min(t.Spacing, t.Depth-t.Spacing) - 2*wall
	body := solid.Solid{Blank: solid.Prism{Axis: solid.X, Region: section, From: left, To: left + t.Length}}
	if inside > 3*wall && t.Height > 3*wall {
		for _, centre := range t.Centre {
			room := plane.Rect(plane.At(centre-inside.Half(), o.Head-t.Height+wall), plane.At(centre+inside.Half(), o.Head-wall))
			slot := plane.Rect(plane.At(centre-inside/6, o.Head-t.Height), plane.At(centre+inside/6, o.Head-t.Height+wall))
			for _, way := range []plane.Path{room, slot} {
				body.Cuts = append(body.Cuts, solid.Cut{Prism: solid.Prism{Axis: solid.X, Region: plane.Region{way}, From: left, To: left + t.Length}, For: "channel"})
			}
		}
		t.Hanger = r.hanger(inside, wall)
	}
	t.Solid = body
}

// hanger is a typical hanger: a plate on the leaf's top, a stem, and a wheel
// that runs on the channel's lips.
func (r *resolver) hanger(inside, wall length.Length) []solid.Solid {
	t := r.set.Track
	lips := t.HeadDrop - t.Height + wall // above the leaf's top
	radius := min(inside.Half()-wall, (t.Height-2*wall).Half()-wall/2)
	if radius <= 0 || lips <= wall || inside < 6*wall {
		return nil // no room for one
	}
	wide := hangerPlate / 2
	thick := min(wall, lips-wall) // of the plate, below the track
	plate := solid.Solid{Blank: solid.Block(solid.Vec{X: -wide, Y: -inside / 4}, solid.Vec{X: wide, Y: inside / 4, Z: thick})}
	stem := solid.Solid{Blank: solid.Block(solid.Vec{X: -wall, Y: -wall, Z: thick}, solid.Vec{X: wall, Y: wall, Z: lips + radius})}
	wheel := func(y0, y1 length.Length) solid.Solid {
		return solid.Solid{Blank: solid.Prism{Axis: solid.Y, Region: plane.Region{plane.Circle(plane.At(0, lips+radius), radius)}, From: y0, To: y1}}
	}
	outer := inside.Half() - wall
	return []solid.Solid{plate, stem, wheel(-outer, -wall), wheel(wall, outer)}
}

// rated warns when a leaf is heavier than a typical track of this kind bears.
func (r *resolver) rated() {
	row, err := catalog.Track(r.set.Track.Row)
	if err == nil && r.set.Leaf.Mass > row.Rated {
		r.warn("hanging.track", RuleMass, "a leaf weighs %.1f kg and a typical %v track is rated for %.1f kg: take a heavier track, and its maker's figures over ours", r.set.Leaf.Mass, row.Name, row.Rated)
	}
}
