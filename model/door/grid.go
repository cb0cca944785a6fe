package door

import (
	"fmt"
	"slices"

	"stilewright/model/length"
	"stilewright/model/spec"
)

// Lite spacings.
const equalCentres = "equal-centres"

// A run is one direction of a leaf: members side by side, and the lites between
// them, whose sight sizes are to be found.
type run struct {
	whole   length.Length   // of the leaf
	members []length.Length // widths of the rails from the bottom up, or of stiles and muntins from the left
	sizes   []spec.Sight    // as stated; nil for none
	spacing string          // as stated; empty for none
	share   func(whole length.Length, n int) []length.Length

	rule                 string   // broken by a lite that is too small
	list, between, count string   // paths of the sizes, of the spacing and of what makes the lites so many
	what, outer, evenly  string   // the members, the outermost ones, and what centres are evenly apart, in words
	size, far            string   // "height" and "high", or "width" and "wide"
	fewer, alike         string   // what would leave more, and what to make alike
	centres              string   // name of the figure of the distance between the outermost members' centres
	from                 []string // names of the figures it takes
}

// upward is the run of rails and lites from the bottom up.
func (r *resolver) upward(rails []length.Length) run {
	l := r.model.Leaf.Lites
	d := run{whole: r.set.Leaf.Height, members: rails, sizes: l.Heights, spacing: l.Spacing, share: r.share,
		list: "leaf.lites.heights", between: "leaf.lites.spacing", rule: RuleLiteTooLow, what: fmt.Sprintf("%d rails", len(rails)), far: "high", size: "height",
		fewer: "fewer rows or narrower rails", centres: "rail.centres", outer: "bottom and top rail", alike: "rails", evenly: "rail", from: []string{"leaf.height", "rail.bottom", "rail.top"}}
	switch {
	case l.Rows > 0:
		d.count = "leaf.lites.rows"
	case len(l.Heights) > 0:
		d.count = d.list
	case len(r.model.Leaf.Crosses) > 0:
		d.count = "leaf.crosses"
	default:
		d.count = "leaf.rail"
	}
	return d
}

// sideways is the run of stiles, muntins and lites from the left.
func (r *resolver) sideways(columns int, muntin length.Length) run {
	l, leaf := r.model.Leaf.Lites, r.set.Leaf
	members := append(slices.Repeat([]length.Length{muntin}, columns), leaf.Stile)
	members[0] = leaf.Stile
	d := run{whole: leaf.Width, members: members, sizes: l.Widths, spacing: l.Across, share: r.shareAlike,
		list: "leaf.lites.widths", between: "leaf.lites.across", count: "leaf.lites.columns", rule: RuleLiteTooNarrow, far: "wide", size: "width",
		fewer: "fewer columns or narrower muntins", centres: "muntin.centres", outer: "the stiles", alike: "stiles and muntins", evenly: "stile and muntin", from: []string{"leaf.width", "leaf.stile"}}
	switch columns {
	case 1:
		d.what = "two stiles"
	case 2:
		d.what = "two stiles and a muntin"
	default:
		d.what = fmt.Sprintf("two stiles and %d muntins", columns-1)
	}
	if l.Columns == 0 {
		d.count = d.list
	}
	return d
}

// lites is how many lites the run has.
func (d run) lites() int { return len(d.members) - 1 }

// free is what the members leave for the lites.
func (d run) free() length.Length { return d.whole - length.Sum(d.members...) }

// roomIn tells whether the lites of a run can have their least size, and stops
// when not.
func (r *resolver) roomIn(d run) bool {
	n, least := d.lites(), leastLite.in(r.units)
	if d.free() >= length.Length(n)*least {
		return true
	}
	r.stop(d.count, d.rule, "%s take %v of a leaf %v %s and leave %v for the lites, %d of them; each needs at least %v: %s", d.what, length.Sum(d.members...), d.whole, d.far, d.free(), n, least, d.fewer)
	return false
}

// divide is the sight sizes of a run's lites.
func (r *resolver) divide(d run) []length.Length {
	switch {
	case d.sizes != nil && d.spacing != "":
		r.stop(d.between, RuleLitesTwice, "%s lists %d %ss and %s says %s; each tells how %s the lites are: leave one of them out", d.list, len(d.sizes), d.size, d.between, d.spacing, d.far)
		return nil
	case d.sizes != nil:
		return r.stated(d)
	case d.spacing == equalCentres:
		return r.centred(d)
	}
	return d.share(d.free(), d.lites())
}

