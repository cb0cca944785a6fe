package hanging

import (
	"fmt"

	"stilewright/model/door"
	"stilewright/model/length"
)

// A Guide is a floor guide, screwed to the floor below an overlap.
type Guide struct {
	X       length.Length // its middle
	Y       length.Length // midway between the two channels
	Between [2]string     // labels of the closed leaves that overlap above it
}

// guides puts a guide below the middle of every overlap of the closed leaves,
// where it holds both wherever they slide.
func (w *work) guides() {
	s := w.set
	for i := 1; i < len(s.Hung); i++ {
		a, b := s.Hung[i-1], s.Hung[i]
		if a.Channel == b.Channel {
			continue
		}
		x := b.At.X + (a.At.X + s.Leaf.Width - b.At.X).Half()
		names := []string{fmt.Sprintf("leaf.%s.left", b.Label), fmt.Sprintf("overlap.%d", len(w.hanging.Guides)+1)}
		w.derive(fmt.Sprintf("guide.%d", len(w.hanging.Guides)+1), x, "middle of the overlap of the closed leaves, from the opening's left", names...)
		w.hanging.Guides = append(w.hanging.Guides, Guide{X: x, Y: s.Track.Centre[door.Front] + s.Track.Spacing.Half(), Between: [2]string{a.Label, b.Label}})
	}
}

// A Bumper stops a leaf in its channel before it strikes a jamb.
type Bumper struct {
	Channel door.Channel
	Leaf    string        // label of the leaf it stops
	Right   bool          // at the right end of the channel; else at the left
	Hanger  length.Length // X of the middle of the hanger that meets it, when the leaf has come to rest
}

// bumpers stand at both ends of each channel, where the outer hanger of the
// outermost leaf comes to rest with the leaf at its jamb gap.
func (w *work) bumpers() {
	s := w.set
	left, right := jambGaps(s)
	for _, channel := range []door.Channel{door.Front, door.Back} {
		var first, last string
		for _, h := range s.Hung {
			if h.Channel != channel {
				continue
			}
			if first == "" {
				first = h.Label
			}
			last = h.Label
		}
		if first == "" {
			continue
		}
		inset, name := s.Track.HangerAt, "bumper."+channel.String()
		from := []string{"hanger.inset", "opening.width"}
		at := w.derive(name+".left", left+inset[0], "jamb gap and the hanger's inset: the outer hanger's middle with the leaf at the left jamb", append(from, "hanging.jamb_gap.left")...)
		w.hanging.Bumpers = append(w.hanging.Bumpers, Bumper{Channel: channel, Leaf: first, Hanger: at})
		at = w.derive(name+".right", s.Opening.Width-right-s.Leaf.Width+inset[1], "width of the opening less jamb gap and the hanger's inset: with the leaf at the right jamb", append(from, "hanging.jamb_gap.right")...)
		w.hanging.Bumpers = append(w.hanging.Bumpers, Bumper{Channel: channel, Leaf: last, Right: true, Hanger: at})
	}
}

// jambGaps are what the outer closed leaves leave at the jambs.
func jambGaps(s door.Set) (left, right length.Length) {
	last := s.Hung[len(s.Hung)-1]
	return s.Hung[0].At.X, s.Opening.Width - last.At.X - s.Leaf.Width
}
