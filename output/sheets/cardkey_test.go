package sheets

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// The key to START and STOP stands on a card before its marks, never on a further part
// of it that lies beside another piece's card.
func TestKeyToTheMarksStandsBeforeThem(t *testing.T) {
	keyed := 0
	for _, d := range realDecks(t) {
		for _, p := range []PaperSize{Letter, A4, Index} {
			s := newSetter(d.deck, Pages{Paper: p})
			for _, c := range d.deck.Cards() {
				for i, part := range s.pieceCard(d.deck, &c, min(s.body().W, cardWidest), s.body().H) {
					said := strings.ReplaceAll(saidIn(part), "|", " ")
					at := strings.Index(said, wording.FromEdges)
					if at < 0 {
						continue
					}
					keyed++
					assert.Zero(t, i, "%s, %s on %s: on part %d", d.Name, c.Piece.Name, p, i+1)
					assert.NotContains(t, strings.ReplaceAll(said[:at], wording.FromEdges, ""), "START ", "%s, %s on %s", d.Name, c.Piece.Name, p)
				}
			}
		}
	}
	assert.Greater(t, keyed, 200)
}

// On large paper a card says that no run is taken to its full depth by itself, also
// where its runs have no marks.
func TestCardSaysTheOrderOfHeights(t *testing.T) {
	unmarked := 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{Paper: Letter})
		for _, c := range d.deck.Cards() {
			several := func(r *deck.Run) bool {
				return len(r.Heights) > 1 && wording.HeightByHeight(setupOf(d.deck, r), s.Blocks) != ""
			}
			key := s.cardKey(d.deck, &c, false)
			assert.Equal(t, slices.ContainsFunc(c.Runs, several), strings.Contains(key, wording.AllAtOneHeight), "%s, %s", d.Name, c.Piece.Name)
			if key == wording.AllAtOneHeight {
				unmarked++
			}
		}
	}
	assert.Positive(t, unmarked)
}

// A small card goes on on another for more than to say where the rest is minded, where
// the last line of its key has room for that.
func TestNoCardForOneLine(t *testing.T) {
	first, last, alone := 0, 0, 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{Paper: Index})
		for _, c := range d.deck.Cards() {
			parts := s.pieceCard(d.deck, &c, min(s.body().W, cardWidest), s.body().H)
			if len(c.Runs) == 0 {
				continue
			}
			var said []string
			for _, part := range parts {
				said = append(said, strings.ReplaceAll(saidIn(part), "|", " "))
			}
			assert.Equal(t, 1, strings.Count(strings.Join(said, " "), wording.ElseOnSetups), "%s, %s", d.Name, c.Piece.Name)
			switch n := len(parts) - 1; {
			case !strings.Contains(said[n], "SETUP") && strings.HasSuffix(strings.TrimSpace(said[n]), d.deck.Code+" "+wording.ElseOnSetups):
				alone++
			case strings.Contains(said[0], wording.ElseOnSetups) && n > 0:
				first++
			default:
				last++
			}
		}
	}
	t.Logf("%d first, %d last, %d alone", first, last, alone)
	assert.Less(t, alone, 3)
	assert.Greater(t, last, 100)
}
