package catalog

import (
	"fmt"

	"stilewright/model/length"
)

// A PocketScrew is the pocket screw for a thickness of stock.
type PocketScrew struct {
	Stock  length.Length // thickness of the stock with the pocket
	Screw  length.Length // screw under the head to its tip
	Other  length.Length // the length other charts print; optional
	Source Source
}

// Limits of the look-up by thickness.
const (
	thickestPocket = 2 * in
	// metricSlack is what a metric thickness may lack of the inch row's it
	// stands for: 25 is sold for 25.4, 44 for 44.45, 19 for 19.05.
	metricSlack = 500 * length.Micrometre
)

// PocketScrewFor is the pocket screw for stock of that thickness: the row of
// the thickest stock that is not thicker, for a shorter screw cannot come out
// at the front. It errs below 1/2 in and above 2 in.
func PocketScrewFor(thickness length.Length) (PocketScrew, error) {
	rows := PocketScrews()
	if thickness+metricSlack < rows[0].Stock || thickness > thickestPocket {
		return PocketScrew{}, fmt.Errorf("no pocket screw for stock %s mm thick; the table goes from %s to %s mm: state the screw's length",
			thickness.Decimal(), rows[0].Stock.Decimal(), thickestPocket.Decimal())
	}
	best := rows[0]
	for _, row := range rows {
		if row.Stock <= thickness+metricSlack {
			best = row
		}
	}
	return best, nil
}

// PocketScrews lists the pocket screws by thickness of stock.
func PocketScrews() []PocketScrew {
	chart := func(c Confirmation, note string) Source {
		return Source{Work: "pocket screw length charts", Edition: "undated", Place: "shop charts; no standard exists", Confirmed: c, Note: note}
	}
	read, memory := chart(ReadOnce, ""), chart(FromMemory, "")
	differ := chart(FromMemory, "charts differ")
	return []PocketScrew{
		{in / 2, in, 0, read},
		{5 * in / 8, in, 0, memory},
		{3 * in / 4, in + in/4, 0, read},
		{7 * in / 8, in + in/2, 0, memory},
		{in, in + in/2, 0, memory},
		{in + in/8, in + 3*in/4, 2 * in, differ},
		{in + in/4, 2 * in, 0, memory},
		{in + 3*in/8, 2*in + in/2, 2*in + in/4, differ},
		{in + in/2, 2*in + in/2, 0, chart(ReadTwice, "")},
		{in + 3*in/4, 2*in + in/2, 0, practice("the longest pocket screw commonly sold")},
	}
}

// A PocketHole is how pocket holes are drilled and placed.
type PocketHole struct {
	Angle      float64       // between screw and face of the stock, degrees
	Pocket     length.Length // diameter of the pocket
	Pilot      length.Length // diameter of the hole ahead of it
	Gauge      int           // screw gauge in softwood and sheet
	GaugeHard  int           // screw gauge in hardwood, fine thread
	FirstHole  length.Length // rail's edge to the nearest hole's centre, by default
	FirstLeast length.Length // the least that may be
	Apart      length.Length // greatest distance between centres in a frame
	KeepOut    length.Length // left between a pocket and a rabbet or groove
	Drilling   Source        // of Angle, Pocket, Pilot and gauges
	Placing    Source        // of the rest
}

// PocketPractice is how pocket holes are commonly drilled and placed.
func PocketPractice() PocketHole {
	return PocketHole{
		Angle: 15, Pocket: 3 * in / 8, Pilot: 9 * in / 64, Gauge: 8, GaugeHard: 7,
		FirstHole: 3 * in / 4, FirstLeast: in / 2, Apart: 2 * in, KeepOut: in / 8,
		Drilling: Source{Work: "pocket screw length charts", Edition: "undated", Place: "shop charts; no standard exists",
			Confirmed: FromMemory, Note: "the 15° read in two published texts; drills and gauges from memory"},
		Placing: practice("two holes in a narrow rail, 1/2 to 3/4 in from its edges"),
	}
}

// PocketHoles is how many pocket holes a rail end of that width gets: two up to
// 3 in, three up to 5 1/2 in, and one more for every 2 in begun above that. A
// rail of no width gets none. Common practice, no source.
func PocketHoles(railWidth length.Length) int {
	const two, three = 3 * in, 5*in + in/2
	switch {
	case railWidth <= 0:
		return 0
	case railWidth <= two:
		return 2
	case railWidth <= three:
		return 3
	}
	return 3 + int((railWidth-three).UpTo(2*in)/(2*in))
}
