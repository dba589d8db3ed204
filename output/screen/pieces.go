package screen

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// pieces writes what the piece cards are kept for: every piece with its runs in
// running order and its work by hand.
func (t *textWriter) pieces(d *deck.Deck) {
	cards := d.Cards()
	if len(cards) == 0 {
		return
	}
	t.line(0, "")
	t.line(0, "%s", strings.Repeat("=", textWidth))
	t.line(0, "PIECE CARDS")
	for _, c := range cards {
		text := fmt.Sprintf("%s, make %d: ", c.Piece.Name, c.Piece.Count)
		if len(c.Runs) == 0 {
			text += "no runs"
			if goes := wording.GoesInto(d.Joints, c.Piece.Name); goes != "" {
				text += "; " + goes
			}
		} else {
			text += wording.Ranges(c.Runs)
		}
		t.wrapped(fmt.Sprintf("%4d  ", c.Number), text)
		for _, h := range c.ByHand {
			text := fmt.Sprintf("by %s: %s %s", h.Cut.By, h.Cut.Kind.Name, h.Cut.Name)
			if h.Before != nil {
				text += " before " + h.Before.Number()
			}
			t.wrapped("      ", text+"; "+t.laidOut(c.Piece, h.Cut))
		}
		for _, r := range c.Runs {
			if screw := wording.ScrewPlace(r, t.scale); screw != "" && r.Step.Position == r.Step.Of {
				t.wrapped("      ", r.Cut.Kind.Name+" "+r.Cut.Name+": "+screw)
			}
		}
	}
}

// laidOut says where a cut that is made by hand lies.
func (t *textWriter) laidOut(p *joinery.Piece, c *joinery.Cut) string {
	channels := make([]string, len(c.Channels))
	for i, ch := range c.Channels {
		var words []string
		wording.LayOut(p, ch, func(text string) { words = append(words, text) },
			func(at measure.Length) { words = append(words, t.scale.Format(at)) })
		if ch.Section.Shaped() {
			words = append(words, wording.Shape(ch.Section.Outline, t.scale.Format))
		}
		channels[i] = strings.Join(words, " ")
	}
	return strings.Join(channels, "; ")
}
