package takeoff

import (
	"fmt"
	"slices"

	"stilewright/model/catalog"
	"stilewright/model/cutting"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// A BoardPlan is the boards of one species and section, and how they are cut.
type BoardPlan struct {
	Section Section
	Wood    catalog.Wood
	Job     cutting.BoardJob
	Layout  cutting.BoardLayout
	// Parts are indices into the Takeoff's Parts, one for each of the Job's.
	Parts []int
	// Stiles tells that stiles come from these boards: the straightest are theirs.
	Stiles bool
}

// Name is the boards in a few words: "2x6 ponderosa pine".
func (p BoardPlan) Name() string { return p.Section.Name + " " + p.Wood.Name }

// A pool is the wooden parts that come from one kind of board.
type pool struct {
	section Section
	wood    catalog.Wood
	parts   []int
	jobs    []int // that have parts in it
}

// boards lays all wooden parts out on boards.
func (t *taker) boards() {
	var pools []*pool
	for i := range t.out.Parts {
		if t.out.Parts[i].Kind == Wooden {
			t.putInPool(&pools, i)
		}
	}
	for _, p := range pools {
		t.layOutBoards(*p)
	}
}

// putInPool finds the boards a part comes from.
func (t *taker) putInPool(pools *[]*pool, i int) {
	part := &t.out.Parts[i]
	section, beside, ok := t.sectionFor(*part)
	if !ok {
		s := t.stocks[part.Job]
		wide := s.sections[len(s.sections)-1]
		t.find(part.Job, spec.Stops, "stock.board", RuleTooWide, "part %s is %v wide and %v thick; the widest board to be had, a %s, gives %v by %v after planing and ripping: name a wider one under stock.also", part.Label(), part.Net.Width, part.Net.Thickness, wide.Name, wide.Width-2*s.rip, wide.Thickness-2*s.plane)
		return
	}
	wood := t.stocks[part.Job].wood
	at := slices.IndexFunc(*pools, func(p *pool) bool { return p.section == section && p.wood.Name == wood.Name })
	if at < 0 {
		at = len(*pools)
		*pools = append(*pools, &pool{section: section, wood: wood})
	}
	p := (*pools)[at]
	p.parts = append(p.parts, i)
	if !slices.Contains(p.jobs, part.Job) {
		p.jobs = append(p.jobs, part.Job)
	}
	part.From = section.Name + " " + wood.Name
	part.SideBySide = min(beside, part.Quantity)
	part.Rough = Size{part.Net.Length + t.stocks[part.Job].allowance, section.Width, section.Thickness}
	if t.whole[i].stile {
		part.Note = "in one piece, from the straightest boards"
	}
}

// sectionFor is the narrowest board to be had that gives a part, and how many
// of the part it gives side by side.
func (t *taker) sectionFor(p Part) (section Section, beside int, ok bool) {
	s := t.stocks[p.Job]
	if len(s.sections) == 0 {
		return t.made(p.Net, s.plane, s.rip), 1, true
	}
	if len(p.Leaves) == 0 {
		return t.made(p.Net, 0, 0), 1, true
	}
	for _, section := range s.sections {
		high, wide := section.Thickness-2*s.plane, section.Width-2*s.rip
		lying := across(wide, p.Net.Width, s.kerf) * across(high, p.Net.Thickness, s.kerf)
		onEdge := across(wide, p.Net.Thickness, s.kerf) * across(high, p.Net.Width, s.kerf)
		if n := max(lying, onEdge); n > 0 {
			return section, n, true
		}
	}
	return Section{}, 0, false
}

// across is how many strips of a size a width gives, with a saw cut between.
func across(room, size, kerf length.Length) int { return int((room + kerf) / (size + kerf)) }

// made is a board bought to the size a part needs.
func (t *taker) made(net Size, plane, rip length.Length) Section {
	s := Section{Thickness: net.Thickness + 2*plane, Width: net.Width + 2*rip}
	s.Name = t.words.section(s.Thickness, s.Width)
	return s
}

// layOutBoards lays the parts of a pool out.
func (t *taker) layOutBoards(p pool) {
	plan := BoardPlan{Section: p.section, Wood: p.wood, Parts: p.parts}
	job := t.saw(p)
	for _, i := range p.parts {
		part := t.out.Parts[i]
		plan.Stiles = plan.Stiles || t.whole[i].stile
		blocks := (part.Quantity + part.SideBySide - 1) / part.SideBySide
		job.Parts = append(job.Parts, cutting.Part{Label: t.out.Mark(part), Length: part.Rough.Length, Quantity: blocks})
	}
	t.offered(p, &job)
	if !t.longEnough(p, job) {
		return
	}
	layout, err := cutting.LayOutBoards(job)
	if err != nil {
		t.faults(p.jobs[0], err, map[cutting.Rule]string{cutting.RuleKerf: "stock.kerf", cutting.RuleTrim: "stock.trim", cutting.RuleTooBig: "stock.lengths"}, "stock")
		return
	}
	plan.Job, plan.Layout = job, layout
	t.out.Boards = append(t.out.Boards, plan)
}

// saw is the saw's setting for a pool: the widest kerf, trim and least offcut of
// its jobs, which is safe for all.
func (t *taker) saw(p pool) cutting.BoardJob {
	var job cutting.BoardJob
	for _, j := range p.jobs {
		s := t.stocks[j]
		job.Kerf, job.LeastOffcut = max(job.Kerf, s.kerf), max(job.LeastOffcut, s.keep)
		job.TrimStart = max(job.TrimStart, s.trim)
	}
	job.TrimEnd = job.TrimStart
	return job
}

// offered lists the boards of a pool: those in hand, and each length to be had.
// Where some lengths have a price, those without are left out.
func (t *taker) offered(p pool, job *cutting.BoardJob) {
	for _, j := range p.jobs {
		for _, h := range t.stocks[j].hand {
			if h.section == p.section.Name || h.section == "" && t.usual(j) == p.section {
				t.addHand(j, h, job)
			}
		}
	}
	var bought []cutting.Board
	priced := false
	for _, l := range t.lengthsOf(p) {
		b := cutting.Board{Name: t.boardName(p, l), Length: l}
		if row, ok := t.prices.of(b.Name); ok {
			b.Price, priced = row.price, true
		}
		t.offer(b.Name, b.Price)
		bought = append(bought, b)
	}
	for _, b := range bought {
		if priced && b.Price == 0 {
			t.assume("prices", b.Name, "not offered: other lengths have a price and it has none")
			continue
		}
		job.Boards = append(job.Boards, b)
	}
}

// offer notes a board or sheet that is to be had.
func (t *taker) offer(name string, price cutting.Cost) {
	t.out.Offers = append(t.out.Offers, Item{Name: name, Unit: "each", Pack: 1, Priced: price > 0, Price: price})
}

// boardName is a board on the shopping list and in the price file.
func (t *taker) boardName(p pool, l length.Length) string {
	return "board " + p.section.Name + " " + p.wood.Name + " " + t.long(l)
}

// lengthsOf are the lengths of a pool's jobs together.
func (t *taker) lengthsOf(p pool) []length.Length {
	var all []length.Length
	for _, j := range p.jobs {
		all = append(all, t.stocks[j].lengths...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// usual is the section boards in hand are of when they do not say: the named
// board's, else that of the job's stiles.
func (t *taker) usual(job int) Section {
	set := t.jobs[job].Set
	for _, s := range t.stocks[job].sections {
		if s.Name == set.Stock.Board {
			return s
		}
	}
	for i, p := range t.out.Parts {
		if p.Job == job && t.whole[i].stile {
			section, _, _ := t.sectionFor(p)
			return section
		}
	}
	return Section{}
}

// addHand offers a stretch in hand, together with others like it.
func (t *taker) addHand(job int, h hand, to *cutting.BoardJob) {
	name := fmt.Sprintf("in hand: %s %s", h.what, t.said(h.length))
	if letter := t.out.Letter(job); letter != "" {
		name += " (" + letter + ")"
	}
	for i := range to.Boards {
		if to.Boards[i].Name == name {
			to.Boards[i].Available += h.count
			return
		}
	}
	to.Boards = append(to.Boards, cutting.Board{Name: name, Length: h.length, Available: h.count, InHand: true})
}

// longEnough tells whether each part fits the longest board.
func (t *taker) longEnough(p pool, job cutting.BoardJob) bool {
	longest := cutting.Board{}
	for _, b := range job.Boards {
		if b.Length > longest.Length {
			longest = b
		}
	}
	clear, fits := longest.Length-job.TrimStart-job.TrimEnd, true
	for _, i := range p.parts {
		part := t.out.Parts[i]
		if part.Rough.Length > clear && job.Kerf < longest.Length && clear > 0 {
			fits = false
			t.find(part.Job, spec.Stops, "stock.lengths", RuleTooLong, "part %s is %v long with its allowance of %v; the longest board, %v, leaves %v after trimming: a part is cut in one piece, so name a longer board under stock.lengths", part.Label(), part.Rough.Length, part.Rough.Length-part.Net.Length, longest.Length, clear)
		}
	}
	return fits
}
