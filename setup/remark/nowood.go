package remark

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// unnamedWood is the code of the one warning about all pieces of which nobody
// says what wood they are.
var unnamedWood = WarningCode{"no-wood", "No wood is named, so passes are the shallowest.", "shares of the bit by hardness: " + trade.CommonPractice}

// noWood warns once of all the pieces to be cut whose wood is not named.
func noWood(plan *joinery.Plan) []deck.Warning {
	var unnamed []*joinery.Piece
	cut := 0
	for i := range plan.Pieces {
		if p := &plan.Pieces[i]; len(p.Cuts) > 0 {
			cut++
			if p.Wood.Name == "" {
				unnamed = append(unnamed, p)
			}
		}
	}
	if len(unnamed) == 0 {
		return nil
	}
	which, where := "the plan names no wood", "at the top of the plan"
	switch n := len(unnamed); {
	case n == cut:
	case n == 1:
		which, where = fmt.Sprintf("no wood is named for %q", unnamed[0].Name), "in the piece, or at the top of the plan for all"
	default:
		which, where = fmt.Sprintf("no wood is named for %q and %d more", unnamed[0].Name, n-1), "in each piece, or at the top of the plan for all"
	}
	return []deck.Warning{{Code: unnamedWood.Code, Place: unnamed[0].Place, Text: which +
		": it is taken for as hard and as lively as any, so passes are the shallowest; write wood: white ash, or yours from fencecard wood, " + where}}
}
