package cutting

// This file is the linear programme: Gilmore and Gomory's column generation by
// a revised simplex method with an explicit inverse. Floating point lives here
// and in the proposals it makes; nothing is believed before dual.go has checked
// it in whole numbers. Every product is rounded before it is added
// (float64(x*y)), since a machine may otherwise fuse the two.
//
// gonum's lp.Simplex was tried as a reference and given up: on one random door
// job it did not return, it refuses dependent rows, and its kernels may add
// in another order on another processor, so that layouts would differ.

// A column is a pattern, or one of the three helpers of a row.
type column struct {
	kind    columnKind
	row     int   // helpers only
	stock   int   // patterns only
	pattern []int // patterns only
	cost    float64
}

type columnKind int

const (
	patternColumn    columnKind = iota
	surplusColumn               // cuts one item too many
	slackColumn                 // leaves one limited stock unused
	artificialColumn            // leaves one item uncut, at a forbidding cost
)

// A master is the linear programme over the patterns found so far.
type master struct {
	c         *cover
	demand    []int
	avail     []int
	limitRow  []int // row of a limited stock, -1 for unlimited
	rows      int
	basis     []column
	inverse   [][]float64
	level     []float64 // of the basic columns
	shadow    []float64 // dual value of each row
	scale     int64     // duals are handed to the oracle as whole multiples of 1/scale
	tolerance float64
}

// pivotsPerRow bounds the simplex method; it rarely needs a tenth. Stopping
// early only loosens the bound, it never makes it false.
const pivotsPerRow = 60

// refactorEvery is how many pivots pass before the inverse is computed afresh
// from the basis; rounding errors of so few updates stay far under tolerance.
const refactorEvery = 120

// relax solves the linear programme of the demand.
func (c *cover) relax(demand, avail []int) *master {
	m := c.newMaster(demand, avail)
	for pivot := 1; pivot <= pivotsPerRow*m.rows && c.budget > 0; pivot++ {
		c.budget -= 1 + m.rows/8
		m.price()
		enter, ok := m.entering()
		if !ok || !m.pivot(enter) {
			break
		}
		if pivot%refactorEvery == 0 && !m.refactor() {
			break
		}
	}
	m.price()
	return m
}

func (c *cover) newMaster(demand, avail []int) *master {
	m := &master{c: c, demand: demand, avail: avail, rows: len(demand), scale: c.scale()}
	dearest := int64(0)
	for s := range c.stock {
		m.limitRow = append(m.limitRow, -1)
		if avail[s] >= 0 {
			m.limitRow[s] = m.rows
			m.rows++
		}
		dearest = max(dearest, c.stock[s].cost)
	}
	m.tolerance = float64(dearest) * 1e-9 // far above rounding (1e-16 × rows), far below a coin
	for i := range demand {
		m.basis = append(m.basis, column{kind: artificialColumn, row: i, cost: 64 * float64(dearest)})
		m.level = append(m.level, float64(demand[i]))
	}
	for s, row := range m.limitRow {
		if row >= 0 {
			m.basis = append(m.basis, column{kind: slackColumn, row: row})
			m.level = append(m.level, float64(avail[s]))
		}
	}
	m.inverse = make([][]float64, m.rows)
	for r := range m.inverse {
		m.inverse[r] = make([]float64, m.rows)
		m.inverse[r][r] = 1
	}
	m.shadow = make([]float64, m.rows)
	return m
}

// price computes the shadow price of each row from the basis.
func (m *master) price() {
	for j := range m.shadow {
		m.shadow[j] = 0
	}
	for r, col := range m.basis {
		if col.cost == 0 {
			continue
		}
		for j, v := range m.inverse[r] {
			m.shadow[j] += float64(col.cost * v)
		}
	}
}

// entering is a column that lowers the cost: a helper first, then the pattern
// with the least reduced cost.
func (m *master) entering() (column, bool) {
	for i := range m.demand {
		if m.shadow[i] < -m.tolerance {
			return column{kind: surplusColumn, row: i}, true
		}
	}
	for _, row := range m.limitRow {
		if row >= 0 && m.shadow[row] > m.tolerance {
			return column{kind: slackColumn, row: row}, true
		}
	}
	best, least := column{}, -m.tolerance
	value := m.values()
	for s := range m.c.stock {
		if m.avail[s] == 0 {
			continue
		}
		got := m.c.oracle.best(s, value, m.demand)
		m.c.budget -= got.steps
		reduced := float64(m.c.stock[s].cost) - float64(got.value)/float64(m.scale)
		if row := m.limitRow[s]; row >= 0 {
			reduced -= m.shadow[row]
		}
		if got.pattern != nil && reduced < least {
			best, least = column{stock: s, pattern: got.pattern, cost: float64(m.c.stock[s].cost)}, reduced
		}
	}
	return best, best.pattern != nil
}

