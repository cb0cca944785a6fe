package catalog

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"stilewright/model/length"
)

// tables is every listing of the package by the name of its function;
// TestEveryListingIsWalked holds it complete.
func tables() map[string]any {
	return map[string]any{
		"NominalThicknesses": NominalThicknesses(), "NominalWidths": NominalWidths(), "Quarters": Quarters(),
		"Woods": Woods(), "Sheets": Sheets(), "Humidities": Humidities(), "Tracks": Tracks(),
		"WoodScrews": WoodScrews(), "GravityGroups": GravityGroups(), "PocketScrews": PocketScrews(),
		"RouterSpeeds": RouterSpeeds(), "Papers": Papers(), "ISOScales": ISOScales(), "InchScales": InchScales(),
		"LinearTolerances": LinearTolerances(), "PlateCoefficients": PlateCoefficients(),
		"GlazingRules": GlazingRules(), "SheetThicknesses": SheetThicknesses(), "Practices": Practices(),
		"Dowels": Dowels(), "MortiseWidths": MortiseWidths(),
		"PocketPractice": []PocketHole{PocketPractice()},
		"Supplies":       Supplies(), "StockLengths": StockLengths(), "SheetSizes": SheetSizes(),
		"TrackLengths": TrackLengths(), "Metals": Metals(), "LabelStocks": LabelStocks(),
		"Airs": Airs(),
		"sources": []sourced{{MoistureSource()}, {WithdrawalSource()}, {UltimateWithdrawalSource()},
			{PenetrationSource()}, {ReductionSource()}, {StiffenedSource()}},
	}
}

// sourced is a row that is nothing but a source: a formula's.
type sourced struct{ Source Source }

// optional are the fields whose 0 means "not known", as their comments say.
var optional = []string{
	"NominalSize.Metric", "Wood.ShrinkRadial", "Wood.ShrinkTangential", "Wood.MOR", "Wood.MOE",
	"SheetMaterial.Movement", "SheetMaterial.Bending", "PocketScrew.Other", "PlateCoefficient.ShortOverLong",
	"LinearTolerance.Fine", "LinearTolerance.Very", "GlazingRule.Area", "GlazingRule.Size",
	"Practice.Size", "Practice.Number",
	"Supply.Spare", "Supply.Coverage", "Supply.Coats", "Supply.Mass", "LabelStock.Left",
	"JoinerySize.Unit", // the zero unit is the millimetre
}

func TestEveryRow(t *testing.T) {
	for table, list := range tables() {
		rows := reflect.ValueOf(list)
		if rows.Len() == 0 {
			t.Errorf("%s is empty", table)
		}
		taken := map[string]string{}
		for i := range rows.Len() {
			for _, fault := range faults(rows.Index(i)) {
				t.Errorf("%s row %d: %s", table, i, fault)
			}
			for _, name := range namesOf(rows.Index(i)) {
				if other, ok := taken[fold(name)]; ok {
					t.Errorf("%s: %q and %q are the same name", table, name, other)
				}
				taken[fold(name)] = name
			}
		}
	}
}

// faults are what is wrong with one row.
func faults(row reflect.Value) []string {
	var found []string
	sources := 0
	for i := range row.NumField() {
		name, value := row.Type().Field(i).Name, row.Field(i)
		may := slices.Contains(optional, row.Type().Name()+"."+name)
		switch v := value.Interface().(type) {
		case Source:
			sources++
			if fault := sourceFault(v); fault != "" {
				found = append(found, name+": "+fault)
			}
		case string:
			if v == "" && name == "Name" {
				found = append(found, "has no name")
			}
		case length.Length, float64, int, int64, Class:
			if !positive(value, may) {
				found = append(found, name+" is not positive")
			}
		}
	}
	if sources == 0 {
		found = append(found, "has no source")
	}
	return found
}

func positive(value reflect.Value, zeroToo bool) bool {
	n := 0.0
	if value.CanInt() {
		n = float64(value.Int())
	} else {
		n = value.Float()
	}
	return !math.IsNaN(n) && !math.IsInf(n, 0) && (n > 0 || zeroToo && n == 0)
}

