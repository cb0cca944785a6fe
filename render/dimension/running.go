package dimension

import (
	"stilewright/model/length"
	"stilewright/render/lettering"
	"stilewright/render/sheet"
)

const (
	figureStart = 1500 * um // dimension line to a running figure, past arrow and circle
	jogStart    = 1200 * um // dimension line to the jog of an extension line
	runningGap  = 700 * um  // least between a running figure and the next extension line
	runningNear = 400 * um  // least between a running figure and another row's line
	arrowSpare  = 300 * um  // line to be seen behind an arrow
)

// A running is the plan of a Running row: figures lie along their extension
// lines, which jog where figures would come too close.
type running struct {
	places  []place
	figures []string
	spread  []length.Length // u of each figure's extension line
	origin  int             // in places
	base    length.Length   // extension line to the base line of its figure, along u
	far     length.Length   // extension line to the figure's farthest ink at greater u
	fan     length.Length   // height of the jogs, 0 for none
	height  length.Length
	label   length.Length
}

func (b *bed) runningPlan(r laidRow, barriers []length.Length) plan {
	q := &running{places: r.places, height: b.TextHeight, label: b.labelReach(r)}
	for i, p := range r.places {
		if p.at == r.At[0] {
			q.origin = i
		}
	}
	for _, p := range r.places {
		if p.index < len(r.Figures) && r.Figures[p.index] != "" {
			q.figures = append(q.figures, lettering.Legible(r.Figures[p.index]))
		} else {
			q.figures = append(q.figures, lettering.Legible(b.Format((p.at - r.At[0]).Abs())))
		}
	}
	above, below := b.reaches(q.figures)
	near, far := length.Length(side), side+below+above
	q.base = side + below
	if !b.upward { // figures rise, their upper side to the left
		near, far, q.base = -far, -near, -q.base
	}
	q.far = far
	var items []item
	for _, p := range r.places {
		items = append(items, item{p.u, near, far})
	}
	q.spread = spread(items, runningGap, barriers, runningNear)
	q.fan = slant(items, q.spread)
	return q
}

// start is where figures begin, outwards from the dimension line.
func (q *running) start() length.Length {
	if q.fan == 0 {
		return figureStart
	}
	return jogStart + q.fan + stub
}

func (q *running) inner() length.Length { return max(tickReach, q.label) }

func (q *running) outer() length.Length {
	var most length.Length
	for _, s := range q.figures {
		most = max(most, lettering.Advance(s, q.height))
	}
	return max(q.start()+most, q.label)
}

func (q *running) end() length.Length {
	last := len(q.places) - 1
	return max(q.places[last].u, q.spread[last]+max(0, q.far))
}

func (q *running) draw(b *bed, p pen) []sheet.Mark {
	o := q.places[q.origin]
	var marks []sheet.Mark
	for i, at := range q.places {
		strokes, text := q.extend(b, p, i), q.write(p, i)
		if i == q.origin {
			for _, s := range append(strokes, p.ring(at.u)) {
				marks = append(marks, s)
			}
			marks = append(marks, text)
			continue
		}
		d := sheet.Dimension{
			Layer: sheet.Dimensions, Horizontal: !b.upward, Scale: b.frame.Scale,
			A: p.point(spot{o.u, o.start}), B: p.point(spot{at.u, at.start}),
			Line: p.point(spot{at.u, p.line}), Measured: (at.at - o.at).Abs(), Figure: q.figures[i],
			Strokes: strokes, Texts: []sheet.Text{text},
		}
		q.head(p, i, &d)
		marks = append(marks, d)
	}
	return marks
}

// head draws the dimension line from the neighbour nearer to the origin, and its
// arrow, or an oblique stroke where there is no room for one.
func (q *running) head(p pen, i int, d *sheet.Dimension) {
	way := length.Length(1)
	if i < q.origin {
		way = -1
	}
	near := i - int(way)
	u, from, spare := q.places[i].u, q.places[near].u, length.Length(arrowSpare)
	if near == q.origin {
		from += way * originRadius
	}
	if way*(u-from) > 0 {
		d.Strokes = append(d.Strokes, p.stroke(spot{from, p.line}, spot{u, p.line}))
	}
	if way*(u-from) >= arrowLong+spare {
		d.Fills = append(d.Fills, p.arrow(u, way))
	} else {
		d.Strokes = append(d.Strokes, p.tick(u))
	}
}

// extend draws a place's extension line, along its figure to the figure's end.
func (q *running) extend(b *bed, p pen, i int) []sheet.Stroke {
	at, u := q.places[i], q.spread[i]
	end := q.start() + lettering.Advance(q.figures[i], q.height)
	if u == at.u {
		return b.extend(p, at, p.line+p.out*end)
	}
	strokes := b.extend(p, at, p.line+p.out*jogStart)
	return append(strokes, p.stroke(
		p.outward(at.u, jogStart), p.outward(u, jogStart+q.fan), p.outward(u, end)))
}

// write sets a place's figure: upwards beside a row that lies, level beside one
// that stands.
func (q *running) write(p pen, i int) sheet.Text {
	t := p.level(p.outward(q.spread[i]+q.base, q.start()), q.figures[i])
	t.Rise = !p.upward
	reads := length.Length(1) // the way of w that the figure reads
	if p.upward {
		reads = -1
	}
	t.Align = sheet.End
	if reads == p.out {
		t.Align = sheet.Start
	}
	return t
}
