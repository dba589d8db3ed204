package search

import (
	"context"
	"time"
)

// Ended is why a search ended.
type Ended uint8

// A search ends when it is through, when it has used up its steps, when its
// time is up, or when it is called off.
const (
	Through Ended = iota
	StepsUsed
	TimeUp
	CalledOff
)

// StepsPerSecond is how many steps stand for one second. It is low for the
// machines of this day, so that the steps run out before the time does and the
// same plan gives the same deck on all of them.
const StepsPerSecond = 30_000_000

// Limit is how long a search may take.
type Limit struct {
	Steps int64         // looks at one way of one job; 0 for as many as Time stands for
	Time  time.Duration // a cap on top of the steps; 0 for 2 s
}

// DefaultTime is how long a search may take where nobody says.
const DefaultTime = 2 * time.Second

// budget counts down the steps of one search.
type budget struct {
	ctx      context.Context
	left     int64
	deadline time.Time
	toClock  int64 // steps until the clock and the context are looked at
	ended    Ended
}

func newBudget(ctx context.Context, l Limit) *budget {
	if l.Time == 0 {
		l.Time = DefaultTime
	}
	if l.Steps == 0 {
		l.Steps = int64(l.Time.Seconds() * StepsPerSecond)
	}
	return &budget{ctx: ctx, left: l.Steps, deadline: time.Now().Add(l.Time)}
}

// clockEvery is how many steps pass between two looks at the clock.
const clockEvery = 100_000

// spend takes steps and reports whether the search may go on.
func (b *budget) spend(steps int) bool {
	if b.ended != Through {
		return false
	}
	n := int64(steps) + 1
	b.left -= n
	b.toClock -= n
	if b.left < 0 {
		b.ended = StepsUsed
	} else if b.toClock < 0 {
		b.toClock = clockEvery
		switch {
		case b.ctx.Err() != nil:
			b.ended = CalledOff
		case time.Now().After(b.deadline):
			b.ended = TimeUp
		}
	}
	return b.ended == Through
}

// part lends some of the steps to a smaller search.
func (b *budget) part(steps int64) *budget {
	lent := *b
	lent.left = min(steps, b.left)
	b.left -= lent.left
	return &lent
}

// giveBack takes back what the smaller search has left. That it used up its
// steps does not end this one.
func (b *budget) giveBack(lent *budget) {
	b.left += max(0, lent.left)
	b.toClock = lent.toClock
	if lent.ended != StepsUsed {
		b.ended = lent.ended
	}
}
