package catalog

import "stilewright/model/length"

// A TwoChannelTrack is a head track with two channels, one behind the other,
// and its hangers. The rows are typical, no maker's: measure your own, and put
// its sizes over the row's.
//
// The section is symmetrical front to back: its channels' centres stand
// Spacing/2 before and behind the middle of Depth. A leaf hangs with the middle
// of its thickness under its channel's centre.
type TwoChannelTrack struct {
	Name     string        // "two-channel"
	Spacing  length.Length // centre to centre of the channels: thickness + face gap
	HeadDrop length.Length // opening's head to leaf top, hangers at mid-adjustment
	Height   length.Length // of the section, below the opening's head
	Depth    length.Length // of the section, front to back; both channels
	Thinnest length.Length // leaf it carries
	Thickest length.Length // leaf it carries
	Adjust   length.Length // the hangers raise or lower a leaf by this much, each way
	Rated    float64       // kg, greatest mass of one leaf on its two hangers
	Source   Source
}

// Track is the track of that name.
func Track(name string) (TwoChannelTrack, error) {
	return find("track", name, Tracks(), func(t TwoChannelTrack) []string { return []string{t.Name} })
}

// FaceGap is what a leaf of that thickness leaves between itself and its
// neighbour on the other channel; negative when they collide.
func (t TwoChannelTrack) FaceGap(thickness length.Length) length.Length {
	return t.Spacing - thickness
}

// Carries tells whether leaves of that thickness fit the track.
func (t TwoChannelTrack) Carries(thickness length.Length) bool {
	return thickness >= t.Thinnest && thickness <= t.Thickest
}

// Tracks lists the typical tracks: inch rows, then rows in whole millimetres,
// named for the thickest leaf they carry.
func Tracks() []TwoChannelTrack {
	typical := practice("typical sizes, no maker's; measure the track in hand")
	return []TwoChannelTrack{
		{"two-channel", in + 3*in/4, in + 7*in/8, in + in/2, 3*in + in/2, in + in/4, in + 3*in/8, 3 * in / 16, 75 * poundKG, typical},
		{"two-channel-light", in + in/2, in + in/2, in + in/8, 3 * in, 3 * in / 4, in + in/8, 3 * in / 16, 50 * poundKG, typical},
		{"two-channel-heavy", 2*in + in/4, 2*in + in/4, in + 3*in/4, 4*in + 3*in/8, in + 3*in/8, in + 3*in/4, in / 4, 150 * poundKG, typical},
		{"two-channel-35", 45 * mm, 48 * mm, 38 * mm, 90 * mm, 32 * mm, 35 * mm, 5 * mm, 35, typical},
		{"two-channel-28", 38 * mm, 38 * mm, 28 * mm, 76 * mm, 18 * mm, 28 * mm, 5 * mm, 25, typical},
		{"two-channel-44", 57 * mm, 58 * mm, 45 * mm, 112 * mm, 35 * mm, 44 * mm, 6 * mm, 70, typical},
	}
}
