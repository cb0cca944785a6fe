package template

import (
	"fmt"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// trackStrip draws a strip with the places of the screws along the track, which are
// told from the opening's left as the set's frame has it; nothing without any.
func trackStrip(s door.Set, screws []length.Length) []sheet.Sheet {
	if len(screws) == 0 {
		return nil
	}
	least, _ := s.Track.Solid.Bounds()
	size := s.Track.Length
	d := newDraft(s, "track", "Track screws")
	places := []Place{{At: 0, What: "left end", Edge: true}}
	for i, at := range screws {
		places = append(places, Place{At: at - least.X, What: fmt.Sprintf("screw %d", i+1), Axis: true})
	}
	places = append(places, Place{At: size, What: "right end", Edge: true})
	var words []string
	for _, p := range places {
		words = append(words, lettering.Legible(p.What+"  "+d.style.Format(p.At)))
	}
	high := d.ticks(places, words, size)
	for i, line := range []string{
		"TRACK SCREWS. " + s.Job + ", revision " + s.Revision + ". Print at 100 %.",
		fmt.Sprintf("Lay it along the track: left end flush; the track is %s long, which a tape must find between the end lines.", d.figure(size)),
		"The middle of each line is the size. Move a screw to the nearest framing where there is none.",
	} {
		d.text(plane.At(0, high+headZone-length.Length(i+1)*5*mm), noteHeight, sheet.Start, false, lettering.Legible(line))
	}
	edge := plane.BoxOf(plane.At(-beyond, 0), plane.At(size+beyond, high+headZone+2*mm))
	d.shift(beyond, 0)
	wide, tall := edge.Width().UpTo(mm), edge.Height().UpTo(mm)
	d.stroke(sheet.Border, sheet.Narrow, sheet.Continuous, plane.Rect(plane.Point{}, plane.At(wide, tall)))
	return []sheet.Sheet{{Name: d.name, Title: d.title, Width: wide, Height: tall, Scale: sheet.Scale{Paper: 1, Real: 1}, Marks: d.marks(),
		Description: "A strip with the places of the screws along the track, at full size."}}
}
