package list

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
)

// taken takes samples off, pooled.
func taken(t testing.TB, prices takeoff.Prices, names ...string) takeoff.Takeoff {
	t.Helper()
	var jobs []takeoff.Job
	for _, name := range names {
		model, findings, err := spec.ReadFile("../../samples/" + name + ".yaml")
		require.NoError(t, err)
		require.Empty(t, findings)
		set, _ := door.Resolve(model)
		jobs = append(jobs, takeoff.Job{Model: model, Set: set})
	}
	out, findings := takeoff.Of(jobs, prices)
	require.Empty(t, findings)
	return out
}

func sampleNames(t testing.TB) []string {
	t.Helper()
	paths, err := filepath.Glob("../../samples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for i, path := range paths {
		paths[i] = strings.TrimSuffix(filepath.Base(path), ".yaml")
	}
	return paths
}

// python runs a program of ours in Debian's Python and decodes the JSON it prints.
func python(t *testing.T, into any, program string, args ...string) {
	t.Helper()
	cmd := exec.Command("/usr/bin/python3", append([]string{"-c", program}, args...)...)
	cmd.Stderr = os.Stderr
	said, err := cmd.Output()
	require.NoError(t, err, "Debian's python3 with python3-openpyxl must be there")
	require.NoError(t, json.Unmarshal(said, into))
}

