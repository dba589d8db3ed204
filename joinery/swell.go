package joinery

import (
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// Swells is how much a width of the piece along a dimension swells from the driest
// air of a climate to the dampest; nothing along its grain. Boards are taken as flat-sawn,
// the width along the rings, which moves more.
func (p *Piece) Swells(c timber.Climate, along Dimension, width measure.Length) (measure.Length, error) {
	if along == p.Grain || width <= 0 {
		return 0, nil
	}
	dry, damp, err := c.Moistures()
	if err != nil {
		return 0, err
	}
	m, err := p.Wood.Reckoned().Change(width, dry, damp, timber.Tangential)
	return m.Change, err
}
