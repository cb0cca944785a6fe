package catalog

import (
	"fmt"

	"stilewright/model/length"
)

// A WoodScrew is a screw gauge. The diameter is the shank's; drills are the
// nearest in 1/64 in, and other charts print larger ones for hardwood.
type WoodScrew struct {
	Gauge    int           // "No. 8" is 8
	Diameter length.Length // of the shank: 0.060 in + 0.013 in × gauge
	Root     length.Length // of the thread
	Head     length.Length // of a flat head
	Threads  int           // per inch
	Soft     length.Length // pilot drill for softwood
	Hard     length.Length // pilot drill for hardwood
	Body     length.Length // drill for the shank; for 10 it is nominally 2 1/2 mil under it
	Shank    Source        // of Diameter
	Thread   Source        // of Root, Threads and Head
	Drills   Source        // of Soft, Hard and Body
}

// GaugeDiameter is the shank diameter of a screw gauge: 0.060 in + 0.013 in × n.
func GaugeDiameter(gauge int) length.Length { return (60 + 13*length.Length(gauge)) * mil }

// Screw is the row of a gauge number. It errs for a gauge it has no row for,
// naming the nearest.
func Screw(gauge int) (WoodScrew, error) {
	rows := WoodScrews()
	best := rows[0]
	for _, row := range rows {
		if row.Gauge == gauge {
			return row, nil
		}
		if away(row.Gauge, gauge) < away(best.Gauge, gauge) {
			best = row
		}
	}
	return WoodScrew{}, fmt.Errorf("no wood screw of gauge %d; nearest is %d, known are %d to %d", gauge, best.Gauge, rows[0].Gauge, rows[len(rows)-1].Gauge)
}

// away is how far a gauge lies from one in the table, in float64 so that no
// gauge overflows.
func away(row, gauge int) float64 {
	return max(float64(row)-float64(gauge), float64(gauge)-float64(row))
}

// WoodScrews lists the wood screws by gauge.
func WoodScrews() []WoodScrew {
	shank := Source{Work: "screw gauge formula", Edition: "as in ASME B18.6.1", Place: "homemadetools.net/forum/diy-screw-size-gage-55329",
		Confirmed: ReadTwice, Note: "D = 0.060 in + 0.013 in per number"}
	appendix := nds("Appendix L, wood screws", FromMemory, "threads and flat head as in ASME B18.6.1; threads of 4, 6, 8, 9 and 10 read in one published text")
	third := nds("Appendix L, wood screws", FromMemory, "root taken as two thirds of the shank (Wood Handbook); threads and flat head as in ASME B18.6.1")
	chart := Source{Work: "wood screw pilot drill chart", Edition: "undated", Place: "homemadetools.net/forum/diy-screw-size-gage-55329",
		Confirmed: ReadOnce, Note: "other charts print larger drills for hardwood"}
	memory := chart
	memory.Confirmed = FromMemory
	const d = in / 64
	return []WoodScrew{
		{2, 86 * mil, 57 * mil, 172 * mil, 26, 3 * d, 4 * d, 6 * d, shank, third, memory},
		{3, 99 * mil, 66 * mil, 199 * mil, 24, 4 * d, 4 * d, 7 * d, shank, third, memory},
		{4, 112 * mil, 75 * mil, 225 * mil, 22, 4 * d, 5 * d, 8 * d, shank, third, memory},
		{5, 125 * mil, 83 * mil, 252 * mil, 20, 5 * d, 5 * d, 8 * d, shank, third, memory},
		{6, 138 * mil, 113 * mil, 279 * mil, 18, 5 * d, 6 * d, 9 * d, shank, appendix, chart},
		{7, 151 * mil, 122 * mil, 305 * mil, 16, 5 * d, 7 * d, 10 * d, shank, appendix, memory},
		{8, 164 * mil, 131 * mil, 332 * mil, 15, 6 * d, 7 * d, 11 * d, shank, appendix, chart},
		{9, 177 * mil, 142 * mil, 358 * mil, 14, 7 * d, 8 * d, 12 * d, shank, appendix, memory},
		{10, 190 * mil, 152 * mil, 385 * mil, 13, 7 * d, 8 * d, 12 * d, shank, appendix, chart},
		{12, 216 * mil, 171 * mil, 438 * mil, 11, 8 * d, 9 * d, 14 * d, shank, appendix, memory},
		{14, 242 * mil, 196 * mil, 491 * mil, 10, 9 * d, 10 * d, 16 * d, shank, appendix, memory},
	}
}
