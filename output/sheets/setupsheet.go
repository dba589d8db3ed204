package sheets

import (
	"fmt"
	"iter"
	"strconv"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// groupGap is the space before a pair of marks.
const groupGap paper.Paper = 1.8

// setupSheets lays out the sheets of every setup. A setup begins a page, unless
// all of it has room under the one before, or so much that it takes a page less.
func (s Setter) setupSheets(d *deck.Deck) iter.Seq[page] {
	return func(yield func(page) bool) {
		full := s.body().H
		var now paper.Block
		for i := range d.Setups {
			sheets := s.setupSheet(d, i, full)
			if room := full - now.H - betweenSetups; now.H > 0 && s.Frame.W >= besidePicture {
				if shared := s.setupSheet(d, i, room); shared[0].H <= room && len(shared) <= len(sheets) {
					now.Below(rule(s.Frame.W, paper.Pen{Width: 0.35, Line: paper.Dashed}), betweenSetups/2)
					shared[0] = paper.Stack(betweenSetups/2, now, shared[0])
					sheets, now = shared, paper.Block{}
				}
			}
			if now.H > 0 && !yield(s.upright(now)) {
				return
			}
			last := len(sheets) - 1
			for _, b := range sheets[:last] {
				if !yield(s.upright(b)) {
					return
				}
			}
			now = sheets[last]
		}
		if now.H > 0 {
			yield(s.upright(now))
		}
	}
}

// betweenSetups is the space between two setups on one page.
const betweenSetups paper.Paper = 8

// setupSheet lays out one setup, on as many sheets as it takes: the head, and
// under it every pair of marks with its runs. The first sheet has some room.
func (s Setter) setupSheet(d *deck.Deck, i int, room paper.Paper) []paper.Block {
	u := &d.Setups[i]
	w := s.Frame.W
	mind := s.minds[u.Number]
	groups := s.pairGroups(u, mind, w)
	pour := func(of int) []paper.Block {
		first, rest := s.head(d, i, mind, of)
		again := func(n int) paper.Block { return s.again(u, n+len(rest), of, w) }
		var sheets []paper.Block
		for _, more := range rest {
			sheets = append(sheets, first)
			first = more
		}
		if len(rest) > 0 {
			room = s.body().H
		}
		return append(sheets, poured(first, again, s.rowsHead(w), groups, room, s.body().H, groupGap)...)
	}
	sheets := pour(9)
	if len(sheets) == 1 {
		return pour(1)
	}
	return pour(len(sheets))
}

// again is the head of a setup's further sheets: what stays set.
func (s Setter) again(u *deck.Setup, n, of int, w paper.Paper) paper.Block {
	b := black("SETUP "+strconv.Itoa(u.Number), s.Bold(5), s.Bold(5).Width("SETUP "+strconv.Itoa(u.Number))+4, 8.5)
	room := w - b.W - 3
	name := paper.Shortened(s.Bold(paper.Least), paper.Printable(u.Bit.Name), room)
	p := paper.Phrase{}.Say(s.Letters(paper.Least), fmt.Sprintf("sheet %d of %d; near edge", n, of)).
		Keep(s.Bold(3.2), s.Plain(u.Fence.NearEdge)).Tie(s.Letters(paper.Least), ";").Say(s.Bold(paper.Least), name)
	text := p.Set(room)
	high := max(b.H, text.H)
	b.Add(text, b.W+3, (high-text.H)/2)
	return b
}