// stated is the sight sizes of a run as listed, what they leave shared by the
// others.
func (r *resolver) stated(d run) []length.Length {
	var sum length.Length
	rests, least := 0, leastLite.in(r.units)
	for i, s := range d.sizes {
		if s.Size == nil {
			rests++
			continue
		}
		if sum += *s.Size; *s.Size < least {
			r.stop(fmt.Sprintf("%s[%d]", d.list, i+1), d.rule, "a lite is to be %v %s; it needs at least %v", *s.Size, d.far, least)
		}
	}
	left := d.free() - sum
	switch {
	case r.stopped:
		return nil
	case rests == 0 && left != 0:
		way := "more"
		if left < 0 {
			way = "less"
		}
		r.stop(d.list, RuleLitesAddUp, "the lites' %ss add up to %v; %s leave %v of a leaf %v %s: make them %v %s, or write rest for one", d.size, sum, d.what, d.free(), d.whole, d.far, left.Abs(), way)
		return nil
	case left < length.Length(rests)*least:
		needs := length.Length(rests) * least
		r.stop(d.list, d.rule, "the stated %ss add up to %v and %s leave %v; the rest of the lites, %d of them, need %v: state at least %v less, or have %s", d.size, sum, d.what, d.free(), rests, needs, needs-left, d.fewer)
		return nil
	}
	var shares []length.Length
	if rests > 0 {
		shares = d.share(left, rests)
	}
	sights := make([]length.Length, len(d.sizes))
	for i, s := range d.sizes {
		if s.Size != nil {
			sights[i] = *s.Size
			continue
		}
		sights[i], shares = shares[0], shares[1:]
	}
	return sights
}

// centred is the sight sizes between members whose centres are evenly apart.
func (r *resolver) centred(d run) []length.Length {
	n := d.lites()
	at := d.members[0].Half()
	apart := r.derive(d.centres, d.whole-d.members[n].Half()-at, "distance between the centres of "+d.outer, d.from...)
	sights := make([]length.Length, n)
	end := d.members[0]
	for i, step := range d.share(apart, n) {
		at += step
		from := at - d.members[i+1].Half()
		if i == n-1 {
			from = d.whole - d.members[n]
		}
		sights[i], end = from-end, from+d.members[i+1]
	}
	r.unequal(d, sights)
	return sights
}

// unequal warns when equal centres make unequal lites, and stops when they
// leave one too small.
func (r *resolver) unequal(d run, sights []length.Length) {
	least, most := slices.Min(sights), slices.Max(sights)
	if needs := leastLite.in(r.units); least < needs {
		r.stop(d.between, d.rule, "equal centres leave a lite %v %s; it needs at least %v: space by equal-lites, or make the %s alike", least, d.far, needs, d.alike)
		return
	}
	if most-least > r.tick {
		r.warn(d.between, RuleLitesDiffer, "with %s centres evenly apart the lites are %v to %v %s; equal-lites makes them the same", d.evenly, least, most, d.far)
	}
}

// shareAlike divides a length into n parts that differ by at most one tick, add
// up again and read the same from both ends, so that a leaf is its own mirror
// image: whole ticks, but what cannot be paired is halved.
func (r *resolver) shareAlike(whole length.Length, n int) []length.Length {
	base := (whole / length.Length(n)).DownTo(r.tick)
	parts := slices.Repeat([]length.Length{base}, n)
	rest, pair := whole-base*length.Length(n), 0
	give := func(both length.Length) {
		parts[pair] += both.Half()
		parts[n-1-pair] += both - both.Half()
		rest -= both
		pair++
	}
	for pair < n/2 && rest >= 2*r.tick {
		give(2 * r.tick)
	}
	if n%2 == 1 {
		middle := min(rest, r.tick)
		parts[n/2] += middle
		rest -= middle
	}
	if rest > 0 {
		give(rest)
	}
	return parts
}

// enterSights enters the sight sizes of a run: those stated, then those that
// follow.
func (r *resolver) enterSights(path string, stated []spec.Sight, names []string, sights []length.Length, shared string, from []string) {
	given := slices.Clone(from)
	for i, s := range stated {
		if s.Size != nil {
			r.given(names[i], fmt.Sprintf("%s[%d]", path, i+1), sights[i])
			given = append(given, names[i])
		}
	}
	if stated != nil {
		shared = "what the stated sizes leave, shared by the rest"
	}
	for i, sight := range sights {
		if stated == nil || stated[i].Size == nil {
			r.derive(names[i], sight, shared, append(slices.Clip(given), "tick")...)
		}
	}
}
