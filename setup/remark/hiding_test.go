package remark_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// The mortise of a leg of 7 in is dropped with 6 1/2 in before its line at the
// top: its mouth begins sqrt(6.5^2 + 0.9375^2) - 6.5 = 0.067 in too early (worked
// out), more than is pared away.
func TestAShoulderHidesAnEarlyMouth(t *testing.T) {
	leg := strings.Replace(workpiece.JointPlan["leg size"], "17", "7", 1)
	narrow := strings.Replace(workpiece.JointPlan["tenon"], "top: 1/4", "top: 1/32", 1)
	for _, test := range []struct {
		name, says string // "" for nothing
		changes    map[string]string
	}{
		{"no joint is known", "more than paring hides", map[string]string{"mates": ""}},
		{"the tenon names the mortise", "", nil},
		{"the mortise names the tenon", "", map[string]string{"mates": "", "leg mates": ", mates: rail / end"}},
		{"a shoulder that is too narrow", "covers 1/32 in", map[string]string{"tenon": narrow}},
	} {
		t.Run(test.name, func(t *testing.T) {
			changes := map[string]string{"leg size": leg}
			for key, text := range test.changes {
				changes[key] = text
			}
			said := earlyMouths(workpiece.JointDeck(t, changes))
			if test.says == "" {
				assert.Empty(t, said)
				return
			}
			assert.Contains(t, said, test.says)
		})
	}
}

func earlyMouths(d *deck.Deck) string {
	said := ""
	for _, w := range d.Warnings {
		if w.Code == "early-mouth" {
			said += w.Text + "\n"
		}
	}
	return said
}
