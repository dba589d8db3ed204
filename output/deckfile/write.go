package deckfile

import (
	"io"

	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// Format names the JSON form of a deck and its version.
const Format = "fencecard deck 2"

// formerFormat is not written any more.
const formerFormat = "fencecard deck 1"

// Write writes the deck as one indented JSON document.
func Write(w io.Writer, d *deck.Deck) error {
	return Indented(w, deckToJSON(d))
}

type jsonDeck struct {
	Format   string        `json:"format"`
	Title    string        `json:"title"`
	Unit     string        `json:"unit"`
	Code     string        `json:"code"`
	First    string        `json:"first"` // what comes before anything that the deck says
	Setups   []Setup       `json:"setups"`
	Cards    []jsonCard    `json:"cards"`
	Changes  jsonChanges   `json:"changes"`
	Joints   []jsonJoint   `json:"joints,omitempty"`
	Cautions []jsonCaution `json:"cautions"`
	Warnings []Warning     `json:"warnings"`
}

type jsonChanges struct {
	Bits    int     `json:"bits"`
	Fences  int     `json:"fences"`
	Heights int     `json:"heights"`
	Stops   int     `json:"stops"`
	Passes  int     `json:"passes"`
	Runs    int     `json:"runs"` // what format 2 called the passes first
	Fits    int     `json:"fits"`
	Minutes float64 `json:"minutes"`
	Proved  bool    `json:"proved"`
	Bound   float64 `json:"bound"`
}

// Warning is a warning, in JSON.
type Warning struct {
	Code  string `json:"code"`
	Piece string `json:"piece"`
	Cut   string `json:"cut"`
	Text  string `json:"text"`
}

func deckToJSON(d *deck.Deck) jsonDeck {
	s := Scale(d.Plan.Shop.Scale)
	out := jsonDeck{
		Format: Format,
		Title:  d.Plan.Title,
		Unit:   d.Plan.Unit.String(),
		Code:   d.Code,
		First:  trade.Deference,
		Setups: make([]Setup, len(d.Setups)),
		Changes: jsonChanges{
			d.Changes.Bits, d.Changes.Fences, d.Changes.Heights, d.Changes.Stops, d.Changes.Passes, d.Changes.Passes, d.Changes.Fits, d.Changes.Time.Minutes(),
			d.Changes.Proved, d.Changes.Bound.Minutes(),
		},
		Joints:   s.joints(d.Joints),
		Cautions: cautionsToJSON(d),
		Warnings: warningsToJSON(d),
	}
	cards := d.Cards()
	out.Cards = cardsToJSON(cards)
	numbers := make(map[string]int, len(cards))
	for _, c := range cards {
		numbers[c.Piece.Name] = c.Number
	}
	for i := range d.Setups {
		out.Setups[i] = s.Setup(&d.Setups[i], &d.Plan.Shop)
		for k := range out.Setups[i].Runs {
			r := &out.Setups[i].Runs[k]
			r.Card = numbers[r.Piece]
		}
	}
	return out
}

func warningsToJSON(d *deck.Deck) []Warning {
	out := make([]Warning, len(d.Warnings))
	for i, w := range d.Warnings {
		out[i] = Warning{w.Code, w.Piece, w.Cut, w.Text}
	}
	return out
}
