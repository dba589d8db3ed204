package page

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"

	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
)

// script is what the page's script knows of the deck: which boxes there are and in
// which order they are worked off.
type script struct {
	Code   string `json:"code"`
	Plan   string `json:"plan"` // of a page by itself: under which its ticks are kept
	Title  string `json:"title"`
	Served bool   `json:"served"`

	Runs  []scriptRun `json:"runs"`
	Steps [][2]int    `json:"steps"` // the run, from 0, and which of its heights, from 1
}

// scriptRun is a run: a box for each of its heights and each piece.
type scriptRun struct {
	Number string `json:"number"`
	Setup  int    `json:"setup"`
	Says   string `json:"says"`
	Piece  string `json:"piece"`
	Count  int    `json:"count"`
	Rungs  []int  `json:"rungs"` // the numbers of its heights on the setup's ladder
}

// add adds the runs of a setup, and the order in which they are worked off: height
// by height, at each the runs as its sheet has them.
func (s *script) add(u *deck.Setup, groups []wording.Group) {
	at := map[*deck.Run]int{}
	for i := range u.Runs {
		r := &u.Runs[i]
		at[r] = len(s.Runs)
		s.Runs = append(s.Runs, scriptRun{r.Number(), u.Number, deckcode.Says(u, r), r.Piece.Name, r.Piece.Count, wording.RungNames(u, r)})
	}
	for _, climb := range u.Climbs() {
		for _, h := range climb.Heights {
			for _, g := range groups {
				if g.Climb != climb.Runs[0].Climb {
					continue
				}
				for _, r := range g.Runs {
					if k := slices.Index(r.Heights, h); k >= 0 {
						s.Steps = append(s.Steps, [2]int{at[r], k + 1})
					}
				}
			}
		}
	}
}

// planKey names a plan where a page by itself keeps its ticks.
func planKey(d *deck.Deck) string {
	sum := sha256.Sum256([]byte(d.Plan.Name + "\n" + d.Plan.Title))
	return hex.EncodeToString(sum[:8])
}
