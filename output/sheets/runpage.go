package sheets

import (
	"fmt"
	"io"
	"slices"

	"fencecard/joinery"
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
	return nil, nil, joinery.Faults{{Problem: fmt.Sprintf("the deck has no run %s", joinery.Brief(number, 20)),
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
		if all := small.runBlocks(u, r); len(all) == 1 && all[0].H <= small.body().H {
			return []paper.Block{paper.Magnified(all[0], by)}
		}
	}
	return s.runBlocks(u, r)
}

// mostMagnified is how much larger a run is on a page of its own at the most.
const mostMagnified paper.Paper = 1.8

// besideRun is how wide paper must be for the section beside the settings.
const besideRun paper.Paper = 100

// runBlocks are what is said of one run, poured over pages.
func (s Setter) runBlocks(u *deck.Setup, r *deck.Run) []paper.Block {
	w := s.Frame.W
	large, high := paper.Paper(8), s.body().H
	mind := s.minds[u.Number]
	head := s.badge("RUN", r.Number())
	name := s.Strong(w-head.W-3, 6, r.Piece.Name)
	name.Below(s.Say(w-head.W-3, fmt.Sprintf("%s; %s", wording.Plural(r.Piece.Count, "piece"), wording.CutName(r))), 1)
	head.Add(name, head.W+3, 0)
	order := func(side joinery.Side, how string) paper.Block {
		return paper.Phrase{}.Say(s.Bold(large), shout(r, side)).Say(s.Letters(large*0.7), how).Set(w)
	}
	orders := paper.Stack(1, order(r.Step.Down, "side DOWN"), order(r.Step.Fence, "to the FENCE"), order(r.Leads, "end LEADS"))
	shown := paper.Stack(1.5, paper.Phrase{}.Say(s.Bold(5), "UP:").Say(s.Bold(5), shout(r, r.Up())).Set(w),
		paper.Phrase{}.Say(s.Bold(5), "TOWARD YOU:").Say(s.Bold(5), shout(r, r.TowardYou())).Set(w))
	lies := s.asLies(r)
	if orders.W+4+lies.W <= w {
		orders.Add(lies, w-lies.W, 0)
	} else {
		shown.Below(lies, 1.5)
	}
	left := w
	if w >= besideRun {
		left = w*(1-pictureShare) - 4
	}
	middle := paper.Stack(3, shown, s.fenceBox(u, left), s.ladderLine(u, left, arrangements[0]))
	if section, ok := views.InfeedEnd(s.Setter, u, r, w-left-4, middle.H); ok && left < w {
		middle.Add(section, w-section.W, 0)
	}
	blocks := []paper.Block{head, orders, middle, s.pairPanel(u, u.Pair(r.Pair), []*deck.Run{r}, mind, w)}
	var own []deck.Caution
	for _, c := range mind.All {
		if slices.Contains(c.Runs, r) {
			own = append(own, c.Caution)
		}
	}
	own = append(own, mind.Own[r]...)
	blocks = append(blocks, s.peculiar(r, own, false, r.Cut.Note).Set(w))
	if rest := high - paper.Stack(3, blocks...).H - 3; rest > leastPicture {
		if b, ok := views.FromAbove(s.Setter, u, r, w, min(rest, high*0.3)); ok {
			blocks = append(blocks, b)
		}
	}
	again := func(i int) paper.Block {
		if i == 0 {
			return paper.Block{}
		}
		return s.Strong(w, 5, "RUN "+r.Number()+", continued")
	}
	return fill(blocks, 3, high, again)
}
