package catalog

import (
	"strings"
	"testing"

	"stilewright/model/length"
)

// PS 20 Table 3; the green thicknesses under 2 from memory.
func TestDressed(t *testing.T) {
	for _, row := range []struct {
		board            string
		season           Season
		thickness, width length.Length
	}{
		{"2x6", Dry, in * 3 / 2, in * 11 / 2},
		{"2x6", Green, in * 25 / 16, in * 45 / 8},
		{"2 X 6", Dry, in * 3 / 2, in * 11 / 2},
		{`2" × 6"`, Dry, in * 3 / 2, in * 11 / 2},
		{"2 by 8", Dry, in * 3 / 2, in * 29 / 4},
		{"1x4", Dry, in * 3 / 4, in * 7 / 2},
		{"1x4", Green, in * 25 / 32, in * 57 / 16},
		{"5/4x6", Dry, in, in * 11 / 2},
		{"1 1/4 x 6", Dry, in, in * 11 / 2},
		{"1-1/4x6", Dry, in, in * 11 / 2},
		{"4x4", Dry, in * 7 / 2, in * 7 / 2},
		{"2 1/2x12", Green, in * 33 / 16, in * 23 / 2},
	} {
		board, err := ParseBoard(row.board)
		if err != nil {
			t.Errorf("ParseBoard(%q): %v", row.board, err)
			continue
		}
		got, err := Dressed(board, row.season)
		if err != nil || got != (Section{row.thickness, row.width}) {
			t.Errorf("%s %v = %v, %v; want %v x %v", row.board, row.season, got, err, row.thickness, row.width)
		}
	}
}

func TestBoardRefused(t *testing.T) {
	for board, says := range map[string]string{
		"":           "write it like 2x6",
		"2":          "write it like 2x6",
		"2x4x8":      "write it like 2x6",
		"2x13":       `no nominal width "13"; known are 2, 3`,
		"7x8":        `no nominal thickness "7"; known are 1, 5/4`,
		"1.1/4x6":    "no nominal thickness",
		"1/4 1x6":    "no nominal thickness",
		"4x2":        "write 2x4",
		"-2x6":       `no nominal thickness "-2"`,
		"two by ten": "no nominal thickness",
	} {
		_, err := ParseBoard(board)
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v, want %q", board, err, says)
		}
	}
	if _, err := Dressed(Nominal{}, Dry); err == nil {
		t.Error("the zero board was dressed")
	}
}

// Laws of PS 20: dressing takes away, green boards are larger than dry ones,
// the metric size is the dry one to the millimetre, sizes ascend.
func TestNominalSizes(t *testing.T) {
	for _, rows := range [][]NominalSize{NominalThicknesses(), NominalWidths()} {
		for i, row := range rows {
			if !(row.Dry < row.Green && row.Green < row.Nominal) {
				t.Errorf("%s: dry %v, green %v, nominal %v do not ascend", row.Name, row.Dry, row.Green, row.Nominal)
			}
			if row.Metric > 0 && (row.Metric-row.Dry).Abs() > mm/2 {
				t.Errorf("%s: %v in whole millimetres is not %v", row.Name, row.Dry, row.Metric)
			}
			if i > 0 && (row.Nominal <= rows[i-1].Nominal || row.Dry <= rows[i-1].Dry) {
				t.Errorf("%s does not exceed %s", row.Name, rows[i-1].Name)
			}
		}
	}
}

// S2S is rough less 3/16 in up to 6/4, less 1/4 in above (published rule).
func TestQuarters(t *testing.T) {
	for _, row := range Quarters() {
		off := in / 4
		if row.Rough <= 6*in/4 {
			off = 3 * in / 16
		}
		if row.Rough-row.S2S != off || row.S1S-row.S2S != in/16 {
			t.Errorf("%s: rough %v, S1S %v, S2S %v", row.Name, row.Rough, row.S1S, row.S2S)
		}
	}
	if got, err := HardwoodQuarter("5/4"); err != nil || got.S2S != in+in/16 {
		t.Errorf("5/4 hardwood = %v, %v", got.S2S, err)
	}
	if _, err := HardwoodQuarter("7/4"); err == nil {
		t.Error("7/4 found")
	}
}
