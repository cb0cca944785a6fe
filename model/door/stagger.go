package door

import "stilewright/model/length"

// stagger moves the washers on one side of a member between those on its other
// side, where their screws would meet or it is asked for.
func (r *resolver) stagger(at starts) {
	leaf := &r.set.Leaf
	if !leaf.Washer.Stagger {
		return
	}
	for i := range leaf.Lites {
		lite := &leaf.Lites[i]
		if lite.Row > 0 && r.staggers(leaf.Rails[lite.Row].Width()) {
			r.between(lite, Bottom, at)
		}
		if leaf.muntinOn(*lite, Left) && r.staggers(leaf.Muntins[lite.Row*(leaf.Columns-1)+lite.Column-1].Width()) {
			r.between(lite, Left, at)
		}
		if r.stopped {
			return
		}
	}
}

// between puts the washers of an edge midway between where they were: one less,
// or two where there was one in the middle.
func (r *resolver) between(lite *Lite, side Side, at starts) {
	from, to := lite.Sight.Min.X, lite.Sight.Max.X
	if side == Left {
		from, to = lite.Sight.Min.Y, lite.Sight.Max.Y
	}
	w, places := r.set.Leaf.Washer, lite.Washers[side]
	clear := w.Screw.Diameter + screwClear.in(r.units)
	apart := length.Longest
	var moved []length.Length
	switch len(places) {
	case 0:
		return
	case 1:
		first, last := at.on(r.set.Leaf, *lite, side)
		moved = []length.Length{from + first, to - last}
		apart = min(places[0]-moved[0], moved[1]-places[0])
		if moved[1]-moved[0] < w.Outside {
			apart = 0
		}
	default:
		for i := range len(places) - 1 {
			step := places[i+1] - places[i]
			moved = append(moved, places[i]+step.Half())
			apart = min(apart, step.Half())
		}
	}
	if apart < clear {
		r.stop("panel.held_by", RuleWasherRoom, "staggered, the screws on both sides of a member pass %v from middle to middle on an edge %v long; they need %v: take shorter screws, or a wider spacing", max(0, apart), to-from, clear)
		return
	}
	lite.Washers[side] = moved
}
