package door_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"stilewright/model/door"
	"stilewright/model/spec"
)

var (
	seed   = flag.Uint64("seed", 1, "seed of the random models")
	models = flag.Int("models", 150, "how many random models the laws are asked of")
)

// A chance writes random models, most of which resolve.
type chance struct {
	*rand.Rand
	inches bool
	rows   int     // of lites
	wide   float64 // about the rabbet's width, mm
	out    []string
}

func newChance(n int) *chance {
	c := &chance{Rand: rand.New(rand.NewPCG(*seed, uint64(n)))}
	c.inches = c.IntN(2) == 0
	return c
}

func (c *chance) set(path string, value any) { c.out = append(c.out, fmt.Sprint(path, "=", value)) }

// odds tells yes in so many of a hundred cases.
func (c *chance) odds(percent int) bool { return c.IntN(100) < percent }

// between is a size from least to most millimetres, in 32nds of an inch or
// half millimetres.
func (c *chance) between(least, most float64) string {
	step := 0.5
	if c.inches {
		step = 25.4 / 32
	}
	n := math.Ceil(least/step) + math.Floor(c.Float64()*(most-least)/step)
	if c.inches {
		return strconv.FormatFloat(n/32, 'f', -1, 64)
	}
	return strconv.FormatFloat(n/2, 'f', -1, 64)
}

// size states a size in so many of a hundred models.
func (c *chance) size(percent int, path string, least, most float64) {
	if c.odds(percent) {
		c.set(path, c.between(least, most))
	}
}

func (c *chance) word(percent int, path string, words ...string) {
	if c.odds(percent) {
		c.set(path, words[c.IntN(len(words))])
	}
}

// model is a random model in the notation of written.
func (c *chance) model() string {
	c.set("job", "Any")
	c.set("units", map[bool]string{true: "inch", false: "millimetre"}[c.inches])
	c.hanging()
	thick := 19 + 26*c.Float64()
	c.set("leaf.thickness", c.between(thick, thick+1))
	if c.odds(70) {
		c.set("hanging.track.spacing", c.between(thick+4, thick+15))
	} else {
		c.word(60, "hanging.track.row", "two-channel", "two-channel-heavy", "two-channel-44")
	}
	c.frame()
	c.joint(thick)
	c.panel(thick)
	c.worked(thick)
	return strings.Join(c.out, ";")
}

func (c *chance) hanging() {
	tracks := []string{}
	for range 2 + c.IntN(3) {
		tracks = append(tracks, []string{"front", "back"}[c.IntN(2)])
	}
	if c.odds(95) {
		tracks[1] = map[string]string{"front": "back", "back": "front"}[tracks[0]]
	}
	n := float64(len(tracks))
	c.set("hanging.style", "bypass")
	c.set("hanging.tracks", "["+strings.Join(tracks, ", ")+"]")
	if wide := n * (450 + 450*c.Float64()); c.odds(50) {
		c.set("opening.width", c.between(wide, wide+10))
	} else {
		c.set("opening.width.bottom", c.between(wide, wide+10))
		c.size(50, "opening.width.middle", wide, wide+10)
		c.set("opening.width.top", c.between(wide, wide+10))
		c.size(50, "opening.plumb.left", -12, 12)
		c.size(20, "opening.plumb.right", -12, 12)
	}
	if high := 700 + 1800*c.Float64(); c.odds(50) {
		c.set("opening.height", c.between(high, high+5))
	} else {
		c.set("opening.height.left", c.between(high, high+15))
		c.size(50, "opening.height.middle", high, high+15)
		c.set("opening.height.right", c.between(high, high+15))
	}
	if c.odds(60) {
		c.size(100, "hanging.overlap", 15, 60)
	} else {
		c.word(50, "hanging.overlap", "stile")
	}
	c.size(30, "hanging.meeting_gap", 0, 6)
	c.size(20, "hanging.jamb_gap.left", 0, 6)
	c.size(20, "hanging.jamb_gap.right", 0, 6)
	c.size(30, "hanging.floor_gap", 5, 20)
	c.size(20, "hanging.track.head_drop", 48, 70)
	if c.odds(30) {
		c.set("hanging.fascia.height", c.between(45, 120))
		c.set("hanging.fascia.thickness", c.between(12, 22))
	}
}

func (c *chance) frame() {
	c.set("leaf.stile", c.between(50, 120))
	if c.odds(40) {
		c.set("leaf.rail", c.between(60, 110))
	} else {
		c.set("leaf.rail.top", c.between(50, 120))
		c.set("leaf.rail.cross", c.between(58, 90))
		c.set("leaf.rail.bottom", c.between(50, 200))
	}
	c.grid()
	c.word(30, "stock.species", "yellow-poplar", "western hemlock", "red oak")
}

// grid divides the leaf: mostly one column, in equal lites or as listed.
func (c *chance) grid() {
	rows, columns := 1+min(c.IntN(8), c.IntN(8)), 1
	if c.odds(40) {
		rows, columns = 1+c.IntN(3), 2+min(c.IntN(3), c.IntN(3))
	}
	c.rows = rows
	c.size(70, "leaf.muntin", 50, 75)
	divide := func(n int, count, list, spacing string, least, most float64) {
		if c.odds(25) {
			c.set("leaf.lites."+list, c.sights(n, least, most))
			c.word(50, "leaf.lites."+count, fmt.Sprint(n))
			return
		}
		c.set("leaf.lites."+count, n)
		c.word(40, "leaf.lites."+spacing, "equal-lites", "equal-centres")
	}
	divide(rows, "rows", "heights", "spacing", 170, 300)
	divide(columns, "columns", "widths", "across", 55, 160)
	if rows > 1 && c.odds(20) {
		widths := []string{}
		for range rows - 1 {
			widths = append(widths, c.between(65, 140))
		}
		c.set("leaf.crosses", "["+strings.Join(widths, ", ")+"]")
	}
}

// sights lists n sight sizes, one or more of them the rest.
func (c *chance) sights(n int, least, most float64) string {
	list := make([]string, n)
	for i := range list {
		if list[i] = c.between(least, most); c.odds(30) {
			list[i] = "rest"
		}
	}
	list[c.IntN(n)] = "rest"
	return "[" + strings.Join(list, ", ") + "]"
}

// eachSet resolves the random models and asks a law of every set. It fails
// when so few resolve that the law would not be tried.
func eachSet(t *testing.T, law func(t *testing.T, model spec.Spec, set door.Set)) {
	resolve := 0
	for n := range *models {
		c := newChance(n)
		x := written(c.model())
		model := x.spec(t)
		set, findings := door.Resolve(model)
		stops := 0
		for _, f := range findings {
			if f.Severity == spec.Stops {
				stops++
			}
			require.Positive(t, f.Line, "%v", f)
			require.NotContains(t, f.Sentence, "%!", "%v", f)
		}
		if stops > 0 {
			require.Equal(t, door.Set{}, set)
			continue
		}
		resolve++
		if !t.Run(fmt.Sprintf("seed %d model %d", *seed, n), func(t *testing.T) { law(t, model, set) }) {
			t.Fatalf("\n%s", x.yaml)
		}
	}
	require.Greater(t, resolve, *models*2/5, "models that resolve, of %d", *models)
}