// expected is a table as a reader of its file must find it: texts, and numbers
// read from the figures of the trade.
func expected(t *testing.T, table Table) [][]any {
	t.Helper()
	var rows [][]any
	head := []any{}
	for i := range table.Columns {
		head = append(head, table.Head(i))
	}
	rows = append(rows, head)
	for n, cells := range table.Rows {
		row := []any{}
		for i, c := range cells {
			switch kind := table.Columns[i].Kind; {
			case c.None:
				row = append(row, nil)
			case kind == Text && c.Text == "":
				row = append(row, nil)
			case kind == Text:
				row = append(row, c.Text)
			case kind == Size:
				back, err := length.Parse(strings.TrimPrefix(table.Figure(n, i), "≈ "), table.Units)
				require.NoError(t, err)
				if !strings.HasPrefix(table.Figure(n, i), "≈") {
					require.Equal(t, c.Size, back)
				}
				value := c.Size.MM()
				if table.Units == length.Inches {
					value = c.Size.Inches()
				}
				row = append(row, value)
			default:
				row = append(row, c.Value)
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// same compares what was read with what was expected; numbers to a millionth,
// money and measures as rounded as they are written.
func same(t *testing.T, want, got [][]any, within float64, about string) {
	t.Helper()
	require.Len(t, got, len(want), about)
	for n := range want {
		require.Len(t, got[n], len(want[n]), "%s row %d", about, n+1)
		for i := range want[n] {
			if value, ok := want[n][i].(float64); ok {
				require.InDelta(t, value, got[n][i], within, "%s row %d column %d", about, n+1, i+1)
				continue
			}
			require.Equal(t, want[n][i], got[n][i], "%s row %d column %d", about, n+1, i+1)
		}
	}
}

// TestXLSXReadOutside: openpyxl (Debian's python3-openpyxl) reads every sheet of
// every sample's workbook back, sizes as numbers in fraction format.
func TestXLSXReadOutside(t *testing.T) {
	var paths []string
	for _, name := range sampleNames(t) {
		paths = append(paths, workbook(t, taken(t, takeoff.Prices{}, name)))
	}
	var books []map[string][][]any
	python(t, &books, `
import sys, json, openpyxl
books = []
for path in sys.argv[1:]:
    book = openpyxl.load_workbook(path)
    books.append({s.title: [[c.value for c in row] for row in s.iter_rows()] for s in book.worksheets})
    p, s = book.properties, book["Cut list"]
    books[-1]["properties"] = [[p.title, p.creator, str(p.created), s["F2"].number_format, s.freeze_panes]]
print(json.dumps(books))`, paths...)
	for n, name := range sampleNames(t) {
		tables := Tables(taken(t, takeoff.Prices{}, name))
		require.Len(t, books[n], len(tables)+1)
		for _, table := range tables {
			same(t, expected(t, table), books[n][sheetName(table.Title)], 1e-8, name+" "+table.Name)
		}
		format := "0.0##"
		if tables[0].Units == length.Inches {
			format = "# ??/??"
		}
		require.Equal(t, [][]any{{"a job", "me", "2026-03-14 00:00:00", format, "A2"}}, books[n]["properties"])
	}
}

func workbook(t *testing.T, taken takeoff.Takeoff) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "lists.xlsx")
	file, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, XLSX(file, Tables(taken), "a job", "me", "2026-03-14"))
	require.NoError(t, file.Close())
	return path
}

// TestCSVReadOutside: Python's csv module reads every list of every sample back.
func TestCSVReadOutside(t *testing.T) {
	var tables []Table
	var args []string
	for _, name := range sampleNames(t) {
		for _, table := range Tables(taken(t, takeoff.Prices{}, name)) {
			var out bytes.Buffer
			require.NoError(t, CSV(&out, table))
			path := filepath.Join(t.TempDir(), table.Name+".csv")
			require.NoError(t, os.WriteFile(path, out.Bytes(), 0o600))
			var kinds []Kind
			for _, c := range table.Columns {
				kinds = append(kinds, c.Kind)
			}
			said, err := json.Marshal(kinds)
			require.NoError(t, err)
			tables, args = append(tables, table), append(args, path, string(said))
		}
	}
	var read [][][]any
	python(t, &read, `
import sys, json, csv
def value(text, kind, head):
    if text == "":
        return None
    return text if kind == 0 or head else float(text)
def table(path, kinds):
    rows = list(csv.reader(open(path, encoding="utf-8", newline="")))
    return [[value(c, k, n == 0) for c, k in zip(row, json.loads(kinds), strict=True)] for n, row in enumerate(rows)]
print(json.dumps([table(*pair) for pair in zip(sys.argv[1::2], sys.argv[2::2])]))`, args...)
	require.Len(t, read, len(tables))
	const rounded = 0.005001 // measures are written to two decimals
	for n, table := range tables {
		same(t, expected(t, table), read[n], rounded, table.Name)
	}
}

// TestSameBytes: the same takeoff gives the same workbook at another second.
func TestSameBytes(t *testing.T) {
	write := func() []byte {
		var out bytes.Buffer
		require.NoError(t, XLSX(&out, Tables(taken(t, takeoff.Prices{}, "gallery-four", "studio-three")), "a job", "", ""))
		return out.Bytes()
	}
	first := write()
	const overZipsClock = 2100 * time.Millisecond // zip counts in steps of 2 s
	time.Sleep(overZipsClock)
	require.Equal(t, first, write())
}

// TestPriceFileReadsBack: the price file written for a job, filled in, is read,
// and prices every item.
func TestPriceFileReadsBack(t *testing.T) {
	for _, name := range sampleNames(t) {
		out := taken(t, takeoff.Prices{}, name)
		var file bytes.Buffer
		require.NoError(t, Prices(&file, out))
		rows, err := csv.NewReader(&file).ReadAll()
		require.NoError(t, err)
		names := map[string]bool{}
		for _, row := range rows[1:] {
			require.False(t, names[row[0]], "%s twice", row[0])
			names[row[0]] = true
		}
		for _, i := range slices.Concat(out.Buy, out.Offers) {
			require.True(t, names[i.Name], i.Name)
		}
		var filled bytes.Buffer
		w := csv.NewWriter(&filled)
		for i, row := range rows {
			if i > 0 {
				row[3] = "2.50"
			} else {
				row[3] = "price CHF"
			}
			require.NoError(t, w.Write(row))
		}
		w.Flush()
		prices, findings := takeoff.ReadPrices("prices.csv", filled.Bytes())
		require.Empty(t, findings)
		again := taken(t, prices, name)
		require.Equal(t, "CHF", again.Sum.Coin)
		for _, i := range again.Buy {
			require.True(t, i.Priced, i.Name)
		}
		var shopping bytes.Buffer
		require.NoError(t, CSV(&shopping, Shopping(again)))
		require.Contains(t, shopping.String(), "price CHF")
	}
}

// TestHarmless: text cannot become a formula in a spreadsheet.
func TestHarmless(t *testing.T) {
	for in, want := range map[string]string{"=1+1": "'=1+1", "@a": "'@a", "-x": "'-x", "+x": "'+x", "a=b": "a=b", "": ""} {
		require.Equal(t, want, harmless(in))
	}
}

func TestWorkbookNeedsTables(t *testing.T) {
	require.ErrorContains(t, XLSX(&bytes.Buffer{}, nil, "", "", ""), "0 tables")
}
