package remark_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/setup/internal/workpiece"
)

// An end that is crossed by its faces first rides the fence with what they leave of it
// when its edges are crossed.
func TestAnEndRidesWithWhatIsLeftOfIt(t *testing.T) {
	for name, want := range map[string]map[string]string{
		"panel-door": {"5.1": "60", "5.5": "6", "5.6": "6", "5.11": "6", "5.16": "6"},
		"childs-bed": {"8.1": "100", "8.5": "12", "8.10": "12", "8.11": "10", "9.3": "10", "9.7": "10", "10.1": "90", "10.8": "12"},
		"nightstand": {"12.1": "120", "12.5": "10", "12.16": "10"},
	} {
		d := workpiece.DeckOf(t, workpiece.RealPlans(t)[name])
		got := map[string]string{}
		for _, u := range d.Setups {
			for _, r := range u.Runs {
				for _, c := range r.Cautions {
					if want[r.Number()] != "" && c.Code == "guided" {
						got[r.Number()] = regexp.MustCompile(`Only (\d+) mm`).FindStringSubmatch(c.Brief)[1]
					}
				}
			}
		}
		assert.Equal(t, want, got, name)
	}
}

// A square block behind the tail of work that is lowered takes the place of the back
// stop, which then stands farther off; a gauge would neither tilt nor come down with it.
func TestBlockAndBackStopWantOnePlace(t *testing.T) {
	for _, with := range []joinery.Push{joinery.Block, joinery.Gauge} {
		plan := workpiece.PieceFrom(t, "28 1_3/4 1_3/4", "dado d bottom 1/2 4:left 1/2-1_1/4:front 1/4")
		plan.Shop.Cross.With = with
		swings := 0
		for _, c := range cautioned(t, plan) {
			if c.Code == "swings" {
				swings++
				assert.Contains(t, c.Words, "to a square block behind its tail, the back stop farther right by the block's thickness")
				assert.NotContains(t, c.Words+c.Brief, "gauge")
			}
		}
		assert.Equal(t, 1, swings)
	}
}

// What one person does not carry and hold square is said on its sheet as well, not on
// the run sheet alone.
func TestLongWorkIsHelpedOnItsSheet(t *testing.T) {
	for size, want := range map[string]string{"60 3/4 3": "a helper or stands at its free end", "36 3/4 3": "its free end carried"} {
		for _, c := range cautioned(t, workpiece.PieceFrom(t, size, "tenon n left 1 front:3/16 back:3/16")) {
			if c.Code == "swings" {
				assert.Contains(t, c.Brief, want)
			}
		}
	}
}
