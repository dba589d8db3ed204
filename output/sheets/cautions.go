package sheets

import (
	"strconv"

	"fencecard/output/paper"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// caution is one rule of the page of cautions. The page claims to comply with
// nothing.
type caution struct {
	weight deck.Weight
	text   string
}

// cautionPage is what holds at every card.
var cautionPage = []caution{
	{deck.Grave, "The manuals of the router and of the table, local rules and licensed practice come first. Where they say otherwise, do as they say. These cards replace neither them nor training at the machine."},
	{deck.Grave, "Unplug the router before you change a bit, measure at it or set the fence. Turn the bit by hand once before you switch on."},
	{deck.Grave, "Feed from right to left, against the turn of the bit. Fed the other way the bit pulls the work in, and the hand with it."},
	{deck.Grave, "Never put the work between the bit and the fence: the bit takes it and throws it."},
	{deck.Grave, "Widen a channel only in the order of the cards, the fence moving away from the bit. In the other order the bit climbs."},
	{deck.Grave, "Use featherboards or jigs and push blocks. Close the fence to the bit and cover all but the cut. Stand clear of the line of the work."},
	{deck.Grave, "Run a bit no faster than the least of the speed marked on it, the speed for its diameter and the router's own. Use sharp bits, the shank in to its mark, the collet tight."},
	{deck.Grave, "Wear eye and ear protection, and a mask with dust collection: wood dust harms the lungs. No gloves, loose sleeves or long loose hair at the machine."},
	{deck.Noted, "Mark the sides of every piece in pencil before the first cut, and check the three orders against the marks each time."},
	{deck.Noted, "Wood moves with its moisture: dress all pieces of a set together and cut them the same day."},
}

// cautions sets the pages of cautions: what holds at every card, then those
// that cards name by number.
func (s Setter) cautions(d *deck.Deck) []page {
	var rows []paper.Block
	for _, c := range cautionPage {
		rows = append(rows, s.cautionRow("", c.weight, c.text))
	}
	head := paper.Phrase{}.Say(s.bold(s.grade.body), "Cautions that cards name by number").Set(s.frame.W)
	for i, c := range remark.CautionTable(&d.Plan.Shop) {
		row := s.cautionRow(strconv.Itoa(c.Number)+" "+c.Code, c.Weight, c.Words)
		if i == 0 {
			row = paper.Stack(2, head, row)
		}
		rows = append(rows, row)
	}
	return s.pour(func(sheet int) paper.Block {
		title := paper.Phrase{}.Say(s.bold(s.grade.title), "Cautions")
		if sheet > 0 {
			title = title.Tie(s.bold(s.grade.title), ", continued")
		}
		return title.Set(s.frame.W)
	}, rows, 2)
}

// cautionRow sets the signal word in a frame, and the words beside it.
func (s Setter) cautionRow(name string, weight deck.Weight, words string) paper.Block {
	body, bold := s.Letters(s.grade.body), s.bold(s.grade.body)
	const pad = 0.6
	side := bold.Width(deck.Grave.String()) + 2*pad + 3
	row := framed(paper.Phrase{}.Say(bold, weight.String()).Set(side), pad, paper.Thick)
	p := paper.Phrase{}
	if name != "" {
		p = p.Say(bold, name).Tie(bold, ".")
	}
	row.Add(p.Say(body, words).Set(s.frame.W-side), side, pad)
	return row
}
