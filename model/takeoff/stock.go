package takeoff

import (
	"fmt"
	"slices"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/spec"
)

const (
	in = length.Inch
	mm = length.Millimetre
)

const houseRule = "common practice, no source"

// A choice is a default in both units, and why.
type choice struct {
	inch, metric length.Length
	reason       string
}

// Our defaults. A model may replace every one.
var (
	kerf       = choice{in / 8, 3 * mm, "what a table saw's blade takes"}
	trim       = choice{in / 2, 12 * mm, "squares an end and takes its checks"}
	allowance  = choice{in, 25 * mm, "to trim a part to length after milling"}
	keep       = choice{12 * in, 300 * mm, "shorter ones are rarely used"}
	sheetKerf  = choice{in / 8, 3 * mm, "what a table saw's blade takes"}
	sheetTrim  = choice{in / 4, 6 * mm, "edges of sheets are bruised"}
	sheetKeep  = choice{6 * in, 150 * mm, "smaller ones are rarely used"}
	filmLap    = choice{in / 2, 12 * mm, "strips side by side must not gape"}
	filmMargin = choice{in / 2, 12 * mm, "to trim on the panel"}
)

// Words of finishes, grains and sides, as in a model.
const (
	finishPaint = "paint"
	finishClear = "clear"
	grainNone   = "none"
	grainUp     = "up"
	grainAcross = "across"
	sideBoth    = "both"
	sideFront   = "front"
)

// A Section is a board by its section as bought.
type Section struct {
	Name             string // "2x6" as sold, or its sizes where it has no nominal one
	Nominal          bool   // sold by that name
	Thickness, Width length.Length
}

// A stock is what one job's parts are cut from, resolved.
type stock struct {
	wood      catalog.Wood
	sections  []Section     // named boards to be had, the narrowest first; none: made to size
	plane     length.Length // off each face
	rip       length.Length // off each edge
	kerf      length.Length
	trim      length.Length
	allowance length.Length
	keep      length.Length
	lengths   []length.Length
	stated    bool // lengths are the model's
	hand      []hand
	finish    catalog.Supply
	coats     int
	bare      bool // no finish
}

// A hand is a clear stretch of board in hand.
type hand struct {
	section string // "" for the section its part wants
	what    string // "offcut", "board", "board 2, clear span 1"
	length  length.Length
	count   int
}

// size is a size as stated, or the default, which is noted.
func (t *taker) size(job int, name string, stated *length.Length, otherwise choice) length.Length {
	if stated != nil {
		return *stated
	}
	value := otherwise.metric
	if t.jobs[job].Set.Units == length.Inches {
		value = otherwise.inch
	}
	t.assume(name, t.style.Format(value), otherwise.reason+"; "+houseRule)
	return value
}

// stockOf resolves a job's stock.
func (t *taker) stockOf(job int) stock {
	m, set := t.jobs[job].Model.Stock, t.jobs[job].Set
	s := stock{wood: set.Stock.Species, plane: set.Stock.Plane, rip: set.Stock.Rip}
	if m.Plane != nil {
		s.plane = *m.Plane
	}
	if m.Rip != nil {
		s.rip = *m.Rip
	}
	s.kerf = t.size(job, "stock.kerf", m.Kerf, kerf)
	s.trim = t.size(job, "stock.trim", m.Trim, trim)
	s.allowance = t.size(job, "stock.allowance", m.Allowance, allowance)
	s.keep = t.size(job, "stock.keep", m.Keep, keep)
	t.sections(job, &s)
	t.lengths(job, &s)
	t.inHand(job, &s)
	t.finishOf(job, &s)
	return s
}

// sections are the boards the model names, those of another thickness refused.
func (t *taker) sections(job int, s *stock) {
	m, set := t.jobs[job].Model.Stock, t.jobs[job].Set
	if set.Stock.Board == "" {
		if len(m.Also) > 0 {
			t.find(job, spec.Stops, "stock.also", RuleStock, "%d other boards are named and 0 under stock.board; name the first there", len(m.Also))
		}
		return
	}
	s.sections = []Section{{set.Stock.Board, true, set.Stock.Dressed.Thickness, set.Stock.Dressed.Width}}
	for i, name := range m.Also {
		if section, ok := t.section(job, fmt.Sprintf("stock.also[%d]", i+1), name); ok {
			s.sections = append(s.sections, section)
		}
	}
	slices.SortStableFunc(s.sections, func(a, b Section) int { return int(a.Width - b.Width) })
}

