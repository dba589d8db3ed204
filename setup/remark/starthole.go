package remark

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// channel tells one channel of a piece from its others.
type channel struct {
	piece *joinery.Piece
	cut   *joinery.Cut
	part  string
}

func channelOf(r *deck.Run) channel { return channel{r.Piece, r.Cut, r.Channel.Part} }

// startHoles lists, in running order, the runs of each channel that need a start
// hole. All its holes are bored before the first of them: beside a groove that is
// cut already, a bit lands half in the open.
func startHoles(d *deck.Deck) map[channel][]*deck.Run {
	found := map[channel][]*deck.Run{}
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			s := situation{shop: &d.Plan.Shop, run: r}
			if s.bored() || s.needsStartHole() {
				found[channelOf(r)] = append(found[channelOf(r)], r)
			}
		}
	}
	return found
}

// bore says what is bored before the run: its own start hole, or at the first
// run of a channel those of the later ones as well.
func (s *situation) bore() string {
	const size = "as wide as the bit and as deep as the cut"
	switch {
	case s.run.Piece == nil:
		return "bore the start first, " + size + ", its centre where the card says"
	case len(s.holes) < 2:
		return "bore the start first, " + size + ", its centre " + s.centre(s.run)
	case s.oneHole() && s.holes[0] != s.run:
		return fmt.Sprintf("its start hole is that of run %s", s.holes[0].Number())
	case s.oneHole():
		return fmt.Sprintf("bore one start hole before this setup, for run %s too, as wide and as deep as the cut, its centre %s",
			s.holes[len(s.holes)-1].Number(), s.middle())
	case s.holes[0] != s.run:
		return fmt.Sprintf("its start hole was bored before run %s, its centre %s", s.holes[0].Number(), s.centre(s.run))
	}
	all, centres := "both start holes", make([]string, len(s.holes))
	if len(s.holes) > 2 {
		all = fmt.Sprintf("all %d start holes", len(s.holes))
	}
	for i, r := range s.holes {
		centres[i] = s.centre(r)
	}
	overlap := ""
	if len(s.holes) == 2 && s.holes[1].Step.NearEdge-s.run.Step.NearEdge < s.run.Step.Bit.True() {
		overlap = "; they overlap: plug the first, bore the second, take the plug out"
	}
	return fmt.Sprintf("bore %s before this setup, %s, their centres %s%s", all, size, strings.Join(centres, "; "), overlap)
}

// oneHole reports whether the holes of a channel lie closer together than the shop's
// scale shows: no awl tells them apart, and one as wide as the channel takes the bit of
// every run.
func (s *situation) oneHole() bool {
	first, last := s.holes[0], s.holes[len(s.holes)-1]
	return !first.Step.Turned && first.A == last.A && last.Step.NearEdge-first.Step.NearEdge < s.shop.Scale.Division
}

// middle says where the centre of the one hole of several runs lies.
func (s *situation) middle() string {
	between := *s.holes[0]
	between.Step.NearEdge += (s.holes[len(s.holes)-1].Step.NearEdge - between.Step.NearEdge) / 2
	return s.centre(&between)
}

// centre says where the centre of a run's start hole lies, from two sides.
func (s *situation) centre(r *deck.Run) string {
	half, scale := r.Step.Bit.True()/2, s.shop.Scale
	return fmt.Sprintf("%s from the %s and %s from the %s", scale.Say(r.A+half), r.Leads, scale.Say(r.Step.NearEdge+half), r.Step.Fence)
}
