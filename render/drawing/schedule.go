package drawing

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/solid"
	"stilewright/render/sheet"
)

// schedules lists the parts of the whole set, its hardware, and the notes and
// cautions that go with them.
func schedules(p *page) {
	parts, hardware := p.setRows(), p.hardwareRows()
	top := p.work.Max.Add(-p.work.Width(), 0)
	wide, high := p.headed(top, "PARTS OF THE SET", parts, map[int]bool{1: true, 6: true})
	at := top.Add(wide+2*gutter, 0)
	if more, _ := p.tableSize(hardware); at.X+more > p.work.Max.X {
		at = top.Add(0, -high-gutter)
	}
	_, down := p.headed(at, "HARDWARE OF THE SET", hardware, map[int]bool{0: true})
	notes := cautions(p.set.Leaf)
	low := min(top.Y-high, at.Y-down) - gutter
	n := 3
	for across, _ := columns(n, notes); n > 1 && across > p.work.Width(); across, _ = columns(n, notes) {
		n--
	}
	if _, tall := columns(n, notes); low-tall < p.work.Min.Y {
		p.err = fmt.Errorf("the schedules of parts and hardware take more than %s paper: name a larger paper", p.paper.Name)
		return
	}
	p.text(plane.At(top.X, low-linePitch), titleHeight, sheet.Start, false, "NOTES AND CAUTIONS")
	p.notes(plane.At(top.X, low-2*linePitch+2*mm), n, notes...)
}

// headed is a table with its title over it.
func (p *page) headed(corner plane.Point, title string, rows [][]string, right map[int]bool) (wide, high length.Length) {
	p.text(corner.Add(tablePad, -linePitch), titleHeight, sheet.Start, false, title)
	wide, high = p.table(corner.Add(0, -2*linePitch+2*mm), rows, right)
	return wide, high + 2*linePitch
}

// setRows is the parts list of the whole set.
func (p *page) setRows() [][]string {
	f, leaves := p.format, len(p.set.Hung)
	rows := [][]string{{"PART", "QTY", "NAME", "LENGTH", "WIDTH", "THICK", p.weightUnit() + " EACH", "MATERIAL"}}
	for _, k := range kinds(p.set.Leaf) {
		a, b := k.first.Solid.Bounds()
		along, across := b.Z-a.Z, b.X-a.X
		if k.first.Grain == solid.X {
			along, across = across, along
		}
		rows = append(rows, k.rowsOf(fmt.Sprint(len(k.labels)*leaves), k.first.Name, f(along), f(across), f(b.Y-a.Y), p.weight(k.first.Mass), k.first.Material)...)
	}
	return rows
}

// hardwareRows is what is bought for the set beside wood and sheet.
func (p *page) hardwareRows() [][]string {
	s, f := p.set, p.format
	rows := [][]string{{"QTY", "WHAT", "SIZE"}}
	add := func(n int, what, size string) { rows = append(rows, []string{fmt.Sprint(n), what, size}) }
	add(1, "track, "+s.Track.Row, f(s.Track.Length)+" long")
	add(2*len(s.Hung), "hanger", "for a leaf of "+p.weight(s.Leaf.Mass)+" "+strings.ToLower(p.weightUnit()))
	if s.Fascia != nil {
		a, b := s.Fascia.Solid.Bounds()
		add(1, "fascia", f(b.X-a.X)+" × "+f(s.Fascia.Height)+" × "+f(s.Fascia.Thickness))
	}
	for _, c := range counted(s.Leaf.Hardware, func(part door.Part) string { return part.Name + "\t" + p.pieceSize(part) }) {
		what, size, _ := strings.Cut(c.what, "\t")
		add(c.n*len(s.Hung), what, size)
	}
	if pocket := s.Leaf.Joint.Pocket; pocket.Plugs {
		add(pocket.Holes*len(s.Hung), "pocket plug", "⌀ "+f(pocket.Diameter)+", "+f(pocket.Plug)+" long at least")
	}
	for _, c := range counted(s.Leaf.Pulls, func(pull door.Pull) string { return "flush pull\tmortise " + p.pullSize(pull) }) {
		what, size, _ := strings.Cut(c.what, "\t")
		add(c.n*len(s.Hung), what, size)
	}
	add(s.Overlaps(), "floor guide", "below each overlap")
	for _, c := range counted(s.Leaf.Screws, func(c door.Screw) string { return p.screwWords(c) }) {
		what, size, _ := strings.Cut(c.what, "\t")
		add(c.n*len(s.Hung), what, size)
	}
	return rows
}

// A count is how often something occurs.
type count struct {
	what string
	n    int
}

// counted counts the items that are called alike, in the order of their names.
func counted[T any](items []T, name func(T) string) []count {
	var all []count
	for _, item := range items {
		what := name(item)
		i := slices.IndexFunc(all, func(c count) bool { return c.what == what })
		if i < 0 {
			all = append(all, count{what, 1})
			continue
		}
		all[i].n++
	}
	slices.SortFunc(all, func(a, b count) int { return cmp.Compare(a.what, b.what) })
	return all
}

