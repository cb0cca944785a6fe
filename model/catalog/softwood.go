package catalog

import (
	"fmt"
	"strings"

	"stilewright/model/length"
)

// A Season is how dry a softwood board was when it was dressed.
// The zero Season is Dry.
type Season int

// The seasons of PS 20.
const (
	Dry   Season = iota // 19 % moisture or less when dressed
	Green               // wetter than that
)

// String is the season as it stands in a model file.
func (s Season) String() string {
	if s == Green {
		return "green"
	}
	return "dry"
}

// ParseSeason reads "dry" or "green".
func ParseSeason(name string) (Season, error) {
	return find("season", name, []Season{Dry, Green}, func(s Season) []string { return []string{s.String()} })
}

// A NominalSize is one nominal thickness or width of softwood and what is left
// of it at the least after dressing.
type NominalSize struct {
	Name        string        // as sold, in inches: "2", "5/4"
	Also        []string      // other ways to write it
	Nominal     length.Length // what the name says
	Dry         length.Length // minimum dressed size, dry
	Green       length.Length // minimum dressed size, green
	Metric      length.Length // the dry size in whole millimetres as published; optional
	DrySource   Source
	GreenSource Source
}

func ps20(c Confirmation, note string) Source {
	return Source{Work: "American Softwood Lumber Standard PS 20", Edition: "PS 20-20", Place: "Table 3, minimum dressed sizes", Confirmed: c, Note: note}
}

// The three ways the rows of PS 20 were confirmed.
func ps20Read() Source {
	return ps20(ReadOnce, "same values in Tenn. Comp. R. & Regs. 0080-07-07-.06 Table 4")
}

func ps20List() Source { return ps20(ReadOnce, "read in a lumber yard's table of PS 20 sizes") }

func ps20Memory() Source { return ps20(FromMemory, "") }

// NominalThicknesses lists the nominal thicknesses of PS 20 boards and dimension.
func NominalThicknesses() []NominalSize {
	read, list, memory := ps20Read(), ps20List(), ps20Memory()
	return []NominalSize{
		{"1", []string{"4/4"}, in, 3 * in / 4, 25 * in / 32, 19 * mm, list, memory},
		{"5/4", []string{"1 1/4", "1.25"}, in + in/4, in, in + in/32, 25 * mm, list, memory},
		{"6/4", []string{"1 1/2", "1.5"}, in + in/2, in + in/4, in + 9*in/32, 32 * mm, list, memory},
		{"2", []string{"8/4"}, 2 * in, in + in/2, in + 9*in/16, 38 * mm, read, read},
		{"2 1/2", []string{"2.5"}, 2*in + in/2, 2 * in, 2*in + in/16, 0, read, read},
		{"3", nil, 3 * in, 2*in + in/2, 2*in + 9*in/16, 64 * mm, read, read},
		{"4", nil, 4 * in, 3*in + in/2, 3*in + 9*in/16, 89 * mm, read, read},
	}
}

// NominalWidths lists the nominal widths of PS 20 boards and dimension.
func NominalWidths() []NominalSize {
	read, memory := ps20Read(), ps20Memory()
	seven := ps20(FromMemory, "one lumber yard's table prints 6 1/4")
	return []NominalSize{
		{"2", nil, 2 * in, in + in/2, in + 9*in/16, 38 * mm, read, read},
		{"3", nil, 3 * in, 2*in + in/2, 2*in + 9*in/16, 64 * mm, read, read},
		{"4", nil, 4 * in, 3*in + in/2, 3*in + 9*in/16, 89 * mm, read, read},
		{"5", nil, 5 * in, 4*in + in/2, 4*in + 5*in/8, 114 * mm, read, read},
		{"6", nil, 6 * in, 5*in + in/2, 5*in + 5*in/8, 140 * mm, read, read},
		{"7", nil, 7 * in, 6*in + in/2, 6*in + 5*in/8, 0, seven, memory},
		{"8", nil, 8 * in, 7*in + in/4, 7*in + in/2, 184 * mm, read, read},
		{"9", nil, 9 * in, 8*in + in/4, 8*in + in/2, 0, memory, memory},
		{"10", nil, 10 * in, 9*in + in/4, 9*in + in/2, 235 * mm, read, read},
		{"11", nil, 11 * in, 10*in + in/4, 10*in + in/2, 0, memory, memory},
		{"12", nil, 12 * in, 11*in + in/4, 11*in + in/2, 286 * mm, read, read},
	}
}

// A Nominal is a softwood board by the size it is sold under. The zero Nominal
// is no board; Dressed refuses it.
type Nominal struct{ Thickness, Width NominalSize }

// String is the board as written in a model: "2x6", "5/4x6".
func (n Nominal) String() string { return n.Thickness.Name + "x" + n.Width.Name }

// ParseBoard reads a nominal size: thickness, an x, width, in inches, each as
// it is sold: "2x6", "5/4 x 6", "1 1/4 by 4". Inch marks are ignored. It errs
// when one of the two is no nominal size, with the nearest or all that are.
func ParseBoard(text string) (Nominal, error) {
	parts := boardParts(text)
	if len(parts) != 2 {
		return Nominal{}, fmt.Errorf("board %s is not thickness x width: write it like 2x6 or 5/4x6", quoted(text))
	}
	thickness, err := nominal("nominal thickness", parts[0], NominalThicknesses())
	if err != nil {
		return Nominal{}, fmt.Errorf("board %s: %w", quoted(text), err)
	}
	width, err := nominal("nominal width", parts[1], NominalWidths())
	if err != nil {
		return Nominal{}, fmt.Errorf("board %s: %w", quoted(text), err)
	}
	if width.Nominal < thickness.Nominal {
		return Nominal{}, fmt.Errorf("board %s is %s in thick and only %s in wide: thickness comes first, write %sx%s",
			quoted(text), thickness.Name, width.Name, width.Name, thickness.Name)
	}
	return Nominal{thickness, width}, nil
}

func boardParts(text string) []string {
	text = strings.ToLower(text)
	for _, mark := range []string{"\"", "″", "”", "inches", "inch", "in."} {
		text = strings.ReplaceAll(text, mark, " ")
	}
	for _, times := range []string{"×", "by", "*"} {
		text = strings.ReplaceAll(text, times, "x")
	}
	return strings.Split(text, "x")
}

// nominal is find for sizes: it keeps the order of the words, for "2 1/2" is
// not "1/2 2", and guesses nothing, for 7 is not a slip of the pen for 8.
func nominal(table, name string, rows []NominalSize) (NominalSize, error) {
	hyphened := func(s string) string { return strings.Join(strings.Fields(s), "-") }
	want := hyphened(name)
	failed := &UnknownName{Table: table, Name: strings.TrimSpace(name)}
	for _, row := range rows {
		for _, known := range append([]string{row.Name}, row.Also...) {
			if hyphened(known) == want {
				return row, nil
			}
		}
		failed.Known = append(failed.Known, row.Name)
	}
	return NominalSize{}, failed
}

// A Section is a board's thickness and width, across the grain.
type Section struct{ Thickness, Width length.Length }

// Dressed is the least size PS 20 lets a board of the nominal size have when it
// was dressed in that season. It errs for the zero Nominal.
func Dressed(board Nominal, season Season) (Section, error) {
	if board.Thickness.Nominal == 0 || board.Width.Nominal == 0 {
		return Section{}, fmt.Errorf("no board given: name one like 2x6")
	}
	if season == Green {
		return Section{board.Thickness.Green, board.Width.Green}, nil
	}
	return Section{board.Thickness.Dry, board.Width.Dry}, nil
}
