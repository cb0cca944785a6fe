package golden

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/render/dimension"
	"stilewright/render/drawing"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// frameOf is the sheet's border: the one outline in the heaviest line.
func frameOf(s sheet.Sheet) (box plane.Box, err error) {
	n := 0
	for _, m := range s.Marks {
		if stroke, ok := m.(sheet.Stroke); ok && stroke.Weight == sheet.Frame {
			box, n = stroke.Path.Bounds(), n+1
		}
	}
	if n != 1 {
		return box, fmt.Errorf("%s has %d borders, want 1", s.Name, n)
	}
	return box, nil
}

// collisions are what makes a sheet hard to read.
func collisions(s sheet.Sheet) ([]string, error) {
	frame, err := frameOf(s)
	if err != nil {
		return nil, err
	}
	return dimension.Collisions(s.Marks, frame), nil
}

// No lettering lies on lettering, on a line or outside of the frame
// (acceptance: shop drawing sheet).
func TestSamplesReadWell(t *testing.T) {
	for _, s := range samples(t) {
		for _, page := range s.sheets {
			require.NoError(t, page.Check())
			found, err := collisions(page)
			require.NoError(t, err)
			for _, c := range found {
				t.Errorf("%s %s: %s", s.name, page.Name, c)
			}
		}
	}
}

func TestCollisionsBite(t *testing.T) {
	page := samples(t)[0].sheets[0]
	found, err := collisions(page)
	require.NoError(t, err)
	for _, add := range []sheet.Text{
		{Layer: sheet.Notes, Height: 3 * length.Millimetre, String: "outside"},
		firstText(t, page),
	} {
		worse := page
		worse.Marks = append(slices.Clone(page.Marks), add)
		more, err := collisions(worse)
		require.NoError(t, err)
		require.Greater(t, len(more), len(found))
	}
	page.Marks = nil
	_, err = collisions(page)
	require.ErrorContains(t, err, "0 borders")
}

func firstText(t *testing.T, s sheet.Sheet) sheet.Text {
	for _, m := range s.Marks {
		if text, ok := m.(sheet.Text); ok {
			return text
		}
	}
	t.Fatal("no text on " + s.Name)
	return sheet.Text{}
}

// finest is what figures are rounded to (length.Style).
func finest(u length.Unit) length.Length {
	if u == length.Inches {
		return length.Inch / 64
	}
	return length.Millimetre / 10
}

// figureFault tells what is wrong with a dimension: its figure must read back
// as its measured size to within half a tick, and that size must be the
// distance between its points at its scale.
func figureFault(d sheet.Dimension, u length.Unit) error {
	half := finest(u).Half()
	text := strings.TrimSuffix(lettering.Plain(d.Figure), ")")
	if each, whole, repeated := strings.Cut(text, " (= "); repeated {
		n, one, found := strings.Cut(each, " × ")
		count, err := strconv.Atoi(n)
		if !found || err != nil {
			return fmt.Errorf("figure %q does not say how many", d.Figure)
		}
		size, err := readFigure(one, u)
		if err != nil {
			return err
		}
		if off := (d.Measured - size*length.Length(count)).Abs(); off > half*length.Length(count) {
			return fmt.Errorf("figure %q: the parts are %s mm off the %s mm measured", d.Figure, off.Decimal(), d.Measured.Decimal())
		}
		text = whole
	}
	size, err := readFigure(text, u)
	if err != nil {
		return err
	}
	if off := (size - d.Measured).Abs(); off > half {
		return fmt.Errorf("figure %q is %s mm off the %s mm measured", d.Figure, off.Decimal(), d.Measured.Decimal())
	}
	return apartFault(d)
}

// readFigure reads a figure without what is said about it.
func readFigure(text string, u length.Unit) (length.Length, error) {
	text = strings.TrimSuffix(lettering.Plain(text), " REF")
	text, _, _ = strings.Cut(text, " [")                            // a dual figure's other unit
	text = strings.TrimPrefix(strings.TrimPrefix(text, "≈ "), "~ ") // the lettering has no ≈
	size, err := length.Parse(text, u)
	if err != nil {
		return 0, fmt.Errorf("figure %q does not read: %w", text, err)
	}
	return size, nil
}

// apartFault compares a measured size with the distance of its points, which
// are rounded to the nanometre on the paper.
func apartFault(d sheet.Dimension) error {
	apart := (d.B.X - d.A.X).Abs()
	if !d.Horizontal {
		apart = (d.B.Y - d.A.Y).Abs()
	}
	if d.Scale.Paper == 0 {
		return fmt.Errorf("figure %q has no scale", d.Figure)
	}
	// Both ends are rounded by half a nanometre, a whole one together.
	off := (int64(apart)*d.Scale.Real - int64(d.Measured)*d.Scale.Paper)
	if off > d.Scale.Real || off < -d.Scale.Real {
		return fmt.Errorf("figure %q measures %s mm, but its points are %s mm apart at %s", d.Figure, d.Measured.Decimal(), apart.Decimal(), ratio(d.Scale))
	}
	return nil
}

