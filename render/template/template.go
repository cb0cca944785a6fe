package template

import (
	"strings"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/render/sheet"
)

// Sheets are the templates of a set at full size, in the order they are used.
// Stiles, rails and muntins that are marked alike share a story stick; joints,
// corners and mortises that are alike share a template. None for the zero Set.
// Track are the places of the track's screws from the opening's left, if they are
// known: they come on a strip.
func Sheets(s door.Set, track ...length.Length) []sheet.Sheet {
	sheets := sticks(s)
	for _, draw := range []func(door.Set) []sheet.Sheet{joints, sections, profile, seatCorners, panelCorners, hangerHoles, pulls} {
		sheets = append(sheets, draw(s)...)
	}
	return append(sheets, trackStrip(s, track)...)
}

// joined names several parts, each once.
func joined(labels []string) string {
	var once []string
	seen := map[string]bool{}
	for _, l := range labels {
		if !seen[l] {
			seen[l] = true
			once = append(once, l)
		}
	}
	return strings.Join(once, ", ")
}
