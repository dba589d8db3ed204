package sheets

import (
	"fmt"
	"iter"
	"strconv"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// groupGap is the space before a pair of marks.
const groupGap paper.Paper = 2.5

// setupSheets lays out the sheets of every setup. A setup begins a page, unless
// all of it has room under the one before.
func (s Setter) setupSheets(d *deck.Deck) iter.Seq[page] {
	return func(yield func(page) bool) {
		room := s.body().H
		const between = 8
		var now paper.Block
		for i := range d.Setups {
			sheets := s.setupSheet(d, i)
			if len(sheets) == 1 && now.H > 0 && now.H+between+sheets[0].H <= room {
				now.Below(rule(s.frame.W, paper.Pen{Width: 0.35, Line: paper.Dashed}), between/2)
				now.Below(sheets[0], between/2)
				continue
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

// setupSheet lays out one setup, on as many sheets as it takes: the head, and
// under it every pair of marks with its runs.
func (s Setter) setupSheet(d *deck.Deck, i int) []paper.Block {
	u := &d.Setups[i]
	w, h := s.frame.W, s.body().H
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
		return append(sheets, poured(first, again, s.rowsHead(w), groups, h, groupGap)...)
	}
	sheets := pour(9)
	if len(sheets) == 1 {
		return pour(1)
	}
	return pour(len(sheets))
}

// again is the head of a setup's further sheets: what stays set.
func (s Setter) again(u *deck.Setup, n, of int, w paper.Paper) paper.Block {
	b := black("SETUP "+strconv.Itoa(u.Number), s.bold(5), s.bold(5).Width("SETUP "+strconv.Itoa(u.Number))+4, 8.5)
	room := w - b.W - 3
	name := shortened(s.bold(paper.Least), paper.Printable(u.Bit.Name), room)
	p := paper.Phrase{}.Say(s.Letters(paper.Least), fmt.Sprintf("sheet %d of %d; near edge", n, of)).
		Keep(s.bold(3.2), s.plain(u.Fence.NearEdge)).Tie(s.Letters(paper.Least), ";").Say(s.bold(paper.Least), name)
	text := p.Set(room)
	high := max(b.H, text.H)
	b.Add(text, b.W+3, (high-text.H)/2)
	return b
}
