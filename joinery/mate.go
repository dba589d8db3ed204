package joinery

import (
	"cmp"
	"slices"
)

// Piece returns the plan's piece of that name, or nil.
func (p *Plan) Piece(name string) *Piece {
	for i := range p.Pieces {
		if p.Pieces[i].Name == name {
			return &p.Pieces[i]
		}
	}
	return nil
}

// Mate returns the piece and, unless the whole piece is meant, the cut that a
// cut is joined with; nil, nil when it names none that is there.
//
// A mirrored cut carries the mate of the cut it was mirrored from, which is of
// the other hand. Its own is the named piece mirrored in the same way, or the
// most nearly so, for a rail may serve both hands; and there the named cut, or
// another of its kind, that faces this one.
func (p *Plan) Mate(cut *Cut) (*Piece, *Cut) {
	if cut.Mates.Piece == "" {
		return nil, nil // as most cuts do, so that not every cut is looked up among all pieces
	}
	named := p.Piece(cut.Mates.Piece)
	if named == nil {
		return nil, nil
	}
	for _, piece := range p.mirrors(named, cut.Mates.Across) {
		if cut.Mates.Cut == "" {
			return piece, nil
		}
		if c := piece.facing(cut); c != nil {
			return piece, c
		}
	}
	return nil, nil
}

// mirrors lists a piece and its mirrors, those first that are mirrored most
// nearly in the way wanted; the piece alone where none is wanted.
func (p *Plan) mirrors(named *Piece, wanted Flips) []*Piece {
	if wanted == (Flips{}) {
		return []*Piece{named}
	}
	var all []*Piece
	for i := range p.Pieces {
		if p.Pieces[i].Original() == named.Original() {
			all = append(all, &p.Pieces[i])
		}
	}
	off := func(piece *Piece) int {
		n := 0
		for d := range wanted {
			if (named.Across[d] != piece.Across[d]) != wanted[d] {
				n++
			}
		}
		return n
	}
	slices.SortStableFunc(all, func(a, b *Piece) int { return off(a) - off(b) })
	return all
}

// Original names the piece that was not mirrored, which may be this one.
func (p *Piece) Original() string { return cmp.Or(p.MirrorOf, p.Name) }

// facing returns the cut of the piece that is meant by another cut's mate: the
// named one where the maker named it, or for a mirrored cut the one that faces
// it.
func (p *Piece) facing(cut *Cut) *Cut {
	named := p.Cut(cut.Mates.Cut)
	if named == nil || cut.Mates.Across == (Flips{}) || cut.Faces(named) {
		return named
	}
	for i := range p.Cuts {
		if c := &p.Cuts[i]; c.Kind == named.Kind && cut.Faces(c) {
			return c
		}
	}
	return nil
}

// Faces reports whether a tenon points into the side a channel is cut in, the
// cut being either of the two. Other pairs always face each other.
func (c *Cut) Faces(other *Cut) bool {
	if !c.Kind.Enters {
		c, other = other, c
	}
	return !c.Kind.Enters || !other.Kind.Receives || c.At == other.In.Opposite()
}

// Joins reports whether cuts of these two kinds make a joint.
func (c *Cut) Joins(other *Cut) bool {
	a, b := c.Kind, other.Kind
	return a.Enters && b.Receives || a.Receives && b.Enters || a.Laps && b.Laps
}
