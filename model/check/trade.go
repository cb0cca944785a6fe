package check

import (
	"fmt"
	"strings"

	"stilewright/model/door"
	"stilewright/model/hanging"
	"stilewright/model/length"
	"stilewright/model/movement"
	"stilewright/model/spec"
	"stilewright/model/tolerance"
)

// A Report is a set held to the rules of the trade, and the tables they were
// held against.
type Report struct {
	Findings   []spec.Finding
	Clearances []Clearance
	Seasons    movement.Table
	Tolerances []tolerance.Stack
	Hanging    hanging.Hanging
}

// Of holds a set, resolved from the model, to the rules of the trade. It does
// not repeat what model/door finds.
func Of(m spec.Spec, s door.Set) Report {
	c := &checker{model: m, set: s, show: length.Style{Unit: s.Units, Mark: true}.Format}
	hung, wrong := hanging.Of(m, s)
	c.found = wrong
	c.report.Hanging = hung
	c.report.Clearances = Clearances(s)
	c.floor()
	c.reveals()
	c.faces()
	c.frame()
	c.pulls()
	c.glazing()
	c.sheets()
	c.lift()
	c.seasons()
	c.tolerances()
	if len(wrong) == 0 {
		c.hung()
	}
	c.pushed()
	c.report.Findings = c.found
	return c.report
}

// A checker carries the findings while they are found.
type checker struct {
	model  spec.Spec
	set    door.Set
	show   func(length.Length) string
	found  []spec.Finding
	report Report
}

// find records that a rule is broken, or what it has to tell. Lengths among the
// values are written in the set's units.
func (c *checker) find(id, path, sentence string, values ...any) {
	for i, v := range values {
		if l, is := v.(length.Length); is {
			values[i] = c.show(l)
		}
	}
	rule, _ := ruleOf(id)
	c.found = append(c.found, c.model.Find(path, id, rule.Severity, fmt.Sprintf(sentence, values...)))
}

// stress is a stress in the units of the set.
func (c *checker) stress(mpa float64) string {
	const psi = 0.45359237 * 9.80665 / (25.4 * 25.4) // MPa, exact by definition
	if c.set.Units == length.Inches {
		return fmt.Sprintf("%.0f psi", mpa/psi)
	}
	return fmt.Sprintf("%.1f MPa", mpa)
}

// fine is a small length, in thousandths of an inch or hundredths of a
// millimetre.
func (c *checker) fine(l length.Length) string {
	text := length.Style{Unit: length.Millimetres, Tick: length.Millimetre / 100, Mark: true}.Format(l)
	if c.set.Units == length.Inches {
		text = length.FormatDecimalInch(l, 3) + `"`
	}
	return strings.TrimPrefix(text, "≈ ")
}

// A choice is a limit in both units.
type choice struct{ inch, metric length.Length }

// in is the limit in the set's units.
func (c *checker) in(l choice) length.Length {
	if c.set.Units == length.Inches {
		return l.inch
	}
	return l.metric
}

// Our limits; why stands with their rules.
var (
	unevenReveal = choice{length.Inch / 4, 6 * length.Millimetre}
	tightBow     = choice{length.Inch / 16, 3 * length.Millimetre / 2}
	thinLip      = choice{length.Inch / 4, 6 * length.Millimetre}
	step         = choice{length.Inch / 32, length.Millimetre / 2} // of what is suggested
)

const leastRailFactor = 4

// mass is a mass in the units of the set: pounds where it is in inches.
func (c *checker) mass(kg float64) string {
	const pound = 0.45359237 // kg, exact by definition
	if c.set.Units == length.Inches {
		return fmt.Sprintf("%.1f lb", kg/pound)
	}
	return fmt.Sprintf("%.1f kg", kg)
}

// force is a force in the units of the set.
func (c *checker) force(newtons float64) string {
	const poundForce = 0.45359237 * 9.80665 // N, exact by definition
	if c.set.Units == length.Inches {
		return fmt.Sprintf("%.0f lbf", newtons/poundForce)
	}
	return fmt.Sprintf("%.0f N", newtons)
}
