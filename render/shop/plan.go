package shop

import (
	"cmp"
	"fmt"
	"slices"

	"stilewright/model/door"
	"stilewright/model/length"
	"stilewright/model/machining"
	"stilewright/model/solid"
	"stilewright/model/spec"
	"stilewright/model/takeoff"
	"stilewright/render/dxf"
)

// Rules of this package beside those of machining.Lint.
const (
	RuleLayerName = "layer-name"    // a layer's word cannot stand in a file
	RuleKerf      = "kerf-too-wide" // a line cannot be moved by half the kerf, or written in segments
	RuleNest      = "nest"          // the panels cannot be laid on sheets
	RuleLeft      = "shop-left-out" // a file a shop may miss is not written
)

// A Work is one cutting file and what it is for.
type Work struct {
	Name    string // of the file, without its extension
	Part    Part
	Setup   machining.Setup // finished sizes
	LeftOut []string        // what is not in any file of the part; with its first setup
	Cutting dxf.Cutting
}

// A Job is all a shop is sent.
type Job struct {
	Options Options
	Works   []Work // parts in the order of the leaf, then the leaf, jigs, and nested sheets
}

// Plan plans the work on a set. Findings that stop leave the Job empty: the
// files of a set no shop can make whole are worth nothing. Where the model says
// nothing of a shop, nothing stops: the files that a common one could not make
// are warned of and left out.
//
// taken is what the set takes: panels are nested on the sheets it buys, and those
// it orders to size are not nested. It must be of the set alone. The zero one
// leaves out all nests.
func Plan(s door.Set, m spec.Spec, taken takeoff.Takeoff) (Job, []spec.Finding) {
	p := &planner{set: s, model: m, taken: taken, job: Job{Options: OptionsOf(m)}}
	p.layerNames()
	for _, part := range partsOf(s) {
		p.part(p.ordered(part))
	}
	p.leaf()
	p.jigs()
	if !p.stopped {
		p.nests()
	}
	if p.stopped {
		return Job{}, p.findings
	}
	if p.warned {
		p.find("shop", RuleLeft, spec.Warning, "those files are left out of what a CNC shop is sent; tell under shop: what yours can do")
	}
	return p.job, p.findings
}

// A planner gathers a job.
type planner struct {
	set      door.Set
	model    spec.Spec
	taken    takeoff.Takeoff
	job      Job
	findings []spec.Finding
	stopped  bool
	warned   bool // of a file that is left out
}

// stop records a finding that stops if the model speaks of a shop, and leaves
// out a file if not.
func (p *planner) stop(path, rule, sentence string, values ...any) {
	if p.model.Shop == nil {
		p.warned = true
		p.find(path, rule, spec.Warning, sentence, values...)
		return
	}
	p.stopped = true
	p.find(path, rule, spec.Stops, sentence, values...)
}

// find records a finding once.
func (p *planner) find(path, rule string, severity spec.Severity, sentence string, values ...any) {
	f := p.model.Find(path, rule, severity, fmt.Sprintf(sentence, values...))
	if !slices.Contains(p.findings, f) {
		p.findings = append(p.findings, f)
	}
}

// pathOf is the key a rule of machining.Lint is about.
var pathOf = map[string]string{
	machining.RuleCorner: "shop.inside_radius", machining.RuleFeature: "shop.least_feature", machining.RuleBridge: "shop.bridge",
	machining.RuleHole: "shop.hole_percent", machining.RuleBore: "shop.least_bore", machining.RuleMachine: "shop.machine", machining.RuleSheet: "shop.sheet",
}

// sound lints a work and tells whether it can be made.
func (p *planner) sound(w Work) bool {
	good := true
	faults := w.Setup.Lint(p.job.Options.Profile, w.Part.Sheet && !w.Part.Order)
	for i, f := range faults {
		path := cmp.Or(pathOf[f.Rule], "shop")
		if slices.ContainsFunc(faults[:i], func(g machining.Fault) bool { return g.Rule == f.Rule && g.Minor == f.Minor }) {
			continue // the first is told, for all
		}
		more := ""
		if n := alike(faults[i+1:], f); n > 0 {
			more = fmt.Sprintf(" (and %d more like it)", n)
		}
		if f.Minor {
			p.find(path, f.Rule, spec.Warning, "%s, from %s: %s%s", w.Part.title(), w.Setup.Face.Words(), f.Sentence, more)
			continue
		}
		good = false
		p.stop(path, f.Rule, "%s, from %s: %s%s", w.Part.title(), w.Setup.Face.Words(), f.Sentence, more)
	}
	return good
}

