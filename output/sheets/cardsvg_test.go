package sheets

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
)

// TestCardSVG draws a card that names try to break, as XML that can be read,
// and says what is wrong with a number that is none.
func TestCardSVG(t *testing.T) {
	d := legDeck(t)
	_, r := stoppedCard(t, d)
	r.Piece.Name = `a < "leg" & ]]>`
	var b bytes.Buffer
	require.NoError(t, CardSVG(&b, d, r.Number(), Pages{}))
	text := ""
	for x := xml.NewDecoder(&b); ; {
		token, err := x.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		if words, ok := token.(xml.CharData); ok {
			text += string(words) + " "
		}
	}
	for _, words := range []string{r.Piece.Name, "RIGHT", "side down", "end leads", "START:"} {
		assert.Contains(t, text, words)
	}
	assert.ErrorContains(t, CardSVG(io.Discard, d, "9.9", Pages{}), "no card 9.9")
}

// TestRecordedDrawings holds the calls that draw one card's drawings to scale
// against a file that a person has looked at.
func TestRecordedDrawings(t *testing.T) {
	const file = "testdata/drawings.txt"
	d := legDeck(t)
	u, c := stoppedCard(t, d)
	s, err := newSetter(d, Pages{})
	require.NoError(t, err)
	r := &paper.Recorder{}
	above, ok := s.fromAbove(u, c, s.frame.W, 60)
	require.True(t, ok)
	section, ok := s.infeedEnd(u, c, 80, 60)
	require.True(t, ok)
	paper.Paint(&paper.Gate{To: r}, above.Parts)
	paper.Paint(&paper.Gate{To: r}, section.Parts)
	if os.Getenv("FENCECARD_GOLDEN") == "update" {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(r.String()), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), r.String())
}
