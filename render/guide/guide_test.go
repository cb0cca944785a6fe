package guide_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/hanging"
	"stilewright/model/spec"
	"stilewright/render/dimension"
	"stilewright/render/guide"
	"stilewright/render/pdf"
)

// A job is a sample with its building order.
type job struct {
	name string
	set  door.Set
	hung hanging.Hanging
	text string // the model file
	g    guide.Guide
}

// told is the building order of a model.
func told(name, text string) (job, error) {
	m, findings := spec.Read(name, []byte(text))
	s, more := door.Resolve(m)
	for _, f := range append(findings, more...) {
		if f.Severity == spec.Stops {
			return job{}, errors.New(f.String())
		}
	}
	h, found := hanging.Of(m, s)
	if len(found) > 0 {
		return job{}, errors.New(found[0].String())
	}
	g, err := guide.Of(m, s, h)
	return job{name, s, h, text, g}, err
}

// read are all samples, read once.
var read = sync.OnceValues(func() (all []job, err error) {
	paths, err := filepath.Glob("../../samples/*.yaml")
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		j, err := told(strings.TrimSuffix(filepath.Base(path), ".yaml"), string(data))
		if err != nil {
			return nil, err
		}
		all = append(all, j)
	}
	return all, err
})

// samples are all samples.
func samples(t *testing.T) []job {
	t.Helper()
	all, err := read()
	require.NoError(t, err)
	require.NotEmpty(t, all)
	return slices.Clone(all)
}

// titles are the titles of all steps.
func titles(g guide.Guide) []string {
	var all []string
	for _, c := range g.Chapters {
		for _, s := range c.Steps {
			all = append(all, s.Title)
		}
	}
	return all
}

// figureFault tells which figure of a guide neither set nor hanging knows.
func figureFault(j job) error {
	names := slices.Concat(j.set.Figures, j.hung.Figures)
	for _, c := range j.g.Chapters {
		for _, s := range c.Steps {
			for _, f := range s.Figures {
				if !slices.ContainsFunc(names, func(g door.Figure) bool { return g.Name == f.Name || strings.HasPrefix(g.Name, f.Name+".") }) {
					return fmt.Errorf("step %q names %s, which does not exist", s.Title, f.Name)
				}
			}
		}
	}
	return nil
}

func TestEveryFigureExists(t *testing.T) {
	for _, j := range samples(t) {
		require.NoError(t, figureFault(j), j.name)
		n := 0
		for _, c := range j.g.Chapters {
			for _, s := range c.Steps {
				n += len(s.Figures)
			}
		}
		require.Greater(t, n, 40, j.name)
	}
	j := samples(t)[0]
	j.g.Chapters = []guide.Chapter{{Steps: []guide.Step{{Figures: []guide.Figure{{Name: "leaf.colour"}}}}}}
	require.ErrorContains(t, figureFault(j), "leaf.colour")
}

// A step stands where the set has what it works on, and nowhere else.
func TestOnlyStepsThatApply(t *testing.T) {
	joint := func(kind string) func(job) bool {
		return func(j job) bool { return j.set.Leaf.Joint.Kind == kind || j.set.Leaf.Joint.Muntin == kind }
	}
	rules := []struct {
		begins string
		when   func(job) bool
	}{
		{"Pocket holes", joint(door.PocketScrew)},
		{"Dowel holes", joint(door.DowelJoint)},
		{"Mortises for loose tenons", joint(door.LooseTenon)},
		{"Mortises for the rails", joint(door.MortiseAndTenon)},
		{"Tenons of", joint(door.MortiseAndTenon)},
		{"Half-laps", joint(door.HalfLap)},
		{"Bridle", joint(door.Bridle)},
		{"Groove the parts", func(j job) bool { return j.set.Leaf.Rabbet.Kind == door.Groove }},
		{"Mill the rabbets in passes", func(j job) bool { return j.set.Leaf.Rabbet.Kind != door.Groove && j.set.Leaf.Corner.Tool == 0 }},
		{"Mill the rabbets by machine", func(j job) bool { return j.set.Leaf.Corner.Tool > 0 }},
		{"Chop the corners square", func(j job) bool {
			return j.set.Leaf.Corner.Kind == door.Squared && j.set.Leaf.Rabbet.Kind != door.Groove
		}},
		{"Leave the corners round", func(j job) bool {
			return j.set.Leaf.Rabbet.Kind != door.Groove && (j.set.Leaf.Corner.Kind == door.Clipped || j.set.Leaf.Corner.Kind == door.Rounded)
		}},
		{"Pilot holes for the edge washers", func(j job) bool { return j.set.Leaf.HeldBy == "edge-washer" }},
		{"Hold the panels with edge washers", func(j job) bool { return j.set.Leaf.HeldBy == "edge-washer" }},
		{"Hold the panels with stops", func(j job) bool { return j.set.Leaf.HeldBy == "stop" }},
		{"Hold the panels with beads", func(j job) bool { return j.set.Leaf.HeldBy == "bead" }},
		{"Bed the panels in sealant", func(j job) bool { return j.set.Leaf.HeldBy == "sealant" }},
		{"Plug the pockets", func(j job) bool { return j.set.Leaf.Joint.Pocket.Plugs }},
		{"Mortises for the flush pulls", func(j job) bool { return len(j.set.Leaf.Pulls) > 0 }},
		{"Groove for the floor guide", func(j job) bool { return j.set.Leaf.Guide != nil }},
		{"Round and chamfer", func(j job) bool { return len(j.set.Leaf.Edges) > 0 }},
		{"Second stick", func(j job) bool { return len(j.set.Leaf.Muntins) > 0 }},
		{"Make the fascia ready", func(j job) bool { return j.set.Fascia != nil }},
		{"Lay the film", func(j job) bool { return j.set.Leaf.Panel.Film != "" || strings.Contains(j.text, "film:") }},
		{"Set the bumpers", func(j job) bool { return len(j.hung.Bumpers) > 0 }},
	}
	all := append(samples(t), made(t)...)
	for _, rule := range rules {
		stood := 0
		for _, j := range all {
			n := 0
			for _, title := range titles(j.g) {
				if strings.HasPrefix(title, rule.begins) {
					n++
				}
			}
			want := 0
			if rule.when(j) {
				want, stood = 1, stood+1
			}
			require.Equal(t, want, n, "%s: steps %q", j.name, rule.begins)
		}
		require.Positive(t, stood, "no model has a step %q", rule.begins)
	}
}

