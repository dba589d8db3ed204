package output

import (
	"bufio"
	"bytes"
	"io"
	"strconv"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/output/deckfile"
	"fencecard/output/screen"
	"fencecard/setup/book"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// jsonKept is embedded, where a field named Kept is something else.
type jsonKept = deckfile.Kept

type jsonEntry struct {
	jsonKept
	Kept  string         `json:"kept"`
	From  string         `json:"from"`
	Unit  string         `json:"unit"`
	Setup deckfile.Setup `json:"setup"`
}

type jsonDamage struct {
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Problem string `json:"problem"`
	Remedy  string `json:"remedy"`
}

// KeptSetupsJSON writes entries of a setup book, and what is damaged in it. It
// writes one after another: all of a long book at once are many times its size.
func KeptSetupsJSON(w io.Writer, entries []*book.Entry, damage plantext.Faults) error {
	out := bufio.NewWriter(w)
	out.WriteString("{\n  \"format\": \"fencecard book 1\",\n  \"first\": " + strconv.Quote(trade.Deference) + ",\n  \"entries\": ")
	err := listed(out, len(entries), func(i int) any {
		e := entries[i]
		return jsonEntry{
			jsonKept: *deckfile.Scale(e.Shop.Scale).Kept(&e.Setup, e.Kept(e.Shop.Scale)), Kept: e.Date, From: e.From, Unit: e.Shop.Scale.Unit.String(),
			Setup: deckfile.Scale(e.Shop.Scale).Setup(&e.Setup, e.Shop),
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

// listed writes a list that lies in an object, as [deckfile.Indented] would.
func listed(out *bufio.Writer, n int, item func(i int) any) error {
	if n == 0 {
		_, err := out.WriteString("[]")
		return err
	}
	for i := range n {
		out.WriteString([...]string{"[\n    ", ",\n    "}[min(i, 1)])
		var page bytes.Buffer
		if err := deckfile.NewEncoder(&page, "    ").Encode(item(i)); err != nil {
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
	Number int            `json:"number"`
	Code   string         `json:"code"`
	Equal  *deckfile.Kept `json:"equal"`
	Close  []jsonOffer    `json:"close"`
}

type jsonOffer struct {
	jsonKept
	Differs string           `json:"differs"`
	Shift   deckfile.Length  `json:"shift"`
	Allowed bool             `json:"allowed"`
	Changes []jsonPlanChange `json:"changes"`
	Refused []string         `json:"refused"`
	Beware  []string         `json:"beware"`
}

type jsonPlanChange struct {
	Piece string          `json:"piece"`
	Cut   string          `json:"cut"`
	Key   string          `json:"key"`
	From  deckfile.Length `json:"from"`
	To    deckfile.Length `json:"to"`
	Side  string          `json:"side,omitempty"`
}

// MatchesJSON writes what a setup book has for each setup of a deck.
func MatchesJSON(w io.Writer, d *deck.Deck, matches []book.Match) error {
	s := deckfile.Scale(d.Plan.Shop.Scale)
	out := jsonMatches{Format: "fencecard match 2", Setups: []jsonMatch{}}
	for _, m := range matches {
		match := jsonMatch{Number: m.Setup.Number, Code: book.Code(m.Setup), Close: []jsonOffer{}}
		if m.Equal != nil {
			match.Equal = s.Kept(m.Setup, m.Equal.Kept(d.Plan.Shop.Scale))
		}
		for _, o := range m.Offers {
			match.Close = append(match.Close, offerToJSON(s, m.Setup, o))
		}
		out.Setups = append(out.Setups, match)
	}
	return proved(d, func() error { return deckfile.Indented(w, out) })
}

func offerToJSON(s deckfile.Scale, of *deck.Setup, o book.Offer) jsonOffer {
	out := jsonOffer{jsonKept: *s.Kept(&o.Entry.Setup, o.Entry.Kept(measure.Scale(s))), Differs: screen.Apart(of, o, measure.Scale(s)), Shift: s.Length(o.Shift), Allowed: o.Bit == 0,
		Changes: []jsonPlanChange{}, Refused: []string{}, Beware: []string{}}
	if o.Use == nil {
		return out
	}
	out.Allowed, out.Refused, out.Beware = o.Use.Allowed(), deckfile.OrEmpty(o.Use.Refused), deckfile.OrEmpty(o.Use.Beware)
	for _, c := range o.Use.Changes {
		out.Changes = append(out.Changes, jsonPlanChange{c.Piece, c.Cut, c.Key, s.Length(c.From), s.Length(c.To), c.Side.String()})
	}
	return out
}
