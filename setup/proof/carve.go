package proof

import (
	"fencecard/joinery"
	"fencecard/setup/solid"
)

// Carving is a piece and what the runs take out of it, a hollow for each run
// in running order.
type Carving struct {
	Piece   *joinery.Piece
	Runs    []*Run
	Hollows []solid.Hollow
}

// Removed returns the volume taken out of the piece.
func (c *Carving) Removed() Volume {
	return Volume{c.Piece.Name, solid.Removed(c.Hollows, c.Piece.Size)}
}

// Volumes returns what the runs take out of each piece that is cut.
func Volumes(plan *joinery.Plan, claims *Claims) []Volume {
	var all []Volume
	for _, c := range Carve(plan, claims) {
		if len(c.Hollows) > 0 {
			all = append(all, c.Removed())
		}
	}
	return all
}

// Carve cuts every piece of the plan as the runs say, and by nothing else.
// Runs that the plan or the shop knows nothing of cut nothing.
func Carve(plan *joinery.Plan, claims *Claims) []Carving {
	p := newProver(plan, claims)
	all := make([]Carving, len(plan.Pieces))
	at := make(map[*joinery.Piece]*Carving, len(all))
	for i := range all {
		all[i].Piece = &plan.Pieces[i]
		at[all[i].Piece] = &all[i]
	}
	for i := range claims.Setups {
		s := &claims.Setups[i]
		bit := p.bits[s.Bit.Name]
		for j := range s.Runs {
			claim := &s.Runs[j]
			w := p.wants.find(claim)
			if w == nil || bit == nil || leading(claim.Down, claim.Fence) != claim.Leads || claim.Leads == joinery.NoSide {
				continue
			}
			c := at[w.piece]
			t := onTable(claim, s.Fence, w, bit)
			c.Runs = append(c.Runs, claim)
			c.Hollows = append(c.Hollows, t.cut(s.Fence))
		}
	}
	return all
}
