package proof

import (
	"cmp"
	"slices"

	"fencecard/joinery"
)

// wants is all that a plan wants, piece by piece: a run is looked up among the
// cuts of its piece alone, and a piece proved while the processor has it at
// hand. An index of all channels by all their words would be spread over more
// memory than that.
type wants struct {
	pieces []wantedPiece // in the order of the plan
	named  map[string]*wantedPiece
}

// wantedPiece is a piece and the runs that name it.
type wantedPiece struct {
	*joinery.Piece
	channels []wanted    // in the order of the plan
	cuts     []wantedCut // sorted by name
	runs     []dealt     // in running order
}

// wantedCut is a cut of a piece by its name, and its channels.
type wantedCut struct {
	name     string
	channels []wanted
}

// wanted is one channel of the plan and the runs that claim to make it.
type wanted struct {
	piece   *joinery.Piece
	cut     *joinery.Cut
	channel *joinery.Channel
	claimed int   // runs that name it
	runs    []run // those that could be put on the table, in running order
}

// dealt is where a run stands in the deck.
type dealt struct {
	setup  int // index into the claims
	result int // index into the results
}

func wantsOf(plan *joinery.Plan) wants {
	cuts, channels := 0, 0
	for i := range plan.Pieces {
		cuts += len(plan.Pieces[i].Cuts)
		for j := range plan.Pieces[i].Cuts {
			channels += len(plan.Pieces[i].Cuts[j].Channels)
		}
	}
	w := wants{make([]wantedPiece, len(plan.Pieces)), make(map[string]*wantedPiece, len(plan.Pieces))}
	allCuts, allChannels := make([]wantedCut, 0, cuts), make([]wanted, 0, channels)
	allRuns := make([]dealt, channels) // most channels take one run
	for i := range plan.Pieces {
		piece := &plan.Pieces[i]
		firstCut, firstChannel := len(allCuts), len(allChannels)
		for j := range piece.Cuts {
			cut, first := &piece.Cuts[j], len(allChannels)
			if cut.By != "" {
				continue
			}
			for k := range cut.Channels {
				allChannels = append(allChannels, wanted{piece: piece, cut: cut, channel: &cut.Channels[k]})
			}
			allCuts = append(allCuts, wantedCut{cut.Name, allChannels[first:]})
		}
		of := wantedPiece{Piece: piece, cuts: allCuts[firstCut:], channels: allChannels[firstChannel:]}
		slices.SortFunc(of.cuts, func(a, b wantedCut) int { return cmp.Compare(a.name, b.name) })
		n := len(of.channels)
		of.runs, allRuns = allRuns[:0:n], allRuns[n:]
		w.pieces[i], w.named[piece.Name] = of, &w.pieces[i]
	}
	return w
}

// cut returns the channels of a cut, none where the piece has no such cut.
func (w *wantedPiece) cut(name string) []wanted {
	at, ok := slices.BinarySearchFunc(w.cuts, name, func(c wantedCut, name string) int { return cmp.Compare(c.name, name) })
	if !ok {
		return nil
	}
	return w.cuts[at].channels
}

// find returns the channel a run is about. A run that names no part of a cut
// means the channel on the side that lies down.
func (w *wantedPiece) find(c *Run) *wanted {
	channels := w.cut(c.Cut)
	for i := range channels {
		if channels[i].channel.Part == c.Part {
			return &channels[i]
		}
	}
	for i := range channels {
		if c.Part == "" && channels[i].channel.Down == c.Down {
			return &channels[i]
		}
	}
	return nil
}

// find returns the channel a run is about, in whichever piece.
func (w *wants) find(c *Run) *wanted {
	if piece := w.named[c.Piece]; piece != nil {
		return piece.find(c)
	}
	return nil
}

// piece proves all that is claimed and wanted of one piece.
func (p *prover) piece(of *wantedPiece) {
	p.room = slices.Grow(p.room[:0], len(of.channels))
	for i := range of.channels {
		of.channels[i].runs = p.room[i : i : i+1] // most channels take one run
	}
	for _, d := range of.runs {
		p.claimed(d, of)
	}
	for i := range of.channels {
		p.channel(&of.channels[i])
		p.fit(&of.channels[i])
	}
	for i := range of.channels {
		p.order(&of.channels[i], of)
		p.recessFirst(&of.channels[i], of)
		p.largerFirst(&of.channels[i], of)
	}
}
