package wording

import (
	"slices"

	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// UsedCautions lists the cautions that some run has beyond its first few, in
// general words.
func UsedCautions(d *deck.Deck, beyond int) []deck.Caution {
	used := map[int]bool{}
	for i := range d.Setups {
		for _, r := range d.Setups[i].Runs {
			for _, caution := range r.Cautions[min(beyond, len(r.Cautions)):] {
				used[caution.Number] = true
			}
		}
	}
	return slices.DeleteFunc(remark.CautionTable(&d.Plan.Shop), func(c deck.Caution) bool { return !used[c.Number] })
}
