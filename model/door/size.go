package door

import (
	"fmt"
	"slices"

	"stilewright/model/catalog"
	"stilewright/model/length"
)

// track resolves the track from its catalogue row and what the model puts over
// it.
func (r *resolver) track() {
	t, row := r.model.Hanging.Track, r.model.Hanging.Track.Row
	if row == "" {
		row = r.trackFor(r.set.Leaf.Thickness)
	}
	typical, err := catalog.Track(row)
	if err != nil {
		r.stop("hanging.track", RuleUnknownTrack, "%v", err)
		return
	}
	source := typical.Source.String()
	take := func(name string, stated *length.Length, typical length.Length) length.Length {
		if stated != nil {
			return r.given("track."+name, "hanging.track."+name, *stated)
		}
		return r.assume("track."+name, typical, "typical of a "+row+" track", source)
	}
	track := Track{Row: row, Spacing: take("spacing", t.Spacing, typical.Spacing), HeadDrop: take("head_drop", t.HeadDrop, typical.HeadDrop),
		Height: take("height", t.Height, typical.Height), Depth: take("depth", t.Depth, typical.Depth), Adjust: take("adjust", nil, typical.Adjust)}
	r.set.Track = track
	if track.Depth <= track.Spacing {
		r.stop("hanging.track", RuleTrackSection, "channels %v apart do not fit a track %v deep: its depth must be more than its spacing", track.Spacing, track.Depth)
	}
	if track.HeadDrop < track.Height {
		r.stop("hanging.track", RuleTrackSection, "the leaves hang %v below the head and the track is %v high: their tops would stand in the track; the head drop must be at least %v", track.HeadDrop, track.Height, track.Height)
	}
	r.carries(typical)
}

// trackFor is the typical track of a model that names none: the common one of
// its units, or the first of the same kind that carries the thickness.
func (r *resolver) trackFor(thickness length.Length) string {
	common, inches := defaultTrackMM, r.units == length.Inches
	if inches {
		common = defaultTrackIn
	}
	if row, err := catalog.Track(common); err == nil && row.Carries(thickness) {
		return common
	}
	for _, row := range catalog.Tracks() {
		if row.Carries(thickness) && (row.Spacing%length.Millimetre != 0) == inches {
			return row.Name
		}
	}
	return common
}

// carries checks the leaf's thickness against the track.
func (r *resolver) carries(typical catalog.TwoChannelTrack) {
	thick := r.set.Leaf.Thickness
	if thick == 0 {
		return
	}
	if !typical.Carries(thick) && r.model.Hanging.Track.Spacing == nil {
		r.warn("hanging.track", RuleTrackThickness, "a leaf %v thick is outside the %v to %v a %v track carries: take another row, or state your own track's sizes", thick, typical.Thinnest, typical.Thickest, typical.Name)
	}
	gap := r.derive("track.face_gap", r.set.Track.Spacing-thick, "channel spacing less the leaf's thickness", "track.spacing", "leaf.thickness")
	r.set.Track.FaceGap = gap
	least := leastFaceGap.in(r.units)
	switch {
	case gap <= 0:
		r.stop("hanging.track", RuleFaceGap, "channels %v apart leave leaves %v thick a face gap of %v: the leaves would touch; a spacing of %v leaves %v", r.set.Track.Spacing, thick, gap, thick+2*least, 2*least)
	case gap < least:
		r.warn("hanging.track", RuleFaceGap, "the face gap is %v; passing leaves want at least %v", gap, least)
	}
}

// size resolves the leaves' width and height.
func (r *resolver) size() {
	h := r.model.Hanging
	if r.set.Opening.Width == 0 || len(h.Tracks) < 2 {
		r.stopped = true // spec or opening has said so
		return
	}
	if !r.slides() {
		return
	}
	if h.Overlap.Stile && r.set.Leaf.Stile <= 0 {
		return // stock has said so
	}
	r.width()
	if r.set.Track.HeadDrop > 0 {
		r.height()
	}
}

// slides checks that at least two neighbours hang on different tracks.
func (r *resolver) slides() bool {
	tracks := r.model.Hanging.Tracks
	for i := 1; i < len(tracks); i++ {
		if tracks[i] != tracks[i-1] {
			return true
		}
	}
	r.stop("hanging.tracks", RuleTracks, "all %d leaves hang on the %v track, so none could slide past another: put neighbours on front and back in turn", len(tracks), tracks[0])
	return false
}

// joints counts the neighbours on different tracks, and those on one.
func (r *resolver) joints() (overlaps, meetings int) {
	tracks := r.model.Hanging.Tracks
	for i := 1; i < len(tracks); i++ {
		if tracks[i] != tracks[i-1] {
			overlaps++
		} else {
			meetings++
		}
	}
	return overlaps, meetings
}

