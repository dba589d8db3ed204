package sheets

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
)

// What is said runs on to a further part of a card after a sentence, never in one,
// unless it is longer than a third of the card.
func TestSentencesStayTogether(t *testing.T) {
	l := paper.Letters{Height: 2}
	line := paper.Phrase{}.Say(l, "Hold").Set(60).H
	said := strings.Repeat("Hold the work to the fence and to the table with a featherboard, never by hand. ", 6)
	for _, c := range []struct {
		said string
		mid  bool
	}{{said, false}, {strings.ReplaceAll(said, ".", ","), true}} {
		all := poured(func(int, rowsOn, paper.Paper) paper.Block { return paper.Block{} }, paper.Block{},
			[]group{{said: []paper.Phrase{paper.Phrase{}.Say(l, c.said)}, wide: 60}}, 7.5*line, 7.5*line, 0)
		require.Greater(t, len(all), 1)
		var words []string
		for _, b := range all {
			assert.LessOrEqual(t, float64(b.H), float64(7.5*line))
			text := strings.ReplaceAll(saidIn(b), "|", " ")
			assert.Equal(t, !c.mid, strings.HasSuffix(text, "."), text)
			words = append(words, text)
		}
		assert.Equal(t, strings.TrimSpace(c.said), strings.Join(words, " "), "nothing is lost")
	}
}