// made are models of what no sample has: bridles, edges, pulls, a guide's
// groove, no finish.
func made(t *testing.T) []job {
	t.Helper()
	data, err := os.ReadFile("../../samples/five-rail.yaml")
	require.NoError(t, err)
	change := func(name string, pairs ...string) job {
		text := string(data)
		for i := 0; i < len(pairs); i += 2 {
			require.Equal(t, 1, strings.Count(text, pairs[i]), pairs[i])
			text = strings.Replace(text, pairs[i], pairs[i+1], 1)
		}
		j, err := told(name, text)
		require.NoError(t, err)
		return j
	}
	const kind = "joint: {kind: pocket-screw}"
	return []job{
		change("bridle", kind, "joint: {kind: bridle}"),
		change("worked", kind, kind+"\n  guide: {width: 1/4, depth: 3/8}\n  pull: {shape: round, width: 2, depth: 3/8, in: cross-rail}\n  edges: [{edge: outside, face: both, shape: roundover, size: 1/8}, {edge: sight, face: front, shape: chamfer, size: 1/8}]", "rip: 1/4}", "rip: 1/4, finish: none}"),
	}
}

// The same guide is the same page, well-formed, without any address outside of
// it, and hostile names stay text.
func TestPageStandsAlone(t *testing.T) {
	for _, j := range samples(t) {
		var one, two bytes.Buffer
		require.NoError(t, guide.WriteHTML(&one, j.g))
		require.NoError(t, guide.WriteHTML(&two, j.g))
		require.Equal(t, one.String(), two.String(), j.name)
		require.NoError(t, wellFormed(one.Bytes()), j.name)
		require.NotContains(t, strings.ReplaceAll(one.String(), `xmlns="http://www.w3.org/1999/xhtml"`, ""), "://", j.name)
		for _, title := range titles(j.g) {
			require.Contains(t, one.String(), title, j.name)
		}
	}
	j := samples(t)[0]
	j.g.Job = `<script>alert("1")</script> & <b>`
	var out bytes.Buffer
	require.NoError(t, guide.WriteHTML(&out, j.g))
	require.NoError(t, wellFormed(out.Bytes()))
	require.NotContains(t, out.String(), "<script")
	require.Contains(t, out.String(), "&lt;script&gt;")
}

// wellFormed reads a page as XML.
func wellFormed(page []byte) error {
	d := xml.NewDecoder(bytes.NewReader(page))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
	}
}

func TestWellFormedBites(t *testing.T) {
	require.Error(t, wellFormed([]byte("<p>a<b></p>")))
	require.Error(t, wellFormed([]byte("<p>a & b</p>")))
}

// xmllint reads the page as a browser would, and as XML.
func TestPageInAnotherReader(t *testing.T) {
	j := samples(t)[0]
	path := filepath.Join(t.TempDir(), "guide.html")
	var out bytes.Buffer
	require.NoError(t, guide.WriteHTML(&out, j.g))
	require.NoError(t, os.WriteFile(path, out.Bytes(), 0o600))
	said, err := exec.Command("xmllint", "--noout", "--nonet", path).CombinedOutput()
	require.NoError(t, err, string(said))
}

// No page has lettering on lettering or on a line, or outside of the paper.
func TestPagesReadWell(t *testing.T) {
	for _, j := range append(samples(t), made(t)...) {
		sheets, err := guide.Sheets(j.g)
		require.NoError(t, err)
		require.Greater(t, len(sheets), 5, j.name)
		for _, page := range sheets {
			require.NoError(t, page.Check(), "%s %s", j.name, page.Name)
			paper := page
			box, ok := dimension.Extent(paper.Marks)
			require.True(t, ok)
			require.True(t, box.Min.X >= 0 && box.Min.Y >= 0 && box.Max.X <= page.Width && box.Max.Y <= page.Height, "%s %s: ink outside of the paper", j.name, page.Name)
			require.Empty(t, dimension.Collisions(page.Marks, box), "%s %s", j.name, page.Name)
		}
	}
}

// Every title is found again in the printed pages by another reader.
func TestPrintIsFound(t *testing.T) {
	for _, j := range samples(t) {
		if !slices.Contains([]string{"attic-linen", "grooved-pantry", "loose-tenon-study"}, j.name) {
			continue
		}
		sheets, err := guide.Sheets(j.g)
		require.NoError(t, err)
		path := filepath.Join(t.TempDir(), "guide.pdf")
		var out bytes.Buffer
		require.NoError(t, pdf.Write(&out, sheets, pdf.Options{}))
		require.NoError(t, os.WriteFile(path, out.Bytes(), 0o600))
		said, err := exec.Command("pdftotext", "-layout", path, "-").CombinedOutput()
		require.NoError(t, err, string(said))
		text := strings.Join(strings.Fields(string(said)), " ")
		for _, title := range titles(j.g) {
			require.Contains(t, text, title, j.name)
		}
	}
}
