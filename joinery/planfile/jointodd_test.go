package planfile_test

import (
	"fmt"
	"strings"
	"testing"

	"fencecard/joinery/planfile"

	"github.com/stretchr/testify/assert"
)

// every is a plan with every kind of joint and most of their words.
const every = four + frontRail + endRail + `  - {piece: shelf, size: {left-right: 32 between shoulders, front-back: 15, top-bottom: 9/16}}
  - {piece: panel, count: 2, size: {left-right: 5 between shoulders, front-back: 1/2, top-bottom: 8}, grain: top-bottom}
  - {piece: muntin, size: {left-right: 2, front-back: 3/4, top-bottom: 9}}
  - {piece: other muntin, mirror: {of: muntin, across: left-right}}
  - {piece: strip, size: {left-right: 9, front-back: 3/4, top-bottom: 1}}
  - {piece: cap, size: {left-right: 9, front-back: 3/4, top-bottom: 1}}
  - {piece: slat, count: 16, size: {left-right: 9, front-back: 3/8, top-bottom: 1}}
joints:` + seatRail + `
    haunch: 1/4 at top
    play: 0.006
    room: seasons
    glue: top
    fence: either
    note: test in scrap
  - mortise and tenon: end rail
    tenon: end rail / front
    into: front left leg / back
    place: {top: flush, left: 1/8 right}
    thickness: 3/8
    length: 3/4
  - housing: shelf
    board: shelf / left
    into: front left leg / right
    place: {bottom: 4 up, front: flush}
    depth: 1/4
    stopped: 3/8 from front
    tongue: 1/4 from top
  - panel: panel
    edges: panel / left
    into: muntin / right
    place: {front: 1/8 back}
    groove: 1/4
    depth: 1/4
    tongue: 1/4 from front
    stopped: 1/2
    room: 1/16
  - halving: strip
    lap: strip / left
    into: muntin / front
    place: {top: flush}
    depth: 1/4
  - bridle: cap
    tenon: cap / right
    into: other muntin / left
    place: {bottom: flush, front: flush}
    thickness: 1/4
  - mortise and tenon: slat
    tenon: slat / right
    into: back right leg / left
    place: {centred: front-back}
    repeat: {times: 16, between: 1/2 and 15 from bottom}
    thickness: 1/4
    through: yes
`

// Whatever one word of a joint is exchanged for: the plan is read, or each fault
// has a place and a way out.
func TestAnyWordOfAJointExchanged(t *testing.T) {
	values := []string{
		"", "0", "1/8", "3", "99", "1/1024", "yes", "no", "left", "top", "either", "centred", "flush", "seasons", "panel", "{}", "[]", "[[a]]",
		"front left leg / right", "back right leg / left", "end rail / back", "shelf / top", "muntin / left, right", "muntin, muntin", "nobody / left",
		"{top: flush}", "{left: flush, front: 1/8 proud}", "{top: 1 down, bottom: 3 up}", "{centred: [front-back, top-bottom, left-right]}", "{front: 9 proud, top: 3 up}",
		"1/4 from front", "3/8 at top", "1/4 from bottom, 1/4 from top", "{top: 9, front: 0}", "{times: 2, first: 1 from top, every: 1}", "{times: 500, between: 0 and 1 from left}",
		"2 between shoulders", "seat rail", "100 m",
	}
	lines := strings.Split(every, "\n")
	read(t, "every.yaml", []byte(every))
	tried := 0
	for i, line := range lines {
		key, _, ok := strings.Cut(line, ":")
		if !ok || !strings.HasPrefix(line, "  ") || i < strings.Count(four, "\n") {
			continue
		}
		for _, value := range values {
			exchanged := append(append(append([]string{}, lines[:i]...), key+": "+value), lines[i+1:]...)
			data := []byte(strings.Join(exchanged, "\n"))
			what := fmt.Sprintf("%s: %s in line %d", key, value, i+1)
			tried++
			assert.NotPanics(t, func() {
				plan, err := planfile.Read("plan.yaml", data, nil)
				if err != nil {
					checkFaults(t, data, err)
					return
				}
				for k := range plan.Pieces {
					p := &plan.Pieces[k]
					for _, c := range p.Cuts {
						assert.NotEmpty(t, c.Channels, what)
						for _, ch := range c.Channels {
							checkInside(t, p, ch)
						}
					}
				}
			}, what)
		}
	}
	assert.Greater(t, tried, 1500)
}
