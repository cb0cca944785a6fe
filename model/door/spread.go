package door

import "stilewright/model/length"

// starts is how far from a lite's corner the first fastener stands: along a
// stile, or a rail past a muntin's end; along a rail that ends there; and along
// a muntin.
type starts struct{ up, across, muntin length.Length }

// on is how far from its corners the first and the last fastener on a side of
// a lite stand.
func (at starts) on(l Leaf, lite Lite, side Side) (first, last length.Length) {
	if side == Left || side == Right {
		if l.muntinOn(lite, side) {
			return at.muntin, at.muntin
		}
		return at.up, at.up
	}
	first, last = at.across, at.across
	if l.muntinOn(lite, Left) {
		first = at.up // the muntin ends there and the rail goes on
	}
	if l.muntinOn(lite, Right) {
		last = at.up
	}
	return first, last
}

// spreadRound places fasteners on the four sides of a lite.
func (r *resolver) spreadRound(lite Lite, at starts, most, apart length.Length) (round [4][]length.Length) {
	for _, side := range []Side{Bottom, Top, Left, Right} {
		edge, from := lite.Sight.Width(), lite.Sight.Min.X
		if side == Left || side == Right {
			edge, from = lite.Sight.Height(), lite.Sight.Min.Y
		}
		first, last := at.on(r.set.Leaf, lite, side)
		round[side] = shifted(r.spread(edge, first, last, most, apart), from)
	}
	return round
}

// shifted are places moved by one length.
func shifted(places []length.Length, by length.Length) []length.Length {
	var at []length.Length
	for _, place := range places {
		at = append(at, place+by)
	}
	return at
}

// spread places fasteners on an edge: the first and the last as far from its
// ends as told, and the others at most `most` apart; one midway where two would
// not stand `apart`.
func (r *resolver) spread(edge, first, last, most, apart length.Length) []length.Length {
	run := edge - first - last
	switch {
	case run < 0:
		return nil
	case run < apart:
		return []length.Length{first + run.Half()}
	}
	spaces := int((run + most - 1) / most)
	places := []length.Length{first}
	for _, step := range r.share(run, spaces) {
		places = append(places, places[len(places)-1]+step)
	}
	return places
}
