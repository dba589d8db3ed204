package joinery

import "slices"

// WaitsFor names the cuts of the piece that must be made before the cut: those
// after its key after and, where one of them is made by hand, those that one
// waits for in turn.
func (p *Piece) WaitsFor(c *Cut) []string {
	names := slices.Clone(c.After)
	for i := 0; i < len(names); i++ {
		other := p.Cut(names[i])
		if other == nil || other.By == "" {
			continue
		}
		for _, name := range other.After {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}
