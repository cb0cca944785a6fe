package catalog

import (
	"fmt"
	"math"

	"stilewright/model/length"
)

// A RouterSpeed is the greatest speed for router cutters up to a diameter. A
// speed marked on the cutter governs.
type RouterSpeed struct {
	UpTo   length.Length // diameter, included
	RPM    float64       // greatest revolutions per minute
	Source Source
}

// RouterSpeedFor is the row for a cutter of that diameter. It errs for a
// diameter that is not above 0 or larger than the table's last.
func RouterSpeedFor(diameter length.Length) (RouterSpeed, error) {
	rows := RouterSpeeds()
	for _, row := range rows {
		if diameter > 0 && diameter <= row.UpTo {
			return row, nil
		}
	}
	return RouterSpeed{}, fmt.Errorf("no router speed for a cutter of %s mm; the table goes up to %s mm", diameter.Decimal(), rows[len(rows)-1].UpTo.Decimal())
}

// RouterSpeeds lists the greatest router speeds by diameter.
func RouterSpeeds() []RouterSpeed {
	read := Source{Work: "router bit speed list", Edition: "undated web table", Place: "woodworking.about.com, router bit speeds",
		Confirmed: ReadOnce, Note: "a second list allows 18 to 22 thousand up to 2 in, 12 to 16 up to 2 1/4, 8 to 12 above"}
	return []RouterSpeed{
		{in, 24_000, read},
		{2 * in, 18_000, read},
		{2*in + in/2, 16_000, read},
		{3*in + in/2, 12_000, read},
	}
}

// RimSpeed is how fast a cutter's rim runs, m/s: π·D·n.
func RimSpeed(diameter length.Length, rpm float64) float64 {
	return math.Pi * diameter.MM() / 1000 * rpm / 60
}
