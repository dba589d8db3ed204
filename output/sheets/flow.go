package sheets

import (
	"fmt"
	"iter"

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

// group is rows and what stands over them; where the rows go on on another
// page, that goes with them.
type group struct {
	head paper.Block
	rows []paper.Block
}

// poured stacks groups in blocks no higher than h, the first, which has its own
// room, under first, the others under what again makes of their number from 2 and
// of the room that what follows leaves. The first group of every block has the names of the columns under its head.
func poured(first paper.Block, again func(n int, room paper.Paper) paper.Block, columns paper.Block, groups []group, room, h, gap paper.Paper) []paper.Block {
	var all []paper.Block
	now := first
	fresh := true // nothing of a group is on it yet
	limit := room
	turn := func(need paper.Paper) {
		all = append(all, now)
		now, fresh, limit = again(len(all)+1, h-need), true, h
	}
	for _, g := range groups {
		over := true // its head is still to be set
		for _, row := range g.rows {
			need := row.H
			if over {
				need += g.head.H + gap
			}
			if fresh {
				need += columns.H + 1
			}
			if now.H+need > limit+paper.Touching && (!fresh || len(all) == 0) {
				need = row.H + g.head.H + gap + columns.H + 1
				turn(need)
				over = true
			}
			if over {
				now.Below(g.head, gap)
				over = false
			}
			if fresh {
				now.Below(columns, 1)
			}
			now.Below(row, 0)
			fresh = false
		}
	}
	return append(all, now)
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
