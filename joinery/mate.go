package joinery

// Piece returns the plan's piece of that name, or nil.
func (p *Plan) Piece(name string) *Piece {
	for i := range p.Pieces {
		if p.Pieces[i].Name == name {
			return &p.Pieces[i]
		}
	}
	return nil
}

// Channelled reports whether the cut is a channel between two walls: a
// mortise, groove or dado.
func (c *Cut) Channelled() bool {
	return c.Kind == &Mortise || c.Kind == &Groove || c.Kind == &Dado
}

// Mate returns the piece and, unless the whole piece is meant, the cut that a
// cut of a piece is joined with; nil, nil when it names none that is there.
//
// A mirrored piece carries the mates of the piece it was mirrored from, which
// name the joint on the other hand. For its cuts it is the tenon or channel
// of the named piece, or of that piece's mirror, that faces this one.
func (p *Plan) Mate(piece *Piece, cut *Cut) (*Piece, *Cut) {
	other := p.Piece(cut.Mates.Piece)
	if other == nil || cut.Mates.Cut == "" {
		return other, nil
	}
	named := other.Cut(cut.Mates.Cut)
	if named == nil {
		return nil, nil
	}
	if piece.MirrorOf == "" || cut.Faces(named) {
		return other, named
	}
	for i := range p.Pieces {
		mirror := &p.Pieces[i]
		if mirror.MirrorOf != other.Name && other.MirrorOf != mirror.Name {
			continue
		}
		if c := mirror.Cut(named.Name); c != nil && cut.Faces(c) {
			return mirror, c
		}
	}
	for i := range other.Cuts {
		if c := &other.Cuts[i]; c.Kind == named.Kind && cut.Faces(c) {
			return other, c
		}
	}
	return nil, nil
}

// Faces reports whether a tenon points into the side a channel is cut in, the
// cut being either of the two. Other pairs always face each other.
func (c *Cut) Faces(other *Cut) bool {
	if c.Kind != &Tenon {
		c, other = other, c
	}
	return c.Kind != &Tenon || !other.Channelled() || c.At == other.In.Opposite()
}

// Joins reports whether cuts of these two kinds make a joint.
func (c *Cut) Joins(other *Cut) bool {
	return c.Kind == &Tenon && other.Channelled() || c.Channelled() && other.Kind == &Tenon ||
		c.Kind == &Lap && other.Kind == &Lap
}
