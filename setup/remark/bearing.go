package remark

import (
	"fmt"

	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// swings reports whether work reaches out from the fence many times as far as it
// rides along it, so that it turns about the bit.
func swings(r *deck.Run) bool {
	return r.Piece.Size.Between(r.Step.Fence) > trade.SwingShare*r.Length
}

// swinging looks for channels on which the piece swings. Tenons and laps are
// pushed with a backer whatever their piece.
func (w *work) swinging(m *made) []finding {
	r := m.cards[0]
	if !m.cut.Kind.Walled || !swings(r) || m.goesOn() {
		return nil
	}
	otherwise := ""
	if r.Start != nil && r.Stop != nil && m.channel.Run() != w.piece.Grain && m.cut.Kind.Has("span") {
		otherwise = ", or exchange its width and its span, so that it runs with the long side at the fence"
	}
	hold := "push it with a square block or a mitre gauge"
	if r.Start != nil {
		hold = "start with its tail against the back stop"
	}
	return []finding{{m.cut, fmt.Sprintf("for the %s the piece reaches %s out from the fence and only %s of it rides along, so it swings about the bit: %s and carry its free end%s",
		m.words(), w.text(w.piece.Size.Between(r.Step.Fence)), w.text(r.Length), hold, otherwise), []string{"fence", "setback", "at"}}}
}

// ownBearing looks for a cut along an edge that leaves little of the piece on
// the table and little along the fence, behind the bit as it goes.
func (w *work) ownBearing(m *made) []finding {
	r := m.cards[len(m.cards)-1]
	if !m.channel.OpenBeside(r.Step.Fence, w.piece.Size) || m.channel.Run() != w.piece.Grain {
		return nil
	}
	flat := w.piece.Size.Between(r.Step.Fence) - m.channel.Width
	high := w.piece.Size.Between(r.Step.Down) - m.channel.Depth
	least := trade.OwnBearing.Of(w.scale)
	if flat <= 0 || high <= 0 || flat >= least || high >= least {
		return nil
	}
	return []finding{{m.cut, fmt.Sprintf("the %s leaves only %s of the piece on the table and %s along the fence, under %s: cut it in a wider blank and rip it afterwards, or run it on a strip as thick as the cut",
		m.words(), w.text(flat), w.text(high), w.text(least)), []string{"width", "depth"}}}
}
