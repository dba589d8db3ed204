package proof_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// screwSlots is a cleat with two slots, one of which is told where its screw goes.
func screwSlots(t *testing.T, more string) *joinery.Plan {
	t.Helper()
	plan, err := planfile.Read("cleat.yaml", []byte(`unit: in
wood: white oak
climate: {assembly: 8 %}
shop:
  bits:
    - {bit: narrow, kind: up-cut, diameter: 3/16, cutting: 1/2, shank: 1/4, plunges: yes}
    - {bit: wide, kind: up-cut, diameter: 3/8, cutting: 1, shank: 3/8, plunges: yes}
pieces:
  - piece: cleat
    count: 2
    size: {left-right: 20, front-back: 2, top-bottom: 3/4}
    cuts:
      - {slot: one, in: bottom, at: [12 from right, centred], along: left-right, screw: 3/16, head: 3/8, head depth: 3/8, move: seasons of 10`+more+`}
      - {slot: two, in: bottom, at: [14 from right, centred], along: left-right, screw: 3/16, head: 7/16, head depth: 3/8, move: 1/4, fence: back`+more+`}
`), nil)
	require.NoError(t, err)
	return plan
}

// runsOf lists the runs of a cut in running order.
func runsOf(d *deck.Deck, cut string) []*deck.Run {
	var runs []*deck.Run
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			if r := &d.Setups[i].Runs[k]; r.Cut.Name == cut {
				runs = append(runs, r)
			}
		}
	}
	return runs
}

// The head's slot comes first, and the shank's begins at its floor: with 3/8 of
// the 3/4 to cut, a bit with 1/2 of teeth is long enough whose shank of 1/4
// enters the slot of 3/8.
func TestASlotIsCutFromTheHeadOn(t *testing.T) {
	d := deckOf(t, screwSlots(t, ""))
	runs := runsOf(d, "one")
	require.Len(t, runs, 2)
	head, shank := runs[0], runs[1]
	assert.Equal(t, []string{"head", "shank"}, []string{head.Channel.Part, shank.Channel.Part})
	assert.Less(t, head.Setup, shank.Setup)
	eighth := measure.Inch / 8
	assert.Equal(t, 3*eighth, head.Heights[len(head.Heights)-1])
	assert.Greater(t, shank.Heights[0], 3*eighth, "no pass through the air")
	assert.Equal(t, 6*eighth, shank.Heights[len(shank.Heights)-1])
	assert.Equal(t, 19*measure.Inch/32, head.B-head.A)
	assert.Equal(t, 13*measure.Inch/32, shank.B-shank.A)
	require.NotNil(t, shank.Screw)
	assert.Nil(t, head.Screw)
	assert.Equal(t, -measure.Inch/32, shank.Screw.FromMiddle, "10 x 0.00365 x (8.0 - 9.1) = -0.04, on the scale -3/64 or -1/32")
	assert.Nil(t, runsOf(d, "two")[1].Screw, "of a movement in inches nothing is known of the moisture")
}

// What is wrong with a slot is said of it in words.
func TestASlotCutWrong(t *testing.T) {
	plan := screwSlots(t, "")
	for what, c := range map[string]struct {
		spoil func(*proof.Claims)
		says  string
	}{
		"the shank first": {func(c *proof.Claims) {
			for i, s := range c.Setups {
				if s.Bit.Name == "narrow" {
					c.Setups = append(append([]proof.Setup{s}, c.Setups[:i]...), c.Setups[i+1:]...)
					break
				}
			}
		}, "the head must be cut first"},
		"a pass through the air": {func(c *proof.Claims) {
			s, claim := runOf(t, c, "one", 1)
			for i := range c.Setups {
				for j := range c.Setups[i].Runs {
					if o := &c.Setups[i].Runs[j]; o.Cut == "one" && o.Part == "shank" {
						s, claim = &c.Setups[i], o
					}
				}
			}
			low := measure.Inch / 4
			s.Heights = append([]measure.Length{low}, s.Heights...)
			claim.Heights = append([]measure.Length{low}, claim.Heights...)
		}, "cuts nothing: the head is that deep"},
		"no place for the screw": {func(c *proof.Claims) {
			for i := range c.Setups {
				for j := range c.Setups[i].Runs {
					c.Setups[i].Runs[j].Screw = nil
				}
			}
		}, "does not say where the screw goes"},
	} {
		claims := claimsOf(deckOf(t, plan))
		c.spoil(claims)
		r := proof.Check(plan, claims)
		assert.Contains(t, fmt.Sprint(r.Err()), c.says, what)
	}
}

// A bit whose shank would rub in the slot for the head must cut all the way.
func TestAShankThatDoesNotEnter(t *testing.T) {
	plan := screwSlots(t, "")
	claims := claimsOf(deckOf(t, plan))
	for i := range plan.Shop.Bits {
		if plan.Shop.Bits[i].Name == "narrow" {
			plan.Shop.Bits[i].Shank = 3 * measure.Inch / 8
		}
	}
	r := proof.Check(plan, claims)
	require.False(t, r.Proved())
	assert.True(t, strings.Contains(r.Err().Error(), "cuts only 1/2 deep"), r.Err())
}
