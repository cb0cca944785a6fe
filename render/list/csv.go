package list

import (
	"encoding/csv"
	"io"
	"slices"
	"strconv"
	"strings"

	"stilewright/model/takeoff"
)

// CSV writes a table as CSV: the head, then the rows, in UTF-8 with line feeds.
func CSV(w io.Writer, t Table) error {
	out := csv.NewWriter(w)
	row := make([]string, len(t.Columns))
	for i := range t.Columns {
		row[i] = t.Head(i)
	}
	if err := out.Write(row); err != nil {
		return err
	}
	for n, cells := range t.Rows {
		for i, c := range cells {
			switch {
			case c.None:
				row[i] = ""
			case t.Columns[i].Kind == Text:
				row[i] = harmless(c.Text)
			default:
				_, row[i] = t.number(n, i)
			}
		}
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// harmless keeps a spreadsheet from taking text for a formula.
func harmless(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

// Prices writes a price file for the takeoff: every board and sheet to be had,
// bought or not, and every other item, with the price it has or none, to be
// filled in.
func Prices(w io.Writer, t takeoff.Takeoff) error {
	out := csv.NewWriter(w)
	if err := out.Write(takeoff.PriceHead(t.Sum.Coin)); err != nil {
		return err
	}
	listed := map[string]bool{}
	for _, i := range slices.Concat(t.Offers, t.Buy) {
		if listed[i.Name] {
			continue
		}
		listed[i.Name] = true
		price := ""
		if i.Priced {
			price = takeoff.Money(i.Price)
		}
		const decimals = 6
		pack := strconv.FormatFloat(i.Pack, 'f', decimals, 64)
		pack = strings.TrimSuffix(strings.TrimRight(pack, "0"), ".")
		if err := out.Write([]string{i.Name, i.Unit, pack, price}); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
