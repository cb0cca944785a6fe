package door

import (
	"stilewright/model/length"
	"stilewright/model/spec"
)

// NamesTwice are the figures that resolving a model would have entered twice.
func NamesTwice(m spec.Spec) []string {
	r := &resolver{model: m, units: m.Units.Unit}
	r.run()
	return r.twice
}

// ShareAlike shares a length as the lites across a leaf share it.
func ShareAlike(whole, tick length.Length, n int) []length.Length {
	return (&resolver{tick: tick}).shareAlike(whole, n)
}
