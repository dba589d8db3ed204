package joints

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// Unjoined warns of pieces that grooves in others are named after, and no joint says
// that they stand in them: whether they go in is then looked at by nobody.
func Unjoined(plan *joinery.Plan) []deck.Warning {
	joined, housed, grooved := map[string]bool{}, map[string]bool{}, map[string]int{}
	for i := range plan.Pieces {
		p := &plan.Pieces[i]
		for k := range p.Cuts {
			c := &p.Cuts[k]
			if to := c.Mates.Piece; to != "" {
				joined[p.Name], joined[to] = true, true
			} else if c.OfJoint {
				continue // a panel's grooves name no mate, for it floats in them
			} else if c.Kind.Receives && c.Kind.Grained && !c.Kind.Across {
				grooved[c.Name]++
			} else if c.Kind.Receives {
				housed[c.Name] = true // and a groove of that name is for another board
			}
		}
	}
	var all []deck.Warning
	for i := range plan.Pieces {
		p := &plan.Pieces[i]
		n := grooved[p.Name]
		if n < 2 || housed[p.Name] || joined[p.Name] || joined[p.MirrorOf] {
			continue
		}
		all = append(all, deck.Warning{Code: "not-joined", Piece: p.Name, Place: p.Place,
			Text: fmt.Sprintf("%s: it is joined to nothing, though %d grooves have its name, so whether it goes in is not checked: write mates: %s in them, or joints: (fencecard joints)", p.Name, n, p.Name)})
	}
	return all
}
