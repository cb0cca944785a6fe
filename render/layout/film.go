package layout

import (
	"fmt"

	"stilewright/model/cutting"
	"stilewright/model/length"
	"stilewright/model/plane"
	"stilewright/model/takeoff"
	"stilewright/render/sheet"
)

// filmPages draws every pull of every roll to scale, equal ones once.
func (b *builder) filmPages() {
	for _, plan := range b.t.Film {
		if b.err == nil {
			b.filmPlan(plan)
		}
	}
}

func (b *builder) filmPlan(plan takeoff.FilmPlan) {
	const about = "Every pull of film from the roll, with the strips it is slit into."
	title := "Film " + b.t.Said(plan.Job.RollWidth) + " wide"
	longest := length.Length(0)
	for _, pull := range plan.Layout.Pulls {
		longest = max(longest, pull.Length)
	}
	begin := func() *page {
		p := b.add("film", title, about)
		p.scale = b.scaled(longest, plan.Job.RollWidth, p.work.Width(), p.work.Height().Half())
		p.below(titleHeight, title)
		return p
	}
	p := begin()
	f := b.style.Format
	p.below(letterHeight, fmt.Sprintf("The roll's near edge is drawn below; pull to the right, cut square, then slit. Strips on one panel overlap by %s; each stands over the panel by %s to be trimmed on it. It goes on the %s of the panel.", f(plan.Job.Overlap), f(plan.Job.Margin), sides(plan.Side)))
	p.below(letterHeight, "Takes "+plan.Takes(b.t)+"; "+plan.Bound(b.t)+".")
	pulls := plan.Layout.Pulls
	for i := 0; i < len(pulls) && b.err == nil; {
		n := 1
		for i+n < len(pulls) && samePull(plan, pulls[i], pulls[i+n]) {
			n++
		}
		high := p.scale.OnPaper(plan.Job.RollWidth)
		if p.top-high-3*linePitch < p.work.Min.Y {
			p = begin()
		}
		b.pull(p, plan, pulls[i], n)
		i += n
	}
}

func sides(side string) string {
	if side == "both" {
		return "front and the back"
	}
	return side
}

// samePull tells whether two pulls are slit alike, for the same panels.
func samePull(plan takeoff.FilmPlan, a, c cutting.Pull) bool {
	if a.Length != c.Length || len(a.Strips) != len(c.Strips) {
		return false
	}
	for i, s := range a.Strips {
		o := c.Strips[i]
		if s != o && (s.Width != o.Width || s.Length != o.Length || s.At != o.At || plan.Job.Faces[s.Face].Label != plan.Job.Faces[o.Face].Label) {
			return false
		}
	}
	return true
}

// pull draws one pull, done n times.
func (b *builder) pull(p *page, plan takeoff.FilmPlan, pull cutting.Pull, n int) {
	p.top -= linePitch
	p.below(letterHeight, fmt.Sprintf("%d × pull off %s", n, b.style.Format(pull.Length)))
	p.top -= mm
	high := p.scale.OnPaper(plan.Job.RollWidth)
	corner := plane.At(p.work.Min.X, p.top-high)
	whole := onPaper(p.scale, corner, 0, 0, pull.Length, plan.Job.RollWidth)
	p.marks = append(p.marks, sheet.Fill{Layer: sheet.Panel, Tone: sheet.Tint, Region: plane.Region{whole.Path()}})
	var boxes []plane.Box
	for _, s := range pull.Strips {
		box := onPaper(p.scale, corner, 0, s.At, s.Length, s.Width)
		boxes = append(boxes, box)
		p.marks = append(p.marks, sheet.Fill{Layer: sheet.Panel, Tone: sheet.Paper, Region: plane.Region{box.Path()}})
		p.line(sheet.Outline, sheet.Narrow, box.Path())
	}
	p.line(sheet.Outline, sheet.Wide, whole.Path())
	for i, s := range pull.Strips {
		name, size := plan.Job.Faces[s.Face].Label, b.style.Format(s.Width)+" x "+b.style.Format(s.Length)
		if s.Of > 1 {
			name += fmt.Sprintf(", strip %d of %d", s.Number, s.Of)
		}
		if !p.label(boxes[i], name, size) {
			p.label(boxes[i], name)
		}
	}
	p.top = corner.Y
}
