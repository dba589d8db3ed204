package pattern_test

import (
	"fmt"
	"testing"

	"fencecard/joinery/pattern"

	"github.com/stretchr/testify/assert"
)

func Example() {
	from := pattern.New(`^(.+) from (\S+)$`)
	fmt.Println(from.FindStringSubmatch("1/2 from front")[1:])
	// Output: [1/2 front]
}

func TestPattern(t *testing.T) {
	p := pattern.New(`(\d+)/(\d+)`)
	const text = "3/8 in"
	assert.True(t, p.MatchString(text))
	assert.Equal(t, []int{0, 3, 0, 1, 2, 3}, p.FindStringSubmatchIndex(text))
	assert.Equal(t, "8 under 3", p.Expand("$2 under $1", text, p.FindStringSubmatchIndex(text)))
	assert.Equal(t, "3:8 in", p.ReplaceAllString(text, "$1:$2"))
	assert.Equal(t, []string{"", " in"}, p.Split(text, -1))
	assert.Nil(t, p.FindStringSubmatch("none"))
	broken := pattern.New("(")
	assert.Panics(t, func() { broken.MatchString("") })
}
