package catalog

import (
	"testing"

	"stilewright/model/length"
)

// ISO 216: each size is the next larger one halved, cut to whole millimetres.
func TestISOPapersHalve(t *testing.T) {
	rows := isoPapers()
	for i, small := range rows[:len(rows)-1] {
		large := rows[i+1]
		if small.Long != large.Short || small.Short != large.Long.Half().DownTo(mm) {
			t.Errorf("%s is not half of %s", small.Name, large.Name)
		}
	}
	// Drawing spaces of ISO 5457, from memory: A3 277 x 390, A1 574 x 811.
	for name, want := range map[string][2]length.Length{"A3": {390 * mm, 277 * mm}, "A1": {811 * mm, 574 * mm}} {
		p, _ := PaperSize(name)
		w, h := p.Landscape()
		if w-p.Binding-p.Sides != want[0] || h-2*p.Ends != want[1] {
			t.Errorf("%s: drawing space is not %v", name, want)
		}
	}
}

func TestPapers(t *testing.T) {
	for _, p := range Papers() {
		if p.Short >= p.Long {
			t.Errorf("%s: %s x %s mm", p.Name, p.Short.Decimal(), p.Long.Decimal())
		}
		w, h := p.Portrait()
		if w != p.Short || h != p.Long {
			t.Errorf("%s lies down", p.Name)
		}
	}
	if got, err := PaperSize("ANSI D"); err != nil || got.Short != 22*in || got.Long != 34*in {
		t.Errorf("ANSI D: %v, %v", got, err)
	}
}

func TestScales(t *testing.T) {
	for _, rows := range [][]Scale{ISOScales(), InchScales()} {
		for i, s := range rows {
			if i > 0 && s.Paper*rows[i-1].Real >= rows[i-1].Paper*s.Real {
				t.Errorf("%s is not smaller than %s", s.Name, rows[i-1].Name)
			}
		}
	}
	for name, want := range map[string]length.Length{
		"1:5": 400 * mm, "1:1": 2 * length.Metre, "10:1": 20 * length.Metre, `1" = 1'-0"`: 2 * length.Metre / 12, `1 1/2" = 1'-0"`: 250 * mm,
	} {
		s, err := ScaleNamed(name)
		if got := s.OnPaper(2 * length.Metre); err != nil || (got-want).Abs() > 1 {
			t.Errorf("2 m at %s is %s mm, %v; want %s", name, got.Decimal(), err, want.Decimal())
		}
	}
	foot, _ := ScaleNamed(`3/4" = 1'-0"`)
	if foot.OnPaper(length.Foot) != 3*in/4 || foot.OnPaper(-length.Foot) != -3*in/4 {
		t.Error("a foot at 3/4 in to the foot")
	}
}

// ISO 2768-1:1989 Table 1, class c: read in two published copies.
func TestShopTolerance(t *testing.T) {
	for size, want := range map[length.Length]length.Length{
		mm / 2: mm / 5, 3 * mm: mm / 5, 3*mm + 1: 3 * mm / 10, 30 * mm: mm / 2, 100 * mm: 4 * mm / 5, 762 * mm: 2 * mm, 2000 * mm: 3 * mm, 2032 * mm: 4 * mm, 4000 * mm: 4 * mm,
	} {
		if got, err := ShopTolerance(size); err != nil || got != want {
			t.Errorf("%s mm: %s, %v; want %s", size.Decimal(), got.Decimal(), err, want.Decimal())
		}
	}
	for _, size := range []length.Length{0, -mm, mm/2 - 1, 4000*mm + 1} {
		if got, err := ShopTolerance(size); err == nil {
			t.Errorf("%s mm: %s", size.Decimal(), got.Decimal())
		}
	}
	rows := LinearTolerances()
	for i, row := range rows {
		if i > 0 && (row.Over != rows[i-1].UpTo || row.Coarse < rows[i-1].Coarse) {
			t.Errorf("span %d leaves a hole, or shrinks", i)
		}
		if row.Fine >= row.Medium || row.Medium >= row.Coarse || row.Very > 0 && row.Coarse >= row.Very {
			t.Errorf("span %d: classes do not ascend", i)
		}
	}
}

// 16 CFR 1201.2: 9 ft². Worked: a panel 23 3/4 x 71 3/4 in is category II, two
// of 23 3/4 x 34 1/2 in are I.
func TestImpactCategory(t *testing.T) {
	square := func(w, h float64) float64 { return w * h * 25.4 * 25.4 }
	for _, row := range []struct {
		area float64
		want int
	}{{categoryArea, 1}, {categoryArea + 1, 2}, {square(23.75, 71.75), 2}, {square(23.75, 34.5), 1}} {
		if got := ImpactCategory(row.area); got != row.want {
			t.Errorf("%g mm²: category %d, want %d", row.area, got, row.want)
		}
	}
	near(t, "9 ft² in mm²", categoryArea, 836_127.36, 1e-6)
	if rule, err := Glazing("us-category-area"); err != nil || rule.Area != categoryArea {
		t.Errorf("%v, %v", rule.Area, err)
	}
}

// Every rule turns on something it states.
func TestPractices(t *testing.T) {
	for _, p := range Practices() {
		if p.Says == "" || (p.Size > 0) == (p.Number > 0) {
			t.Errorf("%s: says %q, size %v, number %g", p.Name, p.Says, p.Size, p.Number)
		}
	}
	if got, err := Rule("intermediate rail"); err != nil || got.Size != 60*in {
		t.Errorf("%v, %v", got.Size, err)
	}
}
