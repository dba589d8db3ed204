package deckfile

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// remarkDifferences compares the joints, cautions and warnings that a deck was
// read with and those it should have; of each list it tells the first that
// differs.
func remarkDifferences(d *deck.Deck, said proof.Remarks) []proof.Difference {
	var found []proof.Difference
	for _, list := range []struct {
		thing, said string
		want        []any
	}{
		{"card", said.Cards, listOf(cardsToJSON(d.Cards()))},
		{"joint", said.Joints, listOf(Scale(d.Plan.Shop.Scale).joints(d.Joints))},
		{"caution", said.Cautions, listOf(cautionsToJSON(d))},
		{"warning", said.Warnings, listOf(warningsToJSON(d))},
	} {
		if text := firstDifference(list.thing, list.said, list.want); text != "" {
			found = append(found, proof.Difference{Field: list.thing + "s", Text: text})
		}
	}
	return found
}

func listOf[T any](values []T) []any {
	all := make([]any, len(values))
	for i := range values {
		all[i] = values[i]
	}
	return all
}

// firstDifference compares the text of a JSON list, entry by entry, with what
// the list should hold.
func firstDifference(thing, said string, want []any) string {
	if said == "" {
		return "" // what a deck does not say is not wrong
	}
	entries := json.NewDecoder(strings.NewReader(said))
	entries.Token() // the bracket: the text was read before
	n, text := 0, ""
	for entries.More() {
		var entry json.RawMessage
		if entries.Decode(&entry) != nil {
			break
		}
		if n < len(want) && text == "" {
			if at := differing(entry, want[n]); at != nil {
				text = fmt.Sprintf("%s %d of the deck says %s for its %s; as the deck stands it should say %s", thing, n+1, at.is, at.field, at.should)
			}
		}
		n++
	}
	if n != len(want) {
		return fmt.Sprintf("the deck has %s; as it stands it should have %d", wording.Plural(n, thing), len(want))
	}
	return text
}

// disagreement is a value that is not as it should be.
type disagreement struct{ field, is, should string }

// mostLonger is how many times an entry may be longer than it should be before it
// is not unpacked: what is unpacked takes many times its text.
const mostLonger = 8

// differing finds the first value of an entry that is not as it should be.
func differing(entry json.RawMessage, want any) *disagreement {
	should, err := json.Marshal(want)
	if err != nil {
		panic("output: a remark that is no JSON: " + err.Error())
	}
	if len(entry) > mostLonger*len(should) {
		return &disagreement{"length", wording.Plural(len(entry), "letter"), strconv.Itoa(len(should))}
	}
	return disagree("whole", unpacked(entry), unpacked(should))
}

// unpacked reads a value; its text was read before, so it is JSON.
func unpacked(text []byte) (value any) {
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	d.Decode(&value)
	return value
}

// disagree compares two values of JSON. A key that is not there is not wrong.
func disagree(field string, is, should any) *disagreement {
	switch should := should.(type) {
	case map[string]any:
		object, ok := is.(map[string]any)
		if !ok {
			break
		}
		for _, key := range slices.Sorted(maps.Keys(should)) {
			if value, said := object[key]; said {
				if at := disagree(key, value, should[key]); at != nil {
					return at.below(field)
				}
			}
		}
		return nil
	case []any:
		list, ok := is.([]any)
		if !ok || len(list) != len(should) {
			break
		}
		for i := range should {
			if at := disagree(field, list[i], should[i]); at != nil {
				return at
			}
		}
		return nil
	case json.Number:
		if number, ok := is.(json.Number); ok && near(number, should) {
			return nil
		}
	default:
		if is == should {
			return nil
		}
	}
	return &disagreement{field, inWords(is), inWords(should)}
}

// below names the value that a disagreement lies in: not only "mm", but the gap
// that is wrong.
func (d *disagreement) below(field string) *disagreement {
	if field != "whole" {
		d.field = field + ", " + d.field
	}
	return d
}

// near reports whether two numbers are one to three decimals, as a deck has them.
func near(a, b json.Number) bool {
	const hair = 0.0005
	x, err := a.Float64()
	y, _ := b.Float64()
	return err == nil && math.Abs(x-y) <= hair
}

func inWords(value any) string {
	switch value := value.(type) {
	case string:
		return strconv.Quote(wording.Quoted(value))
	case map[string]any:
		return "something of " + wording.Plural(len(value), "field")
	case []any:
		return "a list of " + strconv.Itoa(len(value))
	case nil:
		return "nothing"
	}
	return wording.Quoted(fmt.Sprint(value))
}
