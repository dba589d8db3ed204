package joinery_test

import (
	"testing"

	"fencecard/joinery"

	"github.com/stretchr/testify/assert"
)

// A cut made by hand has no card, so who waits for it waits for what it waits
// for.
func TestWaitsForThroughHandWork(t *testing.T) {
	p := joinery.Piece{Cuts: []joinery.Cut{
		{Name: "groove"},
		{Name: "haunch", By: "saw", After: []string{"groove", "lap"}},
		{Name: "lap"},
		{Name: "tenon", After: []string{"haunch"}},
		{Name: "dado", After: []string{"tenon"}},
	}}
	assert.Equal(t, []string{"haunch", "groove", "lap"}, p.WaitsFor(&p.Cuts[3]))
	assert.Equal(t, []string{"tenon"}, p.WaitsFor(&p.Cuts[4]), "the tenon has a card of its own to wait for")
	assert.Empty(t, p.WaitsFor(&p.Cuts[0]))
}
