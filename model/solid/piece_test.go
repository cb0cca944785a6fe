package solid_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"stilewright/model/piece"
)

// The pieces measure what their formulas say.
func TestPieces(t *testing.T) {
	for _, p := range piece.All() {
		assert.InEpsilon(t, p.Volume, p.Solid.Volume(), 1e-9, p.Name)
	}
}
