package plantext_test

import (
	"testing"

	"fencecard/joinery/plantext"

	"github.com/stretchr/testify/assert"
)

func TestList(t *testing.T) {
	for want, words := range map[string][]string{"": nil, "a": {"a"}, "a or b": {"a", "b"}, "a, b or c": {"a", "b", "c"}} {
		assert.Equal(t, want, plantext.List(words, "or"))
	}
}

func TestBrief(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{"", ""}, {"oak", "oak"}, {"ash", "ash"}, {"beech", "bee..."}, {"élé", "élé"}, {"éléph", "élé..."}, {"\xff\xff\xff\xff", "\xff\xff\xff..."},
	} {
		assert.Equal(t, test.want, plantext.Brief(test.text, 3))
	}
}
