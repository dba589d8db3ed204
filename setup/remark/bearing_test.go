package remark_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"

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