func sourceFault(s Source) string {
	switch {
	case s.Confirmed < ReadOnce || s.Confirmed > CommonPractice:
		return "does not say how far it is confirmed"
	case s.Work == "":
		return "has no work"
	case (s.Work == wordsNoSource) != (s.Confirmed == CommonPractice):
		return "is common practice with a source, or the other way round"
	case s.Confirmed != CommonPractice && (s.Edition == "" || s.Place == ""):
		return "has no edition or no place"
	case s.Confirmed == Derived && s.Note == "":
		return "is derived and does not say how"
	}
	return ""
}

func namesOf(row reflect.Value) []string {
	var names []string
	if name := row.FieldByName("Name"); name.IsValid() {
		names = append(names, name.String())
	}
	if also := row.FieldByName("Also"); also.IsValid() {
		names = append(names, also.Interface().([]string)...)
	}
	return names
}

// TestFaultsAreFound shows the walk fails on each fault it is there for.
func TestFaultsAreFound(t *testing.T) {
	good := Quarters()[0]
	for fault, spoil := range map[string]func(*Quarter){
		"is not positive":    func(q *Quarter) { q.S2S = 0 },
		"has no name":        func(q *Quarter) { q.Name = "" },
		"how far it is conf": func(q *Quarter) { q.Confirmed = 0 },
		"has no work":        func(q *Quarter) { q.Work = "" },
		"no edition or no":   func(q *Quarter) { q.Edition = "" },
		"does not say how":   func(q *Quarter) { q.Confirmed, q.Note = Derived, "" },
		"the other way":      func(q *Quarter) { q.Confirmed = CommonPractice },
	} {
		row := good
		spoil(&row)
		if got := faults(reflect.ValueOf(row)); len(got) != 1 || !strings.Contains(got[0], fault) {
			t.Errorf("spoilt so that it %q: found %q", fault, got)
		}
	}
	if got := faults(reflect.ValueOf(struct{ Size length.Length }{in})); len(got) != 1 {
		t.Errorf("a row without a source: found %q", got)
	}
}

// TestEveryListingIsWalked holds tables complete: every exported function that
// takes nothing and gives rows must be in it.
func TestEveryListingIsWalked(t *testing.T) {
	walked := tables()
	listings := 0
	for name, fn := range exportedFunctions(t) {
		list, isList := fn.Type.Results.List[0].Type.(*ast.ArrayType)
		if fn.Type.Params.NumFields() > 0 || !isList || list.Len != nil {
			continue
		}
		listings++
		if walked[name] == nil {
			t.Errorf("%s is not walked", name)
		}
	}
	if listings < 15 {
		t.Errorf("found only %d listings: the search is broken", listings)
	}
}

// exportedFunctions are the package's exported functions that return something.
func exportedFunctions(t *testing.T) map[string]*ast.FuncDecl {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]*ast.FuncDecl{}
	for _, entry := range entries {
		if !strings.HasSuffix(entry.Name(), ".go") || strings.HasSuffix(entry.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), entry.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, decl := range file.Decls {
			fn, ok := decl.(*ast.FuncDecl)
			if ok && fn.Recv == nil && fn.Name.IsExported() && fn.Type.Results != nil {
				found[fn.Name.Name] = fn
			}
		}
	}
	return found
}

func TestSourceInWords(t *testing.T) {
	for want, source := range map[string]Source{
		"common practice, no source":                                                  practice(""),
		"common practice, no source: half an inch":                                    practice("half an inch"),
		"Wood Handbook, FPL-GTR-190, 2010, ch. 4; from memory":                        handbook("ch. 4", FromMemory, ""),
		"Wood Handbook, FPL-GTR-190, 2010, ch. 4; read in one published text; a note": handbook("ch. 4", ReadOnce, "a note"),
		"W, 1, T; not confirmed":                                                      {Work: "W", Edition: "1", Place: "T"},
	} {
		if got := source.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
