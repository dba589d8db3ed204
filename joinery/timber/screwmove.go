package timber

import (
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
)

// ScrewMove is how far a screw moves in its slot: said outright, or worked out
// for a board that is held on a fixed line and moves with the seasons.
type ScrewMove struct {
	Whole   measure.Length // 0: by the seasons
	From    measure.Length // from the fixed line to the screw, across the board's grain
	Board   *Wood          // of what wood the board is; nil: the same as the piece
	Climate Climate
}

// Over is the whole movement, from the driest to the dampest that the board
// gets to be, its moisture at assembly included. The wood is the piece's. The error is a [plantext.Fault] without
// a place where the movement is not known or there is none.
func (m ScrewMove) Over(piece Wood) (measure.Length, error) {
	if m.Whole > 0 {
		return m.Whole, nil
	}
	dry, damp, err := m.moistures()
	if err != nil {
		return 0, err
	}
	moves, err := m.wood(piece).Change(m.From, dry, damp, Tangential)
	if err == nil && moves.Change <= 0 {
		err = plantext.Fault{Problem: fmt.Sprintf("%s does not move with the seasons, so that a round hole does", m.wood(piece))}
	}
	return moves.Change, err
}

// Place is where the screw stands at assembly: how far from the middle of its
// slot, away from the fixed line; below 0 towards it. It is known where the
// movement goes by the seasons and the moisture at assembly is said.
func (m ScrewMove) Place(piece Wood) (from measure.Length, known bool) {
	if m.Whole > 0 || m.Climate.Assembly == 0 {
		return 0, false
	}
	whole, err := m.Over(piece)
	if err != nil {
		return 0, false
	}
	dry, _, err := m.moistures()
	if err != nil {
		return 0, false
	}
	now, err := m.wood(piece).Change(m.From, dry, m.Climate.Assembly, Tangential)
	return now.Change - whole/2, err == nil
}

// moistures are the least and the greatest moisture of the board.
func (m ScrewMove) moistures() (dry, damp float64, err error) {
	dry, damp, err = m.Climate.Moistures()
	if at := m.Climate.Assembly; at > 0 {
		dry, damp = min(dry, at), max(damp, at)
	}
	return dry, damp, err
}

func (m ScrewMove) wood(piece Wood) Wood {
	if m.Board != nil {
		return *m.Board
	}
	return piece.Reckoned()
}
