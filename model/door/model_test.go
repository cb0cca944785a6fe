package door_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/spec"
)

const (
	in = length.Inch
	mm = length.Millimetre
)

// least is the smallest model that resolves without a word, in the notation of written.
const least = `job=Hall; units=inch; opening.width=60; opening.height=80
	hanging.style=bypass; hanging.tracks=[front, back]
	leaf.thickness=1 3/8; leaf.stile=4; leaf.rail=4; leaf.joint.kind=pocket-screw
	panel.material=acrylic; panel.thickness=1/8; panel.edge_gap=1/16; panel.held_by.kind=edge-washer`

// grooved, stopped, beaded and half are least with another seat or holder, and
// with a solid panel below.
const (
	grooved = least + `; panel.seat=groove; panel.held_by.kind=`
	stopped = least + `; panel.held_by.kind=stop`
	beaded  = least + `; panel.seat=face-bead; panel.held_by.kind=bead`
	half    = least + `; leaf.lites.rows=2; panel.solid.rows=[1]; panel.solid.material=plywood; panel.solid.thickness=1/4; panel.solid.edge_gap=1/16`
)

// metric is the same in millimetres.
const metric = `job=Hall; units=millimetre; opening.width=1500; opening.height=2000
	hanging.style=bypass; hanging.tracks=[front, back]
	leaf.thickness=35; leaf.stile=100; leaf.rail=100; leaf.joint.kind=pocket-screw
	panel.material=acrylic; panel.thickness=3; panel.edge_gap=1.5; panel.held_by.kind=edge-washer`

// A text is a model file and the line and column of every value in it.
type text struct {
	yaml   string
	places map[string][2]int
}

// written is the model file of a short notation: "path=value" one after
// another, apart by semicolons or lines. A path given again replaces the
// first, an empty value drops it.
func written(models ...string) text {
	values, order := map[string]string{}, []string{}
	for _, pair := range strings.FieldsFunc(strings.Join(models, ";"), func(r rune) bool { return r == ';' || r == '\n' }) {
		path, value, found := strings.Cut(strings.TrimSpace(pair), "=")
		if !found {
			continue
		}
		if _, has := values[path]; !has {
			order = append(order, path)
		}
		values[path] = value
	}
	w := writer{values: values, text: text{places: map[string][2]int{}}}
	w.group("", order, 0)
	return text{w.out.String(), w.places}
}

type writer struct {
	text
	values map[string]string
	out    strings.Builder
	line   int
}

// group writes the keys under prefix, each followed by what is under it.
func (w *writer) group(prefix string, order []string, indent int) {
	done := map[string]bool{}
	for _, path := range order {
		if !strings.HasPrefix(path, prefix) || w.values[path] == "" {
			continue
		}
		key, _, deeper := strings.Cut(path[len(prefix):], ".")
		if done[key] {
			continue
		}
		done[key] = true
		w.out.WriteString(strings.Repeat(" ", indent) + key + ":")
		w.line++
		if deeper {
			w.out.WriteString("\n")
			w.places[prefix+key] = [2]int{w.line + 1, indent + 3}
			w.group(prefix+key+".", order, indent+2)
			continue
		}
		w.places[path] = [2]int{w.line, indent + len(key) + 3}
		w.items(path, indent+len(key)+3)
		w.out.WriteString(" " + w.values[path] + "\n")
	}
}

// items notes the places of the items of a list in one line, apart by a comma
// and a space, and of the values in an item that is a group, whose pairs are
// apart by a comma alone.
func (w *writer) items(path string, column int) {
	list, is := strings.CutPrefix(w.values[path], "[")
	if !is {
		return
	}
	column++
	for i, item := range strings.Split(list, ", ") {
		at := fmt.Sprintf("%s[%d]", path, i+1)
		w.places[at] = [2]int{w.line, column}
		inner := column + 1
		for _, pair := range strings.Split(strings.TrimPrefix(item, "{"), ",") {
			if key, _, found := strings.Cut(pair, ": "); found {
				w.places[at+"."+key] = [2]int{w.line, inner + len(key) + 2}
			}
			inner += len(pair) + 1
		}
		column += len(item) + len(", ")
	}
}

// spec reads the model, which must have no fault that can be told without
// knowing the trade.
func (x text) spec(t testing.TB) spec.Spec {
	t.Helper()
	model, findings := spec.Read("hall.yaml", []byte(x.yaml))
	require.Empty(t, findings, x.yaml)
	return model
}

// resolved is the set of a model that has no fault; warnings are let pass.
func resolved(t testing.TB, models ...string) door.Set {
	t.Helper()
	x := written(models...)
	set, findings := door.Resolve(x.spec(t))
	for _, f := range findings {
		require.NotEqual(t, spec.Stops, f.Severity, "%v\n%s", f, x.yaml)
	}
	return set
}

// figure is the value of a figure the set must have.
func figure(t testing.TB, set door.Set, name string) length.Length {
	t.Helper()
	f, has := set.Figure(name)
	require.True(t, has, name)
	return f.Value
}

// pairs are the names and values of the notation of written.
func pairs(list string) map[string]string {
	all := map[string]string{}
	for _, pair := range strings.Split(list, ";") {
		name, value, _ := strings.Cut(strings.TrimSpace(pair), "=")
		all[name] = value
	}
	return all
}

// nearest is the place of the value at path, or of its nearest parent.
func (x text) nearest(path string) [2]int {
	for {
		if at, stands := x.places[path]; stands {
			return at
		}
		end := strings.LastIndexAny(path, ".[")
		if end < 0 {
			return [2]int{1, 1}
		}
		path = path[:end]
	}
}
