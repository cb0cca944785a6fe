package record

import (
	"encoding/json"
	"math"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/solid"
)

// Version of the format.
const Version = 1

type record struct {
	Format   string      `json:"format"`
	Version  int         `json:"version"`
	Job      string      `json:"job"`
	Drawn    string      `json:"drawn,omitempty"`
	By       string      `json:"by,omitempty"`
	Revision string      `json:"revision,omitempty"`
	Units    string      `json:"units"`
	Lengths  []lengthRow `json:"lengths"`
	Leaves   []leafRow   `json:"leaves"`
	Parts    []partRow   `json:"parts"`
	Screws   []screwRow  `json:"screws"`
}

type lengthRow struct {
	Name    string        `json:"name"`
	MM      string        `json:"mm"`
	NM      length.Length `json:"nm"`
	Shown   string        `json:"shown"`
	Given   string        `json:"given,omitempty"`
	Formula string        `json:"formula,omitempty"`
	From    []string      `json:"from,omitempty"`
	Reason  string        `json:"reason,omitempty"`
	Source  string        `json:"source,omitempty"`
}

type place struct {
	X string `json:"x"`
	Y string `json:"y"`
	Z string `json:"z"`
}

type leafRow struct {
	Label string `json:"label"`
	Track string `json:"track"`
	At    place  `json:"at"`
}

type partRow struct {
	Label    string  `json:"label"`
	Name     string  `json:"name"`
	Role     string  `json:"role"`
	Material string  `json:"material,omitempty"`
	From     place   `json:"from"`
	To       place   `json:"to"`
	Volume   float64 `json:"volume_mm3"`
	Mass     float64 `json:"mass_kg"`
}

type screwRow struct {
	For      string `json:"for"`
	Head     place  `json:"head"`
	Tip      place  `json:"tip"`
	Diameter string `json:"diameter"`
}

// JSON is the set's record, indented, ending in a newline.
func JSON(s door.Set) ([]byte, error) {
	r := record{Format: "stilewright resolved set", Version: Version, Job: s.Job, Drawn: s.Drawn, By: s.By, Revision: s.Revision, Units: s.Units.String()}
	style := length.Style{Unit: s.Units, Mark: true}
	for _, f := range s.Figures {
		r.Lengths = append(r.Lengths, lengthRow{f.Name, f.Value.Decimal(), f.Value, style.Format(f.Value), f.Given, f.Formula, f.From, f.Reason, f.Source})
	}
	for _, h := range s.Hung {
		r.Leaves = append(r.Leaves, leafRow{h.Label, h.Channel.String(), placeOf(h.At)})
	}
	for _, parts := range [][]door.Part{s.Leaf.Parts, s.Leaf.Hardware} {
		for _, p := range parts {
			least, most := p.Solid.Bounds()
			r.Parts = append(r.Parts, partRow{p.Label, p.Name, p.Role.String(), p.Material, placeOf(least), placeOf(most), rounded(p.Volume, 1e3), rounded(p.Mass, 1e6)})
		}
	}
	for _, c := range s.Leaf.Screws {
		r.Screws = append(r.Screws, screwRow{c.For, placeOf(c.Head), placeOf(c.Tip), c.Diameter.Decimal()})
	}
	data, err := json.MarshalIndent(r, "", "  ")
	return append(data, '\n'), err
}

func placeOf(v solid.Vec) place { return place{v.X.Decimal(), v.Y.Decimal(), v.Z.Decimal()} }

// rounded is v in whole parts of a unit, so that the last bits of a sum do not
// reach the file.
func rounded(v, parts float64) float64 { return math.Round(v*parts) / parts }
