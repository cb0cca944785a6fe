package takeoff

import (
	"stilewright/model/cutting"
	"stilewright/model/length"
	"stilewright/model/spec"
)

// A FilmPlan is the film of one job and how it is taken from the roll.
type FilmPlan struct {
	Of     int    // index into the Takeoff's Jobs
	Side   string // of the panel: "front", "back", "both"
	Job    cutting.FilmJob
	Layout cutting.FilmLayout
}

// film lays out the film of every job that has one.
func (t *taker) film() {
	for i, job := range t.jobs {
		if f := job.Model.Stock.Film; f != nil {
			t.layOutFilm(i, *f)
		}
	}
}

func (t *taker) layOutFilm(job int, f spec.Film) {
	plan := FilmPlan{Of: job, Side: f.Side, Job: cutting.FilmJob{
		RollWidth: *f.Width,
		Overlap:   t.size(job, "stock.film.overlap", f.Overlap, filmLap),
		Margin:    t.size(job, "stock.film.margin", f.Margin, filmMargin),
	}}
	if f.Length != nil {
		plan.Job.RollLength = *f.Length
	}
	if plan.Side == "" {
		plan.Side = sideFront
		t.assume("stock.film.side", plan.Side, "the side one sees; "+houseRule)
	}
	direction := map[string]cutting.FilmDirection{"up": cutting.UpTheFace, "across": cutting.AcrossTheFace}[f.Direction]
	sides := 1
	if plan.Side == sideBoth {
		sides = 2
	}
	for _, p := range t.out.Parts {
		if p.Kind == Sheeted && p.Job == job {
			plan.Job.Faces = append(plan.Job.Faces, cutting.FilmFace{Label: t.out.Mark(p), Width: p.Net.Width, Height: p.Net.Length, Quantity: sides * p.Quantity, Direction: direction})
		}
	}
	if plan.Job.Overlap >= plan.Job.RollWidth {
		t.find(job, spec.Stops, "stock.film.overlap", RuleFilm, "strips overlap by %v on a roll %v wide; overlap less", plan.Job.Overlap, plan.Job.RollWidth)
		return
	}
	if long := t.longestFace(plan.Job); plan.Job.RollLength > 0 && long > plan.Job.RollLength {
		t.find(job, spec.Stops, "stock.film.length", RuleFilm, "a strip for the longest panel is %v long with its margins; a roll has %v: take a longer roll or another direction", long, plan.Job.RollLength)
		return
	}
	layout, err := cutting.LayOutFilm(plan.Job)
	if err != nil {
		t.faults(job, err, nil, "stock.film")
		return
	}
	plan.Layout = layout
	t.out.Film = append(t.out.Film, plan)
}

// longestFace is the longest strip any face must have, the shorter way round
// where either will do.
func (t *taker) longestFace(j cutting.FilmJob) length.Length {
	var long length.Length
	for _, f := range j.Faces {
		need := min(f.Width, f.Height)
		switch f.Direction {
		case cutting.UpTheFace:
			need = f.Height
		case cutting.AcrossTheFace:
			need = f.Width
		}
		long = max(long, need+2*j.Margin)
	}
	return long
}
