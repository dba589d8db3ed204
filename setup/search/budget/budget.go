// Package budget is how long a search may take, in steps, and why it ended.
package budget

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

// Budget counts down the steps of one search.
type Budget struct {
	ctx      context.Context
	Left     int64
	deadline time.Time
	toClock  int64 // steps until the clock and the context are looked at
	Ended    Ended
}

// New is what a limit allows, from now on.
func New(ctx context.Context, l Limit) *Budget {
	if l.Time == 0 {
		l.Time = DefaultTime
	}
	if l.Steps == 0 {
		l.Steps = int64(l.Time.Seconds() * StepsPerSecond)
	}
	return &Budget{ctx: ctx, Left: l.Steps, deadline: time.Now().Add(l.Time)}
}

// clockEvery is how many steps pass between two looks at the clock.
const clockEvery = 100_000

// Spend takes steps and reports whether the search may go on.
func (b *Budget) Spend(steps int) bool {
	if b.Ended != Through {
		return false
	}
	n := int64(steps) + 1
	b.Left -= n
	b.toClock -= n
	if b.Left < 0 {
		b.Ended = StepsUsed
	} else if b.toClock < 0 {
		b.toClock = clockEvery
		switch {
		case b.ctx.Err() != nil:
			b.Ended = CalledOff
		case time.Now().After(b.deadline):
			b.Ended = TimeUp
		}
	}
	return b.Ended == Through
}

// Part lends some of the steps to a smaller search.
func (b *Budget) Part(steps int64) *Budget {
	lent := *b
	lent.Left = min(steps, b.Left)
	b.Left -= lent.Left
	return &lent
}

// GiveBack takes back what the smaller search has left. That it used up its
// steps does not end this one.
func (b *Budget) GiveBack(lent *Budget) {
	b.Left += max(0, lent.Left)
	b.toClock = lent.toClock
	if lent.Ended != StepsUsed {
		b.Ended = lent.Ended
	}
}
