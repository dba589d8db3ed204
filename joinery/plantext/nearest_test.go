package plantext

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"ash", "", 3}, {"oak", "oak", 0}, {"oak", "aok", 1},
		{"maple", "mapel", 1}, {"maple", "maple s", 2}, {"kitten", "sitting", 3},
	} {
		assert.Equal(t, c.want, Slips(c.a, c.b), "%s %s", c.a, c.b)
		assert.Equal(t, c.want, Slips(c.b, c.a), "%s %s", c.b, c.a)
	}
}
