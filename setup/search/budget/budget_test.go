package budget_test

import (
	"context"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/search/budget"
)

// A look is paid for, and one more for asking, so that a search that only asks ends too.
func Example() {
	b := budget.New(context.Background(), budget.Limit{Steps: 25})
	looks := 0
	for b.Spend(9) {
		looks++
	}
	fmt.Println(looks, b.Ended == budget.StepsUsed)
	// Output: 2 true
}

// Called off and out of time a search ends at its first look at the clock, and stays
// ended; out of steps it ends whatever the clock says.
func TestWhyASearchEnds(t *testing.T) {
	off, cancel := context.WithCancel(context.Background())
	cancel()
	on := context.Background()
	for _, c := range []struct {
		what string
		ctx  context.Context
		of   budget.Limit
		want budget.Ended
	}{
		{"nothing is in its way", on, budget.Limit{}, budget.Through},
		{"called off", off, budget.Limit{}, budget.CalledOff},
		{"out of time", on, budget.Limit{Steps: 1000, Time: time.Nanosecond}, budget.TimeUp},
		{"out of steps, and called off", off, budget.Limit{Steps: 10}, budget.StepsUsed},
	} {
		b := budget.New(c.ctx, c.of)
		if c.want == budget.TimeUp {
			time.Sleep(time.Millisecond)
		}
		assert.Equal(t, c.want == budget.Through, b.Spend(100), c.what)
		assert.Equal(t, c.want, b.Ended, c.what)
		assert.Equal(t, c.want == budget.Through, b.Spend(0), c.what)
	}
}

// A search that is lent steps gives back what it has left, and takes none that are not
// there. Out of its own it ends alone; called off it ends both.
func TestLentSteps(t *testing.T) {
	b := budget.New(context.Background(), budget.Limit{Steps: 1000})
	part := b.Part(400)
	assert.EqualValues(t, 600, b.Left)
	assert.True(t, part.Spend(99))
	b.GiveBack(part)
	assert.EqualValues(t, 900, b.Left)

	part = b.Part(50)
	assert.False(t, part.Spend(100))
	b.GiveBack(part)
	assert.EqualValues(t, 850, b.Left)
	assert.Equal(t, budget.Through, b.Ended)
	assert.EqualValues(t, 850, b.Part(2000).Left)

	ctx, cancel := context.WithCancel(context.Background())
	b = budget.New(ctx, budget.Limit{})
	part = b.Part(1000)
	cancel()
	part.Spend(1)
	b.GiveBack(part)
	assert.Equal(t, budget.CalledOff, b.Ended)
}