// width resolves leaf width and overlaps: n widths fill the least usable width
// plus the overlaps, less jamb and meeting gaps.
func (r *resolver) width() {
	h, leaf := r.model.Hanging, &r.set.Leaf
	n := length.Length(len(h.Tracks))
	overlaps, meetings := r.joints()
	left := r.sized("hanging.jamb_gap.left", "hanging.jamb_gap.left", h.JambGap.Left, jambGap)
	right := r.sized("hanging.jamb_gap.right", "hanging.jamb_gap.right", h.JambGap.Right, jambGap)
	free := r.set.Opening.Width - left - right
	from := []string{"opening.width", "hanging.jamb_gap.left", "hanging.jamb_gap.right"}
	if meetings > 0 {
		free -= length.Length(meetings) * r.sized("hanging.meeting_gap", "hanging.meeting_gap", h.MeetingGap, meetingGap)
		from = append(from, "hanging.meeting_gap")
	}
	if stated := r.model.Leaf.Width; stated != nil {
		leaf.Width = r.given("leaf.width", "leaf.width", *stated)
		if h.Overlap.Size != nil || h.Overlap.Stile {
			r.stop("leaf.width", RuleOverlapTwice, "leaf.width %v and hanging.overlap are both stated, and each follows from the other: leave one of them out", *stated)
			return
		}
	} else {
		asked := r.overlap()
		whole := free + length.Length(overlaps)*asked
		formula := fmt.Sprintf("(least usable width − jamb and meeting gaps + %d × overlap asked for) ÷ %d leaves, up to the next tick", overlaps, n)
		leaf.Width = r.derive("leaf.width", roundedUp(whole, n).UpTo(r.tick), formula, append(slices.Clip(from), "hanging.overlap", "tick")...)
	}
	if r.widthFits() {
		r.overlaps(n*leaf.Width-free, overlaps, append(slices.Clip(from), "leaf.width"))
	}
}

// roundedUp is whole ÷ n, up to the next nanometre.
func roundedUp(whole, n length.Length) length.Length { return (whole + n - 1) / n }

// overlap enters the overlap asked for.
func (r *resolver) overlap() length.Length {
	o := r.model.Hanging.Overlap
	if o.Stile {
		return r.derive("hanging.overlap", r.set.Leaf.Stile, "one whole stile, so that the stiles line up", "leaf.stile")
	}
	return r.sized("hanging.overlap", "hanging.overlap", o.Size, overlapSize)
}

// overlaps shares the whole overlap among the joints, the first ones getting
// the odd ticks.
func (r *resolver) overlaps(whole length.Length, count int, from []string) {
	path, least := r.widthPath(), leastOverlap.in(r.units)
	each := whole / length.Length(count)
	switch {
	case each <= 0:
		n := length.Length(len(r.model.Hanging.Tracks))
		need := roundedUp(n*r.set.Leaf.Width-whole+length.Length(count)*least, n).UpTo(r.tick)
		r.stop(path, RuleOverlap, "leaves %v wide overlap by %v and leave the opening of %v uncovered; %v would overlap by %v", r.set.Leaf.Width, each, r.set.Opening.Width, need, least)
		return
	case each < least:
		r.warn(path, RuleOverlap, "the leaves overlap by %v; less than %v lets one see between them", each, least)
	case each >= r.set.Leaf.Width:
		r.stop(path, RuleOverlap, "the leaves overlap by %v and are %v wide: they would cover one another wholly; ask for a smaller overlap", each, r.set.Leaf.Width)
		return
	}
	for i, part := range r.share(whole, count) {
		r.derive(fmt.Sprintf("overlap.%d", i+1), part, "what the leaves' widths exceed the opening by, shared by the overlaps", from...)
	}
}

// widthPath is where the leaves' width stands, or what it follows from.
func (r *resolver) widthPath() string {
	if r.model.Leaf.Width != nil {
		return "leaf.width"
	}
	return "hanging.overlap"
}

// widthFits checks the width against opening and stiles; it tells whether a
// leaf goes into the opening.
func (r *resolver) widthFits() bool {
	leaf, opening := r.set.Leaf, r.set.Opening.Width
	if leaf.Width > opening {
		r.stop(r.widthPath(), RuleLeafTooWide, "a leaf is %v wide; the least usable opening is %v: make leaf or overlap smaller", leaf.Width, opening)
		return false
	}
	sight := leaf.Width - 2*leaf.Stile
	if least := leastLite.in(r.units); leaf.Stile > 0 && sight < least {
		r.stop("leaf.stile", RuleLeafTooNarrow, "two stiles of %v in a leaf %v wide leave a lite %v wide; it needs at least %v: stiles up to %v fit", leaf.Stile, leaf.Width, sight, least, (leaf.Width - least).Half().DownTo(r.tick))
	}
	return true
}

// height resolves the leaves' height.
func (r *resolver) height() {
	leaf, drop := &r.set.Leaf, r.set.Track.HeadDrop
	gap := r.sized("hanging.floor_gap", "hanging.floor_gap", r.model.Hanging.FloorGap, floorGap)
	most := r.set.Opening.Height - drop - gap
	if stated := r.model.Leaf.Height; stated != nil {
		leaf.Height = r.given("leaf.height", "leaf.height", *stated)
		if *stated > most {
			r.stop("leaf.height", RuleLeafTooHigh, "a leaf is to be %v high; the opening's least height %v less head drop %v and floor gap %v leaves %v", *stated, r.set.Opening.Height, drop, gap, most)
		}
		return
	}
	leaf.Height = r.derive("leaf.height", most.DownTo(r.tick), "least height of the opening − head drop − floor gap, down to the next tick", "opening.height", "track.head_drop", "hanging.floor_gap", "tick")
	if leaf.Height <= 0 {
		r.stop("opening.height", RuleLeafTooHigh, "head drop %v and floor gap %v take all of the opening's least height %v", drop, gap, r.set.Opening.Height)
	}
}
