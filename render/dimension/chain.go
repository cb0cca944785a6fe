package dimension

import (
	"fmt"

	"stilewright/model/length"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

// A span is one measured space of a chain.
type span struct {
	a, b     place
	measured length.Length
	figure   string
	given    bool // by the caller
	seat     seat
	u        length.Length // middle of the figure
	tip      length.Length // where its leader takes off
}

func (s span) room() length.Length { return s.b.u - s.a.u }

// roomy tells whether both arrows stand inside the space.
func (s span) roomy() bool { return s.room() >= leastInside }

// A seat is where a figure stands.
type seat int

const (
	over   seat = iota // over its line, between its extension lines
	broken             // the same, but a line from farther out is broken for it
	before             // outside, past the chain's first place
	after              // outside, past its last
	lifted             // beyond the line, on a leader
)

// A chain is the plan of a Chain or Overall row.
type chain struct {
	spans        []span
	above, below length.Length // most reach of its figures
	height       length.Length // of lettering
	knee, turn   length.Length // where leaders begin and end to slant, outwards from the line
	label        length.Length // reach of the row's name
	out          length.Length
}

func (b *bed) chainPlan(r laidRow, barriers []length.Length) plan {
	spans := b.spans(r)
	if r.Style == Chain {
		spans = b.merged(spans)
		b.mark(spans)
	}
	c := &chain{spans: spans, height: b.TextHeight, label: b.labelReach(r), out: b.out}
	c.above, c.below = b.reaches(figures(spans))
	c.seat(barriers)
	c.raise(barriers)
	return c
}

// spans are the spaces of a row with their figures.
func (b *bed) spans(r laidRow) []span {
	places := r.places
	if r.Style == Overall {
		places = []place{places[0], places[len(places)-1]}
	}
	var spans []span
	for i := 1; i < len(places); i++ {
		s := span{a: places[i-1], b: places[i], measured: places[i].at - places[i-1].at}
		if i <= len(r.Figures) && r.Figures[i-1] != "" {
			s.figure, s.given = lettering.Legible(r.Figures[i-1]), true
		} else {
			s.figure = lettering.Legible(b.Format(s.measured))
		}
		spans = append(spans, s)
	}
	return spans
}

func figures(spans []span) []string {
	var texts []string
	for _, s := range spans {
		texts = append(texts, s.figure)
	}
	return texts
}

// mark adds REF to the last figure of ours when the chain does not add up as
// displayed.
func (b *bed) mark(spans []span) {
	var values []length.Length
	for _, s := range spans {
		values = append(values, s.measured)
	}
	if Closes(values, length.Sum(values...), b.Tick) {
		return
	}
	for i := len(spans) - 1; i >= 0; i-- {
		if !spans[i].given {
			spans[i].figure += " REF"
			return
		}
	}
}

// leastMerged is how many equal spaces in turn are written as one.
const leastMerged = 3

// merged is the spans with runs of equal ones that have no room for their
// figures put together.
func (b *bed) merged(spans []span) []span {
	var out []span
	for i := 0; i < len(spans); {
		n := b.run(spans[i:])
		if n < leastMerged {
			out = append(out, spans[i])
			i++
			continue
		}
		out = append(out, b.together(spans[i:i+n]))
		i += n
	}
	return out
}

// splitError is how far parts from length.Split may differ from one another.
const splitError = length.Nanometre

// run counts the spans from the first on that are equal to it and too small.
func (b *bed) run(spans []span) int {
	n := 0
	for _, s := range spans {
		_, fits := within(s.a.u, s.b.u, lettering.Advance(s.figure, b.TextHeight), nil, side)
		if fits || s.given || s.figure != spans[0].figure ||
			(s.measured-spans[0].measured).Abs() > splitError {
			break
		}
		n++
	}
	return n
}

// together is equal spans as one; what does not multiply as displayed says REF.
func (b *bed) together(spans []span) span {
	first, last := spans[0], spans[len(spans)-1]
	s := span{a: first.a, b: last.b, measured: last.b.at - first.a.at, given: true}
	ref := ""
	var values []length.Length
	for _, part := range spans {
		values = append(values, part.measured)
	}
	if !Closes(values, s.measured, b.Tick) {
		ref = " REF"
	}
	s.figure = lettering.Legible(fmt.Sprintf("%d × %s%s (= %s)",
		len(spans), first.figure, ref, b.Format(s.measured)))
	return s
}

// seat finds the place of every figure that needs no leader.
func (c *chain) seat(barriers []length.Length) {
	last := len(c.spans) - 1
	for i := range c.spans {
		s := &c.spans[i]
		wide := lettering.Advance(s.figure, c.height)
		if u, ok := within(s.a.u, s.b.u, wide, barriers, side); ok {
			s.seat, s.u = over, u
			continue
		}
		if u, ok := within(s.a.u, s.b.u, wide, nil, side); ok {
			s.seat, s.u = broken, u
			continue
		}
		s.seat = lifted
		off := c.outside(*s) + wide.Half()
		if u := s.b.u + off; i == last && !hits(u-wide.Half(), u+wide.Half(), barriers, side) {
			s.seat, s.u = after, u
		} else if u := s.a.u - off; i == 0 && !hits(u-wide.Half(), u+wide.Half(), barriers, side) {
			s.seat, s.u = before, u
		}
	}
}

// outside is how far past the chain's end a figure begins.
func (c *chain) outside(s span) length.Length {
	if s.roomy() {
		return 2 * side
	}
	return arrowLong + side
}

// raise spreads the figures that need leaders.
func (c *chain) raise(barriers []length.Length) {
	var items []item
	var of []int
	for i, s := range c.spans {
		if s.seat == lifted {
			half := (lettering.Advance(s.figure, c.height) + 1).Half()
			c.spans[i].tip = s.takeOff(barriers)
			items = append(items, item{c.spans[i].tip, -half, half})
			of = append(of, i)
		}
	}
	places := spread(items, between, barriers, side)
	for n, i := range of {
		c.spans[i].u = places[n]
	}
	c.knee = overshoot + stub
	if c.out > 0 && len(of) < len(c.spans) {
		c.knee = max(c.knee, c.top()+stub)
	}
	c.turn = c.knee + slant(items, places)
}

// takeOff is where the leader of a span begins: in its middle, or beside it when
// another row's extension line runs there.
func (s span) takeOff(barriers []length.Length) length.Length {
	quarter := s.room() / 4
	for _, u := range []length.Length{s.a.u + 2*quarter, s.a.u + quarter, s.b.u - quarter} {
		if !hits(u, u, barriers, quarter) {
			return u
		}
	}
	return s.a.u + 2*quarter
}

// base is the base line of figures over the dimension line, top their highest ink.
func (c *chain) base() length.Length { return lift + c.below }
func (c *chain) top() length.Length  { return c.base() + c.above }

func (c *chain) has(lift bool) bool {
	for _, s := range c.spans {
		if (s.seat == lifted) == lift {
			return true
		}
	}
	return false
}

func (c *chain) inner() length.Length {
	ink := max(tickReach, c.label)
	if c.out < 0 && c.has(false) {
		ink = max(ink, c.top())
	}
	return ink
}

func (c *chain) outer() length.Length {
	ink := max(overshoot, c.label)
	if c.out > 0 && c.has(false) {
		ink = max(ink, c.top())
	}
	if c.has(true) {
		ink = max(ink, c.turn+2*stub+c.below+c.above)
	}
	return ink
}

func (c *chain) end() length.Length {
	s := c.spans[len(c.spans)-1]
	_, end := c.lineOf(len(c.spans) - 1)
	return max(s.b.u, end)
}

// lineOf is where the dimension line of a span begins and ends.
func (c *chain) lineOf(i int) (from, to length.Length) {
	s := c.spans[i]
	from, to = s.a.u, s.b.u
	if !s.roomy() && i == 0 {
		from -= arrowLong + arrowTail
	}
	if !s.roomy() && i == len(c.spans)-1 {
		to += arrowLong + arrowTail
	}
	half := lettering.Advance(s.figure, c.height).Half()
	switch s.seat {
	case before:
		from = min(from, s.u-half)
	case after:
		to = max(to, s.u+half)
	}
	return from, to
}

func (c *chain) draw(b *bed, p pen) []sheet.Mark {
	var marks []sheet.Mark
	for i, s := range c.spans {
		d := sheet.Dimension{
			Layer: sheet.Dimensions, Horizontal: !b.upward, Scale: b.frame.Scale,
			A: p.point(spot{s.a.u, s.a.start}), B: p.point(spot{s.b.u, s.b.start}),
			Line: p.point(spot{s.b.u, p.line}), Measured: s.measured, Figure: s.figure,
		}
		end := p.line + p.out*overshoot
		if i == 0 {
			d.Strokes = append(d.Strokes, b.extend(p, s.a, end)...)
		}
		d.Strokes = append(d.Strokes, b.extend(p, s.b, end)...)
		from, to := c.lineOf(i)
		d.Strokes = append(d.Strokes, p.stroke(spot{from, p.line}, spot{to, p.line}))
		c.heads(p, i, &d)
		c.write(b, p, s, &d)
		marks = append(marks, d)
	}
	return marks
}

// heads draws what ends the dimension line of a span: arrows inside; arrows
// from outside at the chain's ends; an oblique stroke between two small spaces.
// A small space beside a roomy one borrows its neighbour's arrow.
func (c *chain) heads(p pen, i int, d *sheet.Dimension) {
	s, last := c.spans[i], len(c.spans)-1
	if s.roomy() {
		d.Fills = append(d.Fills, p.arrow(s.a.u, -1), p.arrow(s.b.u, 1))
		return
	}
	if i == 0 {
		d.Fills = append(d.Fills, p.arrow(s.a.u, 1))
	}
	if i == last {
		d.Fills = append(d.Fills, p.arrow(s.b.u, -1))
	} else if !c.spans[i+1].roomy() {
		d.Strokes = append(d.Strokes, p.tick(s.b.u))
	}
}

// write sets a span's figure, with its leader if it needs one.
func (c *chain) write(b *bed, p pen, s span, d *sheet.Dimension) {
	at := spot{s.u, p.line + c.base()}
	half := lettering.Advance(s.figure, c.height).Half()
	switch s.seat {
	case broken:
		b.windows = append(b.windows, window{s.u - half, s.u + half, at.w - c.below, at.w + c.above})
	case lifted:
		tip, end := s.tip, c.turn+stub
		leader := p.stroke(p.outward(tip, 0), p.outward(tip, c.knee), p.outward(s.u, c.turn), p.outward(s.u, end))
		if s.u == tip {
			leader = p.stroke(p.outward(tip, 0), p.outward(tip, end))
		}
		d.Strokes = append(d.Strokes, leader)
		at = p.outward(s.u, end+stub+c.below)
		if p.out < 0 {
			at = p.outward(s.u, end+stub+c.above)
		}
	}
	d.Texts = append(d.Texts, p.level(at, s.figure))
}
