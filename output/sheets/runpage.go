package sheets

import (
	"fmt"
	"io"

	"fencecard/joinery"
	"fencecard/joinery/plantext"
	"fencecard/output/paper"
	"fencecard/output/views"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// RunPDF writes one run, such as "3.6", as large as the page, for the one at
// the table who cannot read small.
func RunPDF(w io.Writer, d *deck.Deck, number string, o Pages) error {
	u, r, err := runOf(d, number)
	if err != nil {
		return err
	}
	s := newSetter(d, o)
	return printPages(w, d.Plan.Title, s.footed(pagesOf(s, s.runPage(u, r))))
}

// runOf finds a run by its number.
func runOf(d *deck.Deck, number string) (*deck.Setup, *deck.Run, error) {
	for i := range d.Setups {
		u := &d.Setups[i]
		for k := range u.Runs {
			if u.Runs[k].Number() == number {
				return u, &u.Runs[k], nil
			}
		}
	}
	return nil, nil, plantext.Faults{{Problem: fmt.Sprintf("the deck has no run %s", plantext.Brief(number, 20)),
		Remedy: fmt.Sprintf("its runs are %s to %s", firstRun(d), lastRun(d))}}
}

func firstRun(d *deck.Deck) string {
	if len(d.Setups) == 0 {
		return "none"
	}
	return d.Setups[0].Runs[0].Number()
}

func lastRun(d *deck.Deck) string {
	if len(d.Setups) == 0 {
		return "none"
	}
	runs := d.Setups[len(d.Setups)-1].Runs
	return runs[len(runs)-1].Number()
}

// runPage lays out one run as large as a page takes it, on small paper on more
// than one.
func (s Setter) runPage(u *deck.Setup, r *deck.Run) []paper.Block {
	for by := mostMagnified; by > 1; by -= 0.05 {
		small := s
		small.Frame.W /= by
		small.Frame.H = s.body().H/by + footHeight
		if all := small.runBlocks(u, r, 1); len(all) == 1 && all[0].H <= small.body().H {
			return []paper.Block{paper.Magnified(all[0], by)}
		}
	}
	all := s.runBlocks(u, r, 1)
	for of := 1; len(all) > of; {
		of = len(all)
		all = s.runBlocks(u, r, of)
	}
	return all
}

// mostMagnified is how much larger a run is on a page of its own at the most.
const mostMagnified paper.Paper = 1.8

// besideRun is how wide paper must be for the section beside the settings.
const besideRun paper.Paper = 100

// runBlocks are what is said of one run, poured over so many pages; of several,
// each says which it is, and the first has the gravest caution.
func (s Setter) runBlocks(u *deck.Setup, r *deck.Run, of int) []paper.Block {
	w := s.Frame.W
	l := s.Letters(paper.Least)
	large, high := paper.Paper(8), s.body().H
	mind := wording.MindOfRun(u, r, wording.MindIn{Scale: s.Scale, Push: s.push, Block: s.Blocks})
	head := s.badge("RUN", r.Number())
	room := w - head.W - 3
	about := paper.Phrase{}.Say(l, fmt.Sprintf("%s; %s", wording.Plural(r.Piece.Count, "piece"), wording.CutName(r)))
	bit := append(paper.Phrase{}.Say(s.Bold(3.2), u.Bit.Name).Tie(l, ","), s.bitLine(u, true)...)
	if of > 1 {
		bit = bit.Tie(l, ";").Say(l, "page").Keep(l, fmt.Sprintf("1 of %d", of))
	}
	head.Add(paper.Stack(1, s.Strong(room, 6, r.Piece.Name), about.Set(room), bit.Set(room)), head.W+3, 0)
	if of > 1 && len(mind.All) > 0 {
		c := mind.All[0]
		head.Below(paper.Phrase{}.Say(s.Bold(paper.Least), c.Weight.String()).Say(l, firstSentence(c.Brief)).Set(w), 1)
	}
	order := func(side joinery.Side, how string) paper.Block {
		return paper.Phrase{}.Say(s.Bold(large), shout(r, side)).Say(s.Letters(large*0.7), how).Set(w)
	}
	orders := paper.Stack(1, order(r.Step.Down, "side DOWN"), order(r.Step.Fence, "to the FENCE"), order(r.Leads, "LEADS"))
	side := s.Bold(5)
	if w < besideRun {
		side = s.Bold(4)
	}
	shown := paper.Stack(1.5, paper.Phrase{}.Say(side, "UP:").Say(side, shout(r, r.Up())).Set(w),
		paper.Phrase{}.Say(side, "TOWARD YOU:").Say(side, shout(r, r.TowardYou())).Set(w))
	lies := s.asLies(r)
	switch {
	case orders.W+4+lies.W <= w:
		orders.Add(lies, w-lies.W, 0)
	case shown.W+2+lies.W <= w:
		shown.Add(lies, w-lies.W, (shown.H-lies.H)/2)
	default:
		shown.Below(lies, 1.5)
	}
	blocks := []paper.Block{head, orders}
	if w >= besideRun {
		left := w*(1-narrowShare) - 4
		middle := paper.Stack(3, shown, s.fenceBox(u, left), s.runLadder(u, r, left))
		if section, ok := views.InfeedEnd(s.Setter, u, r, w-left-4, middle.H); ok {
			middle.Add(section, w-section.W, 0)
		}
		blocks = append(blocks, middle)
	} else {
		blocks = append(blocks, shown, s.fenceBox(u, w), s.runLadder(u, r, w))
	}
	// What is minded is said below, not once more at the marks.
	blocks = append(blocks, s.pairPanel(u, u.Pair(r.Pair), []*deck.Run{r}, wording.Mind{}, w))
	var said paper.Phrase
	for _, words := range s.mindPhrases(mind) {
		said = append(said, words...)
	}
	blocks = append(blocks, said.Set(w))
	if rest := high - paper.Stack(3, blocks...).H - 3; rest > leastPicture {
		if b, ok := views.FromAbove(s.Setter, u, r, w, min(rest, high*0.3)); ok {
			blocks = append(blocks, b)
		}
	}
	again := func(i int) paper.Block {
		if i == 0 {
			return paper.Block{}
		}
		return s.Strong(w, 5, fmt.Sprintf("RUN %s, page %d of %d", r.Number(), i+1, max(of, i+1)))
	}
	gap := paper.Paper(3)
	if w < besideRun {
		gap = 2
	}
	return fill(blocks, gap, high, again)
}
