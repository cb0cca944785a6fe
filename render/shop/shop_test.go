package shop

import (
	"fmt"
	"testing"

	"stilewright/model/door"
	"stilewright/model/spec"
)

func TestTry(t *testing.T) {
	for _, n := range []string{"attic-linen", "five-rail", "gallery-four", "pantry-one-lite", "studio-three"} {
		m, f, err := spec.ReadFile("../../samples/" + n + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		set, g := door.Resolve(m)
		job, h := Plan(set, m)
		fmt.Println(n, len(f), len(g), len(job.Works))
		for _, x := range h {
			fmt.Println(x)
		}
		fmt.Println(string(job.List()))
	}
}