// pieceSize is the size of a piece of hardware in words.
func (p *page) pieceSize(part door.Part) string {
	f, leaf := p.format, p.set.Leaf
	a, b := part.Solid.Bounds()
	sizes := []length.Length{b.X - a.X, b.Y - a.Y, b.Z - a.Z}
	slices.SortFunc(sizes, func(a, b length.Length) int { return cmp.Compare(b, a) })
	switch part.Role {
	case door.WasherRole:
		return fmt.Sprintf("⌀ %s × %s, hole %s", f(leaf.Washer.Outside), f(leaf.Washer.Thickness), f(leaf.Washer.Hole))
	case door.DowelRole, door.PlugRole:
		return fmt.Sprintf("⌀ %s × %s", f(sizes[1]), f(sizes[0]))
	case door.SealantRole:
		var round float64
		for _, path := range part.Solid.Blank.Region {
			round += path.Length()
		}
		return fmt.Sprintf("%s thick, %s wide, %s round the panel", f(leaf.Bed), f(leaf.Panel.Bite), f(length.Round(round/2).Nearest(p.tick())))
	case door.StopRole, door.BeadRole:
		return fmt.Sprintf("%s long point to long point, %s × %s", f(sizes[0]), f(sizes[1]), f(sizes[2]))
	case door.TenonRole:
		long, wide := b.X-a.X, b.Z-a.Z
		if part.Grain == solid.Z {
			long, wide = wide, long
		}
		return fmt.Sprintf("%s long × %s wide × %s", f(long), f(wide), f(b.Y-a.Y))
	}
	return fmt.Sprintf("%s × %s × %s", f(sizes[0]), f(sizes[1]), f(sizes[2]))
}

// pullSize is the size of a pull's mortise in words.
func (p *page) pullSize(pull door.Pull) string {
	if pull.Round {
		return fmt.Sprintf("⌀ %s × %s deep", p.format(pull.Width), p.format(pull.Depth))
	}
	return fmt.Sprintf("%s × %s × %s deep", p.format(pull.Width), p.format(pull.Height), p.format(pull.Depth))
}

// screwWords is a screw's purpose and size, apart by a tab.
func (p *page) screwWords(c door.Screw) string {
	f := p.format
	x, y, z := (c.Tip.X - c.Head.X).MM(), (c.Tip.Y - c.Head.Y).MM(), (c.Tip.Z - c.Head.Z).MM()
	long := length.Round(math.Sqrt(float64(x*x) + float64(y*y) + float64(z*z)))
	if c.For == "washer" {
		return fmt.Sprintf("screw of a washer\tNo. %d × %s", p.set.Leaf.Washer.Screw.Gauge, f(p.set.Leaf.Washer.Length))
	}
	switch {
	case c.For == "hanger":
		return fmt.Sprintf("screw of a hanger\tNo. %d × %s", p.set.Leaf.Hanger.Screw.Gauge, f(p.set.Leaf.Hanger.Length))
	case c.For == "stop" && p.set.Leaf.Strip.Fix == "screws":
		return fmt.Sprintf("screw of a strip\tNo. %d × %s", p.set.Leaf.Strip.Screw.Gauge, f(p.set.Leaf.Strip.Length))
	case c.For == "stop":
		return fmt.Sprintf("pin of a strip\t⌀ %s × %s", f(c.Diameter.Nearest(p.tick())), f(long.Nearest(p.tick())))
	case c.For == "pocket":
		long = p.set.Leaf.Joint.Pocket.Screw
	}
	for _, row := range catalog.WoodScrews() {
		if row.Diameter == c.Diameter {
			return fmt.Sprintf("%s screw\tNo. %d × %s", c.For, row.Gauge, f(long.Nearest(p.tick())))
		}
	}
	return fmt.Sprintf("%s screw\t⌀ %s × %s", c.For, f(c.Diameter.Nearest(p.tick())), f(long.Nearest(p.tick())))
}

// cautions are the notes and cautions of a set. Common practice, no source.
func cautions(leaf door.Leaf) []string {
	lines := []string{
		"Measure the track in hand before cutting anything:",
		"head drop and channel spacing differ by maker.",
		"Check every size against the opening as built.",
		"",
		"Saws, planers, routers: read the machine's manual;",
		"guards and riving knife on, eye and ear protection,",
		"push sticks, no gloves near a turning cutter.",
		"Rout in passes, against the feed of the cutter.",
		"",
		"Dust: extract it at the machine and wear a mask;",
		"some woods irritate skin and lungs.",
		"",
	}
	if leaf.Panel.Material.Brittle || leaf.Panel.Material.Clear {
		lines = append(lines,
			"Glass and plastic sheet: gloves and long sleeves;",
			"carry it upright, two people to a large one. Whether",
			"safety glazing is required: ask the local authority.",
			"")
	}
	return append(lines,
		"Fillers, paints, solvents: air the room, keep flames",
		"away, spread oily rags out to dry.",
		"",
		"Lift and hang a leaf with two people. Screws of the",
		"track must reach sound framing: follow local codes",
		"and, where they ask for it, a licensed trade.")
}
