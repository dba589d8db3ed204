package joinery

// Pencilled are the names that a maker has pencilled on the sides of a piece,
// such as "outside" or "edge"; "" for a side without one. It is indexed by Side.
type Pencilled [1 + len(Sides)]string

// Name is what a side is called at the bench: by its pencilled name, else by
// its own.
func (p Pencilled) Name(s Side) string {
	if p[s] != "" {
		return p[s]
	}
	return s.String()
}

// Mirrored returns the names as seen in a mirror across a dimension.
func (p Pencilled) Mirrored(across Dimension) Pencilled {
	low, high := across.Low(), across.High()
	p[low], p[high] = p[high], p[low]
	return p
}
