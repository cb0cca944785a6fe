package explain

import (
	"encoding/json"

	"stilewright/model/door"
	"stilewright/model/length"
)

// Version of the JSON. New fields may be added; none changes its meaning within
// a version.
const Version = 1

type answer struct {
	Format  string   `json:"format"`
	Version int      `json:"version"`
	Units   string   `json:"units"`
	Asked   []string `json:"asked"` // names; empty: all
	Lengths []row    `json:"lengths"`
}

type row struct {
	Name    string        `json:"name"`
	Group   string        `json:"group"`
	MM      string        `json:"mm"`
	NM      length.Length `json:"nm"`
	Shown   string        `json:"shown"`
	Given   string        `json:"given,omitempty"`
	Formula string        `json:"formula,omitempty"`
	From    []string      `json:"from,omitempty"`
	Reason  string        `json:"reason,omitempty"`
	Source  string        `json:"source,omitempty"`
}

// JSON is the roots and all they are taken from, each before what takes it;
// without roots, every figure. It ends in a newline.
func (b Book) JSON(roots []door.Figure) ([]byte, error) {
	a := answer{Format: "stilewright explained lengths", Version: Version, Units: b.style.Unit.String(), Asked: []string{}, Lengths: []row{}}
	figures := b.figures
	if len(roots) > 0 {
		figures = b.Behind(roots)
	}
	for _, f := range roots {
		a.Asked = append(a.Asked, f.Name)
	}
	for _, f := range figures {
		a.Lengths = append(a.Lengths, row{f.Name, Group(f.Name), f.Value.Decimal(), f.Value, b.style.Format(f.Value), f.Given, f.Formula, f.From, f.Reason, f.Source})
	}
	data, err := json.MarshalIndent(a, "", "  ")
	return append(data, '\n'), err
}
