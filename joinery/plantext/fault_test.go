package plantext

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFaultsArePrintedInOrderAndOnce(t *testing.T) {
	late := Fault{Place: Place{"plan.yaml", 9, 3, "  depth: x"}, Problem: "no length", Remedy: "write 1/4"}
	early := Fault{
		Place: Place{"plan.yaml", 2, 1, "a: 2"}, Problem: "a is there twice", Remedy: "keep one",
		Other: Place{"plan.yaml", 1, 1, "a: 1"}, Clash: "the first one",
	}
	err := Faults{late, early, late}.Err()
	require.EqualError(t, err, `plan.yaml:2:1: a is there twice
    a: 2
    ^
  keep one
  plan.yaml:1:1: the first one
    a: 1
    ^

plan.yaml:9:3: no length
      depth: x
      ^
  write 1/4`)
	assert.Len(t, Faults{late, {Place: late.Place, Problem: "another"}, late}.Err(), 2, "one between the two that are alike")
	assert.NoError(t, Faults(nil).Err())
	assert.EqualError(t, late, "plan.yaml:9:3: no length; write 1/4")
	assert.EqualError(t, Fault{Problem: "no place"}, "no place")
}

func TestExcerptPutsTheCaretUnderTheCharacter(t *testing.T) {
	for _, c := range []struct {
		place Place
		want  string
	}{
		{Place{Line: 1, Column: 4, Source: "ü: rigth"}, "    ü: rigth\n       ^\n"},
		{Place{Line: 1, Column: 3, Source: "\t\tx"}, "    \t\tx\n    \t\t^\n"},
		{Place{Line: 1, Column: 6, Source: "short"}, "    short\n         ^\n"},
		{Place{Line: 1, Column: 1, Source: "a\x1b[2Jb"}, "    a\ufffd[2Jb\n    ^\n"},
		{Place{Line: 1, Column: 1}, ""},
		{Place{}, ""},
	} {
		assert.Equal(t, c.want, c.place.Excerpt())
	}
	long := Place{Line: 1, Column: 501, Source: strings.Repeat("a", 500) + "X" + strings.Repeat("b", 500)}
	line, caret, _ := strings.Cut(long.Excerpt(), "\n")
	assert.Equal(t, utf8.RuneCountInString(line[:strings.Index(line, "X")]), strings.Index(caret, "^"))
	assert.Less(t, utf8.RuneCountInString(line), 80)
	assert.Regexp(t, `^    …a+Xb+…$`, line, "cut at both ends")
	for source, want := range map[string]string{
		strings.Repeat("a", 72): "    " + strings.Repeat("a", 72),
		strings.Repeat("a", 73): "    " + strings.Repeat("a", 71) + "…",
	} {
		line, _, _ := strings.Cut(Place{Line: 1, Column: 3, Source: source}.Excerpt(), "\n")
		assert.Equal(t, want, line)
	}
}

func TestNearest(t *testing.T) {
	sides := []string{"left", "right", "front", "back", "bottom", "top"}
	for word, want := range map[string]string{
		"rigth": "right", "Right": "right", "fornt": "front", "botom": "bottom", "tpo": "top", "bck": "back",
		"outside": "", "": "", "x": "", "frontfrontfront": "", "lfet": "left",
	} {
		assert.Equal(t, want, Nearest(word, sides), word)
	}
	assert.Equal(t, "front left leg", Nearest("frnt left leg", []string{"back left leg", "front left leg"}))
	assert.Empty(t, Nearest("word", nil))
}
