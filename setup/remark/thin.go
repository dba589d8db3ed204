package remark

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup/remark/trade"
	"fencecard/setup/solid"
)

func findShortPiece(w *work) []finding {
	longest := max(w.piece.Size[0], w.piece.Size[1], w.piece.Size[2])
	least := w.rules.ShortPiece
	if longest >= least || len(w.atTable()) == 0 {
		return nil
	}
	what := ": cut the joints in a longer blank and saw it off afterwards, or hold the piece in a jig that rides the fence"
	if bothEnds(w.piece) {
		what = ", and both its ends are cut: a longer blank serves for the first of them, and for the other hold the piece in a jig that rides the fence"
	}
	return []finding{{
		text: fmt.Sprintf("%s is the longest side, under %s%s", w.text(longest), w.text(least), what),
		keys: []string{"size"},
	}}
}

// bothEnds reports whether tenons, laps or the like are cut at the table at both ends of
// a piece: when the second is cut it has its length.
func bothEnds(p *joinery.Piece) bool {
	ends := map[joinery.Side]bool{}
	for i := range p.Cuts {
		for _, ch := range p.Cuts[i].Channels {
			for _, end := range []joinery.Side{p.Grain.Low(), p.Grain.High()} {
				if p.Cuts[i].By == "" && ch.Near.Dimension() == p.Grain && ch.OpenBeside(end, p.Size) && ch.EndToEnd(p.Size) {
					ends[end] = true
				}
			}
		}
	}
	return len(ends) == 2
}

// deepest tells how much of the stock a cut may take, as a share.
func deepest(m *made, size joinery.Size) timber.Share {
	if m.cut.Kind.Through && m.through(size) {
		return timber.Share{Num: 1, Den: 1}
	}
	return m.cut.Kind.Deepest
}

func findDeep(w *work) []finding {
	var found []finding
	for _, m := range w.cuts {
		share := deepest(m, w.piece.Size)
		taken := map[string]joinery.Side{"depth": m.channel.Down}
		if m.cut.Kind.Edge {
			taken["width"] = m.channel.Near
		}
		for _, key := range []string{"depth", "width"} {
			side, ok := taken[key]
			if !ok {
				continue
			}
			deep, stock := m.channel.Depth, w.piece.Size.Between(side)
			if key == "width" {
				deep = m.channel.Width
			}
			most := stock * measure.Length(share.Num) / measure.Length(share.Den)
			if deep <= most {
				continue
			}
			found = append(found, finding{m.cut, fmt.Sprintf("the %s takes %s of the %s of stock, more than %s of it: make the %s %s or less, or the stock thicker",
				m.words(), w.text(deep), w.text(stock), share, key, w.text(w.scale.Floor(most))), []string{key, "cheeks"}})
		}
	}
	return found
}

func findThinFloor(w *work) []finding {
	var found []finding
	for _, m := range w.cuts {
		least, floor := w.rules.ThinFloor, w.piece.Size.Between(m.channel.Down)-m.channel.Depth
		if !m.cut.Kind.Walled || floor <= 0 || floor >= least {
			continue
		}
		through := ", or cut it through"
		if run := m.channel.Run(); m.channel.OpenAt(run.Low(), w.piece.Size) || m.channel.OpenAt(run.High(), w.piece.Size) {
			through = "" // that would leave a fork, or two pieces
		}
		found = append(found, finding{m.cut, fmt.Sprintf("the %s leaves a floor of %s at the %s, under %s: make it %s shallower%s",
			m.words(), w.text(floor), m.channel.Down.Opposite(), w.text(least), w.enough(least-floor), through), []string{"depth"}})
	}
	return found
}

// findThinTenon looks at what is left between two cheeks of one tenon.
func findThinTenon(w *work) []finding {
	var found []finding
	for i := range w.piece.Cuts {
		c := &w.piece.Cuts[i]
		if !c.Kind.Enters {
			continue
		}
		left := w.piece.Size
		for _, cheek := range c.Cheeks {
			left[cheek.Side.Dimension()] -= cheek.Depth
		}
		for d, thick := range left {
			least := w.wall(w.piece.Size[d])
			if thick >= least {
				continue
			}
			found = append(found, finding{c, fmt.Sprintf("the %s %q is %s thick %s, under %s: take %s less off its cheeks",
				c.Kind, c.Name, w.only(thick), joinery.Dimension(d), w.text(least), w.enough(least-thick)), []string{"cheeks"}})
		}
	}
	return found
}

