package sheets

import (
	"fmt"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// slips is what the slips of a card that does not fit on one say of each
// other. The zero value is a card on a slip of its own.
type slips struct {
	of   int // how many there are
	Mind int // where to read the gravest caution, if the first has no room for it
}

// inSlips lays a card out on several slips, each with its number and how many
// there are. How many is only known when they are laid out; the label takes as
// much room whatever it says, so the second time is like the first.
func (s Setter) inSlips(u *deck.Setup, r *deck.Run) []paper.Block {
	s.slips = slips{of: 2} // mostly it is two
	all, gravest := s.split(u, r)
	if gravest > 1 && len(r.Cautions) > 0 {
		s.slips.Mind = gravest
		all, gravest = s.split(u, r)
	}
	if said := s.slips; said.of != len(all) || said.Mind > 0 && said.Mind != gravest {
		s.slips.of = len(all)
		if said.Mind > 0 {
			s.slips.Mind = gravest
		}
		all, _ = s.split(u, r)
	}
	return all
}

// label says which slip of how many it is, in the room of the longest label.
func (l slips) label(s Setter, slip int) paper.Block {
	if l.of == 0 {
		return paper.Block{}
	}
	bold := s.bold(s.grade.body)
	b := paper.Phrase{}.Say(bold, fmt.Sprintf("slip %d of %d", slip, l.of)).Set(s.paper.W)
	b.W = bold.Width("slip 10 of 10")
	return b
}

// mindFirst stands on a first slip that has no room for the gravest caution. Its
// own line may push the marks to the next, which leaves the room after all.
func (s Setter) mindFirst(r *deck.Run) paper.Phrase {
	where := "below"
	if s.slips.Mind > 1 {
		where = fmt.Sprintf("on slip %d", s.slips.Mind)
	}
	return paper.Phrase{}.Say(s.bold(s.grade.body),
		fmt.Sprintf("%s: read cautions %s before running.", r.Cautions[0].Weight, where))
}
