package sheets

import (
	"fmt"
	"iter"
	"slices"
	"strconv"
	"strings"

	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// groupGap is the space before a pair of marks.
const groupGap paper.Paper = 1.8

// setupSheets lays out the sheets of every setup. A setup begins a page, unless
// all of it has room under the one before, or so much that it takes a page less; the
// first may stand under something else.
func (s Setter) setupSheets(d *deck.Deck, now paper.Block) iter.Seq[page] {
	return func(yield func(page) bool) {
		full := s.body().H
		for i := range d.Setups {
			sheets := s.setupSheet(d, i, full)
			if room := full - now.H - betweenSetups; now.H > 0 && s.Frame.W >= besidePicture {
				shared := slices.Clone(sheets) // one sheet is laid out alike in any room that holds it
				if len(sheets) > 1 {
					shared = s.setupSheet(d, i, room)
				}
				if shared[0].H <= room && len(shared) <= len(sheets) && hasRun(shared[0]) {
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

// hasRun reports whether a sheet has more than the head of its setup, which is
// not to stand at the foot of a page, its marks overleaf.
func hasRun(b paper.Block) bool {
	return slices.ContainsFunc(b.Parts, func(p paper.Part) bool { return p.Says == toward || p.Says == towardShort })
}

// betweenSetups is the space between two setups on one page.
const betweenSetups paper.Paper = 8

// setupSheet lays out one setup, on as many sheets as it takes: the head, and
// under it every pair of marks with its runs. The first sheet has some room.
func (s Setter) setupSheet(d *deck.Deck, i int, room paper.Paper) []paper.Block {
	u := &d.Setups[i]
	w := s.Frame.W
	mind := s.minds[u.Number]
	groups, rows := s.pairGroups(u, mind, w)
	pour := func(of int, repeat bool) []paper.Block {
		first, rest := s.head(d, i, mind, of)
		over := func(n int, on rowsOn, room paper.Paper) paper.Block {
			runs := slices.Concat(rows[on.from:on.to]...)
			if n == 1 {
				switch { // the cautions are on a card before
				case len(rest) == 0 || len(runs) == 0:
				case repeat && s.repeats():
					return paper.Stack(headGap, first, s.mindLines(mind.On(runs), w))
				case repeat:
					return paper.Stack(headGap, first, s.gravest(mind.On(runs)).Set(w))
				case s.repeats():
					return paper.Stack(headGap, first, s.Strong(w, paper.Least, allOnFirst))
				}
				return first
			}
			return s.again(u, runs, n+len(rest), of, repeat, w, room)
		}
		var sheets []paper.Block
		for _, more := range rest {
			sheets = append(sheets, first)
			first = more
		}
		if len(rest) > 0 {
			room = s.body().H
		}
		return append(sheets, poured(over, s.rowsHead(u, w), groups, room, s.body().H, groupGap)...)
	}
	if leastHigh(groups) <= room {
		if one := pour(1, true); len(one) == 1 {
			return one
		}
	}
	repeat := true
	sheets := pour(9, repeat)
	if w < wideRow { // where that takes more of small sheets, they say where the rest stands
		if fewer := pour(9, false); len(fewer) < len(sheets) {
			sheets, repeat = fewer, false
		}
	}
	return pour(len(sheets), repeat)
}

// leastHigh is how high groups are at the least, one under the other.
func leastHigh(groups []group) paper.Paper {
	var high paper.Paper
	for _, g := range groups {
		high += g.head.H
		for _, row := range slices.Concat(g.rows, g.words) {
			high += row.H + g.gap
		}
	}
	return high
}

// repeats reports whether a sheet of runs has all warnings of its runs: it is taped
// up apart from the head. An index card has room for the gravest alone.
func (s Setter) repeats() bool { return s.Frame.W >= besidePicture }

// again is the head of a setup's further sheets of runs: what stays set, and what the
// head says of the runs there, or as much of it as there is room for.
func (s Setter) again(u *deck.Setup, runs []*deck.Run, n, of int, repeat bool, w, room paper.Paper) paper.Block {
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	p := s.fenceSaid(u, nil, 3.2).Tie(l, ";")
	p = p.Say(l, "heights")
	for i, h := range u.BitRungs() {
		if w >= wideRow {
			p = p.Say(l, strconv.Itoa(i+1)+")")
		}
		p = p.Keep(bold, s.Plain(h))
		if i < len(u.Heights)-1 {
			p = p.Tie(l, ",")
		}
	}
	if to := wording.HeightTo(u); to != "" {
		p = p.Say(l, to)
	}
	mind := s.minds[u.Number]
	here := mind.On(runs)
	if repeat && s.repeats() {
		var b paper.Block
		if w < wideRow {
			b = paper.Stack(0.4, s.goesOn(u, n, of, w), p.Set(w), s.mindLines(here, w))
		} else {
			b = paper.Stack(0.4, s.goesOn(u, n, of, w, p...), s.mindBox(here, w))
		}
		if b.H <= room {
			return b
		}
	}
	name, set := s.goesOn(u, n, of, w), p.Set(w)
	heads := [][]paper.Block{{name, set}} // the one that says most first
	if len(here.All) > 0 {
		gravest, first := s.gravest(here), s.Strong(w, paper.Least, allOnFirst)
		if s.repeats() && len(mind.All) > 1 {
			gravest = gravest.Say(bold, allOnFirst)
		}
		caution := gravest.Set(w)
		heads = [][]paper.Block{{name, set, caution}, {name, caution}, {name, set, first}, {name, first}}
	}
	for _, head := range heads {
		if b := paper.Stack(0.4, head...); b.H <= room {
			return b
		}
	}
	return name
}

// allOnFirst is said where only the gravest is.
const allOnFirst = "All warnings: sheet 1."

// gravest is the first sentence of the gravest caution at a setup, of several the one
// that most of the runs have.
func (s Setter) gravest(mind wording.Mind) paper.Phrase {
	if len(mind.All) == 0 {
		return nil
	}
	c := mind.All[0]
	for _, other := range mind.All {
		if other.Weight == c.Weight && len(other.Runs) > len(c.Runs) && other.Code != "shank-and-collet" {
			c = other
		}
	}
	bold := s.Bold(paper.Least)
	return paper.Phrase{}.Say(bold, c.Weight.String()).Say(bold, mind.For(c.Runs)).Say(s.Letters(paper.Least), firstSentence(c.Brief))
}

// firstSentence is the first sentence of a text.
func firstSentence(text string) string {
	first, _, _ := strings.Cut(text, ". ")
	return strings.TrimSuffix(first, ".") + "."
}

// goesOn names a setup and its bit on a further sheet, and what else stands beside
// them.
func (s Setter) goesOn(u *deck.Setup, n, of int, w paper.Paper, more ...paper.Word) paper.Block {
	l, bold := s.Letters(paper.Least), s.Bold(paper.Least)
	name, high := s.Bold(3.4), paper.Paper(6)
	if w >= wideRow {
		name, high = s.Bold(5), 8.5
	}
	text := "SETUP " + strconv.Itoa(u.Number)
	b := black(text, name, name.Width(text)+3, high)
	room := w - b.W - 2
	bit := paper.Shortened(bold, paper.Printable(u.Bit.Name), room)
	p := paper.Phrase{}.Say(bold, bit).Tie(l, ";")
	if len(more) > 0 {
		p = append(p, more...).Tie(l, ";")
	}
	said := p.Say(l, "sheet").Keep(l, fmt.Sprintf("%d of %d", n, of)).Set(room)
	high = max(b.H, said.H)
	b.Add(said, b.W+2, (high-said.H)/2)
	return b
}
