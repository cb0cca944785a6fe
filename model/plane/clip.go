package plane

// Clip cuts a path along the edges of r and gives the pieces in r's interior,
// those outside it, and those that run along its boundary, each list in the
// order of the path and each piece in the path's direction. Neighbouring
// stretches with the same fate stay one piece; of a closed path also the last
// with the first. The path may cross itself. A stretch within 2 nm of an edge
// runs along it and follows it.
func Clip(p Path, r Region) (inside, outside, boundary []Path) {
	arr := arrange(Region{p}, r)
	var all []clipping
	for i, l := range arr.chains {
		s := &arr.spans[l.span]
		if s.owner != 0 {
			break
		}
		e := arr.pieces[l.piece].Edge
		if !l.forward {
			e = e.Reverse()
		}
		at := arr.fate(&arr.pieces[l.piece])
		last := len(all) - 1
		if last < 0 || all[last].at != at || all[last].path[len(all[last].path)-1].To != e.From {
			all = append(all, clipping{at: at, path: Path{e}})
			continue
		}
		all[last].add(e, arr.chains[i-1].span == l.span || !s.first)
	}
	if n := len(all) - 1; n > 0 && all[0].at == all[n].at && all[n].end() == all[0].path[0].From {
		all[0].path = append(all[n].path, all[0].path...)
		all = all[:n]
	}
	for _, c := range all {
		switch c.at {
		case Inside:
			inside = append(inside, c.path)
		case Outside:
			outside = append(outside, c.path)
		default:
			boundary = append(boundary, c.path)
		}
	}
	return inside, outside, boundary
}

// A clipping is a piece of a clipped path.
type clipping struct {
	at   Position
	path Path
}

func (c *clipping) end() Point { return c.path[len(c.path)-1].To }

// add lengthens the clipping by e, which continues its last edge if both were
// cut from the same one.
func (c *clipping) add(e Edge, same bool) {
	last := &c.path[len(c.path)-1]
	if same && continues(*last, e) {
		last.To = e.To
		return
	}
	c.path = append(c.path, e)
}

// fate is where a piece of the first owner lies in the second's region.
func (arr *arrangement) fate(p *piece) Position {
	switch {
	case p.net[1] != 0:
		return Boundary
	case arr.inside(p.mid2, 1):
		return Inside
	default:
		return Outside
	}
}
