package layout

import (
	"fmt"
	"slices"
	"strings"

	"stilewright/model/catalog"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/takeoff"
	"stilewright/render/sheet"
)

// Label stocks of a job that names none.
const (
	inchLabels   = "letter-30"
	metricLabels = "A4-24"
)

// labelInset is what a label's print keeps off its edges: printers miss by this.
const labelInset = 2 * mm

// A piece is one part in one leaf: what a label is stuck on.
type piece struct {
	mark, name, size, from, job string
}

// text is what the label's code says: little, so that its modules are large.
func (p piece) text() string {
	const most = 40 // characters of the job's name
	job := []rune(p.job)
	return fmt.Sprintf("%s | %s | %s", p.mark, p.size, string(job[:min(most, len(job))]))
}

// Labels are label sheets with one label for every piece, on the common stock
// of the units; they print at full size. Each label names part, leaf, net size,
// material and job, and carries part, leaf, size and job in a QR code.
func Labels(t takeoff.Takeoff) ([]sheet.Sheet, error) {
	name := metricLabels
	if t.Units == length.Inches {
		name = inchLabels
	}
	stock, err := catalog.Labels(name)
	if err != nil {
		return nil, err
	}
	paper, err := catalog.PaperSize(stock.Paper)
	if err != nil {
		return nil, err
	}
	wide, high := paper.Portrait()
	each := stock.Across * stock.Down
	all := pieces(t)
	var out []sheet.Sheet
	for from := 0; from < len(all); from += each {
		n := from/each + 1
		s := sheet.Sheet{Name: fmt.Sprintf("labels-%d", n), Title: fmt.Sprintf("Labels, sheet %d", n), Width: wide, Height: high, Scale: sheet.Scale{Paper: 1, Real: 1},
			Description: fmt.Sprintf("Labels %s by %s mm, %d across and %d down; print at 100 %%.", stock.Width.Decimal(), stock.Height.Decimal(), stock.Across, stock.Down)}
		for i, p := range all[from:min(from+each, len(all))] {
			left := stock.Left + stock.StepX*length.Length(i%stock.Across)
			top := high - stock.Top - stock.StepY*length.Length(i/stock.Across)
			marks, err := labelMarks(p, plane.BoxOf(plane.At(left, top-stock.Height), plane.At(left+stock.Width, top)))
			if err != nil {
				return nil, err
			}
			s.Marks = append(s.Marks, marks...)
		}
		out = append(out, s)
	}
	return out, nil
}

// pieces are all pieces, leaf by leaf.
func pieces(t takeoff.Takeoff) []piece {
	var all []piece
	f := length.Style{Unit: t.Units}.Format
	unit := " mm"
	if t.Units == length.Inches {
		unit = " in"
	}
	add := func(p takeoff.Part, label, leaf string) {
		if p.Kind == takeoff.Hardware {
			return
		}
		if letter := t.Letter(p.Job); letter != "" {
			label = letter + "." + label
		}
		if leaf != "" {
			label += ", leaf " + leaf
		}
		all = append(all, piece{label, p.Name, f(p.Net.Length) + " x " + f(p.Net.Width) + " x " + f(p.Net.Thickness) + unit, p.Material, t.Jobs[p.Job].Job})
	}
	for job, set := range t.Jobs {
		for _, hung := range set.Hung {
			for _, label := range leafLabels(t, job) {
				add(partOf(t, job, label), label, hung.Label)
			}
		}
		for _, p := range t.Parts {
			if p.Job == job && len(p.Leaves) == 0 {
				for _, label := range p.Labels {
					add(p, label, "")
				}
			}
		}
	}
	return all
}

// leafLabels are the labels of a job's leaf parts, in the order of the leaf: its
// own parts, then what its hardware is cut from.
func leafLabels(t takeoff.Takeoff, job int) []string {
	var own, others []string
	listed := map[string]bool{}
	for _, p := range t.Jobs[job].Leaf.Parts {
		own = append(own, p.Label)
		listed[p.Label] = true
	}
	for _, p := range t.Parts {
		for _, label := range p.Labels {
			if p.Job == job && len(p.Leaves) > 0 && !listed[label] {
				others = append(others, label)
			}
		}
	}
	return append(own, others...)
}

// partOf is the row of a job's leaf part.
func partOf(t takeoff.Takeoff, job int, label string) takeoff.Part {
	for _, p := range t.Parts {
		if p.Job == job && len(p.Leaves) > 0 && slices.Contains(p.Labels, label) {
			return p
		}
	}
	return takeoff.Part{Kind: takeoff.Hardware}
}

// labelMarks print one label: the code at the left, lines beside it.
func labelMarks(p piece, box plane.Box) ([]sheet.Mark, error) {
	room := box.Grow(-labelInset)
	side := min(room.Height(), room.Width().Half())
	code, err := codeOf(p.text(), side)
	if err != nil {
		return nil, err
	}
	foot := room.Min.Add(0, (room.Height() - side).Half())
	marks := []sheet.Mark{sheet.Fill{Layer: sheet.Outline, Tone: sheet.Ink, Region: code.Translate(foot.X, foot.Y)}}
	left := foot.X + side + mm/2
	wide := room.Max.X - left
	y := room.Max.Y - markPitch
	marks = append(marks, textAt(plane.At(left, y), titleHeight, sheet.Start, shortened(p.mark, wide, titleHeight)))
	lines := p.lines(wide, int((y-room.Min.Y)/leastPitch))
	for _, line := range lines {
		y -= min(markPitch, (room.Height() - markPitch).Split(len(lines))[0])
		marks = append(marks, textAt(plane.At(left, y), labelHeight, sheet.Start, line))
	}
	return marks, nil
}

// Of a label's text: the height of all but its mark, and from line to line, set
// closer where a label is low and full. Common practice, no source.
const (
	labelHeight = 2 * mm
	markPitch   = 4 * mm
	leastPitch  = 14 * mm / 5
)

// lines are size, name and job of a label, at most two lines each and the job
// three, where the label has room for so many.
func (p piece) lines(wide length.Length, room int) []string {
	var lines []string
	for _, one := range []struct {
		text string
		most int
	}{{p.size, 2}, {p.name + ", " + p.from, 2}, {p.job, 3}} {
		set := wrapped(one.text, wide, labelHeight)
		if most := min(one.most, room-len(lines)); len(set) > most {
			rest := strings.Join(set[max(0, most-1):], " ")
			set = append(set[:max(0, most-1)], shortened(rest, wide, labelHeight))[:max(0, most)]
		}
		lines = append(lines, set...)
	}
	return lines
}
