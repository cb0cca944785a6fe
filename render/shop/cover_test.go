package shop

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/plane"
	"stilewright/model/spec"
	"stilewright/render/dimension"
	"stilewright/render/sheet"
)

// covers draws a job's cover sheets and holds them to what every sheet must
// keep: nothing on anything else, nothing outside of the frame.
func covers(t *testing.T, set door.Set, job Job) []sheet.Sheet {
	t.Helper()
	sheets, err := job.Covers(set)
	require.NoError(t, err)
	for _, s := range sheets {
		require.NoError(t, s.Check())
		require.Empty(t, dimension.Collisions(s.Marks, plane.BoxOf(plane.Point{}, plane.At(s.Width, s.Height))), s.Name)
		for _, m := range s.Marks {
			if text, ok := m.(sheet.Text); ok {
				require.GreaterOrEqual(t, text.Height, textHeight)
			}
		}
	}
	return sheets
}

// words is all lettering of sheets, in order, without the blanks and line ends
// that wrapping put in.
func words(sheets []sheet.Sheet) string {
	var out strings.Builder
	for _, s := range sheets {
		for _, m := range s.Marks {
			switch m := m.(type) {
			case sheet.Text:
				out.WriteString(m.String)
			case sheet.Dimension:
				out.WriteString(m.Figure)
			}
		}
	}
	return strings.ReplaceAll(out.String(), " ", "")
}

// A cover tells of every file its name, size, cut length and pierces, and of
// every layer word what it means.
func TestCoverTellsEverything(t *testing.T) {
	m, set := resolved(t, model+"shop: {kerf: 0.2}\n")
	job, _ := planOf(set, m)
	text := words(covers(t, set, job))
	for i, w := range job.Works {
		for _, want := range []string{
			w.Name + ".dxf", fmt.Sprintf("%d  %s", i+1, w.Part.title()),
			fmt.Sprintf("piece %s × %s", job.Options.figure(w.Setup.Width), job.Options.figure(w.Setup.Height)),
			fmt.Sprintf("cuts %s, pierces %d", job.Options.measure(w.Setup.CutLength()), w.Setup.Pierces()),
			fmt.Sprintf("quantity %d", w.Part.Quantity),
		} {
			require.Contains(t, text, strings.ReplaceAll(want, " ", ""), w.Name)
		}
		for _, l := range w.Cutting.Layers {
			require.Contains(t, text, l.Name)
		}
	}
	for _, o := range machining.Operations() {
		require.Contains(t, text, strings.ReplaceAll(job.Options.Names[o]+": "+o.Meaning(), " ", ""))
	}
	require.Contains(t, text, "kerfof0.2", "the kerf is said")
	require.Contains(t, text, "ISO2768-1classm")
}

// Cut length and pierces against a count by hand: a panel with clipped corners
// is one line of four sides and four slants.
func TestCutLengthByHand(t *testing.T) {
	m, set := resolved(t, strings.Replace(model, "corner: clipped", "corner: {kind: clipped, leg: 10}", 1))
	job, findings := planOf(set, m)
	require.Empty(t, findings)
	s := job.of(t, "P1", "front").Setup
	require.Equal(t, 1, s.Pierces())
	require.InDelta(t, 2*(s.Width.MM()+s.Height.MM())-8*10+4*14.142136, s.CutLength(), 1e-4)
}

func TestCoversOfRandomModels(t *testing.T) {
	papers := catalog.Papers()
	drawn := 0
	for n := range *models / 2 {
		rnd := rand.New(rand.NewPCG(*seed, uint64(1000+n)))
		m, _ := spec.Read("model.yaml", []byte(anyModel(rnd)))
		set, findings := door.Resolve(m)
		if slices.ContainsFunc(findings, func(f spec.Finding) bool { return f.Severity == spec.Stops }) {
			continue
		}
		set.Paper = papers[rnd.IntN(len(papers))].Name
		job, _ := planOf(set, m)
		if sheets := covers(t, set, job); len(sheets) > 0 {
			drawn++
		}
	}
	require.Greater(t, drawn, *models/10)
}

func TestCoverWithoutPaper(t *testing.T) {
	m, set := resolved(t, model)
	job, _ := planOf(set, m)
	set.Paper = "napkin"
	_, err := job.Covers(set)
	require.ErrorContains(t, err, "napkin")
}

func TestWrapped(t *testing.T) {
	for _, c := range []struct {
		text string
		wide int
		want []string
	}{
		{"one two three", 1000, []string{"one two three"}},
		{"", 10, nil},
		{"linen_R2-R3_oak_34mm_x2_back-turned_mm.dxf", 40, []string{"linen_R2-R3_oak_", "34mm_x2_back-turned_", "mm.dxf"}},
	} {
		require.Equal(t, c.want, wrapped(c.text, mm*length.Length(c.wide)), c.text)
	}
	for _, line := range wrapped(strings.Repeat("W", 300), 30*mm) {
		require.NotEmpty(t, line)
	}
}
