package remark

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/timber"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// trapped is where the bit works at an open side that faces away from the fence.
func (s *situation) trapped() bool { return trapped(s.run) }

func (s *situation) cutsApart() bool { return s.apart }

// starts is where the work is pivoted onto the bit.
func (s *situation) starts() bool { return s.run.Pivots() }

// steepDrop is where the work is tilted far to be lowered, or a hand on its tail
// is near the bit.
func (s *situation) steepDrop() bool {
	d, ok := pivots(s.run, s.shop)
	return ok && d.hard
}

// breaksOut is where the bit meets the wood beyond the end that leads.
func (s *situation) breaksOut() bool {
	d, ok := pivots(s.run, s.shop)
	return ok && d.Early >= s.run.A
}

// earlyMouth is where the mouth begins earlier than a rule shows.
func (s *situation) earlyMouth() bool {
	d, ok := pivots(s.run, s.shop)
	return ok && d.Early >= s.shop.Scale.Division && !s.breaksOut() && !s.shapesEdge()
}

// guided is where an end is so narrow that the fence alone does not guide it.
func (s *situation) guided() bool {
	return s.run.Guided && s.rides < trade.OpenFence.Of(s.shop.Scale)
}

// swings is where the work reaches out many times as far as it rides the fence.
func (s *situation) swings() bool {
	return swings(s.run, s.rides)
}

// comesThrough is where the bit comes out of the side that is up.
func (s *situation) comesThrough() bool {
	return s.run.Channel.Depth == s.run.Piece.Size.Between(s.run.Channel.Down)
}

// standsFar is where a shank follows its bit into a cut that is made already.
func (s *situation) standsFar() bool {
	bit := s.run.Step.Bit
	return bit.Cutting > 0 && s.run.Channel.Depth > bit.Cutting
}

// slender is where a straight bit is raised so high that it bends.
func (s *situation) slender() bool {
	bit := s.run.Step.Bit
	return bit.Outline == nil && s.run.Channel.Depth > trade.SlenderShare*bit.True()
}

func (s *situation) stops() bool { return s.run.Stop != nil }

func (s *situation) needsStartHole() bool {
	return s.starts() && !s.shapesEdge() && s.run.Step.Bit.Plunges != joinery.Yes
}

func (s *situation) bored() bool { return s.run.Hole != nil }

func (s *situation) raised() bool { return s.run.Raised }

func (s *situation) nibbled() bool { return s.run.Nibble != nil }

func (s *situation) downCutBlind() bool {
	return s.run.Step.Bit.Kind == joinery.DownCut && (s.run.Start != nil || s.stops())
}

func (s *situation) severalDistances() bool { return s.run.Step.Of > 1 && !s.run.Step.Turned }

// edgeCut is where the bit stands in the fence. At the later distances of a
// wide edge cut it stands off the fence, in wood that is already cut; a shape that
// takes its passes by the fence has its own words for both.
func (s *situation) edgeCut() bool {
	return !(s.shapesEdge() && s.severalDistances()) && s.inFence() && s.run.Channel.OpenBeside(s.run.Step.Fence, s.run.Piece.Size)
}

// inFence reports whether the fence must stand open for the bit.
func (s *situation) inFence() bool { return s.run.Step.NearEdge <= 0 }

// handsNear looks for a place on the piece that stays clear of the bit: before
// it, behind it or on the operator's side. Along the fence the worst moment is
// the one nearest to halfway, when both ends are close.
func (s *situation) handsNear() bool {
	r := s.run
	at := min(max(r.Length/2, r.A), r.B)
	along := max(at, r.Length-at)
	outward := r.Piece.Size.Between(r.Step.Fence) - r.Step.NearEdge - r.Step.Bit.True()
	return max(along-r.Step.Bit.True()/2, outward) < s.shop.Rules.HandDistance
}

func (s *situation) shortPiece() bool {
	size := s.run.Piece.Size
	return max(size[0], size[1], size[2]) < s.shop.Rules.ShortPiece
}

// otherEnd is where an end is crossed of a piece whose other end is too.
func (s *situation) otherEnd() bool {
	r := s.run
	return r.Piece != nil && r.Step.Fence.Dimension() == r.Piece.Grain && atEnd(r) && bothEnds(r.Piece)
}

// tall is where the work stands high over what it rides the table with, along
// the feed or across it.
func (s *situation) tall() bool {
	r := s.run
	return r.Piece.Size.Between(r.Step.Down) > trade.TallShare*min(s.across(), r.Length)
}

func (s *situation) onEdge() bool {
	_, is := onEdge(s.run)
	return is
}

// opensInto is where the cut breaks into an earlier one that it does not belong to.
func (s *situation) opensInto() bool { return s.opens != "" }

