package workpiece

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/setup/deck"
)

// JointPlan is a leg with a mortise and a rail with a tenon, to be varied. As
// it stands nothing is to be said of it.
var JointPlan = map[string]string{
	"leg size":   "{left-right: 1 3/4, front-back: 1 3/4, top-bottom: 17}",
	"mortise":    "in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 15/16, ends: square",
	"rail size":  "{left-right: 30, front-back: 7/8, top-bottom: 3}",
	"tenon":      "at: left, length: 7/8, cheeks: {front: 0.2525, back: 1/4, top: 1/4, bottom: 1/4}",
	"leg wood":   "white ash",
	"rail wood":  "white ash",
	"mates":      "leg / seat",
	"leg mates":  "",
	"more":       "",
	"clearances": "{cheek: 0.0025}",
	"climate":    "{dry: 30, damp: 65, temp: 70F}",
}

// JointDeck is the deck of JointPlan with some of it written otherwise.
func JointDeck(t testing.TB, changes map[string]string) *deck.Deck {
	t.Helper()
	get := func(key string) string {
		if text, ok := changes[key]; ok {
			return text
		}
		return JointPlan[key]
	}
	mates := ""
	if m := get("mates"); m != "" {
		mates = ", mates: " + m
	}
	text := fmt.Sprintf(`unit: in
shop: {clearances: %s}
climate: %s
pieces:
  - piece: leg
    wood: %s
    size: %s
    cuts:
      - {mortise: seat, %s%s}
  - piece: rail
    wood: %s
    size: %s
    cuts:
      - {tenon: end, %s%s}
%s`, get("clearances"), get("climate"), get("leg wood"), get("leg size"), get("mortise"), get("leg mates"),
		get("rail wood"), get("rail size"), get("tenon"), mates, get("more"))
	plan, err := planfile.Read("joint.yaml", []byte(text), nil)
	require.NoError(t, err)
	return DeckOf(t, plan)
}
