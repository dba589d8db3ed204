package joinery

// unknownWood stands in for a wood that the plan does not name: of the woods of
// the table it moves most.
const unknownWood = "American beech"

// Reckoned returns the wood, or the one that stands in for an unknown.
func (w Wood) Reckoned() Wood {
	if w.Name == "" {
		w, _, _ = FindWood(unknownWood)
	}
	return w
}

// Moistures gives the moisture content of wood, in percent, at the driest and
// at the dampest. The zero climate is the usual one.
func (c Climate) Moistures() (dry, damp float64, err error) {
	if c.Dry == 0 && c.Damp == 0 {
		c = DefaultClimate
	}
	if dry, err = Moisture(c.Temperature, c.Dry); err != nil {
		return 0, 0, err
	}
	damp, err = Moisture(c.Temperature, c.Damp)
	return dry, damp, err
}

// Swells is how much a width of a piece along a dimension swells from the driest
// air to the dampest; nothing along its grain. Boards are taken as flat-sawn,
// the width along the rings, which moves more.
func (c Climate) Swells(p *Piece, along Dimension, width Length) (Length, error) {
	if along == p.Grain || width <= 0 {
		return 0, nil
	}
	dry, damp, err := c.Moistures()
	if err != nil {
		return 0, err
	}
	m, err := p.Wood.Reckoned().Change(width, dry, damp, Tangential)
	return m.Change, err
}