// alike counts the faults of the same rule and weight.
func alike(faults []machining.Fault, f machining.Fault) (n int) {
	for _, g := range faults {
		if g.Rule == f.Rule && g.Minor == f.Minor {
			n++
		}
	}
	return n
}

// title names a part: "R2 cross rail".
func (p Part) title() string { return p.Labels[0] + " " + p.Name }

// part plans the files of one part.
func (p *planner) part(part Part) {
	plan := machining.Setups(part.Solid, p.job.Options.Profile.Tool)
	first := len(p.job.Works)
	left := plan.LeftOut
	for _, setup := range plan.Setups {
		if !p.add(Work{Part: part, Setup: setup}) {
			left = append(left, "all work from "+setup.Face.Words())
		}
	}
	if len(p.job.Works) > first {
		p.job.Works[first].LeftOut = left
	} else if len(plan.Setups) == 0 {
		p.find("shop", RuleLeft, spec.Note, "%s has no file: %v", part.title(), plan.LeftOut)
	}
}

// add lints a work, makes its cutting and adds it to the job; it tells whether
// that went well.
func (p *planner) add(w Work) bool {
	if !p.sound(w) {
		return false
	}
	o := p.job.Options
	if o.Marks && w.Part.Solid.Blank.Region != nil { // nested panels carry their own
		w.Setup = marked(w.Setup, w.Part.Labels[0]+" "+w.Setup.Face.String())
	}
	w.Name = p.fileName(w)
	written, err := o.asWritten(w.Setup, o.kerfOf(w.Part))
	if err != nil {
		p.stop("shop.kerf", RuleKerf, "%s: %v", w.Part.title(), err)
		return false
	}
	w.Cutting = o.cutting(written)
	p.job.Works = append(p.job.Works, w)
	return true
}

// kerfOf is the kerf that lines of the part are moved for. Wood is milled, and
// the program of a mill moves its own path; what is ordered has its own size.
func (o Options) kerfOf(p Part) length.Length {
	if p.Sheet && !p.Order {
		return o.Kerf
	}
	return 0
}

// leaf plans the pass that mills the rabbets of an assembled leaf, where the
// table holds one.
func (p *planner) leaf() {
	var bodies []solid.Solid
	for _, part := range p.set.Leaf.Parts {
		if part.Material != "" && part.Role != door.PanelRole && part.Solid.Blank.Axis == solid.Y {
			bodies = append(bodies, part.Solid)
		}
	}
	if len(bodies) == 0 {
		return
	}
	o := p.job.Options
	for _, f := range []machining.Face{machining.Back, machining.Front} {
		p.assembled(machining.Assembly(bodies, f, "rabbet", o.Profile.Tool))
	}
}

// assembled plans one face of the assembled leaf, if it has pockets.
func (p *planner) assembled(setup machining.Setup) {
	o := p.job.Options
	if !slices.ContainsFunc(setup.Contours, func(c machining.Contour) bool { return c.Operation == machining.Pocket }) {
		return
	}
	whole := Part{Labels: []string{"LEAF"}, Name: "assembled leaf, rabbets", Material: p.set.Stock.Species.Name, Thickness: p.set.Leaf.Thickness, Quantity: len(p.set.Hung), Instead: true,
		Notes: []string{"instead of the rabbet pockets of the single parts: one or the other, not both"}}
	if o.Marks {
		setup = marked(setup, "LEAF "+setup.Face.String())
	}
	w := Work{Part: whole, Setup: setup}
	for _, f := range setup.Lint(o.Profile, false) {
		if f.Rule == machining.RuleMachine {
			p.find("shop.machine", RuleLeft, spec.Note, "no file to mill the rabbets of the assembled leaf: %s", f.Sentence)
			return
		}
	}
	p.add(w)
}
