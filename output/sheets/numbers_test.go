package sheets

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/deckfile"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// setLength is the one number to set for a mark of a pair.
func setLength(d *deck.Deck, u *deck.Setup, p deck.Pair, stop bool) measure.Length {
	m := p.Start
	if stop {
		m = p.Stop
	}
	for i := range u.Runs {
		if r := &u.Runs[i]; r.Pair == p.Letter {
			return wording.MarkingOf(r, stop, m.Guide, d.Plan.Shop.Stops == joinery.Blocks).Length(&m.Mark)
		}
	}
	return 0
}

type jsonText struct{ Text string }

// TestNumbersAreTheDecks reads every deck's JSON and finds, on the sheets of each
// setup, its fence distances, heights, runs and one of the measures of every mark.
func TestNumbersAreTheDecks(t *testing.T) {
	for _, c := range realDecks(t) {
		var b bytes.Buffer
		require.NoError(t, deckfile.Write(&b, c.deck))
		var j struct {
			Setups []struct {
				Fence   map[string]jsonText
				Heights []jsonText
				Marks   []struct {
					Letter      string
					Start, Stop map[string]any
				}
				Runs []struct{ Number string }
			}
		}
		require.NoError(t, json.Unmarshal(b.Bytes(), &j))
		s := newSetter(c.deck, Pages{})
		for i, u := range j.Setups {
			said := saidOn(s, c.deck, i)
			for _, l := range u.Fence {
				assert.Contains(t, said, "|"+l.Text+"|", "%s, setup %d", c.Name, i+1)
			}
			for _, l := range u.Heights {
				assert.Contains(t, said, "|"+l.Text+"|", "%s, setup %d", c.Name, i+1)
			}
			for _, m := range u.Marks {
				for _, at := range []map[string]any{m.Start, m.Stop} {
					found := at == nil
					for _, l := range at {
						if l, ok := l.(map[string]any); ok {
							found = found || strings.Contains(said, "|"+l["text"].(string)+"|")
						}
					}
					assert.True(t, found, "%s, setup %d, pair %s: %v", c.Name, i+1, m.Letter, at)
				}
			}
			for _, r := range u.Runs {
				assert.Contains(t, said, r.Number, "%s, setup %d", c.Name, i+1)
			}
		}
	}
}

// saidOn is everything that the sheets of a setup say, between bars.
func saidOn(s Setter, d *deck.Deck, i int) string {
	var said strings.Builder
	for _, b := range s.setupSheet(d, i, s.body().H) {
		for _, p := range b.Parts {
			said.WriteString("|" + p.Says)
		}
	}
	return said.String() + "|"
}

// Every sheet and card has the deck's code behind the word "deck".
func TestCodeIsOnEveryPaper(t *testing.T) {
	for _, c := range exampleDecks(t) {
		for _, p := range laid(t, c, Pages{}) {
			var said []string
			for _, q := range p.Parts {
				said = append(said, q.Says)
			}
			assert.Contains(t, strings.Join(said, "|"), "deck|"+c.deck.Code)
		}
	}
}