func (s *situation) large() bool {
	return !s.panelBit() && s.run.Step.Bit.True() > trade.LargeBit.Of(s.shop.Scale)
}

// nearlyOtherCollet reports whether the shop has a bit with another shank so
// near this one's that the collets are easily mistaken: 12 mm and 1/2 in. It is
// for the run at which the bit is put in.
func (s *situation) nearlyOtherCollet() bool {
	shank := s.run.Step.Bit.Shank
	if shank == 0 || !s.fitted || !s.firstOfSetup() {
		return false
	}
	for _, other := range s.shop.Bits {
		if gap := (other.Shank - shank).Abs(); other.Shank > 0 && gap > 0 && gap < trade.NearShank.Of(s.shop.Scale) {
			return true
		}
	}
	return false
}

func (s *situation) crossesGap() bool {
	return s.rides < trade.OpenFence.Of(s.shop.Scale)
}

// beyond reports whether the work stands beyond the usable fence where the cut
// begins or ends, or far out from it.
func (s *situation) beyond() bool {
	r, fence := s.run, s.shop.Fence
	tail, lead := r.Length, r.Length
	if r.Start != nil {
		tail = r.Start.TailBeforeCentre
	}
	if r.Stop != nil {
		lead = r.Stop.LeadPastCentre
	}
	if s.across()-r.Step.NearEdge > trade.OverTable.Of(s.shop.Scale) {
		return true
	}
	return fence.Infeed > 0 && tail > fence.Infeed || fence.Outfeed > 0 && lead > fence.Outfeed
}

// harmfulDust is of all but the softwoods, the unknown included, and of those of
// them that harm.
func (s *situation) harmfulDust() bool {
	wood := s.run.Piece.Wood
	return wood.Group != timber.Softwood || harmful[wood.Name] != ""
}

func (s *situation) anyDust() bool { return !s.harmfulDust() }

// acrossGrain is where the wood splits at the exit; of a guided end it is said
// with the rest.
func (s *situation) acrossGrain() bool {
	return s.run.Channel.Run() != s.run.Piece.Grain && s.run.End == deck.RunOut && !s.guided()
}

// endGone is where an earlier cut has taken an end from the table or the fence.
func (s *situation) endGone() bool { return s.gone > 0 }

// severalPasses is where the bit is raised between passes, standing still.
func (s *situation) severalPasses() bool { return len(s.run.Heights) > 1 && !s.run.Raised }

// thinWall is where the warning of that name finds a thin wall.
func (s *situation) thinWall() bool { return len(s.thinWalls()) > 0 }

// thinWalls lists the walls of the cut that are too thin.
func (s *situation) thinWalls() []beside {
	if s.run.Cut == nil || !s.run.Cut.Kind.Walled {
		return nil
	}
	return slices.DeleteFunc(besides(s.run.Channel, s.run.Piece.Size), func(b beside) bool {
		return !b.thin(s.run.Piece.Size, s.shop.Scale)
	})
}

// thinnest says how thick the thinnest wall is, or in general words how thick
// one is at the most that is too thin.
func (s *situation) thinnest() string {
	walls := s.thinWalls()
	if len(walls) == 0 {
		return s.shop.Scale.Say(trade.ThinWall.Of(s.shop.Scale)) + " or less"
	}
	return s.shop.Scale.Say(slices.MinFunc(walls, func(a, b beside) int { return cmp.Compare(a.wood, b.wood) }).wood)
}

func (s *situation) firstOfSetup() bool { return s.run.Index == 1 }

// shapesEdge is where the bit has an outline and the fence must hold the work.
func (s *situation) shapesEdge() bool { return s.run.Cut != nil && s.run.Cut.Kind.Shapes }

// fades is where a shaped edge begins or ends short of an end of the work.
func (s *situation) fades() bool { return s.shapesEdge() && (s.run.Start != nil || s.stops()) }

func (s *situation) panelBit() bool { return s.run.Step.Bit.IsPanelBit() }

// openingUnknown is where nobody said that table and fence let so wide a bit turn.
func (s *situation) openingUnknown() bool {
	return s.shapesEdge() && s.shop.Opening == 0 && s.run.Step.Bit.True() > trade.WideBit.Of(s.shop.Scale)
}

// endsFirst is where edges along and across the grain may be shaped in turn.
func (s *situation) endsFirst() bool {
	r := s.run
	if !s.shapesEdge() || len(r.Heights) < 2 || r.Channel.Run() == r.Piece.Grain {
		return false
	}
	for i := range r.Piece.Cuts {
		for _, other := range r.Piece.Cuts[i].Channels {
			if other.Section.Shaped() && other.Down == r.Channel.Down && other.Run() != r.Channel.Run() {
				return true
			}
		}
	}
	return false
}
