package view_test

import (
	"testing"

	"stilewright/model/solid"
	"stilewright/render/view"
)

func BenchmarkLeaf(b *testing.B) {
	all := seven.bodies(solid.Vec{})
	for b.Loop() {
		view.Elevation(all, view.Front, view.Options{})
		view.Elevation(all, view.Back, view.Options{})
	}
}

func BenchmarkSet(b *testing.B) {
	var all []view.Body
	for i, y := range []float64{45, 0, 45, 0} {
		all = append(all, seven.bodies(at(float64(i)*690, y, 0))...)
	}
	for b.Loop() {
		view.Elevation(all, view.Front, view.Options{})
	}
}
