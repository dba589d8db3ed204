package output

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"fencecard/setup"
	"fencecard/setup/proof"
)

// Differences compares a deck that was read from JSON with the same deck as it
// would be written now, for what a proof does not look at: which end of the
// work the marks are set by, and the cautions. Lengths are left to the proof,
// and so is what only one of the two says. The data must have been read by
// [proof.Read]; the deck is [proof.Deck] of it, with its cautions.
func Differences(d *setup.Deck, data []byte) ([]proof.Difference, error) {
	var page bytes.Buffer
	if err := JSON(&page, d); err != nil {
		return nil, err
	}
	got, err := cardsIn(data)
	if err != nil {
		return nil, err
	}
	want, err := cardsIn(page.Bytes())
	if err != nil {
		return nil, err
	}
	var found []proof.Difference
	for i := range min(len(got), len(want)) {
		var c comparison
		c.compare("", got[i], want[i])
		for _, diff := range c.found {
			diff.Card, diff.Piece, diff.Cut = fmt.Sprint(want[i]["number"]), fmt.Sprint(want[i]["piece"]), fmt.Sprint(want[i]["cut"])
			found = append(found, diff)
		}
	}
	return found, nil
}

// cardsIn returns the cards of a JSON deck as trees, in running order.
func cardsIn(data []byte) ([]map[string]any, error) {
	var deck struct {
		Setups []struct{ Cards []map[string]any }
	}
	err := json.Unmarshal(bytes.TrimPrefix(data, []byte("\ufeff")), &deck)
	var cards []map[string]any
	for _, s := range deck.Setups {
		cards = append(cards, s.Cards...)
	}
	return cards, err
}

// comparison gathers what differs between two trees.
type comparison struct{ found []proof.Difference }

func (c *comparison) compare(field string, got, want any) {
	g, gotObject := got.(map[string]any)
	w, wantObject := want.(map[string]any)
	if gotObject && wantObject {
		if _, length := w["mm"]; length {
			return
		}
		for _, key := range slices.Sorted(maps.Keys(w)) {
			if value, said := g[key]; said {
				c.compare(strings.TrimPrefix(field+", "+key, ", "), value, w[key])
			}
		}
		return
	}
	if list, ok := want.([]any); ok && lengths(list) || reflect.DeepEqual(got, want) {
		return
	}
	c.found = append(c.found, proof.Difference{Field: field,
		Text: fmt.Sprintf("the card says %v for its %s; as the deck stands it should say %v", got, field, want)})
}

// lengths reports whether a list holds lengths.
func lengths(list []any) bool {
	if len(list) == 0 {
		return false
	}
	first, ok := list[0].(map[string]any)
	return ok && first["mm"] != nil
}