// findThinWall looks at the walls between a channel and the faces beside it
// and, where the channel is stopped, beyond its ends.
func findThinWall(w *work) []finding {
	var found []finding
	for _, m := range w.cuts {
		if !m.cut.Kind.Walled || m.goesOn() {
			continue
		}
		walls := besides(m.channel, w.piece.Size)
		for i, b := range walls {
			if !b.thin(w.piece.Size, w.scale) {
				continue
			}
			least := w.wall(w.piece.Size.Between(b.side))
			spare := walls[i^1].wood - least // of the wall across from it
			found = append(found, finding{m.cut, fmt.Sprintf("the %s leaves a wall of %s at the %s, under %s: %s",
				m.words(), w.text(b.wood), b.side, w.text(least), b.wayOut(w.enough(least-b.wood), spare >= least-b.wood)), b.keys()})
		}
	}
	return found
}

// beside is the wood between a channel and one side of the piece.
type beside struct {
	side joinery.Side
	wood measure.Length
	end  bool // the side lies beyond an end of the channel
}

// besides lists the wood on both sides of a channel and beyond both its ends,
// each two that face each other together.
func besides(c joinery.Channel, size joinery.Size) []beside {
	near, far := c.Near, c.Near.Opposite()
	sides := []beside{{near, c.Setback, false}, {far, size.Between(far) - c.Setback - c.Width, false}}
	if near.High() {
		slices.Reverse(sides)
	}
	run := c.Run()
	return append(sides, beside{run.Low(), c.Lo, true}, beside{run.High(), size[run] - c.Hi, true})
}

// thin reports whether there is a wall, and too little of it.
func (b beside) thin(size joinery.Size, s measure.Scale) bool {
	return b.wood > 0 && b.wood < trade.Wall(size.Between(b.side), s)
}

// wayOut says how to thicken the wall by so much; movable tells whether the
// wall across from it can spare that.
func (b beside) wayOut(by string, movable bool) string {
	switch {
	case b.end:
		return fmt.Sprintf("stop it %s sooner, or run it out at the %s", by, b.side)
	case movable:
		return fmt.Sprintf("move it %s away from the %s, or make it narrower", by, b.side)
	}
	return fmt.Sprintf("make it %s narrower, or the stock thicker", by)
}

func (b beside) keys() []string {
	if b.end {
		return []string{"span", "at"}
	}
	return []string{"setback", "width", "at"}
}

// findThinWeb looks at the wood between two channels that share no room.
func findThinWeb(w *work) []finding {
	var found []finding
	size := w.piece.Size
	least := w.wall(min(size[0], size[1], size[2]))
	w.pairs(func(a, b *made) {
		if !a.cut.Kind.Walled || !b.cut.Kind.Walled || far(a, b, least) {
			return
		}
		web := solid.Between(a.hollows, b.hollows, size)
		left := w.only(web) + " of"
		switch {
		case web >= least:
			return
		case web == 0 && (meant(a, b) || !a.box.And(b.box).Empty()):
			return // as it should be, or told as cuts that meet
		case web == 0:
			left = "no"
		}
		found = append(found, finding{b.cut, fmt.Sprintf("%s wood is left between the %s and the %s, under %s: %s",
			left, a.words(), b.words(), w.text(least), w.thicken(a, b, least-web)), []string{"setback", "depth"}})
	})
	return found
}

// pairs visits every two channels of different cuts, the earlier in the plan
// first.
func (w *work) pairs(visit func(a, b *made)) {
	for i, a := range w.cuts {
		for _, b := range w.cuts[i+1:] {
			if a.cut != b.cut {
				visit(a, b)
			}
		}
	}
}

// far reports cheaply that two hollows lie at least so far apart.
func far(a, b *made, least measure.Length) bool {
	for d := range a.box {
		if a.box[d].Gap(b.box[d]) >= least {
			return true
		}
	}
	return false
}

// findShortGrain looks at the wood beyond a channel at the end of the grain:
// where it is shorter than the channel is deep, it shears out.
func findShortGrain(w *work) []finding {
	var found []finding
	if !w.piece.Wood.Moves() {
		return nil // sheet materials have no grain to shear along
	}
	for _, m := range w.cuts {
		for _, b := range besides(m.channel, w.piece.Size) {
			long := b.side.Dimension() == w.piece.Grain
			thin := b.wood < w.wall(w.piece.Size.Between(b.side)) // told as a thin wall
			if !m.cut.Kind.Walled || !long || thin || b.wood >= min(m.channel.Depth, trade.ShortGrain.Of(w.scale)) {
				continue
			}
			need := min(m.channel.Depth, trade.ShortGrain.Of(w.scale))
			found = append(found, finding{m.cut, fmt.Sprintf("beyond the %s %s of short grain is left at the %s, and it is %s deep: %s, or leave the piece long and saw it off after the glue-up",
				m.words(), w.only(b.wood), b.side, w.text(m.channel.Depth), b.wayOut(w.enough(need-b.wood), true)), b.keys()})
		}
	}
	return found
}
