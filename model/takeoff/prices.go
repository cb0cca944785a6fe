package takeoff

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"stilewright/model/cutting"
	"stilewright/model/spec"
)

// Columns of a price file, in their order. The last may carry the coin:
// "price USD".
const (
	columnItem  = "item"
	columnUnit  = "unit"
	columnPack  = "pack"
	columnPrice = "price"
)

// LargestPrices is the most bytes of a price file that are read, 1 MiB.
const LargestPrices = 1 << 20

// largestPack is the most units one pack may hold.
const largestPack = 100_000

// Prices is a price file as read. The zero Prices has no price.
type Prices struct {
	Coin string // as in its head: "USD"; empty when it names none
	rows map[string]priced
}

// A priced is what one row says.
type priced struct {
	unit  string
	pack  float64 // units in one
	price cutting.Cost
	line  int
}

// PriceHead is the head of a price file with the coin, "" for none.
func PriceHead(coin string) []string {
	return []string{columnItem, columnUnit, columnPack, strings.TrimSpace(columnPrice + " " + coin)}
}

// of is the row of an item that has a price.
func (p Prices) of(item string) (priced, bool) {
	row, ok := p.rows[foldItem(item)]
	return row, ok
}

// foldItem makes names that differ by case and spaces alone the same.
func foldItem(item string) string { return strings.ToLower(strings.Join(strings.Fields(item), " ")) }

// ReadPrices reads a price file: CSV with the head "item,unit,pack,price", the
// last with the coin if wanted, and one row an item: its name as the shopping
// list writes it, the unit and how many of it one pack holds, both left empty
// for the list's own, and the price of one pack as 12 or 12.40. A row without a
// price is skipped, and so is one that starts with #. Every fault is a finding
// with line and column; file is only their name for it.
func ReadPrices(file string, text []byte) (Prices, []spec.Finding) {
	r := &priceReader{file: file, out: Prices{rows: map[string]priced{}}}
	switch {
	case len(text) > LargestPrices:
		r.find(0, 0, RulePriceFile, "the price file has %d bytes; at most %d are read", len(text), LargestPrices)
		return Prices{}, r.findings
	case !utf8.Valid(text):
		r.find(0, 0, RulePriceFile, "the price file is not UTF-8 text; save it as CSV in UTF-8")
		return Prices{}, r.findings
	}
	r.csv = csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff"))))
	r.csv.Comment, r.csv.FieldsPerRecord, r.csv.TrimLeadingSpace = '#', -1, true
	r.read()
	if len(r.findings) > 0 {
		return Prices{}, r.findings
	}
	return r.out, nil
}

// A priceReader carries a price file while it is read.
type priceReader struct {
	file     string
	csv      *csv.Reader
	out      Prices
	findings []spec.Finding
}

const mostPriceFaults = 100

func (r *priceReader) find(line, column int, rule, sentence string, values ...any) {
	if len(r.findings) < mostPriceFaults {
		r.findings = append(r.findings, spec.Finding{File: r.file, Line: line, Column: column, Path: spec.Whole, Rule: rule, Sentence: fmt.Sprintf(sentence, values...)})
	}
}

func (r *priceReader) read() {
	head := false
	for {
		fields, err := r.csv.Read()
		var fault *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			if !head {
				r.find(1, 1, RulePriceFile, "the price file is empty; its first row must be %s", strings.Join(PriceHead(""), ","))
			}
			return
		case errors.As(err, &fault):
			r.find(fault.Line, fault.Column, RulePriceFile, "not CSV: %v; put text with a comma or a quote in double quotes", fault.Err)
			return
		case err != nil:
			r.find(0, 0, RulePriceFile, "%v", err)
			return
		case !head:
			head = true
			if !r.head(fields) {
				return
			}
		default:
			r.row(fields)
		}
	}
}

// head reads the first row and tells whether it is the head of a price file.
func (r *priceReader) head(fields []string) bool {
	line, column := r.csv.FieldPos(0)
	word, coin, _ := strings.Cut(strings.TrimSpace(fields[len(fields)-1]), " ")
	fields[len(fields)-1] = word
	r.out.Coin = strings.TrimSpace(coin)
	if got, want := strings.ToLower(strings.Join(fields, ",")), strings.Join(PriceHead(""), ","); got != want {
		r.find(line, column, RulePriceFile, "the first row is “%.60s”; it must be “%s”, the last with the coin if wanted", got, want)
		return false
	}
	return true
}

// row reads one item.
func (r *priceReader) row(fields []string) {
	line, column := r.csv.FieldPos(0)
	if want := len(PriceHead("")); len(fields) != want {
		r.find(line, column, RulePriceRow, "the row has %d fields and the head %d; put text with a comma in double quotes", len(fields), want)
		return
	}
	item, pack, price := foldItem(fields[0]), strings.TrimSpace(fields[2]), strings.TrimSpace(fields[3])
	if price == "" {
		return
	}
	if item == "" {
		r.find(line, column, RulePriceRow, "the price %.20s has no item; name it as the shopping list does", price)
		return
	}
	row := priced{unit: strings.TrimSpace(fields[1]), line: line}
	ok := true
	if before, twice := r.out.rows[item]; twice {
		r.find(line, column, RulePriceTwice, "“%.60s” has a price in line %d and another here; keep one", strings.TrimSpace(fields[0]), before.line)
		ok = false
	}
	if pack != "" {
		var err error
		if row.pack, err = decimal(pack, 6); err != nil || row.pack <= 0 || row.pack > largestPack {
			l, c := r.csv.FieldPos(2)
			r.find(l, c, RulePack, "“%.20s” is no number of units in a pack; write one above 0 and up to %d, like 100 or 0.75", pack, largestPack)
			ok = false
		}
	}
	amount, err := decimal(price, 2)
	cents := cutting.Cost(amount*100 + 0.5)
	if l, c := r.csv.FieldPos(3); err != nil || amount < 0 || cents > cutting.DearestPrice {
		r.find(l, c, RulePrice, "“%.20s” is no price; write an amount from 0 to %d with a point and at most two decimals, like 12 or 12.40", price, cutting.DearestPrice/100)
		ok = false
	}
	if row.price = cents; ok {
		r.out.rows[item] = row
	}
}

var errNotDecimal = errors.New("not a decimal number")

// decimal reads a plain decimal number with a point and at most that many
// decimals; a minus is read, powers of ten and separators are not.
func decimal(text string, places int) (float64, error) {
	digits, minus := strings.CutPrefix(text, "-")
	whole, part, dot := strings.Cut(digits, ".")
	if whole == "" || len(whole) > 9 || len(part) > places || dot && part == "" {
		return 0, errNotDecimal
	}
	n, scale := 0.0, 1.0
	for _, d := range whole + part {
		if d < '0' || d > '9' {
			return 0, errNotDecimal
		}
		n = float64(n*10) + float64(d-'0')
	}
	for range part {
		scale *= 10
	}
	if n /= scale; minus {
		n = -n
	}
	return n, nil
}
