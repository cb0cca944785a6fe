package dimension

import (
	"slices"

	"stilewright/model/length"
)

// An item is lettering that would like to stand at its tip. It takes the room
// from lo to hi about the place it gets.
type item struct{ tip, lo, hi length.Length }

// spread finds places for items in the order of their tips, so that each keeps
// gap from the next, none comes closer than clear to a barrier, and they stay
// near their tips: least squares without the barriers (pool adjacent violators),
// then outwards from the middle past every barrier in the way. Barriers are sorted.
func spread(items []item, gap length.Length, barriers []length.Length, clear length.Length) []length.Length {
	places := pooled(items, gap)
	if len(places) == 0 {
		return nil
	}
	mid := len(items) / 2
	right, left := items[mid].right(places[mid], barriers, clear), items[mid].left(places[mid], barriers, clear)
	if right-places[mid] <= places[mid]-left {
		places[mid] = right
	} else {
		places[mid] = left
	}
	for i := mid + 1; i < len(items); i++ {
		least := places[i-1] + apart(items[i-1], items[i], gap)
		places[i] = items[i].right(max(places[i], least), barriers, clear)
	}
	for i := mid - 1; i >= 0; i-- {
		most := places[i+1] - apart(items[i], items[i+1], gap)
		places[i] = items[i].left(min(places[i], most), barriers, clear)
	}
	return places
}

// apart is the least distance between the places of two neighbours, counting
// the lines that lead to them.
func apart(a, b item, gap length.Length) length.Length {
	return max(0, a.hi) - min(0, b.lo) + gap
}

// right is the first place at or after at that keeps clear of the barriers, and
// left the last at or before it.
func (it item) right(at length.Length, barriers []length.Length, clear length.Length) length.Length {
	for _, b := range barriers {
		if b > at+it.lo-clear && b < at+it.hi+clear {
			at = b + clear - it.lo
		}
	}
	return at
}

func (it item) left(at length.Length, barriers []length.Length, clear length.Length) length.Length {
	for _, b := range slices.Backward(barriers) {
		if b > at+it.lo-clear && b < at+it.hi+clear {
			at = b - clear - it.hi
		}
	}
	return at
}

// A pool is a run of items that stand as close as they may.
type pool struct {
	first, count int
	sum          length.Length // of the wished places less the offsets within the run
}

func (p pool) mean() length.Length { return p.sum / length.Length(p.count) }

// pooled is the least-squares placing of ordered items that keep their distances.
func pooled(items []item, gap length.Length) []length.Length {
	offsets := make([]length.Length, len(items))
	var pools []pool
	for i := range items {
		if i > 0 {
			offsets[i] = offsets[i-1] + apart(items[i-1], items[i], gap)
		}
		pools = append(pools, pool{i, 1, items[i].tip - offsets[i]})
		for n := len(pools); n > 1 && pools[n-2].mean() > pools[n-1].mean(); n = len(pools) {
			pools[n-2].count += pools[n-1].count
			pools[n-2].sum += pools[n-1].sum
			pools = pools[:n-1]
		}
	}
	places := make([]length.Length, 0, len(items))
	for _, p := range pools {
		for i := range p.count {
			places = append(places, p.mean()+offsets[p.first+i])
		}
	}
	return places
}

// hits tells whether a barrier comes closer than clear to the room from lo to hi.
func hits(lo, hi length.Length, barriers []length.Length, clear length.Length) bool {
	for _, b := range barriers {
		if b > lo-clear && b < hi+clear {
			return true
		}
	}
	return false
}

// within is the place nearest the middle of lo to hi for something of the given
// width that keeps clear of both ends and of the barriers. False if there is none.
func within(lo, hi, width length.Length, barriers []length.Length, clear length.Length) (centre length.Length, ok bool) {
	middle, need := (lo + hi).Half(), width+2*clear
	from := lo
	try := func(to length.Length) {
		if to-from < need {
			return
		}
		at := min(max(middle, from+need.Half()), to-need.Half())
		if !ok || (at-middle).Abs() < (centre-middle).Abs() {
			centre, ok = at, true
		}
	}
	for _, b := range barriers {
		if b > lo && b < hi {
			try(b)
			from = b
		}
	}
	try(hi)
	return centre, ok
}

// slant is the height over which leaders slant from their tips to the places
// they were spread to. 0 when none moved.
func slant(items []item, places []length.Length) length.Length {
	var most length.Length
	for i, it := range items {
		most = max(most, (places[i] - it.tip).Abs())
	}
	if most == 0 {
		return 0
	}
	return min(max(most.Half(), leastFan), mostFan)
}
