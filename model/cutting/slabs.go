package cutting

// A slabs oracle answers for sheets: a pattern fits when it is one of the
// composed groups. Every pattern that fits is in its list.
type slabs struct {
	c       *composer
	onSheet [][]int // per sheet: groups that fit it
	holds   []map[string]bool
	size    []int64 // area of each tile in the first measure
}

func newSlabs(c *composer, size []int64) *slabs {
	s := &slabs{c: c, size: size}
	for sheet := range c.rooms {
		holds := map[string]bool{}
		var list []int
		for g := range c.groups {
			if c.fits(g, sheet) != nil {
				list = append(list, g)
				holds[groupKey(c.groups[g].count)] = true
			}
		}
		s.onSheet, s.holds = append(s.onSheet, list), append(s.holds, holds)
	}
	return s
}

func (s *slabs) sizes() []int64 { return s.size }

// best looks at every group.
func (s *slabs) best(stock int, value []int64, limit []int) choice {
	found := choice{steps: 1 + len(s.onSheet[stock])/64}
	for _, g := range s.onSheet[stock] {
		count := s.c.groups[g].count
		if v := worth(count, value); v > found.value && within(count, limit) {
			found.pattern, found.value = count, v
		}
	}
	found.upper = found.value
	return found
}

func worth(count []int, value []int64) int64 {
	sum := int64(0)
	for i, n := range count {
		if n > 0 {
			sum += int64(n) * value[i]
		}
	}
	return sum
}

// each visits the groups, the large before the small.
func (s *slabs) each(q query, visit func(pattern []int) bool) {
	list := s.onSheet[q.stock]
	for k := len(list) - 1; k >= 0; k-- {
		count := s.c.groups[list[k]].count
		if count[q.first] == 0 || !within(count, q.limit) || worth(count, q.value) < q.least || !s.maximal(q, count) {
			continue
		}
		if !visit(count) {
			return
		}
	}
}

// maximal tells whether no further tile of the limit fits the sheet.
func (s *slabs) maximal(q query, count []int) bool {
	more := append([]int(nil), count...)
	for i, n := range count {
		if n == q.limit[i] {
			continue
		}
		more[i]++
		if s.holds[q.stock][groupKey(more)] {
			return false
		}
		more[i]--
	}
	return true
}

// fill is the group of the greatest area that holds the tile.
func (s *slabs) fill(stock, first int, limit []int) []int {
	var best []int
	area := int64(0)
	for _, g := range s.onSheet[stock] {
		count := s.c.groups[g].count
		if count[first] == 0 || !within(count, limit) {
			continue
		}
		if a := worth(count, s.size); best == nil || a > area {
			best, area = count, a
		}
	}
	return best
}

// room is a rectangle with the kerf added to its sides, on its way to becoming
// a Region.
type room struct {
	x, y, w, h int64
	line       SawLine
	at         int64
	low, high  *room // nil: not cut
	tile       int   // -1: none
	turned     bool
}

func newRoom(x, y, w, h int64) *room { return &room{x: x, y: y, w: w, h: h, tile: -1} }

// cut divides the room and is its two parts.
func (r *room) cut(line SawLine, at int64) (low, high *room) {
	r.line, r.at = line, at
	if line == Upright {
		r.low, r.high = newRoom(r.x, r.y, at, r.h), newRoom(r.x+at, r.y, r.w-at, r.h)
	} else {
		r.low, r.high = newRoom(r.x, r.y, r.w, at), newRoom(r.x, r.y+at, r.w, r.h-at)
	}
	return r.low, r.high
}

// trimTo cuts what is too much off the room, first where that leaves the larger
// rest, and is the room of the size asked for.
func (r *room) trimTo(w, h int64) *room {
	upright, level := r.w > w, r.h > h
	first := Level
	if upright && (!level || float64(float64(r.w-w)*float64(r.h)) >= float64(float64(r.h-h)*float64(r.w))) {
		first = Upright
	}
	switch {
	case !upright && !level:
		return r
	case first == Upright:
		r, _ = r.cut(Upright, w)
	default:
		r, _ = r.cut(Level, h)
	}
	return r.trimTo(w, h)
}

// build cuts the box out of the room.
func (c *composer) build(r *room, p place) {
	b := c.groups[p.group].boxes[p.box]
	r = r.trimTo(b.w, b.h)
	if b.low.group < 0 {
		r.tile, r.turned = b.tile, b.turned
		return
	}
	at := c.groups[b.low.group].boxes[b.low.box].w
	if b.line == Level {
		at = c.groups[b.low.group].boxes[b.low.box].h
	}
	low, high := r.cut(b.line, at)
	c.build(low, b.low)
	c.build(high, b.high)
}

// tree cuts the pattern out of the sheet, by the box that leaves the largest
// rest beside or above it.
func (c *composer) tree(sheet int, pattern []int) *room {
	g := c.index[groupKey(pattern)]
	w, h := c.rooms[sheet][0], c.rooms[sheet][1]
	best, largest := -1, -1.0
	for _, k := range c.fits(g, sheet) {
		b := c.groups[g].boxes[k]
		rest := max(float64(float64(w-b.w)*float64(h)), float64(float64(h-b.h)*float64(w)))
		if rest > largest {
			best, largest = k, rest
		}
	}
	root := newRoom(0, 0, w, h)
	c.build(root, place{g, best})
	return root
}