// values are the items' shadow prices as whole multiples of 1/scale.
func (m *master) values() []int64 {
	value := make([]int64, len(m.demand))
	for i := range value {
		if m.shadow[i] > 0 {
			value[i] = int64(m.shadow[i] * float64(m.scale))
		}
	}
	return value
}

// entries calls f with each row the column has an entry in.
func (m *master) entries(col column, f func(row int, v float64)) {
	switch col.kind {
	case surplusColumn:
		f(col.row, -1)
	case slackColumn, artificialColumn:
		f(col.row, 1)
	default:
		for i, n := range col.pattern {
			if n > 0 {
				f(i, float64(n))
			}
		}
		if row := m.limitRow[col.stock]; row >= 0 {
			f(row, 1)
		}
	}
}

// pivot brings the column into the basis; it is false when no row limits it.
func (m *master) pivot(enter column) bool {
	change := make([]float64, m.rows)
	m.entries(enter, func(row int, v float64) {
		for r := range change {
			change[r] += float64(m.inverse[r][row] * v)
		}
	})
	leave := -1
	for r, d := range change {
		if d <= 1e-9 {
			continue
		}
		if leave < 0 {
			leave = r
			continue
		}
		a, b := m.level[r]/d, m.level[leave]/change[leave]
		if a < b-1e-11 || (a < b+1e-11 && d > change[leave]) {
			leave = r
		}
	}
	if leave < 0 {
		return false
	}
	m.exchange(leave, change)
	m.basis[leave] = enter
	return true
}

func (m *master) exchange(leave int, change []float64) {
	pivot := m.inverse[leave]
	d := change[leave]
	for j := range pivot {
		pivot[j] /= d
	}
	m.level[leave] /= d
	for r, v := range change {
		if r == leave || v == 0 {
			continue
		}
		row := m.inverse[r]
		for j, p := range pivot {
			if p != 0 {
				row[j] -= float64(v * p)
			}
		}
		m.level[r] = max(m.level[r]-float64(v*m.level[leave]), 0)
	}
}

// refactor computes the inverse afresh by Gauss-Jordan elimination; it is false
// when the basis has become singular, which ends the method early.
func (m *master) refactor() bool {
	n := m.rows
	work := make([][]float64, n)
	for r := range work {
		work[r] = make([]float64, 2*n)
		work[r][n+r] = 1
	}
	for c, col := range m.basis {
		m.entries(col, func(row int, v float64) { work[row][c] = v })
	}
	for c := range n {
		if !eliminate(work, c) {
			return false
		}
	}
	for r := range n {
		copy(m.inverse[r], work[r][n:])
		m.level[r] = 0
		for j := range n {
			m.level[r] += float64(m.inverse[r][j] * m.rightHand(j))
		}
		m.level[r] = max(m.level[r], 0)
	}
	return true
}

func eliminate(work [][]float64, c int) bool {
	best := c
	for r := c; r < len(work); r++ {
		if abs(work[r][c]) > abs(work[best][c]) {
			best = r
		}
	}
	if abs(work[best][c]) < 1e-10 {
		return false
	}
	work[c], work[best] = work[best], work[c]
	d := work[c][c]
	for j := range work[c] {
		work[c][j] /= d
	}
	for r := range work {
		v := work[r][c]
		if r == c || v == 0 {
			continue
		}
		for j, p := range work[c] {
			if p != 0 {
				work[r][j] -= float64(v * p)
			}
		}
	}
	return true
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

func (m *master) rightHand(row int) float64 {
	if row < len(m.demand) {
		return float64(m.demand[row])
	}
	for s, r := range m.limitRow {
		if r == row {
			return float64(m.avail[s])
		}
	}
	return 0
}

// value is the programme's optimum as floating point, for tests and dives only.
func (m *master) value() float64 {
	sum := 0.0
	for r, col := range m.basis {
		sum += float64(col.cost * m.level[r])
	}
	return sum
}
