package sheets

import (
	"fmt"
	"iter"
	"slices"
	"sort"

	"fencecard/output/paper"
)

// page is one page with everything on it in its place.
type page struct {
	width, height paper.Paper
	Parts         []paper.Part
	strip         bool // has its own foot
}

// footHeight is kept free at the foot of a page for its name.
const footHeight paper.Paper = 6

// body is the room of a page without its foot.
func (s Setter) body() paper.Box {
	b := s.Frame
	b.H -= footHeight
	return b
}

// upright returns a page of the deck's paper with a block on it.
func (s Setter) upright(b paper.Block) page {
	return page{width: s.Page.W, height: s.Page.H, Parts: b.At(s.Frame.X, s.Frame.Y)}
}

// footed puts the deck's name and code and the number of the page at the foot
// of every page.
func (s Setter) footed(parts []iter.Seq[page]) iter.Seq[page] {
	return func(yield func(page) bool) {
		n := 0
		for _, pages := range parts {
			for p := range pages {
				n++
				if !p.strip {
					p.Parts = append(p.Parts, s.foot(n)...)
				}
				if !yield(p) {
					return
				}
			}
		}
	}
}

func (s Setter) foot(n int) []paper.Part {
	w := s.Frame.W
	l := s.Letters(paper.Least)
	number := s.Say(w, fmt.Sprintf("page %d", n))
	code := s.deckCode(w)
	room := w - number.W - code.W - 8
	title := paper.Phrase{}.Keep(l, paper.Shortened(l, paper.Printable(s.Title), room)).Set(room)
	b := paper.Block{}
	b.Add(title, 0, s.Frame.H-title.H)
	b.Add(code, w-number.W-4-code.W, s.Frame.H-code.H)
	b.Add(number, w-number.W, s.Frame.H-number.H)
	return b.At(s.Frame.X, s.Frame.Y)
}

// deckCode is what tells the papers of one deck from those of another.
func (s Setter) deckCode(w paper.Paper) paper.Block {
	if s.Code == "" {
		return paper.Block{}
	}
	return paper.Phrase{}.Say(s.Letters(paper.Least), "deck").Say(s.Bold(paper.Least), s.Code).Set(w)
}

// group is rows, what stands over them, and words under them; where rows or words
// go on on another page, the head goes with them.
type group struct {
	head  paper.Block
	rows  []paper.Block // under the names of the columns
	words []paper.Block
	said  []paper.Phrase // under these, parted after a sentence where they must be
	wide  paper.Paper    // of what is said
	gap   paper.Paper    // before each
}

// rowsOn are the rows on one block, counted over all groups: from the first up to one.
type rowsOn struct{ from, to int }

// poured stacks groups in blocks no higher than h, the first, which has its own room,
// under what over makes of its number from 1, of the rows on it, and of the room that
// the first thing on it leaves. In every block the names of the columns stand over the
// first row.
func poured(over func(n int, on rowsOn, room paper.Paper) paper.Block, columns paper.Block, groups []group, room, h, gap paper.Paper) []paper.Block {
	type part struct {
		block paper.Block
		gap   paper.Paper
	}
	var all []paper.Block
	on := rowsOn{}
	top := over(1, on, room)
	var parts []part // under the top
	low := paper.Paper(0)
	stacked := func() paper.Block {
		b := top
		for _, p := range parts {
			b.Below(p.block, p.gap)
		}
		return b
	}
	add := func(b paper.Block, gap paper.Paper) {
		parts = append(parts, part{b, gap})
		low += gap + b.H
	}
	bare, named := true, false // nothing of a group is on it yet, and no columns
	limit := room
	for _, g := range groups {
		begins := true // its head is still to be set
		need := func(row, columns paper.Block) paper.Paper {
			need := row.H + g.gap
			if begins {
				need += g.head.H + gap
			}
			if columns.H > 0 && !named {
				need += columns.H + 1
			}
			return need
		}
		// fits reports whether there is room for what is next, under a top that speaks
		// of its rows too.
		fits := func(next, columns paper.Block, rows int) (paper.Block, bool) {
			top := over(len(all)+1, rowsOn{on.from, on.to + rows}, limit)
			return top, top.H+low+need(next, columns) <= limit+paper.Touching
		}
		turn := func(next, columns paper.Block, rows int) { // where it does not fit, and something stands here already
			taller, ok := fits(next, columns, rows)
			switch {
			case ok:
				top = taller
				return
			case !bare || len(all) == 0:
				all = append(all, stacked())
				bare, named, begins, limit = true, false, true, h
				parts, low, on.from = nil, 0, on.to
			}
			top = over(len(all)+1, rowsOn{on.from, on.to + rows}, h-need(next, columns))
		}
		put := func(next, columns paper.Block, rows int) {
			turn(next, columns, rows)
			if begins {
				add(g.head, gap)
				begins = false
			}
			if columns.H > 0 && !named {
				add(columns, 1)
				named = true
			}
			add(next, g.gap)
			bare, on.to = false, on.to+rows
		}
		for _, row := range g.rows {
			put(row, columns, 1)
		}
		for _, words := range g.words {
			put(words, paper.Block{}, 0)
		}
		for _, p := range g.said {
			for sentences := unparted(p, g.wide, h/3); len(sentences) > 0; {
				some := func(n int) paper.Block { return slices.Concat(sentences[:n]...).Set(g.wide) }
				turn(some(1), paper.Block{}, 0)
				n := max(1, sort.Search(len(sentences), func(n int) bool {
					_, ok := fits(some(n+1), paper.Block{}, 0)
					return !ok
				}))
				put(some(n), paper.Block{}, 0)
				sentences = sentences[n:]
			}
		}
	}
	return append(all, stacked())
}

// unparted parts a phrase into what is not to be parted further: its sentences, or the
// lines of one that is higher than a height.
func unparted(p paper.Phrase, w, high paper.Paper) []paper.Phrase {
	var all []paper.Phrase
	for _, sentence := range p.Sentences() {
		if sentence.Set(w).H <= high {
			all = append(all, sentence)
			continue
		}
		for _, l := range sentence.Lines(w) {
			all = append(all, paper.Phrase(l))
		}
	}
	return all
}

// fill stacks rows in blocks no higher than a height, each under its heading.
func fill(rows []paper.Block, gap, h paper.Paper, heading func(i int) paper.Block) []paper.Block {
	var all []paper.Block
	var now paper.Block
	fresh := true
	for _, row := range rows {
		if row.H == 0 {
			continue
		}
		if !fresh && now.H+gap+row.H > h {
			all = append(all, now)
			fresh = true
		}
		if fresh {
			now = heading(len(all))
			fresh = false
		}
		now.Below(row, gap)
	}
	if !fresh {
		all = append(all, now)
	}
	return all
}
