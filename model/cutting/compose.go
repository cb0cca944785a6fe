package cutting

// Pieces and sheets are reckoned here with a kerf added to each side, so that
// cuts take no width: see the package comment.

// A tile is a kind of piece, kerf added.
type tile struct {
	w, h int64
	turn bool
	fits []bool // per sheet, by name only
}

// A box is the outer size of one way to build a group of tiles by edge-to-edge
// joints, and how: a single tile, or two smaller boxes side by side (Upright
// joint) or one above the other (Level).
type box struct {
	w, h      int64
	line      SawLine
	low, high place // of the two boxes; low.group < 0 for a single tile
	tile      int
	turned    bool
}

type place struct{ group, box int }

// A group is a multiset of tiles that fits some sheet, with its boxes: none is
// at least as wide and as high as another.
type group struct {
	count []int
	boxes []box
	area  int64 // of the tiles, each rounded down
}

// Limits of composing; beyond them the job is laid out by packing instead: so
// many groups, and so many joints tried per search step of the budget. (Our
// choice: with DefaultBudget a second or so and some tens of megabytes.)
const (
	mostGroups    = 20_000
	jointsPerStep = 4
)

// A composer builds every group of tiles that fits one sheet, from the small
// to the large. Since each edge-to-edge layout is two smaller ones joined, the
// boxes it ends with are all that matter: a group fits a sheet exactly when one
// of its boxes does.
type composer struct {
	tiles  []tile
	demand []int
	rooms  [][2]int64 // per sheet, kerf added
	groups []group
	index  map[string]int
	bySize [][]int // groups of 1, 2, … tiles
	joints int     // left
}

// compose is false when a limit was met; the groups are then incomplete.
func (c *composer) compose() bool {
	c.index = map[string]int{}
	c.bySize = [][]int{nil, c.singles()}
	for size := 2; ; size++ {
		c.bySize = append(c.bySize, nil)
		for a := 1; a <= size/2; a++ {
			if !c.joinSizes(a, size-a) {
				return false
			}
		}
		if len(c.bySize[size]) == 0 {
			return true
		}
	}
}

// singles are the groups of one tile.
func (c *composer) singles() []int {
	var all []int
	for i, t := range c.tiles {
		count := make([]int, len(c.tiles))
		count[i] = 1
		g := group{count: count, area: areaDown(t.w, t.h)}
		none := place{-1, -1}
		g.add(box{w: t.w, h: t.h, low: none, high: none, tile: i}, c)
		if t.turn && t.w != t.h {
			g.add(box{w: t.h, h: t.w, low: none, high: none, tile: i, turned: true}, c)
		}
		if len(g.boxes) > 0 {
			c.index[groupKey(count)] = len(c.groups)
			all = append(all, len(c.groups))
			c.groups = append(c.groups, g)
		}
	}
	return all
}

// joinSizes joins every group of a tiles with every group of b.
func (c *composer) joinSizes(a, b int) bool {
	for _, x := range c.bySize[a] {
		for _, y := range c.bySize[b] {
			if a == b && y < x {
				continue
			}
			if !c.join(x, y) {
				return false
			}
		}
	}
	return true
}

// join adds what two groups make together; false when a limit is met.
func (c *composer) join(x, y int) bool {
	c.joints--
	size := 0
	for i, n := range c.demand {
		both := c.groups[x].count[i] + c.groups[y].count[i]
		if both > n {
			return c.joints > 0
		}
		size += both
	}
	if !c.smallEnough(x, y) {
		return c.joints > 0
	}
	count := make([]int, len(c.tiles))
	for i := range count {
		count[i] = c.groups[x].count[i] + c.groups[y].count[i]
	}
	key := groupKey(count)
	at, known := c.index[key]
	g := group{count: count, area: c.groups[x].area + c.groups[y].area}
	if known {
		g = c.groups[at]
	}
	for i, p := range c.groups[x].boxes {
		for k, q := range c.groups[y].boxes {
			c.joints -= 2
			low, high := place{x, i}, place{y, k}
			g.add(box{w: p.w + q.w, h: max(p.h, q.h), line: Upright, low: low, high: high}, c)
			g.add(box{w: max(p.w, q.w), h: p.h + q.h, line: Level, low: low, high: high}, c)
		}
	}
	switch {
	case known:
		c.groups[at] = g
	case len(g.boxes) > 0:
		c.index[key] = len(c.groups)
		c.bySize[size] = append(c.bySize[size], len(c.groups))
		c.groups = append(c.groups, g)
	}
	return c.joints > 0 && len(c.groups) < mostGroups
}

// smallEnough tells whether the tiles' area fits some sheet at all.
func (c *composer) smallEnough(x, y int) bool {
	area := c.groups[x].area + c.groups[y].area
	for _, room := range c.rooms {
		if area <= areaDown(room[0], room[1]) {
			return true
		}
	}
	return false
}

// add keeps the box if it fits some sheet and no box is as small both ways.
func (g *group) add(b box, c *composer) {
	if !c.fitsSome(b) {
		return
	}
	for _, o := range g.boxes {
		if o.w <= b.w && o.h <= b.h {
			return
		}
	}
	kept := g.boxes[:0]
	for _, o := range g.boxes {
		if o.w < b.w || o.h < b.h {
			kept = append(kept, o)
		}
	}
	g.boxes = append(kept, b)
}

func (c *composer) fitsSome(b box) bool {
	for _, room := range c.rooms {
		if b.w <= room[0] && b.h <= room[1] {
			return true
		}
	}
	return false
}

func groupKey(count []int) string {
	key := make([]byte, 0, 2*len(count))
	for _, n := range count {
		key = append(key, byte(n), byte(n>>8))
	}
	return string(key)
}

// fits is the group's boxes that fit the sheet, from which all its tiles may
// come.
func (c *composer) fits(g, sheet int) []int {
	var boxes []int
	for i, n := range c.groups[g].count {
		if n > 0 && !c.tiles[i].fits[sheet] {
			return nil
		}
	}
	for k, b := range c.groups[g].boxes {
		if b.w <= c.rooms[sheet][0] && b.h <= c.rooms[sheet][1] {
			boxes = append(boxes, k)
		}
	}
	return boxes
}
