package sheets

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Every sheet that a run stands on says each warning of the run, and how its waste is
// nibbled: the sheets of a setup are taped up apart. An index card has room for the
// gravest alone, as small sheets where more would take one more, and what is of the bit was done when it was fitted. Where two cautions
// differ in their figures, one says both.
func TestEverySheetSaysTheWarningsOfItsRuns(t *testing.T) {
	figures := regexp.MustCompile(`\d+ \d+/\d+|\d+/\d+|\d+(\.\d+)?`)
	apart, stood, short := map[PaperSize]int{}, 0, 0
	runs := 0
	for _, d := range realDecks(t) {
		runs += d.deck.Runs()
		for _, on := range []PaperSize{Letter, A4, Legal, A5} {
			s := newSetter(d.deck, Pages{Paper: on})
			for i := range d.deck.Setups {
				u := &d.deck.Setups[i]
				for n, sheet := range s.setupSheet(d.deck, i, s.body().H) {
					words := strings.ReplaceAll(saidIn(sheet), "|", " ")
					alike := figures.ReplaceAllString(words, "#")
					for k := range u.Runs {
						r := &u.Runs[k]
						if !standsOn(r, sheet) {
							continue
						}
						stood++
						if n > 0 {
							apart[on]++
						}
						if on == A5 && n > 0 && strings.Contains(words, allOnFirst) {
							short++
							continue
						}
						for _, c := range r.Cautions {
							if c.Weight < deck.Grave || c.Code == "trial-cut" || n > 0 && c.Code == "shank-and-collet" {
								continue
							}
							for _, sentence := range strings.SplitAfter(c.Brief, ". ") {
								sentence = strings.TrimSpace(sentence)
								assert.Contains(t, alike, figures.ReplaceAllString(sentence, "#"),
									"%s on %s, sheet %d of setup %d, run %s, %s", d.Name, on, n+1, u.Number, r.Number(), c.Code)
								for _, figure := range figures.FindAllString(sentence, -1) {
									assert.Contains(t, words, figure, sentence)
								}
							}
						}
						for _, sentence := range strings.SplitAfter(wording.Crossing(r, s.Scale, s.push), ". ") {
							assert.Contains(t, words, strings.TrimSpace(sentence), "%s on %s, run %s", d.Name, on, r.Number())
						}
					}
				}
			}
		}
	}
	for on, n := range apart {
		assert.Greater(t, n, 20, fmt.Sprint(on))
	}
	assert.Less(t, short, 3*apart[A5]/4, "small sheets have room for most")
	assert.Len(t, apart, 4)
	assert.Equal(t, 4*runs, stood, "every run stands on one sheet")
}

// standsOn reports whether the row of a run is on a sheet: its number, and behind it the
// name of its piece.
func standsOn(r *deck.Run, sheet paper.Block) bool {
	name, _, _ := strings.Cut(paper.Printable(r.Piece.Name), " ")
	for i, p := range sheet.Parts {
		if p.Says == r.Number() && i+1 < len(sheet.Parts) && strings.HasPrefix(sheet.Parts[i+1].Says, name) {
			return true
		}
	}
	return false
}
