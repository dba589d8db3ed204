package output

import (
	"bufio"
	"bytes"
	"io"

	"fencecard/joinery"
	"fencecard/setup/book"
	"fencecard/setup/deck"
)

type jsonEntry struct {
	jsonKept
	Kept  string    `json:"kept"`
	From  string    `json:"from"`
	Unit  string    `json:"unit"`
	Setup jsonSetup `json:"setup"`
}

type jsonDamage struct {
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Problem string `json:"problem"`
	Remedy  string `json:"remedy"`
}

// KeptSetupsJSON writes entries of a setup book, and what is damaged in it. It
// writes one after another: all of a long book at once are many times its size.
func KeptSetupsJSON(w io.Writer, entries []*book.Entry, damage joinery.Faults) error {
	out := bufio.NewWriter(w)
	out.WriteString("{\n  \"format\": \"fencecard book 1\",\n  \"entries\": ")
	err := listed(out, len(entries), func(i int) any {
		e := entries[i]
		return jsonEntry{
			jsonKept: *keptToJSON(e.Kept(e.Shop.Scale)), Kept: e.Date, From: e.From, Unit: e.Shop.Scale.Unit.String(),
			Setup: jsonScale(e.Shop.Scale).setup(&e.Setup, e.Shop.Fence),
		}
	})
	if err != nil {
		return err
	}
	out.WriteString(",\n  \"damage\": ")
	err = listed(out, len(damage), func(i int) any {
		return jsonDamage{damage[i].Line, damage[i].Column, damage[i].Problem, damage[i].Remedy}
	})
	if err != nil {
		return err
	}
	out.WriteString("\n}\n")
	return out.Flush()
}

// listed writes a list that lies in an object, as [indented] would.
func listed(out *bufio.Writer, n int, item func(i int) any) error {
	if n == 0 {
		_, err := out.WriteString("[]")
		return err
	}
	for i := range n {
		out.WriteString([...]string{"[\n    ", ",\n    "}[min(i, 1)])
		var page bytes.Buffer
		if err := newEncoder(&page, "    ").Encode(item(i)); err != nil {
			return err
		}
		out.Write(bytes.TrimSuffix(page.Bytes(), []byte("\n")))
	}
	_, err := out.WriteString("\n  ]")
	return err
}

type jsonMatches struct {
	Format string      `json:"format"`
	Setups []jsonMatch `json:"setups"`
}

type jsonMatch struct {
	Number int         `json:"number"`
	Code   string      `json:"code"`
	Equal  *jsonKept   `json:"equal"`
	Near   []jsonOffer `json:"near"`
}

type jsonOffer struct {
	jsonKept
	Shift   jsonLength       `json:"shift"`
	Allowed bool             `json:"allowed"`
	Changes []jsonPlanChange `json:"changes"`
	Refused []string         `json:"refused"`
	Beware  []string         `json:"beware"`
}

type jsonPlanChange struct {
	Piece string     `json:"piece"`
	Cut   string     `json:"cut"`
	Key   string     `json:"key"`
	From  jsonLength `json:"from"`
	To    jsonLength `json:"to"`
	Side  string     `json:"side,omitempty"`
}

// MatchesJSON writes what a setup book has for each setup of a deck.
func MatchesJSON(w io.Writer, d *deck.Deck, matches []book.Match) error {
	s := jsonScale(d.Plan.Shop.Scale)
	out := jsonMatches{Format: "fencecard match 1", Setups: []jsonMatch{}}
	for _, m := range matches {
		match := jsonMatch{Number: m.Setup.Number, Code: book.Code(m.Setup), Near: []jsonOffer{}}
		if m.Equal != nil {
			match.Equal = keptToJSON(m.Equal.Kept(d.Plan.Shop.Scale))
		}
		for _, o := range m.Offers {
			match.Near = append(match.Near, offerToJSON(s, o))
		}
		out.Setups = append(out.Setups, match)
	}
	return indented(w, out)
}

func offerToJSON(s jsonScale, o book.Offer) jsonOffer {
	out := jsonOffer{jsonKept: *keptToJSON(o.Entry.Kept(joinery.Scale(s))), Shift: s.length(o.Shift), Allowed: true,
		Changes: []jsonPlanChange{}, Refused: []string{}, Beware: []string{}}
	if o.Use == nil {
		return out
	}
	out.Allowed, out.Refused, out.Beware = o.Use.Allowed(), orEmpty(o.Use.Refused), orEmpty(o.Use.Beware)
	for _, c := range o.Use.Changes {
		out.Changes = append(out.Changes, jsonPlanChange{c.Piece, c.Cut, c.Key, s.length(c.From), s.length(c.To), c.Side.String()})
	}
	return out
}