// section is a board by its nominal name. It must be as thick as stock.board.
func (t *taker) section(job int, path, name string) (Section, bool) {
	set := t.jobs[job].Set.Stock
	season := catalog.Dry
	if t.jobs[job].Model.Stock.Season == catalog.Green.String() {
		season = catalog.Green
	}
	nominal, err := catalog.ParseBoard(name)
	if err != nil {
		t.find(job, spec.Stops, path, RuleStock, "%v", err)
		return Section{}, false
	}
	size, err := catalog.Dressed(nominal, season)
	if err != nil {
		t.find(job, spec.Stops, path, RuleStock, "%v", err)
		return Section{}, false
	}
	if size.Thickness != set.Dressed.Thickness {
		t.find(job, spec.Stops, path, RuleStock, "a %s is %v thick when dressed and stock.board, a %s, %v; name boards of that thickness", nominal, size.Thickness, set.Board, set.Dressed.Thickness)
		return Section{}, false
	}
	return Section{nominal.String(), true, size.Thickness, size.Width}, true
}

// lengths are the lengths boards are to be had in, the shortest first.
func (t *taker) lengths(job int, s *stock) {
	m := t.jobs[job].Model.Stock
	s.lengths, s.stated = plain(m.Lengths), len(m.Lengths) > 0
	if !s.stated {
		said := ""
		for _, row := range catalog.StockLengths() {
			if row.Metric == (t.jobs[job].Set.Units == length.Millimetres) {
				s.lengths = append(s.lengths, row.Length)
				said = row.Source.String()
			}
		}
		last := len(s.lengths) - 1
		t.assume("stock.lengths", fmt.Sprintf("%s to %s", t.long(s.lengths[0]), t.long(s.lengths[last])), "lengths yards keep; "+said)
	}
	slices.Sort(s.lengths)
	s.lengths = slices.Compact(s.lengths)
}

// plain are the sizes of a list.
func plain(sizes []*length.Length) []length.Length {
	var out []length.Length
	for _, s := range sizes {
		out = append(out, *s)
	}
	return out
}

// inHand are offcuts and boards in hand.
func (t *taker) inHand(job int, s *stock) {
	m := t.jobs[job].Model.Stock
	for _, l := range m.Offcuts {
		s.hand = append(s.hand, hand{what: "offcut", length: *l, count: 1})
	}
	for i, b := range m.Boards {
		path := fmt.Sprintf("stock.boards[%d]", i+1)
		h := hand{what: "board", count: max(1, b.Count), length: *b.Length}
		if b.Board != "" {
			if section, ok := t.section(job, path+".board", b.Board); ok {
				h.section = section.Name
			}
		}
		if sum := length.Sum(plain(b.Clear)...); sum > *b.Length {
			t.find(job, spec.Stops, path+".clear", RuleClear, "clear spans add up to %v on a board %v long; measure them between the defects", sum, *b.Length)
		}
		if len(b.Clear) == 0 {
			s.hand = append(s.hand, h)
		}
		for n, span := range b.Clear {
			h.what, h.length = fmt.Sprintf("board %d, clear span %d", i+1, n+1), *span
			s.hand = append(s.hand, h)
		}
	}
}

// finishOf is what the frame is finished with.
func (t *taker) finishOf(job int, s *stock) {
	f := t.jobs[job].Model.Stock.Finish
	kind := f.Kind
	if kind == "" {
		kind = finishPaint
		t.assume("stock.finish", kind, "closet doors are mostly painted; "+houseRule)
	}
	name := map[string]string{finishPaint: "paint", finishClear: "clear finish"}[kind]
	if name == "" {
		s.bare = true
		return
	}
	s.finish = supply(name)
	if s.coats = f.Coats; s.coats == 0 {
		s.coats = s.finish.Coats
		t.assume("stock.finish.coats", fmt.Sprint(s.coats), "what the finish commonly needs; "+houseRule)
	}
}

// supply is a row of the catalogue that is there: the names are ours.
func supply(name string) catalog.Supply {
	row, err := catalog.SupplyOf(name)
	if err != nil {
		panic(err)
	}
	return row
}