func TestFiguresReadBack(t *testing.T) {
	for _, s := range samples(t) {
		n := 0
		for _, page := range s.sheets {
			for _, m := range page.Marks {
				if d, ok := m.(sheet.Dimension); ok {
					n++
					require.NoError(t, figureFault(d, s.set.Units), "%s %s", s.name, page.Name)
				}
			}
		}
		require.Greater(t, n, 40, s.name)
	}
}

func TestFigureFaultBites(t *testing.T) {
	const mm = length.Millimetre
	good := sheet.Dimension{Horizontal: true, Figure: "59 7/8", Measured: 1520825 * length.Micrometre, Scale: sheet.Scale{Paper: 1, Real: 25}}
	good.B.X = good.Measured / 25
	change := func(f func(*sheet.Dimension)) sheet.Dimension { d := good; f(&d); return d }
	require.NoError(t, figureFault(good, length.Inches))
	for _, ok := range []string{"≈ 59 7/8", "59 7/8 REF", "5 × 11 31/32 (= ≈ 59 7/8)"} {
		require.NoError(t, figureFault(change(func(d *sheet.Dimension) { d.Figure = ok }), length.Inches), ok)
	}
	for want, bad := range map[string]sheet.Dimension{
		"off the":           change(func(d *sheet.Dimension) { d.Figure = "59 57/64" }),
		"the parts are":     change(func(d *sheet.Dimension) { d.Figure = "5 × 11 7/8 (= 59 7/8)" }),
		"how many":          change(func(d *sheet.Dimension) { d.Figure = "about 11 7/8 (= 59 7/8)" }),
		"does not read":     change(func(d *sheet.Dimension) { d.Figure = "wide" }),
		"no scale":          change(func(d *sheet.Dimension) { d.Scale = sheet.Scale{} }),
		"mm apart at 1:25":  change(func(d *sheet.Dimension) { d.B.X += 2 }),
		"are 0 mm apart at": change(func(d *sheet.Dimension) { d.Horizontal = false }),
	} {
		require.ErrorContains(t, figureFault(bad, length.Inches), want)
	}
	require.Error(t, figureFault(sheet.Dimension{Figure: "10", Measured: 10*mm + mm/16, Scale: sheet.Scale{Paper: 1, Real: 1}, Horizontal: true}, length.Millimetres))
}

// panicked begins the fault of a model that made the program panic.
const panicked = "panic"

// A sweep draws random models of every kind the model file knows.
func TestRandomModelsReadWell(t *testing.T) {
	rnd, enough := rand.New(rand.NewPCG(*seed, 0)), max(1, *models/fewer)
	drawn, reported, unresolved, unfit, bad := 0, 0, map[string]int{}, 0, map[string]int{}
	for tries := 0; drawn < enough; tries++ {
		require.Less(t, tries, 20*enough+20, "seed %d: too few of the random models resolve: %v", *seed, unresolved)
		text := anyModel(rnd)
		set, fault := settled(text)
		if strings.HasPrefix(fault, panicked) && unresolved[fault] == 0 {
			t.Errorf("seed %d: a model may not %s:\n%s", *seed, fault, text)
		}
		if fault != "" {
			unresolved[fault]++
			continue
		}
		sheets, err := drawing.Sheets(set)
		if err != nil {
			require.ErrorContains(t, err, "name a larger paper", "seed %d:\n%s", *seed, text)
			unfit++
			continue
		}
		drawn++
		for _, page := range sheets {
			require.NoError(t, page.Check(), "seed %d:\n%s", *seed, text)
			found, err := collisions(page)
			require.NoError(t, err)
			if len(found) > 0 {
				bad[page.Name]++
			}
			for _, c := range found {
				if reported++; reported <= mostShown {
					t.Errorf("seed %d, model %d, %s: %s", *seed, drawn, page.Name, c)
				}
			}
			if len(found) > 0 && bad[page.Name] == 1 {
				t.Logf("the first such model:\n%s", text)
			}
			for _, m := range page.Marks {
				if d, ok := m.(sheet.Dimension); ok {
					require.NoError(t, figureFault(d, set.Units), "seed %d, %s:\n%s", *seed, page.Name, text)
				}
			}
		}
	}
	t.Logf("%d models drawn, %d collisions, models with some by sheet: %v; %d fit no scale on their paper; findings stopped others: %v", drawn, reported, bad, unfit, unresolved)
	require.LessOrEqual(t, unfit, drawn/2, "too many models fit no paper")
}

// settled reads and resolves a model, and names the rule that stopped it, or
// panicked where a finding was due.
func settled(text string) (set door.Set, fault string) {
	defer func() {
		if p := recover(); p != nil {
			fault = fmt.Sprintf("%s: %v", panicked, p)
		}
	}()
	model, findings := spec.Read("random.yaml", []byte(text))
	if len(findings) == 0 {
		set, findings = door.Resolve(model)
	}
	for _, f := range findings {
		if f.Severity == spec.Stops {
			return set, f.Rule
		}
	}
	return set, ""
}
