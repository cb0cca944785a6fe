package list

import (
	"fmt"
	"io"

	"github.com/xuri/excelize/v2"

	"stilewright/model/length"
)

// Number formats of the columns. Fractions are shown to the 64th.
const (
	formatInch    = "# ??/??"
	formatMM      = "0.0##"
	formatMeasure = "0.00"
	formatMoney   = "#,##0.00"
)

// noDay is the day a workbook is dated when the model names none: a file must
// have one, and no clock may be asked.
const noDay = "2000-01-01"

// XLSX writes tables as one workbook, a sheet each. day is YYYY-MM-DD, or empty;
// title and author stand in its properties.
func XLSX(w io.Writer, tables []Table, title, author, day string) error {
	if len(tables) == 0 {
		return fmt.Errorf("workbook: 0 tables; a workbook needs at least 1")
	}
	b := book{excelize.NewFile(), map[string]int{}}
	defer b.Close()
	for i, t := range tables {
		name := sheetName(t.Title)
		var err error
		if i == 0 {
			err = b.SetSheetName("Sheet1", name)
		} else {
			_, err = b.NewSheet(name)
		}
		if err == nil {
			err = b.table(name, t)
		}
		if err != nil {
			return fmt.Errorf("workbook, %s: %w", t.Title, err)
		}
	}
	if day == "" {
		day = noDay
	}
	stamp := day + "T00:00:00Z"
	if err := b.SetDocProps(&excelize.DocProperties{Title: title, Creator: author, LastModifiedBy: author, Created: stamp, Modified: stamp}); err != nil {
		return fmt.Errorf("workbook: %w", err)
	}
	if _, err := b.WriteTo(w); err != nil {
		return fmt.Errorf("workbook: %w", err)
	}
	return nil
}

// sheetName is a title cut to what a workbook allows, 31 characters.
func sheetName(title string) string {
	const most = 31
	if runes := []rune(title); len(runes) > most {
		return string(runes[:most])
	}
	return title
}

// A book is a workbook with the styles made so far, by number format.
type book struct {
	*excelize.File
	styles map[string]int
}

// style is a cell's style, "" for text.
func (b book) style(format string, bold bool) (int, error) {
	key := fmt.Sprint(format, bold)
	if id, ok := b.styles[key]; ok {
		return id, nil
	}
	s := &excelize.Style{Font: &excelize.Font{Bold: bold}, Alignment: &excelize.Alignment{Vertical: "top", WrapText: format == ""}}
	if format != "" {
		s.CustomNumFmt = &format
	}
	id, err := b.NewStyle(s)
	b.styles[key] = id
	return id, err
}

// formatOf is a column's number format.
func (t Table) formatOf(column int) string {
	switch t.Columns[column].Kind {
	case Count:
		return "0"
	case Size:
		if t.Units == length.Inches {
			return formatInch
		}
		return formatMM
	case Measure:
		return formatMeasure
	case Money:
		return formatMoney
	}
	return ""
}

// table fills a sheet: a bold head that stays in view, and the rows.
func (b book) table(name string, t Table) error {
	for i := range t.Columns {
		if err := b.column(name, t, i); err != nil {
			return err
		}
	}
	for n := range t.Rows {
		for i := range t.Columns {
			if err := b.cell(name, t, n, i); err != nil {
				return err
			}
		}
	}
	landscape, fit := "landscape", 1
	tall, yes := 0, true
	if err := b.SetPageLayout(name, &excelize.PageLayoutOptions{Orientation: &landscape, FitToWidth: &fit, FitToHeight: &tall}); err != nil {
		return err
	}
	if err := b.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &yes}); err != nil {
		return err
	}
	return b.SetPanes(name, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"})
}

// column writes a column's head and sets its width by its longest entry.
func (b book) column(name string, t Table, i int) error {
	letter, err := excelize.ColumnNumberToName(i + 1)
	if err != nil {
		return err
	}
	const room, least, most = 2, 6, 60 // characters
	wide := len([]rune(t.Head(i)))
	for n := range t.Rows {
		wide = max(wide, len([]rune(t.Figure(n, i))))
	}
	if err := b.SetColWidth(name, letter, letter, float64(min(most, max(least, wide+room)))); err != nil {
		return err
	}
	bold, err := b.style("", true)
	if err != nil {
		return err
	}
	if err := b.SetCellStr(name, letter+"1", t.Head(i)); err != nil {
		return err
	}
	return b.SetCellStyle(name, letter+"1", letter+"1", bold)
}

// cell writes one entry.
func (b book) cell(name string, t Table, n, i int) error {
	at, err := excelize.CoordinatesToCellName(i+1, n+2)
	if err != nil {
		return err
	}
	c := t.Rows[n][i]
	switch kind := t.Columns[i].Kind; {
	case c.None, kind == Text && c.Text == "":
		return nil
	case kind == Text:
		err = b.SetCellStr(name, at, c.Text)
	case kind == Count:
		err = b.SetCellInt(name, at, int64(c.Value))
	default:
		const places = 9
		value, _ := t.number(n, i)
		err = b.SetCellFloat(name, at, value, places, 64)
	}
	if err != nil {
		return err
	}
	style, err := b.style(t.formatOf(i), false)
	if err != nil {
		return err
	}
	return b.SetCellStyle(name, at, at, style)
}
