package door

import "stilewright/model/spec"

// NamesTwice are the figures that resolving a model would have entered twice.
func NamesTwice(m spec.Spec) []string {
	r := &resolver{model: m, units: m.Units.Unit}
	r.run()
	return r.twice
}
