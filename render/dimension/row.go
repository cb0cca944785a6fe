package dimension

import (
	"cmp"
	"slices"

	"stilewright/model/length"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// A Style is how the places of a row are dimensioned.
type Style int

// The styles.
const (
	Chain   Style = iota // from each place to the next
	Running              // each place from the first one given, which is 0
	Overall              // from the least place to the greatest
)

// A Row is one line of dimensions. One with fewer than two different places
// draws nothing.
type Row struct {
	// At are the places, as model coordinates along the row, in any order; equal
	// ones count once. A Running row counts from At[0], both ways without a sign.
	At []length.Length
	// From is the model coordinate across the row where the extension line of the
	// same At begins; one alone is for all, none is the outline's edge.
	From  []length.Length
	Style Style
	// Figures override what Format writes; "" does not. A Chain has one for each
	// space in turn, from the left or from below; Running one for each At as
	// given; Overall one.
	Figures []string
	Label   string // set at the row's right or upper end, if not empty
}

// Options tell how rows are written and spaced. Sizes are on paper; one that is
// 0 or below its least takes the value named first, or the least.
type Options struct {
	// Format writes a measured length; nil writes millimetres.
	Format func(length.Length) string
	// Tick is what Format rounds to. A chain whose rounded figures do not add up
	// to its rounded overall has its last one marked REF. 0: they are exact.
	Tick       length.Length
	TextHeight length.Length // height of a capital; 2.5 mm, at least that
	First      length.Length // outline to the first dimension line; 10 mm, at least that
	Next       length.Length // from line to line; 7 mm, at least 6 mm, and more where lettering needs it
}

func (o Options) settled() Options {
	if o.Format == nil {
		o.Format = length.Length.Decimal
	}
	if o.Next == 0 {
		o.Next = usualNext
	}
	o.TextHeight = max(o.TextHeight, leastText)
	o.First = max(o.First, leastFirst)
	o.Next = max(o.Next, leastNext)
	return o
}

// Closes tells whether values rounded to the tick add up to the overall rounded
// to the tick, as a reader with a pencil expects. A tick of 0 does not round.
func Closes(values []length.Length, overall, tick length.Length) bool {
	var sum length.Length
	for _, v := range values {
		sum += v.Nearest(tick)
	}
	return sum == overall.Nearest(tick)
}

// Place lays rows beside a view, the first nearest to it. Overall rows go
// outermost whatever their order, the longest last. It returns the marks and
// the depth they take, from the outline's edge to the farthest ink; both are
// nothing when no row has two places. Rows may reach past the view's ends, by
// figures set outside and by labels; Extent tells how far.
//
// A figure stands over its line in the middle of its space; next to an
// extension line that crosses the space; outside a chain's end; or, where
// spaces are too small, beyond the line on a leader. Three and more equal
// spaces in turn without room for their figures are written as one:
// "16 × 2 (= 32)".
func Place(f Frame, side Side, rows []Row, o Options) (marks []sheet.Mark, depth length.Length) {
	o = o.settled()
	b := &bed{ground: groundOf(f, side), Options: o}
	laid := b.ordered(rows)
	for i, r := range laid {
		plan := b.plan(r, barriers(laid[i+1:]))
		line := b.First
		if i > 0 {
			line = b.line + b.Next
		}
		line = max(line, b.reach+rowClear+plan.inner())
		b.line, b.reach = line, line+plan.outer()
		p := pen{b.ground, b.edge + b.out*line, o.TextHeight}
		marks = append(marks, plan.draw(b, p)...)
		marks = append(marks, b.label(p, r, plan.end(), laid[i+1:])...)
		depth = b.reach
	}
	return marks, depth
}

// Around lays rows on all four sides of a view, below, above, left and right in
// turn. Where figures or names that reach past the view's corners would touch those
// of another side, the later side moves outwards until they are clear. It
// returns the marks and the depth taken on each side.
func Around(f Frame, rows [4][]Row, o Options) (marks []sheet.Mark, depths [4]length.Length) {
	o = o.settled()
	for _, at := range []Side{Below, Above, LeftOf, RightOf} {
		moved, was := o, touching(marks, cornerClear)
		var own []sheet.Mark
		for range mostMoves {
			own, depths[at] = Place(f, at, rows[at], moved)
			all := append(slices.Clone(marks), own...)
			if touching(all, cornerClear) == was+touching(own, cornerClear) {
				break
			}
			moved.First += between
		}
		marks = append(marks, own...)
	}
	return marks, depths
}

// cornerClear is the least from lettering of one side to the ink of another.
const cornerClear = side

// mostMoves is how often Around moves a side outwards before it gives up, which
// leaves a collision for Collisions to find.
const mostMoves = 60

// A bed is the ground with what lies on it already.
type bed struct {
	ground
	Options
	line, reach length.Length // of the last row: its line and its farthest ink, outwards from the edge
	extensions  []extension
	windows     []window
}

// A row's plan is its drawing but for the place of its line.
type plan interface {
	inner() length.Length // ink towards the view, from the line
	outer() length.Length // ink away from the view
	end() length.Length   // u of the last ink on the line
	draw(*bed, pen) []sheet.Mark
}

// A laidRow is a row with its places sorted.
type laidRow struct {
	Row
	places []place
}

// A place is one spot of a row: at in the model, u and start on the ground.
type place struct {
	at, u length.Length
	start length.Length // w where its extension line takes off, without the gap
	index int           // in Row.At
}

// ordered is the rows from the view outwards, without empty ones. It notes how far
// extension lines start outside of the outline.
func (b *bed) ordered(rows []Row) []laidRow {
	var laid []laidRow
	for _, r := range rows {
		places := b.places(r)
		if len(places) < 2 {
			continue
		}
		laid = append(laid, laidRow{r, places})
		for _, p := range places {
			b.reach = max(b.reach, b.out*(p.start-b.edge))
		}
	}
	slices.SortStableFunc(laid, func(a, c laidRow) int {
		if a.Style != Overall || c.Style != Overall {
			return cmp.Compare(boolInt(a.Style == Overall), boolInt(c.Style == Overall))
		}
		return cmp.Compare(a.span(), c.span())
	})
	return laid
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

func (r laidRow) span() length.Length {
	return r.places[len(r.places)-1].at - r.places[0].at
}

// places are the row's different places, sorted along it.
func (b *bed) places(r Row) []place {
	var places []place
	for i, at := range r.At {
		start := b.edge
		if len(r.From) == 1 {
			start = b.across(r.From[0])
		} else if i < len(r.From) {
			start = b.across(r.From[i])
		}
		places = append(places, place{at, b.along(at), start, i})
	}
	slices.SortStableFunc(places, func(p, q place) int { return cmp.Compare(p.at, q.at) })
	return slices.CompactFunc(places, func(p, q place) bool { return p.at == q.at })
}

// barriers are where extension lines of outer rows will cross, sorted.
func barriers(outer []laidRow) []length.Length {
	var us []length.Length
	for _, r := range outer {
		for i, p := range r.places {
			if r.Style != Overall || i == 0 || i == len(r.places)-1 {
				us = append(us, p.u)
			}
		}
	}
	slices.Sort(us)
	return slices.Compact(us)
}

func (b *bed) plan(r laidRow, barriers []length.Length) plan {
	if r.Style == Running {
		return b.runningPlan(r, barriers)
	}
	return b.chainPlan(r, barriers)
}

// label is the row's name at its end.
func (b *bed) label(p pen, r laidRow, end length.Length, outer []laidRow) []sheet.Mark {
	text := lettering.Legible(r.Label)
	if text == "" {
		return nil
	}
	wide := lettering.Advance(text, p.height)
	at := item{hi: wide}.right(end+2*between, barriers(outer), side)
	return []sheet.Mark{sheet.Text{
		Layer: sheet.Notes, At: p.point(spot{at, p.line - p.height.Half()}), Height: p.height,
		Rise: p.upward, String: text, Advance: wide,
	}}
}

// labelReach is the ink of a row's name to either side of its line.
func (b *bed) labelReach(r laidRow) length.Length {
	if r.Label == "" {
		return 0
	}
	above, below := lettering.Reach(r.Label, b.TextHeight)
	return max(above-b.TextHeight.Half(), below+b.TextHeight.Half())
}

// reaches is the most that figures stand above and below their base lines.
func (b *bed) reaches(figures []string) (above, below length.Length) {
	for _, s := range figures {
		up, down := lettering.Reach(s, b.TextHeight)
		above, below = max(above, up), max(below, down)
	}
	return above, below
}
