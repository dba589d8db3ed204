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
		if c := piece.facing(cut, left(named, piece, cut.Mates.Across)); c != nil {
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
		for _, is := range left(named, piece, wanted) {
			if is {
				n++
			}
		}
		return n
	}
	slices.SortStableFunc(all, func(a, b *Piece) int { return off(a) - off(b) })
	return all
}

// left is what of the mirroring that is wanted of a piece another one does not have: a
// rail that serves both hands has all of it left, and its other end is meant.
func left(named, piece *Piece, wanted Flips) Flips {
	for d := range wanted {
		wanted[d] = (named.Across[d] != piece.Across[d]) != wanted[d]
	}
	return wanted
}

// Original names the piece that was not mirrored, which may be this one.
func (p *Piece) Original() string { return cmp.Or(p.MirrorOf, p.Name) }

// facing returns the cut of the piece that is meant by another cut's mate: the
// named one where the maker named it; for a mirrored cut the one that lies as the
// named one would with the mirroring that is left, or else one that faces it.
func (p *Piece) facing(cut *Cut, left Flips) *Cut {
	named := p.Cut(cut.Mates.Cut)
	if named == nil || cut.Mates.Across == (Flips{}) {
		return named
	}
	turned := *named
	for d, is := range left {
		if is {
			turned = turned.Mirrored(Dimension(d))
		}
	}
	for i := range p.Cuts {
		if c := &p.Cuts[i]; c.Kind == named.Kind && c.At == turned.At && c.In == turned.In && (c.At != named.At || c.In != named.In) && cut.Faces(c) {
			return c
		}
	}
	if cut.Faces(named) {
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
