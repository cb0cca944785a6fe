package step

import (
	"testing"

	"stilewright/model/piece"
)

// Every joint, seat, edge and fitting is bounded as the outside reader measures
// it to be.
func TestPieces(t *testing.T) {
	var parts []Part
	for _, p := range piece.All() {
		parts = append(parts, Part{Label: p.Name, Solid: p.Solid})
	}
	agree(t, parts)
}
