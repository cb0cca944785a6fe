package list

import (
	"fmt"
	"strconv"
	"strings"

	"stilewright/model/length"
	"stilewright/model/takeoff"
)

// A Kind is what a column holds.
type Kind int

// The kinds of column.
const (
	Text    Kind = iota
	Count        // whole numbers
	Size         // lengths, in the table's unit
	Measure      // decimal numbers
	Money
)

// A Column is a column's head and kind.
type Column struct {
	Head string
	Kind Kind
}

// A Cell is one entry. Its column tells which field counts; None has none.
type Cell struct {
	Text  string
	Size  length.Length
	Value float64 // counts, measures; money in whole coins
	None  bool
}

// A Table is a list: a head and rows as long as it.
type Table struct {
	Name    string // file name stem, ASCII: "cut-list"
	Title   string
	Units   length.Unit
	Columns []Column
	Rows    [][]Cell
}

func text(s string) Cell         { return Cell{Text: s} }
func size(l length.Length) Cell  { return Cell{Size: l} }
func count(n int) Cell           { return Cell{Value: float64(n)} }
func measure(v float64) Cell     { return Cell{Value: v} }
func none() Cell                 { return Cell{None: true} }
func join(parts []string) string { return strings.Join(parts, "; ") }

// money is an amount, or nothing where it is not known.
func money(known bool, cents int64) Cell {
	if !known {
		return none()
	}
	const inCoin = 100
	return Cell{Value: float64(cents) / inCoin}
}

// unit is the word of a table's unit in a head.
func unit(u length.Unit) string {
	if u == length.Inches {
		return "in"
	}
	return "mm"
}

// Head is a column's head with the unit of its sizes: "length (in)".
func (t Table) Head(i int) string {
	if c := t.Columns[i]; c.Kind != Size {
		return c.Head
	}
	return t.Columns[i].Head + " (" + unit(t.Units) + ")"
}

// Figure is a cell as it is read on paper: sizes as figures of the trade,
// measures to two decimals.
func (t Table) Figure(row, column int) string {
	c := t.Rows[row][column]
	if c.None {
		return ""
	}
	switch t.Columns[column].Kind {
	case Size:
		return length.Style{Unit: t.Units}.Format(c.Size)
	case Count:
		return strconv.Itoa(int(c.Value))
	case Measure:
		return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", c.Value), "0"), ".")
	case Money:
		return fmt.Sprintf("%.2f", c.Value)
	}
	return c.Text
}

// number is a cell of a table of numbers as CSV and XLSX hold it.
func (t Table) number(row, column int) (value float64, text string) {
	c := t.Rows[row][column]
	switch kind := t.Columns[column].Kind; {
	case kind == Size && t.Units == length.Inches:
		const exact = 6 // decimals that hold every 64th
		text = strings.TrimPrefix(length.FormatDecimalInch(c.Size, exact), "≈ ")
		return c.Size.Inches(), text
	case kind == Size:
		return c.Size.MM(), c.Size.Decimal()
	}
	return c.Value, t.Figure(row, column)
}

// Tables are the lists of a takeoff, in the order they are used: what to buy,
// what to cut, and how. Lists without rows are left out.
func Tables(t takeoff.Takeoff) []Table {
	var kept []Table
	for _, table := range []Table{Shopping(t), CutList(t), Boards(t), Sheets(t), Film(t), Proofs(t), Assumed(t)} {
		if len(table.Rows) > 0 {
			kept = append(kept, table)
		}
	}
	return kept
}

// jobColumn is the column of the job's letter, where several are pooled.
func jobColumn(t takeoff.Takeoff) []Column {
	if len(t.Jobs) < 2 {
		return nil
	}
	return []Column{{"set", Text}}
}

// jobCell is the cell for it.
func jobCell(t takeoff.Takeoff, job int) []Cell {
	if len(t.Jobs) < 2 {
		return nil
	}
	return []Cell{text(t.Letter(job))}
}
